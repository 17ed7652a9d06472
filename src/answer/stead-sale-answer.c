/* stead-sale-answer.c - how many to make for a sale day, and what it may bring. */
#include "config.h"

#include "answer/stead-sale-lots.h"
#include "answer/stead-sale-private.h"
#include "core/stead-money.h"
#include "core/stead-sale-day.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
line_free (SteadSaleLineAnswer *line)
{
  g_free (line->text);
  g_clear_pointer (&line->lots, g_ptr_array_unref);
  g_clear_pointer (&line->lots_texts, g_ptr_array_unref);
  g_free (line);
}

void
stead_sale_answer_free (SteadSaleAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  stead_sale_free (self->sale);
  stead_farm_free (self->farm);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

/* --- the lines -------------------------------------------------------------------------- */

static gboolean
read_line (SteadStore             *store,
           const SteadSaleAnswer  *self,
           SteadSaleLineAnswer    *line,
           GPtrArray              *sales,
           const GArray           *sums,
           GArray                 *claims,
           GError                **error)
{
  if (!stead_sale_unit_cost (store, line->good->product_id, &line->unit_cents, error))
    return FALSE;
  if (isnan (line->unit_cents))
    line->unit_cents = line->good->cost_cents;
  return stead_sale_read_ready (store, self, line, claims, error)
         && stead_sale_learn (store, self->sale, line, sales, sums, error);
}

static gboolean
read_lines (SteadStore       *store,
            SteadSaleAnswer  *self,
            GError          **error)
{
  g_autoptr(GPtrArray) sales = stead_sale_repo_list (store, error);
  g_autoptr(GArray) sums = sales != NULL ? stead_sale_repo_sums (store, 0, error) : NULL;
  g_autoptr(GArray) claims = sums != NULL ? stead_sale_lots_begin (store, self->sale, error) : NULL;

  for (guint i = 0; claims != NULL && i < self->sale->goods->len; i++)
    {
      SteadSaleLineAnswer *line = g_new0 (SteadSaleLineAnswer, 1);

      line->good = self->sale->goods->pdata[i];
      line->on_hand_units = line->coming_units = line->unit_cents = line->demand_units = NAN;
      line->ratio = line->best_units = line->sold_out_frac = line->sold_units = NAN;
      line->left_units = line->missed_units = NAN;
      g_ptr_array_add (self->lines, line);
      if (!read_line (store, self, line, sales, sums, claims, error))
        return FALSE;
    }
  return claims != NULL;
}

/* --- the whole day ------------------------------------------------------------------------ */

static void
sum_up (SteadSaleAnswer *self)
{
  for (guint i = 0; i < self->sale->costs->len; i++)
    self->fixed_cents += stead_sale_cost_paid (self->sale->costs->pdata[i]);
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = self->lines->pdata[i];
      const SteadSaleGood *good = line->good;

      self->full_cents += stead_money_round (good->planned * (double) good->price_cents);
      if (good->planned > 0)
        self->margin_cents += good->planned * ((double) good->price_cents - line->unit_cents);
    }
  self->even_cents = self->margin_cents > 0 ? (double) self->fixed_cents * (double) self->full_cents / self->margin_cents
                                            : NAN;
}

/* What is drawn has three points: a bell curve becomes the triangle of the same mean and
 * spread. */
static SteadThreePoint
points_of (const SteadDemand *demand)
{
  double half = sqrt (6) * demand->sd;

  switch (demand->shape)
    {
    case STEAD_DEMAND_TRIANGLE:
      return (SteadThreePoint) { demand->low, demand->likely, demand->high };
    case STEAD_DEMAND_UNIFORM:
      return (SteadThreePoint) { demand->low, (demand->low + demand->high) / 2, demand->high };
    default:
      return (SteadThreePoint) { MAX (0, demand->mean - half), demand->mean, demand->mean + half };
    }
}

static gboolean
draw (SteadSaleAnswer  *self,
      GError          **error)
{
  g_autofree SteadSaleProduct *products = g_new0 (SteadSaleProduct, self->lines->len);
  SteadSalePlan plan = { .products = products, .fixed_cents = (double) self->fixed_cents,
                         .together = STEAD_SALE_TOGETHER };
  g_autoptr(SteadSaleDraws) draws = NULL;
  double goodwill;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = self->lines->pdata[i];

      if (!line->has_demand || isnan (line->unit_cents))
        return TRUE;
      products[plan.n_products++] = (SteadSaleProduct) {
        .guess = points_of (&line->demand), .made = line->good->planned,
        .price_cents = (double) line->good->price_cents, .cost_cents = line->unit_cents,
        .left_cents = (double) line->good->left_cents, .lost_cents = (double) line->good->missed_cents,
        .stream = (guint32) line->good->product_id };
    }
  if (plan.n_products == 0)
    return TRUE;
  draws = stead_sale_draws_new (&plan, STEAD_SALE_DRAWS, STEAD_SALE_SEED, error);
  if (draws == NULL || !stead_sale_draws_run (draws, 0, stead_sale_draws_get_n_blocks (draws), NULL, NULL, error))
    return FALSE;
  stead_sale_draws_takings (draws, STEAD_BAND_LEVEL, &self->takings);
  stead_sale_draws_profit (draws, STEAD_BAND_LEVEL, &self->profit);
  stead_sale_draws_moments (draws, &self->mean_cents, &self->sd_cents, &goodwill);
  self->loss_frac = stead_sale_draws_loss_chance (draws);
  self->has_band = TRUE;
  return TRUE;
}

SteadSaleAnswer *
stead_sale_answer_of (SteadStore  *store,
                      SteadSale   *sale,
                      GError     **error)
{
  g_autoptr(SteadSaleAnswer) self = g_new0 (SteadSaleAnswer, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store) && sale != NULL, NULL);
  self->sale = sale;
  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) line_free);
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL || !read_lines (store, self, error))
    return NULL;
  sum_up (self);
  if (!draw (self, error))
    return NULL;
  stead_sale_answer_say (self);
  return g_steal_pointer (&self);
}

SteadSaleAnswer *
stead_sale_answer_new (SteadStore  *store,
                       gint64       sale_id,
                       GError     **error)
{
  SteadSale *sale;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  sale = stead_sale_repo_get (store, sale_id, error);
  return sale != NULL ? stead_sale_answer_of (store, sale, error) : NULL;
}
