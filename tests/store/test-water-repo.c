/* test-water-repo.c - waters, tanks, and the test sheets. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-batch-repo.h"
#include "store/stead-place-repo.h"
#include "store/stead-water-repo.h"

/* A US gallon in liters (NIST Special Publication 811, appendix B). */
#define GAL 3.785411784
#define FT 0.3048

static gint64
make_water (Farm           *farm,
            const char     *name,
            SteadWaterKind  kind)
{
  g_autoptr(SteadWater) water = stead_water_new ();

  water->name = g_strdup (name);
  water->kind = kind;
  ACT (farm, stead_water_repo_save (farm->store, water, err));
  return water->id;
}

static gint64
make_tank (Farm       *farm,
           const char *name,
           double      diameter_m,
           double      depth_m,
           gint64      water_id)
{
  g_autoptr(SteadTank) tank = stead_tank_new ();

  tank->name = g_strdup (name);
  tank->diameter_m = diameter_m;
  tank->depth_m = depth_m;
  tank->water_id = water_id;
  ACT (farm, stead_tank_repo_save (farm->store, tank, err));
  return tank->place_id;
}

static gint64
make_test (Farm     *farm,
           gint64    water,
           SteadDay  day,
           int       minute,
           double    ph,
           double    tan_mgl)
{
  g_autoptr(SteadWaterTest) test = stead_water_test_new ();

  test->water_id = water;
  test->day = day;
  test->minute = minute;
  test->values[STEAD_READING_PH] = ph;
  test->values[STEAD_READING_TAN] = tan_mgl;
  ACT (farm, stead_water_test_repo_save (farm->store, test, err));
  return test->id;
}

/* --- waters ------------------------------------------------------------------ */

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadWater) water = stead_water_new ();
  g_autoptr(SteadWater) again = NULL;
  g_autoptr(GPtrArray) list = NULL;
  g_autoptr(GError) error = NULL;

  g_assert_cmpint (water->test_days, ==, 7);
  g_assert_true (isnan (water->volume_l));
  water->name = g_strdup (" Catfish loop ");
  water->kind = STEAD_WATER_AQUAPONIC;
  water->volume_l = 6000;
  water->salinity_g_l = 0.5;
  water->test_days = 3;
  water->ended_on = TODAY;
  water->note = g_strdup ("Two tanks and the bed.");
  ACT (farm, stead_water_repo_save (farm->store, water, err));
  again = stead_water_repo_get (farm->store, water->id, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (again->name, ==, "Catfish loop");
  g_assert_cmpint (again->kind, ==, STEAD_WATER_AQUAPONIC);
  g_assert_cmpfloat (again->volume_l, ==, 6000);
  g_assert_cmpfloat (again->salinity_g_l, ==, 0.5);
  g_assert_cmpint (again->test_days, ==, 3);
  g_assert_cmpint (again->ended_on, ==, TODAY);
  g_assert_cmpstr (again->note, ==, "Two tanks and the bed.");
  again->volume_l = NAN;
  ACT (farm, stead_water_repo_save (farm->store, again, err));
  make_water (farm, "Nursery", STEAD_WATER_TANK);
  list = stead_water_repo_list (farm->store, FALSE, &error);
  g_assert_cmpuint (list->len, ==, 1);
  g_ptr_array_unref (list);
  list = stead_water_repo_list (farm->store, TRUE, &error);
  g_assert_cmpuint (list->len, ==, 2);
  g_assert_cmpstr (((SteadWater *) list->pdata[0])->name, ==, "Nursery");   /* in use first */
  g_assert_true (isnan (((SteadWater *) list->pdata[1])->volume_l));
  farm_assert_undo (farm);
}

#define BAD_WATER(field, value, words) \
  G_STMT_START { \
    __typeof__ (water->field) kept = water->field; \
    water->field = (value); \
    INVALID (farm, stead_water_repo_save (farm->store, water, err), words); \
    water->field = kept; \
  } G_STMT_END

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  gint64 id = make_water (farm, "Loop", STEAD_WATER_TANK);
  g_autoptr(SteadWater) water = stead_water_repo_get (farm->store, id, &error);
  char blank[] = " ", taken[] = "Other", bad[] = "\xff";

  make_water (farm, "Other", STEAD_WATER_TANK);
  make_test (farm, id, TODAY - 3, -1, 7, NAN);
  BAD_WATER (name, blank, "Enter a name");
  BAD_WATER (name, taken, "“Other” is taken");
  BAD_WATER (volume_l, 0, "must be above zero");
  BAD_WATER (volume_l, INFINITY, "must be above zero");
  BAD_WATER (salinity_g_l, -0.1, "between 0 and 45");
  BAD_WATER (salinity_g_l, 46, "between 0 and 45");
  BAD_WATER (salinity_g_l, NAN, "between 0 and 45");
  BAD_WATER (test_days, 0, "1 to 365");
  BAD_WATER (test_days, 366, "1 to 365");
  BAD_WATER (note, bad, "cannot be read");
  BAD_WATER (ended_on, TODAY + 1, "still to come");
  BAD_WATER (ended_on, TODAY - 4, "tested after that day");
  water->id = 99;
  g_free (water->name);
  water->name = g_strdup ("Ghost");
  REFUSE (farm, stead_water_repo_save (farm->store, water, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  REFUSE (farm, stead_water_repo_delete (farm->store, 99, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
}

static void
test_delete (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  gint64 id = make_water (farm, "Loop", STEAD_WATER_TANK);
  gint64 place = make_tank (farm, "Tank 1", 3, 1, id);
  g_autoptr(SteadTank) tank = NULL;

  make_test (farm, id, TODAY, -1, 7, NAN);
  g_assert_cmpint (stead_water_repo_of_place (farm->store, place, &error), ==, id);
  ACT (farm, stead_water_repo_delete (farm->store, id, err));
  g_assert_cmpint (stead_water_repo_of_place (farm->store, place, &error), ==, 0);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM water_test"), ==, 0);
  tank = stead_tank_repo_get (farm->store, place, &error);
  g_assert_no_error (error);
  g_assert_cmpint (tank->water_id, ==, 0);
  farm_assert_undo (farm);
}

/* --- tanks -------------------------------------------------------------------- */

/* Volumes as printed: a veterinary manual's rule, gallons = diameter x diameter x depth x
 * 5.875 and cubic feet x 7.481; a ten-foot tank four feet deep then holds 2,350 gallons. */
static void
test_tank_volumes (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadTank) tank = stead_tank_new ();
  g_autoptr(GPtrArray) list = NULL;

  g_assert_true (isnan (stead_tank_volume_l (tank)));
  tank->name = g_strdup ("Round");
  tank->diameter_m = 10 * FT;
  tank->depth_m = 4 * FT;
  ACT (farm, stead_tank_repo_save (farm->store, tank, err));
  g_assert_cmpfloat_with_epsilon (tank->volume_l / GAL, 2350, 2);
  tank->place_id = 0;
  g_free (tank->name);
  tank->name = g_strdup ("Box");
  tank->shape = STEAD_TANK_BOX;
  tank->length_m = 8 * FT;
  tank->width_m = 3 * FT;
  tank->depth_m = 2 * FT;
  ACT (farm, stead_tank_repo_save (farm->store, tank, err));
  g_assert_cmpfloat_with_epsilon (tank->volume_l / GAL, 48 * 7.481, 0.1);
  tank->place_id = 0;
  g_free (tank->name);
  tank->name = g_strdup ("Tote");
  tank->shape = STEAD_TANK_OTHER;
  tank->volume_l = 1000;
  tank->flow_l_min = 20;
  ACT (farm, stead_tank_repo_save (farm->store, tank, err));
  list = stead_tank_repo_list (farm->store, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list->len, ==, 3);
  g_assert_cmpstr (((SteadTank *) list->pdata[0])->name, ==, "Box");
  g_assert_true (isnan (((SteadTank *) list->pdata[0])->diameter_m));   /* a box has none: not kept */
  g_assert_cmpfloat_with_epsilon (((SteadTank *) list->pdata[1])->volume_l / GAL, 2350, 2);
  g_assert_cmpfloat (((SteadTank *) list->pdata[2])->volume_l, ==, 1000);
  g_assert_cmpfloat (((SteadTank *) list->pdata[2])->flow_l_min, ==, 20);
  farm_assert_undo (farm);
}

#define BAD_TANK(field, value, words) \
  G_STMT_START { \
    __typeof__ (tank->field) kept = tank->field; \
    tank->field = (value); \
    INVALID (farm, stead_tank_repo_save (farm->store, tank, err), words); \
    tank->field = kept; \
  } G_STMT_END

static void
test_tank_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadTank) tank = NULL;
  gint64 place = make_tank (farm, "Tank 1", 3, 1, 0);
  char taken[] = "Tank 2", blank[] = "";

  make_tank (farm, "Tank 2", 3, 1, 0);
  tank = stead_tank_repo_get (farm->store, place, &error);
  BAD_TANK (name, blank, "Enter a name");
  BAD_TANK (name, taken, "“Tank 2” is taken");
  BAD_TANK (diameter_m, NAN, "diameter");
  BAD_TANK (diameter_m, -1, "diameter");
  BAD_TANK (depth_m, 0, "depth of the water");
  BAD_TANK (depth_m, 1001, "depth of the water");
  BAD_TANK (flow_l_min, -1, "flow");
  tank->shape = STEAD_TANK_CONE;
  BAD_TANK (cone_m, NAN, "depth of the cone");
  tank->shape = STEAD_TANK_BOX;
  BAD_TANK (length_m, NAN, "length");
  tank->length_m = 1;
  BAD_TANK (width_m, NAN, "width");
  tank->shape = STEAD_TANK_OTHER;
  BAD_TANK (volume_l, 0, "how much water");
  tank->shape = STEAD_TANK_ROUND;
  BAD_TANK (water_id, 99, "is gone");
  tank->place_id = 99;
  REFUSE (farm, stead_tank_repo_save (farm->store, tank, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
}

/* A place that is known already becomes a tank, and keeps its area. */
static void
test_tank_of_place (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadTank) tank = stead_tank_new ();
  g_autoptr(GPtrArray) places = NULL;
  SteadPlaceFacts place = { .name = (char *) "Pond", .kind = STEAD_PLACE_BAY, .area_m2 = 12 };

  ACT (farm, stead_place_repo_save (farm->store, &place, err));
  tank->place_id = place.id;
  tank->name = g_strdup ("Pond tank");
  tank->shape = STEAD_TANK_OTHER;
  tank->volume_l = 9000;
  ACT (farm, stead_tank_repo_save (farm->store, tank, err));
  places = stead_place_repo_list (farm->store, &error);
  g_assert_cmpuint (places->len, ==, 1);
  g_assert_cmpstr (((SteadPlaceFacts *) places->pdata[0])->name, ==, "Pond tank");
  g_assert_cmpint (((SteadPlaceFacts *) places->pdata[0])->kind, ==, STEAD_PLACE_TANK);
  g_assert_cmpfloat (((SteadPlaceFacts *) places->pdata[0])->area_m2, ==, 12);
  ACT (farm, stead_tank_repo_delete (farm->store, place.id, err));
  REFUSE (farm, stead_tank_repo_delete (farm->store, place.id, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  farm_assert_undo (farm);
}

/* --- what shares a water ------------------------------------------------------- */

static void
insert (Farm       *farm,
        const char *sql)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_store_begin (farm->store, "rows", &error));
  g_assert_cmpint (sqlite3_exec (stead_store_get_db (farm->store), sql, NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_true (stead_store_commit (farm->store, &error));
}

/* Two groups of fish and a crop in places of the loop; a third group elsewhere. */
static void
stock_loop (Farm   *farm,
            gint64  tank,
            gint64  bed,
            gint64  elsewhere)
{
  g_autofree char *sql = g_strdup_printf (
    "INSERT INTO batch (id, kind, name, place_id, started_on) VALUES"
    " (50, 'fish', 'Big ones', %d, %d), (51, 'fish', 'Little ones', %d, %d), (52, 'fish', 'Others', %d, %d),"
    " (53, 'crop', 'A tomatoes', %d, %d);"
    "INSERT INTO fish (batch_id, species, stocked, stocked_g, cost_cents, is_gift, protein_frac, tgc, sale_g,"
    " sale_frac, spread_frac, deaths_year, purge_days) VALUES"
    " (50, 'channel-catfish', 100, 20, 0, 0, 0.32, 0.1, 600, 0.8, 0.2, 0.02, 4),"
    " (51, 'channel-catfish', 100, 0.5, 0, 0, NULL, 0.1, 600, 0.8, 0.2, 0.02, 4),"
    " (52, 'tilapia', 100, 20, 0, 0, NULL, 0.1, 600, 0.8, 0.2, 0.02, 4);"
    "INSERT INTO weighing (batch_id, day, n, total_kg) VALUES (50, %d, 10, 1), (50, %d, 30, 6);"
    "INSERT INTO batch_entry (batch_id, day, feed_kg) VALUES (50, %d, 1), (50, %d, 2), (50, %d, 4), (52, %d, 8);",
    (int) tank, TODAY - 90, (int) tank, TODAY - 30, (int) elsewhere, TODAY - 90, (int) bed, TODAY - 20,
    TODAY - 40, TODAY - 10, TODAY - 8, TODAY - 7, TODAY - 1, TODAY - 1);

  insert (farm, sql);
}

static void
test_shared (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) batches = NULL;
  g_autoptr(GPtrArray) places = NULL;
  g_autoptr(GPtrArray) fish = NULL;
  g_autoptr(SteadWater) water = NULL;
  SteadPlaceFacts bed = { .name = (char *) "Bed", .kind = STEAD_PLACE_BAY, .area_m2 = 20 };
  gint64 loop = make_water (farm, "Loop", STEAD_WATER_AQUAPONIC);
  gint64 tank = make_tank (farm, "Tank 1", 2, 1, loop);
  gint64 elsewhere = make_tank (farm, "Tank 2", 2, 1, 0);
  const SteadWaterFish *big;
  double litres = 0;

  make_tank (farm, "Sump", 1, 1, loop);
  ACT (farm, stead_place_repo_save (farm->store, &bed, err));
  ACT (farm, stead_water_repo_set_place (farm->store, bed.id, loop, err));
  REFUSE (farm, stead_water_repo_set_place (farm->store, 99, loop, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  stock_loop (farm, tank, bed.id, elsewhere);
  batches = stead_water_repo_batches (farm->store, loop, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (batches->len, ==, 3);
  g_assert_cmpstr (((SteadBatch *) batches->pdata[0])->name, ==, "Big ones");
  g_assert_cmpstr (((SteadBatch *) batches->pdata[1])->name, ==, "Little ones");
  g_assert_cmpstr (((SteadBatch *) batches->pdata[2])->name, ==, "A tomatoes");   /* fish first */
  places = stead_water_repo_places (farm->store, loop, &error);
  g_assert_cmpuint (places->len, ==, 3);
  fish = stead_water_repo_fish (farm->store, loop, TODAY - 7, TODAY - 1, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (fish->len, ==, 2);
  big = fish->pdata[0];
  g_assert_cmpstr (big->species, ==, "channel-catfish");
  g_assert_cmpfloat_with_epsilon (big->mean_g, 200, 1e-9);       /* 6 kg of 30 */
  g_assert_cmpfloat (big->feed_kg, ==, 6);                       /* not the day before */
  g_assert_cmpfloat (big->protein_frac, ==, 0.32);
  g_assert_cmpfloat (((SteadWaterFish *) fish->pdata[1])->mean_g, ==, 0.5);   /* never weighed */
  g_assert_true (isnan (((SteadWaterFish *) fish->pdata[1])->protein_frac));
  INVALID (farm, stead_tank_repo_delete (farm->store, tank, err), "2 batches live or lived in “Tank 1”");
  water = stead_water_repo_get (farm->store, loop, &error);
  g_assert_true (stead_water_repo_volume (farm->store, water, &litres, &error));
  g_assert_cmpfloat_with_epsilon (litres, G_PI * 1000 * (1 + 0.25), 1e-6);   /* both tanks of the loop */
  water->volume_l = 5000;
  g_assert_true (stead_water_repo_volume (farm->store, water, &litres, &error));
  g_assert_cmpfloat (litres, ==, 5000);
  water->volume_l = NAN;
  water->id = 99;
  g_assert_true (stead_water_repo_volume (farm->store, water, &litres, &error));
  g_assert_true (isnan (litres));
}

/* --- tests ---------------------------------------------------------------------- */

static void
test_test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadWaterTest) test = stead_water_test_new ();
  g_autoptr(SteadWaterTest) again = NULL;
  static const double values[STEAD_N_READINGS] = { 24.5, 7.1, 0.5, 0.25, 40, 6.2, 60, 120, 850, 0, 105 };

  test->water_id = make_water (farm, "Loop", STEAD_WATER_TANK);
  test->day = TODAY;
  test->minute = 7 * 60 + 30;
  memcpy (test->values, values, sizeof values);
  test->action = g_strdup (" Half feed. ");
  test->note = g_strdup ("Cloudy");
  test->person_id = farm->student;
  ACT (farm, stead_water_test_repo_save (farm->store, test, err));
  again = stead_water_test_repo_get (farm->store, test->id, &error);
  g_assert_no_error (error);
  g_assert_cmpint (again->water_id, ==, test->water_id);
  g_assert_cmpint (again->day, ==, TODAY);
  g_assert_cmpint (again->minute, ==, 450);
  g_assert_cmpstr (again->action, ==, "Half feed.");
  g_assert_cmpstr (again->note, ==, "Cloudy");
  g_assert_cmpint (again->person_id, ==, farm->student);
  for (int i = 0; i < STEAD_N_READINGS; i++)
    g_assert_cmpfloat (again->values[i], ==, values[i]);
  again->values[STEAD_READING_OXYGEN] = NAN;
  again->minute = -1;
  ACT (farm, stead_water_test_repo_save (farm->store, again, err));
  stead_water_test_free (test);
  test = stead_water_test_repo_get (farm->store, again->id, &error);
  g_assert_true (isnan (test->values[STEAD_READING_OXYGEN]));
  g_assert_cmpint (test->minute, ==, -1);
  ACT (farm, stead_water_test_repo_delete (farm->store, test->id, err));
  REFUSE (farm, stead_water_test_repo_delete (farm->store, test->id, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  REFUSE (farm, stead_water_test_repo_save (farm->store, test, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  farm_assert_undo (farm);
}

static void
test_last (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) list = NULL;
  g_autoptr(SteadWaterTest) last = NULL;
  g_autoptr(SteadWaterTest) last_tan = NULL;
  gint64 loop = make_water (farm, "Loop", STEAD_WATER_TANK);

  g_assert_null (stead_water_test_repo_last (farm->store, loop, &error));
  g_assert_no_error (error);
  make_test (farm, loop, TODAY - 1, 600, 7.2, NAN);
  make_test (farm, loop, TODAY - 1, 480, 7.1, 0.5);
  make_test (farm, loop, TODAY - 9, -1, 7.0, 1);
  make_test (farm, make_water (farm, "Other", STEAD_WATER_TANK), TODAY, -1, 8, 1);
  last = stead_water_test_repo_last (farm->store, loop, &error);
  g_assert_cmpfloat (last->values[STEAD_READING_PH], ==, 7.2);
  last_tan = stead_water_test_repo_last_of (farm->store, loop, STEAD_READING_TAN, &error);
  g_assert_cmpfloat (last_tan->values[STEAD_READING_PH], ==, 7.1);
  g_assert_null (stead_water_test_repo_last_of (farm->store, loop, STEAD_READING_CHLORIDE, &error));
  g_assert_no_error (error);
  list = stead_water_test_repo_list (farm->store, loop, TODAY - 9, TODAY - 1, &error);
  g_assert_cmpuint (list->len, ==, 3);
  g_assert_cmpfloat (((SteadWaterTest *) list->pdata[0])->values[STEAD_READING_PH], ==, 7.0);
  g_assert_cmpfloat (((SteadWaterTest *) list->pdata[2])->values[STEAD_READING_PH], ==, 7.2);
  g_ptr_array_unref (list);
  list = stead_water_test_repo_list (farm->store, loop, TODAY - 8, TODAY - 2, &error);
  g_assert_cmpuint (list->len, ==, 0);
}

#define BAD_READING(reading, value, words) \
  G_STMT_START { \
    double kept = test->values[reading]; \
    test->values[reading] = (value); \
    INVALID (farm, stead_water_test_repo_save (farm->store, test, err), words); \
    g_assert_false (stead_water_test_check (test, TODAY, &fault, NULL)); \
    g_assert_cmpint (fault, ==, reading); \
    test->values[reading] = kept; \
  } G_STMT_END

static void
test_test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadWater) water = NULL;
  g_autoptr(SteadWaterTest) test = stead_water_test_new ();
  SteadReading fault = STEAD_READING_PH;

  test->water_id = make_water (farm, "Loop", STEAD_WATER_TANK);
  INVALID (farm, stead_water_test_repo_save (farm->store, test, err), "Enter the day");
  test->day = TODAY + 1;
  INVALID (farm, stead_water_test_repo_save (farm->store, test, err), "still to come");
  test->day = TODAY - 5;
  INVALID (farm, stead_water_test_repo_save (farm->store, test, err), "Nothing is measured");
  g_assert_false (stead_water_test_check (test, TODAY, &fault, NULL));
  g_assert_cmpint (fault, ==, STEAD_N_READINGS);
  BAD_READING (STEAD_READING_TEMPERATURE, 77, "0 to 45 °C (32 to 113 °F)");
  BAD_READING (STEAD_READING_TEMPERATURE, -1, "would be ice");
  BAD_READING (STEAD_READING_PH, 14.1, "pH goes from 0 to 14");
  BAD_READING (STEAD_READING_PH, -0.1, "pH goes from 0 to 14");
  BAD_READING (STEAD_READING_TAN, -1, "Total ammonia: a reading below 0");
  BAD_READING (STEAD_READING_TAN, INFINITY, "more than 200 mg/L");
  BAD_READING (STEAD_READING_NITRITE, 201, "Nitrite: more than 200 mg/L");
  BAD_READING (STEAD_READING_OXYGEN, 85, "shows percent");
  BAD_READING (STEAD_READING_CONDUCTIVITY, 60001, "saltier than the sea");
  test->values[STEAD_READING_PH] = 7;
  test->minute = 1440;
  INVALID (farm, stead_water_test_repo_save (farm->store, test, err), "0:00 and 23:59");
  test->minute = 1439;
  test->note = g_strdup ("\xff");
  INVALID (farm, stead_water_test_repo_save (farm->store, test, err), "cannot be read");
  g_clear_pointer (&test->note, g_free);
  test->water_id = 99;
  REFUSE (farm, stead_water_test_repo_save (farm->store, test, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  test->water_id = 1;
  water = stead_water_repo_get (farm->store, 1, &error);
  water->ended_on = TODAY - 6;
  ACT (farm, stead_water_repo_save (farm->store, water, err));
  INVALID (farm, stead_water_test_repo_save (farm->store, test, err), "was in use until");
}

/* Fresh water of 30 °C at the sea holds 7.56 mg/L (EN 25814, table of saturation): three times that
 * is 22.7.  What is only unsafe is kept. */
static void
test_oxygen_limit (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadWaterTest) test = stead_water_test_new ();

  test->water_id = make_water (farm, "Loop", STEAD_WATER_TANK);
  test->day = TODAY;
  test->values[STEAD_READING_OXYGEN] = 23;
  ACT (farm, stead_water_test_repo_save (farm->store, test, err));   /* cold water takes up so much */
  test->values[STEAD_READING_TEMPERATURE] = 30;
  INVALID (farm, stead_water_test_repo_save (farm->store, test, err), "at most 22.7 mg/L");
  test->values[STEAD_READING_OXYGEN] = 0.2;
  test->values[STEAD_READING_PH] = 11;
  ACT (farm, stead_water_test_repo_save (farm->store, test, err));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/water/round-trip", test_round_trip);
  g_test_add_func ("/store/water/refused", test_refused);
  g_test_add_func ("/store/water/delete", test_delete);
  g_test_add_func ("/store/water/shared", test_shared);
  g_test_add_func ("/store/tank/volumes", test_tank_volumes);
  g_test_add_func ("/store/tank/refused", test_tank_refused);
  g_test_add_func ("/store/tank/of-place", test_tank_of_place);
  g_test_add_func ("/store/water-test/round-trip", test_test_round_trip);
  g_test_add_func ("/store/water-test/last", test_last);
  g_test_add_func ("/store/water-test/refused", test_test_refused);
  g_test_add_func ("/store/water-test/oxygen", test_oxygen_limit);
  return g_test_run ();
}
