/* stead-money.c - money in whole minor units: rounding it and handing it out. */
#include "config.h"

#include "core/stead-money.h"
#include "core/stead-round.h"

#include <math.h>
#include <stdlib.h>

gint64
stead_money_round (double cents)
{
  g_return_val_if_fail (isfinite (cents) && fabs (cents) < 9e15, 0);
  return (gint64) stead_round_half_away (cents);
}

/* What is left of one part after flooring, and whose it is. */
typedef struct
{
  long double remainder;
  gsize       index;
} Remainder;

static int
compare_remainders (gconstpointer a,
                    gconstpointer b)
{
  const Remainder *left = a;
  const Remainder *right = b;

  if (left->remainder != right->remainder)
    return left->remainder > right->remainder ? -1 : 1;
  return left->index < right->index ? -1 : 1;
}

/* A power of ten that makes each weight a whole number, so that remainders can
 * be compared exactly; 0: there is none. */
static double
whole_scale (const double *weights,
             gsize         n)
{
  for (double scale = 1; scale <= 1e6; scale *= 10)
    {
      gboolean whole = TRUE;
      double sum = 0;

      for (gsize i = 0; i < n && whole; i++)
        {
          double scaled = weights[i] * scale;

          sum += scaled;
          whole = fabs (scaled - round (scaled)) <= STEAD_ROUND_NOISE * MAX (1, scaled)
                  && sum < 9e15;
        }
      if (whole)
        return scale;
    }
  return 0;
}

/* Floors part @i and tells its remainder, exact where the weights allow it. */
static guint64
floor_share (guint64       total,
             double        weight,
             double        sum,
             double        scale,
             long double  *out_remainder)
{
  if (scale > 0)
    {
      unsigned __int128 product = (unsigned __int128) total * (guint64) llround (weight * scale);
      guint64 divisor = (guint64) llround (sum * scale);

      /* Both lie below 2^63, which a long double holds whole. */
      *out_remainder = (long double) (guint64) (product % divisor);
      return (guint64) (product / divisor);
    }
  else
    {
      long double share = (long double) total * weight / sum;
      long double whole = floorl (share + 1e-12L * MAX (1, share));

      *out_remainder = share - whole;
      return (guint64) whole;
    }
}

void
stead_money_split (gint64        total_cents,
                   const double *weights,
                   gsize         n,
                   gint64       *shares_cents)
{
  g_autofree Remainder *remainders = NULL;
  guint64 total = total_cents < 0 ? -(guint64) total_cents : (guint64) total_cents;
  gint64 left = (gint64) total;
  double sum = 0;
  double scale;

  g_return_if_fail (weights != NULL && shares_cents != NULL && n > 0);
  g_return_if_fail (total_cents > G_MININT64);
  for (gsize i = 0; i < n; i++)
    {
      g_return_if_fail (weights[i] >= 0 && isfinite (weights[i]));
      sum += weights[i];
    }
  g_return_if_fail (sum > 0 && isfinite (sum));

  scale = whole_scale (weights, n);
  if (scale > 0)
    {
      /* Sum what is divided, not its binary shadow. */
      sum = 0;
      for (gsize i = 0; i < n; i++)
        sum += round (weights[i] * scale);
      sum /= scale;
    }
  remainders = g_new (Remainder, n);
  for (gsize i = 0; i < n; i++)
    {
      shares_cents[i] = (gint64) floor_share (total, weights[i], sum, scale,
                                              &remainders[i].remainder);
      remainders[i].index = i;
      left -= shares_cents[i];
    }
  qsort (remainders, n, sizeof *remainders, compare_remainders);
  for (gsize i = 0; left != 0; i = (i + 1) % n)
    {
      gint64 step = left > 0 ? 1 : -1;

      shares_cents[remainders[i].index] += step;
      left -= step;
    }
  if (total_cents < 0)
    for (gsize i = 0; i < n; i++)
      shares_cents[i] = -shares_cents[i];
}
