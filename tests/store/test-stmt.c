/* test-stmt.c - statements: kept, bound, read, and what a broken rule says. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "store-fixture.h"

static SteadStore *
new_farm (void)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_create_memory ("Test Farm", &error);

  g_assert_no_error (error);
  return store;
}

static void
test_kept (void)
{
  static const char sql[] = "SELECT ?1";
  g_autoptr(SteadStore) store = new_farm ();
  SteadStmt *first = stead_store_prepare (store, sql, NULL);

  sqlite3_bind_int (first, 1, 7);
  g_assert_cmpint (stead_store_step (store, first, NULL), ==, 1);
  g_assert_cmpint (sqlite3_column_int (first, 0), ==, 7);
  stead_stmt_release (first);
  {
    g_autoptr(SteadStmt) second = stead_store_prepare (store, sql, NULL);

    g_assert_true (second == first);
    g_assert_cmpint (stead_store_step (store, second, NULL), ==, 1);
    g_assert_cmpint (sqlite3_column_type (second, 0), ==, SQLITE_NULL);   /* what was bound is forgotten */
    g_assert_cmpint (stead_store_step (store, second, NULL), ==, 0);
  }
}

static void
test_in_use (void)
{
  static const char sql[] = "SELECT 1";

  if (g_test_subprocess ())
    {
      g_autoptr(SteadStore) store = new_farm ();
      SteadStmt *stmt = stead_store_prepare (store, sql, NULL);

      g_assert_cmpint (stead_store_step (store, stmt, NULL), ==, 1);
      g_assert_null (stead_store_prepare (store, sql, NULL));
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*sqlite3_stmt_busy*");
}

static void
test_nulls (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, "SELECT ?1, ?2, ?3, ?4, ?5", NULL);

  stead_stmt_bind_day (stmt, 1, STEAD_DAY_NONE);
  stead_stmt_bind_real (stmt, 2, NAN);
  stead_stmt_bind_id (stmt, 3, 0);
  stead_stmt_bind_text (stmt, 4, NULL);
  stead_stmt_bind_text (stmt, 5, "");
  g_assert_cmpint (stead_store_step (store, stmt, NULL), ==, 1);
  for (int i = 0; i < 5; i++)
    g_assert_cmpint (sqlite3_column_type (stmt, i), ==, SQLITE_NULL);
  g_assert_cmpint (stead_stmt_day (stmt, 0), ==, STEAD_DAY_NONE);
  g_assert_true (isnan (stead_stmt_real (stmt, 1)));
  g_assert_null (stead_stmt_text (stmt, 3));
}

/* A text that cannot be bound stops the statement; it never becomes no text. */
static void
test_too_long (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autoptr(GError) error = NULL;

  fixture_fill (store);
  sqlite3_limit (stead_store_get_db (store), SQLITE_LIMIT_LENGTH, 10000);
  g_assert_true (stead_store_begin (store, "note", &error));
  {
    g_autoptr(SteadStmt) stmt = stead_store_prepare (store, "UPDATE batch SET note = ?1", &error);
    g_autofree char *text = g_strnfill (20000, 'x');

    stead_stmt_bind_text (stmt, 1, text);
    g_assert_false (stead_store_run (store, stmt, &error));
    g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_IO);
  }
  stead_store_rollback (store);
}

static void
test_values (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, "SELECT ?1, ?2, ?3, ?4", NULL);
  g_autofree char *text = NULL;

  stead_stmt_bind_day (stmt, 1, -3);
  stead_stmt_bind_real (stmt, 2, 0.1);
  stead_stmt_bind_id (stmt, 3, G_GINT64_CONSTANT (5000000000));
  stead_stmt_bind_text (stmt, 4, "niño");
  g_assert_cmpint (stead_store_step (store, stmt, NULL), ==, 1);
  g_assert_cmpint (stead_stmt_day (stmt, 0), ==, -3);
  g_assert_cmpfloat (stead_stmt_real (stmt, 1), ==, 0.1);
  g_assert_cmpint (sqlite3_column_int64 (stmt, 2), ==, G_GINT64_CONSTANT (5000000000));
  text = stead_stmt_text (stmt, 3);
  g_assert_cmpstr (text, ==, "niño");
}

/* Bytes that are no text, in a farm from elsewhere, come out as text that can be shown. */
static void
test_no_letters (void)
{
  static const char * const broken[] = { "\xff\xfe eggs", "eggs \xf0\x9f\x90", "\xed\xa0\x80", "\xc3" };
  g_autoptr(SteadStore) store = new_farm ();
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, "SELECT ?1, ?2, ?3, ?4", NULL);

  for (int i = 0; i < 4; i++)
    stead_stmt_bind_text (stmt, i + 1, broken[i]);
  g_assert_cmpint (stead_store_step (store, stmt, NULL), ==, 1);
  for (int i = 0; i < 4; i++)
    {
      g_autofree char *text = stead_stmt_text (stmt, i);

      g_assert_true (g_utf8_validate (text, -1, NULL));
      g_assert_nonnull (strstr (text, "\357\277\275"));   /* U+FFFD: what could not be read is seen */
      g_assert_true ((strstr (broken[i], "eggs") != NULL) == (strstr (text, "eggs") != NULL));
    }
}

/* Rules of the file: each its own sentence, none in the words of SQL. */
static const struct
{
  const char *sql;
  int         code;
} broken[] = {
  { "INSERT INTO person (name, role) VALUES ('Ada', 'student')", STEAD_STORE_ERROR_INVALID },
  { "INSERT INTO person (name, role) VALUES ('Bo', 'king')", STEAD_STORE_ERROR_INVALID },
  { "INSERT INTO person (name) VALUES ('Bo')", STEAD_STORE_ERROR_INVALID },
  { "INSERT INTO person (id, name, role) VALUES (1, 'Bo', 'student')", STEAD_STORE_ERROR_INVALID },
  { "INSERT INTO place (name, kind, area_m2) VALUES ('Coop 2', 'coop', 'wide')", STEAD_STORE_ERROR_IO },
  { "DELETE FROM place", STEAD_STORE_ERROR_INVALID },
  { "UPDATE movement SET quantity_base = -40 WHERE kind = 'used'", STEAD_STORE_ERROR_INVALID },
  { "DELETE FROM movement WHERE kind = 'received'", STEAD_STORE_ERROR_INVALID },
  { "INSERT INTO lot (code, item_id, batch_id, day) VALUES ('F1', 1, 1, 20000)", STEAD_STORE_ERROR_INVALID },
  { "UPDATE receipt SET supplier = 'Mill'", STEAD_STORE_ERROR_SIGNED },
  { "DELETE FROM receipt", STEAD_STORE_ERROR_SIGNED },
  { "UPDATE receipt_line SET cost_cents = 1", STEAD_STORE_ERROR_SIGNED },
  { "DELETE FROM receipt_line", STEAD_STORE_ERROR_SIGNED },
  { "INSERT INTO receipt_line (receipt_id, item_id, quantity_base, cost_cents) VALUES (1, 1, 1, 1)",
    STEAD_STORE_ERROR_SIGNED },
};

static void
test_broken_rules (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  fixture_fill (store);
  fixture_act (store, "sign", "UPDATE receipt SET signed_by = 2, signed_on = 20002, seal_no = 1, seal = 'x'");
  before = fixture_dump (store);
  for (gsize i = 0; i < G_N_ELEMENTS (broken); i++)
    {
      g_autoptr(GError) error = NULL;

      g_test_message ("%s", broken[i].sql);
      g_assert_true (stead_store_begin (store, "break", NULL));
      {
        g_autoptr(SteadStmt) stmt = stead_store_prepare (store, broken[i].sql, &error);

        g_assert_no_error (error);
        g_assert_false (stead_store_run (store, stmt, &error));
      }
      g_assert_error (error, STEAD_STORE_ERROR, broken[i].code);
      g_assert_null (strstr (error->message, "constraint"));
      g_assert_true (g_str_has_suffix (error->message, "."));
      stead_store_rollback (store);
    }
  after = fixture_dump (store);
  g_assert_cmpstr (after, ==, before);
}

static void
assert_said (int         rc,
             int         code,
             const char *words)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autoptr(GError) error = NULL;

  stead_store_set_error (store, rc, &error);
  g_assert_error (error, STEAD_STORE_ERROR, code);
  g_assert_nonnull (strstr (error->message, words));
}

static void
test_results (void)
{
  assert_said (SQLITE_BUSY, STEAD_STORE_ERROR_BUSY, "another window");
  assert_said (SQLITE_BUSY_SNAPSHOT, STEAD_STORE_ERROR_BUSY, "another window");
  assert_said (SQLITE_FULL, STEAD_STORE_ERROR_FULL, "disk is full");
  assert_said (SQLITE_IOERR_WRITE, STEAD_STORE_ERROR_IO, "disk failed");
  assert_said (SQLITE_IOERR_NOMEM, STEAD_STORE_ERROR_IO, "memory");
  assert_said (SQLITE_NOMEM, STEAD_STORE_ERROR_IO, "memory");
  assert_said (SQLITE_READONLY, STEAD_STORE_ERROR_READ_ONLY, "cannot be written");
  assert_said (SQLITE_READONLY_DBMOVED, STEAD_STORE_ERROR_IO, "moved");
  assert_said (SQLITE_READONLY_ROLLBACK, STEAD_STORE_ERROR_READ_ONLY, "-journal");
  assert_said (SQLITE_CANTOPEN, STEAD_STORE_ERROR_READ_ONLY, "cannot be opened");
  assert_said (SQLITE_CORRUPT_VTAB, STEAD_STORE_ERROR_DAMAGED, "dated copies");
  assert_said (SQLITE_NOTADB, STEAD_STORE_ERROR_DAMAGED, "dated copies");
  assert_said (SQLITE_INTERRUPT, STEAD_STORE_ERROR_CANCELLED, "Stopped");
  assert_said (SQLITE_TOOBIG, STEAD_STORE_ERROR_INVALID, "too much");
  assert_said (SQLITE_MISMATCH, STEAD_STORE_ERROR_IO, "could not be used");
}

/* Once the file is known to be damaged, nothing is written to it any more. */
static void
test_damage_stops_writing (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autoptr(GError) error = NULL;

  stead_store_set_error (store, SQLITE_CORRUPT, NULL);
  g_assert_false (stead_store_begin (store, "more", &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_DAMAGED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/stmt/kept", test_kept);
  g_test_add_func ("/store/stmt/in-use", test_in_use);
  g_test_add_func ("/store/stmt/nulls", test_nulls);
  g_test_add_func ("/store/stmt/too-long", test_too_long);
  g_test_add_func ("/store/stmt/values", test_values);
  g_test_add_func ("/store/stmt/no-letters", test_no_letters);
  g_test_add_func ("/store/stmt/broken-rules", test_broken_rules);
  g_test_add_func ("/store/stmt/results", test_results);
  g_test_add_func ("/store/stmt/damage-stops-writing", test_damage_stops_writing);
  return g_test_run ();
}
