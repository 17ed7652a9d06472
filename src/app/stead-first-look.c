/* stead-first-look.c - a farm file checked, and what is new in it found, while the screen is still being opened.
 *
 * Both together take as long as half of a bare window's start, and need nothing of it.
 *
 * Invariant: what was found is never said of a file that changed since.
 */
#include "config.h"

#include <glib/gstdio.h>

#include "app/stead-first-look.h"

#define LARGE_BYTES (8 * 1024 * 1024)

typedef struct
{
  char             *path;
  GStatBuf          status;      /* before the look */
  GCancellable     *cancellable;
  GThread          *thread;      /* (nullable): it is over; until then it alone has what is below */
  gboolean          whole;       /* checked, and not yet said to be */
  SteadDay          day;
  SteadDueAnswer   *due;         /* (nullable): not found, or taken */
  SteadStripAnswer *strip;       /* (nullable): likewise */
} Look;

static Look *latest;   /* (nullable); of the main thread */

static gboolean
is_large (const GStatBuf *status)
{
  return status->st_size > LARGE_BYTES;
}

gboolean
stead_first_look_is_large (const char *path)
{
  GStatBuf status;

  return g_stat (path, &status) == 0 && is_large (&status);
}

/* A farm of an older schema is not read: it will be another file once it is opened. */
static void
find_news (Look *look)
{
  g_autoptr(SteadStore) store =
    stead_store_open (look->path, STEAD_STORE_OPEN_READ_ONLY | STEAD_STORE_OPEN_DEFER_CHECK, NULL);

  if (store == NULL)
    return;
  look->day = stead_store_get_today (store);
  look->due = stead_due_answer_new (store, NULL);
  if (look->due != NULL)
    look->strip = stead_strip_answer_new (store, look->due, 0, NULL);
}

static gpointer
run (gpointer data)
{
  Look *look = data;
  gboolean large = is_large (&look->status);

  look->whole = !large && stead_store_check_file (look->path, look->cancellable, NULL);
  if ((large || look->whole) && !g_cancellable_is_cancelled (look->cancellable))
    find_news (look);
  return NULL;
}

static gboolean
is_same (const GStatBuf *a,
         const GStatBuf *b)
{
  return a->st_dev == b->st_dev && a->st_ino == b->st_ino && a->st_size == b->st_size
         && a->st_mtim.tv_sec == b->st_mtim.tv_sec && a->st_mtim.tv_nsec == b->st_mtim.tv_nsec;
}

void
stead_first_look_begin (const char *path)
{
  GStatBuf status;

  g_return_if_fail (path != NULL);

  stead_first_look_end ();
  if (g_stat (path, &status) != 0)
    return;
  latest = g_new0 (Look, 1);
  latest->path = g_strdup (path);
  latest->status = status;
  latest->cancellable = g_cancellable_new ();
  latest->thread = g_thread_new ("first look", run, latest);
}

/* Waits until it is over.
 * Returns: (nullable): what was looked at, if that is @path as it still is */
static Look *
find (const char *path)
{
  GStatBuf now;

  if (latest == NULL || g_strcmp0 (latest->path, path) != 0)
    return NULL;
  if (latest->thread != NULL)
    g_thread_join (g_steal_pointer (&latest->thread));
  /* Looked at only now: what changed meanwhile counts too. */
  return g_stat (path, &now) == 0 && is_same (&latest->status, &now) ? latest : NULL;
}

gboolean
stead_first_look_passed (const char *path)
{
  Look *look;
  gboolean whole;

  g_return_val_if_fail (path != NULL, FALSE);

  look = find (path);
  whole = look != NULL && look->whole;
  if (look != NULL)
    look->whole = FALSE;
  return whole;
}

/* Returns: (nullable): the news of the farm as it still is, if some were not taken */
static Look *
find_news_of (SteadStore *store)
{
  Look *look = latest;

  if (look == NULL || (look->thread == NULL && look->due == NULL && look->strip == NULL))
    return NULL;
  look = find (stead_store_get_path (store));
  return look != NULL && look->day == stead_store_get_today (store) ? look : NULL;
}

SteadDueAnswer *
stead_first_look_take_due (SteadStore *store)
{
  Look *look;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  look = find_news_of (store);
  return look != NULL ? g_steal_pointer (&look->due) : NULL;
}

SteadStripAnswer *
stead_first_look_take_strip (SteadStore *store)
{
  Look *look;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  look = find_news_of (store);
  return look != NULL ? g_steal_pointer (&look->strip) : NULL;
}

void
stead_first_look_end (void)
{
  Look *look = g_steal_pointer (&latest);

  if (look == NULL)
    return;
  g_cancellable_cancel (look->cancellable);
  if (look->thread != NULL)
    g_thread_join (look->thread);
  g_clear_pointer (&look->due, stead_due_answer_free);
  g_clear_pointer (&look->strip, stead_strip_answer_free);
  g_free (look->path);
  g_object_unref (look->cancellable);
  g_free (look);
}
