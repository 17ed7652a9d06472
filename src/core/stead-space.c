/* stead-space.c - what a bench or a raft costs and brings by area and time. */
#include "config.h"

#include "core/stead-space.h"

#include <math.h>

double
stead_space_rate_cents (double overhead_cents,
                        double area,
                        double weeks,
                        double fill_frac)
{
  double used = area * weeks * fill_frac;

  return used > 0 ? overhead_cents / used : NAN;
}

double
stead_space_charge_cents (double rate_cents,
                          double area,
                          double weeks)
{
  return rate_cents * area * weeks;
}
