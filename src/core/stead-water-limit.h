/* stead-water-limit.h - what fish, plants and bacteria bear, and the verdict on a reading.
 *
 * A table of limits, one row for an organism and a measure.  The published range
 * of a row is where nothing is said; outside of it is "watch"; beyond the ends at
 * which harm begins is "act".  Each row says whose limit it is.  No reading is
 * ever called safe: "ok" only means that no limit known here is passed.
 *
 * Where two sources differ the row that is stricter or nearer to practice judges,
 * and the other stands in the table to be shown (%STEAD_WATER_LIMIT_SHOWN_ONLY).
 */
#pragma once

#include "core/stead-fish.h"
#include "core/stead-source.h"

#include <math.h>

G_BEGIN_DECLS

/* Units: °C, pH, mg/L.  Total and un-ionised ammonia are as N; nitrite and
 * nitrate as NO2 and NO3, as kits print them: what is kept as nitrogen goes through
 * stead_water_no2_from_n() and stead_water_no3_from_n() first.  The share of oxygen
 * is a fraction of what the water holds; alkalinity and hardness are as CaCO3; conductivity is
 * in µS/cm; chlorine is the free and bound total. */
typedef enum
{
  STEAD_WATER_TEMPERATURE,
  STEAD_WATER_PH,
  STEAD_WATER_TAN,
  STEAD_WATER_NH3N,
  STEAD_WATER_NITRITE,
  STEAD_WATER_NITRATE,
  STEAD_WATER_OXYGEN,
  STEAD_WATER_OXYGEN_SHARE,
  STEAD_WATER_ALKALINITY,
  STEAD_WATER_HARDNESS,
  STEAD_WATER_CONDUCTIVITY,
  STEAD_WATER_CHLORINE,
  STEAD_WATER_CHLORIDE,
} SteadWaterMeasure;

#define STEAD_N_WATER_MEASURES (STEAD_WATER_CHLORIDE + 1)

/* Who shares the water; more than one is usual. */
typedef enum
{
  STEAD_WATER_WARM_FISH       = 1 << 0,
  STEAD_WATER_COLD_FISH       = 1 << 1,
  STEAD_WATER_PLANTS          = 1 << 2,
  STEAD_WATER_BACTERIA        = 1 << 3,   /* of the biofilter */
  STEAD_WATER_TOGETHER        = 1 << 4,   /* aquaponics; fish with plants imply it */
  STEAD_WATER_FRY             = 1 << 5,   /* young fish of any kind, besides their own flag */
  STEAD_WATER_TILAPIA         = 1 << 6,
  STEAD_WATER_CHANNEL_CATFISH = 1 << 7,
  STEAD_WATER_RAINBOW_TROUT   = 1 << 8,
} SteadWaterSharers;

/* What to do; the sentences are the answers'. */
typedef enum
{
  STEAD_WATER_ACTION_NONE,
  STEAD_WATER_ACTION_TEST_AGAIN,     /* the reading cannot be */
  STEAD_WATER_ACTION_OXYGEN,         /* stop feed, all air on, spare pump, test at dawn */
  STEAD_WATER_ACTION_GAS,            /* too much gas: let it out, look for a sucking pump */
  STEAD_WATER_ACTION_AMMONIA,        /* stop feed, change 20 to 30 %, do not raise the pH */
  STEAD_WATER_ACTION_NITRITE,        /* chloride, air, half feed */
  STEAD_WATER_ACTION_PH_LOW,         /* test ammonia, then base, 0.3 a day */
  STEAD_WATER_ACTION_PH_HIGH,        /* no more base, dilute, 0.3 a day */
  STEAD_WATER_ACTION_NITRATE_HIGH,   /* more bed, less feed, change water */
  STEAD_WATER_ACTION_NITRATE_LOW,    /* more feed or fewer plants */
  STEAD_WATER_ACTION_COLD,           /* heat, cover, feed by table */
  STEAD_WATER_ACTION_WARM,           /* shade, air, cooler water, less feed */
  STEAD_WATER_ACTION_ALKALINITY_LOW, /* bicarbonate by the dose sheet */
  STEAD_WATER_ACTION_HARDNESS_LOW,   /* calcium */
  STEAD_WATER_ACTION_SALTS_HIGH,     /* dilute with water of less salt */
  STEAD_WATER_ACTION_CHLORINE,       /* take no more of this water until it is free of it */
  STEAD_WATER_ACTION_CHLORIDE_LOW,   /* add salt or calcium chloride against nitrite */
} SteadWaterAction;

/* Why a reading cannot be. */
typedef enum
{
  STEAD_WATER_POSSIBLE,
  STEAD_WATER_REASON_NEGATIVE,     /* less than none */
  STEAD_WATER_REASON_ICE,          /* fresh water would be ice */
  STEAD_WATER_REASON_HOT,          /* hotter than any fish water: degrees Fahrenheit? */
  STEAD_WATER_REASON_PH_SCALE,     /* the scale goes from 0 to 14 */
  STEAD_WATER_REASON_OXYGEN,       /* water does not take up so much */
  STEAD_WATER_REASON_SEA,          /* saltier than the sea */
  STEAD_WATER_REASON_SLIP,         /* far beyond farm water: point or unit? */
} SteadWaterReason;

typedef enum
{
  STEAD_WATER_LIMIT_MIN_OUT    = 1 << 0,   /* the printed ">": the least end is outside */
  STEAD_WATER_LIMIT_MAX_OUT    = 1 << 1,   /* the printed "<": the upper end is outside */
  STEAD_WATER_LIMIT_LOW_ONLY   = 1 << 2,   /* the upper end is no limit: more does no harm */
  STEAD_WATER_LIMIT_SHOWN_ONLY = 1 << 3,   /* published, but another row judges */
} SteadWaterLimitTraits;

/* One row. */
typedef struct
{
  SteadWaterSharers     whose;        /* one flag */
  SteadWaterMeasure     measure;
  double                min;          /* published range; NAN: no end */
  double                max;
  double                act_below;    /* harm begins; NAN: not known */
  double                act_above;
  SteadWaterLimitTraits traits;
  SteadSource           source;       /* of the range */
  SteadSource           act_source;   /* of the ends at which harm begins */
  SteadWaterAction      low_action;
  SteadWaterAction      high_action;
} SteadWaterLimit;

typedef enum
{
  STEAD_WATER_UNKNOWN,     /* no limit is known, or nothing was read */
  STEAD_WATER_OK,
  STEAD_WATER_WATCH,
  STEAD_WATER_ACT,
  STEAD_WATER_IMPOSSIBLE,
} SteadWaterVerdict;

/* What else was read of the same water; NAN where nothing was. */
typedef struct
{
  double temp_c;
  double ph;
  double chloride_mgl;
} SteadWaterContext;

#define STEAD_WATER_CONTEXT_NONE { NAN, NAN, NAN }

/* The verdict on one reading. */
typedef struct
{
  SteadWaterVerdict      verdict;
  const SteadWaterLimit *limit;     /* the row that decided; NULL if none did */
  SteadWaterMeasure      measure;   /* what that row measures: un-ionised ammonia may decide on TAN */
  double                 value;     /* of that measure */
  gboolean               low;       /* it is too little, not too much */
  gboolean               chloride_short;   /* nitrite: less than 10 parts of chloride to it */
  SteadWaterAction       action;
  SteadWaterReason       reason;    /* of an impossible reading */
} SteadWaterJudgement;

/**
 * stead_water_sharers_of_fish: the flags of a species and of its kind
 */
SteadWaterSharers stead_water_sharers_of_fish (SteadFishSpecies species);

/**
 * stead_water_reason:
 * @measure: what was read
 * @value: the reading
 *
 * The ranges go far beyond what anything bears: they catch a lost point, a
 * Fahrenheit thermometer, a wrong column.
 *
 * Returns: why the reading cannot be, or %STEAD_WATER_POSSIBLE
 */
SteadWaterReason stead_water_reason (SteadWaterMeasure measure,
                                     double            value);

/**
 * stead_water_possible_range:
 * @out_min: (out): least reading that can be
 * @out_max: (out): highest
 */
void stead_water_possible_range (SteadWaterMeasure  measure,
                                 double            *out_min,
                                 double            *out_max);

/**
 * stead_water_limits:
 * @n_limits: (out): how many rows
 *
 * Returns: (transfer none) (array length=n_limits): the table; of two rows with
 *   the same verdict the earlier one decides
 */
const SteadWaterLimit *stead_water_limits (gsize *n_limits);

/**
 * stead_water_range:
 * @whose: one organism
 * @measure: what is measured
 *
 * The range as FAO Technical Paper 589 prints it, tables 3.1 and 3.2, whether it
 * judges here or not.
 *
 * Returns: (transfer none) (nullable): the row, or %NULL for an empty cell
 */
const SteadWaterLimit *stead_water_range (SteadWaterSharers whose,
                                          SteadWaterMeasure measure);

/**
 * stead_water_outside:
 * @limit: a row
 * @value: a reading
 * @out_low: (out) (optional): whether it is too little
 *
 * Returns: whether @value lies outside the published range of the row
 */
gboolean stead_water_outside (const SteadWaterLimit *limit,
                              double                 value,
                              gboolean              *out_low);

/**
 * stead_water_judge:
 * @sharers: who shares the water, any number of flags
 * @measure: what was read
 * @value: the reading; NAN gives "unknown"
 * @context: (nullable): what else was read
 * @out_judgement: (out): the verdict, and the row that decided
 *
 * Fish with plants add the rows of aquaponics.  A row of the species takes the
 * place of its kind's row.  Total ammonia is also judged by its un-ionised part
 * if temperature and pH are known; nitrite by the chloride beside it.
 */
void stead_water_judge (SteadWaterSharers        sharers,
                        SteadWaterMeasure        measure,
                        double                   value,
                        const SteadWaterContext *context,
                        SteadWaterJudgement     *out_judgement);

/* The limits of all who share a water taken together: for a chart, and for telling
 * where the strictest of them lies. */
typedef struct
{
  double                 min;         /* the narrowest published range; NAN: no end */
  double                 max;
  double                 act_below;   /* the first ends at which harm begins; NAN: none */
  double                 act_above;
  const SteadWaterLimit *min_row;     /* (nullable): whose each of them is */
  const SteadWaterLimit *max_row;
  const SteadWaterLimit *below_row;
  const SteadWaterLimit *above_row;
} SteadWaterBand;

/**
 * stead_water_band:
 * @sharers: who shares the water
 * @measure: what is measured
 * @out_band: (out): the band of the rows by which stead_water_judge() judges
 */
void stead_water_band (SteadWaterSharers  sharers,
                       SteadWaterMeasure  measure,
                       SteadWaterBand    *out_band);

G_END_DECLS
