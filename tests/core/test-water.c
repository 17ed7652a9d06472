/* Water: ammonia, oxygen, pressure, and the way of the nitrogen. */
#include "core/stead-core-error.h"
#include "core/stead-nitrogen.h"
#include "core/stead-water.h"

#include <math.h>

#define SQFT_M2 0.09290304

/* University of Florida FA16, table 1 from Emerson et al. 1975 (read); its column
 * of 32 °C differs from the formula and is held to 0.0002. */
static void
test_ammonia_published (void)
{
  static const struct { double temp_c, ph, frac, within; } table[] = {
    { 6, 7.0, 0.0013, 0.0001 }, { 10, 7.0, 0.0018, 0.0001 }, { 16, 7.0, 0.0029, 0.0001 },
    { 20, 7.0, 0.0039, 0.0001 }, { 26, 7.0, 0.0060, 0.0001 }, { 30, 7.0, 0.0080, 0.0001 },
    { 32, 7.0, 0.0093, 0.0002 }, { 24, 8.0, 0.0502, 0.0002 }, { 6, 7.2, 0.0021, 0.0001 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_autoptr(GError) error = NULL;
      double frac = -1;

      g_test_message ("%g °C, pH %g", table[i].temp_c, table[i].ph);
      g_assert_true (stead_water_nh3_frac (table[i].temp_c, table[i].ph, &frac, &error));
      g_assert_no_error (error);
      g_assert_cmpfloat_with_epsilon (frac, table[i].frac, table[i].within);
    }
  /* A calculation page after Hobiger, UBA-BE-076 (read): 9.465 at 18 °C. */
  g_assert_cmpfloat_with_epsilon (stead_water_pka (18), 9.465, 0.005);
}

/* The same page: 0.2 mg/L weighed as NH4 at 18 °C and pH 7.7 hold 0.0032 weighed
 * as NH3; at 13 °C and 8.5, 0.005 as NH3 belong to 0.077 as NH4 (read). */
static void
test_ammonia_units (void)
{
  double frac = -1;
  double mgl = -1;

  g_assert_true (stead_water_nh3n_mgl (stead_water_n_from_nh4 (0.2), 18, 7.7, &mgl, NULL));
  g_assert_cmpfloat_with_epsilon (stead_water_nh3_from_n (mgl), 0.0032, 0.0001);
  g_assert_true (stead_water_nh3_frac (13, 8.5, &frac, NULL));
  g_assert_cmpfloat_with_epsilon (stead_water_nh4_from_n (stead_water_n_from_nh3 (0.005) / frac),
                                  0.077, 0.001);
  g_assert_cmpfloat_with_epsilon (stead_water_n_from_no3 (stead_water_no3_from_n (3)), 3, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_water_n_from_no2 (stead_water_no2_from_n (3)), 3, 1e-12);
  /* The factor that kits print for nitrate is 4.43, for nitrite 3.28 (from memory). */
  g_assert_cmpfloat_with_epsilon (stead_water_no3_from_n (1), 4.43, 0.005);
  g_assert_cmpfloat_with_epsilon (stead_water_no2_from_n (1), 3.28, 0.005);
}

static void
test_ammonia_range (void)
{
  static const struct { double temp_c, ph; gboolean fits; } table[] = {
    { 0, 7, TRUE }, { -0.1, 7, FALSE }, { 40, 7, TRUE }, { 40.1, 7, FALSE },
    { 20, 0, TRUE }, { 20, 14, TRUE }, { 20, 14.1, FALSE }, { 20, -0.1, FALSE },
    { NAN, 7, FALSE }, { 20, NAN, FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_autoptr(GError) error = NULL;
      double frac = -1;

      g_assert_cmpint (stead_water_nh3_frac (table[i].temp_c, table[i].ph, &frac, &error), ==,
                       table[i].fits);
      g_assert_cmpint (error == NULL, ==, table[i].fits);
      if (table[i].fits)
        continue;
      g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
      g_assert_cmpfloat (frac, ==, -1);
    }
  g_assert_true (isnan (stead_water_pka (41)));
  g_assert_false (stead_water_nh3n_mgl (-1, 20, 7, &(double) { 0 }, NULL));
}

/* More warmth and a higher pH always mean more of the toxic part. */
static void
test_ammonia_rises (void)
{
  for (double temp_c = 1; temp_c <= 40; temp_c += 1)
    for (double ph = 5; ph <= 10; ph += 0.1)
      {
        double here = -1;
        double colder = -1;
        double lower = -1;

        g_assert_true (stead_water_nh3_frac (temp_c, ph, &here, NULL));
        g_assert_true (stead_water_nh3_frac (temp_c - 1, ph, &colder, NULL));
        g_assert_true (stead_water_nh3_frac (temp_c, ph - 0.1, &lower, NULL));
        g_assert_true (here > colder && here > lower && here > 0 && here < 1);
      }
}

/* University of Florida FA16 (read): harm above 0.05 mg/L, death near 2.0. */
static void
test_ammonia_level (void)
{
  g_assert_cmpint (stead_ammonia_level (0.03), ==, STEAD_AMMONIA_OK);
  g_assert_cmpint (stead_ammonia_level (0.05), ==, STEAD_AMMONIA_OK);
  g_assert_cmpint (stead_ammonia_level (0.051), ==, STEAD_AMMONIA_HARM);
  g_assert_cmpint (stead_ammonia_level (1.99), ==, STEAD_AMMONIA_HARM);
  g_assert_cmpint (stead_ammonia_level (2), ==, STEAD_AMMONIA_DEATH);
}

/* EN 25814 in a sensor manual, columns L and K (read). */
static void
test_oxygen_fresh (void)
{
  static const struct { double temp_c, mgl, within; } table[] = {
    { 0, 14.6, 0.06 }, { 5, 12.8, 0.06 }, { 10, 11.3, 0.06 }, { 16, 9.87, 0.01 },
    { 20, 9.09, 0.01 }, { 24, 8.42, 0.01 }, { 28, 7.83, 0.01 }, { 30, 7.56, 0.01 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      double mgl = -1;

      g_assert_true (stead_water_oxygen_mgl (table[i].temp_c, 0, STEAD_WATER_ATM_KPA, &mgl, NULL));
      g_assert_cmpfloat_with_epsilon (mgl, table[i].mgl, table[i].within);
    }
}

/* The same table with salt (derived there); a photometer's table by pressure
 * (read, printed to 0.1 from an older set). */
static void
test_oxygen_salt_and_pressure (void)
{
  static const struct { double temp_c, salt, mmhg, mgl, within; } table[] = {
    { 20, 5, 760, 8.85, 0.0885 }, { 25, 3, 760, 8.13, 0.0813 }, { 28, 10, 760, 7.44, 0.0744 },
    { 10, 0, 725, 10.8, 0.216 }, { 15, 0, 650, 8.7, 0.174 }, { 20, 0, 625, 7.5, 0.15 },
    { 23, 0, 750, 8.5, 0.17 },
  };
  double mgl = -1;

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      double kpa = table[i].mmhg / STEAD_WATER_ATM_MMHG * STEAD_WATER_ATM_KPA;

      g_assert_true (stead_water_oxygen_mgl (table[i].temp_c, table[i].salt, kpa, &mgl, NULL));
      g_assert_cmpfloat_with_epsilon (mgl, table[i].mgl, table[i].within);
    }
  /* FAO 56, equation 7, with Benson and Krause (derived). */
  g_assert_true (stead_water_oxygen_at_mgl (20, 0, 1500, &mgl, NULL));
  g_assert_cmpfloat_with_epsilon (mgl, 7.57, 0.0757);
}

static void
test_oxygen_range (void)
{
  static const struct { double temp_c, salt, kpa; gboolean fits; } table[] = {
    { 0, 0, 101.325, TRUE }, { -0.1, 0, 101.325, FALSE }, { 40, 0, 101.325, TRUE },
    { 40.1, 0, 101.325, FALSE }, { 20, 40, 101.325, TRUE }, { 20, 40.1, 101.325, FALSE },
    { 20, -1, 101.325, FALSE }, { 20, 0, 50.7, TRUE }, { 20, 0, 50.6, FALSE },
    { 20, 0, 111.4, TRUE }, { 20, 0, 111.5, FALSE }, { 20, 0, NAN, FALSE },
  };
  double mgl = -1;

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_autoptr(GError) error = NULL;

      mgl = -1;
      g_assert_cmpint (stead_water_oxygen_mgl (table[i].temp_c, table[i].salt, table[i].kpa, &mgl, &error),
                       ==, table[i].fits);
      g_assert_cmpint (mgl == -1, ==, !table[i].fits);
      g_assert_cmpint (error == NULL, ==, table[i].fits);
    }
  /* So high that the oxygen formula has no pressure left. */
  mgl = -1;
  g_assert_false (stead_water_oxygen_at_mgl (20, 0, 6000, &mgl, NULL));
  g_assert_false (stead_water_oxygen_at_mgl (20, 0, 9001, &mgl, NULL));
  g_assert_cmpfloat (mgl, ==, -1);
}

/* FAO 56, example 2: 81.8 kPa at 1,800 m (read).  A package example: 1,000 m with
 * 674.1 mmHg by the standard atmosphere (read). */
static void
test_pressure (void)
{
  g_autoptr(GError) error = NULL;
  double kpa = -1;

  g_assert_true (stead_water_pressure_kpa (1800, &kpa, NULL));
  g_assert_cmpfloat_with_epsilon (kpa, 81.8, 0.1);
  g_assert_true (stead_water_pressure_kpa (1000, &kpa, NULL));
  g_assert_cmpfloat_with_epsilon (kpa / STEAD_WATER_ATM_KPA * STEAD_WATER_ATM_MMHG, 674.1, 2.1);
  kpa = -1;
  g_assert_false (stead_water_pressure_kpa (-451, &kpa, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_water_pressure_kpa (9001, &kpa, NULL));
  g_assert_cmpfloat (kpa, ==, -1);
}

/* SRAC 282 (read): 10 g for 100 lb of fish; 100 g at 0.05 g a square foot need
 * 2,000; a post on biofilters (read): 5 g at 0.1 mg/L, 50,000 L a day.  Feed by
 * protein: 60 kg of 40 % make 2,210 g (from memory). */
static void
test_filter (void)
{
  g_assert_cmpfloat_with_epsilon (stead_nitrogen_tan_of_fish_g (45.359237), 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_nitrogen_tan_g (60000, 0.40), 2210, 10);
  g_assert_true (isnan (stead_nitrogen_tan_g (60000, 1.1)));
  g_assert_true (isnan (stead_nitrogen_tan_g (-1, 0.4)));
  g_assert_cmpfloat_with_epsilon (stead_biofilter_area_m2 (100, 0.05 / SQFT_M2) / SQFT_M2,
                                  2000, 1e-6);
  g_assert_true (isnan (stead_biofilter_area_m2 (100, 0)));
  g_assert_cmpfloat_with_epsilon (stead_biofilter_flow_l_day (5, 0.1, 1), 50000, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_biofilter_flow_l_day (5, 0.1, 1) / 1440, 34.7, 0.05);
  /* Half of it removed in a pass needs twice the flow. */
  g_assert_cmpfloat_with_epsilon (stead_biofilter_flow_l_day (5, 0.1, 0.5), 100000, 1e-6);
  g_assert_true (isnan (stead_biofilter_flow_l_day (5, 0, 1)));
  g_assert_true (isnan (stead_biofilter_flow_l_day (5, 0.1, 1.1)));
  /* Material that holds the surface removes what was asked. */
  g_assert_cmpfloat_with_epsilon (stead_biofilter_removal_g_m3 (600, 0.5)
                                  * stead_biofilter_volume_l (stead_biofilter_area_m2 (100, 0.5), 600) / 1000,
                                  100, 1e-9);
  /* SRAC 282 (read): about 7 g a gram. */
  g_assert_cmpfloat_with_epsilon (stead_nitrogen_alkalinity_g (1), 7.1, 0.1);
  g_assert_cmpfloat_with_epsilon (stead_nitrogen_oxygen_g (1), 64.0 / 14.007, 0.005);
}

/* No nitrogen is made or lost. */
static void
test_budget (void)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GRand) rand = g_rand_new_with_seed (11);
  SteadNitrogenDay day;

  for (int i = 0; i < 500; i++)
    {
      double feed_g = g_rand_double_range (rand, 0, 5000);
      double protein = g_rand_double_range (rand, 0.2, 0.5);
      double gain_g = feed_g / g_rand_double_range (rand, 1.2, 2.5);
      double plants_g = g_rand_double_range (rand, 0, 200);

      if (!stead_nitrogen_day (feed_g, protein, gain_g, plants_g, &day, NULL))
        {
          g_assert_cmpfloat (gain_g * STEAD_NITROGEN_PER_FISH, >,
                             feed_g * protein * 0.068 - 1e-9);
          continue;
        }
      g_assert_cmpfloat_with_epsilon (day.feed_g, day.fish_g + day.tan_g + day.rest_g, 1e-9);
      g_assert_cmpfloat_with_epsilon (day.tan_g, day.plants_g + day.nitrate_g, 1e-9);
      g_assert_true (day.rest_g >= 0 && day.nitrate_g >= 0 && day.plants_g <= plants_g);
    }
  day.feed_g = -1;
  g_assert_false (stead_nitrogen_day (100, 0.3, 300, 0, &day, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_clear_error (&error);
  g_assert_false (stead_nitrogen_day (100, 1.3, 30, 0, &day, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpfloat (day.feed_g, ==, -1);
}

/* What is changed each day carries off what is made each day. */
static void
test_exchange (void)
{
  double litres = stead_nitrogen_exchange_l_day (20, 150, 10);

  g_assert_cmpfloat_with_epsilon (litres * (150 - 10) / 1000, stead_water_no3_from_n (20), 1e-9);
  g_assert_true (isnan (stead_nitrogen_exchange_l_day (20, 150, 150)));
  g_assert_cmpfloat_with_epsilon (stead_nitrogen_nitrate_rise_mgl (20, 1000) / stead_water_no3_from_n (1),
                                  20, 1e-9);
  g_assert_true (isnan (stead_nitrogen_nitrate_rise_mgl (20, 0)));
}

static void
test_misuse (void)
{
  if (g_test_subprocess ())
    {
      g_assert_false (stead_water_nh3_frac (20, 7, NULL, NULL));
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*CRITICAL*out_frac*");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/water/ammonia-published", test_ammonia_published);
  g_test_add_func ("/core/water/ammonia-units", test_ammonia_units);
  g_test_add_func ("/core/water/ammonia-range", test_ammonia_range);
  g_test_add_func ("/core/water/ammonia-rises", test_ammonia_rises);
  g_test_add_func ("/core/water/ammonia-level", test_ammonia_level);
  g_test_add_func ("/core/water/oxygen-fresh", test_oxygen_fresh);
  g_test_add_func ("/core/water/oxygen-salt-and-pressure", test_oxygen_salt_and_pressure);
  g_test_add_func ("/core/water/oxygen-range", test_oxygen_range);
  g_test_add_func ("/core/water/pressure", test_pressure);
  g_test_add_func ("/core/water/filter", test_filter);
  g_test_add_func ("/core/water/budget", test_budget);
  g_test_add_func ("/core/water/exchange", test_exchange);
  g_test_add_func ("/core/water/misuse", test_misuse);
  return g_test_run ();
}
