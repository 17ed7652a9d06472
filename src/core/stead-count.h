/* stead-count.h - how many whole pieces to buy or to fit.
 *
 * Buy up, fit down: what is needed is rounded up once, at the end, and what a room
 * holds is rounded down.  Binary noise of a detour does not cost a piece
 * (stead-round.h): 9.0000000001 is 9.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* No build needs more pieces of one kind; a number beyond is a slip of the pen. */
#define STEAD_COUNT_MOST 100000000

/* There is no such number. */
#define STEAD_COUNT_NONE (-1)

/**
 * stead_count_up:
 * @need: how much is needed, 0 or more
 * @each: how much one piece gives, above 0, in the same unit
 *
 * Returns: @need / @each, rounded up; %STEAD_COUNT_NONE for another number, or for
 *   more than %STEAD_COUNT_MOST
 */
gint64 stead_count_up (double need,
                       double each);

/**
 * stead_count_down: as stead_count_up(), rounded down: how many a room holds
 */
gint64 stead_count_down (double have,
                         double each);

/**
 * stead_count_members:
 * @length: to be covered, 0 or more
 * @spacing: most distance from one to the next, above 0, in the same unit
 *
 * Studs, rafters, purlins, bows: one at each end and between them none further apart
 * than @spacing.
 * Source: a trades-math study guide on material take-offs, key formulas.
 *
 * Returns: @length / @spacing, rounded up, and one; %STEAD_COUNT_NONE as above
 */
gint64 stead_count_members (double length,
                            double spacing);

/**
 * stead_count_bay:
 * @length: between two that are fixed, above 0
 * @spacing: most distance, above 0
 *
 * Returns: the distance with all bays equal; NAN for another number
 */
double stead_count_bay (double length,
                        double spacing);

/**
 * stead_with_waste:
 * @need: what the plan needs
 * @waste_frac: what is cut off, torn or spilled beside it, 0 to 1
 *
 * Returns: @need x (1 + @waste_frac); NAN for another waste
 */
double stead_with_waste (double need,
                         double waste_frac);

/**
 * stead_step_up:
 * @length: what is needed, 0 or more
 * @step: in which it is sold, above 0
 *
 * Returns: @length up to the next whole step; NAN for another number
 */
double stead_step_up (double length,
                      double step);

G_END_DECLS
