/* stead-flock-import.c - many entries at once. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-flock-private.h"
#include "store/stead-ledger-private.h"

/* How many entries pass between two looks at the clock of the person. */
#define ENTRIES_A_LOOK 256

/* Share of the work that writing the entries is; the rest is laying the feed. */
#define WRITE_SHARE 0.8

typedef void (*ProgressFunc) (double share, gpointer data);

static int
compare_days (gconstpointer a,
              gconstpointer b)
{
  const SteadFlockEntry *first = *(SteadFlockEntry * const *) a;
  const SteadFlockEntry *second = *(SteadFlockEntry * const *) b;

  return (first->day > second->day) - (first->day < second->day);
}

/* --- the rest of the log --------------------------------------------------------- */

/* What the file has of one day. */
typedef struct
{
  SteadDay day;
  gint64   eggs;
  gint64   lost;
} FiledDay;

/* A flock, and what stands in its log beside the next entry; kept up to date as
 * entries are written in order of day, since a query for each would be slow. */
typedef struct
{
  SteadFlock       *flock;
  GArray           *filed;     /* of FiledDay, oldest first */
  guint             next;      /* first filed day not before @day */
  SteadDay          day;
  gint64            lost_new;  /* on @day, written now */
  SteadFlockOthers  others;
} FlockLog;

static void
flock_log_free (FlockLog *log)
{
  stead_flock_free (log->flock);
  g_array_unref (log->filed);
  g_free (log);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FlockLog, flock_log_free)

static gboolean
read_filed (SteadStore  *store,
            FlockLog    *log,
            GError     **error)
{
  static const char sql[] = "SELECT day, sum (eggs), sum (deaths + culled) FROM batch_entry WHERE batch_id = ?1"
                            " GROUP BY day ORDER BY day";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, log->flock->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      FiledDay day = { stead_stmt_day (stmt, 0), sqlite3_column_int64 (stmt, 1), sqlite3_column_int64 (stmt, 2) };

      g_array_append_val (log->filed, day);
      log->others.lost_ever += day.lost;
    }
  return found == 0;
}

/* Returns: (transfer none) (nullable): the log of a flock, read when first asked for */
static FlockLog *
log_of (SteadStore  *store,
        GHashTable  *logs,
        gint64       flock_id,
        GError     **error)
{
  g_autoptr(FlockLog) log = NULL;
  FlockLog *known = g_hash_table_lookup (logs, &flock_id);

  if (known != NULL)
    return known;
  log = g_new0 (FlockLog, 1);
  log->day = STEAD_DAY_NONE;
  log->filed = g_array_new (FALSE, FALSE, sizeof (FiledDay));
  log->flock = stead_flock_repo_get (store, flock_id, error);
  if (log->flock == NULL || !read_filed (store, log, error))
    return NULL;
  known = g_steal_pointer (&log);
  g_hash_table_insert (logs, &known->flock->id, known);
  return known;
}

/* What stands beside an entry of @day, which is not before the last one's. */
static void
move_to_day (FlockLog *log,
             SteadDay  day)
{
  SteadFlockOthers *others = &log->others;
  const FiledDay *filed;

  if (day == log->day)
    return;
  others->lost_before += log->lost_new;
  others->lost_day = others->eggs_day = log->lost_new = 0;
  log->day = day;
  for (; log->next < log->filed->len; log->next++)
    {
      filed = &g_array_index (log->filed, FiledDay, log->next);
      if (filed->day >= day)
        break;
      others->lost_before += filed->lost;
    }
  if (log->next < log->filed->len && filed->day == day)
    {
      others->lost_day = filed->lost;
      others->eggs_day = filed->eggs;
    }
}

static void
note_written (FlockLog              *log,
              const SteadFlockEntry *entry)
{
  gint64 lost = (gint64) entry->deaths + entry->culled;

  log->lost_new += lost;
  log->others.lost_day += lost;
  log->others.lost_ever += lost;
  log->others.eggs_day += MAX (0, entry->eggs);
}

/* --- writing ---------------------------------------------------------------- */

static gboolean
write_one (SteadStore       *store,
           GHashTable       *logs,
           SteadFlockEntry  *entry,
           SteadDay          today,
           GError          **error)
{
  FlockLog *log = log_of (store, logs, entry->flock_id, error);
  g_autofree char *day = NULL;

  if (log == NULL)
    return FALSE;
  g_return_val_if_fail (entry->id == 0, FALSE);
  move_to_day (log, entry->day);
  if (stead_flock_write_entry (store, entry, log->flock, &log->others, today, error))
    {
      note_written (log, entry);
      return TRUE;
    }
  day = entry->day != STEAD_DAY_NONE ? stead_day_format (entry->day, STEAD_DAY_STYLE_MEDIUM) : g_strdup ("?");
  g_prefix_error (error, "%s, %s: ", log->flock->name, day);
  return FALSE;
}

static gboolean
write_sorted (SteadStore    *store,
              GHashTable    *logs,
              GPtrArray     *sorted,
              GCancellable  *cancellable,
              ProgressFunc   progress,
              gpointer       data,
              GError       **error)
{
  SteadDay today = stead_store_get_today (store);

  for (guint i = 0; i < sorted->len; i++)
    {
      if (i % ENTRIES_A_LOOK == 0)
        {
          if (g_cancellable_is_cancelled (cancellable))
            {
              g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_CANCELLED,
                                   _("Stopped. Nothing was taken over."));
              return FALSE;
            }
          if (progress != NULL)
            progress (WRITE_SHARE * i / sorted->len, data);
        }
      if (!write_one (store, logs, sorted->pdata[i], today, error))
        return FALSE;
    }
  return TRUE;
}

/* Each feed once, from the first day on that any of its flocks has a new entry. */
static gboolean
settle_flocks (SteadStore  *store,
               GHashTable  *logs,
               SteadDay     from,
               GError     **error)
{
  g_autoptr(GHashTable) done = g_hash_table_new (g_int64_hash, g_int64_equal);
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, logs);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      FlockLog *log = value;

      if (g_hash_table_add (done, &log->flock->feed_item_id) &&
          !stead_ledger_settle (store, log->flock->feed_item_id, from, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_flock_repo_add_entries (SteadStore    *store,
                              GPtrArray     *entries,
                              GCancellable  *cancellable,
                              void         (*progress) (double share, gpointer data),
                              gpointer       data,
                              GError       **error)
{
  g_autoptr(GHashTable) logs = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL,
                                                      (GDestroyNotify) flock_log_free);
  g_autoptr(GPtrArray) sorted = NULL;
  gboolean done;

  g_return_val_if_fail (STEAD_IS_STORE (store) && entries != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (entries->len == 0)
    return TRUE;
  sorted = g_ptr_array_copy (entries, NULL, NULL);
  g_ptr_array_set_free_func (sorted, NULL);
  g_ptr_array_sort (sorted, compare_days);
  done = write_sorted (store, logs, sorted, cancellable, progress, data, error) &&
         settle_flocks (store, logs, ((SteadFlockEntry *) sorted->pdata[0])->day, error);
  for (guint i = 0; !done && i < entries->len; i++)
    ((SteadFlockEntry *) entries->pdata[i])->id = 0;
  if (done && progress != NULL)
    progress (1, data);
  return done;
}
