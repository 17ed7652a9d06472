/* stead-build-bill-repo.c - what people said about the bill of a build, and its work. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-build-bill-repo.h"
#include "store/stead-build-private.h"
#include "store/stead-repo-private.h"

const char * const stead_build_part_words[] = {
  "fence", "gate", "shelter", "ground", "cover", "animals", "other", NULL,
};

/* --- lines ------------------------------------------------------------------------ */

static void
quote_free (SteadBuildQuote *quote)
{
  g_free (quote->supplier);
  g_free (quote->note);
  g_free (quote);
}

SteadBuildLine *
stead_build_line_new (void)
{
  SteadBuildLine *line = g_new0 (SteadBuildLine, 1);

  line->position = -1;
  line->part = STEAD_BUILD_PART_OTHER;
  line->quantity = NAN;
  line->pack = 1;
  line->price_cents = -1;
  line->taxed = TRUE;
  line->quotes = g_ptr_array_new_with_free_func ((GDestroyNotify) quote_free);
  return line;
}

void
stead_build_line_free (SteadBuildLine *line)
{
  if (line == NULL)
    return;
  g_free (line->key);
  g_free (line->name);
  g_free (line->unit);
  g_free (line->giver);
  g_free (line->supplier);
  g_free (line->note);
  g_ptr_array_unref (line->quotes);
  g_free (line);
}

static gpointer
line_from_row (SteadStmt *stmt)
{
  SteadBuildLine *line = stead_build_line_new ();

  line->id = sqlite3_column_int64 (stmt, 0);
  line->build_id = sqlite3_column_int64 (stmt, 1);
  line->position = sqlite3_column_int (stmt, 2);
  line->part = (SteadBuildPart) stead_repo_word (stmt, 3, stead_build_part_words);
  line->key = stead_stmt_text (stmt, 4);
  line->name = stead_stmt_text (stmt, 5);
  line->quantity = stead_stmt_real (stmt, 6);
  line->unit = stead_stmt_text (stmt, 7);
  line->pack = sqlite3_column_double (stmt, 8);
  line->price_cents = sqlite3_column_type (stmt, 9) == SQLITE_NULL ? -1 : sqlite3_column_int64 (stmt, 9);
  line->given = sqlite3_column_int (stmt, 10);
  line->giver = stead_stmt_text (stmt, 11);
  line->taxed = sqlite3_column_int (stmt, 12);
  line->left_out = sqlite3_column_int (stmt, 13);
  line->receipt_line_id = sqlite3_column_int64 (stmt, 14);
  line->note = stead_stmt_text (stmt, 15);
  line->bought_cents = sqlite3_column_int64 (stmt, 16);
  line->supplier = stead_stmt_text (stmt, 17);
  return line;
}

static gpointer
quote_from_row (SteadStmt *stmt)
{
  SteadBuildQuote *quote = g_new0 (SteadBuildQuote, 1);

  quote->id = sqlite3_column_int64 (stmt, 0);
  quote->supplier = stead_stmt_text (stmt, 1);
  quote->day = stead_stmt_day (stmt, 2);
  quote->price_cents = sqlite3_column_int64 (stmt, 3);
  quote->note = stead_stmt_text (stmt, 4);
  return quote;
}

static gboolean
read_quotes (SteadStore      *store,
             SteadBuildLine  *line,
             GError         **error)
{
  static const char sql[] = "SELECT id, supplier, day, price_cents, note FROM build_quote WHERE line_id = ?1"
                            " ORDER BY price_cents, day DESC, id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  GPtrArray *quotes;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, line->id);
  quotes = stead_repo_rows (store, stmt, quote_from_row, (GDestroyNotify) quote_free, error);
  if (quotes == NULL)
    return FALSE;
  g_ptr_array_unref (line->quotes);
  line->quotes = quotes;
  return TRUE;
}

static GPtrArray *
list_lines (SteadStore  *store,
            gint64       build_id,
            GError     **error)
{
  static const char sql[] =
    "SELECT l.id, l.build_id, l.position, l.part, l.key, l.name, l.quantity, l.unit, l.pack, l.price_cents, l.given,"
    " l.giver, l.taxed, l.left_out, l.receipt_line_id, l.note, coalesce (r.cost_cents, 0), l.supplier"
    " FROM build_line l LEFT JOIN receipt_line r ON r.id = l.receipt_line_id"
    " WHERE l.build_id = ?1 ORDER BY l.position, l.id";

  return stead_repo_rows_of (store, sql, build_id, line_from_row, (GDestroyNotify) stead_build_line_free,
                             error);
}

GPtrArray *
stead_build_line_repo_list (SteadStore  *store,
                            gint64       build_id,
                            GError     **error)
{
  g_autoptr(GPtrArray) lines = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  lines = list_lines (store, build_id, error);
  if (lines == NULL)
    return NULL;
  for (guint i = 0; i < lines->len; i++)
    if (!read_quotes (store, lines->pdata[i], error))
      return NULL;
  return g_steal_pointer (&lines);
}

static gboolean
check_line (const SteadBuildLine  *line,
            GError               **error)
{
  if (line->key == NULL && !stead_repo_check_name (line->name, error))
    return FALSE;
  if (line->key == NULL && isnan (line->quantity))
    return stead_repo_refuse (error, _("Enter how many of it are needed."));
  if (!isnan (line->quantity) && !(line->quantity >= 0 && line->quantity <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The amount must be zero or more. Check the number."));
  if (!(line->pack > 0 && line->pack <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter how many are in a pack, above zero."));
  if (line->price_cents >= 0 && !stead_repo_check_cents (_("Price"), line->price_cents, error))
    return FALSE;
  if (line->given && line->price_cents < 0)
    return stead_repo_refuse (error, _("Something given has a fair value: what it would cost to buy. Enter it as the price."));
  return stead_repo_check_note (line->note, error);
}

static void
bind_line (SteadStmt            *stmt,
           const SteadBuildLine *line)
{
  sqlite3_bind_int64 (stmt, 1, line->build_id);
  sqlite3_bind_int (stmt, 2, line->position);
  stead_stmt_bind_text (stmt, 3, stead_build_part_words[line->part]);
  stead_stmt_bind_text (stmt, 4, line->key);
  stead_repo_bind_tidy (stmt, 5, line->name);
  stead_stmt_bind_real (stmt, 6, line->quantity);
  stead_repo_bind_tidy (stmt, 7, line->unit);
  sqlite3_bind_double (stmt, 8, line->pack);
  if (line->price_cents >= 0)
    sqlite3_bind_int64 (stmt, 9, line->price_cents);
  sqlite3_bind_int (stmt, 10, line->given != FALSE);
  stead_repo_bind_tidy (stmt, 11, line->given ? line->giver : NULL);
  sqlite3_bind_int (stmt, 12, line->taxed != FALSE);
  sqlite3_bind_int (stmt, 13, line->left_out != FALSE);
  stead_stmt_bind_id (stmt, 14, line->receipt_line_id);
  stead_repo_bind_tidy (stmt, 15, line->note);
  stead_repo_bind_tidy (stmt, 16, line->supplier);
}

gboolean
stead_build_line_repo_save (SteadStore      *store,
                            SteadBuildLine  *line,
                            GError         **error)
{
  static const char insert_sql[] =
    "INSERT INTO build_line (build_id, position, part, key, name, quantity, unit, pack, price_cents, given, giver,"
    " taxed, left_out, receipt_line_id, note, supplier)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16)";
  static const char update_sql[] =
    "UPDATE build_line SET build_id = ?1, position = ?2, part = ?3, key = ?4, name = ?5, quantity = ?6, unit = ?7,"
    " pack = ?8, price_cents = ?9, given = ?10, giver = ?11, taxed = ?12, left_out = ?13, receipt_line_id = ?14,"
    " note = ?15, supplier = ?16 WHERE id = ?17";
  static const char next_sql[] = "SELECT coalesce (max (position), -1) + 1 FROM build_line WHERE build_id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && line != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_line (line, error))
    return FALSE;
  if (line->position < 0)
    line->position = (int) stead_repo_count_id (store, next_sql, line->build_id, error);
  if (line->position < 0)
    return FALSE;
  stmt = stead_store_prepare (store, line->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  bind_line (stmt, line);
  return stead_repo_save_row (store, stmt, &line->id, error);
}

gboolean
stead_build_line_repo_delete (SteadStore  *store,
                              gint64       id,
                              GError     **error)
{
  static const char sql[] = "DELETE FROM build_line WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}

gboolean
stead_build_quote_repo_add (SteadStore       *store,
                            gint64            line_id,
                            SteadBuildQuote  *quote,
                            GError          **error)
{
  static const char sql[] =
    "INSERT INTO build_quote (line_id, supplier, day, price_cents, note) VALUES (?1, ?2, ?3, ?4, ?5)"
    " ON CONFLICT (line_id, supplier, day) DO UPDATE SET price_cents = excluded.price_cents, note = excluded.note";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && quote != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_repo_check_name (quote->supplier, error) ||
      !stead_repo_check_cents (_("Price"), quote->price_cents, error) || !stead_repo_check_note (quote->note, error))
    return FALSE;
  if (quote->day == STEAD_DAY_NONE || quote->day > stead_store_get_today (store))
    return stead_repo_refuse (error, _("A quote was given today or before. Check the date."));
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, line_id);
  stead_repo_bind_tidy (stmt, 2, quote->supplier);
  stead_stmt_bind_day (stmt, 3, quote->day);
  sqlite3_bind_int64 (stmt, 4, quote->price_cents);
  stead_repo_bind_tidy (stmt, 5, quote->note);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_build_quote_repo_choose (SteadStore  *store,
                               gint64       id,
                               GError     **error)
{
  static const char sql[] =
    "UPDATE build_line SET price_cents = q.price_cents, supplier = q.supplier FROM build_quote q"
    " WHERE q.id = ?1 AND build_line.id = q.line_id";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}

gboolean
stead_build_quote_repo_delete (SteadStore  *store,
                               gint64       id,
                               GError     **error)
{
  static const char sql[] = "DELETE FROM build_quote WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}

/* --- work ------------------------------------------------------------------------- */

SteadBuildPhase *
stead_build_phase_new (void)
{
  SteadBuildPhase *phase = g_new0 (SteadBuildPhase, 1);

  phase->position = -1;
  phase->from_day = phase->to_day = phase->done_on = STEAD_DAY_NONE;
  return phase;
}

void
stead_build_phase_free (SteadBuildPhase *phase)
{
  if (phase == NULL)
    return;
  g_free (phase->name);
  g_free (phase->task);
  g_free (phase->decided);
  g_free (phase->note);
  g_free (phase);
}

static gpointer
phase_from_row (SteadStmt *stmt)
{
  SteadBuildPhase *phase = stead_build_phase_new ();

  phase->id = sqlite3_column_int64 (stmt, 0);
  phase->build_id = sqlite3_column_int64 (stmt, 1);
  phase->position = sqlite3_column_int (stmt, 2);
  phase->name = stead_stmt_text (stmt, 3);
  phase->hours = sqlite3_column_double (stmt, 4);
  phase->from_day = stead_stmt_day (stmt, 5);
  phase->to_day = stead_stmt_day (stmt, 6);
  phase->done_on = stead_stmt_day (stmt, 7);
  phase->task = stead_stmt_text (stmt, 8);
  phase->age_years = sqlite3_column_int (stmt, 9);
  phase->decided = stead_stmt_text (stmt, 10);
  phase->note = stead_stmt_text (stmt, 11);
  phase->worked_h = sqlite3_column_double (stmt, 12) / 60;
  return phase;
}

GPtrArray *
stead_build_phase_repo_list (SteadStore  *store,
                             gint64       build_id,
                             GError     **error)
{
  /* A span that another one corrects does not count. */
  static const char sql[] =
    "SELECT p.id, p.build_id, p.position, p.name, p.hours, p.from_day, p.to_day, p.done_on, p.task, p.age_years,"
    " p.decided, p.note, (SELECT coalesce (sum (w.minutes), 0) FROM work_span w WHERE w.phase_id = p.id"
    "  AND NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id))"
    " FROM build_phase p WHERE p.build_id = ?1 ORDER BY p.position, p.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, build_id, phase_from_row, (GDestroyNotify) stead_build_phase_free,
                             error);
}

static gboolean
check_phase (const SteadBuildPhase  *phase,
             GError                **error)
{
  if (!stead_repo_check_name (phase->name, error) || !stead_repo_check_note (phase->note, error) ||
      !stead_repo_check_note (phase->decided, error))
    return FALSE;
  if (!(phase->hours >= 0 && phase->hours <= 100000))
    return stead_repo_refuse (error, _("Enter the hours of all who work on it together, zero or more."));
  if (phase->from_day != STEAD_DAY_NONE && phase->to_day != STEAD_DAY_NONE && phase->to_day < phase->from_day)
    return stead_repo_refuse (error, _("The work ends before it begins. Check its days."));
  if (phase->age_years != 0 && (phase->age_years < 5 || phase->age_years > 99))
    return stead_repo_refuse (error, _("Enter the full years of the youngest who works on it."));
  return TRUE;
}

static void
bind_phase (SteadStmt             *stmt,
            const SteadBuildPhase *phase)
{
  sqlite3_bind_int64 (stmt, 1, phase->build_id);
  sqlite3_bind_int (stmt, 2, phase->position);
  stead_repo_bind_tidy (stmt, 3, phase->name);
  sqlite3_bind_double (stmt, 4, phase->hours);
  stead_stmt_bind_day (stmt, 5, phase->from_day);
  stead_stmt_bind_day (stmt, 6, phase->to_day);
  stead_stmt_bind_day (stmt, 7, phase->done_on);
  stead_stmt_bind_text (stmt, 8, phase->task);
  if (phase->age_years != 0)
    sqlite3_bind_int (stmt, 9, phase->age_years);
  stead_repo_bind_tidy (stmt, 10, phase->decided);
  stead_repo_bind_tidy (stmt, 11, phase->note);
}

gboolean
stead_build_phase_repo_save (SteadStore       *store,
                             SteadBuildPhase  *phase,
                             GError          **error)
{
  static const char insert_sql[] =
    "INSERT INTO build_phase (build_id, position, name, hours, from_day, to_day, done_on, task, age_years, decided, note)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)";
  static const char update_sql[] =
    "UPDATE build_phase SET build_id = ?1, position = ?2, name = ?3, hours = ?4, from_day = ?5, to_day = ?6,"
    " done_on = ?7, task = ?8, age_years = ?9, decided = ?10, note = ?11 WHERE id = ?12";
  static const char next_sql[] = "SELECT coalesce (max (position), -1) + 1 FROM build_phase WHERE build_id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && phase != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_phase (phase, error))
    return FALSE;
  if (phase->position < 0)
    phase->position = (int) stead_repo_count_id (store, next_sql, phase->build_id, error);
  if (phase->position < 0)
    return FALSE;
  stmt = stead_store_prepare (store, phase->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  bind_phase (stmt, phase);
  return stead_repo_save_row (store, stmt, &phase->id, error);
}

gboolean
stead_build_phase_repo_delete (SteadStore  *store,
                               gint64       id,
                               GError     **error)
{
  static const char sql[] = "DELETE FROM build_phase WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}
