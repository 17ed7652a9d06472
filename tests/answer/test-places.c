/* test-places.c - the farm's places, and what is said to be there. */
#include "farm.h"

#include "answer/stead-places-answer.h"
#include "store/stead-batch-repo.h"
#include "store/stead-shown-repo.h"

#include <math.h>
#include <string.h>

static SteadPlacesAnswer *
ask (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadPlacesAnswer *answer = stead_places_answer_new (farm->store, &error);

  g_assert_no_error (error);
  return answer;
}

static gint64
add_place (Farm           *farm,
           const char     *name,
           SteadPlaceKind  kind,
           double          area_m2)
{
  SteadPlaceFacts place = { .name = (char *) name, .kind = kind, .area_m2 = area_m2 };

  FARM_DO (farm, stead_place_repo_save (farm->store, &place, &farm_error));
  return place.id;
}

static const SteadPlaceRow *
row (const SteadPlacesAnswer *answer,
     guint                    at)
{
  g_assert_cmpuint (at, <, answer->rows->len);
  return answer->rows->pdata[at];
}

static void
test_none (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadPlacesAnswer) answer = ask (farm);

  g_assert_cmpuint (answer->rows->len, ==, 0);
  g_assert_false (answer->keeps_food);
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->sentence, "no place yet"));
}

/* The farm's hens in a house alone: the sentence asks for where food is kept; a kitchen answers it. */
static void
test_keeps_food (Farm          *farm,
                 gconstpointer  data)
{
  g_autoptr(SteadPlacesAnswer) before = NULL, after = NULL;

  add_place (farm, "Hen house", STEAD_PLACE_COOP, NAN);
  before = ask (farm);
  g_assert_false (before->keeps_food);
  add_place (farm, "Kitchen", STEAD_PLACE_KITCHEN, NAN);
  after = ask (farm);
  g_assert_true (after->keeps_food);
  g_assert_cmpstr (before->sentence, !=, after->sentence);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (before->sentence, "No food is kept there"));
      g_assert_cmpstr (after->sentence, ==, "The farm has <b>2 places</b>.");
    }
}

/* Cartons of two receipts are two lots, both put on the shelf; one thermometer hangs there, and another that is out
 * of use does not count. */
static void
test_there (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadPlacesAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) lots = NULL;
  gint64 shelf = add_place (farm, "Shelf", STEAD_PLACE_STORE_ROOM, 120 * 0.09290304);
  SteadInstrument hangs = { .name = (char *) "Wall thermometer", .kind = STEAD_INSTRUMENT_AIR, .step = 1, .error = 1,
                            .place_id = shelf, .retired_on = STEAD_DAY_NONE };
  SteadInstrument broken = { .name = (char *) "Broken thermometer", .kind = STEAD_INSTRUMENT_AIR, .step = 1,
                             .error = 1, .place_id = shelf, .retired_on = farm->today };

  farm_buy (farm, farm->today - 9, farm->carton, 70, 700, FALSE);
  farm_buy (farm, farm->today - 2, farm->carton, 30, 300, FALSE);
  lots = stead_lot_repo_list (farm->store, FALSE, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (lots->len, ==, 2);
  for (guint i = 0; i < lots->len; i++)
    FARM_DO (farm, stead_lot_repo_put (farm->store, ((SteadLot *) lots->pdata[i])->id, shelf, &farm_error));
  FARM_DO (farm, stead_instrument_repo_save (farm->store, &hangs, &farm_error));
  FARM_DO (farm, stead_instrument_repo_save (farm->store, &broken, &farm_error));
  answer = ask (farm);
  g_assert_nonnull (strstr (row (answer, 0)->there, "Wall thermometer"));
  g_assert_null (strstr (row (answer, 0)->there, "Broken thermometer"));
  if (farm_in_english ())
    {
      g_assert_cmpstr (row (answer, 0)->there, ==, "2 lots and Wall thermometer");
      g_assert_cmpstr (row (answer, 0)->floor, ==, "120 sq ft");
    }
}

static void
test_batches (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, &error);
  g_autoptr(SteadPlacesAnswer) lives = NULL, left = NULL;

  g_assert_no_error (error);
  flock->place_id = add_place (farm, "Hen house", STEAD_PLACE_COOP, NAN);
  FARM_DO (farm, stead_flock_repo_save (farm->store, flock, &farm_error));
  lives = ask (farm);
  g_assert_cmpstr (row (lives, 0)->there, ==, flock->name);
  FARM_DO (farm, stead_batch_repo_end (farm->store, farm->flock, farm->today, &farm_error));
  left = ask (farm);
  g_assert_cmpstr (row (left, 0)->there, ==, "");
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
#define ADD(name, func) g_test_add ("/answer/places/" name, Farm, NULL, farm_set_up, func, farm_tear_down)
  ADD ("none", test_none);
  ADD ("keeps-food", test_keeps_food);
  ADD ("there", test_there);
  ADD ("batches", test_batches);
#undef ADD
  return g_test_run ();
}
