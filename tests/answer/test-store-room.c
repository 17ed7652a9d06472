/* test-store-room.c - what is where, what must be bought, used soon, and what was wasted. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-store-room-answer.h"
#include "store/stead-place-repo.h"

#include <math.h>
#include <string.h>

static SteadStoreRoomAnswer *
ask (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadStoreRoomAnswer *answer = stead_store_room_answer_new (farm->store, &error);

  g_assert_no_error (error);
  return answer;
}

/* 90 of 100 kg are fed at 1 kg a day: 10 kg last 10 days; a mark at 20 kg asks for 28 days of use less what is there. */
static void
test_reorder (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadStoreRoomAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadItem) feed = stead_item_repo_get (farm->store, farm->feed, &error);
  const SteadReorderLine *line;
  g_autoptr(SteadWhy) why = NULL;

  farm_stock (farm);
  farm_log (farm);
  feed->reorder_base = 20;
  FARM_DO (farm, stead_item_repo_save (farm->store, feed, &farm_error));
  answer = ask (farm);
  g_assert_cmpuint (answer->reorder->len, ==, 1);
  line = answer->reorder->pdata[0];
  g_assert_cmpint (line->line->item->id, ==, farm->feed);
  g_assert_cmpfloat_with_epsilon (line->line->days, 10, 1e-6);
  g_assert_cmpfloat_with_epsilon (line->base, 28 - 10, 1e-6);
  why = stead_store_room_answer_why (answer);
  NUMBERS_ARE (why->worked, 10, 1, 14, 10, 28, 10, 18);
}

static void
set_best_by (Farm     *farm,
             gint64    receipt_id,
             SteadDay  best_by)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadReceipt) receipt = stead_receipt_repo_get (farm->store, receipt_id, &error);

  g_array_index (receipt->lines, SteadReceiptLine, 0).best_by = best_by;
  FARM_DO (farm, stead_receipt_repo_save (farm->store, receipt, &farm_error));
}

static void
test_soon (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadStoreRoomAnswer) answer = NULL;

  set_best_by (farm, farm_buy (farm, farm->today - 30, farm->straw, 5, 500, FALSE), farm->today + 7);
  set_best_by (farm, farm_buy (farm, farm->today - 30, farm->straw, 5, 500, FALSE), farm->today + 8);
  set_best_by (farm, farm_buy (farm, farm->today - 30, farm->straw, 5, 500, FALSE), farm->today - 2);
  answer = ask (farm);
  g_assert_cmpuint (answer->soon->len, ==, 2);
  g_assert_cmpint (((SteadSoonLine *) answer->soon->pdata[0])->days, ==, -2);
  g_assert_cmpint (((SteadSoonLine *) answer->soon->pdata[1])->days, ==, 7);
  g_assert_nonnull (answer->caution);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (answer->sentence, "<b>1 lot</b> is best used within 7 days."));
      g_assert_nonnull (strstr (answer->caution, "1 lot is past"));
    }
}

/* Two reasons, one written twice in other letters; and by place. */
static void
test_waste (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadStoreRoomAnswer) answer = NULL;
  SteadPlaceFacts place = { .name = g_strdup ("Shed"), .kind = STEAD_PLACE_STORE_ROOM, .area_m2 = NAN };
  const SteadWasteLine *line;

  farm_buy (farm, farm->today - 30, farm->straw, 10, 1000, FALSE);
  farm_buy (farm, farm->today - 30, farm->carton, 10, 1000, FALSE);
  FARM_DO (farm, stead_place_repo_save (farm->store, &place, &farm_error));
  FARM_DO (farm, stead_lot_repo_put (farm->store, 1, place.id, &farm_error));
  FARM_DO (farm, stead_lot_repo_adjust (farm->store, 1, STEAD_MOVE_LOST, farm->today - 9, -1, "wet", 0, &farm_error));
  FARM_DO (farm, stead_lot_repo_adjust (farm->store, 1, STEAD_MOVE_LOST, farm->today - 8, -2, "Wet", 0, &farm_error));
  FARM_DO (farm, stead_lot_repo_adjust (farm->store, 2, STEAD_MOVE_GIVEN, farm->today - 7, -1, "food bank", 0, &farm_error));
  answer = ask (farm);
  g_assert_cmpuint (answer->waste->len, ==, 2);
  line = answer->waste->pdata[0];
  g_assert_cmpstr (line->reason, ==, "wet");
  g_assert_cmpuint (line->n, ==, 2);
  g_assert_cmpint (line->cents, ==, 300);
  g_assert_cmpint (answer->lost_cents, ==, 300);
  g_assert_cmpint (answer->given_cents, ==, 100);
  g_assert_cmpuint (answer->places->len, ==, 2);
  g_assert_cmpstr (((SteadPlaceLine *) answer->places->pdata[0])->name, ==, "Shed");
  g_assert_cmpint (((SteadPlaceLine *) answer->places->pdata[0])->cents, ==, 700);
  g_assert_cmpint (((SteadPlaceLine *) answer->places->pdata[1])->cents, ==, 900);
  g_assert_cmpint (answer->counted_on, ==, STEAD_DAY_NONE);
  g_free (place.name);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add ("/answer/store-room/reorder", Farm, NULL, farm_set_up, test_reorder, farm_tear_down);
  g_test_add ("/answer/store-room/soon", Farm, NULL, farm_set_up, test_soon, farm_tear_down);
  g_test_add ("/answer/store-room/waste", Farm, NULL, farm_set_up, test_waste, farm_tear_down);
  return g_test_run ();
}
