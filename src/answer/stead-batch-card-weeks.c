/* stead-batch-card-weeks.c - the log of a batch, a row a week from its first day. */
#include "config.h"

#include "answer/stead-batch-card-private.h"
#include "answer/stead-batch-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-crop-repo.h"
#include "store/stead-fish-repo.h"

static char *
count_text (gint64 n)
{
  return stead_number_format ((double) n, 0);
}

/* Nothing lost is a dash: what is not nothing stands out. */
static char *
count_or_none (gint64 n)
{
  return n != 0 ? count_text (n) : NULL;
}

static char *
feed_or_none (const SteadBatchAnswer *batch,
              double                  kg)
{
  return kg > 0 ? stead_batch_feed_text (batch, kg) : NULL;
}

static SteadCardTable *
begin (void)
{
  SteadCardTable *table = stead_card_table_new ();

  stead_card_table_add_column (table, C_("column of weeks", "Week from"), FALSE);
  return table;
}

static SteadCardRow *
add_week (SteadCardTable *table,
          SteadDay        first)
{
  SteadCardRow *row = stead_card_table_add_row (table);

  row->cells[0] = stead_day_format (first, STEAD_DAY_STYLE_MEDIUM);
  return row;
}

/* --- flocks ---------------------------------------------------------------------- */

static SteadCardTable *
flock_weeks (SteadStore              *store,
             const SteadBatchAnswer  *batch,
             GError                 **error)
{
  const SteadBatchMoney *money = &batch->money;
  g_autoptr(GArray) weeks = stead_flock_repo_weeks (store, money->batch->id, money->from, money->to, error);
  SteadCardTable *table;

  if (weeks == NULL)
    return NULL;
  table = begin ();
  stead_card_table_add_column (table, C_("column of weeks", "Eggs"), TRUE);
  stead_card_table_add_column (table, C_("column of weeks", "Cracked"), TRUE);
  stead_card_table_add_column (table, C_("column of weeks", "Eggs a hen and day"), TRUE);
  stead_card_table_add_column (table, C_("column of weeks", "Feed"), TRUE);
  stead_card_table_add_column (table, C_("column of weeks", "Lost"), TRUE);
  for (guint i = 0; i < weeks->len; i++)
    {
      const SteadLayWeek *week = &g_array_index (weeks, SteadLayWeek, i);
      SteadCardRow *row = add_week (table, week->first_day);

      if (week->days_logged > 0)
        row->cells[1] = count_text (week->eggs);
      row->cells[2] = count_or_none (week->cracked);
      if (week->hen_days > 0)
        row->cells[3] = stead_words_percent ((double) week->eggs / week->hen_days, 0);
      row->cells[4] = feed_or_none (batch, week->feed_kg);
      row->cells[5] = count_or_none (week->deaths);
    }
  return table;
}

/* --- fish ------------------------------------------------------------------------- */

static char *
mean_temperature (const SteadBatchAnswer *batch,
                  const double           *days_c,
                  int                     n)
{
  double sum = 0;
  int known = 0;

  for (int i = 0; i < n; i++)
    if (isfinite (days_c[i]))
      {
        sum += days_c[i];
        known++;
      }
  return known == 0 ? NULL
         : stead_quantity_format (sum / known, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, batch->farm->units));
}

/* The last weighing from @first to @last. */
static char *
mean_weight (const GPtrArray *weighings,
             SteadDay         first,
             SteadDay         last)
{
  g_autofree char *grams = NULL;
  const SteadWeighing *found = NULL;

  for (guint i = 0; i < weighings->len; i++)
    {
      const SteadWeighing *weighing = weighings->pdata[i];

      if (weighing->day >= first && weighing->day <= last)
        found = weighing;
    }
  if (found == NULL)
    return NULL;
  grams = stead_number_format (stead_weighing_mean_g (found), 0);
  /* Translators: mean weight of one fish, in grams. */
  return g_strdup_printf (C_("weight", "%s g"), grams);
}

static gboolean
fill_fish_week (SteadStore              *store,
                const SteadBatchAnswer  *batch,
                SteadDay                 first,
                SteadDay                 last,
                SteadCardRow            *row,
                GError                 **error)
{
  SteadFishTotals totals;
  gint64 id = batch->money.batch->id;
  gint64 alive = stead_fish_repo_alive (store, id, last + 1, error);

  if (alive < 0 || !stead_fish_repo_totals (store, id, first, last, &totals, error))
    return FALSE;
  row->cells[1] = count_text (alive);
  row->cells[3] = feed_or_none (batch, totals.feed_kg);
  row->cells[5] = count_or_none (totals.deaths + totals.culled);
  return TRUE;
}

static SteadCardTable *
fish_weeks (SteadStore              *store,
            const SteadBatchAnswer  *batch,
            GError                 **error)
{
  const SteadBatchMoney *money = &batch->money;
  g_autoptr(GPtrArray) weighings = stead_weighing_repo_list (store, money->batch->id, error);
  g_autofree double *days_c = g_new (double, (gsize) MAX (money->to - money->from + 1, 1));
  g_autoptr(SteadCardTable) table = begin ();

  if (weighings == NULL
      || !stead_fish_repo_temperatures (store, money->batch->id, money->from, money->to, days_c, error))
    return NULL;
  stead_card_table_add_column (table, C_("column of weeks", "Fish at its end"), TRUE);
  stead_card_table_add_column (table, C_("column of weeks", "Mean weight"), TRUE);
  stead_card_table_add_column (table, C_("column of weeks", "Feed"), TRUE);
  stead_card_table_add_column (table, C_("column of weeks", "Water"), TRUE);
  stead_card_table_add_column (table, C_("column of weeks", "Lost"), TRUE);
  for (SteadDay first = money->from; first <= money->to; first += 7)
    {
      SteadDay last = MIN (first + 6, money->to);
      SteadCardRow *row = add_week (table, first);

      if (!fill_fish_week (store, batch, first, last, row, error))
        return NULL;
      row->cells[2] = mean_weight (weighings, first, last);
      row->cells[4] = mean_temperature (batch, days_c + (first - money->from), last - first + 1);
    }
  return g_steal_pointer (&table);
}

/* --- crops ------------------------------------------------------------------------ */

/* What was done in these days, one after the other. */
static char *
done_text (const GPtrArray *entries,
           SteadDay         first,
           SteadDay         last,
           gint64          *out_lost)
{
  g_autoptr(GString) text = g_string_new (NULL);

  *out_lost = 0;
  for (guint i = 0; i < entries->len; i++)
    {
      const SteadCropEntry *entry = entries->pdata[i];

      if (entry->day < first || entry->day > last)
        continue;
      *out_lost += entry->lost;
      if (entry->note != NULL)
        g_string_append_printf (text, text->len > 0 ? "; %s" : "%s", entry->note);
    }
  return text->len > 0 ? g_strdup (text->str) : NULL;
}

static char *
picked_text (const SteadBatchAnswer *batch,
             SteadDay                first,
             SteadDay                last)
{
  double picked = 0;

  for (guint i = 0; i < batch->harvests->len; i++)
    {
      const SteadHarvest *harvest = batch->harvests->pdata[i];

      if (harvest->day >= first && harvest->day <= last)
        picked += harvest->quantity_base;
    }
  return picked > 0 ? stead_batch_answer_output (batch, picked) : NULL;
}

static SteadCardTable *
crop_weeks (SteadStore              *store,
            const SteadBatchAnswer  *batch,
            GError                 **error)
{
  const SteadBatchMoney *money = &batch->money;
  g_autoptr(GPtrArray) entries = stead_crop_repo_entries (store, money->batch->id, money->from, money->to, error);
  g_autoptr(SteadCardTable) table = begin ();

  if (entries == NULL)
    return NULL;
  stead_card_table_add_column (table, C_("column of weeks", "Plants"), TRUE);
  stead_card_table_add_column (table, C_("column of weeks", "Lost"), TRUE);
  stead_card_table_add_column (table, C_("column of weeks", "Picked"), TRUE);
  stead_card_table_add_column (table, C_("column of weeks", "What was done"), FALSE);
  for (SteadDay first = money->from; first <= money->to; first += 7)
    {
      SteadDay last = MIN (first + 6, money->to);
      gint64 plants = stead_crop_repo_plants (store, money->batch->id, first, error), lost;
      SteadCardRow *row;

      if (plants < 0)
        return NULL;
      row = add_week (table, first);
      row->cells[1] = count_text (plants);
      row->cells[3] = picked_text (batch, first, last);
      row->cells[4] = done_text (entries, first, last, &lost);
      row->cells[2] = count_or_none (lost);
    }
  return g_steal_pointer (&table);
}

SteadCardTable *
stead_batch_card_weeks (SteadStore              *store,
                        const SteadBatchAnswer  *batch,
                        GError                 **error)
{
  switch (batch->money.batch->kind)
    {
    case STEAD_BATCH_FLOCK: return flock_weeks (store, batch, error);
    case STEAD_BATCH_FISH: return fish_weeks (store, batch, error);
    case STEAD_BATCH_CROP: return crop_weeks (store, batch, error);
    case STEAD_BATCH_KITCHEN:
    default: return begin ();
    }
}
