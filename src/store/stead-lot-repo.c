/* stead-lot-repo.c - what a person takes out of lots, or puts right. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-money.h"
#include "store/stead-item-private.h"
#include "store/stead-ledger-private.h"
#include "store/stead-lot-private.h"
#include "store/stead-lot-repo.h"
#include "store/stead-recost.h"

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
  return stead_repo_run_one (store, stmt, error);
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
  move.kind = stead_move_words[kind];
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
