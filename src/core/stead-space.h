/* stead-space.h - what a bench or a raft costs and brings by area and time.
 *
 * Empty benches raise everyone's rate: show the share that is filled.
 * Sources: Rutgers Farm Management, geranium pot budget and bedding plant
 * overhead; University of the Virgin Islands, lettuce and fish notes.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_space_rate_cents:
 * @overhead_cents: overhead of a year
 * @area: bench area
 * @weeks: weeks in use in the year
 * @fill_frac: share of the area that is filled, above 0 to 1
 *
 * Returns: cents for one unit of area and week; NAN without area, weeks or fill
 */
double stead_space_rate_cents (double overhead_cents,
                               double area,
                               double weeks,
                               double fill_frac);

/**
 * stead_space_charge_cents:
 * Returns: rate x area x weeks of one crop
 */
double stead_space_charge_cents (double rate_cents,
                                 double area,
                                 double weeks);

G_END_DECLS
