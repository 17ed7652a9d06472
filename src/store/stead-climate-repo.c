/* stead-climate-repo.c - thermometers, the usual year of a place, and what keeps a bay warm.
 *
 * A thermometer hangs in a place, or outdoors: a place of 0, NULL in the file.
 * There is one row a place and day.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-crop-repo.h"
#include "store/stead-repo-private.h"

#define LEAST_C (-60)
#define MOST_C 70

static const char * const fuel_words[STEAD_N_FUELS + 1] = {
  [STEAD_FUEL_PROPANE] = "propane",
  [STEAD_FUEL_NATURAL_GAS] = "gas",
  [STEAD_FUEL_OIL] = "oil",
  [STEAD_FUEL_ELECTRICITY] = "electricity",
};

void
stead_climate_day_free (SteadClimateDay *day)
{
  if (day == NULL)
    return;
  g_free (day->note);
  g_free (day);
}

/* --- days ------------------------------------------------------------------- */

#define CLIMATE_COLUMNS "id, place_id, day, min_c, max_c, rh_frac, light_mol, note, person_id"

static gpointer
day_from_row (SteadStmt *stmt)
{
  SteadClimateDay *day = g_new0 (SteadClimateDay, 1);

  day->id = sqlite3_column_int64 (stmt, 0);
  day->place_id = sqlite3_column_int64 (stmt, 1);
  day->day = stead_stmt_day (stmt, 2);
  day->min_c = stead_stmt_real (stmt, 3);
  day->max_c = stead_stmt_real (stmt, 4);
  day->rh_frac = stead_stmt_real (stmt, 5);
  day->light_mol = stead_stmt_real (stmt, 6);
  day->note = stead_stmt_text (stmt, 7);
  day->person_id = sqlite3_column_int64 (stmt, 8);
  return day;
}

/* Returns: (transfer full) (element-type SteadClimateDay) */
GPtrArray *
stead_climate_repo_list (SteadStore  *store,
                         gint64       place_id,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  static const char sql[] = "SELECT " CLIMATE_COLUMNS " FROM climate"
                            " WHERE coalesce (place_id, 0) = ?1 AND day BETWEEN ?2 AND ?3 ORDER BY day";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, place_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  return stead_repo_rows (store, stmt, day_from_row, (GDestroyNotify) stead_climate_day_free, error);
}

static gboolean
is_possible (double temp_c)
{
  return isnan (temp_c) || (temp_c >= LEAST_C && temp_c <= MOST_C);
}

gboolean
stead_climate_day_check (const SteadClimateDay  *day,
                         SteadDay                today,
                         GError                **error)
{
  if (day->day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (day->day > today)
    return stead_repo_refuse (error, _("That day is still to come. Check the date."));
  if (!is_possible (day->min_c) || !is_possible (day->max_c))
    return stead_repo_refuse (error, _("Air temperatures lie between −60 and 70 °C (−76 and 158 °F). "
                                       "Check the reading and its unit."));
  if (day->min_c > day->max_c)
    return stead_repo_refuse (error, _("The lowest temperature of the day is above the highest. "
                                       "Check the two readings."));
  if (!isnan (day->rh_frac) && !(day->rh_frac >= 0 && day->rh_frac <= 1))
    return stead_repo_refuse (error, _("The humidity must lie between 0 and 100 %%."));
  if (!isnan (day->light_mol) && !(day->light_mol >= 0 && day->light_mol <= 100))
    return stead_repo_refuse (error, _("The light of a day must lie between 0 and 100 mol for a square meter: "
                                       "more never reaches the ground."));
  if (isnan (day->min_c) && isnan (day->max_c) && isnan (day->rh_frac) && isnan (day->light_mol))
    return stead_repo_refuse (error, _("Nothing is entered. Enter the highest and the lowest temperature."));
  return stead_repo_check_note (day->note, error);
}

/* Finds the row of that place and day; FALSE with @error, *out NULL if there is none. */
static gboolean
find_day (SteadStore       *store,
          gint64            place_id,
          SteadDay          day,
          SteadClimateDay **out,
          GError          **error)
{
  g_autoptr(GPtrArray) days = stead_climate_repo_list (store, place_id, day, day, error);

  *out = NULL;
  if (days == NULL)
    return FALSE;
  if (days->len > 0)
    *out = g_ptr_array_steal_index (days, 0);
  return TRUE;
}

/* fmin() and fmax() pass a missing reading over. */
static void
widen (SteadClimateDay       *day,
       const SteadClimateDay *with)
{
  day->min_c = fmin (day->min_c, with->min_c);
  day->max_c = fmax (day->max_c, with->max_c);
  if (isnan (day->rh_frac))
    day->rh_frac = with->rh_frac;
  if (isnan (day->light_mol))
    day->light_mol = with->light_mol;
  if (day->note == NULL)
    day->note = g_strdup (with->note);
}

static gboolean
write_day (SteadStore       *store,
           SteadClimateDay  *day,
           GError          **error)
{
  static const char insert_sql[] = "INSERT INTO climate (place_id, day, min_c, max_c, rh_frac, light_mol, note,"
                                   " person_id) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
  static const char update_sql[] = "UPDATE climate SET place_id = ?1, day = ?2, min_c = ?3, max_c = ?4, rh_frac = ?5,"
                                   " light_mol = ?6, note = ?7, person_id = ?8 WHERE id = ?9";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, day->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_id (stmt, 1, day->place_id);
  stead_stmt_bind_day (stmt, 2, day->day);
  stead_stmt_bind_real (stmt, 3, day->min_c);
  stead_stmt_bind_real (stmt, 4, day->max_c);
  stead_stmt_bind_real (stmt, 5, day->rh_frac);
  stead_stmt_bind_real (stmt, 6, day->light_mol);
  stead_repo_bind_tidy (stmt, 7, day->note);
  stead_stmt_bind_id (stmt, 8, day->person_id);
  if (day->id != 0)
    sqlite3_bind_int64 (stmt, 9, day->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (day->id == 0)
    day->id = stead_store_last_id (store);
  return TRUE;
}

/**
 * stead_climate_repo_save:
 *
 * A new reading of a day that has a row takes that row's place, and fills in its id.
 * An old one that is moved onto a day with a row takes that row away.
 *
 * Returns: %TRUE, or %FALSE with a message for the person
 */
gboolean
stead_climate_repo_save (SteadStore       *store,
                         SteadClimateDay  *day,
                         gboolean          merge,
                         GError          **error)
{
  static const char delete_sql[] = "DELETE FROM climate WHERE id = ?1";
  g_autoptr(SteadClimateDay) there = NULL;
  SteadGivenIds *ids;
  gboolean is_new;

  g_return_val_if_fail (STEAD_IS_STORE (store) && day != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_climate_day_check (day, stead_store_get_today (store), error) ||
      !find_day (store, day->place_id, day->day, &there, error))
    return FALSE;
  is_new = day->id == 0;
  ids = stead_given_ids_new (&day->id);
  if (there != NULL && there->id != day->id)
    {
      if (merge)
        widen (day, there);
      if (is_new)
        day->id = there->id;
      else if (!stead_repo_run_id (store, delete_sql, there->id, error))
        return stead_given_ids_end (ids, FALSE);
    }
  return stead_given_ids_end (ids, write_day (store, day, error));
}

gboolean
stead_climate_repo_delete (SteadStore  *store,
                           gint64       id,
                           GError     **error)
{
  static const char sql[] = "DELETE FROM climate WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_run_id (store, sql, id, error);
}

/* --- the usual year --------------------------------------------------------- */

gboolean
stead_climate_repo_usual (SteadStore      *store,
                          gint64           place_id,
                          SteadUsualYear  *out,
                          GError         **error)
{
  static const char sql[] = "SELECT month, min_c, max_c FROM usual_month WHERE coalesce (place_id, 0) = ?1"
                            " ORDER BY month";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadUsualYear year;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, place_id);
  for (int i = 0; i < 12; i++)
    year.min_c[i] = year.max_c[i] = NAN;
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      int month = sqlite3_column_int (stmt, 0) - 1;

      year.min_c[month] = sqlite3_column_double (stmt, 1);
      year.max_c[month] = sqlite3_column_double (stmt, 2);
    }
  if (found == 0)
    *out = year;
  return found == 0;
}

static gboolean
usual_check (const SteadUsualYear  *year,
             GError               **error)
{
  for (int i = 0; i < 12; i++)
    {
      double min_c = year->min_c[i], max_c = year->max_c[i];

      if (isnan (min_c) != isnan (max_c))
        return stead_repo_refuse (error, _("Month %d has only one of its two temperatures. Enter both, or neither."),
                                  i + 1);
      if (!is_possible (min_c) || !is_possible (max_c))
        return stead_repo_refuse (error, _("Air temperatures lie between −60 and 70 °C (−76 and 158 °F). "
                                           "Check the reading and its unit."));
      if (min_c > max_c)
        return stead_repo_refuse (error, _("The usual lowest temperature of month %d is above the highest. "
                                           "Check the two."), i + 1);
    }
  return TRUE;
}

static gboolean
write_month (SteadStore            *store,
             gint64                 place_id,
             const SteadUsualYear  *year,
             int                    month,
             GError               **error)
{
  static const char sql[] = "INSERT INTO usual_month (place_id, month, min_c, max_c) VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_id (stmt, 1, place_id);
  sqlite3_bind_int (stmt, 2, month + 1);
  sqlite3_bind_double (stmt, 3, year->min_c[month]);
  sqlite3_bind_double (stmt, 4, year->max_c[month]);
  return stead_store_run (store, stmt, error);
}

/* Takes the place of all that was there; a month of NAN is taken out. */
gboolean
stead_climate_repo_set_usual (SteadStore            *store,
                              gint64                 place_id,
                              const SteadUsualYear  *year,
                              GError               **error)
{
  static const char delete_sql[] = "DELETE FROM usual_month WHERE coalesce (place_id, 0) = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store) && year != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!usual_check (year, error) || !stead_repo_run_id (store, delete_sql, place_id, error))
    return FALSE;
  for (int i = 0; i < 12; i++)
    if (!isnan (year->min_c[i]) && !write_month (store, place_id, year, i, error))
      return FALSE;
  return TRUE;
}

/* --- what keeps a bay warm --------------------------------------------------- */

static gpointer
house_from_row (SteadStmt *stmt)
{
  SteadGlasshouse *house = g_new0 (SteadGlasshouse, 1);

  house->place_id = sqlite3_column_int64 (stmt, 0);
  house->cover_m2 = sqlite3_column_double (stmt, 1);
  house->u_w_m2_k = sqlite3_column_double (stmt, 2);
  house->volume_m3 = sqlite3_column_double (stmt, 3);
  house->changes_hour = sqlite3_column_double (stmt, 4);
  house->inside_c = sqlite3_column_double (stmt, 5);
  house->sun_lift_c = sqlite3_column_double (stmt, 6);
  house->fuel = (SteadFuel) stead_repo_word (stmt, 7, fuel_words);
  house->efficiency_frac = sqlite3_column_double (stmt, 8);
  house->fuel_cents = sqlite3_column_double (stmt, 9);
  return house;
}

/* Returns: (transfer full) (nullable): to be freed with g_free() */
SteadGlasshouse *
stead_glasshouse_repo_get (SteadStore  *store,
                           gint64       place_id,
                           GError     **error)
{
  static const char sql[] = "SELECT place_id, cover_m2, u_w_m2_k, volume_m3, changes_hour, inside_c, sun_lift_c,"
                            " fuel, efficiency_frac, fuel_cents FROM glasshouse WHERE place_id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, place_id);
  return stead_store_step (store, stmt, error) == 1 ? house_from_row (stmt) : NULL;
}

static gboolean
house_check (const SteadGlasshouse  *house,
             GError                **error)
{
  if (!(house->cover_m2 > 0 && house->cover_m2 <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter the area of the cover, roof and walls together: more than 0."));
  if (!(house->u_w_m2_k > 0 && house->u_w_m2_k <= 20))
    return stead_repo_refuse (error, _("The heat that the cover lets through must be more than 0 and at most "
                                       "20 W for a square meter and °C."));
  if (!(house->volume_m3 > 0 && house->volume_m3 <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter how much air the house holds: more than 0."));
  if (!(house->changes_hour >= 0 && house->changes_hour <= 100))
    return stead_repo_refuse (error, _("The changes of air in an hour must lie between 0 and 100."));
  if (!(house->inside_c >= -10 && house->inside_c <= 40))
    return stead_repo_refuse (error, _("The temperature kept in the house must lie between −10 and 40 °C "
                                       "(14 and 104 °F)."));
  if (!(house->sun_lift_c >= 0 && house->sun_lift_c <= 20))
    return stead_repo_refuse (error, _("The warmth that the sun gives must lie between 0 and 20 °C (0 and 36 °F)."));
  if (!(house->efficiency_frac > 0 && house->efficiency_frac <= 1))
    return stead_repo_refuse (error, _("The heater's efficiency must be more than 0 and at most 100 %%."));
  if (!(house->fuel_cents >= 0 && house->fuel_cents <= STEAD_CENTS_MAX))
    return stead_repo_refuse (error, _("The price of the fuel must be 0 or more."));
  return TRUE;
}

/* Takes the place of what was entered for the place before. */
gboolean
stead_glasshouse_repo_save (SteadStore             *store,
                            const SteadGlasshouse  *house,
                            GError                **error)
{
  static const char sql[] =
    "INSERT INTO glasshouse (place_id, cover_m2, u_w_m2_k, volume_m3, changes_hour, inside_c, sun_lift_c, fuel,"
    " efficiency_frac, fuel_cents) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)"
    " ON CONFLICT (place_id) DO UPDATE SET cover_m2 = ?2, u_w_m2_k = ?3, volume_m3 = ?4, changes_hour = ?5,"
    " inside_c = ?6, sun_lift_c = ?7, fuel = ?8, efficiency_frac = ?9, fuel_cents = ?10";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && house != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!house_check (house, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, house->place_id);
  sqlite3_bind_double (stmt, 2, house->cover_m2);
  sqlite3_bind_double (stmt, 3, house->u_w_m2_k);
  sqlite3_bind_double (stmt, 4, house->volume_m3);
  sqlite3_bind_double (stmt, 5, house->changes_hour);
  sqlite3_bind_double (stmt, 6, house->inside_c);
  sqlite3_bind_double (stmt, 7, house->sun_lift_c);
  stead_stmt_bind_text (stmt, 8, fuel_words[house->fuel]);
  sqlite3_bind_double (stmt, 9, house->efficiency_frac);
  sqlite3_bind_double (stmt, 10, house->fuel_cents);
  return stead_store_run (store, stmt, error);
}
