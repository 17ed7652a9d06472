/* stead-check-read.c - one checklist with all its parts, as it stands in the file. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "store/stead-check-private.h"

const char * const stead_check_process_words[] = { "no_cook", "same_day", "complex", NULL };
const char * const stead_direction_words[] = { "at_least", "at_most", "above", "below", "is", NULL };

void
stead_stmt_bind_time (SteadStmt *stmt,
                      int        at,
                      gint64     time)
{
  if (time == STEAD_TIME_NONE)
    sqlite3_bind_null (stmt, at);
  else
    sqlite3_bind_int64 (stmt, at, time);
}

gint64
stead_stmt_time (SteadStmt *stmt,
                 int        at)
{
  return sqlite3_column_type (stmt, at) == SQLITE_NULL ? STEAD_TIME_NONE : sqlite3_column_int64 (stmt, at);
}

SteadLimit *
stead_check_limit_from_row (SteadCheckList *list,
                            SteadStmt      *stmt,
                            int             at)
{
  SteadLimit *limit = g_new0 (SteadLimit, 1);

  limit->id = stead_check_keep_some (list, stmt, at);
  limit->process = stead_check_keep_some (list, stmt, at + 1);
  limit->subject = stead_check_keep_some (list, stmt, at + 2);
  limit->when = stead_check_keep_some (list, stmt, at + 3);
  limit->measure = stead_check_keep_some (list, stmt, at + 4);
  limit->direction = (SteadLimitDirection) stead_repo_word (stmt, at + 5, stead_direction_words);
  limit->value = stead_stmt_real (stmt, at + 6);
  limit->unit = stead_check_keep_some (list, stmt, at + 7);
  limit->word = stead_check_keep (list, stmt, at + 8);
  limit->has_time = sqlite3_column_type (stmt, at + 9) != SQLITE_NULL;
  limit->time_direction = (SteadLimitDirection) stead_repo_word (stmt, at + 9, stead_direction_words);
  limit->time_s = stead_stmt_real (stmt, at + 10);
  limit->hazard = stead_check_keep_some (list, stmt, at + 11);
  limit->source = stead_check_keep_some (list, stmt, at + 12);
  limit->where = stead_check_keep_some (list, stmt, at + 13);
  limit->version = stead_check_keep_some (list, stmt, at + 14);
  limit->status = stead_check_keep_some (list, stmt, at + 15);
  limit->note = stead_check_keep_some (list, stmt, at + 16);
  limit->replaces = stead_check_keep (list, stmt, at + 17);
  return limit;
}

/* --- parts ------------------------------------------------------------------------- */

/* A row of a statement that goes through the parts of one list. */
typedef void (*PartFunc) (SteadCheckList *list,
                          SteadStmt      *stmt,
                          gpointer        data);

static gboolean
each_part (SteadStore      *store,
           const char      *sql,
           SteadCheckList  *list,
           PartFunc         part,
           gpointer         data,
           GError         **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, list->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    part (list, stmt, data);
  return found == 0;
}

/* What is needed while a list is put together. */
typedef struct
{
  GArray     *food_ids;   /* of gint64, in the order of the foods */
  GHashTable *lines;      /* of SteadListLine by id */
  GPtrArray  *sums;       /* (element-type char) (nullable): of each food */
  char       *made_from, *local_from;
} Parts;

static void
parts_clear (Parts *parts)
{
  g_clear_pointer (&parts->food_ids, g_array_unref);
  g_clear_pointer (&parts->lines, g_hash_table_unref);
  g_clear_pointer (&parts->sums, g_ptr_array_unref);
  g_free (parts->made_from);
  g_free (parts->local_from);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Parts, parts_clear)

static int
food_place (const Parts *parts,
            gint64       food_id)
{
  for (guint i = 0; i < parts->food_ids->len; i++)
    if (g_array_index (parts->food_ids, gint64, i) == food_id)
      return (int) i;
  return -1;
}

static void
food_part (SteadCheckList *list,
           SteadStmt      *stmt,
           gpointer        data)
{
  Parts *parts = data;
  gint64 id = sqlite3_column_int64 (stmt, 0);
  SteadListFood *food = stead_check_list_add_food (list, stead_check_keep_some (list, stmt, 1));

  food->id = id;
  food->recipe_id = sqlite3_column_int64 (stmt, 2);
  food->product_id = sqlite3_column_int64 (stmt, 3);
  food->process = (SteadProcessKind) stead_repo_word (stmt, 4, stead_check_process_words);
  g_array_append_val (parts->food_ids, id);
  g_ptr_array_add (parts->sums, stead_stmt_text (stmt, 5));
}

static void
answer_part (SteadCheckList *list,
             SteadStmt      *stmt,
             gpointer        data)
{
  stead_check_list_add_answer (list, food_place (data, sqlite3_column_int64 (stmt, 0)),
                               stead_check_keep_some (list, stmt, 1), stead_check_keep_some (list, stmt, 2));
}

static void
line_part (SteadCheckList *list,
           SteadStmt      *stmt,
           gpointer        data)
{
  Parts *parts = data;
  SteadListLine *line = stead_check_list_add_line (list, food_place (parts, sqlite3_column_int64 (stmt, 1)),
                                                   stead_check_keep_some (list, stmt, 2));

  line->id = sqlite3_column_int64 (stmt, 0);
  line->stage = stead_check_keep_some (list, stmt, 3);
  line->subject = stead_check_keep (list, stmt, 4);
  line->variant = stead_check_keep (list, stmt, 5);
  line->measure = stead_check_keep_some (list, stmt, 6);
  line->unit = stead_check_keep (list, stmt, 7);
  line->needs_all = sqlite3_column_int (stmt, 8) != 0;
  line->tool = stead_check_keep_some (list, stmt, 9);
  line->often = stead_check_keep_some (list, stmt, 10);
  line->who = stead_check_keep_some (list, stmt, 11);
  line->own_least_c = stead_stmt_real (stmt, 12);
  line->own_most_c = stead_stmt_real (stmt, 13);
  line->own_hold_s = stead_stmt_real (stmt, 14);
  line->step_id = sqlite3_column_int64 (stmt, 15);
  line->person_id = sqlite3_column_int64 (stmt, 16);
  line->instrument_id = sqlite3_column_int64 (stmt, 17);
  line->due_at = stead_stmt_time (stmt, 18);
  line->every_s = stead_stmt_real (stmt, 19);
  line->left_out = stead_check_keep (list, stmt, 20);
  g_hash_table_insert (parts->lines, &line->id, line);
}

static SteadListLine *
line_of (gpointer   data,
         SteadStmt *stmt,
         int        at)
{
  gint64 id = sqlite3_column_int64 (stmt, at);

  return g_hash_table_lookup (((Parts *) data)->lines, &id);
}

static void
limit_part (SteadCheckList *list,
            SteadStmt      *stmt,
            gpointer        data)
{
  SteadListLine *line = line_of (data, stmt, 0);
  SteadLimit *limit;

  if (line == NULL)
    return;
  limit = stead_check_limit_from_row (list, stmt, 2);
  if (sqlite3_column_int (stmt, 1) == 0)
    g_ptr_array_add (line->rows, limit);
  else
    {
      g_free ((gpointer) line->often_limit);
      line->often_limit = limit;
    }
}

static void
pot_part (SteadCheckList *list,
          SteadStmt      *stmt,
          gpointer        data)
{
  SteadListLine *line = line_of (data, stmt, 0);
  SteadListPot *pot;

  if (line == NULL)
    return;
  pot = g_new0 (SteadListPot, 1);
  pot->id = sqlite3_column_int64 (stmt, 1);
  pot->name = stead_check_keep_some (list, stmt, 2);
  pot->method = stead_check_keep (list, stmt, 3);
  pot->depth_m = stead_stmt_real (stmt, 4);
  g_ptr_array_add (line->pots, pot);
}

static void
reading_part (SteadCheckList *list,
              SteadStmt      *stmt,
              gpointer        data)
{
  SteadShown *shown = stead_shown_from_row (stmt);
  SteadListLine *line = g_hash_table_lookup (((Parts *) data)->lines, &shown->line_id);

  if (line != NULL)
    g_ptr_array_add (line->readings, shown);
  else
    stead_shown_free (shown);
}

static void
stop_part (SteadCheckList *list,
           SteadStmt      *stmt,
           gpointer        data)
{
  g_autofree SteadLimit *limit = stead_check_limit_from_row (list, stmt, 9);
  SteadListStop *stop = stead_check_list_add_stop (list, food_place (data, sqlite3_column_int64 (stmt, 1)),
                                                   stead_check_keep_some (list, stmt, 2), stead_check_keep_some (list, stmt, 3), limit);

  stop->id = sqlite3_column_int64 (stmt, 0);
  stop->lot_code = stead_check_keep (list, stmt, 4);
  stop->settled = stead_check_keep (list, stmt, 5);
  stop->settled_by = sqlite3_column_int64 (stmt, 6);
  stop->settled_at = stead_stmt_time (stmt, 7);
  stop->told = stead_check_keep (list, stmt, 8);
}

static void
sums_part (SteadCheckList *list,
           SteadStmt      *stmt,
           gpointer        data)
{
  Parts *parts = data;

  parts->made_from = stead_stmt_text (stmt, 0);
  parts->local_from = stead_stmt_text (stmt, 1);
}

static gboolean
read_parts (SteadStore      *store,
            SteadCheckList  *list,
            Parts           *parts,
            GError         **error)
{
  static const char foods_sql[] = "SELECT id, name, recipe_id, product_id, process, made_from FROM check_food"
                                  " WHERE list_id = ?1 ORDER BY position";
  static const char answers_sql[] = "SELECT food_id, question, answer FROM check_answer WHERE list_id = ?1 ORDER BY id";
  static const char lines_sql[] =
    "SELECT id, food_id, topic, stage, subject, variant, measure, unit, needs_all, tool, often, who, own_least_c,"
    " own_most_c, own_hold_s, step_id, person_id, instrument_id, due_at, every_s, left_out FROM check_line"
    " WHERE list_id = ?1 ORDER BY position";
  static const char limits_sql[] =
    "SELECT line_id, role = 'often', " LIMIT_COLUMNS " FROM check_limit"
    " WHERE line_id IN (SELECT id FROM check_line WHERE list_id = ?1) ORDER BY line_id, position";
  static const char pots_sql[] =
    "SELECT line_id, id, name, method, depth_m FROM check_pot"
    " WHERE line_id IN (SELECT id FROM check_line WHERE list_id = ?1) ORDER BY id";
  static const char readings_sql[] =
    "SELECT " SHOWN_COLUMNS " FROM reading r"
    " WHERE r.line_id IN (SELECT id FROM check_line WHERE list_id = ?1) ORDER BY r.at, r.id";
  static const char stops_sql[] =
    "SELECT id, food_id, kind, way, lot_code, settled, settled_by, settled_at, told, " LIMIT_COLUMNS " FROM check_stop"
    " WHERE list_id = ?1 ORDER BY id";
  static const char sums_sql[] = "SELECT made_from, local_from FROM checklist WHERE id = ?1";

  return each_part (store, foods_sql, list, food_part, parts, error) &&
         each_part (store, answers_sql, list, answer_part, parts, error) &&
         each_part (store, lines_sql, list, line_part, parts, error) &&
         each_part (store, limits_sql, list, limit_part, parts, error) &&
         each_part (store, pots_sql, list, pot_part, parts, error) &&
         each_part (store, readings_sql, list, reading_part, parts, error) &&
         each_part (store, stops_sql, list, stop_part, parts, error) &&
         each_part (store, sums_sql, list, sums_part, parts, error);
}

/* --- what is stale ------------------------------------------------------------------ */

static gboolean
find_stale (SteadStore      *store,
            SteadCheckList  *list,
            const Parts     *parts,
            GError         **error)
{
  g_autofree char *batch = NULL;
  g_autofree char *limits = NULL;

  if (list->signed_at != STEAD_TIME_NONE)
    return TRUE;
  for (guint i = 0; i < list->foods->len; i++)
    {
      SteadListFood *food = list->foods->pdata[i];
      g_autofree char *recipe = NULL;

      if (!stead_check_from_recipe (store, food->recipe_id, &recipe, error))
        return FALSE;
      food->stale = g_strcmp0 (recipe, parts->sums->pdata[i]) != 0;
    }
  if (!stead_check_from_batch (store, list->batch_id, &batch, error) ||
      !stead_check_from_limits (store, list->day, &limits, error))
    return FALSE;
  list->stale_batch = g_strcmp0 (batch, parts->made_from) != 0;
  list->stale_limits = g_strcmp0 (limits, parts->local_from) != 0;
  return TRUE;
}

SteadCheckList *
stead_check_repo_get (SteadStore  *store,
                      gint64       id,
                      GError     **error)
{
  static const char sql[] = "SELECT " CHECK_HEAD_COLUMNS "," CHECK_COUNT_COLUMNS " FROM checklist l WHERE l.id = ?1";
  g_autoptr(SteadCheckList) list = NULL;
  g_autoptr(SteadStmt) stmt = NULL;
  g_auto(Parts) parts = { NULL };

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  list = stead_repo_row (store, stmt, stead_check_head_from_row, error);
  if (list == NULL)
    return NULL;
  parts.food_ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  parts.lines = g_hash_table_new (g_int64_hash, g_int64_equal);
  parts.sums = g_ptr_array_new_with_free_func (g_free);
  if (!read_parts (store, list, &parts, error) || !find_stale (store, list, &parts, error) ||
      !stead_check_find_boiling (store, list, error))
    return NULL;
  return g_steal_pointer (&list);
}
