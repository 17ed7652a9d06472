/* stead-feed-settle.c - the feed of the logs, laid on the lots.
 *
 * All feed of an item from one day on is laid anew in memory, in order of day
 * and id, and compared with what the file has.  Only what differs is written:
 * a slip mended a year back changes a few movements, not a year of them.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-closing-repo.h"
#include "store/stead-ledger-private.h"
#include "store/stead-recost.h"

/* Lays one entry's feed; what no lot covers stays in the log alone. */
static void
lay_entry (SteadLedger *ledger,
           gint64       entry_id,
           gint64       batch_id,
           SteadDay     day,
           double       feed_kg,
           GArray      *pieces)
{
  while (feed_kg > STEAD_AMOUNT_EPSILON)
    {
      SteadFeedPiece piece = { .entry_id = entry_id, .batch_id = batch_id };

      if (!stead_ledger_take (ledger, day, feed_kg, &piece))
        return;
      g_array_append_val (pieces, piece);
      feed_kg -= piece.quantity;
    }
}

static GArray *
new_pieces (void)
{
  return g_array_new (FALSE, TRUE, sizeof (SteadFeedPiece));
}

static GArray *
lay_all (SteadStore   *store,
         SteadLedger  *ledger,
         gint64        item_id,
         SteadDay      from,
         GError      **error)
{
  static const char sql[] = "SELECT e.id, e.batch_id, e.day, e.feed_kg"
                            " FROM batch b JOIN batch_entry e ON e.batch_id = b.id"
                            " WHERE b.feed_item_id = ?1 AND e.day >= ?2 AND e.feed_kg > 0 ORDER BY e.day, e.id";
  g_autoptr(GArray) pieces = new_pieces ();
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, item_id);
  sqlite3_bind_int (stmt, 2, from);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    lay_entry (ledger, sqlite3_column_int64 (stmt, 0), sqlite3_column_int64 (stmt, 1),
               stead_stmt_day (stmt, 2), sqlite3_column_double (stmt, 3), pieces);
  return found == 0 ? g_steal_pointer (&pieces) : NULL;
}

static int
compare_pieces (gconstpointer a,
                gconstpointer b)
{
  const SteadFeedPiece *first = a, *second = b;

  if (first->entry_id != second->entry_id)
    return first->entry_id < second->entry_id ? -1 : 1;
  return (first->lot_id > second->lot_id) - (first->lot_id < second->lot_id);
}

static gboolean
same_piece (const SteadFeedPiece *a,
            const SteadFeedPiece *b)
{
  return a->entry_id == b->entry_id && a->lot_id == b->lot_id && a->batch_id == b->batch_id &&
         a->day == b->day && a->cents == b->cents &&
         ABS (a->quantity - b->quantity) < STEAD_AMOUNT_EPSILON;
}

/* What has to be written so that the file has the pieces laid anew. */
typedef struct
{
  GArray *gone;     /* of SteadFeedPiece: are in the file, should not be */
  GArray *less;     /* in the file, take less now, or the same at another cost */
  GArray *more;     /* in the file, take more now */
  GArray *fresh;    /* not in the file yet */
} Differences;

static void
differences_clear (Differences *differences)
{
  g_array_unref (differences->gone);
  g_array_unref (differences->less);
  g_array_unref (differences->more);
  g_array_unref (differences->fresh);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Differences, differences_clear)

static void
add_changed (Differences           *differences,
             const SteadFeedPiece  *old,
             const SteadFeedPiece  *new)
{
  SteadFeedPiece piece = *new;

  piece.id = old->id;
  g_array_append_val (new->quantity > old->quantity ? differences->more : differences->less, piece);
}

/* Both lists are sorted, and an entry takes from a lot once at most.  On a farm that
 * averages, what stays keeps its @cents here: the lots it came from do not tell them. */
static void
find_differences (const GArray *before,
                  GArray       *after,
                  gboolean      keep_cents,
                  Differences  *differences)
{
  guint i = 0, j = 0;

  while (i < before->len || j < after->len)
    {
      const SteadFeedPiece *old = i < before->len ? &g_array_index (before, SteadFeedPiece, i) : NULL;
      SteadFeedPiece *new = j < after->len ? &g_array_index (after, SteadFeedPiece, j) : NULL;
      int order = old == NULL ? 1 : new == NULL ? -1 : compare_pieces (old, new);

      if (order == 0 && keep_cents)
        new->cents = old->cents;
      if (order < 0)
        g_array_append_vals (differences->gone, old, 1);
      else if (order > 0)
        g_array_append_vals (differences->fresh, new, 1);
      else if (!same_piece (old, new))
        add_changed (differences, old, new);
      i += order <= 0;
      j += order >= 0;
    }
}

static gboolean
delete_pieces (SteadStore    *store,
               const GArray  *pieces,
               GError       **error)
{
  static const char sql[] = "DELETE FROM movement WHERE id = ?1";

  for (guint i = 0; i < pieces->len; i++)
    if (!stead_repo_run_id (store, sql, g_array_index (pieces, SteadFeedPiece, i).id, error))
      return FALSE;
  return TRUE;
}

static gboolean
update_pieces (SteadStore    *store,
               const GArray  *pieces,
               GError       **error)
{
  static const char sql[] = "UPDATE movement SET day = ?1, quantity_base = ?2, cost_cents = ?3, batch_id = ?4"
                            " WHERE id = ?5";

  for (guint i = 0; i < pieces->len; i++)
    {
      const SteadFeedPiece *piece = &g_array_index (pieces, SteadFeedPiece, i);
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

      if (stmt == NULL)
        return FALSE;
      stead_stmt_bind_day (stmt, 1, piece->day);
      sqlite3_bind_double (stmt, 2, -piece->quantity);
      sqlite3_bind_int64 (stmt, 3, -piece->cents);
      sqlite3_bind_int64 (stmt, 4, piece->batch_id);
      sqlite3_bind_int64 (stmt, 5, piece->id);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
insert_pieces (SteadStore    *store,
               const GArray  *pieces,
               GError       **error)
{
  for (guint i = 0; i < pieces->len; i++)
    {
      const SteadFeedPiece *piece = &g_array_index (pieces, SteadFeedPiece, i);
      SteadMoveFacts move = { .lot_id = piece->lot_id, .day = piece->day, .kind = "used",
                              .quantity = -piece->quantity, .cents = -piece->cents,
                              .batch_id = piece->batch_id, .entry_id = piece->entry_id };

      if (!stead_ledger_write (store, &move, error))
        return FALSE;
    }
  return TRUE;
}

/* What gives back to the lots goes first, so that none is below zero in between. */
static gboolean
write_differences (SteadStore         *store,
                   const Differences  *differences,
                   GError            **error)
{
  return delete_pieces (store, differences->gone, error) &&
         update_pieces (store, differences->less, error) &&
         update_pieces (store, differences->more, error) &&
         insert_pieces (store, differences->fresh, error);
}

/* What was taken in closed days stays, so an entry of them cannot come to say less, or be
 * of another day. */
static gboolean
check_closed (SteadStore  *store,
              gint64       item_id,
              SteadDay     from,
              SteadDay     closed,
              GError     **error)
{
  static const char sql[] =
    "SELECT m.day FROM batch b JOIN batch_entry e ON e.batch_id = b.id JOIN movement m ON m.entry_id = e.id"
    " WHERE b.feed_item_id = ?1 AND m.day BETWEEN ?2 AND ?3 GROUP BY e.id"
    " HAVING -sum (m.quantity_base) > coalesce (e.feed_kg, 0) + 1e-6 OR e.day <> m.day LIMIT 1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autofree char *when = NULL;
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, item_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, closed);
  found = stead_store_step (store, stmt, error);
  if (found != 1)
    return found == 0;
  when = stead_day_format (stead_stmt_day (stmt, 0), STEAD_DAY_STYLE_MEDIUM);
  g_set_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_SIGNED,
               _("The books are closed for %s, so the feed of that day cannot become less. "
                 "Count the store room and write the difference there."), when);
  return FALSE;
}

gboolean
stead_ledger_lay_feed (SteadStore  *store,
                       gint64       item_id,
                       SteadDay     from,
                       GError     **error)
{
  g_auto(Differences) differences = { new_pieces (), new_pieces (), new_pieces (), new_pieces () };
  g_autoptr(SteadLedger) ledger = NULL;
  g_autoptr(GArray) before = NULL;
  g_autoptr(GArray) after = NULL;
  SteadStockMethod method;
  SteadDay closed;

  if (item_id == 0)
    return TRUE;
  if (!stead_closing_repo_last (store, &closed, error) || !stead_recost_method (store, &method, error))
    return FALSE;
  if (closed != STEAD_DAY_NONE && from <= closed)
    {
      if (!check_closed (store, item_id, from, closed, error))
        return FALSE;
      from = closed + 1;
    }
  ledger = stead_ledger_load (store, item_id, from, error);
  after = ledger != NULL ? lay_all (store, ledger, item_id, from, error) : NULL;
  if (after == NULL)
    return FALSE;
  before = stead_ledger_steal_lifted (ledger);
  g_array_sort (before, compare_pieces);
  g_array_sort (after, compare_pieces);
  find_differences (before, after, method != STEAD_STOCK_FIFO, &differences);
  return write_differences (store, &differences, error);
}

gboolean
stead_ledger_settle (SteadStore  *store,
                     gint64       item_id,
                     SteadDay     from,
                     GError     **error)
{
  return stead_ledger_lay_feed (store, item_id, from, error) && stead_recost_item (store, item_id, from, error);
}
