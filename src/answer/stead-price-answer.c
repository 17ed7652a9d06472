/* stead-price-answer.c - "What price covers it, and how many must we sell?" */
#include "config.h"

#include "answer/stead-price-answer.h"
#include "answer/stead-price-private.h"

#include <math.h>

/* A price is proposed in steps of a quarter: the plan's costs and target, or,
 * without a plan, the unit cost and a third on top.  (Common practice, no source.) */
#define PROPOSAL_STEP_CENTS 25.0
#define PROPOSAL_MARKUP (1.0 / 3.0)

/* Rows of the table: about so many round steps, up to this many units. */
#define TABLE_STEPS 10
#define TABLE_MAX_UNITS 1e9

/* Largest value that a handle may give: units times cents stay exact below it. */
#define HANDLE_MAX 1e9

void
stead_price_answer_free (SteadPriceAnswer *self)
{
  if (self == NULL)
    return;
  stead_cost_answer_free (self->cost);
  g_clear_pointer (&self->prices, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self->advice);
  g_free (self);
}

gint64
stead_price_for_plan (const SteadCvp *cvp,
                      double          target_cents)
{
  double exact;

  if (!(cvp->planned_units > 0))
    return -1;
  exact = cvp->variable_cents
          + (stead_cvp_fixed_cents (cvp, cvp->planned_units) + target_cents) / cvp->planned_units;
  /* A price is rounded up, or the plan would just miss; 1e-9 is binary noise. */
  return (gint64) ceil (exact - 1e-9 * MAX (1, fabs (exact)));
}

static gint64
propose_price (const SteadCvp *cvp)
{
  gint64 needed = stead_price_for_plan (cvp, cvp->target_cents);
  double base = needed >= 0 ? (double) needed : cvp->variable_cents * (1 + PROPOSAL_MARKUP);

  return (gint64) (MAX (1, ceil (base / PROPOSAL_STEP_CENTS)) * PROPOSAL_STEP_CENTS);
}

static SteadCvp
plan_of (const SteadCostAnswer *cost)
{
  const SteadProduct *product = cost->product;
  SteadCvp cvp = { .variable_cents = (double) cost->sheet.unit_cents,
                   .planned_units = (double) product->planned_units,
                   .target_cents = (double) product->target_cents };

  for (guint i = 0; product->stall_costs != NULL && i < product->stall_costs->len; i++)
    {
      const SteadStallCost *stall = product->stall_costs->pdata[i];

      if (stall->per_units == 0)
        cvp.fixed_cents += (double) stall->cents;
      else
        {
          cvp.step_cents = (double) stall->cents;
          cvp.step_units = (double) stall->per_units;
        }
    }
  return cvp;
}

SteadPriceAnswer *
stead_price_answer_new (SteadStore   *store,
                        gint64        product_id,
                        SteadPeriod   period,
                        GError      **error)
{
  g_autoptr(SteadPriceAnswer) self = NULL;
  g_autoptr(GError) local_error = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  self = g_new0 (SteadPriceAnswer, 1);
  self->cost = stead_cost_answer_new (store, product_id, period, error);
  if (self->cost == NULL)
    return NULL;
  self->prices = stead_product_repo_prices (store, product_id, error);
  if (self->prices == NULL)
    return NULL;
  self->price_on_file = stead_product_repo_price_on (store, product_id, stead_store_get_today (store), &local_error);
  if (local_error != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&local_error));
      return NULL;
    }
  self->plan = plan_of (self->cost);
  self->plan.price_cents = (double) (self->price_on_file >= 0 ? self->price_on_file : propose_price (&self->plan));
  stead_price_answer_set (self, &self->plan);
  return g_steal_pointer (&self);
}

static double
whole (double value)
{
  return isnan (value) ? 0 : round (CLAMP (value, 0, HANDLE_MAX));
}

void
stead_price_answer_set (SteadPriceAnswer *self,
                        const SteadCvp   *cvp)
{
  g_return_if_fail (self != NULL);
  g_return_if_fail (cvp != NULL);

  self->cvp = (SteadCvp) {
    .price_cents = whole (cvp->price_cents),
    .variable_cents = whole (cvp->variable_cents),
    .fixed_cents = whole (cvp->fixed_cents),
    .step_cents = whole (cvp->step_cents),
    .step_units = whole (cvp->step_units),
    .planned_units = whole (cvp->planned_units),
    .target_cents = whole (cvp->target_cents),
  };
  stead_cvp_figures (&self->cvp, &self->figures);
  g_free (self->sentence);
  g_free (self->advice);
  self->sentence = stead_price_sentence (self);
  self->advice = stead_price_advice (self);
}

/* 1, 2 or 5 times a power of ten, at least 1. */
static double
round_step (double wanted)
{
  double power = pow (10, floor (log10 (MAX (1, wanted))));
  double digit = wanted / power;

  return MAX (1, power * (digit <= 1 ? 1 : digit <= 2 ? 2 : digit <= 5 ? 5 : 10));
}

static int
compare_units (gconstpointer a,
               gconstpointer b)
{
  gint64 x = ((const SteadPriceRow *) a)->units;
  gint64 y = ((const SteadPriceRow *) b)->units;

  return (x > y) - (x < y);
}

static void
add_row (GArray         *rows,
         const SteadCvp *cvp,
         double          units)
{
  SteadPriceRow row = { .units = (gint64) units,
                        .revenue_cents = (gint64) round (stead_cvp_revenue_cents (cvp, units)),
                        .cost_cents = (gint64) round (stead_cvp_cost_cents (cvp, units)) };

  for (guint i = 0; i < rows->len; i++)
    if (g_array_index (rows, SteadPriceRow, i).units == row.units)
      return;
  row.profit_cents = row.revenue_cents - row.cost_cents;
  g_array_append_val (rows, row);
}

GArray *
stead_price_answer_table (const SteadPriceAnswer *self)
{
  GArray *rows;
  double even;
  double top;
  double step;

  g_return_val_if_fail (self != NULL, NULL);

  rows = g_array_new (FALSE, FALSE, sizeof (SteadPriceRow));
  even = MIN ((double) self->figures.even_whole_units, TABLE_MAX_UNITS);
  top = MIN (MAX (MAX (self->cvp.planned_units, even) * 1.4, TABLE_STEPS), TABLE_MAX_UNITS);
  step = round_step (top / TABLE_STEPS);
  for (double units = 0; units <= top + step / 2; units += step)
    add_row (rows, &self->cvp, units);
  if (self->figures.even_whole_units >= 0 && (double) self->figures.even_whole_units <= TABLE_MAX_UNITS)
    add_row (rows, &self->cvp, even);
  add_row (rows, &self->cvp, self->cvp.planned_units);
  g_array_sort (rows, compare_units);
  return rows;
}
