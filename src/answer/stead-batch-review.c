/* stead-batch-review.c - the end of a batch in sentences: what was planned, what came,
 * and why the difference in money. */
#include "config.h"

#include "answer/stead-batch-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-batch-loss.h"
#include "core/stead-money.h"

static void
say (SteadBatchAnswer *self,
     char             *sentence)
{
  if (sentence != NULL)
    g_ptr_array_add (self->review, sentence);
}

/* A part of the difference that rounds to nothing explains nothing. */
static gboolean
counts (double cents)
{
  return isfinite (cents) && stead_money_round (cents) != 0;
}

/* "+$12.00", "−$8.00" */
static char *
signed_money (const SteadBatchAnswer *self,
              double                  cents)
{
  g_autofree char *size = stead_batch_money_text (self, fabs (cents));

  return g_strconcat (cents < 0 ? "−" : "+", size, NULL);
}

/* --- what was meant, what came ------------------------------------------------------ */

static char *
meant_sentence (const SteadBatchAnswer *self)
{
  const SteadBatchMoney *money = &self->money;
  g_autofree char *name = g_markup_escape_text (money->batch->name, -1);
  g_autofree char *came = stead_batch_answer_output (self, money->good_base);
  g_autofree char *planned = NULL;
  g_autofree char *day = NULL;

  if (isnan (money->plan.output_base))
    return g_strdup_printf (_("“%s” gave <b>%s</b>. How much was meant is not in its plan."), name, came);
  planned = stead_batch_answer_output (self, money->plan.output_base);
  if (money->plan.ends_on == STEAD_DAY_NONE)
    return g_strdup_printf (_("“%s” was meant to give %s. It gave <b>%s</b>."), name, planned, came);
  day = stead_day_format (money->plan.ends_on, STEAD_DAY_STYLE_MEDIUM);
  return g_strdup_printf (_("“%s” was meant to give %s by %s. It gave <b>%s</b>."), name, planned, day, came);
}

static char *
result_sentence (const SteadBatchAnswer *self)
{
  const SteadBatchVariance *variance = &self->variance;
  double difference = variance->actual_cents - variance->planned_cents;
  g_autofree char *planned = stead_batch_money_text (self, variance->planned_cents);
  g_autofree char *came = stead_batch_money_text (self, variance->actual_cents);
  g_autofree char *apart = signed_money (self, difference);

  if (!counts (difference))
    return g_strdup_printf (_("By plan %s was to be left over, and so it was."), planned);
  /* Translators: money planned, money that came, the difference with its sign. */
  return g_strdup_printf (_("By plan %s was to be left over; it came to %s: <b>%s</b>. Why:"), planned, came, apart);
}

/* --- why ------------------------------------------------------------------------------ */

static char *
price_sentence (const SteadBatchAnswer *self)
{
  double apart = self->came.price_cents - self->planned.price_cents;
  g_autofree char *unit = stead_batch_unit_text (self, fabs (apart));
  g_autofree char *money = signed_money (self, self->variance.price_cents);

  if (!counts (self->variance.price_cents))
    return NULL;
  /* Translators: "$0.20 a pound", money with its sign. */
  return g_strdup_printf (apart > 0 ? _("Price: it was %s above plan: <b>%s</b>.")
                                    : _("Price: it was %s below plan: <b>%s</b>."), unit, money);
}

static char *
volume_sentence (const SteadBatchAnswer *self)
{
  double apart = self->came.output - self->planned.output;
  g_autofree char *output = stead_batch_answer_output (self, fabs (apart));
  g_autofree char *money = signed_money (self, self->variance.volume_cents);

  if (!counts (self->variance.volume_cents))
    return NULL;
  /* Translators: "11 pounds", money with its sign. */
  return g_strdup_printf (apart > 0 ? _("Volume: %s more came than planned, at the planned price less the planned feed: <b>%s</b>.")
                                    : _("Volume: %s less came than planned, at the planned price less the planned feed: <b>%s</b>."),
                          output, money);
}

static char *
feed_price_sentence (const SteadBatchAnswer *self)
{
  g_autofree char *money = signed_money (self, self->variance.feed_price_cents);

  if (!counts (self->variance.feed_price_cents))
    return NULL;
  return g_strdup_printf (self->variance.feed_price_cents < 0
                          ? _("Price of feed: it cost more than planned: <b>%s</b>.")
                          : _("Price of feed: it cost less than planned: <b>%s</b>."), money);
}

static char *
feed_use_sentence (const SteadBatchAnswer *self)
{
  double apart = self->came.feed_kg - self->variance.feed_allowed_kg;
  g_autofree char *feed = NULL;
  g_autofree char *allowed = NULL;
  g_autofree char *money = NULL;

  if (!counts (self->variance.feed_use_cents))
    return NULL;
  feed = stead_batch_feed_text (self, fabs (apart));
  allowed = stead_batch_feed_text (self, self->variance.feed_allowed_kg);
  money = signed_money (self, self->variance.feed_use_cents);
  /* Translators: "15 lb" too much (too little), "180 lb" that it should have been, money with its sign. */
  return g_strdup_printf (apart > 0 ? _("Use of feed: it took %s more than the %s that this harvest should take: <b>%s</b>.")
                                    : _("Use of feed: it took %s less than the %s that this harvest should take: <b>%s</b>."),
                          feed, allowed, money);
}

static char *
other_sentence (const SteadBatchAnswer *self)
{
  g_autofree char *money = signed_money (self, self->variance.other_cents);

  if (!counts (self->variance.other_cents))
    return NULL;
  return g_strdup_printf (self->variance.other_cents < 0 ? _("Other costs: they were higher than planned: <b>%s</b>.")
                                                         : _("Other costs: they were lower than planned: <b>%s</b>."),
                          money);
}

/* --- losses --------------------------------------------------------------------------- */

static char *
count_text (gint64 n)
{
  return stead_number_format ((double) n, 0);
}

static char *
reasons_text (const SteadBatchAnswer *self)
{
  g_autoptr(GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < self->losses->len; i++)
    {
      g_autofree char *plain = stead_batch_loss_text (self->losses->pdata[i]);

      g_ptr_array_add (parts, g_markup_escape_text (plain, -1));
    }
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (", ", (char **) parts->pdata);
}

static char *
lost_sentence (const SteadBatchAnswer *self)
{
  g_autofree char *lost = count_text (self->lost);
  g_autofree char *started = count_text (self->started);
  g_autofree char *share = NULL;
  g_autofree char *planned = NULL;
  g_autofree char *reasons = NULL;

  if (self->started == 0)
    return NULL;
  if (self->lost == 0)
    return g_strdup_printf (_("Losses: none of %s."), started);
  share = stead_words_percent ((double) self->lost / (double) self->started, 1);
  reasons = reasons_text (self);
  if (isnan (self->money.plan.lost_frac))
    /* Translators: 12 of 200, "6%", "Fox: 3, no reason given: 1". */
    return g_strdup_printf (_("Losses: %s of %s, %s (%s)."), lost, started, share, reasons);
  planned = stead_words_percent (self->money.plan.lost_frac, 1);
  /* Translators: 12 of 200, "6%", "5%" planned, "Fox: 3, no reason given: 1". */
  return g_strdup_printf (_("Losses: %s of %s, %s where %s was planned (%s)."), lost, started, share, planned, reasons);
}

/* Losses beyond the plan carry cost that nobody gets back: all cost over expected output. */
static char *
abnormal_sentence (const SteadBatchAnswer *self)
{
  SteadBatchLoss loss = { .rule = STEAD_LOSS_EXPECTED_OUTPUT,
                          .input_units = (double) self->started,
                          .input_cents = self->money.cost.so_far_cents,
                          .normal_loss_frac = self->money.plan.lost_frac,
                          .output_units = (double) (self->started - self->lost) };
  SteadBatchLossFigures figures;
  g_autofree char *units = NULL;
  g_autofree char *money = NULL;

  if (isnan (loss.normal_loss_frac) || self->started == 0)
    return NULL;
  stead_batch_loss_figures (&loss, &figures);
  if (!(figures.abnormal_loss_units >= 0.5) || !counts (figures.abnormal_loss_cents))
    return NULL;
  units = stead_number_format (figures.abnormal_loss_units, 0);
  money = stead_batch_money_text (self, figures.abnormal_loss_cents);
  return g_strdup_printf (_("Those beyond plan, about %s, carry %s of the cost."), units, money);
}

static char *
wasted_sentence (const SteadBatchAnswer *self)
{
  g_autofree char *wasted = stead_batch_answer_output (self, self->money.harvested.lost_base);

  if (!(self->money.harvested.lost_base > 0))
    return NULL;
  return g_strdup_printf (_("At the harvest %s were lost."), wasted);
}

/* --- next time -------------------------------------------------------------------------- */

static char *
next_sentence (const SteadBatchAnswer *self)
{
  double each = self->came.output > 0 ? self->came.feed_kg / self->came.output * self->pack_base : NAN;
  g_autofree char *feed = NULL;

  if (!(each > 0))
    return NULL;
  feed = stead_batch_feed_text (self, each);
  /* Translators: "1.8 lb" of feed, "a pound". */
  return g_strdup_printf (_("For the next plan: it took %s of feed for %s of what came."), feed,
                          stead_words_per_unit (self->pack));
}

static SteadWhy *
why_of (const SteadBatchAnswer *self)
{
  const SteadBatchVariance *variance = &self->variance;
  g_autofree char *price = signed_money (self, variance->price_cents);
  g_autofree char *volume = signed_money (self, variance->volume_cents);
  g_autofree char *feed_price = signed_money (self, variance->feed_price_cents);
  g_autofree char *feed_use = signed_money (self, variance->feed_use_cents);
  g_autofree char *other = signed_money (self, variance->other_cents);
  g_autofree char *sum = signed_money (self, variance->actual_cents - variance->planned_cents);

  return stead_why_new (g_strdup (_("Why it came out otherwise than planned")),
                        _("Price: (actual − planned price) × what came. Volume: (what came − planned) × (planned price − "
                          "planned feed for one). Price of feed: (planned − actual) × feed given. Use of feed: (feed that "
                          "what came should take − feed given) × planned price. Other: planned − actual. "
                          "What is not in the plan counts as it came."),
                        g_strdup_printf ("%s %s %s %s %s = %s", price, volume, feed_price, feed_use, other, sum),
                        _("Price and quantity variance of a material: OpenStax, Principles of Accounting, vol. 2, "
                          "section 8.2. Volume and sales price: common practice, no source."));
}

void
stead_batch_answer_review (SteadBatchAnswer *self)
{
  self->review = g_ptr_array_new_with_free_func (g_free);
  if (self->has_variance)
    self->why = why_of (self);
  if (!self->is_over)
    return;
  say (self, meant_sentence (self));
  if (self->has_variance)
    {
      say (self, result_sentence (self));
      say (self, price_sentence (self));
      say (self, volume_sentence (self));
      say (self, feed_price_sentence (self));
      say (self, feed_use_sentence (self));
      say (self, other_sentence (self));
    }
  say (self, lost_sentence (self));
  say (self, abnormal_sentence (self));
  say (self, wasted_sentence (self));
  say (self, next_sentence (self));
}
