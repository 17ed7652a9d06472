/* stead-bird-value.c - the value of a laying hen as it is written down. */
#include "config.h"

#include "core/stead-bird-value.h"

#include <math.h>

double
stead_bird_start_cents (const SteadBirdValue *bird)
{
  g_return_val_if_fail (bird != NULL, NAN);
  return bird->pullet_cents + bird->placing_cents;
}

double
stead_bird_weekly_cents (const SteadBirdValue *bird)
{
  double weeks;

  g_return_val_if_fail (bird != NULL, NAN);
  weeks = bird->end_week - bird->start_week;
  return weeks > 0 ? (stead_bird_start_cents (bird) - bird->salvage_cents) / weeks : NAN;
}

double
stead_bird_value_at_cents (const SteadBirdValue *bird,
                           double                week)
{
  double in_lay;

  g_return_val_if_fail (bird != NULL, NAN);
  in_lay = CLAMP (week, bird->start_week, bird->end_week) - bird->start_week;
  return stead_bird_start_cents (bird) - stead_bird_weekly_cents (bird) * in_lay;
}
