/* stead-lot-repo.c - traceable quantities and the ledger of movements. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-money.h"
#include "store/stead-item-private.h"
#include "store/stead-ledger-private.h"
#include "store/stead-lot-private.h"
#include "store/stead-lot-repo.h"
#include "store/stead-recost.h"

static const char * const move_words[] = {
  "received", "used", "sold", "given", "lost", "counted", "corrected", "made", NULL
};

void
stead_lot_free (SteadLot *lot)
{
  if (lot == NULL)
    return;
  g_free (lot->code);
  g_free (lot->item_name);
  g_free (lot->supplier);
  g_free (lot->batch_name);
  g_free (lot->place_name);
  g_free (lot);
}

void
stead_move_free (SteadMove *move)
{
  if (move == NULL)
    return;
  g_free (move->lot_code);
  g_free (move->item_name);
  g_free (move->reason);
  g_free (move);
}

/* --- reading ---------------------------------------------------------------- */

#define LOT_SELECT \
  "SELECT l.id, l.code, l.item_id, i.name, i.kind, i.unit, l.day, l.best_by, r.id, r.supplier, r.is_gift," \
  " coalesce (rl.quantity_base, m.quantity_base, 0), coalesce (rl.cost_cents, m.cost_cents, 0), s.base, s.cents," \
  " l.batch_id, b.name, l.place_id, w.name FROM lot l JOIN item i ON i.id = l.item_id JOIN lot_stock s ON s.lot_id = l.id" \
  " LEFT JOIN receipt_line rl ON rl.id = l.receipt_line_id LEFT JOIN receipt r ON r.id = rl.receipt_id" \
  " LEFT JOIN batch b ON b.id = l.batch_id LEFT JOIN place w ON w.id = l.place_id" \
  " LEFT JOIN movement m ON m.lot_id = l.id AND m.kind = 'made' AND l.batch_id IS NOT NULL"

static gpointer
lot_from_row (SteadStmt *stmt)
{
  SteadLot *lot = g_new0 (SteadLot, 1);
  double base = sqlite3_column_double (stmt, 13);

  lot->id = sqlite3_column_int64 (stmt, 0);
  lot->code = stead_stmt_text (stmt, 1);
  lot->item_id = sqlite3_column_int64 (stmt, 2);
  lot->item_name = stead_stmt_text (stmt, 3);
  lot->item_kind = (SteadItemKind) stead_repo_word (stmt, 4, stead_item_kind_words);
  lot->unit = stead_item_unit (stmt, 5);
  lot->day = stead_stmt_day (stmt, 6);
  lot->best_by = stead_stmt_day (stmt, 7);
  lot->receipt_id = sqlite3_column_int64 (stmt, 8);
  lot->supplier = stead_stmt_text (stmt, 9);
  lot->is_gift = sqlite3_column_int (stmt, 10) != 0;
  lot->received_base = sqlite3_column_double (stmt, 11);
  lot->received_cents = sqlite3_column_int64 (stmt, 12);
  lot->on_hand_base = base > STEAD_AMOUNT_EPSILON ? base : 0;
  lot->on_hand_cents = sqlite3_column_int64 (stmt, 14);
  lot->batch_id = sqlite3_column_int64 (stmt, 15);
  lot->batch_name = stead_stmt_text (stmt, 16);
  lot->place_id = sqlite3_column_int64 (stmt, 17);
  lot->place_name = stead_stmt_text (stmt, 18);
  return lot;
}

/* Shares the cents of an item among the @n lots of it that are at @lots, by what is left. */
static gboolean
share_item (SteadStore  *store,
            gpointer    *lots,
            guint        n,
            GError     **error)
{
  static const char sql[] = "SELECT coalesce (sum (s.cents), 0) FROM lot l JOIN lot_stock s ON s.lot_id = l.id"
                            " WHERE l.item_id = ?1";
  g_autofree double *weights = g_new (double, n);
  g_autofree gint64 *shares = g_new0 (gint64, n);
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 cents = 0;
  double sum = 0;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, ((SteadLot *) lots[0])->item_id);
  if (!stead_repo_number (store, stmt, 0, &cents, error))
    return FALSE;
  for (guint i = 0; i < n; i++)
    sum += weights[i] = ((SteadLot *) lots[i])->on_hand_base;
  if (sum > 0)
    stead_money_split (cents, weights, n, shares);
  for (guint i = 0; i < n; i++)
    ((SteadLot *) lots[i])->on_hand_cents = shares[i];
  return TRUE;
}

/* On a farm that averages, a lot is worth its share of its item. */
static gboolean
share_average (SteadStore  *store,
               GPtrArray   *lots,
               GError     **error)
{
  guint first = 0;
  SteadStockMethod method;

  if (!stead_recost_method (store, &method, error))
    return FALSE;
  while (method != STEAD_STOCK_FIFO && first < lots->len)
    {
      gint64 item_id = ((SteadLot *) lots->pdata[first])->item_id;
      guint end = first + 1;

      while (end < lots->len && ((SteadLot *) lots->pdata[end])->item_id == item_id)
        end++;
      if (!share_item (store, lots->pdata + first, end - first, error))
        return FALSE;
      first = end;
    }
  return TRUE;
}

/* 1e-7 in the SQL is STEAD_AMOUNT_EPSILON. */
GPtrArray *
stead_lot_repo_list (SteadStore  *store,
                     gboolean     all,
                     GError     **error)
{
  static const char sql[] = LOT_SELECT " WHERE ?1 OR s.base > 1e-7 ORDER BY i.name, l.item_id, l.day, l.id";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(GPtrArray) lots = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int (stmt, 1, all != FALSE);
  lots = stead_repo_rows (store, stmt, lot_from_row, (GDestroyNotify) stead_lot_free, error);
  return lots != NULL && share_average (store, lots, error) ? g_steal_pointer (&lots) : NULL;
}

SteadLot *
stead_lot_repo_get (SteadStore  *store,
                    gint64       id,
                    GError     **error)
{
  static const char sql[] = LOT_SELECT " WHERE l.id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  return stead_repo_row (store, stmt, lot_from_row, error);
}

#define MOVE_SELECT \
  "SELECT m.id, m.lot_id, l.code, i.name, i.kind, i.unit, m.day, m.kind, m.quantity_base, m.cost_cents," \
  " coalesce (r.is_gift, 0), m.batch_id, r.id, m.reason, m.person_id" \
  " FROM movement m JOIN lot l ON l.id = m.lot_id JOIN item i ON i.id = l.item_id" \
  " LEFT JOIN receipt_line rl ON rl.id = l.receipt_line_id LEFT JOIN receipt r ON r.id = rl.receipt_id"

static gpointer
move_from_row (SteadStmt *stmt)
{
  SteadMove *move = g_new0 (SteadMove, 1);

  move->id = sqlite3_column_int64 (stmt, 0);
  move->lot_id = sqlite3_column_int64 (stmt, 1);
  move->lot_code = stead_stmt_text (stmt, 2);
  move->item_name = stead_stmt_text (stmt, 3);
  move->item_kind = (SteadItemKind) stead_repo_word (stmt, 4, stead_item_kind_words);
  move->unit = stead_item_unit (stmt, 5);
  move->day = stead_stmt_day (stmt, 6);
  move->kind = (SteadMoveKind) stead_repo_word (stmt, 7, move_words);
  move->quantity_base = sqlite3_column_double (stmt, 8);
  move->cost_cents = sqlite3_column_int64 (stmt, 9);
  move->is_gift = sqlite3_column_int (stmt, 10) != 0;
  move->batch_id = sqlite3_column_int64 (stmt, 11);
  move->receipt_id = sqlite3_column_int64 (stmt, 12);
  move->reason = stead_stmt_text (stmt, 13);
  move->person_id = sqlite3_column_int64 (stmt, 14);
  return move;
}

GPtrArray *
stead_lot_repo_moves (SteadStore  *store,
                      gint64       lot_id,
                      GError     **error)
{
  static const char sql[] = MOVE_SELECT " WHERE m.lot_id = ?1 ORDER BY m.day, m.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, lot_id);
  return stead_repo_rows (store, stmt, move_from_row, (GDestroyNotify) stead_move_free, error);
}

GPtrArray *
stead_lot_repo_batch_moves (SteadStore  *store,
                            gint64       batch_id,
                            GError     **error)
{
  static const char sql[] = MOVE_SELECT " WHERE m.batch_id = ?1 AND m.kind = 'used' ORDER BY m.day, m.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  return stead_repo_rows (store, stmt, move_from_row, (GDestroyNotify) stead_move_free, error);
}

GPtrArray *
stead_lot_repo_use_moves (SteadStore  *store,
                          gint64       batch_id,
                          gint64       item_id,
                          SteadDay     from,
                          SteadDay     to,
                          GError     **error)
{
  static const char sql[] = MOVE_SELECT " WHERE m.batch_id = ?1 AND m.day BETWEEN ?3 AND ?4 AND m.kind = 'used'"
                                        " AND +l.item_id = ?2 ORDER BY m.day, m.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  sqlite3_bind_int64 (stmt, 2, item_id);
  sqlite3_bind_int (stmt, 3, from);
  sqlite3_bind_int (stmt, 4, to);
  return stead_repo_rows (store, stmt, move_from_row, (GDestroyNotify) stead_move_free, error);
}

GPtrArray *
stead_lot_repo_unsold (SteadStore  *store,
                       SteadDay     from,
                       SteadDay     to,
                       GError     **error)
{
  static const char sql[] = MOVE_SELECT " WHERE m.kind IN ('lost', 'given', 'counted', 'corrected')"
                                        " AND m.day BETWEEN ?1 AND ?2 ORDER BY m.day, m.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int (stmt, 1, from);
  sqlite3_bind_int (stmt, 2, to);
  return stead_repo_rows (store, stmt, move_from_row, (GDestroyNotify) stead_move_free, error);
}

/* --- places ---------------------------------------------------------------------- */

gboolean
stead_lot_repo_put (SteadStore  *store,
                    gint64       lot_id,
                    gint64       place_id,
                    GError     **error)
{
  static const char sql[] = "UPDATE lot SET place_id = ?1 WHERE id = ?2";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_id (stmt, 1, place_id);
  sqlite3_bind_int64 (stmt, 2, lot_id);
  return stead_store_run (store, stmt, error) &&
         (sqlite3_changes (stead_store_get_db (store)) == 1 || stead_repo_missing (error));
}

/* --- taking out by hand ------------------------------------------------------- */

static gboolean
check_day (SteadStore  *store,
           SteadDay     day,
           GError     **error)
{
  if (day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (day > stead_store_get_today (store))
    {
      g_autofree char *text = stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);

      return stead_repo_refuse (error, _("%s is still to come. Enter a day up to today."), text);
    }
  return TRUE;
}

/* The log's feed of later days makes room in the lot; it is laid anew afterwards. */
static gboolean
make_room (SteadStore            *store,
           const SteadFeedPiece  *piece,
           GError               **error)
{
  static const char sql[] = "SELECT base < ?2 FROM lot_stock WHERE lot_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 short_of = 0;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, piece->lot_id);
  sqlite3_bind_double (stmt, 2, piece->quantity);
  if (!stead_repo_number (store, stmt, 0, &short_of, error))
    return FALSE;
  return short_of == 0 || stead_ledger_unsettle_lot (store, piece->lot_id, piece->day + 1, error);
}

static gboolean
write_piece (SteadStore            *store,
             const SteadFeedPiece  *piece,
             SteadMoveFacts         move,
             GError               **error)
{
  move.lot_id = piece->lot_id;
  move.day = piece->day;
  move.quantity = -piece->quantity;
  move.cents = -piece->cents;
  return make_room (store, piece, error) && stead_ledger_write (store, &move, error);
}

static gboolean
refuse_use (const SteadItem  *item,
            SteadDay          day,
            double            available,
            double            quantity,
            GError          **error)
{
  g_autofree char *when = stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *had = stead_quantity_format (available, item->unit);
  g_autofree char *asked = stead_quantity_format (quantity, item->unit);

  return stead_repo_refuse (error, _("%s cannot be taken: on %s there is %s of %s on hand. "
                                     "Check the amount, or enter the missing receipt first."),
                            asked, when, had, item->name);
}

/* What was taken on @day stands; the logs' feed of later days is laid anew around it. */
static gboolean
settle_after (SteadStore  *store,
              gint64       item_id,
              SteadDay     day,
              GError     **error)
{
  return stead_ledger_lay_feed (store, item_id, day + 1, error) && stead_recost_item (store, item_id, day, error);
}

static gboolean
take_fifo (SteadStore            *store,
           gint64                 item_id,
           double                 quantity_base,
           const SteadMoveFacts  *move,
           GError               **error)
{
  g_autoptr(SteadItem) item = NULL;
  g_autoptr(SteadLedger) ledger = NULL;
  SteadFeedPiece piece;
  double available;

  if (!check_day (store, move->day, error))
    return FALSE;
  if (!(quantity_base > STEAD_AMOUNT_EPSILON && quantity_base <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter an amount above zero."));
  item = stead_item_repo_get (store, item_id, error);
  ledger = item != NULL ? stead_ledger_load (store, item_id, move->day + 1, error) : NULL;
  if (ledger == NULL)
    return FALSE;
  available = stead_ledger_available (ledger, move->day);
  if (quantity_base > available + STEAD_AMOUNT_EPSILON)
    return refuse_use (item, move->day, available, quantity_base, error);
  while (quantity_base > STEAD_AMOUNT_EPSILON && stead_ledger_take (ledger, move->day, quantity_base, &piece))
    {
      if (!write_piece (store, &piece, *move, error))
        return FALSE;
      quantity_base -= piece.quantity;
    }
  return settle_after (store, item_id, move->day, error);
}

gboolean
stead_lot_repo_use (SteadStore  *store,
                    gint64       item_id,
                    gint64       batch_id,
                    SteadDay     day,
                    double       quantity_base,
                    gint64       person_id,
                    GError     **error)
{
  SteadMoveFacts move = { .kind = "used", .day = day, .batch_id = batch_id, .person_id = person_id };

  g_return_val_if_fail (STEAD_IS_STORE (store) && batch_id != 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return take_fifo (store, item_id, quantity_base, &move, error);
}

gboolean
stead_lot_repo_sell (SteadStore  *store,
                     gint64       item_id,
                     SteadDay     day,
                     double       quantity_base,
                     const char  *reason,
                     gint64       person_id,
                     GError     **error)
{
  g_autofree char *why = stead_repo_tidy (reason);
  SteadMoveFacts move = { .kind = "sold", .day = day, .reason = why, .person_id = person_id };

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_check_note (why, error) && take_fifo (store, item_id, quantity_base, &move, error);
}

/* --- losses, gifts, counts, corrections ----------------------------------------- */

static gboolean
adjust_check (SteadStore      *store,
              const SteadLot  *lot,
              SteadMoveKind    kind,
              SteadDay         day,
              double           quantity_base,
              GError         **error)
{
  if (!check_day (store, day, error))
    return FALSE;
  if (day < lot->day)
    {
      g_autofree char *came = stead_day_format (lot->day, STEAD_DAY_STYLE_MEDIUM);

      return stead_repo_refuse (error, _("Lot %s came on %s; nothing can happen to it before that day."),
                                lot->code, came);
    }
  if (!(fabs (quantity_base) > STEAD_AMOUNT_EPSILON && fabs (quantity_base) <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter an amount other than zero."));
  if (quantity_base > 0 && kind != STEAD_MOVE_COUNTED && kind != STEAD_MOVE_CORRECTED)
    return stead_repo_refuse (error, _("What is lost or given away is taken out of the lot: enter it as an amount taken out."));
  return TRUE;
}

static gboolean
refuse_adjust (const SteadLot  *lot,
               SteadDay         day,
               double           available,
               GError         **error)
{
  g_autofree char *when = stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *had = stead_quantity_format (available, lot->unit);

  return stead_repo_refuse (error, _("On %s lot %s (%s) holds %s. No more can be taken out."),
                            when, lot->code, lot->item_name, had);
}

/* What a count finds brings no money with it: the lot's cents are spread over more. */
static gboolean
adjust_up (SteadStore            *store,
           const SteadMoveFacts  *move,
           GError               **error)
{
  return stead_ledger_write (store, move, error);
}

static gboolean
adjust_down (SteadStore      *store,
             const SteadLot  *lot,
             SteadMoveFacts   move,
             GError         **error)
{
  g_autoptr(SteadLedger) ledger = stead_ledger_load (store, lot->item_id, move.day + 1, error);
  SteadFeedPiece piece;

  if (ledger == NULL)
    return FALSE;
  if (!stead_ledger_take_lot (ledger, lot->id, move.day, -move.quantity, &piece))
    return refuse_adjust (lot, move.day, stead_ledger_lot_available (ledger, lot->id, move.day), error);
  return write_piece (store, &piece, move, error);
}

gboolean
stead_lot_repo_adjust (SteadStore     *store,
                       gint64          lot_id,
                       SteadMoveKind   kind,
                       SteadDay        day,
                       double          quantity_base,
                       const char     *reason,
                       gint64          person_id,
                       GError        **error)
{
  g_autoptr(SteadLot) lot = NULL;
  g_autofree char *why = stead_repo_tidy (reason);
  SteadMoveFacts move = { .lot_id = lot_id, .day = day, .quantity = quantity_base, .person_id = person_id };

  g_return_val_if_fail (STEAD_IS_STORE (store) && stead_store_in_action (store), FALSE);
  g_return_val_if_fail (kind == STEAD_MOVE_LOST || kind == STEAD_MOVE_GIVEN ||
                        kind == STEAD_MOVE_COUNTED || kind == STEAD_MOVE_CORRECTED, FALSE);
  lot = stead_lot_repo_get (store, lot_id, error);
  if (lot == NULL || !adjust_check (store, lot, kind, day, quantity_base, error))
    return FALSE;
  if (!stead_repo_check_note (why, error))
    return FALSE;
  if (why == NULL)
    return stead_repo_refuse (error, _("Write down the reason, so that others can follow what happened to the lot."));
  move.kind = move_words[kind];
  move.reason = why;
  if (quantity_base > 0 ? !adjust_up (store, &move, error) : !adjust_down (store, lot, move, error))
    return FALSE;
  return quantity_base < 0 || kind == STEAD_MOVE_COUNTED
         ? settle_after (store, lot->item_id, day, error)
         : stead_ledger_settle (store, lot->item_id, day, error);
}

gboolean
stead_lot_repo_use_lot (SteadStore  *store,
                        gint64       lot_id,
                        gint64       batch_id,
                        SteadDay     day,
                        double       quantity_base,
                        const char  *reason,
                        gint64       person_id,
                        GError     **error)
{
  g_autoptr(SteadLot) lot = NULL;
  g_autofree char *why = stead_repo_tidy (reason);
  SteadMoveFacts move = { .lot_id = lot_id, .kind = "used", .day = day, .quantity = -quantity_base,
                          .batch_id = batch_id, .reason = why, .person_id = person_id };

  g_return_val_if_fail (STEAD_IS_STORE (store) && batch_id != 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!(quantity_base > STEAD_AMOUNT_EPSILON && quantity_base <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter an amount above zero."));
  lot = stead_lot_repo_get (store, lot_id, error);
  return lot != NULL &&
         adjust_check (store, lot, STEAD_MOVE_USED, day, -quantity_base, error) &&
         stead_repo_check_note (why, error) &&
         adjust_down (store, lot, move, error) &&
         settle_after (store, lot->item_id, day, error);
}

gboolean
stead_lot_take (SteadStore            *store,
                const SteadMoveFacts  *move,
                GError               **error)
{
  g_autoptr(SteadLot) lot = stead_lot_repo_get (store, move->lot_id, error);

  return lot != NULL &&
         adjust_check (store, lot, STEAD_MOVE_SOLD, move->day, move->quantity, error) &&
         adjust_down (store, lot, *move, error) &&
         settle_after (store, lot->item_id, move->day, error);
}
