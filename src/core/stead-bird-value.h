/* stead-bird-value.h - the value of a laying hen as it is written down.
 *
 * Cost to the first egg is not a cost of that month: it is a stock value that
 * falls in a straight line to what a spent hen brings.
 * Source: UC Davis avian sciences, Hen value, September 2002.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  double pullet_cents;    /* price, or cost of rearing */
  double placing_cents;   /* putting it in */
  double salvage_cents;   /* worth as a spent hen */
  double start_week;      /* of age, when it begins to lay */
  double end_week;        /* of age, when it leaves; above start_week */
} SteadBirdValue;

/**
 * stead_bird_start_cents: value when lay begins
 * stead_bird_weekly_cents: what one week of lay takes; NAN without weeks
 * stead_bird_value_at_cents: value at an age in weeks; never outside start and salvage
 */
double stead_bird_start_cents (const SteadBirdValue *bird);
double stead_bird_weekly_cents (const SteadBirdValue *bird);
double stead_bird_value_at_cents (const SteadBirdValue *bird,
                                  double                week);

G_END_DECLS
