/* stead-investment.c - whether money put in comes back. */
#include "config.h"

#include "core/stead-investment.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>
#include <math.h>

/* The search walks over discount factors, evenly in their logarithm. */
#define LOWEST_RATE (-0.99)
#define HIGHEST_RATE 10.0
#define SEARCH_STEPS 2000

typedef struct
{
  const double *flows;
  gsize         n;
} Flows;

typedef gsl_root_fsolver RootSolver;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RootSolver, gsl_root_fsolver_free)

double
stead_net_present_value (const double *flows,
                         gsize         n,
                         double        rate_frac)
{
  double sum = 0;

  g_return_val_if_fail (flows != NULL || n == 0, NAN);
  if (!(rate_frac > -1))
    return NAN;
  for (gsize i = n; i > 0; i--)
    sum = sum / (1 + rate_frac) + flows[i - 1];
  return sum;
}

static double
value_at (double  log_growth,
          void   *data)
{
  const Flows *flows = data;

  return stead_net_present_value (flows->flows, flows->n, expm1 (log_growth));
}

/* The rate between two growths whose values have different signs. */
static double
root_between (const Flows *flows,
              double       low,
              double       high)
{
  g_autoptr(RootSolver) solver = gsl_root_fsolver_alloc (gsl_root_fsolver_brent);
  gsl_function function = { value_at, (void *) flows };

  gsl_root_fsolver_set (solver, &function, low, high);
  for (int tries = 0; tries < 200; tries++)
    {
      gsl_root_fsolver_iterate (solver);
      if (gsl_root_test_interval (gsl_root_fsolver_x_lower (solver), gsl_root_fsolver_x_upper (solver),
                                  1e-13, 0) == GSL_SUCCESS)
        break;
    }
  return expm1 (gsl_root_fsolver_root (solver));
}

gsize
stead_internal_rates (const double *flows,
                      gsize         n,
                      double       *out_rates,
                      gsize         max)
{
  Flows all = { flows, n };
  double low = log1p (LOWEST_RATE);
  double width = (log1p (HIGHEST_RATE) - low) / SEARCH_STEPS;
  gsize found = 0;

  g_return_val_if_fail (flows != NULL || n == 0, 0);
  g_return_val_if_fail (out_rates != NULL || max == 0, 0);

  for (int step = 0; step < SEARCH_STEPS && found < max; step++)
    {
      double from = low + step * width;
      double before = value_at (from, &all);
      double after = value_at (from + width, &all);

      if (before == 0 && after != 0)
        out_rates[found++] = expm1 (from);
      else if ((before < 0 && after > 0) || (before > 0 && after < 0))
        out_rates[found++] = root_between (&all, from, from + width);
    }
  return found;
}

double
stead_payback_years (const double *flows,
                     gsize         n)
{
  double sum = 0;

  g_return_val_if_fail (flows != NULL || n == 0, NAN);
  for (gsize i = 0; i < n; i++)
    {
      if (sum + flows[i] >= 0)
        return i == 0 || !(flows[i] > 0) ? (double) i : (double) (i - 1) + -sum / flows[i];
      sum += flows[i];
    }
  return NAN;
}
