/* test-flock-repo.c - flocks, their log, and the sums over it. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, &error);
  g_autoptr(SteadFlock) again = NULL;

  g_assert_no_error (error);
  g_assert_cmpstr (flock->name, ==, "Hens 1");
  g_free (flock->strain);
  flock->strain = g_strdup ("brown hybrid");
  flock->note = g_strdup ("Gentle birds.");
  flock->birds_are_gift = TRUE;
  flock->ended_on = TODAY;
  flock->bedding_days = 21;
  flock->curve.level_frac = 0.9;
  flock->curve.half_week = -1.5;
  ACT (farm, stead_flock_repo_save (farm->store, flock, err));
  again = stead_flock_repo_get (farm->store, farm->flock, &error);
  g_assert_cmpstr (again->strain, ==, "brown hybrid");
  g_assert_cmpstr (again->note, ==, "Gentle birds.");
  g_assert_true (again->birds_are_gift);
  g_assert_cmpint (again->housed_on, ==, TODAY - 100);
  g_assert_cmpint (again->hatched_on, ==, TODAY - 219);
  g_assert_cmpint (again->ended_on, ==, TODAY);
  g_assert_cmpint (again->birds, ==, 30);
  g_assert_cmpint (again->birds_cost_cents, ==, 36000);
  g_assert_cmpint (again->salvage_cents, ==, 6000);
  g_assert_cmpint (again->bedding_days, ==, 21);
  g_assert_cmpint (again->feed_item_id, ==, farm->feed);
  g_assert_cmpfloat (again->eggs_expected, ==, 300);
  g_assert_cmpfloat (again->care_minutes_day, ==, 20);
  g_assert_cmpfloat (again->curve.level_frac, ==, 0.9);
  g_assert_cmpfloat (again->curve.half_week, ==, -1.5);
}

static void
test_entries (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) page = NULL;
  SteadFlockEntry *entry;

  for (int i = 0; i < 10; i++)
    farm_entry (farm, TODAY - 10 + i, 20 + i, NAN, 0);
  g_assert_cmpint (stead_flock_repo_count_entries (farm->store, farm->flock, &error), ==, 10);
  page = stead_flock_repo_page_entries (farm->store, farm->flock, 2, 3, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (page->len, ==, 3);
  entry = page->pdata[0];
  g_assert_cmpint (entry->day, ==, TODAY - 3);
  g_assert_cmpint (entry->eggs, ==, 27);
  g_assert_true (isnan (entry->feed_kg));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/flock/round-trip", test_round_trip);
  g_test_add_func ("/store/flock/entries", test_entries);
  return g_test_run ();
}
