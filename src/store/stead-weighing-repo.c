/* stead-weighing-repo.c - samples of animals that were weighed: fish, or pullets. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-fish-sample.h"
#include "store/stead-fish-private.h"
#include "store/stead-flock-repo.h"

#define N_MOST 1000000

/* The longest fish that is believed. */
#define LONGEST_CM 300.0

SteadWeighing *
stead_weighing_new (void)
{
  SteadWeighing *weighing = g_new0 (SteadWeighing, 1);

  weighing->day = STEAD_DAY_NONE;
  weighing->sd_g = weighing->length_cm = NAN;
  return weighing;
}

void
stead_weighing_free (SteadWeighing *weighing)
{
  if (weighing == NULL)
    return;
  g_clear_pointer (&weighing->single, g_array_unref);
  g_free (weighing->note);
  g_free (weighing);
}

double
stead_weighing_mean_g (const SteadWeighing *weighing)
{
  g_return_val_if_fail (weighing != NULL, NAN);
  return weighing->n > 0 ? 1000 * weighing->total_kg / (double) weighing->n : NAN;
}

void
stead_weighing_take_single (SteadWeighing *weighing)
{
  g_autofree double *weights = NULL;
  SteadFishSample sample;
  double total_g = 0, length = 0;
  int measured = 0;

  g_return_if_fail (weighing != NULL);
  if (weighing->single == NULL || weighing->single->len == 0)
    return;
  weights = g_new (double, weighing->single->len);
  for (guint i = 0; i < weighing->single->len; i++)
    {
      const SteadWeighed *one = &g_array_index (weighing->single, SteadWeighed, i);

      weights[i] = one->weight_g;
      total_g += one->weight_g;
      if (isnan (one->length_cm))
        continue;
      length += one->length_cm;
      measured++;
    }
  weighing->n = weighing->single->len;
  weighing->total_kg = total_g / 1000;
  weighing->length_cm = measured > 0 ? length / measured : NAN;
  weighing->sd_g = stead_fish_sample (weights, NULL, weighing->single->len, &sample, NULL) ? sample.sd_g : NAN;
}

/* --- reading ---------------------------------------------------------------- */

#define WEIGHING_COLUMNS "id, batch_id, day, n, total_kg, sd_g, length_cm, note, person_id, left_out"

static gpointer
weighing_from_row (SteadStmt *stmt)
{
  SteadWeighing *weighing = stead_weighing_new ();

  weighing->id = sqlite3_column_int64 (stmt, 0);
  weighing->batch_id = sqlite3_column_int64 (stmt, 1);
  weighing->day = stead_stmt_day (stmt, 2);
  weighing->n = sqlite3_column_int64 (stmt, 3);
  weighing->total_kg = sqlite3_column_double (stmt, 4);
  weighing->sd_g = stead_stmt_real (stmt, 5);
  weighing->length_cm = stead_stmt_real (stmt, 6);
  weighing->note = stead_stmt_text (stmt, 7);
  weighing->person_id = sqlite3_column_int64 (stmt, 8);
  weighing->left_out = sqlite3_column_int (stmt, 9) != 0;
  return weighing;
}

static gboolean
read_single (SteadStore     *store,
             SteadWeighing  *weighing,
             GError        **error)
{
  static const char sql[] = "SELECT weight_g, length_cm FROM weighed WHERE weighing_id = ?1 ORDER BY number";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, weighing->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadWeighed one = { sqlite3_column_double (stmt, 0), stead_stmt_real (stmt, 1) };

      if (weighing->single == NULL)
        weighing->single = g_array_new (FALSE, FALSE, sizeof (SteadWeighed));
      g_array_append_val (weighing->single, one);
    }
  return found == 0;
}

static GPtrArray *
list_rows (SteadStore  *store,
           gint64       batch_id,
           GError     **error)
{
  static const char sql[] = "SELECT " WEIGHING_COLUMNS " FROM weighing WHERE batch_id = ?1 ORDER BY day, id";

  return stead_repo_rows_of (store, sql, batch_id, weighing_from_row, (GDestroyNotify) stead_weighing_free,
                             error);
}

GPtrArray *
stead_weighing_repo_list (SteadStore  *store,
                          gint64       batch_id,
                          GError     **error)
{
  g_autoptr(GPtrArray) rows = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  rows = list_rows (store, batch_id, error);
  for (guint i = 0; rows != NULL && i < rows->len; i++)
    if (!read_single (store, rows->pdata[i], error))
      return NULL;
  return g_steal_pointer (&rows);
}

SteadWeighing *
stead_weighing_repo_get (SteadStore  *store,
                         gint64       id,
                         GError     **error)
{
  static const char sql[] = "SELECT " WEIGHING_COLUMNS " FROM weighing WHERE id = ?1";
  g_autoptr(SteadWeighing) weighing = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  weighing = stead_repo_row (store, stmt, weighing_from_row, error);
  if (weighing == NULL || !read_single (store, weighing, error))
    return NULL;
  return g_steal_pointer (&weighing);
}

SteadDay
stead_weighing_repo_last (SteadStore  *store,
                          gint64       batch_id,
                          GError     **error)
{
  static const char sql[] = "SELECT max (day) FROM weighing WHERE batch_id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 day = STEAD_DAY_NONE;

  g_return_val_if_fail (STEAD_IS_STORE (store), STEAD_DAY_NONE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return STEAD_DAY_NONE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  return stead_repo_number (store, stmt, STEAD_DAY_NONE, &day, error) ? (SteadDay) day : STEAD_DAY_NONE;
}

/* --- checking --------------------------------------------------------------- */

static gboolean
weight_can_be (double weight_g)
{
  return weight_g > 0 && weight_g <= STEAD_FISH_HEAVIEST_G;
}

static gboolean
length_can_be (double length_cm)
{
  return isnan (length_cm) || (length_cm > 0 && length_cm <= LONGEST_CM);
}

static gboolean
check_single (const GArray  *single,
              GError       **error)
{
  for (guint i = 0; i < single->len; i++)
    {
      const SteadWeighed *one = &g_array_index (single, SteadWeighed, i);

      if (!weight_can_be (one->weight_g))
        return stead_repo_refuse (error, _("Weight %d cannot be: one animal weighs more than 0 and at most "
                                           "100 kg (220 lb). Check the number and its unit."), (int) i + 1);
      if (!length_can_be (one->length_cm))
        return stead_repo_refuse (error, _("Length %d cannot be: a fish is longer than 0 and at most 3 m (10 ft). "
                                           "Check the number and its unit."), (int) i + 1);
    }
  return TRUE;
}

gboolean
stead_weighing_check (const SteadWeighing  *weighing,
                      SteadDay              today,
                      GError              **error)
{
  g_autofree char *day = NULL;

  g_return_val_if_fail (weighing != NULL, FALSE);
  if (weighing->day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (weighing->day > today)
    {
      day = stead_day_format (weighing->day, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("%s is still to come. Enter a day up to today."), day);
    }
  if (weighing->single != NULL && weighing->single->len > 0)
    return check_single (weighing->single, error) && stead_repo_check_note (weighing->note, error);
  if (!(weighing->n >= 1 && weighing->n <= N_MOST))
    return stead_repo_refuse (error, _("Enter how many were weighed: at least 1."));
  if (!(weighing->total_kg > 0))
    return stead_repo_refuse (error, _("Enter what they weighed together: more than 0."));
  if (!weight_can_be (stead_weighing_mean_g (weighing)))
    return stead_repo_refuse (error, _("One of them would weigh more than 100 kg (220 lb). "
                                       "Check the two numbers and the unit."));
  if (!isnan (weighing->sd_g) && !(weighing->sd_g >= 0 && weighing->sd_g <= STEAD_FISH_HEAVIEST_G))
    return stead_repo_refuse (error, _("The spread of the weights cannot be below 0. Check the number."));
  if (!length_can_be (weighing->length_cm))
    return stead_repo_refuse (error, _("A fish is longer than 0 and at most 3 m (10 ft). "
                                       "Check the number and its unit."));
  return stead_repo_check_note (weighing->note, error);
}

static gboolean
check_number (SteadStore           *store,
              const SteadWeighing  *weighing,
              const SteadBatch     *batch,
              GError              **error)
{
  gint64 there = 0;

  if (batch->kind == STEAD_BATCH_FISH)
    {
      if (!stead_fish_on_day (store, batch->id, weighing->day, &there, error))
        return FALSE;
    }
  else if ((there = stead_flock_repo_alive (store, batch->id, weighing->day, error)) < 0)
    return FALSE;
  if (weighing->n > there)
    return stead_repo_refuse (error, _("%d were weighed, but only %d were alive in “%s” that day. Check the number."),
                              (int) weighing->n, (int) there, batch->name);
  return TRUE;
}

static gboolean
check_in_batch (SteadStore           *store,
                const SteadWeighing  *weighing,
                GError              **error)
{
  g_autoptr(SteadBatch) batch = stead_batch_repo_get (store, weighing->batch_id, error);

  return batch != NULL &&
         stead_fish_check_day (batch, weighing->day, stead_store_get_today (store), error) &&
         check_number (store, weighing, batch, error);
}

/* --- writing ---------------------------------------------------------------- */

static gboolean
write_row (SteadStore     *store,
           SteadWeighing  *weighing,
           GError        **error)
{
  static const char insert_sql[] =
    "INSERT INTO weighing (batch_id, day, n, total_kg, sd_g, length_cm, note, person_id, left_out)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)";
  static const char update_sql[] =
    "UPDATE weighing SET batch_id = ?1, day = ?2, n = ?3, total_kg = ?4, sd_g = ?5, length_cm = ?6, note = ?7,"
    " person_id = ?8, left_out = ?9 WHERE id = ?10";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, weighing->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, weighing->batch_id);
  stead_stmt_bind_day (stmt, 2, weighing->day);
  sqlite3_bind_int64 (stmt, 3, weighing->n);
  sqlite3_bind_double (stmt, 4, weighing->total_kg);
  stead_stmt_bind_real (stmt, 5, weighing->sd_g);
  stead_stmt_bind_real (stmt, 6, weighing->length_cm);
  stead_repo_bind_tidy (stmt, 7, weighing->note);
  stead_stmt_bind_id (stmt, 8, weighing->person_id);
  sqlite3_bind_int (stmt, 9, weighing->left_out != FALSE);
  if (weighing->id != 0)
    sqlite3_bind_int64 (stmt, 10, weighing->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (weighing->id == 0)
    weighing->id = stead_store_last_id (store);
  return TRUE;
}

static gboolean
write_single (SteadStore           *store,
              const SteadWeighing  *weighing,
              GError              **error)
{
  static const char clear_sql[] = "DELETE FROM weighed WHERE weighing_id = ?1";
  static const char sql[] = "INSERT INTO weighed (weighing_id, number, weight_g, length_cm) VALUES (?1, ?2, ?3, ?4)";

  if (!stead_repo_run_id (store, clear_sql, weighing->id, error))
    return FALSE;
  for (guint i = 0; weighing->single != NULL && i < weighing->single->len; i++)
    {
      const SteadWeighed *one = &g_array_index (weighing->single, SteadWeighed, i);
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, weighing->id);
      sqlite3_bind_int (stmt, 2, (int) i + 1);
      sqlite3_bind_double (stmt, 3, one->weight_g);
      stead_stmt_bind_real (stmt, 4, one->length_cm);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
same_batch (SteadStore           *store,
            const SteadWeighing  *weighing,
            GError              **error)
{
  g_autoptr(SteadWeighing) before = NULL;

  if (weighing->id == 0)
    return TRUE;
  before = stead_weighing_repo_get (store, weighing->id, error);
  if (before == NULL)
    return FALSE;
  g_return_val_if_fail (before->batch_id == weighing->batch_id, FALSE);
  return TRUE;
}

/**
 * stead_weighing_repo_save:
 * @weighing: with single weights, its number, sum, spread and length are set from them
 *
 * An id of 0 inserts and fills in the id.
 */
gboolean
stead_weighing_repo_save (SteadStore     *store,
                          SteadWeighing  *weighing,
                          GError        **error)
{
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && weighing != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_weighing_check (weighing, stead_store_get_today (store), error))
    return FALSE;
  stead_weighing_take_single (weighing);
  if (!same_batch (store, weighing, error) || !check_in_batch (store, weighing, error))
    return FALSE;
  ids = stead_given_ids_new (&weighing->id);
  return stead_given_ids_end (ids, write_row (store, weighing, error) && write_single (store, weighing, error));
}

gboolean
stead_weighing_repo_delete (SteadStore  *store,
                            gint64       id,
                            GError     **error)
{
  static const char sql[] = "DELETE FROM weighing WHERE id = ?1";
  g_autoptr(SteadWeighing) weighing = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  weighing = stead_weighing_repo_get (store, id, error);
  return weighing != NULL && stead_repo_run_id (store, sql, id, error);
}
