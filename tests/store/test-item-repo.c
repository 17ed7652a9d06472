/* test-item-repo.c - the things that are bought, used and packed. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadItem) again = NULL;
  g_autoptr(SteadItem) found = NULL;
  g_autoptr(GPtrArray) list = NULL;
  SteadItem item = { .name = (char *) " Flour ", .kind = STEAD_ITEM_INGREDIENT, .unit = stead_unit_by_id ("oz"),
                     .allergens = (char *) "wheat", .storage = (char *) "dry", .shelf_life_days = 180,
                     .reorder_base = 2.5 };

  ACT (farm, stead_item_repo_save (farm->store, &item, err));
  again = stead_item_repo_get (farm->store, item.id, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (again->name, ==, "Flour");
  g_assert_cmpint (again->kind, ==, STEAD_ITEM_INGREDIENT);
  g_assert_true (again->unit == stead_unit_by_id ("oz"));
  g_assert_cmpstr (again->allergens, ==, "wheat");
  g_assert_cmpstr (again->storage, ==, "dry");
  g_assert_cmpint (again->shelf_life_days, ==, 180);
  g_assert_cmpfloat (again->reorder_base, ==, 2.5);
  found = stead_item_repo_find_by_name (farm->store, "Carton", &error);
  g_assert_cmpint (found->id, ==, farm->carton);
  g_assert_true (isnan (found->reorder_base));
  g_assert_null (found->allergens);
  list = stead_item_repo_list (farm->store, &error);
  g_assert_cmpuint (list->len, ==, 4);
  g_assert_cmpstr (((SteadItem *) list->pdata[0])->name, ==, "Carton");
  g_assert_cmpstr (((SteadItem *) list->pdata[3])->name, ==, "Straw");
  g_assert_null (stead_item_repo_find_by_name (farm->store, "carton", &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND);
  farm_assert_undo (farm);
}

#define BAD(field, value, words) \
  G_STMT_START { \
    __typeof__ (item->field) kept = item->field; \
    item->field = (value); \
    INVALID (farm, stead_item_repo_save (farm->store, item, err), words); \
    item->field = kept; \
  } G_STMT_END

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadItem) item = stead_item_repo_get (farm->store, farm->straw, &error);
  char taken[] = "Carton";

  BAD (name, NULL, "Enter a name");
  BAD (name, taken, "“Carton” is taken");
  BAD (unit, stead_unit_by_id ("degF"), "counted, weighed or measured");
  BAD (shelf_life_days, -1, "shelf life");
  BAD (reorder_base, -1, "reorder");
  item->unit = stead_unit_by_id ("gal");   /* nothing was bought yet: any measure will do */
  ACT (farm, stead_item_repo_save (farm->store, item, err));
  farm_receipt (farm, farm->straw, TODAY, 10, 100, FALSE);
  BAD (unit, stead_unit_by_id ("lb"), "“Straw” was already bought by another measure");
  item->unit = stead_unit_by_id ("l");     /* the same measure */
  ACT (farm, stead_item_repo_save (farm->store, item, err));
  item->id = 99;
  g_free (item->name);
  item->name = g_strdup ("Ghost");
  REFUSE (farm, stead_item_repo_save (farm->store, item, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
}

static void
test_delete (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadProduct) product = stead_product_new ();
  SteadProductPart part = { farm->carton, 1 };
  gint64 spare = farm_item (farm, "Spare", STEAD_ITEM_SUPPLY, "ea");

  product->name = g_strdup ("Eggs");
  g_array_append_val (product->parts, part);
  ACT (farm, stead_product_repo_save (farm->store, product, err));
  farm_receipt (farm, farm->straw, TODAY, 10, 100, FALSE);
  farm_receipt (farm, farm->straw, TODAY, 10, 100, FALSE);
  INVALID (farm, stead_item_repo_delete (farm->store, farm->straw, err), "“Straw” stands on 2 receipts");
  INVALID (farm, stead_item_repo_delete (farm->store, farm->carton, err), "packaging of 1 product.");
  INVALID (farm, stead_item_repo_delete (farm->store, farm->feed, err), "feed of 1 flock.");
  ACT (farm, stead_item_repo_delete (farm->store, spare, err));
  REFUSE (farm, stead_item_repo_delete (farm->store, spare, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  farm_assert_undo (farm);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/item/round-trip", test_round_trip);
  g_test_add_func ("/store/item/refused", test_refused);
  g_test_add_func ("/store/item/delete", test_delete);
  return g_test_run ();
}
