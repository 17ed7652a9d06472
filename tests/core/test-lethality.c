/* Lethal heat: published D, z and F. */
#include "limit-tables.h"

#include "core/stead-core-error.h"
#include "core/stead-lethality.h"

#include <math.h>

/* FDA Fish and Fishery Products Hazards and Controls Guidance, 4th ed., appendix 4:
 * table A-3, Listeria, 6D 2.0 min at 70 °C, z 7.5 °C, p. 422; table A-4,
 * non-proteolytic C. botulinum, 6D 10 min at 90 °C, z 7 °C below and 10 °C above,
 * p. 423 (both read). */
static void
test_guidance (void)
{
  static const SteadLethality listeria = { 70, 7.5, 0 };
  static const SteadLethality botulinum = { 90, 10, 7 };
  static const struct { const SteadLethality *germ; double temp, rate, within; } rates[] = {
    { &listeria, 63, 0.117, 0.0006 }, { &listeria, 65, 0.215, 0.0006 }, { &listeria, 68, 0.541, 0.0006 },
    { &listeria, 70, 1, 1e-12 }, { &listeria, 71, 1.359, 0.0006 }, { &listeria, 80, 21.544, 0.0006 },
    { &listeria, 85, 100, 1e-9 },
    { &botulinum, 85, 0.193, 0.0006 }, { &botulinum, 90, 1, 1e-12 }, { &botulinum, 93, 2, 0.006 },
    { &botulinum, 100, 10, 1e-9 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rates); i++)
    g_assert_cmpfloat_with_epsilon (stead_lethal_rate (rates[i].germ, rates[i].temp), rates[i].rate, rates[i].within);
  g_assert_cmpfloat_with_epsilon (stead_lethal_time (&listeria, 2, 74), 0.6, 0.05);
  g_assert_cmpfloat_with_epsilon (stead_lethal_time (&botulinum, 10, 85), 51.8, 0.1);
  g_assert_cmpfloat_with_epsilon (stead_lethal_time (&botulinum, 10, 95), 3.2, 0.1);
}

/* The time at a temperature and the temperature for a time are one relation, on
 * both slopes. */
static void
test_inverse (void)
{
  static const SteadLethality botulinum = { 90, 10, 7 };

  for (double temp = 80; temp <= 100; temp += 2.5)
    g_assert_cmpfloat_with_epsilon (stead_lethal_temperature (&botulinum, 10, stead_lethal_time (&botulinum, 10, temp)),
                                    temp, 1e-9);
  g_assert_true (isnan (stead_lethal_temperature (&botulinum, 10, 0)));
  g_assert_true (isnan (stead_lethal_rate (&(SteadLethality) { 90, 0, 0 }, 90)));
}

/* Breidt and others 2014, Food Prot. Trends 34(3), table 4, p. 137: F 5.6 min at
 * 160 °F, z 16.7 °F, pH 4.1 to 4.6; 2010, 30:268-272: 1.2 min, z 19.5 °F, pH 4.1
 * or below (both read, to a digit). */
static void
test_acidified (void)
{
  static const SteadLethality higher = { 160, 16.7, 0 };
  static const SteadLethality lower = { 160, 19.5, 0 };
  static const struct { const SteadLethality *germ; double f, temp, minutes, within; } cases[] = {
    { &higher, 5.6, 145, 44.8, 0.9 }, { &higher, 5.6, 150, 22.4, 0.45 }, { &higher, 5.6, 165, 2.8, 0.06 },
    { &higher, 5.6, 170, 1.4, 0.05 }, { &higher, 5.6, 180, 0.4, 0.05 },
    { &lower, 1.2, 140, 12.7, 0.06 }, { &lower, 1.2, 150, 3.9, 0.06 }, { &lower, 1.2, 170, 0.4, 0.06 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpfloat_with_epsilon (stead_lethal_time (cases[i].germ, cases[i].f, cases[i].temp), cases[i].minutes,
                                    cases[i].within);
}

/* Murphy and others 2004, E. coli in a beef and turkey link (D read); FSIS Cooking
 * Guideline 2021, table 2: 112 min at 130 °F, 67 s at 150 °F (read). */
static void
test_z (void)
{
  const double temps[] = { 55, 57, 60, 62.5, 65, 67.5, 70 };
  const double d[] = { 23.23, 7.43, 2.38, 0.76, 0.24, 0.08, 0.03 };
  const double steps[] = { 130, 150 };
  const double times[] = { 112, 67. / 60 };
  const double slower[] = { 1, 2 };
  const double none[] = { 0, 1 };
  g_autoptr(GError) error = NULL;
  double z = 0;

  g_assert_true (stead_lethality_z (temps, d, G_N_ELEMENTS (temps), &z, &error));
  g_assert_cmpfloat_with_epsilon (z, 5.23, 0.05);
  g_assert_true (stead_lethality_z (steps, times, 2, &z, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (z, 9.99, 0.02);
  z = -1;
  g_assert_false (stead_lethality_z (steps, slower, 2, &z, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_false (stead_lethality_z (steps, none, 2, &z, NULL));
  g_assert_false (stead_lethality_z (steps, times, 1, &z, NULL));
  g_assert_false (stead_lethality_z (steps, times, 0, &z, NULL));
  g_assert_cmpfloat (z, ==, -1);
}

/* Notes on canning fishery products, trapezoidal method: F 14.6 of 2.925 x 5 min
 * (read), 8.65 with half of the end values (derived). */
static void
test_sums (void)
{
  static const SteadLethality listeria = { 70, 7.5, 0 };
  const double minutes[] = { 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10 };
  const double temps[] = { 60, 64, 67, 69, 70, 71, 71, 70, 68, 64, 60 };
  const double uneven[] = { 0, 10, 15, 40 };
  const double steady[] = { 70, 70, 70, 70 };
  const double back[] = { 0, 10, 10 };
  double sums[11];
  g_autoptr(GError) error = NULL;

  g_assert_cmpfloat_with_epsilon (stead_lethality_sum_of_rates (0, 2.925, 0, 5), 14.6, 0.05);
  g_assert_cmpfloat_with_epsilon (stead_lethality_sum_of_rates (0, 1.342, 0.776, 5), 8.65, 0.06);
  g_assert_cmpfloat_with_epsilon (stead_lethality_sum (&listeria, minutes, temps, 11, sums, &error), 6.757, 0.005);
  g_assert_no_error (error);
  g_assert_cmpfloat (sums[0], ==, 0);
  g_assert_cmpfloat_with_epsilon (sums[10], 6.757, 0.005);
  for (int i = 1; i < 11; i++)
    g_assert_cmpfloat (sums[i], >, sums[i - 1]);
  /* At the reference a minute is a minute, however far apart the readings. */
  g_assert_cmpfloat_with_epsilon (stead_lethality_sum (&listeria, uneven, steady, 4, NULL, NULL), 40, 1e-9);
  g_assert_cmpfloat (stead_lethality_sum (&listeria, minutes, temps, 0, NULL, NULL), ==, 0);
  g_assert_true (isnan (stead_lethality_sum (&listeria, back, steady, 3, NULL, &error)));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  /* 5.162 min of D = 5.6 / 5 are 4.61 tenths. */
  g_assert_cmpfloat_with_epsilon (stead_lethality_logs (5.162, 5.6 / 5), 4.61, 0.005);
  g_assert_true (isnan (stead_lethality_logs (1, 0)));
}

/* The studies of the tables give the published times: table of the
 * guidance, Breidt 2014 and 2010, and the step of 140 °F of the meat table (read). */
static void
test_studies (void)
{
  static const struct { const char *name; const char *unit; double temp, minutes, within; } cases[] = {
    { "listeria", "C", 63, 17.0, 0.2 }, { "botulinum_cold", "C", 85, 51.8, 0.1 }, { "botulinum_cold", "C", 95, 3.2, 0.1 },
    { "acidified_4_1_to_4_6", "F", 150, 22.4, 0.45 }, { "acidified_to_4_1", "F", 140, 12.7, 0.06 },
    { "tomato_puree", "F", 160, 0.51, 0.005 }, { "meat", "F", 140, 12, 1 },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  g_autoptr(GError) error = NULL;
  SteadLethalStudy study = { 0 };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("%s", cases[i].name);
      g_assert_true (stead_lethal_study (table, cases[i].name, &study, NULL));
      g_assert_cmpstr (study.unit, ==, cases[i].unit);
      g_assert_cmpfloat_with_epsilon (stead_lethal_time (&study.germ, study.time_min, cases[i].temp),
                                      cases[i].minutes, cases[i].within);
      g_assert_cmpfloat (study.logs, >=, 5);
      g_assert_cmpstr (study.source->where, !=, "");
    }
  g_assert_false (stead_lethal_study (table, "dragon", &study, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/lethality/guidance", test_guidance);
  g_test_add_func ("/core/lethality/inverse", test_inverse);
  g_test_add_func ("/core/lethality/acidified", test_acidified);
  g_test_add_func ("/core/lethality/z", test_z);
  g_test_add_func ("/core/lethality/sums", test_sums);
  g_test_add_func ("/core/lethality/studies", test_studies);
  return g_test_run ();
}
