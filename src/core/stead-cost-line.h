/* stead-cost-line.h - past costs split into a fixed and a variable part.
 *
 * Both ways are only good inside the range of activity that was seen.
 * Sources: OpenStax Principles of Accounting vol. 2, section 2.3; Saylor
 * Managerial Accounting, section 5.2.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  double variable_cents;  /* cost of one unit of activity */
  double fixed_cents;     /* cost without activity; may be below 0 for poor data */
} SteadCostLine;

/**
 * stead_cost_line_high_low:
 * @activity: (array length=n): by month
 * @cost_cents: (array length=n): by month
 * @n: how many months
 * @out: (out): the line through the months of highest and lowest activity
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Highest and lowest ACTIVITY, not cost; of equal ones the earlier month.
 *
 * Returns: %TRUE, or %FALSE if all activity is the same
 */
gboolean stead_cost_line_high_low (const double   *activity,
                                   const double   *cost_cents,
                                   gsize           n,
                                   SteadCostLine  *out,
                                   GError        **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_cost_line_fit: as above, by ordinary least squares over all months
 */
gboolean stead_cost_line_fit (const double   *activity,
                              const double   *cost_cents,
                              gsize           n,
                              SteadCostLine  *out,
                              GError        **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_cost_line_at:
 * Returns: cost at @units, cents
 */
double stead_cost_line_at (const SteadCostLine *line,
                           double               units);

G_END_DECLS
