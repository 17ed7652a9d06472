/* stead-trace-read.c - the lots, batches and links of a trace, read one by one. */
#include "config.h"

#include "store/stead-item-private.h"
#include "store/stead-repo-private.h"
#include "store/stead-trace-private.h"

static const char * const batch_words[] = { "flock", "fish", "crop", "kitchen", NULL };

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
note_gone (SteadTraceWalk      *walk,
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
read_moves (SteadTraceWalk  *walk,
            SteadTraceLot   *lot,
            GError         **error)
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

gboolean
stead_trace_add_lot (SteadTraceWalk  *walk,
                     gint64           id,
                     int              step,
                     GError         **error)
{
  static const char sql[] =
    "SELECT l.id, l.code, l.item_id, i.name, i.kind, i.unit, l.day, l.best_by, coalesce (l.batch_id, 0),"
    " coalesce (r.id, 0), r.supplier, r.reference, p.name, coalesce (r.is_gift, 0), w.name, s.base"
    " FROM lot l JOIN item i ON i.id = l.item_id JOIN lot_stock s ON s.lot_id = l.id"
    " LEFT JOIN receipt_line rl ON rl.id = l.receipt_line_id LEFT JOIN receipt r ON r.id = rl.receipt_id"
    " LEFT JOIN person p ON p.id = r.person_id LEFT JOIN place w ON w.id = l.place_id WHERE l.id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadTraceLot *lot;
  SteadTracePlace place = { id, step };

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

void
stead_trace_add_link (SteadTraceWalk *walk,
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
    {
      g_autofree char *name = stead_stmt_text (stmt, 0);

      g_string_append_printf (names, batch->n_people++ > 0 ? ", %s" : "%s", name);
    }
  if (names->len > 0)
    batch->people = g_strdup (names->str);
  return found == 0;
}

gboolean
stead_trace_add_batch (SteadTraceWalk  *walk,
                       gint64           id,
                       int              step,
                       GError         **error)
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
