/* stead-batch-why.c - how the figures beside a batch's plan come about, with its own numbers. */
#include "config.h"

#include "answer/stead-batch-private.h"

#include "answer/stead-batch-cost-why-private.h"
#include "answer/stead-cost-in-private.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NO_SOURCE N_("Common practice, no source.")

/* --- what it costs ------------------------------------------------------------------------ */

static const char *
to_come_formula (SteadToComeBasis basis)
{
  switch (basis)
    {
    case STEAD_TO_COME_FORECAST:
      return _("Feed: what the forecast says will be fed, at the price of the next bag. Other things: what the plan has left, "
               "else as much a day as in the last four weeks. What is used for years: its share of the days that are left.");
    case STEAD_TO_COME_PLAN:
      return _("Feed: what the plan has left, at the price of the next bag. Other things: what the plan has left, else as much "
               "a day as in the last four weeks. What is used for years: its share of the days that are left.");
    case STEAD_TO_COME_LATE:
    case STEAD_TO_COME_NOTHING:
    default:
      return _("Feed and other things: what the plan has left, else as much a day as in the last four weeks × the days that "
               "are left. What is used for years: its share of those days.");
    }
}

static SteadWhy *
to_come_why (const SteadBatchAnswer *self)
{
  const SteadBatchMoney *money = &self->money;
  gint64 all_cents = stead_money_round (stead_batch_finish_cents (money));
  double cents[STEAD_N_COST_KINDS];
  GString *sum = g_string_new (NULL);
  g_autofree char *days = stead_words_days (money->days_left);

  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    cents[kind] = kind == STEAD_COST_LABOR || kind == STEAD_COST_PACKAGING ? 0 : money->to_come[kind];
  stead_cost_in_add_parts (sum, cents, all_cents, money->batch->kind, self->farm->currency);
  stead_sum_total (sum, all_cents, self->farm->currency);
  if (money->days_left > 0)
    /* Translators: on a line of its own: "30 days". */
    g_string_append_printf (sum, _("\nDays that are left: %s"), days);
  if (money->feed_to_come_kg > 0)
    {
      g_autofree char *feed = stead_batch_feed_text (self, money->feed_to_come_kg);

      /* Translators: on a line of its own: "22 lb". */
      g_string_append_printf (sum, _("\nFeed still to be given: %s"), feed);
    }
  return stead_why_new (g_strdup (_("What will finish it")), to_come_formula (money->feed_basis),
                        g_string_free (sum, FALSE), _(NO_SOURCE));
}

/* "($197.00 + $28.00 − $20.00) ÷ 132 pounds = $1.55 a pound" */
static SteadWhy *
unit_why (const SteadBatchAnswer *self)
{
  const SteadBatchMoney *money = &self->money;
  g_autofree char *terms = stead_batch_cost_terms (money, self->farm->currency);
  g_autofree char *output = stead_batch_answer_output (self, money->good_base + money->cost.expected_base);
  g_autofree char *unit = stead_batch_unit_text (self, self->unit_cents);

  return stead_why_new (g_strdup (_("Cost of one")),
                        money->salvage_cents > 0
                        ? _("(Cost in so far + what will finish it − what the birds are worth at the end) ÷ (what came and is good + "
                            "what is still expected)")
                        : _("(Cost in so far + what will finish it) ÷ (what came and is good + what is still expected)"),
                        /* Translators: a sum of money in brackets, "132 pounds", "$1.55 a pound". */
                        g_strdup_printf (_("%1$s ÷ %2$s = %3$s"), terms, output, unit),
                        stead_batch_cost_source ());
}

static SteadWhy *
feed_price_why (const SteadBatchAnswer  *self,
                const SteadBatchFigures *so_far)
{
  const SteadUnit *mass = stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units);
  g_autofree char *money = stead_batch_money_text (self, so_far->feed_cents);
  g_autofree char *feed = stead_batch_feed_text (self, so_far->feed_kg);
  g_autofree char *each = stead_batch_money_text (self, so_far->feed_cents / so_far->feed_kg * stead_quantity_to_base (1, mass));

  return stead_why_new (g_strdup (_("Price of the feed")), _("What the feed given so far cost ÷ how much it was."),
                        /* Translators: money ÷ "180 lb" = money for one unit of weight, "lb". */
                        g_strdup_printf (_("%1$s ÷ %2$s = %3$s/%4$s"), money, feed, each, stead_unit_symbol (mass)), _(NO_SOURCE));
}

/* --- what comes of it ------------------------------------------------------------------------- */

static SteadWhy *
worth_why (const SteadBatchAnswer  *self,
           const SteadBatchFigures *figures)
{
  g_autofree char *output = stead_batch_answer_output (self, figures->output);
  g_autofree char *price = stead_batch_unit_text (self, figures->value_cents / figures->output);
  g_autofree char *worth = stead_batch_money_text (self, figures->value_cents);

  return stead_why_new (g_strdup (_("What comes of it is worth")),
                        _("What came, at the price of its day, sold or not + what is still expected, at the price of today: "
                          "output × mean price."),
                        /* Translators: "132 pounds" × "$3.63 a pound" = money. */
                        g_strdup_printf (_("%1$s × %2$s = %3$s"), output, price, worth), _(NO_SOURCE));
}

static SteadWhy *
left_why (const SteadBatchAnswer  *self,
          const SteadBatchFigures *figures)
{
  g_autofree char *worth = stead_batch_money_text (self, figures->value_cents);
  g_autofree char *cost = stead_batch_money_text (self, figures->cost_cents);
  g_autofree char *left = stead_batch_money_text (self, figures->value_cents - figures->cost_cents);

  return stead_why_new (g_strdup (_("Left over")), _("What comes of it is worth − all costs, without unpaid work."),
                        /* Translators: money − money = money. */
                        g_strdup_printf (_("%1$s − %2$s = %3$s"), worth, cost, left), _(NO_SOURCE));
}

static SteadWhy *
care_why (const SteadBatchAnswer  *self,
          const SteadBatchFigures *figures)
{
  const SteadBatchMoney *money = &self->money;
  g_autofree char *minutes = stead_number_format (money->batch->care_minutes_day, 1);
  g_autofree char *days = stead_words_days (money->days + (self->is_over ? 0 : money->days_left));
  g_autofree char *hours = stead_number_format (figures->care_minutes / 60, 1);

  return stead_why_new (g_strdup (_("Work, unpaid")), _("Minutes of care a day, as entered × days ÷ 60."),
                        /* Translators: minutes, "120 days", hours. */
                        g_strdup_printf (_("%1$s min × %2$s ÷ 60 = %3$s hours"), minutes, days, hours), _(NO_SOURCE));
}

static SteadWhy *
lost_why (const SteadBatchAnswer *self)
{
  g_autofree char *lost = stead_number_format ((double) self->lost, 0);
  g_autofree char *started = stead_number_format ((double) self->started, 0);
  g_autofree char *share = stead_words_percent ((double) self->lost / (double) self->started, 1);

  return stead_why_new (g_strdup (_("Lost of all")), _("Dead or taken out without a sale ÷ all that were there at the start or came later."),
                        /* Translators: a count ÷ a count = a percentage. */
                        g_strdup_printf (_("%1$s ÷ %2$s = %3$s"), lost, started, share),
                        _("Calculating Agriculture (a student textbook), chapter 12, p. 12-9."));
}

/* --- all -------------------------------------------------------------------------------------- */

/* Of the whole batch where its end can be told, else of what there is so far. */
static void
figures_of (const SteadBatchAnswer *self,
            SteadBatchFigures      *out)
{
  if (self->is_over || self->money.outlook.basis == STEAD_OUTLOOK_NONE)
    stead_batch_figures_so_far (self, out);
  else
    stead_batch_figures_at_end (self, out);
}

GPtrArray *
stead_batch_answer_whys (const SteadBatchAnswer *self)
{
  GPtrArray *whys;
  SteadBatchFigures figures, so_far;
  const SteadBatchFigures *left;

  g_return_val_if_fail (self != NULL, NULL);

  whys = stead_whys_new ();
  figures_of (self, &figures);
  stead_batch_figures_so_far (self, &so_far);
  stead_whys_add (whys, stead_batch_spent_why (&self->money, self->farm->currency));
  if (!self->is_over && stead_money_round (stead_batch_finish_cents (&self->money)) > 0)
    g_ptr_array_add (whys, to_come_why (self));
  if (so_far.feed_cents > 0 && so_far.feed_kg > 0)
    g_ptr_array_add (whys, feed_price_why (self, &so_far));
  if (figures.output > 0 && isfinite (figures.value_cents))
    g_ptr_array_add (whys, worth_why (self, &figures));
  /* What will come has no worth while no price is known; what came so far may have. */
  left = isfinite (figures.value_cents) ? &figures : &so_far;
  if (isfinite (left->value_cents) && isfinite (left->cost_cents))
    g_ptr_array_add (whys, left_why (self, left));
  if (isfinite (self->unit_cents))
    g_ptr_array_add (whys, unit_why (self));
  if (figures.care_minutes > 0)
    g_ptr_array_add (whys, care_why (self, &figures));
  if (self->started > 0)
    g_ptr_array_add (whys, lost_why (self));
  stead_whys_add (whys, stead_why_copy (self->why));
  return whys;
}
