/* stead-recipe-check.c - what can be a recipe at all. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-recipe-private.h"

#define MOST_MINUTES 14400

gboolean
stead_item_to_base (const SteadItem  *item,
                    double            amount,
                    const SteadUnit  *unit,
                    double           *out_base,
                    GError          **error)
{
  SteadMeasure measure;
  g_autoptr(GError) problem = NULL;

  stead_item_measure (item, &measure);
  if (stead_measure_to_base (&measure, amount, unit, out_base, &problem))
    return TRUE;
  return stead_repo_refuse (error, "%s", problem->message);
}

/* --- ingredients -------------------------------------------------------------- */

static gboolean
check_amount (const SteadItem        *item,
              const SteadRecipePart  *part,
              GError                **error)
{
  double base = 0;

  if (!(part->amount > 0 && part->amount <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter how much of “%s” goes in: an amount above zero."), item->name);
  if (!isnan (part->yield_frac) && !(part->yield_frac > 0 && part->yield_frac <= 1))
    return stead_repo_refuse (error, _("Of “%s”, what is left after trimming must be above 0 and at most all of it."),
                              item->name);
  if (!stead_item_to_base (item, part->amount, part->unit, &base, error))
    return FALSE;
  return base <= STEAD_AMOUNT_MAX
         || stead_repo_refuse (error, _("Enter how much of “%s” goes in: an amount above zero."), item->name);
}

static gboolean
check_part (SteadStore             *store,
            const SteadRecipePart  *part,
            GError                **error)
{
  g_autoptr(SteadRecipe) sub = NULL;
  g_autoptr(SteadItem) item = NULL;

  g_return_val_if_fail (part->unit != NULL, FALSE);
  if ((part->item_id == 0) == (part->sub_id == 0))
    return stead_repo_refuse (error, _("Choose what each ingredient is."));
  if (part->sub_id != 0)
    {
      sub = stead_recipe_row (store, part->sub_id, error);
      if (sub == NULL)
        return FALSE;
    }
  item = stead_item_repo_get (store, sub != NULL ? sub->item_id : part->item_id, error);
  return item != NULL && check_amount (item, part, error) && stead_repo_check_note (part->note, error);
}

/* --- recipes inside recipes ---------------------------------------------------- */

/* The way from @from down to @to, as names with arrows; empty if there is none. */
static gboolean
find_way (SteadStore  *store,
          gint64       from,
          gint64       to,
          char       **out_way,
          GError     **error)
{
  static const char sql[] =
    "WITH RECURSIVE way (id, text, depth) AS ("
    " SELECT id, name, 1 FROM recipe WHERE id = ?1"
    " UNION SELECT r.id, way.text || ' → ' || r.name, depth + 1 FROM way JOIN recipe_part p ON p.recipe_id = way.id"
    "   JOIN recipe r ON r.id = p.sub_id WHERE way.id <> ?2 AND depth < 64)"
    " SELECT text FROM way WHERE id = ?2 ORDER BY depth, text LIMIT 1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, from);
  sqlite3_bind_int64 (stmt, 2, to);
  found = stead_store_step (store, stmt, error);
  if (found == 1)
    *out_way = stead_stmt_text (stmt, 0);
  return found >= 0;
}

static gboolean
check_itself (SteadStore         *store,
              const SteadRecipe  *recipe,
              GError            **error)
{
  for (guint i = 0; recipe->id != 0 && i < recipe->parts->len; i++)
    {
      const SteadRecipePart *part = recipe->parts->pdata[i];
      g_autofree char *way = NULL;

      if (part->sub_id == 0)
        continue;
      if (!find_way (store, part->sub_id, recipe->id, &way, error))
        return FALSE;
      if (way != NULL)
        /* Translators: a recipe, and the way back to it: "Stock → Sauce". */
        return stead_repo_refuse (error, _("“%s” would contain itself: %s. Leave one of them out."),
                                  recipe->name, way);
    }
  return TRUE;
}

/* --- steps ------------------------------------------------------------------------ */

static gboolean
is_or_nan (double value,
           double least,
           double most)
{
  return isnan (value) || (value >= least && value <= most);
}

static gboolean
check_step (const SteadRecipeStep  *step,
            GError                **error)
{
  g_autofree char *text = stead_repo_tidy (step->text);

  if (text == NULL)
    return stead_repo_refuse (error, _("Write down what is done in each step."));
  if (!is_or_nan (step->minutes, 0, MOST_MINUTES))
    return stead_repo_refuse (error, _("The minutes of a step must lie between 0 and 14,400, which is ten days."));
  if (!is_or_nan (step->least_c, -60, 300) || !is_or_nan (step->most_c, -60, 300) ||
      step->least_c > step->most_c)
    return stead_repo_refuse (error, _("Check the temperatures of the step “%s”."), text);
  if (!isnan (step->hold_s) && !(step->hold_s >= 0 && step->hold_s <= MOST_MINUTES * 60.0))
    return stead_repo_refuse (error, _("Check how long the temperature of the step “%s” is held."), text);
  return stead_repo_check_note (text, error) &&
         stead_repo_check_note (step->step, error) &&
         stead_repo_check_note (step->food, error);
}

/* --- the whole -------------------------------------------------------------------- */

static gboolean
check_made (SteadStore         *store,
            const SteadRecipe  *recipe,
            GError            **error)
{
  g_autoptr(SteadItem) item = NULL;

  if (recipe->item_id == 0)
    return stead_repo_refuse (error, _("Choose what the recipe makes."));
  item = stead_item_repo_get (store, recipe->item_id, error);
  if (item == NULL)
    return FALSE;
  if (item->kind != STEAD_ITEM_PRODUCE)
    return stead_repo_refuse (error, _("“%s” is something that is bought. Choose an item that the farm makes."),
                              item->name);
  if (!(recipe->yield_base > STEAD_AMOUNT_EPSILON && recipe->yield_base <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter how much the recipe makes: an amount above zero."));
  return TRUE;
}

static gboolean
check_kind (const SteadRecipe  *recipe,
            GError            **error)
{
  g_autofree char *authority = stead_repo_tidy (recipe->authority);

  if (!is_or_nan (recipe->ph, 0, 14))
    return stead_repo_refuse (error, _("A pH lies between 0 and 14. Check the number."));
  if (!isnan (recipe->ph) && recipe->ph_on == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day on which the pH was measured."));
  if (!is_or_nan (recipe->aw, 0, 1))
    return stead_repo_refuse (error, _("A water activity lies between 0 and 1. Check the number."));
  if (authority != NULL && recipe->authority_on == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day on which the process was approved."));
  return TRUE;
}

static gboolean
check_texts (const SteadRecipe  *recipe,
             GError            **error)
{
  return stead_repo_check_note (recipe->equipment, error) &&
         stead_repo_check_note (recipe->note, error) &&
         stead_repo_check_note (recipe->jar, error) &&
         stead_repo_check_note (recipe->process, error) &&
         stead_repo_check_note (recipe->authority, error);
}

gboolean
stead_recipe_check (SteadStore         *store,
                    const SteadRecipe  *recipe,
                    GError            **error)
{
  static const char taken_sql[] = "SELECT 1 FROM recipe WHERE name = ?1 AND id <> ?2";

  if (!stead_repo_check_name (recipe->name, error) ||
      !stead_repo_check_unique (store, taken_sql, recipe->name, recipe->id, error) ||
      !check_made (store, recipe, error) || !check_kind (recipe, error) || !check_texts (recipe, error))
    return FALSE;
  if (!(recipe->minutes >= 0 && recipe->minutes <= MOST_MINUTES))
    return stead_repo_refuse (error, _("The minutes of work must lie between 0 and 14,400. Check the number."));
  if (recipe->parts->len == 0)
    return stead_repo_refuse (error, _("Enter at least one ingredient."));
  for (guint i = 0; i < recipe->parts->len; i++)
    if (!check_part (store, recipe->parts->pdata[i], error))
      return FALSE;
  for (guint i = 0; i < recipe->steps->len; i++)
    if (!check_step (recipe->steps->pdata[i], error))
      return FALSE;
  return check_itself (store, recipe, error);
}
