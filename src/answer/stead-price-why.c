/* stead-price-why.c - the formulas of break-even, worked with the farm's numbers. */
#include "config.h"

#include "answer/stead-price-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
money (const SteadPriceAnswer *self,
       double                  cents)
{
  return stead_money_format (stead_money_round (cents), self->cost->farm->currency);
}

/* An exact crossing, with so many digits that rounding it up again gives @up. */
static char *
crossing (double exact,
          gint64 up)
{
  int digits = 2;

  while (digits < 6 && ceil (round (exact * pow (10, digits)) / pow (10, digits)) != (double) up)
    digits++;
  return stead_number_format (exact, digits);
}

static double
steps_at (const SteadCvp *cvp,
          double          at)
{
  return MAX (1, ceil (at / cvp->step_units - 1e-9));
}

static gboolean
has_steps (const SteadCvp *cvp)
{
  return cvp->step_cents > 0 && cvp->step_units > 0;
}

/* "$96.00", or with steps "$96.00 + 2 × $12.00". */
static char *
fixed_text (const SteadPriceAnswer *self,
            double                  at)
{
  g_autofree char *fixed = money (self, self->cvp.fixed_cents);
  g_autofree char *step = money (self, self->cvp.step_cents);
  g_autofree char *steps = NULL;

  if (!has_steps (&self->cvp))
    return g_strdup (fixed);
  steps = stead_number_format (steps_at (&self->cvp, at), 0);
  return g_strdup_printf ("%s + %s × %s", fixed, steps, step);
}

const char *
stead_price_why_title (SteadPriceWhy why)
{
  switch (why)
    {
    case STEAD_PRICE_WHY_MARGIN:   return _("What one sale leaves");
    case STEAD_PRICE_WHY_EVEN:     return _("How many sales cover the day");
    case STEAD_PRICE_WHY_SAFETY:   return _("How far the plan can fall short");
    case STEAD_PRICE_WHY_LEVERAGE: return _("How hard sales pull on the profit");
    case STEAD_PRICE_WHY_TARGET:   return _("How many sales reach the target");
    case STEAD_PRICE_WHY_STEPS:    return _("Costs that come in steps");
    default: g_return_val_if_reached (NULL);
    }
}

static SteadWhy *
margin_why (const SteadPriceAnswer *self)
{
  g_autofree char *price = money (self, self->cvp.price_cents);
  g_autofree char *variable = money (self, self->cvp.variable_cents);
  g_autofree char *margin = money (self, self->figures.margin_cents);
  g_autofree char *share = NULL;
  char *worked;

  if (isnan (self->figures.margin_frac))
    worked = g_strdup_printf ("%s − %s = %s", price, variable, margin);
  else
    {
      share = stead_words_percent (self->figures.margin_frac, 1);
      /* Translators: price − cost = what one sale leaves, and its share of the price. */
      worked = g_strdup_printf (_("%s − %s = %s, which is %s of the price"), price, variable, margin, share);
    }
  return stead_why_new (g_strdup (stead_price_why_title (STEAD_PRICE_WHY_MARGIN)),
                        _("Price − cost of one."), worked,
                        _("Contribution margin: OpenStax, Principles of Accounting, vol. 2, section 3.1."));
}

static SteadWhy *
even_why (const SteadPriceAnswer *self)
{
  const SteadCvpFigures *figures = &self->figures;
  SteadPack pack = self->cost->product->pack;
  g_autofree char *margin = money (self, figures->margin_cents);
  g_autofree char *fixed = NULL;
  g_autofree char *exact = NULL;
  g_autofree char *whole = NULL;
  char *worked;

  if (!(figures->margin_cents > 0))
    worked = g_strdup_printf (_("One sale leaves %s, so no number of sales covers the costs."), margin);
  else if (figures->even_whole_units < 0)
    worked = g_strdup_printf (_("Each step of costs takes more than its units leave at %s each."), margin);
  else
    {
      fixed = fixed_text (self, (double) figures->even_whole_units);
      exact = crossing (figures->even_units, figures->even_whole_units);
      whole = stead_words_units (pack, (double) figures->even_whole_units);
      /* Translators: fixed costs ÷ what one sale leaves = exact number, so a whole number of units. */
      worked = g_strdup_printf (_("(%s) ÷ %s = %s, so %s"), fixed, margin, exact, whole);
    }
  return stead_why_new (g_strdup (stead_price_why_title (STEAD_PRICE_WHY_EVEN)),
                        _("Fixed costs of the day ÷ what one sale leaves, rounded up."), worked,
                        _("Break-even: OpenStax, Principles of Accounting, vol. 2, section 3.2. "
                          "Rounded up, since part of a unit cannot be sold."));
}

static SteadWhy *
safety_why (const SteadPriceAnswer *self)
{
  const SteadCvpFigures *figures = &self->figures;
  SteadPack pack = self->cost->product->pack;
  g_autofree char *plan = stead_number_format (self->cvp.planned_units, 0);
  g_autofree char *even = stead_number_format (self->cvp.planned_units - figures->safety_units, 2);
  g_autofree char *safety = stead_words_units_exact (pack, figures->safety_units, 2);
  g_autofree char *share = stead_words_percent (figures->safety_frac, 1);

  return stead_why_new (g_strdup (stead_price_why_title (STEAD_PRICE_WHY_SAFETY)),
                        _("Plan − break-even."),
                        /* Translators: planned units − exact break-even = units to spare, and their share. */
                        g_strdup_printf (_("%s − %s = %s, which is %s of the plan"), plan, even, safety, share),
                        _("Margin of safety: OpenStax, Principles of Accounting, vol. 2, section 3.5."));
}

static SteadWhy *
leverage_why (const SteadPriceAnswer *self)
{
  const SteadCvpFigures *figures = &self->figures;
  double total = figures->margin_cents * self->cvp.planned_units;
  g_autofree char *margin = money (self, total);
  g_autofree char *profit = money (self, figures->profit_cents);
  g_autofree char *leverage = stead_number_format (figures->leverage, 2);
  g_autofree char *change = stead_words_percent (fabs (figures->leverage) / 10, 1);

  return stead_why_new (g_strdup (stead_price_why_title (STEAD_PRICE_WHY_LEVERAGE)),
                        _("What all planned sales leave ÷ profit. It holds at this plan only."),
                        /* Translators: margin of the plan ÷ profit = times; then 10 % more sales and what it does. */
                        g_strdup_printf (_("%s ÷ %s = %s: one tenth more sales changes the profit by %s"),
                                         margin, profit, leverage, change),
                        _("Operating leverage: OpenStax, Principles of Accounting, vol. 2, section 3.5."));
}

static SteadWhy *
target_why (const SteadPriceAnswer *self)
{
  const SteadCvpFigures *figures = &self->figures;
  gint64 needed = figures->target_whole_units;
  g_autofree char *margin = money (self, figures->margin_cents);
  g_autofree char *target = money (self, self->cvp.target_cents);
  g_autofree char *fixed = fixed_text (self, (double) MAX (0, needed));
  g_autofree char *exact = NULL;
  g_autofree char *whole = NULL;
  char *worked;

  if (needed < 0)
    worked = g_strdup_printf (_("One sale leaves %s, so no number of sales reaches %s."), margin, target);
  else
    {
      exact = crossing ((stead_cvp_fixed_cents (&self->cvp, (double) needed) + self->cvp.target_cents)
                        / figures->margin_cents, needed);
      whole = stead_words_units (self->cost->product->pack, (double) needed);
      /* Translators: (fixed costs + target) ÷ what one sale leaves = exact number, so a whole number of units. */
      worked = g_strdup_printf (_("(%s + %s) ÷ %s = %s, so %s"), fixed, target, margin, exact, whole);
    }
  return stead_why_new (g_strdup (stead_price_why_title (STEAD_PRICE_WHY_TARGET)),
                        _("(Fixed costs of the day + target) ÷ what one sale leaves, rounded up."), worked,
                        _("Target profit: OpenStax, Principles of Accounting, vol. 2, section 3.2."));
}

static SteadWhy *
steps_why (const SteadPriceAnswer *self)
{
  double planned = self->cvp.planned_units;
  g_autofree char *fixed = fixed_text (self, planned);
  g_autofree char *total = money (self, stead_cvp_fixed_cents (&self->cvp, planned));
  g_autofree char *plan = stead_words_units (self->cost->product->pack, planned);
  g_autofree char *size = stead_words_units (self->cost->product->pack, self->cvp.step_units);

  return stead_why_new (g_strdup (stead_price_why_title (STEAD_PRICE_WHY_STEPS)),
                        _("Fixed costs + one step for each full or part load, at least one step."),
                        /* Translators: for "72 dozen", one step for each "40 dozen": costs and steps = all. */
                        g_strdup_printf (_("For %s, one step for each %s: %s = %s"), plan, size, fixed, total),
                        _("Stepped costs: OpenStax, Principles of Accounting, vol. 2, section 2.2."));
}

GPtrArray *
stead_price_answer_whys (const SteadPriceAnswer *self)
{
  GPtrArray *whys;

  g_return_val_if_fail (self != NULL, NULL);

  whys = stead_whys_new ();
  g_ptr_array_add (whys, margin_why (self));
  g_ptr_array_add (whys, even_why (self));
  if (self->cvp.planned_units > 0 && !isnan (self->figures.safety_units))
    g_ptr_array_add (whys, safety_why (self));
  if (self->cvp.planned_units > 0 && !isnan (self->figures.leverage))
    g_ptr_array_add (whys, leverage_why (self));
  if (self->cvp.target_cents > 0)
    g_ptr_array_add (whys, target_why (self));
  if (has_steps (&self->cvp))
    g_ptr_array_add (whys, steps_why (self));
  return whys;
}
