/* stead-lay-fit-private.h - shared by the files of the learned laying curve. */
#pragma once

#include "core/stead-lay-fit.h"

G_BEGIN_DECLS

/* Rates nearer to 0 or 1 scatter as one of 0.02 or 0.98: no log is that even. */
#define STEAD_LAY_EDGE_FRAC 0.02

/* Variance of an egg more or less of one hen and day. */
static inline double
stead_lay_fit_variance (double frac)
{
  double p = CLAMP (frac, STEAD_LAY_EDGE_FRAC, 1 - STEAD_LAY_EDGE_FRAC);

  return p * (1 - p);
}

/* Week of lay in which the curve is highest. */
double stead_lay_fit_peak_week (const SteadLayCurve *curve);

/* Whether stead_lay_fit() would learn from a week. */
gboolean stead_lay_fit_uses (const SteadLayWeek  *week,
                             const SteadLayCurve *plan);

G_END_DECLS
