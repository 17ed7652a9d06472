/* stead-cost-steps.h - "From feed to the pack on the table: what does each step add, and
 * what changed since the month before?"
 *
 * Months here are four weeks: the last 28 days, and the 28 before them.
 */
#pragma once

#include "answer/stead-cost-answer.h"
#include "core/stead-cost-change.h"

G_BEGIN_DECLS

/* What one part of the cost changed by, for one unit; unrounded cents. */
typedef struct
{
  SteadCostKind kind;
  double        cents[STEAD_N_CHANGE_KINDS];
} SteadCostMove;

typedef struct
{
  SteadCostAnswer *cost;         /* of the chosen period */
  double           next_cents;   /* what the next one costs, at the prices of the next lots; NAN: no other */
  double           next_more_cents; /* that all that was used would cost more at those prices; below 0: less */

  SteadCostAnswer *before;       /* (nullable): the 28 days before the last 28 */
  SteadCostAnswer *now;          /* (nullable): the last 28 days; both or neither */
  GArray          *moves;        /* of SteadCostMove: parts that changed; empty without two months */
  gint64           shown[STEAD_N_CHANGE_KINDS];  /* all parts together, whole cents: they sum to the
                                                    change of the shown unit cost */
  char            *sentence;     /* markup: what the steps come to */
  char            *change;       /* markup: what changed and why; or why it cannot be said */
} SteadCostSteps;

void stead_cost_steps_free (SteadCostSteps *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCostSteps, stead_cost_steps_free)

SteadCostSteps *stead_cost_steps_new (SteadStore   *store,
                                      gint64        product_id,
                                      SteadPeriod   period,
                                      GError      **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): of SteadWhy: what changed, and what the next one costs; empty without either */
GPtrArray *stead_cost_steps_whys (const SteadCostSteps *self) G_GNUC_WARN_UNUSED_RESULT;

/* "What was used", "Output", "Volume", "Prices" */
const char *stead_change_name (SteadChangeKind kind);
/* What it means: "how much feed goes in for each bird and day" */
const char *stead_change_about (SteadChangeKind kind);

G_END_DECLS
