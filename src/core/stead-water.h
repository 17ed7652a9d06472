/* stead-water.h - the chemistry of fish water: ammonia, oxygen, pressure.
 *
 * Temperatures are degrees Celsius, concentrations mg/L.  A kit may report the
 * ammonia of a sample as nitrogen (N) or as NH3 or NH4; the program keeps N, and
 * turns the others into it.  Each formula holds in the range it was made for and
 * is refused outside.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_water_pka:
 * @temp_c: 0 to 40
 *
 * pKa = 0.09018 + 2729.92 / (273.15 + C).  Source: Emerson et al. (1975).
 *
 * Returns: the pH at which half of the ammonia is un-ionised; NAN outside
 */
double stead_water_pka (double temp_c);

/**
 * stead_water_nh3_frac:
 * @temp_c: 0 to 40
 * @ph: 0 to 14
 * @out_frac: (out): share of the total ammonia that is un-ionised,
 *   1 / (1 + 10^(pKa - pH))
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Fresh water; salt lowers the share a little, seawater by about a fifth.
 * Source: Emerson et al. (1975), as in University of Florida FA16, table 1.
 *
 * Returns: %TRUE, or %FALSE outside the range with @out_frac left alone
 */
gboolean stead_water_nh3_frac (double    temp_c,
                               double    ph,
                               double   *out_frac,
                               GError  **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_water_nh3n_mgl:
 * @tan_mgl: total ammonia as N, 0 or more
 *
 * Returns: %TRUE with the un-ionised ammonia as N in @out_mgl, or %FALSE as above
 */
gboolean stead_water_nh3n_mgl (double    tan_mgl,
                               double    temp_c,
                               double    ph,
                               double   *out_mgl,
                               GError  **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_water_nh3_from_n: nitrogen weighed as NH3, x 17.03 / 14.01
 * stead_water_n_from_nh3: the other way
 * stead_water_nh4_from_n: nitrogen weighed as NH4, x 18.04 / 14.01
 * stead_water_n_from_nh4: the other way
 * stead_water_no3_from_n: nitrogen weighed as NO3, x 62.00 / 14.01
 * stead_water_n_from_no3: the other way
 * stead_water_no2_from_n: nitrogen weighed as NO2, x 46.01 / 14.01
 * stead_water_n_from_no2: the other way
 *
 * Source: standard atomic weights (from memory).
 */
double stead_water_nh3_from_n (double n_mgl);
double stead_water_n_from_nh3 (double nh3_mgl);
double stead_water_nh4_from_n (double n_mgl);
double stead_water_n_from_nh4 (double nh4_mgl);
double stead_water_no3_from_n (double n_mgl);
double stead_water_n_from_no3 (double no3_mgl);
double stead_water_no2_from_n (double n_mgl);
double stead_water_n_from_no2 (double no2_mgl);

/* What un-ionised ammonia does to fish. */
typedef enum
{
  STEAD_AMMONIA_OK,      /* 0.05 mg/L or less, which is no promise */
  STEAD_AMMONIA_HARM,    /* above 0.05 */
  STEAD_AMMONIA_DEATH,   /* 2.0 or more */
} SteadAmmoniaLevel;

/**
 * stead_ammonia_level:
 * @nh3n_mgl: un-ionised ammonia as N, 0 or more
 *
 * Source: University of Florida FA16 (read).  Fry and trout bear half: the
 * limits of stead-water-limit.h know it.
 */
SteadAmmoniaLevel stead_ammonia_level (double nh3n_mgl);

/**
 * stead_water_pressure_kpa:
 * @elevation_m: above the sea, -450 to 9,000
 * @out_kpa: (out): mean pressure of the air, 101.3 ((293 - 0.0065 z) / 293)^5.26
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Source: FAO Irrigation and Drainage Paper 56, equation 7.
 *
 * Returns: %TRUE, or %FALSE outside the range with @out_kpa left alone
 */
gboolean stead_water_pressure_kpa (double    elevation_m,
                                   double   *out_kpa,
                                   GError  **error) G_GNUC_WARN_UNUSED_RESULT;

/* One atmosphere. */
#define STEAD_WATER_ATM_KPA 101.325
#define STEAD_WATER_ATM_MMHG 760

/**
 * stead_water_oxygen_mgl:
 * @temp_c: 0 to 40
 * @salinity_g_kg: salt in the water, 0 to 40; fresh water 0
 * @pressure_kpa: of the air, 0.5 to 1.1 atmospheres
 * @out_mgl: (out): oxygen that the water holds in balance with the air
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Benson and Krause, with the correction for pressure and water vapor of
 * Standard Methods (constants read in public code, the correction from memory);
 * agrees with EN 25814 and with an instrument's table by pressure.
 *
 * Returns: %TRUE, or %FALSE outside the range with @out_mgl left alone
 */
gboolean stead_water_oxygen_mgl (double    temp_c,
                                 double    salinity_g_kg,
                                 double    pressure_kpa,
                                 double   *out_mgl,
                                 GError  **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_water_oxygen_at_mgl: the same at the mean pressure of an elevation
 */
gboolean stead_water_oxygen_at_mgl (double    temp_c,
                                    double    salinity_g_kg,
                                    double    elevation_m,
                                    double   *out_mgl,
                                    GError  **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
