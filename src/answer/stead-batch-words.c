/* stead-batch-words.c - how a batch stands, in sentences. */
#include "config.h"

#include "answer/stead-batch-private.h"
#include "answer/stead-wait.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-money.h"

/* "It gave 44 pounds of the 132 planned; 88 pounds are still expected, until Apr 30." */
static char *
output_sentence (const SteadBatchAnswer *self)
{
  const SteadBatchMoney *money = &self->money;
  g_autofree char *came = stead_batch_answer_output (self, money->good_base);
  g_autofree char *expected = stead_batch_answer_output (self, money->cost.expected_base);
  g_autofree char *until = money->outlook.ends_on != STEAD_DAY_NONE
                           ? stead_day_format (money->outlook.ends_on, STEAD_DAY_STYLE_MEDIUM) : NULL;

  if (money->outlook.basis == STEAD_OUTLOOK_NONE)
    return money->good_base > 0 ? g_strdup_printf (_("It gave %s so far."), came) : NULL;
  if (!(money->good_base > 0))
    /* Translators: "88 pounds" that are expected, a day. */
    return until == NULL ? g_strdup_printf (_("It is expected to give %s."), expected)
                         : g_strdup_printf (_("It is expected to give %s by %s."), expected, until);
  if (until == NULL)
    /* Translators: "44 pounds" that came, "88 pounds" that are expected. */
    return g_strdup_printf (_("It gave %s so far; %s are still expected."), came, expected);
  /* Translators: "44 pounds" that came, "88 pounds" that are expected, a day. */
  return g_strdup_printf (_("It gave %s so far; %s are still expected until %s."), came, expected, until);
}

/* "At the end $113 should be left over, $20 less than planned." */
static char *
left_over_sentence (const SteadBatchAnswer *self)
{
  double left = self->variance.actual_cents;
  double difference = left - self->variance.planned_cents;
  g_autofree char *money = stead_batch_money_text (self, fabs (left));
  g_autofree char *apart = stead_batch_money_text (self, fabs (difference));
  gboolean planned = stead_money_round (difference) == 0;

  if (!self->has_variance || !isfinite (difference))
    return NULL;
  if (self->is_over)
    {
      if (planned)
        return g_strdup_printf (left >= 0 ? _("<b>%s</b> was left over, as planned.")
                                          : _("<b>%s</b> was lost, as planned."), money);
      if (left >= 0)
        return g_strdup_printf (difference > 0 ? _("<b>%s</b> was left over, %s more than planned.")
                                               : _("<b>%s</b> was left over, %s less than planned."), money, apart);
      return g_strdup_printf (difference > 0 ? _("<b>%s</b> was lost, %s better than planned.")
                                             : _("<b>%s</b> was lost, %s worse than planned."), money, apart);
    }
  if (planned)
    return g_strdup_printf (left >= 0 ? _("At its end <b>%s</b> should be left over, as planned.")
                                      : _("At its end <b>%s</b> would be lost, as planned."), money);
  if (left >= 0)
    return g_strdup_printf (difference > 0 ? _("At its end <b>%s</b> should be left over, %s more than planned.")
                                           : _("At its end <b>%s</b> should be left over, %s less than planned."),
                            money, apart);
  return g_strdup_printf (difference > 0 ? _("At its end <b>%s</b> would be lost, %s better than planned.")
                                         : _("At its end <b>%s</b> would be lost, %s worse than planned."), money, apart);
}

static char *
cost_sentence (const SteadBatchAnswer *self)
{
  const SteadBatchMoney *money = &self->money;
  g_autofree char *name = g_markup_escape_text (money->batch->name, -1);
  double all = money->cost.so_far_cents + (self->is_over ? money->cost.to_come_cents : 0);
  g_autofree char *spent = stead_batch_money_text (self, all);
  g_autofree char *to_come = stead_batch_money_text (self, money->cost.to_come_cents + money->salvage_cents);
  g_autofree char *came = stead_batch_answer_output (self, money->good_base);
  g_autofree char *unit = isfinite (self->unit_cents) ? stead_batch_unit_text (self, self->unit_cents) : NULL;

  if (self->is_over && unit != NULL)
    /* Translators: name, money, "121 pounds", "$1.63 a pound". */
    return g_strdup_printf (_("“%s” cost <b>%s</b> and gave <b>%s</b>: <b>%s</b>."), name, spent, came, unit);
  if (self->is_over)
    return g_strdup_printf (_("“%s” cost <b>%s</b> and gave nothing good."), name, spent);
  if (money->days_left == 0 && stead_money_round (money->cost.to_come_cents + money->salvage_cents) == 0)
    return g_strdup_printf (_("“%s” has cost <b>%s</b> so far."), name, spent);
  return g_strdup_printf (_("“%s” has cost <b>%s</b> so far; about <b>%s</b> more will finish it."),
                          name, spent, to_come);
}

static char *
sentence_of (const SteadBatchAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *cost = cost_sentence (self);
  g_autofree char *output = self->is_over ? NULL : output_sentence (self);
  g_autofree char *left = left_over_sentence (self);

  stead_words_add (text, cost);
  stead_words_add (text, output);
  stead_words_add (text, left);
  return stead_words_end (text);
}

static void
caution_uses (const SteadBatchAnswer *self,
              GString                *text)
{
  for (guint i = 0; i < self->money.uses->len; i++)
    {
      const SteadUse *use = self->money.uses->pdata[i];
      g_autofree char *amount = NULL;
      g_autofree char *sentence = NULL;

      if (!(use->uncovered_base > 1e-6))
        continue;
      amount = stead_quantity_format (use->uncovered_base, use->unit);
      if (isfinite (use->uncovered_cents))
        sentence = g_strdup_printf (_("%s of %s has no receipt yet and counts at the nearest known price. "
                                      "Enter the receipt in Keep."), amount, use->item_name);
      else
        sentence = g_strdup_printf (_("%s of %s is left out, since no price is known. "
                                      "Enter its receipt in Keep."), amount, use->item_name);
      stead_words_add (text, sentence);
    }
}

static char *
caution_of (const SteadBatchAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *wait = stead_wait_batch_caution (self->money.batch->name, self->wait_until);

  stead_words_add (text, wait);
  caution_uses (self, text);
  if (!self->is_over && self->money.outlook.basis == STEAD_OUTLOOK_NONE)
    stead_words_add (text, _("Neither a plan nor a forecast says what is still to come. Enter a plan."));
  else if (!self->is_over && self->money.outlook.ends_on == STEAD_DAY_NONE)
    stead_words_add (text, _("No day is known on which it ends, so what goes by days is left out of the cost to come. "
                             "Enter an end in its plan."));
  if (self->money.outlook.is_live)
    stead_words_add (text, stead_batch_outlook_live ());
  if (isnan (self->price_cents) && self->money.good_base > 0)
    stead_words_add (text, _("No product of it has a price yet, so what came has no worth here. Set one in Price."));
  return stead_words_end (text);
}

void
stead_batch_answer_put_in_words (SteadBatchAnswer *self)
{
  self->sentence = sentence_of (self);
  self->caution = caution_of (self);
}
