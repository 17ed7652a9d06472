/* stead-water-dose.h - what to add to the water, or how much of it to change.
 *
 * Hydroxides, lime and salts burn: gloves, goggles, an adult.  Weigh twice,
 * dissolve first, add slowly, test again.  Never raise the pH while there is
 * ammonia in the water: stead_water_ph_move() says what it would do.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_BASE_NAHCO3,     /* sodium bicarbonate */
  STEAD_BASE_KHCO3,      /* potassium bicarbonate */
  STEAD_BASE_CACO3,      /* limestone flour */
  STEAD_BASE_CA_OH_2,    /* hydrated lime */
  STEAD_BASE_CAO,        /* quicklime */
  STEAD_BASE_KOH,        /* potassium hydroxide */
  STEAD_BASE_DOLOMITE,   /* CaMg(CO3)2 */
  STEAD_BASE_MGCO3,      /* magnesium carbonate */
  STEAD_BASE_MG_OH_2,    /* magnesium hydroxide */
} SteadBase;

#define STEAD_N_BASES (STEAD_BASE_MG_OH_2 + 1)

/* What a base brings besides alkalinity. */
typedef enum
{
  STEAD_BASE_SODIUM    = 1 << 0,   /* builds up and harms plants: avoid with beds */
  STEAD_BASE_POTASSIUM = 1 << 1,   /* a nutrient */
  STEAD_BASE_CALCIUM   = 1 << 2,   /* a nutrient */
  STEAD_BASE_MAGNESIUM = 1 << 3,   /* a nutrient */
  STEAD_BASE_CAUSTIC   = 1 << 4,   /* burns skin and eyes, jumps the pH */
  STEAD_BASE_SLOW      = 1 << 5,   /* hardly dissolves: it works over days */
} SteadBaseTraits;

/**
 * stead_base_id: stable, "nahco3"
 * stead_base_from_id: %FALSE for an id that is not known
 * stead_base_name: (transfer none): in the person's language
 * stead_base_traits: what it brings
 * stead_base_g_per_caco3: g of it with the alkalinity of 1 g CaCO3: its molar mass
 *   by equivalents over that of CaCO3 (atomic weights from memory); sodium
 *   bicarbonate 1.68, hydrated lime 0.74
 */
const char *stead_base_id (SteadBase base);
gboolean stead_base_from_id (const char *id,
                             SteadBase  *out_base);
const char *stead_base_name (SteadBase base);
SteadBaseTraits stead_base_traits (SteadBase base);
double stead_base_g_per_caco3 (SteadBase base);

/**
 * stead_base_dose_g:
 * @base: what is added
 * @volume_l: water, 0 or more
 * @raise_mgl: rise of alkalinity wanted, mg/L as CaCO3, 0 or more
 *
 * Returns: g, litres x mg/L / 1000 x equivalents; NAN for what cannot be
 */
double stead_base_dose_g (SteadBase base,
                          double    volume_l,
                          double    raise_mgl);

/**
 * stead_base_raise_mgl: the rise that @dose_g brings; NAN without water
 */
double stead_base_raise_mgl (SteadBase base,
                             double    volume_l,
                             double    dose_g);

/**
 * stead_base_for_feed_g:
 * @base: what is added; bicarbonates are not in the table
 * @feed_kg: feed given
 * @planted: whether plants take up the nitrate; without them it is double
 *
 * Source: buffer per kilogram of feed in integrated systems, a farm adviser's
 * table (read).  With beds take turns between calcium and potassium.
 *
 * Returns: g; NAN for a base that the table does not have
 */
double stead_base_for_feed_g (SteadBase base,
                              double    feed_kg,
                              gboolean  planted);

/* Chloride kept in standing water against nitrite: at least 100 mg/L, SRAC 462. */
#define STEAD_WATER_STANDING_CHLORIDE_MGL 100

/* Parts of chloride to 1 of nitrite, SRAC 462; some keepers use 5. */
#define STEAD_WATER_CHLORIDE_RATIO 10

/**
 * stead_water_chloride_need_mgl: @nitrite_mgl x @ratio
 * stead_water_salt_mgl: salt with that chloride, / 0.6066 (35.45 of 58.44)
 */
double stead_water_chloride_need_mgl (double nitrite_mgl,
                                      double ratio);
double stead_water_salt_mgl (double chloride_mgl);

/**
 * stead_water_salt_dose_g:
 * @nitrite_mgl: in the water
 * @ratio: parts of chloride to 1 of nitrite
 * @chloride_mgl: in the water already, 0 or more
 * @volume_l: water
 *
 * Plain salt, without yellow prussiate of soda or iodine.  With tomatoes take
 * calcium or potassium chloride for a part: sodium builds up.
 * Source: SRAC 462, nitrite in fish ponds (read).
 *
 * Returns: g of sodium chloride for what is missing, 0 if nothing is; NAN for
 *   numbers below 0
 */
double stead_water_salt_dose_g (double nitrite_mgl,
                                double ratio,
                                double chloride_mgl,
                                double volume_l);

/**
 * stead_water_change_frac:
 * @now: what is measured, in any unit that mixes by volume: mg/L or °C, not pH
 * @target: what is wanted
 * @source: the same in the water that is added
 * @out_frac: (out): share of the water to change, 0 to 1
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * (now - target) / (now - source); 0 if the target is met.  Change at most 20 to
 * 30 % at once, with water of like temperature and without chlorine.
 *
 * Returns: %TRUE, or %FALSE if the source cannot lead there
 */
gboolean stead_water_change_frac (double    now,
                                  double    target,
                                  double    source,
                                  double   *out_frac,
                                  GError  **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_water_after_change: what @frac of @source makes of @now
 */
double stead_water_after_change (double now,
                                 double source,
                                 double frac);

/**
 * stead_water_changes:
 * @total_frac: share that one change would take, 0 to below 1
 * @each_frac: share of each of several changes, above 0 and below 1
 *
 * Each change also takes of the new water: ln (1 - total) / ln (1 - each).
 *
 * Returns: how many, rounded up; NAN outside the ranges
 */
double stead_water_changes (double total_frac,
                            double each_frac);

/* The most that the pH may move in 12 to 24 hours (common practice). */
#define STEAD_WATER_PH_STEP 0.3

/* The way from one pH to another. */
typedef struct
{
  double   next_ph;       /* after the first step */
  int      steps;         /* of at most 0.3, one a day */
  double   nh3n_mgl;      /* un-ionised ammonia as N before */
  double   nh3n_next_mgl; /* after the first step */
  double   nh3n_end_mgl;  /* after the last */
} SteadPhMove;

/**
 * stead_water_ph_move:
 * @now: pH, 0 to 14
 * @target: pH wanted, 0 to 14
 * @tan_mgl: total ammonia as N, 0 or more
 * @temp_c: 0 to 40
 * @out_move: (out): the way, and what it does to the ammonia
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE outside the ranges
 */
gboolean stead_water_ph_move (double        now,
                              double        target,
                              double        tan_mgl,
                              double        temp_c,
                              SteadPhMove  *out_move,
                              GError      **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_water_ph_target:
 * @planted: whether plants share the water
 * @out_min: (out) (optional): 6.4 with plants, 7.0 without
 * @out_max: (out) (optional): 7.4 with plants, 8.0 without
 *
 * UVI adds base to hold 7.0 with plants, FAO 589 asks for 6 to 7; the bands are
 * our own.
 *
 * Returns: the pH to aim at: 7.0 with plants, 7.5 without
 */
double stead_water_ph_target (gboolean  planted,
                              double   *out_min,
                              double   *out_max);

G_END_DECLS
