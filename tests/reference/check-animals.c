/* check-animals.c - the topics on sheep, goats, and eggs in the kitchen. */
#include "check.h"

#include "core/stead-egg-kitchen.h"
#include "core/stead-pen-animals.h"

#include <math.h>

/* egg substitution, egg liquid */

static double
substitute (CheckRow *row)
{
  static const char * const classes[] = { "small", "medium", "large", "extra_large", "jumbo", NULL };
  g_autoptr(GError) error = NULL;
  int class = STEAD_EGG_CLASS_SMALL + check_word (row, "class", classes, -1);
  double large = check_number (row, "large_eggs");
  int eggs = 0;

  /* A number that the chart does not hold has no answer. */
  if (large != floor (large) || fabs (large) > 1000
      || !stead_egg_substitute ((int) large, (SteadEggClass) class, &eggs, &error))
    return check_bad_input (row, "large_eggs");
  return eggs;
}

static const CheckAsk substitute_asks[] = {
  { "eggs", "count", substitute },
  { NULL }
};

static void
need_large (CheckRow *row)
{
  static const char * const classes[] = { "large", NULL };

  check_word (row, "class", classes, -1);
}

static double
liquid_g (CheckRow *row)
{
  need_large (row);
  return STEAD_EGG_LARGE_LIQUID_G;
}

static double
liquid_oz (CheckRow *row)
{
  need_large (row);
  return check_from_base (STEAD_EGG_LARGE_LIQUID_G / 1000, "oz");
}

static double
liquid_eggs (CheckRow *row)
{
  need_large (row);
  return stead_egg_per_cups (check_number (row, "cups"));
}

static const CheckAsk liquid_asks[] = {
  { "liquid_g", "g", liquid_g },
  { "liquid_oz", "oz", liquid_oz },
  { "eggs", "count", liquid_eggs },
  { NULL }
};

/* ewe water, goat water */

static void
ewe_water (CheckRow *row,
           double   *out_least_l,
           double   *out_most_l)
{
  static const char * const weights[] = { "130", "160", "200", NULL };
  static const char * const stages[] = { "maintenance", "pregnant", "lactating", NULL };
  int stage = check_word (row, "stage", stages, -1);

  /* The program reads between the weights of the table; a published value is one of them. */
  check_word (row, "weight_lb", weights, -1);
  *out_least_l = NAN;
  *out_most_l = NAN;
  if (!stead_ewe_water_l (check_base (row, "weight", "lb"), (SteadEweStage) stage,
                          out_least_l, out_most_l, NULL))
    check_bad_input (row, "weight_lb");
}

static double
ewe_least (CheckRow *row)
{
  double least_l;
  double most_l;

  ewe_water (row, &least_l, &most_l);
  return isnan (least_l) ? check_bad_input (row, "stage") : check_from_base (least_l, "gal");
}

static double
ewe_most (CheckRow *row)
{
  double least_l;
  double most_l;

  ewe_water (row, &least_l, &most_l);
  return check_from_base (most_l, "gal");
}

static const CheckAsk ewe_asks[] = {
  { "min_water", "gal/d", ewe_least },
  { "max_water", "gal/d", ewe_most },
  { NULL }
};

static double
goat_water (CheckRow *row)
{
  double liters = NAN;

  if (!stead_goat_water_l (check_base (row, "weight", "lb kg"), &liters, NULL))
    return check_bad_input (row, "weight_lb");
  return check_from_base (liters, "gal");
}

static const CheckAsk goat_asks[] = {
  { "water", "gal/d", goat_water },
  { NULL }
};

/* hay need */

static double
hay (CheckRow *row)
{
  double each_kg;

  if (!check_has_base (row, "hay_each", "lb kg"))
    each_kg = stead_hay_each_kg (check_base (row, "weight", "lb kg"),
                                 check_frac (row, "hay_pct_body"), check_number (row, "period_d"));
  else if (check_has_base (row, "weight", "lb kg"))
    return check_bad_input (row, "hay_each_lb");
  else
    each_kg = check_base (row, "hay_each", "lb kg");
  return check_from_base (stead_hay_kg (check_number (row, "head"), each_kg, 0), "lb");
}

static const CheckAsk hay_asks[] = {
  { "hay", "lb", hay },
  { NULL }
};

const CheckTopic check_animals_topics[] = {
  { "egg substitution", "large_eggs class", substitute_asks },
  { "egg liquid", "class cups", liquid_asks },
  { "ewe water", "weight_lb stage", ewe_asks },
  { "goat water", "weight_lb weight_kg", goat_asks },
  { "hay need", "head hay_each_lb hay_each_kg weight_lb weight_kg hay_pct_body period_d", hay_asks },
  { NULL }
};
