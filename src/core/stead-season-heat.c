/* stead-season-heat.c - the heat of a season, and a house's UA from its own fuel. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-season-heat.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* kWh that one W/°C lets out in a °C-day. */
#define KWH_PER_W_DAY (24.0 / 1000)

double
stead_season_base_c (double house_c,
                     double solar_lift_c)
{
  return house_c - solar_lift_c;
}

double
stead_season_heat_kwh (double ua_w_c,
                       double hdd_c)
{
  return ua_w_c * hdd_c * KWH_PER_W_DAY;
}

void
stead_season_heat_months (double                  ua_w_c,
                          double                  base_c,
                          const SteadTypicalYear *weather,
                          int                     year,
                          SteadHeatMonth          months[12])
{
  SteadDay first = stead_day_new (year, 1, 1);
  SteadDay last = stead_day_new (year, 12, 31);

  g_return_if_fail (first != STEAD_DAY_NONE);
  g_return_if_fail (weather != NULL && stead_typical_year_is_valid (weather));
  g_return_if_fail (months != NULL);

  for (int i = 0; i < 12; i++)
    months[i] = (SteadHeatMonth) { 0 };
  for (SteadDay day = first; day <= last; day++)
    {
      int month;

      stead_day_split (day, NULL, &month, NULL);
      months[month - 1].hdd_c += stead_typical_year_heating_degree_day (weather, base_c, day);
    }
  for (int i = 0; i < 12; i++)
    months[i].heat_kwh = stead_season_heat_kwh (ua_w_c, months[i].hdd_c);
}

gboolean
stead_season_own_ua (const SteadHeatMonth  *months,
                     gsize                  n_months,
                     SteadOwnUa            *out_ua,
                     GError               **error)
{
  SteadOwnUa ua = { .low_w_c = INFINITY };
  double heat_kwh = 0;
  double hdd_c = 0;

  g_return_val_if_fail (months != NULL || n_months == 0, FALSE);
  g_return_val_if_fail (out_ua != NULL, FALSE);

  for (gsize i = 0; i < n_months; i++)
    {
      double own;

      if (!(months[i].hdd_c > 0 && months[i].heat_kwh > 0))
        continue;
      own = months[i].heat_kwh / (months[i].hdd_c * KWH_PER_W_DAY);
      ua.low_w_c = MIN (ua.low_w_c, own);
      ua.high_w_c = MAX (ua.high_w_c, own);
      ua.n_months++;
      heat_kwh += months[i].heat_kwh;
      hdd_c += months[i].hdd_c;
    }
  if (ua.n_months == 0)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("The loss of the house can be found only from months that have both "
                             "fuel and cold days. Enter the fuel and the weather of a winter month."));
      return FALSE;
    }
  ua.ua_w_c = heat_kwh / (hdd_c * KWH_PER_W_DAY);
  *out_ua = ua;
  return TRUE;
}
