/* stead-question-price.c - shared cost, how sure a season is and the best use of what is scarce, as
 * figures for programs.
 *
 * Names are never translated, money is in minor units.
 */
#include "config.h"

#include "answer/stead-best-use.h"
#include "answer/stead-how-sure-answer.h"
#include "answer/stead-joint-answer.h"
#include "answer/stead-question-private.h"
#include "answer/stead-words.h"

#include <math.h>

static void
put_shares (JsonBuilder            *out,
            const SteadJointAnswer *answer,
            const SteadJointPart   *part)
{
  json_builder_set_member_name (out, "share_cents");
  json_builder_begin_object (out);
  for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
    if (answer->usable[method])
      stead_put_int (out, stead_joint_method_id (method), part->share_cents[method]);
  json_builder_end_object (out);
}

static void
put_part (JsonBuilder            *out,
          const SteadJointAnswer *answer,
          const SteadJointPart   *part)
{
  json_builder_begin_object (out);
  stead_put_text (out, "part", part->id);
  stead_put_text (out, "name", part->name);
  stead_put_text (out, "made", part->made);
  stead_put_real (out, "base_per_unit", part->base_per_unit);
  stead_put_real (out, "quantity", part->value[STEAD_JOINT_QUANTITY]);
  stead_put_real (out, "weight_kg", part->value[STEAD_JOINT_WEIGHT]);
  stead_put_real (out, "split_cents", part->value[STEAD_JOINT_SPLIT]);
  stead_put_real (out, "final_cents", part->value[STEAD_JOINT_FINAL]);
  stead_put_real (out, "further_cents", part->value[STEAD_JOINT_FURTHER]);
  put_shares (out, answer, part);
  stead_put_real (out, "unit_cents", stead_joint_unit_cents (part, answer->method));
  stead_put_real (out, "further_adds_cents", part->more_cents);
  json_builder_end_object (out);
}

char *
stead_question_joint (SteadStore   *store,
                      gint64        id,
                      JsonBuilder  *out,
                      GError      **error)
{
  g_autoptr(SteadJointAnswer) answer = stead_joint_answer_new (store, id, error);

  if (answer == NULL)
    return NULL;
  stead_put_text (out, "batch", answer->batch->name);
  stead_put_text (out, "currency", answer->farm->currency);
  stead_put_int (out, "feed_only", answer->feed_only);
  stead_put_int (out, "joint_cents", answer->joint_cents);
  stead_put_text (out, "method", stead_joint_method_id (answer->method));
  json_builder_set_member_name (out, "parts");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->parts->len; i++)
    put_part (out, answer, answer->parts->pdata[i]);
  json_builder_end_array (out);
  stead_put_text (out, "caution", answer->caution);
  return stead_words_plain (answer->sentence);
}

static void
put_range (JsonBuilder      *out,
           const SteadRange *range)
{
  static const char * const kinds[] = { "sold", "yield", "input", "day_cents" };

  json_builder_begin_object (out);
  stead_put_text (out, "kind", kinds[range->kind]);
  stead_put_text (out, "name", range->name);
  stead_put_real (out, "lowest", range->value.low);
  stead_put_real (out, "likeliest", range->value.likely);
  stead_put_real (out, "highest", range->value.high);
  stead_put_real (out, "lowest_leaves_cents", range->low_cents);
  stead_put_real (out, "highest_leaves_cents", range->high_cents);
  json_builder_end_object (out);
}

char *
stead_question_how_sure (SteadStore   *store,
                         gint64        id,
                         JsonBuilder  *out,
                         GError      **error)
{
  g_autoptr(SteadHowSure) answer = stead_how_sure_new (store, STEAD_PERIOD_12_WEEKS, error);

  if (answer == NULL)
    return NULL;
  stead_put_text (out, "currency", answer->currency);
  stead_put_int (out, "sale_days", answer->n_days);
  stead_put_int (out, "seasons", STEAD_HOW_SURE_DRAWS);
  stead_put_real (out, "likely_cents", answer->solved ? answer->likely_cents : NAN);
  stead_put_real (out, "mean_cents", answer->solved ? answer->mean_cents : NAN);
  stead_put_real (out, "low_cents", answer->solved ? answer->band.low : NAN);
  stead_put_real (out, "middle_cents", answer->solved ? answer->band.likely : NAN);
  stead_put_real (out, "high_cents", answer->solved ? answer->band.high : NAN);
  stead_put_real (out, "loss_chance", answer->solved ? answer->loss_frac : NAN);
  stead_put_real (out, "target_cents", answer->target_cents);
  stead_put_real (out, "target_chance", answer->solved ? answer->target_frac : NAN);
  json_builder_set_member_name (out, "ranges");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->ranges->len; i++)
    put_range (out, answer->ranges->pdata[i]);
  json_builder_end_array (out);
  return stead_words_plain (answer->sentence);
}

static void
put_scarce (JsonBuilder       *out,
            const SteadScarce *scarce)
{
  json_builder_begin_object (out);
  stead_put_text (out, "name", scarce->name);
  stead_put_real (out, "amount", scarce->amount);
  stead_put_real (out, "planned", scarce->planned);
  stead_put_real (out, "unused", scarce->unused);
  stead_put_real (out, "told_by", stead_scarce_telling (scarce));
  stead_put_real (out, "one_more_cents", scarce->worth_cents);
  stead_put_real (out, "holds_from", scarce->low);
  stead_put_real (out, "holds_to", scarce->high);
  json_builder_end_object (out);
}

static void
put_product (JsonBuilder        *out,
             const SteadBestUse *answer,
             guint               at)
{
  const SteadBestUseLine *line = answer->lines->pdata[at];

  json_builder_begin_object (out);
  stead_put_text (out, "product", line->name);
  stead_put_real (out, "left_cents", line->price_cents - line->own_cents);
  stead_put_real (out, "planned_units", line->planned);
  stead_put_real (out, "least_units", line->least);
  stead_put_real (out, "most_units", line->most);
  stead_put_real (out, "best_units", line->best);
  stead_put_real (out, "one_more_sold_cents", line->most_cents);
  stead_put_real (out, "same_plan_from_cents", line->price_low);
  stead_put_real (out, "same_plan_to_cents", line->price_high);
  json_builder_set_member_name (out, "takes");
  json_builder_begin_object (out);
  for (guint k = 0; k < answer->scarce->len; k++)
    if (stead_best_use_taken (answer, at, k) > 0)
      stead_put_real (out, ((SteadScarce *) answer->scarce->pdata[k])->name, stead_best_use_taken (answer, at, k));
  json_builder_end_object (out);
  json_builder_end_object (out);
}

char *
stead_question_best_use (SteadStore   *store,
                         gint64        id,
                         JsonBuilder  *out,
                         GError      **error)
{
  g_autoptr(SteadBestUse) answer = stead_best_use_new (store, STEAD_PERIOD_12_WEEKS, error);

  if (answer == NULL)
    return NULL;
  stead_put_text (out, "currency", answer->currency);
  stead_put_real (out, "plan_cents", answer->plan_cents);
  stead_put_real (out, "best_cents", answer->solved ? answer->best_cents : NAN);
  stead_put_int (out, "clashing", answer->n_clashing);
  json_builder_set_member_name (out, "products");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->lines->len; i++)
    put_product (out, answer, i);
  json_builder_end_array (out);
  json_builder_set_member_name (out, "scarce");
  json_builder_begin_array (out);
  for (guint k = 0; k < answer->scarce->len; k++)
    put_scarce (out, answer->scarce->pdata[k]);
  json_builder_end_array (out);
  return stead_words_plain (answer->sentence);
}
