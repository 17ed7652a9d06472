/* Water: doses, changes, the way of the pH, and beds that fish feed. */
#include "core/stead-aquaponics.h"
#include "core/stead-crop.h"
#include "core/stead-core-error.h"
#include "core/stead-water-dose.h"

#include <math.h>

/* Equivalents (from memory): sodium bicarbonate 1.68, potassium bicarbonate 2.00,
 * hydrated lime 0.74, potassium hydroxide 1.12 g for 1 g CaCO3. */
static void
test_equivalents (void)
{
  static const struct { SteadBase base; double factor; } table[] = {
    { STEAD_BASE_NAHCO3, 1.68 }, { STEAD_BASE_KHCO3, 2.00 }, { STEAD_BASE_CA_OH_2, 0.74 },
    { STEAD_BASE_KOH, 1.12 }, { STEAD_BASE_CACO3, 1.00 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    g_assert_cmpfloat_with_epsilon (stead_base_g_per_caco3 (table[i].base), table[i].factor,
                                    0.005);
  g_assert_cmpfloat_with_epsilon (stead_base_dose_g (STEAD_BASE_NAHCO3, 1500, 50), 126, 1);
  g_assert_cmpfloat_with_epsilon (stead_base_dose_g (STEAD_BASE_KHCO3, 1500, 50), 150, 1);
}

/* Two doses do what one of their sum does, and a dose raises what it was for. */
static void
test_doses_add_up (void)
{
  for (int i = 0; i < STEAD_N_BASES; i++)
    {
      SteadBase base = (SteadBase) i;
      SteadBase back = STEAD_BASE_NAHCO3;
      double once = stead_base_dose_g (base, 1500, 50);
      double parts = stead_base_dose_g (base, 1500, 20) + stead_base_dose_g (base, 1500, 30);

      g_assert_cmpfloat_with_epsilon (once, parts, 1e-9);
      g_assert_cmpfloat_with_epsilon (stead_base_dose_g (base, 1000, 50) + stead_base_dose_g (base, 500, 50),
                                      once, 1e-9);
      g_assert_cmpfloat_with_epsilon (stead_base_raise_mgl (base, 1500, once), 50, 1e-9);
      g_assert_true (stead_base_from_id (stead_base_id (base), &back));
      g_assert_cmpint (back, ==, base);
      g_assert_cmpstr (stead_base_name (base), !=, "");
      g_assert_true (isnan (stead_base_dose_g (base, -1, 50)));
      g_assert_true (isnan (stead_base_dose_g (base, 1, -50)));
      g_assert_true (isnan (stead_base_raise_mgl (base, 0, 50)));
    }
  g_assert_false (stead_base_from_id ("chalk", &(SteadBase) { 0 }));
}

/* Buffer per kg of feed, a farm adviser's table (read): all near 1.4 to 1.5
 * equivalents, so within a tenth of 74 g as CaCO3. */
static void
test_for_feed (void)
{
  static const struct { SteadBase base; double g; } table[] = {
    { STEAD_BASE_CACO3, 70 }, { STEAD_BASE_CA_OH_2, 55 }, { STEAD_BASE_CAO, 40 },
    { STEAD_BASE_KOH, 80 }, { STEAD_BASE_DOLOMITE, 70 }, { STEAD_BASE_MGCO3, 60 },
    { STEAD_BASE_MG_OH_2, 45 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_assert_cmpfloat (stead_base_for_feed_g (table[i].base, 1, TRUE), ==, table[i].g);
      g_assert_cmpfloat (stead_base_for_feed_g (table[i].base, 2, FALSE), ==, 4 * table[i].g);
      g_assert_cmpfloat_with_epsilon (table[i].g / stead_base_g_per_caco3 (table[i].base), 74,
                                      7.4);
    }
  g_assert_true (isnan (stead_base_for_feed_g (STEAD_BASE_NAHCO3, 1, TRUE)));
  g_assert_true (isnan (stead_base_for_feed_g (STEAD_BASE_CAO, -1, TRUE)));
}

/* With beds sodium is to be avoided, and whoever handles lime must know it. */
static void
test_traits (void)
{
  g_assert_true (stead_base_traits (STEAD_BASE_NAHCO3) & STEAD_BASE_SODIUM);
  g_assert_false (stead_base_traits (STEAD_BASE_KHCO3) & STEAD_BASE_SODIUM);
  g_assert_true (stead_base_traits (STEAD_BASE_CAO) & STEAD_BASE_CAUSTIC);
  g_assert_true (stead_base_traits (STEAD_BASE_KOH) & STEAD_BASE_CAUSTIC);
  g_assert_true (stead_base_traits (STEAD_BASE_CA_OH_2) & STEAD_BASE_CAUSTIC);
  g_assert_false (stead_base_traits (STEAD_BASE_CACO3) & STEAD_BASE_CAUSTIC);
}

/* SRAC 462 (read): 10 parts of chloride to 1 of nitrite; salt is 60.7 % chloride. */
static void
test_salt (void)
{
  g_assert_cmpfloat (stead_water_chloride_need_mgl (4, 10), ==, 40);
  g_assert_cmpfloat_with_epsilon (stead_water_salt_mgl (60.7), 100, 0.1);
  g_assert_cmpfloat_with_epsilon (stead_water_salt_dose_g (4, 10, 15, 1500), 62, 1);
  g_assert_cmpfloat (stead_water_salt_dose_g (4, 10, 40, 1500), ==, 0);
  g_assert_cmpfloat (stead_water_salt_dose_g (4, 10, 90, 1500), ==, 0);
  g_assert_true (isnan (stead_water_salt_dose_g (-1, 10, 0, 1500)));
  g_assert_true (isnan (stead_water_salt_dose_g (4, 10, -1, 1500)));
  g_assert_true (isnan (stead_water_salt_dose_g (4, 10, 0, -1)));
}

/* The share that is worked out leads to the target, in one step or in several. */
static void
test_change (void)
{
  g_autoptr(GError) error = NULL;
  double frac = -1;
  double now = 300;
  double changes;

  g_assert_true (stead_water_change_frac (300, 150, 10, &frac, NULL));
  g_assert_cmpfloat_with_epsilon (stead_water_after_change (300, 10, frac), 150, 1e-9);
  changes = stead_water_changes (frac, 0.25);
  for (int i = 0; i < (int) changes; i++)
    now = stead_water_after_change (now, 10, 0.25);
  g_assert_cmpfloat (now, <=, 150);
  g_assert_cmpfloat ((now - 10) / 0.75 + 10, >, 150);
  /* Warmer water can be mixed in, too. */
  g_assert_true (stead_water_change_frac (20, 22, 30, &frac, NULL));
  g_assert_cmpfloat_with_epsilon (frac, 0.2, 1e-12);
  g_assert_true (stead_water_change_frac (20, 20, 20, &frac, NULL));
  g_assert_cmpfloat (frac, ==, 0);
  g_assert_true (stead_water_change_frac (20, 30, 30, &frac, NULL));
  g_assert_cmpfloat (frac, ==, 1);
  frac = -1;
  g_assert_false (stead_water_change_frac (300, 150, 200, &frac, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_false (stead_water_change_frac (300, 150, 400, &frac, NULL));
  g_assert_false (stead_water_change_frac (300, 150, 300, &frac, NULL));
  g_assert_false (stead_water_change_frac (300, NAN, 10, &frac, NULL));
  g_assert_cmpfloat (frac, ==, -1);
  g_assert_cmpfloat (stead_water_changes (0, 0.25), ==, 0);
  g_assert_cmpfloat (stead_water_changes (0.4375, 0.25), ==, 2);
  g_assert_true (isnan (stead_water_changes (1, 0.25)));
  g_assert_true (isnan (stead_water_changes (0.5, 1)));
}

/* Fish bear 0.3 of pH in 12 to 24 hours (common practice); with ammonia in the
 * water a higher pH makes more of it toxic: 1 mg/L at 24 °C and pH 8.0 is 0.0502,
 * University of Florida FA16 (read). */
static void
test_ph_move (void)
{
  g_autoptr(GError) error = NULL;
  SteadPhMove move;

  g_assert_true (stead_water_ph_move (6.2, 7.0, 1, 24, &move, NULL));
  g_assert_cmpint (move.steps, ==, 3);
  g_assert_cmpfloat_with_epsilon (move.next_ph, 6.5, 1e-12);
  g_assert_true (move.nh3n_mgl < move.nh3n_next_mgl && move.nh3n_next_mgl < move.nh3n_end_mgl);
  g_assert_true (stead_water_ph_move (7.7, 8.0, 1, 24, &move, NULL));
  g_assert_cmpint (move.steps, ==, 1);
  g_assert_cmpfloat_with_epsilon (move.nh3n_end_mgl, 0.0502, 0.0002);
  g_assert_true (stead_water_ph_move (8.0, 7.0, 1, 24, &move, NULL));
  g_assert_cmpint (move.steps, ==, 4);
  g_assert_cmpfloat_with_epsilon (move.next_ph, 7.7, 1e-12);
  g_assert_true (stead_water_ph_move (7, 7, 0, 24, &move, NULL));
  g_assert_cmpint (move.steps, ==, 0);
  g_assert_cmpfloat (move.nh3n_mgl, ==, 0);
  move.steps = -1;
  g_assert_false (stead_water_ph_move (7, 15, 1, 24, &move, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_water_ph_move (7, 7.2, 1, 41, &move, NULL));
  g_assert_false (stead_water_ph_move (7, 7.2, -1, 24, &move, NULL));
  g_assert_cmpint (move.steps, ==, -1);
}

static void
test_ph_target (void)
{
  double least = NAN;
  double most = NAN;
  double target = stead_water_ph_target (TRUE, &least, &most);

  g_assert_true (target == 7.0 && least == 6.4 && most == 7.4);
  target = stead_water_ph_target (FALSE, &least, &most);
  g_assert_true (least == 7.0 && most == 8.0 && target > least && target < most);
}

/* UVI raft feeding ratio (read): 60 to 100 g a m², 214 m².  FAO 589 component
 * calculations (read): leafy 40 to 50, fruiting 50 to 80; 20 to 25 leafy plants. */
static void
test_beds (void)
{
  double least = NAN;
  double most = NAN;

  stead_bed_feed_rate (STEAD_BED_RAFT, &least, &most);
  g_assert_cmpfloat (stead_bed_feed_g (214, least), ==, 12840);
  g_assert_cmpfloat (stead_bed_feed_g (214, most), ==, 21400);
  stead_bed_feed_rate (STEAD_BED_FRUITING, &least, &most);
  g_assert_cmpfloat (stead_bed_feed_g (12, least), ==, 600);
  g_assert_cmpfloat (stead_bed_feed_g (12, most), ==, 960);
  stead_bed_feed_rate (STEAD_BED_LEAFY, &least, &most);
  g_assert_cmpfloat (stead_bed_feed_g (12, most), ==, 600);
  g_assert_cmpfloat (stead_bed_area_m2 (600, 60), ==, 10);
  g_assert_true (isnan (stead_bed_area_m2 (600, 0)));
  g_assert_true (isnan (stead_bed_feed_g (-1, 60)));
  for (int i = 0; i < STEAD_N_BEDS; i++)
    {
      double rate_least;
      double rate_most;
      double few = NAN;
      double many = NAN;

      stead_bed_plants_for_feed ((SteadBed) i, 900, &few, &many);
      stead_bed_feed_rate ((SteadBed) i, &rate_least, &rate_most);
      stead_crop_density_range (i == STEAD_BED_FRUITING ? STEAD_CROP_KIND_FRUITING : STEAD_CROP_KIND_LEAFY, &least,
                                &most);
      g_assert_cmpfloat (few, <, many);
      g_assert_cmpfloat_with_epsilon (stead_bed_feed_g (few / least, rate_most), 900, 1e-9);
      g_assert_cmpfloat_with_epsilon (stead_bed_feed_g (many / most, rate_least), 900, 1e-9);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/water-dose/equivalents", test_equivalents);
  g_test_add_func ("/core/water-dose/doses-add-up", test_doses_add_up);
  g_test_add_func ("/core/water-dose/for-feed", test_for_feed);
  g_test_add_func ("/core/water-dose/traits", test_traits);
  g_test_add_func ("/core/water-dose/salt", test_salt);
  g_test_add_func ("/core/water-dose/change", test_change);
  g_test_add_func ("/core/water-dose/ph-move", test_ph_move);
  g_test_add_func ("/core/water-dose/ph-target", test_ph_target);
  g_test_add_func ("/core/water-dose/beds", test_beds);
  return g_test_run ();
}
