/* stead-trace-repo.c - one way back, and forward: where a lot came from and where it went. */
#include "config.h"

#include <math.h>

#include "store/stead-repo-private.h"
#include "store/stead-trace-private.h"

static void
lot_free (gpointer data)
{
  SteadTraceLot *lot = data;

  g_free (lot->code);
  g_free (lot->item_name);
  g_free (lot->supplier);
  g_free (lot->reference);
  g_free (lot->buyer);
  g_free (lot->place_name);
  g_free (lot);
}

static void
batch_free (gpointer data)
{
  SteadTraceBatch *batch = data;

  g_free (batch->name);
  g_free (batch->people);
  g_free (batch->treatment);
  g_free (batch);
}

static SteadTrace *
new_trace (gint64 lot_id)
{
  SteadTrace *trace = g_new0 (SteadTrace, 1);

  trace->lot_id = lot_id;
  trace->lots = g_ptr_array_new_with_free_func (lot_free);
  trace->batches = g_ptr_array_new_with_free_func (batch_free);
  trace->links = g_array_new (FALSE, FALSE, sizeof (SteadTraceLink));
  trace->gone = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_move_free);
  return trace;
}

void
stead_trace_free (SteadTrace *trace)
{
  if (trace == NULL)
    return;
  g_ptr_array_unref (trace->lots);
  g_ptr_array_unref (trace->batches);
  g_array_unref (trace->links);
  g_ptr_array_unref (trace->gone);
  g_free (trace);
}

const SteadTraceLot *
stead_trace_find_lot (const SteadTrace *trace,
                      gint64            id)
{
  for (guint i = 0; i < trace->lots->len; i++)
    if (((const SteadTraceLot *) trace->lots->pdata[i])->id == id)
      return trace->lots->pdata[i];
  return NULL;
}

const SteadTraceBatch *
stead_trace_find_batch (const SteadTrace *trace,
                        gint64            id)
{
  for (guint i = 0; i < trace->batches->len; i++)
    if (((const SteadTraceBatch *) trace->batches->pdata[i])->id == id)
      return trace->batches->pdata[i];
  return NULL;
}

double
stead_trace_lot_gap (const SteadTraceLot *lot)
{
  return lot->in_base + lot->found_base - lot->used_base - lot->sold_base - lot->given_base - lot->lost_base
         - lot->left_base;
}

static gint64 *
key_of (gint64 id)
{
  return g_memdup2 (&id, sizeof id);
}

static gboolean
is_kitchen (SteadTraceWalk *walk,
            gint64          batch_id)
{
  const SteadTraceBatch *batch = g_hash_table_lookup (walk->batches, &batch_id);

  return batch != NULL && batch->kind == STEAD_BATCH_KITCHEN;
}

/* The day looked at so far; FALSE if @day lies within. */
static gboolean
widen (SteadTraceWalk *walk,
       gint64          batch_id,
       SteadDay        day,
       SteadDay        none,
       SteadDay       *out_before)
{
  gpointer found;

  *out_before = none;
  if (g_hash_table_lookup_extended (walk->bounds, &batch_id, NULL, &found))
    *out_before = GPOINTER_TO_INT (found);
  if (none < 0 ? day <= *out_before : day >= *out_before)
    return FALSE;
  g_hash_table_replace (walk->bounds, key_of (batch_id), GINT_TO_POINTER (day));
  return TRUE;
}

/* Links of one kind; each lot is then added at @step. */
static gboolean
read_links (SteadTraceWalk  *walk,
            SteadStmt       *stmt,
            gint64           batch_id,
            gboolean         is_made,
            int              step,
            GError         **error)
{
  g_autoptr(GArray) found_links = g_array_new (FALSE, FALSE, sizeof (SteadTraceLink));
  int found;

  while ((found = stead_store_step (walk->store, stmt, error)) == 1)
    {
      SteadTraceLink link = { .lot_id = sqlite3_column_int64 (stmt, 0), .batch_id = batch_id, .is_made = is_made,
                              .base = sqlite3_column_double (stmt, 1), .first = stead_stmt_day (stmt, 2),
                              .last = stead_stmt_day (stmt, 3) };

      g_array_append_val (found_links, link);
    }
  for (guint i = 0; found == 0 && i < found_links->len; i++)
    {
      const SteadTraceLink *link = &g_array_index (found_links, SteadTraceLink, i);

      stead_trace_add_link (walk, *link);
      if (!stead_trace_add_lot (walk, link->lot_id, step, error))
        return FALSE;
    }
  return found == 0;
}

/* --- backward ------------------------------------------------------------------------- */

static gboolean
go_back (SteadTraceWalk   *walk,
         SteadTracePlace   place,
         GError          **error)
{
  static const char sql[] = "SELECT lot_id, -sum (quantity_base), min (day), max (day) FROM movement"
                            " WHERE batch_id = ?1 AND kind = 'used' AND day > ?2 AND day <= ?3"
                            " GROUP BY lot_id ORDER BY lot_id";
  const SteadTraceLot *lot = g_hash_table_lookup (walk->lots, &place.id);
  SteadTraceLink made = { .lot_id = lot->id, .batch_id = lot->batch_id, .is_made = TRUE, .base = lot->in_base,
                          .first = lot->day, .last = lot->day };
  SteadDay until = lot->day, before;
  g_autoptr(SteadStmt) stmt = NULL;

  if (lot->batch_id == 0)
    return TRUE;
  if (!stead_trace_add_batch (walk, lot->batch_id, place.step - 1, error))
    return FALSE;
  stead_trace_add_link (walk, made);
  if (is_kitchen (walk, made.batch_id))
    until = G_MAXINT32;
  if (!widen (walk, made.batch_id, until, G_MININT32, &before))
    return TRUE;
  stmt = stead_store_prepare (walk->store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, made.batch_id);
  sqlite3_bind_int (stmt, 2, before);
  sqlite3_bind_int (stmt, 3, until);
  return read_links (walk, stmt, made.batch_id, FALSE, place.step - 1, error);
}

/* --- forward --------------------------------------------------------------------------- */

static gboolean
follow_batch (SteadTraceWalk  *walk,
              SteadTraceLink   used,
              int              step,
              GError         **error)
{
  static const char sql[] = "SELECT l.id, m.quantity_base, m.day, m.day FROM lot l"
                            " JOIN movement m ON m.lot_id = l.id AND m.kind = 'made'"
                            " WHERE l.batch_id = ?1 AND l.day >= ?2 AND l.day < ?3 ORDER BY l.day, l.id";
  SteadDay from = used.first, before;
  g_autoptr(SteadStmt) stmt = NULL;

  if (!stead_trace_add_batch (walk, used.batch_id, step, error))
    return FALSE;
  stead_trace_add_link (walk, used);
  if (is_kitchen (walk, used.batch_id))
    from = G_MININT32 + 1;
  if (!widen (walk, used.batch_id, from, G_MAXINT32, &before))
    return TRUE;
  stmt = stead_store_prepare (walk->store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, used.batch_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, before);
  return read_links (walk, stmt, used.batch_id, TRUE, step, error);
}

static gboolean
go_on (SteadTraceWalk   *walk,
       SteadTracePlace   place,
       GError          **error)
{
  const GArray *uses = g_hash_table_lookup (walk->uses, &place.id);

  for (guint i = 0; i < uses->len; i++)
    if (!follow_batch (walk, g_array_index (uses, SteadTraceLink, i), place.step + 1, error))
      return FALSE;
  return TRUE;
}

/* --- the whole -------------------------------------------------------------------------- */

static gboolean
walk_on (SteadTraceWalk       *walk,
         gboolean  (*go) (SteadTraceWalk *, SteadTracePlace, GError **),
         GError    **error)
{
  while (walk->at < walk->wait->len)
    if (!go (walk, g_array_index (walk->wait, SteadTracePlace, walk->at++), error))
      return FALSE;
  return TRUE;
}

/* Backward from the lot, then forward from it alone. */
static gboolean
walk_all (SteadTraceWalk  *walk,
          gint64           lot_id,
          GError         **error)
{
  SteadTracePlace start = { lot_id, 0 };

  if (!stead_trace_add_lot (walk, lot_id, 0, error) || !walk_on (walk, go_back, error))
    return FALSE;
  g_hash_table_remove_all (walk->bounds);
  g_array_append_val (walk->wait, start);
  return walk_on (walk, go_on, error);
}

static int
compare_lots (gconstpointer a,
              gconstpointer b)
{
  const SteadTraceLot *first = *(SteadTraceLot * const *) a, *second = *(SteadTraceLot * const *) b;

  if (first->step != second->step)
    return first->step < second->step ? -1 : 1;
  if (first->day != second->day)
    return first->day < second->day ? -1 : 1;
  return (first->id > second->id) - (first->id < second->id);
}

static int
compare_batches (gconstpointer a,
                 gconstpointer b)
{
  const SteadTraceBatch *first = *(SteadTraceBatch * const *) a, *second = *(SteadTraceBatch * const *) b;

  if (first->step != second->step)
    return first->step < second->step ? -1 : 1;
  if (first->started_on != second->started_on)
    return first->started_on < second->started_on ? -1 : 1;
  return (first->id > second->id) - (first->id < second->id);
}

static int
compare_moves (gconstpointer a,
               gconstpointer b)
{
  const SteadMove *first = *(SteadMove * const *) a, *second = *(SteadMove * const *) b;

  if (first->day != second->day)
    return first->day < second->day ? -1 : 1;
  return (first->id > second->id) - (first->id < second->id);
}

static guint
link_hash (gconstpointer data)
{
  const SteadTraceLink *link = data;

  return (guint) link->lot_id * 31 + (guint) link->batch_id * 2 + (guint) link->is_made;
}

static gboolean
link_equal (gconstpointer a,
            gconstpointer b)
{
  const SteadTraceLink *first = a, *second = b;

  return first->lot_id == second->lot_id && first->batch_id == second->batch_id && first->is_made == second->is_made;
}

SteadTrace *
stead_trace_repo_get (SteadStore  *store,
                      gint64       lot_id,
                      GError     **error)
{
  g_autoptr(GHashTable) lots = g_hash_table_new (g_int64_hash, g_int64_equal);
  g_autoptr(GHashTable) uses = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL, (GDestroyNotify) g_array_unref);
  g_autoptr(GHashTable) batches = g_hash_table_new (g_int64_hash, g_int64_equal);
  g_autoptr(GHashTable) bounds = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  g_autoptr(GHashTable) links = g_hash_table_new_full (link_hash, link_equal, g_free, NULL);
  g_autoptr(GArray) wait = g_array_new (FALSE, FALSE, sizeof (SteadTracePlace));
  g_autoptr(SteadTrace) trace = new_trace (lot_id);
  SteadTraceWalk walk = { store, trace, lots, uses, batches, bounds, links, wait, 0 };

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  if (!walk_all (&walk, lot_id, error))
    return NULL;
  g_ptr_array_sort (trace->lots, compare_lots);
  g_ptr_array_sort (trace->batches, compare_batches);
  g_ptr_array_sort (trace->gone, compare_moves);
  return g_steal_pointer (&trace);
}

gint64
stead_trace_repo_find_code (SteadStore  *store,
                            const char  *code,
                            GError     **error)
{
  static const char sql[] = "SELECT id FROM lot WHERE code = ?1";
  g_autofree char *tidy = stead_repo_tidy (code);
  g_autofree char *upper = tidy != NULL ? g_ascii_strup (tidy, -1) : NULL;
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 id = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  if (upper == NULL)
    return 0;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return -1;
  stead_stmt_bind_text (stmt, 1, upper);
  return stead_repo_number (store, stmt, 0, &id, error) ? id : -1;
}
