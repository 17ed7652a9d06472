/* stead-process-cost.h - cost of units when some are unfinished at the count.
 *
 * Invariants:
 *  1. Sent on + abnormal loss + unfinished at the end = opening cost + added cost.
 *  2. Lost units are costed at their own stage; normal loss goes to the good
 *     units, abnormal loss stands alone.
 *  3. Nothing is rounded here.
 * Use it only where units are unfinished: pullets not yet laying, sauce cooked
 * but not bottled.  Otherwise the cost of the period / good units is the same.
 * Source: OpenStax Principles of Accounting vol. 2, sections 5.3 and 5.4.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_PROCESS_WEIGHTED_AVERAGE,  /* opening and added money are one pool */
  STEAD_PROCESS_FIFO,              /* opening money leaves with the first units */
} SteadProcessMethod;

typedef enum
{
  STEAD_ELEMENT_MATERIALS,
  STEAD_ELEMENT_CONVERSION,
  STEAD_ELEMENT_TRANSFERRED,  /* from an earlier step; always fully there */
} SteadElement;

#define STEAD_N_ELEMENTS (STEAD_ELEMENT_TRANSFERRED + 1)

/* How far one element of cost has gone, as shares of a whole unit, and its money. */
typedef struct
{
  double begin_frac;    /* in the opening units */
  double end_frac;      /* in the closing units */
  double lost_frac;     /* in the lost units */
  double begin_cents;
  double added_cents;
} SteadElementStage;

typedef struct
{
  SteadProcessMethod method;
  double             begin_units;           /* unfinished at first */
  double             completed_units;       /* good ones */
  double             end_units;             /* unfinished at the end */
  double             normal_lost_units;
  double             abnormal_lost_units;
  SteadElementStage  elements[STEAD_N_ELEMENTS];
} SteadProcess;

/* Cents; a unit cost is NAN where its element has money but no units. */
typedef struct
{
  double equivalent_units[STEAD_N_ELEMENTS];
  double unit_cents[STEAD_N_ELEMENTS];
  double unit_total_cents;
  double good_before_loss_cents;
  double normal_loss_cents;
  double transferred_out_cents;   /* good units with normal loss */
  double abnormal_loss_cents;
  double end_in_process_cents;
  double total_cents;             /* opening + added */
} SteadProcessFigures;

/**
 * stead_process_figures:
 * @process: units and money of one step over one period
 * @out: (out): what the units cost
 */
void stead_process_figures (const SteadProcess  *process,
                            SteadProcessFigures *out);

G_END_DECLS
