/* stead-sale-repo.c - sale days: their plans as they are read. */
#include "config.h"

#include <math.h>

#include "store/stead-sale-private.h"

/* --- structs ------------------------------------------------------------------------ */

SteadSale *
stead_sale_new (void)
{
  SteadSale *sale = g_new0 (SteadSale, 1);

  sale->day = STEAD_DAY_NONE;
  sale->opened_at = sale->closed_at = STEAD_SALE_NO_TIME;
  sale->goods = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_sale_good_free);
  sale->costs = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_sale_cost_free);
  sale->shifts = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_sale_shift_free);
  sale->bring = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_sale_bring_free);
  sale->float_pieces = g_array_new (FALSE, TRUE, sizeof (SteadCashPiece));
  return sale;
}

void
stead_sale_free (SteadSale *sale)
{
  if (sale == NULL)
    return;
  g_free (sale->name);
  g_free (sale->location);
  g_free (sale->weather);
  g_free (sale->note);
  g_free (sale->change_next);
  g_ptr_array_unref (sale->goods);
  g_ptr_array_unref (sale->costs);
  g_ptr_array_unref (sale->shifts);
  g_ptr_array_unref (sale->bring);
  g_array_unref (sale->float_pieces);
  g_free (sale);
}

SteadSaleGood *
stead_sale_good_new (void)
{
  SteadSaleGood *good = g_new0 (SteadSaleGood, 1);

  good->brought = good->low = good->likely = good->high = good->cost_cents = NAN;
  good->lots = g_array_new (FALSE, TRUE, sizeof (SteadSaleLot));
  return good;
}

void
stead_sale_good_free (SteadSaleGood *good)
{
  if (good == NULL)
    return;
  g_free (good->name);
  g_array_unref (good->lots);
  g_free (good);
}

void
stead_sale_cost_free (SteadSaleCost *cost)
{
  if (cost == NULL)
    return;
  g_free (cost->name);
  g_free (cost);
}

void
stead_sale_shift_free (SteadSaleShift *shift)
{
  if (shift == NULL)
    return;
  g_free (shift->duty);
  g_free (shift->person_name);
  g_free (shift);
}

void
stead_sale_bring_free (SteadSaleBring *bring)
{
  if (bring == NULL)
    return;
  g_free (bring->text);
  g_free (bring);
}

double
stead_sale_good_brought (const SteadSaleGood *good)
{
  g_return_val_if_fail (good != NULL, 0);
  return isnan (good->brought) ? good->planned : good->brought;
}

gint64
stead_sale_float_cents (const SteadSale *sale)
{
  gint64 sum = 0;

  g_return_val_if_fail (sale != NULL, 0);
  for (guint i = 0; i < sale->float_pieces->len; i++)
    {
      const SteadCashPiece *piece = &g_array_index (sale->float_pieces, SteadCashPiece, i);

      sum += piece->face_cents * piece->pieces;
    }
  return sum;
}

gint64
stead_sale_cost_paid (const SteadSaleCost *cost)
{
  g_return_val_if_fail (cost != NULL, 0);
  return cost->paid_cents < 0 ? cost->cents : cost->paid_cents;
}

SteadSaleGood *
stead_sale_find_good (const SteadSale *sale,
                      gint64           line_id)
{
  g_return_val_if_fail (sale != NULL, NULL);
  for (guint i = 0; i < sale->goods->len; i++)
    if (((SteadSaleGood *) sale->goods->pdata[i])->id == line_id)
      return sale->goods->pdata[i];
  return NULL;
}

gint64
stead_sale_time (SteadDay day,
                 int      minute)
{
  int year, month, mday;
  g_autoptr(GDateTime) time = NULL;

  g_return_val_if_fail (stead_day_is_valid (day) && minute >= 0 && minute <= 2880, STEAD_SALE_NO_TIME);
  stead_day_split (day + minute / 1440, &year, &month, &mday);
  time = g_date_time_new_local (year, month, mday, minute % 1440 / 60, minute % 60, 0);
  return g_date_time_to_unix (time);
}

/* --- reading ------------------------------------------------------------------------ */

#define SALE_COLUMNS \
  "s.id, s.name, s.day, s.location, s.opens_min, s.closes_min, s.weather, s.account_id, s.note, s.opened_at," \
  " s.closed_at, s.change_next, (SELECT c.id FROM cash_count c WHERE c.sale_id = s.id)"

static gint64
time_at (SteadStmt *stmt,
         int        at)
{
  return sqlite3_column_type (stmt, at) == SQLITE_NULL ? STEAD_SALE_NO_TIME : sqlite3_column_int64 (stmt, at);
}

static gpointer
sale_from_row (SteadStmt *stmt)
{
  SteadSale *sale = stead_sale_new ();

  sale->id = sqlite3_column_int64 (stmt, 0);
  sale->name = stead_stmt_text (stmt, 1);
  sale->day = stead_stmt_day (stmt, 2);
  sale->location = stead_stmt_text (stmt, 3);
  sale->opens_min = sqlite3_column_int (stmt, 4);
  sale->closes_min = sqlite3_column_int (stmt, 5);
  sale->weather = stead_stmt_text (stmt, 6);
  sale->account_id = sqlite3_column_int64 (stmt, 7);
  sale->note = stead_stmt_text (stmt, 8);
  sale->opened_at = time_at (stmt, 9);
  sale->closed_at = time_at (stmt, 10);
  sale->change_next = stead_stmt_text (stmt, 11);
  sale->count_id = sqlite3_column_int64 (stmt, 12);
  return sale;
}

static gpointer
good_from_row (SteadStmt *stmt)
{
  SteadSaleGood *good = stead_sale_good_new ();
  const char *key = (const char *) sqlite3_column_text (stmt, 10);

  good->id = sqlite3_column_int64 (stmt, 0);
  good->product_id = sqlite3_column_int64 (stmt, 1);
  good->price_cents = sqlite3_column_int64 (stmt, 2);
  good->planned = sqlite3_column_double (stmt, 3);
  good->brought = stead_stmt_real (stmt, 4);
  good->low = stead_stmt_real (stmt, 5);
  good->likely = stead_stmt_real (stmt, 6);
  good->high = stead_stmt_real (stmt, 7);
  good->left_cents = sqlite3_column_int64 (stmt, 8);
  good->missed_cents = sqlite3_column_int64 (stmt, 9);
  good->key = key != NULL ? key[0] : 0;
  good->name = stead_stmt_text (stmt, 11);
  good->pack = stead_pack_from_word ((const char *) sqlite3_column_text (stmt, 12));
  good->base_per_unit = sqlite3_column_double (stmt, 13);
  good->item_id = sqlite3_column_int64 (stmt, 14);
  good->cost_cents = stead_stmt_real (stmt, 15);
  return good;
}

static gboolean
read_lots (SteadStore     *store,
           SteadSaleGood  *good,
           GError        **error)
{
  static const char sql[] = "SELECT x.lot_id, x.base FROM sale_lot x JOIN lot l ON l.id = x.lot_id"
                            " WHERE x.line_id = ?1 ORDER BY l.best_by IS NULL, l.best_by, l.day, l.id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, good->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadSaleLot lot = { .lot_id = sqlite3_column_int64 (stmt, 0), .base = sqlite3_column_double (stmt, 1) };

      g_array_append_val (good->lots, lot);
    }
  return found == 0;
}

/* The rows of @sql, whose only parameter is the sale; replaces *@rows. */
static gboolean
read_rows (SteadStore      *store,
           const char      *sql,
           gint64           sale_id,
           SteadRowFunc     row,
           GDestroyNotify   free_row,
           GPtrArray      **rows,
           GError         **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  GPtrArray *read;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, sale_id);
  read = stead_repo_rows (store, stmt, row, free_row, error);
  if (read == NULL)
    return FALSE;
  g_ptr_array_unref (*rows);
  *rows = read;
  return TRUE;
}

static gpointer
cost_from_row (SteadStmt *stmt)
{
  SteadSaleCost *cost = g_new0 (SteadSaleCost, 1);

  cost->id = sqlite3_column_int64 (stmt, 0);
  cost->name = stead_stmt_text (stmt, 1);
  cost->cents = sqlite3_column_int64 (stmt, 2);
  cost->paid_cents = sqlite3_column_type (stmt, 3) == SQLITE_NULL ? -1 : sqlite3_column_int64 (stmt, 3);
  cost->from_till = sqlite3_column_int (stmt, 4) != 0;
  return cost;
}

static gpointer
shift_from_row (SteadStmt *stmt)
{
  SteadSaleShift *shift = g_new0 (SteadSaleShift, 1);

  shift->id = sqlite3_column_int64 (stmt, 0);
  shift->person_id = sqlite3_column_int64 (stmt, 1);
  shift->from_min = sqlite3_column_int (stmt, 2);
  shift->to_min = sqlite3_column_int (stmt, 3);
  shift->break_min = sqlite3_column_int (stmt, 4);
  shift->duty = stead_stmt_text (stmt, 5);
  shift->person_name = stead_stmt_text (stmt, 6);
  return shift;
}

static gpointer
bring_from_row (SteadStmt *stmt)
{
  SteadSaleBring *bring = g_new0 (SteadSaleBring, 1);

  bring->id = sqlite3_column_int64 (stmt, 0);
  bring->text = stead_stmt_text (stmt, 1);
  bring->packed = sqlite3_column_int (stmt, 2) != 0;
  return bring;
}

static gboolean
read_float (SteadStore  *store,
            SteadSale   *sale,
            GError     **error)
{
  static const char sql[] = "SELECT face_cents, pieces FROM sale_float WHERE sale_id = ?1 ORDER BY face_cents DESC";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, sale->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadCashPiece piece = { .face_cents = sqlite3_column_int64 (stmt, 0),
                               .pieces = sqlite3_column_int64 (stmt, 1) };

      g_array_append_val (sale->float_pieces, piece);
    }
  return found == 0;
}

static gboolean
read_goods (SteadStore  *store,
            SteadSale   *sale,
            GError     **error)
{
  static const char sql[] =
    "SELECT l.id, l.product_id, l.price_cents, l.planned, l.brought, l.low, l.likely, l.high,"
    " coalesce (l.left_cents, 0), coalesce (l.missed_cents, 0), l.key, p.name, p.pack, p.base_per_unit, p.item_id,"
    " l.cost_cents FROM sale_line l JOIN product p ON p.id = l.product_id WHERE l.sale_id = ?1 ORDER BY l.position, l.id";

  if (!read_rows (store, sql, sale->id, good_from_row, (GDestroyNotify) stead_sale_good_free, &sale->goods, error))
    return FALSE;
  for (guint i = 0; i < sale->goods->len; i++)
    if (!read_lots (store, sale->goods->pdata[i], error))
      return FALSE;
  return TRUE;
}

static gboolean
read_parts (SteadStore  *store,
            SteadSale   *sale,
            GError     **error)
{
  static const char cost_sql[] = "SELECT id, name, cents, paid_cents, from_till FROM sale_cost WHERE sale_id = ?1"
                                 " ORDER BY id";
  static const char shift_sql[] =
    "SELECT x.id, x.person_id, x.from_min, x.to_min, x.break_min, x.duty, p.name FROM sale_shift x"
    " JOIN person p ON p.id = x.person_id WHERE x.sale_id = ?1 ORDER BY x.from_min, x.id";
  static const char bring_sql[] = "SELECT id, text, packed FROM sale_bring WHERE sale_id = ?1 ORDER BY position, id";

  return read_goods (store, sale, error) &&
         read_rows (store, cost_sql, sale->id, cost_from_row, (GDestroyNotify) stead_sale_cost_free, &sale->costs,
                    error) &&
         read_rows (store, shift_sql, sale->id, shift_from_row, (GDestroyNotify) stead_sale_shift_free,
                    &sale->shifts, error) &&
         read_rows (store, bring_sql, sale->id, bring_from_row, (GDestroyNotify) stead_sale_bring_free,
                    &sale->bring, error) &&
         read_float (store, sale, error);
}

GPtrArray *
stead_sale_repo_list (SteadStore  *store,
                      GError     **error)
{
  static const char sql[] = "SELECT " SALE_COLUMNS " FROM sale_day s ORDER BY s.day DESC, s.id DESC";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL ? stead_repo_rows (store, stmt, sale_from_row, (GDestroyNotify) stead_sale_free, error) : NULL;
}

SteadSale *
stead_sale_repo_get (SteadStore  *store,
                     gint64       id,
                     GError     **error)
{
  static const char sql[] = "SELECT " SALE_COLUMNS " FROM sale_day s WHERE s.id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadSale) sale = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  sale = stead_repo_row (store, stmt, sale_from_row, error);
  return sale != NULL && read_parts (store, sale, error) ? g_steal_pointer (&sale) : NULL;
}

gint64
stead_sale_repo_next (SteadStore  *store,
                      GError     **error)
{
  static const char sql[] =
    "SELECT coalesce ((SELECT id FROM sale_day WHERE day >= ?1 AND closed_at IS NULL ORDER BY day, opens_min, id LIMIT 1),"
    " (SELECT id FROM sale_day WHERE day < ?1 AND closed_at IS NULL ORDER BY day DESC, id DESC LIMIT 1), 0)";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 id = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return -1;
  sqlite3_bind_int (stmt, 1, stead_store_get_today (store));
  return stead_repo_number (store, stmt, 0, &id, error) ? id : -1;
}

/* --- sums --------------------------------------------------------------------------- */

static SteadSaleSum
sum_from_row (SteadStmt *stmt)
{
  SteadSaleSum sum = { .sale_id = sqlite3_column_int64 (stmt, 0), .line_id = sqlite3_column_int64 (stmt, 1),
                       .product_id = sqlite3_column_int64 (stmt, 2) };

  sum.sold = sqlite3_column_double (stmt, 3);
  sum.samples = sqlite3_column_double (stmt, 4);
  sum.given = sqlite3_column_double (stmt, 5);
  sum.spoiled = sqlite3_column_double (stmt, 6);
  sum.takings_cents = sqlite3_column_int64 (stmt, 7);
  sum.ahead_cents = sqlite3_column_int64 (stmt, 8);
  sum.to_store = sqlite3_column_double (stmt, 9);
  sum.to_kitchen = sqlite3_column_double (stmt, 10);
  sum.to_given = sqlite3_column_double (stmt, 11);
  sum.to_waste = sqlite3_column_double (stmt, 12);
  sum.sold_cents = sqlite3_column_int64 (stmt, 13);
  sum.lost_cents = sqlite3_column_int64 (stmt, 14);
  sum.has_cost = sqlite3_column_int (stmt, 15) > 0;
  return sum;
}

/* Sums of a line's own rows, each found by its index. */
#define TAPS(what, kind) \
  "coalesce ((SELECT sum (" what ") FROM sale_tap t WHERE t.line_id = l.id AND t.kind = '" kind "'), 0)"
#define LEFT(where) \
  "coalesce ((SELECT sum (f.units) FROM sale_left f WHERE f.line_id = l.id AND f.goes_to = '" where "'), 0)"
#define MOVED(kinds) \
  "coalesce ((SELECT -sum (m.cost_cents) FROM movement m WHERE m.sale_line_id = l.id AND m.kind IN (" kinds ")), 0)"
#define SUMS \
  "SELECT l.sale_id, l.id, l.product_id, " TAPS ("t.units", "sold") ", " TAPS ("t.units", "sample") ", " \
  TAPS ("t.units", "given") ", " TAPS ("t.units", "spoiled") \
  ", cast (" TAPS ("round (t.units * t.price_cents)", "sold") " AS INTEGER)," \
  " cast (coalesce ((SELECT sum (round (t.units * t.price_cents)) FROM sale_order o JOIN sale_tap t ON t.id = o.tap_id" \
  "   WHERE o.line_id = l.id AND o.paid = 1), 0) AS INTEGER), " \
  LEFT ("store") ", " LEFT ("kitchen") ", " LEFT ("given") ", " LEFT ("waste") ", " \
  MOVED ("'sold'") ", " MOVED ("'given', 'lost'") "," \
  " (SELECT count (*) FROM movement m WHERE m.sale_line_id = l.id)"

GArray *
stead_sale_repo_sums (SteadStore  *store,
                      gint64       sale_id,
                      GError     **error)
{
  static const char all_sql[] = SUMS " FROM sale_day s JOIN sale_line l ON l.sale_id = s.id"
                                     " ORDER BY s.day, s.id, l.position, l.id";
  static const char one_sql[] = SUMS " FROM sale_line l WHERE l.sale_id = ?1 ORDER BY l.position, l.id";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(GArray) sums = g_array_new (FALSE, TRUE, sizeof (SteadSaleSum));
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sale_id == 0 ? all_sql : one_sql, error);
  if (stmt == NULL)
    return NULL;
  if (sale_id != 0)
    sqlite3_bind_int64 (stmt, 1, sale_id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadSaleSum sum = sum_from_row (stmt);

      g_array_append_val (sums, sum);
    }
  return found == 0 ? g_steal_pointer (&sums) : NULL;
}

const SteadSaleSum *
stead_sale_sums_find (const GArray *sums,
                      gint64        line_id)
{
  g_return_val_if_fail (sums != NULL, NULL);
  for (guint i = 0; i < sums->len; i++)
    if (g_array_index (sums, SteadSaleSum, i).line_id == line_id)
      return &g_array_index (sums, SteadSaleSum, i);
  return NULL;
}

double
stead_sale_sum_tallied (const SteadSaleSum *sum)
{
  g_return_val_if_fail (sum != NULL, 0);
  return sum->sold + sum->samples + sum->given + sum->spoiled;
}

double
stead_sale_sum_left (const SteadSaleSum *sum)
{
  g_return_val_if_fail (sum != NULL, 0);
  return sum->to_store + sum->to_kitchen + sum->to_given + sum->to_waste;
}
