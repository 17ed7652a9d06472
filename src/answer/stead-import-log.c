/* stead-import-log.c - judges the rows of a flock's log.
 *
 * Rows are judged in the order of their days, whatever their order in the file,
 * beside what the farm's log holds already: hens alive and eggs of a day are
 * carried along, so no row costs a query.
 */
#include "config.h"

#include "answer/stead-import-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* What the farm and the rows judged so far say of the flock. */
typedef struct
{
  GPtrArray  *log;          /* of SteadFlockEntry: the farm's own of these days, by day */
  guint       log_at;       /* first of them that is not before the present day */
  gint64      lost_before;  /* hens lost before the present day */
  gint64      lost_today;   /* and on it, up to now */
  gint64      lost_ever;    /* in the farm and in rows taken */
  gint64      eggs_today;
  SteadDay    day;
  GHashTable *seen;         /* facts of the farm and of rows → line; 0: the farm */
} Tally;

static void
tally_clear (Tally *tally)
{
  g_clear_pointer (&tally->log, g_ptr_array_unref);
  g_clear_pointer (&tally->seen, g_hash_table_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Tally, tally_clear)

static gboolean
read_entry (SteadImportJudge *judge,
            SteadImportRow   *row,
            SteadFlockEntry  *entry)
{
  entry->flock_id = judge->flock->id;
  entry->eggs = STEAD_COUNT_NONE;
  entry->feed_kg = NAN;
  if (!stead_import_read_day (judge, row, STEAD_COLUMN_DATE, &entry->day)
      || !stead_import_read_count (judge, row, STEAD_COLUMN_EGGS, &entry->eggs)
      || !stead_import_read_count (judge, row, STEAD_COLUMN_CRACKED, &entry->cracked)
      || !stead_import_read_quantity (judge, row, STEAD_COLUMN_FEED,
                                      stead_unit_default (STEAD_DIMENSION_MASS, judge->farm->units), &entry->feed_kg)
      || !stead_import_read_count (judge, row, STEAD_COLUMN_DEATHS, &entry->deaths)
      || !stead_import_read_count (judge, row, STEAD_COLUMN_CULLED, &entry->culled)
      || !stead_import_read_yes (judge, row, STEAD_COLUMN_LEFT_OUT, NULL, NULL, &entry->left_out))
    return FALSE;
  entry->reason = stead_import_read_text (judge, row, STEAD_COLUMN_REASON);
  entry->note = stead_import_read_text (judge, row, STEAD_COLUMN_NOTE);
  stead_import_read_person (judge, row, &entry->person_id, &entry->note);
  return TRUE;
}

/* A row with a day and nothing else says nothing. */
static gboolean
says_nothing (const SteadFlockEntry *entry)
{
  return entry->eggs == STEAD_COUNT_NONE && entry->cracked == 0 && entry->deaths == 0 && entry->culled == 0
         && isnan (entry->feed_kg) && entry->note == NULL;
}

/* Reads the cells of one row; a fact on it means that it can be judged further. */
static void
read_row (SteadImportJudge *judge,
          SteadImportRow   *row)
{
  SteadFlockEntry *entry;

  if (!stead_import_is_to_read (row))
    return;
  entry = g_new0 (SteadFlockEntry, 1);
  if (!read_entry (judge, row, entry))
    {
      stead_flock_entry_free (entry);
      return;
    }
  if (says_nothing (entry))
    {
      stead_import_skip (row, g_strdup (_("This row has a day and nothing else.")));
      stead_flock_entry_free (entry);
      return;
    }
  row->fact = entry;
}

static SteadDay
day_of (gconstpointer fact)
{
  return ((const SteadFlockEntry *) fact)->day;
}

/* Two entries of one day with the same numbers are the same entry. */
static guint
hash_entry (gconstpointer data)
{
  const SteadFlockEntry *entry = data;

  return (guint) entry->day * 2654435761u ^ (guint) (entry->eggs * 31 + entry->cracked * 7 + entry->deaths * 3
                                                     + entry->culled);
}

static gboolean
same_entry (gconstpointer a,
            gconstpointer b)
{
  const SteadFlockEntry *x = a;
  const SteadFlockEntry *y = b;
  gboolean numbers;

  if (x->day != y->day || x->eggs != y->eggs || x->cracked != y->cracked || x->deaths != y->deaths
      || x->culled != y->culled || isnan (x->feed_kg) != isnan (y->feed_kg)
      || (!isnan (x->feed_kg) && fabs (x->feed_kg - y->feed_kg) > 1e-6))
    return FALSE;
  numbers = x->eggs != STEAD_COUNT_NONE || x->deaths > 0 || x->culled > 0 || !isnan (x->feed_kg);
  return numbers || g_strcmp0 (x->note, y->note) == 0;
}

static gboolean
tally_start (SteadImportJudge  *judge,
             GPtrArray         *sorted,
             Tally             *tally,
             GError           **error)
{
  SteadDay first = ((const SteadFlockEntry *) ((const SteadImportRow *) sorted->pdata[0])->fact)->day;
  SteadDay last = ((const SteadFlockEntry *) ((const SteadImportRow *) sorted->pdata[sorted->len - 1])->fact)->day;
  gint64 alive;

  tally->day = STEAD_DAY_NONE;
  tally->seen = g_hash_table_new (hash_entry, same_entry);
  tally->log = stead_flock_repo_entries (judge->store, judge->flock->id, first, last, error);
  if (tally->log == NULL)
    return FALSE;
  alive = stead_flock_repo_alive (judge->store, judge->flock->id, first, error);
  if (alive < 0)
    return FALSE;
  tally->lost_before = judge->flock->birds - alive;
  alive = stead_flock_repo_alive (judge->store, judge->flock->id, MAX (last, judge->today) + 1, error);
  if (alive < 0)
    return FALSE;
  tally->lost_ever = judge->flock->birds - alive;
  for (guint i = 0; i < tally->log->len; i++)
    g_hash_table_insert (tally->seen, tally->log->pdata[i], GUINT_TO_POINTER (0));
  return TRUE;
}

/* Carries the sums to @day, past the farm's own entries. */
static void
tally_go_to (Tally    *tally,
             SteadDay  day)
{
  if (day == tally->day)
    return;
  tally->lost_before += tally->lost_today;
  tally->lost_today = 0;
  tally->eggs_today = 0;
  tally->day = day;
  for (; tally->log_at < tally->log->len; tally->log_at++)
    {
      const SteadFlockEntry *entry = tally->log->pdata[tally->log_at];
      gint64 lost = (gint64) entry->deaths + entry->culled;

      if (entry->day > day)
        break;
      if (entry->day < day)
        {
          tally->lost_before += lost;
          continue;
        }
      tally->lost_today += lost;
      tally->eggs_today += MAX (0, entry->eggs);
    }
}

static SteadColumn
column_at_fault (const SteadImportJudge *judge,
                 const SteadFlockEntry  *entry,
                 gint64                  alive)
{
  if (entry->day > judge->today || entry->day < judge->flock->housed_on
      || (judge->flock->ended_on != STEAD_DAY_NONE && entry->day > judge->flock->ended_on))
    return STEAD_COLUMN_DATE;
  if (entry->cracked > MAX (0, entry->eggs))
    return STEAD_COLUMN_CRACKED;
  if (entry->eggs > 2 * alive)
    return STEAD_COLUMN_EGGS;
  if (entry->deaths + entry->culled > alive)
    return entry->deaths > 0 ? STEAD_COLUMN_DEATHS : STEAD_COLUMN_CULLED;
  return isnan (entry->feed_kg) ? STEAD_COLUMN_NONE : STEAD_COLUMN_FEED;
}

/* The rules of the store, with the sums instead of queries. */
static gboolean
check_entry (const SteadImportJudge *judge,
             const Tally            *tally,
             SteadImportRow         *row)
{
  const SteadFlockEntry *entry = row->fact;
  gint64 alive = judge->flock->birds - tally->lost_before;
  gint64 lost = (gint64) entry->deaths + entry->culled;
  g_autoptr(GError) error = NULL;

  if (!stead_flock_entry_check (entry, judge->flock, alive, judge->today, &error))
    return stead_import_wrong (judge, row, column_at_fault (judge, entry, alive), g_strdup (error->message));
  if (entry->eggs > 0 && tally->eggs_today + entry->eggs > 2 * alive)
    return stead_import_wrong (judge, row, STEAD_COLUMN_EGGS,
                               g_strdup_printf (_("With the other entries of this day that makes %d eggs from %d birds. "
                                                  "Check the number and the day."),
                                                (int) (tally->eggs_today + entry->eggs), (int) alive));
  if (lost > 0 && lost + tally->lost_ever > judge->flock->birds)
    return stead_import_wrong (judge, row, entry->deaths > 0 ? STEAD_COLUMN_DEATHS : STEAD_COLUMN_CULLED,
                               g_strdup_printf (_("With the other entries that makes %d birds lost of %d. "
                                                  "Check the number."),
                                                (int) (lost + tally->lost_ever), (int) judge->flock->birds));
  return TRUE;
}

static void
judge_row (const SteadImportJudge *judge,
           Tally                  *tally,
           SteadImportRow         *row)
{
  const SteadFlockEntry *entry = row->fact;

  tally_go_to (tally, entry->day);
  if (stead_import_is_double (tally->seen, row) || !check_entry (judge, tally, row))
    return;
  row->state = STEAD_ROW_TAKE;
  g_hash_table_insert (tally->seen, row->fact, GUINT_TO_POINTER (row->line));
  tally->lost_today += (gint64) entry->deaths + entry->culled;
  tally->lost_ever += (gint64) entry->deaths + entry->culled;
  tally->eggs_today += MAX (0, entry->eggs);
}

static void
free_entry (gpointer fact)
{
  stead_flock_entry_free (fact);
}

static gboolean
judge_log (SteadImportJudge  *judge,
           GPtrArray         *rows,
           GError           **error)
{
  g_autoptr(GPtrArray) sorted = NULL;
  g_auto(Tally) tally = { 0 };

  for (guint i = 0; i < rows->len; i++)
    {
      if (!stead_import_go_on (judge, i, rows->len, error))
        return FALSE;
      read_row (judge, rows->pdata[i]);
    }
  sorted = stead_import_rows_by_day (rows, day_of);
  if (sorted->len > 0 && !tally_start (judge, sorted, &tally, error))
    return FALSE;
  for (guint i = 0; i < sorted->len; i++)
    judge_row (judge, &tally, sorted->pdata[i]);
  stead_import_drop_facts (rows, free_entry);
  return TRUE;
}

static char *
understood (const SteadFarm *farm,
            gconstpointer    fact)
{
  const SteadFlockEntry *entry = fact;
  g_autoptr(GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  g_ptr_array_add (parts, stead_day_format (entry->day, STEAD_DAY_STYLE_MEDIUM));
  if (entry->eggs != STEAD_COUNT_NONE)
    {
      g_autofree char *eggs = stead_words_eggs (entry->eggs);

      g_ptr_array_add (parts, entry->cracked > 0 ? g_strdup_printf (_("%s, %d of them cracked"), eggs, entry->cracked)
                                                 : g_steal_pointer (&eggs));
    }
  if (!isnan (entry->feed_kg))
    {
      g_autofree char *feed = stead_quantity_format (entry->feed_kg,
                                                     stead_unit_default (STEAD_DIMENSION_MASS, farm->units));

      g_ptr_array_add (parts, g_strdup_printf (_("%s of feed"), feed));
    }
  if (entry->deaths > 0)
    {
      g_autofree char *birds = stead_words_birds (entry->deaths);

      g_ptr_array_add (parts, g_strdup_printf (_("%s found dead"), birds));
    }
  if (entry->culled > 0)
    {
      g_autofree char *birds = stead_words_birds (entry->culled);

      g_ptr_array_add (parts, g_strdup_printf (_("%s taken out"), birds));
    }
  if (entry->reason != NULL)
    g_ptr_array_add (parts, g_strdup_printf (_("reason “%s”"), entry->reason));
  if (entry->note != NULL)
    g_ptr_array_add (parts, g_strdup_printf (_("note “%s”"), entry->note));
  if (entry->left_out)
    g_ptr_array_add (parts, g_strdup (C_("an entry of a log", "nothing is learned from it")));
  g_ptr_array_add (parts, NULL);
  return g_strjoinv ("; ", (char **) parts->pdata);
}

/* --- the kind -------------------------------------------------------------------- */

static gboolean
prepare (SteadImportJudge  *judge,
         gint64             batch_id,
         GError           **error)
{
  judge->flock = stead_import_find_flock (judge->store, batch_id, error);
  return judge->flock != NULL;
}

static gboolean
is_complete (const SteadColumns *columns)
{
  const int *at = columns->at;

  return at[STEAD_COLUMN_EGGS] >= 0 || at[STEAD_COLUMN_FEED] >= 0 || at[STEAD_COLUMN_DEATHS] >= 0
         || at[STEAD_COLUMN_CULLED] >= 0 || at[STEAD_COLUMN_NOTE] >= 0;
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
      ((SteadFlockEntry *) row->fact)->id = 0;
      g_ptr_array_add (entries, row->fact);
    }
  return stead_flock_repo_add_entries (store, entries, cancellable, progress, data, error);
}

const SteadImportMethods stead_import_flock_log = {
  .name = "flock-log",
  .prepare = prepare,
  .is_complete = is_complete,
  .needs = N_("The first row must name the columns: Date, then some of Eggs, Cracked, Feed (lb), Deaths, "
              "Culled, Reason, Left out, Note, By."),
  .judge = judge_log,
  .understood = understood,
  .free_fact = free_entry,
  .write = write_log,
};
