/* stead-batch-plan.c - what was meant with a batch: one row a figure that was planned. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-batch-private.h"

/* In the order of the struct; the last is a day. */
static const char * const plan_words[] = {
  "output_base", "price_cents", "feed_kg", "feed_cents_kg", "other_cents", "care_minutes_day", "lost_frac",
  "ends_on", NULL
};
#define N_FIGURES 7
#define ENDS_ON N_FIGURES

void
stead_batch_plan_init (SteadBatchPlan *plan)
{
  g_return_if_fail (plan != NULL);
  *plan = (SteadBatchPlan) { NAN, NAN, NAN, NAN, NAN, NAN, NAN, STEAD_DAY_NONE };
}

/* The figure that goes by the word at @i. */
static double *
figure (SteadBatchPlan *plan,
        int             i)
{
  double *figures[N_FIGURES] = { &plan->output_base, &plan->price_cents, &plan->feed_kg, &plan->feed_cents_kg,
                                 &plan->other_cents, &plan->care_minutes_day, &plan->lost_frac };

  return figures[i];
}

gboolean
stead_batch_repo_plan (SteadStore      *store,
                       gint64           id,
                       SteadBatchPlan  *out,
                       GError         **error)
{
  static const char sql[] = "SELECT what, value FROM batch_plan WHERE batch_id = ?1 ORDER BY what";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadBatchPlan plan;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  stead_batch_plan_init (&plan);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      int i = stead_repo_word (stmt, 0, plan_words);

      if (i == ENDS_ON)
        plan.ends_on = (SteadDay) sqlite3_column_double (stmt, 1);
      else
        *figure (&plan, i) = sqlite3_column_double (stmt, 1);
    }
  if (found == 0)
    *out = plan;
  return found == 0;
}

/* NAN is not planned. */
static gboolean
is_between (double value,
            double low,
            double high)
{
  return isnan (value) || (value >= low && value <= high);
}

static gboolean
plan_check (const SteadBatch      *batch,
            const SteadBatchPlan  *plan,
            GError               **error)
{
  if (!is_between (plan->output_base, 0, STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The planned output must be 0 or more. Check the number."));
  if (!is_between (plan->feed_kg, 0, STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The planned feed must be 0 or more. Check the number."));
  if (!is_between (plan->price_cents, 0, STEAD_CENTS_MAX) ||
      !is_between (plan->feed_cents_kg, 0, STEAD_CENTS_MAX) ||
      !is_between (plan->other_cents, 0, STEAD_CENTS_MAX))
    return stead_repo_refuse (error, _("A planned amount of money must be 0 or more. Check the number."));
  if (!is_between (plan->care_minutes_day, 0, 1440))
    return stead_repo_refuse (error, _("The minutes of care must lie between 0 and 1,440, the minutes of a day."));
  if (!is_between (plan->lost_frac, 0, 1))
    return stead_repo_refuse (error, _("The planned loss is a share: it must lie between 0 and 100 %%."));
  if (plan->ends_on != STEAD_DAY_NONE && plan->ends_on < batch->started_on)
    return stead_repo_refuse (error, _("The plan cannot end before the batch began. Check the day."));
  return TRUE;
}

static gboolean
write_figure (SteadStore  *store,
              gint64       id,
              const char  *word,
              double       value,
              GError     **error)
{
  static const char sql[] = "INSERT INTO batch_plan (batch_id, what, value) VALUES (?1, ?2, ?3)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  stead_stmt_bind_text (stmt, 2, word);
  sqlite3_bind_double (stmt, 3, value);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_batch_repo_set_plan (SteadStore            *store,
                           gint64                 id,
                           const SteadBatchPlan  *plan,
                           GError               **error)
{
  static const char delete_sql[] = "DELETE FROM batch_plan WHERE batch_id = ?1";
  g_autoptr(SteadBatch) batch = NULL;
  SteadBatchPlan figures;

  g_return_val_if_fail (STEAD_IS_STORE (store) && plan != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  batch = stead_batch_repo_get (store, id, error);
  if (batch == NULL || !plan_check (batch, plan, error) || !stead_repo_run_id (store, delete_sql, id, error))
    return FALSE;
  figures = *plan;
  for (int i = 0; i < N_FIGURES; i++)
    if (!isnan (*figure (&figures, i)) && !write_figure (store, id, plan_words[i], *figure (&figures, i), error))
      return FALSE;
  return plan->ends_on == STEAD_DAY_NONE || write_figure (store, id, plan_words[ENDS_ON], plan->ends_on, error);
}
