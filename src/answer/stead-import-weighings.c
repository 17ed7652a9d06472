/* stead-import-weighings.c - judges the rows of weighings.
 *
 * A row is a sample, with a number and a weight of all or of one in the mean; or it is
 * one fish, and the rows of one day and group then make one weighing.
 */
#include "config.h"

#include "answer/stead-fish-answer.h"
#include "answer/stead-import-private.h"
#include "answer/stead-line-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* One row: a weighing of its own, or one fish of a weighing. */
typedef struct
{
  SteadWeighing *weighing;
  gboolean       is_single;
} Sample;

static void
free_sample (gpointer fact)
{
  Sample *sample = fact;

  if (sample == NULL)
    return;
  stead_weighing_free (sample->weighing);
  g_free (sample);
}

/* --- reading ------------------------------------------------------------------------ */

/* Whose: named in the row, else the group that was asked for. */
static gboolean
read_group (const SteadImportJudge *judge,
            SteadImportRow         *row,
            SteadWeighing          *weighing)
{
  g_autofree char *name = stead_import_read_text (judge, row, STEAD_COLUMN_GROUP);
  g_autofree char *wanted = name != NULL ? stead_line_fold (name) : NULL;

  if (wanted == NULL && judge->fish != NULL)
    {
      weighing->batch_id = judge->fish->batch.id;
      return TRUE;
    }
  for (guint i = 0; wanted != NULL && i < judge->groups->len; i++)
    {
      const SteadFish *group = judge->groups->pdata[i];
      g_autofree char *its = stead_line_fold (group->batch.name);

      if (g_str_equal (wanted, its))
        {
          weighing->batch_id = group->batch.id;
          return TRUE;
        }
    }
  return stead_import_wrong (judge, row, STEAD_COLUMN_GROUP,
                             wanted == NULL ? g_strdup (_("Say which group of fish was weighed."))
                                            : g_strdup_printf (_("No group of fish is called “%s”."), name));
}

static gboolean
refuse_weight (const SteadImportJudge *judge,
               SteadImportRow         *row)
{
  if (judge->columns->at[STEAD_COLUMN_WEIGHT] >= 0)
    return stead_import_wrong (judge, row, STEAD_COLUMN_WEIGHT,
                               g_strdup (_("Is this the weight of all of them or of one? Give the column a "
                                           "plain name, such as “Total weight” or such as “Mean weight”.")));
  return stead_import_wrong (judge, row, STEAD_COLUMN_COUNT,
                             g_strdup (_("The weight is missing. Fill in the weight of all of them, or of one.")));
}

/* A sample: its number, and the weight of all or of one in the mean. */
static gboolean
read_sample (const SteadImportJudge *judge,
             SteadImportRow         *row,
             gint32                  count,
             SteadWeighing          *weighing)
{
  SteadUnitSystem units = judge->farm->units;
  const SteadUnit *mass = stead_unit_default (STEAD_DIMENSION_MASS, units);
  double total_kg = NAN, mean_kg = NAN;

  if (!stead_import_read_quantity (judge, row, STEAD_COLUMN_TOTAL_WEIGHT, mass, &total_kg)
      || !stead_import_read_quantity (judge, row, STEAD_COLUMN_MEAN_WEIGHT, mass, &mean_kg))
    return FALSE;
  if (isnan (total_kg) && isnan (mean_kg))
    return refuse_weight (judge, row);
  weighing->n = count;
  weighing->total_kg = isnan (total_kg) ? mean_kg * count : total_kg;
  return TRUE;
}

static gboolean
read_single (const SteadImportJudge *judge,
             SteadImportRow         *row,
             double                  length_cm,
             SteadWeighing          *weighing)
{
  double weight_kg = NAN;
  SteadWeighed one;

  if (!stead_import_read_quantity (judge, row, STEAD_COLUMN_WEIGHT,
                                   stead_unit_default (STEAD_DIMENSION_MASS, judge->farm->units), &weight_kg))
    return FALSE;
  if (isnan (weight_kg))
    return stead_import_wrong (judge, row, STEAD_COLUMN_WEIGHT, g_strdup (_("The weight is missing.")));
  one = (SteadWeighed) { weight_kg * 1000, length_cm };
  weighing->single = g_array_new (FALSE, FALSE, sizeof (SteadWeighed));
  g_array_append_val (weighing->single, one);
  return TRUE;
}

static gboolean
read_cells (SteadImportJudge *judge,
            SteadImportRow   *row,
            Sample           *sample)
{
  SteadWeighing *weighing = sample->weighing;
  gint32 count = 0;
  double length_m = NAN;

  if (!stead_import_read_day (judge, row, STEAD_COLUMN_DATE, &weighing->day)
      || !read_group (judge, row, weighing)
      || !stead_import_read_count (judge, row, STEAD_COLUMN_COUNT, &count)
      || !stead_import_read_quantity (judge, row, STEAD_COLUMN_LENGTH,
                                      stead_unit_by_id (judge->farm->units == STEAD_UNITS_US ? "in" : "cm"), &length_m)
      || !stead_import_read_yes (judge, row, STEAD_COLUMN_LEFT_OUT, NULL, NULL, &weighing->left_out))
    return FALSE;
  weighing->note = stead_import_read_text (judge, row, STEAD_COLUMN_NOTE);
  stead_import_read_person (judge, row, &weighing->person_id, &weighing->note);
  sample->is_single = *stead_import_cell (judge, row, STEAD_COLUMN_COUNT) == '\0';
  if (sample->is_single)
    return read_single (judge, row, length_m * 100, weighing);
  weighing->length_cm = length_m * 100;
  return read_sample (judge, row, count, weighing);
}

static void
read_row (SteadImportJudge *judge,
          SteadImportRow   *row)
{
  g_autoptr(GError) problem = NULL;
  Sample *sample;

  if (!stead_import_is_to_read (row))
    return;
  sample = g_new0 (Sample, 1);
  sample->weighing = stead_weighing_new ();
  if (!read_cells (judge, row, sample))
    free_sample (sample);
  else if (!stead_weighing_check (sample->weighing, judge->today, &problem))
    {
      stead_import_wrong (judge, row, sample->weighing->day > judge->today ? STEAD_COLUMN_DATE : STEAD_COLUMN_NONE,
                          g_strdup (problem->message));
      free_sample (sample);
    }
  else
    row->fact = sample;
}

/* --- beside each other, and beside the farm ------------------------------------------ */

/* The rows of one group and day. */
typedef struct
{
  gint64     batch_id;
  SteadDay   day;
  GPtrArray *rows;     /* of SteadImportRow */
} Day;

static void
free_day (gpointer data)
{
  Day *day = data;

  g_ptr_array_unref (day->rows);
  g_free (day);
}

static Day *
day_of (GPtrArray           *days,
        const SteadWeighing *weighing)
{
  Day *day;

  for (guint i = 0; i < days->len; i++)
    {
      day = days->pdata[i];
      if (day->batch_id == weighing->batch_id && day->day == weighing->day)
        return day;
    }
  day = g_new0 (Day, 1);
  day->batch_id = weighing->batch_id;
  day->day = weighing->day;
  day->rows = g_ptr_array_new ();
  g_ptr_array_add (days, day);
  return day;
}

static GPtrArray *
days_of (GPtrArray *rows)
{
  GPtrArray *days = g_ptr_array_new_with_free_func (free_day);

  for (guint i = 0; i < rows->len; i++)
    {
      SteadImportRow *row = rows->pdata[i];

      if (row->fact != NULL)
        g_ptr_array_add (day_of (days, ((const Sample *) row->fact)->weighing)->rows, row);
    }
  return days;
}

/* All single fish of a day as one weighing; %NULL if there is none. */
static SteadWeighing *
gather_single (const Day *day)
{
  SteadWeighing *all = NULL;

  for (guint i = 0; i < day->rows->len; i++)
    {
      const SteadImportRow *row = day->rows->pdata[i];
      const Sample *sample = row->fact;

      if (!sample->is_single)
        continue;
      if (all == NULL)
        {
          all = stead_weighing_new ();
          all->batch_id = day->batch_id;
          all->day = day->day;
          all->single = g_array_new (FALSE, FALSE, sizeof (SteadWeighed));
          all->left_out = sample->weighing->left_out;
          all->person_id = sample->weighing->person_id;
          all->note = g_strdup (sample->weighing->note);
        }
      g_array_append_vals (all->single, sample->weighing->single->data, 1);
    }
  if (all != NULL)
    stead_weighing_take_single (all);
  return all;
}

static gboolean
same_weighing (const SteadWeighing *a,
               const SteadWeighing *b)
{
  return a->day == b->day && a->n == b->n && fabs (a->total_kg - b->total_kg) <= 1e-6;
}

static gboolean
is_in_farm (GPtrArray           *farm,
            const SteadWeighing *weighing)
{
  for (guint i = 0; i < farm->len; i++)
    if (same_weighing (farm->pdata[i], weighing))
      return TRUE;
  return FALSE;
}

/* What the farm would refuse of a weighing on that day; %NULL if nothing. */
static char *
fault_of (const SteadImportJudge  *judge,
          const SteadFish         *group,
          const SteadWeighing     *weighing,
          GError                 **error)
{
  gint64 before, after;

  if (weighing->day < group->batch.started_on
      || (group->batch.ended_on != STEAD_DAY_NONE && weighing->day > group->batch.ended_on))
    return g_strdup_printf (_("“%s” was not under way on that day. Check the date."), group->batch.name);
  before = stead_fish_repo_alive (judge->store, group->batch.id, weighing->day, error);
  after = before < 0 ? -1 : stead_fish_repo_alive (judge->store, group->batch.id, weighing->day + 1, error);
  if (after < 0)
    return NULL;
  if (weighing->n > MAX (before, after))
    return g_strdup_printf (_("%d were weighed, but only %d were alive in “%s” that day. Check the number."),
                            (int) weighing->n, (int) MAX (before, after), group->batch.name);
  return NULL;
}

static const SteadFish *
group_of (const SteadImportJudge *judge,
          gint64                  id)
{
  for (guint i = 0; i < judge->groups->len; i++)
    if (((const SteadFish *) judge->groups->pdata[i])->batch.id == id)
      return judge->groups->pdata[i];
  return judge->fish;
}

/* Judges one weighing, of a row or of all rows of a day, and gives its state to @rows. */
static gboolean
judge_weighing (const SteadImportJudge  *judge,
                GPtrArray               *farm,
                const SteadWeighing     *weighing,
                SteadImportRow         **rows,
                guint                    n_rows,
                GError                 **error)
{
  g_autoptr(GError) problem = NULL;
  g_autofree char *fault = fault_of (judge, group_of (judge, weighing->batch_id), weighing, &problem);
  gboolean known = is_in_farm (farm, weighing);

  if (problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  for (guint i = 0; i < n_rows; i++)
    {
      if (fault != NULL)
        stead_import_wrong (judge, rows[i], STEAD_COLUMN_DATE, g_strdup (fault));
      else if (known)
        stead_import_skip (rows[i], g_strdup (_("The farm already has this weighing.")));
      else
        rows[i]->state = STEAD_ROW_TAKE;
    }
  return TRUE;
}

static gboolean
judge_day (const SteadImportJudge  *judge,
           const Day               *day,
           GError                 **error)
{
  g_autoptr(GPtrArray) farm = stead_weighing_repo_list (judge->store, day->batch_id, error);
  g_autoptr(GPtrArray) single = g_ptr_array_new ();
  g_autoptr(SteadWeighing) all = NULL;

  if (farm == NULL)
    return FALSE;
  for (guint i = 0; i < day->rows->len; i++)
    {
      SteadImportRow *row = day->rows->pdata[i];
      const Sample *sample = row->fact;

      if (sample->is_single)
        g_ptr_array_add (single, row);
      else if (!judge_weighing (judge, farm, sample->weighing, &row, 1, error))
        return FALSE;
    }
  all = gather_single (day);
  return all == NULL || judge_weighing (judge, farm, all, (SteadImportRow **) single->pdata, single->len, error);
}

static gboolean
judge_weighings (SteadImportJudge  *judge,
                 GPtrArray         *rows,
                 GError           **error)
{
  g_autoptr(GPtrArray) days = NULL;

  for (guint i = 0; i < rows->len; i++)
    {
      if (!stead_import_go_on (judge, i, rows->len, error))
        return FALSE;
      read_row (judge, rows->pdata[i]);
    }
  days = days_of (rows);
  for (guint i = 0; i < days->len; i++)
    if (!judge_day (judge, days->pdata[i], error))
      return FALSE;
  stead_import_drop_facts (rows, free_sample);
  return TRUE;
}

/* --- words ----------------------------------------------------------------------------- */

static char *
understood (const SteadFarm *farm,
            gconstpointer    fact)
{
  const Sample *sample = fact;
  const SteadWeighing *weighing = sample->weighing;
  g_autofree char *day = stead_day_format (weighing->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *fish = NULL;
  g_autofree char *all = NULL;
  g_autofree char *one = NULL;

  if (sample->is_single)
    {
      one = stead_fish_weight_text (g_array_index (weighing->single, SteadWeighed, 0).weight_g, farm->units);
      /* Translators: a day, the weight of one fish. */
      return g_strdup_printf (_("%s; one fish of %s"), day, one);
    }
  fish = stead_words_fish (weighing->n);
  all = stead_quantity_format (weighing->total_kg, stead_unit_default (STEAD_DIMENSION_MASS, farm->units));
  one = stead_fish_weight_text (stead_weighing_mean_g (weighing), farm->units);
  /* Translators: a day, "30 fish", their weight together, the mean weight of one. */
  return g_strdup_printf (_("%s; %s, %s together, %s each"), day, fish, all, one);
}

/* --- the kind ---------------------------------------------------------------------------- */

/* Without a group that was asked for, the rows may name theirs. */
static gboolean
prepare (SteadImportJudge  *judge,
         gint64             batch_id,
         GError           **error)
{
  judge->groups = stead_fish_repo_list (judge->store, TRUE, error);
  if (judge->groups == NULL)
    return FALSE;
  if (judge->columns->at[STEAD_COLUMN_GROUP] >= 0 && batch_id == 0)
    return TRUE;
  judge->fish = stead_import_find_fish (judge->store, batch_id, error);
  return judge->fish != NULL;
}

static gboolean
is_complete (const SteadColumns *columns)
{
  const int *at = columns->at;

  return at[STEAD_COLUMN_WEIGHT] >= 0
         || (at[STEAD_COLUMN_COUNT] >= 0
             && (at[STEAD_COLUMN_TOTAL_WEIGHT] >= 0 || at[STEAD_COLUMN_MEAN_WEIGHT] >= 0));
}

static gboolean
save_copy (SteadStore           *store,
           SteadWeighing        *weighing,
           GError              **error)
{
  weighing->id = 0;
  return stead_weighing_repo_save (store, weighing, error);
}

static gboolean
write_day (SteadStore  *store,
           const Day   *day,
           GError     **error)
{
  g_autoptr(SteadWeighing) all = gather_single (day);

  for (guint i = 0; i < day->rows->len; i++)
    {
      const SteadImportRow *row = day->rows->pdata[i];
      const Sample *sample = row->fact;

      if (!sample->is_single && !save_copy (store, sample->weighing, error))
        return FALSE;
    }
  return all == NULL || save_copy (store, all, error);
}

static gboolean
write_weighings (GPtrArray            *rows,
                 SteadStore           *store,
                 GCancellable         *cancellable,
                 SteadImportProgress   progress,
                 gpointer              data,
                 GError              **error)
{
  g_autoptr(GPtrArray) days = days_of (rows);

  for (guint i = 0; i < days->len; i++)
    {
      if (g_cancellable_set_error_if_cancelled (cancellable, error) || !write_day (store, days->pdata[i], error))
        return FALSE;
      if (progress != NULL)
        progress ((i + 1.0) / days->len, data);
    }
  return TRUE;
}

const SteadImportMethods stead_import_weighings = {
  .name = "weighings",
  .prepare = prepare,
  .is_complete = is_complete,
  .needs = N_("The first row must name the columns: Date, Number and Total weight (lb) or Mean weight (lb); or for a "
              "row a fish: Date, Weight (lb), Length (in). Group, Left out, Note and By may stand too."),
  .judge = judge_weighings,
  .understood = understood,
  .free_fact = free_sample,
  .write = write_weighings,
};
