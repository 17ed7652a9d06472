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

typedef struct
{
  const char    *title;    /* untranslated; %s: the unit of weight */
  SteadCellKind  kind;
  int            digits;
  gboolean       sum;
} Column;

#define TEXT(title) { title, STEAD_CELL_TEXT, 0, FALSE }
#define DAY(title) { title, STEAD_CELL_DAY, 0, FALSE }
#define COUNT(title, sum) { title, STEAD_CELL_COUNT, 0, sum }
#define MONEY(title) { title, STEAD_CELL_MONEY, 0, TRUE }
#define NUMBER(title, digits, sum) { title, STEAD_CELL_NUMBER, digits, sum }

static const SteadUnit *
weight_unit (const Maker *maker)
{
  return stead_unit_by_id (maker->farm->units == STEAD_UNITS_US ? "lb" : "kg");
}

/* @title: untranslated, too */
static SteadLogAnswer *
sheet_new (const Maker  *maker,
           const char   *title,
           const Column *columns,
           gsize         n)
{
  SteadLogAnswer *log = stead_log_new (g_strdup (_(title)), maker->farm->currency, maker->store);

  for (gsize i = 0; i < n; i++)
    {
      GString *head = g_string_new (_(columns[i].title));

      g_string_replace (head, "%s", stead_unit_symbol (weight_unit (maker)), 1);
      stead_log_add_column (log, g_string_free (head, FALSE), columns[i].kind, columns[i].digits, columns[i].sum);
    }
  return log;
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
  static const Column columns[] = {
    /* Minutes, since hours with two digits do not add up to the hours that were worked. */
    DAY (N_("Day")), TEXT (N_("Who")), TEXT (N_("What")), NUMBER (N_("Minutes"), 1, TRUE), TEXT (N_("Paid")),
    TEXT (N_("Entered late")), TEXT (N_("Checked")),
  };
  g_autoptr(GPtrArray) rows = stead_months_repo_hours (maker->store, maker->from, maker->to, error);
  SteadLogAnswer *log;

  if (rows == NULL)
    return NULL;
  log = sheet_new (maker, N_("Hours"), columns, G_N_ELEMENTS (columns));
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
  static const Column columns[] = {
    TEXT (N_("Item")), TEXT (N_("Lot")), DAY (N_("Since")), DAY (N_("Best before")),
    NUMBER (N_("Amount"), 3, FALSE), TEXT (N_("Unit")), MONEY (N_("Value")),
  };
  g_autoptr(GPtrArray) rows = stead_months_repo_stock (maker->store, error);
  SteadLogAnswer *log;

  if (rows == NULL)
    return NULL;
  log = sheet_new (maker, N_("Stock"), columns, G_N_ELEMENTS (columns));
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
  static const Column columns[] = {
    TEXT (N_("Month")), COUNT (N_("Eggs"), TRUE), NUMBER (N_("Fish (%s)"), 1, TRUE),
    NUMBER (N_("Crops (%s)"), 1, TRUE), COUNT (N_("Jars and packs of the kitchen"), TRUE),
    MONEY (N_("Money in")), MONEY (N_("Money out")), NUMBER (N_("Hours"), 1, TRUE),
  };
  g_autoptr(GPtrArray) months = stead_months_repo_list (maker->store, maker->from, maker->to, error);
  const SteadUnit *unit = weight_unit (maker);
  SteadLogAnswer *log;

  if (months == NULL)
    return NULL;
  log = sheet_new (maker, N_("Production"), columns, G_N_ELEMENTS (columns));
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
  static const Column columns[] = {
    DAY (N_("Day")), TEXT (N_("Sale day")), TEXT (N_("Place")), TEXT (N_("State")),
    NUMBER (N_("Units"), 1, TRUE), MONEY (N_("Takings")), MONEY (N_("Over or short")),
  };
  g_autoptr(SteadSeasonAnswer) season = stead_season_answer_new (maker->store, error);
  SteadLogAnswer *log;

  if (season == NULL)
    return NULL;
  log = sheet_new (maker, N_("Sales"), columns, G_N_ELEMENTS (columns));
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
  static const Column columns[] = {
    /* Minutes, since hours with two digits do not add up to the hours that were worked. */
    COUNT (N_("Number"), FALSE), TEXT (N_("Who")), TEXT (N_("Class year")), DAY (N_("Left on")),
    NUMBER (N_("Minutes"), 1, TRUE),
  };
  g_autoptr(GPtrArray) rows = stead_months_repo_people (maker->store, maker->from, maker->to, error);
  SteadLogAnswer *log;

  if (rows == NULL)
    return NULL;
  log = sheet_new (maker, N_("People"), columns, G_N_ELEMENTS (columns));
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
