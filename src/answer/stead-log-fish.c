/* stead-log-fish.c - the log and the weighings of a group of fish, as rows for a spreadsheet.
 *
 * The headings are those that an import knows, so what goes out comes in again.
 */
#include "config.h"

#include "answer/stead-log-private.h"
#include "store/stead-farm-repo.h"
#include "store/stead-fish-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Six digits: what was weighed in the other system's units comes back as it was. */
#define DIGITS 6

/* What both exports begin with. */
typedef struct
{
  SteadFarm  *farm;
  SteadFish  *group;
  GHashTable *people;
} Facts;

static void
facts_clear (Facts *facts)
{
  g_clear_pointer (&facts->farm, stead_farm_free);
  g_clear_pointer (&facts->group, stead_fish_free);
  g_clear_pointer (&facts->people, g_hash_table_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Facts, facts_clear)

static gboolean
read_facts (SteadStore  *store,
            gint64       fish_id,
            Facts       *facts,
            GError     **error)
{
  facts->farm = stead_farm_repo_get (store, error);
  facts->group = facts->farm != NULL ? stead_fish_repo_get (store, fish_id, error) : NULL;
  facts->people = facts->group != NULL ? stead_log_people (store, error) : NULL;
  return facts->people != NULL;
}

static SteadLogAnswer *
begin (const Facts *facts,
       char        *title,
       SteadStore  *store)
{
  const SteadBatch *batch = &facts->group->batch;
  SteadLogAnswer *self = stead_log_new (title, facts->farm->currency, store);

  self->from = batch->started_on;
  self->to = batch->ended_on != STEAD_DAY_NONE ? batch->ended_on : self->today;
  return self;
}

/* @title: (transfer full) */
static void
add_measure (SteadLogAnswer *self,
             char           *title,
             gboolean        sum)
{
  stead_log_add_column (self, title, STEAD_CELL_NUMBER, DIGITS, sum);
}

static void
add_last_columns (SteadLogAnswer *self)
{
  stead_log_add_column (self, g_strdup (C_("column of a log", "Left out")), STEAD_CELL_TEXT, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Note")), STEAD_CELL_TEXT, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Person")), STEAD_CELL_TEXT, 0, FALSE);
}

static const char *
yes_if (gboolean yes)
{
  return yes ? C_("left out of a log", "yes") : NULL;
}

/* --- the log ------------------------------------------------------------------------ */

enum
{
  LOG_DAY,
  LOG_FISH,
  LOG_FEED,
  LOG_REFUSED,
  LOG_WATER,
  LOG_DEATHS,
  LOG_CULLED,
  LOG_REASON,
  LOG_LEFT_OUT,
  LOG_NOTE,
  LOG_PERSON,
};

static void
add_log_columns (SteadLogAnswer  *self,
                 const SteadUnit *mass,
                 const SteadUnit *degrees)
{
  stead_log_add_column (self, g_strdup (C_("column of a log", "Date")), STEAD_CELL_DAY, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Fish")), STEAD_CELL_COUNT, 0, FALSE);
  add_measure (self, g_strdup_printf (_("Feed (%s)"), stead_unit_symbol (mass)), TRUE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Feed left")), STEAD_CELL_TEXT, 0, FALSE);
  /* Translators: column of a log; %s is a unit: "Temperature (°F)". */
  add_measure (self, g_strdup_printf (_("Temperature (%s)"), stead_unit_symbol (degrees)), FALSE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Died")), STEAD_CELL_COUNT, 0, TRUE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Culled")), STEAD_CELL_COUNT, 0, TRUE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Reason")), STEAD_CELL_TEXT, 0, FALSE);
  add_last_columns (self);
}

static gboolean
add_log_row (SteadLogAnswer        *self,
             SteadStore            *store,
             const Facts           *facts,
             const SteadFishEntry  *entry,
             const SteadUnit       *mass,
             const SteadUnit       *degrees,
             GError               **error)
{
  gint64 fish = stead_fish_repo_alive (store, entry->fish_id, entry->day, error);
  SteadLogCell *row;

  if (fish < 0)
    return FALSE;
  row = stead_log_add_row (self);
  row[LOG_DAY] = stead_log_whole (entry->day, TRUE);
  row[LOG_FISH] = stead_log_whole (fish, TRUE);
  row[LOG_FEED] = stead_log_number (stead_quantity_from_base (entry->feed_kg, mass));
  row[LOG_REFUSED] = stead_log_text (yes_if (entry->refused));
  row[LOG_WATER] = stead_log_number (stead_quantity_from_base (entry->water_c, degrees));
  row[LOG_DEATHS] = stead_log_whole (entry->deaths, TRUE);
  row[LOG_CULLED] = stead_log_whole (entry->culled, TRUE);
  row[LOG_REASON] = stead_log_text (entry->reason);
  row[LOG_LEFT_OUT] = stead_log_text (yes_if (entry->left_out));
  row[LOG_NOTE] = stead_log_text (entry->note);
  row[LOG_PERSON] = stead_log_text (g_hash_table_lookup (facts->people, &entry->person_id));
  return TRUE;
}

SteadLogAnswer *
stead_log_answer_fish (SteadStore  *store,
                       gint64       fish_id,
                       GError     **error)
{
  g_auto(Facts) facts = { 0 };
  g_autoptr(GPtrArray) entries = NULL;
  g_autoptr(SteadLogAnswer) self = NULL;
  const SteadUnit *mass, *degrees;

  if (!read_facts (store, fish_id, &facts, error))
    return NULL;
  entries = stead_fish_repo_entries (store, fish_id, facts.group->batch.started_on, stead_store_get_today (store),
                                     error);
  if (entries == NULL)
    return NULL;
  mass = stead_unit_default (STEAD_DIMENSION_MASS, facts.farm->units);
  degrees = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, facts.farm->units);
  self = begin (&facts, g_strdup_printf (_("Log of %s"), facts.group->batch.name), store);
  add_log_columns (self, mass, degrees);
  for (guint i = 0; i < entries->len; i++)
    if (!add_log_row (self, store, &facts, entries->pdata[i], mass, degrees, error))
      return NULL;
  return g_steal_pointer (&self);
}

/* --- the weighings --------------------------------------------------------------------- */

enum
{
  WEIGHED_DAY,
  WEIGHED_NUMBER,
  WEIGHED_TOTAL,
  WEIGHED_MEAN,
  WEIGHED_ONE,
  WEIGHED_LENGTH,
  WEIGHED_LEFT_OUT,
  WEIGHED_NOTE,
  WEIGHED_PERSON,
};

/* The units of a table of weighings. */
typedef struct
{
  const SteadUnit *all;
  const SteadUnit *one;
  const SteadUnit *length;
} Units;

static void
add_weighed_columns (SteadLogAnswer *self,
                     const Units    *units)
{
  stead_log_add_column (self, g_strdup (C_("column of a log", "Date")), STEAD_CELL_DAY, 0, FALSE);
  stead_log_add_column (self, g_strdup (C_("column of a log", "Number")), STEAD_CELL_COUNT, 0, FALSE);
  /* Translators: columns of a log; %s is a unit. */
  add_measure (self, g_strdup_printf (_("Total weight (%s)"), stead_unit_symbol (units->all)), FALSE);
  add_measure (self, g_strdup_printf (_("Mean weight (%s)"), stead_unit_symbol (units->one)), FALSE);
  add_measure (self, g_strdup_printf (_("Weight (%s)"), stead_unit_symbol (units->one)), FALSE);
  add_measure (self, g_strdup_printf (_("Length (%s)"), stead_unit_symbol (units->length)), FALSE);
  add_last_columns (self);
}

static void
fill_common (SteadLogCell        *row,
             const Facts         *facts,
             const SteadWeighing *weighing,
             const Units         *units,
             double               length_cm)
{
  row[WEIGHED_DAY] = stead_log_whole (weighing->day, TRUE);
  row[WEIGHED_LENGTH] = stead_log_number (stead_quantity_from_base (length_cm / 100, units->length));
  row[WEIGHED_LEFT_OUT] = stead_log_text (yes_if (weighing->left_out));
  row[WEIGHED_NOTE] = stead_log_text (weighing->note);
  row[WEIGHED_PERSON] = stead_log_text (g_hash_table_lookup (facts->people, &weighing->person_id));
}

static void
add_weighing (SteadLogAnswer      *self,
              const Facts         *facts,
              const SteadWeighing *weighing,
              const Units         *units)
{
  SteadLogCell *row;

  for (guint i = 0; weighing->single != NULL && i < weighing->single->len; i++)
    {
      const SteadWeighed *one = &g_array_index (weighing->single, SteadWeighed, i);

      row = stead_log_add_row (self);
      fill_common (row, facts, weighing, units, one->length_cm);
      row[WEIGHED_ONE] = stead_log_number (stead_quantity_from_base (one->weight_g / 1000, units->one));
    }
  if (weighing->single != NULL)
    return;
  row = stead_log_add_row (self);
  fill_common (row, facts, weighing, units, weighing->length_cm);
  row[WEIGHED_NUMBER] = stead_log_whole (weighing->n, TRUE);
  row[WEIGHED_TOTAL] = stead_log_number (stead_quantity_from_base (weighing->total_kg, units->all));
  row[WEIGHED_MEAN] = stead_log_number (stead_quantity_from_base (stead_weighing_mean_g (weighing) / 1000, units->one));
}

SteadLogAnswer *
stead_log_answer_weighings (SteadStore  *store,
                            gint64       fish_id,
                            GError     **error)
{
  g_auto(Facts) facts = { 0 };
  g_autoptr(GPtrArray) weighings = NULL;
  SteadLogAnswer *self;
  gboolean us;
  Units units;

  if (!read_facts (store, fish_id, &facts, error))
    return NULL;
  weighings = stead_weighing_repo_list (store, fish_id, error);
  if (weighings == NULL)
    return NULL;
  us = facts.farm->units == STEAD_UNITS_US;
  units = (Units) { stead_unit_by_id (us ? "lb" : "kg"), stead_unit_by_id (us ? "oz" : "g"),
                    stead_unit_by_id (us ? "in" : "cm") };
  /* Translators: title of an export; the group of fish. */
  self = begin (&facts, g_strdup_printf (_("Weighings of %s"), facts.group->batch.name), store);
  add_weighed_columns (self, &units);
  for (guint i = 0; i < weighings->len; i++)
    add_weighing (self, &facts, weighings->pdata[i], &units);
  return self;
}
