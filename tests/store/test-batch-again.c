/* test-batch-again.c - starting again after the model of a former batch. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-batch-again.h"
#include "store/stead-fish-repo.h"
#include "store/stead-routine-repo.h"

static void
test_flock (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFlock) flock = NULL;
  g_autoptr(GPtrArray) routines = NULL;
  g_autoptr(SteadRoutine) routine = stead_routine_new ();
  SteadBatchStart start = { 0 };
  SteadBatchPlan plan;
  gint64 id = 0;

  stead_batch_plan_init (&plan);
  plan.output_base = 8000;
  plan.ends_on = TODAY + 265;
  ACT (farm, stead_batch_repo_set_plan (farm->store, farm->flock, &plan, err));
  routine->batch_id = farm->flock;
  g_free (routine->name);
  routine->name = g_strdup ("Change the litter");
  routine->every_days = 14;
  routine->start_on = TODAY - 90;
  ACT (farm, stead_routine_repo_save (farm->store, routine, err));
  farm_entry (farm, TODAY - 5, 20, 3, 1);
  g_assert_true (stead_batch_repo_start_read (farm->store, farm->flock, &start, &error));
  g_assert_cmpint (start.count, ==, 30);
  g_assert_cmpint (start.cost_cents, ==, 36000);
  g_assert_cmpint (start.started_on, ==, TODAY);
  start.name = (char *) "Hens 2";
  start.started_on = TODAY - 1;
  start.count = 25;
  start.cost_cents = 30000;
  ACT (farm, stead_batch_repo_start_again (farm->store, farm->flock, &start, &id, err));
  flock = stead_flock_repo_get (farm->store, id, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (flock->name, ==, "Hens 2");
  g_assert_cmpint (flock->housed_on, ==, TODAY - 1);
  g_assert_cmpint (flock->housed_on - flock->hatched_on, ==, 17 * 7);
  g_assert_cmpint (flock->birds, ==, 25);
  g_assert_cmpint (flock->birds_cost_cents, ==, 30000);
  g_assert_cmpint (flock->feed_item_id, ==, farm->feed);
  g_assert_cmpfloat (flock->eggs_expected, ==, 300);
  g_assert_true (stead_batch_repo_plan (farm->store, id, &plan, &error));
  g_assert_cmpfloat (plan.output_base, ==, 8000);
  g_assert_cmpint (plan.ends_on, ==, TODAY + 265 + 99);
  routines = stead_routine_repo_list (farm->store, id, 0, &error);
  g_assert_cmpuint (routines->len, ==, 1);
  g_assert_cmpstr (((SteadRoutine *) routines->pdata[0])->name, ==, "Change the litter");
  g_assert_cmpint (((SteadRoutine *) routines->pdata[0])->start_on, ==, TODAY + 9);
  g_assert_cmpint (stead_flock_repo_count_entries (farm->store, id, &error), ==, 0);
  farm_assert_undo (farm);
}

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadBatchStart start = { (char *) "Hens 1", TODAY, 30, 0 };
  gint64 id = 77;

  INVALID (farm, stead_batch_repo_start_again (farm->store, farm->flock, &start, &id, err), "taken");
  start.name = (char *) "Hens 2";
  start.count = 0;
  INVALID (farm, stead_batch_repo_start_again (farm->store, farm->flock, &start, &id, err), "how many");
  start.count = 30;
  start.started_on = TODAY + 1;
  INVALID (farm, stead_batch_repo_start_again (farm->store, farm->flock, &start, &id, err), "still to come");
  start.started_on = STEAD_DAY_NONE;
  INVALID (farm, stead_batch_repo_start_again (farm->store, farm->flock, &start, &id, err), "Enter the day");
  REFUSE (farm, stead_batch_repo_start_again (farm->store, 99, &start, &id, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  g_assert_cmpint (id, ==, 77);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM batch"), ==, 1);
}

/* Fish that are over begin again in the same tank, their purge forgotten. */
static void
test_fish (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFish) fish = NULL;
  SteadBatchStart start = { (char *) "Catfish 2", TODAY - 3, 300, 15000 };
  gint64 first = farm_fish (farm, "Catfish 1", 90);
  gint64 id = 0;

  ACT (farm, stead_batch_repo_end (farm->store, first, TODAY - 4, err));
  fixture_act (farm->store, "Purge", "UPDATE fish SET purge_from = 20000");
  ACT (farm, stead_batch_repo_start_again (farm->store, first, &start, &id, err));
  fish = stead_fish_repo_get (farm->store, id, &error);
  g_assert_no_error (error);
  g_assert_cmpint (fish->stocked, ==, 300);
  g_assert_cmpint (fish->cost_cents, ==, 15000);
  g_assert_cmpint (fish->batch.ended_on, ==, STEAD_DAY_NONE);
  g_assert_cmpint (fish->purge_from, ==, STEAD_DAY_NONE);
  g_assert_cmpfloat (fish->sale_g, ==, 600);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/batch-again/flock", test_flock);
  g_test_add_func ("/store/batch-again/refused", test_refused);
  g_test_add_func ("/store/batch-again/fish", test_fish);
  return g_test_run ();
}
