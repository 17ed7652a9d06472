/* stead-water.c - the chemistry of fish water: ammonia, oxygen, pressure. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-water.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define KELVIN 273.15
#define N_G_MOL 14.01
#define NH3_G_MOL 17.03
#define NH4_G_MOL 18.04
#define NO2_G_MOL 46.01
#define NO3_G_MOL 62.00

static gboolean
lies_in (double value,
         double least,
         double most)
{
  return value >= least && value <= most;
}

static gboolean
refuse (const char  *message,
        GError     **error)
{
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE, message);
  return FALSE;
}

double
stead_water_pka (double temp_c)
{
  return lies_in (temp_c, 0, 40) ? 0.09018 + 2729.92 / (KELVIN + temp_c) : NAN;
}

gboolean
stead_water_nh3_frac (double    temp_c,
                      double    ph,
                      double   *out_frac,
                      GError  **error)
{
  g_return_val_if_fail (out_frac != NULL, FALSE);

  if (!lies_in (temp_c, 0, 40) || !lies_in (ph, 0, 14))
    return refuse (_("The share of toxic ammonia is known for fresh water of 0 to 40 °C "
                     "(32 to 104 °F) and a pH from 0 to 14. Read the thermometer and the pH "
                     "again."), error);
  *out_frac = 1 / (1 + pow (10, stead_water_pka (temp_c) - ph));
  return TRUE;
}

gboolean
stead_water_nh3n_mgl (double    tan_mgl,
                      double    temp_c,
                      double    ph,
                      double   *out_mgl,
                      GError  **error)
{
  double frac = 0;

  g_return_val_if_fail (out_mgl != NULL, FALSE);

  if (!(tan_mgl >= 0))
    return refuse (_("Ammonia cannot be below 0. Test the water again."), error);
  if (!stead_water_nh3_frac (temp_c, ph, &frac, error))
    return FALSE;
  *out_mgl = frac * tan_mgl;
  return TRUE;
}

double
stead_water_nh3_from_n (double n_mgl)
{
  return n_mgl * NH3_G_MOL / N_G_MOL;
}

double
stead_water_n_from_nh3 (double nh3_mgl)
{
  return nh3_mgl * N_G_MOL / NH3_G_MOL;
}

double
stead_water_nh4_from_n (double n_mgl)
{
  return n_mgl * NH4_G_MOL / N_G_MOL;
}

double
stead_water_n_from_nh4 (double nh4_mgl)
{
  return nh4_mgl * N_G_MOL / NH4_G_MOL;
}

double
stead_water_no3_from_n (double n_mgl)
{
  return n_mgl * NO3_G_MOL / N_G_MOL;
}

double
stead_water_n_from_no3 (double no3_mgl)
{
  return no3_mgl * N_G_MOL / NO3_G_MOL;
}

double
stead_water_no2_from_n (double n_mgl)
{
  return n_mgl * NO2_G_MOL / N_G_MOL;
}

double
stead_water_n_from_no2 (double no2_mgl)
{
  return no2_mgl * N_G_MOL / NO2_G_MOL;
}

SteadAmmoniaLevel
stead_ammonia_level (double nh3n_mgl)
{
  if (nh3n_mgl >= 2)
    return STEAD_AMMONIA_DEATH;
  return nh3n_mgl > 0.05 ? STEAD_AMMONIA_HARM : STEAD_AMMONIA_OK;
}

gboolean
stead_water_pressure_kpa (double    elevation_m,
                          double   *out_kpa,
                          GError  **error)
{
  g_return_val_if_fail (out_kpa != NULL, FALSE);

  if (!lies_in (elevation_m, -450, 9000))
    return refuse (_("The pressure of the air is known from 450 m below the sea to 9,000 m above "
                     "it. Type the elevation of the farm."), error);
  *out_kpa = 101.3 * pow ((293 - 0.0065 * elevation_m) / 293, 5.26);
  return TRUE;
}

/* Benson and Krause: mg/L at one atmosphere. */
static double
oxygen_at_sea_level (double temp_c,
                     double salinity)
{
  double t = temp_c + KELVIN;

  return exp (-139.34411 + 1.575701e5 / t - 6.642308e7 / (t * t) + 1.243800e10 / pow (t, 3)
              - 8.621949e11 / pow (t, 4)
              - salinity * (1.7674e-2 - 10.754 / t + 2140.7 / (t * t)));
}

/* What the pressure of the air and the vapor in it make of it. */
static double
pressure_factor (double temp_c,
                 double atm)
{
  double t = temp_c + KELVIN;
  double vapor = exp (11.8571 - 3840.70 / t - 216961 / (t * t));
  double theta = 0.000975 - 1.426e-5 * temp_c + 6.436e-8 * temp_c * temp_c;

  return atm * (1 - vapor / atm) * (1 - theta * atm) / ((1 - vapor) * (1 - theta));
}

gboolean
stead_water_oxygen_mgl (double    temp_c,
                        double    salinity_g_kg,
                        double    pressure_kpa,
                        double   *out_mgl,
                        GError  **error)
{
  double atm = pressure_kpa / STEAD_WATER_ATM_KPA;

  g_return_val_if_fail (out_mgl != NULL, FALSE);

  if (!lies_in (temp_c, 0, 40))
    return refuse (_("What water holds of oxygen is known from 0 to 40 °C (32 to 104 °F). Read the "
                     "thermometer again."), error);
  if (!lies_in (salinity_g_kg, 0, 40))
    return refuse (_("What water holds of oxygen is known up to 40 g of salt in a kilogram. Use 0 "
                     "for fresh water."), error);
  if (!lies_in (atm, 0.5, 1.1))
    return refuse (_("What water holds of oxygen is known from half the pressure of the air at sea "
                     "level to a tenth above it. Check the pressure or the elevation."), error);
  *out_mgl = oxygen_at_sea_level (temp_c, salinity_g_kg) * pressure_factor (temp_c, atm);
  return TRUE;
}

gboolean
stead_water_oxygen_at_mgl (double    temp_c,
                           double    salinity_g_kg,
                           double    elevation_m,
                           double   *out_mgl,
                           GError  **error)
{
  double kpa = 0;

  g_return_val_if_fail (out_mgl != NULL, FALSE);

  return stead_water_pressure_kpa (elevation_m, &kpa, error)
         && stead_water_oxygen_mgl (temp_c, salinity_g_kg, kpa, out_mgl, error);
}
