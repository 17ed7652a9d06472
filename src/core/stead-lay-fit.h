/* stead-lay-fit.h - the laying curve of a flock, learned from its own log.
 *
 * The compartment curve of stead-lay.h through the weekly rates.  It starts from a
 * plan; only what the log can tell by now is learned, and the rest stays planned.
 * Both parts are in the band: what was not learned is as unsure as the plan.
 */
#pragma once

#include "core/stead-alive.h"
#include "core/stead-band.h"
#include "core/stead-flock.h"
#include "core/stead-lay-models.h"
#include "core/stead-lay.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_LAY_LEVEL,      /* a: learned from 4 weeks after the peak on */
  STEAD_LAY_DECLINE,    /* x: from 10 weeks after the peak on */
  STEAD_LAY_STEEPNESS,  /* c: when the log has a week before the peak */
  STEAD_LAY_HALF,       /* d: with it */
  STEAD_LAY_N_PARAMS,
} SteadLayParam;

/* How sure the plan is, as standard deviations.  Common practice, no source. */
#define STEAD_LAY_LEVEL_SD 0.04
#define STEAD_LAY_DECLINE_SD 0.002
#define STEAD_LAY_STEEPNESS_SD 0.4
#define STEAD_LAY_HALF_SD 1.0

/* No flock is above this rate for a week.  Common practice, no source. */
#define STEAD_LAY_TOP_FRAC 0.99

/* Deaths of one hen in a week: 2 to 3 a year of 24 hens, from memory; it counts as
 * much as two deaths of the flock's own. */
#define STEAD_LAY_USUAL_DEATHS_WEEK 0.002
#define STEAD_LAY_USUAL_DEATHS 2

#define STEAD_LAY_MAX_OUTLIERS 16

/* A week that lies far off the curve: look for a slip of the pen, or for a reason. */
typedef struct
{
  gsize  week;           /* index into the log */
  double frac;           /* rate that was logged */
  double expected_frac;  /* rate of the learned curve */
  double z;              /* how far off, in usual deviations; below 0: too few eggs */
} SteadLayOutlier;

typedef struct
{
  SteadLayCurve   curve;                                               /* as learned */
  double          covariance[STEAD_LAY_N_PARAMS][STEAD_LAY_N_PARAMS];  /* of its parameters */
  gboolean        learned[STEAD_LAY_N_PARAMS];                         /* FALSE: as planned */
  double          phi;           /* scatter of the weeks: 1 is that of hens laying by chance */
  double          phi_df;        /* as if phi were known from so many weeks */
  gsize           n_used;        /* weeks that were learned from */
  gsize           n_left_out;    /* weeks marked as not to learn from */
  gsize           n_beyond;      /* weeks past STEAD_LAY_LAST_WEEK of lay: no curve goes there */
  gsize           n_outliers;    /* weeks far off; the first ones are listed */
  SteadLayOutlier outliers[STEAD_LAY_MAX_OUTLIERS];
  double          last_age_weeks;  /* of the last week learned from; NAN: none */
  double          deaths;        /* in the weeks not left out */
  double          hen_weeks;     /* in which they happened */
  double          widen;         /* 1, or more after two weeks running beside the band */
} SteadLayFit;

/**
 * stead_lay_fit:
 * @weeks: (array length=n): the log by weeks, oldest first; may have gaps
 * @n: how many, 0 or more
 * @plan: (nullable): the curve expected beforehand, %NULL: stead_lay_curve_default()
 * @out: (out): the learned curve and how sure it is
 * @out_weights: (out) (nullable) (array length=n): what each week counted, 0 to 1; 0
 *   for a week that was not used
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Weighted least squares (stead-fit.h) on eggs / hen-days with weights
 * n / (phi p (1 - p)), n the hen-days of the days that were logged, p the curve of
 * the pass before and not taken nearer to 0 or 1 than 0.02; three passes.  Weeks
 * marked as left out, without hen-days, more than 2 weeks before onset or past
 * STEAD_LAY_LAST_WEEK are not learned from.  Weeks far off lose their weight
 * (bisquare, gone at 6.5 usual deviations) and are listed.
 *
 * phi starts as 1.5 that counts as four weeks (common practice, no source), so that
 * a short log does not look surer than it can be.
 *
 * The two last weeks are held against the band without them.  If both lie beside
 * it on the same side, @widen says how much wider the band must be to hold the
 * nearer one, and all bands below are widened by it.
 *
 * Without any week to learn from, the plan and its band come back.
 *
 * Returns: %TRUE, or %FALSE if a week has a number that cannot be, or no curve
 *   comes near the log
 */
gboolean stead_lay_fit (const SteadLayWeek   *weeks,
                        gsize                 n,
                        const SteadLayCurve  *plan,
                        SteadLayFit          *out,
                        double               *out_weights,
                        GError              **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_lay_fit_bands:
 * @fit: a learned curve
 * @ages_weeks: (array length=n): ages of the birds, up to the end of the curve
 * @n: how many
 * @hen_days: hen-days of the weeks that the band is to hold, above 0: seven times
 *   the hens; the fewer, the more a week scatters
 * @level: chance to lie in the band, above 0 and below 1
 * @out: (out) (array length=n): hen-day rate of a week at each age, 0 to 1; @likely
 *   is the curve
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Drawn: the curve by its covariance, kept to rates that hens can have, phi by its
 * own uncertainty, and the scatter of the week, phi p (1 - p) / n.
 *
 * Returns: %TRUE, or %FALSE with nothing filled in if an age lies beyond week
 *   STEAD_LAY_LAST_WEEK of lay
 */
gboolean stead_lay_fit_bands (const SteadLayFit  *fit,
                              const double       *ages_weeks,
                              gsize               n,
                              double              hen_days,
                              double              level,
                              SteadBand          *out,
                              GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* One coming week. */
typedef struct
{
  double    age_weeks;  /* at its middle */
  double    hens;       /* expected alive at its middle */
  SteadBand eggs;       /* of the week */
} SteadLayAhead;

/**
 * stead_lay_fit_ahead:
 * @fit: a learned curve
 * @hens: alive now, 0 or more
 * @age_weeks: age of the birds in the middle of the first coming week
 * @n_weeks: coming weeks, at most STEAD_LAY_LAST_WEEK + 1
 * @level: chance to lie in the band, above 0 and below 1
 * @out_weeks: (out) (nullable) (array length=n_weeks): each week
 * @out_total: (out) (nullable): eggs of all of them; not the sum of the bands, as
 *   weeks do not all turn out low together
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * As stead_lay_fit_bands(), with hens that die by the flock's own mortality
 * (stead-alive.h).  Weeks scatter independently of each other: weather that stays
 * is not in it.
 *
 * Returns: %TRUE, or %FALSE with nothing filled in if a week lies beyond week
 *   STEAD_LAY_LAST_WEEK of lay
 */
gboolean stead_lay_fit_ahead (const SteadLayFit  *fit,
                              double              hens,
                              double              age_weeks,
                              gsize               n_weeks,
                              double              level,
                              SteadLayAhead      *out_weeks,
                              SteadBand          *out_total,
                              GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_lay_fit_weeks_left:
 * @fit: a learned curve
 * @age_weeks: age of the birds in the middle of the first coming week
 *
 * Returns: whole weeks from there on that the curve still covers, 0 or more
 */
gsize stead_lay_fit_weeks_left (const SteadLayFit *fit,
                                double             age_weeks);

/* How a forecast made some weeks ago has held up. */
typedef struct
{
  gsize n_weeks;   /* weeks that were held back and could be compared */
  gsize n_inside;  /* of them inside their band */
} SteadLayCheck;

/**
 * stead_lay_fit_check:
 * @weeks: (array length=n): the log by weeks, oldest first
 * @n: how many
 * @plan: (nullable): as for stead_lay_fit()
 * @hold_back: last weeks to leave out of learning: three are usual
 * @level: of the band, above 0 and below 1
 * @out: (out): how many of them the band without them holds
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE as stead_lay_fit()
 */
gboolean stead_lay_fit_check (const SteadLayWeek   *weeks,
                              gsize                 n,
                              const SteadLayCurve  *plan,
                              gsize                 hold_back,
                              double                level,
                              SteadLayCheck        *out,
                              GError              **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
