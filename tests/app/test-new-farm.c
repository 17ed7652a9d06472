/* test-new-farm.c - what the steps of a new farm write, and that a price follows from it. */
#include "config.h"

#include "answer/stead-price-answer.h"
#include "app-fixture.h"
#include "app/stead-new-farm-facts.h"
#include "store/stead-flock-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-store-error.h"

static SteadStore *
make (void)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_create_memory ("New", &error);

  g_assert_no_error (error);
  stead_store_set_today (store, stead_day_new (2026, 3, 3));
  return store;
}

static gint64
add_flock (SteadStore *store)
{
  SteadNewFlockFacts facts = { .name = "Hens", .birds = 30, .came_on = stead_day_new (2026, 3, 3),
                               .age_weeks = 17, .bird_cents = 1200, .eggs_today = 24 };
  g_autoptr(GError) error = NULL;
  gint64 id = 0;

  g_assert_true (stead_new_farm_save_flock (store, &facts, &id, &error));
  g_assert_no_error (error);
  return id;
}

static void
test_settings (void)
{
  g_autoptr(SteadStore) store = make ();
  SteadNewFarmFacts facts = { "New", STEAD_UNITS_METRIC, "EUR", 9, 2 };
  g_autoptr(SteadFarm) farm = NULL;
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_new_farm_save_settings (store, &facts, &error));
  farm = stead_farm_repo_get (store, &error);
  g_assert_no_error (error);
  g_assert_cmpint (farm->units, ==, STEAD_UNITS_METRIC);
  g_assert_cmpstr (farm->currency, ==, "EUR");
  g_assert_cmpint (farm->school_year_month, ==, 9);
  g_assert_cmpint (farm->school_year_mday, ==, 2);
}

/* 24 eggs are 2 dozen.  30 hens at $12.00 are spread over the eggs that are expected of
 * them; one of 100 cartons for $38.00 goes to each dozen: the parts are worked out here. */
static void
test_to_a_price (void)
{
  g_autoptr(SteadStore) store = make ();
  SteadNewProductFacts facts = { .supplier = "Lakeside", .feed_kg = 90, .feed_cents = 7800, .cartons = 100,
                                 .carton_cents = 3800, .pack = STEAD_PACK_DOZEN, .price_cents = 450 };
  g_autoptr(SteadPriceAnswer) answer = NULL;
  g_autoptr(SteadFlock) flock = NULL;
  g_autoptr(GError) error = NULL;
  double hen_cents;

  facts.flock_id = add_flock (store);
  g_assert_true (stead_new_farm_save_product (store, &facts, &error));
  g_assert_no_error (error);
  flock = stead_flock_repo_get (store, facts.flock_id, &error);
  g_assert_cmpint (flock->hatched_on, ==, stead_day_new (2026, 3, 3) - 17 * 7);
  g_assert_cmpint (flock->birds_cost_cents, ==, 36000);
  answer = stead_price_answer_new (store, 1, STEAD_PERIOD_12_WEEKS, &error);
  g_assert_no_error (error);
  g_assert_cmpint (answer->price_on_file, ==, 450);
  hen_cents = 1200 / flock->eggs_expected * 12;
  g_assert_cmpfloat_with_epsilon (answer->plan.variable_cents, 38 + hen_cents, 1.0);
}

static void
test_undone_in_one (void)
{
  g_autoptr(SteadStore) store = make ();
  g_autoptr(GPtrArray) before = NULL;
  g_autoptr(GPtrArray) after = NULL;
  g_autofree char *name = NULL;
  g_autoptr(GError) error = NULL;

  add_flock (store);
  name = stead_store_get_undo_name (store);
  g_assert_cmpstr (name, ==, "New flock: Hens");
  before = stead_flock_repo_list (store, TRUE, &error);
  g_assert_cmpuint (before->len, ==, 1);
  g_assert_true (stead_store_undo (store, &error));
  after = stead_flock_repo_list (store, TRUE, &error);
  g_assert_cmpuint (after->len, ==, 0);
}

/* A flock without a name is refused, and not even its feed is left behind. */
static void
test_failure_leaves_nothing (void)
{
  g_autoptr(SteadStore) store = make ();
  SteadNewFlockFacts facts = { .name = "", .birds = 30, .came_on = stead_day_new (2026, 3, 3), .age_weeks = 17,
                               .eggs_today = -1 };
  g_autoptr(GPtrArray) items = NULL;
  g_autoptr(GError) error = NULL;
  gint64 id = 77;

  g_assert_false (stead_new_farm_save_flock (store, &facts, &id, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  g_assert_cmpint (id, ==, 77);
  items = stead_item_repo_list (store, NULL);
  g_assert_cmpuint (items->len, ==, 0);
}

/* Without a flock the feed still gets its receipt. */
static void
test_skipped_flock (void)
{
  g_autoptr(SteadStore) store = make ();
  SteadNewProductFacts facts = { .supplier = "Lakeside", .feed_kg = 90, .feed_cents = 7800,
                                 .pack = STEAD_PACK_TRAY, .price_cents = -1 };
  g_autoptr(SteadProduct) product = NULL;
  g_autoptr(GPtrArray) lots = NULL;
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_new_farm_save_product (store, &facts, &error));
  g_assert_no_error (error);
  lots = stead_lot_repo_list (store, TRUE, &error);
  g_assert_cmpuint (lots->len, ==, 1);
  g_assert_cmpint (((SteadLot *) lots->pdata[0])->received_cents, ==, 7800);
  product = stead_product_repo_get (store, 1, &error);
  g_assert_cmpfloat (product->base_per_unit, ==, 30);
  g_assert_cmpint (stead_product_repo_price_on (store, 1, stead_day_new (2026, 3, 3), &error), ==, -1);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/app/new-farm/settings", test_settings);
  g_test_add_func ("/app/new-farm/to-a-price", test_to_a_price);
  g_test_add_func ("/app/new-farm/undone-in-one", test_undone_in_one);
  g_test_add_func ("/app/new-farm/failure-leaves-nothing", test_failure_leaves_nothing);
  g_test_add_func ("/app/new-farm/skipped-flock", test_skipped_flock);
  return g_test_run ();
}
