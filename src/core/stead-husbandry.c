/* stead-husbandry.c - what the program assumes until a farm's own records say more. */
#include "config.h"

#include "core/stead-degree-days.h"
#include "core/stead-feed.h"
#include "core/stead-fish-feed.h"
#include "core/stead-fish-stock.h"
#include "core/stead-husbandry.h"
#include "core/stead-lay.h"
#include "core/stead-us-units.h"
#include "core/stead-water-dose.h"

#include <math.h>

#define SQFT_M2 0.09290304

/* Weeks of lay at which the curve is highest: where its slope is 0. */
static double
peak_week (const SteadLayCurve *curve)
{
  double c = curve->steepness_week;
  double x = curve->decline_week;

  return curve->half_week + log ((c - x) / x) / c;
}

static double
lay_default (SteadHusbandryDefault which)
{
  SteadLayCurve curve;
  double peak_age;
  double peak;
  double after_year;

  stead_lay_curve_default (&curve);
  peak_age = curve.onset_age_weeks + peak_week (&curve);
  peak = stead_lay_curve_frac (&curve, peak_age);
  after_year = stead_lay_curve_frac (&curve, curve.onset_age_weeks + 52);
  switch (which)
    {
    case STEAD_DEFAULT_LAY_ONSET_AGE:
      return curve.onset_age_weeks;
    case STEAD_DEFAULT_LAY_ONSET_TO_PEAK:
      return peak_week (&curve);
    case STEAD_DEFAULT_LAY_PEAK:
      return 100 * peak;
    case STEAD_DEFAULT_LAY_AFTER_YEAR:
      return 100 * after_year;
    case STEAD_DEFAULT_LAY_DECLINE:
    default:
      return 100 * (peak - after_year) / (curve.onset_age_weeks + 52 - peak_age);
    }
}

/* Feed of a year of lay over the eggs of that year. */
static double
feed_per_dozen_kg (void)
{
  SteadLayCurve curve;
  double eggs_a_day;

  stead_lay_curve_default (&curve);
  eggs_a_day = stead_lay_curve_eggs (&curve, curve.onset_age_weeks, curve.onset_age_weeks + 52) / 364;
  return stead_feed_per_dozen (stead_husbandry_default (STEAD_DEFAULT_LAYER_FEED) / 1000, eggs_a_day);
}

/* Percent of the body weight a day, by the feeding table. */
static double
fish_feed_pct (SteadFishSpecies species,
               double           weight_g)
{
  SteadFishFeedRate rate;

  if (!stead_fish_feed_rate (species, weight_g, stead_fish_kind (species)->optimum_c, &rate, NULL))
    return NAN;
  return 100 * stead_fish_feed_frac_per_day (&rate);
}

static double
fish_default (SteadHusbandryDefault which)
{
  const SteadFishKind *tilapia = stead_fish_kind (STEAD_FISH_TILAPIA);

  switch (which)
    {
    case STEAD_DEFAULT_TROUT_TGC:
      return stead_fish_kind (STEAD_FISH_RAINBOW_TROUT)->tgc_x100;
    case STEAD_DEFAULT_TILAPIA_FRY_FEED:
      return fish_feed_pct (STEAD_FISH_TILAPIA, tilapia->stages[STEAD_FISH_FRY].max_g);
    case STEAD_DEFAULT_TILAPIA_MARKET_FEED:
      return fish_feed_pct (STEAD_FISH_TILAPIA, tilapia->market_g);
    case STEAD_DEFAULT_CATFISH_SUMMER_FEED:
      return fish_feed_pct (STEAD_FISH_CHANNEL_CATFISH, 100);
    case STEAD_DEFAULT_TILAPIA_FCR:
      return tilapia->fcr;
    case STEAD_DEFAULT_TILAPIA_SURVIVAL:
      return 100 * tilapia->stages[STEAD_FISH_GROWOUT].survival_frac;
    case STEAD_DEFAULT_TILAPIA_TEMPERATURE:
      return tilapia->optimum_c;
    case STEAD_DEFAULT_TILAPIA_FILLET:
      return 100 * stead_fish_yield (STEAD_FISH_TILAPIA, STEAD_FISH_CUT_FILLET, NULL)->frac;
    case STEAD_DEFAULT_FISH_FASTING:
      return STEAD_FISH_FASTING_DAYS;
    case STEAD_DEFAULT_STANDING_CHLORIDE:
      return STEAD_WATER_STANDING_CHLORIDE_MGL;
    case STEAD_DEFAULT_TANK_DENSITY:
    default:
      return STEAD_FISH_PLAN_DENSITY_KG_M3;
    }
}

static double
crop_and_pen_default (SteadHusbandryDefault which)
{
  switch (which)
    {
    /* Greenhouse tomato review for Mexico: 3; FAO Technical Paper 589: 4. */
    case STEAD_DEFAULT_TOMATO_PLANTS:
      return 3;
    /* Weather report on degree days of tomatoes, Rochester: 1,000 to 1,800 °F-days. */
    case STEAD_DEFAULT_TOMATO_RIPE:
      return 1300 / STEAD_F_DAYS_PER_C_DAY;
    /* Usual greenhouse band 0.4 to 1.2, best near 0.8 (from memory). */
    case STEAD_DEFAULT_TOMATO_DEFICIT:
      return 0.8;
    /* Encyclopedia article on the daily light integral: 20 to 30. */
    case STEAD_DEFAULT_TOMATO_LIGHT:
      return 25;
    /* University of Florida CV216, hydroponic tomatoes: 60 to 70. */
    case STEAD_DEFAULT_TOMATO_NITROGEN:
      return 65;
    /* Oregon greenhouse tomato questions and answers: 20 to 25 pounds. */
    case STEAD_DEFAULT_TOMATO_YIELD:
      return 22 * STEAD_POUND_KG;
    /* The usual dry-matter rule is 2 to 4 (from memory); an extension figure is 2.4. */
    case STEAD_DEFAULT_EWE_HAY:
      return 3;
    /* A page on shelters for sheep and goats: 15 to 25 square feet. */
    case STEAD_DEFAULT_PEN_SHELTER:
    default:
      return 20 * SQFT_M2;
    }
}

double
stead_husbandry_default (SteadHusbandryDefault which)
{
  switch (which)
    {
    /* Trial of caged brown hens 119 g, an old college rule 113 g (both read). */
    case STEAD_DEFAULT_LAYER_FEED:
      return 115;
    case STEAD_DEFAULT_LAYER_FEED_PER_DOZEN:
      return feed_per_dozen_kg ();
    /* About two parts of water to one of feed; up to 500 mL in a smallholder's list. */
    case STEAD_DEFAULT_HEN_WATER:
      return 250;
    /* County extension column on successful backyard egg production: 14 to 16. */
    case STEAD_DEFAULT_HEN_LIGHT:
      return 15;
    /* Extension answer 257347, Ohio: 2 square feet, 4 to 5 hens a box. */
    case STEAD_DEFAULT_HEN_FLOOR:
      return 2 * SQFT_M2;
    case STEAD_DEFAULT_HENS_PER_BOX:
      return 5;
    /* A smallholder's record of one breed: about 300 quoted, 332 recorded. */
    case STEAD_DEFAULT_LAYING_DUCK_EGGS:
      return 300;
    /* Cookery reference on measuring eggs: 12 %. */
    case STEAD_DEFAULT_EGG_SHELL:
      return 12;
    case STEAD_DEFAULT_TOMATO_PLANTS:
    case STEAD_DEFAULT_TOMATO_RIPE:
    case STEAD_DEFAULT_TOMATO_DEFICIT:
    case STEAD_DEFAULT_TOMATO_LIGHT:
    case STEAD_DEFAULT_TOMATO_NITROGEN:
    case STEAD_DEFAULT_TOMATO_YIELD:
    case STEAD_DEFAULT_EWE_HAY:
    case STEAD_DEFAULT_PEN_SHELTER:
      return crop_and_pen_default (which);
    case STEAD_DEFAULT_LAY_ONSET_AGE:
    case STEAD_DEFAULT_LAY_ONSET_TO_PEAK:
    case STEAD_DEFAULT_LAY_PEAK:
    case STEAD_DEFAULT_LAY_AFTER_YEAR:
    case STEAD_DEFAULT_LAY_DECLINE:
      return lay_default (which);
    default:
      return fish_default (which);
    }
}
