/* stead-months-repo.c - the farm month by month. */
#include "config.h"

#include "core/stead-quantity.h"
#include "store/stead-months-repo.h"
#include "store/stead-repo-private.h"

#define LATE_DAYS 7

void
stead_hours_row_free (SteadHoursRow *row)
{
  if (row == NULL)
    return;
  g_free (row->name);
  g_free (row->role);
  g_free (row->duty);
  g_free (row);
}

void
stead_stock_row_free (SteadStockRow *row)
{
  if (row == NULL)
    return;
  g_free (row->item);
  g_free (row->code);
  g_free (row->unit);
  g_free (row);
}

void
stead_person_row_free (SteadPersonRow *row)
{
  if (row == NULL)
    return;
  g_free (row->name);
  g_free (row->role);
  g_free (row);
}

/* --- months -------------------------------------------------------------------- */

static int
month_number (SteadDay day)
{
  int year, month;

  stead_day_split (day, &year, &month, NULL);
  return year * 12 + month - 1;
}

static SteadMonth *
month_of (GPtrArray *months,
          SteadDay   day)
{
  const SteadMonth *first = months->pdata[0];
  int at = month_number (day) - (first->year * 12 + first->month - 1);

  return at >= 0 && at < (int) months->len ? months->pdata[at] : NULL;
}

typedef void (*AddFunc) (SteadMonth *month, SteadStmt *stmt);

/* @sql: a literal with the day in its first column, from ?1 to ?2. */
static gboolean
add_up (SteadStore  *store,
        const char  *sql,
        SteadDay     from,
        SteadDay     to,
        GPtrArray   *months,
        AddFunc      add,
        GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int got = 0;

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_day (stmt, 1, from);
  stead_stmt_bind_day (stmt, 2, to);
  while ((got = stead_store_step (store, stmt, error)) == 1)
    {
      SteadMonth *month = month_of (months, stead_stmt_day (stmt, 0));

      if (month != NULL)
        add (month, stmt);
    }
  return got == 0;
}

static void
add_eggs (SteadMonth *month,
          SteadStmt  *stmt)
{
  month->eggs += sqlite3_column_int64 (stmt, 1);
}

static void
add_fish (SteadMonth *month,
          SteadStmt  *stmt)
{
  month->fish_kg += sqlite3_column_double (stmt, 1);
}

/* Kilograms of a crop, pieces of the kitchen; other measures do not add up. */
static void
add_made (SteadMonth *month,
          SteadStmt  *stmt)
{
  const SteadUnit *unit = stead_unit_by_id ((const char *) sqlite3_column_text (stmt, 2));
  gboolean crop = g_strcmp0 ((const char *) sqlite3_column_text (stmt, 1), "crop") == 0;

  if (unit == NULL)
    return;
  if (crop && unit->dimension == STEAD_DIMENSION_MASS)
    month->crop_kg += sqlite3_column_double (stmt, 3);
  else if (!crop && unit->dimension == STEAD_DIMENSION_COUNT)
    month->jars += sqlite3_column_double (stmt, 3);
}

static void
add_money (SteadMonth *month,
           SteadStmt  *stmt)
{
  gint64 cents = sqlite3_column_int64 (stmt, 1);

  if (cents >= 0)
    month->in_cents += cents;
  else
    month->out_cents -= cents;
}

static void
add_work (SteadMonth *month,
          SteadStmt  *stmt)
{
  month->minutes += sqlite3_column_double (stmt, 1);
}

static GPtrArray *
empty_months (SteadDay from,
              SteadDay to)
{
  GPtrArray *months = g_ptr_array_new_with_free_func (g_free);

  for (int at = month_number (from); at <= month_number (to); at++)
    {
      SteadMonth *month = g_new0 (SteadMonth, 1);

      month->year = at / 12;
      month->month = at % 12 + 1;
      g_ptr_array_add (months, month);
    }
  return months;
}

GPtrArray *
stead_months_repo_list (SteadStore  *store,
                        SteadDay     from,
                        SteadDay     to,
                        GError     **error)
{
  /* By way of the batches, whose rows lie by day: the years before are not walked through. */
  static const char eggs_sql[] =
    "SELECT e.day, e.eggs FROM batch b CROSS JOIN batch_entry e ON e.batch_id = b.id"
    " WHERE e.day BETWEEN ?1 AND ?2 AND e.eggs > 0 ORDER BY b.id, e.day";
  static const char fish_sql[] =
    "SELECT h.day, coalesce (h.live_kg, (SELECT sum (m.quantity_base) FROM movement m"
    " WHERE m.lot_id = h.lot_id AND m.kind = 'made'), 0)"
    " FROM batch b CROSS JOIN harvest h ON h.batch_id = b.id"
    " WHERE b.kind = 'fish' AND h.day BETWEEN ?1 AND ?2 ORDER BY h.id";
  static const char made_sql[] =
    "SELECT m.day, b.kind, i.unit, m.quantity_base FROM movement m JOIN lot l ON l.id = m.lot_id"
    " JOIN batch b ON b.id = l.batch_id JOIN item i ON i.id = l.item_id"
    " WHERE m.kind = 'made' AND b.kind IN ('crop', 'kitchen') AND m.day BETWEEN ?1 AND ?2 ORDER BY m.id";
  static const char money_sql[] =
    "SELECT day, cents FROM cash_line WHERE pair_id IS NULL AND day BETWEEN ?1 AND ?2 ORDER BY id";
  static const char work_sql[] =
    "SELECT day, minutes FROM work_span w WHERE day BETWEEN ?1 AND ?2"
    " AND NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id) ORDER BY id";
  g_autoptr(GPtrArray) months = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  g_return_val_if_fail (from <= to, NULL);
  months = empty_months (from, to);
  if (!add_up (store, eggs_sql, from, to, months, add_eggs, error) ||
      !add_up (store, fish_sql, from, to, months, add_fish, error) ||
      !add_up (store, made_sql, from, to, months, add_made, error) ||
      !add_up (store, money_sql, from, to, months, add_money, error) ||
      !add_up (store, work_sql, from, to, months, add_work, error))
    return NULL;
  return g_steal_pointer (&months);
}

/* --- rows ------------------------------------------------------------------------ */

static gpointer
hours_from_row (SteadStmt *stmt)
{
  SteadHoursRow *row = g_new0 (SteadHoursRow, 1);

  row->day = stead_stmt_day (stmt, 0);
  row->person_id = sqlite3_column_int64 (stmt, 1);
  row->name = stead_stmt_text (stmt, 2);
  row->role = stead_stmt_text (stmt, 3);
  row->duty = stead_stmt_text (stmt, 4);
  row->minutes = sqlite3_column_double (stmt, 5);
  row->paid = sqlite3_column_int (stmt, 6) != 0;
  row->late = sqlite3_column_int (stmt, 7) - row->day > LATE_DAYS;
  row->checked = sqlite3_column_type (stmt, 8) != SQLITE_NULL;
  return row;
}

GPtrArray *
stead_months_repo_hours (SteadStore  *store,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  static const char sql[] =
    "SELECT w.day, w.person_id, p.name, p.role, w.duty, w.minutes, w.paid, w.entered_on, w.checked_on"
    " FROM work_span w JOIN person p ON p.id = w.person_id WHERE w.day BETWEEN ?1 AND ?2"
    " AND NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id) ORDER BY w.day, w.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  stead_stmt_bind_day (stmt, 1, from);
  stead_stmt_bind_day (stmt, 2, to);
  return stead_repo_rows (store, stmt, hours_from_row, (GDestroyNotify) stead_hours_row_free, error);
}

static gpointer
stock_from_row (SteadStmt *stmt)
{
  SteadStockRow *row = g_new0 (SteadStockRow, 1);

  row->item = stead_stmt_text (stmt, 0);
  row->code = stead_stmt_text (stmt, 1);
  row->unit = stead_stmt_text (stmt, 2);
  row->day = stead_stmt_day (stmt, 3);
  row->best_by = stead_stmt_day (stmt, 4);
  row->base = sqlite3_column_double (stmt, 5);
  row->cents = sqlite3_column_int64 (stmt, 6);
  return row;
}

GPtrArray *
stead_months_repo_stock (SteadStore  *store,
                         GError     **error)
{
  static const char sql[] =
    "SELECT i.name, l.code, i.unit, l.day, l.best_by, s.base, s.cents FROM lot l JOIN item i ON i.id = l.item_id"
    " JOIN lot_stock s ON s.lot_id = l.id WHERE s.base > 1e-7 ORDER BY i.name, l.day, l.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL ? stead_repo_rows (store, stmt, stock_from_row, (GDestroyNotify) stead_stock_row_free, error) : NULL;
}

static gpointer
person_from_row (SteadStmt *stmt)
{
  SteadPersonRow *row = g_new0 (SteadPersonRow, 1);

  row->id = sqlite3_column_int64 (stmt, 0);
  row->name = stead_stmt_text (stmt, 1);
  row->role = stead_stmt_text (stmt, 2);
  row->class_year = sqlite3_column_int (stmt, 3);
  row->left_on = stead_stmt_day (stmt, 4);
  row->minutes = sqlite3_column_double (stmt, 5);
  return row;
}

GPtrArray *
stead_months_repo_people (SteadStore  *store,
                          SteadDay     from,
                          SteadDay     to,
                          GError     **error)
{
  static const char sql[] =
    "SELECT p.id, p.name, p.role, p.class_year, p.left_on,"
    " coalesce ((SELECT sum (w.minutes) FROM work_span w WHERE w.person_id = p.id AND w.day BETWEEN ?1 AND ?2"
    " AND NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id)), 0) FROM person p ORDER BY p.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  stead_stmt_bind_day (stmt, 1, from);
  stead_stmt_bind_day (stmt, 2, to);
  return stead_repo_rows (store, stmt, person_from_row, (GDestroyNotify) stead_person_row_free, error);
}
