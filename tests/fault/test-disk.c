/* test-disk.c - the disk fails at any reading, writing or syncing, or the power goes
 * and takes with it what was not synced: the farm is as before the act or as after.
 *
 * Moments are sampled: STEAD_ROUNDS asks for each one.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "fault-acts.h"
#include "fault-disk.h"
#include "store-fixture.h"

/* Each of the first moments; of the many after them, fewer and fewer. */
static int
next_moment (int n)
{
  return g_getenv ("STEAD_ROUNDS") != NULL ? n + 1 : n + 1 + n / 3;
}

static void
test_failing (gconstpointer data)
{
  g_autoptr(FaultPlan) plan = fault_plan_new (data);
  int n = 1;

  while (fault_round (plan, fault_disk_fail_at, fault_disk_mend, n))
    n = next_moment (n);
  g_test_message ("%s: moments up to %d fail", plan->act->name, n - 1);
  g_assert_cmpint (n, >, 1);
}

static void
test_power (gconstpointer data)
{
  g_autoptr(FaultPlan) plan = fault_plan_new (data);
  int n = 1;

  while (fault_power_round (plan, fault_disk_cut_at, fault_disk_lose_power, n))
    n = next_moment (n);
  g_test_message ("%s: the power goes at moments up to %d, and right after", plan->act->name, n - 1);
  g_assert_cmpint (n, >, 1);
  /* What is kept is kept, though the power goes the moment after. */
  for (int i = 0; i < 4; i++)
    g_assert_false (fault_power_round (plan, fault_disk_cut_at, fault_disk_lose_power, 0));
}

/* Files that the acts make and move by other means than SQLite's are left to test-writes. */
static gboolean
is_of_the_farm (const FaultAct *act)
{
  static const char * const names[] = { "entry", "receipt", "delete-flock", "sign", "forget", "undo", "redo", "migrate" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_str_equal (act->name, names[i]))
      return TRUE;
  return FALSE;
}

int
main (int    argc,
      char **argv)
{
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", TRUE);   /* the disk is made up; a real one need not wear out */
  fault_disk_install ();
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < fault_n_acts; i++)
    {
      g_autofree char *failing = g_strconcat ("/fault/disk/failing/", fault_acts[i].name, NULL);
      g_autofree char *power = g_strconcat ("/fault/disk/power/", fault_acts[i].name, NULL);

      g_test_add_data_func (failing, &fault_acts[i], test_failing);
      if (is_of_the_farm (&fault_acts[i]))
        g_test_add_data_func (power, &fault_acts[i], test_power);
    }
  return g_test_run ();
}
