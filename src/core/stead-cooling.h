/* stead-cooling.h - a pot that cools: the rule, the law, and what its readings foretell.
 *
 * A forecast is an estimate.  Thick food lags behind the law, and only probe
 * readings count; what is foretold is what this thermometer will show.
 *
 * Invariants:
 *  1. Temperatures are °F, since the marks are; times are minutes on one clock.
 *  2. The clock of the rule starts when the food passes 135 °F, not at the stove.
 *  3. The band of a forecast holds the truth as often as it says, for pots whose
 *     surroundings lie anywhere within the bounds that were given
 *     (/core/cooling/bands-are-honest).
 */
#pragma once

#include "core/stead-limit.h"

G_BEGIN_DECLS

/* Newton's law: T = Ta + (T0 - Ta) e^(-k t).
 * Source: OpenStax, College Algebra 2e, section Exponential and Logarithmic Models. */

/**
 * stead_newton_rate:
 * Returns: k per minute, from the temperature at the start and @minutes later;
 *   NAN unless both lie on one side of @ambient_f and @minutes is above 0
 */
double stead_newton_rate (double start_f,
                          double ambient_f,
                          double minutes,
                          double temp_f);

/**
 * stead_newton_temp:
 * Returns: the temperature after @minutes
 */
double stead_newton_temp (double start_f,
                          double ambient_f,
                          double rate,
                          double minutes);

/**
 * stead_newton_minutes:
 * Returns: minutes until @target_f; NAN if it is never reached
 */
double stead_newton_minutes (double start_f,
                             double ambient_f,
                             double rate,
                             double target_f);

/* The rule */

typedef struct
{
  double   temp_f;           /* reached when at or below this */
  double   within_min;       /* minutes it may take */
  gboolean from_previous;    /* counted from when the mark before was reached, not from the start */
} SteadCoolingMark;

#define STEAD_COOLING_MARKS 2

typedef struct
{
  double           start_f;    /* the clock starts here; HUGE_VAL: with the first reading */
  SteadCoolingMark marks[STEAD_COOLING_MARKS];
  gsize            n_marks;
} SteadCoolingRule;

/**
 * stead_cooling_rule:
 * @table: with the shipped rows of "cool"
 * @start: "cooked", "ambient_ingredients" or "received_warm"
 * @wording: "food_code": 6 h in all; "additional_4h": 4 h more after the first mark
 * @out: (out): the rule in force
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Source: FDA Food Code 2022, §3-501.14; COMAR 10.15.03.11 A(1).
 *
 * Returns: %TRUE, or %FALSE if the table has no such rule
 */
gboolean stead_cooling_rule (const SteadLimitTable  *table,
                             const char             *start,
                             const char             *wording,
                             SteadCoolingRule       *out,
                             GError                **error) G_GNUC_WARN_UNUSED_RESULT;

typedef enum
{
  STEAD_COOLING_PASS,
  STEAD_COOLING_OPEN,           /* nothing missed yet, not all reached */
  STEAD_COOLING_FAIL_STAGE_1,
  STEAD_COOLING_FAIL_STAGE_2,   /* only where the second stage has its own time */
  STEAD_COOLING_FAIL_TOTAL,
} SteadCoolingVerdict;

/**
 * stead_cooling_verdict:
 * @start_min: when the clock started
 * @at_min: (array length=n_marks of the rule): when each mark was reached; NAN: not yet
 *
 * The first mark is judged first.
 */
SteadCoolingVerdict stead_cooling_verdict (const SteadCoolingRule *rule,
                                           double                  start_min,
                                           const double           *at_min);

/**
 * stead_cooling_warmest_ambient:
 * @first_min: minutes from the start to the first mark
 * @second_min: minutes from the start to the second, more than @first_min
 * @out_ambient_f: (out): the warmest surroundings in which Newton's law allows it
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * A batch that only just makes 70 °F in 2 h makes 41 °F in 6 h only if the air is
 * at most 37.35 °F.
 *
 * Returns: %TRUE, or %FALSE if no surroundings do, or the rule has one mark
 */
gboolean stead_cooling_warmest_ambient (const SteadCoolingRule  *rule,
                                        double                   first_min,
                                        double                   second_min,
                                        double                  *out_ambient_f,
                                        GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* Readings */

typedef struct
{
  double   minute;     /* rising from reading to reading */
  double   temp_f;
  gboolean changed;    /* something was done since the reading before: moved, split, stirred */
} SteadCoolingReading;

/**
 * stead_cooling_clock:
 * @ambient_f: about how cold the surroundings are, for reading between two readings
 * @out_known: (out) (optional): whether the readings show the start; if not, the
 *   clock may have started before the first reading
 *
 * Returns: the minute when the food passed @start_f: the first reading if that is
 *   at or below it, the last one if all are above
 */
double stead_cooling_clock (const SteadCoolingReading *readings,
                            gsize                      n,
                            double                     start_f,
                            double                     ambient_f,
                            gboolean                  *out_known);

typedef enum
{
  STEAD_COOLING_MARK_MET,        /* a reading in time shows it */
  STEAD_COOLING_MARK_OPEN,       /* there is still time */
  STEAD_COOLING_MARK_UNPROVEN,   /* reached by a later reading: nobody looked in time */
  STEAD_COOLING_MARK_MISSED,     /* a reading at or after the time is above it */
} SteadCoolingMarkState;

/**
 * stead_cooling_mark_states:
 * @clock_min: when the clock started
 * @out: (array length=n_marks of the rule): what the readings prove
 *
 * No curve here: the record must be probe readings.
 */
void stead_cooling_mark_states (const SteadCoolingRule    *rule,
                                const SteadCoolingReading *readings,
                                gsize                      n,
                                double                     clock_min,
                                SteadCoolingMarkState     *out);

typedef enum
{
  STEAD_COOLING_GAP,    /* long without a reading before this one */
  STEAD_COOLING_ROSE,   /* warmer than the reading before by more than noise */
} SteadCoolingOddity;

typedef struct
{
  SteadCoolingOddity what;
  gsize              at;     /* the reading */
} SteadCoolingNotice;

/**
 * stead_cooling_notices:
 * @longest_gap_min: minutes between two readings that are not long yet
 * @noise_f: as for stead_cooling_fit()
 *
 * Returns: (transfer full) (element-type SteadCoolingNotice): in order
 */
GArray *stead_cooling_notices (const SteadCoolingReading *readings,
                               gsize                      n,
                               double                     longest_gap_min,
                               double                     noise_f) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_cooling_noise_f:
 * @step_f: the smallest step that the thermometer shows
 *
 * What two readings of one pot differ by, as a standard deviation: the rounding
 * of the display, step / sqrt 12, and half a degree for where the probe sits.
 * The half degree is common practice, no source.
 */
double stead_cooling_noise_f (double step_f);

/* The fit */

typedef struct
{
  double ambient_low_f;     /* the surroundings are at least this cold … */
  double ambient_high_f;    /* … and at most this warm; nothing else is known of them */
  double noise_f;           /* standard deviation of a reading, above 0 */
} SteadCoolingSetting;

typedef struct
{
  double   rate;            /* k per minute: median and 80 % band */
  double   rate_low;
  double   rate_high;
  double   ambient_f;       /* what the readings say of the surroundings */
  double   ambient_low_f;
  double   ambient_high_f;
  double   noise_f;         /* as given, or larger if the readings scatter more */
  gboolean scattered;       /* they do: stir before probing, and probe the middle */
  gsize    first;           /* the reading from which one curve holds */
  gboolean jumped;          /* nobody said so, but there the curve changed */
} SteadCoolingFigures;

typedef struct _SteadCoolingFit SteadCoolingFit;

/**
 * stead_cooling_fit:
 * @readings: (array length=n): three or more since the last change
 * @setting: what is known beside them
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * All curves of Newton's law, weighed by how well they fit: the surroundings
 * alike between their bounds, the logarithm of the rate and the start free.
 * With few readings the surroundings stay open, and the band is wide.
 *
 * Returns: (transfer full) (nullable): the fit, or %NULL with @error set
 */
SteadCoolingFit *stead_cooling_fit (const SteadCoolingReading  *readings,
                                    gsize                       n,
                                    const SteadCoolingSetting  *setting,
                                    GError                    **error) G_GNUC_WARN_UNUSED_RESULT;
void stead_cooling_fit_free (SteadCoolingFit *fit);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCoolingFit, stead_cooling_fit_free)

const SteadCoolingFigures *stead_cooling_fit_figures (const SteadCoolingFit *fit);

typedef struct
{
  double minute;          /* median; HUGE_VAL: more likely never than not */
  double low;             /* the band */
  double high;            /* HUGE_VAL: it may never get there */
  double chance_never;    /* of surroundings too warm for it */
} SteadCoolingArrival;

/**
 * stead_cooling_fit_arrival:
 * @temp_f: a mark
 * @band_frac: how often the band is to hold the truth: 0.8
 * @out: (out): when the pot gets there if nothing is done
 */
void stead_cooling_fit_arrival (const SteadCoolingFit *fit,
                                double                 temp_f,
                                double                 band_frac,
                                SteadCoolingArrival   *out);

/**
 * stead_cooling_fit_temp:
 * @out_low: (out) (optional): the band
 * @out_high: (out) (optional): the band
 *
 * Returns: the median of the curve at @minute
 */
double stead_cooling_fit_temp (const SteadCoolingFit *fit,
                               double                 minute,
                               double                 band_frac,
                               double                *out_low,
                               double                *out_high);

/* Acting */

/* What can be done: the curve goes on from there with another rate, in other
 * surroundings.  The figures are rules of thumb (common practice, no source). */
typedef struct
{
  const char *id;               /* "shallow_pan", "small_portions", "ice_bath", "stir" */
  double      rate_factor;      /* the rate is multiplied by this */
  double      ambient_low_f;    /* the new surroundings; NAN: the same as before */
  double      ambient_high_f;
} SteadCoolingAction;

/**
 * stead_cooling_actions:
 * Returns: (transfer full) (element-type SteadCoolingAction): those of the table
 *   that have a rate, in its order; the ids belong to @table
 */
GArray *stead_cooling_actions (const SteadLimitTable *table) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  double chance;        /* of all marks in time, if it is done now */
  double latest_min;    /* do it by then, to reach the chance wanted; NAN: now is too late */
} SteadCoolingPlan;

/**
 * stead_cooling_fit_chance:
 * @clock_min: when the clock of the rule started
 * @mark: which one; n_marks of the rule for all of them
 *
 * Returns: the chance that the pot is in time if nothing is done
 */
double stead_cooling_fit_chance (const SteadCoolingFit  *fit,
                                 const SteadCoolingRule *rule,
                                 double                  clock_min,
                                 gsize                   mark);

/**
 * stead_cooling_fit_act:
 * @now_min: not before the first reading of the fit
 * @wanted_frac: the chance that is enough: 0.9
 * @out: (out): what doing it brings, and until when it can wait, whole minutes
 */
void stead_cooling_fit_act (const SteadCoolingFit    *fit,
                            const SteadCoolingRule   *rule,
                            double                    clock_min,
                            const SteadCoolingAction *action,
                            double                    now_min,
                            double                    wanted_frac,
                            SteadCoolingPlan         *out);

G_END_DECLS
