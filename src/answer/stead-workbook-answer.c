/* stead-workbook-answer.c - the farm's records as sheets. */
#include "config.h"

#include "answer/stead-log-cash.h"
#include "answer/stead-log-private.h"
#include "answer/stead-season-answer.h"
#include "answer/stead-workbook-answer.h"
#include "core/stead-quantity.h"
#include "store/stead-farm-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MINUTES_AN_HOUR 60

typedef struct
{
  SteadStore *store;
  SteadFarm  *farm;
  gboolean    names;
  SteadDay    from, to;
} Maker;

void
stead_workbook_answer_free (SteadWorkbookAnswer *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->sheets);
  g_free (self);
}

char *
stead_words_role_number (const char *role,
                         gint64      id)
{
  if (g_strcmp0 (role, "advisor") == 0)
    return g_strdup_printf (_("Advisor %d"), (int) id);
  if (g_strcmp0 (role, "helper") == 0)
    return g_strdup_printf (_("Helper %d"), (int) id);
  return g_strdup_printf (_("Student %d"), (int) id);
}

static void
column (SteadLogAnswer *log,
        const char     *title,
        SteadCellKind   kind,
        int             digits,
        gboolean        sum)
{
  stead_log_add_column (log, g_strdup (title), kind, digits, sum);
}

static SteadLogAnswer *
sheet_new (const Maker *maker,
           const char  *title)
{
  return stead_log_new (g_strdup (title), maker->farm->currency, maker->store);
}

static SteadLogCell
day_cell (SteadDay day)
{
  return stead_log_whole (day, day != STEAD_DAY_NONE);
}

static SteadLogCell
person_cell (const Maker *maker,
             const char  *name,
             const char  *role,
             gint64       id)
{
  g_autofree char *number = stead_words_role_number (role, id);

  return stead_log_text (maker->names ? name : number);
}

/* --- the sheets ------------------------------------------------------------------- */

static SteadLogAnswer *
make_hours (const Maker  *maker,
            GError      **error)
{
  g_autoptr(GPtrArray) rows = stead_months_repo_hours (maker->store, maker->from, maker->to, error);
  SteadLogAnswer *log;

  if (rows == NULL)
    return NULL;
  log = sheet_new (maker, _("Hours"));
  column (log, _("Day"), STEAD_CELL_DAY, 0, FALSE);
  column (log, _("Who"), STEAD_CELL_TEXT, 0, FALSE);
  column (log, _("What"), STEAD_CELL_TEXT, 0, FALSE);
  /* Minutes, since hours with two digits do not add up to the hours that were worked. */
  column (log, _("Minutes"), STEAD_CELL_NUMBER, 1, TRUE);
  column (log, _("Paid"), STEAD_CELL_TEXT, 0, FALSE);
  column (log, _("Entered late"), STEAD_CELL_TEXT, 0, FALSE);
  column (log, _("Checked"), STEAD_CELL_TEXT, 0, FALSE);
  for (guint i = 0; i < rows->len; i++)
    {
      const SteadHoursRow *row = rows->pdata[i];
      SteadLogCell *cells = stead_log_add_row (log);

      cells[0] = day_cell (row->day);
      cells[1] = person_cell (maker, row->name, row->role, row->person_id);
      cells[2] = stead_log_text (row->duty);
      cells[3] = stead_log_number (row->minutes);
      cells[4] = stead_log_text (row->paid ? _("yes") : _("no"));
      cells[5] = stead_log_text (row->late ? _("yes") : _("no"));
      cells[6] = stead_log_text (row->checked ? _("yes") : _("no"));
    }
  return log;
}

static SteadLogAnswer *
make_money (const Maker  *maker,
            GError      **error)
{
  SteadLogAnswer *log = stead_log_answer_cash (maker->store, 0, maker->from, maker->to, error);

  if (log == NULL)
    return NULL;
  g_free (log->title);
  log->title = g_strdup (_("Money"));
  if (!maker->names)
    stead_log_answer_cash_hide_names (log);
  return log;
}

static SteadLogAnswer *
make_stock (const Maker  *maker,
            GError      **error)
{
  g_autoptr(GPtrArray) rows = stead_months_repo_stock (maker->store, error);
  SteadLogAnswer *log;

  if (rows == NULL)
    return NULL;
  log = sheet_new (maker, _("Stock"));
  column (log, _("Item"), STEAD_CELL_TEXT, 0, FALSE);
  column (log, _("Lot"), STEAD_CELL_TEXT, 0, FALSE);
  column (log, _("Since"), STEAD_CELL_DAY, 0, FALSE);
  column (log, _("Best before"), STEAD_CELL_DAY, 0, FALSE);
  column (log, _("Amount"), STEAD_CELL_NUMBER, 3, FALSE);
  column (log, _("Unit"), STEAD_CELL_TEXT, 0, FALSE);
  column (log, _("Value"), STEAD_CELL_MONEY, 0, TRUE);
  for (guint i = 0; i < rows->len; i++)
    {
      const SteadStockRow *row = rows->pdata[i];
      const SteadUnit *unit = stead_unit_by_id (row->unit);
      SteadLogCell *cells = stead_log_add_row (log);

      cells[0] = stead_log_text (row->item);
      cells[1] = stead_log_text (row->code);
      cells[2] = day_cell (row->day);
      cells[3] = day_cell (row->best_by);
      cells[4] = stead_log_number (unit != NULL ? stead_quantity_from_base (row->base, unit) : row->base);
      cells[5] = stead_log_text (unit != NULL ? stead_unit_symbol (unit) : row->unit);
      cells[6] = stead_log_whole (row->cents, TRUE);
    }
  return log;
}

static SteadLogAnswer *
make_production (const Maker  *maker,
                 GError      **error)
{
  g_autoptr(GPtrArray) months = stead_months_repo_list (maker->store, maker->from, maker->to, error);
  const SteadUnit *unit = stead_unit_by_id (maker->farm->units == STEAD_UNITS_US ? "lb" : "kg");
  SteadLogAnswer *log;

  if (months == NULL)
    return NULL;
  log = sheet_new (maker, _("Production"));
  column (log, _("Month"), STEAD_CELL_TEXT, 0, FALSE);
  column (log, _("Eggs"), STEAD_CELL_COUNT, 0, TRUE);
  stead_log_add_column (log, g_strdup_printf (_("Fish (%s)"), stead_unit_symbol (unit)), STEAD_CELL_NUMBER, 1, TRUE);
  stead_log_add_column (log, g_strdup_printf (_("Crops (%s)"), stead_unit_symbol (unit)), STEAD_CELL_NUMBER, 1, TRUE);
  column (log, _("Jars and packs of the kitchen"), STEAD_CELL_COUNT, 0, TRUE);
  column (log, _("Money in"), STEAD_CELL_MONEY, 0, TRUE);
  column (log, _("Money out"), STEAD_CELL_MONEY, 0, TRUE);
  column (log, _("Hours"), STEAD_CELL_NUMBER, 1, TRUE);
  for (guint i = 0; i < months->len; i++)
    {
      const SteadMonth *month = months->pdata[i];
      SteadLogCell *cells = stead_log_add_row (log);
      g_autofree char *name = g_strdup_printf ("%04d-%02d", month->year, month->month);

      cells[0] = stead_log_text (name);
      cells[1] = stead_log_whole (month->eggs, TRUE);
      cells[2] = stead_log_number (stead_quantity_from_base (month->fish_kg, unit));
      cells[3] = stead_log_number (stead_quantity_from_base (month->crop_kg, unit));
      cells[4] = stead_log_whole (llround (month->jars), TRUE);
      cells[5] = stead_log_whole (month->in_cents, TRUE);
      cells[6] = stead_log_whole (month->out_cents, TRUE);
      cells[7] = stead_log_number (month->minutes / MINUTES_AN_HOUR);
    }
  return log;
}

static SteadLogAnswer *
make_sales (const Maker  *maker,
            GError      **error)
{
  g_autoptr(SteadSeasonAnswer) season = stead_season_answer_new (maker->store, error);
  SteadLogAnswer *log;

  if (season == NULL)
    return NULL;
  log = sheet_new (maker, _("Sales"));
  column (log, _("Day"), STEAD_CELL_DAY, 0, FALSE);
  column (log, _("Sale day"), STEAD_CELL_TEXT, 0, FALSE);
  column (log, _("Place"), STEAD_CELL_TEXT, 0, FALSE);
  column (log, _("State"), STEAD_CELL_TEXT, 0, FALSE);
  column (log, _("Units"), STEAD_CELL_NUMBER, 1, TRUE);
  column (log, _("Takings"), STEAD_CELL_MONEY, 0, TRUE);
  column (log, _("Over or short"), STEAD_CELL_MONEY, 0, TRUE);
  for (guint i = season->days->len; i > 0; i--)
    {
      const SteadSeasonDay *day = season->days->pdata[i - 1];
      SteadLogCell *cells = stead_log_add_row (log);

      cells[0] = day_cell (day->sale->day);
      cells[1] = stead_log_text (day->sale->name);
      cells[2] = stead_log_text (day->sale->location);
      cells[3] = stead_log_text (stead_sale_stage_name (day->stage));
      cells[4] = stead_log_number (day->units);
      cells[5] = stead_log_whole (day->takings_cents, TRUE);
      cells[6] = stead_log_whole (day->over_cents, TRUE);
    }
  return log;
}

static SteadLogAnswer *
make_people (const Maker  *maker,
             GError      **error)
{
  g_autoptr(GPtrArray) rows = stead_months_repo_people (maker->store, maker->from, maker->to, error);
  SteadLogAnswer *log;

  if (rows == NULL)
    return NULL;
  log = sheet_new (maker, _("People"));
  column (log, _("Number"), STEAD_CELL_COUNT, 0, FALSE);
  column (log, _("Who"), STEAD_CELL_TEXT, 0, FALSE);
  column (log, _("Class year"), STEAD_CELL_TEXT, 0, FALSE);
  column (log, _("Left on"), STEAD_CELL_DAY, 0, FALSE);
  /* Minutes, since hours with two digits do not add up to the hours that were worked. */
  column (log, _("Minutes"), STEAD_CELL_NUMBER, 1, TRUE);
  for (guint i = 0; i < rows->len; i++)
    {
      const SteadPersonRow *row = rows->pdata[i];
      SteadLogCell *cells = stead_log_add_row (log);
      g_autofree char *year = row->class_year > 0 ? g_strdup_printf ("%d", row->class_year) : NULL;

      cells[0] = stead_log_whole (row->id, TRUE);
      cells[1] = person_cell (maker, row->name, row->role, row->id);
      cells[2] = stead_log_text (year);
      cells[3] = day_cell (row->left_on);
      cells[4] = stead_log_number (row->minutes);
    }
  return log;
}

gboolean
stead_workbook_school_year (SteadStore  *store,
                            SteadDay    *out_from,
                            GError     **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);

  if (farm == NULL)
    return FALSE;
  *out_from = stead_school_year_start (stead_store_get_today (store), farm->school_year_month, farm->school_year_mday);
  return TRUE;
}

SteadWorkbookAnswer *
stead_workbook_answer_new (SteadStore  *store,
                           gboolean     names,
                           GError     **error)
{
  static SteadLogAnswer *(* const makers[]) (const Maker *, GError **) = {
    make_hours, make_money, make_stock, make_production, make_sales, make_people,
  };
  g_autoptr(SteadWorkbookAnswer) self = g_new0 (SteadWorkbookAnswer, 1);
  g_autoptr(SteadFarm) farm = NULL;
  Maker maker = { .store = store, .names = names };

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->sheets = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_log_answer_free);
  farm = maker.farm = stead_farm_repo_get (store, error);
  if (farm == NULL || !stead_workbook_school_year (store, &self->from, error))
    return NULL;
  maker.from = self->from;
  maker.to = self->to = stead_store_get_today (store);
  self->production = 3;
  for (gsize i = 0; i < G_N_ELEMENTS (makers); i++)
    {
      SteadLogAnswer *log = makers[i] (&maker, error);

      if (log == NULL)
        return NULL;
      g_ptr_array_add (self->sheets, log);
    }
  return g_steal_pointer (&self);
}
