/* test-open.c - what is no farm, or no whole one, is refused in its own words
 * and not one byte of it changes. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "store-fixture.h"
#include "store/stead-schema.h"
#include "store/stead-store-internal.h"

#define NOBODY 65534

typedef struct
{
  char *folder;
  char *path;
} Room;

static void
set_up (Room          *room,
        gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;

  room->folder = fixture_folder ();
  room->path = g_build_filename (room->folder, "farm.steading", NULL);
  store = stead_store_create (room->path, "Farm", &error);
  g_assert_no_error (error);
  fixture_fill (store);
}

static void
tear_down (Room          *room,
           gconstpointer  data)
{
  g_free (room->path);
  fixture_remove (room->folder);
}

static void
write_file (const char *path,
            const char *bytes,
            gsize       length)
{
  g_assert_true (g_file_set_contents (path, bytes, (gssize) length, NULL));
}

/* SQL from outside our program. */
static void
run_outside (const char *path,
             const char *sql)
{
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, sql, NULL, NULL, NULL), ==, SQLITE_OK);
  sqlite3_close (db);
}

static void
change_byte (const char *path,
             gsize       at,
             guint8      value)
{
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_assert_cmpuint (at, <, length);
  bytes[at] = (char) value;
  write_file (path, bytes, length);
}

static void
assert_refused (const char *path,
                int         code,
                const char *words)
{
  g_autofree char *journal = g_strconcat (path, "-journal", NULL);
  g_autofree char *before = fixture_sum (path);
  g_autofree char *after = NULL;
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) found = NULL;

  g_assert_null (stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error));
  g_assert_error (error, STEAD_STORE_ERROR, code);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, words));
  g_clear_error (&error);

  /* --verify says the same, or finds the damage. */
  found = stead_store_verify (path, NULL, &error);
  if (code == STEAD_STORE_ERROR_DAMAGED)
    g_assert_true (found != NULL && found->len > 0);
  else
    g_assert_error (error, STEAD_STORE_ERROR, code);

  after = fixture_sum (path);
  g_assert_cmpstr (after, ==, before);
  g_assert_false (g_file_test (journal, G_FILE_TEST_EXISTS));
}

static void
test_missing (Room          *room,
              gconstpointer  data)
{
  g_autofree char *path = g_build_filename (room->folder, "gone.steading", NULL);
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

static void
test_not_a_file (Room          *room,
                 gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_store_open (room->folder, STEAD_STORE_OPEN_DEFAULT, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_A_FARM);
  g_assert_nonnull (strstr (error->message, "folder"));
  g_clear_error (&error);
  g_assert_null (stead_store_open ("/dev/null", STEAD_STORE_OPEN_DEFAULT, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_A_FARM);
}

/* No name is taken for a database in memory or for a URI. */
static void
test_odd_names (Room          *room,
                gconstpointer  data)
{
  static const char * const names[] = { ":memory:", "file:x?mode=memory", "" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr(GError) error = NULL;

      g_assert_null (stead_store_open (names[i], STEAD_STORE_OPEN_DEFAULT, &error));
      g_assert_nonnull (error);
    }
}

static void
test_empty (Room          *room,
            gconstpointer  data)
{
  write_file (room->path, "", 0);
  assert_refused (room->path, STEAD_STORE_ERROR_NOT_A_FARM, "empty");
}

static void
test_text (Room          *room,
           gconstpointer  data)
{
  g_autofree char *long_text = g_strnfill (5000, 'a');

  write_file (room->path, "hi", 2);
  assert_refused (room->path, STEAD_STORE_ERROR_NOT_A_FARM, "something else");
  write_file (room->path, long_text, 5000);
  assert_refused (room->path, STEAD_STORE_ERROR_NOT_A_FARM, "something else");
}

static void
test_other_program (Room          *room,
                    gconstpointer  data)
{
  g_unlink (room->path);
  run_outside (room->path, "CREATE TABLE notes (text); PRAGMA user_version = 1");
  assert_refused (room->path, STEAD_STORE_ERROR_NOT_A_FARM, "another program");
}

static void
test_newer (Room          *room,
            gconstpointer  data)
{
  g_autofree char *sql = g_strdup_printf ("PRAGMA user_version = %d", STEAD_SCHEMA_VERSION + 1);

  run_outside (room->path, sql);
  assert_refused (room->path, STEAD_STORE_ERROR_NEWER, "newer version");
}

static void
test_no_version (Room          *room,
                 gconstpointer  data)
{
  run_outside (room->path, "PRAGMA user_version = 0");
  assert_refused (room->path, STEAD_STORE_ERROR_NOT_A_FARM, "another program");
}

/* Whatever is added to our schema could run code of its own. */
static void
test_foreign_schema (Room          *room,
                     gconstpointer  data)
{
  static const char * const extras[] = {
    "CREATE TABLE extra (x)",
    "CREATE VIEW extra AS SELECT * FROM person",
    "CREATE INDEX extra ON person (role)",
    "CREATE TRIGGER extra AFTER INSERT ON person BEGIN DELETE FROM movement; END",
    "CREATE VIRTUAL TABLE extra USING fts5 (x)",
    "DROP TRIGGER receipt_signed_update",
    "DROP INDEX receipt_day",
    "ALTER TABLE person ADD COLUMN extra TEXT",
    "ANALYZE",
  };
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (room->path, &bytes, &length, NULL));
  for (gsize i = 0; i < G_N_ELEMENTS (extras); i++)
    {
      g_test_message ("%s", extras[i]);
      write_file (room->path, bytes, length);
      run_outside (room->path, extras[i]);
      assert_refused (room->path, STEAD_STORE_ERROR_NOT_A_FARM, "did not make it");
    }
}

static void
test_write_ahead_log (Room          *room,
                      gconstpointer  data)
{
  change_byte (room->path, 18, 2);
  change_byte (room->path, 19, 2);
  assert_refused (room->path, STEAD_STORE_ERROR_NOT_A_FARM, "how this farm is kept");
}

static void
test_cut_off (Room          *room,
              gconstpointer  data)
{
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (room->path, &bytes, &length, NULL));
  write_file (room->path, bytes, 300);
  assert_refused (room->path, STEAD_STORE_ERROR_DAMAGED, "missing");
  write_file (room->path, bytes, length / 2);
  assert_refused (room->path, STEAD_STORE_ERROR_DAMAGED, "damaged");
}

static void
test_damaged_page (Room          *room,
                   gconstpointer  data)
{
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (room->path, &bytes, &length, NULL));
  memset (bytes + 3 * 4096, 0x55, 4096);
  write_file (room->path, bytes, length);
  assert_refused (room->path, STEAD_STORE_ERROR_DAMAGED, "damaged");
}

/* With the check put off the file opens, and the check in the worker says so. */
static void
test_deferred_damage (Room          *room,
                      gconstpointer  data)
{
  g_autoptr(SteadStore) store = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *bytes = NULL;
  gsize length;
  gint64 page;

  store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, NULL);
  page = fixture_number (store, "SELECT rootpage FROM sqlite_schema WHERE name = 'movement'");
  g_clear_object (&store);
  g_assert_true (g_file_get_contents (room->path, &bytes, &length, NULL));
  memset (bytes + (page - 1) * 4096, 0, 4096);
  write_file (room->path, bytes, length);

  store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFER_CHECK, &error);
  g_assert_no_error (error);
  g_assert_false (stead_store_check_file (room->path, NULL, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_DAMAGED);
}

static int
step_once (SteadStore *store,
           const char *sql)
{
  g_autoptr(sqlite3_stmt) stmt = NULL;

  g_assert_cmpint (sqlite3_prepare_v2 (store->db, sql, -1, &stmt, NULL), ==, SQLITE_OK);
  return sqlite3_step (stmt);
}

static void
count_cb (SteadStore *store,
          int        *n)
{
  ++*n;
}

/* Of a file that is not checked yet nothing is read without end; once it is, all is. */
static void
test_deferred_without_end (Room          *room,
                           gconstpointer  data)
{
  g_autoptr(SteadStore) store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFER_CHECK, NULL);
  const char *endless = "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT count(*) FROM n";
  const char *longish = "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 5000)"
                        " SELECT count(*) FROM n";
  int n_changes = 0;

  g_signal_connect (store, "changed", G_CALLBACK (count_cb), &n_changes);
  g_assert_cmpint (step_once (store, longish), ==, SQLITE_ROW);
  g_assert_cmpint (step_once (store, endless), ==, SQLITE_INTERRUPT);
  g_assert_cmpint (step_once (store, longish), ==, SQLITE_INTERRUPT);   /* one wait is enough */
  g_assert_cmpint (step_once (store, "SELECT count(*) FROM person"), ==, SQLITE_ROW);
  g_assert_cmpint (step_once (store, "SELECT length (zeroblob (5000000))"), ==, SQLITE_TOOBIG);
  stead_store_allow_changes (store);
  g_assert_cmpint (n_changes, ==, 1);
  g_assert_cmpint (step_once (store, longish), ==, SQLITE_ROW);
  g_assert_cmpint (step_once (store, "SELECT length (zeroblob (5000000))"), ==, SQLITE_ROW);
  fixture_act (store, "Add Bo", "INSERT INTO person (name, role) VALUES ('Bo', 'student')");
}

static void
test_check_cancelled (Room          *room,
                      gconstpointer  data)
{
  g_autoptr(SteadStore) store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, NULL);
  g_autoptr(GCancellable) cancellable = g_cancellable_new ();
  g_autoptr(GError) error = NULL;

  fixture_act (store, "many", "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 20000)"
                              " INSERT INTO batch_entry (batch_id, day, eggs) SELECT 1, 20002 + i, 1 FROM n");
  g_cancellable_cancel (cancellable);
  g_assert_false (stead_store_check_file (room->path, cancellable, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_CANCELLED);
  g_clear_error (&error);
  g_assert_null (stead_store_verify (room->path, cancellable, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_CANCELLED);
}

static void
test_locked (Room          *room,
             gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (room->path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, "BEGIN EXCLUSIVE", NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_null (stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_BUSY);
  sqlite3_close (db);
}

/* Opening a second time must not drop the locks that the first connection holds:
 * POSIX locks go when any descriptor of the process on the file is closed. */
static void
test_locks_survive (Room          *room,
                    gconstpointer  data)
{
  g_autoptr(SteadStore) store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, NULL);
  g_autoptr(SteadStore) second = NULL;
  g_autofree char *shell = g_find_program_in_path ("sqlite3");
  g_autofree char *command = g_strdup_printf ("sqlite3 '%s' 'BEGIN IMMEDIATE'", room->path);
  int status = 0;

  if (shell == NULL)
    {
      g_test_skip ("the sqlite3 shell is not installed");
      return;
    }
  g_assert_true (stead_store_begin (store, "long action", NULL));
  fixture_run (store, "INSERT INTO person (name, role) VALUES ('Bo', 'student')");
  second = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, NULL);
  g_assert_nonnull (second);
  g_clear_object (&second);
  g_assert_true (g_spawn_command_line_sync (command, NULL, NULL, &status, NULL));
  g_assert_false (g_spawn_check_wait_status (status, NULL));   /* another process still finds it locked */
  stead_store_rollback (store);
  g_assert_true (g_spawn_command_line_sync (command, NULL, NULL, &status, NULL));
  g_assert_true (g_spawn_check_wait_status (status, NULL));
}

/* --- without the right to write --------------------------------------------- */

/* A farm that cannot be changed where it is, can where its copy is. */
static void
change_a_copy (SteadStore *store)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "copy.steading", NULL);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) copy = NULL;

  g_assert_true (stead_store_save_copy (store, path, NULL, &error));
  g_assert_no_error (error);
  copy = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
  g_assert_false (stead_store_is_read_only (copy));
  fixture_act (copy, "Add Bo", "INSERT INTO person (name, role) VALUES ('Bo', 'student')");
}

static void
open_as_nobody (void)
{
  const char *path = g_getenv ("STEAD_TEST_FARM");
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  g_autoptr(SteadStore) store = NULL;
  g_autoptr(GPtrArray) found = NULL;
  g_autoptr(GError) error = NULL;

  if (geteuid () == 0)
    g_assert_cmpint (setuid (NOBODY), ==, 0);
  before = fixture_sum (path);
  store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
  g_assert_true (stead_store_is_read_only (store));
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM person"), ==, 2);
  g_assert_false (stead_store_begin (store, "Add Bo", &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_READ_ONLY);
  g_clear_error (&error);
  g_assert_false (stead_store_undo (store, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_READ_ONLY);
  g_clear_error (&error);
  change_a_copy (store);
  g_clear_object (&store);
  found = stead_store_verify (path, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (found->len, ==, 0);
  after = fixture_sum (path);
  g_assert_cmpstr (after, ==, before);
}

static void
test_read_only_file (Room          *room,
                     gconstpointer  data)
{
  if (g_test_subprocess ())
    {
      open_as_nobody ();
      return;
    }
  g_chmod (room->folder, 0777);
  g_chmod (room->path, 0444);
  g_setenv ("STEAD_TEST_FARM", room->path, TRUE);
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_INHERIT_STDERR);
  g_test_trap_assert_passed ();
}

static void
test_read_only_folder (Room          *room,
                       gconstpointer  data)
{
  if (g_test_subprocess ())
    {
      open_as_nobody ();
      return;
    }
  g_chmod (room->path, 0666);
  g_chmod (room->folder, 0555);
  g_setenv ("STEAD_TEST_FARM", room->path, TRUE);
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_INHERIT_STDERR);
  g_test_trap_assert_passed ();
  g_chmod (room->folder, 0755);
}

static void
test_unreadable (Room          *room,
                 gconstpointer  data)
{
  if (g_test_subprocess ())
    {
      g_autoptr(GError) error = NULL;

      if (geteuid () == 0)
        g_assert_cmpint (setuid (NOBODY), ==, 0);
      g_assert_null (stead_store_open (g_getenv ("STEAD_TEST_FARM"), STEAD_STORE_OPEN_DEFAULT, &error));
      g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_READ_ONLY);
      return;
    }
  g_chmod (room->folder, 0755);
  g_chmod (room->path, 0000);
  g_setenv ("STEAD_TEST_FARM", room->path, TRUE);
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_INHERIT_STDERR);
  g_test_trap_assert_passed ();
}

static void
test_read_only_wish (Room          *room,
                     gconstpointer  data)
{
  g_autofree char *before = fixture_sum (room->path);
  g_autofree char *after = NULL;
  g_autoptr(SteadStore) store = NULL;
  g_autoptr(GError) error = NULL;

  store = stead_store_open (room->path, STEAD_STORE_OPEN_READ_ONLY, &error);
  g_assert_no_error (error);
  g_assert_true (stead_store_is_read_only (store));
  g_assert_false (stead_store_begin (store, "Add Bo", &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_READ_ONLY);
  g_assert_cmpint (sqlite3_exec (stead_store_get_db (store), "DELETE FROM person", NULL, NULL, NULL), !=, SQLITE_OK);
  g_clear_object (&store);
  after = fixture_sum (room->path);
  g_assert_cmpstr (after, ==, before);
}

/* --- after a crash ---------------------------------------------------------- */

/* Leaves the farm as a crash in the middle of a large change does: pages half
 * written, and a journal that tells how they were. */
static void
crash (Room *room)
{
  static const char big[] =
    "PRAGMA cache_size = 5; PRAGMA cache_spill = 5; BEGIN IMMEDIATE;"
    "UPDATE person SET name = name || ' Lovelace';"
    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 5000)"
    " INSERT INTO batch_entry (batch_id, day, eggs) SELECT 1, 20002 + i, 1 FROM n";
  g_autofree char *journal = g_strconcat (room->path, "-journal", NULL);
  g_autofree char *bytes = NULL;
  g_autofree char *journal_bytes = NULL;
  gsize length, journal_length;
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (room->path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, big, NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_true (g_file_get_contents (room->path, &bytes, &length, NULL));
  g_assert_true (g_file_get_contents (journal, &journal_bytes, &journal_length, NULL));
  sqlite3_close (db);
  write_file (room->path, bytes, length);
  write_file (journal, journal_bytes, journal_length);
}

static void
test_crashed (Room          *room,
              gconstpointer  data)
{
  g_autofree char *journal = g_strconcat (room->path, "-journal", NULL);
  g_autoptr(SteadStore) store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, NULL);
  g_autofree char *before = fixture_dump (store);
  g_autofree char *after = NULL;
  g_autoptr(GError) error = NULL;

  g_clear_object (&store);
  crash (room);
  store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
  after = fixture_dump (store);
  g_assert_cmpstr (after, ==, before);
  g_assert_false (g_file_test (journal, G_FILE_TEST_EXISTS));
}

static void
test_crashed_read_only (Room          *room,
                        gconstpointer  data)
{
  g_autofree char *journal = g_strconcat (room->path, "-journal", NULL);

  if (g_test_subprocess ())
    {
      const char *path = g_getenv ("STEAD_TEST_FARM");
      g_autofree char *before = NULL;
      g_autofree char *after = NULL;
      g_autoptr(GError) error = NULL;

      if (geteuid () == 0)
        g_assert_cmpint (setuid (NOBODY), ==, 0);
      before = fixture_sum (path);
      g_assert_null (stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error));
      g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_READ_ONLY);
      g_assert_nonnull (strstr (error->message, "-journal"));
      after = fixture_sum (path);
      g_assert_cmpstr (after, ==, before);
      return;
    }
  crash (room);
  g_chmod (room->path, 0444);
  g_chmod (journal, 0444);
  g_chmod (room->folder, 0555);
  g_setenv ("STEAD_TEST_FARM", room->path, TRUE);
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_INHERIT_STDERR);
  g_test_trap_assert_passed ();
  g_chmod (room->folder, 0755);
}

#define ADD(name, test) g_test_add ("/store/open/" name, Room, NULL, set_up, test, tear_down)

/* Another SQLite takes more steps for the same check: there is room for several times as many. */
static void
test_room_for_checks (Room          *room,
                      gconstpointer  data)
{
  static const char * const checks[] = { "EXPLAIN PRAGMA quick_check", "EXPLAIN PRAGMA integrity_check" };
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, &error);

  g_assert_no_error (error);
  for (gsize i = 0; i < G_N_ELEMENTS (checks); i++)
    {
      sqlite3_stmt *stmt = NULL;
      int steps = 0;

      g_assert_cmpint (sqlite3_prepare_v2 (stead_store_get_db (store), checks[i], -1, &stmt, NULL), ==, SQLITE_OK);
      while (sqlite3_step (stmt) == SQLITE_ROW)
        steps++;
      sqlite3_finalize (stmt);
      g_assert_cmpint (steps, >, 1000);
      g_assert_cmpint (5 * steps, <, sqlite3_limit (stead_store_get_db (store), SQLITE_LIMIT_VDBE_OP, -1));
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("room-for-checks", test_room_for_checks);
  ADD ("missing", test_missing);
  ADD ("not-a-file", test_not_a_file);
  ADD ("odd-names", test_odd_names);
  ADD ("empty", test_empty);
  ADD ("text", test_text);
  ADD ("other-program", test_other_program);
  ADD ("newer", test_newer);
  ADD ("no-version", test_no_version);
  ADD ("foreign-schema", test_foreign_schema);
  ADD ("write-ahead-log", test_write_ahead_log);
  ADD ("cut-off", test_cut_off);
  ADD ("damaged-page", test_damaged_page);
  ADD ("deferred-damage", test_deferred_damage);
  ADD ("deferred-without-end", test_deferred_without_end);
  ADD ("check-cancelled", test_check_cancelled);
  ADD ("locked", test_locked);
  ADD ("locks-survive", test_locks_survive);
  ADD ("read-only-file", test_read_only_file);
  ADD ("read-only-folder", test_read_only_folder);
  ADD ("unreadable", test_unreadable);
  ADD ("read-only-wish", test_read_only_wish);
  ADD ("crashed", test_crashed);
  ADD ("crashed-read-only", test_crashed_read_only);
  return g_test_run ();
}
