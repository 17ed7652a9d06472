/* stead-band.c - a figure that is not known, as the band that it likely lies in. */
#include "config.h"

#include "core/stead-band.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

void
stead_band_normal (double     mean,
                   double     sd,
                   double     level,
                   SteadBand *out)
{
  double half;

  g_return_if_fail (sd >= 0);
  g_return_if_fail (level > 0 && level < 1);
  g_return_if_fail (out != NULL);

  half = sd * gsl_cdf_ugaussian_Pinv ((1 + level) / 2);
  *out = (SteadBand) { mean - half, mean, mean + half };
}

/* Puts the k-th smallest of a[low] to a[high] at k, smaller ones before it and larger
 * ones after it: quickselect, since a full sort of many draws would take most of the
 * time. */
static void
select_at (double *a,
           gsize   low,
           gsize   high,
           gsize   k)
{
  while (low < high)
    {
      double pivot = a[low + (high - low) / 2];
      gsize i = low, j = high;

      for (;;)
        {
          double held;

          while (a[i] < pivot)
            i++;
          while (a[j] > pivot)
            j--;
          if (i >= j)
            break;
          held = a[i];
          a[i++] = a[j];
          a[j--] = held;
        }
      if (k <= j)
        high = j;
      else
        low = j + 1;
    }
}

/* A quantile that is known to stand in a[low] to a[high], with nothing smaller
 * behind nor larger before. */
static double
quantile (double *a,
          gsize   n,
          gsize   low,
          gsize   high,
          double  chance)
{
  double place = chance * (double) (n - 1);
  gsize below = (gsize) floor (place);
  double next;

  select_at (a, low, high, below);
  if (below + 1 >= n)
    return a[below];
  /* What comes next in order is the least of what stands behind. */
  next = a[below + 1];
  for (gsize i = below + 2; i <= (below < high ? high : n - 1); i++)
    next = MIN (next, a[i]);
  /* Both may be without end. */
  if (next == a[below])
    return next;
  return a[below] + (place - (double) below) * (next - a[below]);
}

void
stead_band_of_draws (double    *draws,
                     gsize      n,
                     double     level,
                     SteadBand *out)
{
  gsize middle;

  g_return_if_fail (draws != NULL && n >= 1);
  g_return_if_fail (level > 0 && level < 1);
  g_return_if_fail (out != NULL);

  for (gsize i = 0; i < n; i++)
    g_return_if_fail (!isnan (draws[i]));
  /* The middle first: each end then is looked for in its own half. */
  out->likely = quantile (draws, n, 0, n - 1, 0.5);
  middle = (n - 1) / 2;
  out->low = quantile (draws, n, 0, middle, (1 - level) / 2);
  out->high = quantile (draws, n, middle, n - 1, (1 + level) / 2);
}

gboolean
stead_band_holds (const SteadBand *band,
                  double           value)
{
  g_return_val_if_fail (band != NULL, FALSE);
  return value >= band->low && value <= band->high;
}
