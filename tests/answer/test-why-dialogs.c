/* test-why-dialogs.c - what a dialog works out while one types is worked out in its "Why?" with the same
 * figures; they are held to sums done by hand, of invented numbers.
 */
#include "config.h"

#include "answer/stead-bank-why.h"
#include "answer/stead-build-buy-why.h"
#include "answer/stead-cash-count-why.h"
#include "answer/stead-egg-answer.h"
#include "answer/stead-fish-text.h"
#include "answer/stead-store-room-why.h"
#include "core/stead-stock-cost.h"
#include "store/stead-cash-repo.h"
#include "store/stead-sale-tally.h"

#include <string.h>

#include "farm.h"
#include "numbers.h"

/* --- money in a box ------------------------------------------------------------------------ */

static gint64
till_new (Farm *farm, SteadDay opened_on)
{
  SteadAccount till = { .name = (char *) "Till", .kind = STEAD_ACCOUNT_TILL, .opened_on = opened_on, .opening_cents = 2000,
                        .closed_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_account_repo_save (farm->store, &till, &farm_error));
  return till.id;
}

static void
line_new (Farm *farm, gint64 account, SteadDay day, gint64 cents, SteadCashCategory category)
{
  g_autoptr(SteadCashLine) line = stead_cash_line_new ();

  line->account_id = account;
  line->day = day;
  line->cents = cents;
  line->category = category;
  FARM_DO (farm, stead_cash_repo_save (farm->store, line, &farm_error));
}

static void
add_pieces (GArray *pieces, gint64 face_cents, gint64 n)
{
  const SteadCashPiece piece = { face_cents, n };

  g_array_append_val (pieces, piece);
}

/* 20.00 at first and 45.00 the day before; on the day 12.00 in and 7.50 out: 69.50.  In the box lie 12 × 5.00,
 * 9 × 1.00 and 3 × 0.25, which is 69.75: 0.25 over, and 49.75 above a float of 20.00. */
static void
test_count (Farm *farm, gconstpointer data)
{
  gint64 till = till_new (farm, farm->today - 30);
  g_autoptr(SteadCashCount) count = stead_cash_count_new ();
  g_autoptr(GPtrArray) whys = NULL;
  g_autoptr(GError) error = NULL;

  line_new (farm, till, farm->today - 1, 4500, STEAD_CASH_SALES);
  line_new (farm, till, farm->today, 1200, STEAD_CASH_SALES);
  line_new (farm, till, farm->today, -750, STEAD_CASH_SUPPLIES);
  count->account_id = till;
  count->day = farm->today;
  count->float_cents = 2000;
  g_assert_true (stead_cash_repo_balance (farm->store, till, STEAD_FUND_ANY, count->day, &count->expected_cents, &error));
  g_assert_no_error (error);
  add_pieces (count->pieces, 500, 12);
  add_pieces (count->pieces, 100, 9);
  add_pieces (count->pieces, 25, 3);
  whys = stead_cash_count_whys (farm->store, count, TRUE, "USD");
  g_assert_cmpuint (whys->len, ==, 4);
  NUMBERS_ARE (farm_find_why (whys, "What was counted")->worked, 12, 5, 9, 1, 3, 0.25, 69.75);
  NUMBERS_ARE (farm_find_why (whys, "What the book says")->worked, 65, 12, 7.5, 69.5);
  NUMBERS_ARE (farm_find_why (whys, "Over or short")->worked, 69.75, 69.5, 0.25);
  NUMBERS_ARE (farm_find_why (whys, "What can be taken to an account")->worked, 69.75, 20, 49.75);
  g_assert_cmpint (stead_cash_count_over_cents (count), ==, 25);
  g_assert_cmpint (stead_cash_count_deposit_cents (count), ==, 4975);
}

/* The account opens on the day with 20.00 and nothing moves; 18.00 are counted, less than the float of 20.00. */
static void
test_first_day (Farm *farm, gconstpointer data)
{
  gint64 till = till_new (farm, farm->today);
  g_autoptr(SteadCashCount) count = stead_cash_count_new ();
  g_autoptr(GPtrArray) whys = NULL, unknown = NULL;

  count->account_id = till;
  count->day = farm->today;
  count->float_cents = count->expected_cents = 2000;
  add_pieces (count->pieces, 100, 18);
  whys = stead_cash_count_whys (farm->store, count, TRUE, "USD");
  g_assert_cmpuint (whys->len, ==, 3);
  NUMBERS_ARE (farm_find_why (whys, "What the book says")->worked, 0, 20, 0, 0, 20);
  NUMBERS_ARE (farm_find_why (whys, "Over or short")->worked, 18, 20, -2);
  unknown = stead_cash_count_whys (farm->store, count, FALSE, "USD");
  g_assert_cmpuint (unknown->len, ==, 1);
}

/* Of a count that was saved the book is as it was then: 20.00, 1.50 short, whatever came in later. */
static void
test_saved_count (Farm *farm, gconstpointer data)
{
  gint64 till = till_new (farm, farm->today - 3);
  SteadPerson people[] = { { .name = (char *) "Ada", .left_on = STEAD_DAY_NONE }, { .name = (char *) "Ben", .left_on = STEAD_DAY_NONE } };
  g_autoptr(SteadCashCount) count = stead_cash_count_new ();
  g_autoptr(GPtrArray) whys = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (people); i++)
    FARM_DO (farm, stead_person_repo_save (farm->store, &people[i], &farm_error));
  count->account_id = till;
  count->day = farm->today;
  count->first_id = people[0].id;
  count->second_id = people[1].id;
  count->reason = g_strdup ("nobody knows");
  add_pieces (count->pieces, 25, 74);
  FARM_DO (farm, stead_cash_count_repo_save (farm->store, count, &farm_error));
  line_new (farm, till, farm->today, 900, STEAD_CASH_SALES);
  whys = stead_cash_count_whys (farm->store, count, TRUE, "USD");
  NUMBERS_ARE (farm_find_why (whys, "What the book says")->worked, 20);
  NUMBERS_ARE (farm_find_why (whys, "Over or short")->worked, 18.5, 20, -1.5);
}

/* --- the box of a sale ------------------------------------------------------------------------- */

/* A float of 20 × 1.00; 10 dozen brought and 3 sold at 4.50; 5.00 paid out for a table: 28.50 must be there.
 * 5 × 5.00 and 3 × 1.00 are: 0.50 short.  7 dozen are left. */
static void
test_cash_up (Farm *farm, gconstpointer data)
{
  g_autoptr(SteadSale) sale = stead_sale_new ();
  SteadSaleGood *good = stead_sale_good_new ();
  SteadSaleCost *cost = g_new0 (SteadSaleCost, 1);
  g_autoptr(GArray) pieces = g_array_new (FALSE, TRUE, sizeof (SteadCashPiece)), sums = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  g_autoptr(GError) error = NULL;
  SteadSaleTill till;

  sale->name = g_strdup ("Market");
  sale->day = farm->today;
  sale->opens_min = 540;
  sale->closes_min = 780;
  sale->account_id = till_new (farm, farm->today - 30);
  good->product_id = farm->product;
  good->price_cents = 450;
  good->planned = 10;
  g_ptr_array_add (sale->goods, good);
  cost->name = g_strdup ("Table");
  cost->cents = 500;
  cost->paid_cents = -1;
  cost->from_till = TRUE;
  g_ptr_array_add (sale->costs, cost);
  add_pieces (sale->float_pieces, 100, 20);
  FARM_DO (farm, stead_sale_repo_save (farm->store, sale, NULL, &farm_error));
  for (int i = 0; i < 3; i++)
    FARM_DO (farm, stead_sale_tally_add (farm->store, good->id, STEAD_TAP_SOLD, 1, 1774944000 + i, NULL, &farm_error));
  add_pieces (pieces, 500, 5);
  add_pieces (pieces, 100, 3);
  g_assert_true (stead_sale_till (farm->store, sale, NULL, pieces, &till, &error));
  sums = stead_sale_repo_sums (farm->store, sale->id, &error);
  g_assert_no_error (error);
  whys = stead_cash_up_whys (sale, sums, &till, pieces, "USD");
  g_assert_cmpuint (whys->len, ==, 4);
  NUMBERS_ARE (farm_find_why (whys, "What must be in the box")->worked, 20, 13.5, 5, 28.5);
  NUMBERS_ARE (farm_find_why (whys, "What was counted")->worked, 5, 5, 3, 1, 28);
  NUMBERS_ARE (farm_find_why (whys, "Over or short")->worked, 28, 28.5, -0.5);
  NUMBERS_ARE (farm_find_why (whys, "How many are left")->worked, 10, 3, 7);
  g_assert_cmpint (till.over_cents, ==, -50);
}

/* --- a statement ---------------------------------------------------------------------------------- */

/* OpenStax, Principles of Accounting, vol. 1, section 8.6, by tests/reference/cash.csv, money-bank-01a and b. */
static void
test_statement (Farm *farm, gconstpointer data)
{
  const SteadBankCheck check = { .bank_cents = 7704000, .in_transit_cents = 3430000, .outstanding_cents = 962000,
                                 .bank_error_cents = 32000 - 1000000, .book_cents = 3276000,
                                 .additions_cents = 6000000 + 180000, .deductions_cents = 220000 + 24000 + 8000 };
  const SteadBankCheck apart = { .bank_cents = 5000, .book_cents = 5550 };
  g_autoptr(GPtrArray) whys = stead_bank_check_whys (&check, "USD"), differ = stead_bank_check_whys (&apart, "USD");

  g_assert_cmpuint (whys->len, ==, 3);
  NUMBERS_ARE (farm_find_why (whys, "What the statement comes to")->worked, 77040, 34300, 9620, 9680, 92040);
  NUMBERS_ARE (farm_find_why (whys, "What the book comes to")->worked, 32760, 61800, 2520, 92040);
  NUMBERS_ARE (farm_find_why (whys, "How far they are apart")->worked, 92040, 92040, 0);
  NUMBERS_ARE (farm_find_why (differ, "How far they are apart")->worked, 50, 55.5, -5.5);
}

/* --- the store room ------------------------------------------------------------------------------ */

/* Of 50 kg of feed 8 kg were spilled before the day, and 5 kg after it: 42 kg at its end.  40 kg are there. */
static void
test_stock (Farm *farm, gconstpointer data)
{
  g_autoptr(SteadStockCount) count = NULL, none = stead_stock_count_new ();
  g_autoptr(GPtrArray) before = NULL, whys = NULL, nothing = stead_count_sheet_whys (farm->store, none);
  g_autoptr(GError) error = NULL;
  SteadCountLine *line;

  farm_buy (farm, farm->today - 9, farm->feed, 50, 6000, FALSE);
  count = stead_count_repo_sheet (farm->store, STEAD_COUNT_EVERYWHERE, farm->today - 1, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (count->lines->len, ==, 1);
  line = count->lines->pdata[0];
  FARM_DO (farm, stead_lot_repo_adjust (farm->store, line->lot_id, STEAD_MOVE_LOST, farm->today - 2, -8, "spilled", 0, &farm_error));
  FARM_DO (farm, stead_lot_repo_adjust (farm->store, line->lot_id, STEAD_MOVE_LOST, farm->today, -5, "mice", 0, &farm_error));
  g_clear_pointer (&count, stead_stock_count_free);
  count = stead_count_repo_sheet (farm->store, STEAD_COUNT_EVERYWHERE, farm->today - 1, &error);
  g_assert_no_error (error);
  line = count->lines->pdata[0];
  line->unit = stead_unit_by_id ("kg");
  g_assert_cmpfloat_with_epsilon (line->expected_base, stead_stock_on_record (0, 50, 8), 1e-9);
  g_assert_cmpuint (nothing->len, ==, 0);
  before = stead_count_sheet_whys (farm->store, count);
  g_assert_cmpuint (before->len, ==, 1);
  line->counted_base = 40;
  whys = stead_count_sheet_whys (farm->store, count);
  g_assert_cmpuint (whys->len, ==, 2);
  /* What nobody counted yet is not told. */
  g_assert_null (strstr (farm_find_why (before, "What should be there")->worked, "42"));
  g_assert_true (g_str_has_suffix (farm_find_why (whys, "What should be there")->worked, ": 50 kg − 8 kg = 42 kg"));
  g_assert_true (g_str_has_suffix (farm_find_why (whys, "Missing or more")->worked, ": 40 kg − 42 kg = −2 kg"));
  g_assert_cmpfloat_with_epsilon (stead_stock_shrink (line->expected_base, line->counted_base), 2, 1e-9);
}

/* 50 kg less 8 that were spilled, and 30 kg: 72 kg on hand. */
static void
test_on_hand (Farm *farm, gconstpointer data)
{
  const SteadUnit *kg = stead_unit_by_id ("kg");
  g_autoptr(GPtrArray) lots = NULL, whys = NULL, none = stead_on_hand_whys (farm->store, farm->feed, 0, kg);
  g_autoptr(GError) error = NULL;
  SteadStock stock;
  const SteadWhy *why;

  g_assert_cmpuint (none->len, ==, 0);
  farm_buy (farm, farm->today - 9, farm->feed, 50, 6000, FALSE);
  lots = stead_lot_repo_list (farm->store, FALSE, &error);
  FARM_DO (farm, stead_lot_repo_adjust (farm->store, ((SteadLot *) lots->pdata[0])->id, STEAD_MOVE_LOST, farm->today - 2, -8,
                                        "spilled", 0, &farm_error));
  farm_buy (farm, farm->today - 1, farm->feed, 30, 4000, FALSE);
  farm_buy (farm, farm->today - 1, farm->straw, 4, 2000, FALSE);
  g_assert_true (stead_lot_repo_stock (farm->store, farm->feed, farm->today, 28, &stock, &error));
  g_assert_cmpfloat_with_epsilon (stock.on_hand_base, 72, 1e-9);
  whys = stead_on_hand_whys (farm->store, farm->feed, stock.on_hand_base, kg);
  g_assert_cmpuint (whys->len, ==, 1);
  why = farm_find_why (whys, "On hand");
  g_assert_nonnull (strstr (why->worked, " 42 kg + "));
  g_assert_true (g_str_has_suffix (why->worked, " 30 kg = 72 kg"));
}

/* --- a build ------------------------------------------------------------------------------------ */

/* 1,200 screws by the 500: 2.4 boxes, so 3; at $12.00 $36.00, at $14.50 $43.50. */
static void
test_quotes (Farm *farm, gconstpointer data)
{
  SteadBuildQuote low = { .supplier = (char *) "Near yard", .price_cents = 1200 };
  SteadBuildQuote high = { .supplier = (char *) "Far yard", .price_cents = 1450 };
  SteadBuildRow boxes = { .quantity = 1200, .pack = 500, .packs = 3 }, posts = { .quantity = 11, .pack = 1, .packs = 11 };
  g_autoptr(GPtrArray) quotes = g_ptr_array_new (), none = stead_build_quotes_whys (&boxes, quotes, "USD");
  g_autoptr(GPtrArray) whys = NULL, single = NULL;

  g_assert_cmpuint (none->len, ==, 0);
  g_ptr_array_add (quotes, &low);
  g_ptr_array_add (quotes, &high);
  whys = stead_build_quotes_whys (&boxes, quotes, "USD");
  g_assert_cmpuint (whys->len, ==, 2);
  NUMBERS_ARE (farm_find_why (whys, "What all of it costs")->worked, 3, 12, 36, 3, 14.5, 43.5);
  g_assert_true (g_str_has_prefix (farm_find_why (whys, "What all of it costs")->worked, "Near yard: "));
  NUMBERS_ARE (farm_find_why (whys, "How many are bought")->worked, 1200, 500, 2.4, 3);
  single = stead_build_quotes_whys (&posts, quotes, "USD");
  g_assert_cmpuint (single->len, ==, 1);
  NUMBERS_ARE (farm_find_why (single, "What all of it costs")->worked, 11, 12, 132, 11, 14.5, 159.5);
}

/* Six of the 11 posts are still to come, at $9.00; of wire a roll and a half; nobody knows what the gate costs. */
static void
test_buying (Farm *farm, gconstpointer data)
{
  const SteadBuildBuying things[] = { { "Post", 11, 5, 6, 900 }, { "Gate", 1, 0, 1, -1 }, { "Wire", 2, 0, 1.5, 2000 } };
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (SteadBuildBuying));
  g_autoptr(GPtrArray) whys = NULL, none = stead_build_buying_whys (all, "USD");

  g_assert_cmpuint (none->len, ==, 0);
  g_array_append_vals (all, things, G_N_ELEMENTS (things));
  whys = stead_build_buying_whys (all, "USD");
  g_assert_cmpuint (whys->len, ==, 2);
  NUMBERS_ARE (farm_find_why (whys, "What it was planned to cost")->worked, 6, 9, 54, 1.5, 20, 30);
  g_assert_null (strstr (farm_find_why (whys, "What it was planned to cost")->worked, "Gate"));
  NUMBERS_ARE (farm_find_why (whys, "Still to come")->worked, 11, 5, 6);
}

/* --- an egg, and fish ---------------------------------------------------------------------------- */

/* 58 g and 7 mm: 84.1 Haugh units (tests/reference/hens.csv, hu-038; the source's rounding leaves 0.4). */
static void
test_haugh (Farm *farm, gconstpointer data)
{
  g_autoptr(SteadWhy) why = stead_egg_haugh_why (58, 7), nothing = stead_egg_haugh_why (NAN, 7), wrong = stead_egg_haugh_why (200, 0.1);
  g_autofree char *text = stead_egg_haugh_text (58, 7), *untold = stead_egg_haugh_text (NAN, 7);
  g_autofree char *refused = stead_egg_haugh_text (200, 0.1);
  g_autoptr(GArray) numbers = numbers_in (why->worked), shown = numbers_in (text);

  g_assert_cmpuint (numbers->len, ==, 8);
  g_assert_cmpfloat_with_epsilon (g_array_index (numbers, double, 7), 84.1, 0.4);
  g_assert_cmpfloat (g_array_index (numbers, double, 7), ==, g_array_index (shown, double, 0));
  g_assert_cmpstr (nothing->worked, ==, untold);
  g_assert_cmpstr (wrong->worked, ==, refused);
}

static SteadWeighing *
weighing_of (const SteadWeighed *fish, guint n)
{
  SteadWeighing *weighing = stead_weighing_new ();

  weighing->single = g_array_new (FALSE, FALSE, sizeof (SteadWeighed));
  g_array_append_vals (weighing->single, fish, n);
  stead_weighing_take_single (weighing);
  return weighing;
}

/* 100, 140 and 120 g: mean 120 g; sd √((400 + 400) ÷ 2) = 20 g, 17 %; two of 20 cm: 1.25 and 1.75, mean 1.5. */
static void
test_each_fish (Farm *farm, gconstpointer data)
{
  const SteadWeighed fish[] = { { 100, 20 }, { 140, 20 }, { 120, NAN } };
  g_autoptr(SteadWeighing) weighing = weighing_of (fish, G_N_ELEMENTS (fish));
  g_autoptr(GPtrArray) whys = stead_fish_text_sample_whys (weighing, STEAD_UNITS_METRIC);
  g_autofree char *text = stead_fish_text_sample (weighing, STEAD_UNITS_METRIC);

  NUMBERS_ARE (text, 3, 120, 17, 1.5);
  g_assert_cmpuint (whys->len, ==, 3);
  NUMBERS_ARE (farm_find_why (whys, "Mean weight of a fish")->worked, 100, 140, 120, 3, 120);
  NUMBERS_ARE (farm_find_why (whys, "Spread of the sample")->worked, 20, 120, 17);
  NUMBERS_ARE (farm_find_why (whys, "Condition factor")->worked, 1.25, 1.75, 2, 1.5);
}

/* Of many the first twelve are named, and all are counted. */
static void
test_many_fish (Farm *farm, gconstpointer data)
{
  SteadWeighed fish[30];
  g_autoptr(SteadWeighing) weighing = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (fish); i++)
    fish[i] = (SteadWeighed) { 50, NAN };
  weighing = weighing_of (fish, G_N_ELEMENTS (fish));
  whys = stead_fish_text_sample_whys (weighing, STEAD_UNITS_METRIC);
  NUMBERS_ARE (farm_find_why (whys, "Mean weight of a fish")->worked, 50, 50, 50, 50, 50, 50, 50, 50, 50, 50, 50, 50, 30, 50);
}

/* 2.4 kg of 20 fish: 120 g; with 18.5 cm the factor is 1.90 (tests/reference/fish.csv, hu-128). */
static void
test_fish_together (Farm *farm, gconstpointer data)
{
  g_autoptr(SteadWeighing) weighing = stead_weighing_new (), none = stead_weighing_new ();
  g_autoptr(GPtrArray) whys = NULL, rule = stead_fish_text_sample_whys (none, STEAD_UNITS_METRIC);

  g_assert_cmpuint (rule->len, ==, 1);
  weighing->n = 20;
  weighing->total_kg = 2.4;
  weighing->length_cm = 18.5;
  whys = stead_fish_text_sample_whys (weighing, STEAD_UNITS_METRIC);
  g_assert_cmpuint (whys->len, ==, 2);
  NUMBERS_ARE (farm_find_why (whys, "Mean weight of a fish")->worked, 2400, 20, 120);
  NUMBERS_ARE (farm_find_why (whys, "Condition factor")->worked, 100, 120, 18.5, 1.9);
}

#define CASE(name, test) g_test_add ("/answer/why-dialogs/" name, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  CASE ("count", test_count);
  CASE ("first-day", test_first_day);
  CASE ("saved-count", test_saved_count);
  CASE ("cash-up", test_cash_up);
  CASE ("statement", test_statement);
  CASE ("stock", test_stock);
  CASE ("on-hand", test_on_hand);
  CASE ("quotes", test_quotes);
  CASE ("buying", test_buying);
  CASE ("haugh", test_haugh);
  CASE ("each-fish", test_each_fish);
  CASE ("many-fish", test_many_fish);
  CASE ("fish-together", test_fish_together);
  return g_test_run ();
}
