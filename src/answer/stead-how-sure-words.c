/* stead-how-sure-words.c - how sure a season is, in words and worked out. */
#include "config.h"

#include "answer/stead-how-sure-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-words-private.h"
#include "core/stead-money.h"

static char *
money (const SteadHowSure *self,
       double              cents)
{
  return stead_money_format (stead_money_round (cents), self->currency);
}

char *
stead_range_text (const SteadHowSure *self,
                  const SteadRange   *range,
                  double              value)
{
  double more = value - 1;
  g_autofree char *percent = NULL;

  g_return_val_if_fail (self != NULL && range != NULL, NULL);

  if (range->kind == STEAD_RANGE_SOLD)
    return stead_words_units (range->pack, round (value));
  if (range->kind == STEAD_RANGE_DAY)
    return money (self, value);
  if (fabs (more) < 0.0005)
    return g_strdup (_("as it is"));
  percent = stead_words_percent (fabs (more), 0);
  return g_strdup_printf ("%s%s", more > 0 ? "+" : "−", percent);
}

void
stead_range_ends (const SteadRange *range,
                  double           *low,
                  double           *high,
                  double           *step)
{
  g_return_if_fail (range != NULL && low != NULL && high != NULL && step != NULL);

  *low = range->kind == STEAD_RANGE_YIELD || range->kind == STEAD_RANGE_INPUT ? 0.2 : 0;
  *high = 2;
  *step = 0.01;
  if (range->kind == STEAD_RANGE_SOLD)
    {
      *high = MAX (ceil (range->farm.high * 2), 10);
      *step = 1;
    }
  if (range->kind == STEAD_RANGE_DAY)
    {
      *high = MAX (ceil (range->farm.high * 2 / 100) * 100, 5000);
      *step = 100;
    }
}

char *
stead_how_sure_chance (double frac)
{
  if (!(frac >= 0.01))
    return g_strdup (_("less than 1%"));
  if (frac > 0.99)
    return g_strdup (_("more than 99%"));
  return stead_words_percent (frac, 0);
}

/* --- sentences ------------------------------------------------------------------------ */

static char *
upside_down_sentence (const SteadHowSure *self)
{
  for (guint i = 0; i < self->ranges->len; i++)
    {
      const SteadRange *range = self->ranges->pdata[i];
      g_autofree char *name = g_markup_escape_text (range->name, -1);

      if (!stead_season_is_range (&range->value))
        return g_strdup_printf (_("“%s” is upside down: the lowest must not be above the likeliest, nor that above the "
                                  "highest. Turn its handles."), name);
    }
  if (self->n_products == 0)
    return g_strdup (_("Nothing is sold yet. Make a product in Price."));
  return g_strdup (_("With these ranges no season can be drawn. Turn the handles back."));
}

static char *
season_sentence (const SteadHowSure *self)
{
  g_autofree char *low = money (self, self->band.low);
  g_autofree char *high = money (self, self->band.high);
  g_autofree char *middle = money (self, self->band.likely);
  g_autofree char *loss = stead_how_sure_chance (self->loss_frac);

  /* Translators: sale days, two sums of money, a third one, a chance ("6%", "less than 1%"). */
  return g_strdup_printf (ngettext ("After %d sale day, 8 of 10 seasons leave between <b>%s</b> and <b>%s</b>, half of them "
                                    "more than %s. The chance to lose money is <b>%s</b>.",
                                    "After %d sale days, 8 of 10 seasons leave between <b>%s</b> and <b>%s</b>, half of them "
                                    "more than %s. The chance to lose money is <b>%s</b>.", (gulong) self->n_days),
                          self->n_days, low, high, middle, loss);
}

static const SteadRange *
widest (const SteadHowSure *self)
{
  const SteadRange *best = NULL;

  for (guint i = 0; i < self->ranges->len; i++)
    {
      const SteadRange *range = self->ranges->pdata[i];

      if (best == NULL || fabs (range->high_cents - range->low_cents) > fabs (best->high_cents - best->low_cents))
        best = range;
    }
  return best;
}

static char *
advice_sentence (const SteadHowSure *self)
{
  const SteadRange *range = widest (self);
  GString *text = g_string_new (NULL);

  if (self->target_cents > 0)
    {
      g_autofree char *target = money (self, self->target_cents);
      g_autofree char *chance = stead_how_sure_chance (self->target_frac);
      g_autofree char *sentence = g_strdup_printf (_("The chance to reach %s is <b>%s</b>."), target, chance);

      stead_words_add (text, sentence);
    }
  if (range != NULL && fabs (range->high_cents - range->low_cents) >= 1)
    {
      g_autofree char *name = g_markup_escape_text (range->name, -1);
      g_autofree char *apart = money (self, fabs (range->high_cents - range->low_cents));
      /* Translators: a range, and how far its two ends lie apart in money. */
      g_autofree char *sentence = g_strdup_printf (_("What matters most is “%s”: its two ends lie %s apart."), name, apart);

      stead_words_add (text, sentence);
    }
  return stead_words_end (text);
}

void
stead_how_sure_put_in_words (SteadHowSure *self)
{
  g_free (self->sentence);
  g_free (self->advice);
  self->sentence = self->solved ? season_sentence (self) : upside_down_sentence (self);
  self->advice = self->solved ? advice_sentence (self) : NULL;
}

/* --- worked out -------------------------------------------------------------------------- */

/* "Eggs sold on a day: 46 × ($4.50 − $2.63) = $86.02", one a product. */
static SteadWhy *
likely_why (const SteadHowSure *self)
{
  GString *lines = g_string_new (NULL);
  g_autofree char *profit = money (self, self->likely_cents);
  g_autofree char *days = stead_number_format (self->n_days, 0);
  g_autofree char *day = money (self, self->likely_cents / self->n_days);
  g_autofree char *costs = NULL;
  double left_cents = 0;

  for (guint i = 0; i < self->ranges->len; i++)
    {
      const SteadRange *range = self->ranges->pdata[i];
      const SteadSeasonProduct *product = &self->products[range->line];
      g_autofree char *units = stead_number_format (range->value.likely, 0);
      g_autofree char *price = money (self, product->price_cents);
      g_autofree char *cost = NULL, *left = NULL;
      double unit = product->input_cents + product->keep_cents;

      if (range->kind != STEAD_RANGE_SOLD)
        continue;
      unit = (product->input_cents * ((SteadRange *) self->ranges->pdata[self->ranges->len - 2])->value.likely
              + product->keep_cents) / product->yield.likely + product->other_cents;
      cost = money (self, unit);
      left = money (self, range->value.likely * (product->price_cents - unit));
      left_cents += range->value.likely * (product->price_cents - unit);
      g_string_append_printf (lines, "%s: %s × (%s − %s) = %s\n", range->name, units, price, cost, left);
    }
  costs = money (self, left_cents - self->likely_cents / self->n_days);
  /* Translators: the costs of a sale day, and what it leaves after them. */
  g_string_append_printf (lines, _("Less the costs of the day, with steps, %s: %s\n"), costs, day);
  g_string_append_printf (lines, "%s × %s = %s", days, day, profit);
  return stead_why_new (g_strdup (_("A season in which everything is as likely as can be")),
                        _("Sale days × (units × (price − cost of one), added up over the products, − the costs of the day)."),
                        g_string_free (lines, FALSE), _("OpenStax, Principles of Accounting, vol. 2, section 3.4."));
}

static SteadWhy *
chance_why (const SteadHowSure *self)
{
  g_autofree char *all = stead_number_format (self->n_draws, 0);
  g_autofree char *bad = stead_number_format (round (self->loss_frac * self->n_draws), 0);
  g_autofree char *share = stead_words_percent (self->loss_frac, 1);

  return stead_why_new (g_strdup (_("The chance to lose money")),
                        _("Seasons that end below zero ÷ all seasons that were drawn. The same ranges always draw the same "
                          "seasons, so a change of the chance comes of the handle, not of luck."),
                        g_strdup_printf ("%s ÷ %s = %s", bad, all, share),
                        _("Drawing of random seasons; held against closed forms of the triangle (means and variances add)."));
}

static SteadWhy *
shape_why (const SteadHowSure *self)
{
  const SteadRange *range = widest (self);
  g_autofree char *low = NULL, *likely = NULL, *high = NULL, *mean = NULL;

  if (range == NULL)
    return NULL;
  low = stead_range_text (self, range, range->value.low);
  likely = stead_range_text (self, range, range->value.likely);
  high = stead_range_text (self, range, range->value.high);
  mean = stead_range_text (self, range, stead_triangle_mean (&range->value));
  return stead_why_new (g_strdup (_("How a number is drawn from a range")),
                        _("The nearer to the likeliest, the more often, in a straight line to the lowest and to the highest: a "
                          "triangle. Its mean is (lowest + likeliest + highest) ÷ 3."),
                        g_strdup_printf (C_("worked range", "%s: (%s; %s; %s), mean %s"), range->name, low, likely, high, mean),
                        _("Triangular distribution, as in handbooks of statistics."));
}

GPtrArray *
stead_how_sure_whys (const SteadHowSure *self)
{
  GPtrArray *whys = stead_whys_new ();
  SteadWhy *shape;

  g_return_val_if_fail (self != NULL, whys);
  if (!self->solved)
    return whys;
  shape = shape_why (self);
  if (shape != NULL)
    g_ptr_array_add (whys, shape);
  g_ptr_array_add (whys, likely_why (self));
  g_ptr_array_add (whys, chance_why (self));
  return whys;
}
