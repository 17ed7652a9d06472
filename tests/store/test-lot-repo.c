/* test-lot-repo.c - the ledger: first in, first out, to the cent, in any order of typing. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"

/* --- worked cases ------------------------------------------------------------- */

/* OpenStax Principles of Accounting vol. 1, section 10.2, first in, first out, perpetual (numbers from
 * memory): 150 at $21, 120 sold, 225 at $27, 180 sold, 210 at $33: cost of goods sold $7,200, on hand $8,955. */
static void
test_fifo (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GPtrArray) uses = NULL;
  g_autoptr(GError) error = NULL;
  SteadStock stock;
  SteadUse *use;

  farm_receipt (farm, farm->carton, TODAY - 60, 150, 150 * 2100, FALSE);
  ACT (farm, stead_lot_repo_use (farm->store, farm->carton, farm->flock, TODAY - 50, 120, 0, err));
  farm_receipt (farm, farm->carton, TODAY - 40, 225, 225 * 2700, FALSE);
  ACT (farm, stead_lot_repo_use (farm->store, farm->carton, farm->flock, TODAY - 30, 180, 0, err));
  farm_receipt (farm, farm->carton, TODAY - 20, 210, 210 * 3300, FALSE);

  uses = stead_lot_repo_uses (farm->store, farm->flock, TODAY - 60, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (uses->len, ==, 1);
  use = uses->pdata[0];
  g_assert_cmpint (use->cost_cents, ==, 720000);
  g_assert_cmpint (use->cost_cents, ==, 120 * 2100 + 30 * 2100 + 150 * 2700);
  g_assert_cmpfloat (use->quantity_base, ==, 300);
  g_assert_true (stead_lot_repo_stock (farm->store, farm->carton, TODAY, 60, &stock, &error));
  g_assert_cmpfloat (stock.on_hand_base, ==, 285);
  g_assert_cmpint (stock.on_hand_cents, ==, 895500);
  g_assert_cmpfloat_with_epsilon (stock.use_per_day_base, 5, 1e-12);
  g_assert_cmpfloat (stock.next_unit_cents, ==, 2700);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* 10 pieces for $1.00 taken by threes: 30 + 30 + 30, and the last takes the 10 left. */
static void
test_last_takes_all (void)
{
  g_autoptr(Farm) farm = farm_new ();

  farm_receipt (farm, farm->carton, TODAY - 9, 7, 100, FALSE);
  for (int i = 0; i < 7; i++)
    ACT (farm, stead_lot_repo_use (farm->store, farm->carton, farm->flock, TODAY - i, 1, 0, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, -100);
  g_assert_cmpint (fixture_number (farm->store, "SELECT min (cost_cents) = -15 AND max (cost_cents) = -14"
                                                " FROM movement WHERE kind = 'used'"), ==, 1);
  farm_assert_ledger (farm);
}

/* --- feed of the log ------------------------------------------------------------ */

static double
uncovered (Farm   *farm,
           double *out_cents)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) uses = stead_lot_repo_uses (farm->store, farm->flock, TODAY - 100, TODAY, &error);
  SteadUse *use;

  g_assert_no_error (error);
  g_assert_cmpuint (uses->len, ==, 1);
  use = uses->pdata[0];
  g_assert_cmpint (use->item_id, ==, farm->feed);
  *out_cents = use->uncovered_cents;
  return use->uncovered_base;
}

static void
test_feed_before_receipt (void)
{
  g_autoptr(Farm) farm = farm_new ();
  double cents;

  farm_entry (farm, TODAY - 20, 20, 3, 0);
  farm_entry (farm, TODAY - 10, 20, 4, 0);
  g_assert_cmpfloat_with_epsilon (uncovered (farm, &cents), 7, 1e-9);
  g_assert_true (isnan (cents));
  /* Came on the day of the second entry: covers that one only; the first is priced by it. */
  farm_receipt (farm, farm->feed, TODAY - 10, 20, 2000, FALSE);
  g_assert_cmpfloat_with_epsilon (uncovered (farm, &cents), 3, 1e-9);
  g_assert_cmpfloat_with_epsilon (cents, 300, 1e-6);
  /* The older bag was only typed in later: 3 + 2 from it, at its own price. */
  farm_receipt (farm, farm->feed, TODAY - 30, 5, 1000, FALSE);
  g_assert_cmpfloat (uncovered (farm, &cents), ==, 0);
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement"
                                                " WHERE entry_id IS NOT NULL"), ==, 1000 + 200);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* Receipts before and after: a day takes the price of the last before. */
static void
test_uncovered_price (void)
{
  g_autoptr(Farm) farm = farm_new ();
  double cents;

  farm_receipt (farm, farm->feed, TODAY - 60, 3, 900, FALSE);
  farm_receipt (farm, farm->feed, TODAY - 50, 2, 200, FALSE);
  farm_receipt (farm, farm->feed, TODAY - 5, 5, 1500, FALSE);
  farm_entry (farm, TODAY - 40, 20, 5, 0);
  farm_entry (farm, TODAY - 20, 20, 2, 0);
  g_assert_cmpfloat_with_epsilon (uncovered (farm, &cents), 2, 1e-9);
  g_assert_cmpfloat_with_epsilon (cents, 200, 1e-6);
}

/* The oldest with something left comes next; when all is gone, the last one's price stands. */
static void
test_next (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GPtrArray) uses = NULL;
  g_autoptr(GError) error = NULL;
  SteadStock stock;
  SteadUse *use;

  g_assert_true (stead_lot_repo_stock (farm->store, farm->straw, TODAY, 7, &stock, &error));
  g_assert_true (isnan (stock.next_unit_cents));
  farm_receipt (farm, farm->straw, TODAY - 30, 10, 1000, FALSE);
  farm_receipt (farm, farm->straw, TODAY - 20, 10, 2000, TRUE);
  farm_receipt (farm, farm->straw, TODAY - 10, 10, 3000, FALSE);
  ACT (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY - 5, 15, 0, err));
  g_assert_true (stead_lot_repo_stock (farm->store, farm->straw, TODAY, 7, &stock, &error));
  g_assert_cmpfloat (stock.next_unit_cents, ==, 200);
  g_assert_true (stock.next_is_gift);
  g_assert_cmpfloat (stock.on_hand_base, ==, 15);
  g_assert_cmpfloat_with_epsilon (stock.use_per_day_base, 15.0 / 7, 1e-12);
  ACT (farm, stead_lot_repo_sell (farm->store, farm->straw, TODAY - 7, 15, NULL, 0, err));
  g_assert_true (stead_lot_repo_stock (farm->store, farm->straw, TODAY, 8, &stock, &error));
  g_assert_cmpfloat (stock.next_unit_cents, ==, 300);
  g_assert_false (stock.next_is_gift);
  g_assert_cmpfloat (stock.on_hand_base, ==, 0);
  g_assert_cmpfloat_with_epsilon (stock.use_per_day_base, 30.0 / 8, 1e-12);
  /* Of what the flock took, 5 were a gift; what was sold is no cost of the flock. */
  uses = stead_lot_repo_uses (farm->store, farm->flock, TODAY - 30, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (uses->len, ==, 1);
  use = uses->pdata[0];
  g_assert_cmpint (use->cost_cents, ==, 2000);
  g_assert_cmpint (use->gift_cents, ==, 1000);
  farm_assert_ledger (farm);
}

static void
test_use_moves (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GPtrArray) moves = NULL;
  g_autoptr(GError) error = NULL;
  const SteadMove *move;

  farm_receipt (farm, farm->feed, TODAY - 30, 5, 1000, TRUE);
  farm_receipt (farm, farm->straw, TODAY - 30, 5, 1000, FALSE);
  farm_entry (farm, TODAY - 20, 20, 2, 0);
  farm_entry (farm, TODAY - 10, 20, 2, 0);
  ACT (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY - 15, 1, 0, err));
  moves = stead_lot_repo_use_moves (farm->store, farm->flock, farm->feed, TODAY - 20, TODAY - 11, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (moves->len, ==, 1);
  move = moves->pdata[0];
  g_assert_cmpint (move->day, ==, TODAY - 20);
  g_assert_cmpint (move->kind, ==, STEAD_MOVE_USED);
  g_assert_cmpfloat (move->quantity_base, ==, -2);
  g_assert_cmpint (move->cost_cents, ==, -400);
  g_assert_true (move->is_gift);
  g_assert_cmpint (move->batch_id, ==, farm->flock);
  g_assert_cmpint (move->receipt_id, ==, 1);
  g_assert_cmpstr (move->item_name, ==, "Layer feed");
  g_assert_true (move->unit == stead_unit_by_id ("lb"));
}

static void
test_entry_changes (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFlockEntry) entry = NULL;
  gint64 id, kept;

  farm_receipt (farm, farm->feed, TODAY - 50, 10, 1000, FALSE);
  farm_receipt (farm, farm->feed, TODAY - 40, 10, 2000, FALSE);
  id = farm_entry (farm, TODAY - 30, 20, 4, 0);
  farm_entry (farm, TODAY - 29, 20, 4, 0);
  kept = fixture_number (farm->store, "SELECT max (id) FROM movement");
  farm_entry (farm, TODAY - 28, 20, 4, 0);
  farm_assert_ledger (farm);

  /* 4 becomes 2: the movements before stay the same rows, the third entry is whole again. */
  entry = stead_flock_repo_get_entry (farm->store, id, &error);
  entry->feed_kg = 2;
  ACT (farm, stead_flock_repo_save_entry (farm->store, entry, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM movement WHERE entry_id IS NOT NULL"), ==, 3);
  g_assert_cmpint (fixture_number (farm->store, "SELECT sum (cost_cents) FROM movement WHERE entry_id IS NOT NULL"), ==, -1000);
  g_assert_cmpint (fixture_number (farm->store, "SELECT max (id) FROM movement WHERE entry_id = 2"), ==, kept);
  g_assert_cmpint (fixture_number (farm->store, "SELECT max (id) FROM movement WHERE entry_id = 1"), ==, kept - 1);
  ACT (farm, stead_flock_repo_delete_entry (farm->store, id + 1, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT sum (cost_cents) FROM movement WHERE entry_id IS NOT NULL"), ==, -600);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* Cents that all entries' feed cost. */
static gint64
fed_cents (Farm *farm)
{
  return fixture_number (farm->store, "SELECT coalesce (-sum (cost_cents), 0) FROM movement"
                                      " WHERE entry_id IS NOT NULL");
}

/* Another day, no feed any more, gone: what comes after is laid anew each time. */
static void
test_entry_moves (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFlockEntry) entry = NULL;
  gint64 id;

  farm_receipt (farm, farm->feed, TODAY - 50, 5, 500, FALSE);
  farm_receipt (farm, farm->feed, TODAY - 20, 5, 1500, FALSE);
  id = farm_entry (farm, TODAY - 30, 20, 4, 0);
  farm_entry (farm, TODAY - 10, 20, 4, 0);
  g_assert_cmpint (fed_cents (farm), ==, 500 + 900);
  entry = stead_flock_repo_get_entry (farm->store, id, &error);
  entry->day = TODAY - 5;      /* now it is the later one */
  ACT (farm, stead_flock_repo_save_entry (farm->store, entry, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE entry_id = 2"), ==, 400);
  g_assert_cmpint (fed_cents (farm), ==, 500 + 900);
  farm_assert_ledger (farm);
  entry->day = TODAY - 60;     /* before any feed came */
  ACT (farm, stead_flock_repo_save_entry (farm->store, entry, err));
  g_assert_cmpint (fed_cents (farm), ==, 400);
  farm_assert_ledger (farm);
  entry->day = TODAY - 30;
  ACT (farm, stead_flock_repo_save_entry (farm->store, entry, err));
  entry->feed_kg = NAN;
  ACT (farm, stead_flock_repo_save_entry (farm->store, entry, err));
  g_assert_cmpint (fed_cents (farm), ==, 400);
  farm_assert_ledger (farm);
  entry->feed_kg = 4;
  ACT (farm, stead_flock_repo_save_entry (farm->store, entry, err));
  ACT (farm, stead_flock_repo_delete_entry (farm->store, id, err));
  g_assert_cmpint (fed_cents (farm), ==, 400);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* 10 came, 8 were taken by hand on the fifth day, a count found 5 more on the eighth: on the
 * third day only 2 may go, though 7 will be there in the end. */
static void
test_least_to_come (void)
{
  g_autoptr(Farm) farm = farm_new ();
  double cents;

  farm_receipt (farm, farm->feed, TODAY - 20, 10, 1000, FALSE);
  ACT (farm, stead_lot_repo_use (farm->store, farm->feed, farm->flock, TODAY - 16, 5, 0, err));
  ACT (farm, stead_lot_repo_use (farm->store, farm->feed, farm->flock, TODAY - 15, 3, 0, err));
  ACT (farm, stead_lot_repo_adjust (farm->store, 1, STEAD_MOVE_COUNTED, TODAY - 12, 5, "found", 0, err));
  farm_entry (farm, TODAY - 17, 20, 6, 0);
  g_assert_cmpfloat_with_epsilon (uncovered (farm, &cents), 4, 1e-9);
  farm_assert_ledger (farm);
  farm_entry (farm, TODAY - 11, 20, 6, 0);
  g_assert_cmpfloat_with_epsilon (uncovered (farm, &cents), 5, 1e-9);
  farm_assert_ledger (farm);
  INVALID (farm, stead_lot_repo_adjust (farm->store, 1, STEAD_MOVE_LOST, TODAY - 18, -3, "mice", 0, err), "holds 4.41 lb");
  farm_assert_undo (farm);
}

/* --- by hand ---------------------------------------------------------------------- */

static void
test_use_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();

  farm_receipt (farm, farm->straw, TODAY - 10, 20 * LB, 900, FALSE);
  INVALID (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY - 11, LB, 0, err), "0 lb of Straw");
  INVALID (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY, 21 * LB, 0, err), "20 lb of Straw");
  INVALID (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY + 1, LB, 0, err), "still to come");
  INVALID (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY, -LB, 0, err), "above zero");
  INVALID (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY, NAN, 0, err), "above zero");
  ACT (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY, 20 * LB, 0, err));
  /* A use further back would leave today short. */
  INVALID (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY - 5, LB, 0, err), "0 lb of Straw");
  farm_assert_ledger (farm);
}

static void
test_adjust (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GPtrArray) lots = NULL;
  g_autoptr(GPtrArray) moves = NULL;
  g_autoptr(GError) error = NULL;
  SteadLot *lot;
  gint64 id;

  farm_receipt (farm, farm->carton, TODAY - 10, 100, 3000, TRUE);
  id = fixture_number (farm->store, "SELECT id FROM lot");
  INVALID (farm, stead_lot_repo_adjust (farm->store, id, STEAD_MOVE_LOST, TODAY, -101, "mice", 0, err), "holds 100");
  INVALID (farm, stead_lot_repo_adjust (farm->store, id, STEAD_MOVE_LOST, TODAY, -1, "  ", 0, err), "reason");
  INVALID (farm, stead_lot_repo_adjust (farm->store, id, STEAD_MOVE_LOST, TODAY, 1, "mice", 0, err), "taken out");
  INVALID (farm, stead_lot_repo_adjust (farm->store, id, STEAD_MOVE_COUNTED, TODAY - 11, 1, "x", 0, err), "came on");
  ACT (farm, stead_lot_repo_adjust (farm->store, id, STEAD_MOVE_LOST, TODAY - 5, -10, "got wet", farm->student, err));
  ACT (farm, stead_lot_repo_adjust (farm->store, id, STEAD_MOVE_COUNTED, TODAY - 3, 10, "behind the shelf", 0, err));
  lots = stead_lot_repo_list (farm->store, FALSE, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (lots->len, ==, 1);
  lot = lots->pdata[0];
  g_assert_cmpfloat (lot->on_hand_base, ==, 100);
  g_assert_cmpint (lot->on_hand_cents, ==, 2700);
  g_assert_true (lot->is_gift);
  g_assert_cmpint (lot->received_cents, ==, 3000);
  g_assert_cmpstr (lot->supplier, ==, "Lakeside Feed & Seed");
  moves = stead_lot_repo_moves (farm->store, id, &error);
  g_assert_cmpuint (moves->len, ==, 3);
  g_assert_cmpstr (((SteadMove *) moves->pdata[1])->reason, ==, "got wet");
  g_assert_cmpint (((SteadMove *) moves->pdata[1])->cost_cents, ==, -300);
  g_assert_cmpint (((SteadMove *) moves->pdata[2])->cost_cents, ==, 0);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* Feed lost before it was fed: the log's later feed makes room, and is short itself. */
static void
test_loss_before_feed (void)
{
  g_autoptr(Farm) farm = farm_new ();
  double cents;

  farm_receipt (farm, farm->feed, TODAY - 20, 10, 1000, FALSE);
  farm_entry (farm, TODAY - 5, 20, 8, 0);
  ACT (farm, stead_lot_repo_adjust (farm->store, 1, STEAD_MOVE_LOST, TODAY - 10, -4, "mice", 0, err));
  g_assert_cmpfloat_with_epsilon (uncovered (farm, &cents), 2, 1e-9);
  g_assert_cmpfloat_with_epsilon (cents, 200, 1e-6);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* --- any order -------------------------------------------------------------------- */

typedef struct
{
  gboolean is_receipt;
  SteadDay day;
  double   base;
  gint64   cents;
} Fact;

static void
enter (Farm       *farm,
       const Fact *fact)
{
  if (fact->is_receipt)
    farm_receipt (farm, farm->feed, fact->day, fact->base, fact->cents, FALSE);
  else
    farm_entry (farm, fact->day, STEAD_COUNT_NONE, fact->base, 0);
}

/* Days differ, so that ids do not matter. */
static void
make_facts (GRand *rand,
            Fact  *facts,
            int    n)
{
  for (int i = 0; i < n; i++)
    {
      facts[i].is_receipt = i % 4 == 0;
      facts[i].day = TODAY - 99 + i * 2;
      facts[i].base = facts[i].is_receipt ? g_rand_int_range (rand, 5, 20) : g_rand_double_range (rand, 0.5, 6);
      facts[i].cents = g_rand_int_range (rand, 0, 3000);
    }
}

static void
shuffle (GRand *rand,
         Fact  *facts,
         int    n)
{
  for (int i = n - 1; i > 0; i--)
    {
      int j = g_rand_int_range (rand, 0, i + 1);
      Fact fact = facts[i];

      facts[i] = facts[j];
      facts[j] = fact;
    }
}

/* What went where at what cost, by day and lot day: no ids. */
static gint64
fingerprint (Farm *farm)
{
  return fixture_number (farm->store,
    "SELECT coalesce (sum ((m.day - 20000) * 1009 * m.cost_cents + (l.day - 20000) * 37 * m.cost_cents), 0)"
    " FROM movement m JOIN lot l ON l.id = m.lot_id");
}

static void
test_any_order (void)
{
  enum { N = 48 };
  GRand *rand = g_rand_new_with_seed (20260303);
  Fact facts[N];

  for (int round = 0; round < 12; round++)
    {
      gint64 wanted = 0;

      make_facts (rand, facts, N);
      for (int order = 0; order < 3; order++)
        {
          g_autoptr(Farm) farm = farm_new ();

          for (int i = 0; i < N; i++)
            enter (farm, &facts[i]);
          farm_assert_ledger (farm);
          if (order == 0)
            wanted = fingerprint (farm);
          g_assert_cmpint (fingerprint (farm), ==, wanted);
          shuffle (rand, facts, N);
        }
    }
  g_rand_free (rand);
}

static void
change_something (Farm  *farm,
                  GRand *rand)
{
  g_autoptr(GError) error = NULL;
  SteadDay day = TODAY - g_rand_int_range (rand, 0, 100);
  double base = g_rand_double_range (rand, 0.1, 8);
  gint64 item = g_rand_boolean (rand) ? farm->feed : farm->straw;
  gint64 lot = fixture_number (farm->store, "SELECT coalesce (max (id), 0) FROM lot");
  gboolean done = TRUE;

  g_assert_true (stead_store_begin (farm->store, "something", &error));
  switch (g_rand_int_range (rand, 0, 4))
    {
    case 0:
      done = stead_lot_repo_use (farm->store, item, farm->flock, day, base, 0, &error);
      break;
    case 1:
      if (lot > 0)
        done = stead_lot_repo_adjust (farm->store, g_rand_int_range (rand, 1, (gint32) lot + 1), STEAD_MOVE_COUNTED, day,
                                      base - 6, "count", 0, &error);
      break;
    case 2:
      done = stead_receipt_repo_delete (farm->store, fixture_number (farm->store,
               "SELECT coalesce (max (id), 0) FROM receipt"), &error);
      break;
    default:
      done = stead_flock_repo_delete_entry (farm->store, fixture_number (farm->store,
               "SELECT coalesce (min (id), 0) FROM batch_entry"), &error);
    }
  if (!done)
    {
      g_assert_true (g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID) ||
                     g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND));
      stead_store_rollback (farm->store);
      return;
    }
  g_assert_true (stead_store_commit (farm->store, &error));
}

/* Whatever is done in whatever order, every rule of the ledger holds after each step. */
static void
test_any_deed (void)
{
  GRand *rand = g_rand_new_with_seed (42);

  for (int round = 0; round < 8; round++)
    {
      g_autoptr(Farm) farm = farm_new ();

      for (int i = 0; i < 60; i++)
        {
          SteadDay day = TODAY - g_rand_int_range (rand, 0, 100);

          if (i % 3 == 0)
            farm_receipt (farm, g_rand_boolean (rand) ? farm->feed : farm->straw, day,
                          g_rand_double_range (rand, 1, 20), g_rand_int_range (rand, 0, 3000), g_rand_boolean (rand));
          else if (i % 3 == 1)
            farm_entry (farm, day, STEAD_COUNT_NONE, g_rand_double_range (rand, 0.1, 6), 0);
          else
            change_something (farm, rand);
          farm_assert_ledger (farm);
        }
      farm_assert_undo (farm);
    }
  g_rand_free (rand);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/lot/fifo", test_fifo);
  g_test_add_func ("/store/lot/last-takes-all", test_last_takes_all);
  g_test_add_func ("/store/lot/feed-before-receipt", test_feed_before_receipt);
  g_test_add_func ("/store/lot/uncovered-price", test_uncovered_price);
  g_test_add_func ("/store/lot/next", test_next);
  g_test_add_func ("/store/lot/use-moves", test_use_moves);
  g_test_add_func ("/store/lot/entry-changes", test_entry_changes);
  g_test_add_func ("/store/lot/entry-moves", test_entry_moves);
  g_test_add_func ("/store/lot/least-to-come", test_least_to_come);
  g_test_add_func ("/store/lot/use-refused", test_use_refused);
  g_test_add_func ("/store/lot/adjust", test_adjust);
  g_test_add_func ("/store/lot/loss-before-feed", test_loss_before_feed);
  g_test_add_func ("/store/lot/any-order", test_any_order);
  g_test_add_func ("/store/lot/any-deed", test_any_deed);
  return g_test_run ();
}
