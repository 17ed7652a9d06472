/* test-due-fish.c - what is due with fish, case by case. */
#include "shoal.h"

#include "answer/stead-due-answer.h"
#include "answer/stead-fish-answer.h"

#include <math.h>
#include <string.h>

/* The line of the fish that holds @words (English only); NULL if there is none. */
static const SteadDue *
find (SteadDueAnswer *answer,
      SteadDueKind    kind,
      gint64          id,
      const char     *words)
{
  for (guint i = 0; i < answer->dues->len; i++)
    {
      const SteadDue *due = answer->dues->pdata[i];

      g_test_message ("%d %s (%s)", due->kind, due->text, due->detail != NULL ? due->detail : "");
      if (due->kind == kind && due->target == STEAD_TARGET_BATCH && due->id == id && strstr (due->text, words) != NULL)
        return due;
    }
  return NULL;
}

static SteadDueAnswer *
ask (Shoal *shoal)
{
  g_autoptr(GError) error = NULL;
  SteadDueAnswer *answer = stead_due_answer_new (shoal->farm.store, &error);

  g_assert_no_error (error);
  return answer;
}

static void
test_feed (Shoal          *shoal,
           gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) before = ask (shoal);
  g_autoptr(SteadDueAnswer) warm = NULL;
  g_autoptr(SteadDueAnswer) fed = NULL;
  const SteadDue *due = find (before, STEAD_DUE_TASK, shoal->fish, "Enter the feed given to Tilapia.");

  g_assert_nonnull (due);
  g_assert_nonnull (strstr (due->detail, "temperature"));
  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  warm = ask (shoal);
  g_assert_nonnull (find (warm, STEAD_DUE_TASK, shoal->fish, "Feed Tilapia, and enter it: 0.82 lb by the table."));
  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today, .feed_kg = 0.3, .water_c = NAN });
  fed = ask (shoal);
  g_assert_null (find (fed, STEAD_DUE_TASK, shoal->fish, "Feed Tilapia"));
  g_assert_nonnull (find (fed, STEAD_DUE_DONE, shoal->fish, "feed entered"));
}

static void
test_temperature (Shoal          *shoal,
                  gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) none = ask (shoal);
  g_autoptr(SteadDueAnswer) fresh = NULL;

  g_assert_nonnull (find (none, STEAD_DUE_TASK, shoal->fish, "Read the temperature"));
  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 7, .feed_kg = NAN, .water_c = 27 });
  fresh = ask (shoal);
  g_assert_null (find (fresh, STEAD_DUE_TASK, shoal->fish, "Read the temperature"));
}

/* 45 days since they were put in: due, until they are weighed; small ones sooner. */
static void
test_weigh (Shoal          *shoal,
            gconstpointer  data)
{
  gint64 small = shoal_group (shoal, "Fry", shoal->tank, 10, 5, 14);
  gint64 young = shoal_group (shoal, "Young", shoal->tank, 10, 60, 27);
  g_autoptr(SteadDueAnswer) before = ask (shoal);
  g_autoptr(SteadDueAnswer) after = NULL;

  g_assert_nonnull (find (before, STEAD_DUE_TASK, shoal->fish, "Weigh some fish"));
  g_assert_nonnull (find (before, STEAD_DUE_TASK, small, "Weigh some fish"));
  g_assert_null (find (before, STEAD_DUE_TASK, young, "Weigh some fish"));
  shoal_weigh (shoal, shoal->fish, shoal->farm.today, 20, 110);
  after = ask (shoal);
  g_assert_null (find (after, STEAD_DUE_TASK, shoal->fish, "Weigh some fish"));
  g_assert_nonnull (find (after, STEAD_DUE_DONE, shoal->fish, "weighed"));
}

static void
test_losses (Shoal          *shoal,
             gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) answer = NULL;
  g_autoptr(SteadFishAnswer) fish = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  const SteadDue *due;

  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 1, .feed_kg = NAN, .water_c = NAN, .deaths = 4 });
  answer = ask (shoal);
  due = find (answer, STEAD_DUE_WARNING, shoal->fish, "4 fish lost in 7 days");
  g_assert_nonnull (due);
  g_assert_nonnull (strstr (due->detail, "Test the water first"));
  g_assert_nonnull (strstr (due->detail, "veterinarian"));
  g_assert_nonnull (strstr (due->worked, "Lost in 7 days: 4."));
  fish = stead_fish_answer_new (shoal->farm.store, shoal->fish, NULL);
  whys = stead_fish_answer_whys (fish);
  g_assert_cmpstr (farm_find_why (whys, "More lost than is usual")->worked, ==, due->worked);
}

/* Once may be too much feed; twice running is the water until it was tested. */
static void
test_refused (Shoal          *shoal,
              gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) once = NULL;
  g_autoptr(SteadDueAnswer) twice = NULL;
  const SteadDue *due;

  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 2, .feed_kg = 0.1, .water_c = NAN, .refused = TRUE });
  once = ask (shoal);
  g_assert_null (find (once, STEAD_DUE_WARNING, shoal->fish, "left twice"));
  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 1, .feed_kg = 0.1, .water_c = NAN, .refused = TRUE });
  twice = ask (shoal);
  due = find (twice, STEAD_DUE_WARNING, shoal->fish, "feed was left twice running");
  g_assert_nonnull (due);
  g_assert_nonnull (strstr (due->detail, "Test the water before you feed again"));
}

static void
set_ready (SteadFish *group)
{
  group->sale_g = 100;
}

static void
purge (SteadFish *group)
{
  group->purge_from = stead_day_new (2026, 3, 27);
  group->purge_days = 4;
}

static void
test_sale (Shoal          *shoal,
           gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) ready = NULL;
  g_autoptr(SteadDueAnswer) purged = NULL;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  shoal_change (shoal, set_ready);
  ready = ask (shoal);
  g_assert_nonnull (find (ready, STEAD_DUE_TASK, shoal->fish, "Plan the sale of Tilapia: 50 in 100"));
  shoal_change (shoal, purge);
  purged = ask (shoal);
  g_assert_nonnull (find (purged, STEAD_DUE_TASK, shoal->fish, "Harvest Tilapia: their purge is over."));
  g_assert_null (find (purged, STEAD_DUE_TASK, shoal->fish, "Feed"));
  g_assert_null (find (purged, STEAD_DUE_TASK, shoal->fish, "Weigh"));
}

static void
test_receipts (Shoal          *shoal,
               gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) answer = NULL;
  gboolean found = FALSE;

  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 1, .feed_kg = 0.5, .water_c = NAN });
  answer = ask (shoal);
  for (guint i = 0; i < answer->dues->len; i++)
    {
      const SteadDue *due = answer->dues->pdata[i];

      found |= due->target == STEAD_TARGET_NEW_RECEIPT && due->id == shoal->pellets
               && g_str_equal (due->text, "0.5 kg of Fish pellets eaten by Tilapia is on no receipt.");
    }
  g_assert_true (found);
}

/* A tank that is empty asks for nothing. */
static void
test_empty (Shoal          *shoal,
            gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) answer = NULL;

  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 20, .feed_kg = NAN, .water_c = NAN, .culled = 100 });
  answer = ask (shoal);
  for (guint i = 0; i < answer->dues->len; i++)
    g_assert_cmpint (((const SteadDue *) answer->dues->pdata[i])->target, !=, STEAD_TARGET_BATCH);
}

static void
test_strip (Shoal          *shoal,
            gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStripAnswer) strip = stead_strip_answer_new (shoal->farm.store, NULL, 0, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (strip->raise, ==, "2 batches");
}

#define TEST(path, func) g_test_add ("/answer/due-fish/" path, Shoal, NULL, shoal_set_up, func, shoal_tear_down)

int
main (int   argc,
      char *argv[])
{
  farm_start (&argc, &argv);
  TEST ("feed", test_feed);
  TEST ("temperature", test_temperature);
  TEST ("weigh", test_weigh);
  TEST ("losses", test_losses);
  TEST ("feed-refused", test_refused);
  TEST ("sale", test_sale);
  TEST ("receipts", test_receipts);
  TEST ("empty", test_empty);
  TEST ("strip", test_strip);
  return g_test_run ();
}
