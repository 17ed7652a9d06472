/* stead-vapor.c - how moist the air of a house is. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-vapor.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* FAO Irrigation and Drainage Paper 56, equation 11. */
#define AT_0_C_KPA 0.6108
#define SLOPE 17.27
#define SHIFT_C 237.3

/* A reading in °F must meet a limit after the way through °C. */
#define NEAR 1e-9

static gboolean
check_temp (double   temp_c,
            GError **error)
{
  if (temp_c >= STEAD_VAPOR_LEAST_C - NEAR && temp_c <= STEAD_VAPOR_MOST_C + NEAR)
    return TRUE;
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                       _("The rule for the moisture of air holds from 32 to 122 °F (0 to 50 °C). "
                         "Check the temperature."));
  return FALSE;
}

static gboolean
check_order (double   low,
             double   high,
             GError **error)
{
  if (low <= high)
    return TRUE;
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                       _("The highest reading of the day lies below the lowest. "
                         "Check which is which."));
  return FALSE;
}

static gboolean
check_humidity (double   humidity_frac,
                GError **error)
{
  if (humidity_frac >= 0 && humidity_frac <= 1 + NEAR)
    return TRUE;
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                       _("Relative humidity lies between 0 and 100 percent. Check the reading."));
  return FALSE;
}

static double
saturation_kpa (double temp_c)
{
  return AT_0_C_KPA * exp (SLOPE * temp_c / (temp_c + SHIFT_C));
}

gboolean
stead_vapor_saturation_kpa (double   temp_c,
                            double  *out_kpa,
                            GError **error)
{
  g_return_val_if_fail (out_kpa != NULL, FALSE);

  if (!check_temp (temp_c, error))
    return FALSE;
  *out_kpa = saturation_kpa (temp_c);
  return TRUE;
}

gboolean
stead_vapor_saturation_mean_kpa (double   min_c,
                                 double   max_c,
                                 double  *out_kpa,
                                 GError **error)
{
  g_return_val_if_fail (out_kpa != NULL, FALSE);

  if (!check_temp (min_c, error) || !check_temp (max_c, error) || !check_order (min_c, max_c, error))
    return FALSE;
  *out_kpa = (saturation_kpa (min_c) + saturation_kpa (max_c)) / 2;
  return TRUE;
}

gboolean
stead_vapor_actual_kpa (double   min_c,
                        double   max_c,
                        double   min_frac,
                        double   max_frac,
                        double  *out_kpa,
                        GError **error)
{
  g_return_val_if_fail (out_kpa != NULL, FALSE);

  if (!check_temp (min_c, error) || !check_temp (max_c, error) || !check_order (min_c, max_c, error)
      || !check_humidity (min_frac, error) || !check_humidity (max_frac, error)
      || !check_order (min_frac, max_frac, error))
    return FALSE;
  *out_kpa = (saturation_kpa (min_c) * max_frac + saturation_kpa (max_c) * min_frac) / 2;
  return TRUE;
}

gboolean
stead_vapor_deficit_kpa (double   temp_c,
                         double   humidity_frac,
                         double  *out_kpa,
                         GError **error)
{
  g_return_val_if_fail (out_kpa != NULL, FALSE);

  if (!check_temp (temp_c, error) || !check_humidity (humidity_frac, error))
    return FALSE;
  *out_kpa = saturation_kpa (temp_c) * MAX (1 - humidity_frac, 0);
  return TRUE;
}

gboolean
stead_vapor_dew_point_c (double   temp_c,
                         double   humidity_frac,
                         double  *out_dew_c,
                         GError **error)
{
  double ratio;
  double dew_c;

  g_return_val_if_fail (out_dew_c != NULL, FALSE);

  if (!check_temp (temp_c, error) || !check_humidity (humidity_frac, error))
    return FALSE;
  ratio = log (saturation_kpa (temp_c) * humidity_frac / AT_0_C_KPA);
  dew_c = SHIFT_C * ratio / (SLOPE - ratio);
  if (!(dew_c >= STEAD_VAPOR_LEAST_C - NEAR))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("The air is so dry that its dew point lies below freezing, "
                             "where the rule does not hold."));
      return FALSE;
    }
  *out_dew_c = MIN (dew_c, temp_c);
  return TRUE;
}

SteadAir
stead_vapor_air (double deficit_kpa)
{
  if (deficit_kpa < 0.3 - NEAR)
    return STEAD_AIR_WET;
  if (deficit_kpa < 0.4 - NEAR)
    return STEAD_AIR_MOIST;
  return deficit_kpa <= 1.2 + NEAR ? STEAD_AIR_GOOD : STEAD_AIR_DRY;
}
