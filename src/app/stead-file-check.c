/* stead-file-check.c - the check of a farm file, begun while the screen is still being opened.
 *
 * The check takes as long as a third of a bare window's start, and needs nothing of it.
 *
 * Invariant: that a check was passed is never said of a file that changed since.
 */
#include "config.h"

#include <glib/gstdio.h>

#include "app/stead-file-check.h"
#include "store/stead-store.h"

#define LARGE_BYTES (8 * 1024 * 1024)

typedef struct
{
  char         *path;
  GStatBuf      status;        /* before the check */
  GCancellable *cancellable;
  GThread      *thread;
} Check;

static Check *under_way;       /* (nullable); of the main thread */

gboolean
stead_file_check_is_large (const char *path)
{
  GStatBuf status;

  return g_stat (path, &status) == 0 && status.st_size > LARGE_BYTES;
}

/* Returns: whether the file is whole, as a pointer */
static gpointer
run (gpointer data)
{
  const Check *check = data;

  return GINT_TO_POINTER (stead_store_check_file (check->path, check->cancellable, NULL));
}

static gboolean
is_same (const GStatBuf *a,
         const GStatBuf *b)
{
  return a->st_dev == b->st_dev && a->st_ino == b->st_ino && a->st_size == b->st_size
         && a->st_mtim.tv_sec == b->st_mtim.tv_sec && a->st_mtim.tv_nsec == b->st_mtim.tv_nsec;
}

void
stead_file_check_begin (const char *path)
{
  GStatBuf status;

  g_return_if_fail (path != NULL);

  stead_file_check_end ();
  if (g_stat (path, &status) != 0 || status.st_size > LARGE_BYTES)
    return;
  under_way = g_new0 (Check, 1);
  under_way->path = g_strdup (path);
  under_way->status = status;
  under_way->cancellable = g_cancellable_new ();
  under_way->thread = g_thread_new ("file check", run, under_way);
}

/* Waits, and forgets it. */
static gboolean
finish (Check *check)
{
  gboolean whole = GPOINTER_TO_INT (g_thread_join (check->thread));

  g_free (check->path);
  g_object_unref (check->cancellable);
  g_free (check);
  return whole;
}

gboolean
stead_file_check_passed (const char *path)
{
  Check *check = under_way;
  GStatBuf before, now;

  g_return_val_if_fail (path != NULL, FALSE);

  if (check == NULL || !g_str_equal (check->path, path))
    return FALSE;
  under_way = NULL;
  before = check->status;
  /* Looked at only once the check is over: what changed during it counts too. */
  return finish (check) && g_stat (path, &now) == 0 && is_same (&before, &now);
}

void
stead_file_check_end (void)
{
  Check *check = g_steal_pointer (&under_way);

  if (check == NULL)
    return;
  g_cancellable_cancel (check->cancellable);
  finish (check);
}
