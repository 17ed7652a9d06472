/* stead-lay.c - laying curves. */
#include "config.h"

#include "core/stead-lay-models.h"
#include "core/stead-lay.h"

#include <math.h>

/* Parts of a week for the sum: one day's worth of curve is close to straight. */
#define STEPS_PER_WEEK 14

void
stead_lay_curve_default (SteadLayCurve *out)
{
  g_return_if_fail (out != NULL);

  *out = (SteadLayCurve) { .level_frac = 0.97, .decline_week = 0.004, .steepness_week = 1.3,
                           .half_week = 2, .onset_age_weeks = 18 };
}

double
stead_lay_curve_frac (const SteadLayCurve *curve,
                      double               age_weeks)
{
  double t;
  double y;

  g_return_val_if_fail (curve != NULL, NAN);

  t = age_weeks - curve->onset_age_weeks;
  y = stead_lay_compartment (curve->level_frac, curve->decline_week, curve->steepness_week,
                             curve->half_week, t);
  return CLAMP (y, 0, 1);
}

double
stead_lay_curve_eggs (const SteadLayCurve *curve,
                      double               from_age_weeks,
                      double               to_age_weeks)
{
  double n;
  double width;
  double sum;

  g_return_val_if_fail (curve != NULL, NAN);
  g_return_val_if_fail (from_age_weeks <= to_age_weeks, NAN);
  g_return_val_if_fail (to_age_weeks - from_age_weeks <= 1000, NAN);

  if (!(to_age_weeks > from_age_weeks))
    return 0;
  /* Simpson's rule over an even number of parts. */
  n = 2 * ceil ((to_age_weeks - from_age_weeks) * STEPS_PER_WEEK / 2);
  width = (to_age_weeks - from_age_weeks) / n;
  sum = stead_lay_curve_frac (curve, from_age_weeks) + stead_lay_curve_frac (curve, to_age_weeks);
  for (int i = 1; i < (int) n; i++)
    sum += (i % 2 == 1 ? 4 : 2) * stead_lay_curve_frac (curve, from_age_weeks + i * width);
  return 7 * sum * width / 3;
}
