/* test-crop-repo.c - crops, their log, thermometers, the usual year and glasshouses. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-crop-repo.h"
#include "store/stead-place-repo.h"

static SteadCrop *
tomatoes (void)
{
  SteadCrop *crop = stead_crop_new ();

  crop->batch.name = g_strdup ("Tomatoes, bay 1");
  crop->batch.started_on = TODAY - 60;
  crop->batch.care_minutes_day = 15;
  crop->variety = g_strdup ("Red Early");
  crop->sown_on = TODAY - 60;
  crop->set_out_on = TODAY - 20;
  crop->plants = 40;
  crop->area_m2 = 13.5;
  crop->cost_cents = 1875;
  return crop;
}

static gint64
farm_crop (Farm *farm)
{
  g_autoptr(SteadCrop) crop = tomatoes ();

  ACT (farm, stead_crop_repo_save (farm->store, crop, err));
  return crop->batch.id;
}

static gint64
bay (Farm *farm)
{
  g_autoptr(SteadPlaceFacts) place = g_new0 (SteadPlaceFacts, 1);

  place->name = g_strdup ("Bay 1");
  place->kind = STEAD_PLACE_BAY;
  place->area_m2 = NAN;
  ACT (farm, stead_place_repo_save (farm->store, place, err));
  return place->id;
}

/* --- crops ---------------------------------------------------------------------- */

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCrop) crop = NULL;
  g_autoptr(SteadCrop) again = NULL;
  g_autoptr(GPtrArray) list = NULL;
  gint64 id = farm_crop (farm);

  crop = stead_crop_repo_get (farm->store, id, &error);
  g_assert_no_error (error);
  g_assert_cmpint (crop->batch.kind, ==, STEAD_BATCH_CROP);
  g_assert_cmpstr (crop->batch.name, ==, "Tomatoes, bay 1");
  g_assert_cmpfloat (crop->batch.care_minutes_day, ==, 15);
  g_assert_cmpstr (crop->crop, ==, "tomato");
  g_assert_cmpstr (crop->variety, ==, "Red Early");
  g_assert_cmpint (crop->system, ==, STEAD_GROW_SOIL);
  g_assert_cmpint (crop->sown_on, ==, TODAY - 60);
  g_assert_cmpint (crop->set_out_on, ==, TODAY - 20);
  g_assert_cmpint (crop->first_ripe_on, ==, STEAD_DAY_NONE);
  g_assert_cmpint (crop->plants, ==, 40);
  g_assert_cmpfloat (crop->area_m2, ==, 13.5);
  g_assert_cmpint (crop->cost_cents, ==, 1875);
  g_assert_cmpfloat (crop->base_c, ==, 10);
  g_assert_cmpfloat (crop->upper_c, ==, 30);
  g_assert_cmpint (crop->method, ==, STEAD_CROP_AVERAGE);
  g_assert_cmpint (crop->climate_id, ==, 0);

  crop->system = STEAD_GROW_AQUAPONIC;
  crop->method = STEAD_CROP_CEILING;
  crop->first_ripe_on = TODAY;
  crop->area_m2 = NAN;
  crop->climate_id = bay (farm);
  crop->is_gift = TRUE;
  ACT (farm, stead_crop_repo_save (farm->store, crop, err));
  again = stead_crop_repo_get (farm->store, id, &error);
  g_assert_cmpint (again->system, ==, STEAD_GROW_AQUAPONIC);
  g_assert_cmpint (again->method, ==, STEAD_CROP_CEILING);
  g_assert_cmpint (again->first_ripe_on, ==, TODAY);
  g_assert_true (isnan (again->area_m2));
  g_assert_cmpint (again->climate_id, ==, crop->climate_id);
  g_assert_true (again->is_gift);
  list = stead_crop_repo_list (farm->store, FALSE, &error);
  g_assert_cmpuint (list->len, ==, 1);
  farm_assert_undo (farm);
}

static void
test_days_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadCrop) crop = tomatoes ();

  crop->sown_on = crop->set_out_on = STEAD_DAY_NONE;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "the day the crop was sown");
  crop->sown_on = TODAY + 1;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "still to come");
  crop->sown_on = TODAY - 20;
  crop->set_out_on = TODAY - 21;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "before they were sown");
  crop->set_out_on = TODAY - 10;
  crop->first_ripe_on = TODAY - 11;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "before the plants were set out");
  crop->first_ripe_on = TODAY + 1;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "first ripe fruit is still to come");
  crop->first_ripe_on = STEAD_DAY_NONE;
  crop->batch.started_on = TODAY + 1;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "still to come");
  g_assert_cmpint (crop->batch.id, ==, 0);
}

static void
test_figures_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadCrop) crop = tomatoes ();

  crop->plants = 0;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "at least 1 plant");
  crop->plants = 40;
  crop->area_m2 = 0;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "area of the bed");
  crop->area_m2 = NAN;
  crop->cost_cents = -1;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "Cost of seed");
  crop->cost_cents = 0;
  crop->base_c = 31;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "base temperature");
  crop->base_c = 10;
  crop->upper_c = 9;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "upper temperature");
  crop->upper_c = NAN;
  crop->method = STEAD_CROP_SUBSTITUTE;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "needs an upper temperature");
  crop->method = STEAD_CROP_AVERAGE;
  crop->ripe_need = NAN;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "degree days");
  crop->ripe_need = 722;
  crop->yield_kg = 0;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "harvest expected");
  crop->yield_kg = 4;
  crop->pick_weeks = 521;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "weeks of picking");
  crop->pick_weeks = 12;
  ACT (farm, stead_crop_repo_save (farm->store, crop, err));
}

static void
test_delete (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 picked = farm_crop (farm);
  g_autoptr(SteadCrop) bare = tomatoes ();

  farm_harvest (farm, picked, farm_item (farm, "Tomatoes", STEAD_ITEM_PRODUCE, "lb"), TODAY - 1, 3, STEAD_COUNT_NONE,
                120);
  INVALID (farm, stead_crop_repo_delete (farm->store, picked, err), "has harvests");
  g_free (bare->batch.name);
  bare->batch.name = g_strdup ("Basil");
  ACT (farm, stead_crop_repo_save (farm->store, bare, err));
  ACT (farm, stead_crop_repo_delete (farm->store, bare->batch.id, err));
  REFUSE (farm, stead_crop_repo_delete (farm->store, bare->batch.id, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  farm_assert_undo (farm);
}

/* --- the log -------------------------------------------------------------------- */

static void
test_log (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) entries = NULL;
  g_autoptr(SteadCrop) crop = NULL;
  gint64 id = farm_crop (farm);
  SteadCropEntry entry = { .crop_id = id, .day = TODAY - 5, .lost = 3, .reason = (char *) "wilt",
                           .note = (char *) "Tied up", .person_id = farm->student };
  SteadCropEntry more = { .crop_id = id, .day = TODAY - 2, .lost = 38 };

  ACT (farm, stead_crop_repo_save_entry (farm->store, &entry, err));
  g_assert_cmpint (stead_crop_repo_plants (farm->store, id, TODAY - 5, &error), ==, 40);
  g_assert_cmpint (stead_crop_repo_plants (farm->store, id, TODAY - 4, &error), ==, 37);
  INVALID (farm, stead_crop_repo_save_entry (farm->store, &more, err), "Only 37 plants are left");
  more.lost = 37;
  ACT (farm, stead_crop_repo_save_entry (farm->store, &more, err));
  g_assert_cmpint (stead_crop_repo_plants (farm->store, id, TODAY, &error), ==, 0);
  crop = stead_crop_repo_get (farm->store, id, &error);
  crop->plants = 39;
  INVALID (farm, stead_crop_repo_save (farm->store, crop, err), "already lost 40 plants");
  /* Its own plants do not stand in the way of a correction. */
  more.lost = 2;
  ACT (farm, stead_crop_repo_save_entry (farm->store, &more, err));
  entries = stead_crop_repo_entries (farm->store, id, TODAY - 60, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (entries->len, ==, 2);
  g_assert_cmpint (((SteadCropEntry *) entries->pdata[0])->lost, ==, 3);
  g_assert_cmpstr (((SteadCropEntry *) entries->pdata[0])->reason, ==, "wilt");
  g_assert_cmpstr (((SteadCropEntry *) entries->pdata[0])->note, ==, "Tied up");
  g_assert_cmpint (((SteadCropEntry *) entries->pdata[0])->person_id, ==, farm->student);
  ACT (farm, stead_crop_repo_delete_entry (farm->store, more.id, err));
  farm_assert_undo (farm);
}

static void
test_log_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 id = farm_crop (farm);
  SteadCropEntry entry = { .crop_id = id, .day = STEAD_DAY_NONE, .lost = 1 };

  INVALID (farm, stead_crop_repo_save_entry (farm->store, &entry, err), "Enter the day");
  entry.day = TODAY - 61;
  INVALID (farm, stead_crop_repo_save_entry (farm->store, &entry, err), "cannot be from before");
  entry.day = TODAY + 1;
  INVALID (farm, stead_crop_repo_save_entry (farm->store, &entry, err), "still to come");
  entry.day = TODAY;
  entry.lost = -1;
  INVALID (farm, stead_crop_repo_save_entry (farm->store, &entry, err), "0 or more");
  entry.lost = 0;
  entry.note = (char *) "  ";
  INVALID (farm, stead_crop_repo_save_entry (farm->store, &entry, err), "Nothing is entered");
  entry.note = (char *) "Pruned";
  ACT (farm, stead_batch_repo_end (farm->store, id, TODAY - 1, err));
  INVALID (farm, stead_crop_repo_save_entry (farm->store, &entry, err), "ended on");
}

/* --- thermometers --------------------------------------------------------------- */

static void
test_climate (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) inside = NULL;
  g_autoptr(GPtrArray) outside = NULL;
  gint64 place = bay (farm);
  const SteadClimateDay blank = { .min_c = NAN, .max_c = NAN, .rh_frac = NAN, .light_mol = NAN };
  SteadClimateDay day = blank, late = blank, out = blank;
  const SteadClimateDay *read;

  day.place_id = late.place_id = place;
  day.day = late.day = out.day = TODAY - 1;
  day.min_c = 12;
  day.max_c = 24;
  day.rh_frac = 0.7;
  ACT (farm, stead_climate_repo_save (farm->store, &day, TRUE, err));
  late.max_c = 29;
  late.light_mol = 18;
  ACT (farm, stead_climate_repo_save (farm->store, &late, TRUE, err));
  g_assert_cmpint (late.id, ==, day.id);
  out.min_c = -4;
  ACT (farm, stead_climate_repo_save (farm->store, &out, TRUE, err));

  inside = stead_climate_repo_list (farm->store, place, TODAY - 9, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (inside->len, ==, 1);
  read = inside->pdata[0];
  g_assert_cmpfloat (read->min_c, ==, 12);
  g_assert_cmpfloat (read->max_c, ==, 29);
  g_assert_cmpfloat (read->rh_frac, ==, 0.7);
  g_assert_cmpfloat (read->light_mol, ==, 18);
  outside = stead_climate_repo_list (farm->store, 0, TODAY - 9, TODAY, &error);
  g_assert_cmpuint (outside->len, ==, 1);
  read = outside->pdata[0];
  g_assert_cmpfloat (read->min_c, ==, -4);
  g_assert_true (isnan (read->max_c));
  farm_assert_undo (farm);
}

/* Replaced, not widened; and a day that is moved onto another takes its place. */
static void
test_climate_replaced (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) days = NULL;
  SteadClimateDay first = { .day = TODAY - 2, .min_c = 1, .max_c = 40, .rh_frac = NAN, .light_mol = NAN };
  SteadClimateDay second = { .day = TODAY - 2, .min_c = 8, .max_c = 20, .rh_frac = NAN, .light_mol = NAN };
  SteadClimateDay third = { .day = TODAY - 1, .min_c = 9, .max_c = 21, .rh_frac = NAN, .light_mol = NAN };

  ACT (farm, stead_climate_repo_save (farm->store, &first, FALSE, err));
  ACT (farm, stead_climate_repo_save (farm->store, &second, FALSE, err));
  ACT (farm, stead_climate_repo_save (farm->store, &third, FALSE, err));
  third.day = TODAY - 2;
  ACT (farm, stead_climate_repo_save (farm->store, &third, FALSE, err));
  days = stead_climate_repo_list (farm->store, 0, TODAY - 9, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (days->len, ==, 1);
  g_assert_cmpfloat (((SteadClimateDay *) days->pdata[0])->min_c, ==, 9);
  g_assert_cmpfloat (((SteadClimateDay *) days->pdata[0])->max_c, ==, 21);
  ACT (farm, stead_climate_repo_delete (farm->store, third.id, err));
  farm_assert_undo (farm);
}

static void
test_climate_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadClimateDay day = { .day = TODAY, .min_c = -61, .max_c = NAN, .rh_frac = NAN, .light_mol = NAN };

  INVALID (farm, stead_climate_repo_save (farm->store, &day, TRUE, err), "between −60 and 70");
  day.min_c = 20;
  day.max_c = 19;
  INVALID (farm, stead_climate_repo_save (farm->store, &day, TRUE, err), "above the highest");
  day.max_c = 70.1;
  INVALID (farm, stead_climate_repo_save (farm->store, &day, TRUE, err), "between −60 and 70");
  day.max_c = day.min_c = NAN;
  INVALID (farm, stead_climate_repo_save (farm->store, &day, TRUE, err), "Nothing is entered");
  day.rh_frac = 1.01;
  INVALID (farm, stead_climate_repo_save (farm->store, &day, TRUE, err), "humidity");
  day.rh_frac = NAN;
  day.light_mol = 101;
  INVALID (farm, stead_climate_repo_save (farm->store, &day, TRUE, err), "never reaches the ground");
  day.light_mol = 20;
  day.day = TODAY + 1;
  INVALID (farm, stead_climate_repo_save (farm->store, &day, TRUE, err), "still to come");
  day.day = STEAD_DAY_NONE;
  INVALID (farm, stead_climate_repo_save (farm->store, &day, TRUE, err), "Enter the day");
}

static void
test_usual (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  SteadUsualYear year, read;

  g_assert_true (stead_climate_repo_usual (farm->store, 0, &read, &error));
  g_assert_true (isnan (read.min_c[0]) && isnan (read.max_c[11]));
  for (int i = 0; i < 12; i++)
    {
      year.min_c[i] = -5 + i;
      year.max_c[i] = 4 + i;
    }
  ACT (farm, stead_climate_repo_set_usual (farm->store, 0, &year, err));
  year.min_c[5] = year.max_c[5] = NAN;
  ACT (farm, stead_climate_repo_set_usual (farm->store, 0, &year, err));
  g_assert_true (stead_climate_repo_usual (farm->store, 0, &read, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (read.min_c[0], ==, -5);
  g_assert_cmpfloat (read.max_c[11], ==, 15);
  g_assert_true (isnan (read.min_c[5]));
  year.min_c[5] = 3;
  INVALID (farm, stead_climate_repo_set_usual (farm->store, 0, &year, err), "Month 6 has only one");
  year.max_c[5] = 2;
  INVALID (farm, stead_climate_repo_set_usual (farm->store, 0, &year, err), "month 6 is above");
  year.max_c[5] = 71;
  INVALID (farm, stead_climate_repo_set_usual (farm->store, 0, &year, err), "between −60 and 70");
  farm_assert_undo (farm);
}

/* --- glasshouses ---------------------------------------------------------------- */

static void
test_glasshouse (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  gint64 place = bay (farm);
  g_autofree SteadGlasshouse *none = stead_glasshouse_repo_get (farm->store, place, &error);
  g_autofree SteadGlasshouse *read = NULL;
  SteadGlasshouse house = { place, 300, 4, 500, 0.75, 15, 3, STEAD_FUEL_OIL, 0.8, 95 };

  g_assert_no_error (error);
  g_assert_null (none);
  ACT (farm, stead_glasshouse_repo_save (farm->store, &house, err));
  house.fuel = STEAD_FUEL_NATURAL_GAS;
  house.fuel_cents = 41.5;
  ACT (farm, stead_glasshouse_repo_save (farm->store, &house, err));
  read = stead_glasshouse_repo_get (farm->store, place, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (read->cover_m2, ==, 300);
  g_assert_cmpfloat (read->u_w_m2_k, ==, 4);
  g_assert_cmpfloat (read->volume_m3, ==, 500);
  g_assert_cmpfloat (read->changes_hour, ==, 0.75);
  g_assert_cmpfloat (read->inside_c, ==, 15);
  g_assert_cmpfloat (read->sun_lift_c, ==, 3);
  g_assert_cmpint (read->fuel, ==, STEAD_FUEL_NATURAL_GAS);
  g_assert_cmpfloat (read->efficiency_frac, ==, 0.8);
  g_assert_cmpfloat (read->fuel_cents, ==, 41.5);
  farm_assert_undo (farm);
}

static void
test_glasshouse_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  const SteadGlasshouse good = { bay (farm), 300, 4, 500, 0.75, 15, 3, STEAD_FUEL_OIL, 0.8, 95 };
  SteadGlasshouse house = good;

  house.cover_m2 = 0;
  INVALID (farm, stead_glasshouse_repo_save (farm->store, &house, err), "area of the cover");
  house = good;
  house.u_w_m2_k = NAN;
  INVALID (farm, stead_glasshouse_repo_save (farm->store, &house, err), "cover lets through");
  house = good;
  house.volume_m3 = -1;
  INVALID (farm, stead_glasshouse_repo_save (farm->store, &house, err), "how much air");
  house = good;
  house.changes_hour = 101;
  INVALID (farm, stead_glasshouse_repo_save (farm->store, &house, err), "changes of air");
  house = good;
  house.inside_c = 41;
  INVALID (farm, stead_glasshouse_repo_save (farm->store, &house, err), "temperature kept");
  house = good;
  house.sun_lift_c = 21;
  INVALID (farm, stead_glasshouse_repo_save (farm->store, &house, err), "the sun gives");
  house = good;
  house.efficiency_frac = 0;
  INVALID (farm, stead_glasshouse_repo_save (farm->store, &house, err), "efficiency");
  house = good;
  house.fuel_cents = -1;
  INVALID (farm, stead_glasshouse_repo_save (farm->store, &house, err), "price of the fuel");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/crop-repo/round-trip", test_round_trip);
  g_test_add_func ("/store/crop-repo/days-refused", test_days_refused);
  g_test_add_func ("/store/crop-repo/figures-refused", test_figures_refused);
  g_test_add_func ("/store/crop-repo/delete", test_delete);
  g_test_add_func ("/store/crop-repo/log", test_log);
  g_test_add_func ("/store/crop-repo/log-refused", test_log_refused);
  g_test_add_func ("/store/crop-repo/climate", test_climate);
  g_test_add_func ("/store/crop-repo/climate-replaced", test_climate_replaced);
  g_test_add_func ("/store/crop-repo/climate-refused", test_climate_refused);
  g_test_add_func ("/store/crop-repo/usual", test_usual);
  g_test_add_func ("/store/crop-repo/glasshouse", test_glasshouse);
  g_test_add_func ("/store/crop-repo/glasshouse-refused", test_glasshouse_refused);
  return g_test_run ();
}
