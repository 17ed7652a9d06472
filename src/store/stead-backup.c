/* stead-backup.c - dated copies: made at the first change of a day, kept for a
 * fortnight and then one a month.
 *
 * Invariants:
 *  1. A copy holds the farm as it was before the first change of its day.
 *  2. A copy that fails never stops a change; it is said once a day.
 *  3. Of the copies of a farm the 14 newest stay, and of those before them the
 *     last of each month for 12 months.  Only files named as our copies go.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#include "store/stead-backup.h"
#include "store/stead-copy.h"

#define DAY_LETTERS 10   /* "2026-03-03" */

void
stead_backup_free (SteadBackup *backup)
{
  if (backup == NULL)
    return;
  g_free (backup->path);
  g_free (backup);
}

char *
stead_store_backup_folder (const char *path)
{
  g_autofree char *folder = NULL;
  g_autofree char *stem = NULL;
  g_autofree char *name = NULL;

  g_return_val_if_fail (path != NULL, NULL);
  folder = g_path_get_dirname (path);
  stem = stead_copy_stem (path);
  name = g_strconcat (stem, ".copies", NULL);
  return g_build_filename (folder, name, NULL);
}

/* --- the list --------------------------------------------------------------- */

/* The day in a name "NAME 2026-03-03.steading", or STEAD_DAY_NONE. */
static SteadDay
day_of_name (const char *name)
{
  gsize length = strlen (name);
  const char *day;
  int year, month, mday;

  if (length < DAY_LETTERS + 1 + strlen (STEAD_COPY_ENDING) || !g_str_has_suffix (name, STEAD_COPY_ENDING))
    return STEAD_DAY_NONE;
  day = name + length - strlen (STEAD_COPY_ENDING) - DAY_LETTERS;
  if (day[-1] != ' ' || strspn (day, "0123456789-") != DAY_LETTERS || day[4] != '-' || day[7] != '-')
    return STEAD_DAY_NONE;
  year = (int) g_ascii_strtoll (day, NULL, 10);
  month = (int) g_ascii_strtoll (day + 5, NULL, 10);
  mday = (int) g_ascii_strtoll (day + 8, NULL, 10);
  return stead_day_new (year, month, mday);
}

static int
newest_first (gconstpointer a,
              gconstpointer b)
{
  const SteadBackup *one = *(SteadBackup * const *) a;
  const SteadBackup *other = *(SteadBackup * const *) b;

  if (one->day != other->day)
    return one->day < other->day ? 1 : -1;
  return strcmp (one->path, other->path);
}

static int
month_of (SteadDay day)
{
  int year, month;

  stead_day_split (day, &year, &month, NULL);
  return year * 12 + month;
}

GPtrArray *
stead_store_list_backups (const char *path)
{
  g_autoptr(GPtrArray) backups = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_backup_free);
  g_autofree char *folder = NULL;
  g_autoptr(GDir) dir = NULL;
  const char *name;

  g_return_val_if_fail (path != NULL, NULL);
  folder = stead_store_backup_folder (path);
  dir = g_dir_open (folder, 0, NULL);
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      SteadDay day = day_of_name (name);
      SteadBackup *backup;

      if (day == STEAD_DAY_NONE)
        continue;
      backup = g_new0 (SteadBackup, 1);
      backup->path = g_build_filename (folder, name, NULL);
      backup->day = day;
      g_ptr_array_add (backups, backup);
    }
  g_ptr_array_sort (backups, newest_first);
  for (guint i = STEAD_BACKUP_DAILY; i < backups->len; i++)
    ((SteadBackup *) backups->pdata[i])->monthly = TRUE;
  return g_steal_pointer (&backups);
}

/* --- which stay ------------------------------------------------------------- */

static void
prune (const char *path,
       const char *made)
{
  g_autoptr(GPtrArray) backups = stead_store_list_backups (path);
  int n_monthly = 0;

  for (guint i = STEAD_BACKUP_DAILY; i < backups->len; i++)
    {
      const SteadBackup *backup = backups->pdata[i];
      const SteadBackup *newer = backups->pdata[i - 1];
      gboolean last_of_month = month_of (backup->day) != month_of (newer->day);

      if (last_of_month && n_monthly < STEAD_BACKUP_MONTHLY)
        n_monthly++;
      else if (!g_str_equal (backup->path, made))   /* a clock set back must not undo the copy just made */
        g_unlink (backup->path);
    }
}

/* --- the copy of a day ------------------------------------------------------ */

struct _SteadBackupJob
{
  GThread *thread;
  char    *path;      /* the farm */
  char    *part;
  char    *target;
  GError  *error;     /* read after the thread is joined */
  int      is_done;   /* atomic */
};

static gpointer
finish_cb (gpointer data)
{
  SteadBackupJob *job = data;

  if (stead_copy_settle (job->part, NULL, &job->error) &&
      stead_copy_place (job->part, job->target, &job->error))
    prune (job->path, job->target);
  g_atomic_int_set (&job->is_done, TRUE);
  return NULL;
}

static void
free_job (SteadBackupJob *job)
{
  g_free (job->path);
  g_free (job->part);
  g_free (job->target);
  g_clear_error (&job->error);
  g_free (job);
}

static void
tell (SteadStore   *self,
      const GError *error,
      const char   *target)
{
  g_autofree char *folder = g_path_get_dirname (target);

  g_free (self->notice);
  if (g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_FULL))
    self->notice = g_strdup (_("Today's copy of the farm could not be made: the disk is full. "
                               "Your change is kept. Free some space."));
  else if (g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_DAMAGED))
    self->notice = g_strdup (_("Today's copy of the farm was not whole, so it was not kept. "
                               "Your change is kept. Have the farm checked, and the disk."));
  else
    self->notice = g_strdup_printf (_("Today's copy of the farm could not be made in “%s”. "
                                      "Your change is kept. Check that you may write to that folder."), folder);
}

void
stead_backup_wait (SteadStore *self)
{
  SteadBackupJob *job = g_steal_pointer (&self->backup_job);

  if (job == NULL)
    return;
  if (job->thread != NULL)
    g_thread_join (job->thread);
  if (job->error != NULL)
    tell (self, job->error, job->target);
  free_job (job);
}

void
stead_backup_settle (SteadStore *self)
{
  if (self->backup_job != NULL && g_atomic_int_get (&self->backup_job->is_done))
    stead_backup_wait (self);
}

static char *
target_of_day (SteadStore *self,
               const char *folder,
               SteadDay    today)
{
  g_autofree char *stem = stead_copy_stem (self->path);
  g_autofree char *day = stead_day_format (today, STEAD_DAY_STYLE_ISO);
  g_autofree char *name = g_strdup_printf ("%s %s" STEAD_COPY_ENDING, stem, day);

  return g_build_filename (folder, name, NULL);
}

static void
start (SteadStore *self,
       char       *target)
{
  SteadBackupJob *job = g_new0 (SteadBackupJob, 1);

  job->path = g_strdup (self->path);
  job->target = target;
  job->part = stead_copy_write (self->db, target, NULL, &job->error);
  if (job->part != NULL)
    job->thread = g_thread_try_new ("dated copy", finish_cb, job, NULL);
  if (job->part != NULL && job->thread == NULL)
    finish_cb (job);
  self->backup_job = job;
  if (job->thread == NULL)
    stead_backup_wait (self);
}

void
stead_backup_of_day (SteadStore *self)
{
  SteadDay today = stead_store_get_today (self);
  g_autofree char *folder = NULL;
  g_autofree char *target = NULL;

  if (self->path == NULL || self->copy_tried_on == today)
    return;
  self->copy_tried_on = today;
  if (stead_store_get_change_no (self) == 0)   /* made just now: nothing to keep yet */
    return;
  stead_backup_wait (self);
  folder = stead_store_backup_folder (self->path);
  target = target_of_day (self, folder, today);
  if (g_file_test (target, G_FILE_TEST_EXISTS))
    return;
  g_mkdir (folder, 0700);                      /* if it fails, so does the copy */
  stead_copy_sweep (folder);
  start (self, g_steal_pointer (&target));
}
