/* stead-egg.c - eggs by weight, class and freshness. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-egg.h"
#include "core/stead-round.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define G_PER_OZ 28.349523125

/* Pennsylvania Code, title 7, section 87.42(a), lightest class first. */
static const struct
{
  const char *id;
  const char *name;
  double      dozen_oz;   /* least net weight of a dozen */
} classes[STEAD_N_EGG_CLASSES] = {
  [STEAD_EGG_CLASS_PEEWEE] = { "peewee", NC_("egg class", "Peewee"), 15 },
  [STEAD_EGG_CLASS_SMALL] = { "small", NC_("egg class", "Small"), 18 },
  [STEAD_EGG_CLASS_MEDIUM] = { "medium", NC_("egg class", "Medium"), 21 },
  [STEAD_EGG_CLASS_LARGE] = { "large", NC_("egg class", "Large"), 24 },
  [STEAD_EGG_CLASS_EXTRA_LARGE] = { "extra_large", NC_("egg class", "Extra large"), 27 },
  [STEAD_EGG_CLASS_JUMBO] = { "jumbo", NC_("egg class", "Jumbo"), 30 },
};

static gboolean
is_class (SteadEggClass class)
{
  return (gsize) class < G_N_ELEMENTS (classes);
}

const char *
stead_egg_class_id (SteadEggClass class)
{
  g_return_val_if_fail (is_class (class), "");
  return classes[class].id;
}

const char *
stead_egg_class_name (SteadEggClass class)
{
  g_return_val_if_fail (is_class (class), "");
  return g_dpgettext2 (GETTEXT_PACKAGE, "egg class", classes[class].name);
}

double
stead_egg_class_dozen_oz (SteadEggClass class)
{
  g_return_val_if_fail (is_class (class), NAN);
  return classes[class].dozen_oz;
}

double
stead_egg_class_mean_g (SteadEggClass class)
{
  return stead_egg_class_dozen_oz (class) * G_PER_OZ / 12;
}

double
stead_egg_class_single_oz (SteadEggClass class)
{
  /* No egg may lag its class by more than an ounce a dozen; nothing lies below a peewee. */
  return class == STEAD_EGG_CLASS_PEEWEE ? NAN : stead_egg_class_dozen_oz (class) - 1;
}

double
stead_egg_class_case_lb (SteadEggClass class,
                         double        dozens)
{
  g_return_val_if_fail (is_class (class), NAN);
  /* rint() sends a quarter pound to the even half: 56.25 is printed as 56, 33.75 as 34. */
  return rint (2 * dozens * classes[class].dozen_oz / 16) / 2;
}

gboolean
stead_egg_class_of_dozen (double          dozen_oz,
                          SteadEggClass  *out_class,
                          GError        **error)
{
  g_return_val_if_fail (out_class != NULL, FALSE);

  /* NaN is below every class. */
  for (int i = STEAD_EGG_CLASS_JUMBO; i >= STEAD_EGG_CLASS_PEEWEE; i--)
    if (dozen_oz >= classes[i].dozen_oz - STEAD_ROUND_NOISE)
      {
        *out_class = i;
        return TRUE;
      }
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
               _("A dozen must weigh at least %d ounces to have a weight class. "
                 "Weigh twelve eggs without the carton."),
               (int) classes[STEAD_EGG_CLASS_PEEWEE].dozen_oz);
  return FALSE;
}

double
stead_egg_mass_g (double hen_day_frac,
                  double egg_g)
{
  return hen_day_frac * egg_g;
}

double
stead_egg_weight_default_g (double age_weeks)
{
  /* A pullet's egg grows fast at first and then hardly at all. */
  return 65 - 15 * exp (-0.12 * (MAX (age_weeks, 18) - 20));
}

gboolean
stead_haugh_units (double   egg_g,
                   double   albumen_mm,
                   double  *out_units,
                   GError **error)
{
  double bracket = albumen_mm - 1.7 * pow (egg_g, 0.37) + 7.57;

  g_return_val_if_fail (out_units != NULL, FALSE);

  if (!(egg_g > 0 && albumen_mm > 0 && bracket > 0))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("There is no Haugh unit for these numbers. Check the weight of the egg "
                             "in grams and the height of the white in millimeters."));
      return FALSE;
    }
  *out_units = 100 * log10 (bracket);
  return TRUE;
}

double
stead_haugh_albumen_mm (double egg_g,
                        double units)
{
  return egg_g > 0 ? pow (10, units / 100) + 1.7 * pow (egg_g, 0.37) - 7.57 : NAN;
}

double
stead_haugh_least (SteadEggGrade grade)
{
  return grade == STEAD_EGG_GRADE_AA ? 72 : grade == STEAD_EGG_GRADE_A ? 60 : 0;
}

SteadEggGrade
stead_haugh_grade (double haugh_units)
{
  if (haugh_units >= stead_haugh_least (STEAD_EGG_GRADE_AA) - STEAD_ROUND_NOISE)
    return STEAD_EGG_GRADE_AA;
  return haugh_units >= stead_haugh_least (STEAD_EGG_GRADE_A) - STEAD_ROUND_NOISE ? STEAD_EGG_GRADE_A
                                                                                  : STEAD_EGG_GRADE_B;
}
