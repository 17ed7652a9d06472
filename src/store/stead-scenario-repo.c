/* stead-scenario-repo.c - what is tried out on a product: named assumptions, and what
 * was sold at which price.
 *
 * A scenario is its rows: it has a name and one assumption at least.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "store/stead-scenario-repo.h"
#include "store/stead-repo-private.h"

/* Longest name of a knob; as the schema has it. */
#define KNOB_MAX 40

static void
value_free (SteadScenarioValue *value)
{
  g_free (value->knob);
  g_free (value);
}

SteadScenario *
stead_scenario_new (const char *name)
{
  SteadScenario *scenario = g_new0 (SteadScenario, 1);

  scenario->name = g_strdup (name);
  scenario->values = g_ptr_array_new_with_free_func ((GDestroyNotify) value_free);
  return scenario;
}

void
stead_scenario_free (SteadScenario *scenario)
{
  if (scenario == NULL)
    return;
  g_free (scenario->name);
  g_ptr_array_unref (scenario->values);
  g_free (scenario);
}

static SteadScenarioValue *
find_value (const SteadScenario *scenario,
            const char          *knob)
{
  for (guint i = 0; i < scenario->values->len; i++)
    if (strcmp (((SteadScenarioValue *) scenario->values->pdata[i])->knob, knob) == 0)
      return scenario->values->pdata[i];
  return NULL;
}

void
stead_scenario_set (SteadScenario *scenario,
                    const char    *knob,
                    double         value)
{
  SteadScenarioValue *found;

  g_return_if_fail (scenario != NULL && knob != NULL);
  found = find_value (scenario, knob);
  if (found == NULL)
    {
      found = g_new0 (SteadScenarioValue, 1);
      found->knob = g_strdup (knob);
      g_ptr_array_add (scenario->values, found);
    }
  found->value = value;
}

double
stead_scenario_get (const SteadScenario *scenario,
                    const char          *knob,
                    double               none)
{
  const SteadScenarioValue *found;

  g_return_val_if_fail (scenario != NULL && knob != NULL, none);
  found = find_value (scenario, knob);
  return found != NULL ? found->value : none;
}

GPtrArray *
stead_scenario_repo_list (SteadStore  *store,
                          gint64       product_id,
                          GError     **error)
{
  static const char sql[] = "SELECT name, knob, value FROM scenario_value WHERE product_id = ?1"
                            " ORDER BY name, knob";
  g_autoptr(GPtrArray) scenarios = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_scenario_free);
  g_autoptr(SteadStmt) stmt = NULL;
  SteadScenario *last = NULL;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, product_id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      g_autofree char *name = stead_stmt_text (stmt, 0);
      g_autofree char *knob = stead_stmt_text (stmt, 1);

      if (last == NULL || strcmp (last->name, name) != 0)
        {
          last = stead_scenario_new (name);
          g_ptr_array_add (scenarios, last);
        }
      stead_scenario_set (last, knob, sqlite3_column_double (stmt, 2));
    }
  return found == 0 ? g_steal_pointer (&scenarios) : NULL;
}

static gboolean
drop_values (SteadStore  *store,
             gint64       product_id,
             const char  *name,
             GError     **error)
{
  static const char sql[] = "DELETE FROM scenario_value WHERE product_id = ?1 AND name = ?2";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, product_id);
  stead_repo_bind_tidy (stmt, 2, name);
  return stead_store_run (store, stmt, error);
}

static gboolean
check_scenario (const SteadScenario  *scenario,
                GError              **error)
{
  if (!stead_repo_check_name (scenario->name, error))
    return FALSE;
  if (scenario->values->len == 0)
    return stead_repo_refuse (error, _("Change an assumption first; then the scenario has something to keep."));
  for (guint i = 0; i < scenario->values->len; i++)
    {
      const SteadScenarioValue *value = scenario->values->pdata[i];

      g_return_val_if_fail (*value->knob != '\0' && strlen (value->knob) <= KNOB_MAX, FALSE);
      if (!(value->value >= 0 && value->value <= (double) STEAD_CENTS_MAX))
        return stead_repo_refuse (error, _("An assumption must be zero or more. Check the number."));
    }
  return TRUE;
}

static gboolean
write_value (SteadStore                *store,
             gint64                     product_id,
             const char                *name,
             const SteadScenarioValue  *value,
             GError                   **error)
{
  static const char sql[] = "INSERT INTO scenario_value (product_id, name, knob, value) VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, product_id);
  stead_repo_bind_tidy (stmt, 2, name);
  stead_stmt_bind_text (stmt, 3, value->knob);
  sqlite3_bind_double (stmt, 4, value->value);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_scenario_repo_save (SteadStore           *store,
                          gint64                product_id,
                          const SteadScenario  *scenario,
                          GError              **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store) && scenario != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_scenario (scenario, error) || !drop_values (store, product_id, scenario->name, error))
    return FALSE;
  for (guint i = 0; i < scenario->values->len; i++)
    if (!write_value (store, product_id, scenario->name, scenario->values->pdata[i], error))
      return FALSE;
  return TRUE;
}

gboolean
stead_scenario_repo_delete (SteadStore  *store,
                            gint64       product_id,
                            const char  *name,
                            GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store) && name != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!drop_values (store, product_id, name, error))
    return FALSE;
  return sqlite3_changes (stead_store_get_db (store)) > 0 || stead_repo_missing (error);
}

gboolean
stead_scenario_repo_rename (SteadStore  *store,
                            gint64       product_id,
                            const char  *name,
                            const char  *new_name,
                            GError     **error)
{
  static const char taken[] = "SELECT 1 FROM scenario_value WHERE name = ?1 AND product_id = ?2";
  static const char sql[] = "UPDATE scenario_value SET name = ?3 WHERE product_id = ?1 AND name = ?2";
  g_autoptr(SteadStmt) stmt = NULL, other = NULL;
  gint64 found = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store) && name != NULL && new_name != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_repo_check_name (new_name, error) || (other = stead_store_prepare (store, taken, error)) == NULL)
    return FALSE;
  stead_repo_bind_tidy (other, 1, new_name);
  sqlite3_bind_int64 (other, 2, product_id);
  if (!stead_repo_number (store, other, 0, &found, error))
    return FALSE;
  if (found != 0)
    return stead_repo_refuse (error, _("Another scenario has this name. Choose another one."));
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, product_id);
  stead_repo_bind_tidy (stmt, 2, name);
  stead_repo_bind_tidy (stmt, 3, new_name);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  return sqlite3_changes (stead_store_get_db (store)) > 0 || stead_repo_missing (error);
}

/* --- prices and what was sold at them ------------------------------------------------ */

void
stead_price_trial_free (SteadPriceTrial *trial)
{
  if (trial == NULL)
    return;
  g_free (trial->note);
  g_free (trial);
}

static gpointer
trial_from_row (SteadStmt *stmt)
{
  SteadPriceTrial *trial = g_new0 (SteadPriceTrial, 1);

  trial->id = sqlite3_column_int64 (stmt, 0);
  trial->day = stead_stmt_day (stmt, 1);
  trial->price_cents = sqlite3_column_int64 (stmt, 2);
  trial->units = sqlite3_column_double (stmt, 3);
  trial->note = stead_stmt_text (stmt, 4);
  trial->is_counted = trial->id == 0;
  return trial;
}

GPtrArray *
stead_price_trial_repo_list (SteadStore  *store,
                             gint64       product_id,
                             GError     **error)
{
  /* A day on which the price was changed tells of no one price. */
  static const char sql[] =
    "SELECT id, day, price_cents, units, note FROM price_trial WHERE product_id = ?1"
    " UNION ALL "
    "SELECT 0, d.day, l.price_cents, sum (t.units), d.name FROM sale_line l"
    " JOIN sale_day d ON d.id = l.sale_id JOIN sale_tap t ON t.line_id = l.id AND t.kind = 'sold'"
    " WHERE l.product_id = ?1 AND d.closed_at IS NOT NULL"
    " AND NOT EXISTS (SELECT 1 FROM sale_tap o WHERE o.line_id = l.id AND o.kind = 'sold'"
    "  AND o.price_cents <> l.price_cents)"
    " GROUP BY l.id ORDER BY 2, 1, 3, 4, 5";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, product_id, trial_from_row, (GDestroyNotify) stead_price_trial_free,
                             error);
}

gboolean
stead_price_trial_repo_add (SteadStore       *store,
                            gint64            product_id,
                            SteadPriceTrial  *trial,
                            GError          **error)
{
  static const char sql[] = "INSERT INTO price_trial (product_id, day, price_cents, units, note)"
                            " VALUES (?1, ?2, ?3, ?4, ?5)";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && trial != NULL && trial->id == 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (trial->day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day on which it was sold."));
  if (!stead_repo_check_cents (_("Price"), trial->price_cents, error) ||
      !stead_repo_check_note (trial->note, error))
    return FALSE;
  if (!(trial->units >= 0 && trial->units <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("What was sold must be 0 or more. Check the number."));
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, product_id);
  stead_stmt_bind_day (stmt, 2, trial->day);
  sqlite3_bind_int64 (stmt, 3, trial->price_cents);
  sqlite3_bind_double (stmt, 4, trial->units);
  stead_repo_bind_tidy (stmt, 5, trial->note);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  trial->id = stead_store_last_id (store);
  return TRUE;
}

gboolean
stead_price_trial_repo_delete (SteadStore  *store,
                               gint64       id,
                               GError     **error)
{
  static const char sql[] = "DELETE FROM price_trial WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}
