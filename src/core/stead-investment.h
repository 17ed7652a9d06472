/* stead-investment.h - whether money put in comes back.
 *
 * The first flow is today; each later one is discounted one more year.
 * Sources: OpenStax Principles of Finance, sections 16.2 and 16.3; Principles of
 * Accounting vol. 2, sections 11.2 to 11.5.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_net_present_value:
 * @flows: (array length=n): cents by year, the first today
 * @rate_frac: a year, above -1
 *
 * Returns: sum of flow / (1 + rate)^t
 */
double stead_net_present_value (const double *flows,
                                gsize         n,
                                double        rate_frac);

/**
 * stead_internal_rates:
 * @flows: (array length=n): cents by year, the first today
 * @out_rates: (out) (array length=max): yearly rates at which they are worth 0, rising
 * @max: room
 *
 * Two changes of sign may give two rates: then decide by net present value.
 *
 * Returns: how many were found between -99 percent and 1,000 percent a year
 */
gsize stead_internal_rates (const double *flows,
                            gsize         n,
                            double       *out_rates,
                            gsize         max);

/**
 * stead_payback_years:
 * Returns: years until the flows have come back, without interest, even within
 *   the year; NAN: never
 */
double stead_payback_years (const double *flows,
                            gsize         n);

G_END_DECLS
