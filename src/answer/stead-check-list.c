/* stead-check-list.c - a plan of checks as a checklist to be kept, and back. */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-check-list.h"
#include "answer/stead-limits.h"
#include "store/stead-kitchen-repo.h"
#include "store/stead-product-repo.h"
#include "store/stead-recipe-repo.h"

#include <glib/gi18n-lib.h>

/* The words of the file, in the order of their enums. */
static const char * const tools[] = { "none", "probe", "air", "strip", "ph_meter", "indicator", "clock", NULL };
static const char * const oftens[] = { "once", "delivery", "portion", "every", "task", "ends", "end", NULL };
static const char * const whos[] = { "everyone", "lead", "cook", "server", NULL };

static int
place_of (const char * const *words,
          const char         *word)
{
  for (int i = 0; words[i] != NULL; i++)
    if (g_strcmp0 (words[i], word) == 0)
      return i;
  return 0;
}

/* --- into a list --------------------------------------------------------------------- */

static void
add_foods (SteadCheckList             *list,
           const SteadCheckPlanAnswer *plan,
           const SteadCheckOrder      *order)
{
  for (guint i = 0; i < plan->menu->foods->len; i++)
    {
      const SteadCheckFood *food = &g_array_index (plan->menu->foods, SteadCheckFood, i);
      SteadListFood *kept = stead_check_list_add_food (list, food->name);

      kept->process = plan->plan->processes[i];
      if (order->kind == STEAD_CHECK_ORDER_RECIPE)
        kept->recipe_id = order->id;
    }
}

/* Only what was answered, and only what is asked. */
static void
add_answers (SteadCheckList             *list,
             const SteadCheckPlanAnswer *plan)
{
  for (guint i = 0; i < plan->plan->questions->len; i++)
    {
      const SteadCheckQuestion *question = plan->plan->questions->pdata[i];

      if (question->word != NULL)
        stead_check_list_add_answer (list, question->food, stead_check_key_id (question->key), question->word);
    }
}

static SteadListLine *
add_line (SteadCheckList       *list,
          const SteadCheckLine *line)
{
  SteadListLine *kept = stead_check_list_add_line (list, line->food, stead_check_line_kind_id (line->kind));

  kept->stage = stead_check_stage_id (line->stage);
  kept->subject = stead_check_list_keep (list, line->subject);
  kept->variant = stead_check_list_keep (list, line->use);
  if (line->measure != NULL)
    {
      kept->measure = stead_check_list_keep (list, line->measure);
      kept->unit = stead_check_list_keep (list, line->unit);
    }
  kept->needs_all = line->all;
  kept->tool = tools[line->tool];
  kept->often = oftens[line->often];
  kept->who = whos[line->who];
  kept->own_least_c = line->own_least_c;
  kept->own_most_c = line->own_most_c;
  kept->own_hold_s = line->own_hold_s;
  for (guint i = 0; i < line->rows->len; i++)
    stead_check_list_add_row (list, kept, line->rows->pdata[i]);
  stead_check_list_set_often (list, kept, line->often_limit);
  return kept;
}

static void
add_stop (SteadCheckList          *list,
          const SteadCheckStopped *stopped)
{
  SteadListStop *kept = stead_check_list_add_stop (list, stopped->stop->food, stead_check_stop_id (stopped->stop->kind),
                                                   stead_check_way_id (stopped->stop->way), stopped->stop->row);

  kept->told = stead_check_list_keep (list, stopped->text);
}

/* --- steps and instruments ------------------------------------------------------------- */

/* What the run sheet calls the work of a line; NULL: nothing. */
static const char *
step_word (const SteadListLine *line)
{
  static const char * const words[][2] = {
    { "cook", "cook" }, { "cool", "cool" }, { "reheat", "reheat" }, { "hold_hot", "hold_hot" }, { "hold_cold", "hold_cold" },
    { "jar_ph", "ph" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_str_equal (line->topic, words[i][0]))
      return words[i][1];
  return NULL;
}

/* The first step of the run sheet that does this to this food. */
static void
find_step (SteadListLine   *line,
           const GPtrArray *steps)
{
  const char *word = step_word (line);

  for (guint i = 0; word != NULL && line->step_id == 0 && i < steps->len; i++)
    {
      const SteadKitchenStep *step = steps->pdata[i];

      if (g_strcmp0 (step->step, word) == 0 &&
          (step->food == NULL || line->subject == NULL || g_str_equal (step->food, line->subject)))
        line->step_id = step->id;
    }
}

static gboolean
find_steps (SteadStore      *store,
            SteadCheckList  *list,
            GError         **error)
{
  g_autoptr(SteadKitchen) kitchen = stead_kitchen_repo_get (store, list->batch_id, error);

  if (kitchen == NULL)
    return FALSE;
  for (guint i = 0; i < list->lines->len; i++)
    find_step (list->lines->pdata[i], kitchen->steps);
  for (guint i = 0; i < list->foods->len; i++)
    ((SteadListFood *) list->foods->pdata[i])->recipe_id = kitchen->recipe_id;
  return TRUE;
}

static gboolean
find_instruments (SteadStore      *store,
                  SteadCheckList  *list,
                  GError         **error)
{
  static const struct { const char *tool; SteadInstrumentKind kind; } fits[] = {
    { "probe", STEAD_INSTRUMENT_PROBE }, { "air", STEAD_INSTRUMENT_AIR }, { "strip", STEAD_INSTRUMENT_STRIP },
    { "ph_meter", STEAD_INSTRUMENT_PH_METER },
  };
  g_autoptr(GPtrArray) all = stead_instrument_repo_list (store, FALSE, error);

  for (gsize f = 0; all != NULL && f < G_N_ELEMENTS (fits); f++)
    {
      gint64 id = 0;
      guint n = 0;

      for (guint i = 0; i < all->len; i++)
        if (((const SteadInstrument *) all->pdata[i])->kind == fits[f].kind)
          {
            id = ((const SteadInstrument *) all->pdata[i])->id;
            n++;
          }
      for (guint i = 0; n == 1 && i < list->lines->len; i++)
        {
          SteadListLine *line = list->lines->pdata[i];

          if (g_str_equal (line->tool, fits[f].tool))
            line->instrument_id = id;
        }
    }
  return all != NULL;
}

/* What did not meet its limit is held by the product that is sold. */
static gboolean
find_products (SteadStore      *store,
               SteadCheckList  *list,
               GError         **error)
{
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, list->sale_id != 0, error);

  for (guint i = 0; products != NULL && i < list->foods->len; i++)
    {
      SteadListFood *food = list->foods->pdata[i];

      for (guint n = 0; n < products->len; n++)
        {
          const SteadProduct *product = products->pdata[n];
          gint64 recipe_id;

          if (!g_str_equal (product->name, food->name))
            continue;
          food->product_id = product->id;
          recipe_id = product->item_id != 0 ? stead_recipe_repo_of_item (store, product->item_id, error) : 0;
          if (recipe_id < 0)
            return FALSE;
          /* If the recipe is changed later, the list says so. */
          food->recipe_id = food->recipe_id != 0 ? food->recipe_id : recipe_id;
        }
    }
  return products != NULL;
}

static const char *
name_of (SteadCheckList *list,
         const char     *name)
{
  g_autoptr(GString) names = g_string_new (NULL);

  if (name != NULL)
    return stead_check_list_keep (list, name);
  for (guint i = 0; i < list->foods->len && i < 3; i++)
    {
      const SteadListFood *food = list->foods->pdata[i];

      g_string_append_printf (names, i == 0 ? "%s" : ", %s", food->name);
    }
  if (list->foods->len > 3)
    g_string_append (names, ", …");
  return stead_check_list_keep (list, names->str);
}

SteadCheckList *
stead_check_list_from_plan (SteadStore                  *store,
                            const SteadCheckPlanAnswer  *plan,
                            const SteadCheckOrder       *order,
                            const char                  *name,
                            GError                     **error)
{
  g_autoptr(SteadCheckList) list = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && plan != NULL && order != NULL, NULL);
  list = stead_check_list_new ();
  list->day = order->day != STEAD_DAY_NONE ? order->day : stead_store_get_today (store);
  list->edition = order->edition == 2013 ? "2013" : order->edition == 2017 ? "2017" : "2022";
  list->batch_id = order->kind == STEAD_CHECK_ORDER_KITCHEN ? order->id : 0;
  list->sale_id = order->kind == STEAD_CHECK_ORDER_SALE_DAY ? order->id : 0;
  add_foods (list, plan, order);
  add_answers (list, plan);
  for (guint i = 0; i < plan->plan->lines->len; i++)
    add_line (list, plan->plan->lines->pdata[i]);
  for (guint i = 0; i < plan->stops->len; i++)
    add_stop (list, plan->stops->pdata[i]);
  list->name = name_of (list, name);
  if ((list->batch_id != 0 && !find_steps (store, list, error)) ||
      !find_products (store, list, error) || !find_instruments (store, list, error))
    return NULL;
  return g_steal_pointer (&list);
}

/* --- out of a list --------------------------------------------------------------------- */

static SteadCheckStage
stage_of (const char *id)
{
  for (int i = 0; i < STEAD_N_CHECK_STAGES; i++)
    if (g_strcmp0 (stead_check_stage_id ((SteadCheckStage) i), id) == 0)
      return (SteadCheckStage) i;
  return STEAD_CHECK_STAGE_BEFORE;
}

gboolean
stead_check_line_of_list (const SteadListLine *line,
                          SteadCheckLine      *out)
{
  SteadCheckLineKind kind;

  g_return_val_if_fail (line != NULL && out != NULL, FALSE);
  if (!stead_check_line_kind_by_id (line->topic, &kind) || line->rows->len == 0)
    return FALSE;
  *out = (SteadCheckLine) { .kind = kind, .stage = stage_of (line->stage), .food = line->food, .subject = line->subject,
                            .use = line->variant, .rows = line->rows, .all = line->needs_all,
                            .tool = (SteadCheckTool) place_of (tools, line->tool),
                            .often = (SteadCheckOften) place_of (oftens, line->often), .often_limit = line->often_limit,
                            .who = (SteadCheckWho) place_of (whos, line->who), .own_least_c = line->own_least_c,
                            .own_most_c = line->own_most_c, .own_hold_s = line->own_hold_s };
  if (!g_str_equal (line->measure, STEAD_MEASURE_DONE))
    {
      out->measure = line->measure;
      out->unit = line->unit;
    }
  return TRUE;
}

GArray *
stead_check_list_answers (const SteadCheckList *list)
{
  GArray *answers = g_array_new (FALSE, TRUE, sizeof (SteadCheckAnswered));

  g_return_val_if_fail (list != NULL, answers);
  for (guint i = 0; i < list->answers->len; i++)
    {
      const SteadListAnswer *row = list->answers->pdata[i];
      SteadCheckAnswered answered = { .word = row->answer };

      if (!stead_check_key_by_id (row->question, &answered.key))
        continue;
      if (row->food >= 0)
        answered.food = ((const SteadListFood *) list->foods->pdata[row->food])->name;
      g_array_append_val (answers, answered);
    }
  return answers;
}

GArray *
stead_check_local_rows (const GPtrArray *limits)
{
  GArray *rows = g_array_new (FALSE, TRUE, sizeof (SteadLimitLocal));

  for (guint i = 0; limits != NULL && i < limits->len; i++)
    {
      const SteadLocalLimit *limit = limits->pdata[i];
      SteadLimitLocal row = { limit->limit_id, limit->value, limit->time_s, limit->source,
                              limit->where != NULL ? limit->where : limit->source, limit->version };

      g_array_append_val (rows, row);
    }
  return rows;
}

SteadLimitTable *
stead_check_table_on (SteadStore  *store,
                      SteadDay     day,
                      GError     **error)
{
  g_autoptr(SteadLimitTable) table = stead_limits_new (NULL, 0, 0, error);

  if (table == NULL || !stead_local_limit_repo_apply (store, day, table, error))
    return NULL;
  return g_steal_pointer (&table);
}

/* What a recipe makes stands there by the recipe's name. */
static gboolean
is_made (const GPtrArray *recipes,
         gint64           item_id)
{
  for (guint i = 0; item_id != 0 && i < recipes->len; i++)
    if (((const SteadRecipe *) recipes->pdata[i])->item_id == item_id)
      return TRUE;
  return FALSE;
}

char *
stead_check_own_foods (SteadStore  *store,
                       GError     **error)
{
  g_autoptr(GPtrArray) recipes = stead_recipe_repo_list (store, FALSE, error);
  g_autoptr(GPtrArray) products = recipes != NULL ? stead_product_repo_list (store, FALSE, error) : NULL;
  g_autoptr(GString) text = g_string_new (NULL);

  if (products == NULL)
    return NULL;
  for (guint i = 0; i < recipes->len; i++)
    g_string_append_printf (text, "%s\n", ((const SteadRecipe *) recipes->pdata[i])->name);
  for (guint i = 0; i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];

      if (!is_made (recipes, product->item_id))
        g_string_append_printf (text, "%s\n", product->name);
    }
  if (text->len > 0)
    return g_strdup (text->str);
  g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                       _("There is no recipe and no product yet, so there is nothing to keep limits of."));
  return NULL;
}
