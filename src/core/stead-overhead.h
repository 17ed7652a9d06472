/* stead-overhead.h - shared cost charged by a rate, and what stays over.
 *
 * Sources: OpenStax Principles of Accounting vol. 2, sections 4.4 to 4.6
 * (rate), 6.3 (activities), 8.2 and 8.3 (standard cost).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_overhead_rate:
 * @planned_cents: overhead planned for the period
 * @planned_base: planned units of the base: hours, dozens, square foot-weeks
 *
 * Returns: cents for one unit of the base; NAN without a base
 */
double stead_overhead_rate (double planned_cents,
                            double planned_base);

/**
 * stead_overhead_over_cents:
 * Returns: applied (rate x base used) less actual; below 0: too little was applied
 */
double stead_overhead_over_cents (double rate_cents,
                                  double actual_base,
                                  double actual_cents);

/**
 * stead_activity_total_cents:
 * @pool_cents: (array length=n): cost of each activity
 * @driver_total: (array length=n): units of its driver in all
 * @driver_use: (array length=n): units that the product uses
 *
 * Returns: overhead of the product; NAN if a driver has no units
 */
double stead_activity_total_cents (const double *pool_cents,
                                   const double *driver_total,
                                   const double *driver_use,
                                   gsize         n);

/**
 * stead_price_variance_cents: (standard - actual price) x actual quantity
 * stead_quantity_variance_cents: (standard - actual quantity) x standard price
 *
 * Favourable is above 0.
 */
double stead_price_variance_cents (double standard_price_cents,
                                   double actual_price_cents,
                                   double actual_quantity);
double stead_quantity_variance_cents (double standard_price_cents,
                                      double standard_quantity,
                                      double actual_quantity);

G_END_DECLS
