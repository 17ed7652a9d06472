/* stead-fish-log.c - the log of a group of fish, entry by entry. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-fish-private.h"
#include "store/stead-ledger-private.h"

#define ENTRY_COLUMNS "id, batch_id, day, feed_kg, refused, deaths, culled, water_c, reason, note, person_id, left_out"

void
stead_fish_entry_free (SteadFishEntry *entry)
{
  if (entry == NULL)
    return;
  g_free (entry->reason);
  g_free (entry->note);
  g_free (entry);
}

/* --- reading ---------------------------------------------------------------- */

static gpointer
entry_from_row (SteadStmt *stmt)
{
  SteadFishEntry *entry = g_new0 (SteadFishEntry, 1);

  entry->id = sqlite3_column_int64 (stmt, 0);
  entry->fish_id = sqlite3_column_int64 (stmt, 1);
  entry->day = stead_stmt_day (stmt, 2);
  entry->feed_kg = stead_stmt_real (stmt, 3);
  entry->refused = sqlite3_column_int (stmt, 4) != 0;
  entry->deaths = sqlite3_column_int (stmt, 5);
  entry->culled = sqlite3_column_int (stmt, 6);
  entry->water_c = stead_stmt_real (stmt, 7);
  entry->reason = stead_stmt_text (stmt, 8);
  entry->note = stead_stmt_text (stmt, 9);
  entry->person_id = sqlite3_column_int64 (stmt, 10);
  entry->left_out = sqlite3_column_int (stmt, 11) != 0;
  return entry;
}

SteadFishEntry *
stead_fish_repo_get_entry (SteadStore  *store,
                           gint64       entry_id,
                           GError     **error)
{
  static const char sql[] = "SELECT " ENTRY_COLUMNS " FROM batch_entry WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, entry_id, entry_from_row, error);
}

GPtrArray *
stead_fish_repo_entries (SteadStore  *store,
                         gint64       fish_id,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  static const char sql[] = "SELECT " ENTRY_COLUMNS " FROM batch_entry"
                            " WHERE batch_id = ?1 AND day BETWEEN ?2 AND ?3 ORDER BY day, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, fish_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  return stead_repo_rows (store, stmt, entry_from_row, (GDestroyNotify) stead_fish_entry_free, error);
}

gint64
stead_fish_repo_count_entries (SteadStore  *store,
                               gint64       fish_id,
                               GError     **error)
{
  static const char sql[] = "SELECT count (*) FROM batch_entry WHERE batch_id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  return stead_repo_count_id (store, sql, fish_id, error);
}

/* The window is found in the index alone; only its own rows are then read. */
GPtrArray *
stead_fish_repo_page_entries (SteadStore  *store,
                              gint64       fish_id,
                              gint64       offset,
                              gint64       limit,
                              GError     **error)
{
  static const char sql[] =
    "SELECT " ENTRY_COLUMNS " FROM batch_entry WHERE id IN"
    " (SELECT id FROM batch_entry WHERE batch_id = ?1 ORDER BY day DESC, id DESC LIMIT ?3 OFFSET ?2)"
    " ORDER BY day DESC, id DESC";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && offset >= 0 && limit >= 0, NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, fish_id);
  sqlite3_bind_int64 (stmt, 2, offset);
  sqlite3_bind_int64 (stmt, 3, limit);
  return stead_repo_rows (store, stmt, entry_from_row, (GDestroyNotify) stead_fish_entry_free, error);
}

SteadDay
stead_fish_repo_last_feed (SteadStore  *store,
                           gint64       fish_id,
                           GError     **error)
{
  static const char sql[] = "SELECT day FROM batch_entry WHERE batch_id = ?1 AND feed_kg > 0"
                            " ORDER BY day DESC LIMIT 1";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 day = STEAD_DAY_NONE;

  g_return_val_if_fail (STEAD_IS_STORE (store), STEAD_DAY_NONE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return STEAD_DAY_NONE;
  sqlite3_bind_int64 (stmt, 1, fish_id);
  return stead_repo_number (store, stmt, STEAD_DAY_NONE, &day, error) ? (SteadDay) day : STEAD_DAY_NONE;
}

/* --- writing ---------------------------------------------------------------- */

static void
bind_entry (SteadStmt            *stmt,
            const SteadFishEntry *entry)
{
  sqlite3_bind_int64 (stmt, 1, entry->fish_id);
  stead_stmt_bind_day (stmt, 2, entry->day);
  stead_stmt_bind_real (stmt, 3, entry->feed_kg);
  sqlite3_bind_int (stmt, 4, entry->refused != FALSE);
  sqlite3_bind_int (stmt, 5, entry->deaths);
  sqlite3_bind_int (stmt, 6, entry->culled);
  stead_stmt_bind_real (stmt, 7, entry->water_c);
  stead_repo_bind_tidy (stmt, 8, entry->reason);
  stead_repo_bind_tidy (stmt, 9, entry->note);
  stead_stmt_bind_id (stmt, 10, entry->person_id);
  sqlite3_bind_int (stmt, 11, entry->left_out != FALSE);
  if (entry->id != 0)
    sqlite3_bind_int64 (stmt, 12, entry->id);
}

/* Checks and writes; feed is not settled yet. */
static gboolean
write_entry (SteadStore       *store,
             SteadFishEntry   *entry,
             const SteadFish  *group,
             GError          **error)
{
  static const char insert_sql[] =
    "INSERT INTO batch_entry (batch_id, day, feed_kg, refused, deaths, culled, water_c, reason, note, person_id,"
    " left_out) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)";
  static const char update_sql[] =
    "UPDATE batch_entry SET batch_id = ?1, day = ?2, feed_kg = ?3, refused = ?4, deaths = ?5, culled = ?6,"
    " water_c = ?7, reason = ?8, note = ?9, person_id = ?10, left_out = ?11 WHERE id = ?12";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadFishStand stand;

  if (!stead_fish_check_day (&group->batch, entry->day, stead_store_get_today (store), error) ||
      !stead_fish_read_stand (store, group, entry->day, entry->id, &stand, error) ||
      !stead_fish_entry_check (entry, group, &stand, stead_store_get_today (store), error))
    return FALSE;
  stmt = stead_store_prepare (store, entry->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  bind_entry (stmt, entry);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (entry->id == 0)
    entry->id = stead_store_last_id (store);
  return TRUE;
}

static gboolean
feeds (const SteadFishEntry *entry)
{
  return entry != NULL && entry->feed_kg > 0;
}

/* Only feed that came, went, changed or moved to another day is laid anew. */
static gboolean
settle_entry (SteadStore            *store,
              const SteadFish       *group,
              const SteadFishEntry  *before,
              const SteadFishEntry  *after,
              GError               **error)
{
  SteadDay from = STEAD_DAY_NONE;

  if (feeds (before) && feeds (after) && before->day == after->day &&
      !(ABS (before->feed_kg - after->feed_kg) > 0))
    return TRUE;
  if (feeds (before))
    from = before->day;
  if (feeds (after))
    from = from == STEAD_DAY_NONE ? after->day : MIN (from, after->day);
  return from == STEAD_DAY_NONE || stead_ledger_settle (store, group->batch.feed_item_id, from, error);
}

gboolean
stead_fish_repo_save_entry (SteadStore      *store,
                            SteadFishEntry  *entry,
                            GError         **error)
{
  g_autoptr(SteadFish) group = NULL;
  g_autoptr(SteadFishEntry) before = NULL;
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && entry != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  group = stead_fish_repo_get (store, entry->fish_id, error);
  if (group == NULL)
    return FALSE;
  if (entry->id != 0)
    {
      before = stead_fish_repo_get_entry (store, entry->id, error);
      if (before == NULL)
        return FALSE;
      g_return_val_if_fail (before->fish_id == entry->fish_id, FALSE);
    }
  ids = stead_given_ids_new (&entry->id);
  return stead_given_ids_end (ids, write_entry (store, entry, group, error) &&
                                   settle_entry (store, group, before, entry, error));
}

gboolean
stead_fish_repo_delete_entry (SteadStore  *store,
                              gint64       entry_id,
                              GError     **error)
{
  static const char sql[] = "DELETE FROM batch_entry WHERE id = ?1";
  g_autoptr(SteadFishEntry) before = NULL;
  g_autoptr(SteadFish) group = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  before = stead_fish_repo_get_entry (store, entry_id, error);
  group = before != NULL ? stead_fish_repo_get (store, before->fish_id, error) : NULL;
  return group != NULL &&
         stead_repo_run_id (store, sql, entry_id, error) &&
         settle_entry (store, group, before, NULL, error);
}

/* --- many at once -------------------------------------------------------------------- */

static int
compare_days (gconstpointer a,
              gconstpointer b)
{
  const SteadFishEntry *first = *(SteadFishEntry * const *) a;
  const SteadFishEntry *second = *(SteadFishEntry * const *) b;

  return (first->day > second->day) - (first->day < second->day);
}

/* Returns: (transfer none) (nullable): the group, read when first asked for */
static SteadFish *
group_of (SteadStore  *store,
          GHashTable  *groups,
          gint64       fish_id,
          GError     **error)
{
  SteadFish *group = g_hash_table_lookup (groups, &fish_id);

  if (group == NULL && (group = stead_fish_repo_get (store, fish_id, error)) != NULL)
    g_hash_table_insert (groups, &group->batch.id, group);
  return group;
}

static gboolean
write_one (SteadStore      *store,
           GHashTable      *groups,
           SteadFishEntry  *entry,
           GError         **error)
{
  SteadFish *group = group_of (store, groups, entry->fish_id, error);
  g_autofree char *day = NULL;

  if (group == NULL)
    return FALSE;
  if (write_entry (store, entry, group, error))
    return TRUE;
  day = entry->day != STEAD_DAY_NONE ? stead_day_format (entry->day, STEAD_DAY_STYLE_MEDIUM) : g_strdup ("?");
  g_prefix_error (error, "%s, %s: ", group->batch.name, day);
  return FALSE;
}

static gboolean
settle_groups (SteadStore  *store,
               GHashTable  *groups,
               SteadDay     from,
               GError     **error)
{
  g_autoptr(GHashTable) done = g_hash_table_new (g_int64_hash, g_int64_equal);
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, groups);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      SteadFish *group = value;

      if (g_hash_table_add (done, &group->batch.feed_item_id) &&
          !stead_ledger_settle (store, group->batch.feed_item_id, from, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_fish_repo_add_entries (SteadStore    *store,
                             GPtrArray     *entries,
                             GCancellable  *cancellable,
                             void         (*progress) (double share, gpointer data),
                             gpointer       data,
                             GError       **error)
{
  g_autoptr(GHashTable) groups = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL,
                                                        (GDestroyNotify) stead_fish_free);
  g_autoptr(GPtrArray) sorted = NULL;
  gboolean done = TRUE;

  g_return_val_if_fail (STEAD_IS_STORE (store) && entries != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (entries->len == 0)
    return TRUE;
  sorted = g_ptr_array_copy (entries, NULL, NULL);
  g_ptr_array_set_free_func (sorted, NULL);
  g_ptr_array_sort (sorted, compare_days);
  for (guint i = 0; done && i < sorted->len; i++)
    {
      if (progress != NULL)
        progress ((double) i / sorted->len, data);
      if (g_cancellable_is_cancelled (cancellable))
        {
          g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_CANCELLED,
                               _("Stopped. Nothing was taken over."));
          done = FALSE;
        }
      done = done && write_one (store, groups, sorted->pdata[i], error);
    }
  done = done && settle_groups (store, groups, ((SteadFishEntry *) sorted->pdata[0])->day, error);
  for (guint i = 0; !done && i < entries->len; i++)
    ((SteadFishEntry *) entries->pdata[i])->id = 0;
  if (done && progress != NULL)
    progress (1, data);
  return done;
}
