/* test-fish-repo.c - groups of fish, their log, and what is summed from them. */
#include "config.h"

#include <math.h>

#include "fish-fixture.h"

static SteadFish *
get_group (Pond   *pond,
           gint64  id)
{
  g_autoptr(GError) error = NULL;
  SteadFish *group = stead_fish_repo_get (pond->farm->store, id, &error);

  g_assert_no_error (error);
  return group;
}

/* --- groups ---------------------------------------------------------------------- */

static void
test_round_trip (void)
{
  g_autoptr(Pond) pond = pond_new ();
  g_autoptr(SteadFish) group = get_group (pond, pond->cats);
  g_autoptr(SteadFish) again = NULL;

  g_assert_cmpstr (group->batch.name, ==, "Cats A");
  group->batch.note = g_strdup (" From the hatchery. ");
  group->batch.care_minutes_day = 15;
  group->is_gift = TRUE;
  group->protein_frac = 0.32;
  group->tgc = 0.085;
  group->sale_g = 650;
  group->sale_frac = 0.75;
  group->spread_frac = 0.3;
  group->deaths_year = 0.1;
  group->purge_days = 5;
  group->purge_from = TODAY + 3;
  ACT (pond->farm, stead_fish_repo_save (pond->farm->store, group, err));
  again = get_group (pond, pond->cats);
  g_assert_cmpstr (again->batch.note, ==, "From the hatchery.");
  g_assert_cmpint (again->batch.kind, ==, STEAD_BATCH_FISH);
  g_assert_cmpint (again->batch.place_id, ==, pond->tank);
  g_assert_cmpint (again->batch.feed_item_id, ==, pond->pellets);
  g_assert_cmpfloat (again->batch.care_minutes_day, ==, 15);
  g_assert_cmpint (again->batch.started_on, ==, TODAY - 100);
  g_assert_cmpint (again->batch.ended_on, ==, STEAD_DAY_NONE);
  g_assert_cmpstr (again->species, ==, "channel_catfish");
  g_assert_cmpint (again->stocked, ==, 100);
  g_assert_cmpfloat (again->stocked_g, ==, 45);
  g_assert_cmpint (again->cost_cents, ==, 12000);
  g_assert_true (again->is_gift);
  g_assert_cmpfloat (again->protein_frac, ==, 0.32);
  g_assert_cmpfloat (again->tgc, ==, 0.085);
  g_assert_cmpfloat (again->sale_g, ==, 650);
  g_assert_cmpfloat (again->sale_frac, ==, 0.75);
  g_assert_cmpfloat (again->spread_frac, ==, 0.3);
  g_assert_cmpfloat (again->deaths_year, ==, 0.1);
  g_assert_cmpint (again->purge_days, ==, 5);
  g_assert_cmpint (again->purge_from, ==, TODAY + 3);
  farm_assert_undo (pond->farm);
}

static void
test_list (void)
{
  g_autoptr(Pond) pond = pond_new ();
  gint64 other = pond_group (pond, "Bluegill", pond->second, 30);
  g_autoptr(SteadFish) over = get_group (pond, other);
  g_autoptr(GPtrArray) open = NULL;
  g_autoptr(GPtrArray) all = NULL;
  g_autoptr(GError) error = NULL;

  over->batch.ended_on = TODAY - 1;
  ACT (pond->farm, stead_fish_repo_save (pond->farm->store, over, err));
  open = stead_fish_repo_list (pond->farm->store, FALSE, &error);
  all = stead_fish_repo_list (pond->farm->store, TRUE, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (open->len, ==, 1);
  g_assert_cmpuint (all->len, ==, 2);
  g_assert_cmpstr (((SteadFish *) all->pdata[0])->batch.name, ==, "Cats A");
  g_assert_cmpstr (((SteadFish *) all->pdata[1])->batch.name, ==, "Bluegill");
}

/* Sets one field, expects a refusal, and puts the field back. */
#define BAD_GROUP(field, value, words) \
  G_STMT_START { \
    __typeof__ (group->field) kept = group->field; \
    group->field = (value); \
    INVALID (pond->farm, stead_fish_repo_save (pond->farm->store, group, err), words); \
    group->field = kept; \
  } G_STMT_END

static void
test_refused (void)
{
  g_autoptr(Pond) pond = pond_new ();
  g_autoptr(SteadFish) group = get_group (pond, pond->cats);
  char blank[] = "  ", bad[] = "\xff", taken[] = "Hens 1";

  BAD_GROUP (batch.name, blank, "Enter a name");
  BAD_GROUP (batch.name, taken, "“Hens 1” is taken");
  BAD_GROUP (batch.note, bad, "The note has signs");
  BAD_GROUP (batch.started_on, STEAD_DAY_NONE, "Enter the day it began");
  BAD_GROUP (batch.started_on, TODAY + 1, "still to come");
  BAD_GROUP (batch.ended_on, TODAY - 101, "cannot end before");
  BAD_GROUP (batch.place_id, 0, "Choose the tank");
  BAD_GROUP (batch.place_id, pond->house, "Fish live in a tank");
  BAD_GROUP (batch.feed_item_id, pond->farm->carton, "is not weighed");
  BAD_GROUP (batch.care_minutes_day, 1441, "minutes of care");
  BAD_GROUP (species, blank, "Choose the kind of fish");
  BAD_GROUP (stocked, -1, "how many fish were put in");
  BAD_GROUP (stocked, 100000001, "100,000,000");
  BAD_GROUP (stocked_g, 0, "what one fish weighed");
  BAD_GROUP (stocked_g, NAN, "what one fish weighed");
  BAD_GROUP (stocked_g, 100001, "100 kg");
  BAD_GROUP (cost_cents, -1, "Cost of the fish");
  BAD_GROUP (protein_frac, 0.9, "protein");
  BAD_GROUP (tgc, 0, "growth coefficient");
  BAD_GROUP (tgc, 2.1, "growth coefficient");
  BAD_GROUP (sale_g, 0, "from which weight");
  BAD_GROUP (sale_frac, 1, "share that must reach");
  BAD_GROUP (sale_frac, 0, "share that must reach");
  BAD_GROUP (spread_frac, -0.1, "spread of the weights");
  BAD_GROUP (deaths_year, 1.1, "die in a year");
  BAD_GROUP (purge_days, 61, "purged for 0 to 60 days");
  BAD_GROUP (purge_from, TODAY - 101, "cannot begin before");
  BAD_GROUP (purge_from, TODAY + 61, "more than 60 days ahead");
  group->batch.id = 99;
  BAD_GROUP (batch.name, blank, "Enter a name");
}

/* What is entered already must go on fitting. */
static void
test_group_against_log (void)
{
  g_autoptr(Pond) pond = pond_new ();
  g_autoptr(SteadFish) group = get_group (pond, pond->cats);

  pond_entry (pond, pond->cats, TODAY - 50, NAN, 3);
  pond_weigh (pond, pond->cats, TODAY - 20, 10, 1);
  BAD_GROUP (batch.started_on, TODAY - 49, "cannot begin after");
  BAD_GROUP (batch.ended_on, TODAY - 21, "cannot end before");
  BAD_GROUP (stocked, 2, "1 fish more gone");
  group->stocked = 3;
  group->batch.started_on = TODAY - 50;
  ACT (pond->farm, stead_fish_repo_save (pond->farm->store, group, err));
}

static void
test_delete (void)
{
  g_autoptr(Pond) pond = pond_new ();
  Farm *farm = pond->farm;
  gint64 other = pond_group (pond, "Cats B", pond->second, 30);
  SteadFishMove move = { .day = TODAY - 5, .from_id = pond->cats, .to_id = other, .n = 10, .mean_g = 60 };

  farm_receipt (farm, pond->pellets, TODAY - 50, 10, 1000, FALSE);
  pond_entry (pond, pond->cats, TODAY - 40, 1, 2);
  pond_weigh (pond, pond->cats, TODAY - 20, 10, 1);
  ACT (farm, stead_fish_repo_save_move (farm->store, &move, err));
  INVALID (farm, stead_fish_repo_delete (farm->store, other, err), "Take the moves back first");
  ACT (farm, stead_fish_repo_delete_move (farm->store, move.id, err));
  ACT (farm, stead_fish_repo_delete (farm->store, pond->cats, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM batch_entry"), ==, 0);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM weighing"), ==, 0);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM movement WHERE kind = 'used'"), ==, 0);
  REFUSE (farm, stead_fish_repo_delete (farm->store, pond->cats, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* Another tank: the stay that ends is kept, but not that of the first day. */
static void
test_other_tank (void)
{
  g_autoptr(Pond) pond = pond_new ();
  g_autoptr(SteadFish) group = get_group (pond, pond->cats);
  g_autoptr(SteadFish) fresh = NULL;
  g_autoptr(GArray) stays = NULL;
  g_autoptr(GError) error = NULL;
  gint64 today = pond_group (pond, "New today", pond->tank, 0);

  group->batch.place_id = pond->second;
  ACT (pond->farm, stead_fish_repo_save (pond->farm->store, group, err));
  stays = stead_fish_repo_stays (pond->farm->store, pond->cats, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (stays->len, ==, 2);
  g_assert_cmpint (g_array_index (stays, SteadFishStay, 0).from, ==, TODAY - 100);
  g_assert_cmpint (g_array_index (stays, SteadFishStay, 0).place_id, ==, pond->tank);
  g_assert_cmpint (g_array_index (stays, SteadFishStay, 1).from, ==, TODAY);
  g_assert_cmpint (g_array_index (stays, SteadFishStay, 1).place_id, ==, pond->second);
  fresh = get_group (pond, today);
  fresh->batch.place_id = pond->second;
  ACT (pond->farm, stead_fish_repo_save (pond->farm->store, fresh, err));
  g_assert_cmpint (fixture_number (pond->farm->store, "SELECT count (*) FROM batch_stay"), ==, 1);
  farm_assert_undo (pond->farm);
}

/* --- the log ------------------------------------------------------------------------ */

static void
test_entry_round_trip (void)
{
  g_autoptr(Pond) pond = pond_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFishEntry) again = NULL;
  char reason[] = " gills pale ", note[] = "Murky.";
  SteadFishEntry entry = { .fish_id = pond->cats, .day = TODAY - 3, .feed_kg = 0.25, .refused = TRUE, .deaths = 2,
                           .culled = 1, .water_c = 25.5, .reason = reason, .note = note,
                           .person_id = pond->farm->student, .left_out = TRUE };

  ACT (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err));
  again = stead_fish_repo_get_entry (pond->farm->store, entry.id, &error);
  g_assert_no_error (error);
  g_assert_cmpint (again->fish_id, ==, pond->cats);
  g_assert_cmpint (again->day, ==, TODAY - 3);
  g_assert_cmpfloat (again->feed_kg, ==, 0.25);
  g_assert_true (again->refused);
  g_assert_cmpint (again->deaths, ==, 2);
  g_assert_cmpint (again->culled, ==, 1);
  g_assert_cmpfloat (again->water_c, ==, 25.5);
  g_assert_cmpstr (again->reason, ==, "gills pale");
  g_assert_cmpstr (again->note, ==, "Murky.");
  g_assert_cmpint (again->person_id, ==, pond->farm->student);
  g_assert_true (again->left_out);
  again->deaths = 0;
  ACT (pond->farm, stead_fish_repo_save_entry (pond->farm->store, again, err));
  g_assert_cmpint (stead_fish_repo_alive (pond->farm->store, pond->cats, TODAY, &error), ==, 99);
  ACT (pond->farm, stead_fish_repo_delete_entry (pond->farm->store, entry.id, err));
  g_assert_cmpint (stead_fish_repo_alive (pond->farm->store, pond->cats, TODAY, &error), ==, 100);
  g_assert_no_error (error);
  farm_assert_undo (pond->farm);
}

#define BAD_ENTRY(field, value, words) \
  G_STMT_START { \
    __typeof__ (entry.field) kept = entry.field; \
    entry.field = (value); \
    INVALID (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err), words); \
    g_assert_cmpint (entry.id, ==, 0); \
    entry.field = kept; \
  } G_STMT_END

static void
test_entry_refused (void)
{
  g_autoptr(Pond) pond = pond_new ();
  char bell[] = "ring \a";
  SteadFishEntry entry = { .fish_id = pond->cats, .day = TODAY - 99, .feed_kg = 0.1, .water_c = 25 };

  BAD_ENTRY (day, TODAY - 101, "Cats A began on Nov 23, 2025");
  BAD_ENTRY (day, TODAY + 1, "Mar 4, 2026 is still to come");
  BAD_ENTRY (day, STEAD_DAY_NONE, "Enter the day");
  BAD_ENTRY (deaths, 101, "“Cats A” has only 100 fish that can go on that day; 101 are too many");
  BAD_ENTRY (culled, 101, "only 100 fish");
  BAD_ENTRY (deaths, -1, "fewer than none");
  BAD_ENTRY (feed_kg, -0.1, "less than nothing");
  /* 100 fish of 45 g are 4.5 kg; a day of growth is little. */
  BAD_ENTRY (feed_kg, 1.6, "a third of what the fish can weigh");
  BAD_ENTRY (feed_kg, INFINITY, "a third");
  BAD_ENTRY (water_c, 60.1, "−5 to 60 °C");
  BAD_ENTRY (water_c, -5.1, "−5 to 60 °C");
  BAD_ENTRY (note, bell, "cannot be read");
  BAD_ENTRY (reason, bell, "cannot be read");
  entry.feed_kg = entry.water_c = NAN;
  INVALID (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err), "Nothing is entered");
  entry.refused = TRUE;
  ACT (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err));
}

/* Months later they can weigh more, also where nobody weighed them. */
static void
test_feed_grows (void)
{
  g_autoptr(Pond) pond = pond_new ();
  SteadFishEntry entry = { .fish_id = pond->cats, .day = TODAY, .feed_kg = 2, .water_c = NAN };

  ACT (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err));
  /* A weighing of today knows better: 100 fish of 50 g eat no 2 kg. */
  pond_weigh (pond, pond->cats, TODAY, 20, 1);
  entry.id = 0;
  INVALID (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err), "a third");
}

/* A loss typed in later for an earlier day counts against the later ones. */
static void
test_losses (void)
{
  g_autoptr(Pond) pond = pond_new ();
  SteadFishEntry entry = { .fish_id = pond->cats, .day = TODAY - 50, .feed_kg = NAN, .water_c = NAN, .deaths = 11 };
  SteadFishStand stand;
  g_autoptr(GError) error = NULL;

  pond_entry (pond, pond->cats, TODAY - 10, NAN, 90);
  INVALID (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err), "only 10 fish");
  entry.deaths = 10;
  ACT (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err));
  g_assert_true (stead_fish_repo_stand (pond->farm->store, pond->cats, TODAY, 0, &stand, &error));
  g_assert_cmpint (stand.can_go, ==, 0);
  g_assert_true (stead_fish_repo_stand (pond->farm->store, pond->cats, TODAY, entry.id, &stand, &error));
  g_assert_cmpint (stand.can_go, ==, 10);
  g_assert_no_error (error);
  entry.id = 0;
  entry.day = TODAY;
  entry.deaths = 1;
  INVALID (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err), "No fish are left");
}

/* Fish that come later could not die before. */
static void
test_losses_before_others_came (void)
{
  g_autoptr(Pond) pond = pond_new ();
  gint64 other = pond_group (pond, "Cats B", pond->second, 30);
  SteadFishMove move = { .day = TODAY - 2, .from_id = other, .to_id = pond->cats, .n = 50, .mean_g = 60 };
  SteadFishEntry entry = { .fish_id = pond->cats, .day = TODAY - 50, .feed_kg = NAN, .water_c = NAN, .deaths = 11 };

  pond_entry (pond, pond->cats, TODAY - 10, NAN, 90);
  ACT (pond->farm, stead_fish_repo_save_move (pond->farm->store, &move, err));
  INVALID (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err), "only 10 fish");
  entry.day = TODAY - 2;
  ACT (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err));
}

/* Feed comes out of the lots, in order of day, and moves when the feed changes. */
static void
test_feed_settled (void)
{
  g_autoptr(Pond) pond = pond_new ();
  Farm *farm = pond->farm;
  g_autoptr(SteadFish) group = get_group (pond, pond->cats);
  gint64 mash = farm_item (farm, "Mash", STEAD_ITEM_FEED, "kg");
  gint64 entry;

  farm_receipt (farm, pond->pellets, TODAY - 60, 1, 400, FALSE);
  farm_receipt (farm, pond->pellets, TODAY - 60, 1, 600, FALSE);
  farm_receipt (farm, mash, TODAY - 60, 10, 3000, FALSE);
  entry = pond_entry (pond, pond->cats, TODAY - 40, 1.5, 0);
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 700);
  /* An earlier one typed in later takes from the first lot. */
  pond_entry (pond, pond->cats, TODAY - 45, 0.5, 0);
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE day = cast (julianday"
                                                " ('2026-03-03') - julianday ('1970-01-01') AS INT) - 45"), ==, 200);
  group->batch.feed_item_id = mash;
  ACT (farm, stead_fish_repo_save (farm->store, group, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 600);
  ACT (farm, stead_fish_repo_delete_entry (farm->store, entry, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 150);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

static void
test_pages (void)
{
  g_autoptr(Pond) pond = pond_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) page = NULL;
  g_autoptr(GPtrArray) span = NULL;

  for (int i = 0; i < 10; i++)
    pond_entry (pond, pond->cats, TODAY - 10 + i, i == 9 ? NAN : 0.1 + i * 0.01, i == 9);
  g_assert_cmpint (stead_fish_repo_count_entries (pond->farm->store, pond->cats, &error), ==, 10);
  page = stead_fish_repo_page_entries (pond->farm->store, pond->cats, 1, 3, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (page->len, ==, 3);
  g_assert_cmpint (((SteadFishEntry *) page->pdata[0])->day, ==, TODAY - 2);
  span = stead_fish_repo_entries (pond->farm->store, pond->cats, TODAY - 4, TODAY - 3, &error);
  g_assert_cmpuint (span->len, ==, 2);
  g_assert_cmpint (((SteadFishEntry *) span->pdata[0])->day, ==, TODAY - 4);
  g_assert_cmpint (stead_fish_repo_last_feed (pond->farm->store, pond->cats, &error), ==, TODAY - 2);
  g_assert_no_error (error);
}

static void
test_import (void)
{
  g_autoptr(Pond) pond = pond_new ();
  Farm *farm = pond->farm;
  g_autoptr(GPtrArray) entries = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_fish_entry_free);
  SteadFishEntry *bad;

  farm_receipt (farm, pond->pellets, TODAY - 60, 100, 10000, FALSE);
  for (int i = 0; i < 50; i++)
    {
      SteadFishEntry *entry = g_new0 (SteadFishEntry, 1);

      *entry = (SteadFishEntry) { .fish_id = pond->cats, .day = TODAY - 50 + (i * 37) % 50, .feed_kg = 0.5,
                                  .water_c = 26 };
      g_ptr_array_add (entries, entry);
    }
  bad = entries->pdata[20];
  bad->deaths = 101;
  INVALID (farm, stead_fish_repo_add_entries (farm->store, entries, NULL, NULL, NULL, err), "Cats A, ");
  g_assert_cmpint (((SteadFishEntry *) entries->pdata[0])->id, ==, 0);
  bad->deaths = 1;
  ACT (farm, stead_fish_repo_add_entries (farm->store, entries, NULL, NULL, NULL, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 2500);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* --- sums ----------------------------------------------------------------------------- */

/* 100 put in; 3 die, 10 are harvested, 20 go, 5 come: by hand 72. */
static void
test_counts (void)
{
  g_autoptr(Pond) pond = pond_new ();
  Farm *farm = pond->farm;
  gint64 other = pond_group (pond, "Cats B", pond->second, 90);
  SteadFishMove away = { .day = TODAY - 30, .from_id = pond->cats, .to_id = other, .n = 20, .mean_g = 60,
                         .cost_cents = 3000 };
  SteadFishMove back = { .day = TODAY - 20, .from_id = other, .to_id = pond->cats, .n = 5, .mean_g = 80,
                         .cost_cents = 900 };
  g_autoptr(GArray) counts = NULL;
  g_autoptr(GError) error = NULL;
  SteadFishTotals totals;
  static const struct { int ago; gint64 n; } expected[] = { { 100, 100 }, { 60, 97 }, { 30, 77 }, { 20, 82 }, { 10, 72 } };

  pond_entry (pond, pond->cats, TODAY - 60, 0.3, 3);
  ACT (farm, stead_fish_repo_save_move (farm->store, &away, err));
  ACT (farm, stead_fish_repo_save_move (farm->store, &back, err));
  fixture_act (farm->store, "Harvest",
               "INSERT INTO harvest (batch_id, day, pieces, live_kg, lost_base, reason, is_last)"
               " SELECT batch_id, started_on + 90, 10, 5.5, 1, 'skin', 0 FROM fish JOIN batch b ON b.id = batch_id"
               " WHERE b.name = 'Cats A'");
  counts = stead_fish_repo_counts (farm->store, pond->cats, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (counts->len, ==, G_N_ELEMENTS (expected));
  for (guint i = 0; i < counts->len; i++)
    {
      g_assert_cmpint (g_array_index (counts, SteadFishCount, i).day, ==, TODAY - expected[i].ago);
      g_assert_cmpint (g_array_index (counts, SteadFishCount, i).n, ==, expected[i].n);
    }
  g_assert_cmpint (stead_fish_repo_alive (farm->store, pond->cats, TODAY - 60, &error), ==, 100);
  g_assert_cmpint (stead_fish_repo_alive (farm->store, pond->cats, TODAY - 59, &error), ==, 97);
  g_assert_cmpint (stead_fish_repo_alive (farm->store, pond->cats, TODAY, &error), ==, 72);
  g_assert_cmpint (stead_fish_repo_alive (farm->store, other, TODAY, &error), ==, 115);
  g_assert_true (stead_fish_repo_totals (farm->store, pond->cats, TODAY - 100, TODAY, &totals, &error));
  g_assert_cmpfloat (totals.feed_kg, ==, 0.3);
  g_assert_cmpint (totals.days_fed, ==, 1);
  g_assert_cmpint (totals.deaths, ==, 3);
  g_assert_cmpint (totals.harvested, ==, 10);
  g_assert_cmpfloat (totals.harvested_kg, ==, 5.5);
  g_assert_cmpint (totals.moved_in, ==, 5);
  g_assert_cmpint (totals.moved_out, ==, 20);
  g_assert_cmpfloat_with_epsilon (totals.moved_out_kg, 1.2, 1e-12);
  g_assert_cmpfloat_with_epsilon (totals.moved_in_kg, 0.4, 1e-12);
  g_assert_cmpint (totals.moved_in_cents, ==, 900);
  g_assert_cmpint (totals.moved_out_cents, ==, 3000);
  g_assert_true (stead_fish_repo_totals (farm->store, pond->cats, TODAY - 9, TODAY, &totals, &error));
  g_assert_cmpint (totals.harvested + totals.moved_in + totals.moved_out + totals.deaths, ==, 0);
  g_assert_cmpint (stead_fish_repo_alive (farm->store, 99, TODAY, &error), ==, -1);
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND);
}

/* The mean of what was read on a day, from three sides; no reading is a gap. */
static void
test_temperatures (void)
{
  g_autoptr(Pond) pond = pond_new ();
  Farm *farm = pond->farm;
  g_autoptr(SteadFish) group = get_group (pond, pond->cats);
  g_autoptr(GError) error = NULL;
  g_autofree char *sql = g_strdup_printf (
    "INSERT INTO water (id, name, kind, salinity_g_l, test_days) VALUES (1, 'Loop', 'tank', 0, 7);"
    "UPDATE place SET water_id = 1 WHERE id = %" G_GINT64_FORMAT ";"
    "INSERT INTO water_test (water_id, day, temperature_c) VALUES (1, %d, 24), (1, %d, 20);"
    "INSERT INTO climate (place_id, day, min_c, max_c) VALUES (%" G_GINT64_FORMAT ", %d, 20, 28);"
    "INSERT INTO climate (day, min_c, max_c) VALUES (%d, -10, 0);"
    "INSERT INTO climate (place_id, day, min_c, max_c) VALUES (%" G_GINT64_FORMAT ", %d, 10, 12);",
    pond->tank, TODAY - 5, TODAY - 4, pond->tank, TODAY - 5, TODAY - 5, pond->second, TODAY - 4);
  double temps[4];

  fixture_act (farm->store, "Waters", sql);
  pond_entry_at (pond, pond->cats, TODAY - 5, 27);
  pond_entry_at (pond, pond->cats, TODAY - 3, 26);
  pond_entry_at (pond, pond->cats, TODAY - 3, 27);
  g_assert_true (stead_fish_repo_temperatures (farm->store, pond->cats, TODAY - 5, TODAY - 2, temps, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (temps[0], ==, 25);   /* 24, 27 and the mean of 20 and 28 */
  g_assert_cmpfloat (temps[1], ==, 20);
  g_assert_cmpfloat (temps[2], ==, 26.5);
  g_assert_true (isnan (temps[3]));
  /* Before they came to the second tank, its thermometer says nothing about them. */
  group->batch.place_id = pond->second;
  ACT (farm, stead_fish_repo_save (farm->store, group, err));
  g_assert_true (stead_fish_repo_temperatures (farm->store, pond->cats, TODAY - 4, TODAY - 4, temps, &error));
  g_assert_cmpfloat (temps[0], ==, 20);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/fish-repo/round-trip", test_round_trip);
  g_test_add_func ("/store/fish-repo/list", test_list);
  g_test_add_func ("/store/fish-repo/refused", test_refused);
  g_test_add_func ("/store/fish-repo/group-fits-its-log", test_group_against_log);
  g_test_add_func ("/store/fish-repo/delete", test_delete);
  g_test_add_func ("/store/fish-repo/other-tank-keeps-the-stay", test_other_tank);
  g_test_add_func ("/store/fish-repo/entry/round-trip", test_entry_round_trip);
  g_test_add_func ("/store/fish-repo/entry/refused", test_entry_refused);
  g_test_add_func ("/store/fish-repo/entry/feed-by-what-they-can-weigh", test_feed_grows);
  g_test_add_func ("/store/fish-repo/entry/losses-count-for-later-days", test_losses);
  g_test_add_func ("/store/fish-repo/entry/losses-before-others-came", test_losses_before_others_came);
  g_test_add_func ("/store/fish-repo/entry/feed-is-settled", test_feed_settled);
  g_test_add_func ("/store/fish-repo/entry/pages", test_pages);
  g_test_add_func ("/store/fish-repo/entry/import", test_import);
  g_test_add_func ("/store/fish-repo/sums/alive", test_counts);
  g_test_add_func ("/store/fish-repo/sums/temperatures", test_temperatures);
  return g_test_run ();
}
