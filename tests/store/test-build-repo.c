/* test-build-repo.c - builds, their bill, work and money: round trips, refusals, undo. */
#include "config.h"

#include <math.h>

#include "core/stead-core-error.h"
#include "repo-fixture.h"
#include "store/stead-build-bill-repo.h"
#include "store/stead-build-money-repo.h"
#include "store/stead-cash-repo.h"

#define FT 0.3048

/* A pen of 24 by 48 ft, a gate of 12 ft in one short side and one of 4 ft in a long side. */
static SteadBuild *
make_pen (void)
{
  SteadBuild *build = stead_build_new (STEAD_BUILD_PEN);
  SteadFenceGate wide = { 1, 6 * FT, 12 * FT }, small = { 0, 8 * FT, 4 * FT };
  SteadBuildStock stock = { "2x4", 12 * FT, 780 };

  build->name = g_strdup ("Sheep pen");
  build->animal = g_strdup ("sheep");
  build->head = 6;
  stead_build_set_rectangle (build, 48 * FT, 24 * FT);
  g_array_append_val (build->gates, small);
  g_array_append_val (build->gates, wide);
  g_array_append_val (build->stocks, stock);
  build->has_shelter = TRUE;
  build->shelter = (SteadBuildShelter) { 1, 1, 2, 12 * FT, 8 * FT, 7 * FT, 5 * FT, 0.3, 0.15, 0.15, 0.9, 0.6, 2.4, 1 };
  return build;
}

static gint64
save_pen (Farm *farm)
{
  g_autoptr(SteadBuild) build = make_pen ();

  ACT (farm, stead_build_repo_save (farm->store, build, err));
  return build->id;
}

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadBuild) build = make_pen ();
  g_autoptr(SteadBuild) back = NULL;
  g_autoptr(GError) error = NULL;

  g_array_index (build->corners, SteadBuildCorner, 2).rise_m = -0.5;
  g_array_index (build->corners, SteadBuildCorner, 2).steps = 3;
  build->goal_on = TODAY + 90;
  build->frost_m = 0.6;
  ACT (farm, stead_build_repo_save (farm->store, build, err));
  back = stead_build_repo_get (farm->store, build->id, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (back->name, ==, "Sheep pen");
  g_assert_cmpint (back->head, ==, 6);
  g_assert_cmpint (back->begun_on, ==, TODAY);
  g_assert_cmpint (back->goal_on, ==, TODAY + 90);
  g_assert_cmpuint (back->corners->len, ==, 4);
  g_assert_cmpfloat (g_array_index (back->corners, SteadBuildCorner, 2).rise_m, ==, -0.5);
  g_assert_cmpint (g_array_index (back->corners, SteadBuildCorner, 2).steps, ==, 3);
  g_assert_cmpuint (back->gates->len, ==, 2);
  g_assert_cmpfloat (g_array_index (back->gates, SteadFenceGate, 1).width_m, ==, 12 * FT);
  g_assert_true (back->has_shelter);
  g_assert_cmpint (back->shelter.turn, ==, 2);
  g_assert_cmpfloat (back->shelter.post_depth_m, ==, 1);
  g_assert_cmpstr (g_array_index (back->stocks, SteadBuildStock, 0).size, ==, "2x4");
  g_assert_true (isnan (back->housed_each_m2));
  g_assert_cmpfloat (back->frost_m, ==, 0.6);
  ACT (farm, stead_build_repo_delete (farm->store, build->id, err));
  farm_assert_undo (farm);
}

/* What core says about a drawing. */
static void
refuse_plan (Farm       *farm,
             SteadBuild *build,
             const char *words)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_store_begin (farm->store, "plan", NULL));
  g_assert_false (stead_build_repo_save (farm->store, build, &error));
  stead_store_rollback (farm->store);
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  farm_assert_says (error->message, words);
}

static void
test_refusals (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadBuild) build = make_pen ();
  SteadBuildCorner *corners = (SteadBuildCorner *) (gpointer) build->corners->data;

  build->goal_on = TODAY - 1;
  INVALID (farm, stead_build_repo_save (farm->store, build, err), "gone by");
  build->goal_on = TODAY;
  g_array_index (build->gates, SteadFenceGate, 1).width_m = 25 * FT;
  refuse_plan (farm, build, "gate");
  g_array_index (build->gates, SteadFenceGate, 1).width_m = 12 * FT;
  /* Two corners change places: the outline crosses itself. */
  corners[2].x_m = 0;
  corners[3].x_m = 48 * FT;
  refuse_plan (farm, build, "cross");
  corners[2].x_m = 48 * FT;
  corners[3].x_m = 0;
  build->shelter.front_m = 4 * FT;
  INVALID (farm, stead_build_repo_save (farm->store, build, err), "falls to the rear");
  build->shelter.front_m = 7 * FT;
  build->kind = STEAD_BUILD_RUN;
  corners[2].x_m = 50 * FT;
  INVALID (farm, stead_build_repo_save (farm->store, build, err), "square");
  corners[2].x_m = 48 * FT;
  build->tax_frac = 1.2;
  INVALID (farm, stead_build_repo_save (farm->store, build, err), "between 0 and 100 %");
  build->tax_frac = 0;
  g_assert_cmpint (build->id, ==, 0);
  ACT (farm, stead_build_repo_save (farm->store, build, err));
}

/* A goal that has gone by is kept when something else is changed. */
static void
test_old_goal (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadBuild) build = make_pen ();

  build->goal_on = TODAY + 5;
  ACT (farm, stead_build_repo_save (farm->store, build, err));
  stead_store_set_today (farm->store, TODAY + 20);
  build->head = 5;
  ACT (farm, stead_build_repo_save (farm->store, build, err));
  build->goal_on = TODAY + 6;
  INVALID (farm, stead_build_repo_save (farm->store, build, err), "gone by");
}

static void
test_bill (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 pen = save_pen (farm);
  g_autoptr(SteadBuildLine) roll = stead_build_line_new ();
  g_autoptr(SteadBuildLine) own = stead_build_line_new ();
  SteadBuildQuote dear = { 0, (char *) "Hill Supply", TODAY - 3, 25900, NULL };
  SteadBuildQuote fair = { 0, (char *) "Creek Lumber", TODAY - 2, 24000, NULL };
  SteadBuildQuote late = { 0, (char *) "Creek Lumber", TODAY + 1, 24000, NULL };
  g_autoptr(GPtrArray) lines = NULL;
  g_autoptr(GError) error = NULL;
  const SteadBuildLine *first;

  roll->build_id = own->build_id = pen;
  roll->key = g_strdup ("wire_roll");
  roll->part = STEAD_BUILD_PART_FENCE;
  roll->given = TRUE;
  INVALID (farm, stead_build_line_repo_save (farm->store, roll, err), "fair value");
  roll->price_cents = 24000;
  roll->giver = g_strdup ("A neighbor");
  ACT (farm, stead_build_line_repo_save (farm->store, roll, err));
  own->name = g_strdup ("Water trough");
  INVALID (farm, stead_build_line_repo_save (farm->store, own, err), "how many");
  own->quantity = 1;
  ACT (farm, stead_build_line_repo_save (farm->store, own, err));
  ACT (farm, stead_build_quote_repo_add (farm->store, roll->id, &dear, err));
  ACT (farm, stead_build_quote_repo_add (farm->store, roll->id, &fair, err));
  fair.price_cents = 23500;
  ACT (farm, stead_build_quote_repo_add (farm->store, roll->id, &fair, err));
  INVALID (farm, stead_build_quote_repo_add (farm->store, roll->id, &late, err), "today or before");
  lines = stead_build_line_repo_list (farm->store, pen, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (lines->len, ==, 2);
  first = lines->pdata[0];
  g_assert_cmpstr (first->key, ==, "wire_roll");
  g_assert_true (isnan (first->quantity));
  g_assert_cmpuint (first->quotes->len, ==, 2);
  g_assert_cmpint (((const SteadBuildQuote *) first->quotes->pdata[0])->price_cents, ==, 23500);
  farm_assert_undo (farm);
}

static void
test_work (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 pen = save_pen (farm);
  g_autoptr(SteadBuildPhase) dig = stead_build_phase_new ();
  g_autoptr(GPtrArray) phases = NULL;
  g_autoptr(GError) error = NULL;

  dig->build_id = pen;
  dig->name = g_strdup ("Dig the post holes");
  dig->hours = 18;
  dig->task = g_strdup ("hand_post_hole_digger");
  dig->age_years = 15;
  dig->from_day = TODAY + 7;
  dig->to_day = TODAY + 6;
  INVALID (farm, stead_build_phase_repo_save (farm->store, dig, err), "ends before");
  dig->to_day = TODAY + 8;
  ACT (farm, stead_build_phase_repo_save (farm->store, dig, err));
  phases = stead_build_phase_repo_list (farm->store, pen, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (phases->len, ==, 1);
  g_assert_cmpint (((const SteadBuildPhase *) phases->pdata[0])->age_years, ==, 15);
  g_assert_cmpfloat (((const SteadBuildPhase *) phases->pdata[0])->worked_h, ==, 0);
  farm_assert_undo (farm);
}

static void
test_pledges (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 pen = save_pen (farm);
  g_autoptr(SteadBuildPledge) club = stead_build_pledge_new ();
  g_autoptr(SteadBuildPledge) shop = stead_build_pledge_new ();
  g_autoptr(GPtrArray) pledges = NULL;
  g_autoptr(GError) error = NULL;

  club->build_id = shop->build_id = pen;
  club->who = g_strdup ("Parents of the class");
  club->cents = 30000;
  club->pledged_on = shop->pledged_on = TODAY;
  club->due_on = TODAY + 30;
  club->part = STEAD_BUILD_PART_SHELTER;
  ACT (farm, stead_build_pledge_repo_save (farm->store, club, 60000, err));
  shop->who = g_strdup ("A shop in town");
  shop->cents = 30001;
  shop->due_on = TODAY + 10;
  INVALID (farm, stead_build_pledge_repo_save (farm->store, shop, 60000, err), "more than the whole build");
  shop->cents = 30000;
  shop->chance = 1.5;
  INVALID (farm, stead_build_pledge_repo_save (farm->store, shop, 60000, err), "likely");
  shop->chance = 0.5;
  ACT (farm, stead_build_pledge_repo_save (farm->store, shop, 60000, err));
  pledges = stead_build_pledge_repo_list (farm->store, pen, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (pledges->len, ==, 2);
  g_assert_cmpint (((const SteadBuildPledge *) pledges->pdata[0])->part, ==, STEAD_BUILD_PART_ANY);
  g_assert_cmpint (((const SteadBuildPledge *) pledges->pdata[1])->part, ==, STEAD_BUILD_PART_SHELTER);
  farm_assert_undo (farm);
}

static void
test_grants_and_income (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadBuild) build = make_pen ();
  g_autofree SteadFund *own = g_new0 (SteadFund, 1);
  g_autofree SteadFund *grant = g_new0 (SteadFund, 1);
  g_autoptr(SteadBuildIncome) market = stead_build_income_new ();
  g_autoptr(SteadBuildUpkeep) hay = stead_build_upkeep_new ();
  g_autoptr(GArray) grants = NULL;
  SteadBuildGrant bound;

  own->name = (char *) "Sheep pen";
  grant->name = (char *) "Shelter grant";
  own->closed_on = grant->closed_on = STEAD_DAY_NONE;
  ACT (farm, stead_fund_repo_save (farm->store, own, err));
  ACT (farm, stead_fund_repo_save (farm->store, grant, err));
  build->fund_id = own->id;
  ACT (farm, stead_build_repo_save (farm->store, build, err));
  bound = (SteadBuildGrant) { own->id, STEAD_BUILD_PART_ANY };
  INVALID (farm, stead_build_grant_repo_set (farm->store, build->id, &bound, 1, err), "free money");
  bound = (SteadBuildGrant) { grant->id, STEAD_BUILD_PART_SHELTER };
  ACT (farm, stead_build_grant_repo_set (farm->store, build->id, &bound, 1, err));
  grants = stead_build_grant_repo_list (farm->store, build->id, NULL);
  g_assert_cmpuint (grants->len, ==, 1);
  g_assert_cmpint (g_array_index (grants, SteadBuildGrant, 0).part, ==, STEAD_BUILD_PART_SHELTER);
  market->build_id = hay->build_id = build->id;
  market->name = g_strdup ("Winter market");
  market->mean_cents = 5400;
  market->sd_cents = 2000;
  market->times = 12;
  INVALID (farm, stead_build_income_repo_save (farm->store, market, err), "first day");
  market->first_on = TODAY - 1;
  INVALID (farm, stead_build_income_repo_save (farm->store, market, err), "today or later");
  market->first_on = TODAY + 4;
  ACT (farm, stead_build_income_repo_save (farm->store, market, err));
  hay->name = g_strdup ("Hay");
  hay->quantity = 350;
  hay->per_head = TRUE;
  hay->price_cents = 22;
  ACT (farm, stead_build_upkeep_repo_save (farm->store, hay, err));
  ACT (farm, stead_build_repo_delete (farm->store, build->id, err));
  farm_assert_undo (farm);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/build-repo/round-trip", test_round_trip);
  g_test_add_func ("/store/build-repo/refusals", test_refusals);
  g_test_add_func ("/store/build-repo/old-goal-stays", test_old_goal);
  g_test_add_func ("/store/build-repo/bill", test_bill);
  g_test_add_func ("/store/build-repo/work", test_work);
  g_test_add_func ("/store/build-repo/pledges", test_pledges);
  g_test_add_func ("/store/build-repo/grants-and-income", test_grants_and_income);
  return g_test_run ();
}
