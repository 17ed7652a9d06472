/* stead-greenhouse.c - what a greenhouse loses in heat, and the heater for it. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-greenhouse.h"
#include "core/stead-round.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define SQFT_M2 0.09290304
#define F_PER_C 1.8

/* W/m²/°C in a Btu/h/sq ft/°F: 5.678. */
#define U_PER_BTU (STEAD_W_PER_BTU_H * F_PER_C / SQFT_M2)

/* W/°C that one change an hour costs for each m³: 0.335. */
#define AIR_W_M3_C (0.018 * STEAD_W_PER_BTU_H * F_PER_C / STEAD_CUBIC_FOOT_M3)

double
stead_cover_u_w_m2_c (SteadCover cover)
{
  switch (cover)
    {
    case STEAD_COVER_DOUBLE_FILM:
      return 0.7 * U_PER_BTU;
    case STEAD_COVER_TWIN_WALL:
      return 0.53 * U_PER_BTU;
    case STEAD_COVER_GLASS:
      return 1.13 * U_PER_BTU;
    case STEAD_COVER_SINGLE_FILM:
    default:
      return 1.2 * U_PER_BTU;
    }
}

double
stead_greenhouse_ua_w_c (const SteadGreenhouseSkin *skin,
                         gsize                      n_parts)
{
  double sum = 0;

  g_return_val_if_fail (skin != NULL || n_parts == 0, NAN);

  for (gsize i = 0; i < n_parts; i++)
    sum += skin[i].area_m2 * skin[i].u_w_m2_c;
  return sum;
}

double
stead_greenhouse_leak_ua_w_c (double volume_m3,
                              double changes_h)
{
  return AIR_W_M3_C * volume_m3 * changes_h;
}

double
stead_greenhouse_loss_w (double ua_w_c,
                         double difference_c)
{
  return difference_c < 0 ? 0 : ua_w_c * difference_c;
}

gboolean
stead_greenhouse_heater_w (double   loss_w,
                           double   margin_frac,
                           double  *out_w,
                           GError **error)
{
  g_return_val_if_fail (loss_w >= 0, FALSE);
  g_return_val_if_fail (out_w != NULL, FALSE);

  if (!(margin_frac >= STEAD_HEATER_MARGIN_LEAST - STEAD_ROUND_NOISE
        && margin_frac <= STEAD_HEATER_MARGIN_MOST + STEAD_ROUND_NOISE))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("A heater is sized 10 to 25 percent over the loss of the coldest usual night. "
                             "Choose a margin in between."));
      return FALSE;
    }
  *out_w = loss_w * (1 + margin_frac);
  return TRUE;
}

double
stead_hoop_skin_m2 (double width_m,
                    double length_m)
{
  double radius_m = width_m / 2;

  return G_PI * radius_m * length_m + G_PI * radius_m * radius_m;
}

double
stead_hoop_volume_m3 (double width_m,
                      double length_m)
{
  double radius_m = width_m / 2;

  return G_PI * radius_m * radius_m / 2 * length_m;
}
