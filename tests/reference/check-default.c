/* check-default.c - the topic on what the program assumes until a farm's own
 * records say more.
 *
 * A row passes when the assumption lies inside the range of a handbook.
 */
#include "check.h"

#include "core/stead-husbandry.h"
#include "core/stead-quantity.h"

#include <math.h>

static const struct
{
  const char            *ask;
  SteadHusbandryDefault  which;
  const char            *unit;   /* to be shown in, if not as the core has it */
} defaults[] = {
  { "lay_onset_age", STEAD_DEFAULT_LAY_ONSET_AGE, NULL },
  { "lay_onset_to_peak", STEAD_DEFAULT_LAY_ONSET_TO_PEAK, NULL },
  { "lay_peak_hen_day", STEAD_DEFAULT_LAY_PEAK, NULL },
  { "lay_rate_after_12_months", STEAD_DEFAULT_LAY_AFTER_YEAR, NULL },
  { "lay_decline", STEAD_DEFAULT_LAY_DECLINE, NULL },
  { "layer_feed", STEAD_DEFAULT_LAYER_FEED, NULL },
  { "layer_feed_per_dozen", STEAD_DEFAULT_LAYER_FEED_PER_DOZEN, "lb" },
  { "hen_water", STEAD_DEFAULT_HEN_WATER, NULL },
  { "hen_light", STEAD_DEFAULT_HEN_LIGHT, NULL },
  { "hen_floor", STEAD_DEFAULT_HEN_FLOOR, "sqft" },
  { "hens_per_box", STEAD_DEFAULT_HENS_PER_BOX, NULL },
  { "laying_duck_eggs", STEAD_DEFAULT_LAYING_DUCK_EGGS, NULL },
  { "egg_shell", STEAD_DEFAULT_EGG_SHELL, NULL },
  { "tomato_plants", STEAD_DEFAULT_TOMATO_PLANTS, NULL },
  { "tomato_vpd", STEAD_DEFAULT_TOMATO_DEFICIT, NULL },
  { "tomato_dli", STEAD_DEFAULT_TOMATO_LIGHT, NULL },
  { "tomato_start_nitrogen", STEAD_DEFAULT_TOMATO_NITROGEN, NULL },
  { "greenhouse_tomato_yield", STEAD_DEFAULT_TOMATO_YIELD, "lb" },
  { "ewe_hay", STEAD_DEFAULT_EWE_HAY, NULL },
  { "adult_sheep_goat_shelter", STEAD_DEFAULT_PEN_SHELTER, "sqft" },
  { "trout_tgc_x100", STEAD_DEFAULT_TROUT_TGC, NULL },
  { "tilapia_fry_feed", STEAD_DEFAULT_TILAPIA_FRY_FEED, NULL },
  { "tilapia_market_feed", STEAD_DEFAULT_TILAPIA_MARKET_FEED, NULL },
  { "catfish_summer_feed", STEAD_DEFAULT_CATFISH_SUMMER_FEED, NULL },
  { "tilapia_fcr", STEAD_DEFAULT_TILAPIA_FCR, NULL },
  { "tilapia_growout_survival", STEAD_DEFAULT_TILAPIA_SURVIVAL, NULL },
  { "tilapia_best_temp", STEAD_DEFAULT_TILAPIA_TEMPERATURE, NULL },
  { "tilapia_fillet_yield", STEAD_DEFAULT_TILAPIA_FILLET, NULL },
  { "fish_fasting", STEAD_DEFAULT_FISH_FASTING, NULL },
  { "aerated_tank_max_density", STEAD_DEFAULT_TANK_DENSITY, NULL },
  { "standing_chloride", STEAD_DEFAULT_STANDING_CHLORIDE, NULL },
};

static double
husbandry_default (CheckRow *row)
{
  for (gsize i = 0; i < G_N_ELEMENTS (defaults); i++)
    if (g_str_equal (defaults[i].ask, check_ask_name (row)))
      {
        double value = stead_husbandry_default (defaults[i].which);

        return defaults[i].unit != NULL
               ? stead_quantity_from_base (value, stead_unit_by_id (defaults[i].unit)) : value;
      }
  return NAN;
}

static double
ripe_default (CheckRow *row)
{
  return 1.8 * stead_husbandry_default (STEAD_DEFAULT_TOMATO_RIPE);
}

static const CheckAsk default_asks[] = {
  { "lay_onset_age", "wk", husbandry_default },
  { "lay_onset_to_peak", "wk", husbandry_default },
  { "lay_peak_hen_day", "pct", husbandry_default },
  { "lay_rate_after_12_months", "pct", husbandry_default },
  { "lay_decline", "pct/wk", husbandry_default },
  { "layer_feed", "g/hen/d", husbandry_default },
  { "layer_feed_per_dozen", "lb/dozen", husbandry_default },
  { "hen_water", "mL/hen/d", husbandry_default },
  { "hen_light", "h/d", husbandry_default },
  { "hen_floor", "sqft/hen", husbandry_default },
  { "hens_per_box", "count", husbandry_default },
  { "laying_duck_eggs", "eggs/y", husbandry_default },
  { "egg_shell", "pct", husbandry_default },
  { "tomato_plants", "plants/m2", husbandry_default },
  { "tomato_gdd_to_ripe", "F-days", ripe_default },
  { "tomato_vpd", "kPa", husbandry_default },
  { "tomato_dli", "mol/m2/d", husbandry_default },
  { "tomato_start_nitrogen", "ppm", husbandry_default },
  { "greenhouse_tomato_yield", "lb/plant/y", husbandry_default },
  { "ewe_hay", "pct/d", husbandry_default },
  { "adult_sheep_goat_shelter", "sqft/head", husbandry_default },
  { "trout_tgc_x100", "TGC x100", husbandry_default },
  { "tilapia_fry_feed", "pct/d", husbandry_default },
  { "tilapia_market_feed", "pct/d", husbandry_default },
  { "catfish_summer_feed", "pct/d", husbandry_default },
  { "tilapia_fcr", "1", husbandry_default },
  { "tilapia_growout_survival", "pct", husbandry_default },
  { "tilapia_best_temp", "C", husbandry_default },
  { "tilapia_fillet_yield", "pct", husbandry_default },
  { "fish_fasting", "d", husbandry_default },
  { "aerated_tank_max_density", "kg/m3", husbandry_default },
  { "standing_chloride", "mg/L", husbandry_default },
  { NULL }
};

const CheckTopic check_default_topics[] = {
  { "husbandry default", "", default_asks },
  { NULL }
};
