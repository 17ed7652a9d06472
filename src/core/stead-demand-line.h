/* stead-demand-line.h - what people ask for along a price, a temperature, a week: a
 * straight line with its band.
 *
 * Only good inside the range that was seen.  Few days make a wide band, and that is the
 * truth about them.
 */
#pragma once

#include "core/stead-band.h"

G_BEGIN_DECLS

typedef struct
{
  double intercept;
  double slope;         /* units for one more of x */
  double slope_sd;      /* how well it is known */
  double residual_sd;   /* of single days around the line */
  double x_mean;
  double x_squares;     /* sum of (x - mean)² */
  double x_low;         /* range that was seen */
  double x_high;
  gsize  n;             /* days */
} SteadDemandLine;

/**
 * stead_demand_line_fit:
 * @x: (array length=n): price, temperature …
 * @units: (array length=n): asked for on that day
 * @n: 3 or more
 * @out: (out): the line
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Ordinary least squares; any text on regression, solved with GSL.
 *
 * Returns: %TRUE; or %FALSE with @out left alone: too few days, all x the same, or a
 *   number that cannot be
 */
gboolean stead_demand_line_fit (const double     *x,
                                const double     *units,
                                gsize             n,
                                SteadDemandLine  *out,
                                GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_demand_line_at:
 * @line: the line
 * @x: where
 * @level: chance to lie in the band, above 0 and below 1
 * @out: (out): units of one more day; may be below 0, where the line does not fit
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * The prediction band of Student's distribution with n - 2 degrees of freedom.
 *
 * Returns: %TRUE; or %FALSE with @out left alone for an @x that was never seen
 */
gboolean stead_demand_line_at (const SteadDemandLine  *line,
                               double                  x,
                               double                  level,
                               SteadBand              *out,
                               GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_demand_line_told:
 * Returns: whether it can be told that the line rises or falls: zero lies outside the
 *   band of the slope
 */
gboolean stead_demand_line_told (const SteadDemandLine *line,
                                 double                 level);

G_END_DECLS
