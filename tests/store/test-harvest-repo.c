/* test-harvest-repo.c - harvests, their lots, and what cannot have been harvested. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"

typedef struct
{
  Farm         *farm;
  gint64        fish;
  gint64        dressed;   /* kg, produce, keeps 10 days */
  SteadHarvest *harvest;   /* one that is fine: 30 kg of 60 fish a week ago */
} Pond;

static void
set_up (Pond          *pond,
        gconstpointer  data)
{
  SteadItem item = { .name = (char *) "Catfish, dressed", .kind = STEAD_ITEM_PRODUCE,
                     .unit = stead_unit_by_id ("lb"), .shelf_life_days = 10, .reorder_base = NAN };

  pond->farm = farm_new ();
  pond->fish = farm_fish (pond->farm, "Catfish 1", 90);
  ACT (pond->farm, stead_item_repo_save (pond->farm->store, &item, err));
  pond->dressed = item.id;
  pond->harvest = stead_harvest_new ();
  pond->harvest->batch_id = pond->fish;
  pond->harvest->day = TODAY - 7;
  pond->harvest->item_id = pond->dressed;
  pond->harvest->quantity_base = 30;
  pond->harvest->pieces = 60;
  pond->harvest->live_kg = 50;
  pond->harvest->cost_cents = 7001;
}

static void
tear_down (Pond          *pond,
           gconstpointer  data)
{
  stead_harvest_free (pond->harvest);
  farm_free (pond->farm);
}

static gint64
number (Pond       *pond,
        const char *sql)
{
  return fixture_number (pond->farm->store, sql);
}

static void
test_round_trip (Pond          *pond,
                 gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) list = NULL;
  g_autoptr(GPtrArray) lots = NULL;
  const SteadHarvest *read;
  const SteadLot *lot;

  pond->harvest->lost_base = 2;
  pond->harvest->reason = g_strdup (" Cut badly ");
  pond->harvest->grade = g_strdup ("first");
  pond->harvest->note = g_strdup ("Cold morning");
  pond->harvest->person_id = pond->farm->student;
  ACT_LEAVING (pond->farm, stead_harvest_repo_save (pond->farm->store, pond->harvest, err),
               pond->harvest->id == 0 && pond->harvest->lot_id == 0);
  list = stead_harvest_repo_list (pond->farm->store, pond->fish, TODAY - 7, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list->len, ==, 1);
  read = list->pdata[0];
  g_assert_cmpint (read->id, ==, pond->harvest->id);
  g_assert_cmpint (read->batch_id, ==, pond->fish);
  g_assert_cmpint (read->item_id, ==, pond->dressed);
  g_assert_cmpfloat (read->quantity_base, ==, 30);
  g_assert_cmpfloat (read->lost_base, ==, 2);
  g_assert_cmpfloat (read->live_kg, ==, 50);
  g_assert_cmpint (read->pieces, ==, 60);
  g_assert_cmpint (read->cost_cents, ==, 7001);
  g_assert_cmpstr (read->reason, ==, "Cut badly");
  g_assert_cmpstr (read->grade, ==, "first");
  g_assert_cmpstr (read->note, ==, "Cold morning");
  g_assert_cmpint (read->person_id, ==, pond->farm->student);
  g_assert_cmpint (read->best_by, ==, TODAY + 3);
  g_assert_false (read->is_last);
  /* February 24, 2026 is day 55. */
  g_assert_cmpstr (read->lot_code, ==, "W26055-1");
  g_assert_cmpstr (pond->harvest->lot_code, ==, "W26055-1");
  lots = stead_lot_repo_list (pond->farm->store, FALSE, &error);
  g_assert_cmpuint (lots->len, ==, 1);
  lot = lots->pdata[0];
  g_assert_cmpint (lot->id, ==, read->lot_id);
  g_assert_cmpint (lot->batch_id, ==, pond->fish);
  g_assert_cmpstr (lot->batch_name, ==, "Catfish 1");
  g_assert_cmpint (lot->receipt_id, ==, 0);
  g_assert_cmpfloat (lot->received_base, ==, 30);
  g_assert_cmpint (lot->received_cents, ==, 7001);
  g_assert_cmpfloat (lot->on_hand_base, ==, 30);
  g_assert_cmpint (lot->on_hand_cents, ==, 7001);
  farm_assert_ledger (pond->farm);
  farm_assert_undo (pond->farm);
}

/* Each kind of batch has its letter, and a day counts on. */
static void
test_codes (Pond          *pond,
            gconstpointer  data)
{
  Farm *farm = pond->farm;
  gint64 eggs = farm_item (farm, "Eggs", STEAD_ITEM_PRODUCE, "ea");

  farm_harvest (farm, pond->fish, pond->dressed, TODAY, 1, 2, 0);
  farm_harvest (farm, pond->fish, pond->dressed, TODAY, 1, 2, 0);
  farm_harvest (farm, farm->flock, eggs, TODAY, 30, 30, 0);
  g_assert_cmpint (number (pond, "SELECT count (*) FROM lot WHERE code IN ('W26062-1', 'W26062-2', 'H26062-1')"), ==, 3);
  farm_receipt (farm, farm_item (farm, "Chicks", STEAD_ITEM_LIVESTOCK, "ea"), TODAY, 30, 9000, FALSE);
  farm_receipt (farm, eggs, TODAY, 30, 900, FALSE);
  g_assert_cmpint (number (pond, "SELECT count (*) FROM lot WHERE code IN ('L26062-1', 'R26062-1')"), ==, 2);
}

static void
test_change (Pond          *pond,
             gconstpointer  data)
{
  Farm *farm = pond->farm;
  SteadHarvest *harvest = pond->harvest;

  ACT (farm, stead_harvest_repo_save (farm->store, harvest, err));
  harvest->quantity_base = 28;
  harvest->cost_cents = 6500;
  harvest->day = TODAY - 6;
  harvest->item_id = farm_item (farm, "Catfish, whole", STEAD_ITEM_PRODUCE, "kg");
  ACT (farm, stead_harvest_repo_save (farm->store, harvest, err));
  g_assert_cmpint (number (pond, "SELECT cents = 6500 AND base = 28 FROM lot_stock"), ==, 1);
  g_assert_cmpstr (harvest->lot_code, ==, "W26055-1");
  /* All of it was bad after all: the lot goes. */
  harvest->lost_base = 28;
  harvest->quantity_base = 0;
  harvest->reason = g_strdup ("Fridge failed");
  ACT (farm, stead_harvest_repo_save (farm->store, harvest, err));
  g_assert_cmpint (number (pond, "SELECT count (*) FROM lot"), ==, 0);
  g_assert_cmpint (harvest->lot_id, ==, 0);
  harvest->quantity_base = 3;
  harvest->item_id = pond->dressed;
  ACT (farm, stead_harvest_repo_save (farm->store, harvest, err));
  g_assert_cmpstr (harvest->lot_code, ==, "W26056-1");
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* What was sold of it stands. */
static void
test_used (Pond          *pond,
           gconstpointer  data)
{
  Farm *farm = pond->farm;
  SteadHarvest *harvest = pond->harvest;

  ACT (farm, stead_harvest_repo_save (farm->store, harvest, err));
  ACT (farm, stead_lot_repo_sell (farm->store, pond->dressed, TODAY, 1, NULL, 0, err));
  harvest->quantity_base = 29;
  INVALID (farm, stead_harvest_repo_save (farm->store, harvest, err), "used or changed");
  INVALID (farm, stead_harvest_repo_delete (farm->store, harvest->id, err), "used or changed");
  /* 7001 cents in 30 kg: 29 kg carry on 7001 - 233. */
  g_assert_cmpint (number (pond, "SELECT cents FROM lot_stock"), ==, 7001 - 233);
  farm_assert_ledger (farm);
}

static void
test_delete (Pond          *pond,
             gconstpointer  data)
{
  Farm *farm = pond->farm;

  ACT (farm, stead_harvest_repo_save (farm->store, pond->harvest, err));
  ACT (farm, stead_harvest_repo_delete (farm->store, pond->harvest->id, err));
  g_assert_cmpint (number (pond, "SELECT (SELECT count (*) FROM lot) + (SELECT count (*) FROM movement)"
                                 " + (SELECT count (*) FROM harvest)"), ==, 0);
  REFUSE (farm, stead_harvest_repo_delete (farm->store, pond->harvest->id, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  farm_assert_undo (farm);
}

/* Own maize that the hens eat: the log's feed lies on the lot, and makes way for a change. */
static void
test_own_feed (Pond          *pond,
               gconstpointer  data)
{
  Farm *farm = pond->farm;
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, NULL);
  gint64 maize = farm_item (farm, "Maize", STEAD_ITEM_PRODUCE, "kg");
  gint64 id;

  flock->feed_item_id = maize;
  ACT (farm, stead_flock_repo_save (farm->store, flock, err));
  farm_entry (farm, TODAY - 3, 20, 4, 0);
  id = farm_harvest (farm, pond->fish, maize, TODAY - 5, 10, 1, 1000);
  g_assert_cmpint (number (pond, "SELECT cents FROM lot_stock"), ==, 600);
  ACT (farm, stead_harvest_repo_delete (farm->store, id, err));
  g_assert_cmpint (number (pond, "SELECT count (*) FROM movement"), ==, 0);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* What is made here has a price too: what its oldest lot cost. */
static void
test_stock (Pond          *pond,
            gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  SteadStock stock;

  ACT (pond->farm, stead_harvest_repo_save (pond->farm->store, pond->harvest, err));
  g_assert_true (stead_lot_repo_stock (pond->farm->store, pond->dressed, TODAY, 7, &stock, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (stock.next_unit_cents, 7001 / 30.0, 1e-9);
  g_assert_cmpint (stock.next_cost_cents, ==, 7001);
  g_assert_false (stock.next_is_gift);
  g_assert_cmpfloat (stock.on_hand_base, ==, 30);
}

/* --- refusals ------------------------------------------------------------------- */

#define NO(pond, words) INVALID ((pond)->farm, stead_harvest_repo_save ((pond)->farm->store, (pond)->harvest, err), words)

static void
test_days (Pond          *pond,
           gconstpointer  data)
{
  pond->harvest->day = STEAD_DAY_NONE;
  NO (pond, "Enter the day");
  pond->harvest->day = TODAY - 91;
  NO (pond, "began on");
  pond->harvest->day = TODAY + 1;
  NO (pond, "still to come");
  ACT (pond->farm, stead_batch_repo_end (pond->farm->store, pond->fish, TODAY - 3, err));
  pond->harvest->day = TODAY - 2;
  NO (pond, "ended on");
  pond->harvest->day = TODAY - 3;
  ACT (pond->farm, stead_harvest_repo_save (pond->farm->store, pond->harvest, err));
}

static void
test_amounts (Pond          *pond,
              gconstpointer  data)
{
  SteadHarvest *harvest = pond->harvest;

  harvest->quantity_base = NAN;
  NO (pond, "0 or more");
  harvest->quantity_base = -1;
  NO (pond, "0 or more");
  harvest->quantity_base = 0;
  NO (pond, "Nothing is entered");
  harvest->lost_base = 3;
  NO (pond, "why some of it was lost");
  harvest->quantity_base = 48;
  harvest->reason = g_strdup ("Bruised");
  NO (pond, "cannot weigh more");
  harvest->quantity_base = 40;
  harvest->live_kg = 0;
  NO (pond, "live weight");
  harvest->live_kg = NAN;
  harvest->cost_cents = -1;
  NO (pond, "below zero");
  harvest->cost_cents = 0;
  harvest->best_by = TODAY - 8;
  NO (pond, "past its best");
  harvest->best_by = STEAD_DAY_NONE;
  harvest->item_id = 0;
  NO (pond, "Choose what goes");
  harvest->item_id = pond->farm->carton;
  NO (pond, "something that is bought");
}

static void
test_measure (Pond          *pond,
              gconstpointer  data)
{
  Farm *farm = pond->farm;

  farm_harvest (farm, pond->fish, pond->dressed, TODAY, 1, 2, 0);
  pond->harvest->item_id = farm_item (farm, "Catfish, by the piece", STEAD_ITEM_PRODUCE, "ea");
  NO (pond, "same measure");
  pond->harvest->item_id = farm_item (farm, "Catfish, whole", STEAD_ITEM_PRODUCE, "kg");
  ACT (farm, stead_harvest_repo_save (farm->store, pond->harvest, err));
}

/* 500 stocked; 30 died since, 400 go tomorrow's way: 70 may go today. */
static void
test_fish (Pond          *pond,
           gconstpointer  data)
{
  g_autofree char *sql = g_strdup_printf ("INSERT INTO batch_entry (batch_id, day, deaths) VALUES (%d, %d, 30)",
                                          (int) pond->fish, TODAY - 2);
  SteadHarvest *harvest = pond->harvest;

  fixture_act (pond->farm->store, "Deaths", sql);
  harvest->pieces = STEAD_COUNT_NONE;
  NO (pond, "Count the fish");
  harvest->pieces = 0;
  NO (pond, "Count the fish");
  harvest->pieces = 471;
  NO (pond, "only 470 fish swim");
  farm_harvest (pond->farm, pond->fish, pond->dressed, TODAY, 100, 400, 0);
  harvest->pieces = 71;
  NO (pond, "only 70 fish swim");
  harvest->pieces = 70;
  ACT (pond->farm, stead_harvest_repo_save (pond->farm->store, harvest, err));
  /* A change does not count its own fish twice. */
  harvest->note = g_strdup ("Counted again");
  ACT (pond->farm, stead_harvest_repo_save (pond->farm->store, harvest, err));
}

static void
test_last (Pond          *pond,
           gconstpointer  data)
{
  Farm *farm = pond->farm;
  g_autoptr(GError) error = NULL;
  SteadHarvest *harvest = pond->harvest;
  SteadHarvestTotals totals;

  farm_harvest (farm, pond->fish, pond->dressed, TODAY - 1, 10, 20, 300);
  harvest->is_last = TRUE;
  NO (pond, "harvested again");
  harvest->day = TODAY - 1;
  ACT (farm, stead_harvest_repo_save (farm->store, harvest, err));
  g_assert_true (stead_harvest_repo_totals (farm->store, pond->fish, TODAY - 90, TODAY, &totals, &error));
  g_assert_true (totals.is_over);
  g_assert_cmpfloat (totals.good_base, ==, 40);
  g_assert_cmpfloat (totals.lost_base, ==, 0);
  g_assert_cmpfloat (totals.live_kg, ==, 50);
  g_assert_cmpint (totals.pieces, ==, 80);
  g_assert_cmpint (totals.cost_cents, ==, 7301);
  g_assert_true (stead_harvest_repo_totals (farm->store, pond->fish, TODAY, TODAY, &totals, &error));
  g_assert_false (totals.is_over);
  g_assert_cmpint (totals.cost_cents, ==, 0);
  /* The last one itself can be changed; nothing comes after it. */
  harvest->cost_cents = 7000;
  ACT (farm, stead_harvest_repo_save (farm->store, harvest, err));
  harvest->id = 0;
  harvest->is_last = FALSE;
  harvest->day = TODAY;
  NO (pond, "The last harvest");
}

/* Nothing of a batch that waits comes into the store room; what is lost may leave the tank. */
static void
test_wait (Pond          *pond,
           gconstpointer  data)
{
  Farm *farm = pond->farm;
  g_autoptr(GError) error = NULL;
  SteadHarvest *harvest = pond->harvest;
  SteadTreatment treatment = { .batch_id = pond->fish, .day = TODAY - 20, .last_day = TODAY - 15, .wait_until = TODAY - 6,
                               .what = (char *) "Antibiotic feed", .ordered_by = (char *) "Dr. Vale" };

  harvest->day = TODAY - 9;
  ACT (farm, stead_harvest_repo_save (farm->store, harvest, err));
  g_assert_cmpint (stead_harvest_repo_lot_wait (farm->store, harvest->lot_id, &error), ==, STEAD_DAY_NONE);
  ACT (farm, stead_treatment_repo_save (farm->store, &treatment, err));
  /* Written down too late: the lot that was made in the wait is told. */
  g_assert_cmpint (stead_harvest_repo_lot_wait (farm->store, harvest->lot_id, &error), ==, TODAY - 6);
  harvest->id = 0;
  harvest->day = TODAY - 6;
  NO (pond, "waits after a treatment");
  harvest->quantity_base = 0;
  harvest->lost_base = 5;
  harvest->reason = g_strdup ("Found weak");
  ACT (farm, stead_harvest_repo_save (farm->store, harvest, err));
  harvest->id = 0;
  harvest->day = TODAY - 5;
  harvest->quantity_base = 20;
  harvest->item_id = pond->dressed;
  ACT (farm, stead_harvest_repo_save (farm->store, harvest, err));
  g_assert_cmpint (stead_harvest_repo_lot_wait (farm->store, harvest->lot_id, &error), ==, STEAD_DAY_NONE);
  g_assert_no_error (error);
}

/* A batch that gave a harvest stays. */
static void
test_batch_stays (Pond          *pond,
                  gconstpointer  data)
{
  Farm *farm = pond->farm;

  farm_harvest (farm, farm->flock, farm_item (farm, "Eggs", STEAD_ITEM_PRODUCE, "ea"), TODAY, 30, 30, 0);
  INVALID (farm, stead_flock_repo_delete (farm->store, farm->flock, err), "cannot be deleted");
}

#define ADD(name, func) g_test_add ("/store/harvest-repo/" name, Pond, NULL, set_up, func, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("round-trip", test_round_trip);
  ADD ("codes", test_codes);
  ADD ("change", test_change);
  ADD ("used", test_used);
  ADD ("delete", test_delete);
  ADD ("own-feed", test_own_feed);
  ADD ("stock", test_stock);
  ADD ("days", test_days);
  ADD ("amounts", test_amounts);
  ADD ("measure", test_measure);
  ADD ("fish", test_fish);
  ADD ("last", test_last);
  ADD ("wait", test_wait);
  ADD ("batch-stays", test_batch_stays);
  return g_test_run ();
}
