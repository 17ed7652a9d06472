/* stead-import-picks.c - judges the rows of a crop's picks. */
#include "config.h"

#include "answer/stead-crop-pick.h"
#include "answer/stead-import-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A pick with texts of its own. */
typedef struct
{
  SteadPick  pick;
  char      *reason, *grade, *note;
} Fact;

static void
free_fact (gpointer data)
{
  Fact *fact = data;

  if (fact == NULL)
    return;
  g_free (fact->reason);
  g_free (fact->grade);
  g_free (fact->note);
  g_free (fact);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Fact, free_fact)

static gboolean
read_fact (SteadImportJudge *judge,
           SteadImportRow   *row,
           Fact             *fact)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, judge->farm->units);
  SteadPick *pick = &fact->pick;

  pick->crop_id = judge->crop->batch.id;
  if (!stead_import_read_day (judge, row, STEAD_COLUMN_DATE, &pick->day)
      || !stead_import_read_quantity (judge, row, STEAD_COLUMN_PICKED, unit, &pick->good_kg)
      || !stead_import_read_quantity (judge, row, STEAD_COLUMN_THROWN, unit, &pick->lost_kg))
    return FALSE;
  fact->reason = stead_import_read_text (judge, row, STEAD_COLUMN_REASON);
  fact->grade = stead_import_read_text (judge, row, STEAD_COLUMN_GRADE);
  fact->note = stead_import_read_text (judge, row, STEAD_COLUMN_NOTE);
  stead_import_read_person (judge, row, &pick->person_id, &fact->note);
  pick->reason = pick->lost_kg > 0 ? fact->reason : NULL;
  pick->grade = fact->grade;
  pick->note = fact->note;
  return TRUE;
}

static gboolean
check_fact (const SteadImportJudge *judge,
            SteadImportRow         *row,
            const SteadPick        *pick)
{
  const SteadBatch *batch = &judge->crop->batch;

  if (pick->day > judge->today)
    return stead_import_wrong (judge, row, STEAD_COLUMN_DATE, g_strdup (_("That day is still to come. Check the date.")));
  if (pick->day < batch->started_on || (batch->ended_on != STEAD_DAY_NONE && pick->day > batch->ended_on))
    return stead_import_wrong (judge, row, STEAD_COLUMN_DATE,
                               g_strdup_printf (_("“%s” did not grow on that day. Check the date."), batch->name));
  if (pick->lost_kg > 0 && pick->reason == NULL)
    return stead_import_wrong (judge, row, STEAD_COLUMN_THROWN,
                               g_strdup (_("Say in the column “Reason” why it was thrown out.")));
  return TRUE;
}

/* In the farm already, with the same day and amounts. */
static gboolean
is_double (const GPtrArray *log,
           const SteadPick *pick)
{
  for (guint i = 0; i < log->len; i++)
    {
      const SteadHarvest *there = log->pdata[i];

      if (there->day == pick->day && fabs (there->quantity_base - pick->good_kg) < 1e-6
          && fabs (there->lost_base - pick->lost_kg) < 1e-6)
        return TRUE;
    }
  return FALSE;
}

static void
judge_row (SteadImportJudge *judge,
           const GPtrArray  *log,
           SteadImportRow   *row)
{
  g_autoptr(Fact) fact = g_new0 (Fact, 1);

  if (!read_fact (judge, row, fact))
    return;
  if (!(fact->pick.good_kg > 0) && !(fact->pick.lost_kg > 0))
    stead_import_skip (row, g_strdup (_("This row has a day and nothing else.")));
  else if (is_double (log, &fact->pick))
    stead_import_skip (row, g_strdup (_("The farm already has a pick of this day with these amounts.")));
  else if (check_fact (judge, row, &fact->pick))
    {
      row->state = STEAD_ROW_TAKE;
      row->fact = g_steal_pointer (&fact);
    }
}

static gboolean
judge_picks (SteadImportJudge  *judge,
             GPtrArray         *rows,
             GError           **error)
{
  g_autoptr(GPtrArray) log = stead_harvest_repo_list (judge->store, judge->crop->batch.id,
                                                      judge->crop->batch.started_on, judge->today, error);

  for (guint i = 0; log != NULL && i < rows->len; i++)
    {
      if (!stead_import_go_on (judge, i, rows->len, error))
        return FALSE;
      if (stead_import_is_to_read (rows->pdata[i]))
        judge_row (judge, log, rows->pdata[i]);
    }
  return log != NULL;
}

static char *
understood (const SteadFarm *farm,
            gconstpointer    data)
{
  const SteadPick *pick = &((const Fact *) data)->pick;
  g_autoptr(GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *good = stead_crop_kg_text (pick->good_kg, farm->units);
  g_autofree char *lost = stead_crop_kg_text (pick->lost_kg, farm->units);

  g_ptr_array_add (parts, stead_day_format (pick->day, STEAD_DAY_STYLE_MEDIUM));
  if (pick->good_kg > 0)
    g_ptr_array_add (parts, g_strdup_printf (_("%s picked"), good));
  if (pick->grade != NULL)
    g_ptr_array_add (parts, g_strdup_printf (_("grade “%s”"), pick->grade));
  if (pick->lost_kg > 0)
    g_ptr_array_add (parts, g_strdup_printf (_("%s thrown out: %s"), lost, pick->reason));
  if (pick->note != NULL)
    g_ptr_array_add (parts, g_strdup_printf (_("note “%s”"), pick->note));
  g_ptr_array_add (parts, NULL);
  return g_strjoinv ("; ", (char **) parts->pdata);
}

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
  return columns->at[STEAD_COLUMN_PICKED] >= 0;
}

static SteadDay
day_of (gconstpointer fact)
{
  return ((const Fact *) fact)->pick.day;
}

/* Oldest first, so that each lot carries its share of what the earlier ones left. */
static gboolean
write_picks (GPtrArray            *rows,
             SteadStore           *store,
             GCancellable         *cancellable,
             SteadImportProgress   progress,
             gpointer              data,
             GError              **error)
{
  g_autoptr(GPtrArray) sorted = stead_import_rows_by_day (rows, day_of);

  for (guint i = 0; i < sorted->len; i++)
    {
      const Fact *fact = ((const SteadImportRow *) sorted->pdata[i])->fact;

      if (g_cancellable_set_error_if_cancelled (cancellable, error)
          || !stead_crop_pick_save (store, &fact->pick, error))
        return FALSE;
      if (progress != NULL)
        progress ((i + 1.0) / sorted->len, data);
    }
  return TRUE;
}

const SteadImportMethods stead_import_picks = {
  .name = "picks",
  .prepare = prepare,
  .is_complete = is_complete,
  .needs = N_("The first row must name the columns: Date and Picked (lb). Grade, Thrown out (lb), Reason, Note and By "
              "may stand too."),
  .judge = judge_picks,
  .understood = understood,
  .free_fact = free_fact,
  .write = write_picks,
};
