/* test-verify.c - every rule between rows is looked at, and what breaks it is named. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "check-fixture.h"
#include "store/stead-seal.h"

typedef struct
{
  char *folder;
  char *path;
} Room;

/* A list that is signed, with a reading too low and what was done; and one under way. */
static void
add_lists (Farm *farm)
{
  g_autoptr(SteadCheckList) list = check_list_saved (farm, TODAY, 0, TRUE);
  g_autoptr(SteadCheckList) second = check_list_saved (farm, TODAY, 0, FALSE);
  SteadDone done = { .at = EIGHT, .text = (char *) "Heated again." };
  gint64 hot = ((const SteadListLine *) list->lines->pdata[LINE_HOT])->id;
  SteadShown late = check_shown_f (hot, EIGHT + 600, 141);
  gint64 pot = 0;

  check_read_all (farm, list->id);
  late.noted_at = EIGHT + 3 * 3600;
  ACT (farm, stead_shown_repo_add (farm->store, &late, err));
  g_free (late.kind);
  done.reading_id = check_read (farm, hot, EIGHT + 900, 120, 0);
  ACT (farm, stead_done_repo_add (farm->store, &done, err));
  ACT (farm, stead_check_repo_settle_stop (farm->store, ((const SteadListStop *) list->stops->pdata[0])->id,
                                           "Pasteurized eggs.", farm->student, err));
  ACT (farm, stead_check_repo_sign (farm->store, list->id, farm->advisor, err));
  ACT (farm, stead_check_repo_save_pot (farm->store, ((const SteadListLine *) second->lines->pdata[LINE_COOL])->id, &pot,
                                        "Pot 1", NULL, NAN, err));
  check_read_all (farm, second->id);
  ACT (farm, stead_check_repo_sign (farm->store, second->id, farm->student, err));
}

/* A sound farm with two signed receipts and one that is not. */
static void
make_farm (const char *path)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  gint64 first = farm_receipt (farm, farm->feed, TODAY - 60, 20, 1899, FALSE);
  gint64 second = farm_receipt (farm, farm->straw, TODAY - 50, 10, 900, FALSE);
  gint64 fish;

  farm_receipt (farm, farm->feed, TODAY - 40, 20, 2000, FALSE);
  for (int i = 0; i < 5; i++)
    farm_entry (farm, TODAY - 50 + i, 20, 3, 0);
  ACT (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY - 45, 10, farm->student, err));
  fish = farm_fish (farm, "Catfish 1", 60);
  farm_harvest (farm, fish, farm_item (farm, "Catfish, dressed", STEAD_ITEM_PRODUCE, "lb"), TODAY - 9, 30, 100, 9000);
  ACT (farm, stead_receipt_repo_sign (farm->store, second, farm->advisor, err));
  ACT (farm, stead_receipt_repo_sign (farm->store, first, farm->advisor, err));
  add_lists (farm);
  g_assert_true (stead_store_save_copy (farm->store, path, NULL, &error));
  g_assert_no_error (error);
}

/* Made once; each case has a copy. */
static void
set_up (Room          *room,
        gconstpointer  data)
{
  static char *bytes;
  static gsize length;

  room->folder = fixture_folder ();
  room->path = g_build_filename (room->folder, "farm.steading", NULL);
  if (bytes != NULL)
    g_assert_true (g_file_set_contents (room->path, bytes, (gssize) length, NULL));
  else
    {
      make_farm (room->path);
      g_assert_true (g_file_get_contents (room->path, &bytes, &length, NULL));
    }
}

static void
tear_down (Room          *room,
           gconstpointer  data)
{
  g_free (room->path);
  fixture_remove (room->folder);
}

static void
drop_triggers (sqlite3 *db)
{
  static const char names[] = "SELECT group_concat ('DROP TRIGGER ' || name, ';') FROM sqlite_schema"
                              " WHERE type = 'trigger'";
  g_autofree char *drop = NULL;
  sqlite3_stmt *stmt = NULL;

  g_assert_cmpint (sqlite3_prepare_v2 (db, names, -1, &stmt, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_ROW);
  drop = g_strdup ((const char *) sqlite3_column_text (stmt, 0));
  sqlite3_finalize (stmt);
  g_assert_cmpint (sqlite3_exec (db, drop, NULL, NULL, NULL), ==, SQLITE_OK);
}

/* Changes the file from outside, past every trigger and foreign key, as damage does. */
static void
tamper (Room       *room,
        const char *sql)
{
  static const char get[] = "SELECT group_concat (sql, ';') || ';' FROM sqlite_schema WHERE type = 'trigger'";
  g_autofree char *make = NULL;
  sqlite3_stmt *stmt = NULL;
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (room->path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (db, get, -1, &stmt, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_ROW);
  make = g_strdup ((const char *) sqlite3_column_text (stmt, 0));
  sqlite3_finalize (stmt);
  drop_triggers (db);
  if (sqlite3_exec (db, sql, NULL, NULL, NULL) != SQLITE_OK ||
      sqlite3_exec (db, make, NULL, NULL, NULL) != SQLITE_OK)
    g_error ("%s: %s", sql, sqlite3_errmsg (db));
  sqlite3_close (db);
}

static void
assert_found (Room       *room,
              const char *words)
{
  g_autofree char *before = fixture_sum (room->path);
  g_autofree char *after = NULL;
  g_autoptr(GPtrArray) found = NULL;
  g_autoptr(GError) error = NULL;
  gboolean told = FALSE;

  found = stead_store_verify (room->path, NULL, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < found->len; i++)
    {
      g_test_message ("%s", (char *) found->pdata[i]);
      told |= strstr (found->pdata[i], words) != NULL;
    }
  g_assert_true (told);
  after = fixture_sum (room->path);
  g_assert_cmpstr (after, ==, before);
}

static void
test_sound (Room          *room,
            gconstpointer  data)
{
  g_autoptr(GPtrArray) found = stead_store_verify (room->path, NULL, NULL);

  for (guint i = 0; i < found->len; i++)
    g_test_message ("%s", (char *) found->pdata[i]);
  g_assert_cmpuint (found->len, ==, 0);
}

/* Each breaks one rule; the words tell which. */
static const struct
{
  const char *name, *sql, *words;
} breaches[] = {
  { "below-zero", "UPDATE movement SET quantity_base = -25 WHERE kind = 'used' AND id = "
                  "(SELECT min (id) FROM movement WHERE kind = 'used')", "less than nothing" },
  /* Enough in all, but not yet on that day. */
  { "below-zero-by-day", "UPDATE movement SET day = 20600 WHERE kind = 'received'", "less than nothing" },
  { "stock", "UPDATE lot_stock SET base = base + 1 WHERE lot_id = 1", "not the sum of its movements" },
  { "stock-cents", "UPDATE lot_stock SET cents = cents + 1 WHERE lot_id = 1", "not the sum of its movements" },
  { "stock-gone", "DELETE FROM lot_stock WHERE lot_id = 1", "not the sum of its movements" },
  { "emptied", "UPDATE movement SET cost_cents = cost_cents + 5 WHERE lot_id = 2 AND kind = 'used'",
    "money is left" },
  { "debt", "UPDATE movement SET cost_cents = -9999 WHERE lot_id = 1 AND kind = 'used'", "More money left" },
  { "early", "UPDATE lot SET day = day + 30 WHERE id = 1", "before it came" },
  { "line-quantity", "UPDATE receipt_line SET quantity_base = 21 WHERE id = 3", "does not agree" },
  { "line-cents", "UPDATE receipt_line SET cost_cents = 2001 WHERE id = 3", "does not agree" },
  { "line-item", "UPDATE receipt_line SET item_id = 2 WHERE id = 3", "does not agree" },
  { "line-without-lot", "DELETE FROM lot WHERE id = 3; DELETE FROM movement WHERE lot_id = 3;"
                        "DELETE FROM lot_stock WHERE lot_id = 3", "does not agree" },
  { "received-twice", "INSERT INTO movement (lot_id, day, kind, quantity_base, cost_cents)"
                      " SELECT lot_id, day, kind, quantity_base, cost_cents FROM movement WHERE lot_id = 3"
                      " AND kind = 'received'", "does not agree" },
  { "feed", "UPDATE batch_entry SET feed_kg = 1 WHERE id = 1", "More feed" },
  { "shares", "INSERT INTO asset (name, bought_on, cost_cents, extra_cents, salvage_cents, method, life_years,"
              " is_gift) VALUES ('Coop', 20000, 100, 0, 0, 'straight_line', 8, 0);"
              "INSERT INTO batch (kind, name, started_on) VALUES ('flock', 'Hens 2', 20000);"
              "INSERT INTO asset_share SELECT 1, id, 0.6 FROM batch", "more than the whole" },
  { "transfer", "INSERT INTO account (name, kind, opened_on, opening_cents) VALUES ('Till', 'till', 20000, 0);"
                "INSERT INTO cash_line (day, account_id, cents, category) VALUES (20001, 1, 5, 'transfer')",
    "other half" },
  { "match", "INSERT INTO account (name, kind, opened_on, opening_cents) VALUES ('Bank', 'bank', 20000, 0);"
             "INSERT INTO cash_line (day, account_id, cents, category) VALUES (20001, 1, 5, 'sales');"
             "INSERT INTO bank_line (account_id, day, cents, line_id) VALUES (1, 20001, 6, 1)", "matched with" },
  { "count", "INSERT INTO account (name, kind, opened_on, opening_cents) VALUES ('Till', 'till', 20000, 0);"
             "INSERT INTO cash_line (day, account_id, cents, category) VALUES (20001, 1, 5, 'over_short');"
             "INSERT INTO cash_count (day, account_id, expected_cents, float_cents, first_id, second_id, line_id)"
             " VALUES (20001, 1, 0, 0, 1, 2, 1)", "agree with its line" },
  { "harvest-day", "UPDATE harvest SET day = day - 1", "harvest of “Catfish 1”" },
  { "harvest-batch", "UPDATE lot SET batch_id = 1 WHERE batch_id IS NOT NULL", "harvest of “Catfish 1”" },
  { "made-twice", "INSERT INTO movement (lot_id, day, kind, quantity_base, cost_cents)"
                  " SELECT lot_id, day, kind, quantity_base, cost_cents FROM movement WHERE kind = 'made'",
    "harvest of “Catfish 1”" },
  { "made-gone", "DELETE FROM harvest", "no harvest tells of it" },
  { "fish-gone", "UPDATE harvest SET pieces = 501", "more fish had left “Catfish 1”" },
  { "fish-died", "INSERT INTO batch_entry (batch_id, day, deaths) SELECT batch_id, started_on, 401 FROM fish"
                 " JOIN batch ON id = batch_id", "more fish had left “Catfish 1”" },
  { "reference", "DELETE FROM place; UPDATE batch SET place_id = 77", "names a row of" },
  { "settings", "DELETE FROM farm", "settings are missing" },
  { "step-cut", "UPDATE step SET changeset = substr (changeset, 1, length (changeset) - 3)"
                " WHERE id = (SELECT max (id) FROM step)", "cannot be undone" },
  { "step-more", "UPDATE step SET changeset = CAST (changeset || x'54' AS BLOB)"
                 " WHERE id = (SELECT min (id) FROM step)", "cannot be undone" },
  { "step-empty", "UPDATE step SET changeset = x'' WHERE id = (SELECT max (id) FROM step)", "cannot be undone" },
  { "step-table", "UPDATE step SET changeset = x'5401016e6f6e6500120001000000000000000163'"
                  " WHERE id = (SELECT max (id) FROM step)", "cannot be undone" },
  { "sealed-day", "UPDATE receipt SET day = day - 1 WHERE id = 1", "when it was signed" },
  { "sealed-supplier", "UPDATE receipt SET supplier = 'Mill' WHERE id = 1", "when it was signed" },
  { "sealed-note", "UPDATE receipt SET note = '' WHERE id = 1", "when it was signed" },
  { "sealed-gift", "UPDATE receipt SET is_gift = 1 WHERE id = 2", "when it was signed" },
  { "sealed-signer", "UPDATE receipt SET signed_by = 1 WHERE id = 2", "when it was signed" },
  { "sealed-signed-on", "UPDATE receipt SET signed_on = signed_on - 1 WHERE id = 2", "when it was signed" },
  { "sealed-cents", "UPDATE receipt_line SET cost_cents = 1900 WHERE receipt_id = 1", "when it was signed" },
  { "sealed-quantity", "UPDATE receipt_line SET quantity_base = quantity_base + 1e-9 WHERE receipt_id = 1",
    "when it was signed" },
  { "sealed-line-more", "INSERT INTO receipt_line (receipt_id, item_id, quantity_base, cost_cents)"
                        " VALUES (1, 1, 1, 0)", "when it was signed" },
  { "sealed-swapped", "UPDATE receipt SET seal_no = 9 - seal_no WHERE seal_no > 0;"
                      "UPDATE receipt SET seal_no = seal_no - 6 WHERE seal_no > 0", "when it was signed" },
  { "sealed-gone", "DELETE FROM receipt WHERE seal_no = 1; DELETE FROM receipt_line WHERE receipt_id = 2;"
                   "DELETE FROM lot WHERE id = 2; DELETE FROM movement WHERE lot_id = 2;"
                   "DELETE FROM lot_stock WHERE lot_id = 2", "signed receipt is missing" },
  { "list-name", "UPDATE checklist SET name = 'x' WHERE id = 1", "when it was signed" },
  { "list-reading", "UPDATE reading SET value = value + 1 WHERE id = (SELECT min (id) FROM reading)",
    "when it was signed" },
  /* It was typed in with the others, or so it looks. */
  { "list-noted", "UPDATE reading SET noted_at = noted_at - 3600 WHERE noted_at IS NOT NULL", "when it was signed" },
  { "list-noted-never", "UPDATE reading SET noted_at = NULL", "when it was signed" },
  { "list-noted-too", "UPDATE reading SET noted_at = at + 3600 WHERE id = (SELECT min (id) FROM reading)",
    "when it was signed" },
  { "list-limit", "UPDATE check_limit SET value = 130 WHERE limit_id = 'hold-hot-135' AND line_id = 3",
    "when it was signed" },
  { "list-answer", "UPDATE check_answer SET answer = 'general' WHERE list_id = 1", "when it was signed" },
  { "list-action", "UPDATE check_action SET text = 'Nothing.'", "when it was signed" },
  { "list-pot", "UPDATE check_pot SET name = 'Pot 2'", "when it was signed" },
  { "list-signer", "UPDATE checklist SET signed_by = 1 WHERE id = 1", "when it was signed" },
  { "list-gone", "DELETE FROM reading; DELETE FROM check_action; DELETE FROM check_limit; DELETE FROM check_pot;"
                 "DELETE FROM check_line; DELETE FROM check_stop; DELETE FROM check_answer; DELETE FROM check_food;"
                 "DELETE FROM checklist WHERE id = 1", "signed checklist is missing" },
  { "list-hole", "DELETE FROM reading WHERE line_id = 1", "neither read nor left out" },
  { "list-stop", "UPDATE check_stop SET settled = NULL, settled_by = NULL, settled_at = NULL", "could not be sold" },
  { "list-other-pot", "UPDATE reading SET pot_id = (SELECT min (id) FROM check_pot) WHERE line_id = 1",
    "a pot of another line" },
  { "list-other-line", "UPDATE reading SET corrects_id = (SELECT max (id) FROM reading) WHERE line_id = 1",
    "corrects one of another line" },
  { "held", "INSERT INTO safety_hold (lot_id, since_at, reason) VALUES (2, 86400 * 20000, 'x')", "while it was held" },
  { "score", "INSERT INTO event (id, name, kind, day) VALUES (1, 'Contest', 'sales', 20600);"
             "INSERT INTO event_score (event_id, day, score, out_of) VALUES (1, 20600, 11, 10)", "“Contest” is above" },
  { "long-hours", "INSERT INTO work_span (person_id, day, from_at, to_at, minutes, break_minutes, duty, paid, entered_on)"
                  " VALUES (1, 20600, 1779865200, 1779868800, 62, 0, 'Feed', 0, 20600)", "lies between" },
  { "hours-of-another", "INSERT INTO work_span (id, person_id, day, minutes, break_minutes, duty, paid, entered_on)"
                        " VALUES (1, 1, 20600, 60, 0, 'Feed', 0, 20600);"
                        "INSERT INTO work_span (person_id, day, minutes, break_minutes, duty, paid, entered_on, corrects_id)"
                        " VALUES (2, 20600, 45, 0, 'Feed', 0, 20600, 1)", "for somebody else" },
  { "packet", "INSERT INTO packet (name, from_on, to_on) VALUES ('Mine', 20600, 20601)", "“Mine” is of nobody" },
  { "joint", "INSERT INTO joint_figure (batch_id, part, field, value) SELECT min (id), 'hens', 'weight', 2 FROM batch",
    "but no way to share it" },
  { "seal-itself", "UPDATE receipt SET seal = replace (seal, substr (seal, 1, 1), 'g') WHERE seal_no = 1",
    "when it was signed" },
};

static void
test_breach (gconstpointer data)
{
  Room room;
  gsize i = GPOINTER_TO_SIZE (data);

  set_up (&room, NULL);
  tamper (&room, breaches[i].sql);
  assert_found (&room, breaches[i].words);
  tear_down (&room, NULL);
}

/* A signed farm in which a person's name became a role is still as it was signed. */
static void
test_forgotten_person (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autoptr(GPtrArray) found = NULL;
  gint64 receipt = farm_receipt (farm, farm->feed, TODAY - 60, 20, 1899, FALSE);

  ACT (farm, stead_receipt_repo_sign (farm->store, receipt, farm->advisor, err));
  ACT (farm, stead_person_repo_forget (farm->store, farm->advisor, err));
  g_assert_true (stead_store_save_copy (farm->store, path, NULL, NULL));
  found = stead_store_verify (path, NULL, NULL);
  g_assert_cmpuint (found->len, ==, 0);
}

/* The seal is part of the file format.  Worked out apart from this program, with
 * GNU sha256sum, from the text that stead-seal.c describes. */
#define SEAL_BY_HAND "2096706e2bec5063e9e1cbfe18e54ed4c8b738acba3a4a1475c1cfe2c1eff684"

static void
test_seal_by_hand (void)
{
  static const char text[] =
    "receipt 1 after nothing by 2 on 20002\n"
    "i1;i20000;t10:Feed store;i0;n;n;n;n;\n"
    "i1;i1;r22.5;i1899;\n";
  g_autofree char *expected = g_compute_checksum_for_string (G_CHECKSUM_SHA256, text, -1);
  g_autoptr(SteadStore) store = stead_store_create_memory ("Farm", NULL);
  g_autofree char *seal = NULL;
  g_autoptr(GError) error = NULL;

  g_assert_cmpstr (expected, ==, SEAL_BY_HAND);
  fixture_fill (store);
  seal = stead_seal_compute (stead_store_get_db (store), 1, 1, NULL, 2, 20002, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (seal, ==, SEAL_BY_HAND);
  g_assert_null (stead_seal_compute (stead_store_get_db (store), 99, 1, NULL, 2, 20002, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND);
}

static char *
seal_again (sqlite3             *db,
            const SteadListSeal *signature)
{
  g_autoptr(GError) error = NULL;
  char *seal = stead_seal_compute_list (db, signature, &error);

  g_assert_no_error (error);
  return seal;
}

/* Makes another value of each, past what the file asks of it. */
static void
change_column (sqlite3    *db,
               const char *table,
               const char *column,
               gboolean    is_text)
{
  g_autofree char *sql = g_strdup_printf (is_text ? "UPDATE %1$s SET %2$s = coalesce (%2$s, '') || 'x'"
                                                  : "UPDATE %1$s SET %2$s = coalesce (%2$s, 0) + 1000", table, column);

  if (sqlite3_exec (db, sql, NULL, NULL, NULL) != SQLITE_OK)
    g_error ("%s: %s", sql, sqlite3_errmsg (db));
}

/* Whatever column a row of a signed list has, it is part of what was signed. */
static void
test_list_whole (Room          *room,
                 gconstpointer  data)
{
  static const char columns[] =
    "SELECT t.name, c.name, c.type = 'TEXT' FROM sqlite_schema t, pragma_table_info (t.name) c WHERE t.name IN"
    " ('checklist', 'check_food', 'check_answer', 'check_line', 'check_limit', 'check_stop', 'check_pot', 'reading',"
    " 'check_action') AND t.type = 'table' AND c.name NOT LIKE 'seal%' AND c.name NOT LIKE 'signed%'";
  const SteadListSeal signature = { .list_id = 1, .no = 1, .person_id = 2, .at = EIGHT, .last_reading = 6, .last_action = 9 };
  g_autofree char *seal = NULL;
  sqlite3_stmt *stmt = NULL;
  sqlite3 *db = NULL;
  int n = 0;

  tamper (room, "UPDATE check_pot SET line_id = 1");
  g_assert_cmpint (sqlite3_open (room->path, &db), ==, SQLITE_OK);
  drop_triggers (db);
  g_assert_cmpint (sqlite3_exec (db, "PRAGMA ignore_check_constraints = 1", NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (db, columns, -1, &stmt, NULL), ==, SQLITE_OK);
  seal = seal_again (db, &signature);
  for (; sqlite3_step (stmt) == SQLITE_ROW; n++)
    {
      const char *table = (const char *) sqlite3_column_text (stmt, 0);
      const char *column = (const char *) sqlite3_column_text (stmt, 1);
      g_autofree char *changed = NULL;

      g_test_message ("%s.%s", table, column);
      g_assert_cmpint (sqlite3_exec (db, "SAVEPOINT one", NULL, NULL, NULL), ==, SQLITE_OK);
      change_column (db, table, column, sqlite3_column_int (stmt, 2) != 0);
      changed = g_str_equal (table, "checklist") && g_str_equal (column, "id") ? NULL : seal_again (db, &signature);
      g_assert_cmpstr (changed, !=, seal);
      g_assert_cmpint (sqlite3_exec (db, "ROLLBACK TO one; RELEASE one", NULL, NULL, NULL), ==, SQLITE_OK);
    }
  g_assert_cmpint (n, >, 100);
  sqlite3_finalize (stmt);
  sqlite3_close (db);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/store/verify/sound", Room, NULL, set_up, test_sound, tear_down);
  for (gsize i = 0; i < G_N_ELEMENTS (breaches); i++)
    {
      g_autofree char *path = g_strconcat ("/store/verify/", breaches[i].name, NULL);

      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_breach);
    }
  g_test_add ("/store/verify/list-whole", Room, NULL, set_up, test_list_whole, tear_down);
  g_test_add_func ("/store/verify/forgotten-person", test_forgotten_person);
  g_test_add_func ("/store/verify/seal-by-hand", test_seal_by_hand);
  return g_test_run ();
}
