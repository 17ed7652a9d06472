/* test-asset-repo.c - things that last for years. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"

static SteadAsset *
make_asset (Farm *farm)
{
  SteadAsset *asset = stead_asset_new ();
  SteadAssetShare share = { farm->flock, 0.6 };

  asset->name = g_strdup (" Hen house ");
  asset->bought_on = TODAY - 400;
  asset->cost_cents = 142000;
  asset->extra_cents = 6000;
  asset->salvage_cents = 8000;
  asset->life_years = 8;
  g_array_append_val (asset->shares, share);
  return asset;
}

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadAsset) asset = make_asset (farm);
  g_autoptr(SteadAsset) again = NULL;
  g_autoptr(GPtrArray) list = NULL;

  ACT (farm, stead_asset_repo_save (farm->store, asset, err));
  again = stead_asset_repo_get (farm->store, asset->id, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (again->name, ==, "Hen house");
  g_assert_cmpint (again->bought_on, ==, TODAY - 400);
  g_assert_cmpint (again->cost_cents, ==, 142000);
  g_assert_cmpint (again->extra_cents, ==, 6000);
  g_assert_cmpint (again->salvage_cents, ==, 8000);
  g_assert_cmpint (again->method, ==, STEAD_DEPRECIATION_STRAIGHT_LINE);
  g_assert_cmpfloat (again->life_years, ==, 8);
  g_assert_cmpfloat (again->life_units, ==, 0);
  g_assert_false (again->is_gift);
  g_assert_cmpint (again->gone_on, ==, STEAD_DAY_NONE);
  g_assert_cmpuint (again->shares->len, ==, 1);
  g_assert_cmpint (g_array_index (again->shares, SteadAssetShare, 0).batch_id, ==, farm->flock);
  g_assert_cmpfloat (g_array_index (again->shares, SteadAssetShare, 0).frac, ==, 0.6);

  again->method = STEAD_DEPRECIATION_UNITS;
  again->life_years = 0;
  again->life_units = 5000;
  again->unit_name = g_strdup ("hour");
  again->is_gift = TRUE;
  again->gone_on = TODAY;
  g_array_set_size (again->shares, 0);
  ACT (farm, stead_asset_repo_save (farm->store, again, err));
  list = stead_asset_repo_list (farm->store, &error);
  g_assert_cmpuint (list->len, ==, 1);
  g_assert_cmpint (((SteadAsset *) list->pdata[0])->method, ==, STEAD_DEPRECIATION_UNITS);
  g_assert_cmpfloat (((SteadAsset *) list->pdata[0])->life_units, ==, 5000);
  g_assert_cmpstr (((SteadAsset *) list->pdata[0])->unit_name, ==, "hour");
  g_assert_true (((SteadAsset *) list->pdata[0])->is_gift);
  g_assert_cmpint (((SteadAsset *) list->pdata[0])->gone_on, ==, TODAY);
  g_assert_cmpuint (((SteadAsset *) list->pdata[0])->shares->len, ==, 0);
  ACT (farm, stead_asset_repo_delete (farm->store, asset->id, err));
  REFUSE (farm, stead_asset_repo_delete (farm->store, asset->id, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  farm_assert_undo (farm);
}

#define BAD(field, value, words) \
  G_STMT_START { \
    __typeof__ (asset->field) kept = asset->field; \
    asset->field = (value); \
    INVALID (farm, stead_asset_repo_save (farm->store, asset, err), words); \
    g_assert_cmpint (asset->id, ==, 0); \
    asset->field = kept; \
  } G_STMT_END

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadAsset) asset = make_asset (farm);
  SteadAssetShare again = { farm->flock, 0.5 };

  BAD (name, NULL, "Enter a name");
  BAD (bought_on, STEAD_DAY_NONE, "Enter the day");
  BAD (bought_on, TODAY + 1, "still to come");
  BAD (gone_on, TODAY - 401, "gone before it was bought");
  BAD (cost_cents, -1, "Cost");
  BAD (extra_cents, -1, "Delivery");
  BAD (salvage_cents, 148001, "worth more at the end");
  BAD (life_years, 0, "how many years");
  BAD (life_years, (double) NAN, "how many years");
  BAD (life_years, 101, "at most 100");
  BAD (method, STEAD_DEPRECIATION_UNITS, "units of use");
  g_array_append_val (asset->shares, again);
  INVALID (farm, stead_asset_repo_save (farm->store, asset, err), "same flock twice");
  g_array_set_size (asset->shares, 1);
  g_array_index (asset->shares, SteadAssetShare, 0).frac = 0;
  INVALID (farm, stead_asset_repo_save (farm->store, asset, err), "above 0");
  g_array_index (asset->shares, SteadAssetShare, 0).frac = 1.01;
  INVALID (farm, stead_asset_repo_save (farm->store, asset, err), "at most 100 %");
}

/* 60 % and 50 % are too much together; thirds are not. */
static void
test_shares (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, &error);
  g_autoptr(SteadAsset) asset = make_asset (farm);
  gint64 ids[3] = { farm->flock, 0, 0 };

  for (int i = 1; i < 3; i++)
    {
      flock->id = 0;
      g_free (flock->name);
      flock->name = g_strdup_printf ("Hens %d", i + 1);
      ACT (farm, stead_flock_repo_save (farm->store, flock, err));
      ids[i] = flock->id;
    }
  g_array_append_vals (asset->shares, &(SteadAssetShare) { ids[1], 0.5 }, 1);
  INVALID (farm, stead_asset_repo_save (farm->store, asset, err), "more than 100 %");
  g_array_set_size (asset->shares, 0);
  for (int i = 0; i < 3; i++)
    {
      SteadAssetShare third = { ids[i], 1.0 / 3 };

      g_array_append_val (asset->shares, third);
    }
  ACT (farm, stead_asset_repo_save (farm->store, asset, err));
}

static void
test_use (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadAsset) asset = make_asset (farm);
  double units = 0, before = 0;

  ACT (farm, stead_asset_repo_save (farm->store, asset, err));
  INVALID (farm, stead_asset_repo_add_use (farm->store, asset->id, farm->flock, TODAY, 1, err), "not by use");
  asset->method = STEAD_DEPRECIATION_UNITS;
  asset->life_units = 100;
  ACT (farm, stead_asset_repo_save (farm->store, asset, err));
  INVALID (farm, stead_asset_repo_add_use (farm->store, asset->id, farm->flock, TODAY - 401, 1, err), "up to today");
  INVALID (farm, stead_asset_repo_add_use (farm->store, asset->id, farm->flock, TODAY + 1, 1, err), "up to today");
  INVALID (farm, stead_asset_repo_add_use (farm->store, asset->id, farm->flock, TODAY, 0, err), "above zero");
  for (int i = 1; i <= 4; i++)
    ACT (farm, stead_asset_repo_add_use (farm->store, asset->id, farm->flock, TODAY - 10 * i, i, err));
  g_assert_true (stead_asset_repo_uses (farm->store, asset->id, farm->flock, TODAY - 30, TODAY - 20, &units, &before, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (units, ==, 5);
  g_assert_cmpfloat (before, ==, 4);
  g_assert_true (stead_asset_repo_uses (farm->store, asset->id, 99, TODAY - 30, TODAY, &units, &before, &error));
  g_assert_cmpfloat (units, ==, 0);
  g_assert_cmpfloat (before, ==, 4);
  g_assert_true (stead_asset_repo_uses (farm->store, asset->id, 0, TODAY - 400, TODAY, &units, &before, &error));
  g_assert_cmpfloat (units, ==, 10);
  farm_assert_undo (farm);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/asset/round-trip", test_round_trip);
  g_test_add_func ("/store/asset/refused", test_refused);
  g_test_add_func ("/store/asset/shares", test_shares);
  g_test_add_func ("/store/asset/use", test_use);
  return g_test_run ();
}
