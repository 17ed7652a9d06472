/* stead-batch-value.c - what came of a batch is worth, at the prices of its days.
 *
 * Each part of the output counts at the price that was in force when it came, sold or
 * not: how well it sold is another question.  (Common practice, no source.)
 */
#include "config.h"

#include "answer/stead-batch-private.h"

#include <math.h>

/* The product of the batch that is still sold, else any; one with a price first. */
static gboolean
read_product (SteadStore        *store,
              SteadBatchAnswer  *self,
              GPtrArray        **out_prices,
              GError           **error)
{
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, TRUE, error);
  g_autoptr(GPtrArray) best_prices = NULL;
  int best_rank = 0;

  for (guint i = 0; products != NULL && i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];
      g_autoptr(GPtrArray) prices = NULL;
      int rank;

      if (product->batch_id != self->money.batch->id)
        continue;
      prices = stead_product_repo_prices (store, product->id, error);
      if (prices == NULL)
        return FALSE;
      rank = 1 + (product->retired_on == STEAD_DAY_NONE) + 2 * (prices->len > 0);
      if (rank <= best_rank)
        continue;
      best_rank = rank;
      g_clear_pointer (&self->product, stead_product_free);
      self->product = stead_product_repo_get (store, product->id, error);
      if (self->product == NULL)
        return FALSE;
      g_clear_pointer (&best_prices, g_ptr_array_unref);
      best_prices = g_steal_pointer (&prices);
    }
  *out_prices = g_steal_pointer (&best_prices);
  return products != NULL;
}

/* The price in force on @day; before the first one, the first. */
static double
price_on (const GPtrArray *prices,
          SteadDay         day)
{
  double cents = (double) ((const SteadPrice *) prices->pdata[0])->cents;

  for (guint i = 0; i < prices->len; i++)
    {
      const SteadPrice *price = prices->pdata[i];

      if (price->from_day <= day)
        cents = (double) price->cents;
    }
  return cents;
}

/* Good eggs from @from to @to, both included. */
static gboolean
good_eggs (SteadStore              *store,
           const SteadBatchAnswer  *self,
           SteadDay                 from,
           SteadDay                 to,
           double                  *out,
           GError                 **error)
{
  SteadFlockTotals totals = { 0 };

  *out = 0;
  if (to < from)
    return TRUE;
  if (!stead_flock_repo_totals (store, self->money.batch->id, from, to, &totals, error))
    return FALSE;
  *out = (double) (totals.eggs - totals.cracked);
  return TRUE;
}

/* Eggs come every day: each span of one price is asked for by itself. */
static gboolean
value_eggs (SteadStore              *store,
            const SteadBatchAnswer  *self,
            const GPtrArray         *prices,
            double                  *out_cents,
            GError                 **error)
{
  SteadDay from = self->money.from;

  *out_cents = 0;
  for (guint i = 0; i < prices->len && from <= self->money.to; i++)
    {
      const SteadPrice *price = prices->pdata[i];
      SteadDay next = i + 1 < prices->len ? ((const SteadPrice *) prices->pdata[i + 1])->from_day : self->money.to + 1;
      SteadDay to = MIN (next - 1, self->money.to);
      double eggs;

      if (to < from)
        continue;
      if (!good_eggs (store, self, from, to, &eggs, error))
        return FALSE;
      *out_cents += eggs * (double) price->cents;
      from = to + 1;
    }
  return TRUE;
}

static void
value_harvests (const SteadBatchAnswer *self,
                const GPtrArray        *prices,
                double                 *out_cents)
{
  *out_cents = 0;
  for (guint i = 0; i < self->harvests->len; i++)
    {
      const SteadHarvest *harvest = self->harvests->pdata[i];

      *out_cents += harvest->quantity_base * price_on (prices, harvest->day);
    }
}

gboolean
stead_batch_value_read (SteadStore        *store,
                        SteadBatchAnswer  *self,
                        GError           **error)
{
  g_autoptr(GPtrArray) prices = NULL;
  double cents;

  self->price_cents = self->price_now_cents = NAN;
  if (!read_product (store, self, &prices, error))
    return FALSE;
  if (prices == NULL || prices->len == 0)
    return TRUE;
  if (self->money.batch->kind == STEAD_BATCH_FLOCK)
    {
      if (!value_eggs (store, self, prices, &cents, error))
        return FALSE;
    }
  else
    value_harvests (self, prices, &cents);
  self->price_now_cents = price_on (prices, self->money.to) / self->product->base_per_unit;
  self->price_cents = self->money.good_base > 0
                      ? cents / self->product->base_per_unit / self->money.good_base : self->price_now_cents;
  return TRUE;
}
