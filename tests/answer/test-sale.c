/* test-sale.c - sale days: the plan, the stall, the result and the season, worked out by hand.
 *
 * The triangle of 12, 20 and 32 has the mean 64 / 3; 24 are not enough with the chance
 * (32 - 24)² / ((32 - 12) (32 - 20)) = 64 / 240.
 */
#include "config.h"

#include "farm.h"
#include "numbers.h"

#include "answer/stead-build-path.h"
#include "answer/stead-sale-lots.h"
#include "answer/stead-sale-result-answer.h"
#include "answer/stead-sale-tally-answer.h"
#include "answer/stead-season-answer.h"
#include "core/stead-money.h"
#include "store/stead-cash-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define AT 1774944000

typedef struct
{
  gint64 till, bank, one, two;
} Money;

static gint64
account_new (Farm *farm, const char *name, SteadAccountKind kind, gint64 cents)
{
  SteadAccount account = { .name = (char *) name, .kind = kind, .opened_on = farm->today - 300, .opening_cents = cents,
                           .closed_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_account_repo_save (farm->store, &account, &farm_error));
  return account.id;
}

static gint64
person_new (Farm *farm, const char *name)
{
  SteadPerson person = { .name = (char *) name, .role = STEAD_PERSON_STUDENT, .left_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_person_repo_save (farm->store, &person, &farm_error));
  return person.id;
}

static Money
money_new (Farm *farm)
{
  return (Money) { account_new (farm, "Till", STEAD_ACCOUNT_TILL, 2000),
                   account_new (farm, "School", STEAD_ACCOUNT_ACTIVITY, 0), person_new (farm, "Ada B."),
                   person_new (farm, "Ben C.") };
}

/* @planned dozens at $4.50 that cost $2.00 each; a table for $10.00; four hours. */
static SteadSale *
sale_new (Farm *farm, const Money *money, SteadDay day, double planned)
{
  SteadSale *sale = stead_sale_new ();
  SteadSaleGood *good = stead_sale_good_new ();
  SteadSaleCost *cost = g_new0 (SteadSaleCost, 1);
  SteadCashPiece piece = { .face_cents = 100, .pieces = 20 };

  sale->name = g_strdup ("Market");
  sale->location = g_strdup ("Hall");
  sale->day = day;
  sale->opens_min = 540;
  sale->closes_min = 780;
  sale->account_id = money->till;
  good->product_id = farm->product;
  good->price_cents = 450;
  good->planned = planned;
  good->cost_cents = 200;
  g_ptr_array_add (sale->goods, good);
  cost->name = g_strdup ("Table");
  cost->cents = 1000;
  cost->paid_cents = -1;
  g_ptr_array_add (sale->costs, cost);
  g_array_append_val (sale->float_pieces, piece);
  FARM_DO (farm, stead_sale_repo_save (farm->store, sale, NULL, &farm_error));
  return sale;
}

/* @sold dozens, the rest kept; @over cents too much in the box. */
static void
hold (Farm *farm, const Money *money, SteadSale *sale, int sold, gint64 over)
{
  SteadSaleGood *good = sale->goods->pdata[0];
  g_autoptr(SteadSaleCashUp) up = stead_sale_cash_up_new ();
  SteadCashPiece piece = { .face_cents = 2000 + sold * 450 + over, .pieces = 1 };

  for (int i = 0; i < sold; i++)
    FARM_DO (farm, stead_sale_tally_add (farm->store, good->id, STEAD_TAP_SOLD, 1, AT + i, NULL, &farm_error));
  up->sale_id = sale->id;
  g_array_append_val (up->pieces, piece);
  up->first_id = money->one;
  up->second_id = money->two;
  up->reason = over != 0 ? g_strdup ("Nobody knows") : NULL;
  up->keep_cents = 2000;
  up->deposit_account = money->bank;
  up->at = AT + 9999;
  if (sold < good->planned)
    {
      SteadSaleLeft *left = g_new0 (SteadSaleLeft, 1);

      left->line_id = good->id;
      left->goes_to = STEAD_LEFT_KITCHEN;
      left->units = good->planned - sold;
      g_ptr_array_add (up->lefts, left);
    }
  FARM_DO (farm, stead_sale_cash_up_post (farm->store, up, NULL, &farm_error));
}

/* --- the plan ------------------------------------------------------------------------------ */

static void
test_plan (Farm *farm, gconstpointer data)
{
  Money money = money_new (farm);
  g_autoptr(SteadSale) sale = sale_new (farm, &money, farm->today + 4, 24);
  SteadSaleGood *good = sale->goods->pdata[0];
  g_autoptr(SteadSaleAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *text = NULL;
  const SteadSaleLineAnswer *line;
  SteadOrderOnce order;

  good->low = 12;
  good->likely = 20;
  good->high = 32;
  good->left_cents = 100;
  FARM_DO (farm, stead_sale_repo_save (farm->store, sale, NULL, &farm_error));
  answer = stead_sale_answer_new (farm->store, sale->id, &error);
  g_assert_no_error (error);
  line = answer->lines->pdata[0];
  g_assert_true (line->has_demand);
  g_assert_cmpuint (line->n_days, ==, 0);
  g_assert_cmpfloat_with_epsilon (line->demand_units, 64.0 / 3, 1e-9);
  g_assert_cmpfloat_with_epsilon (line->sold_out_frac, 64.0 / 240, 1e-9);
  /* Beyond 24: the integral of (32 - x)² / 240 from 24 to 32 is 512 / 720. */
  g_assert_cmpfloat_with_epsilon (line->missed_units, 512.0 / 720, 1e-9);
  g_assert_cmpfloat_with_epsilon (line->left_units, 24 - 64.0 / 3 + 512.0 / 720, 1e-9);
  order = (SteadOrderOnce) { .demand = line->demand, .short_cents = 450 - line->unit_cents,
                             .over_cents = line->unit_cents - 100 };
  g_assert_cmpfloat_with_epsilon (line->ratio, (450 - line->unit_cents) / 350, 1e-9);
  g_assert_cmpfloat (line->best_units, ==, round (stead_order_once_quantity (&order)));
  g_assert_cmpint (answer->full_cents, ==, 24 * 450);
  g_assert_cmpint (answer->fixed_cents, ==, 1000);
  g_assert_cmpfloat_with_epsilon (answer->even_cents, 1000 * 450 / (450 - line->unit_cents), 1e-6);
  g_assert_true (answer->has_band);
  g_assert_cmpfloat (answer->profit.low, <, answer->profit.likely);
  g_assert_cmpfloat (answer->profit.likely, <, answer->profit.high);
  text = stead_words_plain (answer->sentence);
  NUMBERS_ARE (text, (double) stead_money_round (answer->profit.likely) / 100, 8, 10,
               (double) stead_money_round (answer->profit.low) / 100, (double) stead_money_round (answer->profit.high) / 100,
               round (100 * answer->loss_frac));
  NUMBERS_ARE (line->text, 21, 27, 3, line->best_units, round (100 * line->ratio));
}

/* Each figure of the plan can be asked why; worked on a product of which one costs $2.00. */
static void
test_whys (Farm *farm, gconstpointer data)
{
  Money money = money_new (farm);
  g_autoptr(SteadSale) sale = sale_new (farm, &money, farm->today + 4, 24);
  SteadSaleGood *good = sale->goods->pdata[0];
  g_autoptr(SteadSaleAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  g_autoptr(GError) error = NULL;
  SteadSaleLineAnswer *line;
  const SteadWhy *best, *chance;

  good->low = 12;
  good->likely = 20;
  good->high = 32;
  good->left_cents = 100;
  good->missed_cents = 50;
  FARM_DO (farm, stead_sale_repo_save (farm->store, sale, NULL, &farm_error));
  answer = stead_sale_answer_new (farm->store, sale->id, &error);
  g_assert_no_error (error);
  line = answer->lines->pdata[0];
  line->unit_cents = 200;
  line->ratio = 0.75;
  line->best_units = 24;
  whys = stead_sale_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 4);
  best = whys->pdata[0];
  chance = whys->pdata[1];
  g_assert_nonnull (strstr (best->title, line->good->name));
  /* One too few: 4.50 - 2.00 + 0.50 = 3.00; one too many: 2.00 - 1.00; 3 / (3 + 1) = 75 %. */
  NUMBERS_ARE (best->worked, 4.5, 2, 0.5, 3, 2, 1, 1, 3, 3, 1, 75, 12, 20, 32, 21.3, 75, 24);
  /* 64 / 240 = 26.7 %; 24 - 21.33 + 0.711 = 3.378. */
  NUMBERS_ARE (chance->worked, 12, 20, 32, 21.3, 24, 26.7, 24, 21.3, 0.711, 3.38);
  for (guint i = 0; i < whys->len; i++)
    g_assert_cmpuint (strlen (((const SteadWhy *) whys->pdata[i])->source), >, 10);
}

/* 50 kg that keep 20 days, 100 kg that keep 3, 30 kg that keep 9. */
static void
buy_lots (Farm *farm)
{
  static const struct { int days; double kg; } lots[] = { { 20, 50 }, { 3, 100 }, { 9, 30 } };

  for (gsize i = 0; i < G_N_ELEMENTS (lots); i++)
    {
      g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
      SteadReceiptLine line = { .item_id = farm->feed, .quantity_base = lots[i].kg, .cost_cents = 1000,
                                .best_by = farm->today + lots[i].days };

      receipt->supplier = g_strdup ("Mill");
      receipt->day = farm->today;
      receipt->reference = g_strdup_printf ("%d", (int) i);
      g_array_append_val (receipt->lines, line);
      FARM_DO (farm, stead_receipt_repo_save (farm->store, receipt, &farm_error));
    }
}

/* What expires first goes first, and nothing past its best-by day; by hand anything goes. */
static void
test_lots (Farm *farm, gconstpointer data)
{
  SteadProduct product = { .item_id = farm->feed, .base_per_unit = 10, .pack = STEAD_PACK_JAR };
  g_autoptr(GPtrArray) choices = NULL, chosen = NULL, texts = NULL, hand_texts = NULL;
  g_autoptr(GArray) hand = g_array_new (FALSE, FALSE, sizeof (SteadSaleLot));
  g_autoptr(GError) error = NULL;
  SteadSaleLot lot;

  buy_lots (farm);
  choices = stead_sale_lots_new (farm->store, &product, farm->today + 5, 6, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (choices->len, ==, 2);
  g_assert_cmpfloat_with_epsilon (((SteadSaleLotChoice *) choices->pdata[0])->units, 3, 1e-9);
  g_assert_cmpfloat_with_epsilon (((SteadSaleLotChoice *) choices->pdata[0])->there_units, 3, 1e-9);
  g_assert_cmpint (((SteadSaleLotChoice *) choices->pdata[0])->best_by, ==, farm->today + 9);
  g_assert_cmpfloat_with_epsilon (((SteadSaleLotChoice *) choices->pdata[1])->units, 3, 1e-9);
  lot = (SteadSaleLot) { ((SteadSaleLotChoice *) choices->pdata[1])->lot_id, 40 };
  g_array_append_val (hand, lot);
  chosen = stead_sale_lots_new (farm->store, &product, farm->today + 5, 6, hand, NULL, &error);
  g_assert_cmpfloat (((SteadSaleLotChoice *) chosen->pdata[0])->units, ==, 0);
  g_assert_cmpfloat_with_epsilon (((SteadSaleLotChoice *) chosen->pdata[1])->units, 4, 1e-9);
  g_assert_cmpfloat (stead_sale_lots_rest (choices, 6), ==, 0);
  g_assert_cmpfloat_with_epsilon (stead_sale_lots_rest (chosen, 6), 2, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_sale_lots_rest (chosen, 3), -1, 1e-9);
  texts = stead_sale_lots_texts (choices, STEAD_PACK_JAR, 6);
  hand_texts = stead_sale_lots_texts (chosen, STEAD_PACK_JAR, 6);
  g_assert_cmpuint (texts->len, ==, 2);
  g_assert_cmpuint (hand_texts->len, ==, 2);
  if (farm_in_english ())
    {
      g_assert_true (g_str_has_prefix (texts->pdata[0], "3 jars out of lot "));
      g_assert_cmpstr (hand_texts->pdata[1], ==, "2 jars out of what is made or harvested until then");
    }
}

/* Past days of the product are learned from; without a guess they alone tell. */
static void
test_learns (Farm *farm, gconstpointer data)
{
  Money money = money_new (farm);
  g_autoptr(SteadSale) first = sale_new (farm, &money, farm->today - 14, 20);
  g_autoptr(SteadSale) second = sale_new (farm, &money, farm->today - 7, 20);
  g_autoptr(SteadSale) next = sale_new (farm, &money, farm->today + 7, 20);
  g_autoptr(SteadSaleAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  const SteadSaleLineAnswer *line;

  hold (farm, &money, first, 10, 0);
  hold (farm, &money, second, 14, 0);
  answer = stead_sale_answer_new (farm->store, next->id, &error);
  g_assert_no_error (error);
  line = answer->lines->pdata[0];
  g_assert_cmpuint (line->n_days, ==, 2);
  /* Neither day sold out: the mean of the guess (12) and of both days is 12. */
  g_assert_cmpfloat_with_epsilon (line->demand_units, 12, 1e-6);
  g_assert_cmpint (line->demand.shape, ==, STEAD_DEMAND_NORMAL);
}

/* What a sale clears for a build is what Sell tells, by the build's share; one more sold brings
 * its price less its cost, at each sale. */
static void
test_pays_for_build (Farm *farm, gconstpointer data)
{
  Money money = money_new (farm);
  g_autoptr(SteadSale) first = sale_new (farm, &money, farm->today + 7, 20);
  g_autoptr(SteadSale) second = sale_new (farm, &money, farm->today + 14, 20);
  g_autoptr(SteadSaleAnswer) sale = NULL;
  g_autoptr(SteadBuild) build = stead_build_new (STEAD_BUILD_LIST);
  g_autoptr(SteadBuildLine) line = stead_build_line_new ();
  g_autoptr(SteadBuildAnswer) answer = NULL;
  g_autoptr(SteadBuildPath) path = NULL;
  g_autoptr(GError) error = NULL;
  const SteadBuildGood *good;
  SteadSale *sales[] = { first, second };
  gboolean tried = FALSE;

  for (gsize i = 0; i < G_N_ELEMENTS (sales); i++)
    {
      SteadSaleGood *sold = sales[i]->goods->pdata[0];

      sold->low = 12;
      sold->likely = 20;
      sold->high = 32;
      FARM_DO (farm, stead_sale_repo_save (farm->store, sales[i], NULL, &farm_error));
    }
  build->name = g_strdup ("Fence");
  build->begun_on = farm->today;
  build->sale_frac = 0.5;
  FARM_DO (farm, stead_build_repo_save (farm->store, build, &farm_error));
  line->build_id = build->id;
  line->name = g_strdup ("Wire");
  line->quantity = 1;
  line->price_cents = 100000;
  FARM_DO (farm, stead_build_line_repo_save (farm->store, line, &farm_error));
  sale = stead_sale_answer_new (farm->store, first->id, &error);
  g_assert_no_error (error);
  answer = stead_build_answer_new (farm->store, build->id, &error);
  g_assert_no_error (error);
  path = stead_build_path_new (farm->store, answer, &error);
  g_assert_no_error (error);
  g_assert_true (stead_build_path_run (path, 4000, NULL, &error));
  g_assert_cmpuint (path->events->len, ==, 2);
  g_assert_true (sale->has_band);
  g_assert_cmpfloat_with_epsilon (g_array_index (path->events, SteadOutlookEvent, 0).mean_cents, sale->mean_cents / 2, 1e-6);
  g_assert_cmpuint (path->goods->len, ==, 1);
  good = path->goods->pdata[0];
  g_assert_cmpfloat_with_epsilon (good->more_cents,
                                  (450 - ((SteadSaleLineAnswer *) sale->lines->pdata[0])->unit_cents) / 2, 1e-6);
  g_assert_cmpfloat_with_epsilon (good->sold, ((SteadSaleLineAnswer *) sale->lines->pdata[0])->sold_units, 1);
  g_assert_cmpuint (path->mores->len, ==, 2);
  for (guint i = 0; i < path->tries->len; i++)
    tried |= ((SteadBuildTry *) path->tries->pdata[i])->kind == STEAD_TRY_PRODUCT;
  g_assert_true (tried);
  g_assert_nonnull (path->more_sentence);
}

static gint64
pack_new (Farm *farm, const char *name, double kg)
{
  g_autoptr(SteadProduct) product = stead_product_new ();

  product->name = g_strdup (name);
  product->pack = STEAD_PACK_PIECE;
  product->item_id = farm->feed;
  product->base_per_unit = kg;
  FARM_DO (farm, stead_product_repo_save (farm->store, product, &farm_error));
  return product->id;
}

static void
add_pack (SteadSale *sale, gint64 product_id, double planned)
{
  SteadSaleGood *good = stead_sale_good_new ();

  good->product_id = product_id;
  good->price_cents = 500;
  good->planned = planned;
  g_ptr_array_add (sale->goods, good);
}

/* How many units of the product at @row come out of its lot at @at, and how many could. */
static void
assert_lot (SteadSaleAnswer *answer, guint row, guint at, double units, double there)
{
  const SteadSaleLineAnswer *line = answer->lines->pdata[row];
  const SteadSaleLotChoice *choice = line->lots->pdata[at];

  g_assert_cmpfloat_with_epsilon (choice->units, units, 1e-9);
  g_assert_cmpfloat_with_epsilon (choice->there_units, there, 1e-9);
}

/* 80 kg keep until the sale.  Six sacks of 10 kg and eight of 5 kg are 100 kg: 20 kg lack. */
static void
test_lots_shared (Farm *farm, gconstpointer data)
{
  gint64 big = pack_new (farm, "Sack", 10), small = pack_new (farm, "Half sack", 5);
  g_autoptr(SteadSale) sale = stead_sale_new (), later = stead_sale_new ();
  g_autoptr(SteadSaleAnswer) plan = NULL, chosen = NULL, next = NULL;
  g_autoptr(GError) error = NULL;
  SteadSaleLineAnswer *line;
  SteadSaleLot lot;

  buy_lots (farm);
  sale->name = g_strdup ("Market");
  sale->day = farm->today + 5;
  sale->opens_min = 540;
  sale->closes_min = 780;
  add_pack (sale, big, 6);
  add_pack (sale, small, 8);
  FARM_DO (farm, stead_sale_repo_save (farm->store, sale, NULL, &farm_error));
  plan = stead_sale_answer_new (farm->store, sale->id, &error);
  g_assert_no_error (error);
  /* The first takes 30 kg and 30 of 50; the second has the other 20 of 50. */
  assert_lot (plan, 0, 0, 3, 3);
  assert_lot (plan, 0, 1, 3, 5);
  assert_lot (plan, 1, 0, 0, 0);
  assert_lot (plan, 1, 1, 4, 4);
  line = plan->lines->pdata[1];
  g_assert_cmpfloat_with_epsilon (line->on_hand_units, 4, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_sale_lots_rest (line->lots, 8), 4, 1e-9);
  if (farm_in_english ())
    g_assert_nonnull (strstr (line->text, "Only about 4 pieces will be there by then."));

  /* 10 kg of the first lot by hand for the second product: they are not there for the first. */
  lot = (SteadSaleLot) { ((SteadSaleLotChoice *) line->lots->pdata[0])->lot_id, 10 };
  g_array_append_val (((SteadSaleGood *) sale->goods->pdata[1])->lots, lot);
  FARM_DO (farm, stead_sale_repo_save (farm->store, sale, NULL, &farm_error));
  chosen = stead_sale_answer_new (farm->store, sale->id, &error);
  g_assert_no_error (error);
  assert_lot (chosen, 0, 0, 2, 2);
  assert_lot (chosen, 0, 1, 4, 5);
  assert_lot (chosen, 1, 0, 2, 2);
  assert_lot (chosen, 1, 1, 0, 2);

  /* A day later: 80 kg less the 60 and the 10 that the sale before takes. */
  later->name = g_strdup ("Stand");
  later->day = farm->today + 6;
  later->opens_min = 540;
  later->closes_min = 780;
  add_pack (later, small, 5);
  FARM_DO (farm, stead_sale_repo_save (farm->store, later, NULL, &farm_error));
  next = stead_sale_answer_new (farm->store, later->id, &error);
  g_assert_no_error (error);
  assert_lot (next, 0, 0, 0, 0);
  assert_lot (next, 0, 1, 2, 2);
}

/* --- at the stall ------------------------------------------------------------------------------ */

static const SteadWhy *
find_why (const GPtrArray *whys, const char *title)
{
  for (guint i = 0; i < whys->len; i++)
    if (strcmp (((const SteadWhy *) whys->pdata[i])->title, g_dgettext (GETTEXT_PACKAGE, title)) == 0)
      return whys->pdata[i];
  return NULL;
}

/* 8 of 10 at 4.50 are sold, 20.00 were there for change; a customer takes three, puts one back, and gives 20.00. */
static void
check_tally_whys (const SteadTallyAnswer *answer)
{
  const gint64 prices[] = { 450, 450, 450, -450 };
  g_autoptr(GPtrArray) whys = stead_tally_answer_whys (answer);
  g_autoptr(GArray) basket = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr(SteadWhy) due = NULL, short_of = NULL;

  g_array_append_vals (basket, prices, G_N_ELEMENTS (prices));
  NUMBERS_ARE (find_why (whys, "Taken so far")->worked, 8, 4.5, 36);
  NUMBERS_ARE (find_why (whys, "What must be in the box")->worked, 20, 36, 0, 56);
  NUMBERS_ARE (find_why (whys, "How many are left")->worked, 10, 8, 2);
  due = stead_tally_due_why (answer->farm, basket, 900, 2000);
  NUMBERS_ARE (due->worked, 4.5, 4.5, 4.5, 4.5, 9, 20, 9, 11);
  short_of = stead_tally_due_why (answer->farm, basket, 900, 500);
  NUMBERS_ARE (short_of->worked, 4.5, 4.5, 4.5, 4.5, 9);
}

static void
test_tally (Farm *farm, gconstpointer data)
{
  Money money = money_new (farm);
  g_autoptr(SteadSale) sale = sale_new (farm, &money, farm->today, 10);
  SteadSaleGood *good = sale->goods->pdata[0];
  g_autoptr(SteadTallyAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *text = NULL;
  g_autofree char *change = NULL;
  g_autofree char *missing = NULL;
  g_autofree char *none = NULL;

  for (int i = 0; i < 8; i++)
    FARM_DO (farm, stead_sale_tally_add (farm->store, good->id, STEAD_TAP_SOLD, 1, AT + i, NULL, &farm_error));
  answer = stead_tally_answer_new (farm->store, sale->id, &error);
  g_assert_no_error (error);
  g_assert_cmpint (answer->till.takings_cents, ==, 3600);
  g_assert_cmpint (answer->till.expected_cents, ==, 5600);
  g_assert_cmpfloat (((SteadTallyLine *) answer->lines->pdata[0])->left_units, ==, 2);
  text = stead_words_plain (answer->sentence);
  NUMBERS_ARE (text, 36.00, 56.00, 2);
  check_tally_whys (answer);
  /* $20.00 for $13.50: a five, a one and two quarters, 6.50. */
  change = stead_tally_change (answer->farm, 1350, 2000);
  NUMBERS_ARE (change, 6.50, 1, 5.00, 1, 1.00, 2, 0.25);
  missing = stead_tally_change (answer->farm, 1350, 1000);
  NUMBERS_ARE (missing, 3.50);
  none = stead_tally_change (answer->farm, 1350, 1350);
  numbers_assert_are (none, NULL, 0);
}

static void
test_clock (void)
{
  static const struct { const char *text; int minute; } good[] = {
    { "9", 540 }, { "9:30", 570 }, { "13:05", 785 }, { "1 pm", 780 }, { "1:15 PM", 795 }, { "12 am", 0 }, { "12 p.m.", 720 },
    { " 0:00", 0 }, { "23.59", 1439 },
  };
  static const char * const bad[] = { "", "noon", "24:00", "9:60", "13 pm", "0 am", "9 o'clock", "-1" };
  int minute = -1;

  for (gsize i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_test_message ("%s", good[i].text);
      g_assert_true (stead_sale_clock_parse (good[i].text, &minute));
      g_assert_cmpint (minute, ==, good[i].minute);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      minute = -1;
      g_test_message ("%s", bad[i]);
      g_assert_false (stead_sale_clock_parse (bad[i], &minute));
      g_assert_cmpint (minute, ==, -1);
    }
  /* What is shown can be typed. */
  for (int i = 0; i < 1440; i += 7)
    {
      g_autofree char *text = stead_sale_clock (i);

      g_assert_true (stead_sale_clock_parse (text, &minute));
      g_assert_cmpint (minute, ==, i);
    }
}

/* --- afterwards ---------------------------------------------------------------------------------- */

/* AT is eight o'clock: $4.00 from 8:45 on, $3.50 from 10:30 on; what was sold before keeps its price. */
static void
test_prices (Farm *farm, gconstpointer data)
{
  Money money = money_new (farm);
  g_autoptr(SteadSale) sale = sale_new (farm, &money, farm->today, 20);
  gint64 line = ((SteadSaleGood *) sale->goods->pdata[0])->id;
  g_autoptr(SteadResultAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;

  FARM_DO (farm, stead_sale_tally_add (farm->store, line, STEAD_TAP_SOLD, 1, AT, NULL, &farm_error));
  FARM_DO (farm, stead_sale_tally_set_price (farm->store, line, 400, AT + 45 * 60, &farm_error));
  FARM_DO (farm, stead_sale_tally_add (farm->store, line, STEAD_TAP_SOLD, 1, AT + 46 * 60, NULL, &farm_error));
  FARM_DO (farm, stead_sale_tally_set_price (farm->store, line, 350, AT + 150 * 60, &farm_error));
  answer = stead_result_answer_new (farm->store, sale->id, &error);
  g_assert_no_error (error);
  g_assert_cmpint (answer->till.takings_cents, ==, 850);
  g_assert_cmpuint (answer->prices->len, ==, 2);
  NUMBERS_ARE (answer->prices->pdata[0], 4.50, 8, 45, 4.00);
  NUMBERS_ARE (answer->prices->pdata[1], 4.00, 10, 30, 3.50);
}

/* Planned 20 at 4.50 - 2.00, less 10.00: 40.00.  16 sold leave 30.00: 10.00 less, all of it for
 * want of volume: 4 x 2.50. */
static void
test_result (Farm *farm, gconstpointer data)
{
  Money money = money_new (farm);
  g_autoptr(SteadSale) sale = sale_new (farm, &money, farm->today - 7, 20);
  g_autoptr(SteadResultAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *text = NULL;

  hold (farm, &money, sale, 16, -200);
  answer = stead_result_answer_new (farm->store, sale->id, &error);
  g_assert_no_error (error);
  g_assert_true (answer->has_variance);
  g_assert_cmpfloat_with_epsilon (answer->variance.planned_cents, 4000, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->variance.actual_cents, 3000, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->variance.quantity_cents, -1000, 1e-6);
  g_assert_cmpint (answer->over_cents, ==, -200);
  text = stead_words_plain (answer->sentence);
  NUMBERS_ARE (text, 72.00, 30.00, 10.00);
  g_assert_cmpuint (answer->reasons->len, ==, 1);
  NUMBERS_ARE (answer->reasons->pdata[0], 10.00);
  if (farm_in_english ())
    g_assert_cmpstr (answer->reasons->pdata[0], ==, "Less was sold than planned: that cost $10.00.");
}

/* 20 planned at 4.50 that cost 2.00; 16 sold, one of them tasted away; the box has 2.00 too little. */
static void
test_result_whys (Farm *farm, gconstpointer data)
{
  Money money = money_new (farm);
  g_autoptr(SteadSale) sale = sale_new (farm, &money, farm->today - 7, 20);
  SteadSaleGood *good = sale->goods->pdata[0];
  g_autoptr(SteadResultAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL, few = NULL;
  g_autoptr(GError) error = NULL;
  SteadResultLine *line;

  hold (farm, &money, sale, 16, -200);
  answer = stead_result_answer_new (farm->store, sale->id, &error);
  g_assert_no_error (error);
  few = stead_result_answer_whys (answer);
  NUMBERS_ARE (find_why (few, "Taken")->worked, 16, 4.5, 72);
  /* 20 x 4.50 - 20 x 2.00 - 0 - 10.00; 72.00 - 32.00 - 0 - 10.00. */
  NUMBERS_ARE (find_why (few, "Left after all costs")->worked, 90, 40, 0, 10, 40, 72, 32, 0, 10, 30);
  NUMBERS_ARE (find_why (few, "More or less than planned")->worked, 30, 40, -10, -10, -10);
  NUMBERS_ARE (find_why (few, "By the number sold")->worked, 16, 20, 50, 20, -10);
  NUMBERS_ARE (find_why (few, "Left over")->worked, 20, 16, 4);
  /* 20.00 + 72.00 - 0 = 92.00; 90.00 - 92.00. */
  NUMBERS_ARE (find_why (few, "What must be in the box, and over or short")->worked, 20, 72, 0, 92, 90, 92, -2);
  g_assert_null (find_why (few, "By the prices"));
  g_assert_null (find_why (few, "By the cost of the goods"));
  g_assert_null (find_why (few, "By what nobody paid for"));
  g_assert_null (find_why (few, "By the day's own costs"));

  /* Cheaper by 0.50, dearer to make by 0.25, one given away, and 2.00 less for the table. */
  line = answer->lines->pdata[0];
  line->sum.takings_cents = 16 * 400;
  line->price_cents = 400;
  line->cost_cents = 225;
  line->lost_units = 1;
  line->lost_cents = 225;
  ((SteadSaleCost *) answer->sale->costs->pdata[0])->paid_cents = 800;
  answer->variance = (SteadSaleVariance) { .planned_cents = 4000, .actual_cents = 1775, .price_cents = -800, .cost_cents = -400,
                                           .quantity_cents = -1000, .lost_cents = -225, .fixed_cents = 200 };
  whys = stead_result_answer_whys (answer);
  NUMBERS_ARE (find_why (whys, "Left after all costs")->worked, 90, 40, 0, 10, 40, 64, 36, 2.25, 8, 17.75);
  NUMBERS_ARE (find_why (whys, "More or less than planned")->worked, 17.75, 40, -22.25, -10, 8, 4, 2.25, 2, -22.25);
  NUMBERS_ARE (find_why (whys, "By the prices")->worked, 64, 16, 4.5, -8);
  NUMBERS_ARE (find_why (whys, "By the cost of the goods")->worked, 16, 2, 36, -4);
  NUMBERS_ARE (find_why (whys, "By what nobody paid for")->worked, 0, 1, 2.25, -2.25);
  NUMBERS_ARE (find_why (whys, "By the day's own costs")->worked, 10, 8, 2);
  g_assert_true (answer->count != NULL && good->planned > 0);
}

/* Two products: 10 at 4.50 - 2.00 and 10 at 5.00 - 4.00 planned, 6 and 10 sold.  Of 16, 8 each would
 * be the plan's mix: -2 x 2.50 + 2 x 1.00 = -3.00; and -4 x 35.00 / 20 = -7.00 by the number. */
static void
test_result_mix (Farm *farm, gconstpointer data)
{
  Money money = money_new (farm);
  g_autoptr(SteadSale) sale = sale_new (farm, &money, farm->today - 7, 10);
  SteadSaleGood *good = stead_sale_good_new ();
  g_autoptr(SteadResultAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  g_autoptr(GError) error = NULL;

  good->product_id = pack_new (farm, "Sack", 10);
  good->price_cents = 500;
  good->planned = 10;
  good->cost_cents = 400;
  g_ptr_array_add (sale->goods, good);
  FARM_DO (farm, stead_sale_repo_save (farm->store, sale, NULL, &farm_error));
  for (int i = 0; i < 16; i++)
    FARM_DO (farm, stead_sale_tally_add (farm->store, i < 6 ? ((SteadSaleGood *) sale->goods->pdata[0])->id : good->id,
                                         STEAD_TAP_SOLD, 1, AT + i, NULL, &farm_error));
  answer = stead_result_answer_new (farm->store, sale->id, &error);
  g_assert_no_error (error);
  whys = stead_result_answer_whys (answer);
  NUMBERS_ARE (find_why (whys, "Taken")->worked, 6, 4.5, 27, 10, 5, 50, 77);
  NUMBERS_ARE (find_why (whys, "By the number sold")->worked, 16, 20, 35, 20, -7);
  NUMBERS_ARE (find_why (whys, "By what people chose")->worked, 6, 8, 2.5, -5, 10, 8, 1, 2, -3);
  NUMBERS_ARE (find_why (whys, "More or less than planned")->worked, 15, 25, -10, -7, 3, -10);
  g_assert_null (find_why (whys, "Left over"));
}

/* Two sales of four hours: 45.00 and 63.00 are 108.00, 13.50 an hour. */
static void
test_season (Farm *farm, gconstpointer data)
{
  Money money = money_new (farm);
  g_autoptr(SteadSale) first = sale_new (farm, &money, farm->today - 14, 20);
  g_autoptr(SteadSale) second = sale_new (farm, &money, farm->today - 7, 20);
  g_autoptr(SteadSale) next = sale_new (farm, &money, farm->today + 7, 20);
  g_autoptr(SteadSeasonAnswer) answer = NULL, some = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *text = NULL;
  const SteadSeasonSum *place;

  hold (farm, &money, first, 10, 100);
  hold (farm, &money, second, 14, -300);
  answer = stead_season_answer_new (farm->store, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (answer->days->len, ==, 3);
  g_assert_cmpuint (answer->n_done, ==, 2);
  g_assert_cmpint (answer->next_id, ==, next->id);
  g_assert_cmpint (answer->takings_cents, ==, 10800);
  place = answer->places->pdata[0];
  g_assert_cmpstr (place->name, ==, "Hall");
  g_assert_cmpint (place->per_hour_cents, ==, 1350);
  g_assert_cmpint (answer->over_cents, ==, -200);
  g_assert_cmpfloat (g_array_index (answer->overs, double, 0), ==, 100);
  text = stead_words_plain (answer->sentence);
  NUMBERS_ARE (text, 2, 108.00, 13.50);
  NUMBERS_ARE (answer->run_text, 2.00);
  /* Of the last ten days it is the second sale alone. */
  some = stead_season_answer_between (farm->store, farm->today - 10, farm->today, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (some->days->len, ==, 1);
  g_assert_cmpuint (some->n_done, ==, 1);
  g_assert_cmpint (some->takings_cents, ==, 6300);
  g_assert_cmpint (some->over_cents, ==, -300);
  whys = stead_season_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 5);
  NUMBERS_ARE (find_why (whys, "Taken")->worked, 108, 108);
  NUMBERS_ARE (find_why (whys, "Taken in an hour")->worked, 108, 8, 13.5, 108, 8, 13.5);
  NUMBERS_ARE (find_why (whys, "What the last sale took in an hour")->worked, 63, 4, 15.75);
  NUMBERS_ARE (find_why (whys, "Over and short in all")->worked, 1, 3, -2);
  NUMBERS_ARE (find_why (whys, "Is it chance?")->worked, -1, 2, 10);
}

/* Ten counts, seven of them on one side of the middle; of more than a dozen the first are one sum. */
static void
test_season_signs (Farm *farm, gconstpointer data)
{
  static const double overs[] = { -5, -5, 4, 4, 4, 4, 4, 4, -5, -5, -5, -5, -5, 100 };
  Money money = money_new (farm);
  g_autoptr(SteadSale) sale G_GNUC_UNUSED = sale_new (farm, &money, farm->today - 14, 20);
  g_autoptr(SteadSeasonAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL, none = NULL, trend = NULL;
  g_autoptr(GError) error = NULL;

  answer = stead_season_answer_new (farm->store, &error);
  g_assert_no_error (error);
  none = stead_season_answer_whys (answer);
  g_assert_cmpuint (none->len, ==, 0);
  g_array_append_vals (answer->overs, overs, G_N_ELEMENTS (overs));
  answer->over_cents = 89;
  g_assert_true (stead_run_chart (overs, G_N_ELEMENTS (overs), &answer->run));
  g_assert_true (answer->run.shift.found);
  whys = stead_season_answer_whys (answer);
  NUMBERS_ARE (find_why (whys, "Over and short in all")->worked, -0.10, 0.04, 0.04, 0.04, 0.04, 0.04, 0.04, 0.05, 0.05, 0.05,
               0.05, 0.05, 1.00, 0.89);
  /* The middle of 14: between -5 and 4, -0.5 cents; 3 to 8 lie above it. */
  g_assert_cmpfloat (answer->run.median, ==, -0.5);
  g_assert_nonnull (find_why (whys, "Is it chance?"));
  if (farm_in_english ())
    g_assert_true (g_str_has_suffix (find_why (whys, "Is it chance?")->worked, "Counts 3 to 8 lie on one side."));
  answer->run.shift.found = FALSE;
  answer->run.trend = (SteadRunSign) { TRUE, 4, 9, TRUE };
  trend = stead_season_answer_whys (answer);
  if (farm_in_english ())
    g_assert_true (g_str_has_suffix (find_why (trend, "Is it chance?")->worked, "Counts 5 to 10 all rise or all fall."));
}

#define CASE(name, test) g_test_add (name, Farm, NULL, farm_set_up, test, farm_tear_down)
#define LOGGED(name, test) g_test_add (name, Farm, NULL, set_up_logged, test, farm_tear_down)

static void
set_up_logged (Farm *farm, gconstpointer data)
{
  farm_set_up (farm, data);
  farm_log (farm);
  farm_stock (farm);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  LOGGED ("/answer/sale/plan", test_plan);
  LOGGED ("/answer/sale/whys", test_whys);
  CASE ("/answer/sale/lots", test_lots);
  CASE ("/answer/sale/lots-shared", test_lots_shared);
  CASE ("/answer/sale/learns", test_learns);
  LOGGED ("/answer/sale/pays-for-build", test_pays_for_build);
  CASE ("/answer/sale/tally", test_tally);
  g_test_add_func ("/answer/sale/clock", test_clock);
  CASE ("/answer/sale/prices", test_prices);
  CASE ("/answer/sale/result", test_result);
  CASE ("/answer/sale/result-whys", test_result_whys);
  CASE ("/answer/sale/result-mix", test_result_mix);
  CASE ("/answer/sale/season", test_season);
  CASE ("/answer/sale/season-signs", test_season_signs);
  return g_test_run ();
}
