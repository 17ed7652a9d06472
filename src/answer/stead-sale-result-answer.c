/* stead-sale-result-answer.c - what a sale day brought, and why. */
#include "config.h"

#include "answer/stead-sale-result-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Parts of a difference that are smaller are not told. */
#define LEAST_CENTS 100

void
stead_result_answer_free (SteadResultAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_clear_pointer (&self->lefts, g_ptr_array_unref);
  g_clear_pointer (&self->hours, g_ptr_array_unref);
  g_clear_pointer (&self->reasons, g_ptr_array_unref);
  g_clear_pointer (&self->prices, g_ptr_array_unref);
  stead_cash_count_free (self->count);
  stead_sale_free (self->sale);
  stead_farm_free (self->farm);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

/* --- the lines --------------------------------------------------------------------------- */

static void
fill_line (SteadResultLine *line,
           double           known_cents)
{
  const SteadSaleGood *good = line->good;

  line->plan_sold = isnan (good->likely) ? good->planned : MIN (good->planned, good->likely);
  line->cost_cents = line->sum.has_cost && line->sum.sold > 0 && line->sum.sold_cents > 0
                     ? (double) line->sum.sold_cents / line->sum.sold : NAN;
  line->plan_cents = isnan (good->cost_cents) ? known_cents : good->cost_cents;
  if (isnan (line->plan_cents))
    line->plan_cents = isnan (line->cost_cents) ? 0 : line->cost_cents;
  if (isnan (line->cost_cents))
    line->cost_cents = line->plan_cents;
  line->price_cents = line->sum.sold > 0 ? (double) line->sum.takings_cents / line->sum.sold : (double) good->price_cents;
  line->plan_lost_cents = (good->planned - line->plan_sold) * MAX (0, line->plan_cents - (double) good->left_cents);
  line->lost_units = line->sum.samples + line->sum.given + line->sum.spoiled + line->sum.to_given + line->sum.to_waste;
  line->lost_cents = line->lost_units * line->cost_cents;
}

static gboolean
read_lines (SteadStore         *store,
            SteadResultAnswer  *self,
            GError            **error)
{
  g_autoptr(GArray) sums = stead_sale_repo_sums (store, self->sale->id, error);

  for (guint i = 0; sums != NULL && i < self->sale->goods->len; i++)
    {
      SteadResultLine *line = g_new0 (SteadResultLine, 1);
      const SteadSaleSum *sum;
      double known = NAN;

      line->good = self->sale->goods->pdata[i];
      sum = stead_sale_sums_find (sums, line->good->id);
      if (sum != NULL)
        line->sum = *sum;
      g_ptr_array_add (self->lines, line);
      if (isnan (line->good->cost_cents) && !stead_sale_unit_cost (store, line->good->product_id, &known, error))
        return FALSE;
      fill_line (line, known);
    }
  return sums != NULL;
}

/* --- plan against result -------------------------------------------------------------------- */

static void
compare (SteadResultAnswer *self)
{
  g_autofree SteadSaleLine *planned = g_new0 (SteadSaleLine, self->lines->len + 1);
  g_autofree SteadSaleLine *actual = g_new0 (SteadSaleLine, self->lines->len + 1);
  SteadSaleResult plan = { .lines = planned }, result = { .lines = actual };

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadResultLine *line = self->lines->pdata[i];

      planned[i] = (SteadSaleLine) { line->plan_sold, (double) line->good->price_cents, line->plan_cents };
      actual[i] = (SteadSaleLine) { line->sum.sold, line->price_cents, line->cost_cents };
      plan.lost_cents += line->plan_lost_cents;
      result.lost_cents += line->lost_cents;
    }
  for (guint i = 0; i < self->sale->costs->len; i++)
    {
      const SteadSaleCost *cost = self->sale->costs->pdata[i];

      plan.fixed_cents += (double) cost->cents;
      result.fixed_cents += (double) stead_sale_cost_paid (cost);
    }
  self->has_variance = stead_sale_variance (&plan, &result, self->lines->len, &self->variance);
}

/* --- sentences --------------------------------------------------------------------------------- */

typedef struct
{
  double      cents;
  const char *more;     /* %s: a sum of money */
  const char *less;
} Reason;

static int
by_size (gconstpointer a,
         gconstpointer b)
{
  double one = fabs (((const Reason *) a)->cents), two = fabs (((const Reason *) b)->cents);

  return one < two ? 1 : one > two ? -1 : 0;
}

static void
say_reasons (SteadResultAnswer *self)
{
  const SteadSaleVariance *v = &self->variance;
  Reason reasons[] = {
    { v->quantity_cents, N_("More was sold than planned: that brought %s more."),
      N_("Less was sold than planned: that cost %s.") },
    { v->mix_cents, N_("People chose more of what leaves more: %s more."),
      N_("People chose more of what leaves less: %s less.") },
    { v->price_cents, N_("Prices were higher than planned: %s more."), N_("Prices were lower than planned: %s less.") },
    { v->cost_cents, N_("The goods cost less than thought: %s more is left."),
      N_("The goods cost more than thought: %s less is left.") },
    { v->lost_cents, N_("Less was left over, given away or spoiled than planned: %s more is left."),
      N_("More was left over, given away or spoiled than planned: %s less is left.") },
    { v->fixed_cents, N_("The day's own costs were lower: %s more is left."),
      N_("The day's own costs were higher: %s less is left.") },
  };

  qsort (reasons, G_N_ELEMENTS (reasons), sizeof reasons[0], by_size);
  for (gsize i = 0; i < G_N_ELEMENTS (reasons); i++)
    {
      g_autofree char *sum = stead_money_format (stead_money_round (fabs (reasons[i].cents)), self->farm->currency);

      if (fabs (reasons[i].cents) < LEAST_CENTS)
        break;
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
      g_ptr_array_add (self->reasons, g_strdup_printf (_(reasons[i].cents > 0 ? reasons[i].more : reasons[i].less), sum));
#pragma GCC diagnostic pop
    }
  if (self->reasons->len == 0)
    g_ptr_array_add (self->reasons, g_strdup (_("It went as planned.")));
}

static char *
result_sentence (const SteadResultAnswer *self)
{
  const char *currency = self->farm->currency;
  g_autofree char *taken = stead_money_format (self->till.takings_cents + self->till.ahead_cents, currency);
  g_autofree char *left = stead_money_format (stead_money_round (self->variance.actual_cents), currency);
  g_autofree char *off = stead_money_format (stead_money_round (fabs (self->variance.actual_cents - self->variance.planned_cents)),
                                             currency);

  if (!self->has_variance)
    return g_strdup_printf (_("The stall took <b>%s</b>."), taken);
  if (self->variance.actual_cents >= self->variance.planned_cents)
    return g_strdup_printf (_("The stall took <b>%s</b>, and <b>%s</b> is left after all costs: %s more than planned."),
                            taken, left, off);
  return g_strdup_printf (_("The stall took <b>%s</b>, and <b>%s</b> is left after all costs: %s less than planned."),
                          taken, left, off);
}

/* --- prices ------------------------------------------------------------------------------ */

/* The price of a line before its change at @at. */
static gint64
price_before (const GArray        *prices,
              guint                at,
              const SteadSaleGood *good)
{
  for (guint i = at; i-- > 0;)
    if (g_array_index (prices, SteadSalePrice, i).line_id == good->id)
      return g_array_index (prices, SteadSalePrice, i).price_cents;
  return good->price_cents;
}

static gboolean
read_prices (SteadStore         *store,
             SteadResultAnswer  *self,
             GError            **error)
{
  g_autoptr(GArray) prices = stead_sale_tally_prices (store, self->sale->id, error);

  for (guint i = 0; prices != NULL && i < prices->len; i++)
    {
      const SteadSalePrice *price = &g_array_index (prices, SteadSalePrice, i);
      const SteadSaleGood *good = stead_sale_find_good (self->sale, price->line_id);
      g_autoptr(GDateTime) time = g_date_time_new_from_unix_local (price->at);
      g_autofree char *before = NULL;
      g_autofree char *after = NULL;
      g_autofree char *clock = NULL;

      if (good == NULL || time == NULL)
        continue;
      before = stead_money_format (price_before (prices, i, good), self->farm->currency);
      after = stead_money_format (price->price_cents, self->farm->currency);
      clock = stead_sale_clock (60 * g_date_time_get_hour (time) + g_date_time_get_minute (time));
      /* Translators: a product, its price, an hour, and the price after it. */
      g_ptr_array_add (self->prices, g_strdup_printf (_("%1$s: %2$s until %3$s, then %4$s."), good->name, before, clock, after));
    }
  return prices != NULL;
}

static char *
result_caution (const SteadResultAnswer *self)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadResultLine *line = self->lines->pdata[i];
      g_autofree char *sentence = NULL;

      if (line->cost_cents > 0)
        continue;
      sentence = g_strdup_printf (_("What one of “%s” costs is not known yet."), line->good->name);
      stead_words_add (text, sentence);
    }
  return stead_words_end (text);
}

SteadResultAnswer *
stead_result_answer_new (SteadStore  *store,
                         gint64       sale_id,
                         GError     **error)
{
  g_autoptr(SteadResultAnswer) self = g_new0 (SteadResultAnswer, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->lines = g_ptr_array_new_with_free_func (g_free);
  self->reasons = g_ptr_array_new_with_free_func (g_free);
  self->prices = g_ptr_array_new_with_free_func (g_free);
  self->farm = stead_farm_repo_get (store, error);
  self->sale = self->farm != NULL ? stead_sale_repo_get (store, sale_id, error) : NULL;
  self->lefts = self->sale != NULL ? stead_sale_left_list (store, sale_id, error) : NULL;
  self->hours = self->lefts != NULL ? stead_work_repo_of_sale (store, sale_id, error) : NULL;
  if (self->hours == NULL || !read_lines (store, self, error) || !read_prices (store, self, error))
    return NULL;
  if (self->sale->count_id != 0)
    {
      self->count = stead_cash_count_repo_get (store, self->sale->count_id, error);
      if (self->count == NULL)
        return NULL;
      self->over_cents = stead_cash_count_over_cents (self->count);
    }
  if (!stead_sale_till (store, self->sale, NULL, self->count != NULL ? self->count->pieces : NULL, &self->till, error))
    return NULL;
  compare (self);
  if (self->has_variance)
    say_reasons (self);
  self->sentence = result_sentence (self);
  self->caution = result_caution (self);
  return g_steal_pointer (&self);
}
