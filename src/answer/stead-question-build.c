/* stead-question-build.c - a build as figures for programs.
 *
 * Names are never translated, money is in minor units, lengths in m, areas in m², days as
 * 2026-03-03.  A figure that does not exist is null.
 */
#include "config.h"

#include "answer/stead-build-path.h"
#include "answer/stead-question-private.h"

#include <gio/gio.h>
#include <math.h>

#define PATHS 20000

static void
put_bill (JsonBuilder            *out,
          const SteadBuildAnswer *answer)
{
  json_builder_set_member_name (out, "bill");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->rows->len; i++)
    {
      const SteadBuildRow *row = answer->rows->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "key", row->key);
      stead_put_text (out, "name", row->name);
      stead_put_real (out, "drawn", row->drawn);
      stead_put_real (out, "packs", row->packs);
      stead_put_real (out, "came", row->came);
      stead_put_count (out, "price_cents", row->price_cents);
      stead_put_int (out, "planned_cents", row->planned_cents);
      stead_put_int (out, "paid_cents", row->paid_cents);
      stead_put_int (out, "given", row->given);
      stead_put_int (out, "left_out", row->left_out);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

static void
put_rooms (JsonBuilder            *out,
           const SteadBuildAnswer *answer)
{
  json_builder_set_member_name (out, "room");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->rooms->len; i++)
    {
      const SteadBuildRoom *room = answer->rooms->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "what", room->what);
      stead_put_text (out, "needed", room->need);
      stead_put_text (out, "planned", room->has);
      stead_put_int (out, "too_small", room->is_short);
      stead_put_text (out, "source", room->source);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

static void
put_steps (JsonBuilder          *out,
           const SteadBuildPath *path)
{
  json_builder_set_member_name (out, "steps");
  json_builder_begin_array (out);
  for (guint i = 0; i < path->steps->len; i++)
    {
      const SteadBuildStep *step = path->steps->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "what", step->name);
      stead_put_int (out, "days", step->days);
      stead_put_day (out, "can_begin_on", step->can_begin);
      stead_put_day (out, "begin_by", step->begin_by);
      stead_put_day (out, "done_by", step->done_by);
      stead_put_real (out, "days_to_spare", step->can_begin != STEAD_DAY_NONE ? (double) step->spare : NAN);
      json_builder_set_member_name (out, "decides");
      json_builder_add_boolean_value (out, step->decides);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

static void
put_path (JsonBuilder          *out,
          const SteadBuildPath *path)
{
  stead_put_day (out, "half_sure_on", path->days[0]);
  stead_put_day (out, "sure_80_on", path->days[1]);
  stead_put_day (out, "sure_95_on", path->days[2]);
  stead_put_real (out, "chance_by_wanted_day", path->chance_goal);
  stead_put_count (out, "sale_days_needed", path->sales_needed);
  stead_put_day (out, "next_sale_on", path->next_on);
  stead_put_real (out, "next_sale_must_clear_cents", path->next_on != STEAD_DAY_NONE ? path->next_cents : NAN);
  json_builder_set_member_name (out, "helps");
  json_builder_begin_array (out);
  for (guint i = 0; i < path->tries->len; i++)
    {
      const SteadBuildTry *try = path->tries->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "what", try->text);
      stead_put_day (out, "sure_80_on", try->day);
      stead_put_int (out, "days_earlier", try->days);
      stead_put_real (out, "chance_by_wanted_day", try->chance);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
  stead_put_day (out, "money_by", path->money_by);
  stead_put_real (out, "chance_of_money_by_then", path->chance_money);
  stead_put_day (out, "work_by", path->work_by);
  put_steps (out, path);
}

static void
put_cautions (JsonBuilder            *out,
              const SteadBuildAnswer *answer)
{
  json_builder_set_member_name (out, "cautions");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->cautions->len; i++)
    json_builder_add_string_value (out, answer->cautions->pdata[i]);
  json_builder_end_array (out);
}

/* What it takes, who pays, and when: the sentences of Fund, one after the other. */
static char *
sentence (const SteadBuildAnswer *answer,
          const SteadBuildPath   *path)
{
  g_autofree char *markup = g_strjoin (" ", answer->sentence, answer->money_sentence, path->sentence, NULL);

  return stead_words_plain (markup);
}

char *
stead_question_build (SteadStore   *store,
                      gint64        id,
                      JsonBuilder  *out,
                      GError      **error)
{
  g_autoptr(SteadBuildAnswer) answer = stead_build_answer_new (store, id, error);
  g_autoptr(SteadBuildPath) path = answer == NULL ? NULL : stead_build_path_new (store, answer, error);

  if (path == NULL || !stead_build_path_run (path, PATHS, NULL, error))
    return NULL;
  stead_put_text (out, "build", answer->build->name);
  stead_put_text (out, "currency", answer->farm->currency);
  stead_put_day (out, "wanted_by", answer->build->goal_on);
  stead_put_day (out, "finished_on", answer->build->finished_on);
  stead_put_real (out, "area_m2", answer->takeoff != NULL ? answer->takeoff->area_m2 : NAN);
  stead_put_real (out, "perimeter_m", answer->takeoff != NULL ? answer->takeoff->perimeter_m : NAN);
  stead_put_int (out, "goal_cents", answer->goal_cents);
  stead_put_int (out, "spent_cents", answer->spent_cents);
  stead_put_int (out, "to_buy_cents", answer->bill.bought_cents);
  stead_put_int (out, "tax_cents", answer->bill.tax_cents);
  stead_put_int (out, "contingency_cents", answer->bill.contingency_cents);
  stead_put_int (out, "given_cents", answer->bill.given_cents);
  stead_put_int (out, "without_price", answer->n_unpriced);
  stead_put_int (out, "free_cents", answer->free_cents);
  stead_put_int (out, "grants_cents", answer->bound_cents);
  stead_put_real (out, "funded_frac", answer->share);
  stead_put_int (out, "pledged_cents", answer->pledged_cents);
  stead_put_int (out, "yearly_cents", answer->yearly_cents);
  stead_put_int (out, "wear_cents", answer->wear_cents);
  put_path (out, path);
  put_bill (out, answer);
  put_rooms (out, answer);
  put_cautions (out, answer);
  return sentence (answer, path);
}
