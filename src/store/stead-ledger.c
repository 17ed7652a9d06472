/* stead-ledger.c - the lots of one item in memory, for taking first in, first out. */
#include "config.h"

#include "core/stead-money.h"
#include "store/stead-ledger-private.h"

/* A movement that stays, on the ledger's first day or later. */
typedef struct
{
  SteadDay day;
  double   quantity;  /* signed */
  double   low;       /* least of the running sums from here to the lot's last movement */
} LaterMove;

typedef struct
{
  gint64   id;
  SteadDay day;         /* received or made */
  double   left;        /* all that may ever be taken yet */
  gint64   left_cents;
  double   now;         /* held at the end of the day last asked about */
  guint    next;        /* later moves not yet in @now: next to end */
  guint    end;
} LedgerLot;

struct _SteadLedger
{
  GArray *lots;     /* of LedgerLot, oldest first */
  GArray *later;    /* of LaterMove, by lot */
  GArray *lifted;   /* of SteadFeedPiece */
  guint   first;    /* lots before it are empty for good */
};

void
stead_ledger_free (SteadLedger *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->lots);
  g_array_unref (self->later);
  g_clear_pointer (&self->lifted, g_array_unref);
  g_free (self);
}

GArray *
stead_ledger_steal_lifted (SteadLedger *self)
{
  return g_steal_pointer (&self->lifted);
}

/* --- loading ---------------------------------------------------------------- */

static gboolean
load_lots (SteadLedger  *self,
           SteadStore   *store,
           gint64        item_id,
           GError      **error)
{
  static const char sql[] = "SELECT l.id, l.day, s.base, s.cents FROM lot l JOIN lot_stock s ON s.lot_id = l.id"
                            " WHERE l.item_id = ?1 ORDER BY l.day, l.id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, item_id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      LedgerLot lot = { .id = sqlite3_column_int64 (stmt, 0),
                        .day = stead_stmt_day (stmt, 1),
                        .left = sqlite3_column_double (stmt, 2),
                        .left_cents = sqlite3_column_int64 (stmt, 3) };

      g_array_append_val (self->lots, lot);
    }
  return found == 0;
}

static void
add_later (SteadLedger *self,
           LedgerLot   *lot,
           SteadDay     day,
           double       quantity)
{
  LaterMove move = { .day = day, .quantity = quantity };

  g_array_append_val (self->later, move);
  lot->end = self->later->len;
}

static void
lift (SteadLedger *self,
      LedgerLot   *lot,
      SteadStmt   *stmt)
{
  SteadFeedPiece piece = { .lot_id = lot->id,
                           .id = sqlite3_column_int64 (stmt, 1),
                           .day = stead_stmt_day (stmt, 2),
                           .quantity = -sqlite3_column_double (stmt, 3),
                           .cents = -sqlite3_column_int64 (stmt, 4),
                           .entry_id = sqlite3_column_int64 (stmt, 5),
                           .batch_id = sqlite3_column_int64 (stmt, 6) };

  lot->left += piece.quantity;
  lot->left_cents += piece.cents;
  g_array_append_val (self->lifted, piece);
}

/* The lot @id, at *@at or after it; %NULL if a damaged file has no such lot. */
static LedgerLot *
lot_at (SteadLedger *self,
        guint       *at,
        gint64       id)
{
  for (; *at < self->lots->len; (*at)++)
    {
      LedgerLot *lot = &g_array_index (self->lots, LedgerLot, *at);

      if (lot->id == id)
        return lot;
      if (*at + 1 < self->lots->len)
        lot[1].next = lot[1].end = self->later->len;
    }
  return NULL;
}

/* Movements from @from on come by lot in the order of the lots. */
static gboolean
load_moves (SteadLedger  *self,
            SteadStore   *store,
            gint64        item_id,
            SteadDay      from,
            GError      **error)
{
  static const char sql[] = "SELECT m.lot_id, m.id, m.day, m.quantity_base, m.cost_cents, m.entry_id, m.batch_id"
                            " FROM lot l CROSS JOIN movement m ON m.lot_id = l.id"
                            " WHERE l.item_id = ?1 AND m.day >= ?2 ORDER BY l.day, l.id, m.day, m.id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  guint at = 0;
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, item_id);
  sqlite3_bind_int (stmt, 2, from);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      LedgerLot *lot = lot_at (self, &at, sqlite3_column_int64 (stmt, 0));

      if (lot == NULL)
        {
          stead_store_set_error (store, SQLITE_CORRUPT, error);
          return FALSE;
        }
      if (sqlite3_column_type (stmt, 5) == SQLITE_NULL)
        add_later (self, lot, stead_stmt_day (stmt, 2), sqlite3_column_double (stmt, 3));
      else
        lift (self, lot, stmt);
    }
  return found == 0;
}

/* What each lot holds at first, and the least of what is still to come. */
static void
sum_up (SteadLedger *self)
{
  for (guint i = 0; i < self->lots->len; i++)
    {
      LedgerLot *lot = &g_array_index (self->lots, LedgerLot, i);
      double sum = 0, low = 0;

      for (guint j = lot->end; j > lot->next; j--)
        {
          LaterMove *move = &g_array_index (self->later, LaterMove, j - 1);

          low = move->low = move->quantity + MIN (0, low);
          sum += move->quantity;
        }
      lot->now = lot->left - sum;
    }
}

SteadLedger *
stead_ledger_load (SteadStore  *store,
                   gint64       item_id,
                   SteadDay     from,
                   GError     **error)
{
  g_autoptr(SteadLedger) self = g_new0 (SteadLedger, 1);

  self->lots = g_array_new (FALSE, TRUE, sizeof (LedgerLot));
  self->later = g_array_new (FALSE, TRUE, sizeof (LaterMove));
  self->lifted = g_array_new (FALSE, TRUE, sizeof (SteadFeedPiece));
  if (!load_lots (self, store, item_id, error) || !load_moves (self, store, item_id, from, error))
    return NULL;
  sum_up (self);
  return g_steal_pointer (&self);
}

/* --- taking ----------------------------------------------------------------- */

/* What may be taken from @lot on @day without leaving a later day short. */
static double
lot_available (SteadLedger *self,
               LedgerLot   *lot,
               SteadDay     day)
{
  double least;

  while (lot->next < lot->end && g_array_index (self->later, LaterMove, lot->next).day <= day)
    lot->now += g_array_index (self->later, LaterMove, lot->next++).quantity;
  least = lot->now;
  if (lot->next < lot->end)
    least += MIN (0, g_array_index (self->later, LaterMove, lot->next).low);
  least = MIN (least, lot->left);
  return least > STEAD_AMOUNT_EPSILON ? least : 0;
}

static void
take_from (LedgerLot      *lot,
           SteadDay        day,
           double          quantity,
           SteadFeedPiece *piece)
{
  gboolean last = quantity > lot->left - STEAD_AMOUNT_EPSILON;
  gint64 cents = last ? lot->left_cents
                      : stead_money_round ((double) lot->left_cents * quantity / lot->left);

  piece->lot_id = lot->id;
  piece->day = day;
  piece->quantity = last ? lot->left : quantity;
  piece->cents = cents;
  lot->now -= piece->quantity;
  lot->left = last ? 0 : lot->left - quantity;
  lot->left_cents -= cents;
}

gboolean
stead_ledger_take (SteadLedger    *self,
                   SteadDay        day,
                   double          quantity,
                   SteadFeedPiece *piece)
{
  for (guint i = self->first; i < self->lots->len; i++)
    {
      LedgerLot *lot = &g_array_index (self->lots, LedgerLot, i);
      double available;

      if (lot->day > day)
        return FALSE;
      if (i == self->first && !(lot->left > STEAD_AMOUNT_EPSILON))
        {
          self->first++;
          continue;
        }
      available = lot_available (self, lot, day);
      if (available > 0)
        {
          take_from (lot, day, MIN (quantity, available), piece);
          return TRUE;
        }
    }
  return FALSE;
}

double
stead_ledger_available (SteadLedger *self,
                        SteadDay     day)
{
  double sum = 0;

  for (guint i = 0; i < self->lots->len; i++)
    {
      LedgerLot *lot = &g_array_index (self->lots, LedgerLot, i);

      if (lot->day <= day)
        sum += lot_available (self, lot, day);
    }
  return sum;
}

static LedgerLot *
find_lot (SteadLedger *self,
          gint64       lot_id)
{
  for (guint i = 0; i < self->lots->len; i++)
    if (g_array_index (self->lots, LedgerLot, i).id == lot_id)
      return &g_array_index (self->lots, LedgerLot, i);
  return NULL;
}

double
stead_ledger_lot_available (SteadLedger *self,
                            gint64       lot_id,
                            SteadDay     day)
{
  LedgerLot *lot = find_lot (self, lot_id);

  return lot != NULL && lot->day <= day ? lot_available (self, lot, day) : 0;
}

gboolean
stead_ledger_take_lot (SteadLedger    *self,
                       gint64          lot_id,
                       SteadDay        day,
                       double          quantity,
                       SteadFeedPiece *piece)
{
  LedgerLot *lot = find_lot (self, lot_id);
  double available = stead_ledger_lot_available (self, lot_id, day);

  if (lot == NULL || !(quantity <= available + STEAD_AMOUNT_EPSILON))
    return FALSE;
  take_from (lot, day, MIN (quantity, available), piece);
  return TRUE;
}

/* --- in the file -------------------------------------------------------------- */

gboolean
stead_ledger_write (SteadStore            *store,
                    const SteadMoveFacts  *move,
                    GError               **error)
{
  static const char sql[] = "INSERT INTO movement (lot_id, day, kind, quantity_base, cost_cents, batch_id,"
                            " entry_id, reason, person_id, sale_id, sale_line_id)"
                            " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, move->lot_id);
  stead_stmt_bind_day (stmt, 2, move->day);
  stead_stmt_bind_text (stmt, 3, move->kind);
  sqlite3_bind_double (stmt, 4, move->quantity);
  sqlite3_bind_int64 (stmt, 5, move->cents);
  stead_stmt_bind_id (stmt, 6, move->batch_id);
  stead_stmt_bind_id (stmt, 7, move->entry_id);
  stead_stmt_bind_text (stmt, 8, move->reason);
  stead_stmt_bind_id (stmt, 9, move->person_id);
  stead_stmt_bind_id (stmt, 10, move->sale_id);
  stead_stmt_bind_id (stmt, 11, move->sale_line_id);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_ledger_unsettle_lot (SteadStore  *store,
                           gint64       lot_id,
                           SteadDay     from,
                           GError     **error)
{
  static const char sql[] = "DELETE FROM movement WHERE lot_id = ?1 AND day >= ?2 AND entry_id IS NOT NULL";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, lot_id);
  sqlite3_bind_int (stmt, 2, from);
  return stead_store_run (store, stmt, error);
}
