/* stead-question.c - every question by name, with its figures as JSON.
 *
 * The names of the figures are for programs and never translated: money in
 * minor units (…_cents), amounts in SI (…_kg), days as 2026-03-03.  A figure that
 * does not exist is null.
 */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-due-answer.h"
#include "answer/stead-price-answer.h"
#include "answer/stead-question-private.h"
#include "answer/stead-question.h"
#include "answer/stead-subject.h"

#include <glib/gi18n-lib.h>

static const SteadQuestion questions[] = {
  { "cost", N_("What does one unit really cost us?"), "product" },
  { "price", N_("What price covers it, and how many must we sell?"), "product" },
  { "joint", N_("How do the products of one batch share its cost, and does more work on one pay?"), "batch" },
  { "how-sure", N_("How sure is it that the season pays?"), NULL },
  { "best-use", N_("What is the best use of what is scarce?"), NULL },
  { "flock", N_("How is this flock doing, and what will it give?"), "flock" },
  { "fish", N_("How are these fish doing, and when can they be sold?"), "fish" },
  { "crop", N_("How is this crop doing, when can it be picked, and how much?"), "crop" },
  { "greenhouse", N_("What does it cost to keep this bay warm?"), "bay" },
  { "water", N_("How is this water, where is it going, and what does it need?"), "water" },
  { "recipe", N_("What does one of it cost, what is in it, and what is missing?"), "recipe" },
  { "kitchen", N_("What has to be done, which limits were met, and what came of it?"), "kitchen" },
  { "checks", N_("What must be checked, against what, and what cannot be sold as planned?"), "recipe" },
  { "batch", N_("How does this batch stand beside its plan, and why did it end so?"), "batch" },
  { "due", N_("What is due, and what is wrong?"), NULL },
  { "stock", N_("What is in the store room, and what will run out?"), NULL },
  { "store-room", N_("What is where, what must be bought, used soon, and what was wasted?"), NULL },
  { "trace", N_("Where did this lot come from, and where is all of it now?"), "lot" },
  { "cash", N_("What money is there, and what in the cash book needs a look?"), "account" },
  { "statement", N_("What came in, what did we earn, and what is the farm worth?"), "enterprise" },
  { "sale", N_("How many should we bring to this sale, and what did it bring?"), "sale" },
  { "season", N_("Which sales, products and places do best?"), NULL },
  { "class", N_("Who works on the farm, and what does each still need?"), NULL },
  { "hours", N_("Who worked how long, and at what?"), "person" },
  { "results", N_("What did we earn together, and what is each one's share?"), "enterprise" },
  { "build", N_("What does this build take, who pays, and when is it paid for?"), "build" },
};

const SteadQuestion *
stead_question_list (gsize *n_questions)
{
  g_return_val_if_fail (n_questions != NULL, NULL);
  *n_questions = G_N_ELEMENTS (questions);
  return questions;
}

/* --- figures ------------------------------------------------------------------ */

static const char *
part_name (SteadCostKind kind)
{
  switch (kind)
    {
    case STEAD_COST_FEED: return "feed";
    case STEAD_COST_START: return "start";
    case STEAD_COST_BEDDING: return "bedding";
    case STEAD_COST_SUPPLIES: return "supplies";
    case STEAD_COST_ASSETS: return "assets";
    case STEAD_COST_OVERHEAD: return "overhead";
    case STEAD_COST_PACKAGING: return "packaging";
    case STEAD_COST_LABOR: return "labor";
    default: g_return_val_if_reached ("");
    }
}

static void
put_cost (JsonBuilder           *out,
          const SteadCostAnswer *cost)
{
  const SteadCostSheet *sheet = &cost->sheet;

  stead_put_text (out, "product", cost->product->name);
  stead_put_text (out, "batch", stead_cost_answer_source (cost));
  stead_put_text (out, "currency", cost->farm->currency);
  stead_put_text (out, "period", stead_period_id (cost->period));
  stead_put_day (out, "from", cost->from);
  stead_put_day (out, "to", cost->to);
  if (cost->kitchen != NULL)
    {
      stead_put_int (out, "kitchen_batches", cost->kitchen->runs->len);
      stead_put_int (out, "from_recipe", cost->kitchen->basis == STEAD_KITCHEN_RECIPE);
    }
  else if (cost->money == NULL)
    {
      stead_put_int (out, "eggs", cost->totals.eggs);
      stead_put_int (out, "cracked", cost->totals.cracked);
    }
  else
    {
      stead_put_real (out, "cost_so_far_cents", cost->money->cost.so_far_cents);
      stead_put_real (out, "cost_to_come_cents", cost->money->cost.to_come_cents);
      stead_put_real (out, "output_so_far", cost->money->cost.good_base);
      stead_put_real (out, "output_expected", cost->money->cost.expected_base);
    }
  stead_put_real (out, "made_units", sheet->made_units);
  stead_put_real (out, "good_units", sheet->good_units);
  stead_put_int (out, "unit_cents", sheet->unit_cents);
  stead_put_int (out, "unit_with_labor_cents", sheet->unit_labor_cents);
  stead_put_int (out, "unit_cash_cents", sheet->unit_cash_cents);
  stead_put_real (out, "unit_loss_cents", sheet->loss_unit_cents);
  json_builder_set_member_name (out, "parts");
  json_builder_begin_object (out);
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    {
      json_builder_set_member_name (out, part_name (kind));
      json_builder_begin_object (out);
      stead_put_real (out, "total_cents", sheet->parts[kind].total_cents);
      stead_put_real (out, "gift_cents", sheet->parts[kind].gift_cents);
      stead_put_real (out, "unit_cents", sheet->parts[kind].unit_cents);
      stead_put_int (out, "shown_cents", sheet->parts[kind].shown_cents);
      json_builder_end_object (out);
    }
  json_builder_end_object (out);
  stead_put_text (out, "caution", cost->caution);
}

static char *
ask_cost (SteadStore   *store,
          gint64        id,
          JsonBuilder  *out,
          GError      **error)
{
  g_autoptr(SteadCostAnswer) answer = stead_cost_answer_new (store, id, STEAD_PERIOD_12_WEEKS, error);

  if (answer == NULL)
    return NULL;
  put_cost (out, answer);
  return stead_words_plain (answer->sentence);
}

static char *
ask_price (SteadStore   *store,
           gint64        id,
           JsonBuilder  *out,
           GError      **error)
{
  g_autoptr(SteadPriceAnswer) answer = stead_price_answer_new (store, id, STEAD_PERIOD_12_WEEKS, error);
  const SteadCvpFigures *figures;

  if (answer == NULL)
    return NULL;
  figures = &answer->figures;
  stead_put_text (out, "product", answer->cost->product->name);
  stead_put_text (out, "currency", answer->cost->farm->currency);
  stead_put_real (out, "price_cents", answer->cvp.price_cents);
  stead_put_count (out, "price_on_file_cents", answer->price_on_file);
  stead_put_real (out, "unit_cents", answer->cvp.variable_cents);
  stead_put_real (out, "fixed_cents", answer->cvp.fixed_cents);
  stead_put_real (out, "step_cents", answer->cvp.step_cents);
  stead_put_real (out, "step_units", answer->cvp.step_units);
  stead_put_real (out, "planned_units", answer->cvp.planned_units);
  stead_put_real (out, "target_cents", answer->cvp.target_cents);
  stead_put_real (out, "margin_cents", figures->margin_cents);
  stead_put_real (out, "margin_frac", figures->margin_frac);
  stead_put_real (out, "break_even_units", figures->even_units);
  stead_put_count (out, "break_even_whole_units", figures->even_whole_units);
  stead_put_count (out, "lasting_break_even_units", figures->lasting_whole_units);
  stead_put_real (out, "profit_cents", figures->profit_cents);
  stead_put_real (out, "safety_units", figures->safety_units);
  stead_put_int (out, "safety_whole_units", figures->safety_whole_units);
  stead_put_real (out, "leverage", figures->leverage);
  stead_put_count (out, "target_whole_units", figures->target_whole_units);
  stead_put_real (out, "needed_price_cents", figures->needed_price_cents);
  stead_put_plain (out, "advice", answer->advice);
  stead_put_text (out, "caution", answer->cost->caution);
  return stead_words_plain (answer->sentence);
}

static char *
ask_due (SteadStore   *store,
         gint64        id,
         JsonBuilder  *out,
         GError      **error)
{
  static const char * const kinds[] = { "task", "warning", "done" };
  g_autoptr(SteadDueAnswer) answer = stead_due_answer_new (store, error);

  if (answer == NULL)
    return NULL;
  stead_put_day (out, "today", stead_store_get_today (store));
  stead_put_int (out, "tasks", answer->n_tasks);
  stead_put_int (out, "warnings", answer->n_warnings);
  json_builder_set_member_name (out, "list");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->dues->len; i++)
    {
      const SteadDue *due = answer->dues->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "kind", kinds[due->kind]);
      stead_put_text (out, "text", due->text);
      stead_put_text (out, "detail", due->detail);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
  return stead_words_plain (answer->sentence);
}

/* --- asking -------------------------------------------------------------------- */

static const SteadQuestion *
find_question (const char  *name,
               GError     **error)
{
  g_autoptr(GString) names = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (questions); i++)
    if (g_str_equal (questions[i].name, name))
      return &questions[i];
  names = g_string_new (questions[0].name);
  for (gsize i = 1; i < G_N_ELEMENTS (questions); i++)
    g_string_append_printf (names, ", %s", questions[i].name);
  g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
               _("There is no question “%s”. Ask for one of these: %s."), name, names->str);
  return NULL;
}

static gboolean
find_subject (SteadStore           *store,
              const SteadQuestion  *question,
              const char           *of,
              gint64               *id,
              GError              **error)
{
  if (question->of == NULL)
    return TRUE;
  /* Money is told of all, unless one account or one part of the farm is asked for. */
  if (g_str_equal (question->of, "account"))
    return of == NULL || stead_subject_account (store, of, id, error);
  if (g_str_equal (question->of, "enterprise"))
    return of == NULL || stead_subject_enterprise (store, of, id, error);
  /* So are hours. */
  if (g_str_equal (question->of, "person"))
    {
      g_autoptr(SteadPerson) person = of != NULL ? stead_subject_person (store, of, error) : NULL;

      *id = person != NULL ? person->id : 0;
      return of == NULL || person != NULL;
    }
  if (g_str_equal (question->of, "product"))
    return stead_subject_product (store, of, id, error);
  if (g_str_equal (question->of, "fish"))
    return stead_subject_fish (store, of, id, error);
  if (g_str_equal (question->of, "crop"))
    return stead_subject_crop (store, of, id, error);
  if (g_str_equal (question->of, "bay"))
    return stead_subject_bay (store, of, id, error);
  if (g_str_equal (question->of, "batch"))
    return stead_subject_batch (store, of, id, error);
  if (g_str_equal (question->of, "recipe"))
    return stead_subject_recipe (store, of, id, error);
  if (g_str_equal (question->of, "kitchen"))
    return stead_subject_kitchen (store, of, id, error);
  if (g_str_equal (question->of, "sale"))
    return stead_subject_sale (store, of, id, error);
  if (g_str_equal (question->of, "build"))
    return stead_subject_build (store, of, id, error);
  if (g_str_equal (question->of, "lot"))
    return stead_subject_lot (store, of, id, error);
  if (g_str_equal (question->of, "water"))
    return stead_subject_water (store, of, id, error);
  return stead_subject_flock (store, of, id, error);
}

gboolean
stead_question_ask (SteadStore  *store,
                    const char  *name,
                    const char  *of,
                    char       **out_sentence,
                    JsonNode   **out_figures,
                    GError     **error)
{
  static char *(*const asks[]) (SteadStore *, gint64, JsonBuilder *, GError **) = {
    ask_cost, ask_price, stead_question_joint, stead_question_how_sure, stead_question_best_use,
    stead_question_flock, stead_question_fish,
    stead_question_crop, stead_question_greenhouse, stead_question_water, stead_question_recipe, stead_question_kitchen,
    stead_question_checks, stead_question_batch, ask_due, stead_question_stock, stead_question_store_room,
    stead_question_trace,
    stead_question_ask_cash, stead_question_ask_statement,
    stead_question_sale, stead_question_season,
    stead_question_class, stead_question_hours, stead_question_results,
    stead_question_build,
  };
  const SteadQuestion *question;
  g_autoptr(JsonBuilder) figures = NULL;
  gint64 id = 0;
  char *sentence;

  g_return_val_if_fail (STEAD_IS_STORE (store) && name != NULL, FALSE);
  g_return_val_if_fail (out_sentence != NULL && out_figures != NULL, FALSE);
  G_STATIC_ASSERT (G_N_ELEMENTS (asks) == G_N_ELEMENTS (questions));

  question = find_question (name, error);
  if (question == NULL || !find_subject (store, question, of, &id, error))
    return FALSE;
  figures = json_builder_new ();
  json_builder_begin_object (figures);
  sentence = asks[question - questions] (store, id, figures, error);
  if (sentence == NULL)
    return FALSE;
  json_builder_end_object (figures);
  *out_sentence = sentence;
  *out_figures = json_builder_get_root (figures);
  return TRUE;
}
