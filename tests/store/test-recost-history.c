/* test-recost-history.c - whatever happens in whatever order, no cent is lost or made.
 *
 * Histories are drawn at random: receipts, prices that change, corrections of signed
 * receipts, uses, feed, kitchen batches, harvests, sales, gifts, losses, counts,
 * deletions, another way of costing, undo and redo.  After each deed the cents that
 * were put in are in stock, in work in progress, sold, given or lost; and the averages
 * are those that core works out of the same movements, cents rounded apart.
 */
#include "config.h"

#include <math.h>
#include <stdlib.h>

#include "kitchen-fixture.h"
#include "store/stead-recost.h"
#include "store/stead-store-internal.h"

enum { DEEDS = 26 };

typedef struct
{
  Farm  *farm;
  GRand *rand;
  gint64 flour, eggs, dough, bread;
  int    names;
  gboolean unsigned_only;    /* what is signed cannot be undone */
} History;

static int
below (History *self,
       int      n)
{
  return g_rand_int_range (self->rand, 0, n);
}

static SteadDay
some_day (History *self)
{
  return TODAY - below (self, 20);
}

static double
some_base (History *self)
{
  return below (self, 3) == 0 ? g_rand_double_range (self->rand, 0.1, 6) : 1 + below (self, 6);
}

static gint64
some_item (History *self)
{
  const gint64 items[] = { self->flour, self->eggs, self->dough, self->bread, self->farm->straw, self->farm->feed };

  return items[below (self, G_N_ELEMENTS (items))];
}

static gint64
some_id (History    *self,
         const char *table)
{
  g_autofree char *n = g_strdup_printf ("SELECT count (*) FROM %s", table);
  gint64 count = fixture_number (self->farm->store, n);
  g_autofree char *sql = g_strdup_printf ("SELECT coalesce ((SELECT id FROM %s ORDER BY id LIMIT 1 OFFSET %d), 0)", table,
                                          count > 0 ? below (self, (int) count) : 0);

  return fixture_number (self->farm->store, sql);
}

/* --- deeds ------------------------------------------------------------------------- */

static SteadReceipt *
some_receipt (History *self)
{
  SteadReceipt *receipt = stead_receipt_new ();
  int n = 1 + below (self, 2);

  receipt->day = some_day (self);
  receipt->supplier = g_strdup ("Lakeside Feed & Seed");
  receipt->is_gift = below (self, 4) == 0;
  for (int i = 0; i < n; i++)
    {
      const gint64 items[] = { self->flour, self->farm->straw, self->farm->feed };
      SteadReceiptLine line = { .item_id = items[below (self, 3)], .quantity_base = some_base (self) * 2,
                                .cost_cents = below (self, 2000), .best_by = STEAD_DAY_NONE };

      g_array_append_val (receipt->lines, line);
    }
  return receipt;
}

static gboolean
buy (History  *self,
     GError  **error)
{
  g_autoptr(SteadReceipt) receipt = some_receipt (self);

  return stead_receipt_repo_save (self->farm->store, receipt, error);
}

static gboolean
change_receipt (History  *self,
                GError  **error)
{
  g_autoptr(SteadReceipt) receipt = stead_receipt_repo_get (self->farm->store, some_id (self, "receipt"), error);
  SteadReceiptLine *line;

  if (receipt == NULL)
    return FALSE;
  line = &g_array_index (receipt->lines, SteadReceiptLine, below (self, (int) receipt->lines->len));
  line->cost_cents = below (self, 3000);
  if (below (self, 3) == 0)
    line->quantity_base += g_rand_double_range (self->rand, -2, 3);
  if (below (self, 6) == 0)
    receipt->day = some_day (self);
  return stead_receipt_repo_save (self->farm->store, receipt, error);
}

/* Signed, and corrected at once: other prices, other amounts, sometimes another item. */
static gboolean
correct_receipt (History  *self,
                 GError  **error)
{
  g_autoptr(SteadReceipt) wrong = stead_receipt_repo_get (self->farm->store, some_id (self, "receipt"), error);
  g_autoptr(SteadReceipt) right = NULL;

  if (wrong == NULL)
    return FALSE;
  if (self->unsigned_only)
    return change_receipt (self, error);
  if (wrong->signed_by == 0 && !stead_receipt_repo_sign (self->farm->store, wrong->id, self->farm->advisor, error))
    return FALSE;
  right = some_receipt (self);
  right->corrects_id = wrong->id;
  right->day = wrong->day;
  if (below (self, 3) > 0)
    {
      g_array_set_size (right->lines, 0);
      g_array_append_vals (right->lines, wrong->lines->data, wrong->lines->len);
    }
  for (guint i = 0; i < right->lines->len; i++)
    {
      SteadReceiptLine *line = &g_array_index (right->lines, SteadReceiptLine, i);

      line->id = line->lot_id = 0;
      line->cost_cents = below (self, 2000);
      line->quantity_base += g_rand_double_range (self->rand, 0, 2);
    }
  return stead_receipt_repo_save (self->farm->store, right, error);
}

static gboolean
use (History  *self,
     GError  **error)
{
  return stead_lot_repo_use (self->farm->store, some_item (self), self->farm->flock, some_day (self), some_base (self),
                             0, error);
}

static gboolean
feed (History  *self,
      GError  **error)
{
  SteadFlockEntry entry = { .flock_id = self->farm->flock, .day = some_day (self), .eggs = STEAD_COUNT_NONE,
                            .feed_kg = some_base (self) };

  return stead_flock_repo_save_entry (self->farm->store, &entry, error);
}

static gboolean
forget_feed (History  *self,
             GError  **error)
{
  return stead_flock_repo_delete_entry (self->farm->store, some_id (self, "batch_entry"), error);
}

static gboolean
harvest (History  *self,
         gint64    batch_id,
         gint64    item_id,
         SteadDay  day,
         gint64    cents,
         GError  **error)
{
  g_autoptr(SteadHarvest) made = stead_harvest_new ();

  made->batch_id = batch_id;
  made->item_id = item_id;
  made->day = day;
  made->quantity_base = some_base (self);
  made->cost_cents = cents;
  return stead_harvest_repo_save (self->farm->store, made, error);
}

static gboolean
lay (History  *self,
     GError  **error)
{
  return harvest (self, self->farm->flock, self->eggs, some_day (self), below (self, 500), error);
}

/* Up to three things into one or two lots; some of it packed or finished on another day. */
static gboolean
cook (History  *self,
      GError  **error)
{
  static const char sql[] = "INSERT INTO batch (kind, name, started_on) VALUES ('kitchen', ?1, ?2)";
  const gint64 uses[] = { self->flour, self->eggs, self->dough, self->farm->straw };
  g_autoptr(SteadStmt) stmt = stead_store_prepare (self->farm->store, sql, error);
  g_autofree char *name = g_strdup_printf ("Kitchen %d", ++self->names);
  SteadDay day = some_day (self);
  gint64 makes = below (self, 2) == 0 ? self->dough : self->bread, id;
  int n = 1 + below (self, 3), made = 1 + (below (self, 3) == 0);

  g_assert_nonnull (stmt);
  stead_stmt_bind_text (stmt, 1, name);
  stead_stmt_bind_day (stmt, 2, day - 3);
  g_assert_true (stead_store_run (self->farm->store, stmt, error));
  id = stead_store_last_id (self->farm->store);
  for (int i = 0; i < n; i++)
    if (!stead_lot_repo_use (self->farm->store, uses[below (self, G_N_ELEMENTS (uses))], id,
                             below (self, 3) == 0 ? day - below (self, 3) : day, some_base (self) / 2, 0, error))
      return FALSE;
  for (int i = 0; i < made; i++)
    if (!harvest (self, id, makes, day, 0, error))
      return FALSE;
  if (below (self, 8) == 0 &&
      !stead_lot_repo_use (self->farm->store, self->farm->straw, id, TODAY, some_base (self) / 2, 0, error))
    return FALSE;
  return stead_recost_batch (self->farm->store, id, error);
}

static gboolean
sell (History  *self,
      GError  **error)
{
  return stead_lot_repo_sell (self->farm->store, some_item (self), some_day (self), some_base (self), NULL, 0, error);
}

static gboolean
adjust (History  *self,
        GError  **error)
{
  static const SteadMoveKind kinds[] = { STEAD_MOVE_LOST, STEAD_MOVE_GIVEN, STEAD_MOVE_COUNTED, STEAD_MOVE_CORRECTED };
  gint64 lot_id = some_id (self, "lot");
  SteadMoveKind kind = kinds[below (self, 4)];
  double base = some_base (self) * (kind >= STEAD_MOVE_COUNTED && below (self, 2) == 0 ? 1 : -1);

  return stead_lot_repo_adjust (self->farm->store, lot_id, kind, some_day (self), base, "because", 0, error);
}

static gboolean
drop_receipt (History  *self,
              GError  **error)
{
  return stead_receipt_repo_delete (self->farm->store, some_id (self, "receipt"), error);
}

static gboolean
turn (History  *self,
      GError  **error)
{
  SteadStockMethod method;

  g_assert_true (stead_recost_method (self->farm->store, &method, error));
  return stead_farm_repo_set_stock_method (self->farm->store, method == STEAD_STOCK_FIFO ? STEAD_STOCK_AVERAGE_MOVING
                                                                                         : STEAD_STOCK_FIFO, error);
}

typedef gboolean (*Deed) (History *self, GError **error);

static const Deed deeds[] = { buy, buy, buy, change_receipt, change_receipt, correct_receipt, use, feed, forget_feed, lay,
                              cook, cook, cook, sell, sell, adjust, adjust, drop_receipt, turn };

static void
undo_some (History *self)
{
  int n = 1 + below (self, 3), back = below (self, 2);

  for (int i = 0; i < n; i++)
    {
      g_autoptr(GError) error = NULL;
      g_autofree char *name = stead_store_get_undo_name (self->farm->store);

      if (name == NULL || g_str_equal (name, "begin"))
        return;
      if (!stead_store_undo (self->farm->store, &error))
        {
          g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_SIGNED);
          return;
        }
    }
  while (n-- > 0 && back)
    {
      g_autoptr(GError) error = NULL;

      g_assert_true (stead_store_redo (self->farm->store, &error));
    }
}

static void
do_something (History *self)
{
  g_autoptr(GError) error = NULL;

  if (below (self, 12) == 0)
    {
      undo_some (self);
      return;
    }
  g_assert_true (stead_store_begin (self->farm->store, "deed", &error));
  if (deeds[below (self, G_N_ELEMENTS (deeds))] (self, &error))
    {
      g_assert_no_error (error);
      g_assert_true (stead_store_commit (self->farm->store, &error));
      return;
    }
  g_assert_nonnull (error);
  if (!g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID) &&
      !g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_SIGNED) &&
      !g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND))
    g_error ("%s", error->message);
  stead_store_rollback (self->farm->store);
}

/* --- what must hold ------------------------------------------------------------------ */

/* Receipts as they are written = stock + what hens took and did not give yet + what is gone;
 * what kitchens took is in stock again. */
static void
assert_cents (History *self)
{
  static const char sql[] =
    "SELECT (SELECT coalesce (sum (cost_cents), 0) FROM receipt_line), (SELECT coalesce (sum (cents), 0) FROM lot_stock)"
    " + coalesce (-sum (m.cost_cents) FILTER (WHERE m.kind IN ('sold', 'given', 'lost', 'counted', 'corrected')"
    "                                         OR (m.kind = 'used' AND m.batch_id = ?1)), 0)"
    " - coalesce (sum (m.cost_cents) FILTER (WHERE m.kind = 'made' AND l.batch_id = ?1), 0)"
    " FROM movement m JOIN lot l ON l.id = m.lot_id";
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStmt) stmt = stead_store_prepare (self->farm->store, sql, &error);

  g_assert_no_error (error);
  sqlite3_bind_int64 (stmt, 1, self->farm->flock);
  g_assert_cmpint (stead_store_step (self->farm->store, stmt, &error), ==, 1);
  g_assert_cmpint (sqlite3_column_int64 (stmt, 0), ==, sqlite3_column_int64 (stmt, 1));
}

/* One item's movements in order, what came on a day first, by core's moving average. */
static void
assert_average_of (History *self,
                   gint64   item_id)
{
  static const char sql[] =
    "SELECT m.quantity_base, m.cost_cents, r.id IN (SELECT corrects_id FROM receipt WHERE corrects_id IS NOT NULL)"
    " FROM lot l JOIN movement m ON m.lot_id = l.id LEFT JOIN receipt_line rl ON rl.id = l.receipt_line_id"
    " LEFT JOIN receipt r ON r.id = rl.receipt_id WHERE l.item_id = ?1 ORDER BY m.day, m.quantity_base < 0, m.id";
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStmt) stmt = stead_store_prepare (self->farm->store, sql, &error);
  g_autoptr(GArray) moves = g_array_new (FALSE, FALSE, sizeof (SteadMovement));
  SteadStockFigures figures;
  gint64 cents = 0;
  double base = 0;

  g_assert_no_error (error);
  sqlite3_bind_int64 (stmt, 1, item_id);
  while (stead_store_step (self->farm->store, stmt, &error) == 1)
    {
      SteadMovement move = { .quantity = sqlite3_column_double (stmt, 0) };

      if (sqlite3_column_int (stmt, 2) != 0)
        continue;
      if (base + move.quantity < 0)      /* 0.1 + 0.2 - 0.3 */
        move.quantity = -base;
      base += move.quantity;
      cents += sqlite3_column_int64 (stmt, 1);
      move.unit_cents = move.quantity > 0 ? (double) sqlite3_column_int64 (stmt, 1) / move.quantity : 0;
      if (move.quantity != 0)
        g_array_append_val (moves, move);
    }
  if (moves->len == 0)
    return;
  g_assert_true (stead_stock_figures ((const SteadMovement *) (void *) moves->data, moves->len, STEAD_STOCK_AVERAGE_MOVING,
                                      &figures, &error));
  g_assert_cmpfloat (fabs (figures.stock_cents - (double) cents), <=, 0.5 * moves->len + 1);
}

static void
assert_average (History *self)
{
  SteadStockMethod method;
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_recost_method (self->farm->store, &method, &error));
  if (method == STEAD_STOCK_FIFO)
    return;
  assert_average_of (self, self->flour);
  assert_average_of (self, self->eggs);
  assert_average_of (self, self->farm->straw);
  assert_average_of (self, self->farm->feed);
}

static void
assert_verified (History *self)
{
  g_autoptr(GPtrArray) found = g_ptr_array_new_with_free_func (g_free);
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_store_verify_connection (stead_store_get_db (self->farm->store), NULL, found, &error));
  for (guint i = 0; i < found->len; i++)
    g_error ("%s", (const char *) found->pdata[i]);
}

/* Costing all of it anew finds nothing to change, if it averages: the order of entry does not matter. */
static void
assert_at_rest (History *self)
{
  g_autofree char *before = fixture_dump (self->farm->store);
  g_autofree char *after = NULL;
  g_autoptr(GError) error = NULL;
  SteadStockMethod method;

  g_assert_true (stead_recost_method (self->farm->store, &method, &error));
  if (method == STEAD_STOCK_FIFO)
    return;
  ACT (self->farm, stead_recost_all (self->farm->store, err));
  after = fixture_dump (self->farm->store);
  g_assert_cmpstr (after, ==, before);
}

/* --- histories ------------------------------------------------------------------------ */

/* What is signed cannot be undone, so there the next history needs another farm. */
static void
start_over (Farm *farm,
            Farm *fresh)
{
  sqlite3_backup *copy = sqlite3_backup_init (stead_store_get_db (farm->store), "main",
                                              stead_store_get_db (fresh->store), "main");

  g_assert_nonnull (copy);
  g_assert_cmpint (sqlite3_backup_step (copy, -1), ==, SQLITE_DONE);
  g_assert_cmpint (sqlite3_backup_finish (copy), ==, SQLITE_OK);
}

/* Some are undone to the beginning. */
static void
live (History  *start,
      GRand    *rand,
      gboolean  and_back)
{
  History history = *start;
  Farm *farm = history.farm;

  history.rand = rand;
  history.unsigned_only = and_back;
  for (int i = 0; i < DEEDS; i++)
    {
      do_something (&history);
      assert_cents (&history);
    }
  assert_average (&history);
  assert_verified (&history);
  if (!and_back)
    return;
  assert_at_rest (&history);
  farm_assert_ledger (farm);
  for (;;)
    {
      g_autofree char *name = stead_store_get_undo_name (farm->store);
      g_autoptr(GError) error = NULL;

      if (name == NULL || g_str_equal (name, "begin"))
        break;
      g_assert_true (stead_store_undo (farm->store, &error));
      assert_cents (&history);
    }
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM movement"), ==, 0);
}

static void
run (SteadStockMethod method)
{
  const char *wanted = g_getenv ("STEAD_HISTORIES");
  int n = wanted != NULL ? atoi (wanted) : 1000;
  g_autoptr(Farm) fresh = farm_new ();
  g_autoptr(Farm) farm = farm_new ();
  History history = { .farm = farm };

  history.flour = farm_item (fresh, "Flour", STEAD_ITEM_INGREDIENT, "lb");
  history.eggs = farm_item (fresh, "Egg", STEAD_ITEM_PRODUCE, "ea");
  history.dough = farm_item (fresh, "Dough", STEAD_ITEM_PRODUCE, "lb");
  history.bread = farm_item (fresh, "Bread", STEAD_ITEM_PRODUCE, "lb");
  ACT (fresh, stead_farm_repo_set_stock_method (fresh->store, method, err));
  fixture_act (fresh->store, "begin", "UPDATE farm SET labor_cents_hour = 700");
  for (int i = 0; i < n; i++)
    {
      GRand *rand = g_rand_new_with_seed ((guint32) (method * 1000003 + i));

      g_test_message ("history %d", i);
      start_over (farm, fresh);
      live (&history, rand, i % 16 == 0);
      g_rand_free (rand);
    }
}

static void
test_lots (void)
{
  run (STEAD_STOCK_FIFO);
}

static void
test_average (void)
{
  run (STEAD_STOCK_AVERAGE_MOVING);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/recost-history/lots", test_lots);
  g_test_add_func ("/store/recost-history/average", test_average);
  return g_test_run ();
}
