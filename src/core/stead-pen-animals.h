/* stead-pen-animals.h - water, hay and room for sheep and goats.
 *
 * Planning values, never promises: local extension advice goes first.  Clean water
 * is there at all times whatever the figure says; in heat animals drink far more.
 * Sheep must not get goat or poultry feed with added copper.  A sick animal is a
 * case for a veterinarian.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_EWE_MAINTENANCE,   /* dry, not bred */
  STEAD_EWE_PREGNANT,
  STEAD_EWE_LACTATING,
} SteadEweStage;

/**
 * stead_ewe_water_l:
 * @weight_kg: of the ewe, 59 to 91 (130 to 200 lb)
 * @stage: what she does
 * @out_least_l: (out) (optional): liters a day at least; NAN for lactating ewes, of
 *   whom only the most is printed
 * @out_most_l: (out) (optional): liters a day at most
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * The table has 130, 160 and 200 lb; weights between are read in a straight line.
 * Source: South Dakota extension column on sheep water, table, after NRC 2007.
 *
 * Returns: %TRUE, or %FALSE for another weight
 */
gboolean stead_ewe_water_l (double          weight_kg,
                            SteadEweStage   stage,
                            double         *out_least_l,
                            double         *out_most_l,
                            GError        **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_goat_water_l:
 * @weight_kg: of a goat or lamb, 27 to 52 (60 to 115 lb)
 * @out_l: (out): liters a day, the middle of 2 to 3 gallons
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Source: show animal water chart, goats and sheep.
 *
 * Returns: %TRUE, or %FALSE for another weight
 */
gboolean stead_goat_water_l (double   weight_kg,
                             double  *out_l,
                             GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_hay_each_kg:
 * @weight_kg: of an animal
 * @body_frac: of its weight that it eats a day, 0.02 to 0.04
 * @days: of feeding hay
 *
 * Source: University of Illinois Extension Ag Update 2004: 770 lb for a ewe of 175
 * lb in six months, 2.4 %; 2 to 4 % is the usual rule for dry matter (from memory).
 *
 * Returns: kg of hay that one animal eats; waste comes on top
 */
double stead_hay_each_kg (double weight_kg,
                          double body_frac,
                          double days);

/**
 * stead_hay_kg:
 * @head: animals
 * @each_kg: that one eats
 * @waste_frac: of what is bought that is trampled or spoils, 0 up to below 1; 0.10 to
 *   0.15 is usual (from memory)
 *
 * Returns: kg to be bought; NAN for another waste
 */
double stead_hay_kg (double head,
                     double each_kg,
                     double waste_frac);

G_END_DECLS
