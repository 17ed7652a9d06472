/* test-product-repo.c - packs, packaging, costs of a sale day, and the history of prices. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"

static SteadStallCost *
stall_cost (const char *name,
            gint64      cents,
            gint64      per_units)
{
  SteadStallCost *cost = g_new0 (SteadStallCost, 1);

  cost->name = g_strdup (name);
  cost->cents = cents;
  cost->per_units = per_units;
  return cost;
}

static SteadProduct *
make_product (Farm *farm)
{
  SteadProduct *product = stead_product_new ();
  SteadProductPart part = { farm->carton, 1 };

  product->name = g_strdup (" Eggs ");
  product->pack = STEAD_PACK_HALF_DOZEN;
  product->base_per_unit = 6;
  product->batch_id = farm->flock;
  product->unsold_frac = 0.05;
  product->pack_minutes = 1.5;
  product->planned_units = 72;
  product->target_cents = 5000;
  g_array_append_val (product->parts, part);
  g_ptr_array_add (product->stall_costs, stall_cost (" Permit ", 4000, 0));
  g_ptr_array_add (product->stall_costs, stall_cost ("Table", 2400, 90));
  return product;
}

static SteadProduct *
get (Farm   *farm,
     gint64  id)
{
  g_autoptr(GError) error = NULL;
  SteadProduct *product = stead_product_repo_get (farm->store, id, &error);

  g_assert_no_error (error);
  return product;
}

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadProduct) product = make_product (farm);
  g_autoptr(SteadProduct) again = NULL;
  SteadStallCost *cost;

  ACT_LEAVING (farm, stead_product_repo_save (farm->store, product, err),
               product->id == 0 && ((SteadStallCost *) product->stall_costs->pdata[0])->id == 0);
  again = get (farm, product->id);
  g_assert_cmpstr (again->name, ==, "Eggs");
  g_assert_cmpint (again->pack, ==, STEAD_PACK_HALF_DOZEN);
  g_assert_cmpfloat (again->base_per_unit, ==, 6);
  g_assert_cmpint (again->batch_id, ==, farm->flock);
  g_assert_cmpfloat (again->unsold_frac, ==, 0.05);
  g_assert_cmpfloat (again->pack_minutes, ==, 1.5);
  g_assert_cmpint (again->planned_units, ==, 72);
  g_assert_cmpint (again->target_cents, ==, 5000);
  g_assert_cmpint (again->retired_on, ==, STEAD_DAY_NONE);
  g_assert_cmpuint (again->parts->len, ==, 1);
  g_assert_cmpint (g_array_index (again->parts, SteadProductPart, 0).item_id, ==, farm->carton);
  g_assert_cmpuint (again->stall_costs->len, ==, 2);
  cost = again->stall_costs->pdata[0];
  g_assert_cmpstr (cost->name, ==, "Permit");
  g_assert_cmpint (cost->cents, ==, 4000);
  cost = again->stall_costs->pdata[1];
  g_assert_cmpint (cost->per_units, ==, 90);
  g_assert_cmpint (cost->id, ==, ((SteadStallCost *) product->stall_costs->pdata[1])->id);
  farm_assert_undo (farm);
}

/* Lines keep their ids, so the step of undo holds only the line that changed. */
static void
test_change (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadProduct) product = make_product (farm);
  g_autoptr(SteadProduct) again = NULL;
  gint64 permit, table;

  ACT (farm, stead_product_repo_save (farm->store, product, err));
  permit = ((SteadStallCost *) product->stall_costs->pdata[0])->id;
  table = ((SteadStallCost *) product->stall_costs->pdata[1])->id;
  ((SteadStallCost *) product->stall_costs->pdata[1])->cents = 2600;
  g_ptr_array_add (product->stall_costs, stall_cost ("Ice", 800, 0));
  g_array_set_size (product->parts, 0);
  product->retired_on = TODAY;
  product->batch_id = 0;
  ACT (farm, stead_product_repo_save (farm->store, product, err));
  again = get (farm, product->id);
  g_assert_cmpuint (again->parts->len, ==, 0);
  g_assert_cmpuint (again->stall_costs->len, ==, 3);
  g_assert_cmpint (((SteadStallCost *) again->stall_costs->pdata[0])->id, ==, permit);
  g_assert_cmpint (((SteadStallCost *) again->stall_costs->pdata[1])->id, ==, table);
  g_assert_cmpint (((SteadStallCost *) again->stall_costs->pdata[1])->cents, ==, 2600);
  g_assert_cmpint (again->retired_on, ==, TODAY);
  g_ptr_array_remove_index (product->stall_costs, 0);
  ACT (farm, stead_product_repo_save (farm->store, product, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM stall_cost"), ==, 2);
  farm_assert_undo (farm);
}

#define BAD(field, value, words) \
  G_STMT_START { \
    __typeof__ (product->field) kept = product->field; \
    product->field = (value); \
    INVALID (farm, stead_product_repo_save (farm->store, product, err), words); \
    g_assert_cmpint (product->id, ==, 0); \
    product->field = kept; \
  } G_STMT_END

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadProduct) product = make_product (farm);

  BAD (name, NULL, "Enter a name");
  BAD (base_per_unit, 0, "more than zero pieces");
  BAD (base_per_unit, (double) NAN, "more than zero pieces");
  BAD (unsold_frac, 0.91, "between 0 and 90 %");
  BAD (unsold_frac, -0.01, "between 0 and 90 %");
  BAD (pack_minutes, -1, "minutes to pack");
  BAD (planned_units, -1, "0 or more units");
  BAD (target_cents, -1, "Profit wanted");
}

static void
test_lines_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadProduct) product = make_product (farm);
  SteadProductPart part = { farm->carton, 2 };
  SteadStallCost *permit = product->stall_costs->pdata[0];

  permit->per_units = 10;
  INVALID (farm, stead_product_repo_save (farm->store, product, err), "Only one cost of a sale day");
  permit->per_units = -1;
  INVALID (farm, stead_product_repo_save (farm->store, product, err), "0 or more");
  permit->per_units = 0;
  permit->cents = -1;
  INVALID (farm, stead_product_repo_save (farm->store, product, err), "Permit");
  permit->cents = 0;
  g_array_append_val (product->parts, part);
  INVALID (farm, stead_product_repo_save (farm->store, product, err), "stands on two lines");
  g_array_index (product->parts, SteadProductPart, 1).item_id = 0;
  INVALID (farm, stead_product_repo_save (farm->store, product, err), "Choose the packaging");
  g_array_index (product->parts, SteadProductPart, 1) = (SteadProductPart) { farm->straw, 0 };
  INVALID (farm, stead_product_repo_save (farm->store, product, err), "must be above zero");
  g_array_set_size (product->parts, 1);
  ACT (farm, stead_product_repo_save (farm->store, product, err));
  product->id = 0;
  INVALID (farm, stead_product_repo_save (farm->store, product, err), "is taken");
}

static void
test_list (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) sold = NULL;
  g_autoptr(GPtrArray) all = NULL;
  static const char * const names[] = { "Tray", "Eggs", "Ancient" };

  for (int i = 0; i < 3; i++)
    {
      g_autoptr(SteadProduct) product = make_product (farm);

      g_free (product->name);
      product->name = g_strdup (names[i]);
      product->retired_on = i == 2 ? TODAY : STEAD_DAY_NONE;
      ACT (farm, stead_product_repo_save (farm->store, product, err));
    }
  sold = stead_product_repo_list (farm->store, FALSE, &error);
  all = stead_product_repo_list (farm->store, TRUE, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (sold->len, ==, 2);
  g_assert_cmpstr (((SteadProduct *) sold->pdata[0])->name, ==, "Eggs");
  g_assert_cmpuint (((SteadProduct *) sold->pdata[1])->stall_costs->len, ==, 2);
  g_assert_cmpuint (all->len, ==, 3);
  g_assert_cmpstr (((SteadProduct *) all->pdata[2])->name, ==, "Ancient");
}

static void
test_prices (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadProduct) product = make_product (farm);
  g_autoptr(GPtrArray) prices = NULL;
  gint64 id;

  ACT (farm, stead_product_repo_save (farm->store, product, err));
  id = product->id;
  g_assert_cmpint (stead_product_repo_price_on (farm->store, id, TODAY, &error), ==, -1);
  g_assert_no_error (error);
  ACT (farm, stead_product_repo_set_price (farm->store, id, TODAY - 10, 425, " Feed went up ", err));
  ACT (farm, stead_product_repo_set_price (farm->store, id, TODAY - 100, 400, NULL, err));
  ACT (farm, stead_product_repo_set_price (farm->store, id, TODAY - 10, 450, NULL, err));
  INVALID (farm, stead_product_repo_set_price (farm->store, id, TODAY, -1, NULL, err), "Price");
  INVALID (farm, stead_product_repo_set_price (farm->store, id, STEAD_DAY_NONE, 1, NULL, err), "Enter the day");
  prices = stead_product_repo_prices (farm->store, id, &error);
  g_assert_cmpuint (prices->len, ==, 2);
  g_assert_cmpint (((SteadPrice *) prices->pdata[0])->cents, ==, 400);
  g_assert_cmpint (((SteadPrice *) prices->pdata[1])->cents, ==, 450);
  g_assert_null (((SteadPrice *) prices->pdata[1])->note);
  g_assert_cmpint (stead_product_repo_price_on (farm->store, id, TODAY - 101, &error), ==, -1);
  g_assert_cmpint (stead_product_repo_price_on (farm->store, id, TODAY - 11, &error), ==, 400);
  g_assert_cmpint (stead_product_repo_price_on (farm->store, id, TODAY - 10, &error), ==, 450);
  g_assert_no_error (error);
  ACT (farm, stead_product_repo_delete (farm->store, id, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM price"), ==, 0);
  REFUSE (farm, stead_product_repo_delete (farm->store, id, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  farm_assert_undo (farm);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/product/round-trip", test_round_trip);
  g_test_add_func ("/store/product/change", test_change);
  g_test_add_func ("/store/product/refused", test_refused);
  g_test_add_func ("/store/product/lines-refused", test_lines_refused);
  g_test_add_func ("/store/product/list", test_list);
  g_test_add_func ("/store/product/prices", test_prices);
  return g_test_run ();
}
