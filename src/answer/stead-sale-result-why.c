/* stead-sale-result-why.c - what a sale day brought, worked with the farm's numbers.
 *
 * The parts of the difference are those of core/stead-sale-variance.h, worked out product
 * by product from whole sums, so that what is shown can be reckoned after.
 */
#include "config.h"

#include "answer/stead-hours-answer.h"
#include "answer/stead-sale-private.h"
#include "answer/stead-sale-result-answer.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NO_SOURCE N_("Common practice, no source.")
#define MARGIN N_("Contribution margin: OpenStax, Principles of Accounting, vol. 2, section 3.1.")
#define VARIANCE N_("Price and quantity variance: OpenStax, Principles of Accounting, vol. 2, section 8.2. That it is told for " \
                    "what is sold as for what is bought: common practice, no source.")
#define MIX N_("Sales mix and sales quantity variance of cost accounting: common practice, from memory.")

/* Parts of less than half a cent are none. */
#define LEAST_CENTS 0.5

static char *
money (const SteadResultAnswer *self,
       double                   cents)
{
  return stead_money_format (stead_money_round (cents), self->farm->currency);
}

static double
plan_margin (const SteadResultLine *line)
{
  return (double) line->good->price_cents - line->plan_cents;
}

/* A line of text for one product; "Eggs: %s". */
static void
add_line (GString               *text,
          const SteadResultLine *line,
          const char            *worked)
{
  if (text->len > 0)
    g_string_append_c (text, '\n');
  /* Translators: the name of a product, and what is worked out for it. */
  g_string_append_printf (text, _("%1$s: %2$s"), line->good->name, worked);
}

/* Ends with "All: $12.00 − $3.00 = $9.00", unless there is but one product. */
static SteadWhy *
why_of (const SteadResultAnswer *self,
        const char              *title,
        const char              *formula,
        GString                 *worked,
        double                   cents,
        const char              *source)
{
  g_autofree char *sum = money (self, cents);

  if (self->lines->len > 1)
    /* Translators: ends a list of products with what they come to together. */
    g_string_append_printf (worked, _("\nTogether: %s"), sum);
  return stead_why_new (g_strdup (title), formula, g_string_free (worked, FALSE), source);
}

/* --- what was taken, and what is left ------------------------------------------------------ */

static SteadWhy *
taken_why (const SteadResultAnswer *self)
{
  GString *worked = g_string_new (NULL);
  double sum = 0;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadResultLine *line = self->lines->pdata[i];

      sum += (double) line->sum.takings_cents;
      stead_sale_why_add_taken (worked, line->good, &line->sum, line->price_cents, self->farm->currency);
    }
  return why_of (self, _("Taken"), _("Each tap counts at the price of its moment: number sold × price. What was paid before the day is "
                                     "among it."), worked, sum, _(NO_SOURCE));
}

static double
fixed_cents (const SteadResultAnswer *self,
             gboolean                 by_plan)
{
  double sum = 0;

  for (guint i = 0; i < self->sale->costs->len; i++)
    {
      const SteadSaleCost *cost = self->sale->costs->pdata[i];

      sum += (double) (by_plan ? cost->cents : stead_sale_cost_paid (cost));
    }
  return sum;
}

/* "$72.00 − $32.00 − $8.00 − $10.00 = $22.00": taken, cost of it, losses, own costs. */
static char *
left_text (const SteadResultAnswer *self,
           gboolean                 by_plan)
{
  GString *sum = g_string_new (NULL);
  const char *currency = self->farm->currency;
  double taken = 0, cost = 0, lost = 0;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadResultLine *line = self->lines->pdata[i];

      taken += by_plan ? line->plan_sold * (double) line->good->price_cents : (double) line->sum.takings_cents;
      cost += by_plan ? line->plan_sold * line->plan_cents : line->sum.sold * line->cost_cents;
      lost += by_plan ? line->plan_lost_cents : line->lost_cents;
    }
  stead_sum_add (sum, stead_money_round (taken), currency);
  stead_sum_take (sum, stead_money_round (cost), currency);
  stead_sum_take (sum, stead_money_round (lost), currency);
  stead_sum_take (sum, stead_money_round (fixed_cents (self, by_plan)), currency);
  stead_sum_total (sum, stead_money_round (by_plan ? self->variance.planned_cents : self->variance.actual_cents),
                   currency);
  return g_string_free (sum, FALSE);
}

static SteadWhy *
left_why (const SteadResultAnswer *self)
{
  g_autofree char *plan = left_text (self, TRUE);
  g_autofree char *came = left_text (self, FALSE);

  return stead_why_new (
    g_strdup (_("Left after all costs")),
    _("Taken − what the goods sold had cost − what the goods cost that nobody paid for − the day's own costs."),
    /* Translators: two sums that are worked out. */
    g_strdup_printf (_("By the plan: %1$s\nOn the day: %2$s"), plan, came), _(MARGIN));
}

/* --- the parts of the difference -------------------------------------------------------------- */

static SteadWhy *
difference_why (const SteadResultAnswer *self)
{
  const SteadSaleVariance *v = &self->variance;
  const double parts[] = { v->quantity_cents, v->mix_cents, v->price_cents, v->cost_cents, v->lost_cents, v->fixed_cents };
  GString *sum = g_string_new (NULL), *worked = g_string_new (NULL);

  stead_sum_add (sum, stead_money_round (v->actual_cents), self->farm->currency);
  stead_sum_take (sum, stead_money_round (v->planned_cents), self->farm->currency);
  stead_sum_total (sum, stead_money_round (v->actual_cents - v->planned_cents), self->farm->currency);
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (fabs (parts[i]) >= LEAST_CENTS)
      stead_sum_add (worked, stead_money_round (parts[i]), self->farm->currency);
  if (worked->len > 0)
    {
      stead_sum_total (worked, stead_money_round (v->actual_cents - v->planned_cents), self->farm->currency);
      g_string_append_c (sum, '\n');
      g_string_append (sum, worked->str);
    }
  g_string_free (worked, TRUE);
  return stead_why_new (g_strdup (_("More or less than planned")),
                        _("Left on the day − left by the plan. The same: number sold + mix + prices + cost of the goods + losses + own "
                          "costs, each as it is worked out here."),
                        g_string_free (sum, FALSE), _(MIX));
}

static double
sum_units (const SteadResultAnswer *self,
           gboolean                 by_plan)
{
  double sum = 0;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadResultLine *line = self->lines->pdata[i];

      sum += by_plan ? line->plan_sold : line->sum.sold;
    }
  return sum;
}

static SteadWhy *
quantity_why (const SteadResultAnswer *self)
{
  double margin = 0, planned = sum_units (self, TRUE);
  g_autofree char *came_text = stead_number_format (sum_units (self, FALSE), 2);
  g_autofree char *planned_text = stead_number_format (planned, 2);
  g_autofree char *result = money (self, self->variance.quantity_cents);
  g_autofree char *margin_text = NULL;

  for (guint i = 0; i < self->lines->len; i++)
    margin += ((const SteadResultLine *) self->lines->pdata[i])->plan_sold * plan_margin (self->lines->pdata[i]);
  margin_text = money (self, margin);
  return stead_why_new (g_strdup (_("By the number sold")),
                        _("(All that was sold − all that was to be sold) × what the plan leaves of one on average: price − cost of "
                          "all that was to be sold ÷ their number."),
                        g_strdup_printf ("(%s − %s) × %s ÷ %s = %s", came_text, planned_text, margin_text, planned_text, result),
                        _(MIX));
}

static SteadWhy *
mix_why (const SteadResultAnswer *self)
{
  double planned = sum_units (self, TRUE), came = sum_units (self, FALSE);
  GString *worked = g_string_new (NULL);

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadResultLine *line = self->lines->pdata[i];
      double expected = came * line->plan_sold / planned;
      g_autofree char *sold = stead_number_format (line->sum.sold, 2);
      g_autofree char *share = stead_number_format (expected, 2);
      g_autofree char *margin = money (self, plan_margin (line));
      g_autofree char *result = money (self, (line->sum.sold - expected) * plan_margin (line));
      g_autofree char *text = g_strdup_printf ("(%s − %s) × %s = %s", sold, share, margin, result);

      add_line (worked, line, text);
    }
  return why_of (self, _("By what people chose"),
                 _("(Sold − all that was sold × the product's share in the plan) × what one leaves by the plan, for each product."),
                 worked, self->variance.mix_cents, _(MIX));
}

static SteadWhy *
price_why (const SteadResultAnswer *self)
{
  GString *worked = g_string_new (NULL);

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadResultLine *line = self->lines->pdata[i];
      double by_plan = line->sum.sold * (double) line->good->price_cents;
      g_autofree char *taken = money (self, (double) line->sum.takings_cents);
      g_autofree char *sold = stead_number_format (line->sum.sold, 2);
      g_autofree char *price = money (self, (double) line->good->price_cents);
      g_autofree char *result = money (self, (double) line->sum.takings_cents - by_plan);
      g_autofree char *text = g_strdup_printf ("%s − %s × %s = %s", taken, sold, price, result);

      add_line (worked, line, text);
    }
  return why_of (self, _("By the prices"), _("Taken − number sold × planned price, for each product."), worked,
                 self->variance.price_cents, _(VARIANCE));
}

static SteadWhy *
cost_why (const SteadResultAnswer *self)
{
  GString *worked = g_string_new (NULL);

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadResultLine *line = self->lines->pdata[i];
      double by_plan = line->sum.sold * line->plan_cents, came = line->sum.sold * line->cost_cents;
      g_autofree char *sold = stead_number_format (line->sum.sold, 2);
      g_autofree char *one = money (self, line->plan_cents);
      g_autofree char *cost = money (self, came);
      g_autofree char *result = money (self, by_plan - came);
      g_autofree char *text = g_strdup_printf ("%s × %s − %s = %s", sold, one, cost, result);

      add_line (worked, line, text);
    }
  return why_of (self, _("By the cost of the goods"),
                 _("Number sold × what one was thought to cost − what the goods sold did cost, for each product."), worked,
                 self->variance.cost_cents, _(VARIANCE));
}

static SteadWhy *
lost_why (const SteadResultAnswer *self)
{
  GString *worked = g_string_new (NULL);

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadResultLine *line = self->lines->pdata[i];
      g_autofree char *plan = money (self, line->plan_lost_cents);
      g_autofree char *units = stead_number_format (line->lost_units, 2);
      g_autofree char *one = money (self, line->cost_cents);
      g_autofree char *result = money (self, line->plan_lost_cents - line->lost_cents);
      g_autofree char *text = g_strdup_printf ("%s − %s × %s = %s", plan, units, one, result);

      add_line (worked, line, text);
    }
  return why_of (self, _("By what nobody paid for"),
                 _("Loss by the plan − number tasted, given away, spoiled or thrown away × cost of one, for each product. Loss by the "
                   "plan: what is likely to be left over × (cost of one − what it is worth then)."),
                 worked, self->variance.lost_cents, _(NO_SOURCE));
}

static SteadWhy *
fixed_why (const SteadResultAnswer *self)
{
  GString *worked = g_string_new (NULL);
  g_autofree char *sum = money (self, self->variance.fixed_cents);

  for (guint i = 0; i < self->sale->costs->len; i++)
    {
      const SteadSaleCost *cost = self->sale->costs->pdata[i];
      g_autofree char *plan = money (self, (double) cost->cents);
      g_autofree char *paid = money (self, (double) stead_sale_cost_paid (cost));
      g_autofree char *saved = money (self, (double) (cost->cents - stead_sale_cost_paid (cost)));

      g_string_append_printf (worked, "%s%s: %s − %s = %s", i > 0 ? "\n" : "", cost->name, plan, paid, saved);
    }
  if (self->sale->costs->len > 1)
    g_string_append_printf (worked, _("\nTogether: %s"), sum);
  return stead_why_new (g_strdup (_("By the day's own costs")), _("Planned − paid, for each cost of the day."),
                        g_string_free (worked, FALSE), _(NO_SOURCE));
}

static void
add_parts (const SteadResultAnswer *self,
           GPtrArray               *whys)
{
  const SteadSaleVariance *v = &self->variance;
  const struct { double cents; SteadWhy *(*why) (const SteadResultAnswer *self); } parts[] = {
    { v->quantity_cents, quantity_why }, { v->mix_cents, mix_why }, { v->price_cents, price_why },
    { v->cost_cents, cost_why }, { v->lost_cents, lost_why }, { v->fixed_cents, fixed_why },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (fabs (parts[i].cents) >= LEAST_CENTS)
      g_ptr_array_add (whys, parts[i].why (self));
}

/* --- what was counted ------------------------------------------------------------------------ */

static SteadWhy *
over_why (const SteadResultAnswer *self)
{
  GString *worked = g_string_new (NULL);

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadResultLine *line = self->lines->pdata[i];

      stead_sale_why_add_left (worked, line->good, stead_sale_sum_tallied (&line->sum), stead_sale_sum_left (&line->sum));
    }
  return stead_why_new (g_strdup (_("Left over")),
                        _("Brought − sold, tasted, given away and spoiled. It is counted at the end of the day; the cash-up is "
                          "refused until both agree."),
                        g_string_free (worked, FALSE), _(NO_SOURCE));
}

static SteadWhy *
till_why (const SteadResultAnswer *self)
{
  const SteadSaleTill *till = &self->till;
  const char *currency = self->farm->currency;
  g_autofree char *box = stead_sale_why_box (till, currency);
  GString *sum = g_string_new (box);

  if (self->count != NULL)
    {
      GString *over = g_string_new (NULL);

      stead_sum_add (over, till->counted_cents, currency);
      stead_sum_take (over, till->expected_cents, currency);
      stead_sum_total (over, self->over_cents, currency);
      g_string_append_printf (sum, "\n%s", over->str);
      g_string_free (over, TRUE);
    }
  return stead_why_new (g_strdup (_("What must be in the box, and over or short")),
                        _("Money for change + taken at the stall − paid out of the box with a slip. Over or short = counted by two − "
                          "what must be there; below zero is short."),
                        g_string_free (sum, FALSE),
                        _("Petty cash, and cash over and short: OpenStax, Principles of Accounting, vol. 1, section 8.4."));
}

GPtrArray *
stead_result_answer_whys (const SteadResultAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (self->lines->len > 0)
    g_ptr_array_add (whys, taken_why (self));
  if (self->has_variance)
    {
      g_ptr_array_add (whys, left_why (self));
      g_ptr_array_add (whys, difference_why (self));
      add_parts (self, whys);
    }
  if (self->count != NULL && self->lines->len > 0)
    g_ptr_array_add (whys, over_why (self));
  g_ptr_array_add (whys, till_why (self));
  if (self->hours->len > 0)
    g_ptr_array_add (whys, stead_hours_spans_why (self->hours, _("Hours of the helpers")));
  return whys;
}
