/* repo-fixture.c - a small farm, made through the repositories. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "repo-fixture.h"
#include "store/stead-fish-repo.h"
#include "store/stead-water-repo.h"

void
farm_assert_says (const char *message,
                  const char *words)
{
  if (strstr (message, words) == NULL)
    g_error ("“%s” does not say “%s”", message, words);
}

static gint64
make_person (Farm            *farm,
             const char      *name,
             SteadPersonRole  role)
{
  SteadPerson person = { .name = g_strdup (name), .role = role, .left_on = STEAD_DAY_NONE };

  ACT (farm, stead_person_repo_save (farm->store, &person, err));
  g_free (person.name);
  return person.id;
}

static gint64
make_flock (Farm *farm)
{
  g_autoptr(SteadFlock) flock = stead_flock_new ();

  flock->name = g_strdup ("Hens 1");
  flock->housed_on = TODAY - 100;
  flock->hatched_on = TODAY - 100 - 17 * 7;
  flock->birds = 30;
  flock->birds_cost_cents = 36000;
  flock->salvage_cents = 6000;
  flock->eggs_expected = 300;
  flock->care_minutes_day = 20;
  flock->feed_item_id = farm->feed;
  ACT (farm, stead_flock_repo_save (farm->store, flock, err));
  return flock->id;
}

gint64
farm_item (Farm          *farm,
           const char    *name,
           SteadItemKind  kind,
           const char    *unit)
{
  SteadItem item = { .name = g_strdup (name), .kind = kind, .unit = stead_unit_by_id (unit), .reorder_base = NAN };

  ACT (farm, stead_item_repo_save (farm->store, &item, err));
  g_free (item.name);
  return item.id;
}

Farm *
farm_new (void)
{
  g_autoptr(GError) error = NULL;
  Farm *farm = g_new0 (Farm, 1);

  farm->store = stead_store_create_memory ("Test Farm", &error);
  g_assert_no_error (error);
  stead_store_set_today (farm->store, TODAY);
  farm->feed = farm_item (farm, "Layer feed", STEAD_ITEM_FEED, "lb");
  farm->straw = farm_item (farm, "Straw", STEAD_ITEM_BEDDING, "lb");
  farm->carton = farm_item (farm, "Carton", STEAD_ITEM_PACKAGING, "ea");
  farm->student = make_person (farm, "Ada B.", STEAD_PERSON_STUDENT);
  farm->advisor = make_person (farm, "Mx. Reed", STEAD_PERSON_ADVISOR);
  farm->flock = make_flock (farm);
  return farm;
}

void
farm_free (Farm *farm)
{
  g_object_unref (farm->store);
  g_free (farm);
}

gint64
farm_receipt (Farm     *farm,
              gint64    item_id,
              SteadDay  day,
              double    base,
              gint64    cents,
              gboolean  is_gift)
{
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
  SteadReceiptLine line = { .item_id = item_id, .quantity_base = base, .cost_cents = cents,
                            .best_by = STEAD_DAY_NONE };

  receipt->day = day;
  receipt->supplier = g_strdup ("Lakeside Feed & Seed");
  receipt->is_gift = is_gift;
  g_array_append_val (receipt->lines, line);
  ACT (farm, stead_receipt_repo_save (farm->store, receipt, err));
  return receipt->id;
}

gint64
farm_entry (Farm     *farm,
            SteadDay  day,
            int       eggs,
            double    feed_kg,
            int       deaths)
{
  SteadFlockEntry entry = { .flock_id = farm->flock, .day = day, .eggs = eggs, .feed_kg = feed_kg,
                            .deaths = deaths };

  ACT (farm, stead_flock_repo_save_entry (farm->store, &entry, err));
  return entry.id;
}

gint64
farm_fish (Farm       *farm,
           const char *name,
           int         days)
{
  g_autoptr(SteadTank) tank = stead_tank_new ();
  g_autoptr(SteadFish) fish = stead_fish_new ();

  tank->name = g_strdup_printf ("Tank of %s", name);
  tank->shape = STEAD_TANK_OTHER;
  tank->volume_l = 2000;
  ACT (farm, stead_tank_repo_save (farm->store, tank, err));
  fish->batch.name = g_strdup (name);
  fish->batch.started_on = TODAY - days;
  fish->batch.place_id = tank->place_id;
  fish->stocked = 500;
  fish->stocked_g = 15;
  fish->cost_cents = 20000;
  fish->sale_g = 600;
  ACT (farm, stead_fish_repo_save (farm->store, fish, err));
  return fish->batch.id;
}

gint64
farm_harvest (Farm     *farm,
              gint64    batch_id,
              gint64    item_id,
              SteadDay  day,
              double    kg,
              gint64    pieces,
              gint64    cents)
{
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();

  harvest->batch_id = batch_id;
  harvest->item_id = item_id;
  harvest->day = day;
  harvest->quantity_base = kg;
  harvest->pieces = pieces;
  harvest->cost_cents = cents;
  ACT (farm, stead_harvest_repo_save (farm->store, harvest, err));
  return harvest->id;
}

void
farm_assert_ledger (Farm *farm)
{
  /* A harvest, its lot and its movement agree. */
  g_assert_cmpint (fixture_number (farm->store,
    "SELECT count (*) FROM harvest h LEFT JOIN lot l ON l.id = h.lot_id"
    " LEFT JOIN movement m ON m.lot_id = l.id AND m.kind = 'made' WHERE h.lot_id IS NOT NULL"
    " AND (l.id IS NULL OR m.id IS NULL OR l.batch_id <> h.batch_id OR l.day <> h.day OR m.day <> h.day)"), ==, 0);
  g_assert_cmpint (fixture_number (farm->store,
    "SELECT count (*) FROM lot WHERE batch_id IS NOT NULL AND id NOT IN"
    " (SELECT lot_id FROM harvest WHERE lot_id IS NOT NULL)"), ==, 0);
  /* What is kept beside the lots is what the movements say. */
  g_assert_cmpint (fixture_number (farm->store,
    "SELECT count (*) FROM lot l JOIN lot_stock s ON s.lot_id = l.id"
    " WHERE abs (s.base - (SELECT coalesce (sum (quantity_base), 0) FROM movement WHERE lot_id = l.id)) > 1e-9"
    "    OR s.cents <> (SELECT coalesce (sum (cost_cents), 0) FROM movement WHERE lot_id = l.id)"), ==, 0);
  /* No lot below zero at the end of any day. */
  g_assert_cmpint (fixture_number (farm->store,
    "SELECT count (*) FROM movement a WHERE (SELECT sum (b.quantity_base) FROM movement b"
    " WHERE b.lot_id = a.lot_id AND b.day <= a.day) < -1e-6"), ==, 0);
  /* No money below zero, and none left in an empty lot; of an item, if the farm averages. */
  g_assert_cmpint (fixture_number (farm->store,
    "SELECT count (*) FROM lot_stock JOIN farm WHERE cost_method = 'fifo'"
    " AND (cents < 0 OR (abs (base) < 1e-7 AND cents <> 0))"), ==, 0);
  g_assert_cmpint (fixture_number (farm->store,
    "SELECT count (*) FROM (SELECT sum (base) AS base, sum (cents) AS cents FROM lot_stock s"
    " JOIN lot l ON l.id = s.lot_id GROUP BY l.item_id) WHERE cents < 0 OR (abs (base) < 1e-7 AND cents <> 0)"), ==, 0);
  /* What a kitchen batch made carries what it used. */
  g_assert_cmpint (fixture_number (farm->store,
    "SELECT count (*) FROM batch b WHERE b.kind = 'kitchen' AND EXISTS (SELECT 1 FROM lot WHERE batch_id = b.id)"
    " AND (SELECT sum (m.cost_cents) FROM lot l JOIN movement m ON m.lot_id = l.id AND m.kind = 'made' WHERE l.batch_id = b.id)"
    "  <> (SELECT -coalesce (sum (cost_cents), 0) FROM movement WHERE batch_id = b.id AND kind = 'used')"), ==, 0);
  /* Nothing moves before it came; feed moves on the day of its entry, and not more than it. */
  g_assert_cmpint (fixture_number (farm->store,
    "SELECT count (*) FROM movement m JOIN lot l ON l.id = m.lot_id WHERE m.day < l.day"), ==, 0);
  g_assert_cmpint (fixture_number (farm->store,
    "SELECT count (*) FROM movement m JOIN batch_entry e ON e.id = m.entry_id"
    " WHERE m.day <> e.day OR m.batch_id <> e.batch_id"), ==, 0);
  g_assert_cmpint (fixture_number (farm->store,
    "SELECT count (*) FROM batch_entry e WHERE (SELECT coalesce (-sum (m.quantity_base), 0) FROM movement m"
    " WHERE m.entry_id = e.id) > coalesce (e.feed_kg, 0) + 1e-6"), ==, 0);
  /* A line of a receipt, its lot and its movement agree. */
  g_assert_cmpint (fixture_number (farm->store,
    "SELECT count (*) FROM receipt_line rl JOIN receipt r ON r.id = rl.receipt_id"
    " LEFT JOIN lot l ON l.receipt_line_id = rl.id LEFT JOIN movement m ON m.lot_id = l.id AND m.kind = 'received'"
    " WHERE l.id IS NULL OR m.id IS NULL OR l.item_id <> rl.item_id OR l.day <> r.day OR m.day <> r.day"
    "    OR m.quantity_base <> rl.quantity_base OR m.cost_cents <> rl.cost_cents"), ==, 0);
}

/* Back and forth again; @to_signed: a step that is signed ends the way back. */
static int
undo_all (Farm     *farm,
          gboolean  to_signed)
{
  g_autofree char *end = fixture_dump (farm->store);
  g_autofree char *again = NULL;
  char *name;
  int steps = 0;

  while ((name = stead_store_get_undo_name (farm->store)) != NULL)
    {
      g_autoptr(GError) error = NULL;

      g_free (name);
      if (!stead_store_undo (farm->store, &error) && to_signed
          && g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_SIGNED))
        break;
      g_assert_no_error (error);
      farm_assert_ledger (farm);
      steps++;
    }
  g_assert_cmpint (steps, >, 0);
  for (int i = 0; i < steps; i++)
    {
      g_autoptr(GError) error = NULL;

      g_assert_true (stead_store_redo (farm->store, &error));
      g_assert_no_error (error);
    }
  again = fixture_dump (farm->store);
  g_assert_cmpstr (again, ==, end);
  return steps;
}

void
farm_assert_undo (Farm *farm)
{
  (void) undo_all (farm, FALSE);
}

int
farm_assert_undo_to_signed (Farm *farm)
{
  return undo_all (farm, TRUE);
}
