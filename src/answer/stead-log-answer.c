/* stead-log-answer.c - what was written down, as rows for a spreadsheet. */
#include "config.h"

#include "answer/stead-log-private.h"
#include "store/stead-farm-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
stead_log_answer_free (SteadLogAnswer *self)
{
  if (self == NULL)
    return;
  for (guint row = 0; row < self->rows->len; row++)
    for (guint column = 0; column < self->columns->len; column++)
      g_free (((SteadLogCell *) self->rows->pdata[row])[column].text);
  for (guint column = 0; column < self->columns->len; column++)
    g_free (g_array_index (self->columns, SteadLogColumn, column).title);
  g_ptr_array_unref (self->rows);
  g_array_unref (self->columns);
  g_free (self->title);
  g_free (self->currency);
  g_free (self);
}

const SteadLogColumn *
stead_log_answer_column (const SteadLogAnswer *self,
                         guint                 column)
{
  g_return_val_if_fail (self != NULL && column < self->columns->len, NULL);
  return &g_array_index (self->columns, SteadLogColumn, column);
}

const SteadLogCell *
stead_log_answer_cell (const SteadLogAnswer *self,
                       guint                 row,
                       guint                 column)
{
  g_return_val_if_fail (self != NULL && row < self->rows->len && column < self->columns->len, NULL);
  return &((const SteadLogCell *) self->rows->pdata[row])[column];
}

SteadLogAnswer *
stead_log_new (char       *title,
               const char *currency,
               SteadStore *store)
{
  SteadLogAnswer *self = g_new0 (SteadLogAnswer, 1);

  self->title = title;
  self->currency = g_strdup (currency);
  self->today = stead_store_get_today (store);
  self->columns = g_array_new (FALSE, TRUE, sizeof (SteadLogColumn));
  self->rows = g_ptr_array_new_with_free_func (g_free);
  return self;
}

void
stead_log_add_column (SteadLogAnswer *self,
                      char           *title,
                      SteadCellKind   kind,
                      int             digits,
                      gboolean        sum)
{
  SteadLogColumn column = { title, kind, digits, sum };

  g_array_append_val (self->columns, column);
}

SteadLogCell *
stead_log_add_row (SteadLogAnswer *self)
{
  SteadLogCell *row = g_new0 (SteadLogCell, self->columns->len);

  g_ptr_array_add (self->rows, row);
  return row;
}

SteadLogCell
stead_log_text (const char *text)
{
  return (SteadLogCell) { .filled = text != NULL && *text != '\0', .text = g_strdup (text) };
}

SteadLogCell
stead_log_whole (gint64   whole,
                 gboolean filled)
{
  return (SteadLogCell) { .filled = filled, .whole = whole };
}

SteadLogCell
stead_log_number (double number)
{
  return (SteadLogCell) { .filled = isfinite (number), .number = isfinite (number) ? number : 0 };
}

/* --- a flock's log --------------------------------------------------------- */

enum
{
  LOG_DAY,
  LOG_AGE,
  LOG_HENS,
  LOG_EGGS,
  LOG_CRACKED,
  LOG_FEED,
  LOG_DEATHS,
  LOG_CULLED,
  LOG_REASON,
  LOG_LEFT_OUT,
  LOG_NOTE,
  LOG_PERSON,
};

static void
add_log_columns (SteadLogAnswer  *self,
                 const SteadUnit *feed_unit)
{
  stead_log_add_column (self, g_strdup (C_("column of a log", "Date")), STEAD_CELL_DAY, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Age (weeks)")), STEAD_CELL_NUMBER, 1, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Hens")), STEAD_CELL_COUNT, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Eggs")), STEAD_CELL_COUNT, 0, TRUE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Cracked")), STEAD_CELL_COUNT, 0, TRUE);
  /* Six digits: what was weighed in the other system's units comes back as it was.
   * Translators: column of a log; %s is a unit: "Feed (lb)". */
  stead_log_add_column (self, g_strdup_printf (_("Feed (%s)"), stead_unit_symbol (feed_unit)), STEAD_CELL_NUMBER, 6, TRUE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Died")), STEAD_CELL_COUNT, 0, TRUE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Culled")), STEAD_CELL_COUNT, 0, TRUE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Reason")), STEAD_CELL_TEXT, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Left out")), STEAD_CELL_TEXT, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Note")), STEAD_CELL_TEXT, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Person")), STEAD_CELL_TEXT, 0, FALSE);
}

/* Returns: (transfer full): names by id */
GHashTable *
stead_log_people (SteadStore  *store,
                  GError     **error)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, error);
  GHashTable *names;

  if (people == NULL)
    return NULL;
  names = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  for (guint i = 0; i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];

      g_hash_table_insert (names, g_memdup2 (&person->id, sizeof person->id), g_strdup (person->name));
    }
  return names;
}

static void
fill_log_row (SteadLogCell          *row,
              const SteadFlockEntry *entry,
              const SteadFlock      *flock,
              const SteadUnit       *feed_unit,
              GHashTable            *people,
              gint64                 hens)
{
  row[LOG_DAY] = stead_log_whole (entry->day, TRUE);
  row[LOG_AGE] = (SteadLogCell) { .filled = TRUE, .number = stead_age_weeks (flock->hatched_on, entry->day) };
  row[LOG_HENS] = stead_log_whole (hens, TRUE);
  row[LOG_EGGS] = stead_log_whole (entry->eggs, entry->eggs != STEAD_COUNT_NONE);
  row[LOG_CRACKED] = stead_log_whole (entry->cracked, entry->eggs != STEAD_COUNT_NONE);
  if (isfinite (entry->feed_kg))
    row[LOG_FEED] = (SteadLogCell) { .filled = TRUE,
                                     .number = stead_quantity_from_base (entry->feed_kg, feed_unit) };
  row[LOG_DEATHS] = stead_log_whole (entry->deaths, TRUE);
  row[LOG_CULLED] = stead_log_whole (entry->culled, TRUE);
  row[LOG_REASON] = stead_log_text (entry->reason);
  /* Translators: in the column "Left out" of a log; an import must know it, see
   * stead_import_read_yes(). */
  row[LOG_LEFT_OUT] = stead_log_text (entry->left_out ? C_("left out of a log", "yes") : NULL);
  row[LOG_NOTE] = stead_log_text (entry->note);
  row[LOG_PERSON] = stead_log_text (g_hash_table_lookup (people, &entry->person_id));
}

SteadLogAnswer *
stead_log_answer_flock (SteadStore  *store,
                        gint64       flock_id,
                        GError     **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);
  g_autoptr(SteadFlock) flock = farm == NULL ? NULL : stead_flock_repo_get (store, flock_id, error);
  g_autoptr(GHashTable) people = flock == NULL ? NULL : stead_log_people (store, error);
  g_autoptr(GPtrArray) entries = NULL;
  const SteadUnit *feed_unit;
  SteadLogAnswer *self;
  gint64 alive, lost_today = 0;

  if (people == NULL)
    return NULL;
  entries = stead_flock_repo_entries (store, flock_id, flock->housed_on, stead_store_get_today (store), error);
  if (entries == NULL)
    return NULL;
  feed_unit = stead_unit_default (STEAD_DIMENSION_MASS, farm->units);
  /* Translators: title of an export; the flock's name. */
  self = stead_log_new (g_strdup_printf (_("Log of %s"), flock->name), farm->currency, store);
  self->from = flock->housed_on;
  self->to = flock->ended_on != STEAD_DAY_NONE ? flock->ended_on : self->today;
  add_log_columns (self, feed_unit);
  alive = flock->birds;
  for (guint i = 0; i < entries->len; i++)
    {
      const SteadFlockEntry *entry = entries->pdata[i];

      /* Several entries of a day show the same hens: those that the day began with. */
      if (i > 0 && entry->day != ((const SteadFlockEntry *) entries->pdata[i - 1])->day)
        {
          alive -= lost_today;
          lost_today = 0;
        }
      fill_log_row (stead_log_add_row (self), entry, flock, feed_unit, people, alive);
      lost_today += entry->deaths + entry->culled;
    }
  return self;
}

/* --- the lines of a cost --------------------------------------------------- */

enum
{
  COST_PART,
  COST_DAY,
  COST_WHAT,
  COST_QUANTITY,
  COST_AMOUNT,
};

static void
add_cost_columns (SteadLogAnswer *self)
{
  stead_log_add_column (self, g_strdup (C_("column of costs", "Part")), STEAD_CELL_TEXT, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of costs", "Date")), STEAD_CELL_DAY, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of costs", "What")), STEAD_CELL_TEXT, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of costs", "Quantity")), STEAD_CELL_TEXT, 0, FALSE);
  /* Translators: column of costs; %s is a currency: "Amount (USD)". */
  stead_log_add_column (self, g_strdup_printf (_("Amount (%s)"), self->currency), STEAD_CELL_MONEY, 0, TRUE);
}

static gboolean
add_part (SteadLogAnswer         *self,
          SteadStore             *store,
          const SteadCostAnswer  *cost,
          SteadCostKind           kind,
          GError                **error)
{
  g_autoptr(GPtrArray) entries = stead_cost_answer_entries (store, cost, kind, error);

  if (entries == NULL)
    return FALSE;
  for (guint i = 0; i < entries->len; i++)
    {
      const SteadCostEntry *entry = entries->pdata[i];
      SteadLogCell *row = stead_log_add_row (self);

      row[COST_PART] = stead_log_text (cost->labels[kind]);
      row[COST_DAY] = stead_log_whole (entry->day, entry->day != STEAD_DAY_NONE);
      row[COST_WHAT] = stead_log_text (entry->what);
      row[COST_QUANTITY] = stead_log_text (entry->quantity);
      row[COST_AMOUNT] = stead_log_whole (entry->cents, TRUE);
    }
  return TRUE;
}

SteadLogAnswer *
stead_log_answer_cost (SteadStore             *store,
                       const SteadCostAnswer  *cost,
                       GError                **error)
{
  g_autoptr(SteadLogAnswer) self = NULL;

  g_return_val_if_fail (cost != NULL, NULL);
  /* Translators: title of an export; the product's name. */
  self = stead_log_new (g_strdup_printf (_("Costs of %s"), cost->product->name), cost->farm->currency, store);
  self->from = cost->from;
  self->to = cost->to;
  add_cost_columns (self);
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    if (cost->sheet.parts[kind].total_cents > 0
        && !add_part (self, store, cost, (SteadCostKind) kind, error))
      return NULL;
  return g_steal_pointer (&self);
}
