/* test-sale-repo.c - sale days from their plan to the cash-up.
 *
 * Expected sums are worked out by hand beside each case.
 */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-cash-repo.h"
#include "store/stead-sale-cash-up.h"
#include "store/stead-sale-tally.h"

#define AT 1772532000   /* some second of the day */

typedef struct
{
  Farm   *farm;
  gint64  till, bank;
  gint64  eggs, jars;           /* products; eggs are in lots, jars are not */
  gint64  egg_item;
  gint64  early, late;          /* lots of 120 eggs, that expire one after the other */
  gint64  helper;
} Stall;

static gint64
account_new (Farm *farm, const char *name, SteadAccountKind kind, gint64 cents)
{
  SteadAccount account = { .name = (char *) name, .kind = kind, .opened_on = TODAY - 60, .opening_cents = cents,
                           .closed_on = STEAD_DAY_NONE };

  ACT (farm, stead_account_repo_save (farm->store, &account, err));
  return account.id;
}

static gint64
product_new (Farm *farm, const char *name, SteadPack pack, double base, gint64 item_id, gint64 cents)
{
  g_autoptr(SteadProduct) product = stead_product_new ();

  product->name = g_strdup (name);
  product->pack = pack;
  product->base_per_unit = base;
  product->item_id = item_id;
  ACT (farm, stead_product_repo_save (farm->store, product, err));
  ACT (farm, stead_product_repo_set_price (farm->store, product->id, TODAY - 30, cents, NULL, err));
  return product->id;
}

/* 120 eggs that cost $12.00. */
static gint64
eggs_lot (Farm *farm, gint64 item_id, int days, int keeps)
{
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();

  harvest->batch_id = farm->flock;
  harvest->day = TODAY - days;
  harvest->item_id = item_id;
  harvest->quantity_base = 120;
  harvest->cost_cents = 1200;
  harvest->best_by = TODAY + keeps;
  harvest->pieces = 120;
  ACT (farm, stead_harvest_repo_save (farm->store, harvest, err));
  return harvest->lot_id;
}

static Stall *
stall_new (void)
{
  Stall *stall = g_new0 (Stall, 1);
  SteadPerson helper = { .name = (char *) "Pat O.", .role = STEAD_PERSON_HELPER, .left_on = STEAD_DAY_NONE };

  stall->farm = farm_new ();
  stall->till = account_new (stall->farm, "Till box", STEAD_ACCOUNT_TILL, 2000);
  stall->bank = account_new (stall->farm, "School account", STEAD_ACCOUNT_ACTIVITY, 50000);
  stall->egg_item = farm_item (stall->farm, "Eggs", STEAD_ITEM_PRODUCE, "ea");
  stall->late = eggs_lot (stall->farm, stall->egg_item, 3, 20);
  stall->early = eggs_lot (stall->farm, stall->egg_item, 2, 10);
  stall->eggs = product_new (stall->farm, "Eggs", STEAD_PACK_DOZEN, 12, stall->egg_item, 450);
  stall->jars = product_new (stall->farm, "Sauce", STEAD_PACK_JAR, 1, 0, 800);
  ACT (stall->farm, stead_person_repo_save (stall->farm->store, &helper, err));
  stall->helper = helper.id;
  return stall;
}

static void
stall_free (Stall *stall)
{
  farm_free (stall->farm);
  g_free (stall);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Stall, stall_free)

static void
add_good (SteadSale *sale, gint64 product_id, gint64 cents, double planned)
{
  SteadSaleGood *good = stead_sale_good_new ();

  good->product_id = product_id;
  good->price_cents = cents;
  good->planned = planned;
  g_ptr_array_add (sale->goods, good);
}

static void
add_shift (SteadSale *sale, gint64 person_id, int from, int to)
{
  SteadSaleShift *shift = g_new0 (SteadSaleShift, 1);

  shift->person_id = person_id;
  shift->from_min = from;
  shift->to_min = to;
  shift->duty = g_strdup ("Stall");
  g_ptr_array_add (sale->shifts, shift);
}

static void
add_cost (SteadSale *sale, const char *name, gint64 cents, gboolean from_till)
{
  SteadSaleCost *cost = g_new0 (SteadSaleCost, 1);

  cost->name = g_strdup (name);
  cost->cents = cents;
  cost->paid_cents = -1;
  cost->from_till = from_till;
  g_ptr_array_add (sale->costs, cost);
}

static void
add_piece (GArray *pieces, gint64 face, gint64 n)
{
  SteadCashPiece piece = { .face_cents = face, .pieces = n };

  g_array_append_val (pieces, piece);
}

/* 10 dozen eggs at $4.50, 6 jars at $8.00; float $20.00; $5.00 for a table out of the box. */
static SteadSale *
plan (Stall *stall)
{
  SteadSale *sale = stead_sale_new ();
  SteadSaleBring *bring = g_new0 (SteadSaleBring, 1);

  sale->name = g_strdup (" Winter market ");
  sale->day = TODAY;
  sale->location = g_strdup ("Town hall");
  sale->opens_min = 9 * 60;
  sale->closes_min = 13 * 60;
  sale->account_id = stall->till;
  add_good (sale, stall->eggs, 450, 10);
  add_good (sale, stall->jars, 800, 6);
  add_cost (sale, "Table", 500, TRUE);
  add_cost (sale, "Permit", 1500, FALSE);
  add_shift (sale, stall->farm->student, 9 * 60, 11 * 60);
  add_shift (sale, stall->helper, 9 * 60, 13 * 60);
  add_piece (sale->float_pieces, 500, 2);
  add_piece (sale->float_pieces, 100, 10);
  bring->text = g_strdup ("Awning");
  g_ptr_array_add (sale->bring, bring);
  return sale;
}

/* Neither the sale nor a part of it has an id. */
static gboolean
is_new (const SteadSale *sale)
{
  gint64 ids = sale->id;

  for (guint i = 0; i < sale->goods->len; i++)
    ids |= ((const SteadSaleGood *) sale->goods->pdata[i])->id;
  for (guint i = 0; i < sale->costs->len; i++)
    ids |= ((const SteadSaleCost *) sale->costs->pdata[i])->id;
  for (guint i = 0; i < sale->shifts->len; i++)
    ids |= ((const SteadSaleShift *) sale->shifts->pdata[i])->id;
  for (guint i = 0; i < sale->bring->len; i++)
    ids |= ((const SteadSaleBring *) sale->bring->pdata[i])->id;
  return ids == 0;
}

static SteadSale *
planned (Stall *stall)
{
  SteadSale *sale = plan (stall);
  SteadSale *again;
  g_autoptr(GError) error = NULL;

  ACT_LEAVING (stall->farm, stead_sale_repo_save (stall->farm->store, sale, NULL, err), is_new (sale));
  again = stead_sale_repo_get (stall->farm->store, sale->id, &error);
  g_assert_no_error (error);
  stead_sale_free (sale);
  return again;
}

static gint64
line_of (SteadSale *sale, guint at)
{
  return ((SteadSaleGood *) sale->goods->pdata[at])->id;
}

static gint64
tap (Stall *stall, gint64 line_id, SteadTapKind kind, double units)
{
  gint64 id = 0;

  ACT (stall->farm, stead_sale_tally_add (stall->farm->store, line_id, kind, units, AT, &id, err));
  return id;
}

/* --- the plan --------------------------------------------------------------------------- */

static void
test_round_trip (void)
{
  g_autoptr(Stall) stall = stall_new ();
  g_autoptr(SteadSale) sale = planned (stall);
  SteadSaleGood *eggs = sale->goods->pdata[0];

  g_assert_cmpstr (sale->name, ==, "Winter market");
  g_assert_cmpstr (sale->location, ==, "Town hall");
  g_assert_cmpint (sale->day, ==, TODAY);
  g_assert_cmpint (sale->opens_min, ==, 540);
  g_assert_cmpint (sale->account_id, ==, stall->till);
  g_assert_cmpuint (sale->goods->len, ==, 2);
  g_assert_cmpstr (eggs->name, ==, "Eggs");
  g_assert_cmpint (eggs->key, ==, '1');
  g_assert_cmpfloat (eggs->planned, ==, 10);
  g_assert_true (isnan (eggs->low));
  g_assert_cmpfloat (stead_sale_good_brought (eggs), ==, 10);
  g_assert_cmpint (((SteadSaleGood *) sale->goods->pdata[1])->key, ==, '2');
  g_assert_cmpint (stead_sale_float_cents (sale), ==, 2000);
  g_assert_cmpuint (sale->shifts->len, ==, 2);
  g_assert_cmpuint (sale->costs->len, ==, 2);
  g_assert_cmpuint (sale->bring->len, ==, 1);
  g_assert_cmpint (sale->count_id, ==, 0);
  /* Keys can be exchanged, a line can go and another come. */
  eggs->key = '2';
  ((SteadSaleGood *) sale->goods->pdata[1])->key = '1';
  ACT (stall->farm, stead_sale_repo_save (stall->farm->store, sale, NULL, err));
  g_ptr_array_remove_index (sale->goods, 1);
  ACT (stall->farm, stead_sale_repo_save (stall->farm->store, sale, NULL, err));
  g_assert_cmpint (fixture_number (stall->farm->store, "SELECT count (*) FROM sale_line"), ==, 1);
  farm_assert_undo (stall->farm);
}

#define WRONG(sale, words, where, at) \
  G_STMT_START { \
    SteadSaleFault fault = { 0 }; \
    INVALID (stall->farm, stead_sale_repo_save (stall->farm->store, (sale), &fault, err), words); \
    g_assert_cmpint (fault.part, ==, where); \
    g_assert_cmpuint (fault.row, ==, at); \
  } G_STMT_END

static void
test_refused_plans (void)
{
  g_autoptr(Stall) stall = stall_new ();
  g_autoptr(SteadSale) sale = plan (stall);
  SteadSaleGood *eggs = sale->goods->pdata[0];
  SteadSaleLot lot = { stall->early, 121 };

  sale->closes_min = 8 * 60;
  WRONG (sale, "closes before it opens", STEAD_SALE_PART_HOURS, 0);
  sale->closes_min = 13 * 60;
  /* The same person from 10:30, while the first shift goes on to 11:00. */
  add_shift (sale, stall->farm->student, 10 * 60 + 30, 12 * 60);
  WRONG (sale, "another shift at the same time", STEAD_SALE_PART_SHIFTS, 2);
  ((SteadSaleShift *) sale->shifts->pdata[2])->from_min = 11 * 60;
  /* More of a lot than it holds. */
  g_array_append_val (eggs->lots, lot);
  WRONG (sale, "holds only 120", STEAD_SALE_PART_GOODS, 0);
  g_array_index (eggs->lots, SteadSaleLot, 0).base = 120;
  eggs->low = 5;
  WRONG (sale, "all three", STEAD_SALE_PART_GOODS, 0);
  eggs->likely = 4;
  eggs->high = 9;
  WRONG (sale, "must rise", STEAD_SALE_PART_GOODS, 0);
  eggs->likely = 6;
  add_good (sale, stall->eggs, 450, 1);
  WRONG (sale, "two lines", STEAD_SALE_PART_GOODS, 2);
  g_ptr_array_remove_index (sale->goods, 2);
  ((SteadSaleShift *) sale->shifts->pdata[1])->break_min = 240;
  WRONG (sale, "break", STEAD_SALE_PART_SHIFTS, 1);
  ((SteadSaleShift *) sale->shifts->pdata[1])->break_min = 15;
  ACT (stall->farm, stead_sale_repo_save (stall->farm->store, sale, NULL, err));
  /* Another sale of the same name, and the same helper, on that day. */
  sale->id = 0;
  WRONG (sale, "of this name on that day", STEAD_SALE_PART_NAME, 0);
  g_free (sale->name);
  sale->name = g_strdup ("Bake sale");
  WRONG (sale, "Winter market", STEAD_SALE_PART_SHIFTS, 0);
}

#define SLIP(place, wrong, words, where, at) \
  G_STMT_START { \
    typeof (place) was = place; \
    place = (wrong); \
    WRONG (sale, words, where, at); \
    place = was; \
  } G_STMT_END

static void
test_slips_of_the_day (void)
{
  g_autoptr(Stall) stall = stall_new ();
  g_autoptr(SteadSale) sale = plan (stall);
  SteadSaleShift *shift = sale->shifts->pdata[1];

  SLIP (sale->day, STEAD_DAY_NONE, "Enter the day", STEAD_SALE_PART_DAY, 0);
  SLIP (sale->day, TODAY + 733, "two years ahead", STEAD_SALE_PART_DAY, 0);
  SLIP (sale->opens_min, -1, "as on a clock", STEAD_SALE_PART_HOURS, 0);
  SLIP (sale->opens_min, 1440, "as on a clock", STEAD_SALE_PART_HOURS, 0);
  SLIP (sale->closes_min, 2881, "as on a clock", STEAD_SALE_PART_HOURS, 0);
  SLIP (shift->person_id, 0, "who works", STEAD_SALE_PART_SHIFTS, 1);
  SLIP (shift->from_min, -1, "as on a clock", STEAD_SALE_PART_SHIFTS, 1);
  SLIP (shift->from_min, 1440, "as on a clock", STEAD_SALE_PART_SHIFTS, 1);
  SLIP (shift->to_min, 2881, "as on a clock", STEAD_SALE_PART_SHIFTS, 1);
  SLIP (shift->to_min, shift->from_min, "ends before it begins", STEAD_SALE_PART_SHIFTS, 1);
  SLIP (shift->to_min, shift->from_min + 16 * 60 + 1, "16 hours", STEAD_SALE_PART_SHIFTS, 1);
  SLIP (shift->break_min, -1, "shorter than the shift", STEAD_SALE_PART_SHIFTS, 1);
  ACT (stall->farm, stead_sale_repo_save (stall->farm->store, sale, NULL, err));
}

static void
test_slips_of_goods (void)
{
  g_autoptr(Stall) stall = stall_new ();
  g_autoptr(SteadSale) sale = plan (stall);
  SteadSaleGood *eggs = sale->goods->pdata[0], *jars = sale->goods->pdata[1];
  SteadSaleCost *cost = sale->costs->pdata[0];
  SteadSaleLot nothing = { stall->early, 0 };

  SLIP (jars->product_id, 0, "Choose a product", STEAD_SALE_PART_GOODS, 1);
  SLIP (jars->planned, -1, "0 or more units", STEAD_SALE_PART_GOODS, 1);
  SLIP (jars->planned, NAN, "0 or more units", STEAD_SALE_PART_GOODS, 1);
  SLIP (jars->planned, STEAD_SALE_MOST_UNITS + 1, "0 or more units", STEAD_SALE_PART_GOODS, 1);
  SLIP (jars->brought, -1, "What is brought", STEAD_SALE_PART_GOODS, 1);
  SLIP (jars->cost_cents, -1, "What one costs", STEAD_SALE_PART_GOODS, 1);
  SLIP (jars->cost_cents, 1e15, "What one costs", STEAD_SALE_PART_GOODS, 1);
  SLIP (jars->left_cents, -G_MAXINT64, "too large", STEAD_SALE_PART_GOODS, 1);
  SLIP (jars->price_cents, -1, "Price", STEAD_SALE_PART_GOODS, 1);
  SLIP (jars->missed_cents, -1, "goes without", STEAD_SALE_PART_GOODS, 1);
  SLIP (jars->high, 9, "all three", STEAD_SALE_PART_GOODS, 1);
  SLIP (jars->key, '!', "a digit or a small letter", STEAD_SALE_PART_GOODS, 1);
  eggs->key = 'e';
  SLIP (jars->key, 'e', "same key", STEAD_SALE_PART_GOODS, 1);
  SLIP (cost->cents, -1, "Table", STEAD_SALE_PART_COSTS, 0);
  SLIP (cost->paid_cents, G_MAXINT64, "Table", STEAD_SALE_PART_COSTS, 0);
  g_array_append_val (eggs->lots, nothing);
  WRONG (sale, "above zero for each lot", STEAD_SALE_PART_GOODS, 0);
  g_array_set_size (eggs->lots, 0);
  ACT (stall->farm, stead_sale_repo_save (stall->farm->store, sale, NULL, err));
}

/* Coins that cannot be, and more of everything than one day can have. */
static void
test_too_many (void)
{
  static const SteadCashPiece wrong[] = { { 0, 1 }, { 25, -1 }, { G_MAXINT64, 1 }, { 10000, G_MAXINT64 / 2 } };
  g_autoptr(Stall) stall = stall_new ();
  g_autoptr(SteadSale) sale = plan (stall);
  guint n_pieces = sale->float_pieces->len;

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_array_append_val (sale->float_pieces, wrong[i]);
      WRONG (sale, "coins or notes", STEAD_SALE_PART_FLOAT, 0);
      g_array_set_size (sale->float_pieces, n_pieces);
    }
  while (sale->costs->len <= STEAD_SALE_MOST_ROWS)
    add_cost (sale, "Ice", 1, FALSE);
  WRONG (sale, "Put some together", STEAD_SALE_PART_COSTS, STEAD_SALE_MOST_ROWS);
  g_ptr_array_set_size (sale->costs, 1);
  g_ptr_array_set_size (sale->shifts, 0);
  while (sale->shifts->len <= STEAD_SALE_MOST_ROWS)
    add_shift (sale, stall->helper, 300 + (int) sale->shifts->len, 301 + (int) sale->shifts->len);
  WRONG (sale, "Put some together", STEAD_SALE_PART_SHIFTS, STEAD_SALE_MOST_ROWS);
  g_ptr_array_set_size (sale->shifts, 0);
  while (sale->goods->len <= STEAD_SALE_MOST_GOODS)
    add_good (sale, stall->eggs, 450, 1);
  WRONG (sale, "too many products", STEAD_SALE_PART_GOODS, 0);
}

static void
test_again (void)
{
  g_autoptr(Stall) stall = stall_new ();
  g_autoptr(SteadSale) sale = planned (stall);
  g_autoptr(SteadSale) next = NULL;
  g_autoptr(GError) error = NULL;
  gint64 id = 0;

  ACT (stall->farm, stead_product_repo_set_price (stall->farm->store, stall->eggs, TODAY, 475, NULL, err));
  ACT (stall->farm, stead_sale_repo_again (stall->farm->store, sale->id, TODAY + 7, &id, err));
  next = stead_sale_repo_get (stall->farm->store, id, &error);
  g_assert_no_error (error);
  g_assert_cmpint (next->day, ==, TODAY + 7);
  g_assert_cmpstr (next->location, ==, "Town hall");
  g_assert_cmpuint (next->goods->len, ==, 2);
  g_assert_cmpint (((SteadSaleGood *) next->goods->pdata[0])->price_cents, ==, 475);
  g_assert_cmpint (stead_sale_float_cents (next), ==, 2000);
  g_assert_cmpuint (next->shifts->len, ==, 2);
  g_assert_cmpint (stead_sale_repo_next (stall->farm->store, &error), ==, sale->id);
  INVALID (stall->farm, stead_sale_tally_add (stall->farm->store, line_of (next, 0), STEAD_TAP_SOLD, 1, AT, NULL, err),
           "begins on that day");
  ACT (stall->farm, stead_sale_repo_delete (stall->farm->store, id, err));
  farm_assert_undo (stall->farm);
}

/* --- the tally ----------------------------------------------------------------------------- */

static void
test_tally (void)
{
  g_autoptr(Stall) stall = stall_new ();
  g_autoptr(SteadSale) sale = planned (stall);
  g_autoptr(GError) error = NULL;
  g_autoptr(GArray) sums = NULL;
  g_autoptr(GArray) prices = NULL;
  SteadStore *store = stall->farm->store;
  gint64 eggs = line_of (sale, 0), wrong;
  const SteadSaleSum *sum;

  tap (stall, eggs, STEAD_TAP_SOLD, 2);
  wrong = tap (stall, eggs, STEAD_TAP_SOLD, 1);
  tap (stall, eggs, STEAD_TAP_SAMPLE, 0.5);
  g_assert_cmpint (stead_sale_tally_last (store, sale->id, &error), >, wrong);
  ACT (stall->farm, stead_sale_tally_take_back (store, wrong, AT + 1, err));
  INVALID (stall->farm, stead_sale_tally_take_back (store, wrong, AT + 1, err), "taken back already");
  /* Rain: from now on $4.00.  2 x 4.50 + 3 x 4.00 = 21.00. */
  ACT (stall->farm, stead_sale_tally_set_price (store, eggs, 400, AT + 2, err));
  tap (stall, eggs, STEAD_TAP_SOLD, 3);
  prices = stead_sale_tally_prices (store, sale->id, &error);
  g_assert_cmpuint (prices->len, ==, 1);
  sums = stead_sale_repo_sums (store, sale->id, &error);
  g_assert_no_error (error);
  sum = stead_sale_sums_find (sums, eggs);
  g_assert_cmpfloat (sum->sold, ==, 5);
  g_assert_cmpfloat (sum->samples, ==, 0.5);
  g_assert_cmpint (sum->takings_cents, ==, 2100);
  /* 5.5 of 10 are gone: 4.5 are left. */
  INVALID (stall->farm, stead_sale_tally_add (store, eggs, STEAD_TAP_SOLD, 5, AT, NULL, err), "all that was brought");
  INVALID (stall->farm, stead_sale_tally_set_brought (store, eggs, 5, err), "more than that is tallied");
  ACT (stall->farm, stead_sale_tally_set_brought (store, eggs, 12, err));
  tap (stall, eggs, STEAD_TAP_SOLD, 5);
  INVALID (stall->farm, stead_sale_tally_add (store, eggs, STEAD_TAP_SOLD, 0, AT, NULL, err), "above zero");
  INVALID (stall->farm, stead_sale_repo_delete (store, sale->id, err), "it stays");
  g_ptr_array_remove_index (sale->goods, 0);
  INVALID (stall->farm, stead_sale_repo_save (store, sale, NULL, err), "tallied already");
  farm_assert_undo (stall->farm);
}

static void
test_orders (void)
{
  g_autoptr(Stall) stall = stall_new ();
  g_autoptr(SteadSale) sale = planned (stall);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) orders = NULL;
  g_autoptr(GArray) sums = NULL;
  SteadStore *store = stall->farm->store;
  SteadSaleOrder order = { .sale_id = sale->id, .line_id = line_of (sale, 1), .who = (char *) "Bakery", .units = 2,
                           .paid = TRUE };
  SteadSaleTill till;

  ACT (stall->farm, stead_sale_order_save (store, &order, err));
  ACT (stall->farm, stead_sale_order_collect (store, order.id, AT, err));
  INVALID (stall->farm, stead_sale_order_collect (store, order.id, AT, err), "was collected");
  orders = stead_sale_order_list (store, sale->id, &error);
  g_assert_cmpuint (orders->len, ==, 1);
  g_assert_cmpint (((SteadSaleOrder *) orders->pdata[0])->tap_id, !=, 0);
  /* Two jars were paid before: they are sold, but their $16.00 is not in the box. */
  sums = stead_sale_repo_sums (store, sale->id, &error);
  g_assert_cmpint (stead_sale_sums_find (sums, order.line_id)->takings_cents, ==, 1600);
  g_assert_true (stead_sale_till (store, sale, NULL, NULL, &till, &error));
  g_assert_cmpint (till.takings_cents, ==, 0);
  g_assert_cmpint (till.ahead_cents, ==, 1600);
  g_assert_cmpint (till.expected_cents, ==, 1500);   /* float 20.00 - table 5.00 */
  ACT (stall->farm, stead_sale_tally_take_back (store, ((SteadSaleOrder *) orders->pdata[0])->tap_id, AT, err));
  ACT (stall->farm, stead_sale_order_delete (store, order.id, err));
  farm_assert_undo (stall->farm);
}

/* --- the cash-up ------------------------------------------------------------------------------ */

static void
add_left (SteadSaleCashUp *up, gint64 line_id, SteadLeftPlace goes_to, double units, const char *reason)
{
  SteadSaleLeft *left = g_new0 (SteadSaleLeft, 1);

  left->line_id = line_id;
  left->goes_to = goes_to;
  left->units = units;
  left->reason = g_strdup (reason);
  g_ptr_array_add (up->lefts, left);
}

/* 7 dozen and 4 jars sold: 31.50 + 32.00 = 63.50; one dozen given, half a dozen spoiled. */
static void
sell (Stall *stall, SteadSale *sale)
{
  for (int i = 0; i < 7; i++)
    tap (stall, line_of (sale, 0), STEAD_TAP_SOLD, 1);
  tap (stall, line_of (sale, 0), STEAD_TAP_GIVEN, 1);
  tap (stall, line_of (sale, 0), STEAD_TAP_SPOILED, 0.5);
  tap (stall, line_of (sale, 1), STEAD_TAP_SOLD, 4);
}

/* Float 20.00 + 63.50 - table 5.00 = 78.50 must be there; 76.50 is: $2.00 short. */
static SteadSaleCashUp *
counted (Stall *stall, SteadSale *sale)
{
  SteadSaleCashUp *up = stead_sale_cash_up_new ();
  SteadSaleShift *shift = sale->shifts->pdata[0];

  up->sale_id = sale->id;
  add_piece (up->pieces, 2000, 3);
  add_piece (up->pieces, 500, 3);
  add_piece (up->pieces, 50, 3);
  up->first_id = stall->farm->student;
  up->second_id = stall->farm->advisor;
  up->reason = g_strdup ("Wrong change, likely");
  up->keep_cents = 2000;
  up->deposit_account = stall->bank;
  up->deposit_slip = g_strdup ("17");
  up->at = AT + 3600;
  add_left (up, line_of (sale, 0), STEAD_LEFT_STORE, 1, NULL);
  add_left (up, line_of (sale, 0), STEAD_LEFT_WASTE, 0.5, "Cracked");
  add_left (up, line_of (sale, 1), STEAD_LEFT_KITCHEN, 2, NULL);
  g_array_append_val (up->shift_ids, shift->id);
  return up;
}

static gint64
balance (Stall *stall, gint64 account)
{
  gint64 cents = 0;
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_cash_repo_balance (stall->farm->store, account, STEAD_FUND_ANY, TODAY, &cents, &error));
  return cents;
}

static double
on_hand (Stall *stall, gint64 lot_id)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadLot) lot = stead_lot_repo_get (stall->farm->store, lot_id, &error);

  return lot->on_hand_base;
}

static void
assert_sound (Stall *stall)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "a.steading", NULL);
  g_autoptr(GPtrArray) found = NULL;

  g_assert_true (stead_store_save_copy (stall->farm->store, path, NULL, &error));
  found = stead_store_verify (path, NULL, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < found->len; i++)
    g_test_message ("%s", (char *) found->pdata[i]);
  g_assert_cmpuint (found->len, ==, 0);
}

static void
test_cash_up (void)
{
  g_autoptr(Stall) stall = stall_new ();
  g_autoptr(SteadSale) sale = planned (stall);
  g_autoptr(SteadSaleCashUp) up = NULL;
  g_autoptr(SteadSale) after = NULL;
  g_autoptr(GPtrArray) hours = NULL;
  g_autoptr(GArray) sums = NULL;
  g_autoptr(GError) error = NULL;
  SteadStore *store = stall->farm->store;
  const SteadSaleSum *eggs;

  sell (stall, sale);
  up = counted (stall, sale);
  ACT (stall->farm, stead_sale_cash_up_post (store, up, NULL, err));
  farm_assert_ledger (stall->farm);
  /* Till: 20.00 stays.  School account: 500.00 + 56.50. */
  g_assert_cmpint (balance (stall, stall->till), ==, 2000);
  g_assert_cmpint (balance (stall, stall->bank), ==, 55650);
  g_assert_cmpint (fixture_number (store, "SELECT sum (cents) FROM cash_line WHERE category = 'sales'"), ==, 6350);
  g_assert_cmpint (fixture_number (store, "SELECT sum (cents) FROM cash_line WHERE category = 'over_short'"), ==, -200);
  g_assert_cmpint (fixture_number (store, "SELECT sum (cents) FROM cash_line WHERE category = 'fees'"), ==, -500);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM cash_line WHERE sale_id IS NOT NULL"), ==, 4);
  /* 84 sold, 12 given, 6 + 6 lost: 108 of the eggs that expire first; 1 dozen came back. */
  g_assert_cmpfloat (on_hand (stall, stall->early), ==, 12);
  g_assert_cmpfloat (on_hand (stall, stall->late), ==, 120);
  sums = stead_sale_repo_sums (store, sale->id, &error);
  eggs = stead_sale_sums_find (sums, line_of (sale, 0));
  /* 10 cents an egg: 84 sold cost 8.40, 24 given or lost 2.40. */
  g_assert_cmpint (eggs->sold_cents, ==, 840);
  g_assert_cmpint (eggs->lost_cents, ==, 240);
  g_assert_cmpfloat (eggs->to_store, ==, 1);
  g_assert_cmpfloat (stead_sale_sum_tallied (eggs) + stead_sale_sum_left (eggs), ==, 10);
  /* Only the shift that was accepted became hours: 2 h. */
  hours = stead_work_repo_of_sale (store, sale->id, &error);
  g_assert_cmpuint (hours->len, ==, 1);
  g_assert_cmpfloat (((SteadWorkSpan *) hours->pdata[0])->minutes, ==, 120);
  after = stead_sale_repo_get (store, sale->id, &error);
  g_assert_cmpint (after->count_id, !=, 0);
  g_assert_cmpint (after->closed_at, ==, AT + 3600);
  assert_sound (stall);
  /* Once only; and nothing more is tallied. */
  INVALID (stall->farm, stead_sale_cash_up_post (store, up, NULL, err), "counted once");
  INVALID (stall->farm, stead_sale_tally_add (store, line_of (sale, 1), STEAD_TAP_SOLD, 1, AT, NULL, err), "counted once");
  INVALID (stall->farm, stead_cash_count_repo_delete (store, after->count_id, err), "closed a sale");
  farm_assert_undo (stall->farm);
}

#define NOT_UP(words, where) \
  G_STMT_START { \
    SteadCashUpFault fault = { 0 }; \
    INVALID (stall->farm, stead_sale_cash_up_post (stall->farm->store, up, &fault, err), words); \
    g_assert_cmpint (fault.part, ==, where); \
  } G_STMT_END

static void
test_refused_cash_up (void)
{
  g_autoptr(Stall) stall = stall_new ();
  g_autoptr(SteadSale) sale = planned (stall);
  g_autoptr(SteadSaleCashUp) up = NULL;
  SteadSaleLeft *left;

  sell (stall, sale);
  up = counted (stall, sale);
  g_clear_pointer (&up->reason, g_free);
  NOT_UP ("$2.00 short", STEAD_CASH_UP_PART_REASON);
  up->reason = g_strdup ("Wrong change");
  up->second_id = up->first_id;
  NOT_UP ("somebody else", STEAD_CASH_UP_PART_PEOPLE);
  up->second_id = stall->farm->advisor;
  left = up->lefts->pdata[0];
  left->units = 0.5;
  NOT_UP ("0.5 are neither tallied nor left over", STEAD_CASH_UP_PART_LEFTS);
  left->units = 2;
  NOT_UP ("1 more are tallied", STEAD_CASH_UP_PART_LEFTS);
  left->units = 1;
  up->keep_cents = 9000;
  NOT_UP ("More cannot stay", STEAD_CASH_UP_PART_DEPOSIT);
  up->keep_cents = 2000;
  /* The cash book has 25.00 in the box, not 20.00. */
  {
    g_autoptr(SteadCashLine) line = stead_cash_line_new ();

    line->account_id = stall->till;
    line->day = TODAY - 1;
    line->cents = 500;
    line->category = STEAD_CASH_PUT_IN;
    ACT (stall->farm, stead_cash_repo_save (stall->farm->store, line, err));
  }
  NOT_UP ("there was $25.00 in the box", STEAD_CASH_UP_PART_FLOAT);
  up->float_account = stall->bank;
  ACT (stall->farm, stead_sale_cash_up_post (stall->farm->store, up, NULL, err));
  /* 500.00 + 5.00 + 56.50. */
  g_assert_cmpint (balance (stall, stall->bank), ==, 56150);
  assert_sound (stall);
}

/* Goods come out of the lots of the plan, and no more than there is. */
static void
test_lots (void)
{
  g_autoptr(Stall) stall = stall_new ();
  g_autoptr(SteadSale) sale = planned (stall);
  g_autoptr(SteadSaleCashUp) up = NULL;
  SteadSaleLot lot = { stall->late, 60 };

  g_array_append_val (((SteadSaleGood *) sale->goods->pdata[0])->lots, lot);
  ACT (stall->farm, stead_sale_repo_save (stall->farm->store, sale, NULL, err));
  sell (stall, sale);
  up = counted (stall, sale);
  ACT (stall->farm, stead_lot_repo_adjust (stall->farm->store, stall->early, STEAD_MOVE_LOST, TODAY, -100, "Fell", 0, err));
  ACT (stall->farm, stead_sale_cash_up_post (stall->farm->store, up, NULL, err));
  /* 60 of the late lot as planned, then all 20 of the early one, then 28 more of the late one. */
  g_assert_cmpfloat (on_hand (stall, stall->late), ==, 32);
  g_assert_cmpfloat (on_hand (stall, stall->early), ==, 0);
  assert_sound (stall);
  g_assert_true (stead_store_undo (stall->farm->store, NULL));
  ACT (stall->farm, stead_lot_repo_adjust (stall->farm->store, stall->late, STEAD_MOVE_LOST, TODAY, -60, "Fell", 0, err));
  NOT_UP ("the store room lacks 28", STEAD_CASH_UP_PART_LEFTS);
}

/* The check of a file sees money and units that do not agree. */
static void
test_verify_sees (void)
{
  static const char * const harms[] = {
    "UPDATE cash_line SET cents = cents + 100 WHERE category = 'sales' AND product_id = 1",
    "UPDATE sale_tap SET price_cents = 1 WHERE id = 1",
    "UPDATE sale_left SET units = 3 WHERE goes_to = 'kitchen'",
    "UPDATE movement SET quantity_base = quantity_base - 1 WHERE sale_id IS NOT NULL AND kind = 'sold'",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (harms); i++)
    {
      g_autoptr(Stall) stall = stall_new ();
      g_autoptr(SteadSale) sale = planned (stall);
      g_autoptr(SteadSaleCashUp) up = NULL;
      g_autoptr(GError) error = NULL;
      g_autoptr(GPtrArray) found = NULL;
      g_autofree char *folder = fixture_folder ();
      g_autofree char *path = g_build_filename (folder, "a.steading", NULL);

      sell (stall, sale);
      up = counted (stall, sale);
      ACT (stall->farm, stead_sale_cash_up_post (stall->farm->store, up, NULL, err));
      fixture_run (stall->farm->store, harms[i]);
      g_assert_true (stead_store_save_copy (stall->farm->store, path, NULL, &error));
      found = stead_store_verify (path, NULL, &error);
      g_assert_no_error (error);
      g_test_message ("%s", harms[i]);
      g_assert_cmpuint (found->len, >, 0);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/sale-repo/round-trip", test_round_trip);
  g_test_add_func ("/store/sale-repo/refused-plans", test_refused_plans);
  g_test_add_func ("/store/sale-repo/slips-of-the-day", test_slips_of_the_day);
  g_test_add_func ("/store/sale-repo/slips-of-goods", test_slips_of_goods);
  g_test_add_func ("/store/sale-repo/too-many", test_too_many);
  g_test_add_func ("/store/sale-repo/again", test_again);
  g_test_add_func ("/store/sale-repo/tally", test_tally);
  g_test_add_func ("/store/sale-repo/orders", test_orders);
  g_test_add_func ("/store/sale-repo/cash-up", test_cash_up);
  g_test_add_func ("/store/sale-repo/refused-cash-up", test_refused_cash_up);
  g_test_add_func ("/store/sale-repo/lots", test_lots);
  g_test_add_func ("/store/sale-repo/verify-sees", test_verify_sees);
  return g_test_run ();
}
