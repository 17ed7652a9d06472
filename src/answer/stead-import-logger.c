/* stead-import-logger.c - judges the rows of a thermometer that writes down its readings by itself.
 *
 * Of a logger in the air of a cooler, or with its probe in a pot that cools: a row is one
 * reading with its time.  One reading a minute is enough; more of the same minute are passed
 * over.
 */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-check-answer.h"
#include "answer/stead-import-private.h"
#include "core/stead-clock.h"
#include "store/stead-check-pot.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define COOLER_KIND "air_temp"

/* What a logger can show, °C; common practice, no source. */
#define LEAST_C (-60)
#define MOST_C 150

/* One reading; of a pot, or of a place. */
typedef struct
{
  gint64 at;
  double temp_c;
  gint64 place_id, pot_id, line_id;
  gint64 person_id;
  char  *note;       /* (nullable) */
  char   scale;      /* 'F' or 'C': in which the table counts */
} Logged;

static void
free_logged (gpointer fact)
{
  Logged *logged = fact;

  if (logged == NULL)
    return;
  g_free (logged->note);
  g_free (logged);
}

/* --- reading ---------------------------------------------------------------------- */

/* "8:05:30 AM" as "8:05 AM": minutes are enough. */
static char *
without_seconds (const char *text)
{
  const char *colon = strchr (text, ':');
  const char *second = colon != NULL ? strchr (colon + 1, ':') : NULL;
  gsize length;

  if (second == NULL)
    return g_strdup (text);
  length = strspn (second + 1, "0123456789.,");
  return g_strdup_printf ("%.*s%s", (int) (second - text), text, second + 1 + length);
}

/* The time behind the day in one cell: what stands before the first colon, back to the space
 * or the T before it. */
static const char *
time_in (const char *cell)
{
  const char *colon = strchr (cell, ':');
  const char *p = colon;

  while (p != NULL && p > cell && g_ascii_isdigit (p[-1]))
    p--;
  return p != NULL && p > cell && (p[-1] == ' ' || p[-1] == 'T') ? p : NULL;
}

static gboolean
read_minute (const SteadImportJudge *judge,
             SteadImportRow         *row,
             int                    *out_minute)
{
  gboolean apart = judge->columns->at[STEAD_COLUMN_TIME] >= 0;
  SteadColumn column = apart ? STEAD_COLUMN_TIME : STEAD_COLUMN_DATE;
  const char *cell = stead_import_cell (judge, row, column);
  const char *text = apart ? cell : time_in (cell);
  g_autofree char *bare = NULL;
  g_autoptr(GError) error = NULL;

  if (text == NULL || *text == '\0')
    return stead_import_wrong (judge, row, column, g_strdup (_("The time of the day is missing: 8:05.")));
  bare = without_seconds (text);
  g_strstrip (bare);
  if (!stead_minute_parse (bare, out_minute, &error))
    return stead_import_wrong (judge, row, column, g_strdup (error->message));
  return TRUE;
}

static gboolean
read_time (SteadImportJudge *judge,
           SteadImportRow   *row,
           gint64           *out_at)
{
  int minute = 0, year, month, mday;
  SteadDay day = STEAD_DAY_NONE;
  g_autoptr(GDateTime) time = NULL;

  if (!stead_import_read_day (judge, row, STEAD_COLUMN_DATE, &day) || !read_minute (judge, row, &minute))
    return FALSE;
  stead_day_split (day, &year, &month, &mday);
  time = g_date_time_new_local (year, month, mday, minute / 60, minute % 60, 0);
  if (time == NULL)
    return stead_import_wrong (judge, row, STEAD_COLUMN_DATE, g_strdup (_("There is no such time. Check the row.")));
  *out_at = g_date_time_to_unix (time);
  return TRUE;
}

static gboolean
read_warmth (const SteadImportJudge *judge,
             SteadImportRow         *row,
             Logged                 *logged)
{
  const SteadUnit *usual = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, judge->farm->units);
  const SteadUnit *named = judge->columns->unit[STEAD_COLUMN_TEMPERATURE];

  logged->temp_c = NAN;
  logged->scale = g_str_equal ((named != NULL ? named : usual)->id, "degC") ? 'C' : 'F';
  return stead_import_read_quantity (judge, row, STEAD_COLUMN_TEMPERATURE, usual, &logged->temp_c);
}

/* --- judging ---------------------------------------------------------------------- */

static void
judge_row (SteadImportJudge *judge,
           GHashTable       *known,
           SteadImportRow   *row)
{
  g_autofree Logged *logged = g_new0 (Logged, 1);

  logged->place_id = judge->place_id;
  logged->pot_id = judge->pot_id;
  logged->line_id = judge->line_id;
  if (!read_time (judge, row, &logged->at) || !read_warmth (judge, row, logged))
    return;
  if (isnan (logged->temp_c))
    stead_import_skip (row, g_strdup (_("This row has a time and nothing else.")));
  else if (!(logged->temp_c >= LEAST_C && logged->temp_c <= MOST_C))
    stead_import_wrong (judge, row, STEAD_COLUMN_TEMPERATURE,
                        g_strdup (_("No logger can show that. Check the number, and the unit in the first row.")));
  else if (logged->at > stead_time_now (judge->store) + 300)
    stead_import_wrong (judge, row, STEAD_COLUMN_DATE, g_strdup (_("That time is still to come. Check the clock of the logger.")));
  else if (judge->pot_id != 0 && stead_time_day (logged->at) < judge->first_day)
    stead_import_wrong (judge, row, STEAD_COLUMN_DATE,
                        g_strdup (_("That is before the day of the checklist. Check the clock of the logger.")));
  else if (g_hash_table_contains (known, &logged->at))
    stead_import_skip (row, g_strdup (_("There is a reading of that minute already.")));
  else
    {
      logged->note = stead_import_read_text (judge, row, STEAD_COLUMN_NOTE);
      stead_import_read_person (judge, row, &logged->person_id, &logged->note);
      g_hash_table_add (known, g_memdup2 (&logged->at, sizeof logged->at));
      row->state = STEAD_ROW_TAKE;
      row->fact = g_steal_pointer (&logged);
    }
}

static void
add_known (GHashTable      *known,
           const GPtrArray *readings,
           gint64           pot_id)
{
  for (guint i = 0; i < readings->len; i++)
    {
      const SteadShown *shown = readings->pdata[i];

      if (!shown->corrected && (pot_id != 0 ? shown->pot_id == pot_id : g_str_equal (shown->kind, COOLER_KIND)))
        g_hash_table_add (known, g_memdup2 (&shown->at, sizeof shown->at));
    }
}

/* What is there already. */
static gboolean
find_known (const SteadImportJudge  *judge,
            GHashTable              *known,
            GError                 **error)
{
  g_autoptr(SteadCheckList) list = NULL;
  g_autoptr(GPtrArray) readings = NULL;
  gint64 list_id;

  if (judge->pot_id == 0)
    {
      readings = stead_shown_repo_of_place (judge->store, judge->place_id, 0, G_MAXINT64, error);
      if (readings != NULL)
        add_known (known, readings, 0);
      return readings != NULL;
    }
  list_id = stead_check_repo_of_line (judge->store, judge->line_id, error);
  list = list_id > 0 ? stead_check_repo_get (judge->store, list_id, error) : NULL;
  if (list != NULL)
    add_known (known, stead_check_list_find_line (list, judge->line_id)->readings, judge->pot_id);
  return list != NULL;
}

static gboolean
judge_logger (SteadImportJudge  *judge,
              GPtrArray         *rows,
              GError           **error)
{
  g_autoptr(GHashTable) known = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);

  if (!find_known (judge, known, error))
    return FALSE;
  for (guint i = 0; i < rows->len; i++)
    {
      if (!stead_import_go_on (judge, i, rows->len, error))
        return FALSE;
      if (stead_import_is_to_read (rows->pdata[i]))
        judge_row (judge, known, rows->pdata[i]);
    }
  return TRUE;
}

/* --- words ------------------------------------------------------------------------ */

static char *
understood (const SteadFarm *farm,
            gconstpointer    fact)
{
  const Logged *logged = fact;
  g_autofree char *day = stead_day_format (stead_time_day (logged->at), STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *time = stead_check_time_text (logged->at);
  g_autofree char *value = stead_quantity_format (logged->temp_c, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, farm->units));

  /* Translators: a day, a time of day, a temperature. */
  return g_strdup_printf (C_("import", "%1$s, %2$s: %3$s"), day, time, value);
}

/* --- the kinds --------------------------------------------------------------------- */

static gboolean
prepare_cooler (SteadImportJudge  *judge,
                gint64             place_id,
                GError           **error)
{
  judge->place_id = place_id;
  if (place_id != 0)
    return TRUE;
  g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                       _("Say of which cooler the file is: it is one of the farm's places."));
  return FALSE;
}

static gboolean
prepare_pot (SteadImportJudge  *judge,
             gint64             pot_id,
             GError           **error)
{
  g_autoptr(SteadCheckList) list = NULL;
  gint64 list_id = -1;

  judge->pot_id = pot_id;
  judge->line_id = stead_check_pot_line (judge->store, pot_id, error);
  if (judge->line_id > 0)
    list_id = stead_check_repo_of_line (judge->store, judge->line_id, error);
  list = list_id > 0 ? stead_check_repo_get (judge->store, list_id, error) : NULL;
  if (list == NULL)
    return FALSE;
  judge->first_day = list->day;
  if (list->signed_at == STEAD_TIME_NONE)
    return TRUE;
  g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT,
               _("“%s” is signed. No reading is added any more."), list->name);
  return FALSE;
}

static gboolean
is_complete (const SteadColumns *columns)
{
  return columns->at[STEAD_COLUMN_TEMPERATURE] >= 0;
}

static gboolean
write_one (SteadStore    *store,
           const Logged  *logged,
           GError       **error)
{
  g_autoptr(SteadShown) shown = g_new0 (SteadShown, 1);

  shown->at = logged->at;
  shown->kind = g_strdup (logged->pot_id != 0 ? "food_temp" : COOLER_KIND);
  shown->value = logged->temp_c;
  shown->place_id = logged->place_id;
  shown->pot_id = logged->pot_id;
  shown->line_id = logged->line_id;
  shown->person_id = logged->person_id;
  shown->note = g_strdup (logged->note);
  shown->held_s = NAN;
  shown->scale = logged->scale;
  return stead_shown_repo_add (store, shown, error);
}

static int
by_time (gconstpointer a,
         gconstpointer b)
{
  const Logged *one = *(const Logged * const *) a, *two = *(const Logged * const *) b;

  return (one->at > two->at) - (one->at < two->at);
}

/* In the order of their times, so that the reading that shows a missed mark is the first to. */
static gboolean
write_logger (GPtrArray            *rows,
              SteadStore           *store,
              GCancellable         *cancellable,
              SteadImportProgress   progress,
              gpointer              data,
              GError              **error)
{
  g_autoptr(GPtrArray) taken = g_ptr_array_new ();

  for (guint i = 0; i < rows->len; i++)
    if (((const SteadImportRow *) rows->pdata[i])->state == STEAD_ROW_TAKE)
      g_ptr_array_add (taken, ((const SteadImportRow *) rows->pdata[i])->fact);
  g_ptr_array_sort (taken, by_time);
  for (guint i = 0; i < taken->len; i++)
    {
      if (g_cancellable_set_error_if_cancelled (cancellable, error) || !write_one (store, taken->pdata[i], error))
        return FALSE;
      if (progress != NULL)
        progress ((i + 1) / (double) taken->len, data);
    }
  return TRUE;
}

#define NEEDS N_("The first row must name the columns: Date and Time, or both in one, and Temperature (°F). " \
                 "Note and By may stand too.")

const SteadImportMethods stead_import_cooler = {
  .name = "cooler",
  .prepare = prepare_cooler,
  .is_complete = is_complete,
  .needs = NEEDS,
  .judge = judge_logger,
  .understood = understood,
  .free_fact = free_logged,
  .write = write_logger,
};

const SteadImportMethods stead_import_pot = {
  .name = "pot",
  .prepare = prepare_pot,
  .is_complete = is_complete,
  .needs = NEEDS,
  .judge = judge_logger,
  .understood = understood,
  .free_fact = free_logged,
  .write = write_logger,
};
