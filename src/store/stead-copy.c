/* stead-copy.c - a whole, checked copy of an open farm under another name.
 *
 * Invariants:
 *  1. A copy appears under its name whole and checked, or not at all.
 *  2. The farm's own file is only ever read through its connection.
 */
#include "config.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "store/stead-copy.h"
#include "store/stead-message.h"
#include "store/stead-schema.h"

#define PART_ENDING ".part"
#define PAGES_AT_ONCE 2000
#define SWEEP_AFTER_S (24 * 60 * 60)

char *
stead_copy_stem (const char *path)
{
  char *stem = g_path_get_basename (path);

  if (g_str_has_suffix (stem, STEAD_COPY_ENDING) && strlen (stem) > strlen (STEAD_COPY_ENDING))
    stem[strlen (stem) - strlen (STEAD_COPY_ENDING)] = '\0';
  return stem;
}

char *
stead_copy_beside (const char *path,
                   const char *words)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *stem = stead_copy_stem (path);
  g_autofree char *name = g_strdup_printf ("%s %s" STEAD_COPY_ENDING, stem, words);
  char *beside = g_build_filename (folder, name, NULL);

  for (int i = 2; g_file_test (beside, G_FILE_TEST_EXISTS); i++)
    {
      g_free (name);
      g_free (beside);
      name = g_strdup_printf ("%s %s (%d)" STEAD_COPY_ENDING, stem, words, i);
      beside = g_build_filename (folder, name, NULL);
    }
  return beside;
}

void
stead_copy_sync_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int fd = g_open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);

  if (fd < 0)
    return;
  fsync (fd);   /* some filesystems cannot; then the name is as safe as they make it */
  close (fd);
}

/* --- first ------------------------------------------------------------------ */

gboolean
stead_copy_pages (sqlite3       *from,
                  sqlite3       *to,
                  GCancellable  *cancellable,
                  GError       **error)
{
  sqlite3_backup *backup = sqlite3_backup_init (to, "main", from, "main");
  int rc = backup != NULL ? SQLITE_OK : sqlite3_extended_errcode (to);

  while (rc == SQLITE_OK && !g_cancellable_is_cancelled (cancellable))
    rc = sqlite3_backup_step (backup, PAGES_AT_ONCE);
  sqlite3_backup_finish (backup);
  if (rc == SQLITE_DONE)
    return TRUE;
  stead_message_set (NULL, rc == SQLITE_OK ? SQLITE_INTERRUPT : rc, error);
  return FALSE;
}

static gboolean
copy_to (sqlite3       *db,
         const char    *part,
         GCancellable  *cancellable,
         GError       **error)
{
  g_autoptr(sqlite3) copy = stead_connection_create (part, error);

  /* The part has no readers and is put onto the disk as a whole afterwards. */
  return copy != NULL &&
         stead_connection_exec (copy, "PRAGMA journal_mode = MEMORY; PRAGMA synchronous = OFF", error) &&
         stead_copy_pages (db, copy, cancellable, error);
}

/* Whoever may not read the farm may not read its copy; whoever makes it may write it. */
static void
keep_mode (sqlite3    *db,
           const char *part)
{
  const char *path = sqlite3_db_filename (db, "main");
  GStatBuf about;

  if (path != NULL && *path != '\0' && g_stat (path, &about) == 0)
    g_chmod (part, (int) ((about.st_mode & 0777) | S_IRUSR | S_IWUSR));
}

char *
stead_copy_write (sqlite3       *db,
                  const char    *target,
                  GCancellable  *cancellable,
                  GError       **error)
{
  g_autofree char *part = g_strdup_printf ("%s.%08x" PART_ENDING, target, g_random_int ());

  if (!stead_connection_claim (part, error))
    return NULL;
  keep_mode (db, part);
  if (copy_to (db, part, cancellable, error))
    return g_steal_pointer (&part);
  g_unlink (part);
  return NULL;
}

/* --- then ------------------------------------------------------------------- */

static gboolean
refuse_by_errno (int      number,
                 GError **error)
{
  stead_message_set (NULL, number == ENOSPC || number == EDQUOT ? SQLITE_FULL : SQLITE_IOERR, error);
  return FALSE;
}

static gboolean
put_on_disk (const char  *part,
             GError     **error)
{
  int fd = g_open (part, O_RDONLY | O_CLOEXEC, 0);
  int number = 0;

  if (fd < 0 || fsync (fd) != 0)
    number = errno;
  if (fd >= 0)
    close (fd);
  return number == 0 || refuse_by_errno (number, error);
}

static gboolean
check (const char    *part,
       GCancellable  *cancellable,
       GError       **error)
{
  g_autoptr(sqlite3) db = stead_connection_open_any (part, FALSE, error);

  if (db == NULL)
    return FALSE;
  stead_connection_watch (db, cancellable);
  return stead_connection_check (db, "PRAGMA integrity_check(1)", error);
}

gboolean
stead_copy_settle (const char    *part,
                   GCancellable  *cancellable,
                   GError       **error)
{
  if (put_on_disk (part, error) && check (part, cancellable, error))
    return TRUE;
  g_unlink (part);
  return FALSE;
}

gboolean
stead_copy_place (const char  *part,
                  const char  *target,
                  GError     **error)
{
  if (g_rename (part, target) == 0)
    {
      stead_copy_sync_folder (target);
      return TRUE;
    }
  refuse_by_errno (errno, error);
  g_unlink (part);
  return FALSE;
}

gboolean
stead_copy_make (sqlite3       *db,
                 const char    *target,
                 GCancellable  *cancellable,
                 GError       **error)
{
  g_autofree char *part = stead_copy_write (db, target, cancellable, error);

  return part != NULL &&
         stead_copy_settle (part, cancellable, error) &&
         stead_copy_place (part, target, error);
}

void
stead_copy_sweep (const char *folder)
{
  g_autoptr(GDir) dir = g_dir_open (folder, 0, NULL);
  gint64 now = g_get_real_time () / G_USEC_PER_SEC;
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      GStatBuf about;

      if (g_str_has_suffix (name, PART_ENDING) && g_stat (path, &about) == 0 &&
          now - about.st_mtime > SWEEP_AFTER_S)
        g_unlink (path);
    }
}
