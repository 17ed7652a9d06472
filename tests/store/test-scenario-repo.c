/* test-scenario-repo.c - named assumptions, and what was sold at which price. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-scenario-repo.h"
#include "store/stead-store-private.h"

static gint64
make_product (Farm *farm)
{
  g_autoptr(SteadProduct) product = stead_product_new ();

  product->name = g_strdup ("Eggs");
  product->batch_id = farm->flock;
  ACT (farm, stead_product_repo_save (farm->store, product, err));
  return product->id;
}

static GPtrArray *
list (Farm   *farm,
      gint64  product)
{
  g_autoptr(GError) error = NULL;
  GPtrArray *scenarios = stead_scenario_repo_list (farm->store, product, &error);

  g_assert_no_error (error);
  return scenarios;
}

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 product = make_product (farm);
  g_autoptr(SteadScenario) dear = stead_scenario_new (" Feed gets dear ");
  g_autoptr(SteadScenario) cold = stead_scenario_new ("A cold month");
  g_autoptr(GPtrArray) scenarios = NULL;
  const SteadScenario *second;

  stead_scenario_set (dear, "feed", 1.1);
  stead_scenario_set (dear, "feed", 1.25);
  stead_scenario_set (dear, "price", 500);
  stead_scenario_set (cold, "yield", 0.8);
  ACT (farm, stead_scenario_repo_save (farm->store, product, dear, err));
  ACT (farm, stead_scenario_repo_save (farm->store, product, cold, err));
  scenarios = list (farm, product);
  g_assert_cmpuint (scenarios->len, ==, 2);
  second = scenarios->pdata[1];
  g_assert_cmpstr (second->name, ==, "Feed gets dear");
  g_assert_cmpuint (second->values->len, ==, 2);
  g_assert_cmpfloat (stead_scenario_get (second, "feed", 1), ==, 1.25);
  g_assert_cmpfloat (stead_scenario_get (second, "price", NAN), ==, 500);
  g_assert_cmpfloat (stead_scenario_get (second, "yield", 1), ==, 1);
  farm_assert_undo (farm);
}

static void
test_same_name_replaces (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 product = make_product (farm);
  g_autoptr(SteadScenario) before = stead_scenario_new ("Dear");
  g_autoptr(SteadScenario) after = stead_scenario_new ("Dear");
  g_autoptr(GPtrArray) scenarios = NULL;

  stead_scenario_set (before, "feed", 1.1);
  stead_scenario_set (after, "price", 475);
  ACT (farm, stead_scenario_repo_save (farm->store, product, before, err));
  ACT (farm, stead_scenario_repo_save (farm->store, product, after, err));
  scenarios = list (farm, product);
  g_assert_cmpuint (scenarios->len, ==, 1);
  g_assert_cmpfloat (stead_scenario_get (scenarios->pdata[0], "feed", -1), ==, -1);
  ACT (farm, stead_scenario_repo_delete (farm->store, product, "Dear", err));
  REFUSE (farm, stead_scenario_repo_delete (farm->store, product, "Dear", err), STEAD_STORE_ERROR_NOT_FOUND, "");
  farm_assert_undo (farm);
}

static void
test_rename (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 product = make_product (farm);
  g_autoptr(SteadScenario) dear = stead_scenario_new ("Dear"), cold = stead_scenario_new ("Cold");
  g_autoptr(GPtrArray) scenarios = NULL;

  stead_scenario_set (dear, "feed", 1.1);
  stead_scenario_set (dear, "price", 475);
  stead_scenario_set (cold, "yield", 0.8);
  ACT (farm, stead_scenario_repo_save (farm->store, product, dear, err));
  ACT (farm, stead_scenario_repo_save (farm->store, product, cold, err));
  INVALID (farm, stead_scenario_repo_rename (farm->store, product, "Dear", " Cold ", err), "Another scenario");
  INVALID (farm, stead_scenario_repo_rename (farm->store, product, "Dear", "  ", err), "name");
  REFUSE (farm, stead_scenario_repo_rename (farm->store, product, "Gone", "Here", err), STEAD_STORE_ERROR_NOT_FOUND, "");
  ACT (farm, stead_scenario_repo_rename (farm->store, product, "Dear", " Dear feed ", err));
  scenarios = list (farm, product);
  g_assert_cmpuint (scenarios->len, ==, 2);
  g_assert_cmpstr (((SteadScenario *) scenarios->pdata[1])->name, ==, "Dear feed");
  g_assert_cmpuint (((SteadScenario *) scenarios->pdata[1])->values->len, ==, 2);
  farm_assert_undo (farm);
}

static void
test_scenario_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 product = make_product (farm);
  g_autoptr(SteadScenario) empty = stead_scenario_new ("Empty");
  g_autoptr(SteadScenario) nameless = stead_scenario_new ("  ");
  g_autoptr(SteadScenario) below = stead_scenario_new ("Below");

  stead_scenario_set (nameless, "feed", 1);
  stead_scenario_set (below, "feed", -0.1);
  INVALID (farm, stead_scenario_repo_save (farm->store, product, empty, err), "Change an assumption");
  INVALID (farm, stead_scenario_repo_save (farm->store, product, nameless, err), "name");
  INVALID (farm, stead_scenario_repo_save (farm->store, product, below, err), "zero or more");
  stead_scenario_set (below, "feed", NAN);
  INVALID (farm, stead_scenario_repo_save (farm->store, product, below, err), "zero or more");
}

static void
add_trial (Farm     *farm,
           gint64    product,
           SteadDay  day,
           gint64    cents,
           double    units)
{
  g_autoptr(SteadPriceTrial) trial = g_new0 (SteadPriceTrial, 1);

  trial->day = day;
  trial->price_cents = cents;
  trial->units = units;
  ACT (farm, stead_price_trial_repo_add (farm->store, product, trial, err));
}

static void
run (Farm       *farm,
     const char *sql)
{
  g_assert_cmpint (sqlite3_exec (stead_store_get_db (farm->store), sql, NULL, NULL, NULL), ==, SQLITE_OK);
}

/* Entered by hand, and counted on a sale day; a day with two prices tells of neither. */
static void
test_trials (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 product = make_product (farm);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) trials = NULL;
  const SteadPriceTrial *counted;

  g_assert_cmpint (product, ==, 1);
  add_trial (farm, product, TODAY - 2, 450, 70);
  add_trial (farm, product, TODAY - 40, 400, 82);
  run (farm, "INSERT INTO sale_day (id, name, day, opens_min, closes_min, opened_at, closed_at)"
             " VALUES (1, 'Winter market', 20000, 480, 720, 1, 2), (2, 'Open', 20001, 480, 720, 1, NULL),"
             " (3, 'Two prices', 20002, 480, 720, 1, 2);"
             "INSERT INTO sale_line (id, sale_id, position, product_id, price_cents, planned)"
             " VALUES (1, 1, 0, 1, 500, 60), (2, 2, 0, 1, 500, 60), (3, 3, 0, 1, 500, 60);"
             "INSERT INTO sale_tap (id, line_id, at, kind, units, price_cents, back_id)"
             " VALUES (1, 1, 1, 'sold', 30, 500, NULL), (2, 1, 1, 'sold', 25, 500, NULL),"
             " (3, 1, 1, 'sold', -25, 500, 2), (4, 1, 1, 'given', 3, 500, NULL),"
             " (5, 2, 1, 'sold', 9, 500, NULL), (6, 3, 1, 'sold', 9, 500, NULL), (7, 3, 1, 'sold', 9, 400, NULL);");
  trials = stead_price_trial_repo_list (farm->store, product, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (trials->len, ==, 3);
  counted = trials->pdata[0];
  g_assert_true (counted->is_counted);
  g_assert_cmpint (counted->price_cents, ==, 500);
  g_assert_cmpfloat (counted->units, ==, 30);
  g_assert_cmpstr (counted->note, ==, "Winter market");
  g_assert_cmpint (((SteadPriceTrial *) trials->pdata[1])->price_cents, ==, 400);
  g_assert_false (((SteadPriceTrial *) trials->pdata[2])->is_counted);
}

static void
test_trial_undone (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 product = make_product (farm);
  g_autoptr(SteadPriceTrial) bad = g_new0 (SteadPriceTrial, 1);

  add_trial (farm, product, TODAY, 450, 70);
  bad->day = TODAY;
  bad->units = NAN;
  INVALID (farm, stead_price_trial_repo_add (farm->store, product, bad, err), "0 or more");
  bad->units = 1;
  bad->day = STEAD_DAY_NONE;
  INVALID (farm, stead_price_trial_repo_add (farm->store, product, bad, err), "day");
  ACT (farm, stead_price_trial_repo_delete (farm->store, 1, err));
  farm_assert_undo (farm);
}

/* A product takes along what was tried on it, and undo brings all of it back. */
static void
test_product_goes (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 product = make_product (farm);
  g_autoptr(SteadScenario) scenario = stead_scenario_new ("Dear");
  g_autoptr(GPtrArray) left = NULL;

  stead_scenario_set (scenario, "feed", 1.1);
  ACT (farm, stead_scenario_repo_save (farm->store, product, scenario, err));
  add_trial (farm, product, TODAY, 450, 70);
  ACT (farm, stead_product_repo_delete (farm->store, product, err));
  left = list (farm, product);
  g_assert_cmpuint (left->len, ==, 0);
  farm_assert_undo (farm);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/scenario-repo/round-trip", test_round_trip);
  g_test_add_func ("/store/scenario-repo/same-name-replaces", test_same_name_replaces);
  g_test_add_func ("/store/scenario-repo/rename", test_rename);
  g_test_add_func ("/store/scenario-repo/refused", test_scenario_refused);
  g_test_add_func ("/store/scenario-repo/trials", test_trials);
  g_test_add_func ("/store/scenario-repo/trial-undone", test_trial_undone);
  g_test_add_func ("/store/scenario-repo/product-goes", test_product_goes);
  return g_test_run ();
}
