/* stead-vapor.h - how moist the air of a house is.
 *
 * Moisture is a fraction (_frac, 0 to 1) of what the air can hold: relative
 * humidity.  The rule is trusted from 0 to 50 °C (32 to 122 °F); outside, and for
 * a humidity outside 0 to 1, the functions refuse.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_VAPOR_LEAST_C 0.0
#define STEAD_VAPOR_MOST_C 50.0

/**
 * stead_vapor_saturation_kpa:
 * @temp_c: of the air, 0 to 50 °C
 * @out_kpa: (out): vapor pressure of air that can hold no more
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * 0.6108 exp (17.27 T / (T + 237.3)).
 * Source: FAO Irrigation and Drainage Paper 56, equation 11.
 *
 * Returns: %TRUE, or %FALSE outside the range
 */
gboolean stead_vapor_saturation_kpa (double   temp_c,
                                     double  *out_kpa,
                                     GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_vapor_saturation_mean_kpa:
 * @min_c: lowest temperature of the day
 * @max_c: highest temperature of the day, not below @min_c
 * @out_kpa: (out): mean of the saturation at both
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Source: FAO Irrigation and Drainage Paper 56, equation 12, example 3.
 *
 * Returns: %TRUE, or %FALSE outside the range
 */
gboolean stead_vapor_saturation_mean_kpa (double   min_c,
                                          double   max_c,
                                          double  *out_kpa,
                                          GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_vapor_actual_kpa:
 * @min_c: lowest temperature of the day
 * @max_c: highest temperature of the day, not below @min_c
 * @min_frac: lowest humidity of the day, which goes with @max_c
 * @max_frac: highest humidity of the day, which goes with @min_c
 * @out_kpa: (out): vapor pressure of the day's air
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Source: FAO Irrigation and Drainage Paper 56, equation 17, example 5.
 *
 * Returns: %TRUE, or %FALSE outside the range
 */
gboolean stead_vapor_actual_kpa (double   min_c,
                                 double   max_c,
                                 double   min_frac,
                                 double   max_frac,
                                 double  *out_kpa,
                                 GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_vapor_deficit_kpa:
 * @temp_c: of the air, 0 to 50 °C
 * @humidity_frac: relative humidity, 0 to 1
 * @out_kpa: (out): what the air could still take up
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE outside the range
 */
gboolean stead_vapor_deficit_kpa (double   temp_c,
                                  double   humidity_frac,
                                  double  *out_kpa,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_vapor_dew_point_c:
 * @temp_c: of the air, 0 to 50 °C
 * @humidity_frac: relative humidity, above 0 to 1
 * @out_dew_c: (out): a leaf or a pane of this temperature gets wet; at most @temp_c
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * The saturation rule solved for the temperature.
 *
 * Returns: %TRUE, or %FALSE outside the range, also if the dew point lies below freezing
 */
gboolean stead_vapor_dew_point_c (double   temp_c,
                                  double   humidity_frac,
                                  double  *out_dew_c,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef enum
{
  STEAD_AIR_WET,    /* under 0.3 kPa: leaves stay wet, mold grows; vent in the morning */
  STEAD_AIR_MOIST,  /* under 0.4 */
  STEAD_AIR_GOOD,   /* 0.4 to 1.2 */
  STEAD_AIR_DRY,    /* over 1.2: plants close up */
} SteadAir;

/**
 * stead_vapor_air:
 * @deficit_kpa: vapor pressure deficit, 0 or more
 *
 * Usual greenhouse band, best near 0.8 kPa (from memory).
 *
 * Returns: how the air suits tomatoes
 */
SteadAir stead_vapor_air (double deficit_kpa);

G_END_DECLS
