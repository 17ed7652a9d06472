/* stead-sale-demand.c - what people may ask for on a sale day, and what will be there. */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-batch-outlook.h"
#include "answer/stead-cost-answer.h"
#include "answer/stead-sale-lots.h"
#include "answer/stead-sale-private.h"
#include "core/stead-demand-learn.h"
#include "store/stead-kitchen-repo.h"

#include <math.h>

/* With so many days at the same place those alone are learned from.  Own rule. */
#define ENOUGH_DAYS 3

/* Without a guess, past days alone give one this far around their mean.  Own rule. */
#define WIDE_LOW 0.5
#define WIDE_HIGH 1.5

/* --- past days ------------------------------------------------------------------------ */

static const SteadSale *
find_sale (GPtrArray *sales,
           gint64     id)
{
  for (guint i = 0; i < sales->len; i++)
    if (((const SteadSale *) sales->pdata[i])->id == id)
      return sales->pdata[i];
  return NULL;
}

/* Days of this product that are over, at @location or (%NULL) anywhere; those before the
 * sale only. */
static GArray *
past_days (const SteadSale *sale,
           gint64           product_id,
           GPtrArray       *sales,
           const GArray    *sums,
           const char      *location)
{
  GArray *days = g_array_new (FALSE, FALSE, sizeof (SteadPastDay));

  for (guint i = 0; i < sums->len && days->len < STEAD_DEMAND_MOST_DAYS; i++)
    {
      const SteadSaleSum *sum = &g_array_index (sums, SteadSaleSum, i);
      const SteadSale *past = sum->product_id == product_id ? find_sale (sales, sum->sale_id) : NULL;
      SteadPastDay day = { .sold = sum->sold };

      if (past == NULL || past->id == sale->id || past->count_id == 0 || past->day >= sale->day)
        continue;
      if (location != NULL && g_strcmp0 (past->location, location) != 0)
        continue;
      day.sold_out = !(stead_sale_sum_left (sum) > 0);
      g_array_append_val (days, day);
    }
  return days;
}

static gboolean
guess_of (const SteadSaleGood *good,
          const GArray        *days,
          SteadThreePoint     *out)
{
  double sum = 0;

  if (!isnan (good->likely))
    {
      *out = (SteadThreePoint) { good->low, good->likely, good->high };
      return TRUE;
    }
  for (guint i = 0; i < days->len; i++)
    sum += g_array_index (days, SteadPastDay, i).sold;
  if (!(sum > 0))
    return FALSE;
  sum /= days->len;
  *out = (SteadThreePoint) { WIDE_LOW * sum, sum, WIDE_HIGH * sum };
  return TRUE;
}

static void
judge (SteadSaleLineAnswer *line)
{
  const SteadSaleGood *good = line->good;
  SteadOrderOnce order = { .demand = line->demand };

  line->demand_units = stead_demand_mean (&line->demand);
  if (good->planned > 0)
    {
      line->left_units = stead_demand_expected_left (&line->demand, good->planned);
      line->missed_units = stead_demand_expected_short (&line->demand, good->planned);
      line->sold_out_frac = stead_demand_chance_sold_out (&line->demand, good->planned);
      line->sold_units = good->planned - line->left_units;
    }
  if (isnan (line->unit_cents))
    return;
  order.short_cents = (double) good->price_cents - line->unit_cents + (double) good->missed_cents;
  order.over_cents = line->unit_cents - (double) good->left_cents;
  if (!(order.short_cents > 0 && order.over_cents > 0))
    return;
  line->ratio = stead_order_once_ratio (&order);
  line->best_units = MAX (0, round (stead_order_once_quantity (&order)));
}

gboolean
stead_sale_learn (SteadStore           *store,
                  const SteadSale      *sale,
                  SteadSaleLineAnswer  *line,
                  GPtrArray            *sales,
                  const GArray         *sums,
                  GError              **error)
{
  g_autoptr(GArray) days = past_days (sale, line->good->product_id, sales, sums, sale->location);
  SteadThreePoint guess;

  if (days->len < ENOUGH_DAYS)
    {
      g_array_unref (g_steal_pointer (&days));
      days = past_days (sale, line->good->product_id, sales, sums, NULL);
    }
  if (!guess_of (line->good, days, &guess))
    return TRUE;
  line->n_days = days->len;
  if (days->len == 0 && !(guess.high > guess.low))
    line->demand = (SteadDemand) { .shape = STEAD_DEMAND_UNIFORM, .low = guess.low * 0.99, .high = guess.high * 1.01 + 0.01 };
  else if (days->len == 0)
    line->demand = (SteadDemand) { .shape = STEAD_DEMAND_TRIANGLE, .low = guess.low, .likely = guess.likely,
                                   .high = guess.high };
  else if (!stead_demand_learn (&guess, (const SteadPastDay *) (void *) days->data, days->len, &line->demand, error))
    return FALSE;
  line->has_demand = TRUE;
  judge (line);
  return TRUE;
}

/* --- what will be there ------------------------------------------------------------------ */

/* What is in lots for it: not past its best-by day, and not claimed by others. */
static gboolean
read_on_hand (SteadStore           *store,
              const SteadSale      *sale,
              const SteadProduct   *product,
              SteadSaleLineAnswer  *line,
              GArray               *claims,
              GError              **error)
{
  if (line->good->item_id == 0)
    return TRUE;
  line->lots = stead_sale_lots_share (store, sale->day, line->good, product, claims, error);
  if (line->lots == NULL)
    return FALSE;
  line->on_hand_units = 0;
  for (guint i = 0; i < line->lots->len; i++)
    line->on_hand_units += ((const SteadSaleLotChoice *) line->lots->pdata[i])->there_units;
  /* After the cash-up the lots are what they were. */
  if (sale->count_id != 0)
    g_clear_pointer (&line->lots, g_ptr_array_unref);
  else
    line->lots_texts = stead_sale_lots_texts (line->lots, product->pack, line->good->planned);
  return TRUE;
}

/* What kitchen batches that are planned or under way will make by then. */
static gboolean
read_cooking (SteadStore           *store,
              const SteadSale      *sale,
              SteadSaleLineAnswer  *line,
              GError              **error)
{
  g_autoptr(GPtrArray) kitchens = stead_kitchen_repo_list (store, FALSE, error);
  double base = 0;

  if (kitchens == NULL)
    return FALSE;
  for (guint i = 0; i < kitchens->len; i++)
    {
      const SteadKitchen *kitchen = kitchens->pdata[i];

      if (kitchen->item_id == line->good->item_id && kitchen->batch.started_on <= sale->day)
        base += kitchen->wanted_base;
    }
  if (base > 0)
    line->coming_units = base / line->good->base_per_unit;
  return TRUE;
}

/* What the batch is still expected to give, by the share of days until then. */
static gboolean
read_coming (SteadStore           *store,
             const SteadSale      *sale,
             const SteadProduct   *product,
             SteadSaleLineAnswer  *line,
             GError              **error)
{
  SteadDay today = stead_store_get_today (store);
  g_autoptr(SteadBatch) batch = NULL;
  SteadBatchOutlook outlook;

  if (product->batch_id == 0 && line->good->item_id != 0)
    return read_cooking (store, sale, line, error);
  if (product->batch_id == 0 || sale->day <= today)
    return TRUE;
  batch = stead_batch_repo_get (store, product->batch_id, error);
  if (batch == NULL || !stead_batch_outlook_read (store, batch, &outlook, error))
    return FALSE;
  if (outlook.is_live || isnan (outlook.expected_base) || outlook.ends_on == STEAD_DAY_NONE || outlook.ends_on <= today)
    return TRUE;
  line->coming_units = outlook.expected_base * MIN (1, (double) (sale->day - today) / (outlook.ends_on - today)) /
                       line->good->base_per_unit;
  return TRUE;
}

/* Products before it that come from the same batch or item take their part first. */
static void
share_coming (const SteadSaleAnswer *self,
              SteadSaleLineAnswer   *line)
{
  double taken = 0;

  for (guint i = 0; i < self->lines->len && self->lines->pdata[i] != line; i++)
    {
      const SteadSaleLineAnswer *before = self->lines->pdata[i];
      double in_lots = before->lots != NULL ? before->good->planned - stead_sale_lots_rest (before->lots, before->good->planned)
                                            : 0;

      if (before->source_id == line->source_id && before->source_is_batch == line->source_is_batch)
        taken += MIN (MAX (0, before->good->planned - in_lots), MAX (0, before->coming_units)) * before->good->base_per_unit;
    }
  line->coming_units = MAX (0, line->coming_units - taken / line->good->base_per_unit);
}

gboolean
stead_sale_read_ready (SteadStore             *store,
                       const SteadSaleAnswer  *self,
                       SteadSaleLineAnswer    *line,
                       GArray                 *claims,
                       GError                **error)
{
  g_autoptr(SteadProduct) product = stead_product_repo_get (store, line->good->product_id, error);

  if (product == NULL || !read_on_hand (store, self->sale, product, line, claims, error) ||
      !read_coming (store, self->sale, product, line, error))
    return FALSE;
  line->source_is_batch = product->batch_id != 0;
  line->source_id = product->batch_id != 0 ? product->batch_id : product->item_id;
  if (!isnan (line->coming_units) && line->source_id != 0)
    share_coming (self, line);
  return TRUE;
}

/* --- cost ----------------------------------------------------------------------------------- */

/* What the lots of an item cost for one base unit; NAN: never bought or made. */
static gboolean
read_item_cents (SteadStore  *store,
                 gint64       item_id,
                 double      *out,
                 GError     **error)
{
  SteadStock stock;

  if (!stead_lot_repo_stock (store, item_id, stead_store_get_today (store), 14, &stock, error))
    return FALSE;
  *out = stock.next_unit_cents;
  return TRUE;
}

static gboolean
cost_of_lots (SteadStore          *store,
              const SteadProduct  *product,
              double              *out,
              GError             **error)
{
  double unit = NAN, sum;

  if (product->item_id != 0 && !read_item_cents (store, product->item_id, &unit, error))
    return FALSE;
  sum = unit * product->base_per_unit;
  for (guint i = 0; i < product->parts->len; i++)
    {
      const SteadProductPart *part = &g_array_index (product->parts, SteadProductPart, i);

      if (!read_item_cents (store, part->item_id, &unit, error))
        return FALSE;
      sum += isnan (unit) ? 0 : unit * part->quantity_base;
    }
  *out = sum;
  return TRUE;
}

gboolean
stead_sale_unit_cost (SteadStore  *store,
                      gint64       product_id,
                      double      *out_cents,
                      GError     **error)
{
  g_autoptr(SteadProduct) product = NULL;
  g_autoptr(SteadCostAnswer) cost = NULL;
  g_autoptr(GError) problem = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_cents != NULL, FALSE);
  product = stead_product_repo_get (store, product_id, error);
  if (product == NULL)
    return FALSE;
  cost = stead_cost_answer_new (store, product_id, STEAD_PERIOD_12_WEEKS, &problem);
  if (cost != NULL)
    {
      *out_cents = (double) cost->sheet.unit_cents;
      return TRUE;
    }
  if (g_error_matches (problem, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING))
    return cost_of_lots (store, product, out_cents, error);
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}
