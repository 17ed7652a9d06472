/* bench-packets.c - the packets of a whole class in one run.
 *
 * usage: bench-packets            150 students, 5,000 entries of hours
 *        bench-packets --short    a test: 30 students, 1,000 entries, no limit of time
 *
 * Goals: a packet as PDF takes less than 100 ms; one more student costs no more in a large
 * class than in one of a tenth of it; and memory in use does not grow over a run.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <malloc.h>
#include <sqlite3.h>
#include <string.h>

#include "paper/stead-packet-paper.h"
#include "store/stead-demo-farm.h"

#define TODAY (stead_day_new (2026, 3, 3))
#define MOST_MS 100.0
#define MOST_RATIO 3.0
#define MOST_GROWTH_BYTES (256 * 1024)   /* what a hash or a pool may take more at once */

static double
now_ms (void)
{
  return (double) g_get_monotonic_time () / 1e3;
}

/* The demo farm, its flock tended by a class of this size besides its own. */
static SteadStore *
make_class (const char *path,
            int         students,
            int         entries)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *sql = NULL, *problem = NULL;
  SteadStore *store = stead_demo_farm_create (path, NULL, TODAY, &error);
  sqlite3 *db = NULL;

  g_assert_no_error (error);
  g_object_unref (store);
  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  sql = g_strdup_printf (
    "BEGIN;"
    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %1$d)"
    " INSERT INTO person (id, name, role) SELECT 1000 + i, 'Student ' || i, 'student' FROM n;"
    "WITH RECURSIVE n (i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i + 1 < %2$d)"
    " INSERT INTO work_span (person_id, day, minutes, break_minutes, duty, paid, batch_id, entered_on)"
    " SELECT 1001 + i %% %1$d, %3$d - i %% 180, 30 + i %% 60, 0, 'Duty ' || (i %% 7), 0,"
    "  (SELECT min (id) FROM batch WHERE kind = 'flock'), %3$d - i %% 180 FROM n;"
    "COMMIT", students, entries, TODAY);
  if (sqlite3_exec (db, sql, NULL, NULL, &problem) != SQLITE_OK)
    g_error ("%s", problem);
  sqlite3_close (db);
  store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
  stead_store_set_today (store, TODAY);
  return store;
}

/* The folder holds PDF files of ours alone. */
static void
remove_folder (const char *path)
{
  g_autoptr(GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *file = g_build_filename (path, name, NULL);

      g_remove (file);
    }
  g_remove (path);
}

/* ms a packet; @out_growth: bytes in use more at the end than after a fifth of the run */
static double
time_run (SteadStore *store,
          const char *folder,
          gint64     *out_growth)
{
  g_autoptr(GError) error = NULL;
  SteadPacketRun *run = stead_packet_run_new (store, folder, &error);
  double start = now_ms ();
  guint n = stead_packet_run_count (run);
  gsize early = 0;

  g_assert_no_error (error);
  for (guint i = 0; i < n; i++)
    {
      g_assert_true (stead_packet_run_step (run, &error));
      if (i == n / 5)
        early = mallinfo2 ().uordblks;
    }
  *out_growth = (gint64) mallinfo2 ().uordblks - (gint64) early;
  start = (now_ms () - start) / n;
  stead_packet_run_free (run);
  return start;
}

static double
time_class (const char *folder,
            const char *name,
            int         students,
            int         entries,
            gint64     *out_growth)
{
  g_autofree char *file = g_strconcat (name, ".steading", NULL);
  g_autofree char *path = g_build_filename (folder, file, NULL);
  g_autofree char *packets = g_build_filename (folder, name, NULL);
  g_autoptr(SteadStore) store = make_class (path, students, entries);
  double ms = time_run (store, packets, out_growth);

  g_print ("# %d students, %d entries of hours: %.1f ms a packet, %+" G_GINT64_FORMAT " bytes over the run\n",
           students, entries, ms, *out_growth);
  g_clear_object (&store);
  remove_folder (packets);
  return ms;
}

int
main (int    argc,
      char **argv)
{
  gboolean is_short = argc > 1 && strcmp (argv[1], "--short") == 0;
  int students = is_short ? 30 : 150, entries = is_short ? 1000 : 5000;
  g_autofree char *folder = g_dir_make_tmp ("bench-packets-XXXXXX", NULL);
  gint64 small_growth, growth;
  double small = time_class (folder, "small", students / 10, entries / 10, &small_growth);
  double large = time_class (folder, "large", students, entries, &growth);
  gboolean is_even = large / small <= MOST_RATIO, is_flat = growth <= MOST_GROWTH_BYTES;
  gboolean is_fast = is_short || large <= MOST_MS;

  remove_folder (folder);
  g_print ("# ratio of large to small class: %.2f\n", large / small);
  g_print ("1..3\n%sok 1 /bench/packets/even\n%sok 2 /bench/packets/flat\n%sok 3 /bench/packets/fast\n",
           is_even ? "" : "not ", is_flat ? "" : "not ", is_fast ? "" : "not ");
  return is_even && is_flat && is_fast ? 0 : 1;
}
