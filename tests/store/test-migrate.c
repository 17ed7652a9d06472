/* test-migrate.c - an older farm is brought up to date, whole or not at all. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "store-fixture.h"
#include "store/stead-store-internal.h"

/* A program of the future, made up here: a column more, then a table rebuilt,
 * then a rule more. */
#define ADD_COLUMN "ALTER TABLE person ADD COLUMN nickname TEXT;"
#define REBUILD \
  "CREATE TABLE new_place (id INTEGER PRIMARY KEY AUTOINCREMENT, name TEXT NOT NULL UNIQUE, kind TEXT NOT NULL,\n" \
  "  area_m2 REAL, roof TEXT NOT NULL DEFAULT 'none') STRICT;\n" \
  "INSERT INTO new_place (id, name, kind, area_m2) SELECT id, name, kind, area_m2 FROM place;\n" \
  "DROP TABLE place;\n" \
  "ALTER TABLE new_place RENAME TO place;\n"
#define BROKEN_RULE ADD_COLUMN "INSERT INTO person (name, role) VALUES ('X', 'king');"
#define ORPHANS ADD_COLUMN "DELETE FROM place;"
#define NONSENSE ADD_COLUMN "CREATE NONSENSE;"

/* The version of this program. */
#define NOW STEAD_SCHEMA_VERSION

typedef struct
{
  char       *folder;
  char       *path;
  char       *sum;       /* of the file before */
  char       *dump;      /* of its facts before */
  const char *steps[NOW + 2];
  SteadSchema schema;
} Room;

static void
set_up (Room          *room,
        gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;

  room->folder = fixture_folder ();
  room->path = g_build_filename (room->folder, "our farm.steading", NULL);
  store = stead_store_create (room->path, "Farm", &error);
  g_assert_no_error (error);
  fixture_fill (store);
  room->dump = fixture_dump (store);
  g_clear_object (&store);
  room->sum = fixture_sum (room->path);
  for (int i = 0; i < NOW; i++)
    room->steps[i] = stead_schema.steps[i];
}

static void
tear_down (Room          *room,
           gconstpointer  data)
{
  g_free (room->path);
  g_free (room->sum);
  g_free (room->dump);
  fixture_remove (room->folder);
}

static void
lead_to (Room       *room,
         const char *second,
         const char *third)
{
  room->steps[NOW] = second;
  room->steps[NOW + 1] = third;
  room->schema = (SteadSchema) { room->steps, third != NULL ? NOW + 2 : NOW + 1 };
}

static char *
the_copy (Room *room,
          int   version)
{
  g_autofree char *name = g_strdup_printf ("our farm before version %d.steading", version);

  return g_build_filename (room->folder, name, NULL);
}

static char *
the_second_copy (Room *room)
{
  g_autofree char *name = g_strdup_printf ("our farm before version %d (2).steading", NOW + 1);

  return g_build_filename (room->folder, name, NULL);
}

static void
test_two_steps (Room          *room,
                gconstpointer  data)
{
  g_autofree char *copy = the_copy (room, NOW + 2);
  g_autofree char *copy_dump = NULL;
  g_autoptr(GPtrArray) found = NULL;
  g_autoptr(SteadStore) store = NULL;
  g_autoptr(SteadStore) old = NULL;
  g_autoptr(GError) error = NULL;

  lead_to (room, ADD_COLUMN, REBUILD);
  store = stead_store_open_as (room->path, STEAD_STORE_OPEN_DEFAULT, &room->schema, &error);
  g_assert_no_error (error);
  g_assert_cmpint (fixture_number (store, "PRAGMA user_version"), ==, NOW + 2);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM person WHERE nickname IS NULL"), ==, 2);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM place WHERE roof = 'none'"), ==, 1);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM batch JOIN place ON place.id = place_id"), ==, 1);
  g_assert_cmpint (fixture_number (store, "PRAGMA foreign_keys"), ==, 1);

  /* Steps speak of the old tables. */
  g_assert_null (stead_store_get_undo_name (store));
  fixture_act (store, "Add Bo", "INSERT INTO person (name, role, nickname) VALUES ('Bo', 'student', 'B')");
  g_assert_true (stead_store_undo (store, &error));
  g_clear_object (&store);

  found = stead_store_verify_as (room->path, &room->schema, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (found->len, ==, 0);

  /* The farm as it was stands beside it, and this program opens it. */
  old = stead_store_open (copy, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
  copy_dump = fixture_dump (old);
  g_assert_cmpstr (copy_dump, ==, room->dump);
}

static void
test_opened_again (Room          *room,
                   gconstpointer  data)
{
  g_autofree char *second_copy = the_second_copy (room);
  g_autoptr(SteadStore) store = NULL;
  g_autoptr(GError) error = NULL;

  lead_to (room, ADD_COLUMN, NULL);
  for (int i = 0; i < 2; i++)
    {
      store = stead_store_open_as (room->path, STEAD_STORE_OPEN_DEFAULT, &room->schema, &error);
      g_assert_no_error (error);
      g_clear_object (&store);
    }
  g_assert_false (g_file_test (second_copy, G_FILE_TEST_EXISTS));
  g_assert_null (stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NEWER);
}

static void
test_copy_is_never_written_over (Room          *room,
                                 gconstpointer  data)
{
  g_autofree char *copy = the_copy (room, NOW + 1);
  g_autofree char *second_copy = the_second_copy (room);
  g_autoptr(SteadStore) store = NULL;
  g_autofree char *text = NULL;

  g_assert_true (g_file_set_contents (copy, "mine", -1, NULL));
  lead_to (room, ADD_COLUMN, NULL);
  store = stead_store_open_as (room->path, STEAD_STORE_OPEN_DEFAULT, &room->schema, NULL);
  g_assert_nonnull (store);
  g_assert_true (g_file_get_contents (copy, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "mine");
  g_assert_true (g_file_test (second_copy, G_FILE_TEST_EXISTS));
}

static void
assert_fails (Room       *room,
              const char *step,
              int         code)
{
  g_autofree char *journal = g_strconcat (room->path, "-journal", NULL);
  g_autofree char *copy = the_copy (room, NOW + 1);
  g_autofree char *after = NULL;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;

  lead_to (room, step, NULL);
  g_assert_null (stead_store_open_as (room->path, STEAD_STORE_OPEN_DEFAULT, &room->schema, &error));
  g_assert_error (error, STEAD_STORE_ERROR, code);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, "is as it was"));
  g_clear_error (&error);
  after = fixture_sum (room->path);
  g_assert_cmpstr (after, ==, room->sum);
  g_assert_false (g_file_test (journal, G_FILE_TEST_EXISTS));
  g_assert_false (g_file_test (copy, G_FILE_TEST_EXISTS));
  store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
}

static void
test_broken_rule (Room          *room,
                  gconstpointer  data)
{
  assert_fails (room, BROKEN_RULE, STEAD_STORE_ERROR_INVALID);
}

static void
test_orphans (Room          *room,
              gconstpointer  data)
{
  assert_fails (room, ORPHANS, STEAD_STORE_ERROR_DAMAGED);
}

static void
test_nonsense (Room          *room,
               gconstpointer  data)
{
  assert_fails (room, NONSENSE, STEAD_STORE_ERROR_IO);
}

/* Another window has it open: nothing is changed, and it can be tried again. */
static void
test_in_the_way (Room          *room,
                       gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) reader = stead_store_open (room->path, STEAD_STORE_OPEN_READ_ONLY, NULL);
  g_autofree char *after = NULL;

  lead_to (room, ADD_COLUMN, NULL);
  fixture_run (reader, "BEGIN; SELECT * FROM farm");   /* in the way of the change */
  g_assert_null (stead_store_open_as (room->path, STEAD_STORE_OPEN_DEFAULT, &room->schema, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_BUSY);
  g_clear_object (&reader);
  after = fixture_sum (room->path);
  g_assert_cmpstr (after, ==, room->sum);
}

/* A newer program opens the farm that is open here: nothing more is written from here. */
static void
test_under_our_feet (Room          *room,
                     gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) here = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, NULL);
  g_autoptr(SteadStore) newer = NULL;

  fixture_act (here, "Add Bo", "INSERT INTO person (name, role) VALUES ('Bo', 'student')");
  lead_to (room, ADD_COLUMN, NULL);
  newer = stead_store_open_as (room->path, STEAD_STORE_OPEN_DEFAULT, &room->schema, &error);
  g_assert_no_error (error);
  g_assert_false (stead_store_begin (here, "Add Cy", &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NEWER);
  fixture_act (newer, "Add Cy", "INSERT INTO person (name, role) VALUES ('Cy', 'student')");
}

static void
test_read_only (Room          *room,
                gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *after = NULL;

  lead_to (room, ADD_COLUMN, NULL);
  g_assert_null (stead_store_open_as (room->path, STEAD_STORE_OPEN_READ_ONLY, &room->schema, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_READ_ONLY);
  after = fixture_sum (room->path);
  g_assert_cmpstr (after, ==, room->sum);
}

/* --verify looks at an older farm without touching it. */
static void
test_verify (Room          *room,
             gconstpointer  data)
{
  g_autoptr(GPtrArray) found = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *after = NULL;

  lead_to (room, ADD_COLUMN, REBUILD);
  found = stead_store_verify_as (room->path, &room->schema, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (found->len, ==, 0);
  after = fixture_sum (room->path);
  g_assert_cmpstr (after, ==, room->sum);
}

/* --- the samples that are kept ----------------------------------------------- */

/* One farm of each version, made by the program of its time (make-sample.c). */
static void
test_samples (Room          *room,
              gconstpointer  data)
{
  for (int version = 1; version <= STEAD_SCHEMA_VERSION; version++)
    {
      g_autofree char *name = g_strdup_printf ("version-%d.steading", version);
      g_autofree char *sample = g_test_build_filename (G_TEST_DIST, "fixtures", name, NULL);
      g_autofree char *path = g_build_filename (room->folder, name, NULL);
      g_autoptr(SteadStore) store = NULL;
      g_autoptr(GPtrArray) found = NULL;
      g_autoptr(GError) error = NULL;
      g_autofree char *bytes = NULL;
      gsize length;

      g_assert_true (g_file_get_contents (sample, &bytes, &length, &error));
      g_assert_true (g_file_set_contents (path, bytes, (gssize) length, &error));
      store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);
      g_assert_no_error (error);
      g_assert_cmpint (fixture_number (store, "PRAGMA user_version"), ==, STEAD_SCHEMA_VERSION);
      g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM person"), ==, 2);
      g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM batch_entry"), ==, 20);
      g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM receipt WHERE seal_no = 1"), ==, 1);
      g_assert_cmpint (fixture_number (store, "SELECT sum (cost_cents) FROM receipt_line"), ==, 4598);
      if (version == STEAD_SCHEMA_VERSION)
        g_assert_true (stead_store_undo (store, &error));
      g_clear_object (&store);
      found = stead_store_verify (path, NULL, &error);
      g_assert_no_error (error);
      g_assert_cmpuint (found->len, ==, 0);
    }
}

#define ADD(name, test) g_test_add ("/store/migrate/" name, Room, NULL, set_up, test, tear_down)

/* What a schema looks like when it is laid out by its steps alone. */
static char *
sum_of_steps (int version)
{
  static const char sql[] = "SELECT type, name, tbl_name, coalesce (sql, '') FROM sqlite_schema"
                            " ORDER BY type, name, tbl_name, sql";
  g_autoptr(GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);
  g_autoptr(sqlite3) db = NULL;
  g_autoptr(sqlite3_stmt) stmt = NULL;

  g_assert_cmpint (sqlite3_open (":memory:", &db), ==, SQLITE_OK);
  for (int i = 0; i < version; i++)
    g_assert_cmpint (sqlite3_exec (db, stead_schema.steps[i], NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL), ==, SQLITE_OK);
  while (sqlite3_step (stmt) == SQLITE_ROW)
    for (int i = 0; i < 4; i++)
      {
        g_checksum_update (sum, sqlite3_column_text (stmt, i), -1);
        g_checksum_update (sum, (const guchar *) "\n", 1);
      }
  return g_strdup (g_checksum_get_string (sum));
}

/* Opening goes by these sums; a released step that was edited is found here too. */
static void
test_sums (void)
{
  for (int version = 1; version <= STEAD_SCHEMA_VERSION; version++)
    {
      g_autofree char *sum = sum_of_steps (version);

      g_assert_cmpstr (stead_schema.sums[version - 1], ==, sum);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/migrate/sums", test_sums);
  ADD ("two-steps", test_two_steps);
  ADD ("opened-again", test_opened_again);
  ADD ("copy-is-never-written-over", test_copy_is_never_written_over);
  ADD ("broken-rule", test_broken_rule);
  ADD ("orphans", test_orphans);
  ADD ("nonsense", test_nonsense);
  ADD ("in-the-way", test_in_the_way);
  ADD ("under-our-feet", test_under_our_feet);
  ADD ("read-only", test_read_only);
  ADD ("verify", test_verify);
  ADD ("samples", test_samples);
  return g_test_run ();
}
