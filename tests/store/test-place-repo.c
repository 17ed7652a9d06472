/* test-place-repo.c - the farm's places: what can be changed of them, and when one can go. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-place-repo.h"

static void
test_save (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) places = NULL;
  SteadPlaceFacts place = { .name = (char *) "Feed room", .kind = STEAD_PLACE_STORE_ROOM, .area_m2 = NAN };
  SteadPlaceFacts coop = { .name = (char *) "Coop", .kind = STEAD_PLACE_COOP, .area_m2 = 11.9 };

  ACT (farm, stead_place_repo_save (farm->store, &place, err));
  ACT (farm, stead_place_repo_save (farm->store, &coop, err));
  coop.kind = STEAD_PLACE_BAY;
  ACT (farm, stead_place_repo_save (farm->store, &coop, err));
  places = stead_place_repo_list (farm->store, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (places->len, ==, 2);
  g_assert_cmpstr (((SteadPlaceFacts *) places->pdata[0])->name, ==, "Coop");
  g_assert_cmpint (((SteadPlaceFacts *) places->pdata[0])->kind, ==, STEAD_PLACE_BAY);
  g_assert_cmpfloat (((SteadPlaceFacts *) places->pdata[0])->area_m2, ==, 11.9);
  g_assert_cmpint (((SteadPlaceFacts *) places->pdata[1])->kind, ==, STEAD_PLACE_STORE_ROOM);
  g_assert_true (isnan (((SteadPlaceFacts *) places->pdata[1])->area_m2));
  place.area_m2 = 0;
  INVALID (farm, stead_place_repo_save (farm->store, &place, err), "above zero");
  place.area_m2 = NAN;
  place.name = (char *) "Coop";
  INVALID (farm, stead_place_repo_save (farm->store, &place, err), "is taken");
  farm_assert_undo (farm);
}

/* Where hens live is a hen house for good; its name and its floor may still change. */
static void
test_kind_stays (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, &error);
  SteadPlaceFacts coop = { .name = (char *) "Coop", .kind = STEAD_PLACE_COOP, .area_m2 = NAN };

  g_assert_no_error (error);
  ACT (farm, stead_place_repo_save (farm->store, &coop, err));
  flock->place_id = coop.id;
  ACT (farm, stead_flock_repo_save (farm->store, flock, err));
  coop.kind = STEAD_PLACE_KITCHEN;
  INVALID (farm, stead_place_repo_save (farm->store, &coop, err), "its kind stays");
  coop.kind = STEAD_PLACE_COOP;
  coop.name = (char *) "Old coop";
  coop.area_m2 = 12;
  ACT (farm, stead_place_repo_save (farm->store, &coop, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM place WHERE name = 'Old coop' AND area_m2 = 12"
                                                " AND kind = 'coop'"), ==, 1);
}

static void
test_delete (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadPlaceFacts unused = { .name = (char *) "Shed", .kind = STEAD_PLACE_STORE_ROOM, .area_m2 = NAN };
  SteadPlaceFacts shelf = { .name = (char *) "Shelf", .kind = STEAD_PLACE_STORE_ROOM, .area_m2 = NAN };
  gint64 lot;

  ACT (farm, stead_place_repo_save (farm->store, &unused, err));
  ACT (farm, stead_place_repo_save (farm->store, &shelf, err));
  farm_receipt (farm, farm->carton, TODAY - 10, 65, 65 * 7000, FALSE);
  lot = fixture_number (farm->store, "SELECT max (id) FROM lot");
  ACT (farm, stead_lot_repo_put (farm->store, lot, shelf.id, err));
  ACT (farm, stead_place_repo_delete (farm->store, unused.id, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM place"), ==, 1);
  INVALID (farm, stead_place_repo_delete (farm->store, shelf.id, err), "belongs to this place");
  /* Once the lot lies elsewhere, nothing holds it. */
  ACT (farm, stead_lot_repo_put (farm->store, lot, 0, err));
  ACT (farm, stead_place_repo_delete (farm->store, shelf.id, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM place"), ==, 0);
  farm_assert_undo (farm);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/place/save", test_save);
  g_test_add_func ("/store/place/kind-stays", test_kind_stays);
  g_test_add_func ("/store/place/delete", test_delete);
  return g_test_run ();
}
