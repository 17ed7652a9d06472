/* stead-water-limit.c - the table of limits: what fish, plants and bacteria bear. */
#include "config.h"

#include "core/stead-round.h"
#include "core/stead-water-limit.h"

#include <math.h>

#define WARM STEAD_WATER_WARM_FISH
#define COLD STEAD_WATER_COLD_FISH
#define PLANTS STEAD_WATER_PLANTS
#define BACTERIA STEAD_WATER_BACTERIA
#define TOGETHER STEAD_WATER_TOGETHER
#define OUT_MIN STEAD_WATER_LIMIT_MIN_OUT
#define OUT_MAX STEAD_WATER_LIMIT_MAX_OUT
#define LOW_ONLY STEAD_WATER_LIMIT_LOW_ONLY
#define SHOWN_ONLY STEAD_WATER_LIMIT_SHOWN_ONLY

/* Short names for columns that repeat. */
#define FAO STEAD_SOURCE_FAO_589_RANGES
#define PRACTICE STEAD_SOURCE_PRACTICE
#define HEAT STEAD_WATER_ACTION_COLD, STEAD_WATER_ACTION_WARM
#define PH_MOVE STEAD_WATER_ACTION_PH_LOW, STEAD_WATER_ACTION_PH_HIGH
#define AMMONIA STEAD_WATER_ACTION_NONE, STEAD_WATER_ACTION_AMMONIA
#define NITRITE STEAD_WATER_ACTION_NONE, STEAD_WATER_ACTION_NITRITE
#define NITRATE STEAD_WATER_ACTION_NITRATE_LOW, STEAD_WATER_ACTION_NITRATE_HIGH
#define AIR STEAD_WATER_ACTION_OXYGEN, STEAD_WATER_ACTION_GAS
#define BASE_LOW STEAD_WATER_ACTION_ALKALINITY_LOW, STEAD_WATER_ACTION_NONE
#define HARD_LOW STEAD_WATER_ACTION_HARDNESS_LOW, STEAD_WATER_ACTION_NONE
#define SALTS STEAD_WATER_ACTION_NONE, STEAD_WATER_ACTION_SALTS_HIGH
#define CHLORINE STEAD_WATER_ACTION_NONE, STEAD_WATER_ACTION_CHLORINE
#define CHLORIDE STEAD_WATER_ACTION_CHLORIDE_LOW, STEAD_WATER_ACTION_SALTS_HIGH

/* Species before their kind, fish before plants.  Whose, measure, published
 * range, act below and above, traits, sources, actions. */
static const SteadWaterLimit limits[] = {
  /* Temperature.  Tilapia: slow under 20 °C, no feeding under 15, deadly at 12;
   * 36 is their upper end in FAO 589, table 7.1. */
  { STEAD_WATER_TILAPIA, STEAD_WATER_TEMPERATURE, 20, 32, 15, 36, 0,
    STEAD_SOURCE_TILAPIA_TEMPERATURES, STEAD_SOURCE_TILAPIA_TEMPERATURES, HEAT },
  /* Catfish winter under 21 °C (70 °F) by a feeding table of their own. */
  { STEAD_WATER_CHANNEL_CATFISH, STEAD_WATER_TEMPERATURE, 21, 32, 5, 34, 0,
    STEAD_SOURCE_CATFISH_HATCHERY, STEAD_SOURCE_FAO_589_SPECIES, HEAT },
  { STEAD_WATER_RAINBOW_TROUT, STEAD_WATER_TEMPERATURE, 10, 18, NAN, 20, 0, FAO, PRACTICE, HEAT },
  { WARM, STEAD_WATER_TEMPERATURE, 22, 32, 12, 36, 0,
    FAO, STEAD_SOURCE_TILAPIA_TEMPERATURES, HEAT },
  { COLD, STEAD_WATER_TEMPERATURE, 10, 18, NAN, 20, 0, FAO, PRACTICE, HEAT },
  { TOGETHER, STEAD_WATER_TEMPERATURE, 18, 30, NAN, NAN, 0, FAO, FAO, HEAT },
  { PLANTS, STEAD_WATER_TEMPERATURE, 16, 30, NAN, NAN, 0, FAO, FAO, HEAT },
  { BACTERIA, STEAD_WATER_TEMPERATURE, 14, 34, NAN, NAN, 0, FAO, FAO, HEAT },

  /* pH.  UVI holds 7.0 in water that FAO wants at 6 to 7: our band has both in it.
   * Under 6 the filter stalls. */
  { WARM, STEAD_WATER_PH, 6, 8.5, 5, 9, 0, FAO, PRACTICE, PH_MOVE },
  { COLD, STEAD_WATER_PH, 6, 8.5, 5, 9, 0, FAO, PRACTICE, PH_MOVE },
  { TOGETHER, STEAD_WATER_PH, 6.4, 7.4, 6, 8.5, 0, PRACTICE, FAO, PH_MOVE },
  { TOGETHER, STEAD_WATER_PH, 6, 7, NAN, NAN, SHOWN_ONLY, FAO, FAO, PH_MOVE },
  { PLANTS, STEAD_WATER_PH, 5.5, 7.5, NAN, NAN, 0, FAO, FAO, PH_MOVE },
  { BACTERIA, STEAD_WATER_PH, 6, 8.5, 6, NAN, 0, FAO, FAO, PH_MOVE },

  /* Total ammonia. */
  { WARM, STEAD_WATER_TAN, NAN, 3, NAN, NAN, OUT_MAX, FAO, FAO, AMMONIA },
  { COLD, STEAD_WATER_TAN, NAN, 1, NAN, NAN, OUT_MAX, FAO, FAO, AMMONIA },
  { TOGETHER, STEAD_WATER_TAN, NAN, 1, NAN, NAN, OUT_MAX, FAO, FAO, AMMONIA },
  { PLANTS, STEAD_WATER_TAN, NAN, 30, NAN, NAN, OUT_MAX, FAO, FAO, AMMONIA },
  { BACTERIA, STEAD_WATER_TAN, NAN, 3, NAN, NAN, OUT_MAX, FAO, FAO, AMMONIA },

  /* Un-ionised ammonia: harm above 0.05; fry and trout bear half. */
  { STEAD_WATER_FRY, STEAD_WATER_NH3N, NAN, 0.01, NAN, 0.02, OUT_MAX,
    PRACTICE, PRACTICE, AMMONIA },
  { COLD, STEAD_WATER_NH3N, NAN, 0.01, NAN, 0.02, OUT_MAX, PRACTICE, PRACTICE, AMMONIA },
  { WARM, STEAD_WATER_NH3N, NAN, 0.02, NAN, 0.05, OUT_MAX,
    PRACTICE, STEAD_SOURCE_FLORIDA_FA16, AMMONIA },

  /* Nitrite; what it does hangs on the chloride, see stead_water_judge(). */
  { COLD, STEAD_WATER_NITRITE, NAN, 0.1, NAN, 1, OUT_MAX, FAO, PRACTICE, NITRITE },
  { WARM, STEAD_WATER_NITRITE, NAN, 1, NAN, 5, OUT_MAX, FAO, PRACTICE, NITRITE },
  { TOGETHER, STEAD_WATER_NITRITE, NAN, 1, NAN, NAN, OUT_MAX, FAO, FAO, NITRITE },
  { PLANTS, STEAD_WATER_NITRITE, NAN, 1, NAN, NAN, OUT_MAX, FAO, FAO, NITRITE },
  { BACTERIA, STEAD_WATER_NITRITE, NAN, 1, NAN, NAN, OUT_MAX, FAO, FAO, NITRITE },

  /* Nitrate. */
  { WARM, STEAD_WATER_NITRATE, NAN, 400, NAN, NAN, OUT_MAX, FAO, FAO, NITRATE },
  { COLD, STEAD_WATER_NITRATE, NAN, 400, NAN, NAN, OUT_MAX, FAO, FAO, NITRATE },
  { TOGETHER, STEAD_WATER_NITRATE, 5, 150, NAN, NAN, 0, FAO, FAO, NITRATE },

  /* Oxygen: FAO has warm fish from 4; at 5 one can still act in time. */
  { COLD, STEAD_WATER_OXYGEN, 6, 8, 5, NAN, LOW_ONLY, FAO, PRACTICE, AIR },
  { WARM, STEAD_WATER_OXYGEN, 5, NAN, 3, NAN, 0, PRACTICE, PRACTICE, AIR },
  { WARM, STEAD_WATER_OXYGEN, 4, 6, NAN, NAN, LOW_ONLY | SHOWN_ONLY, FAO, FAO, AIR },
  { TOGETHER, STEAD_WATER_OXYGEN, 5, NAN, 3, NAN, OUT_MIN, FAO, PRACTICE, AIR },
  { PLANTS, STEAD_WATER_OXYGEN, 3, NAN, NAN, NAN, OUT_MIN, FAO, FAO, AIR },
  { BACTERIA, STEAD_WATER_OXYGEN, 4, 8, 2, NAN, LOW_ONLY, FAO, PRACTICE, AIR },

  /* Share of oxygen: 5 and 3 mg/L are about these shares at 28 °C; above, gas
   * comes out in the fish. */
  { WARM, STEAD_WATER_OXYGEN_SHARE, 0.6, 1.1, 0.4, 1.25, 0, PRACTICE, PRACTICE, AIR },
  { COLD, STEAD_WATER_OXYGEN_SHARE, 0.7, 1.1, 0.5, 1.25, 0, PRACTICE, PRACTICE, AIR },

  /* Alkalinity and hardness. */
  { WARM, STEAD_WATER_ALKALINITY, 50, NAN, 20, NAN, 0, PRACTICE, PRACTICE, BASE_LOW },
  { COLD, STEAD_WATER_ALKALINITY, 50, NAN, 20, NAN, 0, PRACTICE, PRACTICE, BASE_LOW },
  { BACTERIA, STEAD_WATER_ALKALINITY, 50, NAN, 20, NAN, 0, PRACTICE, PRACTICE, BASE_LOW },
  { WARM, STEAD_WATER_HARDNESS, 20, NAN, NAN, NAN, 0, PRACTICE, PRACTICE, HARD_LOW },
  { COLD, STEAD_WATER_HARDNESS, 20, NAN, NAN, NAN, 0, PRACTICE, PRACTICE, HARD_LOW },

  /* Salts: 3 dS/m and 10 meq/L of chloride (355 mg/L) are severe for crops, 4 meq/L
   * (142 mg/L) where care begins. */
  { PLANTS, STEAD_WATER_CONDUCTIVITY, NAN, 1500, NAN, 3000, 0,
    STEAD_SOURCE_FAO_589_SALTS, STEAD_SOURCE_FAO_29, SALTS },
  { PLANTS, STEAD_WATER_CHLORIDE, NAN, 142, NAN, 355, 0,
    STEAD_SOURCE_FAO_29, STEAD_SOURCE_FAO_29, CHLORIDE },
  { STEAD_WATER_CHANNEL_CATFISH, STEAD_WATER_CHLORIDE, 100, NAN, NAN, NAN, 0,
    STEAD_SOURCE_SRAC_462, STEAD_SOURCE_SRAC_462, CHLORIDE },

  /* Chlorine: the criteria for long and for short times. */
  { WARM, STEAD_WATER_CHLORINE, NAN, 0.011, NAN, 0.019, 0,
    STEAD_SOURCE_EPA_CHLORINE, STEAD_SOURCE_EPA_CHLORINE, CHLORINE },
  { COLD, STEAD_WATER_CHLORINE, NAN, 0.011, NAN, 0.019, 0,
    STEAD_SOURCE_EPA_CHLORINE, STEAD_SOURCE_EPA_CHLORINE, CHLORINE },
};

/* Readings that can be, and why not below and above. */
static const struct
{
  double           min;
  double           max;
  SteadWaterReason low;
  SteadWaterReason high;
} possible[STEAD_N_WATER_MEASURES] = {
  [STEAD_WATER_TEMPERATURE] = { 0, 45, STEAD_WATER_REASON_ICE, STEAD_WATER_REASON_HOT },
  [STEAD_WATER_PH] = { 0, 14, STEAD_WATER_REASON_PH_SCALE, STEAD_WATER_REASON_PH_SCALE },
  [STEAD_WATER_TAN] = { 0, 200, STEAD_WATER_REASON_NEGATIVE, STEAD_WATER_REASON_SLIP },
  [STEAD_WATER_NH3N] = { 0, 100, STEAD_WATER_REASON_NEGATIVE, STEAD_WATER_REASON_SLIP },
  [STEAD_WATER_NITRITE] = { 0, 200, STEAD_WATER_REASON_NEGATIVE, STEAD_WATER_REASON_SLIP },
  [STEAD_WATER_NITRATE] = { 0, 5000, STEAD_WATER_REASON_NEGATIVE, STEAD_WATER_REASON_SLIP },
  /* Twice what water holds at 0 °C, and more than bright algae reach. */
  [STEAD_WATER_OXYGEN] = { 0, 30, STEAD_WATER_REASON_NEGATIVE, STEAD_WATER_REASON_OXYGEN },
  [STEAD_WATER_OXYGEN_SHARE] = { 0, 3, STEAD_WATER_REASON_NEGATIVE, STEAD_WATER_REASON_OXYGEN },
  [STEAD_WATER_ALKALINITY] = { 0, 2000, STEAD_WATER_REASON_NEGATIVE, STEAD_WATER_REASON_SLIP },
  /* The sea: hardness 6,600 mg/L, 53,000 µS/cm at 25 °C, chloride 19,400 mg/L. */
  [STEAD_WATER_HARDNESS] = { 0, 7000, STEAD_WATER_REASON_NEGATIVE, STEAD_WATER_REASON_SEA },
  [STEAD_WATER_CONDUCTIVITY] = { 0, 60000, STEAD_WATER_REASON_NEGATIVE, STEAD_WATER_REASON_SEA },
  [STEAD_WATER_CHLORINE] = { 0, 20, STEAD_WATER_REASON_NEGATIVE, STEAD_WATER_REASON_SLIP },
  [STEAD_WATER_CHLORIDE] = { 0, 20000, STEAD_WATER_REASON_NEGATIVE, STEAD_WATER_REASON_SEA },
};

static gboolean
is_measure (SteadWaterMeasure measure)
{
  return (gsize) measure < G_N_ELEMENTS (possible);
}

SteadWaterSharers
stead_water_sharers_of_fish (SteadFishSpecies species)
{
  static const SteadWaterSharers flags[STEAD_N_FISH_SPECIES] = {
    [STEAD_FISH_TILAPIA] = STEAD_WATER_TILAPIA,
    [STEAD_FISH_CHANNEL_CATFISH] = STEAD_WATER_CHANNEL_CATFISH,
    [STEAD_FISH_RAINBOW_TROUT] = STEAD_WATER_RAINBOW_TROUT,
  };

  g_return_val_if_fail ((gsize) species < G_N_ELEMENTS (flags), STEAD_WATER_WARM_FISH);
  return flags[species] | (stead_fish_kind (species)->cold ? COLD : WARM);
}

SteadWaterReason
stead_water_reason (SteadWaterMeasure measure,
                    double            value)
{
  g_return_val_if_fail (is_measure (measure), STEAD_WATER_POSSIBLE);

  if (value < possible[measure].min)
    return possible[measure].low;
  return value > possible[measure].max ? possible[measure].high : STEAD_WATER_POSSIBLE;
}

void
stead_water_possible_range (SteadWaterMeasure  measure,
                            double            *out_min,
                            double            *out_max)
{
  g_return_if_fail (is_measure (measure));
  g_return_if_fail (out_min != NULL && out_max != NULL);

  *out_min = possible[measure].min;
  *out_max = possible[measure].max;
}

const SteadWaterLimit *
stead_water_limits (gsize *n_limits)
{
  g_return_val_if_fail (n_limits != NULL, NULL);

  *n_limits = G_N_ELEMENTS (limits);
  return limits;
}

const SteadWaterLimit *
stead_water_range (SteadWaterSharers whose,
                   SteadWaterMeasure measure)
{
  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    if (limits[i].whose == whose && limits[i].measure == measure && limits[i].source == FAO)
      return &limits[i];
  return NULL;
}

gboolean
stead_water_outside (const SteadWaterLimit *limit,
                     double                 value,
                     gboolean              *out_low)
{
  gboolean low;
  gboolean high;

  g_return_val_if_fail (limit != NULL, FALSE);

  /* Comparisons with an end that is NAN are false. */
  low = (limit->traits & OUT_MIN) != 0 ? value <= limit->min + STEAD_ROUND_NOISE
                                       : value < limit->min - STEAD_ROUND_NOISE;
  high = (limit->traits & OUT_MAX) != 0 ? value >= limit->max - STEAD_ROUND_NOISE
                                        : value > limit->max + STEAD_ROUND_NOISE;
  if ((limit->traits & LOW_ONLY) != 0)
    high = FALSE;
  if (out_low != NULL)
    *out_low = low;
  return low || high;
}
