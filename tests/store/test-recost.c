/* test-recost.c - what goods out of the store room cost, when something before them changed. */
#include "config.h"

#include "kitchen-fixture.h"
#include "store/stead-recost.h"

typedef struct
{
  Farm  *farm;
  gint64 flour, dough, bread;
} Kitchen;

static void
kitchen_open (Kitchen *self)
{
  self->farm = farm_new ();
  self->flour = farm_item (self->farm, "Flour", STEAD_ITEM_INGREDIENT, "lb");
  self->dough = farm_item (self->farm, "Dough", STEAD_ITEM_PRODUCE, "lb");
  self->bread = farm_item (self->farm, "Bread", STEAD_ITEM_PRODUCE, "ea");
}

static void
average (Farm *farm)
{
  ACT (farm, stead_farm_repo_set_stock_method (farm->store, STEAD_STOCK_AVERAGE_MOVING, err));
}

static void
set_price (Farm   *farm,
           gint64  receipt_id,
           gint64  cents)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadReceipt) receipt = stead_receipt_repo_get (farm->store, receipt_id, &error);

  g_assert_no_error (error);
  g_array_index (receipt->lines, SteadReceiptLine, 0).cost_cents = cents;
  ACT (farm, stead_receipt_repo_save (farm->store, receipt, err));
}

/* Cents that left an item by one kind of movement. */
static gint64
out (Farm       *farm,
     gint64      item_id,
     const char *kind)
{
  g_autofree char *sql = g_strdup_printf ("SELECT coalesce (-sum (m.cost_cents), 0) FROM lot l JOIN movement m"
                                          " ON m.lot_id = l.id WHERE l.item_id = %" G_GINT64_FORMAT
                                          " AND m.kind = '%s'", item_id, kind);

  return fixture_number (farm->store, sql);
}

static gint64
on_hand (Farm   *farm,
         gint64  item_id)
{
  g_autoptr(GError) error = NULL;
  SteadStock stock;

  g_assert_true (stead_lot_repo_stock (farm->store, item_id, TODAY, 30, &stock, &error));
  return stock.on_hand_cents;
}

/* --- first in, first out ---------------------------------------------------------- */

/* Flour into dough, dough into bread, half of the bread sold: a dearer sack reaches the loaf. */
static void
test_cascade (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  gint64 receipt, dough, bread;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  receipt = farm_receipt (farm, kitchen.flour, TODAY - 30, 10, 1000, FALSE);
  dough = kitchen_cook (farm, "Dough 1", TODAY - 20, kitchen.flour, 5, kitchen.dough, 8);
  bread = kitchen_cook (farm, "Bread 1", TODAY - 10, kitchen.dough, 4, kitchen.bread, 10);
  ACT (farm, stead_lot_repo_sell (farm->store, kitchen.bread, TODAY - 5, 5, NULL, 0, err));
  g_assert_cmpint (kitchen_cents (farm, dough), ==, 500);
  g_assert_cmpint (kitchen_cents (farm, bread), ==, 250);
  g_assert_cmpint (out (farm, kitchen.bread, "sold"), ==, 125);
  set_price (farm, receipt, 2001);
  g_assert_cmpint (kitchen_cents (farm, dough), ==, 1001);    /* half of 2001 is rounded up */
  g_assert_cmpint (kitchen_cents (farm, bread), ==, 501);
  g_assert_cmpint (out (farm, kitchen.bread, "sold"), ==, 251);
  g_assert_cmpint (on_hand (farm, kitchen.bread), ==, 250);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* A correction of a signed receipt takes over, all the way down. */
static void
test_correction (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  g_autoptr(SteadReceipt) right = stead_receipt_new ();
  SteadReceiptLine line = { .quantity_base = 10, .cost_cents = 3000, .best_by = STEAD_DAY_NONE };
  gint64 receipt, dough;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  receipt = farm_receipt (farm, kitchen.flour, TODAY - 30, 10, 1000, FALSE);
  dough = kitchen_cook (farm, "Dough 1", TODAY - 20, kitchen.flour, 5, kitchen.dough, 8);
  ACT (farm, stead_lot_repo_sell (farm->store, kitchen.dough, TODAY - 5, 2, NULL, 0, err));
  ACT (farm, stead_receipt_repo_sign (farm->store, receipt, farm->advisor, err));
  right->day = TODAY - 30;
  right->supplier = g_strdup ("Lakeside Feed & Seed");
  right->corrects_id = receipt;
  line.item_id = kitchen.flour;
  g_array_append_val (right->lines, line);
  ACT (farm, stead_receipt_repo_save (farm->store, right, err));
  g_assert_cmpint (kitchen_cents (farm, dough), ==, 1500);
  g_assert_cmpint (out (farm, kitchen.dough, "sold"), ==, 375);
  farm_assert_ledger (farm);
}

/* Two products of one batch share its cents by quantity, to the cent. */
static void
test_two_products (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  gint64 id;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  farm_receipt (farm, kitchen.flour, TODAY - 30, 10, 1000, FALSE);
  id = kitchen_begin (farm, "Two doughs", TODAY - 10);
  ACT (farm, stead_lot_repo_use (farm->store, kitchen.flour, id, TODAY - 10, 1, 0, err));
  farm_harvest (farm, id, kitchen.dough, TODAY - 10, 2, STEAD_COUNT_NONE, 0);
  farm_harvest (farm, id, kitchen.dough, TODAY - 10, 1, STEAD_COUNT_NONE, 0);
  ACT (farm, stead_recost_batch (farm->store, id, err));
  g_assert_cmpint (kitchen_cents (farm, id), ==, 100);
  g_assert_cmpint (fixture_number (farm->store, "SELECT max (cost_cents) FROM movement WHERE kind = 'made'"), ==, 67);
  farm_assert_ledger (farm);
}

/* A hen eats what the kitchen made: her eggs keep what their harvest was settled at. */
static void
test_harvest_stays (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  gint64 receipt;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  receipt = farm_receipt (farm, kitchen.flour, TODAY - 30, 10, 1000, FALSE);
  ACT (farm, stead_lot_repo_use (farm->store, kitchen.flour, farm->flock, TODAY - 20, 5, 0, err));
  farm_harvest (farm, farm->flock, kitchen.dough, TODAY - 10, 1, STEAD_COUNT_NONE, 321);
  set_price (farm, receipt, 2000);
  g_assert_cmpint (out (farm, kitchen.flour, "used"), ==, 1000);
  g_assert_cmpint (kitchen_cents (farm, farm->flock), ==, 321);
}

/* A file in which a batch used what it made itself: it ends, and other batches are right. */
static void
test_circle (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  gint64 receipt, dough;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  receipt = farm_receipt (farm, kitchen.flour, TODAY - 30, 10, 1000, FALSE);
  dough = kitchen_cook (farm, "Dough 1", TODAY - 20, kitchen.flour, 5, kitchen.dough, 8);
  ACT (farm, stead_lot_repo_use (farm->store, kitchen.dough, dough, TODAY - 20, 4, 0, err));
  ACT (farm, stead_lot_repo_use (farm->store, kitchen.dough, dough, TODAY - 19, 1, 0, err));
  set_price (farm, receipt, 5000);
  g_assert_cmpint (out (farm, kitchen.flour, "used"), ==, 2500);
  average (farm);
  set_price (farm, receipt, 7000);
  g_assert_cmpint (out (farm, kitchen.flour, "used"), ==, 3500);
}

/* --- weighted average ---------------------------------------------------------------- */

/* OpenStax Principles of Accounting vol. 1, section 10.3, the moving average: 150 at $21,
 * 120 sold, 225 at $27, 180 sold, 210 at $33: the text's cost of goods sold is $7,253, which
 * it works out with an average rounded to $26.29 (row money-stock-02a, within $2). */
static void
test_published (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 sold;

  average (farm);
  farm_receipt (farm, farm->carton, TODAY - 50, 150, 150 * 2100, FALSE);
  farm_receipt (farm, farm->carton, TODAY - 30, 225, 225 * 2700, FALSE);
  farm_receipt (farm, farm->carton, TODAY - 10, 210, 210 * 3300, FALSE);
  ACT (farm, stead_lot_repo_sell (farm->store, farm->carton, TODAY - 40, 120, NULL, 0, err));
  ACT (farm, stead_lot_repo_sell (farm->store, farm->carton, TODAY - 20, 180, NULL, 0, err));
  sold = out (farm, farm->carton, "sold");
  g_assert_cmpint (ABS (sold - 725300), <=, 200);
  g_assert_cmpint (sold + on_hand (farm, farm->carton), ==, 150 * 2100 + 225 * 2700 + 210 * 3300);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* The same goods by lots: the text's $7,200 and $8,955 (rows money-stock-01a and b). */
static void
test_back_to_lots (void)
{
  g_autoptr(Farm) farm = farm_new ();

  average (farm);
  farm_receipt (farm, farm->carton, TODAY - 50, 150, 150 * 2100, FALSE);
  ACT (farm, stead_lot_repo_sell (farm->store, farm->carton, TODAY - 40, 120, NULL, 0, err));
  farm_receipt (farm, farm->carton, TODAY - 30, 225, 225 * 2700, FALSE);
  ACT (farm, stead_lot_repo_sell (farm->store, farm->carton, TODAY - 20, 180, NULL, 0, err));
  farm_receipt (farm, farm->carton, TODAY - 10, 210, 210 * 3300, FALSE);
  ACT (farm, stead_farm_repo_set_stock_method (farm->store, STEAD_STOCK_FIFO, err));
  g_assert_cmpint (out (farm, farm->carton, "sold"), ==, 720000);
  g_assert_cmpint (on_hand (farm, farm->carton), ==, 895500);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* What came on a day is there before anything goes out on it; a price reaches the loaf. */
static void
test_average_cascade (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  gint64 receipt, dough;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  average (farm);
  farm_receipt (farm, kitchen.flour, TODAY - 30, 10, 1000, FALSE);
  dough = kitchen_cook (farm, "Dough 1", TODAY - 20, kitchen.flour, 5, kitchen.dough, 8);
  g_assert_cmpint (kitchen_cents (farm, dough), ==, 500);
  receipt = farm_receipt (farm, kitchen.flour, TODAY - 20, 10, 2000, FALSE);
  g_assert_cmpint (kitchen_cents (farm, dough), ==, 750);
  ACT (farm, stead_lot_repo_sell (farm->store, kitchen.dough, TODAY - 5, 8, NULL, 0, err));
  set_price (farm, receipt, 4000);
  g_assert_cmpint (kitchen_cents (farm, dough), ==, 1250);
  g_assert_cmpint (out (farm, kitchen.dough, "sold"), ==, 1250);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* Dough made with some of the dough before it, on one day: no circle of cents. */
static void
test_starter (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  gint64 id;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  average (farm);
  farm_receipt (farm, kitchen.flour, TODAY - 30, 10, 1000, FALSE);
  kitchen_cook (farm, "Dough 1", TODAY - 20, kitchen.flour, 5, kitchen.dough, 5);
  id = kitchen_begin (farm, "Dough 2", TODAY - 10);
  ACT (farm, stead_lot_repo_use (farm->store, kitchen.dough, id, TODAY - 10, 2, 0, err));
  ACT (farm, stead_lot_repo_use (farm->store, kitchen.flour, id, TODAY - 10, 1, 0, err));
  farm_harvest (farm, id, kitchen.dough, TODAY - 10, 3, STEAD_COUNT_NONE, 0);
  ACT (farm, stead_recost_batch (farm->store, id, err));
  g_assert_cmpint (kitchen_cents (farm, id), ==, 300);
  g_assert_cmpint (on_hand (farm, kitchen.dough), ==, 600);
  farm_assert_ledger (farm);
}

/* Packed on a later day than it was made: the wrapper's cents reach the dough all the same. */
static void
test_late_use (void)
{
  Kitchen kitchen;
  g_autoptr(Farm) farm = NULL;
  gint64 id, cartons;

  kitchen_open (&kitchen);
  farm = kitchen.farm;
  average (farm);
  farm_receipt (farm, kitchen.flour, TODAY - 30, 10, 1000, FALSE);
  cartons = farm_receipt (farm, farm->carton, TODAY - 30, 10, 100, FALSE);
  id = kitchen_cook (farm, "Dough 1", TODAY - 20, kitchen.flour, 5, kitchen.dough, 5);
  ACT (farm, stead_lot_repo_use (farm->store, farm->carton, id, TODAY - 18, 5, 0, err));
  ACT (farm, stead_recost_batch (farm->store, id, err));
  g_assert_cmpint (kitchen_cents (farm, id), ==, 550);
  set_price (farm, cartons, 300);
  g_assert_cmpint (kitchen_cents (farm, id), ==, 650);
  farm_assert_ledger (farm);
}

/* --- closed days ---------------------------------------------------------------------- */

static void
close_through (Farm     *farm,
               SteadDay  day)
{
  g_autofree char *sql = g_strdup_printf ("INSERT INTO closing (through_day, closed_on, person_id) VALUES (%d, %d, %d)",
                                          day, day + 1, (int) farm->advisor);

  fixture_act (farm->store, "close", sql);
}

static void
test_closed (void)
{
  g_autoptr(Farm) farm = farm_new ();

  farm_receipt (farm, farm->straw, TODAY - 50, 10, 1000, FALSE);
  farm_receipt (farm, farm->straw, TODAY - 49, 10, 2000, FALSE);
  ACT (farm, stead_lot_repo_sell (farm->store, farm->straw, TODAY - 40, 10, NULL, 0, err));
  ACT (farm, stead_lot_repo_sell (farm->store, farm->straw, TODAY - 20, 5, NULL, 0, err));
  close_through (farm, TODAY - 30);
  average (farm);
  g_assert_cmpint (out (farm, farm->straw, "sold"), ==, 2000);
  farm_assert_ledger (farm);

  /* Sold at the average before the books were closed: the lots have no cost of their own. */
  farm_receipt (farm, farm->straw, TODAY - 15, 5, 5000, FALSE);
  ACT (farm, stead_lot_repo_sell (farm->store, farm->straw, TODAY - 10, 5, NULL, 0, err));
  g_assert_cmpint (out (farm, farm->straw, "sold"), ==, 5000);
  close_through (farm, TODAY - 5);
  INVALID (farm, stead_farm_repo_set_stock_method (farm->store, STEAD_STOCK_FIFO, err), "stays with the average");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/recost/cascade", test_cascade);
  g_test_add_func ("/store/recost/correction", test_correction);
  g_test_add_func ("/store/recost/two-products", test_two_products);
  g_test_add_func ("/store/recost/harvest-stays", test_harvest_stays);
  g_test_add_func ("/store/recost/circle", test_circle);
  g_test_add_func ("/store/recost/published-average", test_published);
  g_test_add_func ("/store/recost/back-to-lots", test_back_to_lots);
  g_test_add_func ("/store/recost/average-cascade", test_average_cascade);
  g_test_add_func ("/store/recost/starter", test_starter);
  g_test_add_func ("/store/recost/late-use", test_late_use);
  g_test_add_func ("/store/recost/closed", test_closed);
  return g_test_run ();
}
