/* stead-farm-repo.c - the farm's settings and its people. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-money.h"
#include "store/stead-farm-repo.h"
#include "store/stead-recost.h"
#include "store/stead-repo-private.h"

static const char * const unit_words[] = { "us", "metric", NULL };
static const char * const role_words[] = { "student", "advisor", "helper", NULL };

void
stead_farm_free (SteadFarm *farm)
{
  if (farm == NULL)
    return;
  g_free (farm->name);
  g_free (farm->currency);
  g_free (farm->address);
  g_free (farm->phone);
  g_free (farm);
}

void
stead_person_free (SteadPerson *person)
{
  if (person == NULL)
    return;
  g_free (person->name);
  g_free (person);
}

/* --- settings --------------------------------------------------------------- */

static gpointer
farm_from_row (SteadStmt *stmt)
{
  SteadFarm *farm = g_new0 (SteadFarm, 1);

  farm->name = stead_stmt_text (stmt, 0);
  farm->units = (SteadUnitSystem) stead_repo_word (stmt, 1, unit_words);
  farm->currency = stead_stmt_text (stmt, 2);
  farm->elevation_m = sqlite3_column_double (stmt, 3);
  farm->school_year_month = sqlite3_column_int (stmt, 4);
  farm->school_year_mday = sqlite3_column_int (stmt, 5);
  farm->labor_cents_hour = sqlite3_column_int64 (stmt, 6);
  farm->stock_method = sqlite3_column_int (stmt, 7) != 0 ? STEAD_STOCK_AVERAGE_MOVING : STEAD_STOCK_FIFO;
  farm->address = stead_stmt_text (stmt, 8);
  farm->phone = stead_stmt_text (stmt, 9);
  return farm;
}

/**
 * stead_farm_repo_get:
 *
 * Returns: (transfer full): the settings, or %NULL with @error
 */
SteadFarm *
stead_farm_repo_get (SteadStore  *store,
                     GError     **error)
{
  static const char sql[] = "SELECT name, units, currency, elevation_m, school_month, school_mday,"
                            " labor_cents_hour, cost_method = 'average', address, phone FROM farm WHERE id = 1";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL ? stead_repo_row (store, stmt, farm_from_row, error) : NULL;
}

static gboolean
farm_check (const SteadFarm  *farm,
            GError          **error)
{
  if (!stead_repo_check_name (farm->name, error))
    return FALSE;
  if (!stead_currency_is_known (farm->currency))
    return stead_repo_refuse (error, _("The currency “%s” is not known. Choose one from the list."),
                              farm->currency != NULL ? farm->currency : "");
  if (!(farm->elevation_m >= -500 && farm->elevation_m <= 9000))
    return stead_repo_refuse (error, _("The height above the sea must lie between −500 and 9,000 meters."));
  /* 2001 is a common year, so that the day exists every year. */
  if (stead_day_new (2001, farm->school_year_month, farm->school_year_mday) == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("The school year must begin on a day that every year has."));
  return stead_repo_check_note (farm->address, error) && stead_repo_check_note (farm->phone, error) &&
         stead_repo_check_cents (_("Rate for an hour of work"), farm->labor_cents_hour, error);
}

/**
 * stead_farm_repo_set:
 *
 * Returns: %TRUE, or %FALSE with a message and nothing changed
 */
gboolean
stead_farm_repo_set (SteadStore       *store,
                     const SteadFarm  *farm,
                     GError          **error)
{
  static const char sql[] = "UPDATE farm SET name = ?1, units = ?2, currency = ?3, elevation_m = ?4,"
                            " school_month = ?5, school_mday = ?6, labor_cents_hour = ?7, address = ?8, phone = ?9 WHERE id = 1";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && farm != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!farm_check (farm, error) || (stmt = stead_store_prepare (store, sql, error)) == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, farm->name);
  stead_stmt_bind_text (stmt, 2, unit_words[farm->units]);
  stead_stmt_bind_text (stmt, 3, farm->currency);
  sqlite3_bind_double (stmt, 4, farm->elevation_m);
  sqlite3_bind_int (stmt, 5, farm->school_year_month);
  sqlite3_bind_int (stmt, 6, farm->school_year_mday);
  sqlite3_bind_int64 (stmt, 7, farm->labor_cents_hour);
  stead_repo_bind_tidy (stmt, 8, farm->address);
  stead_repo_bind_tidy (stmt, 9, farm->phone);
  return stead_store_run (store, stmt, error);
}

/* Do the closed days leave money in an empty lot, or a lot in debt? */
static gboolean
check_lots_at_closing (SteadStore  *store,
                       GError     **error)
{
  static const char sql[] =
    "SELECT count (*) FROM (SELECT 1 FROM movement WHERE day < ?1 GROUP BY lot_id"
    " HAVING sum (cost_cents) < 0 OR (sum (quantity_base) < 1e-6 AND sum (cost_cents) <> 0))";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autofree char *when = NULL;
  SteadDay open = STEAD_DAY_NONE;
  gint64 n = 0;

  if (!stead_recost_first_open (store, &open, error) || (stmt = stead_store_prepare (store, sql, error)) == NULL)
    return FALSE;
  sqlite3_bind_int (stmt, 1, open);
  if (!stead_repo_number (store, stmt, 0, &n, error))
    return FALSE;
  if (n == 0)
    return TRUE;
  when = stead_day_format (open - 1, STEAD_DAY_STYLE_MEDIUM);
  return stead_repo_refuse (error, _("The books are closed up to %s, at average cost. The lots on hand since then "
                                     "have no cost of their own, so the farm stays with the average."), when);
}

gboolean
stead_farm_repo_set_stock_method (SteadStore        *store,
                                  SteadStockMethod   method,
                                  GError           **error)
{
  static const char sql[] = "UPDATE farm SET cost_method = ?1 WHERE id = 1";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadStockMethod before;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  g_return_val_if_fail (method == STEAD_STOCK_FIFO || method == STEAD_STOCK_AVERAGE_MOVING, FALSE);
  if (!stead_recost_method (store, &before, error))
    return FALSE;
  if (method == before)
    return TRUE;
  if (method == STEAD_STOCK_FIFO && !check_lots_at_closing (store, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_text (stmt, 1, method == STEAD_STOCK_FIFO ? "fifo" : "average");
  return stead_store_run (store, stmt, error) && stead_recost_all (store, error);
}

/* --- people ----------------------------------------------------------------- */

static gpointer
person_from_row (SteadStmt *stmt)
{
  SteadPerson *person = g_new0 (SteadPerson, 1);

  person->id = sqlite3_column_int64 (stmt, 0);
  person->name = stead_stmt_text (stmt, 1);
  person->role = (SteadPersonRole) stead_repo_word (stmt, 2, role_words);
  person->class_year = sqlite3_column_int (stmt, 3);
  person->left_on = stead_stmt_day (stmt, 4);
  return person;
}

GPtrArray *
stead_person_repo_list (SteadStore  *store,
                        GError     **error)
{
  static const char sql[] = "SELECT id, name, role, class_year, left_on FROM person ORDER BY name, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL
         ? stead_repo_rows (store, stmt, person_from_row, (GDestroyNotify) stead_person_free, error)
         : NULL;
}

static gboolean
person_check (SteadStore   *store,
              SteadPerson  *person,
              GError      **error)
{
  static const char taken_sql[] = "SELECT 1 FROM person WHERE name = ?1 AND id <> ?2";

  if (!stead_repo_check_name (person->name, error))
    return FALSE;
  if (person->class_year != 0 && !(person->class_year >= 1900 && person->class_year <= 2199))
    return stead_repo_refuse (error, _("The class year %d is not possible. Enter four digits, or leave it empty."),
                              person->class_year);
  return stead_repo_check_unique (store, taken_sql, person->name, person->id, error);
}

gboolean
stead_person_repo_save (SteadStore   *store,
                        SteadPerson  *person,
                        GError      **error)
{
  static const char insert_sql[] = "INSERT INTO person (name, role, class_year, left_on)"
                                   " VALUES (?1, ?2, ?3, ?4)";
  static const char update_sql[] = "UPDATE person SET name = ?1, role = ?2, class_year = ?3, left_on = ?4"
                                   " WHERE id = ?5";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && person != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!person_check (store, person, error))
    return FALSE;
  stmt = stead_store_prepare (store, person->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, person->name);
  stead_stmt_bind_text (stmt, 2, role_words[person->role]);
  stead_stmt_bind_id (stmt, 3, person->class_year);
  stead_stmt_bind_day (stmt, 4, person->left_on);
  return stead_repo_save_row (store, stmt, &person->id, error);
}

/* --- forgetting -------------------------------------------------------------- */

/* "Student 4": the role and a number that no one else has. */
static char *
role_name (SteadPersonRole  role,
           gint64           number)
{
  switch (role)
    {
    case STEAD_PERSON_ADVISOR:
      return g_strdup_printf (_("Advisor %d"), (int) number);
    case STEAD_PERSON_HELPER:
      return g_strdup_printf (_("Helper %d"), (int) number);
    case STEAD_PERSON_STUDENT:
    default:
      return g_strdup_printf (_("Student %d"), (int) number);
    }
}

static gboolean
free_role_name (SteadStore       *store,
                SteadPersonRole   role,
                gint64            id,
                char            **out_name,
                GError          **error)
{
  static const char sql[] = "SELECT count (*) FROM person WHERE name = ?1 AND id <> ?2";
  gint64 taken = 1;

  for (gint64 number = id; taken > 0; number++)
    {
      g_autofree char *name = role_name (role, number);
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

      if (stmt == NULL)
        return FALSE;
      stead_stmt_bind_text (stmt, 1, name);
      sqlite3_bind_int64 (stmt, 2, id);
      if (!stead_repo_number (store, stmt, 0, &taken, error))
        return FALSE;
      g_free (*out_name);
      *out_name = g_steal_pointer (&name);
    }
  return TRUE;
}

/**
 * stead_person_repo_forget:
 *
 * The class year goes with the name.  Steps of undo are dropped, this one too.
 *
 * Returns: %TRUE, or %FALSE with @error and nothing changed
 */
gboolean
stead_person_repo_forget (SteadStore  *store,
                          gint64       person_id,
                          GError     **error)
{
  static const char role_sql[] = "SELECT id, name, role, class_year, left_on FROM person WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadPerson) person = NULL;
  char *name = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  stmt = stead_store_prepare (store, role_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, person_id);
  person = stead_repo_row (store, stmt, person_from_row, error);
  if (person == NULL || !free_role_name (store, person->role, person_id, &name, error))
    return FALSE;
  g_free (person->name);
  person->name = name;
  person->class_year = 0;
  if (!stead_person_repo_save (store, person, error))
    return FALSE;
  stead_store_forget_steps (store);
  return TRUE;
}
