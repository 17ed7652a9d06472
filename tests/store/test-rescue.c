/* test-rescue.c - what can be read of a damaged farm comes into a new one, and
 * nothing of the file's own schema is run. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "store-fixture.h"
#include "store/stead-rescue.h"
#include "store/stead-schema.h"

#define PAGE 4096
#define N_ENTRIES 1200

typedef struct
{
  char *folder;
  char *path;
  char *to;
} Room;

static void
set_up (Room          *room,
        gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;

  room->folder = fixture_folder ();
  room->path = g_build_filename (room->folder, "farm.steading", NULL);
  room->to = g_build_filename (room->folder, "rescued.steading", NULL);
  store = stead_store_create (room->path, "Farm", &error);
  g_assert_no_error (error);
  fixture_fill (store);
  fixture_act (store, "many", "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 1200)"
                              " INSERT INTO batch_entry (batch_id, day, eggs, note)"
                              " SELECT 1, 20001 + i, 20, 'A day like any other' FROM n");
}

static void
tear_down (Room          *room,
           gconstpointer  data)
{
  g_free (room->path);
  g_free (room->to);
  fixture_remove (room->folder);
}

/* SQL from outside our program. */
static void
run_outside (const char *path,
             const char *sql)
{
  sqlite3 *db = NULL;
  char *message = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  sqlite3_exec (db, sql, NULL, NULL, &message);
  g_assert_cmpstr (message, ==, NULL);
  sqlite3_close (db);
}

static gint64
number (const char *path,
        const char *sql)
{
  g_autoptr(SteadStore) store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, NULL);

  g_assert_nonnull (store);
  return fixture_number (store, sql);
}

static char *
dump_of (const char *path)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);

  g_assert_no_error (error);
  return fixture_dump (store);
}

/* Fills pages of the file, counted from 1, with @byte. */
static void
spoil (const char *path,
       gint64      page,
       gint64      n,
       int         byte)
{
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_assert_cmpint ((page - 1 + n) * PAGE, <=, length);
  memset (bytes + (page - 1) * PAGE, byte, (gsize) n * PAGE);
  g_assert_true (g_file_set_contents (path, bytes, (gssize) length, NULL));
}

/* The n-th leaf of a table, from 0. */
static gint64
leaf_of (const char *path,
         const char *table,
         int         n)
{
  g_autofree char *sql = g_strdup_printf ("SELECT pageno FROM dbstat WHERE name = '%s' AND pagetype = 'leaf'"
                                          " ORDER BY path LIMIT 1 OFFSET %d", table, n);

  return number (path, sql);
}

/* Rescues; the damaged file stays as it is, and the new one is a whole farm. */
static SteadRescue *
rescue (Room *room)
{
  g_autofree char *before = fixture_sum (room->path);
  g_autofree char *after = NULL;
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) found = NULL;
  SteadRescue *told = stead_rescue_run (room->path, room->to, NULL, &error);

  g_assert_no_error (error);
  after = fixture_sum (room->path);
  g_assert_cmpstr (after, ==, before);
  found = stead_store_verify (room->to, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (found->len, ==, told->faults->len);
  for (guint i = 0; i < told->lost->len; i++)
    g_test_message ("%s", (char *) told->lost->pdata[i]);
  for (guint i = 0; i < told->faults->len; i++)
    g_test_message ("%s", (char *) told->faults->pdata[i]);
  return told;
}

static void
assert_only_files (Room *room,
                   int   n)
{
  g_autoptr(GDir) dir = g_dir_open (room->folder, 0, NULL);

  while (g_dir_read_name (dir) != NULL)
    n--;
  g_assert_cmpint (n, ==, 0);
}

static void
assert_all_there (Room        *room,
                  SteadRescue *told,
                  const char  *dump)
{
  g_autofree char *rescued = dump_of (room->to);

  g_assert_cmpuint (told->lost->len, ==, 0);
  g_assert_cmpuint (told->faults->len, ==, 0);
  g_assert_cmpuint (told->n_refused + told->n_orphans, ==, 0);
  g_assert_cmpstr (rescued, ==, dump);
}

static void
test_sound (Room          *room,
            gconstpointer  data)
{
  g_autofree char *dump = dump_of (room->path);
  g_autoptr(SteadRescue) told = rescue (room);

  assert_all_there (room, told, dump);
  g_assert_cmpuint (told->n_rows, >, N_ENTRIES);
  assert_only_files (room, 2);
}

/* A farm of each version that there was: brought up to date by the rescue as by opening. */
static void
test_samples (Room          *room,
              gconstpointer  data)
{
  for (int version = 1; version <= STEAD_SCHEMA_VERSION; version++)
    {
      g_autofree char *name = g_strdup_printf ("version-%d.steading", version);
      g_autofree char *sample = g_test_build_filename (G_TEST_DIST, "fixtures", name, NULL);
      g_autofree char *bytes = NULL;
      g_autofree char *opened = NULL;
      g_autoptr(SteadRescue) told = NULL;
      gsize length;

      g_test_message ("version %d", version);
      g_assert_true (g_file_get_contents (sample, &bytes, &length, NULL));
      g_assert_true (g_file_set_contents (room->path, bytes, (gssize) length, NULL));
      told = rescue (room);
      opened = dump_of (room->path);
      assert_all_there (room, told, opened);
      g_unlink (room->to);
    }
}

/* A leaf in the middle of the log: the days on both sides of it are there. */
static void
test_lost_leaf (Room          *room,
                gconstpointer  data)
{
  gint64 page = leaf_of (room->path, "batch_entry", 5);
  g_autoptr(SteadRescue) told = NULL;
  gint64 n;

  spoil (room->path, page, 1, 0x55);
  told = rescue (room);
  g_assert_cmpuint (told->lost->len, ==, 1);
  g_assert_nonnull (strstr (told->lost->pdata[0], "batch_entry"));
  n = number (room->to, "SELECT count(*) FROM batch_entry");
  g_assert_cmpint (n, >, N_ENTRIES - 200);
  g_assert_cmpint (n, <, N_ENTRIES);
  g_assert_cmpint (number (room->to, "SELECT count(*) FROM batch_entry WHERE id IN (1, 2, 1201)"), ==, 3);
}

/* Two leaves that are not neighbours: what stands between them is there, too. */
static void
test_two_lost_leaves (Room          *room,
                      gconstpointer  data)
{
  gint64 one = leaf_of (room->path, "batch_entry", 4);
  gint64 two = leaf_of (room->path, "batch_entry", 8);
  g_autoptr(SteadRescue) told = NULL;

  spoil (room->path, one, 1, 0);
  spoil (room->path, two, 1, 0);
  told = rescue (room);
  g_assert_cmpuint (told->lost->len, ==, 1);
  g_assert_cmpint (number (room->to, "SELECT count(*) FROM batch_entry"), >, N_ENTRIES - 300);
}

/* Without its first page the file does not even say what it is. */
static void
test_lost_first_page (Room          *room,
                      gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  spoil (room->path, 1, 1, 0);
  g_assert_null (stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, &error));
  g_assert_true (stead_rescue_may_help (error));
  g_clear_error (&error);
  /* Nothing says that it was a farm. */
  g_assert_null (stead_rescue_run (room->path, room->to, NULL, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_A_FARM);
  g_assert_false (g_file_test (room->to, G_FILE_TEST_EXISTS));
  assert_only_files (room, 1);
}

/* The list of the tables; the mark of a farm stays. */
static void
spoil_schema (const char *path)
{
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  memset (bytes + 100, 0, PAGE - 100);
  g_assert_true (g_file_set_contents (path, bytes, (gssize) length, NULL));
}

/* The tables stand where a new farm has them. */
static void
test_lost_schema (Room          *room,
                  gconstpointer  data)
{
  g_autofree char *dump = dump_of (room->path);
  g_autoptr(SteadRescue) told = NULL;

  spoil_schema (room->path);
  told = rescue (room);
  assert_all_there (room, told, dump);
}

/* A farm that was brought up to date has them elsewhere: its dated copy tells. */
static void
test_lost_schema_with_copy (Room          *room,
                            gconstpointer  data)
{
  g_autofree char *sample = g_test_build_filename (G_TEST_DIST, "fixtures", "version-1.steading", NULL);
  g_autofree char *bytes = NULL;
  g_autofree char *dump = NULL;
  g_autoptr(SteadStore) store = NULL;
  g_autoptr(SteadRescue) told = NULL;
  g_autoptr(GPtrArray) copies = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (sample, &bytes, &length, NULL));
  g_assert_true (g_file_set_contents (room->path, bytes, (gssize) length, NULL));
  store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, NULL);
  stead_store_set_today (store, stead_day_new (2026, 3, 4));
  fixture_act (store, "Straw bale", "INSERT INTO item (name, kind, unit) VALUES ('Bale', 'bedding', 'kg')");
  dump = fixture_dump (store);
  g_clear_object (&store);
  copies = stead_store_list_backups (room->path);
  g_assert_cmpuint (copies->len, >, 0);

  spoil_schema (room->path);
  told = rescue (room);
  assert_all_there (room, told, dump);
}

static void
test_cut_off (Room          *room,
              gconstpointer  data)
{
  gint64 page = leaf_of (room->path, "batch_entry", 10);
  g_autofree char *bytes = NULL;
  g_autoptr(SteadRescue) told = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (room->path, &bytes, &length, NULL));
  g_assert_true (g_file_set_contents (room->path, bytes, (gssize) page * PAGE - 1000, NULL));
  told = rescue (room);
  g_assert_cmpuint (told->lost->len, >, 0);
  g_assert_cmpint (number (room->to, "SELECT count(*) FROM batch_entry"), >, 200);
}

/* What others put into the file: none of it comes along, and none of it runs. */
static void
test_hostile (Room          *room,
              gconstpointer  data)
{
  static const char * const extras[] = {
    "CREATE TRIGGER extra AFTER INSERT ON person BEGIN DELETE FROM movement; END",
    "CREATE VIEW extra AS WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT i FROM n",
    "CREATE TABLE extra (x, y AS (hex (zeroblob (100000000))))",
    "CREATE INDEX extra ON person (role) WHERE length (hex (zeroblob (1000000))) > 1",
    "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = 'CREATE TABLE farm AS nonsense' WHERE name = 'extra'",
    "PRAGMA writable_schema = ON; INSERT INTO sqlite_schema VALUES ('trigger', 'bad', 'person', 0, 'CREATE TRIGGER nonsense')",
    "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET rootpage = 100000 WHERE name = 'receipt_day'",
  };
  g_autofree char *dump = dump_of (room->path);
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (room->path, &bytes, &length, NULL));
  for (gsize i = 0; i < G_N_ELEMENTS (extras); i++)
    {
      g_autoptr(SteadRescue) told = NULL;

      g_test_message ("%s", extras[i]);
      g_assert_true (g_file_set_contents (room->path, bytes, (gssize) length, NULL));
      run_outside (room->path, extras[i]);
      told = rescue (room);
      assert_all_there (room, told, dump);
      g_unlink (room->to);
    }
}

/* A table that is not as we make it is not read: its defaults and checks would run. */
static void
test_foreign_table (Room          *room,
                    gconstpointer  data)
{
  g_autoptr(SteadRescue) told = NULL;

  run_outside (room->path, "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET type = 'view', rootpage = 0,"
                           " sql = 'CREATE VIEW price AS SELECT 1 AS id, 2 AS product_id' WHERE name = 'price'");
  g_assert_true (g_file_test (room->path, G_FILE_TEST_EXISTS));
  told = rescue (room);
  /* Where a price stands in a new farm holds prices still. */
  g_assert_cmpint (number (room->to, "SELECT count(*) FROM price"), ==, 1);
}

/* What names a row that is lost lets go of it, or is left out with it. */
static void
test_orphans (Room          *room,
              gconstpointer  data)
{
  g_autoptr(SteadRescue) told = NULL;

  run_outside (room->path, "PRAGMA foreign_keys = OFF; DELETE FROM person WHERE name = 'Ada';"
                           "DELETE FROM receipt WHERE id = 1");
  told = rescue (room);
  g_assert_cmpuint (told->faults->len, ==, 0);
  g_assert_cmpuint (told->n_orphans, >=, 3);      /* the receipt's line, its lot, its movements */
  g_assert_cmpint (number (room->to, "SELECT count(*) FROM batch_entry"), ==, N_ENTRIES + 1);
  g_assert_cmpint (number (room->to, "SELECT count(*) FROM batch_entry WHERE person_id IS NOT NULL"), ==, 0);
  g_assert_cmpint (number (room->to, "SELECT count(*) FROM lot"), ==, 0);
}

/* Values that no farm can hold are left out; what is no text is made one. */
static void
test_wrong_values (Room          *room,
                   gconstpointer  data)
{
  g_autoptr(SteadRescue) told = NULL;

  run_outside (room->path, "PRAGMA ignore_check_constraints = ON; UPDATE batch_entry SET eggs = -5 WHERE id = 7;"
                           "UPDATE batch_entry SET note = CAST (x'e4fe80' AS TEXT) WHERE id = 9");
  told = rescue (room);
  g_assert_cmpuint (told->n_refused, ==, 1);
  g_assert_cmpint (number (room->to, "SELECT count(*) FROM batch_entry WHERE id IN (7, 9)"), ==, 1);
  g_assert_cmpint (number (room->to, "SELECT hex (note) LIKE '%EFBFBD%' FROM batch_entry WHERE id = 9"), ==, 1);
}

/* A tree whose inner page names itself has no end. */
static void
test_circle (Room          *room,
             gconstpointer  data)
{
  gint64 root = number (room->path, "SELECT rootpage FROM sqlite_schema WHERE name = 'batch_entry'");
  g_autofree char *bytes = NULL;
  g_autoptr(SteadRescue) told = NULL;
  guint8 *page;
  gsize length;
  int n_cells;

  g_assert_true (g_file_get_contents (room->path, &bytes, &length, NULL));
  page = (guint8 *) bytes + (root - 1) * PAGE;
  g_assert_cmpint (page[0], ==, 5);
  n_cells = page[3] << 8 | page[4];
  for (int i = 3; i < n_cells; i++)   /* the child of each cell but the first: the page itself */
    {
      int cell = page[12 + 2 * i] << 8 | page[13 + 2 * i];

      memset (page + cell, 0, 4);
      page[cell + 3] = (guint8) root;
    }
  g_assert_cmpint (root, <, 256);
  g_assert_true (g_file_set_contents (room->path, bytes, (gssize) length, NULL));
  told = rescue (room);
  g_assert_cmpuint (told->lost->len, ==, 1);
  g_assert_cmpint (number (room->to, "SELECT count(*) FROM batch_entry"), >, 100);
}

/* A crash left a change half written: it is taken back in the new farm. */
static void
test_cut_off_change (Room          *room,
                     gconstpointer  data)
{
  g_autofree char *journal = g_strconcat (room->path, "-journal", NULL);
  g_autofree char *dump = dump_of (room->path);
  g_autofree char *farm_bytes = NULL;
  g_autofree char *journal_bytes = NULL;
  g_autoptr(SteadRescue) told = NULL;
  gsize farm_length, journal_length;
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (room->path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, "PRAGMA cache_size = 2; BEGIN; UPDATE batch_entry SET eggs = 1", NULL, NULL, NULL),
                   ==, SQLITE_OK);
  sqlite3_db_cacheflush (db);
  g_assert_true (g_file_get_contents (room->path, &farm_bytes, &farm_length, NULL));
  g_assert_true (g_file_get_contents (journal, &journal_bytes, &journal_length, NULL));
  sqlite3_close (db);
  g_assert_true (g_file_set_contents (room->path, farm_bytes, (gssize) farm_length, NULL));
  g_assert_true (g_file_set_contents (journal, journal_bytes, (gssize) journal_length, NULL));

  told = stead_rescue_run (room->path, room->to, NULL, NULL);
  g_assert_nonnull (told);
  assert_all_there (room, told, dump);
  g_assert_true (g_file_test (journal, G_FILE_TEST_EXISTS));   /* it is not ours to take away */
}

static void
test_lost_settings (Room          *room,
                    gconstpointer  data)
{
  g_autoptr(SteadRescue) told = NULL;

  run_outside (room->path, "PRAGMA foreign_keys = OFF; DELETE FROM farm");
  told = rescue (room);
  g_assert_cmpuint (told->lost->len, ==, 1);
  g_assert_cmpuint (told->faults->len, ==, 0);
  g_assert_cmpint (number (room->to, "SELECT count(*) FROM farm WHERE name = 'Rescued farm'"), ==, 1);
}

/* An id that was given once is not given again: it may stand on a jar. */
static void
test_sequence (Room          *room,
               gconstpointer  data)
{
  g_autoptr(SteadRescue) told = NULL;

  run_outside (room->path, "DELETE FROM batch_entry WHERE id = 1201");
  told = rescue (room);
  g_assert_cmpint (number (room->to, "SELECT seq FROM sqlite_sequence WHERE name = 'batch_entry'"), ==, 1201);
}

static void
assert_refused (Room       *room,
                const char *from,
                int         code)
{
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_rescue_run (from, room->to, NULL, &error));
  g_assert_error (error, STEAD_STORE_ERROR, code);
  g_assert_false (g_file_test (room->to, G_FILE_TEST_EXISTS));
}

static void
test_no_farm (Room          *room,
              gconstpointer  data)
{
  static const gsize sizes[] = { 0, 1, 99, 100, 4095, 4096, 20000 };
  g_autofree char *gone = g_build_filename (room->folder, "gone", NULL);
  g_autofree char *text = g_strnfill (20000, 'a');

  assert_refused (room, gone, STEAD_STORE_ERROR_NOT_FOUND);
  assert_refused (room, room->folder, STEAD_STORE_ERROR_NOT_FOUND);
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_assert_true (g_file_set_contents (room->path, text, (gssize) sizes[i], NULL));
      assert_refused (room, room->path, STEAD_STORE_ERROR_NOT_A_FARM);
    }
  g_unlink (room->path);
  run_outside (room->path, "CREATE TABLE notes (text); INSERT INTO notes VALUES ('a')");
  assert_refused (room, room->path, STEAD_STORE_ERROR_NOT_A_FARM);
  assert_only_files (room, 1);
}

static void
test_target (Room          *room,
             gconstpointer  data)
{
  g_autofree char *before = fixture_sum (room->path);
  g_autofree char *after = NULL;
  g_autoptr(GError) error = NULL;
  g_autoptr(GCancellable) cancellable = g_cancellable_new ();

  /* What is there is never written over. */
  g_assert_null (stead_rescue_run (room->path, room->path, NULL, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  after = fixture_sum (room->path);
  g_assert_cmpstr (after, ==, before);
  g_clear_error (&error);

  g_cancellable_cancel (cancellable);
  g_assert_null (stead_rescue_run (room->path, room->to, cancellable, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_CANCELLED);
  assert_only_files (room, 1);
}

#define ADD(name, test) g_test_add ("/store/rescue/" name, Room, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", TRUE);
  g_test_init (&argc, &argv, NULL);
  ADD ("sound", test_sound);
  ADD ("samples", test_samples);
  ADD ("lost-leaf", test_lost_leaf);
  ADD ("two-lost-leaves", test_two_lost_leaves);
  ADD ("lost-first-page", test_lost_first_page);
  ADD ("lost-schema", test_lost_schema);
  ADD ("lost-schema-with-copy", test_lost_schema_with_copy);
  ADD ("cut-off", test_cut_off);
  ADD ("hostile", test_hostile);
  ADD ("foreign-table", test_foreign_table);
  ADD ("orphans", test_orphans);
  ADD ("wrong-values", test_wrong_values);
  ADD ("circle", test_circle);
  ADD ("cut-off-change", test_cut_off_change);
  ADD ("lost-settings", test_lost_settings);
  ADD ("sequence", test_sequence);
  ADD ("no-farm", test_no_farm);
  ADD ("target", test_target);
  return g_test_run ();
}
