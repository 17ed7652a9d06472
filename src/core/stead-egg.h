/* stead-egg.h - eggs by weight, class and freshness.
 *
 * The weight class belongs to the dozen, not to the egg.
 */
#pragma once

#include "core/stead-flock.h"

G_BEGIN_DECLS

#define STEAD_N_EGG_CLASSES (STEAD_EGG_CLASS_JUMBO + 1)

/**
 * stead_egg_class_id:
 * Returns: (transfer none): stable, for files: "extra_large"
 */
const char *stead_egg_class_id (SteadEggClass class);

/**
 * stead_egg_class_name:
 * Returns: (transfer none): in the person's language: "Extra large"
 */
const char *stead_egg_class_name (SteadEggClass class);

/**
 * stead_egg_class_dozen_oz: least net weight of a dozen, ounces
 * stead_egg_class_mean_g: the same as the mean of one egg with its shell, grams
 * stead_egg_class_single_oz: rate per dozen that the lightest single egg must
 *   reach, ounces; NAN for peewee
 *
 * Source: Pennsylvania Code, title 7, section 87.42(a).
 */
double stead_egg_class_dozen_oz (SteadEggClass class);
double stead_egg_class_mean_g (SteadEggClass class);
double stead_egg_class_single_oz (SteadEggClass class);

/**
 * stead_egg_class_case_lb:
 * @class: a class
 * @dozens: in the case, above 0
 *
 * To the half pound, as the code prints it for 30 dozen.
 * Source: Pennsylvania Code, title 7, section 87.42(a).
 *
 * Returns: least net weight of a case, pounds
 */
double stead_egg_class_case_lb (SteadEggClass class,
                                double        dozens);

/**
 * stead_egg_mass_g:
 * Returns: grams of egg a hen lays in a day: rate x weight of an egg
 */
double stead_egg_mass_g (double hen_day_frac,
                         double egg_g);

/**
 * stead_egg_weight_default_g:
 * @age_weeks: age of the hen
 *
 * Brown hybrids: 50 g at 20 weeks of age, 60 g at 30, 65 g late.  From memory;
 * a trial of selected hens (read) had 64.4 g at 28 to 34 weeks.
 *
 * Returns: grams
 */
double stead_egg_weight_default_g (double age_weeks);

typedef enum
{
  STEAD_EGG_GRADE_AA,   /* 72 Haugh units or more */
  STEAD_EGG_GRADE_A,    /* 60 or more */
  STEAD_EGG_GRADE_B,
} SteadEggGrade;

/**
 * stead_haugh_units:
 * @egg_g: weight of the egg, grams, above 0
 * @albumen_mm: height of the thick white, millimetres
 * @out_units: (out): Haugh units
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * 100 log10 (h - 1.7 w^0.37 + 7.57); measured at 45 to 60 °F.
 * Source: egg quality article giving the simplified formula; some print 7.6.
 *
 * Returns: %TRUE, or %FALSE where the bracket is 0 or less
 */
gboolean stead_haugh_units (double   egg_g,
                            double   albumen_mm,
                            double  *out_units,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_haugh_albumen_mm:
 * @egg_g: weight of the egg, grams, above 0
 * @units: Haugh units
 *
 * The formula above, solved for the height.
 *
 * Returns: height of the thick white, millimeters; NAN without a weight
 */
double stead_haugh_albumen_mm (double egg_g,
                               double units);

/* Least Haugh units of a grade; 0 for B. */
double stead_haugh_least (SteadEggGrade grade);

/**
 * stead_haugh_grade:
 * Returns: the quality that the height of the white allows
 */
SteadEggGrade stead_haugh_grade (double haugh_units);

G_END_DECLS
