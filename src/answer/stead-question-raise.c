/* stead-question-raise.c - flocks, fish, crops, bays and water, as figures for programs.
 *
 * Names are never translated, money is in minor units, amounts in SI, days are as 2026-03-03.
 */
#include "config.h"

#include "answer/stead-batch-answer.h"
#include "answer/stead-crop-answer.h"
#include "answer/stead-fish-answer.h"
#include "answer/stead-flock-answer.h"
#include "answer/stead-greenhouse-answer.h"
#include "answer/stead-question-private.h"
#include "answer/stead-water-answer.h"
#include "answer/stead-words.h"

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

char *
stead_question_flock (SteadStore   *store,
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

char *
stead_question_fish (SteadStore   *store,
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

char *
stead_question_crop (SteadStore   *store,
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

char *
stead_question_greenhouse (SteadStore   *store,
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

char *
stead_question_water (SteadStore   *store,
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

char *
stead_question_batch (SteadStore   *store,
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
