/* stead-pick.c - what the pickings so far say of a crop's total. */
#include "config.h"

#include "core/stead-pick.h"

#include <math.h>

/* Share of the crop that weighs as much as what was expected of it. */
#define WEIGHT_FRAC 0.25

void
stead_pick_factor (double     total_kg,
                   double     expected_kg,
                   double     picked_kg,
                   SteadBand *out_factor)
{
  double weight = WEIGHT_FRAC * total_kg;
  double factor;
  double half;

  g_return_if_fail (total_kg > 0 && expected_kg >= 0 && picked_kg >= 0);
  g_return_if_fail (out_factor != NULL);

  factor = (weight + picked_kg) / (weight + expected_kg);
  half = STEAD_PICK_BAND_FRAC * sqrt (weight / (weight + expected_kg));
  *out_factor = (SteadBand) { factor * (1 - half), factor, factor * (1 + half) };
}
