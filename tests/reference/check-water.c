/* check-water.c - the topics on water and on beds that fish feed. */
#include "check.h"

#include "core/stead-aquaponics.h"
#include "core/stead-fish-feed.h"
#include "core/stead-nitrogen.h"
#include "core/stead-water-dose.h"
#include "core/stead-water-limit.h"
#include "core/stead-water.h"

#include <math.h>

#define MASS "g kg lb oz"
#define VOLUME "L m3 gal cuft"
#define SQFT_M2 0.09290304
#define CUFT_M3 0.028316846592

static double
temp_c (CheckRow *row)
{
  return check_base (row, "temp", "C F");
}

/* un-ionised ammonia, ammonia warning */

static double
fraction (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double frac;

  if (!stead_water_nh3_frac (temp_c (row), check_number (row, "pH"), &frac, &error))
    return check_answer_none (row, error);
  return frac;
}

static double
fraction_pct (CheckRow *row)
{
  return 100 * fraction (row);
}

static double
pka (CheckRow *row)
{
  return stead_water_pka (temp_c (row));
}

/* Un-ionised ammonia as N, from what is given. */
static double
nh3n (CheckRow *row)
{
  if (check_has (row, "nh3n_mgL"))
    return check_number (row, "nh3n_mgL");
  if (check_has (row, "nh3_mgL"))
    return stead_water_n_from_nh3 (check_number (row, "nh3_mgL"));
  if (check_has (row, "nh4_mgL"))
    return fraction (row) * stead_water_n_from_nh4 (check_number (row, "nh4_mgL"));
  return fraction (row) * check_number (row, "tan_mgL");
}

static double
nh3 (CheckRow *row)
{
  return stead_water_nh3_from_n (nh3n (row));
}

static double
tan_mgl (CheckRow *row)
{
  if (check_has (row, "nh4_mgL"))
    return stead_water_n_from_nh4 (check_number (row, "nh4_mgL"));
  if (check_has (row, "tan_mgL"))
    return check_number (row, "tan_mgL");
  return nh3n (row) / fraction (row);
}

static double
nh4 (CheckRow *row)
{
  return stead_water_nh4_from_n (tan_mgl (row));
}

static const CheckAsk ammonia_asks[] = {
  { "fraction", "1", fraction },
  { "fraction_pct", "pct", fraction_pct },
  { "pKa", "1", pka },
  { "nh3n", "mg/L", nh3n },
  { "nh3", "mg/L", nh3 },
  { "nh4", "mg/L", nh4 },
  { "tan", "mg/L", tan_mgl },
  { NULL }
};

static double
ammonia_level (CheckRow *row)
{
  static const char * const words[] = {
    [STEAD_AMMONIA_OK] = "ok",
    [STEAD_AMMONIA_HARM] = "harm",
    [STEAD_AMMONIA_DEATH] = "death",
  };
  double mgl = nh3n (row);

  return mgl >= 0 ? check_answer_word (row, words[stead_ammonia_level (mgl)]) : NAN;
}

static const CheckAsk warning_asks[] = {
  { "level", "text", ammonia_level },
  { NULL }
};

/* tan production, biofilter */

static double
tan_made (CheckRow *row)
{
  static const char * const rules[] = { "feed_protein", "srac282_mean", NULL };

  if (check_word (row, "rule", rules, 0) == 1)
    return stead_nitrogen_tan_of_fish_g (check_base (row, "fish", MASS));
  return stead_nitrogen_tan_g (1000 * check_base (row, "feed", MASS), check_frac (row, "protein_pct"));
}

static const CheckAsk tan_asks[] = {
  { "tan", "g/d", tan_made },
  { NULL }
};

static double
removal_g_m2 (CheckRow *row)
{
  return check_has (row, "removal_g_m2_d") ? check_number (row, "removal_g_m2_d")
                                           : check_number (row, "removal_g_sqft_d") / SQFT_M2;
}

static double
media_m2_m3 (CheckRow *row)
{
  return check_has (row, "media_m2_m3") ? check_number (row, "media_m2_m3")
                                        : check_number (row, "media_sqft_cuft") * SQFT_M2 / CUFT_M3;
}

static double
filter_m2 (CheckRow *row)
{
  return stead_biofilter_area_m2 (check_number (row, "tan_g_d"), removal_g_m2 (row));
}

static double
filter_sqft (CheckRow *row)
{
  return filter_m2 (row) / SQFT_M2;
}

static double
filter_removal (CheckRow *row)
{
  return stead_biofilter_removal_g_m3 (media_m2_m3 (row), removal_g_m2 (row)) * CUFT_M3;
}

static double
filter_volume (CheckRow *row)
{
  return check_from_base (stead_biofilter_volume_l (filter_m2 (row), media_m2_m3 (row)), "cuft");
}

static double
filter_flow_day (CheckRow *row)
{
  return stead_biofilter_flow_l_day (check_number (row, "tan_g_d"), check_number (row, "limit_mgL"),
                                     check_frac_or (row, "removal_pct", 1));
}

static double
filter_flow_min (CheckRow *row)
{
  return filter_flow_day (row) / 1440;
}

static double
filter_flow_gal (CheckRow *row)
{
  return check_from_base (filter_flow_min (row), "gal");
}

static const CheckAsk filter_asks[] = {
  { "area", "sqft", filter_sqft },
  { "area_m2", "m2", filter_m2 },
  { "removal_per_volume", "g/cuft/d", filter_removal },
  { "volume", "cuft", filter_volume },
  { "flow_L_d", "L/d", filter_flow_day },
  { "flow_L_min", "L/min", filter_flow_min },
  { "flow_gal_min", "gal/min", filter_flow_gal },
  { NULL }
};

/* oxygen saturation, barometric pressure */

static double
pressure_kpa (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double kpa;

  if (!stead_water_pressure_kpa (check_base (row, "elevation", "m ft"), &kpa, &error))
    return check_answer_none (row, error);
  return kpa;
}

static double
pressure_mmhg (CheckRow *row)
{
  return pressure_kpa (row) / STEAD_WATER_ATM_KPA * STEAD_WATER_ATM_MMHG;
}

static const CheckAsk pressure_asks[] = {
  { "pressure_kPa", "kPa", pressure_kpa },
  { "pressure_mmHg", "mmHg", pressure_mmhg },
  { NULL }
};

static double
air_kpa (CheckRow *row)
{
  if (check_has_base (row, "elevation", "m ft"))
    return pressure_kpa (row);
  if (check_has (row, "pressure_kPa"))
    return check_number (row, "pressure_kPa");
  return check_number_or (row, "pressure_mmHg", STEAD_WATER_ATM_MMHG) / STEAD_WATER_ATM_MMHG
         * STEAD_WATER_ATM_KPA;
}

static double
saturation (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double mgl;

  if (!stead_water_oxygen_mgl (temp_c (row), check_number_or (row, "salinity_g_kg", 0),
                               air_kpa (row), &mgl, &error))
    return check_answer_none (row, error);
  return mgl;
}

static double
saturation_pct (CheckRow *row)
{
  return 100 * check_number (row, "do_mgL") / saturation (row);
}

static double
saturation_part (CheckRow *row)
{
  return check_frac (row, "saturation_pct") * saturation (row);
}

static const CheckAsk oxygen_asks[] = {
  { "saturation", "mg/L", saturation },
  { "percent", "pct", saturation_pct },
  { "do", "mg/L", saturation_part },
  { NULL }
};

/* water range, water warning */

static SteadWaterSharers
organism_of (CheckRow *row)
{
  static const char * const words[] = {
    "warm_fish", "cold_fish", "plants", "bacteria", "aquaponics", NULL,
  };
  static const SteadWaterSharers flags[] = {
    STEAD_WATER_WARM_FISH, STEAD_WATER_COLD_FISH, STEAD_WATER_PLANTS, STEAD_WATER_BACTERIA,
    STEAD_WATER_TOGETHER,
  };

  return flags[check_word (row, "organism", words, -1)];
}

/* The asks are min_ or max_ and the name of a measure. */
static double
range_end (CheckRow *row)
{
  static const struct { const char *name; SteadWaterMeasure measure; } measures[] = {
    { "temp", STEAD_WATER_TEMPERATURE }, { "pH", STEAD_WATER_PH }, { "do", STEAD_WATER_OXYGEN },
    { "nitrate", STEAD_WATER_NITRATE }, { "nitrite", STEAD_WATER_NITRITE },
    { "ammonia", STEAD_WATER_TAN },
  };
  const char *ask = check_ask_name (row);
  SteadWaterSharers organism = organism_of (row);
  const SteadWaterLimit *limit = NULL;
  double end = NAN;

  for (gsize i = 0; i < G_N_ELEMENTS (measures); i++)
    if (g_str_equal (ask + 4, measures[i].name))
      limit = stead_water_range (organism, measures[i].measure);
  if (limit != NULL)
    end = g_str_has_prefix (ask, "min_") ? limit->min : limit->max;
  return isnan (end) ? check_bad_input (row, "organism") : end;
}

static const CheckAsk range_asks[] = {
  { "min_temp", "C", range_end },
  { "max_temp", "C", range_end },
  { "min_pH", "pH", range_end },
  { "max_pH", "pH", range_end },
  { "min_do", "mg/L", range_end },
  { "max_do", "mg/L", range_end },
  { "min_nitrate", "mg/L", range_end },
  { "max_nitrate", "mg/L", range_end },
  { "max_nitrite", "mg/L", range_end },
  { "max_ammonia", "mg/L", range_end },
  { NULL }
};

static double
warn (CheckRow *row)
{
  static const struct { const char *stem, *units; SteadWaterMeasure measure; } readings[] = {
    { "temp", "C F", STEAD_WATER_TEMPERATURE },
    { "pH", NULL, STEAD_WATER_PH },
    { "do_mgL", NULL, STEAD_WATER_OXYGEN },
    { "nitrite_mgL", NULL, STEAD_WATER_NITRITE },
    { "nitrate_mgL", NULL, STEAD_WATER_NITRATE },
    { "ammonia_mgL", NULL, STEAD_WATER_TAN },
  };
  SteadWaterSharers organism = organism_of (row);
  gsize found = G_N_ELEMENTS (readings);
  const SteadWaterLimit *limit;
  double value;

  for (gsize i = 0; i < G_N_ELEMENTS (readings); i++)
    if (readings[i].units != NULL ? check_has_base (row, readings[i].stem, readings[i].units)
                                  : check_has (row, readings[i].stem))
      {
        if (found < G_N_ELEMENTS (readings))
          check_bad_input (row, readings[i].stem);
        found = i;
      }
  if (found == G_N_ELEMENTS (readings))
    return check_bad_input (row, "reading");
  value = readings[found].units != NULL
          ? check_base (row, readings[found].stem, readings[found].units)
          : check_number (row, readings[found].stem);
  limit = stead_water_range (organism, readings[found].measure);
  if (limit == NULL)
    return check_bad_input (row, "organism");
  return check_answer_word (row, stead_water_outside (limit, value, NULL) ? "yes" : "no");
}

static const CheckAsk warn_asks[] = {
  { "warn", "text", warn },
  { NULL }
};

/* buffer per feed, alkalinity use, alkalinity dose, nitrite salt */

static SteadBase
base_of (CheckRow *row)
{
  SteadBase base = STEAD_BASE_NAHCO3;

  if (!stead_base_from_id (check_text (row, "buffer"), &base))
    check_bad_input (row, "buffer");
  return base;
}

static double
buffer_for_feed (CheckRow *row)
{
  static const char * const systems[] = { "planted", "fish_only", NULL };
  double amount_g = stead_base_for_feed_g (base_of (row), check_base (row, "feed", MASS),
                                           check_word (row, "system", systems, -1) == 0);

  return isnan (amount_g) ? check_bad_input (row, "buffer") : amount_g;
}

static const CheckAsk buffer_asks[] = {
  { "amount", "g", buffer_for_feed },
  { NULL }
};

static double
alkalinity_used (CheckRow *row)
{
  return stead_nitrogen_alkalinity_g (1000 * check_base (row, "tan", MASS));
}

static const CheckAsk alkalinity_use_asks[] = {
  { "caco3", "g", alkalinity_used },
  { NULL }
};

static double
alkalinity_dose (CheckRow *row)
{
  return stead_base_dose_g (base_of (row), check_base (row, "volume", VOLUME),
                            check_number (row, "raise_mgL"));
}

static double
alkalinity_raise (CheckRow *row)
{
  return stead_base_raise_mgl (base_of (row), check_base (row, "volume", VOLUME),
                               1000 * check_base (row, "amount", MASS));
}

static const CheckAsk alkalinity_dose_asks[] = {
  { "amount", "g", alkalinity_dose },
  { "raise", "mg/L", alkalinity_raise },
  { NULL }
};

static double
chloride_need (CheckRow *row)
{
  return stead_water_chloride_need_mgl (check_number (row, "nitrite_mgL"),
                                        check_number (row, "chloride_ratio"));
}

static double
salt_concentration (CheckRow *row)
{
  return stead_water_salt_mgl (chloride_need (row));
}

static double
salt_weight (CheckRow *row)
{
  return stead_water_salt_dose_g (check_number (row, "nitrite_mgL"), check_number (row, "chloride_ratio"),
                                  check_number_or (row, "chloride_mgL", 0),
                                  check_base (row, "volume", VOLUME));
}

static const CheckAsk salt_asks[] = {
  { "min_chloride", "mg/L", chloride_need },
  { "salt_conc", "mg/L", salt_concentration },
  { "salt_weight", "g", salt_weight },
  { NULL }
};

/* bed feed */

static void
bed_rates (CheckRow *row,
           double   *out_min,
           double   *out_max)
{
  static const char * const rules[] = { "fao_589", "uvi_raft", NULL };
  static const char * const crops[] = { "leafy", "fruiting", NULL };
  SteadBed bed = STEAD_BED_RAFT;

  if (check_word (row, "rule", rules, 0) == 0)
    bed = check_word (row, "crop", crops, -1) == 0 ? STEAD_BED_LEAFY : STEAD_BED_FRUITING;
  stead_bed_feed_rate (bed, out_min, out_max);
}

static double
bed_feed_least (CheckRow *row)
{
  double least;
  double most;

  bed_rates (row, &least, &most);
  return stead_bed_feed_g (check_base (row, "area", "m2 sqft"), least);
}

static double
bed_feed_most (CheckRow *row)
{
  double least;
  double most;

  bed_rates (row, &least, &most);
  return stead_bed_feed_g (check_base (row, "area", "m2 sqft"), most);
}

static double
bed_feed_g_day (CheckRow *row)
{
  return check_has (row, "feed_lb_d") ? check_number (row, "feed_lb_d") / check_from_base (0.001, "lb")
         : check_has (row, "feed_kg_d") ? 1000 * check_number (row, "feed_kg_d")
                                        : check_number (row, "feed_g_d");
}

static double
bed_area (CheckRow *row)
{
  return stead_bed_area_m2 (bed_feed_g_day (row), check_number (row, "feed_rate_g_m2_d"));
}

static double
bed_area_least (CheckRow *row)
{
  double least;
  double most;

  bed_rates (row, &least, &most);
  return stead_bed_area_m2 (bed_feed_g_day (row), most);
}

static double
bed_area_most (CheckRow *row)
{
  double least;
  double most;

  bed_rates (row, &least, &most);
  return stead_bed_area_m2 (bed_feed_g_day (row), least);
}

static double
bed_biomass (CheckRow *row)
{
  return stead_fish_feed_biomass_kg (bed_feed_g_day (row) / 1000, check_frac (row, "feed_pct"));
}

static const CheckAsk bed_asks[] = {
  { "min_feed", "g/d", bed_feed_least },
  { "max_feed", "g/d", bed_feed_most },
  { "area", "m2", bed_area },
  { "min_area", "m2", bed_area_least },
  { "max_area", "m2", bed_area_most },
  { "biomass", "kg", bed_biomass },
  { NULL }
};

#define NAMES_MASS(stem) stem "_g " stem "_kg " stem "_lb " stem "_oz "
#define NAMES_VOLUME "volume_L volume_m3 volume_gal volume_cuft "
#define NAMES_AMMONIA "temp_C temp_F pH tan_mgL nh4_mgL nh3_mgL nh3n_mgL"

const CheckTopic check_water_topics[] = {
  { "un-ionised ammonia", NAMES_AMMONIA, ammonia_asks },
  { "ammonia warning", NAMES_AMMONIA, warning_asks },
  { "tan production", NAMES_MASS ("feed") NAMES_MASS ("fish") "protein_pct rule", tan_asks },
  { "biofilter",
    "tan_g_d removal_g_sqft_d removal_g_m2_d media_sqft_cuft media_m2_m3 limit_mgL removal_pct",
    filter_asks },
  { "oxygen saturation",
    "temp_C temp_F salinity_g_kg pressure_mmHg pressure_kPa elevation_m elevation_ft do_mgL "
    "saturation_pct", oxygen_asks },
  { "barometric pressure", "elevation_m elevation_ft", pressure_asks },
  { "water range", "organism", range_asks },
  { "water warning",
    "organism temp_C temp_F pH do_mgL nitrite_mgL nitrate_mgL ammonia_mgL", warn_asks },
  { "buffer per feed", NAMES_MASS ("feed") "buffer system", buffer_asks },
  { "alkalinity use", NAMES_MASS ("tan"), alkalinity_use_asks },
  { "alkalinity dose", NAMES_VOLUME NAMES_MASS ("amount") "raise_mgL buffer", alkalinity_dose_asks },
  { "nitrite salt", NAMES_VOLUME "nitrite_mgL chloride_ratio chloride_mgL", salt_asks },
  { "bed feed",
    "area_m2 area_sqft rule crop feed_g_d feed_kg_d feed_lb_d feed_rate_g_m2_d feed_pct", bed_asks },
  { NULL }
};
