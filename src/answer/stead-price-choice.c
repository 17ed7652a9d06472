/* stead-price-choice.c - "Which price?" */
#include "config.h"

#include "answer/stead-price-choice.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-words-private.h"
#include "core/stead-money.h"
#include "core/stead-price-point.h"
#include "core/stead-price.h"

#define EASY_STEP_CENTS 25
#define LEAST_PAIRS 3

void
stead_price_choice_free (SteadPriceChoice *self)
{
  if (self == NULL)
    return;
  stead_price_answer_free (self->price);
  g_clear_pointer (&self->trials, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self->advice);
  g_free (self->bundle_text);
  g_free (self->same_text);
  g_free (self);
}

static void
fit_line (SteadPriceChoice *self)
{
  g_autofree double *x = g_new (double, MAX (self->trials->len, 1));
  g_autofree double *units = g_new (double, MAX (self->trials->len, 1));

  for (guint i = 0; i < self->trials->len; i++)
    {
      const SteadPriceTrial *trial = self->trials->pdata[i];

      x[i] = (double) trial->price_cents;
      units[i] = trial->units;
    }
  self->has_line = self->trials->len >= LEAST_PAIRS
                   && stead_demand_line_fit (x, units, self->trials->len, &self->line, NULL);
}

SteadPriceChoice *
stead_price_choice_new (SteadStore   *store,
                        gint64        product_id,
                        SteadPeriod   period,
                        GError      **error)
{
  g_autoptr(SteadPriceChoice) self = g_new0 (SteadPriceChoice, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->price = stead_price_answer_new (store, product_id, period, error);
  self->trials = self->price != NULL ? stead_price_trial_repo_list (store, product_id, error) : NULL;
  if (self->trials == NULL)
    return NULL;
  self->try_cents = self->price->plan.price_cents;
  self->other_cents = self->try_cents + EASY_STEP_CENTS;
  self->bundle_units = 2;
  self->bundle_off = 0.1;
  fit_line (self);
  stead_price_choice_settle (self);
  return g_steal_pointer (&self);
}

/* --- words ------------------------------------------------------------------------------- */

static char *
money (const SteadPriceChoice *self,
       double                  cents)
{
  return stead_money_format (isfinite (cents) ? stead_money_round (cents) : 0, self->price->cost->farm->currency);
}

static SteadPack
pack_of (const SteadPriceChoice *self)
{
  return self->price->cost->product->pack;
}

static char *
sentence_of (const SteadPriceChoice *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *price = money (self, self->try_cents), *cost = money (self, self->unit_cents);
  g_autofree char *least = money (self, ceil (self->least_cents - 1e-9));
  g_autofree char *below = money (self, (double) self->easy_below), *above = money (self, (double) self->easy_above);
  g_autofree char *markup = NULL, *margin = NULL, *first = NULL, *second = NULL, *third = NULL;

  if (isfinite (self->markup_frac) && isfinite (self->margin_frac))
    {
      markup = stead_words_percent (self->markup_frac, 0);
      margin = stead_words_percent (self->margin_frac, 0);
      /* Translators: a price, "a dozen", its cost, then shares: markup is on the cost, margin is of the price. */
      first = g_strdup_printf (_("<b>%s</b> %s for what costs %s: <b>%s markup</b> on the cost, <b>%s margin</b> of the price."),
                               price, stead_words_per_unit (pack_of (self)), cost, markup, margin);
    }
  else
    first = g_strdup_printf (_("Without a cost or a price there is neither markup nor margin to tell."));
  if (self->easy_below == self->easy_above)
    second = g_strdup (_("The price gives change easily."));
  else
    second = g_strdup_printf (_("%s or %s would give change more easily."), below, above);
  third = g_strdup_printf (_("Below %s another one does not even pay for what it uses up."), least);
  stead_words_add (text, first);
  stead_words_add (text, second);
  stead_words_add (text, third);
  return stead_words_end (text);
}

static char *
line_words (const SteadPriceChoice *self)
{
  g_autofree char *best = money (self, self->best_cents), *most = money (self, self->most_cents);
  g_autofree char *low = money (self, self->line.x_low), *high = money (self, self->line.x_high);
  g_autofree char *units = stead_words_units (pack_of (self), round (MAX (0, self->line.intercept
                                                                          + self->line.slope * self->best_cents)));

  if (!stead_demand_line_told (&self->line, STEAD_PRICE_CHOICE_LEVEL))
    return g_strdup_printf (_("Between %s and %s it cannot be told yet that the price changes how many are sold."), low, high);
  /* Translators: a price, how many would be sold at it ("64 dozen"), another price. */
  return g_strdup_printf (_("Of the prices that were tried, <b>%s</b> should earn most (about %s); <b>%s</b> sells most. "
                            "Nothing is known beyond %s to %s."), best, units, most, low, high);
}

static char *
advice_of (const SteadPriceChoice *self)
{
  guint missing = self->trials->len < LEAST_PAIRS ? LEAST_PAIRS - self->trials->len : 0;
  g_autofree char *count = stead_number_format (missing, 0);

  if (self->has_line)
    return line_words (self);
  if (missing == 0)
    return g_strdup (_("All days had the same price, so nothing can be said about others."));
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "%s more day with its price and what was sold, and a line can be drawn through them.",
                                       "%s more days with their prices and what was sold, and a line can be drawn through them.",
                                       missing), count);
}

static char *
bundle_words (const SteadPriceChoice *self)
{
  g_autofree char *units = stead_words_units (pack_of (self), self->bundle_units);
  g_autofree char *price = money (self, self->bundle_cents), *cost = money (self, self->bundle_units * self->unit_cents);
  g_autofree char *left = money (self, self->bundle_cents - self->bundle_units * self->unit_cents);

  /* Translators: "2 dozen", a price, what they cost, what is left. */
  return g_strdup_printf (_("%s for %s: they cost %s, and %s are left."), units, price, cost, left);
}

static char *
same_words (const SteadPriceChoice *self)
{
  g_autofree char *other = money (self, self->other_cents), *price = money (self, self->try_cents);
  g_autofree char *units = NULL, *plan = NULL;

  if (!(self->price->plan.planned_units > 0))
    return g_strdup (_("Plan a number to sell, and two prices can be compared."));
  if (isnan (self->same_units))
    return g_strdup_printf (_("At %s nothing is left, so no number sold earns as much."), other);
  units = stead_words_units (pack_of (self), ceil (self->same_units - 1e-9));
  plan = stead_words_units (pack_of (self), self->price->plan.planned_units);
  /* Translators: a price, "64 dozen", "72 dozen", another price. */
  return g_strdup_printf (_("At %s, %s earn as much as %s at %s."), other, units, plan, price);
}

/* --- figures ----------------------------------------------------------------------------------- */

void
stead_price_choice_settle (SteadPriceChoice *self)
{
  const SteadCostSheet *sheet;
  gint64 price;

  g_return_if_fail (self != NULL);
  sheet = &self->price->cost->sheet;
  price = stead_money_round (self->try_cents);
  self->unit_cents = (double) sheet->unit_cents;
  self->markup_frac = stead_markup_frac (self->unit_cents, self->try_cents);
  self->margin_frac = stead_margin_frac (self->unit_cents, self->try_cents);
  self->least_cents = self->unit_cents - (double) sheet->parts[STEAD_COST_ASSETS].shown_cents
                      - (double) sheet->parts[STEAD_COST_OVERHEAD].shown_cents
                      - (self->price->cost->flock != NULL ? (double) sheet->parts[STEAD_COST_START].shown_cents : 0);
  self->easy_below = stead_price_easy_below (MAX (0, price), EASY_STEP_CENTS);
  self->easy_above = stead_price_easy_above (MAX (0, price), EASY_STEP_CENTS);
  self->same_units = stead_price_same_profit_units (self->try_cents, self->price->plan.planned_units, self->other_cents,
                                                    self->unit_cents);
  self->bundle_cents = (double) stead_price_easy_below (
    stead_money_round (stead_price_discounted (self->bundle_units * self->try_cents, self->bundle_off)), EASY_STEP_CENTS);
  self->bundle_margin_frac = stead_margin_frac (self->bundle_units * self->unit_cents, self->bundle_cents);
  if (self->has_line)
    {
      self->best_cents = stead_price_best_cents (&self->line, self->unit_cents);
      self->most_cents = self->line.slope > 0 ? self->line.x_high : self->line.x_low;
    }
  g_free (self->sentence);
  g_free (self->advice);
  g_free (self->bundle_text);
  g_free (self->same_text);
  self->sentence = sentence_of (self);
  self->advice = advice_of (self);
  self->bundle_text = bundle_words (self);
  self->same_text = same_words (self);
}

GPtrArray *
stead_price_choice_whys (const SteadPriceChoice *self)
{
  GPtrArray *whys = stead_whys_new ();
  g_autofree char *price = money (self, self->try_cents), *cost = money (self, self->unit_cents);
  g_autofree char *left = money (self, self->try_cents - self->unit_cents);
  g_autofree char *markup = isfinite (self->markup_frac) ? stead_words_percent (self->markup_frac, 1) : NULL;
  g_autofree char *margin = isfinite (self->margin_frac) ? stead_words_percent (self->margin_frac, 1) : NULL;

  if (markup != NULL && margin != NULL)
    g_ptr_array_add (whys, stead_why_new (g_strdup (_("Markup and margin")),
                     _("Markup = (price − cost) ÷ cost. Margin = (price − cost) ÷ price. The same money, measured against two "
                       "things: never mix them up."),
                     g_strdup_printf ("%s − %s = %s\n%s ÷ %s = %s\n%s ÷ %s = %s", price, cost, left, left, cost, markup, left,
                                      price, margin),
                     _("OpenStax, Contemporary Mathematics, section 6.2.")));
  if (self->has_line)
    {
      g_autofree char *intercept = stead_number_format (self->line.intercept, 2);
      g_autofree char *slope = stead_number_format (fabs (self->line.slope) * 100, 3);
      g_autofree char *days = stead_number_format ((double) self->line.n, 0);

      g_ptr_array_add (whys, stead_why_new (g_strdup (_("The line through the days")),
                       _("A straight line that lies nearest to all days (least squares). The band holds a new day four times out "
                         "of five; few days make it wide."),
                       /* Translators: a number of units, another one for each unit of money (with its sign), a number of days. */
                       g_strdup_printf (self->line.slope < 0 ? _("sold = %s − %s × price, from %s days")
                                                             : _("sold = %s + %s × price, from %s days"), intercept, slope, days),
                       _("Least squares and the band of Student's distribution: any text on regression.")));
    }
  return whys;
}
