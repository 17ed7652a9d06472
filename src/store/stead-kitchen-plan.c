/* stead-kitchen-plan.c - a kitchen batch planned from a recipe, in measures that a cook has. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-recipe.h"
#include "core/stead-sensible.h"
#include "store/stead-kitchen-private.h"
#include "store/stead-recipe-private.h"

/* Farther ahead nobody knows what is in season. */
#define MOST_DAYS_AHEAD 366

/* --- copying ------------------------------------------------------------------ */

static gboolean
write_part (SteadStore        *store,
            gint64             batch_id,
            guint              position,
            gint64             item_id,
            double             need_base,
            double             amount,
            const SteadUnit   *unit,
            const char        *note,
            GError           **error)
{
  static const char sql[] =
    "INSERT INTO kitchen_part (batch_id, position, item_id, need_base, amount, unit, note)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  sqlite3_bind_int64 (stmt, 2, position);
  sqlite3_bind_int64 (stmt, 3, item_id);
  sqlite3_bind_double (stmt, 4, need_base);
  sqlite3_bind_double (stmt, 5, amount);
  stead_stmt_bind_text (stmt, 6, unit->id);
  stead_repo_bind_tidy (stmt, 7, note);
  return stead_store_run (store, stmt, error);
}

/* An ingredient of a recipe inside says which: "Sauce: diced". */
static char *
note_of (const SteadRecipeNeed *need,
         gint64                 recipe_id)
{
  if (need->recipe_id == recipe_id)
    return g_strdup (need->note);
  if (need->note == NULL)
    return g_strdup (need->recipe_name);
  /* Translators: a recipe, what is done with the ingredient: "Sauce: diced". */
  return g_strdup_printf (C_("note of an ingredient", "%s: %s"), need->recipe_name, need->note);
}

static gboolean
copy_parts (SteadStore  *store,
            gint64       batch_id,
            gint64       recipe_id,
            double       factor,
            GError     **error)
{
  g_autoptr(GPtrArray) needs = stead_recipe_repo_needs (store, recipe_id, factor, error);

  for (guint i = 0; needs != NULL && i < needs->len; i++)
    {
      const SteadRecipeNeed *need = needs->pdata[i];
      g_autofree char *note = note_of (need, recipe_id);
      SteadSensible sensible;

      stead_sensible_amount (need->amount, need->unit, &sensible);
      if (!write_part (store, batch_id, i, need->item_id, need->need_base * sensible.effect,
                       sensible.amount, sensible.unit, note, error))
        return FALSE;
    }
  return needs != NULL;
}

/* Those of the recipes inside come first: what they make goes in. */
static gboolean
copy_steps (SteadStore  *store,
            gint64       batch_id,
            gint64       recipe_id,
            GError     **error)
{
  static const char sql[] =
    "INSERT INTO kitchen_step (batch_id, position, text, minutes, step, food, least_c, most_c, hold_s)"
    " SELECT ?1, ?2 + row_number () OVER (ORDER BY position, id) - 1, text, minutes, step, food, least_c, most_c,"
    " hold_s FROM recipe_step WHERE recipe_id = ?3 ORDER BY position, id";
  static const char count_sql[] = "SELECT count (*) FROM kitchen_step WHERE batch_id = ?1";
  g_autoptr(GPtrArray) inside = stead_recipe_repo_inside (store, recipe_id, error);

  for (guint i = inside != NULL ? inside->len : 0; i > 0; i--)
    {
      const SteadRecipe *recipe = inside->pdata[i - 1];
      gint64 so_far = stead_repo_count_id (store, count_sql, batch_id, error);
      g_autoptr(SteadStmt) stmt = so_far >= 0 ? stead_store_prepare (store, sql, error) : NULL;

      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, batch_id);
      sqlite3_bind_int64 (stmt, 2, so_far);
      sqlite3_bind_int64 (stmt, 3, recipe->id);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return inside != NULL;
}

gboolean
stead_kitchen_copy_recipe (SteadStore  *store,
                           gint64       batch_id,
                           gint64       recipe_id,
                           double       factor,
                           GError     **error)
{
  return copy_parts (store, batch_id, recipe_id, factor, error) &&
         copy_steps (store, batch_id, recipe_id, error);
}

/* --- planning ------------------------------------------------------------------ */

/* "Breakfast bowls, Mar 7, 2026", with a number if that was cooked that day already. */
static char *
new_name (SteadStore         *store,
          const SteadRecipe  *recipe,
          SteadDay            day,
          GError            **error)
{
  static const char sql[] = "SELECT 1 FROM batch WHERE name = ?1 AND id <> ?2";
  g_autofree char *text = stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: name of a kitchen batch: a recipe and a day. */
  g_autofree char *plain = g_strdup_printf (C_("kitchen batch", "%s, %s"), recipe->name, text);
  g_autofree char *name = g_strdup (plain);

  for (int n = 2;; n++)
    {
      g_autoptr(GError) problem = NULL;

      if (stead_repo_check_unique (store, sql, name, 0, &problem))
        return g_steal_pointer (&name);
      if (!g_error_matches (problem, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID) || n > 999)
        {
          g_propagate_error (error, g_steal_pointer (&problem));
          return NULL;
        }
      g_free (name);
      name = g_strdup_printf ("%s (%d)", plain, n);
    }
}

static gboolean
check_wanted (const SteadRecipe  *recipe,
              double              wanted_base,
              GError            **error)
{
  if (!(wanted_base > STEAD_AMOUNT_EPSILON && wanted_base <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter how much of “%s” is wanted: an amount above zero."), recipe->item_name);
  return TRUE;
}

static gboolean
check_day (SteadStore  *store,
           SteadDay     day,
           GError     **error)
{
  if (day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (day > stead_store_get_today (store) + MOST_DAYS_AHEAD)
    return stead_repo_refuse (error, _("The day is more than a year ahead. Check it."));
  return TRUE;
}

static gboolean
write_kitchen (SteadStore         *store,
               gint64              batch_id,
               const SteadRecipe  *recipe,
               double              wanted_base,
               GError            **error)
{
  static const char sql[] = "INSERT INTO kitchen (batch_id, recipe_id, wanted_base, minutes) VALUES (?1, ?2, ?3, ?4)";
  double factor = stead_recipe_scale (recipe->yield_base, 1, wanted_base, 1), minutes;
  g_autoptr(SteadStmt) stmt = NULL;

  if (!stead_recipe_repo_minutes (store, recipe->id, factor, &minutes, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  sqlite3_bind_int64 (stmt, 2, recipe->id);
  sqlite3_bind_double (stmt, 3, wanted_base);
  sqlite3_bind_double (stmt, 4, MIN (minutes, STEAD_AMOUNT_MAX));
  return stead_store_run (store, stmt, error) &&
         stead_kitchen_copy_recipe (store, batch_id, recipe->id, factor, error);
}

gboolean
stead_kitchen_repo_plan (SteadStore  *store,
                         gint64       recipe_id,
                         double       wanted_base,
                         SteadDay     day,
                         const char  *name,
                         gint64       place_id,
                         gint64      *out_id,
                         GError     **error)
{
  g_autoptr(SteadRecipe) recipe = NULL;
  g_autoptr(SteadBatch) batch = g_new0 (SteadBatch, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  recipe = stead_recipe_row (store, recipe_id, error);
  if (recipe == NULL || !check_wanted (recipe, wanted_base, error) || !check_day (store, day, error))
    return FALSE;
  if (recipe->retired_on != STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("“%s” is out of use. Put it in use again first."), recipe->name);
  batch->kind = STEAD_BATCH_KITCHEN;
  batch->place_id = place_id;
  batch->started_on = day;
  batch->ended_on = STEAD_DAY_NONE;
  batch->name = name != NULL ? g_strdup (name) : new_name (store, recipe, day, error);
  if (batch->name == NULL ||
      !stead_batch_check (store, batch, error) ||
      !stead_batch_write (store, batch, error) ||
      !write_kitchen (store, batch->id, recipe, wanted_base, error))
    return FALSE;
  if (out_id != NULL)
    *out_id = batch->id;
  return TRUE;
}

/* Nothing was taken out, and no step begun. */
static gboolean
check_untouched (SteadStore        *store,
                 const SteadBatch  *batch,
                 GError           **error)
{
  static const char sql[] =
    "SELECT (SELECT count (*) FROM movement WHERE batch_id = ?1)"
    " + (SELECT count (*) FROM kitchen_step WHERE batch_id = ?1 AND coalesce (started_at, done_at) IS NOT NULL)"
    " + (SELECT count (*) FROM reading WHERE batch_id = ?1)";
  gint64 n = stead_repo_count_id (store, sql, batch->id, error);

  if (n > 0)
    return stead_repo_refuse (error, _("“%s” is under way. Its amount is changed part by part now."), batch->name);
  return n == 0;
}

gboolean
stead_kitchen_repo_replan (SteadStore  *store,
                           gint64       batch_id,
                           double       wanted_base,
                           GError     **error)
{
  static const char sql[] = "DELETE FROM kitchen WHERE batch_id = ?1";
  g_autoptr(SteadBatch) batch = NULL;
  g_autoptr(SteadKitchen) kitchen = NULL;
  g_autoptr(SteadRecipe) recipe = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  batch = stead_kitchen_open_batch (store, batch_id, error);
  kitchen = batch != NULL ? stead_kitchen_repo_get (store, batch_id, error) : NULL;
  recipe = kitchen != NULL ? stead_recipe_row (store, kitchen->recipe_id, error) : NULL;
  return recipe != NULL &&
         check_wanted (recipe, wanted_base, error) &&
         check_untouched (store, batch, error) &&
         stead_repo_run_id (store, sql, batch_id, error) &&
         write_kitchen (store, batch_id, recipe, wanted_base, error);
}

/* --- parts by hand ----------------------------------------------------------------- */

static gboolean
check_part (double             amount,
            const SteadUnit   *unit,
            double             need_base,
            GError           **error)
{
  g_return_val_if_fail (unit != NULL, FALSE);
  if (!(amount > 0 && amount <= STEAD_AMOUNT_MAX) ||
      !(need_base > STEAD_AMOUNT_EPSILON && need_base <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter an amount above zero."));
  return TRUE;
}

/* The batch of a part; it must not be finished. */
static gboolean
open_part (SteadStore  *store,
           gint64       part_id,
           GError     **error)
{
  static const char sql[] = "SELECT batch_id FROM kitchen_part WHERE id = ?1";
  gint64 batch_id = stead_repo_count_id (store, sql, part_id, error);
  g_autoptr(SteadBatch) batch = NULL;

  if (batch_id < 0)
    return FALSE;
  if (batch_id == 0)
    return stead_repo_missing (error);
  batch = stead_kitchen_open_batch (store, batch_id, error);
  return batch != NULL;
}

gboolean
stead_kitchen_repo_set_part (SteadStore       *store,
                             gint64            part_id,
                             double            amount,
                             const SteadUnit  *unit,
                             double            need_base,
                             GError          **error)
{
  static const char sql[] = "UPDATE kitchen_part SET amount = ?2, unit = ?3, need_base = ?4 WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_part (amount, unit, need_base, error) || !open_part (store, part_id, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, part_id);
  sqlite3_bind_double (stmt, 2, amount);
  stead_stmt_bind_text (stmt, 3, unit->id);
  sqlite3_bind_double (stmt, 4, need_base);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_kitchen_repo_add_part (SteadStore       *store,
                             gint64            batch_id,
                             gint64            item_id,
                             double            amount,
                             const SteadUnit  *unit,
                             double            need_base,
                             GError          **error)
{
  static const char sql[] = "SELECT coalesce (max (position) + 1, 0) FROM kitchen_part WHERE batch_id = ?1";
  g_autoptr(SteadBatch) batch = NULL;
  g_autoptr(SteadItem) item = NULL;
  gint64 position;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  batch = check_part (amount, unit, need_base, error) ? stead_kitchen_open_batch (store, batch_id, error) : NULL;
  item = batch != NULL ? stead_item_repo_get (store, item_id, error) : NULL;
  if (item == NULL || (position = stead_repo_count_id (store, sql, batch_id, error)) < 0)
    return FALSE;
  return write_part (store, batch_id, (guint) position, item_id, need_base, amount, unit, NULL, error);
}

gboolean
stead_kitchen_repo_drop_part (SteadStore  *store,
                              gint64       part_id,
                              GError     **error)
{
  static const char sql[] = "DELETE FROM kitchen_part WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return open_part (store, part_id, error) && stead_repo_run_id (store, sql, part_id, error);
}
