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

/* The flocks named by the entries, by id. */
static SteadFlock *
flock_of (SteadStore       *store,
          GHashTable       *flocks,
          SteadFlockEntry  *entry,
          GError          **error)
{
  SteadFlock *flock = g_hash_table_lookup (flocks, &entry->flock_id);

  if (flock != NULL)
    return flock;
  flock = stead_flock_repo_get (store, entry->flock_id, error);
  if (flock != NULL)
    g_hash_table_insert (flocks, &flock->id, flock);
  return flock;
}

static gboolean
write_one (SteadStore       *store,
           GHashTable       *flocks,
           SteadFlockEntry  *entry,
           GError          **error)
{
  SteadFlock *flock = flock_of (store, flocks, entry, error);
  g_autofree char *day = NULL;

  if (flock == NULL)
    return FALSE;
  g_return_val_if_fail (entry->id == 0, FALSE);
  if (stead_flock_write_entry (store, entry, flock, NULL, error))
    return TRUE;
  day = entry->day != STEAD_DAY_NONE ? stead_day_format (entry->day, STEAD_DAY_STYLE_MEDIUM) : g_strdup ("?");
  g_prefix_error (error, "%s, %s: ", flock->name, day);
  return FALSE;
}

static gboolean
write_sorted (SteadStore    *store,
              GHashTable    *flocks,
              GPtrArray     *sorted,
              GCancellable  *cancellable,
              ProgressFunc   progress,
              gpointer       data,
              GError       **error)
{
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
      if (!write_one (store, flocks, sorted->pdata[i], error))
        return FALSE;
    }
  return TRUE;
}

/* Each feed once, from the first day on that any of its flocks has a new entry. */
static gboolean
settle_flocks (SteadStore  *store,
               GHashTable  *flocks,
               SteadDay     from,
               GError     **error)
{
  g_autoptr(GHashTable) done = g_hash_table_new (g_int64_hash, g_int64_equal);
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, flocks);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      SteadFlock *flock = value;

      if (g_hash_table_add (done, &flock->feed_item_id) &&
          !stead_ledger_settle (store, flock->feed_item_id, from, error))
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
  g_autoptr(GHashTable) flocks = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL,
                                                        (GDestroyNotify) stead_flock_free);
  g_autoptr(GPtrArray) sorted = NULL;
  gboolean done;

  g_return_val_if_fail (STEAD_IS_STORE (store) && entries != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (entries->len == 0)
    return TRUE;
  sorted = g_ptr_array_copy (entries, NULL, NULL);
  g_ptr_array_set_free_func (sorted, NULL);
  g_ptr_array_sort (sorted, compare_days);
  done = write_sorted (store, flocks, sorted, cancellable, progress, data, error) &&
         settle_flocks (store, flocks, ((SteadFlockEntry *) sorted->pdata[0])->day, error);
  for (guint i = 0; !done && i < entries->len; i++)
    ((SteadFlockEntry *) entries->pdata[i])->id = 0;
  if (done && progress != NULL)
    progress (1, data);
  return done;
}
