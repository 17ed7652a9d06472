/* test-memory.c - SQLite gets no memory, at any of its allocations, and the farm
 * is as before the act or as after it.
 *
 * GLib ends the program when it gets none; that is its contract, and not tested.
 * Points are sampled: STEAD_ROUNDS sets how many an act.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <stdlib.h>
#include <unistd.h>

#include "fault-acts.h"
#include "store-fixture.h"

#define POINTS 24
#define EACH_OF_FIRST 10

static sqlite3_mem_methods true_methods;
static int left;               /* fails when it comes to 0 */
static int n_calls;
static gboolean is_armed;
static gboolean has_failed;

static gboolean
fails (void)
{
  if (!g_atomic_int_get (&is_armed))
    return FALSE;
  g_atomic_int_inc (&n_calls);
  if (!g_atomic_int_dec_and_test (&left))
    return FALSE;
  has_failed = TRUE;
  return TRUE;
}

static void *
my_malloc (int size)
{
  return fails () ? NULL : true_methods.xMalloc (size);
}

static void *
my_realloc (void *block,
            int   size)
{
  return fails () ? NULL : true_methods.xRealloc (block, size);
}

static void
replace_methods (void)
{
  sqlite3_mem_methods methods;

  g_assert_cmpint (sqlite3_config (SQLITE_CONFIG_GETMALLOC, &true_methods), ==, SQLITE_OK);
  methods = true_methods;
  methods.xMalloc = my_malloc;
  methods.xRealloc = my_realloc;
  g_assert_cmpint (sqlite3_config (SQLITE_CONFIG_MALLOC, &methods), ==, SQLITE_OK);
  /* Small pieces come from the allocator too, each time. */
  g_assert_cmpint (sqlite3_config (SQLITE_CONFIG_LOOKASIDE, 0, 0), ==, SQLITE_OK);
}

static void
arm (int n)
{
  has_failed = FALSE;
  n_calls = 0;
  left = n;
  g_atomic_int_set (&is_armed, TRUE);
}

static gboolean
disarm (void)
{
  g_atomic_int_set (&is_armed, FALSE);
  return has_failed;
}

static void
test_act (gconstpointer data)
{
  const char *wished = g_getenv ("STEAD_ROUNDS");
  int points = wished != NULL ? atoi (wished) : POINTS;
  g_autoptr(FaultPlan) plan = fault_plan_new (data);
  int all;

  g_assert_false (fault_round (plan, arm, disarm, G_MAXINT));
  all = n_calls;
  g_assert_cmpint (all, >, 0);
  for (int i = 1; i <= points; i++)
    fault_round (plan, arm, disarm, i <= EACH_OF_FIRST ? i : g_test_rand_int_range (1, all + 1));
  g_test_message ("%s: %d of %d allocations fail", plan->act->name, points, all);
}

int
main (int    argc,
      char **argv)
{
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", TRUE);
  replace_methods ();
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < fault_n_acts; i++)
    {
      g_autofree char *path = g_strconcat ("/fault/memory/", fault_acts[i].name, NULL);

      g_test_add_data_func (path, &fault_acts[i], test_act);
    }
  return g_test_run ();
}
