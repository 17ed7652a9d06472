/* stead-cost-line.c - past costs split into a fixed and a variable part. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-cost-line.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_fit.h>
#include <math.h>

/* The months of lowest and highest activity; FALSE with @error if they are one. */
static gboolean
find_ends (const double *activity,
           gsize         n,
           gsize        *low,
           gsize        *high,
           GError      **error)
{
  *low = 0;
  *high = 0;
  for (gsize i = 1; i < n; i++)
    {
      if (activity[i] < activity[*low])
        *low = i;
      if (activity[i] > activity[*high])
        *high = i;
    }
  if (n >= 2 && activity[*low] < activity[*high])
    return TRUE;
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                       _("All months have the same activity. Add a month with more or less work."));
  return FALSE;
}

gboolean
stead_cost_line_high_low (const double   *activity,
                          const double   *cost_cents,
                          gsize           n,
                          SteadCostLine  *out,
                          GError        **error)
{
  gsize low;
  gsize high;

  g_return_val_if_fail (activity != NULL && cost_cents != NULL && out != NULL, FALSE);

  if (!find_ends (activity, n, &low, &high, error))
    return FALSE;
  out->variable_cents = (cost_cents[high] - cost_cents[low]) / (activity[high] - activity[low]);
  out->fixed_cents = cost_cents[high] - out->variable_cents * activity[high];
  return TRUE;
}

gboolean
stead_cost_line_fit (const double   *activity,
                     const double   *cost_cents,
                     gsize           n,
                     SteadCostLine  *out,
                     GError        **error)
{
  gsize low;
  gsize high;
  double cov00, cov01, cov11, squares;

  g_return_val_if_fail (activity != NULL && cost_cents != NULL && out != NULL, FALSE);

  if (!find_ends (activity, n, &low, &high, error))
    return FALSE;
  gsl_fit_linear (activity, 1, cost_cents, 1, n, &out->fixed_cents, &out->variable_cents,
                  &cov00, &cov01, &cov11, &squares);
  return TRUE;
}

double
stead_cost_line_at (const SteadCostLine *line,
                    double               units)
{
  g_return_val_if_fail (line != NULL, NAN);
  return line->fixed_cents + line->variable_cents * units;
}
