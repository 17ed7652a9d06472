/* stead-question-check.c - the checks of a recipe, asked for as JSON. */
#include "config.h"

#include "answer/stead-check-plan-answer.h"
#include "answer/stead-question-private.h"

static void
put_rows (JsonBuilder     *out,
          const GPtrArray *rows)
{
  json_builder_set_member_name (out, "rows");
  json_builder_begin_array (out);
  for (guint i = 0; i < rows->len; i++)
    json_builder_add_string_value (out, ((const SteadLimit *) rows->pdata[i])->id);
  json_builder_end_array (out);
}

static void
put_lines (JsonBuilder                *out,
           const SteadCheckPlanAnswer *answer)
{
  json_builder_set_member_name (out, "checks");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadCheckSaid *said = answer->lines->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "key", said->key);
      stead_put_text (out, "stage", stead_check_stage_id (said->line->stage));
      stead_put_text (out, "text", said->text);
      stead_put_text (out, "own", said->own);
      stead_put_text (out, "reason", said->reason);
      stead_put_text (out, "source", said->source);
      stead_put_text (out, "measure", said->line->measure);
      put_rows (out, said->line->rows);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

static void
put_questions (JsonBuilder                *out,
               const SteadCheckPlanAnswer *answer)
{
  json_builder_set_member_name (out, "questions");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->questions->len; i++)
    {
      const SteadCheckAsked *asked = answer->questions->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "key", stead_check_key_id (asked->question->key));
      stead_put_text (out, "food", asked->food);
      stead_put_text (out, "text", asked->text);
      json_builder_set_member_name (out, "answers");
      json_builder_begin_array (out);
      for (gsize w = 0; asked->question->words[w] != NULL; w++)
        json_builder_add_string_value (out, asked->question->words[w]);
      json_builder_end_array (out);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

static void
put_stops (JsonBuilder                *out,
           const SteadCheckPlanAnswer *answer)
{
  json_builder_set_member_name (out, "stops");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->stops->len; i++)
    {
      const SteadCheckStopped *stopped = answer->stops->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "stop", stead_check_stop_id (stopped->stop->kind));
      stead_put_text (out, "row", stopped->stop->row->id);
      stead_put_text (out, "text", stopped->text);
      stead_put_text (out, "way", stopped->way);
      stead_put_text (out, "source", stopped->source);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

char *
stead_question_checks (SteadStore   *store,
                       gint64        id,
                       JsonBuilder  *out,
                       GError      **error)
{
  const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_RECIPE, .id = id, .day = STEAD_DAY_NONE };
  g_autoptr(SteadCheckPlanAnswer) answer = stead_check_plan_answer_new (store, &order, error);

  if (answer == NULL)
    return NULL;
  stead_put_text (out, "recipe", g_array_index (answer->menu->foods, SteadCheckFood, 0).name);
  put_stops (out, answer);
  put_questions (out, answer);
  put_lines (out, answer);
  stead_put_text (out, "caution", answer->caution);
  return g_strdup (answer->sentence);
}
