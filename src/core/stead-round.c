/* stead-round.c - rounding at a named place, free of binary noise. */
#include "config.h"

#include "core/stead-round.h"

#include <math.h>

static double
noise_of (double value)
{
  return STEAD_ROUND_NOISE * MAX (1, fabs (value));
}

double
stead_round_half_away (double value)
{
  /* Above 2^52 every double is whole, and the noise would be more than 1. */
  if (fabs (value) >= 4503599627370496.0)
    return value;
  /* Noise is a matter of the digits behind the point: for a large number the
   * relative noise is capped, or 5,000,000.4 cents would go up. */
  return copysign (floor (fabs (value) + 0.5 + MIN (noise_of (value), 1e-6)), value);
}

double
stead_round_up (double value)
{
  return ceil (value - MIN (noise_of (value), 1e-6));
}

double
stead_round_down (double value)
{
  return floor (value + MIN (noise_of (value), 1e-6));
}

double
stead_round_digits (double value,
                    int    digits)
{
  double scale;

  g_return_val_if_fail (digits >= -9 && digits <= 15, value);

  scale = pow (10, abs (digits));
  return digits < 0 ? stead_round_half_away (value / scale) * scale
                    : stead_round_half_away (value * scale) / scale;
}

double
stead_round_back (double value,
                  double before)
{
  return fabs (value - before) <= STEAD_ROUND_NOISE * fabs (before) ? before : value;
}
