/* stead-overhead.c - shared cost charged by a rate, and what stays over. */
#include "config.h"

#include "core/stead-overhead.h"

#include <math.h>

double
stead_overhead_rate (double planned_cents,
                     double planned_base)
{
  return planned_base > 0 ? planned_cents / planned_base : NAN;
}

double
stead_overhead_over_cents (double rate_cents,
                           double actual_base,
                           double actual_cents)
{
  return rate_cents * actual_base - actual_cents;
}

double
stead_activity_total_cents (const double *pool_cents,
                            const double *driver_total,
                            const double *driver_use,
                            gsize         n)
{
  double total = 0;

  g_return_val_if_fail (n == 0 || (pool_cents != NULL && driver_total != NULL && driver_use != NULL),
                        NAN);
  for (gsize i = 0; i < n; i++)
    total += stead_overhead_rate (pool_cents[i], driver_total[i]) * driver_use[i];
  return total;
}

double
stead_price_variance_cents (double standard_price_cents,
                            double actual_price_cents,
                            double actual_quantity)
{
  return (standard_price_cents - actual_price_cents) * actual_quantity;
}

double
stead_quantity_variance_cents (double standard_price_cents,
                               double standard_quantity,
                               double actual_quantity)
{
  return (standard_quantity - actual_quantity) * standard_price_cents;
}
