/* stead-question-make.c - recipes and kitchen batches, asked for as JSON. */
#include "config.h"

#include "answer/stead-kitchen-answer.h"
#include "answer/stead-question-private.h"
#include "answer/stead-recipe-answer.h"
#include "answer/stead-words.h"

#include <math.h>

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
      stead_put_text (out, "item", line->name);
      stead_put_text (out, "amount", line->amount);
      stead_put_text (out, "bought", line->bought);
      stead_put_real (out, "need_base", line->need_base);
      stead_put_real (out, "unit_cents", line->unit_cents);
      stead_put_int (out, "cost_cents", line->cents);
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
      stead_put_text (out, "item", stock->name);
      stead_put_real (out, "missing_base", stock->missing_base);
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
  stead_put_text (out, "recipe", answer->recipe->name);
  stead_put_text (out, "makes", answer->recipe->item_name);
  stead_put_text (out, "currency", answer->farm->currency);
  stead_put_real (out, "made_base", answer->wanted_base);
  stead_put_int (out, "cost_cents", answer->cents);
  stead_put_real (out, "unit_cents", answer->unit_cents);
  stead_put_text (out, "dearest", answer->dearest != NULL ? answer->dearest->name : NULL);
  stead_put_real (out, "minutes", answer->minutes);
  stead_put_int (out, "labor_cents", answer->labor_cents);
  stead_put_real (out, "price_cents", answer->price_cents);
  stead_put_real (out, "return_cents_hour", answer->return_cents);
  stead_put_real (out, "on_hand_makes_base", answer->makes_base);
  put_texts (out, "allergens", answer->allergens);
  stead_put_text (out, "kind", kinds[answer->sauce->kind]);
  stead_put_real (out, "process_min", answer->sauce->process_min);
  put_texts (out, "notes", answer->sauce->notes);
  put_ingredients (out, answer);
  put_missing (out, answer);
  stead_put_plain (out, "stock", answer->stock_text);
  stead_put_text (out, "caution", answer->caution);
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
      stead_put_text (out, "step", line->step->text);
      stead_put_text (out, "limit", line->limit);
      stead_put_text (out, "source", line->source);
      stead_put_real (out, "reading", line->shown != NULL ? line->shown->value : NAN);
      stead_put_text (out, "verdict", verdicts[line->verdict]);
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
  stead_put_text (out, "batch", answer->kitchen->batch.name);
  stead_put_text (out, "recipe", answer->kitchen->recipe_name);
  stead_put_text (out, "currency", answer->farm->currency);
  stead_put_text (out, "day", day);
  stead_put_real (out, "wanted_base", answer->kitchen->wanted_base);
  stead_put_real (out, "good_base", answer->harvest != NULL ? answer->harvest->quantity_base : NAN);
  stead_put_real (out, "lost_base", answer->harvest != NULL ? answer->harvest->lost_base : NAN);
  stead_put_real (out, "tasted_base", answer->harvest != NULL ? answer->harvest->tasted_base : NAN);
  stead_put_real (out, "yield_frac", answer->yield_frac);
  stead_put_real (out, "planned_cents", answer->planned_cents);
  stead_put_int (out, "used_cents", answer->used_cents);
  stead_put_real (out, "unit_cents", answer->unit_cents);
  stead_put_int (out, "steps_done", answer->n_done);
  stead_put_int (out, "limits_not_met", answer->n_not_met);
  stead_put_real (out, "worked_minutes", answer->worked_minutes);
  put_steps (out, answer);
  stead_put_text (out, "cost", answer->cost_text);
  stead_put_text (out, "caution", answer->caution);
  return stead_words_plain (answer->sentence);
}
