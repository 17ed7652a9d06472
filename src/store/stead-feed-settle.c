/* stead-feed-settle.c - the feed of the logs, laid on the lots.
 *
 * All feed of an item from one day on is laid anew in memory, in order of day
 * and id, and compared with what the file has.  Only what differs is written:
 * a slip mended a year back changes a few movements, not a year of them.
 */
#include "config.h"

#include "store/stead-ledger-private.h"

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
lay_all (SteadStore   *store,
         SteadLedger  *ledger,
         gint64        item_id,
         SteadDay      from,
         GError      **error)
{
  static const char sql[] = "SELECT e.id, e.batch_id, e.day, e.feed_kg"
                            " FROM flock f JOIN flock_entry e ON e.batch_id = f.batch_id"
                            " WHERE f.feed_item_id = ?1 AND e.day >= ?2 AND e.feed_kg > 0 ORDER BY e.day, e.id";
  g_autoptr(GArray) pieces = g_array_new (FALSE, TRUE, sizeof (SteadFeedPiece));
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

/* Leaves in each list only the pieces that the other does not have.  Both are
 * sorted, and an entry takes from a lot once at most. */
static void
keep_differences (GArray *before,
                  GArray *after)
{
  guint i = 0, j = 0, kept_before = 0, kept_after = 0;

  while (i < before->len || j < after->len)
    {
      SteadFeedPiece *old = i < before->len ? &g_array_index (before, SteadFeedPiece, i) : NULL;
      SteadFeedPiece *new = j < after->len ? &g_array_index (after, SteadFeedPiece, j) : NULL;
      int order = old == NULL ? 1 : new == NULL ? -1 : compare_pieces (old, new);

      if (order == 0 && same_piece (old, new))
        {
          i++;
          j++;
          continue;
        }
      if (order <= 0)
        g_array_index (before, SteadFeedPiece, kept_before++) = g_array_index (before, SteadFeedPiece, i++);
      if (order >= 0)
        g_array_index (after, SteadFeedPiece, kept_after++) = g_array_index (after, SteadFeedPiece, j++);
    }
  g_array_set_size (before, kept_before);
  g_array_set_size (after, kept_after);
}

static gboolean
write_differences (SteadStore    *store,
                   const GArray  *before,
                   const GArray  *after,
                   GError       **error)
{
  static const char delete_sql[] = "DELETE FROM movement WHERE id = ?1";

  for (guint i = 0; i < before->len; i++)
    if (!stead_repo_run_id (store, delete_sql, g_array_index (before, SteadFeedPiece, i).id, error))
      return FALSE;
  for (guint i = 0; i < after->len; i++)
    {
      const SteadFeedPiece *piece = &g_array_index (after, SteadFeedPiece, i);
      SteadMoveFacts move = { .lot_id = piece->lot_id, .day = piece->day, .kind = "used",
                              .quantity = -piece->quantity, .cents = -piece->cents,
                              .batch_id = piece->batch_id, .entry_id = piece->entry_id };

      if (!stead_ledger_write (store, &move, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_ledger_settle (SteadStore  *store,
                     gint64       item_id,
                     SteadDay     from,
                     GError     **error)
{
  g_autoptr(SteadLedger) ledger = NULL;
  g_autoptr(GArray) before = NULL;
  g_autoptr(GArray) after = NULL;

  if (item_id == 0)
    return TRUE;
  ledger = stead_ledger_load (store, item_id, from, error);
  after = ledger != NULL ? lay_all (store, ledger, item_id, from, error) : NULL;
  if (after == NULL)
    return FALSE;
  before = g_array_copy ((GArray *) stead_ledger_lifted (ledger));
  g_array_sort (before, compare_pieces);
  g_array_sort (after, compare_pieces);
  keep_differences (before, after);
  return write_differences (store, before, after, error);
}
