/* stead-demand-learn.c - the demand of a sale day, from a guess and from past days. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-demand-learn.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#define LARGEST 1e9
#define MOST_ROUNDS 500
#define SETTLED 1e-10

/* Every day differs a little: less spread than this share of the mean is chance. */
#define LEAST_CV 0.01

typedef struct
{
  double mean;
  double variance;
} Moments;

/* Mean and variance of a normal above @from: the hazard h of its tail gives
 * mean + sd h and variance (1 + z h - h²). */
static Moments
above (Moments all,
       double  from)
{
  double sd = sqrt (all.variance);
  double z = (from - all.mean) / sd;
  double hazard;

  /* Far out the tail has no digits left; there it is as good as an exponential one. */
  if (z > 30)
    return (Moments) { from + sd / z, all.variance / (z * z) };
  hazard = gsl_ran_ugaussian_pdf (z) / gsl_cdf_ugaussian_Q (z);
  return (Moments) { all.mean + sd * hazard, all.variance * MAX (0, 1 + z * hazard - hazard * hazard) };
}

/* Guess and days together, days that sold out as they are expected by @now. */
static Moments
together (const SteadThreePoint *guess,
          const SteadPastDay    *days,
          gsize                  n,
          Moments                now)
{
  double weight = STEAD_DEMAND_GUESS_DAYS + (double) n;
  double mean = STEAD_DEMAND_GUESS_DAYS * stead_triangle_mean (guess) / weight;
  double squares = 0;

  for (gsize i = 0; i < n; i++)
    mean += (days[i].sold_out ? above (now, days[i].sold).mean : days[i].sold) / weight;
  squares = STEAD_DEMAND_GUESS_DAYS * (stead_triangle_variance (guess) + pow (stead_triangle_mean (guess) - mean, 2));
  for (gsize i = 0; i < n; i++)
    {
      Moments day = days[i].sold_out ? above (now, days[i].sold) : (Moments) { days[i].sold, 0 };

      squares += day.variance + (day.mean - mean) * (day.mean - mean);
    }
  return (Moments) { mean, MAX (squares / weight, pow (LEAST_CV * MAX (mean, 1), 2)) };
}

static gboolean
is_guess (const SteadThreePoint *guess)
{
  return guess->low >= 0 && guess->likely >= guess->low && guess->high >= guess->likely && guess->high > 0
         && guess->high <= LARGEST;
}

gboolean
stead_demand_learn (const SteadThreePoint  *guess,
                    const SteadPastDay     *days,
                    gsize                   n,
                    SteadDemand            *out,
                    GError                **error)
{
  Moments now;

  g_return_val_if_fail (guess != NULL && out != NULL, FALSE);
  g_return_val_if_fail ((days != NULL || n == 0) && n <= STEAD_DEMAND_MOST_DAYS, FALSE);

  if (!is_guess (guess))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("A guess goes from the lowest over the likeliest to the highest number, none below 0. "
                             "Check the three."));
      return FALSE;
    }
  for (gsize i = 0; i < n; i++)
    if (!(days[i].sold >= 0 && days[i].sold <= LARGEST))
      {
        g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                             _("A past day has a number sold that cannot be. Check the past days."));
        return FALSE;
      }
  now = (Moments) { stead_triangle_mean (guess), MAX (stead_triangle_variance (guess),
                                                      pow (LEAST_CV * MAX (stead_triangle_mean (guess), 1), 2)) };
  for (int round = 0; round < MOST_ROUNDS; round++)
    {
      Moments next = together (guess, days, n, now);
      gboolean settled = fabs (next.mean - now.mean) <= SETTLED * (1 + now.mean)
                         && fabs (next.variance - now.variance) <= SETTLED * (1 + now.variance);

      now = next;
      if (settled)
        break;
    }
  *out = (SteadDemand) {
    .shape = STEAD_DEMAND_NORMAL,
    .mean = now.mean,
    .sd = sqrt (now.variance * (1 + 1 / (STEAD_DEMAND_GUESS_DAYS + (double) n))),
  };
  return TRUE;
}
