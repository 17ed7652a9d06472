/* check-fish.c - the topics on fish and their tanks. */
#include "check.h"

#include "core/stead-feed.h"
#include "core/stead-fish-feed.h"
#include "core/stead-fish-growth.h"
#include "core/stead-fish-stock.h"
#include "core/stead-fish.h"
#include "core/stead-tank.h"

#include <math.h>

#define MASS "g kg lb oz"
#define VOLUME "m3 L gal cuft"
#define LENGTH "ft in cm m"

static double
grams (CheckRow   *row,
       const char *stem)
{
  return 1000 * check_base (row, stem, MASS);
}

static double
days_of (CheckRow *row)
{
  return check_has (row, "period_wk") ? 7 * check_number (row, "period_wk")
                                      : check_number (row, "period_d");
}

static SteadFishSpecies
species_of (CheckRow *row)
{
  SteadFishSpecies species = STEAD_FISH_TILAPIA;

  if (!stead_fish_species_from_id (check_text (row, "species"), &species))
    check_bad_input (row, "species");
  return species;
}

/* fish growth */

static double
degree_days (CheckRow *row)
{
  return check_base (row, "temp", "C F") * days_of (row);
}

static double
growth_tgc (CheckRow *row)
{
  return stead_fish_tgc_x100 (grams (row, "start"), grams (row, "end"), degree_days (row));
}

static double
growth_end (CheckRow *row)
{
  return stead_fish_weight_g (grams (row, "start"), check_number (row, "tgc_x100"), degree_days (row));
}

static double
growth_start (CheckRow *row)
{
  return stead_fish_start_g (grams (row, "end"), check_number (row, "tgc_x100"), degree_days (row));
}

static double
growth_degree_days (CheckRow *row)
{
  return stead_fish_degree_days_to (grams (row, "start"), grams (row, "end"),
                                    check_number (row, "tgc_x100"));
}

static double
growth_time (CheckRow *row)
{
  double temp_c = check_base (row, "temp", "C F");

  return temp_c > 0 ? growth_degree_days (row) / temp_c : NAN;
}

static double
growth_temp (CheckRow *row)
{
  double days = days_of (row);

  return days > 0 ? growth_degree_days (row) / days : NAN;
}

static double
growth_sgr (CheckRow *row)
{
  return stead_fish_sgr_pct (grams (row, "start"), grams (row, "end"), days_of (row));
}

static const CheckAsk growth_asks[] = {
  { "tgc_x100", "TGC x100", growth_tgc },
  { "end_weight", "g", growth_end },
  { "start_weight", "g", growth_start },
  { "time", "d", growth_time },
  { "temp", "C", growth_temp },
  { "sgr", "pct/d", growth_sgr },
  { NULL }
};

/* fish feed conversion */

static double
gain_kg (CheckRow *row)
{
  if (check_has_base (row, "gain", MASS))
    return check_base (row, "gain", MASS);
  return stead_fish_biomass_kg (check_number (row, "fish"), grams (row, "end") - grams (row, "start"));
}

static double
fish_fcr (CheckRow *row)
{
  double dead_kg = check_has_base (row, "dead", MASS) ? check_base (row, "dead", MASS) : 0;

  return stead_fish_fcr (check_base (row, "feed", MASS), 0, gain_kg (row), dead_kg);
}

static double
feed_for_gain (CheckRow *row)
{
  return stead_feed_for_gain (gain_kg (row), check_number (row, "fcr"));
}

static double
gain_of_feed (CheckRow *row)
{
  double fcr = check_number (row, "fcr");

  return fcr > 0 ? check_base (row, "feed", MASS) / fcr : NAN;
}

static const CheckAsk conversion_asks[] = {
  { "fcr", "1", fish_fcr },
  { "feed", "kg", feed_for_gain },
  { "gain", "kg", gain_of_feed },
  { NULL }
};

/* daily feed, biomass */

static double
biomass_kg (CheckRow *row)
{
  if (check_has_base (row, "biomass", MASS))
    return check_base (row, "biomass", MASS);
  return stead_fish_biomass_kg (check_number (row, "fish"), grams (row, "mean"));
}

static double
daily_feed (CheckRow *row)
{
  return stead_fish_daily_feed_kg (biomass_kg (row), check_frac (row, "feed_pct"));
}

static double
daily_feed_kg (CheckRow *row)
{
  return check_has (row, "feed_g_d") ? check_number (row, "feed_g_d") / 1000
                                     : check_number (row, "feed_kg_d");
}

static double
daily_feed_biomass (CheckRow *row)
{
  return stead_fish_feed_biomass_kg (daily_feed_kg (row), check_frac (row, "feed_pct"));
}

static double
daily_feed_pct (CheckRow *row)
{
  return 100 * stead_feed_conversion (daily_feed_kg (row), biomass_kg (row));
}

static const CheckAsk daily_feed_asks[] = {
  { "feed", "kg/d", daily_feed },
  { "biomass", "kg", daily_feed_biomass },
  { "feed_pct", "pct", daily_feed_pct },
  { NULL }
};

static double
volume_m3 (CheckRow *row)
{
  return check_base (row, "volume", VOLUME) / 1000;
}

static double
density_of (CheckRow *row)
{
  if (check_has (row, "density_lb_gal"))
    return check_number (row, "density_lb_gal") * STEAD_FISH_KG_M3_PER_LB_GAL;
  return check_number (row, "density_kg_m3");
}

static double
biomass_in_tank (CheckRow *row)
{
  if (check_has (row, "fish"))
    return biomass_kg (row);
  return stead_fish_biomass_in_kg (volume_m3 (row), density_of (row));
}

static double
tank_for_biomass (CheckRow *row)
{
  double density = density_of (row);

  return density > 0 ? biomass_kg (row) / density : NAN;
}

static const CheckAsk biomass_asks[] = {
  { "biomass", "kg", biomass_in_tank },
  { "volume", "m3", tank_for_biomass },
  { NULL }
};

/* winter feeding, winter weight change */

static gboolean
winter_rate (CheckRow          *row,
             SteadFishFeedRate *out_rate)
{
  SteadFishSpecies species = species_of (row);

  if (stead_fish_winter_feed (species, check_base (row, "temp", "F C"), out_rate, NULL))
    return TRUE;
  check_bad_input (row, species == STEAD_FISH_CHANNEL_CATFISH ? "temp" : "species");
  return FALSE;
}

static double
winter_pct (CheckRow *row)
{
  SteadFishFeedRate rate;

  return winter_rate (row, &rate) ? 100 * rate.frac : NAN;
}

static double
winter_interval (CheckRow *row)
{
  SteadFishFeedRate rate;

  return winter_rate (row, &rate) ? rate.interval_days : NAN;
}

static const CheckAsk winter_asks[] = {
  { "feed_pct", "pct", winter_pct },
  { "interval", "d", winter_interval },
  { NULL }
};

static double
winter_change (CheckRow *row)
{
  static const char * const words[] = { "no", "yes", NULL };
  double least = NAN;
  double most = NAN;

  if (!stead_fish_winter_change_frac (species_of (row), check_word (row, "fed", words, -1) == 1,
                                      days_of (row), &least, &most, NULL))
    return check_bad_input (row, "period_d");
  return 100 * (least + most) / 2;
}

static const CheckAsk winter_change_asks[] = {
  { "weight_change", "pct", winter_change },
  { NULL }
};

/* condition factor */

static double
length_cm (CheckRow *row)
{
  return 100 * check_base (row, "length", "cm mm in m");
}

static double
condition (CheckRow *row)
{
  return stead_fish_condition (grams (row, "weight"), length_cm (row));
}

static double
condition_weight (CheckRow *row)
{
  return stead_fish_condition_weight_g (check_number (row, "condition_k"), length_cm (row));
}

static double
condition_length (CheckRow *row)
{
  return stead_fish_condition_length_cm (check_number (row, "condition_k"), grams (row, "weight"));
}

static const CheckAsk condition_asks[] = {
  { "condition_k", "1", condition },
  { "weight", "g", condition_weight },
  { "length", "cm", condition_length },
  { NULL }
};

/* density, annual fish yield */

static double
density (CheckRow *row)
{
  if (check_has (row, "stocked_per_m3"))
    return stead_fish_harvest_density_kg_m3 (check_number (row, "stocked_per_m3"),
                                             check_frac_or (row, "survival_pct", 1),
                                             grams (row, "harvest"));
  if (check_has (row, "density_lb_gal") || check_has (row, "density_kg_m3"))
    return density_of (row);
  if (check_has_base (row, "biomass", MASS))
    {
      double water_m3 = volume_m3 (row);

      return water_m3 > 0 ? biomass_kg (row) / water_m3 : NAN;
    }
  return stead_fish_density_kg_m3 (check_number (row, "fish"), grams (row, "mean"), volume_m3 (row));
}

static double
density_us (CheckRow *row)
{
  return density (row) / STEAD_FISH_KG_M3_PER_LB_GAL;
}

static double
density_fish (CheckRow *row)
{
  return stead_fish_to_stock (volume_m3 (row), density_of (row),
                              grams (row, check_has_base (row, "harvest", MASS) ? "harvest" : "mean"),
                              check_frac_or (row, "survival_pct", 1));
}

static const CheckAsk density_asks[] = {
  { "density", "kg/m3", density },
  { "density_lb_gal", "lb/gal", density_us },
  { "fish", "count", density_fish },
  { NULL }
};

static double
annual_yield (CheckRow *row)
{
  double weeks = check_has (row, "harvest_interval_d")
                 ? check_number (row, "harvest_interval_d") / 7
                 : check_number (row, "harvest_interval_wk");

  return stead_fish_annual_yield_kg (volume_m3 (row), density_of (row), weeks);
}

static const CheckAsk annual_asks[] = {
  { "yield", "kg/y", annual_yield },
  { NULL }
};

/* tank turnover, tank volume, volume unit */

static double
turnover (CheckRow *row)
{
  return stead_tank_turnover_min (check_base (row, "volume", VOLUME),
                                  check_has (row, "flow_gal_min")
                                  ? check_number (row, "flow_gal_min") / check_from_base (1, "gal")
                                  : check_number (row, "flow_L_min"));
}

static double
turnover_flow (CheckRow *row)
{
  double minutes = check_has (row, "time_h") ? 60 * check_number (row, "time_h")
                                             : check_number (row, "time_min");

  return stead_tank_flow_l_min (check_base (row, "volume", VOLUME), minutes);
}

static const CheckAsk turnover_asks[] = {
  { "time", "min", turnover },
  { "flow", "L/min", turnover_flow },
  { NULL }
};

static double
tank_l (CheckRow *row)
{
  static const char * const shapes[] = { "rectangular", "round", "cone", NULL };
  double outlet_m = 0;

  switch (check_word (row, "shape", shapes, -1))
    {
    case 0:
      return stead_tank_box_l (check_base (row, "length", LENGTH), check_base (row, "width", LENGTH),
                               check_base (row, "depth", LENGTH));
    case 1:
      return stead_tank_round_l (check_base (row, "diameter", LENGTH), check_base (row, "depth", LENGTH));
    default:
      if (check_has_base (row, "outlet", LENGTH))
        outlet_m = check_base (row, "outlet", LENGTH);
      return stead_tank_cone_l (check_base (row, "diameter", LENGTH), check_base (row, "depth", LENGTH),
                                check_base (row, "cone_depth", LENGTH), outlet_m);
    }
}

static double
tank_gal (CheckRow *row)
{
  return check_from_base (tank_l (row), "gal");
}

static double
tank_cuft (CheckRow *row)
{
  return tank_l (row) / STEAD_TANK_CUFT_L;
}

static double
tank_m3 (CheckRow *row)
{
  return tank_l (row) / 1000;
}

static const CheckAsk tank_asks[] = {
  { "volume_L", "L", tank_l },
  { "volume_gal", "gal", tank_gal },
  { "volume_cuft", "cuft", tank_cuft },
  { "volume_m3", "m3", tank_m3 },
  { NULL }
};

static double
unit_l (CheckRow *row)
{
  return check_base (row, "volume", "gal cuft L m3");
}

static double
unit_gal (CheckRow *row)
{
  return check_from_base (unit_l (row), "gal");
}

static double
unit_cuft (CheckRow *row)
{
  return unit_l (row) / STEAD_TANK_CUFT_L;
}

static double
unit_m3 (CheckRow *row)
{
  return unit_l (row) / 1000;
}

static const CheckAsk unit_asks[] = {
  { "volume_L", "L", unit_l },
  { "volume_gal", "gal", unit_gal },
  { "volume_cuft", "cuft", unit_cuft },
  { "volume_m3", "m3", unit_m3 },
  { NULL }
};

/* fish yield, fasting loss */

static double
yield_frac (CheckRow *row)
{
  static const char * const cuts[] = { "headed_gutted_skinned", "fillet", "hand_fillet", "gutted", NULL };
  const SteadFishYield *yield =
    stead_fish_yield (species_of (row), (SteadFishCut) check_word (row, "cut", cuts, -1), NULL);

  return yield != NULL ? yield->frac : check_bad_input (row, "cut");
}

static double
yield_pct (CheckRow *row)
{
  return 100 * yield_frac (row);
}

static double
yield_product (CheckRow *row)
{
  return yield_frac (row) * check_base (row, "live", MASS);
}

static double
yield_live (CheckRow *row)
{
  return check_base (row, "product", MASS) / yield_frac (row);
}

static const CheckAsk yield_asks[] = {
  { "yield_pct", "pct", yield_pct },
  { "product", "kg", yield_product },
  { "live", "kg", yield_live },
  { NULL }
};

static double
fasted (CheckRow *row)
{
  return stead_fish_fasted_kg (check_base (row, "live", MASS), check_frac (row, "loss_pct"));
}

static const CheckAsk fasting_asks[] = {
  { "weight", "kg", fasted },
  { NULL }
};

/* tilapia temperature */

static double
tilapia_state (CheckRow *row)
{
  static const char * const words[] = {
    [STEAD_TILAPIA_DEATH] = "death",
    [STEAD_TILAPIA_SEVERE_STRESS] = "severe_stress",
    [STEAD_TILAPIA_NO_FEEDING] = "no_feeding",
    [STEAD_TILAPIA_NO_SPAWNING] = "no_spawning",
    [STEAD_TILAPIA_SUITABLE] = "suitable",
    [STEAD_TILAPIA_BEST] = "best",
  };
  g_autoptr(GError) error = NULL;
  SteadTilapiaState state;

  if (!stead_tilapia_state (check_base (row, "temp", "C F"), &state, &error))
    return check_answer_none (row, error);
  return check_answer_word (row, words[state]);
}

static const CheckAsk tilapia_asks[] = {
  { "state", "text", tilapia_state },
  { NULL }
};

#define NAMES_MASS(stem) stem "_g " stem "_kg " stem "_lb " stem "_oz "
#define NAMES_VOLUME "volume_m3 volume_L volume_gal volume_cuft "
#define NAMES_LENGTH(stem) stem "_ft " stem "_in " stem "_cm " stem "_m "

const CheckTopic check_fish_topics[] = {
  { "fish growth",
    NAMES_MASS ("start") NAMES_MASS ("end") "temp_C temp_F period_d period_wk tgc_x100", growth_asks },
  { "fish feed conversion",
    NAMES_MASS ("feed") NAMES_MASS ("gain") NAMES_MASS ("start") NAMES_MASS ("end")
    NAMES_MASS ("dead") "fish fcr", conversion_asks },
  { "daily feed",
    NAMES_MASS ("biomass") NAMES_MASS ("mean") "fish feed_pct feed_kg_d feed_g_d", daily_feed_asks },
  { "biomass",
    NAMES_VOLUME NAMES_MASS ("biomass") NAMES_MASS ("mean") "fish density_kg_m3 density_lb_gal",
    biomass_asks },
  { "winter feeding", "species temp_F temp_C", winter_asks },
  { "winter weight change", "species fed period_d period_wk", winter_change_asks },
  { "condition factor",
    NAMES_MASS ("weight") "length_cm length_mm length_in length_m condition_k", condition_asks },
  { "density",
    NAMES_VOLUME NAMES_MASS ("mean") NAMES_MASS ("harvest") NAMES_MASS ("biomass")
    "fish stocked_per_m3 survival_pct density_lb_gal density_kg_m3", density_asks },
  { "annual fish yield",
    NAMES_VOLUME "density_kg_m3 density_lb_gal harvest_interval_wk harvest_interval_d", annual_asks },
  { "tank turnover", NAMES_VOLUME "flow_L_min flow_gal_min time_min time_h", turnover_asks },
  { "tank volume",
    NAMES_LENGTH ("length") NAMES_LENGTH ("width") NAMES_LENGTH ("depth") NAMES_LENGTH ("diameter")
    NAMES_LENGTH ("cone_depth") NAMES_LENGTH ("outlet") "shape", tank_asks },
  { "volume unit", NAMES_VOLUME, unit_asks },
  { "fish yield", NAMES_MASS ("live") NAMES_MASS ("product") "species cut", yield_asks },
  { "fasting loss", NAMES_MASS ("live") "loss_pct", fasting_asks },
  { "tilapia temperature", "temp_C temp_F", tilapia_asks },
  { NULL }
};
