/* stead-joint-repo.c - how the cost of one batch is shared by what comes of it. */
#include "config.h"

#include "store/stead-joint-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "store/stead-repo-private.h"

/* In the order of SteadJointMethod. */
static const char * const method_words[] = { "physical", "split_off", "net_value", "same_margin", NULL };

static void
figure_free (SteadJointFigure *figure)
{
  g_free (figure->part);
  g_free (figure->field);
  g_free (figure);
}

SteadJointPlan *
stead_joint_plan_new (void)
{
  SteadJointPlan *plan = g_new0 (SteadJointPlan, 1);

  plan->method = STEAD_JOINT_NRV;
  plan->figures = g_ptr_array_new_with_free_func ((GDestroyNotify) figure_free);
  return plan;
}

void
stead_joint_plan_free (SteadJointPlan *plan)
{
  if (plan == NULL)
    return;
  g_ptr_array_unref (plan->figures);
  g_free (plan);
}

static SteadJointFigure *
find_figure (const SteadJointPlan *plan,
             const char           *part,
             const char           *field)
{
  for (guint i = 0; i < plan->figures->len; i++)
    {
      SteadJointFigure *figure = plan->figures->pdata[i];

      if (strcmp (figure->part, part) == 0 && strcmp (figure->field, field) == 0)
        return figure;
    }
  return NULL;
}

void
stead_joint_plan_set (SteadJointPlan *plan,
                      const char     *part,
                      const char     *field,
                      double          value)
{
  SteadJointFigure *figure;

  g_return_if_fail (plan != NULL && part != NULL && field != NULL);
  figure = find_figure (plan, part, field);
  if (figure == NULL)
    {
      figure = g_new0 (SteadJointFigure, 1);
      figure->part = g_strdup (part);
      figure->field = g_strdup (field);
      g_ptr_array_add (plan->figures, figure);
    }
  figure->value = value;
}

double
stead_joint_plan_get (const SteadJointPlan *plan,
                      const char           *part,
                      const char           *field,
                      double                none)
{
  const SteadJointFigure *figure;

  g_return_val_if_fail (plan != NULL && part != NULL && field != NULL, none);
  figure = find_figure (plan, part, field);
  return figure != NULL ? figure->value : none;
}

/* --- reading --------------------------------------------------------------------------- */

static gboolean
read_method (SteadStore      *store,
             gint64           batch_id,
             SteadJointPlan  *plan,
             GError         **error)
{
  static const char sql[] = "SELECT method FROM joint_split WHERE batch_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  found = stead_store_step (store, stmt, error);
  if (found == 1)
    plan->method = (SteadJointMethod) stead_repo_word (stmt, 0, method_words);
  return found >= 0;
}

SteadJointPlan *
stead_joint_repo_get (SteadStore  *store,
                      gint64       batch_id,
                      GError     **error)
{
  static const char sql[] = "SELECT part, field, value FROM joint_figure WHERE batch_id = ?1 ORDER BY part, field";
  g_autoptr(SteadJointPlan) plan = stead_joint_plan_new ();
  g_autoptr(SteadStmt) stmt = NULL;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL || !read_method (store, batch_id, plan, error))
    return NULL;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      g_autofree char *part = stead_stmt_text (stmt, 0);
      g_autofree char *field = stead_stmt_text (stmt, 1);

      stead_joint_plan_set (plan, part, field, sqlite3_column_double (stmt, 2));
    }
  return found == 0 ? g_steal_pointer (&plan) : NULL;
}

/* --- writing ----------------------------------------------------------------------------- */

static gboolean
write_method (SteadStore        *store,
              gint64             batch_id,
              SteadJointMethod   method,
              GError           **error)
{
  static const char sql[] = "INSERT INTO joint_split (batch_id, method) VALUES (?1, ?2)"
                            " ON CONFLICT (batch_id) DO UPDATE SET method = excluded.method";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  stead_stmt_bind_text (stmt, 2, method_words[method]);
  return stead_store_run (store, stmt, error);
}

static gboolean
write_figure (SteadStore              *store,
              gint64                   batch_id,
              const SteadJointFigure  *figure,
              GError                 **error)
{
  static const char sql[] = "INSERT INTO joint_figure (batch_id, part, field, value) VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = NULL;

  if (!(figure->value >= 0 && figure->value <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("An amount or a price must be zero or more. Check the number."));
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  stead_stmt_bind_text (stmt, 2, figure->part);
  stead_stmt_bind_text (stmt, 3, figure->field);
  sqlite3_bind_double (stmt, 4, figure->value);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_joint_repo_save (SteadStore            *store,
                       gint64                 batch_id,
                       const SteadJointPlan  *plan,
                       GError               **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store) && plan != NULL && plan->method < STEAD_N_JOINT_METHODS, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!write_method (store, batch_id, plan->method, error)
      || !stead_repo_run_id (store, "DELETE FROM joint_figure WHERE batch_id = ?1", batch_id, error))
    return FALSE;
  for (guint i = 0; i < plan->figures->len; i++)
    if (!write_figure (store, batch_id, plan->figures->pdata[i], error))
      return FALSE;
  return TRUE;
}
