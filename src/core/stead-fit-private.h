/* stead-fit-private.h - the work of one fit, shared by the files that make it up. */
#pragma once

#include "core/stead-fit.h"

G_BEGIN_DECLS

typedef struct
{
  const SteadFit *fit;
  gsize           n_free;                        /* fixed ones with a prior among them */
  gsize           free[STEAD_FIT_MAX_PARAMS];    /* column -> parameter */
  gsize           n_priors;
  gsize           prior[STEAD_FIT_MAX_PARAMS];   /* row after the entries -> column */

  double          theta[STEAD_FIT_MAX_PARAMS];   /* the parameters themselves */
  double          inner[STEAD_FIT_MAX_PARAMS];   /* by column: without bounds */
  double          phi;                           /* that the weights are divided by */

  double         *robust;      /* (array length=n): weight of each entry, 0 to 1 */
  double         *residual;    /* observed less expected */
  double         *gradient;    /* (array length=n x n_params) */
  double         *leverage;
  double         *z;
  double         *sorted;      /* to find a median in */

  double          inverse[STEAD_FIT_MAX_PARAMS][STEAD_FIT_MAX_PARAMS];  /* by column */
  double          told;
  int             iterations;
} SteadFitWork;

/* One over the variance of entry i, less what it lost for lying far off. */
static inline double
stead_fit_entry_weight (const SteadFitWork *work,
                        gsize               i)
{
  double weight = work->fit->weights != NULL ? work->fit->weights[i] : 1;

  return weight * work->robust[i] / work->phi;
}

/* stead-fit-solve.c: finds the parameters for the weights as they are, until a
 * step is below @tolerance of each.
 * stead_fit_solve_start() sets theta and inner to the start. */
void     stead_fit_solve_start (SteadFitWork *work);
gboolean stead_fit_solve (SteadFitWork  *work,
                          double         tolerance,
                          GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/* stead-fit-measure.c: residuals, leverage and the inverse at theta. */
gboolean stead_fit_measure (SteadFitWork  *work,
                            GError       **error) G_GNUC_WARN_UNUSED_RESULT;
void     stead_fit_covariance (const SteadFitWork *work,
                               SteadFitResult     *out);

G_END_DECLS
