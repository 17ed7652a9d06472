/* test-writes.c - every write to the disk fails, once or from there on, and the
 * farm is as before the act or as after it, never between.
 *
 * SQLite's own calls are replaced in this process.  fsync is not among them.
 */
#include "config.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <unistd.h>

#include "fault-acts.h"
#include "store-fixture.h"

static struct
{
  int      at;         /* fails when it comes to 0 */
  int      code;       /* errno */
  gboolean is_sticky;
  gboolean is_armed;
  gboolean has_failed;
} fault;

static gboolean
fails (void)
{
  if (!fault.is_armed)
    return FALSE;
  if (fault.at > 0)
    fault.at--;
  else if (!fault.is_sticky)
    return FALSE;
  if (fault.at > 0)
    return FALSE;
  if (!fault.is_sticky)
    fault.is_armed = FALSE;
  fault.has_failed = TRUE;
  errno = fault.code;
  return TRUE;
}

static ssize_t
my_pwrite (int         fd,
           const void *bytes,
           size_t      length,
           off_t       at)
{
  return fails () ? -1 : pwrite (fd, bytes, length, at);
}

static int
my_ftruncate (int   fd,
              off_t length)
{
  return fails () ? -1 : ftruncate (fd, length);
}

static int
my_unlink (const char *path)
{
  return fails () ? -1 : unlink (path);
}

static void
replace_calls (void)
{
  sqlite3_vfs *vfs = sqlite3_vfs_find (NULL);

  g_assert_cmpint (vfs->xSetSystemCall (vfs, "pwrite", (sqlite3_syscall_ptr) my_pwrite), ==, SQLITE_OK);
  g_assert_cmpint (vfs->xSetSystemCall (vfs, "pwrite64", (sqlite3_syscall_ptr) my_pwrite), ==, SQLITE_OK);
  g_assert_cmpint (vfs->xSetSystemCall (vfs, "ftruncate", (sqlite3_syscall_ptr) my_ftruncate), ==, SQLITE_OK);
  g_assert_cmpint (vfs->xSetSystemCall (vfs, "unlink", (sqlite3_syscall_ptr) my_unlink), ==, SQLITE_OK);
}

static void
arm (int n)
{
  fault.at = n;
  fault.has_failed = FALSE;
  fault.is_armed = TRUE;
}

static gboolean
disarm (void)
{
  fault.is_armed = FALSE;
  return fault.has_failed;
}

static void
break_off (const FaultPlan *plan,
           int              code,
           gboolean         is_sticky)
{
  gboolean each = g_getenv ("STEAD_ROUNDS") != NULL;
  int n = 1;

  fault.code = code;
  fault.is_sticky = is_sticky;
  /* Each of the first points; of the many after them, fewer and fewer. */
  while (fault_round (plan, arm, disarm, n))
    n += each ? 1 : 1 + n / 8;
  g_test_message ("%s: points up to %d fail with %s%s", plan->act->name, n - 1, g_strerror (code),
                  is_sticky ? " from there on" : "");
}

/* A disk that is full stays so; one that fails may do it once.  STEAD_ROUNDS asks
 * for each point, and for the other way round, too. */
static void
test_act (gconstpointer data)
{
  g_autoptr(FaultPlan) plan = fault_plan_new (data);

  break_off (plan, ENOSPC, TRUE);
  break_off (plan, EIO, FALSE);
  if (g_getenv ("STEAD_ROUNDS") == NULL)
    return;
  break_off (plan, ENOSPC, FALSE);
  break_off (plan, EIO, TRUE);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", TRUE);   /* thousands of farms need not wear out the disk */
  replace_calls ();
  for (gsize i = 0; i < fault_n_acts; i++)
    {
      g_autofree char *path = g_strconcat ("/fault/writes/", fault_acts[i].name, NULL);

      g_test_add_data_func (path, &fault_acts[i], test_act);
    }
  return g_test_run ();
}
