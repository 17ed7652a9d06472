/* test-flock-repo.c - flocks, their log, and the sums over it. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-place-repo.h"

/* --- flocks ---------------------------------------------------------------------- */

static SteadFlock *
get_flock (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadFlock *flock = stead_flock_repo_get (farm->store, farm->flock, &error);

  g_assert_no_error (error);
  return flock;
}

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadFlock) flock = get_flock (farm);
  g_autoptr(SteadFlock) again = NULL;
  SteadPlaceFacts place = { .name = (char *) "Hen house", .kind = STEAD_PLACE_COOP, .area_m2 = 12 };

  ACT (farm, stead_place_repo_save (farm->store, &place, err));
  g_assert_cmpstr (flock->name, ==, "Hens 1");
  flock->strain = g_strdup ("brown hybrid");
  flock->note = g_strdup (" Gentle birds. ");
  flock->place_id = place.id;
  flock->birds_are_gift = TRUE;
  flock->ended_on = TODAY;
  flock->bedding_days = 21;
  flock->curve = (SteadLayCurve) { 0.9, 0.006, 1.1, -1.5, 19 };
  ACT (farm, stead_flock_repo_save (farm->store, flock, err));
  again = get_flock (farm);
  g_assert_cmpstr (again->strain, ==, "brown hybrid");
  g_assert_cmpstr (again->note, ==, "Gentle birds.");
  g_assert_cmpint (again->place_id, ==, place.id);
  g_assert_true (again->birds_are_gift);
  g_assert_cmpint (again->housed_on, ==, TODAY - 100);
  g_assert_cmpint (again->hatched_on, ==, TODAY - 219);
  g_assert_cmpint (again->ended_on, ==, TODAY);
  g_assert_cmpint (again->birds, ==, 30);
  g_assert_cmpint (again->birds_cost_cents, ==, 36000);
  g_assert_cmpint (again->salvage_cents, ==, 6000);
  g_assert_cmpint (again->bedding_days, ==, 21);
  g_assert_cmpint (again->feed_item_id, ==, farm->feed);
  g_assert_cmpfloat (again->eggs_expected, ==, 300);
  g_assert_cmpfloat (again->care_minutes_day, ==, 20);
  g_assert_cmpfloat (again->curve.level_frac, ==, 0.9);
  g_assert_cmpfloat (again->curve.decline_week, ==, 0.006);
  g_assert_cmpfloat (again->curve.steepness_week, ==, 1.1);
  g_assert_cmpfloat (again->curve.half_week, ==, -1.5);
  g_assert_cmpfloat (again->curve.onset_age_weeks, ==, 19);
  farm_assert_undo (farm);
}

static void
test_list (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadFlock) flock = get_flock (farm);
  g_autoptr(GPtrArray) open = NULL;
  g_autoptr(GPtrArray) all = NULL;
  g_autoptr(GError) error = NULL;
  static const char * const names[] = { "Bantams", "Ancient hens" };

  for (int i = 0; i < 2; i++)
    {
      flock->id = 0;
      g_free (flock->name);
      flock->name = g_strdup (names[i]);
      flock->ended_on = i == 1 ? TODAY - 1 : STEAD_DAY_NONE;
      ACT (farm, stead_flock_repo_save (farm->store, flock, err));
    }
  open = stead_flock_repo_list (farm->store, FALSE, &error);
  all = stead_flock_repo_list (farm->store, TRUE, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (open->len, ==, 2);
  g_assert_cmpstr (((SteadFlock *) open->pdata[0])->name, ==, "Bantams");
  g_assert_cmpstr (((SteadFlock *) open->pdata[1])->name, ==, "Hens 1");
  g_assert_cmpuint (all->len, ==, 3);
  g_assert_cmpstr (((SteadFlock *) all->pdata[2])->name, ==, "Ancient hens");
}

/* Sets one field, expects a refusal, and puts the field back. */
#define BAD_FLOCK(field, value, words) \
  G_STMT_START { \
    __typeof__ (flock->field) kept = flock->field; \
    flock->field = (value); \
    INVALID (farm, stead_flock_repo_save (farm->store, flock, err), words); \
    flock->field = kept; \
  } G_STMT_END

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadFlock) flock = get_flock (farm);
  g_autofree char *long_name = g_strnfill (201, 'x');
  char blank[] = "  ", bad[] = "\xff", two_lines[] = "Hens\nTwo";

  BAD_FLOCK (name, blank, "Enter a name");
  BAD_FLOCK (name, bad, "cannot be read");
  BAD_FLOCK (name, two_lines, "cannot be read");
  BAD_FLOCK (note, bad, "The note has signs");
  BAD_FLOCK (strain, bad, "The note has signs");
  BAD_FLOCK (name, long_name, "at most 200 letters");
  BAD_FLOCK (housed_on, STEAD_DAY_NONE, "moved in");
  BAD_FLOCK (housed_on, TODAY + 1, "still to come");
  BAD_FLOCK (hatched_on, STEAD_DAY_NONE, "hatched");
  BAD_FLOCK (hatched_on, TODAY - 99, "cannot hatch after");
  BAD_FLOCK (ended_on, TODAY - 101, "cannot end before");
  BAD_FLOCK (ended_on, TODAY + 1, "still to come");
  BAD_FLOCK (birds, 0, "at least 1 bird");
  BAD_FLOCK (birds, 1000001, "1,000,000");
  BAD_FLOCK (birds_cost_cents, -1, "Cost of the birds");
  BAD_FLOCK (salvage_cents, 36001, "worth more at the end");
  BAD_FLOCK (eggs_expected, 0, "expected to lay");
  BAD_FLOCK (eggs_expected, NAN, "expected to lay");
  BAD_FLOCK (care_minutes_day, -1, "minutes of care");
  BAD_FLOCK (care_minutes_day, 1441, "minutes of care");
  BAD_FLOCK (bedding_days, -1, "bedding");
  BAD_FLOCK (curve.level_frac, 1.01, "curve");
  BAD_FLOCK (curve.steepness_week, 0, "curve");
  BAD_FLOCK (feed_item_id, farm->carton, "is not weighed");
  REFUSE (farm, (flock->feed_item_id = 99, stead_flock_repo_save (farm->store, flock, err)),
          STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  flock->feed_item_id = farm->feed;
  flock->id = 0;
  INVALID (farm, stead_flock_repo_save (farm->store, flock, err), "“Hens 1” is taken");
  flock->id = 99;
  g_free (flock->name);
  flock->name = g_strdup ("Others");
  REFUSE (farm, stead_flock_repo_save (farm->store, flock, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
}

/* Plan and log must go on fitting each other. */
static void
test_plan_against_log (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadFlock) flock = get_flock (farm);

  farm_entry (farm, TODAY - 50, 20, NAN, 3);
  farm_entry (farm, TODAY - 20, 20, NAN, 0);
  BAD_FLOCK (housed_on, TODAY - 49, "before the birds moved in");
  BAD_FLOCK (ended_on, TODAY - 21, "after the end");
  BAD_FLOCK (birds, 2, "lost 3 birds");
  flock->birds = 3;
  flock->housed_on = TODAY - 50;
  flock->ended_on = TODAY - 20;
  ACT (farm, stead_flock_repo_save (farm->store, flock, err));
}

static void
test_delete (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadProduct) product = stead_product_new ();
  g_autoptr(SteadAsset) asset = stead_asset_new ();
  SteadAssetShare share = { farm->flock, 1 };

  farm_receipt (farm, farm->feed, TODAY - 50, 10, 1000, FALSE);
  farm_receipt (farm, farm->straw, TODAY - 50, 10, 1000, FALSE);
  farm_entry (farm, TODAY - 40, 20, 4, 0);
  ACT (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY - 30, 3, 0, err));
  asset->name = g_strdup ("Scale");
  asset->bought_on = TODAY;
  asset->method = STEAD_DEPRECIATION_UNITS;
  asset->life_units = 100;
  g_array_append_val (asset->shares, share);
  ACT (farm, stead_asset_repo_save (farm->store, asset, err));
  ACT (farm, stead_asset_repo_add_use (farm->store, asset->id, farm->flock, TODAY, 3, err));
  product->name = g_strdup ("Eggs");
  product->batch_id = farm->flock;
  ACT (farm, stead_product_repo_save (farm->store, product, err));
  INVALID (farm, stead_flock_repo_delete (farm->store, farm->flock, err), "1 product");
  product->batch_id = 0;
  ACT (farm, stead_product_repo_save (farm->store, product, err));
  ACT (farm, stead_flock_repo_delete (farm->store, farm->flock, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM batch_entry"), ==, 0);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM movement WHERE kind = 'used'"), ==, 0);
  g_assert_cmpint (fixture_number (farm->store, "SELECT sum (cents) FROM lot_stock"), ==, 2000);
  REFUSE (farm, stead_flock_repo_delete (farm->store, farm->flock, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* Another feed: all the log's feed moves to the other item's lots. */
static void
test_other_feed (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadFlock) flock = get_flock (farm);
  gint64 mash = farm_item (farm, "Mash", STEAD_ITEM_FEED, "kg");

  farm_receipt (farm, farm->feed, TODAY - 50, 10, 1000, FALSE);
  farm_receipt (farm, mash, TODAY - 50, 10, 3000, FALSE);
  farm_entry (farm, TODAY - 40, 20, 4, 0);
  flock->feed_item_id = mash;
  ACT (farm, stead_flock_repo_save (farm->store, flock, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 1200);
  flock->feed_item_id = 0;
  ACT (farm, stead_flock_repo_save (farm->store, flock, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM movement WHERE kind = 'used'"), ==, 0);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* Two flocks eat from the same bags; when one is deleted the other's feed moves up. */
static void
test_delete_frees_feed (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadFlock) flock = get_flock (farm);
  SteadFlockEntry other = { .eggs = 20, .feed_kg = 10, .day = TODAY - 10 };

  flock->id = 0;
  g_free (flock->name);
  flock->name = g_strdup ("Hens 2");
  ACT (farm, stead_flock_repo_save (farm->store, flock, err));
  farm_receipt (farm, farm->feed, TODAY - 50, 10, 1000, FALSE);
  farm_receipt (farm, farm->feed, TODAY - 50, 10, 2000, FALSE);
  farm_entry (farm, TODAY - 20, 20, 10, 0);
  other.flock_id = flock->id;
  ACT (farm, stead_flock_repo_save_entry (farm->store, &other, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE batch_id = 2"), ==, 2000);
  ACT (farm, stead_flock_repo_delete (farm->store, farm->flock, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE batch_id = 2"), ==, 1000);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* --- entries --------------------------------------------------------------------- */

static void
test_entry_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFlockEntry) again = NULL;
  g_autoptr(SteadFlockEntry) bare = NULL;
  char note[] = "  Two soft shells.  ", windy[] = "Windy";
  SteadFlockEntry entry = { .flock_id = farm->flock, .day = TODAY, .eggs = 22, .cracked = 2, .deaths = 1,
                            .culled = 1, .feed_kg = 3.25, .note = note, .person_id = farm->student,
                            .left_out = TRUE };
  SteadFlockEntry only_note = { .flock_id = farm->flock, .day = TODAY, .eggs = STEAD_COUNT_NONE,
                                .feed_kg = NAN, .note = windy };

  ACT (farm, stead_flock_repo_save_entry (farm->store, &entry, err));
  ACT (farm, stead_flock_repo_save_entry (farm->store, &only_note, err));
  again = stead_flock_repo_get_entry (farm->store, entry.id, &error);
  g_assert_no_error (error);
  g_assert_cmpint (again->flock_id, ==, farm->flock);
  g_assert_cmpint (again->day, ==, TODAY);
  g_assert_cmpint (again->eggs, ==, 22);
  g_assert_cmpint (again->cracked, ==, 2);
  g_assert_cmpint (again->deaths, ==, 1);
  g_assert_cmpint (again->culled, ==, 1);
  g_assert_cmpfloat (again->feed_kg, ==, 3.25);
  g_assert_cmpstr (again->note, ==, "Two soft shells.");
  g_assert_cmpint (again->person_id, ==, farm->student);
  g_assert_true (again->left_out);
  bare = stead_flock_repo_get_entry (farm->store, only_note.id, &error);
  g_assert_cmpint (bare->eggs, ==, STEAD_COUNT_NONE);
  g_assert_true (isnan (bare->feed_kg));
  g_assert_cmpint (bare->person_id, ==, 0);
  g_assert_false (bare->left_out);
  g_assert_null (stead_flock_repo_get_entry (farm->store, 99, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND);
}

static void
test_pages (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) page = NULL;
  g_autoptr(GPtrArray) span = NULL;
  g_autoptr(GPtrArray) past = NULL;
  gint64 last = 0;

  for (int i = 0; i < 10; i++)
    last = farm_entry (farm, TODAY - 10 + i, 20 + i, NAN, 0);
  last = farm_entry (farm, TODAY - 3, 5, NAN, 0);   /* a second one on a day */
  g_assert_cmpint (stead_flock_repo_count_entries (farm->store, farm->flock, &error), ==, 11);
  page = stead_flock_repo_page_entries (farm->store, farm->flock, 2, 3, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (page->len, ==, 3);
  g_assert_cmpint (((SteadFlockEntry *) page->pdata[0])->id, ==, last);
  g_assert_cmpint (((SteadFlockEntry *) page->pdata[1])->eggs, ==, 27);
  g_assert_cmpint (((SteadFlockEntry *) page->pdata[2])->day, ==, TODAY - 4);
  past = stead_flock_repo_page_entries (farm->store, farm->flock, 11, 3, &error);
  g_assert_cmpuint (past->len, ==, 0);
  span = stead_flock_repo_entries (farm->store, farm->flock, TODAY - 4, TODAY - 3, &error);
  g_assert_cmpuint (span->len, ==, 3);
  g_assert_cmpint (((SteadFlockEntry *) span->pdata[0])->eggs, ==, 26);
  g_assert_cmpint (((SteadFlockEntry *) span->pdata[2])->id, ==, last);
}

#define BAD_ENTRY(field, value, words) \
  G_STMT_START { \
    __typeof__ (entry.field) kept = entry.field; \
    entry.field = (value); \
    INVALID (farm, stead_flock_repo_save_entry (farm->store, &entry, err), words); \
    g_assert_cmpint (entry.id, ==, 0); \
    entry.field = kept; \
  } G_STMT_END

static void
test_entry_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autofree char *long_note = g_strnfill (4001, 'x');
  char bell[] = "ring \a", lines[] = "First line\nsecond\tline";
  SteadFlockEntry entry = { .flock_id = farm->flock, .day = TODAY - 1, .eggs = 20, .feed_kg = 3 };

  farm_entry (farm, TODAY - 10, STEAD_COUNT_NONE, NAN, 3);
  BAD_ENTRY (day, TODAY - 101, "Hens 1 moved in on Nov 23, 2025");
  BAD_ENTRY (day, TODAY + 1, "Mar 4, 2026 is still to come");
  BAD_ENTRY (day, STEAD_DAY_NONE, "Enter the day");
  BAD_ENTRY (eggs, 60, "There are 27 birds; 60 eggs in one day is more than they can lay. Check the number.");
  BAD_ENTRY (eggs, 55, "There are 27 birds; 55 eggs");
  BAD_ENTRY (eggs, -2, "fewer than none");
  BAD_ENTRY (cracked, 21, "21 eggs are cracked, but only 20");
  BAD_ENTRY (cracked, -1, "fewer than none");
  BAD_ENTRY (deaths, 28, "There are only 27 birds; 28 cannot");
  BAD_ENTRY (culled, 28, "There are only 27 birds; 28 cannot");
  BAD_ENTRY (deaths, -1, "fewer than none");
  BAD_ENTRY (feed_kg, -0.1, "less than nothing");
  BAD_ENTRY (feed_kg, 270.1, "27 birds");
  BAD_ENTRY (feed_kg, INFINITY, "27 birds");
  BAD_ENTRY (note, long_note, "at most 4000 letters");
  BAD_ENTRY (note, bell, "cannot be read");
  entry.note = lines;
  entry.eggs = STEAD_COUNT_NONE;
  entry.feed_kg = NAN;
  entry.note = NULL;
  INVALID (farm, stead_flock_repo_save_entry (farm->store, &entry, err), "Nothing is entered");
  BAD_ENTRY (cracked, 1, "Enter all eggs");
  entry.note = lines;
  entry.eggs = 54;   /* two a hen: a missed collection */
  ACT (farm, stead_flock_repo_save_entry (farm->store, &entry, err));
  entry.id = 0;
  BAD_ENTRY (eggs, 1, "There are 27 birds; 55 eggs in one day");
}

/* A loss typed in later for an earlier day counts against the later ones. */
static void
test_losses (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadFlockEntry entry = { .flock_id = farm->flock, .day = TODAY - 50, .eggs = STEAD_COUNT_NONE,
                            .feed_kg = NAN, .deaths = 11 };

  farm_entry (farm, TODAY - 10, STEAD_COUNT_NONE, NAN, 20);
  INVALID (farm, stead_flock_repo_save_entry (farm->store, &entry, err), "only 10 birds; 11 cannot");
  entry.deaths = 10;
  ACT (farm, stead_flock_repo_save_entry (farm->store, &entry, err));
}

static void
test_ended (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadFlock) flock = get_flock (farm);
  SteadFlockEntry entry = { .flock_id = farm->flock, .day = TODAY - 4, .eggs = 1, .feed_kg = NAN };

  flock->ended_on = TODAY - 5;
  ACT (farm, stead_flock_repo_save (farm->store, flock, err));
  INVALID (farm, stead_flock_repo_save_entry (farm->store, &entry, err), "Hens 1 ended on Feb 26, 2026");
}

/* --- import ---------------------------------------------------------------------- */

static GPtrArray *
make_import (Farm *farm,
             int   n)
{
  GPtrArray *entries = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_flock_entry_free);

  for (int i = 0; i < n; i++)
    {
      SteadFlockEntry *entry = g_new0 (SteadFlockEntry, 1);

      /* Days in no order. */
      *entry = (SteadFlockEntry) { .flock_id = farm->flock, .day = TODAY - 99 + (i * 37) % n, .eggs = 20,
                                   .feed_kg = 3 };
      g_ptr_array_add (entries, entry);
    }
  return entries;
}

static void
note_progress (double   share,
               gpointer data)
{
  double *last = data;

  g_assert_cmpfloat (share, >=, *last);
  *last = share;
}

static void
test_import (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(Farm) one_by_one = farm_new ();
  g_autoptr(GPtrArray) entries = make_import (farm, 99);
  double progress = 0;

  farm_receipt (farm, farm->feed, TODAY - 80, 100, 9999, FALSE);
  farm_receipt (one_by_one, one_by_one->feed, TODAY - 80, 100, 9999, FALSE);
  ACT (farm, stead_flock_repo_add_entries (farm->store, entries, NULL, note_progress, &progress, err));
  g_assert_cmpfloat (progress, ==, 1);
  for (guint i = 0; i < entries->len; i++)
    {
      SteadFlockEntry *entry = entries->pdata[i];

      g_assert_cmpint (entry->id, !=, 0);
      farm_entry (one_by_one, entry->day, entry->eggs, entry->feed_kg, 0);
    }
  g_assert_cmpint (fixture_number (farm->store, "SELECT sum (cost_cents * day) FROM movement"), ==,
                   fixture_number (one_by_one->store, "SELECT sum (cost_cents * day) FROM movement"));
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

static void
test_import_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GPtrArray) entries = make_import (farm, 99);
  g_autoptr(GCancellable) cancellable = g_cancellable_new ();

  ((SteadFlockEntry *) entries->pdata[50])->eggs = 61;
  INVALID (farm, stead_flock_repo_add_entries (farm->store, entries, NULL, NULL, NULL, err),
           "There are 30 birds; 61 eggs");
  for (guint i = 0; i < entries->len; i++)
    g_assert_cmpint (((SteadFlockEntry *) entries->pdata[i])->id, ==, 0);
  ((SteadFlockEntry *) entries->pdata[50])->eggs = 20;
  g_cancellable_cancel (cancellable);
  REFUSE (farm, stead_flock_repo_add_entries (farm->store, entries, cancellable, NULL, NULL, err),
          STEAD_STORE_ERROR_CANCELLED, "Stopped");
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM batch_entry"), ==, 0);
}

static void
add_import (Farm      *farm,
            GPtrArray *entries,
            SteadDay   day,
            int        eggs,
            int        deaths)
{
  SteadFlockEntry *entry = g_new0 (SteadFlockEntry, 1);

  *entry = (SteadFlockEntry) { .flock_id = farm->flock, .day = day, .eggs = eggs, .deaths = deaths, .feed_kg = NAN };
  g_ptr_array_add (entries, entry);
}

/* Entries taken over are held to what is in the log already, and to each other. */
static void
test_import_beside (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GPtrArray) entries = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_flock_entry_free);

  farm_entry (farm, TODAY - 50, STEAD_COUNT_NONE, NAN, 4);     /* 26 left */
  farm_entry (farm, TODAY - 20, 40, NAN, 0);
  add_import (farm, entries, TODAY - 40, STEAD_COUNT_NONE, 6); /* 20 left */
  add_import (farm, entries, TODAY - 30, 41, 0);
  INVALID (farm, stead_flock_repo_add_entries (farm->store, entries, NULL, NULL, NULL, err),
           "Hens 1, Feb 1, 2026: There are 20 birds; 41 eggs");
  g_ptr_array_remove_index (entries, 1);
  add_import (farm, entries, TODAY - 30, 20, 0);
  add_import (farm, entries, TODAY - 30, 21, 0);
  INVALID (farm, stead_flock_repo_add_entries (farm->store, entries, NULL, NULL, NULL, err),
           "There are 20 birds; 41 eggs");
  g_ptr_array_remove_index (entries, 2);
  add_import (farm, entries, TODAY - 20, 1, 0);
  INVALID (farm, stead_flock_repo_add_entries (farm->store, entries, NULL, NULL, NULL, err),
           "Hens 1, Feb 11, 2026: There are 20 birds; 41 eggs");
  g_ptr_array_remove_index (entries, 2);
  add_import (farm, entries, TODAY - 10, STEAD_COUNT_NONE, 12);
  add_import (farm, entries, TODAY - 10, STEAD_COUNT_NONE, 9);
  INVALID (farm, stead_flock_repo_add_entries (farm->store, entries, NULL, NULL, NULL, err),
           "There are only 8 birds; 9 cannot");
  ((SteadFlockEntry *) entries->pdata[3])->deaths = 8;
  ACT (farm, stead_flock_repo_add_entries (farm->store, entries, NULL, NULL, NULL, err));
}

/* --- sums ------------------------------------------------------------------------ */

/* Husbandry 1.1: hen-days are the hens alive summed over the days; the day of death does not
 * count.  30 hens, one dies on the third of five days: 30 + 30 + 29 + 29 + 29 = 147; the day
 * without an egg entry is not logged. */
static void
test_totals (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  SteadFlockTotals totals;
  SteadDay first = TODAY - 20;

  farm_entry (farm, first, 20, 3, 0);
  farm_entry (farm, first + 1, 21, NAN, 0);
  farm_entry (farm, first + 2, 15, 2.5, 1);
  farm_entry (farm, first + 2, 5, NAN, 0);    /* second collection: the same day */
  farm_entry (farm, first + 3, STEAD_COUNT_NONE, 3, 0);
  farm_entry (farm, first + 4, 19, NAN, 0);
  farm_entry (farm, first + 5, 0, NAN, 0);
  g_assert_true (stead_flock_repo_totals (farm->store, farm->flock, first, first + 4, &totals, &error));
  g_assert_no_error (error);
  g_assert_cmpint (totals.eggs, ==, 80);
  g_assert_cmpint (totals.deaths, ==, 1);
  g_assert_cmpint (totals.days_logged, ==, 4);
  g_assert_cmpfloat (totals.hen_days, ==, 30 + 30 + 29 + 29);
  g_assert_cmpfloat (totals.fed_hen_days, ==, 30 + 29 + 29);
  g_assert_cmpfloat (totals.feed_kg, ==, 8.5);
  g_assert_true (stead_flock_repo_totals (farm->store, farm->flock, first + 3, first + 5, &totals, &error));
  g_assert_cmpfloat (totals.hen_days, ==, 58);   /* a day with 0 eggs is logged */
  g_assert_true (stead_flock_repo_totals (farm->store, farm->flock, first + 6, first + 9, &totals, &error));
  g_assert_cmpint (totals.days_logged, ==, 0);
  g_assert_cmpint (stead_flock_repo_alive (farm->store, farm->flock, first + 2, &error), ==, 30);
  g_assert_cmpint (stead_flock_repo_alive (farm->store, farm->flock, first + 3, &error), ==, 29);
}

/* One walk gives what each span gives alone; a span that ends before it begins, nothing. */
static void
test_spans (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GArray) weeks = NULL;
  SteadDay first = TODAY - 40;
  SteadFlockSpan spans[] = {
    { .from = first, .to = TODAY }, { .from = first + 3, .to = first + 9 }, { .from = first + 5, .to = first + 4 },
    { .from = first + 20, .to = first + 20 }, { .from = TODAY - 2, .to = TODAY },
  };

  for (int i = 0; i < 40; i++)
    if (i % 6 != 5)
      farm_entry (farm, first + i, 10 + i % 4, i % 3 == 0 ? NAN : 2.5, i == 7 || i == 20);
  weeks = stead_flock_repo_weeks_and_spans (farm->store, farm->flock, first, TODAY, spans, G_N_ELEMENTS (spans),
                                            &error);
  g_assert_no_error (error);
  g_assert_cmpuint (weeks->len, >, 5);
  for (gsize i = 0; i < G_N_ELEMENTS (spans); i++)
    {
      SteadFlockTotals alone = { 0 };

      g_test_message ("span %zu", i);
      if (spans[i].to >= spans[i].from)
        g_assert_true (stead_flock_repo_totals (farm->store, farm->flock, spans[i].from, spans[i].to, &alone, &error));
      g_assert_cmpmem (&spans[i].totals, sizeof alone, &alone, sizeof alone);
    }
  g_assert_cmpint (spans[1].totals.deaths, ==, 1);
  g_assert_cmpint (spans[2].totals.days_logged, ==, 0);
}

static void
test_weeks (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GArray) weeks = NULL;
  SteadDay housed = TODAY - 100;
  SteadFlockEntry out = { .flock_id = farm->flock, .day = housed + 8, .eggs = 5, .feed_kg = NAN, .culled = 2,
                          .cracked = 1, .left_out = TRUE };
  const SteadLayWeek *week;

  for (int i = 0; i < 7; i++)
    farm_entry (farm, housed + i, i, 3, 0);
  ACT (farm, stead_flock_repo_save_entry (farm->store, &out, err));
  farm_entry (farm, housed + 21, 10, NAN, 0);   /* the third week has no entry */
  weeks = stead_flock_repo_weeks (farm->store, farm->flock, housed, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (weeks->len, ==, 3);
  week = &g_array_index (weeks, SteadLayWeek, 0);
  g_assert_cmpint (week->first_day, ==, housed);
  g_assert_cmpfloat (week->age_weeks, ==, 17.5);
  g_assert_cmpint (week->eggs, ==, 21);
  g_assert_cmpint (week->days_logged, ==, 7);
  g_assert_cmpfloat (week->hen_days, ==, 210);
  g_assert_cmpfloat (week->feed_kg, ==, 21);
  g_assert_false (week->left_out);
  week = &g_array_index (weeks, SteadLayWeek, 1);
  g_assert_cmpint (week->first_day, ==, housed + 7);
  g_assert_cmpfloat (week->hen_days, ==, 28);
  g_assert_cmpint (week->deaths, ==, 2);
  g_assert_cmpint (week->cracked, ==, 1);
  g_assert_true (week->left_out);
  week = &g_array_index (weeks, SteadLayWeek, 2);
  g_assert_cmpint (week->first_day, ==, housed + 21);
  g_assert_cmpfloat (week->age_weeks, ==, 20.5);
}

static void
test_last_days (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;

  g_assert_cmpint (stead_flock_repo_last_eggs (farm->store, farm->flock, &error), ==, STEAD_DAY_NONE);
  g_assert_cmpint (stead_flock_repo_last_feed (farm->store, farm->flock, &error), ==, STEAD_DAY_NONE);
  g_assert_cmpint (stead_flock_repo_last_bedding (farm->store, farm->flock, &error), ==, STEAD_DAY_NONE);
  farm_receipt (farm, farm->straw, TODAY - 50, 100, 1000, FALSE);
  farm_receipt (farm, farm->feed, TODAY - 50, 100, 1000, FALSE);
  farm_entry (farm, TODAY - 4, 0, NAN, 0);
  farm_entry (farm, TODAY - 3, STEAD_COUNT_NONE, 3, 0);
  farm_entry (farm, TODAY - 2, STEAD_COUNT_NONE, 0, 0);
  ACT (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY - 9, 3, 0, err));
  g_assert_cmpint (stead_flock_repo_last_eggs (farm->store, farm->flock, &error), ==, TODAY - 4);
  g_assert_cmpint (stead_flock_repo_last_feed (farm->store, farm->flock, &error), ==, TODAY - 3);
  g_assert_cmpint (stead_flock_repo_last_bedding (farm->store, farm->flock, &error), ==, TODAY - 9);
  g_assert_no_error (error);
}

/* A writing call outside an action is a bug of ours. */
static void
test_outside_action (void)
{
  if (g_test_subprocess ())
    {
      g_autoptr(Farm) farm = farm_new ();
      g_autoptr(SteadFlock) flock = get_flock (farm);
      g_autoptr(GError) error = NULL;

      g_assert_false (stead_flock_repo_save (farm->store, flock, &error));
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*stead_store_in_action*");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/flock/round-trip", test_round_trip);
  g_test_add_func ("/store/flock/list", test_list);
  g_test_add_func ("/store/flock/refused", test_refused);
  g_test_add_func ("/store/flock/plan-against-log", test_plan_against_log);
  g_test_add_func ("/store/flock/delete", test_delete);
  g_test_add_func ("/store/flock/delete-frees-feed", test_delete_frees_feed);
  g_test_add_func ("/store/flock/other-feed", test_other_feed);
  g_test_add_func ("/store/flock/entry-round-trip", test_entry_round_trip);
  g_test_add_func ("/store/flock/pages", test_pages);
  g_test_add_func ("/store/flock/entry-refused", test_entry_refused);
  g_test_add_func ("/store/flock/losses", test_losses);
  g_test_add_func ("/store/flock/ended", test_ended);
  g_test_add_func ("/store/flock/import", test_import);
  g_test_add_func ("/store/flock/import-refused", test_import_refused);
  g_test_add_func ("/store/flock/import-beside", test_import_beside);
  g_test_add_func ("/store/flock/totals", test_totals);
  g_test_add_func ("/store/flock/weeks", test_weeks);
  g_test_add_func ("/store/flock/spans", test_spans);
  g_test_add_func ("/store/flock/last-days", test_last_days);
  g_test_add_func ("/store/flock/outside-action", test_outside_action);
  return g_test_run ();
}
