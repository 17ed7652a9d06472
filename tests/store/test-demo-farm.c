/* test-demo-farm.c - the farm that a visitor sees first. */
#include "config.h"

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <math.h>

#include "repo-fixture.h"
#include "core/stead-limit.h"
#include "store/stead-cash-count-repo.h"
#include "store/stead-cash-repo.h"
#include "store/stead-demo-farm.h"
#include "store/stead-kitchen-repo.h"

/* Days on which somebody may look: winter, the day after a sale, a leap day, New Year. */
static const int days[][3] = {
  { 2026, 3, 3 }, { 2026, 11, 25 }, { 2028, 2, 29 }, { 2027, 1, 1 }, { 2026, 7, 5 }, { 2026, 6, 6 },
};

static SteadStore *
make (const char *folder,
      const char *name,
      SteadDay    today)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = g_build_filename (folder, name, NULL);
  SteadStore *store = stead_demo_farm_create (path, NULL, today, &error);

  g_assert_no_error (error);
  g_assert_nonnull (store);
  g_assert_cmpint (stead_store_get_today (store), ==, today);
  return store;
}

static void
test_same (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autoptr(SteadStore) one = make (folder, "one.steading", TODAY);
  g_autoptr(SteadStore) two = make (folder, "two.steading", TODAY);
  g_autoptr(SteadStore) later = make (folder, "later.steading", TODAY + 1);
  g_autofree char *first = fixture_dump (one);
  g_autofree char *second = fixture_dump (two);
  g_autofree char *third = fixture_dump (later);

  g_assert_cmpstr (first, ==, second);
  g_assert_cmpstr (first, !=, third);
}

/* Closes the file and looks at all of it. */
static void
assert_sound (SteadStore *store,
              const char *path)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) wrong = NULL;

  g_object_unref (store);
  wrong = stead_store_verify (path, NULL, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < wrong->len; i++)
    g_test_message ("%s", (char *) wrong->pdata[i]);
  g_assert_cmpuint (wrong->len, ==, 0);
}

/* --- what a visitor finds ---------------------------------------------------------- */

static double
feed_days_left (SteadStore *store,
                gint64      feed,
                SteadDay    today)
{
  g_autoptr(GError) error = NULL;
  SteadStock stock;

  g_assert_true (stead_lot_repo_stock (store, feed, today, 14, &stock, &error));
  g_assert_no_error (error);
  return stock.on_hand_base / stock.use_per_day_base;
}

/* The last two days are clearly low; today's eggs are not entered; bedding is due. */
static void
assert_due (SteadStore       *store,
            const SteadFlock *flock,
            SteadDay          today)
{
  g_autoptr(GError) error = NULL;
  SteadFlockTotals totals;

  g_assert_cmpint (stead_flock_repo_last_eggs (store, flock->id, &error), ==, today - 1);
  g_assert_cmpint (today - stead_flock_repo_last_bedding (store, flock->id, &error), ==, 23);
  g_assert_cmpint (flock->bedding_days, ==, 21);
  g_assert_true (stead_flock_repo_totals (store, flock->id, today - 2, today - 1, &totals, &error));
  g_assert_cmpint (totals.eggs, ==, 19);
  g_assert_true (stead_flock_repo_totals (store, flock->id, today - 7, today - 3, &totals, &error));
  g_assert_cmpint (totals.days_logged, ==, 5);
  g_assert_cmpfloat ((double) totals.eggs / totals.hen_days, >, 0.6);
  g_assert_no_error (error);
}

static void
assert_story (SteadStore *store,
              SteadDay    today)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) flocks = stead_flock_repo_list (store, FALSE, &error);
  g_autoptr(GPtrArray) uses = NULL;
  const SteadFlock *flock = flocks->pdata[0];
  double days_left;

  g_assert_cmpuint (flocks->len, ==, 2);
  g_assert_cmpstr (flock->name, ==, "Brown hens");
  g_assert_cmpint (flock->housed_on, ==, today - 548);
  g_assert_cmpint (stead_flock_repo_alive (store, flock->id, today, &error), ==, 27);
  days_left = feed_days_left (store, flock->feed_item_id, today);
  g_assert_cmpfloat (days_left, >=, 8.9);
  g_assert_cmpfloat (days_left, <, 10.1);
  assert_due (store, flock, today);
  uses = stead_lot_repo_uses (store, flock->id, today - 84, today, &error);
  for (guint i = 0; i < uses->len; i++)
    {
      const SteadUse *use = uses->pdata[i];

      if (use->item_id != flock->feed_item_id)
        continue;
      g_assert_cmpfloat (use->uncovered_base / LB, >, 20);
      g_assert_cmpfloat (use->uncovered_base / LB, <, 36);
    }
  g_assert_no_error (error);
}

/* One crop is over, one is picked, and one has not begun to ripen; young hens lay. */
static void
assert_bays (SteadStore *store,
             SteadDay    today)
{
  static const char count_sql[] = "SELECT count (*) FROM harvest h JOIN batch b ON b.id = h.batch_id WHERE b.name = ";
  static const struct { const char *name; int least, most; } picks[] = {
    { "'Tomatoes, first year'", 20, 80 }, { "'Tomatoes, bay 1'", 12, 60 }, { "'Tomatoes, bay 2'", 0, 0 },
  };
  gint64 last;

  for (gsize i = 0; i < G_N_ELEMENTS (picks); i++)
    {
      g_autofree char *sql = g_strconcat (count_sql, picks[i].name, NULL);

      g_test_message ("%s: %d picks", picks[i].name, (int) fixture_number (store, sql));
      g_assert_cmpint (fixture_number (store, sql), >=, picks[i].least);
      g_assert_cmpint (fixture_number (store, sql), <=, picks[i].most);
    }
  last = fixture_number (store, "SELECT max (h.day) FROM harvest h JOIN batch b ON b.id = h.batch_id"
                                " WHERE b.name = 'Tomatoes, bay 1'");
  g_assert_cmpint (last, >=, today - 4);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM batch WHERE kind = 'crop' AND ended_on IS NULL"), ==, 2);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM usual_month"), ==, 24);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM climate"), >, 380);
  g_assert_cmpint (fixture_number (store, "SELECT max (day) FROM climate"), ==, today - 1);
  g_assert_cmpint (fixture_number (store, "SELECT sum (e.eggs) FROM batch_entry e JOIN batch b ON b.id = e.batch_id"
                                          " WHERE b.name = 'Young hens'"), >, 300);
  /* What the lots of a crop took along came in before. */
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM movement m JOIN lot l ON l.id = m.lot_id"
                                          " JOIN batch b ON b.id = l.batch_id WHERE b.kind = 'crop' AND m.kind = 'made'"
                                          " AND m.cost_cents <= 0"), ==, 0);
}

/* --- eggs, kitchen, money ---------------------------------------------------------- */

static gint64
cents_of (SteadStore *store,
          const char *sql)
{
  g_autofree char *whole = g_strconcat ("SELECT coalesce (sum (", sql, NULL);

  return fixture_number (store, whole);
}

/* No lot was below zero on the evening of any day, and what the hens laid and nobody
 * has collected yet is all that no lot holds. */
static void
assert_eggs (SteadStore *store)
{
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM (SELECT sum (quantity_base) OVER"
                                          " (PARTITION BY lot_id ORDER BY day RANGE UNBOUNDED PRECEDING) AS base"
                                          " FROM movement) WHERE base < -0.000001"), ==, 0);
  g_assert_cmpint (cents_of (store, "h.pieces), 0) FROM harvest h JOIN batch b ON b.id = h.batch_id"
                                    " WHERE b.kind = 'flock'"),
                   ==, cents_of (store, "e.eggs), 0) FROM batch_entry e JOIN batch b ON b.id = e.batch_id WHERE"
                                        " b.kind = 'flock' AND e.day <= (SELECT max (h.day) FROM harvest h"
                                        " WHERE h.batch_id = b.id)"));
  /* None is past its best-by day today. */
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM lot l JOIN item i ON i.id = l.item_id"
                                          " JOIN lot_stock s ON s.lot_id = l.id WHERE i.name = 'Eggs' AND s.base > 0"
                                          " AND l.best_by < (SELECT max (day) FROM climate) + 1"), ==, 0);
  /* A flock's lots carry no more than went into it. */
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM flock f WHERE"
                                          " (SELECT sum (m.cost_cents) FROM lot l JOIN movement m ON m.lot_id = l.id"
                                          "   AND m.kind = 'made' WHERE l.batch_id = f.batch_id) > f.birds_cost_cents"
                                          " - (SELECT sum (cost_cents) FROM movement WHERE batch_id = f.batch_id)"), ==, 0);
}

/* The words of a step lead to a row of the limit tables. */
static void
assert_step (const SteadLimitTable  *table,
             const SteadKitchenStep *step)
{
  const char *food = step->food != NULL ? step->food : "cooked";
  const SteadLimitFact facts[] = {
    { "use", g_str_equal (food, "raw_egg") ? "pooled_or_held" : "hot_holding", 0 },
    { "rule", "food_code", 0 }, { "stage", "total", 0 }, { NULL, NULL, 0 },
  };
  g_autoptr(GPtrArray) rows = NULL;

  if (step->step == NULL)
    return;
  rows = stead_limit_table_list (table, step->step, food, "food_temp", facts);
  g_test_message ("%s of %s", step->step, food);
  g_assert_cmpuint (rows->len, >, 0);
}

static SteadLimitTable *
limits (void)
{
  static const char * const names[] = { "cook", "cool", "hold" };
  g_autoptr(GError) error = NULL;
  SteadLimitTable *table = stead_limit_table_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *file = g_strconcat (names[i], ".csv", NULL);
      g_autofree char *path = g_build_filename (g_getenv ("STEAD_DATA"), "limits", file, NULL);
      g_autoptr(GBytes) csv = NULL;
      char *text;
      gsize length;

      g_assert_true (g_file_get_contents (path, &text, &length, NULL));
      csv = g_bytes_new_take (text, length);
      g_assert_true (stead_limit_table_add_csv (table, names[i], csv, &error));
      g_assert_no_error (error);
    }
  return table;
}

/* Two people counted the kitchen's shelf, and found cartons missing. */
static void
assert_count (SteadStore *store)
{
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM stock_count WHERE person_id <> second_id"), ==, 1);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM stock_count_line WHERE movement_id IS NOT NULL"), ==, 1);
  g_assert_cmpint (fixture_number (store, "SELECT count (DISTINCT place_id) FROM lot"), ==, 2);
}

/* What a batch used is what its lot carries; a finished one is measured at each limit. */
static void
assert_batch (SteadStore            *store,
              const SteadLimitTable *table,
              gint64                 id,
              SteadDay               today)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadKitchen) kitchen = stead_kitchen_repo_get (store, id, &error);
  g_autoptr(SteadHarvest) harvest = NULL;
  g_autoptr(GPtrArray) readings = stead_kitchen_repo_readings (store, id, &error);
  g_autoptr(GPtrArray) people = stead_kitchen_repo_people (store, id, &error);
  gint64 used = 0;

  g_assert_no_error (error);
  g_test_message ("%s", kitchen->batch.name);
  for (guint i = 0; i < kitchen->steps->len; i++)
    assert_step (table, kitchen->steps->pdata[i]);
  g_assert_true (stead_kitchen_repo_used_cents (store, id, &used, &error));
  if (kitchen->harvest_id == 0)
    {
      g_assert_cmpint (kitchen->batch.started_on, >=, today);
      g_assert_cmpint (kitchen->batch.started_on, <, today + 7);
      g_assert_cmpint (used, ==, 0);
      return;
    }
  harvest = stead_harvest_repo_get (store, kitchen->harvest_id, &error);
  g_assert_cmpint (harvest->cost_cents, ==, used);
  g_assert_cmpint (used, >, 0);
  g_assert_cmpfloat_with_epsilon (harvest->quantity_base + harvest->lost_base + harvest->tasted_base,
                                  kitchen->wanted_base, 1e-6);
  g_assert_cmpuint (people->len, ==, 2);
  for (guint i = 0; i < kitchen->steps->len; i++)
    {
      const SteadKitchenStep *step = kitchen->steps->pdata[i];
      guint n = 0;

      for (guint j = 0; j < readings->len; j++)
        n += ((const SteadShown *) readings->pdata[j])->step_id == step->id;
      g_assert_cmpint (step->done_at, !=, STEAD_TIME_NONE);
      g_assert_true (step->step == NULL || n > 0);
    }
}

static void
assert_kitchen (SteadStore *store,
                SteadDay    today)
{
  g_autoptr(SteadLimitTable) table = limits ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) batches = stead_kitchen_repo_list (store, TRUE, &error);
  guint planned = 0;

  g_assert_no_error (error);
  for (guint i = 0; i < batches->len; i++)
    {
      const SteadKitchen *kitchen = batches->pdata[i];

      planned += kitchen->harvest_id == 0;
      assert_batch (store, table, kitchen->batch.id, today);
    }
  g_assert_cmpuint (planned, ==, 1);
  g_assert_cmpuint (batches->len, >=, 6);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM recipe"), ==, 2);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM recipe WHERE ph BETWEEN 3.5 AND 4.6"), ==, 1);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM product p JOIN recipe r ON r.item_id = p.item_id"), ==, 2);
  /* From the hens into the bowls. */
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM movement m JOIN lot l ON l.id = m.lot_id"
                                          " JOIN batch f ON f.id = l.batch_id AND f.kind = 'flock'"
                                          " JOIN batch k ON k.id = m.batch_id AND k.kind = 'kitchen'"), >=, 5);
}

static gint64
balance (SteadStore *store,
         gint64      fund_id,
         SteadDay    today)
{
  g_autoptr(GError) error = NULL;
  gint64 cents = 0;

  g_assert_true (stead_cash_repo_balance (store, 0, fund_id, today, &cents, &error));
  g_assert_no_error (error);
  return cents;
}

/* What the accounts hold is what they opened with and all that moved; each receipt is paid
 * once, but for those that are not due yet; the box is short once, by two dollars. */
static void
assert_cash (SteadStore *store,
             SteadDay    today)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) off = stead_cash_repo_receipts_off (store, &error);
  g_autoptr(GPtrArray) counts = stead_cash_count_repo_list (store, 0, &error);
  guint n_short = 0;

  g_assert_no_error (error);
  g_assert_cmpint (balance (store, STEAD_FUND_ANY, today), ==,
                   cents_of (store, "opening_cents), 0) FROM account") + cents_of (store, "cents), 0) FROM cash_line"));
  /* 120, 250 and 180 dollars are for the pen, 90 came of a pledge; 196.84 are spent. */
  g_assert_cmpint (balance (store, fixture_number (store, "SELECT id FROM fund WHERE name = 'Sheep pen'"), today),
                   ==, 64000 - 19684);
  for (guint i = 0; i < off->len; i++)
    {
      const SteadReceiptPaid *paid = off->pdata[i];

      g_assert_cmpint (paid->paid_cents, ==, 0);
      g_assert_cmpint (paid->day, >=, today - 5);
    }
  for (guint i = 0; i < counts->len; i++)
    {
      const SteadCashCount *count = counts->pdata[i];

      g_assert_false (stead_cash_count_is_open (count));
      g_assert_cmpint (count->first_id, !=, count->second_id);
      /* Those of sale days have their own story. */
      if (stead_cash_count_over_cents (count) == 0 || count->sale_id != 0)
        continue;
      g_assert_cmpint (stead_cash_count_over_cents (count), ==, -200);
      n_short++;
    }
  g_assert_cmpuint (n_short, ==, 1);
  /* Neither the box nor the account was ever overdrawn. */
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM (SELECT a.opening_cents + sum (c.cents) OVER"
                                          " (PARTITION BY c.account_id ORDER BY c.day RANGE UNBOUNDED PRECEDING) AS cents"
                                          " FROM cash_line c JOIN account a ON a.id = c.account_id) WHERE cents < 0"),
                   ==, 0);
  g_assert_cmpint (fixture_number (store, "SELECT count (DISTINCT category) FROM cash_line"), ==, 9);
}

/* What was sold of an item is what the box took for it, at the day's price: of eggs in
 * packs, of all that is weighed as it was. */
static void
assert_sales (SteadStore *store)
{
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM cash_line c JOIN product p ON p.id = c.product_id"
                                          " JOIN price r ON r.product_id = p.id AND r.from_day = (SELECT max (from_day)"
                                          " FROM price WHERE product_id = p.id AND from_day <= c.day)"
                                          " JOIN item i ON i.id = p.item_id WHERE c.category = 'sales'"
                                          " AND i.name IN ('Breakfast bowl', 'Roasted tomato sauce')"
                                          " AND abs (c.cents + (SELECT sum (m.quantity_base) FROM movement m"
                                          " JOIN lot l ON l.id = m.lot_id WHERE l.item_id = i.id AND m.kind = 'sold'"
                                          " AND m.day = c.day) / p.base_per_unit * r.cents) > 0.5"), ==, 0);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM cash_line c JOIN product p ON p.id = c.product_id"
                                          " WHERE c.category = 'sales' AND p.name = 'Hot breakfast bowl'"), >=, 4);
}

/* A year of markets: each is cashed up, what was brought went somewhere, and the box tells. */
static void
assert_markets (SteadStore *store)
{
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM sale_day"), >=, 8);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM sale_day s WHERE NOT EXISTS (SELECT 1 FROM cash_count"
                                          " WHERE sale_id = s.id)"), ==, 1);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM sale_line l JOIN cash_count c ON c.sale_id = l.sale_id"
                                          " WHERE abs (l.planned"
                                          " - (SELECT sum (units) FROM sale_tap WHERE line_id = l.id)"
                                          " - (SELECT coalesce (sum (units), 0) FROM sale_left WHERE line_id = l.id))"
                                          " > 1e-6"), ==, 0);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM cash_line WHERE sale_id IS NOT NULL"
                                          " AND category = 'over_short'"), >=, 4);
}

static void
test_story (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();

  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    {
      SteadDay today = stead_day_new (days[i][0], days[i][1], days[i][2]);
      g_autofree char *name = g_strdup_printf ("%d.steading", (int) i);
      g_autofree char *path = g_build_filename (folder, name, NULL);
      SteadStore *store = make (folder, name, today);
      Farm farm = { .store = store };

      assert_story (store, today);
      assert_bays (store, today);
      assert_eggs (store);
      assert_kitchen (store, today);
      assert_cash (store, today);
      assert_sales (store);
      assert_markets (store);
      assert_count (store);
      g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM receipt WHERE signed_by IS NOT NULL"), >, 30);
      g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM receipt WHERE signed_by IS NULL"), >, 0);
      g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM receipt WHERE is_gift"), ==, 1);
      g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM batch_entry WHERE left_out"), >=, 14);
      g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM price"), ==, 10);
      g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM asset"), ==, 4);
      g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM step"), <=, 60);
      farm_assert_ledger (&farm);
      assert_sound (store, path);
    }
}

/* A farm whose story goes over the clock's own day: no hour of that day is to come. */
static void
test_over_the_clock (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "demo.steading", NULL);
  g_autoptr(GDateTime) now = g_date_time_new_now_local ();
  int year, month, mday;

  g_date_time_get_ymd (now, &year, &month, &mday);
  for (int later = 0; later <= 40; later += 20)
    {
      assert_sound (make (folder, "demo.steading", stead_day_new (year, month, mday) + later), path);
      g_assert_cmpint (g_unlink (path), ==, 0);
    }
}

/* What came last can be undone, up to the hours that an advisor checked. */
static void
test_undo (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autoptr(SteadStore) store = make (folder, "demo.steading", TODAY);
  Farm farm = { .store = store };

  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM step"), >=, 2);
  g_assert_cmpint (farm_assert_undo_to_signed (&farm), >=, 5);
}

/* --- what a visitor does ------------------------------------------------------------ */

static gint64
a_receipt (SteadStore *store,
           gboolean    is_signed)
{
  return fixture_number (store, is_signed
                                ? "SELECT max (r.id) FROM receipt r JOIN receipt_line l ON l.receipt_id = r.id"
                                  " JOIN item i ON i.id = l.item_id WHERE seal IS NOT NULL AND i.kind = 'feed'"
                                : "SELECT max (r.id) FROM receipt r WHERE seal IS NULL");
}

static void
correct (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadReceipt) receipt = stead_receipt_repo_get (farm->store, a_receipt (farm->store, TRUE), &error);
  SteadReceiptLine *line = &g_array_index (receipt->lines, SteadReceiptLine, 0);

  receipt->corrects_id = receipt->id;
  receipt->id = 0;
  line->id = 0;
  line->cost_cents += 333;
  ACT (farm, stead_receipt_repo_save (farm->store, receipt, err));
}

static void
change (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadReceipt) receipt = stead_receipt_repo_get (farm->store, a_receipt (farm->store, FALSE), &error);

  g_array_index (receipt->lines, SteadReceiptLine, 0).cost_cents += 77;
  ACT (farm, stead_receipt_repo_save (farm->store, receipt, err));
}

/* A correction, a change, a count and a deleted day later the file is still sound. */
static void
test_lives_on (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "demo.steading", NULL);
  g_autoptr(SteadStore) store = make (folder, "demo.steading", TODAY);
  Farm farm = { .store = store };
  gint64 lot = fixture_number (store, "SELECT l.id FROM lot l JOIN lot_stock s ON s.lot_id = l.id WHERE base > 20 LIMIT 1");
  gint64 entry = fixture_number (store, "SELECT min (id) FROM batch_entry WHERE feed_kg > 0");

  correct (&farm);
  change (&farm);
  ACT (&farm, stead_lot_repo_adjust (store, lot, STEAD_MOVE_COUNTED, TODAY, -1.5, "count", 0, err));
  ACT (&farm, stead_flock_repo_delete_entry (store, entry, err));
  farm_assert_ledger (&farm);
  g_assert_cmpint (farm_assert_undo_to_signed (&farm), >=, 5);
  assert_sound (g_steal_pointer (&store), path);
}

/* --- descriptions ------------------------------------------------------------------- */

static void
refuse (const char *description,
        const char *words)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "demo.steading", NULL);
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_demo_farm_create (path, description, TODAY, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  farm_assert_says (error->message, words);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

static char *
replaced (const char *text,
          const char *old,
          const char *new)
{
  g_auto(GStrv) parts = g_strsplit (text, old, 2);

  g_assert_cmpuint (g_strv_length (parts), ==, 2);
  return g_strjoinv (new, parts);
}

static void
test_descriptions (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("STEAD_DATA"), "demo", "ember-lake.ini", NULL);
  g_autofree char *text = NULL;
  static const char * const faults[][3] = {
    { "days=548", "days=12", "“days” in [farm]" },
    { "seed=20260118", "seed=x", "x" },
    { "hens=30", "", "“hens” in [flock]" },
    { "unit=lb", "unit=stone", "“unit” in [item" },
    { "role=helper", "role=cook", "“role” in [person Pat O.]" },
    { "price=17.50 | 19.75", "price=17.50", "“price” in [item Layer feed]" },
    { "on=01-18", "on=02-30", "02-30" },
    { "place=Hen house", "place=Barn", "Barn" },
    { "bedding=Pine shavings", "bedding=Sand", "[item Sand]" },
    { "42:4.00:Same", "42 Same", "“prices” in [product Eggs]" },
    { "hen_salvage=1.25", "hen_salvage=12.25", "worth more at the end" },
    { "Eggs:48:ea", "Turnips:48:ea", "[item Turnips]" },
    { "fund=Sheep pen", "fund=Barn", "[fund Barn]" },
    { "opening=3150.00", "opening=", "“opening” in [cash]" },
    { "enterprise=Fish", "enterprise=Ducks", "[enterprise Ducks]" },
    { "corner_post=4=57.80", "corner_post=4", "“receipts” in [build" },
  };

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  refuse ("no key file at all", "cannot be read");
  refuse ("[farm]\n", "“days” in [farm]");
  for (gsize i = 0; i < G_N_ELEMENTS (faults); i++)
    {
      g_autofree char *bad = replaced (text, faults[i][0], faults[i][1]);

      refuse (bad, faults[i][2]);
    }
}

/* The file in data is the one built in. */
static void
test_built_in (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *source = g_build_filename (g_getenv ("STEAD_DATA"), "demo", "ember-lake.ini", NULL);
  g_autofree char *path = g_build_filename (folder, "two.steading", NULL);
  g_autofree char *text = NULL;
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) one = make (folder, "one.steading", TODAY);
  g_autoptr(SteadStore) two = NULL;

  g_assert_true (g_file_get_contents (source, &text, NULL, NULL));
  two = stead_demo_farm_create (path, text, TODAY, &error);
  g_assert_no_error (error);
  first = fixture_dump (one);
  second = fixture_dump (two);
  g_assert_cmpstr (first, ==, second);
  /* Pictures come with it; one of them waits for a consent. */
  g_assert_cmpint (fixture_number (one, "SELECT count (*) FROM shot s JOIN picture p ON p.id = s.picture_id"), ==, 3);
  g_assert_cmpint (fixture_number (one, "SELECT count (DISTINCT s.shot_id) FROM shot_person s WHERE NOT EXISTS"
                                        " (SELECT 1 FROM consent c WHERE c.person_id = s.person_id AND c.what = 'picture')"), ==, 1);
}

static void
test_existing (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "mine.steading", NULL);
  g_autofree char *text = NULL;
  g_autoptr(GError) error = NULL;

  g_assert_true (g_file_set_contents (path, "mine", -1, NULL));
  g_assert_null (stead_demo_farm_create (path, NULL, TODAY, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "mine");
}

/* --- failing ------------------------------------------------------------------------- */

/* The farm is written in memory; what fails before it is put in place leaves no file. */
static gboolean
is_written (SteadStore  *store,
            GError     **error)
{
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_CANCELLED, "enough");
  return FALSE;
}

/* Wherever the writing of the story fails, it is told, and there is no farm of half a story. */
static void
test_no_half_story (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "half.steading", NULL);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;
  guint n;

  stumble_fork (SQLITE_IOERR);
  store = stead_demo_farm_create_with (path, NULL, TODAY, is_written, &error);
  n = stumble_join ("demo farm", store != NULL || g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED), error);
  g_test_message ("%u ways", n);
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_cmpuint (n, >, 200);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/demo/same", test_same);
  g_test_add_func ("/store/demo/story", test_story);
  g_test_add_func ("/store/demo/over-the-clock", test_over_the_clock);
  g_test_add_func ("/store/demo/undo", test_undo);
  g_test_add_func ("/store/demo/lives-on", test_lives_on);
  g_test_add_func ("/store/demo/descriptions", test_descriptions);
  g_test_add_func ("/store/demo/built-in", test_built_in);
  g_test_add_func ("/store/demo/existing", test_existing);
  g_test_add_func ("/store/demo/no-half-story", test_no_half_story);
  return g_test_run ();
}
