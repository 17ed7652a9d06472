/* stead-batch-cost.h - what one unit of a batch costs while the batch is still growing.
 *
 * A tank or a bed costs money for months before it gives anything, so the cost of
 * what came so far must not be divided by what came so far alone:
 *
 *   unit cost = (cost so far + cost still to come) / (good output so far + still expected)
 *
 * Equivalent units, weighted average: all money over all units, and the units that
 * are not finished are taken to their end with the cost that finishes them.  Every
 * unit of weight carries the same; normal loss is carried by the good units.
 * Sources: OpenStax Principles of Accounting vol. 2, sections 5.3 and 5.4 (weighted
 * average); Saylor Managerial Accounting, appendix 7.10 (by physical quantity);
 * process costing lecture notes for an accounting qualification, p. 146 (cost over
 * EXPECTED output).
 *
 * Invariants:
 *  1. Lots carry whole cents, never below 0.
 *  2. All lots of a batch together never carry more than went into it so far.
 *  3. The last harvest takes all that is left: cents in = cents out.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  double so_far_cents;     /* all that went in: feed, animals or seed, supplies, share of assets */
  double to_come_cents;    /* until the end; 0 once it is over */
  double good_base;        /* good output so far, pieces or kg */
  double expected_base;    /* good output still expected; 0 once it is over */
  gint64 carried_cents;    /* out of the batch already, in lots */
} SteadBatchCost;

/**
 * stead_batch_unit_cents:
 *
 * Returns: cents for one base unit of good output, unrounded; NAN without output
 */
double stead_batch_unit_cents (const SteadBatchCost *cost);

/**
 * stead_batch_left_cents:
 *
 * Returns: what went in and no lot carries yet, whole cents, 0 or more
 */
gint64 stead_batch_left_cents (const SteadBatchCost *cost);

/**
 * stead_batch_harvest_cents:
 * @cost: before the harvest; its @expected_base still holds what is harvested now
 * @quantity: good output of this harvest, base units, 0 or more
 * @is_last: nothing more comes
 *
 * Unit cost x @quantity, rounded once and at most what is left; all that is left
 * with @is_last.  More than was expected makes the expectation what came.
 *
 * Returns: whole cents for the lot to carry; 0 for nothing
 */
gint64 stead_batch_harvest_cents (const SteadBatchCost *cost,
                                  double                quantity,
                                  gboolean              is_last);

G_END_DECLS
