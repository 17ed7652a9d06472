/* stead-trace-repo.c - one way back, and forward: where a lot came from and where it went. */
#include "config.h"

#include <math.h>

#include "store/stead-item-private.h"
#include "store/stead-repo-private.h"
#include "store/stead-trace-repo.h"

static const char * const batch_words[] = { "flock", "fish", "crop", "kitchen", NULL };

typedef struct
{
  gint64 id;
  int    step;
} Place;

typedef struct
{
  SteadStore *store;
  SteadTrace *trace;
  GHashTable *lots;      /* gint64 -> SteadTraceLot (unowned) */
  GHashTable *uses;      /* gint64 lot -> GArray of SteadTraceLink: the batches that used it */
  GHashTable *batches;   /* gint64 -> SteadTraceBatch (unowned) */
  GHashTable *bounds;    /* gint64 batch -> the day that was looked up to (backward) or from (forward) */
  GHashTable *links;     /* SteadTraceLink keys -> index in trace->links + 1 */
  GArray     *wait;      /* of Place: lots whose other side is still to be looked at */
  guint       at;        /* the next of them */
} Walk;

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

/* --- one lot -------------------------------------------------------------------- */

static gpointer
lot_from_row (SteadStmt *stmt)
{
  SteadTraceLot *lot = g_new0 (SteadTraceLot, 1);

  lot->id = sqlite3_column_int64 (stmt, 0);
  lot->code = stead_stmt_text (stmt, 1);
  lot->item_id = sqlite3_column_int64 (stmt, 2);
  lot->item_name = stead_stmt_text (stmt, 3);
  lot->item_kind = (SteadItemKind) stead_repo_word (stmt, 4, stead_item_kind_words);
  lot->unit = stead_item_unit (stmt, 5);
  lot->day = stead_stmt_day (stmt, 6);
  lot->best_by = stead_stmt_day (stmt, 7);
  lot->batch_id = sqlite3_column_int64 (stmt, 8);
  lot->receipt_id = sqlite3_column_int64 (stmt, 9);
  lot->supplier = stead_stmt_text (stmt, 10);
  lot->reference = stead_stmt_text (stmt, 11);
  lot->buyer = stead_stmt_text (stmt, 12);
  lot->is_gift = sqlite3_column_int (stmt, 13) != 0;
  lot->place_name = stead_stmt_text (stmt, 14);
  lot->left_base = sqlite3_column_double (stmt, 15);
  return lot;
}

static void
add_sum (SteadTraceLot *lot,
         const char    *kind,
         double         base)
{
  if (g_str_equal (kind, "received") || g_str_equal (kind, "made"))
    lot->in_base += base;
  else if (g_str_equal (kind, "used"))
    lot->used_base -= base;
  else if (g_str_equal (kind, "sold"))
    lot->sold_base -= base;
  else if (g_str_equal (kind, "given"))
    lot->given_base -= base;
  else if (g_str_equal (kind, "lost"))
    lot->lost_base -= base;
  else
    lot->found_base += base;
}

/* A batch that used it, on one day more. */
static void
note_use (GArray         *uses,
          SteadTraceLink  use)
{
  for (guint i = 0; i < uses->len; i++)
    {
      SteadTraceLink *old = &g_array_index (uses, SteadTraceLink, i);

      if (old->batch_id != use.batch_id)
        continue;
      old->base += use.base;
      old->last = use.last;
      return;
    }
  g_array_append_val (uses, use);
}

/* What of the lot, or of one after it, is in other hands, or lost. */
static void
note_gone (Walk                *walk,
           const SteadTraceLot *lot,
           SteadMoveKind        kind,
           SteadStmt           *stmt)
{
  SteadMove *move = g_new0 (SteadMove, 1);

  move->id = sqlite3_column_int64 (stmt, 4);
  move->lot_id = lot->id;
  move->lot_code = g_strdup (lot->code);
  move->item_name = g_strdup (lot->item_name);
  move->item_kind = lot->item_kind;
  move->unit = lot->unit;
  move->day = stead_stmt_day (stmt, 3);
  move->kind = kind;
  move->quantity_base = sqlite3_column_double (stmt, 1);
  move->cost_cents = sqlite3_column_int64 (stmt, 5);
  move->is_gift = lot->is_gift;
  move->receipt_id = lot->receipt_id;
  move->reason = stead_stmt_text (stmt, 6);
  move->person_id = sqlite3_column_int64 (stmt, 7);
  g_ptr_array_add (walk->trace->gone, move);
}

/* What became of it, and which batches used it. */
static gboolean
read_moves (Walk           *walk,
            SteadTraceLot  *lot,
            GError        **error)
{
  static const char sql[] = "SELECT kind, quantity_base, batch_id, day, id, cost_cents, reason, person_id"
                            " FROM movement WHERE lot_id = ?1 ORDER BY day, id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (walk->store, sql, error);
  GArray *uses = g_array_new (FALSE, FALSE, sizeof (SteadTraceLink));
  int found;

  g_hash_table_insert (walk->uses, &lot->id, uses);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, lot->id);
  while ((found = stead_store_step (walk->store, stmt, error)) == 1)
    {
      const char *kind = (const char *) sqlite3_column_text (stmt, 0);
      SteadTraceLink use = { .lot_id = lot->id, .batch_id = sqlite3_column_int64 (stmt, 2),
                             .base = -sqlite3_column_double (stmt, 1), .first = stead_stmt_day (stmt, 3),
                             .last = stead_stmt_day (stmt, 3) };

      add_sum (lot, kind, -use.base);
      if (g_str_equal (kind, "used"))
        note_use (uses, use);
      else if (lot->step >= 0 && g_str_equal (kind, "sold"))
        note_gone (walk, lot, STEAD_MOVE_SOLD, stmt);
      else if (lot->step >= 0 && g_str_equal (kind, "given"))
        note_gone (walk, lot, STEAD_MOVE_GIVEN, stmt);
      else if (lot->step >= 0 && g_str_equal (kind, "lost"))
        note_gone (walk, lot, STEAD_MOVE_LOST, stmt);
    }
  if (lot->left_base < STEAD_AMOUNT_EPSILON)
    lot->left_base = 0;
  return found == 0;
}

static gboolean
add_lot (Walk    *walk,
         gint64   id,
         int      step,
         GError **error)
{
  static const char sql[] =
    "SELECT l.id, l.code, l.item_id, i.name, i.kind, i.unit, l.day, l.best_by, coalesce (l.batch_id, 0),"
    " coalesce (r.id, 0), r.supplier, r.reference, p.name, coalesce (r.is_gift, 0), w.name, s.base"
    " FROM lot l JOIN item i ON i.id = l.item_id JOIN lot_stock s ON s.lot_id = l.id"
    " LEFT JOIN receipt_line rl ON rl.id = l.receipt_line_id LEFT JOIN receipt r ON r.id = rl.receipt_id"
    " LEFT JOIN person p ON p.id = r.person_id LEFT JOIN place w ON w.id = l.place_id WHERE l.id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadTraceLot *lot;
  Place place = { id, step };

  if (g_hash_table_contains (walk->lots, &id))
    return TRUE;
  stmt = stead_store_prepare (walk->store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  lot = stead_repo_row (walk->store, stmt, lot_from_row, error);
  if (lot == NULL)
    return FALSE;
  lot->step = step;
  g_ptr_array_add (walk->trace->lots, lot);
  g_hash_table_insert (walk->lots, &lot->id, lot);
  g_array_append_val (walk->wait, place);
  return read_moves (walk, lot, error);
}

/* --- links ------------------------------------------------------------------------ */

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

static void
add_link (Walk           *walk,
          SteadTraceLink  link)
{
  gpointer at = g_hash_table_lookup (walk->links, &link);
  SteadTraceLink *old;

  if (at == NULL)
    {
      g_array_append_val (walk->trace->links, link);
      g_hash_table_insert (walk->links, g_memdup2 (&link, sizeof link), GUINT_TO_POINTER (walk->trace->links->len));
      return;
    }
  old = &g_array_index (walk->trace->links, SteadTraceLink, GPOINTER_TO_UINT (at) - 1);
  if (link.is_made)
    return;
  old->base += link.base;
  old->first = MIN (old->first, link.first);
  old->last = MAX (old->last, link.last);
}

/* --- one batch ---------------------------------------------------------------------- */

static gpointer
batch_from_row (SteadStmt *stmt)
{
  SteadTraceBatch *batch = g_new0 (SteadTraceBatch, 1);

  batch->id = sqlite3_column_int64 (stmt, 0);
  batch->name = stead_stmt_text (stmt, 1);
  batch->kind = (SteadBatchKind) stead_repo_word (stmt, 2, batch_words);
  batch->started_on = stead_stmt_day (stmt, 3);
  batch->ended_on = stead_stmt_day (stmt, 4);
  batch->n_tests = sqlite3_column_int64 (stmt, 5);
  batch->last_test = stead_stmt_day (stmt, 6);
  batch->n_treatments = sqlite3_column_int64 (stmt, 7);
  batch->treatment = stead_stmt_text (stmt, 8);
  batch->n_steps = sqlite3_column_int64 (stmt, 9);
  batch->n_done = sqlite3_column_int64 (stmt, 10);
  batch->lost_base = sqlite3_column_double (stmt, 11);
  return batch;
}

/* Everyone who worked on it, cooked, picked or took a reading; by name. */
static gboolean
read_people (SteadStore       *store,
             SteadTraceBatch  *batch,
             GError          **error)
{
  static const char sql[] =
    "SELECT name FROM person WHERE id IN (SELECT person_id FROM batch_person WHERE batch_id = ?1"
    " UNION SELECT person_id FROM kitchen_step WHERE batch_id = ?1 UNION SELECT person_id FROM reading WHERE batch_id = ?1"
    " UNION SELECT person_id FROM harvest WHERE batch_id = ?1 UNION SELECT person_id FROM movement WHERE batch_id = ?1"
    " UNION SELECT person_id FROM treatment WHERE batch_id = ?1) ORDER BY name";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autoptr(GString) names = g_string_new (NULL);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    g_string_append_printf (names, batch->n_people++ > 0 ? ", %s" : "%s", sqlite3_column_text (stmt, 0));
  if (names->len > 0)
    batch->people = g_strdup (names->str);
  return found == 0;
}

/* Adds the batch once; @step as of the lots on its far side. */
static gboolean
add_batch (Walk    *walk,
           gint64   id,
           int      step,
           GError **error)
{
  static const char sql[] =
    "SELECT b.id, b.name, b.kind, b.started_on, b.ended_on,"
    " (SELECT count (*) FROM place p JOIN water_test t ON t.water_id = p.water_id WHERE p.id = b.place_id"
    "   AND t.day BETWEEN b.started_on AND coalesce (b.ended_on, ?2)),"
    " (SELECT max (t.day) FROM place p JOIN water_test t ON t.water_id = p.water_id WHERE p.id = b.place_id"
    "   AND t.day BETWEEN b.started_on AND coalesce (b.ended_on, ?2)),"
    " (SELECT count (*) FROM treatment WHERE batch_id = b.id),"
    " (SELECT what FROM treatment WHERE batch_id = b.id ORDER BY wait_until DESC, id DESC LIMIT 1),"
    " (SELECT count (*) FROM kitchen_step WHERE batch_id = b.id),"
    " (SELECT count (done_at) FROM kitchen_step WHERE batch_id = b.id),"
    " (SELECT coalesce (sum (lost_base + tasted_base), 0) FROM harvest WHERE batch_id = b.id)"
    " FROM batch b WHERE b.id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadTraceBatch *batch;

  if (g_hash_table_contains (walk->batches, &id))
    return TRUE;
  stmt = stead_store_prepare (walk->store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  sqlite3_bind_int (stmt, 2, stead_store_get_today (walk->store));
  batch = stead_repo_row (walk->store, stmt, batch_from_row, error);
  if (batch == NULL)
    return FALSE;
  batch->step = step;
  g_ptr_array_add (walk->trace->batches, batch);
  g_hash_table_insert (walk->batches, &batch->id, batch);
  return read_people (walk->store, batch, error);
}

static gboolean
is_kitchen (Walk   *walk,
            gint64  batch_id)
{
  const SteadTraceBatch *batch = g_hash_table_lookup (walk->batches, &batch_id);

  return batch != NULL && batch->kind == STEAD_BATCH_KITCHEN;
}

/* The day looked at so far; FALSE if @day lies within. */
static gboolean
widen (Walk     *walk,
       gint64    batch_id,
       SteadDay  day,
       SteadDay  none,
       SteadDay *out_before)
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
read_links (Walk       *walk,
            SteadStmt  *stmt,
            gint64      batch_id,
            gboolean    is_made,
            int         step,
            GError    **error)
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

      add_link (walk, *link);
      if (!add_lot (walk, link->lot_id, step, error))
        return FALSE;
    }
  return found == 0;
}

/* --- backward ------------------------------------------------------------------------- */

static gboolean
go_back (Walk    *walk,
         Place    place,
         GError **error)
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
  if (!add_batch (walk, lot->batch_id, place.step - 1, error))
    return FALSE;
  add_link (walk, made);
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
follow_batch (Walk            *walk,
              SteadTraceLink   used,
              int              step,
              GError         **error)
{
  static const char sql[] = "SELECT l.id, m.quantity_base, m.day, m.day FROM lot l"
                            " JOIN movement m ON m.lot_id = l.id AND m.kind = 'made'"
                            " WHERE l.batch_id = ?1 AND l.day >= ?2 AND l.day < ?3 ORDER BY l.day, l.id";
  SteadDay from = used.first, before;
  g_autoptr(SteadStmt) stmt = NULL;

  if (!add_batch (walk, used.batch_id, step, error))
    return FALSE;
  add_link (walk, used);
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
go_on (Walk     *walk,
       Place     place,
       GError  **error)
{
  const GArray *uses = g_hash_table_lookup (walk->uses, &place.id);

  for (guint i = 0; i < uses->len; i++)
    if (!follow_batch (walk, g_array_index (uses, SteadTraceLink, i), place.step + 1, error))
      return FALSE;
  return TRUE;
}

/* --- the whole -------------------------------------------------------------------------- */

static gboolean
walk_on (Walk       *walk,
         gboolean  (*go) (Walk *, Place, GError **),
         GError    **error)
{
  while (walk->at < walk->wait->len)
    if (!go (walk, g_array_index (walk->wait, Place, walk->at++), error))
      return FALSE;
  return TRUE;
}

/* Backward from the lot, then forward from it alone. */
static gboolean
walk_all (Walk    *walk,
          gint64   lot_id,
          GError **error)
{
  Place start = { lot_id, 0 };

  if (!add_lot (walk, lot_id, 0, error) || !walk_on (walk, go_back, error))
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
  g_autoptr(GArray) wait = g_array_new (FALSE, FALSE, sizeof (Place));
  g_autoptr(SteadTrace) trace = new_trace (lot_id);
  Walk walk = { store, trace, lots, uses, batches, bounds, links, wait, 0 };

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
