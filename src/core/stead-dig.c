/* stead-dig.c - before a hole is dug: the call, and the zone for hands only. */
#include "config.h"

#include "core/stead-dig.h"
#include "core/stead-round.h"

#define MOST_BUSINESS_DAYS 60
#define SATURDAY 6

static gboolean
is_business_day (SteadDay        day,
                 const SteadDay *holidays,
                 gsize           n_holidays)
{
  if (stead_day_weekday (day) >= SATURDAY)
    return FALSE;
  for (gsize i = 0; i < n_holidays; i++)
    if (holidays[i] == day)
      return FALSE;
  return TRUE;
}

SteadDay
stead_dig_latest_call (SteadDay        dig,
                       int             business_days,
                       const SteadDay *holidays,
                       gsize           n_holidays)
{
  SteadDay day = dig;
  int left = business_days;

  g_return_val_if_fail (holidays != NULL || n_holidays == 0, STEAD_DAY_NONE);

  if (!stead_day_is_valid (dig) || business_days < 0 || business_days > MOST_BUSINESS_DAYS)
    return STEAD_DAY_NONE;
  for (;;)
    {
      day--;
      if (!stead_day_is_valid (day))
        return STEAD_DAY_NONE;
      if (is_business_day (day, holidays, n_holidays) && left-- == 0)
        return day;
    }
}

/* Safe where a number cannot be: the comparison is turned round. */
gboolean
stead_dig_by_hand (double distance_m,
                   double zone_m)
{
  return !(distance_m > zone_m * (1 + STEAD_ROUND_NOISE));
}

gboolean
stead_permit_by_size (double size,
                      double limit)
{
  return !(size <= limit * (1 + STEAD_ROUND_NOISE));
}
