/* stead-question-make.c - recipes and kitchen batches, asked for as JSON. */
#include "config.h"

#include "answer/stead-kitchen-answer.h"
#include "answer/stead-question-private.h"
#include "answer/stead-recipe-answer.h"
#include "answer/stead-words.h"

#include <math.h>

static void
put_text (JsonBuilder *out,
          const char  *name,
          const char  *text)
{
  json_builder_set_member_name (out, name);
  if (text != NULL)
    json_builder_add_string_value (out, text);
  else
    json_builder_add_null_value (out);
}

static void
put_plain (JsonBuilder *out,
           const char  *name,
           const char  *markup)
{
  g_autofree char *plain = markup != NULL ? stead_words_plain (markup) : NULL;

  put_text (out, name, plain);
}

static void
put_int (JsonBuilder *out,
         const char  *name,
         gint64       value)
{
  json_builder_set_member_name (out, name);
  json_builder_add_int_value (out, value);
}

static void
put_real (JsonBuilder *out,
          const char  *name,
          double       value)
{
  json_builder_set_member_name (out, name);
  if (isfinite (value))
    json_builder_add_double_value (out, value);
  else
    json_builder_add_null_value (out);
}

static void
put_texts (JsonBuilder     *out,
           const char      *name,
           const GPtrArray *texts)
{
  json_builder_set_member_name (out, name);
  json_builder_begin_array (out);
  for (guint i = 0; i < texts->len; i++)
    json_builder_add_string_value (out, texts->pdata[i]);
  json_builder_end_array (out);
}

/* --- recipe ---------------------------------------------------------------------------- */

static void
put_ingredients (JsonBuilder             *out,
                 const SteadRecipeAnswer *answer)
{
  json_builder_set_member_name (out, "ingredients");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadRecipeLine *line = answer->lines->pdata[i];

      json_builder_begin_object (out);
      put_text (out, "item", line->name);
      put_text (out, "amount", line->amount);
      put_text (out, "bought", line->bought);
      put_real (out, "need_base", line->need_base);
      put_real (out, "unit_cents", line->unit_cents);
      put_int (out, "cost_cents", line->cents);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

static void
put_missing (JsonBuilder             *out,
             const SteadRecipeAnswer *answer)
{
  json_builder_set_member_name (out, "missing");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->stocks->len; i++)
    {
      const SteadRecipeStock *stock = answer->stocks->pdata[i];

      if (stock->missing == NULL)
        continue;
      json_builder_begin_object (out);
      put_text (out, "item", stock->name);
      put_real (out, "missing_base", stock->missing_base);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

char *
stead_question_recipe (SteadStore   *store,
                       gint64        id,
                       JsonBuilder  *out,
                       GError      **error)
{
  static const char * const kinds[] = {
    "unknown", "hot", "cold", "frozen", "shelf", "hold", "acid", "acidified", "dry", "not_sealed",
  };
  g_autoptr(SteadRecipeAnswer) answer = stead_recipe_answer_new (store, id, 0, error);

  if (answer == NULL)
    return NULL;
  G_STATIC_ASSERT (G_N_ELEMENTS (kinds) == STEAD_FOOD_NOT_SEALED + 1);
  put_text (out, "recipe", answer->recipe->name);
  put_text (out, "makes", answer->recipe->item_name);
  put_text (out, "currency", answer->farm->currency);
  put_real (out, "made_base", answer->wanted_base);
  put_int (out, "cost_cents", answer->cents);
  put_real (out, "unit_cents", answer->unit_cents);
  put_text (out, "dearest", answer->dearest != NULL ? answer->dearest->name : NULL);
  put_real (out, "minutes", answer->minutes);
  put_int (out, "labor_cents", answer->labor_cents);
  put_real (out, "price_cents", answer->price_cents);
  put_real (out, "return_cents_hour", answer->return_cents);
  put_real (out, "on_hand_makes_base", answer->makes_base);
  put_texts (out, "allergens", answer->allergens);
  put_text (out, "kind", kinds[answer->sauce->kind]);
  put_real (out, "process_min", answer->sauce->process_min);
  put_texts (out, "notes", answer->sauce->notes);
  put_ingredients (out, answer);
  put_missing (out, answer);
  put_plain (out, "stock", answer->stock_text);
  put_text (out, "caution", answer->caution);
  return stead_words_plain (answer->sentence);
}

/* --- kitchen --------------------------------------------------------------------------- */

static void
put_steps (JsonBuilder              *out,
           const SteadKitchenAnswer *answer)
{
  static const char * const verdicts[] = { "no_limit", "open", "met", "met_if_held", "not_met" };

  G_STATIC_ASSERT (G_N_ELEMENTS (verdicts) == STEAD_RUN_NOT_MET + 1);
  json_builder_set_member_name (out, "steps");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadRunLine *line = answer->lines->pdata[i];

      json_builder_begin_object (out);
      put_text (out, "step", line->step->text);
      put_text (out, "limit", line->limit);
      put_text (out, "source", line->source);
      put_real (out, "reading", line->shown != NULL ? line->shown->value : NAN);
      put_text (out, "verdict", verdicts[line->verdict]);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

char *
stead_question_kitchen (SteadStore   *store,
                        gint64        id,
                        JsonBuilder  *out,
                        GError      **error)
{
  g_autoptr(SteadKitchenAnswer) answer = stead_kitchen_answer_new (store, id, error);
  g_autofree char *day = NULL;

  if (answer == NULL)
    return NULL;
  day = stead_day_format (answer->kitchen->batch.started_on, STEAD_DAY_STYLE_ISO);
  put_text (out, "batch", answer->kitchen->batch.name);
  put_text (out, "recipe", answer->kitchen->recipe_name);
  put_text (out, "currency", answer->farm->currency);
  put_text (out, "day", day);
  put_real (out, "wanted_base", answer->kitchen->wanted_base);
  put_real (out, "good_base", answer->harvest != NULL ? answer->harvest->quantity_base : NAN);
  put_real (out, "lost_base", answer->harvest != NULL ? answer->harvest->lost_base : NAN);
  put_real (out, "tasted_base", answer->harvest != NULL ? answer->harvest->tasted_base : NAN);
  put_real (out, "yield_frac", answer->yield_frac);
  put_real (out, "planned_cents", answer->planned_cents);
  put_int (out, "used_cents", answer->used_cents);
  put_real (out, "unit_cents", answer->unit_cents);
  put_int (out, "steps_done", answer->n_done);
  put_int (out, "limits_not_met", answer->n_not_met);
  put_real (out, "worked_minutes", answer->worked_minutes);
  put_steps (out, answer);
  put_text (out, "cost", answer->cost_text);
  put_text (out, "caution", answer->caution);
  return stead_words_plain (answer->sentence);
}
