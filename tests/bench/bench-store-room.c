/* bench-store-room.c - recosting after a price changed, and tracing, against plain reads of the same rows.
 *
 * usage: bench-store-room            5,000 lots with 300 kitchen batches; 100,000 lots
 *        bench-store-room --short    a test: small, no limit of time
 *
 * Goals: every cost that follows from one receipt, on 5,000 lots, under 50 ms; a trace
 * across 100,000 lots under 100 ms.  The plain read steps through the movements of the
 * same lots with one SELECT and adds nothing up.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "store/stead-farm-repo.h"
#include "store/stead-receipt-repo.h"
#include "store/stead-trace-repo.h"

#define ROUNDS 7
#define TODAY (stead_day_new (2026, 3, 3))

/* The processor's own time: other programs do not count. */
static double
now_ms (void)
{
  struct timespec at;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &at);
  return (double) at.tv_sec * 1e3 + (double) at.tv_nsec / 1e6;
}

typedef struct
{
  SteadStore *store;
  sqlite3    *plain;    /* the same file, read without us */
} Room;

static void
run (sqlite3    *db,
     const char *sql)
{
  char *message = NULL;

  if (sqlite3_exec (db, sql, NULL, NULL, &message) != SQLITE_OK)
    g_error ("%s", message);
}

static void
make_empty (const char *path)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store G_GNUC_UNUSED = stead_store_create (path, "Bench", &error);

  g_assert_no_error (error);
}

/* The folder holds files of ours alone, and folders of dated copies. */
static void
remove_tree (const char *path)
{
  g_autoptr(GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *inner = g_build_filename (path, name, NULL);

      remove_tree (inner);
    }
  g_remove (path);
}

static void
room_clear (Room *room)
{
  sqlite3_close (room->plain);
  g_object_unref (room->store);
}

/* @bought lots of 20 items by 500-line receipts; @batches batches, each of five lots and
 * making @made lots, the first @tier of them of bought goods, the others of what was made. */
static Room
make_farm (const char *folder,
           const char *name,
           int         bought,
           int         batches,
           int         made,
           int         tier)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autofree char *sql = NULL;
  Room room;

  make_empty (path);
  g_assert_cmpint (sqlite3_open (path, &room.plain), ==, SQLITE_OK);
  sql = g_strdup_printf (
    "BEGIN;"
    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 40)"
    " INSERT INTO item (id, name, kind, unit) SELECT i, 'Item ' || i, iif (i <= 20, 'ingredient', 'produce'), 'kg' FROM n;"
    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %1$d)"
    " INSERT INTO receipt (id, day, supplier, is_gift) SELECT i, %5$d - 900 + i * 300 / %1$d, 'Shop ' || (i %% 9), 0 FROM n;"
    "INSERT INTO receipt_line (id, receipt_id, item_id, quantity_base, cost_cents)"
    " SELECT id, id, 1 + id %% 20, 50, 1000 + id %% 777 FROM receipt;"
    "INSERT INTO lot (id, code, item_id, receipt_line_id, day) SELECT l.id, 'I' || l.id, item_id, l.id, day"
    " FROM receipt_line l JOIN receipt r ON r.id = l.receipt_id;"
    "INSERT INTO movement (lot_id, day, kind, quantity_base, cost_cents) SELECT l.id, l.day, 'received', 50, rl.cost_cents"
    " FROM lot l JOIN receipt_line rl ON rl.id = l.receipt_line_id;"
    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %2$d)"
    " INSERT INTO batch (id, kind, name, started_on) SELECT i, 'kitchen', 'Kitchen ' || i, %5$d - 500 + i * 400 / %2$d FROM n;"
    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %3$d)"
    " INSERT INTO lot (id, code, item_id, batch_id, day) SELECT %1$d + (b.id - 1) * %3$d + i, 'K' || b.id || '-' || i,"
    "  iif (b.id <= %4$d, 21, 31) + b.id %% 10, b.id, b.started_on FROM batch b JOIN n;"
    "INSERT INTO movement (lot_id, day, kind, quantity_base, cost_cents)"
    " SELECT id, day, 'made', 12, 0 FROM lot WHERE batch_id IS NOT NULL;"
    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 5)"
    " INSERT INTO movement (lot_id, day, kind, quantity_base, cost_cents, batch_id)"
    " SELECT iif (b.id <= %4$d, iif (i = 1 AND b.id %% 30 = 0, 1, 1 + (b.id * 7 + i * 13) %% %1$d),"
    "   %1$d + 1 + (b.id * 3 + i) %% (%4$d * %3$d)), b.started_on, 'used', -0.01, 0, b.id FROM batch b JOIN n;"
    "INSERT INTO movement (lot_id, day, kind, quantity_base, cost_cents)"
    " SELECT id, day + 1, 'sold', -5, 0 FROM lot WHERE batch_id IS NOT NULL;"
    "INSERT INTO account (id, name, kind, opened_on, opening_cents) VALUES (1, 'Bench till', 'till', %5$d - 1000, 0);"
    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 20000)"
    " INSERT INTO cash_line (day, account_id, cents, category) SELECT %5$d - i %% 900, 1, 100 + i, 'feed' FROM n;"
    "COMMIT", bought, batches, made, tier, TODAY);
  run (room.plain, sql);
  room.store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
  stead_store_set_today (room.store, TODAY);
  return room;
}

/* --- plain reads ---------------------------------------------------------------- */

static guint
read_all (sqlite3    *db,
          const char *sql)
{
  sqlite3_stmt *stmt = NULL;
  guint rows = 0;

  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL), ==, SQLITE_OK);
  while (sqlite3_step (stmt) == SQLITE_ROW)
    {
      rows++;
      for (int i = 0; i < sqlite3_column_count (stmt); i++)
        (void) sqlite3_column_value (stmt, i);
    }
  sqlite3_finalize (stmt);
  return rows;
}

static int
compare_ms (gconstpointer a,
            gconstpointer b)
{
  return *(const double *) a < *(const double *) b ? -1 : 1;
}

static double
median (double *ms)
{
  qsort (ms, ROUNDS, sizeof *ms, compare_ms);
  return ms[ROUNDS / 2];
}

/* --- recosting ------------------------------------------------------------------- */

static void
set_price (SteadStore *store,
           gint64      id,
           gint64      cents)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadReceipt) receipt = stead_receipt_repo_get (store, id, &error);

  g_assert_no_error (error);
  g_array_index (receipt->lines, SteadReceiptLine, 0).cost_cents = cents;
  g_assert_true (stead_receipt_repo_save (store, receipt, &error));
}

static void
set_method (SteadStore       *store,
            SteadStockMethod  method)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_store_begin (store, "method", &error));
  g_assert_true (stead_farm_repo_set_stock_method (store, STEAD_STOCK_AVERAGE_MOVING, &error));
  g_assert_true (stead_farm_repo_set_stock_method (store, method, &error));
  g_assert_true (stead_store_commit (store, &error));
}

static void
time_recost (const Room       *room,
             SteadStockMethod  method,
             const char       *name,
             gboolean          is_short)
{
  double ms[ROUNDS], plain[ROUNDS];
  guint rows = 0;
  double cost, read;

  set_method (room->store, method);
  for (int i = 0; i < ROUNDS; i++)
    {
      g_autoptr(GError) error = NULL;
      double before;

      g_assert_true (stead_store_begin (room->store, "price", &error));
      before = now_ms ();
      set_price (room->store, 1, 900000 + i * 100000);
      ms[i] = now_ms () - before;
      g_assert_true (stead_store_commit (room->store, &error));
      before = now_ms ();
      rows = read_all (room->plain, "SELECT m.id, m.lot_id, m.day, m.kind, m.quantity_base, m.cost_cents, m.batch_id"
                              " FROM lot l JOIN movement m ON m.lot_id = l.id ORDER BY l.item_id, m.day, m.id");
      plain[i] = now_ms () - before;
    }
  cost = median (ms);
  read = median (plain);
  printf ("# %s: every cost after one price in %.1f ms; a plain read of %u movements in %.1f ms; ratio %.2f\n",
          name, cost, rows, read, cost / MAX (read, 1e-3));
  printf ("%s - %s, %.1f ms\n", is_short || cost < 50 ? "ok" : "not ok", name, cost);
}

/* --- tracing ---------------------------------------------------------------------- */

static void
time_trace (const Room *room,
            gint64      lot_id,
            const char *name,
            gboolean    is_short)
{
  double ms[ROUNDS], plain[ROUNDS], cost, read;
  guint lots = 0, rows = 0;

  for (int i = 0; i < ROUNDS; i++)
    {
      g_autoptr(GError) error = NULL;
      g_autoptr(SteadTrace) trace = NULL;
      g_autoptr(GString) sql = g_string_new ("SELECT l.id, l.code, i.name, l.day, m.day, m.kind, m.quantity_base, m.batch_id"
                                             " FROM lot l JOIN item i ON i.id = l.item_id JOIN movement m ON m.lot_id = l.id"
                                             " WHERE l.id IN (0");
      double before = now_ms ();

      trace = stead_trace_repo_get (room->store, lot_id, &error);
      ms[i] = now_ms () - before;
      g_assert_no_error (error);
      lots = trace->lots->len;
      for (guint j = 0; j < lots; j++)
        g_string_append_printf (sql, ",%" G_GINT64_FORMAT, ((SteadTraceLot *) trace->lots->pdata[j])->id);
      g_string_append_c (sql, ')');
      before = now_ms ();
      rows = read_all (room->plain, sql->str);
      plain[i] = now_ms () - before;
    }
  cost = median (ms);
  read = median (plain);
  printf ("# %s: %u lots in %.1f ms; a plain read of their %u movements in %.1f ms; ratio %.1f\n",
          name, lots, cost, rows, read, cost / MAX (read, 1e-3));
  printf ("%s - %s, %.1f ms\n", is_short || cost < 100 ? "ok" : "not ok", name, cost);
}

int
main (int    argc,
      char **argv)
{
  gboolean is_short = argc > 1 && strcmp (argv[1], "--short") == 0;
  int scale = is_short ? 10 : 1;
  g_autofree char *folder = g_dir_make_tmp ("stead-bench-XXXXXX", NULL);
  Room room = make_farm (folder, "room.steading", 3800 / scale, 300 / scale, 4, 200 / scale);
  Room large = make_farm (folder, "large.steading", 60000 / scale / scale, 10000 / scale / scale, 4, 7000 / scale / scale);

  printf ("1..4\n");
  time_recost (&room, STEAD_STOCK_FIFO, "recost by lots", is_short);
  time_recost (&room, STEAD_STOCK_AVERAGE_MOVING, "recost by averages", is_short);
  time_trace (&large, 60000 / scale / scale + 4 * (10000 / scale / scale) - 3, "trace one jar", is_short);
  time_trace (&large, 1, "trace one sack", is_short);
  room_clear (&room);
  room_clear (&large);
  remove_tree (folder);
  return 0;
}
