/* stead-restore.c - a dated copy takes the place of the farm, and copies by hand.
 *
 * Invariants:
 *  1. The copy is checked before anything moves.
 *  2. The farm that was there stays beside it, with the journal that belongs to
 *     it: a journal left behind would be played back into the wrong file.
 */
#include "config.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <unistd.h>

#include "store/stead-copy.h"
#include "store/stead-message.h"
#include "store/stead-store-internal.h"

/* Nobody may be using it.  That also plays back what a crash left, where it can. */
static gboolean
check_unused (const char  *path,
              GError     **error)
{
  g_autoptr(sqlite3) db = NULL;
  g_autoptr(GError) problem = NULL;

  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return TRUE;
  db = stead_connection_open_any (path, TRUE, &problem);
  if (db != NULL && stead_connection_exec (db, "BEGIN EXCLUSIVE; ROLLBACK", &problem))
    return TRUE;
  if (!g_error_matches (problem, STEAD_STORE_ERROR, STEAD_STORE_ERROR_BUSY))
    return TRUE;   /* it is the damaged one that is to be replaced */
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

static gboolean
refuse_by_errno (GError **error)
{
  int number = errno;

  if (number == ENOSPC || number == EDQUOT)
    stead_message_set (NULL, SQLITE_FULL, error);
  else if (number == EACCES || number == EPERM || number == EROFS)
    stead_message_set (NULL, SQLITE_READONLY, error);
  else
    stead_message_set (NULL, SQLITE_IOERR, error);
  return FALSE;
}

/* A second name for the farm where the filesystem has such, else another name. */
static gboolean
set_aside (const char  *path,
           const char  *kept,
           GError     **error)
{
  g_autofree char *journal = g_strconcat (path, "-journal", NULL);
  g_autofree char *kept_journal = g_strconcat (kept, "-journal", NULL);

  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return TRUE;
  if (link (path, kept) != 0 && g_rename (path, kept) != 0)
    return refuse_by_errno (error);
  if (g_file_test (journal, G_FILE_TEST_EXISTS) && g_rename (journal, kept_journal) != 0)
    return refuse_by_errno (error);
  stead_copy_sync_folder (kept);
  return TRUE;
}

static gboolean
exchange (const char  *part,
          const char  *path,
          GError     **error)
{
  SteadDay today = stead_store_clock_day ();
  g_autofree char *day = stead_day_format (today, STEAD_DAY_STYLE_ISO);
  g_autofree char *words = g_strconcat ("before ", day, NULL);
  g_autofree char *kept = stead_copy_beside (path, words);

  if (set_aside (path, kept, error) && stead_copy_place (part, path, error))
    return TRUE;
  g_unlink (part);
  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    g_rename (kept, path);
  return FALSE;
}

gboolean
stead_store_restore (const char  *backup_path,
                     const char  *path,
                     GError     **error)
{
  g_autoptr(sqlite3) db = NULL;
  g_autofree char *part = NULL;
  int version;

  g_return_val_if_fail (backup_path != NULL, FALSE);
  g_return_val_if_fail (path != NULL, FALSE);

  db = stead_connection_open (backup_path, FALSE, &stead_schema, error);
  if (db == NULL ||
      !stead_connection_recognize (db, &stead_schema, &version, error) ||
      !stead_connection_check (db, "PRAGMA integrity_check(1)", error) ||
      !check_unused (path, error))
    return FALSE;
  part = stead_copy_write (db, path, NULL, error);
  return part != NULL &&
         stead_copy_settle (part, NULL, error) &&
         exchange (part, path, error);
}

static gboolean
is_same_file (const char *one,
              const char *other)
{
  GStatBuf a, b;

  return one != NULL && g_stat (one, &a) == 0 && g_stat (other, &b) == 0 &&
         a.st_dev == b.st_dev && a.st_ino == b.st_ino;
}

gboolean
stead_store_save_copy (SteadStore    *self,
                       const char    *path,
                       GCancellable  *cancellable,
                       GError       **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), FALSE);
  g_return_val_if_fail (path != NULL, FALSE);
  g_return_val_if_fail (!self->in_action, FALSE);

  if (is_same_file (self->path, path))
    {
      g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID,
                           _("This is the farm itself. Give the copy another name."));
      return FALSE;
    }
  return stead_copy_make (self->db, path, cancellable, error);
}
