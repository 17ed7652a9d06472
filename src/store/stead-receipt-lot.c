/* stead-receipt-lot.c - the lot and the movement that belong to a line of a receipt. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>

#include "core/stead-money.h"
#include "store/stead-item-repo.h"
#include "store/stead-ledger-private.h"
#include "store/stead-lot-private.h"
#include "store/stead-lot-repo.h"
#include "store/stead-receipt-private.h"

/* --- codes ------------------------------------------------------------------ */

/* First letter of a lot code, by SteadItemKind. */
static const char kind_letters[] = { 'F', 'B', 'P', 'I', 'S', 'U', 'L', 'R' };

G_STATIC_ASSERT (G_N_ELEMENTS (kind_letters) == STEAD_ITEM_PRODUCE + 1);

static char *
new_code (SteadStore  *store,
          gint64       item_id,
          SteadDay     day,
          GError     **error)
{
  g_autoptr(SteadItem) item = stead_item_repo_get (store, item_id, error);

  return item != NULL ? stead_lot_new_code (store, kind_letters[item->kind], day, error) : NULL;
}

gboolean
stead_receipt_lot_insert (SteadStore        *store,
                          SteadDay           day,
                          SteadReceiptLine  *line,
                          GError           **error)
{
  static const char sql[] = "INSERT INTO lot (code, item_id, receipt_line_id, day, best_by)"
                            " VALUES (?1, ?2, ?3, ?4, ?5)";
  g_autofree char *code = new_code (store, line->item_id, day, error);
  g_autoptr(SteadStmt) stmt = code != NULL ? stead_store_prepare (store, sql, error) : NULL;
  SteadMoveFacts move = { .kind = "received", .day = day, .quantity = line->quantity_base,
                          .cents = line->cost_cents };

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_text (stmt, 1, code);
  sqlite3_bind_int64 (stmt, 2, line->item_id);
  sqlite3_bind_int64 (stmt, 3, line->id);
  stead_stmt_bind_day (stmt, 4, day);
  stead_stmt_bind_day (stmt, 5, line->best_by);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  move.lot_id = line->lot_id = stead_store_last_id (store);
  return stead_ledger_write (store, &move, error);
}

/* --- changes ---------------------------------------------------------------- */

static gboolean
refuse_change (const SteadMove  *move,
               double            taken,
               GError          **error)
{
  g_autofree char *when = stead_day_format (move->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *amount = stead_quantity_format (taken, move->unit);

  return stead_repo_refuse (error, _("By %s, %s was already taken out of lot %s (%s). "
                                     "The receipt cannot be later or for less than that."),
                            when, amount, move->lot_code, move->item_name);
}

static gboolean
recost (SteadStore  *store,
        gint64       move_id,
        gint64       cents,
        GError     **error)
{
  static const char sql[] = "UPDATE movement SET cost_cents = ?1 WHERE id = ?2";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, cents);
  sqlite3_bind_int64 (stmt, 2, move_id);
  return stead_store_run (store, stmt, error);
}

/* What was taken by hand costs its share of the new price; in order of day.
 * Refused where the lot would fall below zero. */
static gboolean
recost_moves (SteadStore              *store,
              GPtrArray               *moves,
              SteadDay                 day,
              const SteadReceiptLine  *line,
              GError                 **error)
{
  double left = line->quantity_base;
  gint64 left_cents = line->cost_cents;

  for (guint i = 0; i < moves->len; i++)
    {
      const SteadMove *move = moves->pdata[i];
      double after = left + move->quantity_base;
      gint64 cents;

      if (move->kind == STEAD_MOVE_RECEIVED)
        continue;
      if (move->day < day || after < -STEAD_AMOUNT_EPSILON)
        return refuse_change (move, line->quantity_base - after, error);
      cents = move->quantity_base > 0 ? 0
              : after < STEAD_AMOUNT_EPSILON ? left_cents
              : stead_money_round ((double) left_cents * -move->quantity_base / left);
      if (move->cost_cents != -cents && !recost (store, move->id, -cents, error))
        return FALSE;
      left = after;
      left_cents -= cents;
    }
  return TRUE;
}

static gboolean
update_received (SteadStore              *store,
                 SteadDay                 day,
                 const SteadReceiptLine  *line,
                 GError                 **error)
{
  static const char sql[] = "UPDATE movement SET day = ?1, quantity_base = ?2, cost_cents = ?3"
                            " WHERE lot_id = ?4 AND kind = 'received'";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_day (stmt, 1, day);
  sqlite3_bind_double (stmt, 2, line->quantity_base);
  sqlite3_bind_int64 (stmt, 3, line->cost_cents);
  sqlite3_bind_int64 (stmt, 4, line->lot_id);
  return stead_store_run (store, stmt, error);
}

static gboolean
update_lot (SteadStore              *store,
            SteadDay                 day,
            const SteadReceiptLine  *line,
            GError                 **error)
{
  static const char sql[] = "UPDATE lot SET day = ?1, best_by = ?2 WHERE id = ?3";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_day (stmt, 1, day);
  stead_stmt_bind_day (stmt, 2, line->best_by);
  sqlite3_bind_int64 (stmt, 3, line->lot_id);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_receipt_lot_update (SteadStore              *store,
                          SteadDay                 day,
                          const SteadReceiptLine  *line,
                          GError                 **error)
{
  g_autoptr(GPtrArray) moves = stead_lot_repo_moves (store, line->lot_id, error);

  return moves != NULL &&
         recost_moves (store, moves, day, line, error) &&
         update_received (store, day, line, error) &&
         update_lot (store, day, line, error);
}

gboolean
stead_receipt_lot_check_free (SteadStore  *store,
                              gint64       lot_id,
                              GError     **error)
{
  g_autoptr(GPtrArray) moves = stead_lot_repo_moves (store, lot_id, error);

  for (guint i = 0; moves != NULL && i < moves->len; i++)
    {
      const SteadMove *move = moves->pdata[i];
      g_autofree char *when = stead_day_format (move->day, STEAD_DAY_STYLE_MEDIUM);

      if (move->kind != STEAD_MOVE_RECEIVED)
        return stead_repo_refuse (error, _("Lot %s (%s) was used or changed on %s. "
                                           "What was received of it cannot be deleted."),
                                  move->lot_code, move->item_name, when);
    }
  return moves != NULL;
}

/* --- corrections ------------------------------------------------------------ */

gboolean
stead_receipt_lot_take_over (SteadStore              *store,
                             gint64                   lot_id,
                             SteadDay                 day,
                             const SteadReceiptLine  *line,
                             GError                 **error)
{
  static const char sql[] = "UPDATE movement SET lot_id = ?1 WHERE lot_id = ?2 AND kind <> 'received'";
  g_autoptr(GPtrArray) moves = stead_lot_repo_moves (store, lot_id, error);
  g_autoptr(SteadStmt) stmt = moves != NULL ? stead_store_prepare (store, sql, error) : NULL;

  if (stmt == NULL || !recost_moves (store, moves, day, line, error))
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, line->lot_id);
  sqlite3_bind_int64 (stmt, 2, lot_id);
  return stead_store_run (store, stmt, error);
}

/* What of a lot's first quantity is gone by now; below 0 with @error. */
static double
taken_of (SteadStore              *store,
          const SteadReceiptLine  *line,
          GError                 **error)
{
  static const char sql[] = "SELECT base FROM lot_stock WHERE lot_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return -1;
  sqlite3_bind_int64 (stmt, 1, line->lot_id);
  if (stead_store_step (store, stmt, error) < 0)
    return -1;
  return MAX (0, line->quantity_base - sqlite3_column_double (stmt, 0));
}

gboolean
stead_receipt_lot_take_off (SteadStore              *store,
                            const SteadReceiptLine  *line,
                            SteadDay                 day,
                            const SteadReceiptLine  *right,
                            const char              *reason,
                            gint64                   person_id,
                            GError                 **error)
{
  double taken = taken_of (store, line, error);
  SteadMoveFacts move = { .lot_id = right->lot_id, .day = day, .kind = "corrected", .quantity = -taken,
                          .reason = reason, .person_id = person_id };

  if (taken < STEAD_AMOUNT_EPSILON)
    return taken >= 0;
  if (taken > right->quantity_base + STEAD_AMOUNT_EPSILON)
    return stead_repo_refuse (error, _("More was taken in closed days than the new receipt has. Check its amounts."));
  move.cents = taken > right->quantity_base - STEAD_AMOUNT_EPSILON ? -right->cost_cents
               : -stead_money_round ((double) right->cost_cents * taken / right->quantity_base);
  return stead_ledger_write (store, &move, error);
}

gboolean
stead_receipt_lot_empty (SteadStore  *store,
                         gint64       lot_id,
                         SteadDay     day,
                         const char  *reason,
                         gint64       person_id,
                         GError     **error)
{
  static const char sql[] = "SELECT base, cents, (SELECT max (day) FROM movement WHERE lot_id = ?1)"
                            " FROM lot_stock WHERE lot_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  SteadMoveFacts move = { .lot_id = lot_id, .kind = "corrected", .reason = reason, .person_id = person_id };

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, lot_id);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  move.quantity = -sqlite3_column_double (stmt, 0);
  move.cents = -sqlite3_column_int64 (stmt, 1);
  move.day = MAX (day, stead_stmt_day (stmt, 2));
  return move.quantity > -STEAD_AMOUNT_EPSILON || stead_ledger_write (store, &move, error);
}
