/* stead-import-fish.c - judges the rows of a log of fish.
 *
 * Rows are judged in the order of their days beside what the farm holds already; fish
 * that earlier rows lose are no longer there for later ones.
 */
#include "config.h"

#include "answer/stead-fish-answer.h"
#include "answer/stead-import-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* --- reading ---------------------------------------------------------------------- */

static gboolean
read_entry (SteadImportJudge *judge,
            SteadImportRow   *row,
            SteadFishEntry   *entry)
{
  SteadUnitSystem units = judge->farm->units;

  entry->fish_id = judge->fish->batch.id;
  entry->feed_kg = entry->water_c = NAN;
  if (!stead_import_read_day (judge, row, STEAD_COLUMN_DATE, &entry->day)
      || !stead_import_read_quantity (judge, row, STEAD_COLUMN_FEED,
                                      stead_unit_default (STEAD_DIMENSION_MASS, units), &entry->feed_kg)
      || !stead_import_read_quantity (judge, row, STEAD_COLUMN_TEMPERATURE,
                                      stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units), &entry->water_c)
      || !stead_import_read_count (judge, row, STEAD_COLUMN_DEATHS, &entry->deaths)
      || !stead_import_read_count (judge, row, STEAD_COLUMN_CULLED, &entry->culled)
      || !stead_import_read_yes (judge, row, STEAD_COLUMN_REFUSED, NULL, NULL, &entry->refused)
      || !stead_import_read_yes (judge, row, STEAD_COLUMN_LEFT_OUT, NULL, NULL, &entry->left_out))
    return FALSE;
  entry->reason = stead_import_read_text (judge, row, STEAD_COLUMN_REASON);
  entry->note = stead_import_read_text (judge, row, STEAD_COLUMN_NOTE);
  stead_import_read_person (judge, row, &entry->person_id, &entry->note);
  return TRUE;
}

static gboolean
says_nothing (const SteadFishEntry *entry)
{
  return isnan (entry->feed_kg) && isnan (entry->water_c) && entry->deaths == 0 && entry->culled == 0
         && !entry->refused && entry->note == NULL;
}

static void
read_row (SteadImportJudge *judge,
          SteadImportRow   *row)
{
  g_autoptr(SteadFishEntry) entry = NULL;

  if (!stead_import_is_to_read (row))
    return;
  entry = g_new0 (SteadFishEntry, 1);
  if (!read_entry (judge, row, entry))
    return;
  if (says_nothing (entry))
    stead_import_skip (row, g_strdup (_("This row has a day and nothing else.")));
  else
    row->fact = g_steal_pointer (&entry);
}

/* --- doubles ------------------------------------------------------------------------- */

static guint
hash_entry (gconstpointer data)
{
  const SteadFishEntry *entry = data;

  return (guint) entry->day * 2654435761u ^ (guint) (entry->deaths * 7 + entry->culled * 3 + entry->refused);
}

static gboolean
same_number (double a,
             double b)
{
  return isnan (a) ? isnan (b) : fabs (a - b) <= 1e-6;
}

static gboolean
same_entry (gconstpointer a,
            gconstpointer b)
{
  const SteadFishEntry *x = a, *y = b;
  gboolean numbers;

  if (x->day != y->day || x->deaths != y->deaths || x->culled != y->culled || x->refused != y->refused
      || !same_number (x->feed_kg, y->feed_kg) || !same_number (x->water_c, y->water_c))
    return FALSE;
  numbers = x->deaths > 0 || x->culled > 0 || !isnan (x->feed_kg) || !isnan (x->water_c);
  return numbers || g_strcmp0 (x->note, y->note) == 0;
}

/* --- judging --------------------------------------------------------------------------- */

static SteadColumn
column_at_fault (const SteadImportJudge *judge,
                 const SteadFishEntry   *entry,
                 const SteadFishStand   *stand)
{
  const SteadBatch *batch = &judge->fish->batch;

  if (entry->day > judge->today || entry->day < batch->started_on
      || (batch->ended_on != STEAD_DAY_NONE && entry->day > batch->ended_on))
    return STEAD_COLUMN_DATE;
  if (entry->deaths + entry->culled > stand->can_go)
    return entry->deaths > 0 ? STEAD_COLUMN_DEATHS : STEAD_COLUMN_CULLED;
  if (!isnan (entry->feed_kg) && entry->feed_kg > stand->most_kg / 3)
    return STEAD_COLUMN_FEED;
  return isnan (entry->water_c) ? STEAD_COLUMN_NONE : STEAD_COLUMN_TEMPERATURE;
}

/* Fish that the rows judged so far lose. */
typedef struct
{
  SteadDay day;
  gint64   before;   /* on days before it */
  gint64   all;
} Lost;

/* Beside the farm's own entries, those that are not written yet. */
static void
take_off (Lost           *lost,
          SteadDay        day,
          SteadFishStand *stand)
{
  if (day != lost->day)
    lost->before = lost->all;
  lost->day = day;
  stand->can_go = MAX (0, stand->can_go - lost->all);
  if (stand->there > 0)
    stand->most_kg *= (double) MAX (0, stand->there - lost->before) / (double) stand->there;
}

static gboolean
judge_row (const SteadImportJudge  *judge,
           GHashTable              *seen,
           Lost                    *lost,
           SteadImportRow          *row,
           GError                 **error)
{
  SteadFishEntry *entry = row->fact;
  g_autoptr(GError) problem = NULL;
  SteadFishStand stand = { 0 };

  if (stead_import_is_double (seen, row))
    return TRUE;
  if (!stead_fish_repo_stand (judge->store, entry->fish_id, entry->day, 0, &stand, error))
    return FALSE;
  take_off (lost, entry->day, &stand);
  if (!stead_fish_entry_check (entry, judge->fish, &stand, judge->today, &problem))
    {
      stead_import_wrong (judge, row, column_at_fault (judge, entry, &stand), g_strdup (problem->message));
      return TRUE;
    }
  row->state = STEAD_ROW_TAKE;
  g_hash_table_insert (seen, entry, GUINT_TO_POINTER (row->line));
  lost->all += (gint64) entry->deaths + entry->culled;
  return TRUE;
}

static SteadDay
day_of (gconstpointer fact)
{
  return ((const SteadFishEntry *) fact)->day;
}

static gboolean
judge_sorted (SteadImportJudge  *judge,
              GPtrArray         *sorted,
              GError           **error)
{
  const SteadBatch *batch = &judge->fish->batch;
  g_autoptr(GHashTable) seen = g_hash_table_new (hash_entry, same_entry);
  g_autoptr(GPtrArray) log = stead_fish_repo_entries (judge->store, batch->id, batch->started_on, judge->today, error);
  Lost lost = { .day = STEAD_DAY_NONE };

  for (guint i = 0; log != NULL && i < log->len; i++)
    g_hash_table_insert (seen, log->pdata[i], GUINT_TO_POINTER (0));
  for (guint i = 0; log != NULL && i < sorted->len; i++)
    if (!judge_row (judge, seen, &lost, sorted->pdata[i], error))
      return FALSE;
  return log != NULL;
}

static void
free_entry (gpointer fact)
{
  stead_fish_entry_free (fact);
}

static gboolean
judge_log (SteadImportJudge  *judge,
           GPtrArray         *rows,
           GError           **error)
{
  g_autoptr(GPtrArray) sorted = NULL;

  for (guint i = 0; i < rows->len; i++)
    {
      if (!stead_import_go_on (judge, i, rows->len, error))
        return FALSE;
      read_row (judge, rows->pdata[i]);
    }
  sorted = stead_import_rows_by_day (rows, day_of);
  if (!judge_sorted (judge, sorted, error))
    return FALSE;
  stead_import_drop_facts (rows, free_entry);
  return TRUE;
}

/* --- words ------------------------------------------------------------------------------- */

static char *
understood (const SteadFarm *farm,
            gconstpointer    fact)
{
  const SteadFishEntry *entry = fact;
  g_autoptr(GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *feed = NULL;

  g_ptr_array_add (parts, stead_day_format (entry->day, STEAD_DAY_STYLE_MEDIUM));
  if (!isnan (entry->feed_kg))
    {
      feed = stead_quantity_format (entry->feed_kg, stead_unit_default (STEAD_DIMENSION_MASS, farm->units));
      g_ptr_array_add (parts, g_strdup_printf (_("%s of feed"), feed));
    }
  if (entry->refused)
    g_ptr_array_add (parts, g_strdup (_("feed left")));
  if (!isnan (entry->water_c))
    g_ptr_array_add (parts, stead_quantity_format (entry->water_c,
                                                   stead_unit_default (STEAD_DIMENSION_TEMPERATURE, farm->units)));
  if (entry->deaths > 0)
    {
      g_autofree char *fish = stead_words_fish (entry->deaths);

      g_ptr_array_add (parts, g_strdup_printf (_("%s found dead"), fish));
    }
  if (entry->culled > 0)
    {
      g_autofree char *fish = stead_words_fish (entry->culled);

      g_ptr_array_add (parts, g_strdup_printf (_("%s taken out"), fish));
    }
  if (entry->note != NULL)
    g_ptr_array_add (parts, g_strdup_printf (_("note “%s”"), entry->note));
  g_ptr_array_add (parts, NULL);
  return g_strjoinv ("; ", (char **) parts->pdata);
}

/* --- the kind ------------------------------------------------------------------------------ */

static gboolean
prepare (SteadImportJudge  *judge,
         gint64             batch_id,
         GError           **error)
{
  judge->fish = stead_import_find_fish (judge->store, batch_id, error);
  return judge->fish != NULL;
}

static gboolean
is_complete (const SteadColumns *columns)
{
  const int *at = columns->at;

  return at[STEAD_COLUMN_FEED] >= 0 || at[STEAD_COLUMN_TEMPERATURE] >= 0 || at[STEAD_COLUMN_DEATHS] >= 0
         || at[STEAD_COLUMN_CULLED] >= 0 || at[STEAD_COLUMN_REFUSED] >= 0 || at[STEAD_COLUMN_NOTE] >= 0;
}

static gboolean
write_log (GPtrArray            *rows,
           SteadStore           *store,
           GCancellable         *cancellable,
           SteadImportProgress   progress,
           gpointer              data,
           GError              **error)
{
  g_autoptr(GPtrArray) entries = g_ptr_array_new ();

  for (guint i = 0; i < rows->len; i++)
    {
      const SteadImportRow *row = rows->pdata[i];

      if (row->state != STEAD_ROW_TAKE)
        continue;
      /* An id left from an import that failed at its very end must not stay. */
      ((SteadFishEntry *) row->fact)->id = 0;
      g_ptr_array_add (entries, row->fact);
    }
  return stead_fish_repo_add_entries (store, entries, cancellable, progress, data, error);
}

const SteadImportMethods stead_import_fish_log = {
  .name = "fish-log",
  .prepare = prepare,
  .is_complete = is_complete,
  .needs = N_("The first row must name the columns: Date, then some of Feed (lb), Temperature (F), Deaths, "
              "Culled, Feed left, Reason, Left out, Note, By."),
  .judge = judge_log,
  .understood = understood,
  .free_fact = free_entry,
  .write = write_log,
};
