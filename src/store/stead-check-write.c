/* stead-check-write.c - the rows of a checklist. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "store/stead-check-private.h"

void
stead_check_bind_limit (SteadStmt        *stmt,
                        int               at,
                        const SteadLimit *limit)
{
  stead_stmt_bind_text (stmt, at, limit->id);
  stead_stmt_bind_text (stmt, at + 1, limit->process);
  stead_stmt_bind_exactly (stmt, at + 2, limit->subject);
  stead_stmt_bind_exactly (stmt, at + 3, limit->when);
  stead_stmt_bind_text (stmt, at + 4, limit->measure);
  stead_stmt_bind_text (stmt, at + 5, stead_direction_words[limit->direction]);
  stead_stmt_bind_real (stmt, at + 6, limit->value);
  stead_stmt_bind_text (stmt, at + 7, limit->unit);
  stead_stmt_bind_text (stmt, at + 8, limit->word);
  stead_stmt_bind_text (stmt, at + 9, limit->has_time ? stead_direction_words[limit->time_direction] : NULL);
  stead_stmt_bind_real (stmt, at + 10, limit->has_time ? limit->time_s : NAN);
  stead_stmt_bind_text (stmt, at + 11, limit->hazard);
  stead_stmt_bind_text (stmt, at + 12, limit->source);
  stead_stmt_bind_exactly (stmt, at + 13, limit->where);
  stead_stmt_bind_text (stmt, at + 14, limit->version);
  stead_stmt_bind_text (stmt, at + 15, limit->status);
  stead_stmt_bind_exactly (stmt, at + 16, limit->note);
  stead_stmt_bind_text (stmt, at + 17, limit->replaces);
}

static gint64
food_id (const SteadCheckList *list,
         int                   food)
{
  return food >= 0 && (guint) food < list->foods->len ? ((const SteadListFood *) list->foods->pdata[food])->id : 0;
}

static gboolean
write_food (SteadStore      *store,
            SteadCheckList  *list,
            guint            position,
            GError         **error)
{
  static const char sql[] =
    "INSERT INTO check_food (list_id, position, name, recipe_id, product_id, process, made_from)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
  SteadListFood *food = list->foods->pdata[position];
  g_autofree char *from = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  if (!stead_check_from_recipe (store, food->recipe_id, &from, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, list->id);
  sqlite3_bind_int64 (stmt, 2, position);
  stead_repo_bind_tidy (stmt, 3, food->name);
  stead_stmt_bind_id (stmt, 4, food->recipe_id);
  stead_stmt_bind_id (stmt, 5, food->product_id);
  stead_stmt_bind_text (stmt, 6, stead_check_process_words[food->process]);
  stead_stmt_bind_text (stmt, 7, from);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  food->id = stead_store_last_id (store);
  food->stale = FALSE;
  return TRUE;
}

static gboolean
write_answer (SteadStore             *store,
              const SteadCheckList   *list,
              const SteadListAnswer  *answer,
              GError                **error)
{
  static const char sql[] = "INSERT INTO check_answer (list_id, food_id, question, answer) VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, list->id);
  stead_stmt_bind_id (stmt, 2, food_id (list, answer->food));
  stead_stmt_bind_text (stmt, 3, answer->question);
  stead_stmt_bind_text (stmt, 4, answer->answer);
  return stead_store_run (store, stmt, error);
}

/* --- lines ---------------------------------------------------------------------------- */

static gboolean
write_limit (SteadStore        *store,
             gint64             line_id,
             guint              position,
             const char        *role,
             const SteadLimit  *limit,
             GError           **error)
{
  static const char sql[] =
    "INSERT INTO check_limit (line_id, position, role, " LIMIT_COLUMNS ")"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19,"
    " ?20, ?21)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, line_id);
  sqlite3_bind_int64 (stmt, 2, position);
  stead_stmt_bind_text (stmt, 3, role);
  stead_check_bind_limit (stmt, 4, limit);
  return stead_store_run (store, stmt, error);
}

static gboolean
write_limits (SteadStore     *store,
              SteadListLine  *line,
              GError        **error)
{
  static const char clear_sql[] = "DELETE FROM check_limit WHERE line_id = ?1";

  if (!stead_repo_run_id (store, clear_sql, line->id, error))
    return FALSE;
  for (guint i = 0; i < line->rows->len; i++)
    if (!write_limit (store, line->id, i, "limit", line->rows->pdata[i], error))
      return FALSE;
  return line->often_limit == NULL ||
         write_limit (store, line->id, line->rows->len, "often", line->often_limit, error);
}

/* A line with an id is written over. */
gboolean
stead_check_write_line (SteadStore            *store,
                        const SteadCheckList  *list,
                        SteadListLine         *line,
                        guint                  position,
                        GError               **error)
{
  static const char insert_sql[] =
    "INSERT INTO check_line (list_id, food_id, position, topic, stage, subject, variant, measure, unit, needs_all, tool,"
    " often, who, own_least_c, own_most_c, own_hold_s, step_id, person_id, instrument_id, due_at, every_s, left_out)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20, ?21, ?22)";
  static const char update_sql[] =
    "UPDATE check_line SET list_id = ?1, food_id = ?2, position = ?3, topic = ?4, stage = ?5, subject = ?6, variant = ?7,"
    " measure = ?8, unit = ?9, needs_all = ?10, tool = ?11, often = ?12, who = ?13, own_least_c = ?14, own_most_c = ?15,"
    " own_hold_s = ?16, step_id = ?17, person_id = ?18, instrument_id = ?19, due_at = ?20, every_s = ?21, left_out = ?22"
    " WHERE id = ?23";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, line->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, list->id);
  stead_stmt_bind_id (stmt, 2, food_id (list, line->food));
  sqlite3_bind_int64 (stmt, 3, position);
  stead_stmt_bind_text (stmt, 4, line->topic);
  stead_stmt_bind_text (stmt, 5, line->stage);
  stead_stmt_bind_text (stmt, 6, line->subject);
  stead_stmt_bind_text (stmt, 7, line->variant);
  stead_stmt_bind_text (stmt, 8, line->measure);
  stead_stmt_bind_text (stmt, 9, line->unit);
  sqlite3_bind_int (stmt, 10, line->needs_all != FALSE);
  stead_stmt_bind_exactly (stmt, 11, line->tool);
  stead_stmt_bind_exactly (stmt, 12, line->often);
  stead_stmt_bind_exactly (stmt, 13, line->who);
  stead_stmt_bind_real (stmt, 14, line->own_least_c);
  stead_stmt_bind_real (stmt, 15, line->own_most_c);
  stead_stmt_bind_real (stmt, 16, line->own_hold_s);
  stead_stmt_bind_id (stmt, 17, line->step_id);
  stead_stmt_bind_id (stmt, 18, line->person_id);
  stead_stmt_bind_id (stmt, 19, line->instrument_id);
  stead_stmt_bind_time (stmt, 20, line->due_at);
  stead_stmt_bind_real (stmt, 21, line->every_s);
  stead_repo_bind_tidy (stmt, 22, line->left_out);
  if (line->id != 0)
    sqlite3_bind_int64 (stmt, 23, line->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (line->id == 0)
    line->id = stead_store_last_id (store);
  return write_limits (store, line, error);
}

/* --- stops ------------------------------------------------------------------------------ */

static gboolean
write_stop (SteadStore            *store,
            const SteadCheckList  *list,
            SteadListStop         *stop,
            GError               **error)
{
  static const char sql[] =
    "INSERT INTO check_stop (list_id, food_id, kind, way, lot_code, settled, settled_by, settled_at, told, " LIMIT_COLUMNS ")"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20, ?21, ?22,"
    " ?23, ?24, ?25, ?26, ?27)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, list->id);
  stead_stmt_bind_id (stmt, 2, food_id (list, stop->food));
  stead_stmt_bind_text (stmt, 3, stop->kind);
  stead_stmt_bind_text (stmt, 4, stop->way);
  stead_stmt_bind_text (stmt, 5, stop->lot_code);
  stead_repo_bind_tidy (stmt, 6, stop->settled);
  stead_stmt_bind_id (stmt, 7, stop->settled_by);
  stead_stmt_bind_time (stmt, 8, stop->settled_at);
  stead_repo_bind_tidy (stmt, 9, stop->told);
  stead_check_bind_limit (stmt, 10, stop->row);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  stop->id = stead_store_last_id (store);
  return TRUE;
}

/* --- the whole ---------------------------------------------------------------------------- */

gboolean
stead_check_write_foods (SteadStore      *store,
                         SteadCheckList  *list,
                         GError         **error)
{
  for (guint i = 0; i < list->foods->len; i++)
    if (!write_food (store, list, i, error))
      return FALSE;
  return TRUE;
}

gboolean
stead_check_write_rest (SteadStore      *store,
                        SteadCheckList  *list,
                        GError         **error)
{
  for (guint i = 0; i < list->answers->len; i++)
    if (!write_answer (store, list, list->answers->pdata[i], error))
      return FALSE;
  for (guint i = 0; i < list->stops->len; i++)
    if (!write_stop (store, list, list->stops->pdata[i], error))
      return FALSE;
  return TRUE;
}

gboolean
stead_check_write_parts (SteadStore      *store,
                         SteadCheckList  *list,
                         GError         **error)
{
  if (!stead_check_write_foods (store, list, error))
    return FALSE;
  for (guint i = 0; i < list->lines->len; i++)
    if (!stead_check_write_line (store, list, list->lines->pdata[i], i, error))
      return FALSE;
  return stead_check_write_rest (store, list, error);
}
