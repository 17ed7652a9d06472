/* stead-hatch.h - days of incubation and the heat of the brooder.
 *
 * Sources: extension text on incubating, table "Length of incubation" (days);
 * Calculating Agriculture, chapter 12, table 12.4 (brooder).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_HATCH_CHICKEN,
  STEAD_HATCH_DUCK,
  STEAD_HATCH_MUSCOVY_DUCK,
  STEAD_HATCH_TURKEY,
  STEAD_HATCH_GOOSE,
  STEAD_HATCH_GUINEA,
  STEAD_HATCH_PEAFOWL,
  STEAD_HATCH_RINGNECK_PHEASANT,
  STEAD_HATCH_JAPANESE_QUAIL,
} SteadHatchSpecies;

#define STEAD_N_HATCH_SPECIES (STEAD_HATCH_JAPANESE_QUAIL + 1)

/**
 * stead_hatch_days:
 * @species: whose eggs
 * @out_least: (out) (optional): days at least
 * @out_most: (out) (optional): days at most; the same where one number is printed
 */
void stead_hatch_days (SteadHatchSpecies  species,
                       double            *out_least,
                       double            *out_most);

/**
 * stead_hatch_set_before_chicken_days:
 *
 * Returns: how many days before chicken eggs these are set, to hatch with them;
 *   below 0: that many days after
 */
double stead_hatch_set_before_chicken_days (SteadHatchSpecies species);

/**
 * stead_brooder_temperature_c:
 * @week: week of life, 1 to 8
 * @out_temp_c: (out): 95 °F in week 1, 5 °F less each week
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Watch the chicks: huddled ones are cold, panting ones are hot.
 *
 * Returns: %TRUE, or %FALSE outside these weeks: feathered birds need no brooder
 */
gboolean stead_brooder_temperature_c (int      week,
                                      double  *out_temp_c,
                                      GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
