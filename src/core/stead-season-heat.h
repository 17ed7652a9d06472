/* stead-season-heat.h - the heat of a season, and a house's UA from its own fuel.
 *
 * The sun heats a house too.  So the base of the degree days is the temperature
 * kept in the house less what the sun gives on a usual winter day.
 */
#pragma once

#include "core/stead-typical-year.h"

G_BEGIN_DECLS

/**
 * stead_season_base_c:
 * @house_c: temperature kept in the house
 * @solar_lift_c: how much warmer than outdoors the unheated house is on a usual
 *   winter day, over day and night; 0: no credit for the sun
 *
 * Returns: base of the heating degree days
 */
double stead_season_base_c (double house_c,
                            double solar_lift_c);

/**
 * stead_season_heat_kwh:
 * @ua_w_c: of skin and leaks, W/°C
 * @hdd_c: heating °C-days over the house's base
 *
 * UA x 24 hours x degree days.
 * Source: a greenhouse maker's how-to on sizing a heating system (UA); the product
 * is derived.
 *
 * Returns: heat of the season
 */
double stead_season_heat_kwh (double ua_w_c,
                              double hdd_c);

/* One month of heating. */
typedef struct
{
  double hdd_c;      /* heating °C-days */
  double heat_kwh;   /* that the house needs */
} SteadHeatMonth;

/**
 * stead_season_heat_months:
 * @ua_w_c: of skin and leaks, W/°C
 * @base_c: base of the degree days
 * @weather: a valid typical year outdoors
 * @year: calendar year whose days are counted
 * @months: (array fixed-size=12): to be filled in, January first
 */
void stead_season_heat_months (double                  ua_w_c,
                               double                  base_c,
                               const SteadTypicalYear *weather,
                               int                     year,
                               SteadHeatMonth          months[12]);

typedef struct
{
  double ua_w_c;    /* of all months together */
  double low_w_c;   /* of the month that gives least ... */
  double high_w_c;  /* ... and most */
  gsize  n_months;  /* that had heat and degree days */
} SteadOwnUa;

/**
 * stead_season_own_ua:
 * @months: (array length=n_months): own months: °C-days by own weather, and heat by
 *   own fuel (stead_fuel_heat_kwh()); months without degree days are passed over
 * @n_months: how many; two winter months are enough
 * @out_ua: (out): what the house really loses
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Fuel x content x efficiency = UA x 24 x degree days.
 *
 * Returns: %TRUE, or %FALSE if no month had both fuel and degree days
 */
gboolean stead_season_own_ua (const SteadHeatMonth  *months,
                              gsize                  n_months,
                              SteadOwnUa            *out_ua,
                              GError               **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
