/* stead-flock.c - a laying flock in numbers. */
#include "config.h"

#include "core/stead-flock.h"

#include <math.h>

double
stead_flock_hen_day_frac (gint64 eggs,
                          double hen_days)
{
  return hen_days > 0 ? (double) eggs / hen_days : NAN;
}

double
stead_flock_hen_housed_frac (gint64 eggs,
                             gint64 hens_housed,
                             gint64 days)
{
  return hens_housed > 0 && days > 0 ? (double) eggs / ((double) hens_housed * (double) days) : NAN;
}

double
stead_flock_hen_days (double                  hens,
                      int                     days,
                      const SteadFlockChange *deaths,
                      gsize                   n_deaths,
                      const SteadFlockChange *arrivals,
                      gsize                   n_arrivals)
{
  double sum = hens * days;

  g_return_val_if_fail (deaths != NULL || n_deaths == 0, NAN);
  g_return_val_if_fail (arrivals != NULL || n_arrivals == 0, NAN);

  for (gsize i = 0; i < n_deaths; i++)
    sum -= deaths[i].birds * (days - deaths[i].day + 1);
  for (gsize i = 0; i < n_arrivals; i++)
    sum += arrivals[i].birds * (days - arrivals[i].day);
  return sum;
}

double
stead_flock_mortality_frac (double deaths,
                            double started)
{
  return started > 0 ? deaths / started : NAN;
}

double
stead_flock_survivors (double started,
                       double mortality_frac)
{
  return started * (1 - mortality_frac);
}

double
stead_flock_feed_per_dozen_kg (double feed_kg,
                               gint64 eggs)
{
  return eggs > 0 ? 12 * feed_kg / (double) eggs : NAN;
}

double
stead_flock_bird_cents_per_egg (double bird_cents,
                                double salvage_cents,
                                double eggs_expected)
{
  g_return_val_if_fail (eggs_expected > 0, NAN);
  g_return_val_if_fail (salvage_cents >= 0 && salvage_cents <= bird_cents, NAN);

  return (bird_cents - salvage_cents) / eggs_expected;
}
