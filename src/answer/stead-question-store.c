/* stead-question-store.c - the store room, and the way of a lot, as figures for programs.
 *
 * Names are never translated, money is in minor units, amounts in SI, days are as 2026-03-03.
 */
#include "config.h"

#include "answer/stead-question-private.h"
#include "answer/stead-stock-answer.h"
#include "answer/stead-store-room-answer.h"
#include "answer/stead-trace-answer.h"
#include "answer/stead-words.h"

char *
stead_question_stock (SteadStore   *store,
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

char *
stead_question_store_room (SteadStore   *store,
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

char *
stead_question_trace (SteadStore   *store,
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
