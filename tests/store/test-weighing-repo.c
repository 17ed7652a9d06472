/* test-weighing-repo.c - fish that were weighed, and fish that moved. */
#include "config.h"

#include <math.h>

#include "fish-fixture.h"

/* --- weighings ------------------------------------------------------------------------ */

/* Four fish by hand: mean 110 g, sum of squares about it 1000, sd = sqrt (1000 / 3). */
static void
fill_single (SteadWeighing *weighing)
{
  static const SteadWeighed fish[] = { { 90, 20 }, { 100, NAN }, { 120, 22 }, { 130, 24 } };

  weighing->single = g_array_new (FALSE, FALSE, sizeof (SteadWeighed));
  g_array_append_vals (weighing->single, fish, G_N_ELEMENTS (fish));
}

static void
test_single (void)
{
  g_autoptr(Pond) pond = pond_new ();
  g_autoptr(SteadWeighing) weighing = stead_weighing_new ();
  g_autoptr(SteadWeighing) again = NULL;
  g_autoptr(GError) error = NULL;

  weighing->batch_id = pond->cats;
  weighing->day = TODAY - 7;
  weighing->note = g_strdup (" After a day without feed. ");
  weighing->person_id = pond->farm->student;
  fill_single (weighing);
  ACT (pond->farm, stead_weighing_repo_save (pond->farm->store, weighing, err));
  again = stead_weighing_repo_get (pond->farm->store, weighing->id, &error);
  g_assert_no_error (error);
  g_assert_cmpint (again->n, ==, 4);
  g_assert_cmpfloat_with_epsilon (again->total_kg, 0.44, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_weighing_mean_g (again), 110, 1e-9);
  g_assert_cmpfloat_with_epsilon (again->sd_g, sqrt (1000 / 3.0), 1e-9);
  g_assert_cmpfloat_with_epsilon (again->length_cm, 22, 1e-12);
  g_assert_cmpstr (again->note, ==, "After a day without feed.");
  g_assert_cmpint (again->person_id, ==, pond->farm->student);
  g_assert_cmpuint (again->single->len, ==, 4);
  g_assert_cmpfloat (g_array_index (again->single, SteadWeighed, 2).weight_g, ==, 120);
  g_assert_true (isnan (g_array_index (again->single, SteadWeighed, 1).length_cm));
  g_array_set_size (again->single, 2);
  again->left_out = TRUE;
  ACT (pond->farm, stead_weighing_repo_save (pond->farm->store, again, err));
  g_assert_cmpint (fixture_number (pond->farm->store, "SELECT count (*) FROM weighed"), ==, 2);
  g_assert_cmpint (fixture_number (pond->farm->store, "SELECT n FROM weighing WHERE left_out"), ==, 2);
  ACT (pond->farm, stead_weighing_repo_delete (pond->farm->store, again->id, err));
  g_assert_cmpint (fixture_number (pond->farm->store, "SELECT count (*) FROM weighed"), ==, 0);
  g_assert_cmpint (stead_weighing_repo_last (pond->farm->store, pond->cats, &error), ==, STEAD_DAY_NONE);
  g_assert_no_error (error);
  farm_assert_undo (pond->farm);
}

static void
test_list (void)
{
  g_autoptr(Pond) pond = pond_new ();
  g_autoptr(GPtrArray) list = NULL;
  g_autoptr(GError) error = NULL;

  pond_weigh (pond, pond->cats, TODAY - 10, 20, 2);
  pond_weigh (pond, pond->cats, TODAY - 30, 25, 1.5);
  list = stead_weighing_repo_list (pond->farm->store, pond->cats, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list->len, ==, 2);
  g_assert_cmpint (((SteadWeighing *) list->pdata[0])->day, ==, TODAY - 30);
  g_assert_true (isnan (((SteadWeighing *) list->pdata[0])->sd_g));
  g_assert_null (((SteadWeighing *) list->pdata[0])->single);
  g_assert_cmpint (stead_weighing_repo_last (pond->farm->store, pond->cats, &error), ==, TODAY - 10);
}

#define BAD_WEIGHING(field, value, words) \
  G_STMT_START { \
    __typeof__ (weighing->field) kept = weighing->field; \
    weighing->field = (value); \
    INVALID (pond->farm, stead_weighing_repo_save (pond->farm->store, weighing, err), words); \
    weighing->field = kept; \
  } G_STMT_END

static void
test_refused (void)
{
  g_autoptr(Pond) pond = pond_new ();
  g_autoptr(SteadWeighing) weighing = stead_weighing_new ();

  weighing->batch_id = pond->cats;
  weighing->day = TODAY;
  weighing->n = 20;
  weighing->total_kg = 2;
  BAD_WEIGHING (day, STEAD_DAY_NONE, "Enter the day");
  BAD_WEIGHING (day, TODAY + 1, "still to come");
  BAD_WEIGHING (day, TODAY - 101, "Cats A began on");
  BAD_WEIGHING (n, 0, "how many were weighed");
  BAD_WEIGHING (n, 101, "101 were weighed, but only 100 were alive in “Cats A”");
  BAD_WEIGHING (total_kg, 0, "weighed together");
  BAD_WEIGHING (total_kg, NAN, "weighed together");
  BAD_WEIGHING (total_kg, 2001, "more than 100 kg");
  BAD_WEIGHING (sd_g, -1, "spread");
  BAD_WEIGHING (length_cm, 301, "at most 3 m");
  fill_single (weighing);
  g_array_index (weighing->single, SteadWeighed, 1).weight_g = 0;
  INVALID (pond->farm, stead_weighing_repo_save (pond->farm->store, weighing, err), "Weight 2 cannot be");
  g_array_index (weighing->single, SteadWeighed, 1).weight_g = 1;
  g_array_index (weighing->single, SteadWeighed, 3).length_cm = -1;
  INVALID (pond->farm, stead_weighing_repo_save (pond->farm->store, weighing, err), "Length 4 cannot be");
  weighing->batch_id = 99;
  g_array_set_size (weighing->single, 0);
  REFUSE (pond->farm, stead_weighing_repo_save (pond->farm->store, weighing, err), STEAD_STORE_ERROR_NOT_FOUND,
          "no longer");
}

/* Pullets of a flock are weighed in the same way. */
static void
test_flock (void)
{
  g_autoptr(Pond) pond = pond_new ();
  g_autoptr(SteadWeighing) weighing = stead_weighing_new ();

  weighing->batch_id = pond->farm->flock;
  weighing->day = TODAY - 60;
  weighing->n = 31;
  weighing->total_kg = 40;
  INVALID (pond->farm, stead_weighing_repo_save (pond->farm->store, weighing, err), "only 30 were alive in “Hens 1”");
  weighing->n = 30;
  ACT (pond->farm, stead_weighing_repo_save (pond->farm->store, weighing, err));
}

/* --- moves ------------------------------------------------------------------------------ */

static void
test_move_part (void)
{
  g_autoptr(Pond) pond = pond_new ();
  Farm *farm = pond->farm;
  gint64 other = pond_group (pond, "Cats B", pond->second, 30);
  char note[] = " The big ones. ";
  SteadFishMove move = { .day = TODAY - 10, .from_id = pond->cats, .to_id = other, .n = 40, .mean_g = 150,
                         .cost_cents = 8000, .note = note, .person_id = farm->student };
  g_autoptr(GPtrArray) out = NULL;
  g_autoptr(GPtrArray) in = NULL;
  g_autoptr(GError) error = NULL;
  const SteadFishMove *read;

  ACT (farm, stead_fish_repo_save_move (farm->store, &move, err));
  out = stead_fish_repo_moves (farm->store, pond->cats, &error);
  in = stead_fish_repo_moves (farm->store, other, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (out->len, ==, 1);
  g_assert_cmpuint (in->len, ==, 1);
  read = in->pdata[0];
  g_assert_cmpint (read->n, ==, 40);
  g_assert_cmpint (read->day, ==, TODAY - 10);
  g_assert_cmpint (read->from_id, ==, pond->cats);
  g_assert_cmpint (read->to_id, ==, other);
  g_assert_cmpfloat (read->mean_g, ==, 150);
  g_assert_cmpint (read->cost_cents, ==, 8000);
  g_assert_cmpstr (read->note, ==, "The big ones.");
  g_assert_cmpint (stead_fish_repo_alive (farm->store, pond->cats, TODAY, &error), ==, 60);
  g_assert_cmpint (stead_fish_repo_alive (farm->store, other, TODAY, &error), ==, 140);
  move.n = 45;
  ACT (farm, stead_fish_repo_save_move (farm->store, &move, err));
  g_assert_cmpint (stead_fish_repo_alive (farm->store, other, TODAY, &error), ==, 145);
  farm_assert_undo (farm);
}

/* The whole group goes: nothing is left, and nothing can die there afterward. */
static void
test_move_all (void)
{
  g_autoptr(Pond) pond = pond_new ();
  Farm *farm = pond->farm;
  gint64 other = pond_group (pond, "Cats B", pond->second, 30);
  SteadFishMove move = { .day = TODAY - 10, .from_id = pond->cats, .to_id = other, .n = 100, .mean_g = 150 };
  SteadFishEntry dead = { .fish_id = pond->cats, .day = TODAY - 5, .deaths = 1, .feed_kg = NAN, .water_c = NAN };
  SteadFishEntry fed = { .fish_id = pond->cats, .day = TODAY - 5, .feed_kg = 0.1, .water_c = NAN };
  g_autoptr(GError) error = NULL;

  ACT (farm, stead_fish_repo_save_move (farm->store, &move, err));
  g_assert_cmpint (stead_fish_repo_alive (farm->store, pond->cats, TODAY, &error), ==, 0);
  INVALID (farm, stead_fish_repo_save_entry (farm->store, &dead, err), "No fish are left");
  INVALID (farm, stead_fish_repo_save_entry (farm->store, &fed, err), "a third");
  dead.day = TODAY - 20;
  INVALID (farm, stead_fish_repo_save_entry (farm->store, &dead, err), "later ones are entered as gone");
}

#define BAD_MOVE(field, value, words) \
  G_STMT_START { \
    __typeof__ (move.field) kept = move.field; \
    move.field = (value); \
    INVALID (farm, stead_fish_repo_save_move (farm->store, &move, err), words); \
    move.field = kept; \
  } G_STMT_END

static void
test_move_refused (void)
{
  g_autoptr(Pond) pond = pond_new ();
  Farm *farm = pond->farm;
  gint64 other = pond_group (pond, "Cats B", pond->second, 30);
  SteadFishMove move = { .day = TODAY - 10, .from_id = pond->cats, .to_id = other, .n = 100, .mean_g = 150 };
  g_autoptr(SteadFish) group = NULL;
  g_autoptr(GError) error = NULL;

  BAD_MOVE (to_id, pond->cats, "another group");
  BAD_MOVE (day, TODAY - 31, "Cats B began on");
  BAD_MOVE (day, TODAY + 1, "still to come");
  BAD_MOVE (n, 0, "how many fish move");
  BAD_MOVE (n, 101, "only 100 fish that can go");
  BAD_MOVE (mean_g, 0, "what one of the fish weighs");
  BAD_MOVE (cost_cents, -1, "Cost that goes along");
  /* What they died of afterward cannot be taken back with the move. */
  ACT (farm, stead_fish_repo_save_move (farm->store, &move, err));
  pond_entry (pond, other, TODAY - 5, NAN, 150);
  BAD_MOVE (n, 40, "10 of these fish have died");
  INVALID (farm, stead_fish_repo_delete_move (farm->store, move.id, err), "50 of these fish have died");
  group = stead_fish_repo_get (farm->store, other, &error);
  g_assert_no_error (error);
  g_free (group->species);
  group->species = g_strdup ("tilapia");
  INVALID (farm, stead_fish_repo_save (farm->store, group, err), "both keep their kind of fish");
  g_free (group->species);
  group->species = g_strdup ("channel_catfish");
  group->batch.ended_on = TODAY;
  ACT (farm, stead_fish_repo_save (farm->store, group, err));
  BAD_MOVE (n, 60, "“Cats B” is over");
}

static void
test_move_other_kind (void)
{
  g_autoptr(Pond) pond = pond_new ();
  Farm *farm = pond->farm;
  gint64 other = pond_group (pond, "Tilapia", pond->second, 30);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFish) group = stead_fish_repo_get (farm->store, other, &error);
  SteadFishMove move = { .day = TODAY - 10, .from_id = pond->cats, .to_id = other, .n = 10, .mean_g = 150 };

  g_free (group->species);
  group->species = g_strdup ("tilapia");
  ACT (farm, stead_fish_repo_save (farm->store, group, err));
  INVALID (farm, stead_fish_repo_save_move (farm->store, &move, err), "not one kind of fish");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/weighing-repo/single", test_single);
  g_test_add_func ("/store/weighing-repo/list", test_list);
  g_test_add_func ("/store/weighing-repo/refused", test_refused);
  g_test_add_func ("/store/weighing-repo/pullets", test_flock);
  g_test_add_func ("/store/fish-move/part", test_move_part);
  g_test_add_func ("/store/fish-move/whole", test_move_all);
  g_test_add_func ("/store/fish-move/refused", test_move_refused);
  g_test_add_func ("/store/fish-move/other-kind", test_move_other_kind);
  return g_test_run ();
}
