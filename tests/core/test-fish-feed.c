/* Fish: feed, stocking and tanks. */
#include "core/stead-core-error.h"
#include "core/stead-fish-feed.h"
#include "core/stead-fish-growth.h"
#include "core/stead-fish-stock.h"
#include "core/stead-tank.h"

#include <math.h>

#define F(fahrenheit) (((fahrenheit) - 32) * (5.0 / 9))

static SteadFishFeedRate
rate_of (SteadFishSpecies species,
         double           weight_g,
         double           temp_c)
{
  SteadFishFeedRate rate = { .frac = -1 };
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_fish_feed_rate (species, weight_g, temp_c, &rate, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (rate.frac, >=, rate.min_frac - 1e-12);
  g_assert_cmpfloat (rate.frac, <=, rate.max_frac + 1e-12);
  return rate;
}

/* SRAC 282: fry 20 % falling to 15; tank culture part 3: 1.0 to 1.5 % of fish of
 * about 680 g; hatchery guide: catfish 2 to 3 % (all read).  Husbandry notes,
 * from memory: 50 g fish 3 to 4 %, 150 to 250 g fish 2 to 3 %. */
static void
test_feed_table (void)
{
  SteadFishFeedRate rate = rate_of (STEAD_FISH_TILAPIA, 0.02, 28);

  g_assert_cmpfloat_with_epsilon (rate.frac, 0.20, 1e-9);
  g_assert_cmpint (rate.source, ==, STEAD_SOURCE_SRAC_282);
  g_assert_cmpfloat_with_epsilon (rate_of (STEAD_FISH_TILAPIA, 1, 28).frac, 0.15, 1e-9);
  rate = rate_of (STEAD_FISH_TILAPIA, 50, 28);
  g_assert_cmpfloat (rate.frac, >=, 0.03);
  g_assert_cmpfloat (rate.frac, <=, 0.04);
  rate = rate_of (STEAD_FISH_TILAPIA, 180, 28);
  g_assert_cmpfloat (rate.frac, >=, 0.02);
  g_assert_cmpfloat (rate.frac, <=, 0.03);
  rate = rate_of (STEAD_FISH_TILAPIA, 680, 28);
  g_assert_cmpfloat (rate.frac, >=, 0.010);
  g_assert_cmpfloat (rate.frac, <=, 0.015);
  g_assert_cmpfloat (rate.interval_days, ==, 1);
  /* Cool water: half, and it says that nothing stands behind it. */
  rate = rate_of (STEAD_FISH_TILAPIA, 50, 21.9);
  g_assert_cmpfloat_with_epsilon (rate.frac, 0.02, 1e-9);
  g_assert_cmpint (stead_source_status (rate.source), ==, STEAD_SOURCE_UNKNOWN);
  g_assert_cmpfloat_with_epsilon (rate_of (STEAD_FISH_TILAPIA, 50, 22).frac, 0.04, 1e-9);
  rate = rate_of (STEAD_FISH_CHANNEL_CATFISH, 300, F (82));
  g_assert_cmpfloat (rate.min_frac, ==, 0.02);
  g_assert_cmpfloat (rate.max_frac, ==, 0.03);
}

/* Bigger fish are never fed a larger share; there is no jump between rows. */
static void
test_feed_falls (void)
{
  double last = 1;

  for (double weight_g = 0.02; weight_g <= 900; weight_g *= 1.01)
    {
      double frac = rate_of (STEAD_FISH_TILAPIA, weight_g, 27).frac;

      g_assert_cmpfloat (frac, <=, last + 1e-9);
      g_assert_true (last == 1 || last - frac < 0.0004);
      last = frac;
    }
}

/* No table of trout could be read: the rate is the growth to come times the feed
 * for one of gain, so a day's feed must bring a day's growth. */
static void
test_feed_trout (void)
{
  const SteadFishKind *trout = stead_fish_kind (STEAD_FISH_RAINBOW_TROUT);
  SteadFishFeedRate rate = rate_of (STEAD_FISH_RAINBOW_TROUT, 100, 12);
  double tomorrow_g = stead_fish_weight_g (100, trout->tgc_x100, 12);

  g_assert_cmpfloat_with_epsilon (rate.frac * 100 / trout->fcr, tomorrow_g - 100, 1e-9);
  g_assert_cmpfloat (rate_of (STEAD_FISH_RAINBOW_TROUT, 100, 15).frac, >, rate.frac);
  g_assert_cmpfloat (rate_of (STEAD_FISH_RAINBOW_TROUT, 300, 12).frac, <, rate.frac);
  /* Warmer than the optimum is no reason to feed more. */
  g_assert_cmpfloat (rate_of (STEAD_FISH_RAINBOW_TROUT, 100, 18).frac, ==,
                     rate_of (STEAD_FISH_RAINBOW_TROUT, 100, 16).frac);
}

static void
refused (SteadFishSpecies species,
         double           weight_g,
         double           temp_c)
{
  SteadFishFeedRate rate = { .frac = -1 };
  g_autoptr(GError) error = NULL;

  g_assert_false (stead_fish_feed_rate (species, weight_g, temp_c, &rate, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpfloat (rate.frac, ==, -1);
}

static void
test_feed_refused (void)
{
  refused (STEAD_FISH_TILAPIA, 200, 14.9);
  refused (STEAD_FISH_TILAPIA, 200, 32.1);
  refused (STEAD_FISH_TILAPIA, 901, 28);
  refused (STEAD_FISH_TILAPIA, 0.01, 28);
  refused (STEAD_FISH_TILAPIA, NAN, 28);
  refused (STEAD_FISH_TILAPIA, 200, NAN);
  refused (STEAD_FISH_CHANNEL_CATFISH, 300, F (44.9));
  refused (STEAD_FISH_CHANNEL_CATFISH, 300, 32.1);
  refused (STEAD_FISH_CHANNEL_CATFISH, 5, F (82));
  refused (STEAD_FISH_RAINBOW_TROUT, 100, 4.9);
  refused (STEAD_FISH_RAINBOW_TROUT, 100, 18.1);
  refused (STEAD_FISH_RAINBOW_TROUT, 1001, 12);
}

/* Winter feeding of channel catfish (2018, read): 1 % every other day at 55 to
 * 65 °F, twice a week at 45 to 54 °F. */
static void
test_winter (void)
{
  static const struct { double temp_f, interval; } table[] = {
    { 45, 3.5 }, { 50, 3.5 }, { 54, 3.5 }, { 55, 2 }, { 60, 2 }, { 65, 2 },
  };
  SteadFishFeedRate rate;
  g_autoptr(GError) error = NULL;
  double least = NAN;
  double most = NAN;

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_assert_true (stead_fish_winter_feed (STEAD_FISH_CHANNEL_CATFISH, F (table[i].temp_f), &rate, NULL));
      g_assert_cmpfloat (rate.frac, ==, 0.01);
      g_assert_cmpfloat (rate.interval_days, ==, table[i].interval);
      g_assert_cmpfloat_with_epsilon (stead_fish_feed_frac_per_day (&rate),
                                      0.01 / table[i].interval, 1e-12);
    }
  g_assert_false (stead_fish_winter_feed (STEAD_FISH_CHANNEL_CATFISH, F (66), &rate, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_fish_winter_feed (STEAD_FISH_CHANNEL_CATFISH, F (44), &rate, NULL));
  g_assert_false (stead_fish_winter_feed (STEAD_FISH_TILAPIA, F (60), &rate, NULL));
  /* Winter feeding of channel catfish, 1974, abstract (read). */
  g_assert_true (stead_fish_winter_change_frac (STEAD_FISH_CHANNEL_CATFISH, FALSE, 100, &least, &most, NULL));
  g_assert_cmpfloat (least, ==, -0.09);
  g_assert_true (stead_fish_winter_change_frac (STEAD_FISH_CHANNEL_CATFISH, TRUE, 100, &least, &most, NULL));
  g_assert_cmpfloat (least, ==, 0.19);
  g_assert_cmpfloat (most, ==, 0.23);
  g_assert_false (stead_fish_winter_change_frac (STEAD_FISH_CHANNEL_CATFISH, TRUE, 99, &least, &most, NULL));
  g_assert_false (stead_fish_winter_change_frac (STEAD_FISH_TILAPIA, TRUE, 100, &least, &most, NULL));
}

/* Flow rate estimation for tanks (read): 50 m³ at 80 kg/m³ are 4,000 kg, at 1.5 %
 * 60 kg of feed.  UVI abstract (read): 77 a m³, 98.3 %, 813.8 g: 61.5 kg/m³, from a
 * tank of 7.8 m³ every 6 weeks 4.16 t a year. */
static void
test_stock (void)
{
  g_assert_cmpfloat (stead_fish_biomass_in_kg (50, 80), ==, 4000);
  g_assert_cmpfloat_with_epsilon (stead_fish_daily_feed_kg (4000, 0.015), 60, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_fish_feed_biomass_kg (60, 0.015), 4000, 1e-9);
  g_assert_true (isnan (stead_fish_feed_biomass_kg (60, 0)));
  g_assert_cmpfloat_with_epsilon (stead_fish_harvest_density_kg_m3 (77, 0.983, 813.8), 61.5,
                                  0.615);
  g_assert_cmpfloat_with_epsilon (stead_fish_annual_yield_kg (7.8, 61.5, 6), 4160, 41.6);
  g_assert_true (isnan (stead_fish_annual_yield_kg (7.8, 61.5, 0)));
  /* Tank culture, part 3 (read): a quarter, a half, one pound a gallon. */
  g_assert_cmpfloat_with_epsilon (0.25 * STEAD_FISH_KG_M3_PER_LB_GAL, 30, 1);
  g_assert_cmpfloat_with_epsilon (1.0 * STEAD_FISH_KG_M3_PER_LB_GAL, 120, 1);
  g_assert_cmpfloat_with_epsilon (stead_fish_density_kg_m3 (190, 140, 1.5), 17.7, 0.1);
  g_assert_true (isnan (stead_fish_density_kg_m3 (190, 140, 0)));
  g_assert_cmpint (stead_fish_density_class (20), ==, STEAD_FISH_DENSITY_SCHOOL);
  g_assert_cmpint (stead_fish_density_class (20.1), ==, STEAD_FISH_DENSITY_AERATED);
  g_assert_cmpint (stead_fish_density_class (30), ==, STEAD_FISH_DENSITY_AERATED);
  g_assert_cmpint (stead_fish_density_class (30.1), ==, STEAD_FISH_DENSITY_OXYGEN);
  g_assert_cmpint (stead_fish_density_class (121), ==, STEAD_FISH_DENSITY_BEYOND);
}

/* What is stocked comes out at the density it was stocked for. */
static void
test_stock_inverse (void)
{
  double fish = stead_fish_to_stock (1.5, 20, 500, 0.9);

  g_assert_cmpfloat_with_epsilon (stead_fish_harvest_density_kg_m3 (fish / 1.5, 0.9, 500), 20,
                                  1e-9);
  g_assert_true (isnan (stead_fish_to_stock (1.5, 20, 500, 0)));
  g_assert_true (isnan (stead_fish_to_stock (1.5, 20, 0, 0.9)));
  g_assert_cmpfloat_with_epsilon (stead_fish_alive (200, 0.81, 200, 100), 180, 1e-9);
  g_assert_cmpfloat (stead_fish_alive (200, 0.81, 200, 0), ==, 200);
  g_assert_cmpfloat_with_epsilon (stead_fish_alive (200, 0.81, 200, 200), 162, 1e-9);
  g_assert_true (isnan (stead_fish_alive (200, 0.81, 200, 201)));
  g_assert_true (isnan (stead_fish_alive (200, 1.1, 200, 1)));
}

/* 10 lb of feed for 5 lb of gain is 2.0; the dead have eaten too. */
static void
test_conversion (void)
{
  g_assert_cmpfloat (stead_fish_fcr (10, 0, 5, 0), ==, 2);
  g_assert_cmpfloat (stead_fish_fcr (10, 1, 5, 1), ==, 2);
  g_assert_true (isnan (stead_fish_fcr (10, 5, 5, 0)));
  g_assert_true (isnan (stead_fish_feed_for_growth_frac (100, 0.13, 27, 0)));
}

/* A veterinary manual, formulae to calculate tank volumes (read); how to
 * calculate the gallons of a round tank, 22 ft by 10 ft (read). */
static void
test_tank (void)
{
  g_assert_cmpfloat_with_epsilon (stead_tank_box_l (0.30, 0.12, 0.20), 7.2, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_tank_round_l (0.20, 0.20), 6.28, 0.005);
  g_assert_cmpfloat_with_epsilon (stead_tank_round_l (22 * 0.3048, 10 * 0.3048) / 3.785411784,
                                  28397, 85);
  /* A full cone is a third of its cylinder; a cone cut at the wall's width is one. */
  g_assert_cmpfloat_with_epsilon (stead_tank_cone_l (2, 0, 1.5, 0),
                                  stead_tank_round_l (2, 1.5) / 3, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_tank_cone_l (2, 0.7, 0.8, 2),
                                  stead_tank_round_l (2, 1.5), 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_tank_cone_l (2, 1, 0.6, 0),
                                  stead_tank_round_l (2, 1) + stead_tank_cone_l (2, 0, 0.6,
                                                      0), 1e-9);
  g_assert_true (isnan (stead_tank_cone_l (2, 1, 0.6, 2.1)));
  g_assert_true (isnan (stead_tank_box_l (1, -1, 1)));
  g_assert_cmpfloat_with_epsilon (stead_tank_round_depth_m (stead_tank_round_l (3, 1.2), 3),
                                  1.2, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_tank_round_diameter_m (stead_tank_round_l (3, 1.2), 1.2),
                                  3, 1e-9);
  g_assert_true (isnan (stead_tank_round_depth_m (100, 0)));
  /* UVI (read): 7,800 L at 100 L a minute, printed 1:20 h. */
  g_assert_cmpfloat_with_epsilon (stead_tank_turnover_min (7800, 100), 80, 2.4);
  g_assert_cmpfloat (stead_tank_flow_l_min (7800, 78), ==, 100);
  g_assert_true (isnan (stead_tank_turnover_min (7800, 0)));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/fish-feed/table", test_feed_table);
  g_test_add_func ("/core/fish-feed/falls", test_feed_falls);
  g_test_add_func ("/core/fish-feed/trout", test_feed_trout);
  g_test_add_func ("/core/fish-feed/refused", test_feed_refused);
  g_test_add_func ("/core/fish-feed/winter", test_winter);
  g_test_add_func ("/core/fish-feed/stock", test_stock);
  g_test_add_func ("/core/fish-feed/stock-inverse", test_stock_inverse);
  g_test_add_func ("/core/fish-feed/conversion", test_conversion);
  g_test_add_func ("/core/fish-feed/tank", test_tank);
  return g_test_run ();
}
