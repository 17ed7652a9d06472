/* test-hostile.c - farms that somebody made to do harm: no code of the file is run,
 * nothing hangs, the file stays as it is, and what can be read is rescued.
 *
 * Each connection of this program has a function probe(), which counts its calls and
 * which the files call wherever SQL can stand.  It is never called.
 */
#define SQLITE_ENABLE_SESSION 1
#define SQLITE_ENABLE_PREUPDATE_HOOK 1
#include "config.h"

#include <glib/gstdio.h>
#include <sqlite3.h>
#include <string.h>
#include <unistd.h>

#include "fault-acts.h"
#include "repo-fixture.h"
#include "store/stead-rescue.h"
#include "store/stead-schema.h"

#define PAGE 4096
#define HEADER 100
#define N_ENTRIES 1200

static int n_calls;
static struct { double unchecked, check, open, read, verify, rescue; } worst;

static void
probe_cb (sqlite3_context  *context,
          int               n,
          sqlite3_value   **values)
{
  n_calls++;
  sqlite3_result_int (context, 1);
}

static int
give_probe (sqlite3                     *db,
            char                       **error,
            const sqlite3_api_routines  *api)
{
  return sqlite3_create_function_v2 (db, "probe", -1, SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_INNOCUOUS,
                                     NULL, probe_cb, NULL, NULL, NULL);
}

/* --- the farms ----------------------------------------------------------------- */

typedef struct
{
  char   *folder, *path, *to;
  char   *bytes;            /* of the sound farm */
  gsize   length;
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
  g_clear_object (&store);
  g_assert_true (g_file_get_contents (room->path, &room->bytes, &room->length, NULL));
}

static void
tear_down (Room          *room,
           gconstpointer  data)
{
  g_free (room->path);
  g_free (room->to);
  g_free (room->bytes);
  fixture_remove (room->folder);
}

/* SQL from outside our program, on the sound farm. */
static void
make_by_sql (Room       *room,
             const char *sql)
{
  sqlite3 *db = NULL;
  char *message = NULL;

  g_assert_true (g_file_set_contents (room->path, room->bytes, (gssize) room->length, NULL));
  g_assert_cmpint (sqlite3_open (room->path, &db), ==, SQLITE_OK);
  sqlite3_exec (db, "PRAGMA synchronous = OFF", NULL, NULL, NULL);
  sqlite3_exec (db, sql, NULL, NULL, &message);
  g_assert_cmpstr (message, ==, NULL);
  sqlite3_close (db);
}

/* --- looking at them ----------------------------------------------------------- */

typedef struct
{
  gboolean opened, found;
  int      n_rows;          /* that were rescued; -1: nothing */
} Seen;

/* As the window does it with a large farm: looked at while a worker checks it. */
static void
look_unchecked (const char *path)
{
  clock_t start = clock ();
  g_autoptr(SteadStore) store = stead_store_open (path, STEAD_STORE_OPEN_DEFER_CHECK, NULL);

  if (store != NULL)
    {
      fault_read_all (store);
      g_assert_false (stead_store_begin (store, "eggs", NULL));
    }
  fault_took ("a look before the check", start, &worst.unchecked);
  start = clock ();
  if (store != NULL && !stead_store_check_file (path, NULL, NULL))
    g_test_message ("the check found it");
  fault_took ("the check", start, &worst.check);
}

static gboolean
look (const char *path)
{
  g_autoptr(GError) error = NULL;
  clock_t start = clock ();
  g_autoptr(SteadStore) store = stead_store_open (path, STEAD_STORE_OPEN_READ_ONLY, &error);

  fault_took ("opening", start, &worst.open);
  if (store == NULL)
    {
      g_assert_true (error->domain == STEAD_STORE_ERROR);
      g_test_message ("%s", error->message);
      return FALSE;
    }
  start = clock ();
  fault_read_all (store);
  fault_took ("reading", start, &worst.read);
  return TRUE;
}

static gboolean
verify (const char *path)
{
  g_autoptr(GError) error = NULL;
  clock_t start = clock ();
  g_autoptr(GPtrArray) found = stead_store_verify (path, NULL, &error);

  fault_took ("--verify", start, &worst.verify);
  g_assert_true (found != NULL || error->domain == STEAD_STORE_ERROR);
  return found == NULL || found->len > 0;
}

static int
rescue (Room *room)
{
  g_autoptr(GError) error = NULL;
  clock_t start = clock ();
  g_autoptr(SteadRescue) told = stead_rescue_run (room->path, room->to, NULL, &error);

  fault_took ("the rescue", start, &worst.rescue);
  g_assert_true (told != NULL || error->domain == STEAD_STORE_ERROR);
  if (told == NULL)
    return -1;
  g_unlink (room->to);
  return (int) told->n_rows;
}

static Seen
look_at (Room *room)
{
  g_autofree char *before = fixture_sum (room->path);
  g_autofree char *after = NULL;
  Seen seen;

  n_calls = 0;
  look_unchecked (room->path);
  seen.opened = look (room->path);
  seen.found = verify (room->path);
  seen.n_rows = rescue (room);
  after = fixture_sum (room->path);
  g_assert_cmpstr (after, ==, before);
  g_assert_cmpint (n_calls, ==, 0);
  if (!seen.opened)
    g_assert_true (seen.found);
  g_test_message ("%s; %d rows rescued", seen.opened ? "opened" : "refused", seen.n_rows);
  return seen;
}

/* --- code in the file ------------------------------------------------------------- */

#define WRITE "PRAGMA writable_schema = ON; "
/* The CREATE TABLE of one of our own tables with something more in it. */
#define PUT(table, more) WRITE "UPDATE sqlite_schema SET sql = substr (sql, 1, instr (sql, ') STRICT') - 1)" \
                         " || ', " more ") STRICT' WHERE name = '" table "'"

static void
test_code (Room          *room,
           gconstpointer  data)
{
  static const char * const files[] = {
    "CREATE TRIGGER extra AFTER INSERT ON person BEGIN SELECT probe (); END",
    "CREATE TRIGGER extra BEFORE UPDATE ON farm BEGIN SELECT probe (); END",
    "CREATE VIEW extra AS SELECT probe () FROM person",
    "CREATE VIEW extra AS SELECT 1 AS a; CREATE TRIGGER more INSTEAD OF INSERT ON extra BEGIN SELECT probe (); END",
    "CREATE VIEW extra AS WITH RECURSIVE n (i) AS (SELECT probe () UNION ALL SELECT i + 1 FROM n) SELECT i FROM n",
    "CREATE TABLE extra (x CHECK (probe (x))); INSERT INTO extra VALUES (1)",
    "CREATE TABLE extra (x, y AS (probe (x)) NOT NULL); INSERT INTO extra VALUES (1)",
    "CREATE TABLE extra (x INTEGER, y INTEGER AS (probe (x)) STORED) STRICT; INSERT INTO extra VALUES (1)",
    "CREATE TABLE extra (x DEFAULT (probe ()), y); INSERT INTO extra (y) VALUES (1)",
    "CREATE TABLE extra (x); INSERT INTO extra VALUES (1); CREATE INDEX more ON extra (probe (x)) WHERE probe (x) = 1",
    "CREATE INDEX extra ON person (probe (name))",
    "CREATE TABLE extra (x CHECK (x GLOB '*a*a*a*a*a*a*a*a*a*a*b')); PRAGMA ignore_check_constraints = ON;"
      "INSERT INTO extra VALUES (replace (hex (zeroblob (50000)), '0', 'a'))",
    "CREATE TABLE extra (x CHECK (length (hex (zeroblob (100000000))) > 1)); PRAGMA ignore_check_constraints = ON;"
      "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 100) INSERT INTO extra SELECT i FROM n",
    PUT ("person", "CHECK (probe (name))"),
    PUT ("batch_entry", "CHECK (probe (day))"),
    PUT ("person", "extra INTEGER AS (probe (name)) VIRTUAL NOT NULL"),
    WRITE "INSERT INTO sqlite_schema VALUES ('trigger', 'extra', 'person', 0,"
      " 'CREATE TRIGGER extra AFTER UPDATE ON person BEGIN SELECT probe (); END')",
    WRITE "UPDATE sqlite_schema SET type = 'view', rootpage = 0, sql = 'CREATE VIEW person AS SELECT probe () AS id,"
      " ''Ada'' AS name, ''student'' AS role' WHERE name = 'person'",
    WRITE "UPDATE sqlite_schema SET type = 'view', rootpage = 0, sql = 'CREATE VIEW farm AS WITH RECURSIVE n (id) AS"
      " (SELECT probe () UNION ALL SELECT id + 1 FROM n) SELECT id FROM n' WHERE name = 'farm'",
    WRITE "UPDATE sqlite_schema SET sql = replace (sql, 'BEGIN', 'BEGIN SELECT probe ();') WHERE type = 'trigger'",
    WRITE "UPDATE sqlite_schema SET sql = 'CREATE VIRTUAL TABLE extra USING dbstat (main)', type = 'table', rootpage = 0"
      " WHERE name = 'person'",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (files); i++)
    {
      Seen seen;

      g_test_message ("%s", files[i]);
      make_by_sql (room, files[i]);
      seen = look_at (room);
      g_assert_false (seen.opened);
      g_assert_cmpint (seen.n_rows, >, N_ENTRIES / 2);
    }
}

/* --- tricks with the schema --------------------------------------------------------- */

static void
test_schema (Room          *room,
             gconstpointer  data)
{
  static const char * const files[] = {
    WRITE "UPDATE sqlite_schema SET rootpage = (SELECT rootpage FROM sqlite_schema WHERE name = 'batch_entry')"
      " WHERE name IN ('movement', 'person', 'price')",
    WRITE "UPDATE sqlite_schema SET rootpage = (SELECT rootpage FROM sqlite_schema WHERE name = 'batch_entry')"
      " WHERE type = 'index'",
    WRITE "UPDATE sqlite_schema SET rootpage = 1 WHERE name = 'person'",
    WRITE "UPDATE sqlite_schema SET rootpage = 0 WHERE name = 'person'",
    WRITE "UPDATE sqlite_schema SET rootpage = -7 WHERE name = 'person'",
    WRITE "UPDATE sqlite_schema SET rootpage = 2147483647 WHERE name = 'person'",
    WRITE "UPDATE sqlite_schema SET rootpage = 'seven' WHERE name = 'person'",
    WRITE "UPDATE sqlite_schema SET sql = NULL WHERE name = 'person'",
    WRITE "UPDATE sqlite_schema SET name = 'farm' WHERE name = 'person'",
    WRITE "UPDATE sqlite_schema SET sql = 'CREATE TABLE person AS nonsense' WHERE name = 'person'",
    WRITE "UPDATE sqlite_schema SET sql = x'00ff00ff' WHERE name = 'person'",
    WRITE "UPDATE sqlite_schema SET sql = sql || ' -- ' || hex (zeroblob (20000000)) WHERE name = 'person'",
    WRITE "INSERT INTO sqlite_schema SELECT * FROM sqlite_schema",
    WRITE "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 100000) INSERT INTO sqlite_schema"
      " SELECT 'view', 'v' || i, 'v' || i, 0, 'CREATE VIEW v' || i || ' AS SELECT * FROM v' || (i - 1) FROM n",
    WRITE "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 30000) INSERT INTO sqlite_schema"
      " SELECT 'table', 't' || i, 't' || i, 2, 'CREATE TABLE t' || i || ' (x)' FROM n",
    "CREATE TABLE extra (x); ANALYZE; UPDATE sqlite_stat1 SET stat = '1 1 1 1 1 1'",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_test_message ("%.200s", files[i]);
      make_by_sql (room, files[i]);
      g_assert_false (look_at (room).opened);
    }
}

/* --- values that no farm holds -------------------------------------------------------- */

/* The tables lose their types, the values go in, and they get them back. */
static void
make_by_values (Room       *room,
                const char *sql)
{
  sqlite3 *db = NULL;
  char *message = NULL;

  /* Without STRICT the types are only wishes. */
  make_by_sql (room, WRITE "UPDATE sqlite_schema SET sql = replace (sql, ') STRICT', ')') WHERE type = 'table'");
  g_assert_cmpint (sqlite3_open (room->path, &db), ==, SQLITE_OK);
  sqlite3_db_config (db, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, NULL);
  sqlite3_exec (db, "PRAGMA ignore_check_constraints = ON; PRAGMA synchronous = OFF", NULL, NULL, NULL);
  sqlite3_exec (db, sql, NULL, NULL, &message);
  g_assert_cmpstr (message, ==, NULL);
  sqlite3_exec (db, WRITE, NULL, NULL, NULL);
  sqlite3_exec (db, "UPDATE sqlite_schema SET sql = sql || ' STRICT' WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
                    " AND sql NOT LIKE '%WITHOUT ROWID';"
                    "UPDATE sqlite_schema SET sql = replace (sql, '), WITHOUT ROWID', ') STRICT, WITHOUT ROWID')"
                    " WHERE type = 'table'", NULL, NULL, &message);
  g_assert_cmpstr (message, ==, NULL);
  sqlite3_close (db);
}

static void
test_values (Room          *room,
             gconstpointer  data)
{
  static const char * const files[] = {
    "UPDATE batch_entry SET eggs = 'twenty', day = x'00ff' WHERE id % 3 = 0",
    "UPDATE batch_entry SET eggs = 1e308, feed_kg = -9e999",
    "UPDATE movement SET cost_cents = 9223372036854775807, quantity_base = 'much'",
    "UPDATE lot SET code = x'80808080', day = -9223372036854775808",
    "UPDATE person SET name = '', role = 7 WHERE id = 1",
    "UPDATE farm SET name = '', units = 'ells', currency = x'00', school_month = 99",
    "UPDATE step SET changeset = zeroblob (30000000) WHERE id = (SELECT max (id) FROM step)",
    "UPDATE step SET changeset = randomblob (100000)",
    "UPDATE step SET changeset = x'54ffffffffffffffffff7f'",
    "UPDATE step SET name = hex (zeroblob (4000000)), changeset = 'text'",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_test_message ("%s", files[i]);
      make_by_values (room, files[i]);
      g_assert_true (look_at (room).found);
    }
  /* Odd, and nothing that the tables forbid. */
  make_by_values (room, "UPDATE batch_entry SET note = hex (zeroblob (8000000)) WHERE id = 7;"
                        "UPDATE batch_entry SET day = 9223372036854775807 WHERE id % 5 = 0");
  g_assert_true (look_at (room).opened);
}

/* --- trees without end ------------------------------------------------------------------- */

static void
put (guint8  *at,
     guint    n_bytes,
     guint64  value)
{
  for (guint i = 0; i < n_bytes; i++)
    at[i] = (guint8) (value >> (8 * (n_bytes - 1 - i)));
}

/* An inner page of a table, each of whose children is @child: a branch over and over. */
static void
put_inner (guint8  *page,
           gsize    head,      /* where the head of the page stands: after the file's header, on page 1 */
           gint64   child,
           int      n_cells)
{
  memset (page + head, 0, PAGE - head);
  page[head] = 5;
  put (page + head + 3, 2, (guint64) n_cells);
  put (page + head + 5, 2, (guint64) (PAGE - 5 * n_cells));
  put (page + head + 8, 4, (guint64) child);
  for (int i = 0; i < n_cells; i++)
    {
      gsize at = (gsize) (PAGE - 5 * (i + 1));

      put (page + at, 4, (guint64) child);
      page[at + 4] = (guint8) (i + 1);
      put (page + head + 12 + 2 * (gsize) i, 2, at);
    }
}

/* The tree at @root gets @depth floors of pages, each with one page that stands for
 * @n_cells: @n_cells to the power of @depth rows. */
static void
make_tree (Room   *room,
           gint64  root,
           gint64  leaf,
           int     depth,
           int     n_cells)
{
  gsize length = room->length + (gsize) depth * PAGE;
  g_autofree guint8 *bytes = g_malloc0 (length);
  gint64 page = (gint64) (room->length / PAGE) + 1;
  gint64 child = leaf;

  memcpy (bytes, room->bytes, room->length);
  if (leaf == root)   /* what stood there goes to a page of its own */
    {
      child = page++;
      memcpy (bytes + (child - 1) * PAGE, bytes + (root - 1) * PAGE, PAGE);
    }
  for (int i = 1; i < depth; i++, page++)
    {
      put_inner (bytes + (page - 1) * PAGE, 0, child, n_cells);
      child = page;
    }
  put_inner (bytes + (root - 1) * PAGE, root == 1 ? HEADER : 0, child, n_cells);
  put (bytes + 28, 4, length / PAGE);
  memcpy (bytes + 92, bytes + 24, 4);
  g_assert_true (g_file_set_contents (room->path, (const char *) bytes, (gssize) length, NULL));
}

static gint64
number (Room       *room,
        const char *sql)
{
  g_autoptr(SteadStore) store = NULL;

  g_assert_true (g_file_set_contents (room->path, room->bytes, (gssize) room->length, NULL));
  store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, NULL);
  g_assert_nonnull (store);
  return fixture_number (store, sql);
}

static void
test_trees (Room          *room,
            gconstpointer  data)
{
  gint64 root = number (room, "SELECT rootpage FROM sqlite_schema WHERE name = 'batch_entry'");
  gint64 leaf = number (room, "SELECT pageno FROM dbstat WHERE name = 'batch_entry' AND pagetype = 'leaf'");
  gint64 movements = number (room, "SELECT rootpage FROM sqlite_schema WHERE name = 'movement'");
  gint64 schema = number (room, "SELECT pageno FROM dbstat WHERE name = 'sqlite_schema' AND pagetype = 'leaf'");

  for (int depth = 1; depth <= 15; depth += 14)
    for (int n_cells = 2; n_cells <= 200; n_cells += 198)
      {
        g_test_message ("%d floors of %d", depth, n_cells);
        make_tree (room, root, leaf, depth, n_cells);
        g_assert_true (look_at (room).found);
        make_tree (room, movements, movements, depth + 1, n_cells);
        g_assert_true (look_at (room).found);
        make_tree (room, 1, schema, depth, n_cells);
        g_assert_false (look_at (room).opened);
      }
}

/* A farm of the first version is brought up to date when it is opened: not this one. */
static void
test_older (Room          *room,
            gconstpointer  data)
{
  g_autofree char *sample = g_test_build_filename (G_TEST_DIST, "fixtures", "version-1.steading", NULL);
  g_autoptr(GError) error = NULL;
  gint64 root = 0;
  sqlite3 *db = NULL;
  sqlite3_stmt *stmt = NULL;
  clock_t start;

  g_clear_pointer (&room->bytes, g_free);
  g_assert_true (g_file_get_contents (sample, &room->bytes, &room->length, NULL));
  g_assert_cmpint (sqlite3_open_v2 (sample, &db, SQLITE_OPEN_READONLY, NULL), ==, SQLITE_OK);
  sqlite3_prepare_v2 (db, "SELECT rootpage FROM sqlite_schema WHERE name = 'movement'", -1, &stmt, NULL);
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_ROW);
  root = sqlite3_column_int64 (stmt, 0);
  sqlite3_finalize (stmt);
  sqlite3_close (db);
  make_tree (room, root, root, 16, 200);
  g_assert_true (look_at (room).found);
  start = clock ();
  g_assert_null (stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_DAMAGED);
  fault_took ("opening an older farm", start, &worst.open);
}

/* Rows that say that they are as long as the whole file, a hundred over, each in the
 * same pages. */
static void
test_circles (Room          *room,
              gconstpointer  data)
{
  gint64 leaf = number (room, "SELECT pageno FROM dbstat WHERE name = 'batch_entry' AND pagetype = 'leaf'");
  g_autofree guint8 *bytes = g_memdup2 (room->bytes, room->length);
  guint8 *page = bytes + (leaf - 1) * PAGE;
  gint64 spare = (gint64) (room->length / PAGE);
  const gsize payload = 30000000, kept = 489;    /* 489: what of a long row stays on its page, at the least */

  memset (bytes + (spare - 1) * PAGE, 0, PAGE);
  put (bytes + (spare - 1) * PAGE, 4, (guint64) spare);   /* the next page is the page itself */
  memset (page, 0, PAGE);
  page[0] = 13;
  put (page + 3, 2, 6);
  for (gsize i = 0; i < 6; i++)
    {
      gsize at = PAGE - (i + 1) * 600;
      guint8 *cell = page + at;

      cell[0] = 0x80 | (guint8) (payload >> 21);
      cell[1] = 0x80 | (guint8) (payload >> 14);
      cell[2] = 0x80 | (guint8) (payload >> 7);
      cell[3] = payload & 0x7f;
      cell[4] = (guint8) (i + 1);
      memcpy (cell + 5, "\x08\x00\x01\x01\x8e\xcf\xd5\x00", 8);
      put (cell + 5 + kept, 4, (guint64) spare);
      put (page + 8 + 2 * i, 2, at);
    }
  put (page + 5, 2, PAGE - 6 * 600);
  g_assert_true (g_file_set_contents (room->path, (const char *) bytes, (gssize) room->length, NULL));
  g_assert_true (look_at (room).found);
}

int
main (int    argc,
      char **argv)
{
  int status;

  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", TRUE);
  sqlite3_auto_extension ((void (*) (void)) give_probe);
  g_test_init (&argc, &argv, NULL);
#define ADD(name, test) g_test_add ("/fault/hostile/" name, Room, NULL, set_up, test, tear_down)
  ADD ("code", test_code);
  ADD ("schema", test_schema);
  ADD ("values", test_values);
  ADD ("trees", test_trees);
  ADD ("older", test_older);
  ADD ("circles", test_circles);
  status = g_test_run ();
  g_print ("# slowest: a look before the check %.2f s, the check %.2f s, opening %.2f s, reading %.2f s,"
           " --verify %.2f s, a rescue %.2f s\n",
           worst.unchecked, worst.check, worst.open, worst.read, worst.verify, worst.rescue);
  return status;
}
