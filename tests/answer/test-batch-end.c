/* test-batch-end.c - what would be left behind if a batch ended: fish that swim, cost that no lot carries.
 *
 * The pond: 200 fish for $50; nothing is fed here, so that $50 is all that went in.  The sums are done by hand.
 */
#include "numbers.h"
#include "pond.h"

#include "answer/stead-batch-end.h"

#include <math.h>

static SteadBatchEnd *
ask (Pond   *pond,
     gint64  batch_id)
{
  g_autoptr(GError) error = NULL;
  SteadBatchEnd *end = stead_batch_end_new (pond->farm.store, batch_id, &error);

  g_assert_no_error (error);
  return end;
}

static void
die (Pond     *pond,
     SteadDay  day,
     int       fish)
{
  SteadFishEntry entry = { .fish_id = pond->fish, .day = day, .deaths = fish, .water_c = NAN };

  FARM_DO (&pond->farm, stead_fish_repo_save_entry (pond->farm.store, &entry, &farm_error));
}

/* 200 − 3 − 30 = 167 fish; $50 − $20 = $30. */
static void
test_both (Pond          *pond,
           gconstpointer  data)
{
  g_autoptr(SteadBatchEnd) end = NULL;

  die (pond, pond->farm.today - 5, 3);
  pond_harvest (pond, pond->farm.today - 1, 10, 30, 2000, FALSE);
  end = ask (pond, pond->fish);
  g_assert_cmpint (end->alive, ==, 167);
  g_assert_cmpint (end->left_cents, ==, 3000);
  NUMBERS_ARE (end->text, 167, 30);
  g_assert_cmpuint (end->whys->len, ==, 3);
  NUMBERS_ARE (farm_find_why (end->whys, "Fish alive")->worked, 200, 3, 30, 167);
  NUMBERS_ARE (farm_find_why (end->whys, "Cost in no lot")->worked, 50, 20, 30);
  NUMBERS_ARE (farm_find_why (end->whys, "Cost in, so far")->worked, 50, 50);
  if (farm_in_english ())
    g_assert_cmpstr (end->text, ==, "By the log 167 fish still swim: enter their harvest, deaths or move first. "
                                    "$30.00 of its cost is in no lot. Mark the last harvest as the last, and its lot carries the rest.");
}

/* One fish is told as one. */
static void
test_one_fish (Pond          *pond,
               gconstpointer  data)
{
  g_autoptr(SteadBatchEnd) end = NULL;

  die (pond, pond->farm.today, 199);
  end = ask (pond, pond->fish);
  NUMBERS_ARE (end->text, 1);
  g_assert_cmpuint (end->whys->len, ==, 1);
  NUMBERS_ARE (farm_find_why (end->whys, "Fish alive")->worked, 200, 199, 1);
  if (farm_in_english ())
    g_assert_cmpstr (end->text, ==, "By the log 1 fish still swims: enter its harvest, its death or its move first.");
}

/* The last harvest has taken fish and cost. */
static void
test_nothing_left (Pond          *pond,
                   gconstpointer  data)
{
  g_autoptr(SteadBatchEnd) end = NULL;

  pond_harvest (pond, pond->farm.today, 60, 200, 5000, TRUE);
  end = ask (pond, pond->fish);
  g_assert_null (end->text);
  g_assert_cmpint (end->alive, ==, 0);
  g_assert_cmpint (end->left_cents, ==, 0);
  g_assert_cmpuint (end->whys->len, ==, 0);
}

/* What hens cost is in their eggs, which need no lot. */
static void
test_flock (Pond          *pond,
            gconstpointer  data)
{
  g_autoptr(SteadBatchEnd) end = NULL;

  farm_log (&pond->farm);
  end = ask (pond, pond->farm.flock);
  g_assert_cmpstr (end->batch->name, !=, "");
  g_assert_null (end->text);
  g_assert_cmpuint (end->whys->len, ==, 0);
}

static void
test_no_batch (Pond          *pond,
               gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_batch_end_new (pond->farm.store, 999999, &error));
  g_assert_nonnull (error);
}

#define ADD(name, test) g_test_add ("/answer/batch-end/" name, Pond, NULL, pond_set_up, test, pond_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("both", test_both);
  ADD ("one-fish", test_one_fish);
  ADD ("nothing-left", test_nothing_left);
  ADD ("flock", test_flock);
  ADD ("no-batch", test_no_batch);
  return g_test_run ();
}
