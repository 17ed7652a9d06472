/* stead-import-temperatures.c - judges the rows of a thermometer's table.
 *
 * A row is a day with its highest and lowest temperature, or one reading of a logger;
 * all rows of a day make one day of the log, from the lowest to the highest.
 */
#include "config.h"

#include "answer/stead-crop-answer.h"
#include "answer/stead-import-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
free_day (gpointer fact)
{
  stead_climate_day_free (fact);
}

/* --- reading ---------------------------------------------------------------------- */

/* "70", "70 %"; loggers write plain numbers. */
static gboolean
read_number (const SteadImportJudge *judge,
             SteadImportRow         *row,
             SteadColumn             column,
             double                 *out)
{
  g_autofree char *bare = g_strdelimit (g_strdup (stead_import_cell (judge, row, column)), "%", ' ');
  g_autoptr(GError) error = NULL;

  g_strstrip (bare);
  if (*bare == '\0')
    return TRUE;
  if (!stead_number_parse (bare, out, &error))
    return stead_import_wrong (judge, row, column, g_strdup (error->message));
  return TRUE;
}

static gboolean
read_temperatures (const SteadImportJudge *judge,
                   SteadImportRow         *row,
                   SteadClimateDay        *day)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, judge->farm->units);
  double one = NAN;

  if (!stead_import_read_quantity (judge, row, STEAD_COLUMN_TEMPERATURE, unit, &one)
      || !stead_import_read_quantity (judge, row, STEAD_COLUMN_HIGHEST, unit, &day->max_c)
      || !stead_import_read_quantity (judge, row, STEAD_COLUMN_LOWEST, unit, &day->min_c))
    return FALSE;
  /* fmin() and fmax() pass a missing reading over. */
  day->min_c = fmin (day->min_c, one);
  day->max_c = fmax (day->max_c, one);
  return TRUE;
}

static gboolean
read_day (SteadImportJudge *judge,
          SteadImportRow   *row,
          SteadClimateDay  *day)
{
  double percent = NAN;

  day->place_id = judge->crop->climate_id;
  day->min_c = day->max_c = day->rh_frac = day->light_mol = NAN;
  if (!stead_import_read_day (judge, row, STEAD_COLUMN_DATE, &day->day)
      || !read_temperatures (judge, row, day)
      || !read_number (judge, row, STEAD_COLUMN_HUMIDITY, &percent)
      || !read_number (judge, row, STEAD_COLUMN_LIGHT, &day->light_mol))
    return FALSE;
  day->rh_frac = percent / 100;
  day->note = stead_import_read_text (judge, row, STEAD_COLUMN_NOTE);
  stead_import_read_person (judge, row, &day->person_id, &day->note);
  return TRUE;
}

/* --- judging ---------------------------------------------------------------------- */

static SteadColumn
column_at_fault (const SteadImportJudge *judge,
                 const SteadClimateDay  *day)
{
  if (day->day > judge->today)
    return STEAD_COLUMN_DATE;
  if (!isnan (day->rh_frac) && !(day->rh_frac >= 0 && day->rh_frac <= 1))
    return STEAD_COLUMN_HUMIDITY;
  if (!isnan (day->light_mol) && !(day->light_mol >= 0 && day->light_mol <= 100))
    return STEAD_COLUMN_LIGHT;
  return judge->columns->at[STEAD_COLUMN_TEMPERATURE] >= 0 ? STEAD_COLUMN_TEMPERATURE : STEAD_COLUMN_HIGHEST;
}

/* Whether the log's day already says all that the row does. */
static gboolean
is_known (const GHashTable      *log,
          const SteadClimateDay *day)
{
  const SteadClimateDay *there = g_hash_table_lookup ((GHashTable *) log, GINT_TO_POINTER (day->day));

  if (there == NULL)
    return FALSE;
  return (isnan (day->min_c) || there->min_c <= day->min_c + 1e-6)
         && (isnan (day->max_c) || there->max_c >= day->max_c - 1e-6)
         && (isnan (day->rh_frac) || !isnan (there->rh_frac)) && (isnan (day->light_mol) || !isnan (there->light_mol));
}

static void
judge_row (SteadImportJudge *judge,
           const GHashTable *log,
           SteadImportRow   *row)
{
  g_autoptr(SteadClimateDay) day = g_new0 (SteadClimateDay, 1);
  g_autoptr(GError) problem = NULL;

  if (!read_day (judge, row, day))
    return;
  if (isnan (day->min_c) && isnan (day->max_c) && isnan (day->rh_frac) && isnan (day->light_mol))
    {
      stead_import_skip (row, g_strdup (_("This row has a day and nothing else.")));
      return;
    }
  if (!stead_climate_day_check (day, judge->today, &problem))
    {
      stead_import_wrong (judge, row, column_at_fault (judge, day), g_strdup (problem->message));
      return;
    }
  if (is_known (log, day))
    {
      stead_import_skip (row, g_strdup (_("The thermometer's log already holds this.")));
      return;
    }
  row->state = STEAD_ROW_TAKE;
  row->fact = g_steal_pointer (&day);
}

static gboolean
judge_temperatures (SteadImportJudge  *judge,
                    GPtrArray         *rows,
                    GError           **error)
{
  g_autoptr(GPtrArray) days = stead_climate_repo_list (judge->store, judge->crop->climate_id, G_MININT32 + 1,
                                                       G_MAXINT32, error);
  g_autoptr(GHashTable) log = g_hash_table_new (NULL, NULL);

  for (guint i = 0; days != NULL && i < days->len; i++)
    g_hash_table_insert (log, GINT_TO_POINTER (((const SteadClimateDay *) days->pdata[i])->day), days->pdata[i]);
  for (guint i = 0; days != NULL && i < rows->len; i++)
    {
      if (!stead_import_go_on (judge, i, rows->len, error))
        return FALSE;
      if (stead_import_is_to_read (rows->pdata[i]))
        judge_row (judge, log, rows->pdata[i]);
    }
  return days != NULL;
}

/* --- words ------------------------------------------------------------------------ */

static char *
understood (const SteadFarm *farm,
            gconstpointer    fact)
{
  const SteadClimateDay *day = fact;
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, farm->units);
  g_autoptr(GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *low = isnan (day->min_c) ? NULL : stead_quantity_format (day->min_c, unit);
  g_autofree char *high = isnan (day->max_c) ? NULL : stead_quantity_format (day->max_c, unit);

  g_ptr_array_add (parts, stead_day_format (day->day, STEAD_DAY_STYLE_MEDIUM));
  if (low != NULL && high != NULL && fabs (day->max_c - day->min_c) < 1e-9)
    g_ptr_array_add (parts, g_steal_pointer (&low));
  else
    {
      if (high != NULL)
        g_ptr_array_add (parts, g_strdup_printf (_("highest %s"), high));
      if (low != NULL)
        g_ptr_array_add (parts, g_strdup_printf (_("lowest %s"), low));
    }
  if (!isnan (day->rh_frac))
    {
      g_autofree char *percent = stead_words_percent (day->rh_frac, 0);

      g_ptr_array_add (parts, g_strdup_printf (_("humidity %s"), percent));
    }
  if (!isnan (day->light_mol))
    {
      g_autofree char *mol = stead_number_format (day->light_mol, 1);

      g_ptr_array_add (parts, g_strdup_printf (_("light %s mol/m²"), mol));
    }
  g_ptr_array_add (parts, NULL);
  return g_strjoinv ("; ", (char **) parts->pdata);
}

/* --- the kind --------------------------------------------------------------------- */

static gboolean
prepare (SteadImportJudge  *judge,
         gint64             batch_id,
         GError           **error)
{
  judge->crop = stead_import_find_crop (judge->store, batch_id, error);
  return judge->crop != NULL;
}

static gboolean
is_complete (const SteadColumns *columns)
{
  const int *at = columns->at;

  return at[STEAD_COLUMN_TEMPERATURE] >= 0 || (at[STEAD_COLUMN_HIGHEST] >= 0 && at[STEAD_COLUMN_LOWEST] >= 0);
}

/* What a day's rows have in common: the ends of the temperatures, the means of the rest. */
typedef struct
{
  SteadClimateDay *all;          /* without a note of its own */
  double           rh, light;
  int              n_rh, n_light;
} Day;

static void
free_gathered (gpointer data)
{
  Day *day = data;

  stead_climate_day_free (day->all);
  g_free (day);
}

static void
gather (GHashTable            *days,
        const SteadClimateDay *row)
{
  Day *day = g_hash_table_lookup (days, GINT_TO_POINTER (row->day));

  if (day == NULL)
    {
      day = g_new0 (Day, 1);
      day->all = g_memdup2 (row, sizeof *row);
      day->all->id = 0;
      day->all->note = g_strdup (row->note);
      g_hash_table_insert (days, GINT_TO_POINTER (row->day), day);
    }
  day->all->min_c = fmin (day->all->min_c, row->min_c);
  day->all->max_c = fmax (day->all->max_c, row->max_c);
  if (!isnan (row->rh_frac))
    {
      day->rh += row->rh_frac;
      day->n_rh++;
    }
  if (!isnan (row->light_mol))
    {
      day->light += row->light_mol;
      day->n_light++;
    }
}

static gboolean
write_temperatures (GPtrArray            *rows,
                    SteadStore           *store,
                    GCancellable         *cancellable,
                    SteadImportProgress   progress,
                    gpointer              data,
                    GError              **error)
{
  g_autoptr(GHashTable) days = g_hash_table_new_full (NULL, NULL, NULL, free_gathered);
  GHashTableIter iter;
  gpointer value;
  guint done = 0;

  for (guint i = 0; i < rows->len; i++)
    if (((const SteadImportRow *) rows->pdata[i])->state == STEAD_ROW_TAKE)
      gather (days, ((const SteadImportRow *) rows->pdata[i])->fact);
  g_hash_table_iter_init (&iter, days);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      Day *day = value;

      day->all->rh_frac = day->n_rh > 0 ? day->rh / day->n_rh : NAN;
      day->all->light_mol = day->n_light > 0 ? day->light / day->n_light : NAN;
      if (g_cancellable_set_error_if_cancelled (cancellable, error)
          || !stead_climate_repo_save (store, day->all, TRUE, error))
        return FALSE;
      if (progress != NULL)
        progress (++done / (double) g_hash_table_size (days), data);
    }
  return TRUE;
}

const SteadImportMethods stead_import_temperatures = {
  .name = "temperatures",
  .prepare = prepare,
  .is_complete = is_complete,
  .needs = N_("The first row must name the columns: Date and Temperature (°F), or Date, Highest (°F) and Lowest (°F). "
              "Humidity, Light, Note and By may stand too."),
  .judge = judge_temperatures,
  .understood = understood,
  .free_fact = free_day,
  .write = write_temperatures,
};
