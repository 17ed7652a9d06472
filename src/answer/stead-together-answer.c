/* stead-together-answer.c - "Sold together, how much must they bring?" */
#include "config.h"

#include "answer/stead-together-answer.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-price-answer.h"
#include "answer/stead-together-private.h"
#include "core/stead-mix.h"
#include "core/stead-sensitivity.h"

/* The mix is followed up to this many plans. */
#define MOST_PLANS 20.0

void
stead_together_line_free (SteadTogetherLine *line)
{
  if (line == NULL)
    return;
  g_free (line->name);
  g_free (line);
}

void
stead_together_free (SteadTogether *self)
{
  if (self == NULL)
    return;
  g_free (self->currency);
  g_ptr_array_unref (self->lines);
  g_ptr_array_unref (self->missing);
  g_array_unref (self->path);
  g_array_unref (self->mix);
  g_free (self->sentence);
  g_free (self->advice);
  g_free (self);
}

SteadTogether *
stead_together_new_empty (const char *currency)
{
  SteadTogether *self = g_new0 (SteadTogether, 1);

  self->currency = g_strdup (currency);
  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_together_line_free);
  self->missing = g_ptr_array_new_with_free_func (g_free);
  self->path = g_array_new (FALSE, FALSE, sizeof (SteadTogetherPoint));
  self->mix = g_array_new (FALSE, FALSE, sizeof (SteadTogetherPoint));
  return self;
}

/* --- reading ------------------------------------------------------------------------- */

static void
add_line (SteadTogether          *self,
          const SteadPriceAnswer *price)
{
  const SteadProduct *product = price->cost->product;
  SteadTogetherLine *line = g_new0 (SteadTogetherLine, 1);

  line->product_id = product->id;
  line->name = g_strdup (product->name);
  line->pack = product->pack;
  line->price_cents = price->plan.price_cents;
  line->unit_cents = price->plan.variable_cents;
  line->planned = price->plan.planned_units;
  line->fixed_cents = price->plan.fixed_cents;
  line->step_cents = price->plan.step_cents;
  line->step_units = price->plan.step_units;
  self->target_cents += price->plan.target_cents;
  g_ptr_array_add (self->lines, line);
}

SteadTogether *
stead_together_new (SteadStore   *store,
                    SteadPeriod   period,
                    GError      **error)
{
  g_autoptr(SteadTogether) self = NULL;
  g_autoptr(SteadFarm) farm = NULL;
  g_autoptr(GPtrArray) products = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  farm = stead_farm_repo_get (store, error);
  products = farm != NULL ? stead_product_repo_list (store, FALSE, error) : NULL;
  if (products == NULL)
    return NULL;
  self = stead_together_new_empty (farm->currency);
  for (guint i = 0; i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];
      g_autoptr(GError) local_error = NULL;
      g_autoptr(SteadPriceAnswer) price = stead_price_answer_new (store, product->id, period, &local_error);

      if (price == NULL && !g_error_matches (local_error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING))
        {
          g_propagate_error (error, g_steal_pointer (&local_error));
          return NULL;
        }
      if (price == NULL || price->price_on_file < 0 || !(price->plan.planned_units > 0))
        g_ptr_array_add (self->missing, g_strdup (product->name));
      else
        add_line (self, price);
    }
  stead_together_settle (self);
  return g_steal_pointer (&self);
}

/* --- figures ---------------------------------------------------------------------------- */

static const SteadTogetherLine *
line_at (const SteadTogether *self,
         guint                i)
{
  return self->lines->pdata[i];
}

static double
steps_cents (const SteadTogetherLine *line,
             double                   units)
{
  if (!(line->step_cents > 0) || !(line->step_units > 0))
    return 0;
  return line->step_cents * MAX (1, ceil (units / line->step_units - 1e-9));
}

double
stead_together_profit (const SteadTogether *self,
                       double               frac)
{
  double profit;

  g_return_val_if_fail (self != NULL, NAN);
  profit = -self->fixed_cents;
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadTogetherLine *line = line_at (self, i);

      profit += line->margin_cents * line->planned * frac - steps_cents (line, line->planned * frac);
    }
  return profit;
}

/* Fixed costs with all steps that are open just past @frac. */
static double
fixed_after (const SteadTogether *self,
             double               frac)
{
  double fixed = self->fixed_cents;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadTogetherLine *line = line_at (self, i);

      fixed += steps_cents (line, line->planned * frac + line->step_units * 1e-7);
    }
  return fixed;
}

/* The next share of the plan after @frac at which a step opens; INFINITY: none. */
static double
next_step (const SteadTogether *self,
           double               frac)
{
  double next = INFINITY;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadTogetherLine *line = line_at (self, i);
      double steps;

      if (!(line->step_cents > 0) || !(line->step_units > 0) || !(line->planned > 0))
        continue;
      steps = MAX (1, floor (line->planned * frac / line->step_units + 1e-7) + 1);
      if (frac == 0)
        steps = 1;
      next = MIN (next, steps * line->step_units / line->planned);
    }
  return next;
}

/* In each stretch between two steps the mix is a basket: the plan. */
static double
frac_for (const SteadTogether *self,
          double               target_cents)
{
  g_autofree double *prices = g_new (double, MAX (self->lines->len, 1));
  g_autofree double *costs = g_new (double, MAX (self->lines->len, 1));
  g_autofree double *units = g_new (double, MAX (self->lines->len, 1));
  SteadMix mix = { prices, costs, units, self->lines->len, 0 };

  for (guint i = 0; i < self->lines->len; i++)
    {
      prices[i] = line_at (self, i)->price_cents;
      costs[i] = line_at (self, i)->unit_cents;
      units[i] = line_at (self, i)->planned;
    }
  for (double from = 0; from < MOST_PLANS;)
    {
      double to = next_step (self, from), even;

      mix.fixed_cents = fixed_after (self, from);
      even = stead_mix_even_baskets (&mix, target_cents);
      if (isnan (even) || (even >= from - 1e-9 && even <= to + 1e-9))
        return isnan (even) ? NAN : MAX (even, from);
      if (!(to > from))
        return NAN;
      from = to;
    }
  return NAN;
}

static void
settle_lines (SteadTogether *self)
{
  double margin = 0;

  self->fixed_cents = self->extra_cents;
  self->sales_cents = 0;
  for (guint i = 0; i < self->lines->len; i++)
    {
      SteadTogetherLine *line = self->lines->pdata[i];

      line->margin_cents = line->price_cents - line->unit_cents;
      line->margin_frac = line->price_cents > 0 ? line->margin_cents / line->price_cents : NAN;
      self->fixed_cents += line->fixed_cents;
      self->sales_cents += line->price_cents * line->planned;
      margin += line->margin_cents * line->planned;
    }
  self->margin_frac = self->sales_cents > 0 ? margin / self->sales_cents : NAN;
  self->profit_cents = stead_together_profit (self, 1);
  self->leverage = stead_leverage (margin, self->profit_cents);
  self->fund_cents = MAX (0, self->profit_cents) * self->fund_frac;
}

static void
settle_even (SteadTogether *self)
{
  self->even_frac = frac_for (self, 0);
  self->target_frac = frac_for (self, self->target_cents);
  self->even_sales_cents = self->even_frac * self->sales_cents;
  self->safety_cents = self->sales_cents - self->even_sales_cents;
  self->safety_frac = self->sales_cents > 0 ? self->safety_cents / self->sales_cents : NAN;
  for (guint i = 0; i < self->lines->len; i++)
    {
      SteadTogetherLine *line = self->lines->pdata[i];

      line->even_units = line->planned * self->even_frac;
    }
}

/* --- paths ---------------------------------------------------------------------------------- */

static void
add_point (GArray *path,
           double  sales,
           double  profit,
           int     line,
           double  units)
{
  SteadTogetherPoint point = { sales, profit, line, units };

  g_array_append_val (path, point);
}

static int
compare_lines (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  const SteadTogether *self = data;
  const SteadTogetherLine *x = line_at (self, *(const guint *) a), *y = line_at (self, *(const guint *) b);
  double left = isnan (x->margin_frac) ? -INFINITY : x->margin_frac;
  double right = isnan (y->margin_frac) ? -INFINITY : y->margin_frac;
  int best = (left < right) - (left > right);

  return self->order == STEAD_TOGETHER_WORST_FIRST ? -best : best;
}

/* One product from its first to its planned unit, with a drop where a step opens. */
static void
walk_line (SteadTogether *self,
           guint          at,
           double        *sales,
           double        *profit)
{
  const SteadTogetherLine *line = line_at (self, at);
  double from = 0;

  while (from < line->planned)
    {
      gboolean steps = line->step_cents > 0 && line->step_units > 0;
      double to = steps ? MIN (line->planned, from + line->step_units) : line->planned;

      *sales += line->price_cents * (to - from);
      *profit += line->margin_cents * (to - from);
      add_point (self->path, *sales, *profit, (int) at, to);
      if (to < line->planned)
        {
          *profit -= line->step_cents;
          add_point (self->path, *sales, *profit, (int) at, to);
        }
      from = to;
    }
}

static void
settle_path (SteadTogether *self)
{
  g_autofree guint *order = g_new (guint, MAX (self->lines->len, 1));
  double sales = 0, profit = -fixed_after (self, 0);

  for (guint i = 0; i < self->lines->len; i++)
    order[i] = i;
  if (self->order != STEAD_TOGETHER_AS_LISTED)
    g_qsort_with_data (order, (int) self->lines->len, sizeof *order, compare_lines, self);
  g_array_set_size (self->path, 0);
  add_point (self->path, 0, profit, -1, 0);
  for (guint i = 0; i < self->lines->len; i++)
    walk_line (self, order[i], &sales, &profit);
  self->path_even_cents = NAN;
  for (guint i = 1; i < self->path->len && isnan (self->path_even_cents); i++)
    {
      const SteadTogetherPoint *a = &g_array_index (self->path, SteadTogetherPoint, i - 1);
      const SteadTogetherPoint *b = a + 1;

      if (a->profit_cents < 0 && b->profit_cents >= 0)
        self->path_even_cents = a->sales_cents - a->profit_cents * (b->sales_cents - a->sales_cents)
                                                 / (b->profit_cents - a->profit_cents);
    }
}

static void
settle_mix (SteadTogether *self)
{
  double from = 0;

  g_array_set_size (self->mix, 0);
  while (from < 1 && self->sales_cents > 0)
    {
      double to = MIN (1, next_step (self, from));
      double fixed = fixed_after (self, from);
      double margin = self->margin_frac * self->sales_cents;

      add_point (self->mix, from * self->sales_cents, margin * from - fixed, -1, 0);
      add_point (self->mix, to * self->sales_cents, margin * to - fixed, -1, 0);
      from = to > from ? to : 1;
    }
}

void
stead_together_settle (SteadTogether *self)
{
  g_return_if_fail (self != NULL);

  settle_lines (self);
  settle_even (self);
  settle_path (self);
  settle_mix (self);
  stead_together_put_in_words (self);
}
