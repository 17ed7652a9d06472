/* test-kill.c - the program is killed at any moment, and all that was committed is there.
 *
 * A child acts on the farm and says the number of each act once it is kept.  The
 * parent kills it, opens the farm and looks.  STEAD_ROUNDS sets how often.
 */
#include "config.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "fault-acts.h"
#include "repo-fixture.h"

#define ROUNDS 30
#define SHORTEST_US 10000
#define LONGEST_US 90000

/* --- the child ---------------------------------------------------------------- */

/* Each act writes two tables that must agree; each fifth is taken back and done again. */
static void
act (SteadStore *store,
     int         number)
{
  g_autofree char *sql = g_strdup_printf ("INSERT INTO person (name, role) VALUES ('N%d', 'student');"
                                          "INSERT INTO place (name, kind) VALUES ('N%d', 'store')", number, number);
  g_autofree char *name = g_strdup_printf ("N%d", number);

  fixture_act (store, name, sql);
  if (number % 5 != 0)
    return;
  g_assert_true (stead_store_undo (store, NULL));
  g_assert_true (stead_store_redo (store, NULL));
}

static void
say (gint32 number)
{
  g_assert_cmpint (write (STDOUT_FILENO, &number, sizeof number), ==, sizeof number);
}

G_GNUC_NORETURN static void
be_child (const char *path)
{
  g_autoptr(SteadStore) store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, NULL);
  gint32 number;

  g_assert_nonnull (store);
  number = (gint32) fixture_number (store, "SELECT count(*) FROM place");
  say (number);   /* open, with what was kept before */
  while (TRUE)
    {
      act (store, ++number);
      say (number);
    }
}

/* --- the parent ---------------------------------------------------------------- */

static GPid
start_child (const char *path,
             int        *out_fd)
{
  g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL);
  const char *argv[] = { self, "--child", path, NULL };
  g_autoptr(GError) error = NULL;
  GPid pid = 0;

  g_spawn_async_with_pipes (NULL, (char **) argv, NULL, G_SPAWN_DO_NOT_REAP_CHILD, NULL, NULL, &pid,
                            NULL, out_fd, NULL, &error);
  g_assert_no_error (error);
  return pid;
}

/* The last number that the child said, or @last if it said none. */
static gint32
read_last (int    fd,
           gint32 last)
{
  gint32 number;

  while (read (fd, &number, sizeof number) == sizeof number)
    last = number;
  close (fd);
  return last;
}

static gint32
kill_once (const char *path,
           gint32      last,
           gboolean    once_open)
{
  int fd, status;
  GPid pid = start_child (path, &fd);

  if (once_open)
    g_assert_cmpint (read (fd, &last, sizeof last), ==, sizeof last);
  g_usleep ((gulong) g_test_rand_int_range (SHORTEST_US, LONGEST_US));
  kill (pid, SIGKILL);
  g_assert_cmpint (waitpid (pid, &status, 0), ==, pid);
  g_assert_true (WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL);   /* and not by a failed assertion */
  return read_last (fd, last);
}

static gint32
look (const char *path,
      gint32      said)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_autoptr(GPtrArray) found = NULL;
  g_autofree char *undo = NULL;
  g_autofree char *expected = NULL;
  gint32 kept;

  g_assert_no_error (error);
  kept = (gint32) fixture_number (store, "SELECT count(*) FROM place");
  g_assert_cmpint (kept, >=, said);
  /* One more may have been kept before it was said; it may stand undone, or redone. */
  g_assert_cmpint (kept, <=, said + 1);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM person JOIN place USING (name)"), ==, kept);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM person"), ==, kept);
  undo = stead_store_get_undo_name (store);
  expected = kept > 0 ? g_strdup_printf ("N%d", kept) : NULL;
  g_assert_cmpstr (undo, ==, expected);
  if (kept > 0)
    {
      g_assert_true (stead_store_undo (store, &error));
      g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM place"), ==, kept - 1);
      g_assert_true (stead_store_redo (store, &error));
    }
  g_clear_object (&store);
  found = stead_store_verify (path, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (found->len, ==, 0);
  return kept;
}

static void
test_kill (void)
{
  const char *wished = g_getenv ("STEAD_ROUNDS");
  int rounds = wished != NULL ? atoi (wished) : ROUNDS;
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autoptr(SteadStore) store = stead_store_create (path, "Farm", NULL);
  gint32 last = 0;

  g_clear_object (&store);
  for (int i = 0; i < rounds; i++)
    last = look (path, kill_once (path, last, i % 5 != 0));
  g_test_message ("%d acts in %d lives", last, rounds);
  g_assert_cmpint (last, >, rounds / 5);
}

int
main (int    argc,
      char **argv)
{
  if (argc == 3 && strcmp (argv[1], "--child") == 0)
    be_child (argv[2]);
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", TRUE);   /* what a kill leaves behind is the same there, and sooner */
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fault/kill/any-moment", test_kill);
  return g_test_run ();
}
