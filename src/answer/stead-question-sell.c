/* stead-question-sell.c - sale days as figures for programs.
 *
 * Names are never translated, money is in minor units, days are as 2026-03-03, units are
 * of the product.  A figure that does not exist is null.
 */
#include "config.h"

#include "answer/stead-question-private.h"
#include "answer/stead-sale-result-answer.h"
#include "answer/stead-season-answer.h"

#include <math.h>

/* --- one sale ------------------------------------------------------------------------ */

static void
put_lines (JsonBuilder             *out,
           const SteadSaleAnswer   *plan,
           const SteadResultAnswer *result)
{
  json_builder_set_member_name (out, "lines");
  json_builder_begin_array (out);
  for (guint i = 0; i < plan->lines->len && i < result->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = plan->lines->pdata[i];
      const SteadResultLine *came = result->lines->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "product", line->good->name);
      stead_put_int (out, "price_cents", line->good->price_cents);
      stead_put_real (out, "planned", line->good->planned);
      stead_put_real (out, "unit_cents", line->unit_cents);
      stead_put_real (out, "asked_for", line->demand_units);
      stead_put_real (out, "best", line->best_units);
      stead_put_real (out, "sold_out_frac", line->sold_out_frac);
      stead_put_real (out, "sold", came->sum.sold);
      stead_put_real (out, "left", stead_sale_sum_left (&came->sum));
      stead_put_int (out, "takings_cents", came->sum.takings_cents);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

static void
put_prices (JsonBuilder             *out,
            const SteadResultAnswer *result)
{
  json_builder_set_member_name (out, "prices_changed");
  json_builder_begin_array (out);
  for (guint i = 0; i < result->prices->len; i++)
    json_builder_add_string_value (out, result->prices->pdata[i]);
  json_builder_end_array (out);
}

char *
stead_question_sale (SteadStore   *store,
                     gint64        id,
                     JsonBuilder  *out,
                     GError      **error)
{
  g_autoptr(SteadSaleAnswer) plan = stead_sale_answer_new (store, id, error);
  g_autoptr(SteadResultAnswer) result = plan != NULL ? stead_result_answer_new (store, id, error) : NULL;

  if (result == NULL)
    return NULL;
  stead_put_text (out, "sale", plan->sale->name);
  stead_put_day (out, "day", plan->sale->day);
  stead_put_text (out, "location", plan->sale->location);
  stead_put_text (out, "currency", plan->farm->currency);
  stead_put_int (out, "fixed_cents", plan->fixed_cents);
  stead_put_int (out, "full_cents", plan->full_cents);
  stead_put_real (out, "even_cents", plan->even_cents);
  stead_put_real (out, "profit_low_cents", plan->has_band ? plan->profit.low : NAN);
  stead_put_real (out, "profit_likely_cents", plan->has_band ? plan->profit.likely : NAN);
  stead_put_real (out, "profit_high_cents", plan->has_band ? plan->profit.high : NAN);
  stead_put_real (out, "loss_frac", plan->has_band ? plan->loss_frac : NAN);
  stead_put_int (out, "takings_cents", result->till.takings_cents + result->till.ahead_cents);
  stead_put_int (out, "expected_cents", result->till.expected_cents);
  stead_put_real (out, "counted_cents", result->count != NULL ? (double) result->till.counted_cents : NAN);
  stead_put_real (out, "over_cents", result->count != NULL ? (double) result->over_cents : NAN);
  put_lines (out, plan, result);
  put_prices (out, result);
  stead_put_text (out, "caution", plan->caution);
  return stead_words_plain (result->count != NULL ? result->sentence : plan->sentence);
}

/* --- all of them ----------------------------------------------------------------------- */

static void
put_sums (JsonBuilder *out,
          const char  *name,
          GPtrArray   *sums)
{
  json_builder_set_member_name (out, name);
  json_builder_begin_array (out);
  for (guint i = 0; i < sums->len; i++)
    {
      const SteadSeasonSum *sum = sums->pdata[i];

      json_builder_begin_object (out);
      stead_put_text (out, "name", sum->name);
      stead_put_int (out, "sales", sum->n_days);
      stead_put_real (out, "units", sum->units);
      stead_put_int (out, "takings_cents", sum->takings_cents);
      stead_put_int (out, "per_hour_cents", sum->per_hour_cents);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}

char *
stead_question_season (SteadStore   *store,
                       gint64        id,
                       JsonBuilder  *out,
                       GError      **error)
{
  g_autoptr(SteadSeasonAnswer) answer = stead_season_answer_new (store, error);

  if (answer == NULL)
    return NULL;
  stead_put_text (out, "currency", answer->farm->currency);
  stead_put_int (out, "sales", answer->n_done);
  stead_put_int (out, "takings_cents", answer->takings_cents);
  stead_put_int (out, "over_cents", answer->over_cents);
  put_sums (out, "products", answer->products);
  put_sums (out, "places", answer->places);
  stead_put_text (out, "over_and_short", answer->run_text);
  return stead_words_plain (answer->sentence);
}
