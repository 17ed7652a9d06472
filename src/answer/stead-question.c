/* stead-question.c - every question by name, with its figures as JSON.
 *
 * The names of the figures are for programs and never translated: money in
 * minor units (…_cents), amounts in SI (…_kg), days as 2026-03-03.  A figure that
 * does not exist is null.
 */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-batch-answer.h"
#include "answer/stead-crop-answer.h"
#include "answer/stead-due-answer.h"
#include "answer/stead-fish-answer.h"
#include "answer/stead-flock-answer.h"
#include "answer/stead-greenhouse-answer.h"
#include "answer/stead-price-answer.h"
#include "answer/stead-question-private.h"
#include "answer/stead-question.h"
#include "answer/stead-stock-answer.h"
#include "answer/stead-store-room-answer.h"
#include "answer/stead-subject.h"
#include "answer/stead-trace-answer.h"
#include "answer/stead-water-answer.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const SteadQuestion questions[] = {
  { "cost", N_("What does one unit really cost us?"), "product" },
  { "price", N_("What price covers it, and how many must we sell?"), "product" },
  { "joint", N_("How do the products of one batch share its cost, and does more work on one pay?"), "batch" },
  { "how-sure", N_("How sure is it that the season pays?"), NULL },
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

/* Each coming week with its band: eight times in ten the eggs lie in it. */
static void
put_weeks_ahead (JsonBuilder            *out,
                 const SteadFlockAnswer *answer,
                 SteadDay                today)
{
  json_builder_set_member_name (out, "learned_from_log");
  json_builder_add_boolean_value (out, answer->is_learned);
  json_builder_set_member_name (out, "weeks_ahead");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->ahead->len; i++)
    {
      const SteadLayAhead *week = &g_array_index (answer->ahead, SteadLayAhead, i);

      json_builder_begin_object (out);
      stead_put_day (out, "first_day", today + 7 * (SteadDay) i);
      stead_put_real (out, "eggs_low", week->eggs.low);
      stead_put_real (out, "eggs_likely", week->eggs.likely);
      stead_put_real (out, "eggs_high", week->eggs.high);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

static char *
ask_flock (SteadStore   *store,
           gint64        id,
           JsonBuilder  *out,
           GError      **error)
{
  g_autoptr(SteadFlockAnswer) answer = stead_flock_answer_new (store, id, error);

  if (answer == NULL)
    return NULL;
  stead_put_text (out, "flock", answer->flock->name);
  stead_put_text (out, "currency", answer->farm->currency);
  stead_put_int (out, "hens_alive", answer->alive);
  stead_put_int (out, "hens_housed", answer->flock->birds);
  stead_put_real (out, "age_weeks", answer->age_weeks);
  stead_put_int (out, "eggs_last_week", answer->week.eggs);
  stead_put_int (out, "eggs_so_far", answer->so_far.eggs);
  stead_put_int (out, "cracked_so_far", answer->so_far.cracked);
  stead_put_int (out, "hens_lost_so_far", answer->so_far.deaths);
  stead_put_real (out, "laying_frac", answer->week_frac);
  stead_put_real (out, "expected_frac", answer->expected_frac);
  stead_put_real (out, "feed_per_dozen_kg", answer->feed_per_dozen_kg);
  stead_put_real (out, "feed_on_hand_kg", answer->feed_on_hand_kg);
  stead_put_real (out, "feed_use_kg_day", answer->feed_use_kg_day);
  stead_put_real (out, "feed_days", answer->feed_days);
  stead_put_real (out, "next_week_dozens", answer->next_dozens);
  put_weeks_ahead (out, answer, stead_store_get_today (store));
  stead_put_int (out, "cost_so_far_cents", answer->cost_in_cents);
  stead_put_text (out, "fit_note", answer->fit_note);
  stead_put_text (out, "caution", answer->caution);
  return stead_words_plain (answer->sentence);
}

static void
put_band (JsonBuilder     *out,
          const char      *name,
          const SteadBand *band)
{
  json_builder_set_member_name (out, name);
  json_builder_begin_object (out);
  stead_put_real (out, "low", band->low);
  stead_put_real (out, "likely", band->likely);
  stead_put_real (out, "high", band->high);
  json_builder_end_object (out);
}

static void
put_harvest (JsonBuilder           *out,
             const SteadFishAnswer *answer)
{
  static const char * const cuts[] = { "headed", "fillet", "hand_fillet", "gutted" };

  stead_put_real (out, "ready_frac", answer->share_ready);
  stead_put_day (out, "sale_day", answer->sale_day);
  stead_put_day (out, "sale_soonest", answer->sale_soonest);
  stead_put_day (out, "sale_latest", answer->sale_latest);
  stead_put_text (out, "no_sale", answer->no_sale);
  put_band (out, "harvest_fish", &answer->harvest_fish);
  put_band (out, "harvest_kg", &answer->harvest_kg);
  stead_put_real (out, "purged_kg", answer->purged_kg);
  stead_put_day (out, "purge_day", answer->purge_day);
  json_builder_set_member_name (out, "dressed_kg");
  json_builder_begin_object (out);
  for (guint i = 0; i < answer->dressed->len; i++)
    {
      const SteadFishDressed *dressed = &g_array_index (answer->dressed, SteadFishDressed, i);

      stead_put_real (out, cuts[dressed->cut], dressed->kg);
    }
  json_builder_end_object (out);
}

static char *
ask_fish (SteadStore   *store,
          gint64        id,
          JsonBuilder  *out,
          GError      **error)
{
  g_autoptr(SteadFishAnswer) answer = stead_fish_answer_new (store, id, error);

  if (answer == NULL)
    return NULL;
  stead_put_text (out, "fish", answer->group->batch.name);
  stead_put_text (out, "species", answer->group->species);
  stead_put_text (out, "currency", answer->farm->currency);
  stead_put_int (out, "alive", answer->alive);
  stead_put_real (out, "survival_frac", answer->survival_frac);
  put_band (out, "mean_g", &answer->mean_g);
  stead_put_real (out, "tgc_x100", answer->tgc_x100);
  stead_put_int (out, "weighings_learned", (gint64) answer->n_learned);
  stead_put_day (out, "last_weighed", answer->last_weighed);
  stead_put_real (out, "biomass_kg", answer->biomass_kg);
  stead_put_real (out, "density_kg_m3", answer->density_kg_m3);
  stead_put_real (out, "water_c", answer->water_c);
  stead_put_real (out, "expected_water_c", answer->ahead_c);
  stead_put_real (out, "feed_kg", answer->feed_kg);
  stead_put_day (out, "feed_on", answer->feed_on);
  stead_put_text (out, "no_feed", answer->no_rate);
  stead_put_real (out, "feed_on_hand_kg", answer->feed_on_hand_kg);
  stead_put_real (out, "feed_days", answer->feed_days);
  stead_put_real (out, "feed_so_far_kg", answer->so_far.feed_kg);
  stead_put_real (out, "feed_for_gain", answer->fcr);
  stead_put_real (out, "condition", answer->condition);
  put_harvest (out, answer);
  stead_put_int (out, "cost_so_far_cents", answer->cost_in_cents);
  stead_put_text (out, "caution", answer->caution);
  stead_put_text (out, "rule", answer->rule);
  return stead_words_plain (answer->sentence);
}

static char *
ask_crop (SteadStore   *store,
          gint64        id,
          JsonBuilder  *out,
          GError      **error)
{
  g_autoptr(SteadCropAnswer) answer = stead_crop_answer_new (store, id, error);

  if (answer == NULL)
    return NULL;
  stead_put_text (out, "crop", answer->crop->batch.name);
  stead_put_int (out, "plants", answer->plants);
  stead_put_int (out, "plants_lost", answer->lost);
  stead_put_real (out, "degree_days_c", answer->from == STEAD_DAY_NONE ? NAN : answer->sum_c);
  stead_put_real (out, "degree_days_filled_in_c", answer->assumed_c);
  stead_put_int (out, "days_without_reading", (gint64) answer->n_gaps);
  stead_put_real (out, "degree_days_needed_c", answer->need_c.likely);
  stead_put_day (out, "first_pick", answer->series.first_ripe);
  stead_put_day (out, "first_pick_early", answer->series.ripe_early);
  stead_put_day (out, "first_pick_late", answer->series.ripe_late);
  stead_put_real (out, "picked_kg", answer->picked.good_base);
  stead_put_real (out, "thrown_out_kg", answer->picked.lost_base);
  stead_put_real (out, "planned_kg", answer->plan_kg);
  put_band (out, "next_week_kg", &answer->next_week);
  put_band (out, "still_to_come_kg", &answer->rest_kg);
  stead_put_day (out, "last_pick_expected", answer->ends_on);
  stead_put_real (out, "picked_of_a_plant_kg", answer->plant_kg);
  stead_put_real (out, "picked_of_a_m2_kg", answer->m2_kg);
  stead_put_real (out, "vapor_pressure_deficit_kpa", answer->deficit_kpa);
  stead_put_real (out, "light_mol_m2_day", answer->light_mol);
  stead_put_real (out, "fish_feed_g_day", answer->feed_g_day);
  stead_put_text (out, "caution", answer->caution);
  return stead_words_plain (answer->sentence);
}

static char *
ask_greenhouse (SteadStore   *store,
                gint64        id,
                JsonBuilder  *out,
                GError      **error)
{
  g_autoptr(SteadGreenhouseAnswer) answer = stead_greenhouse_answer_new (store, id, error);
  gboolean known;

  if (answer == NULL)
    return NULL;
  known = answer->house != NULL && answer->has_year;
  stead_put_text (out, "bay", answer->place);
  stead_put_text (out, "currency", answer->farm->currency);
  stead_put_text (out, "fuel", answer->house != NULL ? stead_fuel_id (answer->house->fuel) : NULL);
  stead_put_real (out, "loss_w_c", answer->house != NULL ? answer->ua_w_c : NAN);
  stead_put_real (out, "heat_kwh", known ? answer->all.heat_kwh : NAN);
  stead_put_real (out, "fuel_amount", known ? answer->all.fuel : NAN);
  stead_put_real (out, "heat_cents", known ? answer->all.cents : NAN);
  stead_put_real (out, "heater_least_w", answer->heater_min_w);
  stead_put_real (out, "heater_most_w", answer->heater_max_w);
  stead_put_real (out, "fan_m3_h", answer->house != NULL ? answer->fan_m3_h : NAN);
  json_builder_set_member_name (out, "months_cents");
  json_builder_begin_array (out);
  for (int i = 0; known && i < 12; i++)
    json_builder_add_double_value (out, answer->months[i].cents);
  json_builder_end_array (out);
  stead_put_text (out, "caution", answer->caution);
  return stead_words_plain (answer->sentence);
}

/* Names of measures, in core's order. */
static const char * const measure_names[STEAD_N_WATER_MEASURES] = {
  [STEAD_WATER_TEMPERATURE] = "temperature_c", [STEAD_WATER_PH] = "ph", [STEAD_WATER_TAN] = "tan_mgl",
  [STEAD_WATER_NH3N] = "nh3_n_mgl", [STEAD_WATER_NITRITE] = "nitrite_mgl", [STEAD_WATER_NITRATE] = "nitrate_mgl",
  [STEAD_WATER_OXYGEN] = "oxygen_mgl", [STEAD_WATER_OXYGEN_SHARE] = "oxygen_frac",
  [STEAD_WATER_ALKALINITY] = "alkalinity_mgl", [STEAD_WATER_HARDNESS] = "hardness_mgl",
  [STEAD_WATER_CONDUCTIVITY] = "conductivity_us_cm", [STEAD_WATER_CHLORINE] = "chlorine_mgl",
  [STEAD_WATER_CHLORIDE] = "chloride_mgl",
};

static void
put_measure (JsonBuilder            *out,
             const SteadWaterAnswer *answer,
             SteadWaterMeasure       measure)
{
  static const char * const verdicts[] = { NULL, "no_limit_passed", "watch", "act", "impossible" };
  const SteadWaterLine *line = &answer->lines[measure];
  const SteadWaterTrend *trend = &answer->trends[measure];
  const SteadWaterLimit *limit = line->judgement.limit;
  SteadWaterBand band;

  stead_water_band (answer->scene.sharers, measure, &band);
  json_builder_set_member_name (out, measure_names[measure]);
  json_builder_begin_object (out);
  stead_put_real (out, "value", line->value);
  stead_put_text (out, "verdict", verdicts[line->judgement.verdict]);
  stead_put_text (out, "source", limit == NULL ? NULL : stead_source_id (limit->source));
  stead_put_real (out, "least", band.min);
  stead_put_real (out, "most", band.max);
  stead_put_real (out, "act_below", band.act_below);
  stead_put_real (out, "act_above", band.act_above);
  stead_put_real (out, "change_a_day", trend->told ? trend->line.slope : NAN);
  stead_put_day (out, "limit_met_on", trend->met_on);
  stead_put_day (out, "limit_met_early", trend->met_early);
  stead_put_day (out, "limit_met_late", trend->met_late);
  json_builder_end_object (out);
}

static char *
ask_water (SteadStore   *store,
           gint64        id,
           JsonBuilder  *out,
           GError      **error)
{
  g_autoptr(SteadWaterAnswer) answer = stead_water_answer_new (store, id, error);
  gboolean fed;

  if (answer == NULL)
    return NULL;
  fed = answer->budget.feed_kg_day > 0;
  stead_put_text (out, "water", answer->water->name);
  stead_put_real (out, "volume_l", answer->volume_l);
  stead_put_day (out, "last_test", answer->last != NULL ? answer->last->day : STEAD_DAY_NONE);
  stead_put_day (out, "next_test", answer->due_on);
  stead_put_int (out, "tests", answer->tests->len);
  stead_put_int (out, "to_act_on", answer->n_act);
  stead_put_int (out, "to_watch", answer->n_watch);
  json_builder_set_member_name (out, "readings");
  json_builder_begin_object (out);
  for (int i = 0; i < STEAD_N_WATER_MEASURES; i++)
    put_measure (out, answer, (SteadWaterMeasure) i);
  json_builder_end_object (out);
  stead_put_real (out, "feed_kg_day", answer->budget.days > 0 ? answer->budget.feed_kg_day : NAN);
  stead_put_real (out, "ammonia_n_g_day", fed ? answer->budget.tan_g_day : NAN);
  stead_put_real (out, "alkalinity_g_day", fed ? answer->budget.alkalinity_g_day : NAN);
  stead_put_text (out, "todo", answer->todo);
  stead_put_text (out, "caution", answer->caution);
  return stead_words_plain (answer->sentence);
}

static void
put_variance (JsonBuilder            *out,
              const SteadBatchAnswer *answer)
{
  const SteadBatchVariance *variance = &answer->variance;
  double none = answer->has_variance ? 0 : NAN;

  stead_put_real (out, "planned_left_cents", variance->planned_cents + none);
  stead_put_real (out, "left_cents", variance->actual_cents + none);
  stead_put_real (out, "price_variance_cents", variance->price_cents + none);
  stead_put_real (out, "volume_variance_cents", variance->volume_cents + none);
  stead_put_real (out, "feed_price_variance_cents", variance->feed_price_cents + none);
  stead_put_real (out, "feed_use_variance_cents", variance->feed_use_cents + none);
  stead_put_real (out, "other_variance_cents", variance->other_cents + none);
  json_builder_set_member_name (out, "review");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->review->len; i++)
    {
      g_autofree char *plain = stead_words_plain (answer->review->pdata[i]);

      json_builder_add_string_value (out, plain);
    }
  json_builder_end_array (out);
}

static char *
ask_batch (SteadStore   *store,
           gint64        id,
           JsonBuilder  *out,
           GError      **error)
{
  static const char * const kinds[] = { "flock", "fish", "crop", "kitchen" };
  static const char * const bases[] = { "none", "plan", "forecast", "over" };
  g_autoptr(SteadBatchAnswer) answer = stead_batch_answer_new (store, id, error);
  const SteadBatchMoney *money;

  if (answer == NULL)
    return NULL;
  money = &answer->money;
  stead_put_text (out, "batch", money->batch->name);
  stead_put_text (out, "kind", kinds[money->batch->kind]);
  stead_put_text (out, "currency", answer->farm->currency);
  stead_put_day (out, "from", money->from);
  stead_put_day (out, "to", money->to);
  stead_put_day (out, "wait_until", answer->wait_until);
  stead_put_text (out, "outlook", bases[money->outlook.basis]);
  stead_put_day (out, "ends_on", money->outlook.ends_on);
  stead_put_real (out, "output_so_far", money->good_base);
  stead_put_real (out, "output_expected", money->outlook.expected_base);
  stead_put_real (out, "output_expected_low", money->outlook.low_base);
  stead_put_real (out, "output_expected_high", money->outlook.high_base);
  stead_put_real (out, "cost_so_far_cents", money->cost.so_far_cents);
  stead_put_real (out, "cost_to_come_cents", money->cost.to_come_cents);
  stead_put_real (out, "output_cost_cents", answer->unit_cents);
  stead_put_int (out, "carried_by_lots_cents", money->cost.carried_cents);
  stead_put_real (out, "fed_kg", money->fed_kg);
  stead_put_int (out, "started", answer->started);
  stead_put_int (out, "lost", answer->lost);
  put_variance (out, answer);
  stead_put_text (out, "caution", answer->caution);
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

static char *
ask_stock (SteadStore   *store,
           gint64        id,
           JsonBuilder  *out,
           GError      **error)
{
  g_autoptr(SteadStockAnswer) answer = stead_stock_answer_new (store, error);

  if (answer == NULL)
    return NULL;
  stead_put_int (out, "value_cents", answer->value_cents);
  json_builder_set_member_name (out, "items");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadStockLine *line = answer->lines->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "item", line->item->name);
      stead_put_text (out, "unit", line->item->unit->id);
      stead_put_real (out, "on_hand", stead_quantity_from_base (line->stock.on_hand_base, line->item->unit));
      stead_put_int (out, "on_hand_cents", line->stock.on_hand_cents);
      stead_put_real (out, "days", line->days);
      json_builder_set_member_name (out, "low");
      json_builder_add_boolean_value (out, line->low);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
  return stead_words_plain (answer->sentence);
}

static void
put_soon (JsonBuilder                *out,
          const SteadStoreRoomAnswer *answer)
{
  json_builder_set_member_name (out, "best_by_soon");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->soon->len; i++)
    {
      const SteadSoonLine *line = answer->soon->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "lot", line->lot->code);
      stead_put_text (out, "item", line->lot->item_name);
      stead_put_int (out, "days", line->days);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
  json_builder_set_member_name (out, "to_buy");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->reorder->len; i++)
    {
      const SteadReorderLine *line = answer->reorder->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "item", line->line->item->name);
      stead_put_text (out, "unit", line->line->item->unit->id);
      stead_put_real (out, "amount", stead_quantity_from_base (line->base, line->line->item->unit));
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

static char *
ask_store_room (SteadStore   *store,
                gint64        id,
                JsonBuilder  *out,
                GError      **error)
{
  g_autoptr(SteadStoreRoomAnswer) answer = stead_store_room_answer_new (store, error);

  if (answer == NULL)
    return NULL;
  stead_put_int (out, "value_cents", answer->stock->value_cents);
  stead_put_int (out, "lost_cents", answer->lost_cents);
  stead_put_int (out, "given_cents", answer->given_cents);
  stead_put_int (out, "counted_cents", answer->counted_cents);
  stead_put_day (out, "last_count", answer->counted_on);
  put_soon (out, answer);
  json_builder_set_member_name (out, "places");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->places->len; i++)
    {
      const SteadPlaceLine *line = answer->places->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "place", line->place_id != 0 ? line->name : NULL);
      stead_put_int (out, "lots", line->n_lots);
      stead_put_int (out, "cents", line->cents);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
  stead_put_text (out, "caution", answer->caution);
  return stead_words_plain (answer->sentence);
}

static void
put_lots (JsonBuilder *out,
          const char  *name,
          GPtrArray   *rows)
{
  json_builder_set_member_name (out, name);
  json_builder_begin_array (out);
  for (guint i = 0; i < rows->len; i++)
    {
      const SteadTraceLot *lot = ((const SteadTraceRow *) rows->pdata[i])->lot;

      json_builder_begin_object (out);
      stead_put_text (out, "lot", lot->code);
      stead_put_text (out, "item", lot->item_name);
      stead_put_text (out, "unit", lot->unit->id);
      stead_put_day (out, "day", lot->day);
      stead_put_text (out, "supplier", lot->supplier);
      stead_put_text (out, "place", lot->place_name);
      stead_put_real (out, "in", stead_quantity_from_base (lot->in_base, lot->unit));
      stead_put_real (out, "found", stead_quantity_from_base (lot->found_base, lot->unit));
      stead_put_real (out, "used", stead_quantity_from_base (lot->used_base, lot->unit));
      stead_put_real (out, "sold", stead_quantity_from_base (lot->sold_base, lot->unit));
      stead_put_real (out, "given", stead_quantity_from_base (lot->given_base, lot->unit));
      stead_put_real (out, "lost", stead_quantity_from_base (lot->lost_base, lot->unit));
      stead_put_real (out, "left", stead_quantity_from_base (lot->left_base, lot->unit));
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

static char *
ask_trace (SteadStore   *store,
           gint64        id,
           JsonBuilder  *out,
           GError      **error)
{
  g_autoptr(SteadTraceAnswer) answer = stead_trace_answer_new (store, id, error);

  if (answer == NULL)
    return NULL;
  stead_put_text (out, "lot", answer->lot->code);
  json_builder_set_member_name (out, "balances");
  json_builder_add_boolean_value (out, answer->balances);
  put_lots (out, "back", answer->back);
  put_lots (out, "ahead", answer->ahead);
  json_builder_set_member_name (out, "batches");
  json_builder_begin_array (out);
  for (guint i = 0; i < answer->batches->len; i++)
    {
      const SteadTraceBatchRow *row = answer->batches->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "batch", row->batch->name);
      stead_put_text (out, "people", row->people);
      stead_put_int (out, "water_tests", row->batch->n_tests);
      stead_put_int (out, "treatments", row->batch->n_treatments);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
  stead_put_text (out, "caution", answer->caution);
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
    ask_cost, ask_price, stead_question_joint, stead_question_how_sure, ask_flock, ask_fish, ask_crop, ask_greenhouse, ask_water,
    stead_question_recipe, stead_question_kitchen, stead_question_checks, ask_batch, ask_due, ask_stock,
    ask_store_room, ask_trace,
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
