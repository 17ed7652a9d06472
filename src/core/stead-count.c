/* stead-count.c - how many whole pieces to buy or to fit. */
#include "config.h"

#include "core/stead-count.h"
#include "core/stead-round.h"

#include <math.h>

/* A share that can be counted; FALSE for NaN, too. */
static gboolean
can_count (double amount,
           double each)
{
  return amount >= 0 && each > 0 && isfinite (each) && amount / each <= STEAD_COUNT_MOST;
}

gint64
stead_count_up (double need,
                double each)
{
  return can_count (need, each) ? (gint64) stead_round_up (need / each) : STEAD_COUNT_NONE;
}

gint64
stead_count_down (double have,
                  double each)
{
  return can_count (have, each) ? (gint64) stead_round_down (have / each) : STEAD_COUNT_NONE;
}

gint64
stead_count_members (double length,
                     double spacing)
{
  gint64 bays = stead_count_up (length, spacing);

  return bays == STEAD_COUNT_NONE ? STEAD_COUNT_NONE : bays + 1;
}

double
stead_count_bay (double length,
                 double spacing)
{
  gint64 bays = stead_count_up (length, spacing);

  return bays > 0 ? length / (double) bays : NAN;
}

double
stead_with_waste (double need,
                  double waste_frac)
{
  return waste_frac >= 0 && waste_frac <= 1 ? need * (1 + waste_frac) : NAN;
}

double
stead_step_up (double length,
               double step)
{
  gint64 steps = stead_count_up (length, step);

  return steps != STEAD_COUNT_NONE ? (double) steps * step : NAN;
}
