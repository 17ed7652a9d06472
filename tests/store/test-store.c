/* test-store.c - one farm: made, changed, given up, seen from two sides. */
#include "config.h"

#include <glib/gstdio.h>
#include <math.h>

#include "store-fixture.h"
#include "store/stead-store-internal.h"
#include "store/stead-store-watch.h"

static void
count_cb (SteadStore *store,
          int        *n)
{
  (*n)++;
}

static SteadStore *
new_farm (void)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_create_memory ("Test Farm", &error);

  g_assert_no_error (error);
  return store;
}

/* --- making ----------------------------------------------------------------- */

static void
test_create (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "our farm.steading", NULL);
  g_autoptr(SteadStore) store = NULL;
  g_autoptr(GError) error = NULL;

  store = stead_store_create (path, "Test Farm", &error);
  g_assert_no_error (error);
  g_assert_cmpstr (stead_store_get_path (store), ==, path);
  g_assert_false (stead_store_is_read_only (store));
  g_assert_cmpint (stead_store_get_change_no (store), ==, 0);
  g_assert_null (stead_store_get_undo_name (store));
  g_assert_cmpint (fixture_number (store, "SELECT name = 'Test Farm' FROM farm"), ==, 1);
  g_assert_cmpint (fixture_number (store, "PRAGMA application_id"), ==, STEAD_SCHEMA_APPLICATION_ID);
  g_assert_cmpint (fixture_number (store, "PRAGMA user_version"), ==, STEAD_SCHEMA_VERSION);
  g_clear_object (&store);

  store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
  g_assert_nonnull (store);
}

static void
test_create_refused (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *taken = g_build_filename (folder, "taken.steading", NULL);
  g_autofree char *lost = g_build_filename (folder, "no folder", "farm.steading", NULL);
  g_autofree char *free_name = g_build_filename (folder, "free.steading", NULL);
  g_autofree char *long_name = g_strnfill (201, 'x');
  g_autofree char *text = NULL;
  g_autoptr(GError) error = NULL;

  g_assert_true (g_file_set_contents (taken, "homework", -1, NULL));
  g_assert_null (stead_store_create (taken, "Farm", &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  g_assert_true (g_file_get_contents (taken, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "homework");
  g_clear_error (&error);

  g_assert_null (stead_store_create (lost, "Farm", &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);

  g_assert_null (stead_store_create (free_name, "", &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  g_clear_error (&error);
  g_assert_null (stead_store_create (free_name, long_name, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  g_assert_false (g_file_test (free_name, G_FILE_TEST_EXISTS));
}

/* A schema that cannot be laid out: no file is left behind. */
static void
test_create_leaves_nothing (void)
{
  static const char * const steps[] = { "CREATE TABLE farm (id INTEGER); CREATE NONSENSE" };
  static const SteadSchema broken = { steps, 1 };
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autoptr(GDir) dir = NULL;
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_store_create_as (path, "Farm", &broken, &error));
  g_assert_nonnull (error);
  dir = g_dir_open (folder, 0, NULL);
  g_assert_null (g_dir_read_name (dir));
}

/* --- an action -------------------------------------------------------------- */

static void
test_commit (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *name = NULL;
  int n_changed = 0;

  g_signal_connect (store, "changed", G_CALLBACK (count_cb), &n_changed);
  fixture_act (store, "Add Ada", "INSERT INTO person (name, role) VALUES ('Ada', 'student')");
  g_assert_cmpint (n_changed, ==, 1);
  g_assert_cmpint (stead_store_get_change_no (store), ==, 1);
  g_assert_false (stead_store_in_action (store));
  name = stead_store_get_undo_name (store);
  g_assert_cmpstr (name, ==, "Add Ada");
}

static void
test_rollback (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *before = fixture_dump (store);
  g_autofree char *after = NULL;
  g_autoptr(GError) error = NULL;
  int n_changed = 0;

  g_signal_connect (store, "changed", G_CALLBACK (count_cb), &n_changed);
  g_assert_true (stead_store_begin (store, "Add Ada", &error));
  g_assert_true (stead_store_in_action (store));
  fixture_run (store, "INSERT INTO person (name, role) VALUES ('Ada', 'student')");
  stead_store_rollback (store);
  after = fixture_dump (store);
  g_assert_cmpstr (after, ==, before);
  g_assert_cmpint (n_changed, ==, 0);
  g_assert_cmpint (stead_store_get_change_no (store), ==, 0);
  g_assert_null (stead_store_get_undo_name (store));
}

static void
test_nothing_changed (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  int n_changed = 0;

  fixture_fill (store);
  g_signal_connect (store, "changed", G_CALLBACK (count_cb), &n_changed);
  fixture_act (store, "nothing", "UPDATE person SET name = name; DELETE FROM person WHERE id = 99");
  fixture_act (store, "there and back", "INSERT INTO person (name, role) VALUES ('Bo', 'student');"
                                        "DELETE FROM person WHERE name = 'Bo'");
  g_assert_cmpint (n_changed, ==, 0);
  g_assert_cmpint (stead_store_get_change_no (store), ==, 6);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM step"), ==, 6);
}

/* A full disk ends the transaction by itself; what comes after is not kept. */
static void
test_given_up_by_the_file (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_store_begin (store, "Add Ada", &error));
  fixture_run (store, "INSERT INTO person (name, role) VALUES ('Ada', 'student')");
  fixture_run (store, "ROLLBACK");
  g_assert_false (stead_store_commit (store, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_IO);
  g_assert_false (stead_store_in_action (store));
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM step"), ==, 0);
  g_assert_cmpint (stead_store_get_change_no (store), ==, 0);
  fixture_act (store, "Add Bo", "INSERT INTO person (name, role) VALUES ('Bo', 'student')");
}

/* Closing in the middle of an action is giving it up. */
static void
test_closed_in_action (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_create (path, "Farm", &error);

  g_assert_true (stead_store_begin (store, "Add Ada", &error));
  fixture_run (store, "INSERT INTO person (name, role) VALUES ('Ada', 'student')");
  g_clear_object (&store);
  store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM person"), ==, 0);
}

static void
test_nested (void)
{
  if (g_test_subprocess ())
    {
      g_autoptr(SteadStore) store = new_farm ();

      g_assert_true (stead_store_begin (store, "one", NULL));
      g_assert_false (stead_store_begin (store, "two", NULL));
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*!self->in_action*");
}

static void
test_forget_steps (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autoptr(GError) error = NULL;

  fixture_fill (store);
  g_assert_true (stead_store_begin (store, "forget", &error));
  fixture_run (store, "UPDATE person SET name = 'Student 1' WHERE name = 'Ada'");
  stead_store_forget_steps (store);
  g_assert_true (stead_store_commit (store, &error));
  g_assert_no_error (error);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM step"), ==, 0);
  g_assert_cmpint (stead_store_get_change_no (store), ==, 7);
  g_assert_null (stead_store_get_undo_name (store));
  fixture_act (store, "next", "INSERT INTO person (name, role) VALUES ('Bo', 'student')");
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM step"), ==, 1);
}

/* --- two sides -------------------------------------------------------------- */

static void
test_two_connections (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) one = stead_store_create (path, "Farm", &error);
  g_autoptr(SteadStore) other = NULL;
  g_autofree char *name = NULL;
  int n_changed = 0;

  other = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
  g_signal_connect (other, "changed", G_CALLBACK (count_cb), &n_changed);
  stead_store_poll (other);
  g_assert_cmpint (n_changed, ==, 0);
  fixture_act (one, "Add Ada", "INSERT INTO person (name, role) VALUES ('Ada', 'student')");
  stead_store_poll (other);
  stead_store_poll (other);
  g_assert_cmpint (n_changed, ==, 1);
  g_assert_cmpint (stead_store_get_change_no (other), ==, 1);

  /* The steps are the farm's: either side undoes what the other did. */
  name = stead_store_get_undo_name (other);
  g_assert_cmpstr (name, ==, "Add Ada");
  g_assert_true (stead_store_undo (other, &error));
  g_assert_no_error (error);
  g_assert_cmpint (n_changed, ==, 2);
  g_assert_cmpint (fixture_number (one, "SELECT count(*) FROM person"), ==, 0);

  /* One writes at a time; the other is told, and nothing is lost. */
  g_assert_true (stead_store_begin (one, "Add Bo", &error));
  g_assert_false (stead_store_begin (other, "Add Cy", &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_BUSY);
  g_clear_error (&error);
  fixture_run (one, "INSERT INTO person (name, role) VALUES ('Bo', 'student')");
  g_assert_true (stead_store_commit (one, &error));
  fixture_act (other, "Add Cy", "INSERT INTO person (name, role) VALUES ('Cy', 'student')");
  g_assert_cmpint (fixture_number (one, "SELECT count(*) FROM person"), ==, 2);
}

/* A reader that stays in the way makes the commit fail, with all of it gone. */
static void
test_commit_busy (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_create (path, "Farm", &error);
  g_autoptr(SteadStore) reader = stead_store_open (path, STEAD_STORE_OPEN_READ_ONLY, &error);

  sqlite3_busy_timeout (stead_store_get_db (store), 50);
  fixture_run (reader, "BEGIN; SELECT * FROM farm");
  g_assert_true (stead_store_begin (store, "Add Ada", &error));
  fixture_run (store, "INSERT INTO person (name, role) VALUES ('Ada', 'student')");
  g_assert_false (stead_store_commit (store, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_BUSY);
  g_assert_false (stead_store_in_action (store));
  fixture_run (reader, "COMMIT");
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM person"), ==, 0);
  fixture_act (store, "Add Ada", "INSERT INTO person (name, role) VALUES ('Ada', 'student')");
}

/* Of a thing that outlives the action: without it the thing is new again, with it not. */
static void
test_watched_ids (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_create (path, "Farm", &error);
  g_autoptr(SteadStore) reader = stead_store_open (path, STEAD_STORE_OPEN_READ_ONLY, &error);
  gint64 fresh = 0, known = 5;

  sqlite3_busy_timeout (stead_store_get_db (store), 50);
  g_assert_true (stead_store_begin (store, "Add Ada", &error));
  stead_store_watch_id (store, &fresh);
  stead_store_watch_id (store, &known);
  fresh = 7;
  known = 8;
  stead_store_rollback (store);
  g_assert_cmpint (fresh, ==, 0);
  g_assert_cmpint (known, ==, 5);
  /* Somebody reads, so that nothing can be kept now. */
  fixture_run (reader, "BEGIN; SELECT * FROM farm");
  g_assert_true (stead_store_begin (store, "Add Ada", &error));
  stead_store_watch_id (store, &fresh);
  fixture_run (store, "INSERT INTO person (name, role) VALUES ('Ada', 'student')");
  fresh = 7;
  g_assert_false (stead_store_commit (store, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_BUSY);
  g_assert_cmpint (fresh, ==, 0);
  g_clear_error (&error);
  fixture_run (reader, "COMMIT");
  g_assert_true (stead_store_begin (store, "Add Ada", &error));
  stead_store_watch_id (store, &fresh);
  fixture_run (store, "INSERT INTO person (name, role) VALUES ('Ada', 'student')");
  fresh = 7;
  g_assert_true (stead_store_commit (store, &error));
  g_assert_no_error (error);
  g_assert_cmpint (fresh, ==, 7);
  /* Nobody watches any more. */
  g_assert_true (stead_store_begin (store, "Add Bo", &error));
  fresh = 9;
  stead_store_rollback (store);
  g_assert_cmpint (fresh, ==, 9);
}

static void
test_moved_away (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autofree char *elsewhere = g_build_filename (folder, "elsewhere.steading", NULL);
  g_autofree char *copy = g_build_filename (folder, "copy.steading", NULL);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_create (path, "Farm", &error);
  g_autoptr(SteadStore) saved = NULL;

  fixture_fill (store);
  g_assert_cmpint (g_rename (path, elsewhere), ==, 0);
  g_assert_false (stead_store_begin (store, "Add Bo", &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_IO);
  g_clear_error (&error);
  g_assert_false (stead_store_undo (store, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_IO);
  g_clear_error (&error);
  g_assert_true (stead_store_save_copy (store, copy, NULL, &error));
  g_assert_no_error (error);
  saved = stead_store_open (copy, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
  g_assert_cmpint (fixture_number (saved, "SELECT count(*) FROM person"), ==, 2);
}

static void
test_deferred_check (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_create (path, "Farm", &error);

  fixture_fill (store);
  g_clear_object (&store);
  store = stead_store_open (path, STEAD_STORE_OPEN_DEFER_CHECK, &error);
  g_assert_no_error (error);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM person"), ==, 2);
  g_assert_false (stead_store_begin (store, "Add Bo", &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_BUSY);
  g_clear_error (&error);
  g_assert_false (stead_store_undo (store, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_BUSY);
  g_clear_error (&error);
  g_assert_true (stead_store_check_file (path, NULL, &error));
  g_assert_no_error (error);
  stead_store_allow_changes (store);
  g_assert_true (stead_store_undo (store, &error));
}

static void
test_today (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autoptr(GDateTime) now = g_date_time_new_now_local ();
  SteadDay today = stead_store_get_today (store);
  int year, month, mday;

  stead_day_split (today, &year, &month, &mday);
  g_assert_cmpint (ABS (today * G_GINT64_CONSTANT (86400) - g_date_time_to_unix (now)), <, 2 * 86400);
  g_assert_cmpint (year, >=, 2024);
  stead_store_set_today (store, stead_day_new (2040, 2, 29));
  g_assert_cmpint (stead_store_get_today (store), ==, stead_day_new (2040, 2, 29));
  stead_store_set_today (store, STEAD_DAY_NONE);
  g_assert_cmpint (stead_store_get_today (store), >=, today);
}

/* Days past 2038-01-19, where 32 bits of seconds end, go in and come out. */
static void
test_far_days (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  SteadDay far = stead_day_new (2199, 12, 31);
  g_autofree char *sql = g_strdup_printf ("INSERT INTO receipt (day, supplier, is_gift) VALUES (%d, 'Mill', 0)", far);

  stead_store_set_today (store, far);
  fixture_act (store, "receipt", sql);
  g_assert_cmpint (fixture_number (store, "SELECT day FROM receipt"), ==, far);
  g_assert_true (stead_store_undo (store, NULL));
  g_assert_true (stead_store_redo (store, NULL));
  g_assert_cmpint (fixture_number (store, "SELECT strftime('%Y', day * 86400, 'unixepoch') FROM receipt"), ==, 2199);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/store/create", test_create);
  g_test_add_func ("/store/store/create-refused", test_create_refused);
  g_test_add_func ("/store/store/create-leaves-nothing", test_create_leaves_nothing);
  g_test_add_func ("/store/store/commit", test_commit);
  g_test_add_func ("/store/store/rollback", test_rollback);
  g_test_add_func ("/store/store/nothing-changed", test_nothing_changed);
  g_test_add_func ("/store/store/given-up-by-the-file", test_given_up_by_the_file);
  g_test_add_func ("/store/store/closed-in-action", test_closed_in_action);
  g_test_add_func ("/store/store/nested", test_nested);
  g_test_add_func ("/store/store/forget-steps", test_forget_steps);
  g_test_add_func ("/store/store/two-connections", test_two_connections);
  g_test_add_func ("/store/store/commit-busy", test_commit_busy);
  g_test_add_func ("/store/store/watched-ids", test_watched_ids);
  g_test_add_func ("/store/store/moved-away", test_moved_away);
  g_test_add_func ("/store/store/deferred-check", test_deferred_check);
  g_test_add_func ("/store/store/today", test_today);
  g_test_add_func ("/store/store/far-days", test_far_days);
  return g_test_run ();
}
