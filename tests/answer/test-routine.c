/* test-routine.c - when the tasks of a routine are due. */
#include "farm.h"

#include "answer/stead-routine-answer.h"

#include <math.h>
#include <string.h>

static SteadRoutine *
make (Farm       *farm,
      const char *name)
{
  SteadRoutine *routine = stead_routine_new ();

  routine->batch_id = farm->flock;
  routine->name = g_strdup (name);
  return routine;
}

static void
test_every (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadRoutine) routine = make (farm, "Trim");
  SteadDay today = farm->today;

  routine->every_days = 7;
  routine->start_on = today + 3;
  g_assert_cmpint (stead_routine_due_on (routine, today - 90, NAN, today), ==, today + 3);
  routine->start_on = today - 30;
  g_assert_cmpint (stead_routine_due_on (routine, today - 90, NAN, today), ==, today - 30);   /* never done */
  routine->last_done = today - 5;
  g_assert_cmpint (stead_routine_due_on (routine, today - 90, NAN, today), ==, today + 2);    /* late, so later on */
  routine->last_done = today - 60;   /* before its first day: that one counts */
  g_assert_cmpint (stead_routine_due_on (routine, today - 90, NAN, today), ==, today - 30);
}

static void
test_once (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadRoutine) routine = make (farm, "Move to the run");
  SteadDay today = farm->today;

  routine->age_days = 90;
  g_assert_cmpint (stead_routine_due_on (routine, today - 80, NAN, today), ==, today + 10);
  g_assert_cmpint (stead_routine_due_on (routine, STEAD_DAY_NONE, NAN, today), ==, STEAD_DAY_NONE);
  routine->last_done = today - 200;
  g_assert_cmpint (stead_routine_due_on (routine, today - 80, NAN, today), ==, STEAD_DAY_NONE);
  routine->last_done = STEAD_DAY_NONE;
  routine->age_days = -1;
  routine->degree_days = 500;
  g_assert_cmpint (stead_routine_due_on (routine, today - 80, 499, today), ==, STEAD_DAY_NONE);
  g_assert_cmpint (stead_routine_due_on (routine, today - 80, 500, today), ==, today);
  g_assert_cmpint (stead_routine_due_on (routine, today - 80, NAN, today), ==, STEAD_DAY_NONE);
}

static const SteadDue *
only_task (GPtrArray *dues)
{
  g_assert_cmpuint (dues->len, ==, 1);
  return dues->pdata[0];
}

static GPtrArray *
find (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  GPtrArray *dues = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_due_free);

  g_assert_true (stead_routine_find_dues (farm->store, dues, &error));
  g_assert_no_error (error);
  return dues;
}

/* A hen of 30 weeks that moved in 89 days ago is 299 days old. */
static void
test_dues (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadRoutine) routine = make (farm, "Scrub the drinker");
  g_autoptr(GPtrArray) due = NULL, finished = NULL, paused = NULL, young = NULL, old = NULL;
  const SteadDue *task;

  routine->every_days = 7;
  routine->start_on = farm->today - 2;
  FARM_DO (farm, stead_routine_repo_save (farm->store, routine, &farm_error));
  due = find (farm);
  task = only_task (due);
  g_assert_cmpint (task->kind, ==, STEAD_DUE_TASK);
  g_assert_cmpint (task->target, ==, STEAD_TARGET_BATCH);
  g_assert_cmpint (task->id, ==, farm->flock);
  g_assert_cmpint (task->routine_id, ==, routine->id);
  g_assert_nonnull (strstr (task->text, "Scrub the drinker"));
  g_assert_nonnull (task->detail);   /* since two days */
  FARM_DO (farm, stead_routine_repo_done (farm->store, routine->id, farm->today, 0, NULL, &farm_error));
  finished = find (farm);
  g_assert_cmpint (only_task (finished)->kind, ==, STEAD_DUE_DONE);
  routine->paused = TRUE;
  FARM_DO (farm, stead_routine_repo_save (farm->store, routine, &farm_error));
  paused = find (farm);
  g_assert_cmpuint (paused->len, ==, 0);
  routine->paused = FALSE;
  routine->every_days = 0;
  routine->id = 0;
  routine->age_days = 300;
  FARM_DO (farm, stead_routine_repo_save (farm->store, routine, &farm_error));
  young = find (farm);
  g_assert_cmpuint (young->len, ==, 0);
  routine->age_days = 299;
  FARM_DO (farm, stead_routine_repo_save (farm->store, routine, &farm_error));
  old = find (farm);
  g_assert_cmpint (only_task (old)->kind, ==, STEAD_DUE_TASK);
}

#define ADD(name, call) g_test_add ("/answer/routine/" name, Farm, NULL, farm_set_up, call, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("every", test_every);
  ADD ("once", test_once);
  ADD ("dues", test_dues);
  return g_test_run ();
}
