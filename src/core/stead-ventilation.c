/* stead-ventilation.c - fans, shade and inlets of a greenhouse. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-round.h"
#include "core/stead-ventilation.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MOST_SHADE 0.6

gboolean
stead_fan_flow_floor_m3_h (double   floor_m2,
                           double   rate_m3_h_m2,
                           double   shade_frac,
                           double  *out_m3_h,
                           GError **error)
{
  g_return_val_if_fail (out_m3_h != NULL, FALSE);

  if (!(shade_frac >= 0 && shade_frac <= MOST_SHADE + STEAD_ROUND_NOISE))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("The rule for fans under a shade cloth covers cloths up to 60 percent. "
                             "Choose a lighter cloth, or size the fans without one."));
      return FALSE;
    }
  *out_m3_h = floor_m2 * rate_m3_h_m2 * (1 - shade_frac);
  return TRUE;
}

double
stead_fan_flow_volume_m3_h (double volume_m3,
                            double changes_min)
{
  return volume_m3 * changes_min * 60;
}

double
stead_inlet_m2 (double flow_m3_h,
                double speed_m_s)
{
  return speed_m_s > 0 ? flow_m3_h / 3600 / speed_m_s : NAN;
}
