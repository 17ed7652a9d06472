/* stead-breakeven.c - cost, volume and profit of one product.
 *
 * With steps, the lines of step k (its units lie above (k - 1) x size and up
 * to k x size) meet at (fixed + k x step) / margin.  Such a meeting counts only
 * inside its own step.  Since each further step brings the same gain, the
 * margin of a full step less its cost, the step in which something first
 * happens follows from one division: nothing here walks from unit to unit.
 */
#include "config.h"

#include "core/stead-breakeven.h"
#include "core/stead-round.h"

#include <math.h>

/* The parts that every question below needs. */
typedef struct
{
  double margin;      /* of one unit, above 0 */
  double fixed;       /* with a target: fixed cost + target; may be negative */
  double step_cost;
  double step_size;   /* INFINITY: one step holds all */
  double step_gain;   /* margin of a full step less its cost */
} Lines;

static gboolean
has_steps (const SteadCvp *cvp)
{
  return cvp->step_cents > 0 && cvp->step_units > 0;
}

/* Zero that is only binary noise beside the sums it comes from. */
static double
clean (double value,
       double scale)
{
  return fabs (value) <= STEAD_ROUND_NOISE * fabs (scale) ? 0 : value;
}

static double
margin_of (const SteadCvp *cvp)
{
  return clean (cvp->price_cents - cvp->variable_cents, cvp->price_cents);
}

static Lines
lines_for (const SteadCvp *cvp,
           double          target_cents)
{
  Lines lines = { .margin = margin_of (cvp), .fixed = cvp->fixed_cents + target_cents,
                  .step_size = INFINITY, .step_gain = INFINITY };

  if (has_steps (cvp))
    {
      lines.step_cost = cvp->step_cents;
      lines.step_size = cvp->step_units;
      lines.step_gain = clean (lines.margin * lines.step_size - lines.step_cost, lines.step_cost);
    }
  return lines;
}

/* Steps that @units need: at least one. */
static double
steps_at (const Lines *lines,
          double       units)
{
  return isinf (lines->step_size) ? 1 : MAX (1, stead_round_up (units / lines->step_size));
}

/* Where the lines of step @k meet; never before 0 units. */
static double
even_in (const Lines *lines,
         double       k)
{
  return MAX (0, (lines->fixed + k * lines->step_cost) / lines->margin);
}

static double
end_of (const Lines *lines,
        double       k)
{
  return isinf (lines->step_size) ? INFINITY : k * lines->step_size;
}

/* The first step from @from on that reaches no loss inside itself; NAN: none. */
static double
step_without_loss (const Lines *lines,
                   double       from)
{
  double k = from;

  if (lines->margin <= 0)
    return NAN;
  if (even_in (lines, k) <= end_of (lines, k) * (1 + STEAD_ROUND_NOISE))
    return k;
  if (lines->step_gain <= 0)
    return NAN;
  return MAX (from, stead_round_up (lines->fixed / lines->step_gain));
}

/* The last step up to @to that has a loss somewhere; at least 1. */
static double
step_with_loss (const Lines *lines,
                double       to)
{
  double bound;

  if (lines->step_gain <= 0 || isinf (lines->step_size))
    return to;
  bound = (lines->fixed + lines->margin * lines->step_size) / lines->step_gain;
  return CLAMP (stead_round_up (bound) - 1, 1, to);
}

/* The first whole unit from the exact meeting in step @k on; -1: none. */
static gint64
whole_from (const Lines *lines,
            double       k)
{
  /* A step whose size is not whole may end before the next whole unit, which
   * then carries the cost of a further step: ask again from there.  A few
   * rounds do, but where steps just pay for themselves it could go on. */
  for (int tries = 0; !isnan (k) && tries < 10000; tries++)
    {
      double whole = stead_round_up (even_in (lines, k));
      double at = steps_at (lines, whole);

      if (!(whole < 9e15))
        return -1;
      if (at <= k)
        return (gint64) whole;
      k = step_without_loss (lines, at);
    }
  return -1;
}

double
stead_cvp_fixed_cents (const SteadCvp *cvp,
                       double          units)
{
  Lines lines;

  g_return_val_if_fail (cvp != NULL, NAN);

  if (!has_steps (cvp))
    return cvp->fixed_cents;
  lines = lines_for (cvp, 0);
  return cvp->fixed_cents + cvp->step_cents * steps_at (&lines, units);
}

double
stead_cvp_cost_cents (const SteadCvp *cvp,
                      double          units)
{
  g_return_val_if_fail (cvp != NULL, NAN);
  return stead_cvp_fixed_cents (cvp, units) + cvp->variable_cents * units;
}

double
stead_cvp_revenue_cents (const SteadCvp *cvp,
                         double          units)
{
  g_return_val_if_fail (cvp != NULL, NAN);
  return cvp->price_cents * units;
}

double
stead_cvp_profit_cents (const SteadCvp *cvp,
                        double          units)
{
  double revenue;

  g_return_val_if_fail (cvp != NULL, NAN);
  revenue = stead_cvp_revenue_cents (cvp, units);
  return clean (revenue - stead_cvp_cost_cents (cvp, units), revenue);
}

double
stead_cvp_even_units (const SteadCvp *cvp,
                      double          target_cents)
{
  Lines lines;
  double k;

  g_return_val_if_fail (cvp != NULL, NAN);
  lines = lines_for (cvp, target_cents);
  k = step_without_loss (&lines, 1);
  return isnan (k) ? NAN : even_in (&lines, k);
}

gint64
stead_cvp_even_whole_units (const SteadCvp *cvp,
                            double          target_cents)
{
  Lines lines;

  g_return_val_if_fail (cvp != NULL, -1);
  lines = lines_for (cvp, target_cents);
  return whole_from (&lines, step_without_loss (&lines, 1));
}

/* The first whole unit of the run without loss that ends at @units, where there
 * is none. */
static gint64
run_start (const SteadCvp *cvp,
           const Lines    *lines,
           double          units)
{
  double k;

  /* The bound counts a loss just above the end of a step, where there may be
   * no whole unit: go back from it to a step that has one. */
  for (k = step_with_loss (lines, steps_at (lines, units)); k > 1; k--)
    {
      double first = stead_round_down (end_of (lines, k - 1)) + 1;

      if (first <= MIN (end_of (lines, k), units) && stead_cvp_profit_cents (cvp, first) < 0)
        break;
    }
  return (gint64) stead_round_up (even_in (lines, k));
}

gint64
stead_cvp_lasting_whole_units (const SteadCvp *cvp,
                               double          max_units)
{
  Lines lines;

  g_return_val_if_fail (cvp != NULL, -1);
  g_return_val_if_fail (max_units >= 0 && max_units <= 1e9, -1);

  lines = lines_for (cvp, 0);
  if (lines.margin <= 0 || stead_cvp_profit_cents (cvp, stead_round_down (max_units)) < 0)
    return -1;
  return run_start (cvp, &lines, max_units);
}

/* How far the plan lies above the loss below it, or below the next profit above it. */
static void
fill_safety (const SteadCvp  *cvp,
             SteadCvpFigures *out)
{
  Lines lines = lines_for (cvp, 0);
  double k = steps_at (&lines, cvp->planned_units);
  gboolean loss = out->profit_cents < 0;
  gint64 edge;

  out->safety_units = NAN;
  out->safety_frac = NAN;
  if (isnan (out->even_units))
    return;
  k = loss ? step_without_loss (&lines, k) : step_with_loss (&lines, k);
  if (isnan (k))
    return;
  edge = loss ? whole_from (&lines, k) : run_start (cvp, &lines, cvp->planned_units);
  out->safety_units = cvp->planned_units - even_in (&lines, k);
  out->safety_whole_units = (gint64) stead_round_down (cvp->planned_units - (double) edge);
  if (cvp->planned_units > 0)
    out->safety_frac = out->safety_units / cvp->planned_units;
}

/* Beyond every step: each brings the same gain, so a gain above 0 ends all loss
 * at last, and one of 0 or less never does. */
static gint64
lasting_for_good (const SteadCvp *cvp)
{
  Lines lines = lines_for (cvp, 0);

  if (isnan (stead_cvp_even_units (cvp, 0)) || lines.step_gain <= 0)
    return -1;
  return run_start (cvp, &lines, INFINITY);
}

void
stead_cvp_figures (const SteadCvp  *cvp,
                   SteadCvpFigures *out)
{
  double margin;
  double total_margin;

  g_return_if_fail (cvp != NULL);
  g_return_if_fail (out != NULL);

  margin = margin_of (cvp);
  total_margin = margin * cvp->planned_units;
  *out = (SteadCvpFigures) {
    .margin_cents = margin,
    .margin_frac = cvp->price_cents > 0 ? margin / cvp->price_cents : NAN,
    .even_units = stead_cvp_even_units (cvp, 0),
    .even_whole_units = stead_cvp_even_whole_units (cvp, 0),
    .profit_cents = stead_cvp_profit_cents (cvp, cvp->planned_units),
    .target_whole_units = stead_cvp_even_whole_units (cvp, cvp->target_cents),
    .needed_price_cents = NAN,
  };
  out->lasting_whole_units = has_steps (cvp) ? lasting_for_good (cvp) : out->even_whole_units;
  out->even_sales_cents = out->even_units * cvp->price_cents;
  out->leverage = out->profit_cents != 0 ? total_margin / out->profit_cents : NAN;
  if (cvp->planned_units > 0)
    out->needed_price_cents = cvp->variable_cents
      + (stead_cvp_fixed_cents (cvp, cvp->planned_units) + cvp->target_cents) / cvp->planned_units;
  fill_safety (cvp, out);
}

guint
stead_cvp_crossings (const SteadCvp *cvp,
                     double          max_units)
{
  Lines lines;
  double last;
  gboolean loss;
  guint crossings = 0;

  g_return_val_if_fail (cvp != NULL, 0);
  g_return_val_if_fail (max_units >= 0 && max_units <= 1e9, 0);

  lines = lines_for (cvp, 0);
  last = steps_at (&lines, max_units);
  loss = stead_cvp_profit_cents (cvp, 0) < 0;
  for (double k = 1; k <= last; k++)
    {
      double from = k > 1 ? stead_round_down (end_of (&lines, k - 1)) + 1 : 0;
      double to = stead_round_down (MIN (end_of (&lines, k), max_units));
      gboolean loss_from = stead_cvp_profit_cents (cvp, from) < 0;
      gboolean loss_to = stead_cvp_profit_cents (cvp, to) < 0;

      if (from > to)
        continue;
      /* Inside a step profit only moves one way, so its ends tell all. */
      crossings += (loss_from != loss) + (loss_to != loss_from);
      loss = loss_to;
    }
  return crossings;
}

double
stead_pretax_cents (double after_tax_cents,
                    double tax_frac)
{
  return tax_frac >= 0 && tax_frac < 1 ? after_tax_cents / (1 - tax_frac) : NAN;
}
