/* test-count-repo.c - counts of the store room. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-count-repo.h"
#include "store/stead-place-repo.h"

static SteadStockCount *
sheet (Farm     *farm,
       gint64    place_id,
       SteadDay  day)
{
  g_autoptr(GError) error = NULL;
  SteadStockCount *count = stead_count_repo_sheet (farm->store, place_id, day, &error);

  g_assert_no_error (error);
  count->person_id = farm->student;
  count->second_id = farm->advisor;
  return count;
}

static SteadCountLine *
line (SteadStockCount *count,
      guint            at)
{
  g_assert_cmpuint (at, <, count->lines->len);
  return count->lines->pdata[at];
}

static void
explain (SteadCountLine *line,
         double          counted,
         const char     *reason)
{
  line->counted_base = counted;
  g_free (line->reason);
  line->reason = g_strdup (reason);
}

/* OpenStax Principles of Accounting vol. 1, section 10.1 and Saylor Financial Accounting, section 8.5
 * (row money-stock-04): 65 on record, 63 counted: 2 are missing; at $70 each the loss is $140. */
static void
test_published (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadStockCount) count = NULL;
  g_autoptr(GPtrArray) counts = NULL;
  g_autoptr(GError) error = NULL;
  const SteadStockCount *kept;

  farm_receipt (farm, farm->carton, TODAY - 10, 65, 65 * 7000, FALSE);
  count = sheet (farm, STEAD_COUNT_EVERYWHERE, TODAY);
  g_assert_cmpuint (count->lines->len, ==, 1);
  g_assert_cmpfloat (line (count, 0)->expected_base, ==, 65);
  explain (line (count, 0), 63, "torn, thrown away");
  ACT_LEAVING (farm, stead_count_repo_save (farm->store, count, err), count->id == 0);
  g_assert_cmpint (line (count, 0)->cents, ==, 14000);
  g_assert_cmpint (fixture_number (farm->store, "SELECT cents FROM lot_stock"), ==, 63 * 7000);
  counts = stead_count_repo_list (farm->store, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (counts->len, ==, 1);
  kept = counts->pdata[0];
  g_assert_cmpint (kept->person_id, ==, farm->student);
  g_assert_cmpint (kept->second_id, ==, farm->advisor);
  g_assert_cmpuint (kept->lines->len, ==, 1);
  g_assert_cmpstr (((SteadCountLine *) kept->lines->pdata[0])->reason, ==, "torn, thrown away");
  g_assert_cmpfloat (((SteadCountLine *) kept->lines->pdata[0])->counted_base, ==, 63);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* What agreed is kept too, what was not counted is not; found goods bring no money. */
static void
test_lines (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadStockCount) count = NULL;

  farm_receipt (farm, farm->carton, TODAY - 10, 10, 1000, FALSE);
  farm_receipt (farm, farm->carton, TODAY - 9, 20, 2000, FALSE);
  farm_receipt (farm, farm->straw, TODAY - 8, 30, 3000, FALSE);
  count = sheet (farm, STEAD_COUNT_EVERYWHERE, TODAY - 1);
  g_assert_cmpuint (count->lines->len, ==, 3);
  g_assert_cmpstr (line (count, 0)->item_name, ==, "Carton");
  explain (line (count, 0), 10, NULL);
  explain (line (count, 1), 22, "two were in the kitchen");
  ACT (farm, stead_count_repo_save (farm->store, count, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM stock_count_line"), ==, 2);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM stock_count_line WHERE movement_id IS NULL"), ==, 1);
  g_assert_cmpint (fixture_number (farm->store, "SELECT sum (cents) FROM lot_stock"), ==, 6000);
  g_assert_cmpint (line (count, 1)->cents, ==, 0);
  farm_assert_ledger (farm);
}

/* A count of last week is held against what was there last week. */
static void
test_past (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadStockCount) count = NULL;

  farm_receipt (farm, farm->straw, TODAY - 20, 10, 1000, FALSE);
  ACT (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY - 3, 4, 0, err));
  count = sheet (farm, STEAD_COUNT_EVERYWHERE, TODAY - 7);
  g_assert_cmpfloat (line (count, 0)->expected_base, ==, 10);
  explain (line (count, 0), 9, "mice");
  ACT (farm, stead_count_repo_save (farm->store, count, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT base FROM lot_stock"), ==, 5);
  farm_assert_ledger (farm);
}

/* A count stands at the end of its day: feed of that day that no lot covered was not taken
 * out of what the count found. */
static void
test_feed_of_the_day (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadStockCount) count = NULL;

  farm_receipt (farm, farm->feed, TODAY - 20, 10, 1000, FALSE);
  farm_entry (farm, TODAY - 7, 20, 12, 0);
  ACT (farm, stead_lot_repo_adjust (farm->store, 1, STEAD_MOVE_COUNTED, TODAY - 7, 3, "behind a bin", 0, err));
  count = sheet (farm, STEAD_COUNT_EVERYWHERE, TODAY - 7);
  g_assert_cmpfloat_with_epsilon (line (count, 0)->expected_base, 3, 1e-9);
  farm_assert_ledger (farm);
}

static void
test_places (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadStockCount) shed = NULL;
  g_autoptr(SteadStockCount) nowhere = NULL;
  g_autoptr(GPtrArray) lots = NULL;
  g_autoptr(GError) error = NULL;
  SteadPlaceFacts place = { .name = g_strdup ("Feed shed"), .kind = STEAD_PLACE_STORE_ROOM, .area_m2 = NAN };

  ACT (farm, stead_place_repo_save (farm->store, &place, err));
  farm_receipt (farm, farm->carton, TODAY - 10, 10, 1000, FALSE);
  farm_receipt (farm, farm->straw, TODAY - 8, 30, 3000, FALSE);
  ACT (farm, stead_lot_repo_put (farm->store, 2, place.id, err));
  REFUSE (farm, stead_lot_repo_put (farm->store, 99, place.id, err), STEAD_STORE_ERROR_NOT_FOUND, "");
  shed = sheet (farm, place.id, TODAY);
  nowhere = sheet (farm, 0, TODAY);
  g_assert_cmpuint (shed->lines->len, ==, 1);
  g_assert_cmpstr (line (shed, 0)->item_name, ==, "Straw");
  g_assert_cmpstr (line (shed, 0)->place_name, ==, "Feed shed");
  g_assert_cmpuint (nowhere->lines->len, ==, 1);
  g_assert_cmpstr (line (nowhere, 0)->item_name, ==, "Carton");
  lots = stead_lot_repo_list (farm->store, FALSE, &error);
  g_assert_cmpstr (((SteadLot *) lots->pdata[1])->place_name, ==, "Feed shed");
  g_assert_null (((SteadLot *) lots->pdata[0])->place_name);
  ACT (farm, stead_lot_repo_put (farm->store, 2, 0, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (place_id) FROM lot"), ==, 0);
  g_free (place.name);
}

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadStockCount) count = NULL;

  farm_receipt (farm, farm->carton, TODAY - 10, 10, 1000, FALSE);
  count = sheet (farm, STEAD_COUNT_EVERYWHERE, TODAY);
  INVALID (farm, stead_count_repo_save (farm->store, count, err), "Nothing is counted");
  line (count, 0)->counted_base = 8;
  INVALID (farm, stead_count_repo_save (farm->store, count, err), "10 ");
  g_assert_cmpint (count->id, ==, 0);
  line (count, 0)->counted_base = -1;
  INVALID (farm, stead_count_repo_save (farm->store, count, err), "0 or more");
  line (count, 0)->counted_base = 10;
  count->second_id = farm->student;
  INVALID (farm, stead_count_repo_save (farm->store, count, err), "second person");
  count->second_id = 0;
  INVALID (farm, stead_count_repo_save (farm->store, count, err), "both");
  count->second_id = farm->advisor;
  count->day = TODAY + 1;
  INVALID (farm, stead_count_repo_save (farm->store, count, err), "to come");
}

/* What left unsold: spoiled, given, counted; nothing that was used or sold. */
static void
test_unsold (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GPtrArray) moves = NULL;
  g_autoptr(GError) error = NULL;

  farm_receipt (farm, farm->carton, TODAY - 10, 10, 1000, FALSE);
  ACT (farm, stead_lot_repo_adjust (farm->store, 1, STEAD_MOVE_LOST, TODAY - 5, -1, "wet", farm->student, err));
  ACT (farm, stead_lot_repo_adjust (farm->store, 1, STEAD_MOVE_GIVEN, TODAY - 4, -2, "food bank", 0, err));
  ACT (farm, stead_lot_repo_adjust (farm->store, 1, STEAD_MOVE_LOST, TODAY - 9, -1, "wet", 0, err));
  ACT (farm, stead_lot_repo_sell (farm->store, farm->carton, TODAY - 3, 2, NULL, 0, err));
  moves = stead_lot_repo_unsold (farm->store, TODAY - 6, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (moves->len, ==, 2);
  g_assert_cmpint (((SteadMove *) moves->pdata[0])->kind, ==, STEAD_MOVE_LOST);
  g_assert_cmpint (((SteadMove *) moves->pdata[0])->person_id, ==, farm->student);
  g_assert_cmpint (((SteadMove *) moves->pdata[1])->cost_cents, ==, -200);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/count/published", test_published);
  g_test_add_func ("/store/count/lines", test_lines);
  g_test_add_func ("/store/count/past", test_past);
  g_test_add_func ("/store/count/feed-of-the-day", test_feed_of_the_day);
  g_test_add_func ("/store/count/places", test_places);
  g_test_add_func ("/store/count/refused", test_refused);
  g_test_add_func ("/store/count/unsold", test_unsold);
  return g_test_run ();
}
