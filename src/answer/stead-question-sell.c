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

static void
put_text (JsonBuilder *out,
          const char  *name,
          const char  *text)
{
  json_builder_set_member_name (out, name);
  if (text == NULL)
    json_builder_add_null_value (out);
  else
    json_builder_add_string_value (out, text);
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
put_day (JsonBuilder *out,
         const char  *name,
         SteadDay     day)
{
  g_autofree char *text = stead_day_format (day, STEAD_DAY_STYLE_ISO);

  put_text (out, name, text);
}

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
      put_text (out, "product", line->good->name);
      put_int (out, "price_cents", line->good->price_cents);
      put_real (out, "planned", line->good->planned);
      put_real (out, "unit_cents", line->unit_cents);
      put_real (out, "asked_for", line->demand_units);
      put_real (out, "best", line->best_units);
      put_real (out, "sold_out_frac", line->sold_out_frac);
      put_real (out, "sold", came->sum.sold);
      put_real (out, "left", stead_sale_sum_left (&came->sum));
      put_int (out, "takings_cents", came->sum.takings_cents);
      json_builder_end_object (out);
    }
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
  put_text (out, "sale", plan->sale->name);
  put_day (out, "day", plan->sale->day);
  put_text (out, "location", plan->sale->location);
  put_text (out, "currency", plan->farm->currency);
  put_int (out, "fixed_cents", plan->fixed_cents);
  put_int (out, "full_cents", plan->full_cents);
  put_real (out, "even_cents", plan->even_cents);
  put_real (out, "profit_low_cents", plan->has_band ? plan->profit.low : NAN);
  put_real (out, "profit_likely_cents", plan->has_band ? plan->profit.likely : NAN);
  put_real (out, "profit_high_cents", plan->has_band ? plan->profit.high : NAN);
  put_real (out, "loss_frac", plan->has_band ? plan->loss_frac : NAN);
  put_int (out, "takings_cents", result->till.takings_cents + result->till.ahead_cents);
  put_int (out, "expected_cents", result->till.expected_cents);
  put_real (out, "counted_cents", result->count != NULL ? (double) result->till.counted_cents : NAN);
  put_real (out, "over_cents", result->count != NULL ? (double) result->over_cents : NAN);
  put_lines (out, plan, result);
  put_text (out, "caution", plan->caution);
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
      put_text (out, "name", sum->name);
      put_int (out, "sales", sum->n_days);
      put_real (out, "units", sum->units);
      put_int (out, "takings_cents", sum->takings_cents);
      put_int (out, "per_hour_cents", sum->per_hour_cents);
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
  put_text (out, "currency", answer->farm->currency);
  put_int (out, "sales", answer->n_done);
  put_int (out, "takings_cents", answer->takings_cents);
  put_int (out, "over_cents", answer->over_cents);
  put_sums (out, "products", answer->products);
  put_sums (out, "places", answer->places);
  put_text (out, "over_and_short", answer->run_text);
  return stead_words_plain (answer->sentence);
}
