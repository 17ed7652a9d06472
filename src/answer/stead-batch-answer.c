/* stead-batch-answer.c - "How does this batch stand beside its plan, and why did it end so?" */
#include "config.h"

#include "answer/stead-batch-answer.h"
#include "answer/stead-batch-private.h"
#include "answer/stead-wait.h"

#include <math.h>

#include "store/stead-crop-repo.h"
#include "store/stead-fish-repo.h"

void
stead_batch_row_free (SteadBatchRow *row)
{
  if (row == NULL)
    return;
  g_free (row->what);
  g_free (row->planned);
  g_free (row->actual);
  g_free (row->end);
  g_free (row);
}

void
stead_batch_answer_free (SteadBatchAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  stead_batch_money_clear (&self->money);
  g_clear_pointer (&self->product, stead_product_free);
  g_clear_pointer (&self->losses, g_ptr_array_unref);
  g_clear_pointer (&self->harvests, g_ptr_array_unref);
  g_clear_pointer (&self->treatments, g_ptr_array_unref);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->review, g_ptr_array_unref);
  stead_why_free (self->why);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

/* --- figures -------------------------------------------------------------------- */

static double
other_of (const double *cents)
{
  return cents[STEAD_COST_START] + cents[STEAD_COST_BEDDING] + cents[STEAD_COST_SUPPLIES] + cents[STEAD_COST_ASSETS];
}

void
stead_batch_figures_so_far (const SteadBatchAnswer *self,
                            SteadBatchFigures      *out)
{
  const SteadBatchMoney *money = &self->money;

  *out = (SteadBatchFigures) {
    .output = money->good_base,
    .value_cents = money->good_base > 0 ? money->good_base * self->price_cents : 0,
    .feed_kg = money->fed_kg * money->kept_frac,
    .feed_cents = money->so_far[STEAD_COST_FEED],
    .other_cents = other_of (money->so_far) - (self->is_over ? money->salvage_cents : 0),
    .care_minutes = money->batch->care_minutes_day * money->days,
  };
  out->cost_cents = out->feed_cents + out->other_cents;
}

/* Feed to come whose amount is not known is reckoned back from its money. */
static double
feed_to_come_kg (const SteadBatchMoney *money)
{
  double price;

  if (!isnan (money->feed_to_come_kg) || !(money->to_come[STEAD_COST_FEED] > 0))
    return isnan (money->feed_to_come_kg) ? 0 : money->feed_to_come_kg;
  price = money->fed_kg > 0 ? money->so_far[STEAD_COST_FEED] / (money->fed_kg * money->kept_frac) : NAN;
  return price > 0 ? money->to_come[STEAD_COST_FEED] / price : 0;
}

void
stead_batch_figures_at_end (const SteadBatchAnswer *self,
                            SteadBatchFigures      *out)
{
  const SteadBatchMoney *money = &self->money;
  double price = isnan (self->price_now_cents) ? money->plan.price_cents : self->price_now_cents;

  stead_batch_figures_so_far (self, out);
  if (self->is_over)
    return;
  out->output += money->cost.expected_base;
  if (money->cost.expected_base > 0)
    out->value_cents += money->cost.expected_base * price;
  out->feed_kg += feed_to_come_kg (money);
  out->feed_cents += money->to_come[STEAD_COST_FEED];
  out->other_cents += other_of (money->to_come) - money->salvage_cents;
  out->cost_cents = out->feed_cents + out->other_cents;
  out->care_minutes += money->batch->care_minutes_day * money->days_left;
}

/* The animals or the seed are bought as planned: the plan tells all other costs. */
void
stead_batch_figures_planned (const SteadBatchAnswer *self,
                             SteadBatchFigures      *out)
{
  const SteadBatchPlan *plan = &self->money.plan;
  const SteadBatchMoney *money = &self->money;
  int days = plan->ends_on != STEAD_DAY_NONE ? plan->ends_on - money->from + 1 : 0;

  *out = (SteadBatchFigures) {
    .output = plan->output_base,
    .value_cents = plan->output_base * plan->price_cents,
    .feed_kg = plan->feed_kg,
    .feed_cents = plan->feed_kg * plan->feed_cents_kg,
    .other_cents = plan->other_cents + money->so_far[STEAD_COST_START] - money->salvage_cents,
    .care_minutes = days > 0 ? plan->care_minutes_day * days : NAN,
  };
  out->cost_cents = (isnan (out->feed_cents) && isnan (plan->feed_kg) && !(money->fed_kg > 0) ? 0 : out->feed_cents)
                    + out->other_cents;
}

/* What is not planned is taken as it came, so that it explains nothing. */
static double
planned_or (double planned,
            double came)
{
  return isnan (planned) ? came : planned;
}

void
stead_batch_answer_vary (SteadBatchAnswer *self)
{
  const SteadBatchPlan *plan = &self->money.plan;
  SteadBatchFigures end, meant;
  double feed_price;

  stead_batch_figures_at_end (self, &end);
  stead_batch_figures_planned (self, &meant);
  if (!(plan->output_base > 0) || isnan (end.value_cents) || !(end.output > 0))
    return;
  feed_price = end.feed_kg > 0 ? end.feed_cents / end.feed_kg : planned_or (plan->feed_cents_kg, 0);
  self->came = (SteadBatchResult) { .output = end.output, .price_cents = end.value_cents / end.output,
                                    .feed_kg = end.feed_kg, .feed_cents_kg = feed_price,
                                    .other_cents = end.cost_cents - end.feed_kg * feed_price };
  self->planned = (SteadBatchResult) {
    .output = plan->output_base,
    .price_cents = planned_or (plan->price_cents, self->came.price_cents),
    .feed_kg = planned_or (plan->feed_kg, self->came.feed_kg * plan->output_base / end.output),
    .feed_cents_kg = planned_or (plan->feed_cents_kg, feed_price),
    .other_cents = planned_or (meant.other_cents, self->came.other_cents),
  };
  self->has_variance = stead_batch_variance (&self->planned, &self->came, &self->variance);
}

/* --- reading ---------------------------------------------------------------------- */

/* What one is told for: eggs by the dozen, weight by the farm's unit, else a piece. */
static gboolean
read_pack (SteadStore        *store,
           SteadBatchAnswer  *self,
           GError           **error)
{
  const SteadUnit *unit;

  if (!stead_batch_output_unit (store, self->money.batch, &unit, error))
    return FALSE;
  self->pack = STEAD_PACK_PIECE;
  self->pack_base = 1;
  if (self->money.batch->kind == STEAD_BATCH_FLOCK)
    {
      self->pack = STEAD_PACK_DOZEN;
      self->pack_base = 12;
    }
  else if (unit->dimension == STEAD_DIMENSION_MASS)
    {
      const SteadUnit *mass = stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units);

      self->pack = self->farm->units == STEAD_UNITS_US ? STEAD_PACK_POUND : STEAD_PACK_KILOGRAM;
      self->pack_base = stead_quantity_to_base (1, mass);
    }
  return TRUE;
}

/* How many there were at first, with those that came later. */
static gboolean
read_started (SteadStore        *store,
              SteadBatchAnswer  *self,
              GError           **error)
{
  const SteadBatchMoney *money = &self->money;
  gint64 id = money->batch->id;
  g_autoptr(SteadFlock) flock = NULL;
  g_autoptr(SteadFish) fish = NULL;
  g_autoptr(SteadCrop) crop = NULL;
  SteadFishTotals totals;

  switch (money->batch->kind)
    {
    case STEAD_BATCH_FLOCK:
      flock = stead_flock_repo_get (store, id, error);
      if (flock == NULL)
        return FALSE;
      self->started = flock->birds;
      return TRUE;
    case STEAD_BATCH_FISH:
      fish = stead_fish_repo_get (store, id, error);
      if (fish == NULL || !stead_fish_repo_totals (store, id, money->from, money->to, &totals, error))
        return FALSE;
      self->started = fish->stocked + totals.moved_in - totals.moved_out;
      return TRUE;
    case STEAD_BATCH_CROP:
      crop = stead_crop_repo_get (store, id, error);
      if (crop == NULL)
        return FALSE;
      self->started = crop->plants;
      return TRUE;
    case STEAD_BATCH_KITCHEN:
    default:
      return TRUE;
    }
}

static gboolean
read_losses (SteadStore        *store,
             SteadBatchAnswer  *self,
             GError           **error)
{
  const SteadBatchMoney *money = &self->money;

  self->losses = stead_batch_repo_losses (store, money->batch->id, money->from, money->to, error);
  for (guint i = 0; self->losses != NULL && i < self->losses->len; i++)
    self->lost += ((const SteadLoss *) self->losses->pdata[i])->n;
  return self->losses != NULL;
}

static gboolean
is_planned (const SteadBatchPlan *plan)
{
  return !isnan (plan->output_base) || !isnan (plan->price_cents) || !isnan (plan->feed_kg)
         || !isnan (plan->feed_cents_kg) || !isnan (plan->other_cents) || !isnan (plan->care_minutes_day)
         || !isnan (plan->lost_frac) || plan->ends_on != STEAD_DAY_NONE;
}

SteadBatchAnswer *
stead_batch_answer_new (SteadStore  *store,
                        gint64       batch_id,
                        GError     **error)
{
  g_autoptr(SteadBatchAnswer) self = g_new0 (SteadBatchAnswer, 1);
  const SteadBatchMoney *money = &self->money;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL || !stead_batch_money_read (store, self->farm, batch_id, &self->money, error))
    return NULL;
  self->is_over = money->outlook.basis == STEAD_OUTLOOK_OVER;
  self->has_plan = is_planned (&money->plan);
  self->unit_cents = stead_batch_unit_cents (&money->cost);
  self->harvests = stead_harvest_repo_list (store, batch_id, money->from, money->to, error);
  if (self->harvests == NULL)
    return NULL;
  self->treatments = stead_treatment_repo_list (store, batch_id, error);
  if (self->treatments == NULL
      || !stead_wait_read (store, batch_id, stead_store_get_today (store), &self->wait_until, error)
      || !read_pack (store, self, error)
      || !read_started (store, self, error)
      || !read_losses (store, self, error)
      || !stead_batch_value_read (store, self, error))
    return NULL;
  stead_batch_answer_vary (self);
  stead_batch_answer_put_in_rows (self);
  stead_batch_answer_put_in_words (self);
  stead_batch_answer_review (self);
  return g_steal_pointer (&self);
}
