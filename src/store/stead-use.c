/* stead-use.c - what a batch took out of the store room, and how much is left there. */
#include "config.h"

#include <math.h>

#include "store/stead-item-private.h"
#include "store/stead-lot-repo.h"
#include "store/stead-recost.h"
#include "store/stead-repo-private.h"

void
stead_use_free (SteadUse *use)
{
  if (use == NULL)
    return;
  g_free (use->item_name);
  g_free (use);
}

static gpointer
use_from_row (SteadStmt *stmt)
{
  SteadUse *use = g_new0 (SteadUse, 1);

  use->item_id = sqlite3_column_int64 (stmt, 0);
  use->item_name = stead_stmt_text (stmt, 1);
  use->kind = (SteadItemKind) stead_repo_word (stmt, 2, stead_item_kind_words);
  use->unit = stead_item_unit (stmt, 3);
  use->quantity_base = sqlite3_column_double (stmt, 4);
  use->cost_cents = sqlite3_column_int64 (stmt, 5);
  use->gift_cents = sqlite3_column_int64 (stmt, 6);
  return use;
}

/* A batch has a movement for each entry of its log, but few lots: they are summed by
 * lot before anything else is looked up.  *out_fed_base: of it, what its log fed. */
static GPtrArray *
list_covered (SteadStore  *store,
              gint64       batch_id,
              SteadDay     from,
              SteadDay     to,
              double      *out_fed_base,
              GError     **error)
{
  static const char sql[] =
    "SELECT i.id, i.name, i.kind, i.unit, sum (taken.base), sum (taken.cents),"
    " sum (iif (r.is_gift, taken.cents, 0)), sum (taken.fed)"
    " FROM (SELECT lot_id, -sum (quantity_base) AS base, -sum (cost_cents) AS cents,"
    "              -sum (iif (entry_id IS NULL, 0, quantity_base)) AS fed"
    "         FROM movement WHERE batch_id = ?1 AND day BETWEEN ?2 AND ?3 AND kind = 'used' GROUP BY lot_id) taken"
    " JOIN lot l ON l.id = taken.lot_id JOIN item i ON i.id = l.item_id"
    " LEFT JOIN receipt_line rl ON rl.id = l.receipt_line_id LEFT JOIN receipt r ON r.id = rl.receipt_id"
    " GROUP BY i.id ORDER BY i.name, i.id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autoptr(GPtrArray) uses = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_use_free);
  double fed = 0;
  int found;

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      g_ptr_array_add (uses, use_from_row (stmt));
      fed += sqlite3_column_double (stmt, 7);
    }
  *out_fed_base = fed;
  return found == 0 ? g_steal_pointer (&uses) : NULL;
}

/* --- feed that no receipt covers ------------------------------------------------ */

/* Lines of receipts that count: what was corrected tells no price any more. */
#define COUNTS \
  "(rl.receipt_id IS NULL" \
  " OR rl.receipt_id NOT IN (SELECT corrects_id FROM receipt WHERE corrects_id IS NOT NULL))"

/* What a lot cost and how much of it came, whether it was bought or made here. */
#define LOT_CAME \
  "LEFT JOIN receipt_line rl ON rl.id = l.receipt_line_id" \
  " LEFT JOIN movement m ON m.lot_id = l.id AND m.kind = 'made' AND l.batch_id IS NOT NULL"
#define LOT_CENTS "coalesce (rl.cost_cents, m.cost_cents)"
#define LOT_BASE "coalesce (rl.quantity_base, m.quantity_base)"

/* Cents for a base unit on the receipt nearest to @day: the last up to it, else the first after. */
static gboolean
nearest_price (SteadStore  *store,
               gint64       item_id,
               SteadDay     day,
               double      *out_cents,
               GError     **error)
{
  static const char sql[] =
    "SELECT (SELECT " LOT_CENTS " / " LOT_BASE " FROM lot l " LOT_CAME
    "         WHERE l.item_id = ?1 AND l.day <= ?2 AND " COUNTS " ORDER BY l.day DESC, l.id DESC LIMIT 1),"
    "       (SELECT " LOT_CENTS " / " LOT_BASE " FROM lot l " LOT_CAME
    "         WHERE l.item_id = ?1 AND l.day > ?2 AND " COUNTS " ORDER BY l.day, l.id LIMIT 1)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, item_id);
  sqlite3_bind_int (stmt, 2, day);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  *out_cents = stead_stmt_real (stmt, sqlite3_column_type (stmt, 0) != SQLITE_NULL ? 0 : 1);
  return TRUE;
}

/* Days with feed that no movement covers, from the last one back until all of @open_kg is
 * found: receipts cover the oldest feed first, so it lies near the end of the span. */
static gboolean
price_uncovered (SteadStore  *store,
                 gint64       batch_id,
                 SteadDay     from,
                 SteadDay     to,
                 double       open_kg,
                 SteadUse    *use,
                 GError     **error)
{
  static const char sql[] =
    "SELECT e.day, sum (e.feed_kg) + coalesce (sum ((SELECT sum (m.quantity_base) FROM movement m"
    "                                                 WHERE m.entry_id = e.id)), 0) AS open_kg"
    " FROM batch_entry e WHERE e.batch_id = ?1 AND e.day BETWEEN ?2 AND ?3 AND e.feed_kg > 0"
    " GROUP BY e.day HAVING open_kg > 1e-6 ORDER BY e.day DESC";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found = 1;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  while (use->uncovered_base < open_kg - 1e-6 && (found = stead_store_step (store, stmt, error)) == 1)
    {
      double price = NAN;

      if (!nearest_price (store, use->item_id, stead_stmt_day (stmt, 0), &price, error))
        return FALSE;
      use->uncovered_base += sqlite3_column_double (stmt, 1);
      use->uncovered_cents += price * sqlite3_column_double (stmt, 1);
    }
  return found >= 0;
}

/* The item that the batch feeds, with what its log has of it in the span. */
static int
log_feed (SteadStore  *store,
          gint64       batch_id,
          SteadDay     from,
          SteadDay     to,
          SteadUse   **out,
          double      *out_feed_kg,
          GError     **error)
{
  static const char sql[] =
    "SELECT i.id, i.name, i.kind, i.unit, 0, 0, 0,"
    " (SELECT sum (feed_kg) FROM batch_entry WHERE batch_id = ?1 AND day BETWEEN ?2 AND ?3)"
    " FROM batch b JOIN item i ON i.id = b.feed_item_id WHERE b.id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return -1;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  found = stead_store_step (store, stmt, error);
  if (found == 1)
    {
      *out = use_from_row (stmt);
      *out_feed_kg = sqlite3_column_double (stmt, 7);
    }
  return found;
}

static SteadUse *
find_use (GPtrArray *uses,
          gint64     item_id)
{
  for (guint i = 0; i < uses->len; i++)
    {
      SteadUse *use = g_ptr_array_index (uses, i);

      if (use->item_id == item_id)
        return use;
    }
  return NULL;
}

static gboolean
add_uncovered (SteadStore  *store,
               GPtrArray   *uses,
               gint64       batch_id,
               SteadDay     from,
               SteadDay     to,
               double       covered_kg,
               GError     **error)
{
  g_autoptr(SteadUse) fed = NULL;
  SteadUse *use;
  double feed_kg = 0;
  int found = log_feed (store, batch_id, from, to, &fed, &feed_kg, error);

  if (found < 0)
    return FALSE;
  if (found == 0 || !(feed_kg - covered_kg > 1e-6))
    return TRUE;
  use = find_use (uses, fed->item_id);
  if (use == NULL)
    g_ptr_array_add (uses, use = g_steal_pointer (&fed));
  return price_uncovered (store, batch_id, from, to, feed_kg - covered_kg, use, error);
}

/**
 * stead_lot_repo_uses:
 *
 * Returns: (transfer full) (element-type SteadUse): by item name, the batch's
 *   feed last if none of it is covered; %NULL with @error
 */
GPtrArray *
stead_lot_repo_uses (SteadStore  *store,
                     gint64       batch_id,
                     SteadDay     from,
                     SteadDay     to,
                     GError     **error)
{
  g_autoptr(GPtrArray) uses = NULL;
  double covered_kg = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  uses = list_covered (store, batch_id, from, to, &covered_kg, error);
  if (uses == NULL || !add_uncovered (store, uses, batch_id, from, to, covered_kg, error))
    return NULL;
  return g_steal_pointer (&uses);
}

/* --- stock ------------------------------------------------------------------------ */

static gboolean
read_on_hand (SteadStore  *store,
              gint64       item_id,
              SteadStock  *stock,
              GError     **error)
{
  static const char sql[] = "SELECT coalesce (sum (s.base), 0), coalesce (sum (s.cents), 0)"
                            " FROM lot l JOIN lot_stock s ON s.lot_id = l.id WHERE l.item_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  double base;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, item_id);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  base = sqlite3_column_double (stmt, 0);
  stock->on_hand_base = base > STEAD_AMOUNT_EPSILON ? base : 0;
  stock->on_hand_cents = sqlite3_column_int64 (stmt, 1);
  return TRUE;
}

/* Used by hand, and fed by the logs, covered or not: the hens ate it either way. */
static gboolean
read_use (SteadStore  *store,
          gint64       item_id,
          SteadDay     from,
          SteadDay     to,
          double      *out_base,
          GError     **error)
{
  static const char sql[] =
    "SELECT (SELECT coalesce (sum (-m.quantity_base), 0) FROM lot l CROSS JOIN movement m ON m.lot_id = l.id"
    "         WHERE l.item_id = ?1 AND m.day BETWEEN ?2 AND ?3 AND m.kind IN ('used', 'sold')"
    "           AND m.entry_id IS NULL)"
    "     + (SELECT coalesce (sum (e.feed_kg), 0) FROM batch b CROSS JOIN batch_entry e ON e.batch_id = b.id"
    "         WHERE b.feed_item_id = ?1 AND e.day BETWEEN ?2 AND ?3)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, item_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  *out_base = sqlite3_column_double (stmt, 0);
  return TRUE;
}

/* The oldest lot with something on hand, else the newest lot that there was. */
static gboolean
read_next (SteadStore  *store,
           gint64       item_id,
           SteadStock  *stock,
           GError     **error)
{
  static const char sql[] =
    "SELECT " LOT_CENTS ", " LOT_BASE ", coalesce (r.is_gift, 0), s.base > 1e-7 AS open"
    " FROM lot l JOIN lot_stock s ON s.lot_id = l.id " LOT_CAME
    " LEFT JOIN receipt r ON r.id = rl.receipt_id WHERE l.item_id = ?1 AND " COUNTS
    " ORDER BY open DESC, iif (open, l.day, -l.day), iif (open, l.id, -l.id) LIMIT 1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, item_id);
  found = stead_store_step (store, stmt, error);
  stock->next_unit_cents = NAN;
  if (found == 1)
    {
      stock->next_cost_cents = sqlite3_column_int64 (stmt, 0);
      stock->next_base = sqlite3_column_double (stmt, 1);
      stock->next_unit_cents = (double) stock->next_cost_cents / stock->next_base;
      stock->next_is_gift = sqlite3_column_int (stmt, 2) != 0;
    }
  return found >= 0;
}

/* On a farm that averages, the next to go costs what all on hand costs. */
static gboolean
average_next (SteadStore  *store,
              SteadStock  *stock,
              GError     **error)
{
  SteadStockMethod method;

  if (!stead_recost_method (store, &method, error))
    return FALSE;
  if (method == STEAD_STOCK_FIFO || !(stock->on_hand_base > 0))
    return TRUE;
  stock->next_cost_cents = stock->on_hand_cents;
  stock->next_base = stock->on_hand_base;
  stock->next_unit_cents = (double) stock->on_hand_cents / stock->on_hand_base;
  return TRUE;
}

/**
 * stead_lot_repo_stock:
 * @days: over how many days up to @today, that day included, use is averaged; 1 or more
 *
 * Returns: %TRUE, or %FALSE with @error and @out left alone
 */
gboolean
stead_lot_repo_stock (SteadStore  *store,
                      gint64       item_id,
                      SteadDay     today,
                      int          days,
                      SteadStock  *out,
                      GError     **error)
{
  SteadStock stock = { 0 };
  double used = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store) && days > 0 && out != NULL, FALSE);
  if (!read_on_hand (store, item_id, &stock, error) || !read_next (store, item_id, &stock, error) ||
      !average_next (store, &stock, error) || !read_use (store, item_id, today - days + 1, today, &used, error))
    return FALSE;
  stock.use_per_day_base = used / days;
  *out = stock;
  return TRUE;
}
