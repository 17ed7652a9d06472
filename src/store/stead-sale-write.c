/* stead-sale-write.c - sale days: saving a plan, copying it, taking it away. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-farm-repo.h"
#include "store/stead-sale-private.h"

static void
bind_time (SteadStmt *stmt,
           int        at,
           gint64     time)
{
  if (time == STEAD_SALE_NO_TIME)
    sqlite3_bind_null (stmt, at);
  else
    sqlite3_bind_int64 (stmt, at, time);
}

static gboolean
write_day (SteadStore  *store,
           SteadSale   *sale,
           GError     **error)
{
  static const char insert_sql[] =
    "INSERT INTO sale_day (name, day, location, opens_min, closes_min, weather, account_id, note, opened_at, closed_at,"
    " change_next) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)";
  static const char update_sql[] =
    "UPDATE sale_day SET name = ?1, day = ?2, location = ?3, opens_min = ?4, closes_min = ?5, weather = ?6,"
    " account_id = ?7, note = ?8, opened_at = ?9, closed_at = ?10, change_next = ?11 WHERE id = ?12";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sale->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, sale->name);
  stead_stmt_bind_day (stmt, 2, sale->day);
  stead_repo_bind_tidy (stmt, 3, sale->location);
  sqlite3_bind_int (stmt, 4, sale->opens_min);
  sqlite3_bind_int (stmt, 5, sale->closes_min);
  stead_repo_bind_tidy (stmt, 6, sale->weather);
  stead_stmt_bind_id (stmt, 7, sale->account_id);
  stead_repo_bind_tidy (stmt, 8, sale->note);
  bind_time (stmt, 9, sale->opened_at);
  bind_time (stmt, 10, sale->closed_at);
  stead_repo_bind_tidy (stmt, 11, sale->change_next);
  return stead_repo_save_row (store, stmt, &sale->id, error);
}

/* --- goods ---------------------------------------------------------------------------- */

static gboolean
write_lots (SteadStore           *store,
            const SteadSaleGood  *good,
            GError              **error)
{
  static const char delete_sql[] = "DELETE FROM sale_lot WHERE line_id = ?1";
  static const char insert_sql[] = "INSERT INTO sale_lot (line_id, lot_id, base) VALUES (?1, ?2, ?3)";

  if (!stead_repo_run_id (store, delete_sql, good->id, error))
    return FALSE;
  for (guint i = 0; i < good->lots->len; i++)
    {
      const SteadSaleLot *lot = &g_array_index (good->lots, SteadSaleLot, i);
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, insert_sql, error);

      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, good->id);
      sqlite3_bind_int64 (stmt, 2, lot->lot_id);
      sqlite3_bind_double (stmt, 3, lot->base);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_good (SteadStore     *store,
            gint64          sale_id,
            guint           position,
            SteadSaleGood  *good,
            GError        **error)
{
  static const char insert_sql[] =
    "INSERT INTO sale_line (sale_id, position, product_id, price_cents, planned, brought, low, likely, high,"
    " left_cents, missed_cents, key, cost_cents) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13)";
  static const char update_sql[] =
    "UPDATE sale_line SET sale_id = ?1, position = ?2, product_id = ?3, price_cents = ?4, planned = ?5, brought = ?6,"
    " low = ?7, likely = ?8, high = ?9, left_cents = ?10, missed_cents = ?11, key = ?12, cost_cents = ?13 WHERE id = ?14";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, good->id == 0 ? insert_sql : update_sql, error);
  const double reals[] = { good->planned, good->brought, good->low, good->likely, good->high };
  const char key[2] = { good->key, '\0' };

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, sale_id);
  sqlite3_bind_int (stmt, 2, (int) position);
  sqlite3_bind_int64 (stmt, 3, good->product_id);
  sqlite3_bind_int64 (stmt, 4, good->price_cents);
  for (int i = 0; i < (int) G_N_ELEMENTS (reals); i++)
    stead_stmt_bind_real (stmt, 5 + i, reals[i]);
  sqlite3_bind_int64 (stmt, 10, good->left_cents);
  sqlite3_bind_int64 (stmt, 11, good->missed_cents);
  stead_stmt_bind_text (stmt, 12, key);
  stead_stmt_bind_real (stmt, 13, good->cost_cents);
  if (good->id != 0)
    sqlite3_bind_int64 (stmt, 14, good->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (good->id == 0)
    good->id = stead_store_last_id (store);
  return write_lots (store, good, error);
}

/* Lines that are no longer in the plan; one with taps stays. */
static gboolean
drop_goods (SteadStore       *store,
            const SteadSale  *sale,
            GError          **error)
{
  static const char list_sql[] =
    "SELECT l.id, p.name, EXISTS (SELECT 1 FROM sale_tap t WHERE t.line_id = l.id) FROM sale_line l"
    " JOIN product p ON p.id = l.product_id WHERE l.sale_id = ?1 ORDER BY l.id";
  static const char delete_sql[] = "DELETE FROM sale_line WHERE id = ?1";
  g_autoptr(GArray) gone = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, list_sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, sale->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      gint64 id = sqlite3_column_int64 (stmt, 0);

      if (stead_sale_find_good (sale, id) != NULL)
        continue;
      if (sqlite3_column_int (stmt, 2) != 0)
        {
          g_autofree char *name = stead_stmt_text (stmt, 1);

          return stead_repo_refuse (error, _("%s is tallied already, so it stays in the plan."), name);
        }
      g_array_append_val (gone, id);
    }
  for (guint i = 0; found == 0 && i < gone->len; i++)
    if (!stead_repo_run_id (store, delete_sql, g_array_index (gone, gint64, i), error))
      return FALSE;
  return found == 0;
}

static gboolean
write_goods (SteadStore  *store,
             SteadSale   *sale,
             GError     **error)
{
  if (!drop_goods (store, sale, error))
    return FALSE;
  for (guint i = 0; i < sale->goods->len; i++)
    if (!write_good (store, sale->id, i, sale->goods->pdata[i], error))
      return FALSE;
  return TRUE;
}

/* --- the rest: rows keep their ids, so that undo sees only what changed ------------------ */

gboolean
stead_sale_write_costs (SteadStore  *store,
                        SteadSale   *sale,
                        GError     **error)
{
  static const char delete_sql[] = "DELETE FROM sale_cost WHERE sale_id = ?1";
  static const char insert_sql[] = "INSERT INTO sale_cost (id, sale_id, name, cents, paid_cents, from_till)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5, ?6)";

  if (!stead_repo_run_id (store, delete_sql, sale->id, error))
    return FALSE;
  for (guint i = 0; i < sale->costs->len; i++)
    {
      SteadSaleCost *cost = sale->costs->pdata[i];
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, insert_sql, error);

      if (stmt == NULL)
        return FALSE;
      stead_stmt_bind_id (stmt, 1, cost->id);
      sqlite3_bind_int64 (stmt, 2, sale->id);
      stead_repo_bind_tidy (stmt, 3, cost->name);
      sqlite3_bind_int64 (stmt, 4, cost->cents);
      if (cost->paid_cents >= 0)
        sqlite3_bind_int64 (stmt, 5, cost->paid_cents);
      else
        sqlite3_bind_null (stmt, 5);
      sqlite3_bind_int (stmt, 6, cost->from_till != FALSE);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
      cost->id = stead_store_last_id (store);
    }
  return TRUE;
}

static gboolean
write_shifts (SteadStore  *store,
              SteadSale   *sale,
              GError     **error)
{
  static const char delete_sql[] = "DELETE FROM sale_shift WHERE sale_id = ?1";
  static const char insert_sql[] = "INSERT INTO sale_shift (id, sale_id, person_id, from_min, to_min, break_min, duty)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";

  if (!stead_repo_run_id (store, delete_sql, sale->id, error))
    return FALSE;
  for (guint i = 0; i < sale->shifts->len; i++)
    {
      SteadSaleShift *shift = sale->shifts->pdata[i];
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, insert_sql, error);

      if (stmt == NULL)
        return FALSE;
      stead_stmt_bind_id (stmt, 1, shift->id);
      sqlite3_bind_int64 (stmt, 2, sale->id);
      sqlite3_bind_int64 (stmt, 3, shift->person_id);
      sqlite3_bind_int (stmt, 4, shift->from_min);
      sqlite3_bind_int (stmt, 5, shift->to_min);
      sqlite3_bind_int (stmt, 6, shift->break_min);
      stead_repo_bind_tidy (stmt, 7, shift->duty);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
      shift->id = stead_store_last_id (store);
    }
  return TRUE;
}

static gboolean
write_float (SteadStore       *store,
             const SteadSale  *sale,
             GError          **error)
{
  static const char delete_sql[] = "DELETE FROM sale_float WHERE sale_id = ?1";
  static const char insert_sql[] = "INSERT INTO sale_float (sale_id, face_cents, pieces) VALUES (?1, ?2, ?3)";

  if (!stead_repo_run_id (store, delete_sql, sale->id, error))
    return FALSE;
  for (guint i = 0; i < sale->float_pieces->len; i++)
    {
      const SteadCashPiece *piece = &g_array_index (sale->float_pieces, SteadCashPiece, i);
      g_autoptr(SteadStmt) stmt = NULL;

      if (piece->pieces == 0)
        continue;
      stmt = stead_store_prepare (store, insert_sql, error);
      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, sale->id);
      sqlite3_bind_int64 (stmt, 2, piece->face_cents);
      sqlite3_bind_int64 (stmt, 3, piece->pieces);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_bring (SteadStore  *store,
             SteadSale   *sale,
             GError     **error)
{
  static const char delete_sql[] = "DELETE FROM sale_bring WHERE sale_id = ?1";
  static const char insert_sql[] = "INSERT INTO sale_bring (id, sale_id, position, text, packed)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5)";

  if (!stead_repo_run_id (store, delete_sql, sale->id, error))
    return FALSE;
  for (guint i = 0; i < sale->bring->len; i++)
    {
      SteadSaleBring *bring = sale->bring->pdata[i];
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, insert_sql, error);

      if (stmt == NULL)
        return FALSE;
      stead_stmt_bind_id (stmt, 1, bring->id);
      sqlite3_bind_int64 (stmt, 2, sale->id);
      sqlite3_bind_int (stmt, 3, (int) i);
      stead_repo_bind_tidy (stmt, 4, bring->text);
      sqlite3_bind_int (stmt, 5, bring->packed != FALSE);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
      bring->id = stead_store_last_id (store);
    }
  return TRUE;
}

/* --- the whole ------------------------------------------------------------------------------ */

/* Of a sale that is cashed up only words may change: where, what weather, what to do otherwise. */
static gboolean
save_words (SteadStore       *store,
            const SteadSale  *sale,
            GError          **error)
{
  static const char sql[] = "UPDATE sale_day SET location = ?1, weather = ?2, note = ?3, change_next = ?4 WHERE id = ?5";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, sale->location);
  stead_repo_bind_tidy (stmt, 2, sale->weather);
  stead_repo_bind_tidy (stmt, 3, sale->note);
  stead_repo_bind_tidy (stmt, 4, sale->change_next);
  sqlite3_bind_int64 (stmt, 5, sale->id);
  return stead_store_run (store, stmt, error);
}

static gboolean
save_whole (SteadStore  *store,
            SteadSale   *sale,
            GError     **error)
{
  return write_day (store, sale, error) && write_goods (store, sale, error) &&
         stead_sale_write_costs (store, sale, error) && write_shifts (store, sale, error) &&
         write_float (store, sale, error) && write_bring (store, sale, error);
}

static SteadGivenIds *
ids_of (SteadSale *sale)
{
  SteadGivenIds *ids = stead_given_ids_new (&sale->id);

  for (guint i = 0; i < sale->goods->len; i++)
    stead_given_ids_add (ids, &((SteadSaleGood *) sale->goods->pdata[i])->id);
  for (guint i = 0; i < sale->costs->len; i++)
    stead_given_ids_add (ids, &((SteadSaleCost *) sale->costs->pdata[i])->id);
  for (guint i = 0; i < sale->shifts->len; i++)
    stead_given_ids_add (ids, &((SteadSaleShift *) sale->shifts->pdata[i])->id);
  for (guint i = 0; i < sale->bring->len; i++)
    stead_given_ids_add (ids, &((SteadSaleBring *) sale->bring->pdata[i])->id);
  return ids;
}

gboolean
stead_sale_repo_save (SteadStore      *store,
                      SteadSale       *sale,
                      SteadSaleFault  *out_fault,
                      GError         **error)
{
  SteadSaleFault fault = { STEAD_SALE_PART_NONE, 0 };
  SteadGivenIds *ids;
  gboolean saved;

  g_return_val_if_fail (STEAD_IS_STORE (store) && sale != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  ids = ids_of (sale);
  saved = stead_sale_check (store, sale, &fault, error);
  if (saved)
    saved = sale->count_id != 0 ? save_words (store, sale, error) : save_whole (store, sale, error);
  if (!saved && out_fault != NULL)
    *out_fault = fault;
  return stead_given_ids_end (ids, saved);
}

gboolean
stead_sale_repo_delete (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  static const char taps_sql[] = "SELECT count (*) FROM sale_line l JOIN sale_tap t ON t.line_id = l.id"
                                 " WHERE l.sale_id = ?1";
  static const char delete_sql[] = "DELETE FROM sale_day WHERE id = ?1";
  gint64 n;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  n = stead_repo_count_id (store, taps_sql, id, error);
  if (n > 0)
    return stead_repo_refuse (error, _("Something was tallied at this sale, so it stays."));
  return n == 0 && stead_sale_check_open (store, id, error) && stead_repo_change_row (store, delete_sql, id, error);
}

/* --- once more --------------------------------------------------------------------------------- */

static void
forget_ids (SteadSale *sale)
{
  sale->id = sale->count_id = 0;
  sale->opened_at = sale->closed_at = STEAD_SALE_NO_TIME;
  for (guint i = 0; i < sale->costs->len; i++)
    {
      SteadSaleCost *cost = sale->costs->pdata[i];

      cost->id = 0;
      cost->paid_cents = -1;
    }
  for (guint i = 0; i < sale->bring->len; i++)
    {
      SteadSaleBring *bring = sale->bring->pdata[i];

      bring->id = 0;
      bring->packed = FALSE;
    }
  g_clear_pointer (&sale->weather, g_free);
  g_clear_pointer (&sale->change_next, g_free);
}

static gboolean
renew_goods (SteadStore  *store,
             SteadSale   *sale,
             GError     **error)
{
  for (guint i = sale->goods->len; i > 0; i--)
    {
      SteadSaleGood *good = sale->goods->pdata[i - 1];
      g_autoptr(SteadProduct) product = stead_product_repo_get (store, good->product_id, error);
      g_autoptr(GError) problem = NULL;
      gint64 price;

      if (product == NULL)
        return FALSE;
      if (product->retired_on != STEAD_DAY_NONE)
        {
          g_ptr_array_remove_index (sale->goods, i - 1);
          continue;
        }
      price = stead_product_repo_price_on (store, product->id, sale->day, &problem);
      if (problem != NULL)
        {
          g_propagate_error (error, g_steal_pointer (&problem));
          return FALSE;
        }
      good->price_cents = price >= 0 ? price : good->price_cents;
      good->id = 0;
      good->brought = NAN;
      g_array_set_size (good->lots, 0);
    }
  return TRUE;
}

static gboolean
renew_shifts (SteadStore  *store,
              SteadSale   *sale,
              GError     **error)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, error);

  for (guint i = people != NULL ? sale->shifts->len : 0; i > 0; i--)
    {
      SteadSaleShift *shift = sale->shifts->pdata[i - 1];
      gboolean here = FALSE;

      for (guint j = 0; j < people->len; j++)
        {
          const SteadPerson *person = people->pdata[j];

          here = here || (person->id == shift->person_id && person->left_on == STEAD_DAY_NONE);
        }
      shift->id = 0;
      if (!here)
        g_ptr_array_remove_index (sale->shifts, i - 1);
    }
  return people != NULL;
}

gboolean
stead_sale_repo_again (SteadStore  *store,
                       gint64       id,
                       SteadDay     day,
                       gint64      *out_id,
                       GError     **error)
{
  g_autoptr(SteadSale) sale = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_id != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  sale = stead_sale_repo_get (store, id, error);
  if (sale == NULL)
    return FALSE;
  sale->day = day;
  forget_ids (sale);
  if (!renew_goods (store, sale, error) || !renew_shifts (store, sale, error) ||
      !stead_sale_repo_save (store, sale, NULL, error))
    return FALSE;
  *out_id = sale->id;
  return TRUE;
}
