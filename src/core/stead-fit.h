/* stead-fit.h - a curve through entries that scatter, and how sure it is.
 *
 * Weighted nonlinear least squares by a trust region (Levenberg-Marquardt, GSL),
 * with three things that a farm's log needs: what is known beforehand goes in as
 * if it had been observed (a prior), entries that lie far off lose their weight
 * and can be named, and the scatter is taken from the entries themselves.
 *
 * No part of it keeps state, and nothing is left allocated: the work space is
 * made once a fit, of a size that follows from the counts, and freed at its end.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_FIT_MAX_PARAMS 6
#define STEAD_FIT_MAX_OBSERVATIONS 20000

/* An entry whose weight fell below this lies far off: name it. */
#define STEAD_FIT_OUTLIER_WEIGHT 0.5

/**
 * SteadFitModel:
 * @params: (array length=n_params): values to try, fixed ones too
 * @i: which observation, from 0
 * @gradient: (nullable) (array length=n_params): to be filled in with the slope of
 *   the value by each parameter
 * @data: of the caller
 *
 * Returns: what observation @i is expected to be; NAN if these values make no sense
 */
typedef double (*SteadFitModel) (const double *params,
                                 gsize         i,
                                 double       *gradient,
                                 gpointer      data);

/* TRUE when the work is to stop; g_cancellable_is_cancelled() fits. */
typedef gboolean (*SteadFitStop) (gpointer data);

/* One parameter.  Bounds are kept by fitting another number that has none: the
 * logit between two bounds, the logarithm above one.  The start must lie between
 * them.  The covariance is that of the parameter itself, as if it had no bounds:
 * at a bound it is rather too wide than too narrow. */
typedef struct
{
  double   start;
  double   low;         /* -INFINITY: none */
  double   high;        /* INFINITY: none */
  double   prior_mean;  /* what is known beforehand */
  double   prior_sd;    /* how well; 0: nothing is known */
  gboolean fixed;       /* keeps its start; with a prior_sd see stead_fit_run() */
} SteadFitParam;

typedef enum
{
  STEAD_FIT_LOSS_SQUARE,    /* every entry counts in full */
  STEAD_FIT_LOSS_HUBER,     /* far ones count less: weight tuning / |z| beyond tuning */
  STEAD_FIT_LOSS_BISQUARE,  /* very far ones not at all: (1 - (z / tuning)^2)^2 */
} SteadFitLoss;

typedef enum
{
  STEAD_FIT_SCATTER_KNOWN,     /* the weights are one over the variance */
  STEAD_FIT_SCATTER_AT_LEAST,  /* the variance is at least that: phi is 1 or more */
  STEAD_FIT_SCATTER_FREE,      /* the weights only compare the entries */
} SteadFitScatter;

typedef struct
{
  SteadFitModel        model;
  gpointer             data;
  const double        *observed;      /* (array length=n) */
  const double        *weights;       /* (nullable) (array length=n): one over the variance, 0: left out */
  gsize                n;
  const SteadFitParam *params;        /* (array length=n_params) */
  gsize                n_params;      /* 1 to STEAD_FIT_MAX_PARAMS */
  SteadFitLoss         loss;
  double               tuning;        /* 0: 1.345 and 4.685, 95 % efficient for normal entries */
  SteadFitScatter      scatter;
  double               phi_prior;     /* what phi is known to be beforehand ... */
  double               phi_prior_df;  /* ... as if from so many entries; 0: not known */
  SteadFitStop         stop;          /* (nullable) */
  gpointer             stop_data;
} SteadFit;

typedef struct
{
  double values[STEAD_FIT_MAX_PARAMS];
  double covariance[STEAD_FIT_MAX_PARAMS][STEAD_FIT_MAX_PARAMS];  /* of the errors of @values */
  double phi;         /* variance of the entries over what their weights say */
  double phi_df;      /* as if phi were known from so many entries */
  double chi_square;  /* weighted squares of the entries, each by its own weight */
  double told;        /* parameters that the entries themselves tell, 0 to n_params */
  gsize  n_used;      /* entries of a weight above 0 */
  gsize  n_outliers;  /* of them far off */
  int    passes;      /* of new weights */
  int    iterations;  /* steps of all passes */
} SteadFitResult;

/**
 * stead_fit_run:
 * @fit: the model, the entries and what is known
 * @out: (out): values, and how sure they are
 * @out_weights: (out) (nullable) (array length=n): what each entry counted, 0 to 1;
 *   below STEAD_FIT_OUTLIER_WEIGHT it lies far off
 * @out_z: (out) (nullable) (array length=n): how far off each entry lies, in its own
 *   standard deviations (observed less expected, spread by the leverage of the
 *   entry); NAN for one that was left out
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Minimizes sum w_i v_i (y_i - f_i)^2 / phi + sum ((p - prior mean) / prior sd)^2.
 * The weights v_i come anew in every pass from the standardized residuals, their
 * spread by the median, until they settle.
 *
 * phi = sum v w r^2 / (entries - parameters told), both sums set right for what the
 * weights take away from normal entries.  Parameters told are the trace of the hat
 * matrix: a parameter that its prior holds costs no entry.
 *
 * A fixed parameter with a prior gives way while the others are looked for, as far
 * as its prior lets it, so that its error does not bend them; nor does what such an
 * error explains count as scatter.  Then it is put back, and its prior variance
 * stands in @covariance with what ties it to the others (a "consider" covariance):
 * a band drawn from it is honest about what was not learned.
 *
 * Sources: weights by iteration and their constants: Huber, and Beaton and Tukey,
 * in any text on robust regression; leverage in the residuals: DuMouchel and
 * O'Brien (1989).  All from memory.
 *
 * Returns: %TRUE, or %FALSE with nothing filled in: too few entries, entries that
 *   several curves fit alike, a number that cannot be used, or stopped
 */
gboolean stead_fit_run (const SteadFit  *fit,
                        SteadFitResult  *out,
                        double          *out_weights,
                        double          *out_z,
                        GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_fit_run_naming:
 * @fit: as for stead_fit_run(), with STEAD_FIT_LOSS_SQUARE
 * @out: (out): values, and how sure they are, without the entries named
 * @out_named: (out) (array length=n): which entries lie far off; they do not count
 * @out_z: (out) (array length=n): how far off each entry lies: a named one from the
 *   curve of the others, in standard deviations of what they foretell of it
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * For a handful of entries, whose median says little: the entry that lies farthest
 * off is held against the curve of the others.  If one so far off
 * would turn up in fewer than STEAD_FIT_NAMING_CHANCE of such logs, it is named and left out, and
 * so on, up to a third of the entries.  Where none is, this is plain least squares.
 * Source: the outlier test on deleted residuals, from memory.
 *
 * Returns: as stead_fit_run()
 */
#define STEAD_FIT_NAMING_CHANCE 0.01
gboolean stead_fit_run_naming (const SteadFit  *fit,
                               SteadFitResult  *out,
                               gboolean        *out_named,
                               double          *out_z,
                               GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_fit_sd:
 * @result: a fit
 * @gradient: (array length=n_params): slope of a value by each parameter
 * @n_params: as fitted
 *
 * Returns: standard deviation of that value, from the covariance of the parameters
 */
double stead_fit_sd (const SteadFitResult *result,
                     const double         *gradient,
                     gsize                 n_params);

G_END_DECLS
