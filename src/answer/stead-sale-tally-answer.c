/* stead-sale-tally-answer.c - the stall while it sells. */
#include "config.h"

#include "answer/stead-sale-tally-answer.h"
#include "core/stead-coins.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
line_free (SteadTallyLine *line)
{
  g_free (line->left);
  g_free (line);
}

void
stead_tally_answer_free (SteadTallyAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_clear_pointer (&self->orders, g_ptr_array_unref);
  stead_sale_free (self->sale);
  stead_farm_free (self->farm);
  g_free (self->last);
  g_free (self->sentence);
  g_free (self);
}

static double
ordered (const GPtrArray *orders,
         gint64           line_id)
{
  double sum = 0;

  for (guint i = 0; i < orders->len; i++)
    {
      const SteadSaleOrder *order = orders->pdata[i];

      if (order->line_id == line_id && order->tap_id == 0)
        sum += order->units;
    }
  return sum;
}

static char *
left_text (const SteadTallyLine *line)
{
  g_autofree char *left = stead_words_units (line->good->pack, MAX (0, line->left_units));
  g_autofree char *kept = stead_words_units (line->good->pack, line->ordered_units);

  if (!(line->left_units > 1e-6))
    return g_strdup (_("sold out"));
  if (line->ordered_units > 0)
    /* Translators: "4 dozen left, 1 dozen ordered". */
    return g_strdup_printf (_("%s left, %s ordered"), left, kept);
  return g_strdup_printf (_("%s left"), left);
}

static gboolean
read_lines (SteadStore        *store,
            SteadTallyAnswer  *self,
            GError           **error)
{
  g_autoptr(GArray) sums = stead_sale_repo_sums (store, self->sale->id, error);
  g_autoptr(GArray) prices = sums != NULL ? stead_sale_tally_prices (store, self->sale->id, error) : NULL;

  for (guint i = 0; prices != NULL && i < self->sale->goods->len; i++)
    {
      SteadTallyLine *line = g_new0 (SteadTallyLine, 1);
      const SteadSaleSum *sum;

      line->good = self->sale->goods->pdata[i];
      line->price_cents = line->good->price_cents;
      sum = stead_sale_sums_find (sums, line->good->id);
      if (sum != NULL)
        line->sum = *sum;
      for (guint j = 0; j < prices->len; j++)
        if (g_array_index (prices, SteadSalePrice, j).line_id == line->good->id)
          line->price_cents = g_array_index (prices, SteadSalePrice, j).price_cents;
      line->left_units = stead_sale_good_brought (line->good) - stead_sale_sum_tallied (&line->sum);
      line->ordered_units = ordered (self->orders, line->good->id);
      line->left = left_text (line);
      g_ptr_array_add (self->lines, line);
    }
  return prices != NULL;
}

static gboolean
read_last (SteadStore        *store,
           SteadTallyAnswer  *self,
           GError           **error)
{
  g_autoptr(GArray) taps = stead_sale_tally_list (store, self->sale->id, error);

  for (guint i = taps != NULL ? taps->len : 0; i > 0; i--)
    {
      const SteadSaleTap *tap = &g_array_index (taps, SteadSaleTap, i - 1);
      const SteadSaleGood *good = stead_sale_find_good (self->sale, tap->line_id);
      g_autofree char *amount = NULL;

      if (tap->back_id != 0 || tap->taken_back || good == NULL)
        continue;
      amount = stead_words_units (good->pack, tap->units);
      self->last_tap = tap->id;
      /* Translators: a product, an amount, and what became of it: "Eggs, 1 dozen: sold". */
      self->last = g_strdup_printf (_("%s, %s: %s"), good->name, amount, stead_sale_tap_name (tap->kind));
      return TRUE;
    }
  return taps != NULL;
}

/* What sells fastest for what is left: the least days' share that is left. */
static const SteadTallyLine *
runs_out_next (const SteadTallyAnswer *self)
{
  const SteadTallyLine *next = NULL;
  double least = 0.34;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadTallyLine *line = self->lines->pdata[i];
      double brought = stead_sale_good_brought (line->good);

      if (brought > 0 && line->left_units > 1e-6 && line->left_units / brought < least)
        {
          next = line;
          least = line->left_units / brought;
        }
    }
  return next;
}

static char *
tally_sentence (const SteadTallyAnswer *self)
{
  g_autofree char *taken = stead_money_format (self->till.takings_cents + self->till.ahead_cents, self->farm->currency);
  g_autofree char *box = stead_money_format (self->till.expected_cents, self->farm->currency);
  const SteadTallyLine *next = runs_out_next (self);

  if (self->last_tap == 0)
    return g_strdup_printf (_("Nothing is tallied yet. There must be <b>%s</b> in the box."), box);
  if (next == NULL)
    return g_strdup_printf (_("Taken so far: <b>%s</b>. There must be <b>%s</b> in the box."), taken, box);
  {
    g_autofree char *name = g_markup_escape_text (next->good->name, -1);

    return g_strdup_printf (_("Taken so far: <b>%s</b>. There must be <b>%s</b> in the box. %s runs out next: %s."),
                            taken, box, name, next->left);
  }
}

SteadTallyAnswer *
stead_tally_answer_new (SteadStore  *store,
                        gint64       sale_id,
                        GError     **error)
{
  g_autoptr(SteadTallyAnswer) self = g_new0 (SteadTallyAnswer, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) line_free);
  self->farm = stead_farm_repo_get (store, error);
  self->sale = self->farm != NULL ? stead_sale_repo_get (store, sale_id, error) : NULL;
  self->orders = self->sale != NULL ? stead_sale_order_list (store, sale_id, error) : NULL;
  if (self->orders == NULL || !read_lines (store, self, error) || !read_last (store, self, error) ||
      !stead_sale_till (store, self->sale, NULL, NULL, &self->till, error))
    return NULL;
  self->sentence = tally_sentence (self);
  return g_steal_pointer (&self);
}

/* --- change ------------------------------------------------------------------------------- */

static char *
pieces_text (const SteadFarm *farm,
             const gint64    *faces,
             const gint64    *pieces,
             gsize            n)
{
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < n; i++)
    if (pieces[i] > 0)
      {
        g_autofree char *face = stead_money_format (faces[i], farm->currency);

        g_string_append_printf (text, "%s%" G_GINT64_FORMAT " × %s", text->len > 0 ? ", " : "", pieces[i], face);
      }
  return g_string_free (text, FALSE);
}

char *
stead_tally_change (const SteadFarm *farm,
                    gint64           due_cents,
                    gint64           given_cents)
{
  gsize n = 0;
  const gint64 *faces;
  gint64 pieces[STEAD_COINS_MOST_FACES] = { 0 };
  g_autofree char *back = NULL;
  g_autofree char *how = NULL;

  g_return_val_if_fail (farm != NULL, NULL);
  back = stead_money_format (ABS (given_cents - due_cents), farm->currency);
  if (given_cents < due_cents)
    return g_strdup_printf (_("%s is still missing."), back);
  if (given_cents == due_cents)
    return g_strdup (_("No change to give."));
  faces = stead_coins_faces (farm->currency, &n);
  if (faces == NULL || !stead_coins_change (given_cents - due_cents, faces, NULL, n, pieces, NULL))
    return g_strdup_printf (_("Give back %s."), back);
  how = pieces_text (farm, faces, pieces, n);
  /* Translators: a sum, and bills and coins: "Give back $3.50: 3 × $1.00, 2 × $0.25". */
  return g_strdup_printf (_("Give back %s: %s"), back, how);
}
