/* Fish: species, growth, samples, yields. */
#include "core/stead-core-error.h"
#include "core/stead-fish-growth.h"
#include "core/stead-fish-sample.h"
#include "core/stead-fish.h"
#include "core/stead-husbandry.h"

#include <math.h>
#include <string.h>

/* Fish farmers' calculations page: 10 to 350 g in 200 days at 11 °C is 0.222
 * (read).  UVI: 50 to 900 g in 24 weeks (read), 27 °C assumed: 0.1316. */
static void
test_growth_published (void)
{
  g_assert_cmpfloat_with_epsilon (stead_fish_tgc_x100 (10, 350, 11 * 200), 0.222, 0.0005);
  g_assert_cmpfloat_with_epsilon (stead_fish_weight_g (10, 0.222, 11 * 200), 350, 3.5);
  g_assert_cmpfloat_with_epsilon (stead_fish_tgc_x100 (50, 900, 27 * 168), 0.1316, 0.001);
  /* From two weighings to a date: 120 to 500 g at 27 °C in 108 days (derived there). */
  g_assert_cmpfloat_with_epsilon (stead_fish_degree_days_to (120, 500, 0.1027) / 27, 108, 1);
  /* UVI biofloc table, 70 to 707 g in 182 days (read). */
  g_assert_cmpfloat_with_epsilon (stead_fish_sgr_pct (70, 707, 182), 1.271, 0.002);
}

static void
test_growth_nothing (void)
{
  g_assert_true (isnan (stead_fish_tgc_x100 (0, 350, 2200)));
  g_assert_true (isnan (stead_fish_tgc_x100 (10, 350, 0)));
  g_assert_cmpfloat (stead_fish_tgc_x100 (350, 10, 2200), <, 0);
  g_assert_true (isnan (stead_fish_weight_g (-1, 0.2, 100)));
  g_assert_true (isnan (stead_fish_weight_g (10, 0.2, -1)));
  g_assert_cmpfloat (stead_fish_weight_g (1, -1, 1000), ==, 0);
  g_assert_true (isnan (stead_fish_degree_days_to (10, 20, 0)));
  g_assert_cmpfloat (stead_fish_degree_days_to (20, 20, 0), ==, 0);
  g_assert_true (isnan (stead_fish_start_g (1, 0.2, 10000)));
  g_assert_true (isnan (stead_fish_sgr_pct (10, 20, 0)));
}

/* Jobling 2003: the coefficient does not hold above the optimum, and a fish that
 * does not feed does not grow. */
static void
test_degree_days (void)
{
  const SteadFishKind *tilapia = stead_fish_kind (STEAD_FISH_TILAPIA);
  const double days[] = { 14.99, 15, 20, 28, 28.01, 33 };
  const double counts[] = { 0, 15, 20, 28, 28, 28 };
  const double bad[] = { 20, 46 };
  g_autoptr(GError) error = NULL;
  double sum = -1;

  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    g_assert_cmpfloat (stead_fish_degree_day (tilapia, days[i]), ==, counts[i]);
  g_assert_true (stead_fish_degree_days (tilapia, days, G_N_ELEMENTS (days), &sum, NULL));
  g_assert_cmpfloat_with_epsilon (sum, 119, 1e-9);
  sum = -1;
  g_assert_false (stead_fish_degree_days (tilapia, bad, 2, &sum, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_nonnull (strstr (error->message, "day 2"));
  g_assert_cmpfloat (sum, ==, -1);
}

/* The day of a weight is the inverse of the forecast, whatever the water does. */
static void
test_forecast_inverse (void)
{
  const SteadFishKind *tilapia = stead_fish_kind (STEAD_FISH_TILAPIA);
  double temps[300];
  double weights[300];
  g_autoptr(GRand) rand = g_rand_new_with_seed (7);

  for (gsize i = 0; i < G_N_ELEMENTS (temps); i++)
    temps[i] = g_rand_double_range (rand, 12, 33);
  g_assert_true (stead_fish_forecast (tilapia, 50, 0.13, temps, G_N_ELEMENTS (temps), weights, NULL));
  for (gsize day = 0; day < G_N_ELEMENTS (temps); day++)
    {
      double before = day > 0 ? weights[day - 1] : 50;
      double days = -1;

      if (weights[day] == before)
        {
          g_assert_cmpfloat (temps[day], <, 15);
          continue;
        }
      g_assert_cmpfloat (weights[day], >, before);
      g_assert_true (stead_fish_days_to (tilapia, 50, weights[day], 0.13, temps,
                                         G_N_ELEMENTS (temps), &days, NULL));
      g_assert_cmpfloat_with_epsilon (days, (double) day + 1, 1e-6);
      g_assert_true (stead_fish_days_to (tilapia, 50, (weights[day] + before) / 2, 0.13, temps,
                                         G_N_ELEMENTS (temps), &days, NULL));
      g_assert_cmpfloat (days, >, (double) day);
      g_assert_cmpfloat (days, <, (double) day + 1);
    }
  /* At a steady warmth the series and the formula agree. */
  for (gsize i = 0; i < G_N_ELEMENTS (temps); i++)
    temps[i] = 27;
  g_assert_true (stead_fish_forecast (tilapia, 50, 0.1316, temps, 168, weights, NULL));
  g_assert_cmpfloat_with_epsilon (weights[167], stead_fish_weight_g (50, 0.1316, 27 * 168), 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_fish_start_g (weights[167], 0.1316, 27 * 168), 50, 1e-6);
}

static void
test_forecast_refused (void)
{
  const SteadFishKind *trout = stead_fish_kind (STEAD_FISH_RAINBOW_TROUT);
  const double cold[] = { 4, 4, 4 };
  const double odd[] = { 12, NAN };
  double weights[3] = { -1, -1, -1 };
  double days = -1;
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_fish_forecast (trout, 50, 0.165, cold, 3, weights, NULL));
  g_assert_cmpfloat_with_epsilon (weights[2], 50, 1e-9);
  g_assert_false (stead_fish_days_to (trout, 50, 60, 0.165, cold, 3, &days, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_clear_error (&error);
  g_assert_true (stead_fish_days_to (trout, 50, 40, 0.165, NULL, 0, &days, NULL));
  g_assert_cmpfloat (days, ==, 0);
  days = -1;
  weights[0] = -1;
  g_assert_false (stead_fish_forecast (trout, 50, 0.165, odd, 2, weights, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_clear_error (&error);
  g_assert_cmpfloat (weights[0], ==, -1);
  g_assert_false (stead_fish_forecast (trout, 0, 0.165, cold, 3, weights, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_clear_error (&error);
  g_assert_false (stead_fish_days_to (trout, 50, 60, -0.1, cold, 3, &days, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpfloat (days, ==, -1);
}

/* Fulton's factor, a river research trust's page (formula read). */
static void
test_condition (void)
{
  g_assert_cmpfloat_with_epsilon (stead_fish_condition (500, 30), 1.85, 0.01);
  g_assert_cmpfloat_with_epsilon (stead_fish_condition (120, 18.5), 1.90, 0.01);
  g_assert_cmpfloat_with_epsilon (stead_fish_condition_weight_g (1.9, 28), 417, 1);
  g_assert_cmpfloat_with_epsilon (stead_fish_condition_length_cm (1.9, stead_fish_condition_weight_g (1.9, 28)),
                                  28, 1e-9);
  g_assert_true (isnan (stead_fish_condition (500, 0)));
  g_assert_true (isnan (stead_fish_condition_weight_g (0, 28)));
  g_assert_true (isnan (stead_fish_condition_length_cm (0, 28)));
}

/* Mean and sd of 2, 4, 4, 4, 5, 5, 7, 9 are 5 and sqrt (32 / 7): a textbook set. */
static void
test_sample (void)
{
  const double weights[] = { 200, 400, 400, 400, 500, 500, 700, 900 };
  const double lengths[] = { 22, 28, 28, 28, 30, 30, 33, 36 };
  const double bad[] = { 200, -1 };
  SteadFishSample sample;
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_fish_sample (weights, lengths, 8, &sample, NULL));
  g_assert_cmpint (sample.n, ==, 8);
  g_assert_cmpfloat_with_epsilon (sample.mean_g, 500, 1e-9);
  g_assert_cmpfloat_with_epsilon (sample.sd_g, 100 * sqrt (32.0 / 7), 1e-9);
  g_assert_cmpfloat_with_epsilon (sample.se_g, sample.sd_g / sqrt (8), 1e-9);
  g_assert_cmpfloat_with_epsilon (sample.cv_frac, sample.sd_g / 500, 1e-12);
  g_assert_cmpfloat (sample.condition, >, stead_fish_condition (900, 36) - 0.5);
  g_assert_true (stead_fish_sample (weights, NULL, 1, &sample, NULL));
  g_assert_cmpfloat (sample.mean_g, ==, 200);
  g_assert_true (isnan (sample.sd_g) && isnan (sample.se_g) && isnan (sample.cv_frac));
  g_assert_true (isnan (sample.condition));
  g_assert_true (stead_fish_sample (&weights[4], &lengths[4], 1, &sample, NULL));
  g_assert_cmpfloat_with_epsilon (sample.condition, 1.85, 0.01);
  sample.mean_g = -1;
  g_assert_false (stead_fish_sample (NULL, NULL, 0, &sample, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_clear_error (&error);
  g_assert_false (stead_fish_sample (bad, NULL, 2, &sample, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_nonnull (strstr (error->message, "Fish 2 "));
  g_clear_error (&error);
  g_assert_false (stead_fish_sample (weights, bad, 2, &sample, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpfloat (sample.mean_g, ==, -1);
}

/* A lognormal's median is mean / sqrt (1 + CV^2); 84.134 % lie above the median
 * over exp (sd of the logarithm) (normal table). */
static void
test_share (void)
{
  double sd = sqrt (log (1 + 0.25 * 0.25));
  double median = 500 / sqrt (1 + 0.25 * 0.25);

  g_assert_cmpfloat_with_epsilon (stead_fish_share_over (500, 0.25, median), 0.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_fish_share_over (500, 0.25, median / exp (sd)),
                                  0.84134, 0.00001);
  g_assert_cmpfloat_with_epsilon (stead_fish_share_over (500, 0.25, median * exp (1.96 * sd)),
                                  0.025, 0.0001);
  g_assert_cmpfloat (stead_fish_share_over (500, 0, 500), ==, 1);
  g_assert_cmpfloat (stead_fish_share_over (500, 0, 501), ==, 0);
  g_assert_true (isnan (stead_fish_share_over (500, -0.1, 400)));
  g_assert_true (isnan (stead_fish_share_over (0, 0.1, 400)));
  g_assert_true (isnan (stead_fish_mean_for_share_g (0.2, 500, 1)));
  g_assert_true (isnan (stead_fish_mean_for_share_g (0.2, 500, 0)));
  for (double share = 0.05; share < 1; share += 0.05)
    g_assert_cmpfloat_with_epsilon (
      stead_fish_share_over (stead_fish_mean_for_share_g (0.2, 500, share), 0.2,
                             500), share, 1e-9);
}

static void
test_share_days (void)
{
  const SteadFishKind *tilapia = stead_fish_kind (STEAD_FISH_TILAPIA);
  double temps[400];
  double weights[400];
  double days = -1;
  double all = -1;
  g_autoptr(GError) error = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (temps); i++)
    temps[i] = 27;
  g_assert_true (stead_fish_days_for_share (tilapia, 120, 0.2, 500, 0.9, 0.13, temps, 400, &days, NULL));
  g_assert_true (stead_fish_forecast (tilapia, 120, 0.13, temps, 400, weights, NULL));
  g_assert_cmpfloat (stead_fish_share_over (weights[(gsize) days - 1], 0.2, 500), <, 0.9);
  g_assert_cmpfloat (stead_fish_share_over (weights[(gsize) days], 0.2, 500), >=, 0.9);
  /* Without a spread it is the day of the weight itself. */
  g_assert_true (stead_fish_days_for_share (tilapia, 120, 0, 500, 0.9, 0.13, temps, 400, &days, NULL));
  g_assert_true (stead_fish_days_to (tilapia, 120, 500, 0.13, temps, 400, &all, NULL));
  g_assert_cmpfloat_with_epsilon (days, all, 1e-9);
  g_assert_false (stead_fish_days_for_share (tilapia, 120, 0.2, 500, 1, 0.13, temps, 400, &days, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
}

/* Aquaculture 119 (1994) and processing yield of rainbow trout, 2015 (read). */
static void
test_yield (void)
{
  static const struct { SteadFishSpecies species; SteadFishCut cut; double frac; } table[] = {
    { STEAD_FISH_TILAPIA, STEAD_FISH_CUT_HEADED, 0.510 },
    { STEAD_FISH_TILAPIA, STEAD_FISH_CUT_FILLET, 0.254 },
    { STEAD_FISH_CHANNEL_CATFISH, STEAD_FISH_CUT_HEADED, 0.606 },
    { STEAD_FISH_CHANNEL_CATFISH, STEAD_FISH_CUT_FILLET, 0.309 },
    { STEAD_FISH_RAINBOW_TROUT, STEAD_FISH_CUT_GUTTED, 0.830 },
  };
  g_autoptr(GError) error = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    g_assert_cmpfloat (stead_fish_yield (table[i].species, table[i].cut, NULL)->frac, ==,
                       table[i].frac);
  g_assert_null (stead_fish_yield (STEAD_FISH_RAINBOW_TROUT, STEAD_FISH_CUT_FILLET, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  /* A review for hatcheries: salmon lose 3.8 % in 5 days (read). */
  g_assert_cmpfloat_with_epsilon (stead_fish_fasted_kg (2.4, 0.038), 2.31, 0.01);
  g_assert_true (isnan (stead_fish_fasted_kg (2.4, 1)));
  g_assert_true (isnan (stead_fish_fasted_kg (2.4, -0.1)));
}

/* Temperature and low oxygen tolerances for tilapia (read). */
static void
test_tilapia (void)
{
  static const struct { double temp_c; SteadTilapiaState state; } table[] = {
    { 11, STEAD_TILAPIA_DEATH }, { 12, STEAD_TILAPIA_DEATH }, { 12.1, STEAD_TILAPIA_SEVERE_STRESS },
    { 13, STEAD_TILAPIA_SEVERE_STRESS }, { 14, STEAD_TILAPIA_NO_FEEDING },
    { 15, STEAD_TILAPIA_NO_SPAWNING }, { 19, STEAD_TILAPIA_NO_SPAWNING },
    { 20, STEAD_TILAPIA_SUITABLE }, { 25.9, STEAD_TILAPIA_SUITABLE }, { 26, STEAD_TILAPIA_BEST },
    { 28, STEAD_TILAPIA_BEST }, { 30, STEAD_TILAPIA_BEST }, { 31, STEAD_TILAPIA_SUITABLE },
  };
  g_autoptr(GError) error = NULL;
  SteadTilapiaState state = STEAD_TILAPIA_BEST;

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_assert_true (stead_tilapia_state (table[i].temp_c, &state, NULL));
      g_assert_cmpint (state, ==, table[i].state);
    }
  state = STEAD_TILAPIA_BEST;
  g_assert_false (stead_tilapia_state (82, &state, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_tilapia_state (-1, &state, NULL));
  g_assert_cmpint (state, ==, STEAD_TILAPIA_BEST);
}

/* The species hang together: limits in order, and defaults in the ranges of the
 * handbooks (trout 0.13 to 0.20, fish farmers' page; tilapia 1.6 to 1.9, UVI). */
static void
test_species (void)
{
  for (int i = 0; i < STEAD_N_FISH_SPECIES; i++)
    {
      const SteadFishKind *fish = stead_fish_kind ((SteadFishSpecies) i);
      SteadFishSpecies back = STEAD_FISH_TILAPIA;

      g_assert_true (stead_fish_species_from_id (fish->id, &back));
      g_assert_cmpint (back, ==, i);
      g_assert_cmpstr (stead_fish_name (back), !=, "");
      g_assert_cmpfloat (fish->growth_min_c, <, fish->best_min_c);
      g_assert_cmpfloat (fish->optimum_c, >=, fish->best_min_c);
      g_assert_cmpfloat (fish->optimum_c, <=, fish->best_max_c);
      for (int stage = 0; stage < STEAD_N_FISH_STAGES; stage++)
        {
          g_assert_cmpfloat (fish->stages[stage].min_g, <, fish->stages[stage].max_g);
          g_assert_cmpint (stead_fish_stage_of (fish, fish->stages[stage].min_g), ==, stage);
          if (stage > 0)
            g_assert_cmpfloat (fish->stages[stage].min_g, ==, fish->stages[stage - 1].max_g);
        }
      g_assert_cmpint (stead_fish_stage_of (fish, 5000), ==, STEAD_FISH_GROWOUT);
    }
  g_assert_false (stead_fish_species_from_id ("goldfish", &(SteadFishSpecies) { 0 }));
  g_assert_false (stead_fish_species_from_id (NULL, &(SteadFishSpecies) { 0 }));
  g_assert_cmpfloat (stead_husbandry_default (STEAD_DEFAULT_TROUT_TGC), >=, 0.13);
  g_assert_cmpfloat (stead_husbandry_default (STEAD_DEFAULT_TROUT_TGC), <=, 0.20);
  g_assert_cmpfloat (stead_husbandry_default (STEAD_DEFAULT_TILAPIA_FCR), >=, 1.6);
  g_assert_cmpfloat (stead_husbandry_default (STEAD_DEFAULT_TILAPIA_FCR), <=, 1.9);
}

static void
test_sources (void)
{
  g_autoptr(GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (int i = 0; i < STEAD_N_SOURCES; i++)
    {
      const char *id = stead_source_id ((SteadSource) i);

      g_assert_true (g_hash_table_add (seen, (gpointer) id));
      g_assert_cmpstr (stead_source_title ((SteadSource) i), !=, "");
    }
  g_assert_null (stead_source_where (STEAD_SOURCE_PRACTICE));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/fish/growth-published", test_growth_published);
  g_test_add_func ("/core/fish/growth-nothing", test_growth_nothing);
  g_test_add_func ("/core/fish/degree-days", test_degree_days);
  g_test_add_func ("/core/fish/forecast-inverse", test_forecast_inverse);
  g_test_add_func ("/core/fish/forecast-refused", test_forecast_refused);
  g_test_add_func ("/core/fish/condition", test_condition);
  g_test_add_func ("/core/fish/sample", test_sample);
  g_test_add_func ("/core/fish/share", test_share);
  g_test_add_func ("/core/fish/share-days", test_share_days);
  g_test_add_func ("/core/fish/yield", test_yield);
  g_test_add_func ("/core/fish/tilapia", test_tilapia);
  g_test_add_func ("/core/fish/species", test_species);
  g_test_add_func ("/core/fish/sources", test_sources);
  return g_test_run ();
}
