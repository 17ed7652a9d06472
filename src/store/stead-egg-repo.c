/* stead-egg-repo.c - grading sheets and broken-out eggs of a flock.
 *
 * They describe eggs that the log counts; nothing here moves stock or money.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-batch-repo.h"
#include "store/stead-egg-repo.h"
#include "store/stead-repo-private.h"

/* More eggs of a kind on one sheet are a slip of typing. */
#define COUNT_MAX 1000000

/* What the file takes; what lies outside was not measured on an egg. */
#define EGG_G_LEAST 5.0
#define EGG_G_MOST 250.0
#define ALBUMEN_MM_MOST 20.0
#define EGG_C_LEAST (-5.0)
#define EGG_C_MOST 60.0

void
stead_egg_grading_free (SteadEggGrading *grading)
{
  if (grading == NULL)
    return;
  g_free (grading->note);
  g_free (grading);
}

static gpointer
grading_from_row (SteadStmt *stmt)
{
  SteadEggGrading *grading = g_new0 (SteadEggGrading, 1);

  grading->id = sqlite3_column_int64 (stmt, 0);
  grading->flock_id = sqlite3_column_int64 (stmt, 1);
  grading->day = stead_stmt_day (stmt, 2);
  for (int i = 0; i < STEAD_N_EGG_CLASSES; i++)
    grading->counts[i] = sqlite3_column_int (stmt, 3 + i);
  grading->blood = sqlite3_column_int (stmt, 9);
  grading->checked = sqlite3_column_int (stmt, 10);
  grading->dirty = sqlite3_column_int (stmt, 11);
  grading->note = stead_stmt_text (stmt, 12);
  grading->person_id = sqlite3_column_int64 (stmt, 13);
  return grading;
}

static void
bind_span (SteadStmt *stmt,
           gint64     flock_id,
           SteadDay   from,
           SteadDay   to)
{
  sqlite3_bind_int64 (stmt, 1, flock_id);
  stead_stmt_bind_day (stmt, 2, from);
  stead_stmt_bind_day (stmt, 3, to);
}

/* Returns: (transfer full) (element-type SteadEggGrading) */
GPtrArray *
stead_egg_repo_gradings (SteadStore  *store,
                         gint64       flock_id,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  static const char sql[] = "SELECT id, batch_id, day, peewee, small, medium, large, extra_large, jumbo,"
                            " blood, checked, dirty, note, person_id FROM egg_grading"
                            " WHERE batch_id = ?1 AND day BETWEEN ?2 AND ?3 ORDER BY day DESC, id DESC";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  bind_span (stmt, flock_id, from, to);
  return stead_repo_rows (store, stmt, grading_from_row, (GDestroyNotify) stead_egg_grading_free, error);
}

/* Returns: (transfer full) (element-type SteadEggSample) */
GArray *
stead_egg_repo_samples (SteadStore  *store,
                        gint64       flock_id,
                        SteadDay     from,
                        SteadDay     to,
                        GError     **error)
{
  static const char sql[] = "SELECT id, batch_id, day, egg_g, albumen_mm, egg_c, person_id FROM egg_sample"
                            " WHERE batch_id = ?1 AND day BETWEEN ?2 AND ?3 ORDER BY day DESC, id DESC";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(GArray) samples = NULL;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  samples = g_array_new (FALSE, TRUE, sizeof (SteadEggSample));
  bind_span (stmt, flock_id, from, to);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadEggSample sample = {
        .id = sqlite3_column_int64 (stmt, 0), .flock_id = sqlite3_column_int64 (stmt, 1),
        .day = stead_stmt_day (stmt, 2), .egg_g = sqlite3_column_double (stmt, 3),
        .albumen_mm = sqlite3_column_double (stmt, 4), .egg_c = stead_stmt_real (stmt, 5),
        .person_id = sqlite3_column_int64 (stmt, 6),
      };

      g_array_append_val (samples, sample);
    }
  return found == 0 ? g_steal_pointer (&samples) : NULL;
}

/* --- saving ------------------------------------------------------------------- */

/* A flock of the farm, and a day on which it was here. */
static gboolean
check_day (SteadStore  *store,
           gint64       flock_id,
           SteadDay     day,
           GError     **error)
{
  g_autoptr(SteadBatch) batch = stead_batch_repo_get (store, flock_id, error);

  if (batch == NULL)
    return FALSE;
  if (batch->kind != STEAD_BATCH_FLOCK)
    return stead_repo_refuse (error, _("“%s” is not a flock, so it has no eggs to grade."), batch->name);
  if (day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (day < batch->started_on)
    return stead_repo_refuse (error, _("The eggs cannot be from before “%s” moved in. Check the day."), batch->name);
  if (day > stead_store_get_today (store))
    return stead_repo_refuse (error, _("That day is still to come. Enter a day up to today."));
  return TRUE;
}

static gboolean
check_grading (SteadStore             *store,
               const SteadEggGrading  *grading,
               GError                **error)
{
  const gint32 found[] = { grading->blood, grading->checked, grading->dirty };
  gint64 sum = 0;

  for (int i = 0; i < STEAD_N_EGG_CLASSES + (int) G_N_ELEMENTS (found); i++)
    {
      gint32 count = i < STEAD_N_EGG_CLASSES ? grading->counts[i] : found[i - STEAD_N_EGG_CLASSES];

      if (count < 0 || count > COUNT_MAX)
        return stead_repo_refuse (error, _("Enter each number of eggs as 0 to %d."), COUNT_MAX);
      sum += count;
    }
  if (sum == 0)
    return stead_repo_refuse (error, _("Enter how many eggs were graded."));
  return stead_repo_check_note (grading->note, error)
         && check_day (store, grading->flock_id, grading->day, error);
}

gboolean
stead_egg_repo_save_grading (SteadStore       *store,
                             SteadEggGrading  *grading,
                             GError          **error)
{
  static const char insert_sql[] = "INSERT INTO egg_grading (batch_id, day, peewee, small, medium, large, extra_large,"
                                   " jumbo, blood, checked, dirty, note, person_id)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13)";
  static const char update_sql[] = "UPDATE egg_grading SET batch_id = ?1, day = ?2, peewee = ?3, small = ?4,"
                                   " medium = ?5, large = ?6, extra_large = ?7, jumbo = ?8, blood = ?9, checked = ?10,"
                                   " dirty = ?11, note = ?12, person_id = ?13 WHERE id = ?14";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && grading != NULL, FALSE);
  if (!check_grading (store, grading, error))
    return FALSE;
  stmt = stead_store_prepare (store, grading->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, grading->flock_id);
  stead_stmt_bind_day (stmt, 2, grading->day);
  for (int i = 0; i < STEAD_N_EGG_CLASSES; i++)
    sqlite3_bind_int (stmt, 3 + i, grading->counts[i]);
  sqlite3_bind_int (stmt, 9, grading->blood);
  sqlite3_bind_int (stmt, 10, grading->checked);
  sqlite3_bind_int (stmt, 11, grading->dirty);
  stead_repo_bind_tidy (stmt, 12, grading->note);
  stead_stmt_bind_id (stmt, 13, grading->person_id);
  if (grading->id != 0)
    sqlite3_bind_int64 (stmt, 14, grading->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (grading->id == 0)
    grading->id = stead_store_last_id (store);
  return TRUE;
}

static gboolean
check_sample (SteadStore            *store,
              const SteadEggSample  *sample,
              GError               **error)
{
  if (!(sample->egg_g >= EGG_G_LEAST && sample->egg_g <= EGG_G_MOST))
    return stead_repo_refuse (error, _("Enter the weight of one whole egg: %g to %g grams."), EGG_G_LEAST, EGG_G_MOST);
  if (!(sample->albumen_mm > 0 && sample->albumen_mm <= ALBUMEN_MM_MOST))
    return stead_repo_refuse (error, _("Enter the height of the thick white: above 0, up to %g mm."), ALBUMEN_MM_MOST);
  if (!isnan (sample->egg_c) && !(sample->egg_c >= EGG_C_LEAST && sample->egg_c <= EGG_C_MOST))
    return stead_repo_refuse (error, _("Enter how warm the egg was: %g to %g °C."), EGG_C_LEAST, EGG_C_MOST);
  return check_day (store, sample->flock_id, sample->day, error);
}

gboolean
stead_egg_repo_save_sample (SteadStore      *store,
                            SteadEggSample  *sample,
                            GError         **error)
{
  static const char insert_sql[] = "INSERT INTO egg_sample (batch_id, day, egg_g, albumen_mm, egg_c, person_id)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
  static const char update_sql[] = "UPDATE egg_sample SET batch_id = ?1, day = ?2, egg_g = ?3, albumen_mm = ?4,"
                                   " egg_c = ?5, person_id = ?6 WHERE id = ?7";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && sample != NULL, FALSE);
  if (!check_sample (store, sample, error))
    return FALSE;
  stmt = stead_store_prepare (store, sample->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, sample->flock_id);
  stead_stmt_bind_day (stmt, 2, sample->day);
  sqlite3_bind_double (stmt, 3, sample->egg_g);
  sqlite3_bind_double (stmt, 4, sample->albumen_mm);
  stead_stmt_bind_real (stmt, 5, sample->egg_c);
  stead_stmt_bind_id (stmt, 6, sample->person_id);
  if (sample->id != 0)
    sqlite3_bind_int64 (stmt, 7, sample->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (sample->id == 0)
    sample->id = stead_store_last_id (store);
  return TRUE;
}

gboolean
stead_egg_repo_delete_grading (SteadStore  *store,
                               gint64       id,
                               GError     **error)
{
  static const char sql[] = "DELETE FROM egg_grading WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  return stead_repo_run_id (store, sql, id, error);
}

gboolean
stead_egg_repo_delete_sample (SteadStore  *store,
                              gint64       id,
                              GError     **error)
{
  static const char sql[] = "DELETE FROM egg_sample WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  return stead_repo_run_id (store, sql, id, error);
}
