/* test-house.c - the house against the rules that are cited, worked out by hand. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-house-answer.h"
#include "store/stead-place-repo.h"

#include <math.h>
#include <string.h>

#define SQFT 0.09290304
#define INCH 0.0254

static SteadHouseAnswer *
ask (Farm             *farm,
     const SteadFlock *flock,
     gint64            hens,
     double            age)
{
  g_autoptr(GError) error = NULL;
  SteadHouseAnswer *answer = stead_house_answer_new (farm->store, flock, hens, age, STEAD_UNITS_US, &error);

  g_assert_no_error (error);
  g_assert_nonnull (answer);
  return answer;
}

/* The line whose need is this; floors, perches and boxes differ, so it is one. */
static const SteadHouseLine *
line_needing (const SteadHouseAnswer *answer,
              double                  need)
{
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadHouseLine *line = answer->lines->pdata[i];

      if (fabs (line->need - need) < 1e-6)
        return line;
    }
  g_test_message ("no line needs %g", need);
  g_assert_not_reached ();
}

/* 24 hens: 36 sq ft at the least, 5 boxes, 12 ft of perch, 72 in of feeder.  Source:
 * county extension column on successful backyard egg production (Virginia, 2020), and
 * extension answer 257347, Ohio (boxes): derived. */
static void
test_24_hens (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, NULL);
  g_autoptr(SteadHouseAnswer) answer = NULL;
  g_autoptr(SteadWhy) why = NULL;

  flock->place_id = 0;
  flock->nests = 4;
  flock->roost_m = 12 * 12 * INCH;
  flock->light_hours = NAN;
  answer = ask (farm, flock, 24, 40);
  g_assert_cmpint (line_needing (answer, 36 * SQFT)->state, ==, STEAD_HOUSE_NOT_SAID);
  g_assert_cmpint (line_needing (answer, 5)->state, ==, STEAD_HOUSE_SHORT);
  g_assert_nonnull (line_needing (answer, 5)->what);
  g_assert_cmpint (line_needing (answer, 144 * INCH)->state, ==, STEAD_HOUSE_ENOUGH);
  g_assert_null (line_needing (answer, 144 * INCH)->what);
  g_assert_cmpint (line_needing (answer, 72 * INCH)->state, ==, STEAD_HOUSE_TO_KNOW);
  g_assert_cmpint (line_needing (answer, 14)->state, ==, STEAD_HOUSE_NOT_SAID);
  g_assert_cmpint (answer->n_short, ==, 1);
  g_assert_nonnull (answer->source);
  NUMBERS_ARE (line_needing (answer, 36 * SQFT)->worked, 24, 1.5, 36);
  NUMBERS_ARE (line_needing (answer, 5)->worked, 24, 5, 5);
  NUMBERS_ARE (line_needing (answer, 144 * INCH)->worked, 24, 0.5, 12);   /* feet */
  NUMBERS_ARE (line_needing (answer, 72 * INCH)->worked, 24, 0.25, 6);
  why = stead_house_answer_why (answer);
  g_assert_nonnull (strstr (why->worked, line_needing (answer, 36 * SQFT)->worked));
}

static void
test_floor_of_the_place (Farm          *farm,
                         gconstpointer  data)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, NULL);
  SteadPlaceFacts place = { .name = (char *) "Coop", .kind = STEAD_PLACE_COOP, .area_m2 = 35 * SQFT };
  g_autoptr(SteadHouseAnswer) answer = NULL;

  FARM_DO (farm, stead_place_repo_save (farm->store, &place, &farm_error));
  flock->place_id = place.id;
  flock->light_hours = 13.5;
  answer = ask (farm, flock, 24, 40);
  g_assert_cmpint (line_needing (answer, 36 * SQFT)->state, ==, STEAD_HOUSE_SHORT);
  g_assert_cmpint (line_needing (answer, 14)->state, ==, STEAD_HOUSE_SHORT);
}

/* 95 °F in week 1, 85 °F in week 3.  Source: Calculating Agriculture, p. 12-6, table 12.4. */
static void
test_chicks (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, NULL);
  g_autoptr(SteadHouseAnswer) first = ask (farm, flock, 24, 0.5);
  g_autoptr(SteadHouseAnswer) third = ask (farm, flock, 24, 2.2);
  g_autoptr(SteadHouseAnswer) pullets = ask (farm, flock, 24, 14);

  line_needing (first, 35);
  line_needing (third, (85 - 32) / 1.8);
  g_assert_cmpint (first->n_short, ==, 0);
  for (guint i = 0; i < pullets->lines->len; i++)
    g_assert_cmpfloat (((SteadHouseLine *) pullets->lines->pdata[i])->need, !=, 14);
}

/* No rule is at hand for ducks, so none is made up. */
static void
test_ducks (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, NULL);
  g_autoptr(SteadHouseAnswer) answer = NULL;

  flock->species = STEAD_SPECIES_DUCK;
  answer = ask (farm, flock, 24, 40);
  g_assert_cmpuint (answer->lines->len, ==, 0);
  g_assert_nonnull (answer->caution);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
#define ADD(name, test) g_test_add ("/answer/house/" name, Farm, NULL, farm_set_up, test, farm_tear_down)
  ADD ("24-hens", test_24_hens);
  ADD ("floor-of-the-place", test_floor_of_the_place);
  ADD ("chicks", test_chicks);
  ADD ("ducks", test_ducks);
#undef ADD
  return g_test_run ();
}
