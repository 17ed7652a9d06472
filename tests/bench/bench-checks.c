/* bench-checks.c - opening a checklist on a farm with a year's 50,000 readings.
 *
 * usage: bench-checks [RUNS]    times reading one list of a farm with 50,000 readings, and of one
 *                               with that list alone (default 200), prints the medians and their
 *                               ratio; exit status 1 above the limit
 *        bench-checks --short   a test: the ratio of fewer runs
 */
#include "answer/stead-check-answer.h"

#include <glib/gstdio.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define LONG_RUNS 200
#define SHORT_RUNS 40

#define TODAY (stead_day_new (2026, 3, 3))
#define LISTS 250
#define READINGS 50000

/* A list opens as fast, however much was read before. */
#define RATIO_MOST 1.5

/* Time that the processor spent on this thread: other programs do not count. */
static double
own_ms (void)
{
  struct timespec t;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &t);
  return (double) t.tv_sec * 1e3 + (double) t.tv_nsec / 1e6;
}

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* --- the farms ---------------------------------------------------------------------------- */

static gint64
add_list (SteadStore *store,
          SteadDay    day)
{
  const SteadCheckAnswered answers[] = {
    { STEAD_CHECK_KEY_COOKED, "breakfast bowls", "raw_egg" }, { STEAD_CHECK_KEY_HELD, "breakfast bowls", "hot" },
    { STEAD_CHECK_KEY_EGG_USE, "breakfast bowls", "pooled_or_held" },
  };
  const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = "breakfast bowls", .day = day,
                                  .answers = answers, .n_answers = G_N_ELEMENTS (answers) };
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckPlanAnswer) plan = stead_check_plan_answer_new (store, &order, &error);
  g_autoptr(SteadCheckList) list = NULL;

  g_assert_no_error (error);
  list = stead_check_list_from_plan (store, plan, &order, NULL, &error);
  g_assert_true (stead_store_begin (store, "list", &error));
  g_assert_true (stead_check_repo_save (store, list, &error));
  g_assert_true (stead_store_commit (store, &error));
  return list->id;
}

/* So many readings, spread over the lists but the last one; written round the program, which
 * would judge each. */
static void
add_readings (const char *path)
{
  static const char sql[] =
    "WITH RECURSIVE n (i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i + 1 < 50000),"
    " line (id, measure, day, k) AS (SELECT c.id, c.measure, l.day, row_number () OVER (ORDER BY c.id) - 1 FROM check_line c"
    "  JOIN checklist l ON l.id = c.list_id WHERE l.id < (SELECT max (id) FROM checklist)),"
    " many (m) AS (SELECT count (*) FROM line)"
    "INSERT INTO reading (at, kind, value, line_id)"
    " SELECT line.day * 86400 + 36000 + i / m, line.measure, 1, line.id FROM n, many JOIN line ON line.k = n.i % many.m";
  sqlite3 *db = NULL;
  char *message = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  if (sqlite3_exec (db, sql, NULL, NULL, &message) != SQLITE_OK)
    g_error ("%s", message);
  g_assert_cmpint (sqlite3_changes (db), ==, READINGS);
  sqlite3_close (db);
}

static SteadStore *
new_farm (const char *folder,
          gboolean    full,
          gint64     *out_list)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = g_build_filename (folder, full ? "full.steading" : "empty.steading", NULL);
  SteadStore *store = stead_store_create (path, "Ember Lane", &error);

  g_assert_no_error (error);
  stead_store_set_today (store, TODAY);
  for (int i = 0; full && i < LISTS; i++)
    add_list (store, TODAY - 366 + i * 365 / LISTS);
  *out_list = add_list (store, TODAY);
  if (full)
    {
      g_clear_object (&store);
      add_readings (path);
      store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);
      g_assert_no_error (error);
      stead_store_set_today (store, TODAY);
    }
  return store;
}

static void
remove_folder (const char *folder)
{
  g_autoptr(GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (g_file_test (path, G_FILE_TEST_IS_DIR))
        remove_folder (path);
      else
        g_unlink (path);
    }
  g_rmdir (folder);
}

/* --- timing ----------------------------------------------------------------------------------- */

static double
median_ms (SteadStore *store,
           gint64      list_id,
           guint       runs)
{
  g_autofree double *ms = g_new (double, runs);

  for (guint run = 0; run < runs; run++)
    {
      double began = own_ms ();
      g_autoptr(SteadCheckAnswer) answer = stead_check_answer_new (store, list_id, NULL);

      g_assert_nonnull (answer);
      ms[run] = own_ms () - began;
    }
  qsort (ms, runs, sizeof *ms, compare);
  return ms[runs / 2];
}

static void
measure (guint   runs,
         double *empty_ms,
         double *full_ms)
{
  gint64 alone = 0, last = 0;
  g_autofree char *folder = g_dir_make_tmp ("bench-checks-XXXXXX", NULL);
  SteadStore *empty = new_farm (folder, FALSE, &alone), *full = new_farm (folder, TRUE, &last);

  *empty_ms = median_ms (empty, alone, runs);
  *full_ms = median_ms (full, last, runs);
  g_object_unref (empty);
  g_object_unref (full);
  remove_folder (folder);
}

static int
run_benchmark (guint runs)
{
  double empty_ms, full_ms;

  measure (runs, &empty_ms, &full_ms);
  printf ("one list %8.2f ms alone, %8.2f ms beside %d readings   ratio %.2f\n", empty_ms, full_ms, READINGS,
          full_ms / empty_ms);
  return full_ms > RATIO_MOST * empty_ms ? EXIT_FAILURE : EXIT_SUCCESS;
}

static void
test_ratio (void)
{
  double empty_ms, full_ms;

  measure (SHORT_RUNS, &empty_ms, &full_ms);
  g_test_message ("%.2f and %.2f ms", empty_ms, full_ms);
  g_assert_cmpfloat (full_ms / empty_ms, <=, RATIO_MOST);
}

int
main (int   argc,
      char *argv[])
{
  if (argc < 2 || !g_str_equal (argv[1], "--short"))
    return run_benchmark (argc > 1 ? (guint) CLAMP (atoi (argv[1]), 1, 10000) : LONG_RUNS);

  argv[1] = argv[0];
  argc--;
  argv++;
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/checks/ratio", test_ratio);
  return g_test_run ();
}
