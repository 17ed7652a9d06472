/* stead-count-repo.c - counts of the store room: what should be there, and what is. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-count-repo.h"
#include "store/stead-item-private.h"
#include "store/stead-repo-private.h"

static void
line_free (gpointer data)
{
  SteadCountLine *line = data;

  g_free (line->lot_code);
  g_free (line->item_name);
  g_free (line->place_name);
  g_free (line->reason);
  g_free (line);
}

SteadStockCount *
stead_stock_count_new ( void)
{
  SteadStockCount *count = g_new0 (SteadStockCount, 1);

  count->day = STEAD_DAY_NONE;
  count->lines = g_ptr_array_new_with_free_func (line_free);
  return count;
}

void
stead_stock_count_free (SteadStockCount *count)
{
  if (count == NULL)
    return;
  g_free (count->note);
  g_ptr_array_unref (count->lines);
  g_free (count);
}

/* --- reading ------------------------------------------------------------------ */

static SteadCountLine *
line_from_row (SteadStmt *stmt)
{
  SteadCountLine *line = g_new0 (SteadCountLine, 1);

  line->lot_id = sqlite3_column_int64 (stmt, 0);
  line->lot_code = stead_stmt_text (stmt, 1);
  line->item_name = stead_stmt_text (stmt, 2);
  line->unit = stead_item_unit (stmt, 3);
  line->place_name = stead_stmt_text (stmt, 4);
  line->best_by = stead_stmt_day (stmt, 5);
  line->expected_base = MAX (0, sqlite3_column_double (stmt, 6));
  line->counted_base = NAN;
  return line;
}

/* What moved after the day is taken back; 1e-7 is STEAD_AMOUNT_EPSILON. */
SteadStockCount *
stead_count_repo_sheet (SteadStore  *store,
                        gint64       place_id,
                        SteadDay     day,
                        GError     **error)
{
  static const char sql[] =
    "SELECT l.id, l.code, i.name, i.unit, p.name, l.best_by, s.base - coalesce ((SELECT sum (m.quantity_base)"
    "   FROM movement m WHERE m.lot_id = l.id AND m.day > ?2), 0) AS held"
    " FROM lot l JOIN lot_stock s ON s.lot_id = l.id JOIN item i ON i.id = l.item_id"
    " LEFT JOIN place p ON p.id = l.place_id"
    " WHERE l.day <= ?2 AND (?1 = -1 OR coalesce (l.place_id, 0) = ?1) AND held > 1e-7"
    " ORDER BY i.name, l.item_id, l.day, l.id";
  g_autoptr(SteadStockCount) count = stead_stock_count_new ();
  g_autoptr(SteadStmt) stmt = NULL;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, place_id);
  sqlite3_bind_int (stmt, 2, day);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    g_ptr_array_add (count->lines, line_from_row (stmt));
  count->day = day;
  return found == 0 ? g_steal_pointer (&count) : NULL;
}

static gpointer
count_from_row (SteadStmt *stmt)
{
  SteadStockCount *count = stead_stock_count_new ();

  count->id = sqlite3_column_int64 (stmt, 0);
  count->day = stead_stmt_day (stmt, 1);
  count->person_id = sqlite3_column_int64 (stmt, 2);
  count->second_id = sqlite3_column_int64 (stmt, 3);
  count->note = stead_stmt_text (stmt, 4);
  return count;
}

/* Lines come in the same order as the counts that they belong to. */
static gboolean
read_lines (SteadStore  *store,
            GPtrArray   *counts,
            GError     **error)
{
  static const char sql[] =
    "SELECT l.id, l.code, i.name, i.unit, p.name, l.best_by, cl.expected_base, cl.counted_base, m.reason,"
    " coalesce (cl.movement_id, 0), coalesce (-m.cost_cents, 0), c.id FROM stock_count c"
    " JOIN stock_count_line cl ON cl.count_id = c.id JOIN lot l ON l.id = cl.lot_id JOIN item i ON i.id = l.item_id"
    " LEFT JOIN place p ON p.id = l.place_id LEFT JOIN movement m ON m.id = cl.movement_id"
    " ORDER BY c.day DESC, c.id DESC, i.name, l.item_id, l.day, l.id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  guint at = 0;
  int found;

  if (stmt == NULL)
    return FALSE;
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadCountLine *line = line_from_row (stmt);
      gint64 id = sqlite3_column_int64 (stmt, 11);

      line->counted_base = sqlite3_column_double (stmt, 7);
      line->reason = stead_stmt_text (stmt, 8);
      line->movement_id = sqlite3_column_int64 (stmt, 9);
      line->cents = sqlite3_column_int64 (stmt, 10);
      while (at < counts->len && ((SteadStockCount *) counts->pdata[at])->id != id)
        at++;
      if (at < counts->len)
        g_ptr_array_add (((SteadStockCount *) counts->pdata[at])->lines, line);
      else
        line_free (line);
    }
  return found == 0;
}

GPtrArray *
stead_count_repo_list (SteadStore  *store,
                       GError     **error)
{
  static const char sql[] = "SELECT id, day, person_id, second_id, note FROM stock_count ORDER BY day DESC, id DESC";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(GPtrArray) counts = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  counts = stead_repo_rows (store, stmt, count_from_row, (GDestroyNotify) stead_stock_count_free, error);
  return counts != NULL && read_lines (store, counts, error) ? g_steal_pointer (&counts) : NULL;
}

/* --- checking ------------------------------------------------------------------- */

static gboolean
check_count (SteadStore             *store,
             const SteadStockCount  *count,
             GError                **error)
{
  gboolean any = FALSE;

  if (count->day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (count->day > stead_store_get_today (store))
    return stead_repo_refuse (error, _("What will be there on a day to come cannot be counted. Enter a day up to today."));
  if (count->person_id == 0 || count->second_id == 0)
    return stead_repo_refuse (error, _("Two people count the store room. Choose both of them."));
  if (count->person_id == count->second_id)
    return stead_repo_refuse (error, _("Two people count the store room. Choose a second person."));
  for (guint i = 0; i < count->lines->len; i++)
    any |= !isnan (((const SteadCountLine *) count->lines->pdata[i])->counted_base);
  if (!any)
    return stead_repo_refuse (error, _("Nothing is counted yet. Enter how much is there of at least one lot."));
  return stead_repo_check_note (count->note, error);
}

static gboolean
check_line (const SteadCountLine  *line,
            double                 difference,
            GError               **error)
{
  g_autofree char *reason = stead_repo_tidy (line->reason);
  g_autofree char *expected = NULL;
  g_autofree char *counted = NULL;

  if (!(line->counted_base >= 0 && line->counted_base <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Lot %s (%s): what was counted must be 0 or more. Check the number."),
                              line->lot_code, line->item_name);
  if (!(fabs (difference) > STEAD_AMOUNT_EPSILON) || reason != NULL)
    return TRUE;
  expected = stead_quantity_format (line->expected_base, line->unit);
  counted = stead_quantity_format (line->counted_base, line->unit);
  return stead_repo_refuse (error, _("Lot %s (%s): %s should be there, %s was counted. Write down why."),
                            line->lot_code, line->item_name, expected, counted);
}

/* --- saving ---------------------------------------------------------------------- */

static gboolean
read_expected (SteadStore      *store,
               SteadCountLine  *line,
               SteadDay         day,
               GError         **error)
{
  static const char sql[] = "SELECT coalesce (sum (quantity_base), 0) FROM movement WHERE lot_id = ?1 AND day <= ?2";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, line->lot_id);
  sqlite3_bind_int (stmt, 2, day);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  line->expected_base = MAX (0, sqlite3_column_double (stmt, 0));
  return TRUE;
}

/* The movement that the line just made. */
static gboolean
find_movement (SteadStore      *store,
               SteadCountLine  *line,
               GError         **error)
{
  static const char sql[] = "SELECT id, -cost_cents FROM movement WHERE lot_id = ?1 AND kind = 'counted'"
                            " ORDER BY id DESC LIMIT 1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, line->lot_id);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  line->movement_id = sqlite3_column_int64 (stmt, 0);
  line->cents = sqlite3_column_int64 (stmt, 1);
  return TRUE;
}

static gboolean
write_line (SteadStore             *store,
            const SteadStockCount  *count,
            SteadCountLine         *line,
            GError                **error)
{
  static const char sql[] = "INSERT INTO stock_count_line (count_id, lot_id, expected_base, counted_base, movement_id)"
                            " VALUES (?1, ?2, ?3, ?4, ?5)";
  g_autoptr(SteadStmt) stmt = NULL;
  double difference;

  if (!read_expected (store, line, count->day, error))
    return FALSE;
  difference = line->counted_base - line->expected_base;
  if (!check_line (line, difference, error))
    return FALSE;
  line->movement_id = line->cents = 0;
  if (fabs (difference) > STEAD_AMOUNT_EPSILON &&
      (!stead_lot_repo_adjust (store, line->lot_id, STEAD_MOVE_COUNTED, count->day, difference, line->reason,
                               count->person_id, error) ||
       !find_movement (store, line, error)))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, count->id);
  sqlite3_bind_int64 (stmt, 2, line->lot_id);
  sqlite3_bind_double (stmt, 3, line->expected_base);
  sqlite3_bind_double (stmt, 4, line->counted_base);
  stead_stmt_bind_id (stmt, 5, line->movement_id);
  return stead_store_run (store, stmt, error);
}

static gboolean
write_head (SteadStore       *store,
            SteadStockCount  *count,
            GError          **error)
{
  static const char sql[] = "INSERT INTO stock_count (day, person_id, second_id, note) VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_day (stmt, 1, count->day);
  stead_stmt_bind_id (stmt, 2, count->person_id);
  stead_stmt_bind_id (stmt, 3, count->second_id);
  stead_repo_bind_tidy (stmt, 4, count->note);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  count->id = stead_store_last_id (store);
  return TRUE;
}

gboolean
stead_count_repo_save (SteadStore       *store,
                       SteadStockCount  *count,
                       GError          **error)
{
  SteadGivenIds *ids;
  gboolean done;

  g_return_val_if_fail (STEAD_IS_STORE (store) && count != NULL && count->id == 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  ids = stead_given_ids_new (&count->id);
  done = check_count (store, count, error) && write_head (store, count, error);
  for (guint i = 0; done && i < count->lines->len; i++)
    {
      SteadCountLine *line = count->lines->pdata[i];

      done = isnan (line->counted_base) || write_line (store, count, line, error);
    }
  return stead_given_ids_end (ids, done);
}
