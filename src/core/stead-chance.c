/* stead-chance.c - uncertain numbers: three-point guesses, sums, and reaching a goal. */
#include "config.h"

#include "core/stead-chance.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

double
stead_pert_mean (const SteadThreePoint *guess)
{
  g_return_val_if_fail (guess != NULL, NAN);
  return (guess->low + 4 * guess->likely + guess->high) / 6;
}

double
stead_pert_variance (const SteadThreePoint *guess)
{
  g_return_val_if_fail (guess != NULL, NAN);
  return (guess->high - guess->low) * (guess->high - guess->low) / 36;
}

double
stead_triangle_mean (const SteadThreePoint *guess)
{
  g_return_val_if_fail (guess != NULL, NAN);
  return (guess->low + guess->likely + guess->high) / 3;
}

double
stead_triangle_variance (const SteadThreePoint *guess)
{
  double a, m, b;

  g_return_val_if_fail (guess != NULL, NAN);
  a = guess->low;
  m = guess->likely;
  b = guess->high;
  return (a * a + m * m + b * b - a * m - a * b - m * b) / 18;
}

double
stead_triangle_density (const SteadThreePoint *guess,
                        double                 x)
{
  double width;

  g_return_val_if_fail (guess != NULL, NAN);
  width = guess->high - guess->low;
  if (!(width > 0))
    return NAN;
  if (x < guess->low || x > guess->high)
    return 0;
  if (x == guess->likely)
    return 2 / width;
  if (x < guess->likely)
    return 2 * (x - guess->low) / (width * (guess->likely - guess->low));
  return 2 * (guess->high - x) / (width * (guess->high - guess->likely));
}

double
stead_triangle_chance_at_most (const SteadThreePoint *guess,
                               double                 x)
{
  double width;

  g_return_val_if_fail (guess != NULL, NAN);
  width = guess->high - guess->low;
  if (!(width > 0))
    return NAN;
  if (x <= guess->low)
    return 0;
  if (x >= guess->high)
    return 1;
  if (x <= guess->likely)
    return (x - guess->low) * (x - guess->low) / (width * (guess->likely - guess->low));
  return 1 - (guess->high - x) * (guess->high - x) / (width * (guess->high - guess->likely));
}

double
stead_triangle_quantile (const SteadThreePoint *guess,
                         double                 chance)
{
  double width;
  double rise;

  g_return_val_if_fail (guess != NULL, NAN);
  width = guess->high - guess->low;
  rise = guess->likely - guess->low;
  if (!(chance >= 0 && chance <= 1))
    return NAN;
  if (!(width > 0))
    return guess->likely;
  if (chance * width <= rise)
    return guess->low + sqrt (chance * width * rise);
  return guess->high - sqrt ((1 - chance) * width * (guess->high - guess->likely));
}

double
stead_normal_chance_at_most (double mean,
                             double sd,
                             double x)
{
  return sd > 0 ? gsl_cdf_ugaussian_P ((x - mean) / sd) : NAN;
}

double
stead_normal_quantile (double mean,
                       double sd,
                       double chance)
{
  return sd >= 0 && chance > 0 && chance < 1 ? mean + sd * gsl_cdf_ugaussian_Pinv (chance) : NAN;
}

static gboolean
is_game (double win_chance,
         double start,
         double target)
{
  return win_chance > 0 && win_chance < 1 && target > 0 && start >= 0 && start <= target;
}

double
stead_ruin_chance_reach (double win_chance,
                         double start,
                         double target)
{
  double log_q;

  if (!is_game (win_chance, start, target))
    return NAN;
  log_q = log ((1 - win_chance) / win_chance);
  if (fabs (log_q) < 1e-12)
    return start / target;
  /* (q^start - 1) / (q^target - 1); for q above 1 both are divided by q^target,
   * which would overflow. */
  if (log_q > 0)
    return (exp ((start - target) * log_q) - exp (-target * log_q)) / -expm1 (-target * log_q);
  return expm1 (start * log_q) / expm1 (target * log_q);
}

double
stead_ruin_expected_steps (double win_chance,
                           double start,
                           double target)
{
  double drift = 1 - 2 * win_chance;

  if (!is_game (win_chance, start, target))
    return NAN;
  if (fabs (drift) < 1e-12)
    return start * (target - start);
  return start / drift - target / drift * stead_ruin_chance_reach (win_chance, start, target);
}

double
stead_saving_chance_after (const SteadSaving *goal,
                           double             weeks)
{
  g_return_val_if_fail (goal != NULL, NAN);
  if (!(weeks > 0 && goal->sd_cents > 0))
    return NAN;
  return gsl_cdf_ugaussian_Q ((goal->missing_cents - weeks * goal->mean_cents)
                              / (goal->sd_cents * sqrt (weeks)));
}

double
stead_saving_chance_ever_by (const SteadSaving *goal,
                             double             weeks)
{
  double spread;
  double lift;
  double tail;

  g_return_val_if_fail (goal != NULL, NAN);
  if (!(weeks > 0 && goal->sd_cents > 0))
    return NAN;
  if (!(goal->missing_cents > 0))
    return 1;
  spread = goal->sd_cents * sqrt (weeks);
  lift = 2 * goal->mean_cents * goal->missing_cents / (goal->sd_cents * goal->sd_cents);
  tail = gsl_cdf_ugaussian_P (-(goal->mean_cents * weeks + goal->missing_cents) / spread);
  /* A huge factor times a tail of nothing is nothing. */
  return gsl_cdf_ugaussian_P ((goal->mean_cents * weeks - goal->missing_cents) / spread)
         + (tail > 0 ? exp (lift + log (tail)) : 0);
}

double
stead_saving_mean_weeks (const SteadSaving *goal)
{
  g_return_val_if_fail (goal != NULL, NAN);
  return goal->mean_cents > 0 ? goal->missing_cents / goal->mean_cents : NAN;
}

double
stead_saving_variance_weeks2 (const SteadSaving *goal)
{
  g_return_val_if_fail (goal != NULL, NAN);
  return goal->mean_cents > 0
         ? goal->missing_cents * goal->sd_cents * goal->sd_cents / pow (goal->mean_cents, 3) : NAN;
}
