/* stead-recipe-repo.c - recipes: what goes in, what is done, what comes out. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-item-private.h"
#include "store/stead-recipe-private.h"

static const char * const kept_words[] = { "hot", "cold", "frozen", "room", NULL };

SteadRecipePart *
stead_recipe_part_new (void)
{
  SteadRecipePart *part = g_new0 (SteadRecipePart, 1);

  part->unit = stead_unit_by_id ("ea");
  part->ready = TRUE;
  part->yield_frac = NAN;
  return part;
}

void
stead_recipe_part_free (SteadRecipePart *part)
{
  if (part == NULL)
    return;
  g_free (part->note);
  g_free (part->name);
  g_free (part);
}

SteadRecipeStep *
stead_recipe_step_new (void)
{
  SteadRecipeStep *step = g_new0 (SteadRecipeStep, 1);

  step->minutes = step->least_c = step->most_c = step->hold_s = NAN;
  return step;
}

void
stead_recipe_step_free (SteadRecipeStep *step)
{
  if (step == NULL)
    return;
  g_free (step->text);
  g_free (step->step);
  g_free (step->food);
  g_free (step);
}

SteadRecipe *
stead_recipe_new (void)
{
  SteadRecipe *recipe = g_new0 (SteadRecipe, 1);

  recipe->kept = STEAD_KEPT_COLD;
  recipe->ph = recipe->aw = NAN;
  recipe->ph_on = recipe->authority_on = recipe->retired_on = STEAD_DAY_NONE;
  recipe->parts = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_recipe_part_free);
  recipe->steps = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_recipe_step_free);
  return recipe;
}

static gpointer
copy_part (gconstpointer original,
           gpointer      data)
{
  SteadRecipePart *part = g_memdup2 (original, sizeof (SteadRecipePart));

  part->note = g_strdup (part->note);
  part->name = g_strdup (part->name);
  return part;
}

static gpointer
copy_step (gconstpointer original,
           gpointer      data)
{
  SteadRecipeStep *step = g_memdup2 (original, sizeof (SteadRecipeStep));

  step->text = g_strdup (step->text);
  step->step = g_strdup (step->step);
  step->food = g_strdup (step->food);
  return step;
}

SteadRecipe *
stead_recipe_copy (const SteadRecipe *recipe)
{
  SteadRecipe *copy;

  if (recipe == NULL)
    return NULL;
  copy = g_memdup2 (recipe, sizeof (SteadRecipe));
  copy->name = g_strdup (recipe->name);
  copy->equipment = g_strdup (recipe->equipment);
  copy->note = g_strdup (recipe->note);
  copy->jar = g_strdup (recipe->jar);
  copy->process = g_strdup (recipe->process);
  copy->authority = g_strdup (recipe->authority);
  copy->item_name = g_strdup (recipe->item_name);
  copy->parts = g_ptr_array_copy (recipe->parts, (GCopyFunc) (void (*) (void)) copy_part, NULL);
  copy->steps = g_ptr_array_copy (recipe->steps, (GCopyFunc) (void (*) (void)) copy_step, NULL);
  return copy;
}

void
stead_recipe_free (SteadRecipe *recipe)
{
  if (recipe == NULL)
    return;
  g_free (recipe->name);
  g_free (recipe->equipment);
  g_free (recipe->note);
  g_free (recipe->jar);
  g_free (recipe->process);
  g_free (recipe->authority);
  g_free (recipe->item_name);
  g_clear_pointer (&recipe->parts, g_ptr_array_unref);
  g_clear_pointer (&recipe->steps, g_ptr_array_unref);
  g_free (recipe);
}

/* --- reading ---------------------------------------------------------------- */

#define RECIPE_SELECT \
  "SELECT r.id, r.name, r.item_id, r.yield_base, r.minutes, r.equipment, r.note, r.kept, r.sealed, r.acid_added," \
  " r.tomato, r.ph, r.ph_on, r.aw, r.jar, r.process, r.authority, r.authority_on, r.retired_on, i.name, i.unit" \
  " FROM recipe r JOIN item i ON i.id = r.item_id"

static gpointer
recipe_from_row (SteadStmt *stmt)
{
  SteadRecipe *recipe = stead_recipe_new ();

  recipe->id = sqlite3_column_int64 (stmt, 0);
  recipe->name = stead_stmt_text (stmt, 1);
  recipe->item_id = sqlite3_column_int64 (stmt, 2);
  recipe->yield_base = sqlite3_column_double (stmt, 3);
  recipe->minutes = sqlite3_column_double (stmt, 4);
  recipe->equipment = stead_stmt_text (stmt, 5);
  recipe->note = stead_stmt_text (stmt, 6);
  recipe->kept = (SteadKept) stead_repo_word (stmt, 7, kept_words);
  recipe->sealed = sqlite3_column_int (stmt, 8) != 0;
  recipe->acid_added = sqlite3_column_int (stmt, 9) != 0;
  recipe->tomato = sqlite3_column_int (stmt, 10) != 0;
  recipe->ph = stead_stmt_real (stmt, 11);
  recipe->ph_on = stead_stmt_day (stmt, 12);
  recipe->aw = stead_stmt_real (stmt, 13);
  recipe->jar = stead_stmt_text (stmt, 14);
  recipe->process = stead_stmt_text (stmt, 15);
  recipe->authority = stead_stmt_text (stmt, 16);
  recipe->authority_on = stead_stmt_day (stmt, 17);
  recipe->retired_on = stead_stmt_day (stmt, 18);
  recipe->item_name = stead_stmt_text (stmt, 19);
  recipe->unit = stead_item_unit (stmt, 20);
  return recipe;
}

GPtrArray *
stead_recipe_repo_list (SteadStore  *store,
                        gboolean     retired,
                        GError     **error)
{
  static const char sql[] = RECIPE_SELECT " WHERE ?1 OR r.retired_on IS NULL ORDER BY r.name, r.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, retired != FALSE, recipe_from_row,
                             (GDestroyNotify) stead_recipe_free, error);
}

SteadRecipe *
stead_recipe_row (SteadStore  *store,
                  gint64       id,
                  GError     **error)
{
  static const char sql[] = RECIPE_SELECT " WHERE r.id = ?1";

  return stead_repo_row_of (store, sql, id, recipe_from_row, error);
}

static gpointer
part_from_row (SteadStmt *stmt)
{
  SteadRecipePart *part = stead_recipe_part_new ();

  part->item_id = sqlite3_column_int64 (stmt, 0);
  part->sub_id = sqlite3_column_int64 (stmt, 1);
  part->amount = sqlite3_column_double (stmt, 2);
  part->unit = stead_item_unit (stmt, 3);
  part->ready = sqlite3_column_int (stmt, 4) != 0;
  part->yield_frac = stead_stmt_real (stmt, 5);
  part->note = stead_stmt_text (stmt, 6);
  part->name = stead_stmt_text (stmt, 7);
  return part;
}

GPtrArray *
stead_recipe_parts (SteadStore  *store,
                    gint64       recipe_id,
                    GError     **error)
{
  static const char sql[] =
    "SELECT p.item_id, p.sub_id, p.amount, p.unit, p.ready, p.yield_frac, p.note, coalesce (i.name, s.name)"
    " FROM recipe_part p LEFT JOIN item i ON i.id = p.item_id LEFT JOIN recipe s ON s.id = p.sub_id"
    " WHERE p.recipe_id = ?1 ORDER BY p.position, p.id";

  return stead_repo_rows_of (store, sql, recipe_id, part_from_row, (GDestroyNotify) stead_recipe_part_free,
                             error);
}

static gpointer
step_from_row (SteadStmt *stmt)
{
  SteadRecipeStep *step = stead_recipe_step_new ();

  step->text = stead_stmt_text (stmt, 0);
  step->minutes = stead_stmt_real (stmt, 1);
  step->step = stead_stmt_text (stmt, 2);
  step->food = stead_stmt_text (stmt, 3);
  step->least_c = stead_stmt_real (stmt, 4);
  step->most_c = stead_stmt_real (stmt, 5);
  step->hold_s = stead_stmt_real (stmt, 6);
  return step;
}

static GPtrArray *
read_steps (SteadStore  *store,
            gint64       recipe_id,
            GError     **error)
{
  static const char sql[] = "SELECT text, minutes, step, food, least_c, most_c, hold_s FROM recipe_step"
                            " WHERE recipe_id = ?1 ORDER BY position, id";

  return stead_repo_rows_of (store, sql, recipe_id, step_from_row, (GDestroyNotify) stead_recipe_step_free,
                             error);
}

SteadRecipe *
stead_recipe_repo_get (SteadStore  *store,
                       gint64       id,
                       GError     **error)
{
  g_autoptr(SteadRecipe) recipe = NULL;
  g_autoptr(GPtrArray) parts = NULL;
  g_autoptr(GPtrArray) steps = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  recipe = stead_recipe_row (store, id, error);
  parts = recipe != NULL ? stead_recipe_parts (store, id, error) : NULL;
  steps = parts != NULL ? read_steps (store, id, error) : NULL;
  if (steps == NULL)
    return NULL;
  g_ptr_array_unref (recipe->parts);
  recipe->parts = g_steal_pointer (&parts);
  g_ptr_array_unref (recipe->steps);
  recipe->steps = g_steal_pointer (&steps);
  return g_steal_pointer (&recipe);
}

gint64
stead_recipe_repo_of_item (SteadStore  *store,
                           gint64       item_id,
                           GError     **error)
{
  static const char sql[] = "SELECT id FROM recipe WHERE item_id = ?1 AND retired_on IS NULL ORDER BY id LIMIT 1";

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  return stead_repo_count_id (store, sql, item_id, error);
}

/* --- saving ----------------------------------------------------------------- */

static gboolean
write_recipe (SteadStore   *store,
              SteadRecipe  *recipe,
              GError      **error)
{
  static const char insert_sql[] =
    "INSERT INTO recipe (name, item_id, yield_base, minutes, equipment, note, kept, sealed, acid_added, tomato, ph,"
    " ph_on, aw, jar, process, authority, authority_on, retired_on)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18)";
  static const char update_sql[] =
    "UPDATE recipe SET name = ?1, item_id = ?2, yield_base = ?3, minutes = ?4, equipment = ?5, note = ?6, kept = ?7,"
    " sealed = ?8, acid_added = ?9, tomato = ?10, ph = ?11, ph_on = ?12, aw = ?13, jar = ?14, process = ?15,"
    " authority = ?16, authority_on = ?17, retired_on = ?18 WHERE id = ?19";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, recipe->id == 0 ? insert_sql : update_sql, error);
  g_autofree char *authority = stead_repo_tidy (recipe->authority);

  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, recipe->name);
  sqlite3_bind_int64 (stmt, 2, recipe->item_id);
  sqlite3_bind_double (stmt, 3, recipe->yield_base);
  sqlite3_bind_double (stmt, 4, recipe->minutes);
  stead_repo_bind_tidy (stmt, 5, recipe->equipment);
  stead_repo_bind_tidy (stmt, 6, recipe->note);
  stead_stmt_bind_text (stmt, 7, kept_words[recipe->kept]);
  sqlite3_bind_int (stmt, 8, recipe->sealed != FALSE);
  sqlite3_bind_int (stmt, 9, recipe->acid_added != FALSE);
  sqlite3_bind_int (stmt, 10, recipe->tomato != FALSE);
  stead_stmt_bind_real (stmt, 11, recipe->ph);
  stead_stmt_bind_day (stmt, 12, isnan (recipe->ph) ? STEAD_DAY_NONE : recipe->ph_on);
  stead_stmt_bind_real (stmt, 13, recipe->aw);
  stead_repo_bind_tidy (stmt, 14, recipe->jar);
  stead_repo_bind_tidy (stmt, 15, recipe->process);
  stead_stmt_bind_text (stmt, 16, authority);
  stead_stmt_bind_day (stmt, 17, authority == NULL ? STEAD_DAY_NONE : recipe->authority_on);
  stead_stmt_bind_day (stmt, 18, recipe->retired_on);
  if (recipe->id != 0)
    sqlite3_bind_int64 (stmt, 19, recipe->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (recipe->id == 0)
    recipe->id = stead_store_last_id (store);
  return TRUE;
}

static gboolean
write_part (SteadStore             *store,
            gint64                  recipe_id,
            guint                   position,
            const SteadRecipePart  *part,
            GError                **error)
{
  static const char sql[] =
    "INSERT OR REPLACE INTO recipe_part (id, recipe_id, position, item_id, sub_id, amount, unit, ready, yield_frac, note)"
    " VALUES ((SELECT id FROM recipe_part WHERE recipe_id = ?1 AND position = ?2), ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, recipe_id);
  sqlite3_bind_int64 (stmt, 2, position);
  stead_stmt_bind_id (stmt, 3, part->item_id);
  stead_stmt_bind_id (stmt, 4, part->sub_id);
  sqlite3_bind_double (stmt, 5, part->amount);
  stead_stmt_bind_text (stmt, 6, part->unit->id);
  sqlite3_bind_int (stmt, 7, part->ready != FALSE);
  stead_stmt_bind_real (stmt, 8, part->yield_frac);
  stead_repo_bind_tidy (stmt, 9, part->note);
  return stead_store_run (store, stmt, error);
}

static gboolean
write_step (SteadStore             *store,
            gint64                  recipe_id,
            guint                   position,
            const SteadRecipeStep  *step,
            GError                **error)
{
  static const char sql[] =
    "INSERT OR REPLACE INTO recipe_step (id, recipe_id, position, text, minutes, step, food, least_c, most_c, hold_s)"
    " VALUES ((SELECT id FROM recipe_step WHERE recipe_id = ?1 AND position = ?2), ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, recipe_id);
  sqlite3_bind_int64 (stmt, 2, position);
  stead_repo_bind_tidy (stmt, 3, step->text);
  stead_stmt_bind_real (stmt, 4, step->minutes);
  stead_repo_bind_tidy (stmt, 5, step->step);
  stead_repo_bind_tidy (stmt, 6, step->food);
  stead_stmt_bind_real (stmt, 7, step->least_c);
  stead_stmt_bind_real (stmt, 8, step->most_c);
  stead_stmt_bind_real (stmt, 9, step->hold_s);
  return stead_store_run (store, stmt, error);
}

/* A row keeps its number while the list keeps its place, so that saving what nobody
 * changed is no step to undo; what stood further down goes. */
static gboolean
drop_after (SteadStore  *store,
            const char  *sql,
            gint64       recipe_id,
            guint        n,
            GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, recipe_id);
  sqlite3_bind_int64 (stmt, 2, n);
  return stead_store_run (store, stmt, error);
}

static gboolean
write_all (SteadStore   *store,
           SteadRecipe  *recipe,
           GError      **error)
{
  static const char parts_sql[] = "DELETE FROM recipe_part WHERE recipe_id = ?1 AND position >= ?2";
  static const char steps_sql[] = "DELETE FROM recipe_step WHERE recipe_id = ?1 AND position >= ?2";

  if (!write_recipe (store, recipe, error))
    return FALSE;
  for (guint i = 0; i < recipe->parts->len; i++)
    if (!write_part (store, recipe->id, i, recipe->parts->pdata[i], error))
      return FALSE;
  for (guint i = 0; i < recipe->steps->len; i++)
    if (!write_step (store, recipe->id, i, recipe->steps->pdata[i], error))
      return FALSE;
  return drop_after (store, parts_sql, recipe->id, recipe->parts->len, error) &&
         drop_after (store, steps_sql, recipe->id, recipe->steps->len, error);
}

gboolean
stead_recipe_repo_save (SteadStore   *store,
                        SteadRecipe  *recipe,
                        GError      **error)
{
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && recipe != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_recipe_check (store, recipe, error))
    return FALSE;
  ids = stead_given_ids_new (&recipe->id);
  return stead_given_ids_end (ids, write_all (store, recipe, error));
}

/* --- deleting --------------------------------------------------------------- */

gboolean
stead_recipe_repo_delete (SteadStore  *store,
                          gint64       id,
                          GError     **error)
{
  static const char inside_sql[] = "SELECT count (DISTINCT recipe_id) FROM recipe_part WHERE sub_id = ?1";
  static const char cooked_sql[] = "SELECT count (*) FROM kitchen WHERE recipe_id = ?1";
  static const char sql[] = "DELETE FROM recipe WHERE id = ?1";
  g_autoptr(SteadRecipe) recipe = NULL;
  gint64 inside, cooked;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  recipe = stead_recipe_row (store, id, error);
  if (recipe == NULL ||
      (inside = stead_repo_count_id (store, inside_sql, id, error)) < 0 ||
      (cooked = stead_repo_count_id (store, cooked_sql, id, error)) < 0)
    return FALSE;
  if (inside > 0)
    return stead_repo_refuse (error, ngettext ("“%s” is an ingredient of %d recipe. Take it out there first.",
                                               "“%s” is an ingredient of %d recipes. Take it out there first.",
                                               (gulong) inside), recipe->name, (int) inside);
  if (cooked > 0)
    return stead_repo_refuse (error, ngettext ("“%s” stands behind %d kitchen batch. It cannot be deleted; "
                                               "put it out of use instead.",
                                               "“%s” stands behind %d kitchen batches. It cannot be deleted; "
                                               "put it out of use instead.",
                                               (gulong) cooked), recipe->name, (int) cooked);
  return stead_repo_run_id (store, sql, id, error);
}
