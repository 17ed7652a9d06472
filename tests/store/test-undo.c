/* test-undo.c - steps are undone and redone, all or nothing. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "repo-fixture.h"
#include "store/stead-seal.h"

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

static void
undo (SteadStore *store)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_store_undo (store, &error));
  g_assert_no_error (error);
}

static void
redo (SteadStore *store)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_store_redo (store, &error));
  g_assert_no_error (error);
}

static void
assert_dump (SteadStore *store,
             const char *expected)
{
  g_autofree char *dump = fixture_dump (store);

  g_assert_cmpstr (dump, ==, expected);
}

/* What stands in the way leaves the farm and its steps as they were. */
static void
assert_undo_refused (SteadStore *store,
                     int         code)
{
  g_autofree char *before = fixture_dump (store);
  g_autofree char *name = stead_store_get_undo_name (store);
  g_autofree char *name_after = NULL;
  g_autoptr(GError) error = NULL;
  gint64 number = stead_store_get_change_no (store);
  int n_changed = 0;
  gulong handler = g_signal_connect (store, "changed", G_CALLBACK (count_cb), &n_changed);

  g_assert_false (stead_store_undo (store, &error));
  g_assert_error (error, STEAD_STORE_ERROR, code);
  assert_dump (store, before);
  name_after = stead_store_get_undo_name (store);
  g_assert_cmpstr (name_after, ==, name);
  g_assert_cmpint (stead_store_get_change_no (store), ==, number);
  g_assert_cmpint (n_changed, ==, 0);
  g_signal_handler_disconnect (store, handler);
}

/* --- there and back --------------------------------------------------------- */

static void
test_all (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *start = fixture_dump (store);
  g_autofree char *end = NULL;
  g_autoptr(GError) error = NULL;

  fixture_fill (store);
  end = fixture_dump (store);
  for (int i = 0; i < 6; i++)
    undo (store);
  assert_dump (store, start);
  g_assert_null (stead_store_get_undo_name (store));
  g_assert_false (stead_store_undo (store, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  for (int i = 0; i < 6; i++)
    redo (store);
  assert_dump (store, end);
  g_assert_null (stead_store_get_redo_name (store));
  g_assert_false (stead_store_redo (store, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND);
}

static void
test_names (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *undo_name = NULL;
  g_autofree char *redo_name = NULL;

  fixture_fill (store);
  undo (store);
  undo (store);
  undo_name = stead_store_get_undo_name (store);
  redo_name = stead_store_get_redo_name (store);
  g_assert_cmpstr (undo_name, ==, "receipt");
  g_assert_cmpstr (redo_name, ==, "22 eggs");
}

static void
test_counts_and_tells (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  int n_changed = 0;

  fixture_fill (store);
  g_signal_connect (store, "changed", G_CALLBACK (count_cb), &n_changed);
  undo (store);
  g_assert_cmpint (n_changed, ==, 1);
  g_assert_cmpint (stead_store_get_change_no (store), ==, 7);
  redo (store);
  g_assert_cmpint (n_changed, ==, 2);
  g_assert_cmpint (stead_store_get_change_no (store), ==, 8);
}

static void
test_new_step_drops_undone (void)
{
  g_autoptr(SteadStore) store = new_farm ();

  fixture_fill (store);
  undo (store);
  undo (store);
  fixture_act (store, "Add Bo", "INSERT INTO person (name, role) VALUES ('Bo', 'student')");
  g_assert_null (stead_store_get_redo_name (store));
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM step"), ==, 5);
}

/* An action that changes nothing leaves what can be redone. */
static void
test_nothing_keeps_undone (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *name = NULL;

  fixture_fill (store);
  undo (store);
  fixture_act (store, "nothing", "UPDATE person SET name = name");
  name = stead_store_get_redo_name (store);
  g_assert_cmpstr (name, ==, "price");
}

static void
test_keeps_200 (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *oldest = NULL;

  for (int i = 1; i <= 230; i++)
    {
      g_autofree char *sql = g_strdup_printf ("INSERT INTO person (name, role) VALUES ('P%d', 'student')", i);
      g_autofree char *name = g_strdup_printf ("step %d", i);

      fixture_act (store, name, sql);
    }
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM step"), ==, 200);
  for (int i = 0; i < 199; i++)
    undo (store);
  oldest = stead_store_get_undo_name (store);
  g_assert_cmpstr (oldest, ==, "step 31");
  undo (store);
  g_assert_null (stead_store_get_undo_name (store));
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM person"), ==, 30);
}

static void
test_survives_closing (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autoptr(SteadStore) store = stead_store_create (path, "Farm", NULL);
  g_autofree char *start = fixture_dump (store);
  g_autofree char *name = NULL;

  fixture_fill (store);
  undo (store);
  g_clear_object (&store);
  store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, NULL);
  name = stead_store_get_undo_name (store);
  g_assert_cmpstr (name, ==, "22 eggs");
  redo (store);
  for (int i = 0; i < 6; i++)
    undo (store);
  assert_dump (store, start);
}

/* An id that was given stays given: a lot code on a jar never comes to mean another. */
static void
test_ids_are_not_reused (void)
{
  g_autoptr(SteadStore) store = new_farm ();

  fixture_act (store, "Add Ada", "INSERT INTO person (name, role) VALUES ('Ada', 'student')");
  undo (store);
  fixture_act (store, "Add Bo", "INSERT INTO person (name, role) VALUES ('Bo', 'student')");
  g_assert_cmpint (fixture_number (store, "SELECT id FROM person WHERE name = 'Bo'"), ==, 2);
}

/* --- rows that hang on others ------------------------------------------------ */

static void
test_cascade (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  fixture_fill (store);
  before = fixture_dump (store);
  fixture_act (store, "Delete the flock with its log", "DELETE FROM batch WHERE id = 1");
  after = fixture_dump (store);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM batch_entry"), ==, 0);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM movement"), ==, 1);
  for (int i = 0; i < 3; i++)
    {
      undo (store);
      assert_dump (store, before);
      redo (store);
      assert_dump (store, after);
    }
}

static void
test_cascade_three_deep (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *before = NULL;

  fixture_fill (store);
  fixture_act (store, "no use", "DELETE FROM batch_entry");
  before = fixture_dump (store);
  fixture_act (store, "Delete the receipt", "DELETE FROM receipt");
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM movement"), ==, 0);
  undo (store);
  assert_dump (store, before);
  g_assert_cmpint (fixture_number (store, "SELECT base = 22.5 AND cents = 1899 FROM lot_stock"), ==, 1);
}

/* Many movements of one lot in one step: on the way, in any order, the lot may
 * seem to hold less than nothing. */
static void
test_order_does_not_matter (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  fixture_fill (store);
  before = fixture_dump (store);
  fixture_act (store, "in and out",
               "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 500)"
               " INSERT INTO movement (lot_id, day, kind, quantity_base, cost_cents, reason)"
               " SELECT 1, 20003, 'counted', iif (i % 2, 100, -100), 0, 'count' FROM n");
  after = fixture_dump (store);
  undo (store);
  assert_dump (store, before);
  redo (store);
  assert_dump (store, after);
  g_assert_cmpint (fixture_number (store, "SELECT abs (base - 19.2) < 1e-6 FROM lot_stock"), ==, 1);
}

/* --- what stands in the way -------------------------------------------------- */

static void
test_signed (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autoptr(GError) error = NULL;

  fixture_fill (store);
  g_assert_true (stead_store_begin (store, "Sign the receipt", &error));
  g_assert_true (stead_seal_receipt (store, 1, 2, 20002, &error));
  g_assert_true (stead_store_commit (store, &error));
  g_assert_no_error (error);
  assert_undo_refused (store, STEAD_STORE_ERROR_SIGNED);

  /* What comes after it can be taken back, up to the signature. */
  fixture_act (store, "Add Bo", "INSERT INTO person (name, role) VALUES ('Bo', 'student')");
  undo (store);
  redo (store);
  undo (store);
  assert_undo_refused (store, STEAD_STORE_ERROR_SIGNED);
}

/* Entered and signed in one action. */
static void
test_signed_at_once (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autoptr(GError) error = NULL;

  fixture_fill (store);
  g_assert_true (stead_store_begin (store, "Enter and sign", &error));
  fixture_run (store, "INSERT INTO receipt (id, day, supplier, is_gift) VALUES (7, 20003, 'Mill', 0);"
                      "INSERT INTO receipt_line (receipt_id, item_id, quantity_base, cost_cents) VALUES (7, 1, 2, 50)");
  g_assert_true (stead_seal_receipt (store, 7, 2, 20003, &error));
  g_assert_true (stead_store_commit (store, &error));
  assert_undo_refused (store, STEAD_STORE_ERROR_SIGNED);
}

static void
test_changed_since (void)
{
  g_autoptr(SteadStore) store = new_farm ();

  fixture_act (store, "two people", "INSERT INTO person (name, role) VALUES ('Ada', 'student'), ('Bo', 'student')");
  fixture_run (store, "UPDATE person SET name = 'Cy' WHERE name = 'Bo'");   /* not by us */
  assert_undo_refused (store, STEAD_STORE_ERROR_INVALID);
  fixture_run (store, "DELETE FROM person WHERE name = 'Cy'");
  assert_undo_refused (store, STEAD_STORE_ERROR_INVALID);
}

/* Rows that came from elsewhere hang on what would go: they would go unseen. */
static void
test_unknown_children (void)
{
  g_autoptr(SteadStore) store = new_farm ();

  fixture_act (store, "flock", "INSERT INTO batch (kind, name, started_on) VALUES ('flock', 'Hens', 20000);"
                               "INSERT INTO flock (batch_id, species, strain, hatched_on, birds, birds_cost_cents, birds_are_gift, reared,"
                               " salvage_cents, eggs_expected, level_frac, decline_week, steepness_week, half_week,"
                               " onset_age_weeks)"
                               " VALUES (1, 'hen', NULL, 19860, 30, 0, 0, 0, 0, 300,"
                               " 0.95, 0.004, 1.2, 22, 18)");
  fixture_run (store, "INSERT INTO batch_entry (batch_id, day, eggs) VALUES (1, 20001, 9)");
  assert_undo_refused (store, STEAD_STORE_ERROR_INVALID);
  g_assert_cmpint (fixture_number (store, "SELECT eggs FROM batch_entry"), ==, 9);
}

/* Rows from elsewhere that name what would go, without a cascade. */
static void
test_unknown_references (void)
{
  g_autoptr(SteadStore) store = new_farm ();

  fixture_act (store, "place", "INSERT INTO place (name, kind) VALUES ('Coop', 'coop')");
  fixture_run (store, "INSERT INTO batch (kind, name, place_id, started_on) VALUES ('flock', 'Hens', 1, 20000)");
  assert_undo_refused (store, STEAD_STORE_ERROR_INVALID);
}

/* --- a step from a stranger -------------------------------------------------- */

static void
plant_step (SteadStore *store,
            const void *bytes,
            int         length)
{
  sqlite3_stmt *stmt = NULL;

  g_assert_cmpint (sqlite3_prepare_v2 (stead_store_get_db (store),
                                       "INSERT INTO step (name, made_at, changeset) VALUES ('planted', 0, ?1)",
                                       -1, &stmt, NULL), ==, SQLITE_OK);
  sqlite3_bind_blob (stmt, 1, bytes, length, SQLITE_STATIC);
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_DONE);
  sqlite3_finalize (stmt);
}

static void
test_foreign_table (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  sqlite3_session *session = NULL;
  void *bytes = NULL;
  int length = 0;

  fixture_fill (store);
  g_assert_cmpint (sqlite3session_create (stead_store_get_db (store), "main", &session), ==, SQLITE_OK);
  sqlite3session_attach (session, "change_count");
  fixture_run (store, "UPDATE change_count SET number = 99");
  sqlite3session_changeset (session, &length, &bytes);
  sqlite3session_delete (session);
  g_assert_cmpint (length, >, 0);
  plant_step (store, bytes, length);
  sqlite3_free (bytes);
  assert_undo_refused (store, STEAD_STORE_ERROR_INVALID);
  g_assert_cmpint (fixture_number (store, "SELECT number FROM change_count"), ==, 99);
}

static void
test_garbage (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree guint8 *good = NULL;
  sqlite3_stmt *stmt = NULL;
  int length;

  fixture_fill (store);
  sqlite3_prepare_v2 (stead_store_get_db (store), "SELECT changeset FROM step WHERE name = 'receipt'", -1, &stmt, NULL);
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_ROW);
  length = sqlite3_column_bytes (stmt, 0);
  good = g_memdup2 (sqlite3_column_blob (stmt, 0), (gsize) length);
  sqlite3_finalize (stmt);

  for (int i = 0; i < 500; i++)
    {
      g_autofree guint8 *bad = g_memdup2 (good, (gsize) length);
      g_autofree char *before = fixture_dump (store);
      int cut = g_test_rand_int_range (1, length + 1);

      for (int j = g_test_rand_int_range (0, 4); j >= 0; j--)
        bad[g_test_rand_int_range (0, length)] ^= (guint8) (1 << g_test_rand_int_range (0, 8));
      plant_step (store, bad, i % 2 ? cut : length);
      if (stead_store_undo (store, NULL))   /* the damage may have left a step that fits */
        redo (store);
      assert_dump (store, before);
      fixture_run (store, "DELETE FROM step WHERE name = 'planted'");
    }
}

static void
test_empty_step (void)
{
  g_autoptr(SteadStore) store = new_farm ();

  fixture_fill (store);
  plant_step (store, "", 0);
  assert_undo_refused (store, STEAD_STORE_ERROR_INVALID);
}

/* --- large ------------------------------------------------------------------ */

static void
test_large (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *before = NULL;
  gint64 start;

  fixture_fill (store);
  before = fixture_dump (store);
  fixture_act (store, "Import 100,000 entries",
               "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 100000)"
               " INSERT INTO batch_entry (batch_id, day, eggs, feed_kg, note)"
               " SELECT 1, 20002 + i, i % 30, 3.3, 'row ' || i FROM n");
  start = g_get_monotonic_time ();
  undo (store);
  g_test_message ("undo of 100,000 rows: %.2f s", (double) (g_get_monotonic_time () - start) / 1e6);
  assert_dump (store, before);
  redo (store);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM batch_entry"), ==, 100001);
}

/* --- any sequence ------------------------------------------------------------ */

/* What the repositories do, at random; some are refused, and then change nothing. */
static gboolean
act_at_random (Farm    *farm,
               GError **error)
{
  SteadDay day = TODAY - g_test_rand_int_range (0, 90);
  gint64 any = g_test_rand_int_range (1, 30);

  switch (g_test_rand_int_range (0, 9))
    {
    case 0:
    case 1:
    case 2:
      {
        SteadFlockEntry entry = { .flock_id = farm->flock, .day = day, .eggs = g_test_rand_int_range (0, 31),
                                  .feed_kg = g_test_rand_double_range (0, 5) };

        return stead_flock_repo_save_entry (farm->store, &entry, error);
      }
    case 3:
    case 4:
      {
        g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
        SteadReceiptLine line = { .item_id = farm->feed, .quantity_base = g_test_rand_double_range (1, 40),
                                  .cost_cents = g_test_rand_int_range (0, 4000), .best_by = STEAD_DAY_NONE };

        receipt->day = day;
        receipt->supplier = g_strdup ("Lakeside Feed & Seed");
        g_array_append_val (receipt->lines, line);
        line.item_id = farm->straw;
        g_array_append_val (receipt->lines, line);
        return stead_receipt_repo_save (farm->store, receipt, error);
      }
    case 5:
      return stead_flock_repo_delete_entry (farm->store, any, error);
    case 6:
      return stead_receipt_repo_delete (farm->store, any, error);
    case 7:
      return stead_lot_repo_use (farm->store, farm->straw, farm->flock, day, g_test_rand_double_range (0.1, 3),
                                 farm->student, error);
    default:
      return stead_lot_repo_adjust (farm->store, any, STEAD_MOVE_LOST, day, -0.5, "mice", 0, error);
    }
}

static void
free_after (GPtrArray *states,
            guint      length)
{
  if (states->len > length)
    g_ptr_array_remove_range (states, length, states->len - length);
}

static void
test_any_sequence (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GPtrArray) states = g_ptr_array_new_with_free_func (g_free);
  int acted = 0, refused = 0;
  guint at = 0;

  g_ptr_array_add (states, fixture_dump (farm->store));
  for (int i = 0; i < 400; i++)
    {
      g_autoptr(GError) error = NULL;
      int choice = g_test_rand_int_range (0, 10);

      if (choice < 2 && at > 0)
        {
          undo (farm->store);
          at--;
        }
      else if (choice < 4 && at + 1 < states->len)
        {
          redo (farm->store);
          at++;
        }
      else
        {
          gint64 number = stead_store_get_change_no (farm->store);

          g_assert_true (stead_store_begin (farm->store, "act", NULL));
          if (act_at_random (farm, &error))
            g_assert_true (stead_store_commit (farm->store, &error));
          else
            stead_store_rollback (farm->store);
          refused += error != NULL;
          if (stead_store_get_change_no (farm->store) > number)
            {
              acted++;
              free_after (states, ++at);
              g_ptr_array_add (states, fixture_dump (farm->store));
            }
        }
      assert_dump (farm->store, states->pdata[at]);
    }
  farm_assert_ledger (farm);
  g_test_message ("%d actions, %d refused", acted, refused);
  g_assert_cmpint (acted, >, 50);
  for (; at > 0 && states->len <= 200; at--)
    undo (farm->store);
  assert_dump (farm->store, states->pdata[at]);
  farm_assert_ledger (farm);
  for (; at + 1 < states->len; at++)
    redo (farm->store);
  assert_dump (farm->store, states->pdata[at]);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/undo/all", test_all);
  g_test_add_func ("/store/undo/names", test_names);
  g_test_add_func ("/store/undo/counts-and-tells", test_counts_and_tells);
  g_test_add_func ("/store/undo/new-step-drops-undone", test_new_step_drops_undone);
  g_test_add_func ("/store/undo/nothing-keeps-undone", test_nothing_keeps_undone);
  g_test_add_func ("/store/undo/keeps-200", test_keeps_200);
  g_test_add_func ("/store/undo/survives-closing", test_survives_closing);
  g_test_add_func ("/store/undo/ids-are-not-reused", test_ids_are_not_reused);
  g_test_add_func ("/store/undo/cascade", test_cascade);
  g_test_add_func ("/store/undo/cascade-three-deep", test_cascade_three_deep);
  g_test_add_func ("/store/undo/order-does-not-matter", test_order_does_not_matter);
  g_test_add_func ("/store/undo/signed", test_signed);
  g_test_add_func ("/store/undo/signed-at-once", test_signed_at_once);
  g_test_add_func ("/store/undo/changed-since", test_changed_since);
  g_test_add_func ("/store/undo/unknown-children", test_unknown_children);
  g_test_add_func ("/store/undo/unknown-references", test_unknown_references);
  g_test_add_func ("/store/undo/foreign-table", test_foreign_table);
  g_test_add_func ("/store/undo/garbage", test_garbage);
  g_test_add_func ("/store/undo/empty-step", test_empty_step);
  g_test_add_func ("/store/undo/large", test_large);
  g_test_add_func ("/store/undo/any-sequence", test_any_sequence);
  return g_test_run ();
}
