/* stead-water-test-repo.c - the test sheets of a water: what can be read at all, and what was. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-quantity.h"
#include "core/stead-water.h"
#include "store/stead-repo-private.h"
#include "store/stead-water-repo.h"

/* A meter that shows more oxygen than this many times what the water holds is wrong. */
#define OXYGEN_SHARE_MAX 3.0

SteadWaterTest *
stead_water_test_new (void)
{
  SteadWaterTest *test = g_new0 (SteadWaterTest, 1);

  test->day = STEAD_DAY_NONE;
  test->minute = -1;
  for (int i = 0; i < STEAD_N_READINGS; i++)
    test->values[i] = NAN;
  return test;
}

SteadWaterTest *
stead_water_test_copy (const SteadWaterTest *test)
{
  SteadWaterTest *copy;

  g_return_val_if_fail (test != NULL, NULL);
  copy = g_memdup2 (test, sizeof *test);
  copy->action = g_strdup (test->action);
  copy->note = g_strdup (test->note);
  return copy;
}

void
stead_water_test_free (SteadWaterTest *test)
{
  if (test == NULL)
    return;
  g_free (test->action);
  g_free (test->note);
  g_free (test);
}

/* --- readings --------------------------------------------------------------- */

SteadWaterMeasure
stead_reading_measure (SteadReading reading)
{
  static const SteadWaterMeasure measures[STEAD_N_READINGS] = {
    [STEAD_READING_TEMPERATURE] = STEAD_WATER_TEMPERATURE,
    [STEAD_READING_PH] = STEAD_WATER_PH,
    [STEAD_READING_TAN] = STEAD_WATER_TAN,
    [STEAD_READING_NITRITE] = STEAD_WATER_NITRITE,
    [STEAD_READING_NITRATE] = STEAD_WATER_NITRATE,
    [STEAD_READING_OXYGEN] = STEAD_WATER_OXYGEN,
    [STEAD_READING_ALKALINITY] = STEAD_WATER_ALKALINITY,
    [STEAD_READING_HARDNESS] = STEAD_WATER_HARDNESS,
    [STEAD_READING_CONDUCTIVITY] = STEAD_WATER_CONDUCTIVITY,
    [STEAD_READING_CHLORINE] = STEAD_WATER_CHLORINE,
    [STEAD_READING_CHLORIDE] = STEAD_WATER_CHLORIDE,
  };

  g_return_val_if_fail ((guint) reading < STEAD_N_READINGS, STEAD_WATER_TEMPERATURE);
  return measures[reading];
}

const char *
stead_reading_name (SteadReading reading)
{
  static const char * const names[STEAD_N_READINGS] = {
    [STEAD_READING_TEMPERATURE] = NC_("reading of water", "Temperature"),
    [STEAD_READING_PH] = NC_("reading of water", "pH"),
    [STEAD_READING_TAN] = NC_("reading of water", "Total ammonia"),
    [STEAD_READING_NITRITE] = NC_("reading of water", "Nitrite"),
    [STEAD_READING_NITRATE] = NC_("reading of water", "Nitrate"),
    [STEAD_READING_OXYGEN] = NC_("reading of water", "Oxygen"),
    [STEAD_READING_ALKALINITY] = NC_("reading of water", "Alkalinity"),
    [STEAD_READING_HARDNESS] = NC_("reading of water", "Hardness"),
    [STEAD_READING_CONDUCTIVITY] = NC_("reading of water", "Conductivity"),
    [STEAD_READING_CHLORINE] = NC_("reading of water", "Chlorine"),
    [STEAD_READING_CHLORIDE] = NC_("reading of water", "Chloride"),
  };

  g_return_val_if_fail ((guint) reading < STEAD_N_READINGS, "");
  return g_dpgettext2 (GETTEXT_PACKAGE, "reading of water", names[reading]);
}

void
stead_reading_range (SteadReading  reading,
                     double       *out_min,
                     double       *out_max)
{
  stead_water_possible_range (stead_reading_measure (reading), out_min, out_max);
}

static gboolean
refuse_temperature (double    value,
                    double    min,
                    double    max,
                    GError  **error)
{
  const SteadUnit *f = stead_unit_by_id ("degF");
  g_autofree char *low = stead_number_format (min, 0);
  g_autofree char *high = stead_number_format (max, 0);
  g_autofree char *low_f = stead_number_format (stead_quantity_from_base (min, f), 0);
  g_autofree char *high_f = stead_number_format (stead_quantity_from_base (max, f), 0);

  if (value < min)
    return stead_repo_refuse (error, _("Water so cold would be ice. Enter %s to %s °C (%s to %s °F), and check "
                                       "whether the thermometer shows °C or °F."), low, high, low_f, high_f);
  return stead_repo_refuse (error, _("No fish or crop water is so hot. Enter %s to %s °C (%s to %s °F), and check "
                                     "whether the thermometer shows °C or °F."), low, high, low_f, high_f);
}

static gboolean
refuse_oxygen (double    most,
               GError  **error)
{
  g_autofree char *number = stead_number_format (most, 1);

  return stead_repo_refuse (error, _("Oxygen: water so warm takes up at most %s mg/L, even in bright sun with algae. "
                                     "Check the number, and whether the meter shows percent."), number);
}

static gboolean
refuse_reading (SteadReading  reading,
                double        value,
                GError      **error)
{
  double min, max;
  g_autofree char *most = NULL;

  stead_reading_range (reading, &min, &max);
  most = stead_number_format (max, 0);
  switch (stead_water_reason (stead_reading_measure (reading), value))
    {
    case STEAD_WATER_REASON_ICE:
    case STEAD_WATER_REASON_HOT:
      return refuse_temperature (value, min, max, error);
    case STEAD_WATER_REASON_PH_SCALE:
      return stead_repo_refuse (error, _("pH goes from 0 to 14. Check the number and its point."));
    case STEAD_WATER_REASON_OXYGEN:
      return refuse_oxygen (max, error);
    case STEAD_WATER_REASON_SEA:
      return stead_repo_refuse (error, _("%s: more than %s is saltier than the sea. Check the point and the unit."),
                                stead_reading_name (reading), most);
    case STEAD_WATER_REASON_SLIP:
      return stead_repo_refuse (error, _("%s: more than %s mg/L is far beyond any farm water. "
                                         "Check the point and the unit."), stead_reading_name (reading), most);
    case STEAD_WATER_REASON_NEGATIVE:
    case STEAD_WATER_POSSIBLE:
    default:
      return stead_repo_refuse (error, _("%s: a reading below 0 is not possible. Check the number."),
                                stead_reading_name (reading));
    }
}

gboolean
stead_reading_check (SteadReading   reading,
                     double         value,
                     GError       **error)
{
  double min, max;

  g_return_val_if_fail ((guint) reading < STEAD_N_READINGS, FALSE);
  stead_reading_range (reading, &min, &max);
  return isnan (value) || (value >= min && value <= max) || refuse_reading (reading, value, error);
}

/* --- the rule of one test ----------------------------------------------------- */

/* At the pressure of the sea water holds most; higher up it is less. */
static gboolean
check_oxygen (const SteadWaterTest  *test,
              GError               **error)
{
  double most_mgl;

  if (isnan (test->values[STEAD_READING_OXYGEN]) ||
      !stead_water_oxygen_mgl (test->values[STEAD_READING_TEMPERATURE], 0, STEAD_WATER_ATM_KPA, &most_mgl, NULL))
    return TRUE;
  return test->values[STEAD_READING_OXYGEN] <= OXYGEN_SHARE_MAX * most_mgl ||
         refuse_oxygen (OXYGEN_SHARE_MAX * most_mgl, error);
}

static gboolean
check_test_day (const SteadWaterTest  *test,
                SteadDay               today,
                GError               **error)
{
  g_autofree char *text = NULL;

  if (test->day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day of the test."));
  if (test->day > today)
    {
      text = stead_day_format (test->day, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("%s is still to come. Enter a day up to today."), text);
    }
  if (test->minute != -1 && !(test->minute >= 0 && test->minute < 24 * 60))
    return stead_repo_refuse (error, _("The time of a test lies between 0:00 and 23:59."));
  return TRUE;
}

gboolean
stead_water_test_check (const SteadWaterTest  *test,
                        SteadDay               today,
                        SteadReading          *out_reading,
                        GError               **error)
{
  gboolean measured = FALSE;

  g_return_val_if_fail (test != NULL, FALSE);
  if (out_reading != NULL)
    *out_reading = STEAD_N_READINGS;
  if (!check_test_day (test, today, error))
    return FALSE;
  for (int i = 0; i < STEAD_N_READINGS; i++)
    {
      measured |= !isnan (test->values[i]);
      if (!stead_reading_check ((SteadReading) i, test->values[i], error) ||
          (i == STEAD_READING_OXYGEN && !check_oxygen (test, error)))
        {
          if (out_reading != NULL)
            *out_reading = (SteadReading) i;
          return FALSE;
        }
    }
  if (!measured)
    return stead_repo_refuse (error, _("Nothing is measured. Enter at least one reading."));
  return stead_repo_check_note (test->action, error) && stead_repo_check_note (test->note, error);
}

/* --- reading ---------------------------------------------------------------- */

#define VALUE_COLUMNS \
  "temperature_c, ph, tan_mgl, nitrite_mgl, nitrate_mgl, oxygen_mgl, alkalinity_mgl, hardness_mgl," \
  " conductivity_us, chlorine_mgl, chloride_mgl"
#define TEST_SELECT "SELECT id, water_id, day, minute, action, note, person_id, " VALUE_COLUMNS " FROM water_test"
#define FIRST_VALUE 7

static gpointer
test_from_row (SteadStmt *stmt)
{
  SteadWaterTest *test = stead_water_test_new ();

  test->id = sqlite3_column_int64 (stmt, 0);
  test->water_id = sqlite3_column_int64 (stmt, 1);
  test->day = stead_stmt_day (stmt, 2);
  test->minute = sqlite3_column_type (stmt, 3) == SQLITE_NULL ? -1 : sqlite3_column_int (stmt, 3);
  test->action = stead_stmt_text (stmt, 4);
  test->note = stead_stmt_text (stmt, 5);
  test->person_id = sqlite3_column_int64 (stmt, 6);
  for (int i = 0; i < STEAD_N_READINGS; i++)
    test->values[i] = stead_stmt_real (stmt, FIRST_VALUE + i);
  return test;
}

GPtrArray *
stead_water_test_repo_list (SteadStore  *store,
                            gint64       water_id,
                            SteadDay     from,
                            SteadDay     to,
                            GError     **error)
{
  static const char sql[] = TEST_SELECT " WHERE water_id = ?1 AND day BETWEEN ?2 AND ?3 ORDER BY day, minute, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, water_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  return stead_repo_rows (store, stmt, test_from_row, (GDestroyNotify) stead_water_test_free, error);
}

SteadWaterTest *
stead_water_test_repo_get (SteadStore  *store,
                           gint64       id,
                           GError     **error)
{
  static const char sql[] = TEST_SELECT " WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, test_from_row, error);
}

/* The first row of @sql for a water; none is no error. */
static SteadWaterTest *
newest (SteadStore  *store,
        const char  *sql,
        gint64       water_id,
        GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, water_id);
  return stead_store_step (store, stmt, error) == 1 ? test_from_row (stmt) : NULL;
}

#define NEWEST_FIRST " ORDER BY day DESC, minute DESC, id DESC LIMIT 1"

SteadWaterTest *
stead_water_test_repo_last (SteadStore  *store,
                            gint64       water_id,
                            GError     **error)
{
  static const char sql[] = TEST_SELECT " WHERE water_id = ?1" NEWEST_FIRST;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return newest (store, sql, water_id, error);
}

#define LAST_OF(column) TEST_SELECT " WHERE water_id = ?1 AND " column " IS NOT NULL" NEWEST_FIRST

SteadWaterTest *
stead_water_test_repo_last_of (SteadStore    *store,
                               gint64         water_id,
                               SteadReading   reading,
                               GError       **error)
{
  static const char * const sql[STEAD_N_READINGS] = {
    [STEAD_READING_TEMPERATURE] = LAST_OF ("temperature_c"),
    [STEAD_READING_PH] = LAST_OF ("ph"),
    [STEAD_READING_TAN] = LAST_OF ("tan_mgl"),
    [STEAD_READING_NITRITE] = LAST_OF ("nitrite_mgl"),
    [STEAD_READING_NITRATE] = LAST_OF ("nitrate_mgl"),
    [STEAD_READING_OXYGEN] = LAST_OF ("oxygen_mgl"),
    [STEAD_READING_ALKALINITY] = LAST_OF ("alkalinity_mgl"),
    [STEAD_READING_HARDNESS] = LAST_OF ("hardness_mgl"),
    [STEAD_READING_CONDUCTIVITY] = LAST_OF ("conductivity_us"),
    [STEAD_READING_CHLORINE] = LAST_OF ("chlorine_mgl"),
    [STEAD_READING_CHLORIDE] = LAST_OF ("chloride_mgl"),
  };

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  g_return_val_if_fail ((guint) reading < STEAD_N_READINGS, NULL);
  return newest (store, sql[reading], water_id, error);
}

/* --- writing ---------------------------------------------------------------- */

static gboolean
check_beside_water (SteadStore            *store,
                    const SteadWaterTest  *test,
                    GError               **error)
{
  g_autoptr(SteadWater) water = stead_water_repo_get (store, test->water_id, error);
  g_autofree char *text = NULL;

  if (water == NULL)
    return FALSE;
  if (water->ended_on == STEAD_DAY_NONE || test->day <= water->ended_on)
    return TRUE;
  text = stead_day_format (water->ended_on, STEAD_DAY_STYLE_MEDIUM);
  return stead_repo_refuse (error, _("%s was in use until %s. A test cannot be from after that day."),
                            water->name, text);
}

static void
bind_test (SteadStmt            *stmt,
           const SteadWaterTest *test)
{
  sqlite3_bind_int64 (stmt, 1, test->water_id);
  stead_stmt_bind_day (stmt, 2, test->day);
  if (test->minute < 0)
    sqlite3_bind_null (stmt, 3);
  else
    sqlite3_bind_int (stmt, 3, test->minute);
  stead_repo_bind_tidy (stmt, 4, test->action);
  stead_repo_bind_tidy (stmt, 5, test->note);
  stead_stmt_bind_id (stmt, 6, test->person_id);
  for (int i = 0; i < STEAD_N_READINGS; i++)
    stead_stmt_bind_real (stmt, FIRST_VALUE + i, test->values[i]);
}

gboolean
stead_water_test_repo_save (SteadStore      *store,
                            SteadWaterTest  *test,
                            GError         **error)
{
  static const char insert_sql[] =
    "INSERT INTO water_test (water_id, day, minute, action, note, person_id, " VALUE_COLUMNS ")"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17)";
  static const char update_sql[] =
    "UPDATE water_test SET (water_id, day, minute, action, note, person_id, " VALUE_COLUMNS ")"
    " = (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17) WHERE id = ?18";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && test != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_water_test_check (test, stead_store_get_today (store), NULL, error) ||
      !check_beside_water (store, test, error))
    return FALSE;
  stmt = stead_store_prepare (store, test->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  bind_test (stmt, test);
  return stead_repo_save_row (store, stmt, &test->id, error);
}

gboolean
stead_water_test_repo_delete (SteadStore  *store,
                              gint64       id,
                              GError     **error)
{
  static const char sql[] = "DELETE FROM water_test WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}
