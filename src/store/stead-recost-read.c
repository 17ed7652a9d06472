/* stead-recost-read.c - the movements to be costed anew, read and written.
 *
 * All that hangs on a change is read first: the items (or lots) whose cents may
 * change, the kitchen batches that used them, what those made, and so on.  Each
 * is read once, so a circle in a damaged file ends too.
 */
#include "config.h"

#include "store/stead-recost.h"
#include "store/stead-recost-private.h"

static void
batch_free (gpointer data)
{
  SteadRecostBatch *batch = data;

  g_array_unref (batch->used);
  g_array_unref (batch->made);
  g_free (batch);
}

void
stead_recost_clear (SteadRecost *self)
{
  g_clear_pointer (&self->begin, g_array_unref);
  g_clear_pointer (&self->begin_batches, g_array_unref);
  g_clear_pointer (&self->pools, g_hash_table_unref);
  g_clear_pointer (&self->owned, g_ptr_array_unref);
  g_clear_pointer (&self->batches, g_hash_table_unref);
  g_clear_pointer (&self->read, g_hash_table_unref);
  g_clear_pointer (&self->wait, g_array_unref);
  g_clear_pointer (&self->moves, g_array_unref);
}

static gint64 *
key_of (gint64 id)
{
  return g_memdup2 (&id, sizeof id);
}

gboolean
stead_recost_begin (SteadRecost  *self,
                    SteadStore   *store,
                    gboolean      by_item,
                    SteadDay      from,
                    GError      **error)
{
  self->store = store;
  self->by_item = by_item;
  self->begin = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->begin_batches = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->pools = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  self->owned = g_ptr_array_new_with_free_func (g_free);
  self->batches = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, batch_free);
  self->read = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  self->wait = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->moves = g_array_new (FALSE, FALSE, sizeof (SteadRecostMove));
  if (!stead_recost_first_open (store, &self->open, error))
    return FALSE;
  self->from = MAX (from, self->open);
  return TRUE;
}

static void
forget_all (SteadRecost *self)
{
  g_hash_table_remove_all (self->pools);
  g_hash_table_remove_all (self->batches);
  g_hash_table_remove_all (self->read);
  g_ptr_array_set_size (self->owned, 0);
  g_array_set_size (self->wait, 0);
  g_array_set_size (self->moves, 0);
  self->earliest = G_MAXINT32;
}

/* --- reading: pools -------------------------------------------------------------- */

static SteadRecostPool *
new_pool (SteadRecost *self)
{
  SteadRecostPool *pool = g_new0 (SteadRecostPool, 1);

  g_ptr_array_add (self->owned, pool);
  return pool;
}

/* The lots of a receipt that was corrected are not averaged with the right ones, unless
 * they were while their days were open. */
static gboolean
read_item_lots (SteadRecost  *self,
                gint64        item_id,
                GError      **error)
{
  static const char sql[] =
    "SELECT l.id, s.base, s.cents, l.day >= ?2"
    " AND rl.receipt_id IN (SELECT corrects_id FROM receipt WHERE corrects_id IS NOT NULL)"
    " FROM lot l JOIN lot_stock s ON s.lot_id = l.id LEFT JOIN receipt_line rl ON rl.id = l.receipt_line_id"
    " WHERE l.item_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (self->store, sql, error);
  SteadRecostPool *shared = new_pool (self);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, item_id);
  sqlite3_bind_int (stmt, 2, self->open);
  while ((found = stead_store_step (self->store, stmt, error)) == 1)
    {
      SteadRecostPool *pool = sqlite3_column_int (stmt, 3) != 0 ? new_pool (self) : shared;

      pool->base += sqlite3_column_double (stmt, 1);
      pool->cents += sqlite3_column_int64 (stmt, 2);
      g_hash_table_replace (self->pools, key_of (sqlite3_column_int64 (stmt, 0)), pool);
    }
  return found == 0;
}

static gboolean
read_lot (SteadRecost  *self,
          gint64        lot_id,
          GError      **error)
{
  static const char sql[] = "SELECT base, cents FROM lot_stock WHERE lot_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (self->store, sql, error);
  SteadRecostPool *pool = new_pool (self);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, lot_id);
  found = stead_store_step (self->store, stmt, error);
  if (found == 1)
    {
      pool->base = sqlite3_column_double (stmt, 0);
      pool->cents = sqlite3_column_int64 (stmt, 1);
      g_hash_table_replace (self->pools, key_of (lot_id), pool);
    }
  return found >= 0;
}

/* --- reading: movements ------------------------------------------------------------ */

#define MOVES \
  "SELECT m.lot_id, m.id, m.day, m.quantity_base, m.cost_cents, coalesce (b.id, 0), m.kind = 'made'" \
  " FROM lot l CROSS JOIN movement m ON m.lot_id = l.id LEFT JOIN batch b" \
  " ON b.id = iif (m.kind = 'made', l.batch_id, iif (m.kind = 'used', m.batch_id, NULL)) AND b.kind = 'kitchen'"

/* What came and went from the first day on was not there before it. */
static void
add_move (SteadRecost *self,
          SteadStmt   *stmt)
{
  gint64 lot_id = sqlite3_column_int64 (stmt, 0);
  SteadRecostMove move = { .id = sqlite3_column_int64 (stmt, 1),
                           .day = stead_stmt_day (stmt, 2),
                           .quantity = sqlite3_column_double (stmt, 3),
                           .was = sqlite3_column_int64 (stmt, 4),
                           .batch_id = sqlite3_column_int64 (stmt, 5),
                           .pool = g_hash_table_lookup (self->pools, &lot_id) };

  if (move.pool == NULL)
    return;
  move.is_made = move.batch_id != 0 && sqlite3_column_int (stmt, 6) != 0;
  move.cents = move.was;
  move.pool->base -= move.quantity;
  move.pool->cents -= move.was;
  g_array_append_val (self->moves, move);
}

static gboolean
read_moves (SteadRecost  *self,
            gint64        id,
            GError      **error)
{
  static const char item_sql[] = MOVES " WHERE l.item_id = ?1 AND m.day >= ?2";
  static const char lot_sql[] = MOVES " WHERE l.id = ?1 AND m.day >= ?2";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (self->store, self->by_item ? item_sql : lot_sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  sqlite3_bind_int (stmt, 2, self->from);
  while ((found = stead_store_step (self->store, stmt, error)) == 1)
    add_move (self, stmt);
  return found == 0;
}

/* --- reading: kitchen batches --------------------------------------------------------- */

static gboolean
read_parts (SteadRecost  *self,
            const char   *sql,
            gint64        batch_id,
            GArray       *parts,
            GArray       *next,
            GError      **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (self->store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  while ((found = stead_store_step (self->store, stmt, error)) == 1)
    {
      SteadRecostPart part = { .id = sqlite3_column_int64 (stmt, 0),
                               .quantity = sqlite3_column_double (stmt, 1),
                               .cents = sqlite3_column_int64 (stmt, 2),
                               .at = G_MAXUINT };
      gint64 id = sqlite3_column_int64 (stmt, self->by_item ? 5 : 4);

      g_array_append_val (parts, part);
      if (next == NULL)
        continue;
      g_array_append_val (next, id);
      self->earliest = MIN (self->earliest, stead_stmt_day (stmt, 3));
    }
  return found == 0;
}

/* Reads a batch once, and has what it made looked at too. */
static gboolean
read_batch (SteadRecost  *self,
            gint64        batch_id,
            GError      **error)
{
  static const char used_sql[] = "SELECT m.id, m.quantity_base, m.cost_cents FROM movement m"
                                 " WHERE m.batch_id = ?1 AND m.kind = 'used' ORDER BY m.day, m.id";
  static const char made_sql[] = "SELECT m.id, m.quantity_base, m.cost_cents, m.day, l.id, l.item_id"
                                 " FROM lot l JOIN movement m ON m.lot_id = l.id AND m.kind = 'made'"
                                 " WHERE l.batch_id = ?1 ORDER BY m.id";
  SteadRecostBatch *batch;

  if (g_hash_table_contains (self->batches, &batch_id))
    return TRUE;
  batch = g_new0 (SteadRecostBatch, 1);
  batch->id = batch_id;
  batch->used = g_array_new (FALSE, FALSE, sizeof (SteadRecostPart));
  batch->made = g_array_new (FALSE, FALSE, sizeof (SteadRecostPart));
  g_hash_table_insert (self->batches, key_of (batch_id), batch);
  return read_parts (self, made_sql, batch_id, batch->made, self->wait, error) &&
         read_parts (self, used_sql, batch_id, batch->used, NULL, error);
}

static gboolean
read_one (SteadRecost  *self,
          gint64        id,
          GError      **error)
{
  guint first = self->moves->len;

  if (!g_hash_table_add (self->read, key_of (id)))
    return TRUE;
  if (self->by_item ? !read_item_lots (self, id, error) : !read_lot (self, id, error))
    return FALSE;
  if (!read_moves (self, id, error))
    return FALSE;
  for (guint i = first; i < self->moves->len; i++)
    {
      const SteadRecostMove *move = &g_array_index (self->moves, SteadRecostMove, i);

      if (move->batch_id != 0 && !read_batch (self, move->batch_id, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
read_waiting (SteadRecost  *self,
              GError      **error)
{
  while (self->wait->len > 0)
    {
      gint64 id = g_array_index (self->wait, gint64, self->wait->len - 1);

      g_array_set_size (self->wait, self->wait->len - 1);
      if (!read_one (self, id, error))
        return FALSE;
    }
  return TRUE;
}

/* A batch may have packed on a later day what it made before: then it begins there. */
static gboolean
read_all (SteadRecost  *self,
          GError      **error)
{
  for (;;)
    {
      forget_all (self);
      for (guint i = 0; i < self->begin_batches->len; i++)
        if (!read_batch (self, g_array_index (self->begin_batches, gint64, i), error))
          return FALSE;
      g_array_append_vals (self->wait, self->begin->data, self->begin->len);
      if (!read_waiting (self, error))
        return FALSE;
      self->earliest = MAX (self->earliest, self->open);
      if (self->earliest >= self->from)
        return TRUE;
      self->from = self->earliest;
    }
}

/* --- running ---------------------------------------------------------------------- */

static int
compare_moves (gconstpointer a,
               gconstpointer b)
{
  const SteadRecostMove *first = a, *second = b;

  if (first->day != second->day)
    return first->day < second->day ? -1 : 1;
  return (first->id > second->id) - (first->id < second->id);
}

static void
find_parts (GArray     *parts,
            GHashTable *places)
{
  for (guint i = 0; i < parts->len; i++)
    {
      SteadRecostPart *part = &g_array_index (parts, SteadRecostPart, i);
      gpointer at;

      if (g_hash_table_lookup_extended (places, &part->id, NULL, &at))
        part->at = GPOINTER_TO_UINT (at);
    }
}

/* Where the parts of the batches are among the movements. */
static void
connect_batches (SteadRecost *self)
{
  g_autoptr(GHashTable) places = g_hash_table_new (g_int64_hash, g_int64_equal);
  GHashTableIter iter;
  gpointer value;

  for (guint i = 0; i < self->moves->len; i++)
    {
      SteadRecostMove *move = &g_array_index (self->moves, SteadRecostMove, i);

      if (move->batch_id != 0)
        g_hash_table_insert (places, &move->id, GUINT_TO_POINTER (i));
    }
  g_hash_table_iter_init (&iter, self->batches);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      SteadRecostBatch *batch = value;

      find_parts (batch->used, places);
      find_parts (batch->made, places);
    }
}

static gboolean
write_cents (SteadRecost  *self,
             GError      **error)
{
  static const char sql[] = "UPDATE movement SET cost_cents = ?1 WHERE id = ?2";

  for (guint i = 0; i < self->moves->len; i++)
    {
      const SteadRecostMove *move = &g_array_index (self->moves, SteadRecostMove, i);
      g_autoptr(SteadStmt) stmt = NULL;

      if (move->cents == move->was)
        continue;
      stmt = stead_store_prepare (self->store, sql, error);
      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, move->cents);
      sqlite3_bind_int64 (stmt, 2, move->id);
      if (!stead_store_run (self->store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_recost_end (SteadRecost  *self,
                  GError      **error)
{
  if (!read_all (self, error))
    return FALSE;
  g_array_sort (self->moves, compare_moves);
  connect_batches (self);
  stead_recost_run (self->moves, self->batches);
  return write_cents (self, error);
}

