/* test-routine-repo.c - what has to be done again and again, or once at an age. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-routine-repo.h"
#include "store/stead-water-repo.h"

static gint64
make_water (Farm *farm)
{
  g_autoptr(SteadWater) water = stead_water_new ();

  water->name = g_strdup ("Loop");
  ACT (farm, stead_water_repo_save (farm->store, water, err));
  return water->id;
}

static SteadRoutine *
weekly (Farm       *farm,
        const char *name)
{
  SteadRoutine *routine = stead_routine_new ();

  routine->batch_id = farm->flock;
  routine->name = g_strdup (name);
  routine->every_days = 7;
  routine->start_on = TODAY - 20;
  return routine;
}

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadRoutine) routine = weekly (farm, " Scrub the drinker ");
  g_autoptr(SteadRoutine) again = NULL;

  ACT (farm, stead_routine_repo_save (farm->store, routine, err));
  again = stead_routine_repo_get (farm->store, routine->id, &error);
  g_assert_no_error (error);
  g_assert_cmpint (again->batch_id, ==, farm->flock);
  g_assert_cmpint (again->water_id, ==, 0);
  g_assert_cmpstr (again->name, ==, "Scrub the drinker");
  g_assert_cmpint (again->every_days, ==, 7);
  g_assert_cmpint (again->start_on, ==, TODAY - 20);
  g_assert_cmpint (again->age_days, ==, -1);
  g_assert_true (isnan (again->degree_days));
  g_assert_false (again->paused);
  g_assert_cmpint (again->last_done, ==, STEAD_DAY_NONE);
  again->every_days = 0;
  again->age_days = 0;
  again->paused = TRUE;
  ACT (farm, stead_routine_repo_save (farm->store, again, err));
  stead_routine_free (routine);
  routine = stead_routine_repo_get (farm->store, again->id, &error);
  g_assert_cmpint (routine->age_days, ==, 0);
  g_assert_cmpint (routine->every_days, ==, 0);
  g_assert_cmpint (routine->start_on, ==, STEAD_DAY_NONE);   /* only what recurs has a first day */
  g_assert_true (routine->paused);
  routine->age_days = -1;
  routine->degree_days = 722.2;
  ACT (farm, stead_routine_repo_save (farm->store, routine, err));
  stead_routine_free (again);
  again = stead_routine_repo_get (farm->store, routine->id, &error);
  g_assert_cmpfloat (again->degree_days, ==, 722.2);
  ACT (farm, stead_routine_repo_delete (farm->store, routine->id, err));
  REFUSE (farm, stead_routine_repo_delete (farm->store, routine->id, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  REFUSE (farm, stead_routine_repo_save (farm->store, routine, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  farm_assert_undo (farm);
}

static void
test_done (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadRoutine) routine = weekly (farm, "Trim");
  g_autoptr(SteadRoutine) again = NULL;

  ACT (farm, stead_routine_repo_save (farm->store, routine, err));
  ACT (farm, stead_routine_repo_done (farm->store, routine->id, TODAY, farm->student, "All well.", err));
  ACT (farm, stead_routine_repo_done (farm->store, routine->id, TODAY - 7, 0, NULL, err));
  again = stead_routine_repo_get (farm->store, routine->id, &error);
  g_assert_cmpint (again->last_done, ==, TODAY);
  INVALID (farm, stead_routine_repo_done (farm->store, routine->id, TODAY + 1, 0, NULL, err), "still to come");
  INVALID (farm, stead_routine_repo_done (farm->store, routine->id, TODAY, 0, "\xff", err), "cannot be read");
  REFUSE (farm, stead_routine_repo_done (farm->store, 99, TODAY, 0, NULL, err), STEAD_STORE_ERROR_NOT_FOUND,
          "no longer");
  farm_assert_undo (farm);
}

static void
test_list (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadRoutine) first = weekly (farm, "Trim");
  g_autoptr(SteadRoutine) second = weekly (farm, "Scrub");
  g_autoptr(SteadFlock) flock = NULL;
  g_autoptr(GPtrArray) list = NULL;
  gint64 water = make_water (farm);

  ACT (farm, stead_routine_repo_save (farm->store, first, err));
  second->batch_id = 0;
  second->water_id = water;
  ACT (farm, stead_routine_repo_save (farm->store, second, err));
  list = stead_routine_repo_list (farm->store, farm->flock, 0, &error);
  g_assert_cmpuint (list->len, ==, 1);
  g_assert_cmpstr (((SteadRoutine *) list->pdata[0])->name, ==, "Trim");
  g_ptr_array_unref (list);
  list = stead_routine_repo_list (farm->store, 0, water, &error);
  g_assert_cmpuint (list->len, ==, 1);
  g_ptr_array_unref (list);
  list = stead_routine_repo_list (farm->store, 0, 0, &error);
  g_assert_cmpuint (list->len, ==, 2);
  g_assert_cmpstr (((SteadRoutine *) list->pdata[0])->name, ==, "Scrub");
  g_ptr_array_unref (list);
  flock = stead_flock_repo_get (farm->store, farm->flock, &error);
  flock->ended_on = TODAY;
  ACT (farm, stead_flock_repo_save (farm->store, flock, err));
  list = stead_routine_repo_list (farm->store, 0, 0, &error);   /* what is over has nothing due */
  g_assert_cmpuint (list->len, ==, 1);
  g_ptr_array_unref (list);
  ACT (farm, stead_water_repo_delete (farm->store, water, err));
  list = stead_routine_repo_list (farm->store, 0, 0, &error);
  g_assert_cmpuint (list->len, ==, 0);
  farm_assert_undo (farm);
}

#define BAD(field, value, words) \
  G_STMT_START { \
    __typeof__ (routine->field) kept = routine->field; \
    routine->field = (value); \
    INVALID (farm, stead_routine_repo_save (farm->store, routine, err), words); \
    routine->field = kept; \
  } G_STMT_END

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadRoutine) routine = weekly (farm, "Trim");
  char blank[] = " ";

  BAD (name, blank, "Enter a name");
  BAD (every_days, 0, "Say when it is due");
  BAD (age_days, 10, "Say when it is due");
  BAD (degree_days, 10, "Say when it is due");
  BAD (every_days, -1, "1 to 3,660");
  BAD (every_days, 3661, "1 to 3,660");
  BAD (start_on, STEAD_DAY_NONE, "for the first time");
  routine->every_days = 0;
  BAD (age_days, -2, "0 to 36,600");
  BAD (age_days, 36601, "0 to 36,600");
  BAD (degree_days, 0, "more than 0");
  BAD (degree_days, INFINITY, "more than 0");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/routine/round-trip", test_round_trip);
  g_test_add_func ("/store/routine/done", test_done);
  g_test_add_func ("/store/routine/list", test_list);
  g_test_add_func ("/store/routine/refused", test_refused);
  return g_test_run ();
}
