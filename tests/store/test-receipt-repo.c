/* test-receipt-repo.c - receipts, their lots, signing and correcting. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"

/* Borrowed texts and two lines: feed of 50 lb for $18.25, and a bale. */
static SteadReceipt *
make_receipt (Farm *farm)
{
  SteadReceipt *receipt = stead_receipt_new ();
  SteadReceiptLine lines[] = {
    { .item_id = farm->feed, .quantity_base = 50 * LB, .cost_cents = 1825, .best_by = TODAY + 60 },
    { .item_id = farm->straw, .quantity_base = 40 * LB, .cost_cents = 650, .best_by = STEAD_DAY_NONE },
  };

  receipt->day = TODAY - 30;
  receipt->supplier = g_strdup ("  Lakeside Feed & Seed ");
  receipt->reference = g_strdup ("L-1");
  receipt->note = g_strdup ("Two items");
  receipt->person_id = farm->student;
  g_array_append_vals (receipt->lines, lines, 2);
  return receipt;
}

static SteadReceipt *
save_new (Farm *farm)
{
  SteadReceipt *receipt = make_receipt (farm);

  ACT (farm, stead_receipt_repo_save (farm->store, receipt, err));
  return receipt;
}

static SteadReceiptLine *
line_at (SteadReceipt *receipt,
         guint         at)
{
  return &g_array_index (receipt->lines, SteadReceiptLine, at);
}

static SteadReceipt *
get (Farm   *farm,
     gint64  id)
{
  g_autoptr(GError) error = NULL;
  SteadReceipt *receipt = stead_receipt_repo_get (farm->store, id, &error);

  g_assert_no_error (error);
  return receipt;
}

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) receipt = save_new (farm);
  g_autoptr(SteadReceipt) again = get (farm, receipt->id);

  g_assert_cmpint (again->day, ==, TODAY - 30);
  g_assert_cmpstr (again->supplier, ==, "Lakeside Feed & Seed");
  g_assert_cmpstr (again->reference, ==, "L-1");
  g_assert_cmpstr (again->note, ==, "Two items");
  g_assert_cmpint (again->person_id, ==, farm->student);
  g_assert_false (again->is_gift);
  g_assert_cmpint (again->signed_by, ==, 0);
  g_assert_cmpint (again->signed_on, ==, STEAD_DAY_NONE);
  g_assert_cmpuint (again->lines->len, ==, 2);
  g_assert_cmpint (line_at (again, 0)->id, ==, line_at (receipt, 0)->id);
  g_assert_cmpint (line_at (again, 0)->lot_id, ==, line_at (receipt, 0)->lot_id);
  g_assert_cmpint (line_at (again, 0)->lot_id, !=, 0);
  g_assert_cmpfloat (line_at (again, 0)->quantity_base, ==, 50 * LB);
  g_assert_cmpint (line_at (again, 0)->best_by, ==, TODAY + 60);
  g_assert_cmpint (line_at (again, 1)->best_by, ==, STEAD_DAY_NONE);
  g_assert_cmpint (stead_receipt_total_cents (again), ==, 2475);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

static void
test_list (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) receipt = save_new (farm);
  g_autoptr(GPtrArray) list = NULL;
  g_autoptr(GError) error = NULL;
  gint64 newer = farm_receipt (farm, farm->carton, TODAY - 10, 100, 2000, TRUE);
  gint64 same_day = farm_receipt (farm, farm->carton, TODAY - 30, 100, 2000, FALSE);

  list = stead_receipt_repo_list (farm->store, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list->len, ==, 3);
  g_assert_cmpint (((SteadReceipt *) list->pdata[0])->id, ==, newer);
  g_assert_true (((SteadReceipt *) list->pdata[0])->is_gift);
  g_assert_cmpint (((SteadReceipt *) list->pdata[1])->id, ==, same_day);
  g_assert_cmpint (((SteadReceipt *) list->pdata[2])->id, ==, receipt->id);
  g_assert_cmpuint (((SteadReceipt *) list->pdata[1])->lines->len, ==, 1);
  g_assert_cmpuint (((SteadReceipt *) list->pdata[2])->lines->len, ==, 2);
}

/* 2026-02-01 is the 32nd day of its year. */
static void
test_codes (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) receipt G_GNUC_UNUSED = save_new (farm);

  for (int i = 0; i < 11; i++)
    farm_receipt (farm, farm->feed, TODAY - 30, 1, 1, FALSE);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM lot WHERE code = 'F26032-1'"), ==, 1);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM lot WHERE code = 'B26032-1'"), ==, 1);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM lot WHERE code = 'F26032-12'"), ==, 1);
}

#define BAD(field, value, words) \
  G_STMT_START { \
    __typeof__ (receipt->field) kept = receipt->field; \
    receipt->field = (value); \
    INVALID (farm, stead_receipt_repo_save (farm->store, receipt, err), words); \
    g_assert_cmpint (receipt->id, ==, 0); \
    receipt->field = kept; \
  } G_STMT_END

#define BAD_LINE(field, value, words) \
  G_STMT_START { \
    __typeof__ (line->field) kept = line->field; \
    line->field = (value); \
    INVALID (farm, stead_receipt_repo_save (farm->store, receipt, err), words); \
    g_assert_cmpint (receipt->id, ==, 0); \
    g_assert_cmpint (line_at (receipt, 0)->id, ==, 0); \
    line->field = kept; \
  } G_STMT_END

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) receipt = make_receipt (farm);
  SteadReceiptLine *line = line_at (receipt, 1);
  char blank[] = " ";

  BAD (day, STEAD_DAY_NONE, "Enter the day");
  BAD (day, TODAY + 1, "Mar 4, 2026 is still to come");
  BAD (supplier, blank, "who it came from");
  BAD (supplier, NULL, "who it came from");
  BAD_LINE (item_id, 0, "Line 2: choose what was bought");
  BAD_LINE (quantity_base, 0, "Line 2 (Straw): the amount must be above zero");
  BAD_LINE (quantity_base, (double) NAN, "Line 2 (Straw)");
  BAD_LINE (quantity_base, -1, "Line 2 (Straw)");
  BAD_LINE (cost_cents, -1, "Straw: an amount below zero");
  BAD_LINE (best_by, TODAY - 31, "best-by day is before");
  g_array_set_size (receipt->lines, 0);
  INVALID (farm, stead_receipt_repo_save (farm->store, receipt, err), "at least one line");
  REFUSE (farm, stead_receipt_repo_delete (farm->store, 99, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
}

/* --- changing -------------------------------------------------------------------- */

static void
test_change (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) receipt = save_new (farm);
  SteadReceiptLine carton = { .item_id = farm->carton, .quantity_base = 250, .cost_cents = 5000,
                              .best_by = STEAD_DAY_NONE };
  gint64 lot = line_at (receipt, 0)->lot_id;

  farm_entry (farm, TODAY - 29, 20, 10 * LB, 0);
  farm_entry (farm, TODAY - 20, 20, 30 * LB, 0);
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==,
                   1460);   /* 40/50 of 1825 */
  /* The bag cost twice as much, came later than the first feeding, and the bale was cartons. */
  receipt->day = TODAY - 25;
  line_at (receipt, 0)->cost_cents = 3650;
  line_at (receipt, 0)->best_by = STEAD_DAY_NONE;
  g_array_remove_index (receipt->lines, 1);
  g_array_append_val (receipt->lines, carton);
  ACT (farm, stead_receipt_repo_save (farm->store, receipt, err));
  g_assert_cmpint (line_at (receipt, 0)->lot_id, ==, lot);
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==,
                   2190);   /* 30/50 of 3650: the first feeding is on no receipt now */
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM lot"), ==, 2);
  g_assert_cmpint (fixture_number (farm->store, "SELECT sum (base) FROM lot_stock s JOIN lot l ON l.id = s.lot_id"
                                                " JOIN item i ON i.id = l.item_id WHERE i.name = 'Carton'"), ==, 250);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* What was taken by hand stays, and costs its share of the new price. */
/* Only what a person sees of the paper changes: what was fed out of its lots is not taken anew. */
static void
test_change_of_head (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) receipt = save_new (farm);
  g_autoptr(SteadReceipt) again = NULL;
  gint64 last;

  farm_entry (farm, TODAY - 29, 20, 10 * LB, 0);
  again = get (farm, receipt->id);
  ACT_FOR_NOTHING (farm, stead_receipt_repo_save (farm->store, again, err));
  last = fixture_number (farm->store, "SELECT max (id) FROM movement");
  g_free (again->note);
  again->note = g_strdup ("One sack was torn");
  line_at (again, 0)->lot_id = line_at (again, 1)->lot_id = 0;
  ACT (farm, stead_receipt_repo_save (farm->store, again, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT max (id) FROM movement"), ==, last);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM receipt WHERE note = 'One sack was torn'"), ==, 1);
  g_assert_cmpint (line_at (again, 0)->lot_id, ==, line_at (receipt, 0)->lot_id);
  g_assert_cmpint (line_at (again, 1)->lot_id, ==, line_at (receipt, 1)->lot_id);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

static void
test_change_after_use (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) receipt = save_new (farm);
  SteadReceiptLine *line = line_at (receipt, 1);

  ACT (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY - 10, 30 * LB, 0, err));
  line->quantity_base = 29 * LB;
  INVALID (farm, stead_receipt_repo_save (farm->store, receipt, err), "30 lb was already taken out of lot B26032-1");
  line->quantity_base = 40 * LB;
  receipt->day = TODAY - 9;
  INVALID (farm, stead_receipt_repo_save (farm->store, receipt, err), "By Feb 21, 2026");
  receipt->day = TODAY - 10;
  line->quantity_base = 60 * LB;
  line->cost_cents = 1300;
  ACT (farm, stead_receipt_repo_save (farm->store, receipt, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -cost_cents FROM movement WHERE kind = 'used'"), ==, 650);
  line->quantity_base = 30 * LB;
  ACT (farm, stead_receipt_repo_save (farm->store, receipt, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -cost_cents FROM movement WHERE kind = 'used'"), ==, 1300);
  INVALID (farm, stead_receipt_repo_delete (farm->store, receipt->id, err), "Lot B26032-1 (Straw) was used or changed");
  g_array_remove_index (receipt->lines, 1);
  INVALID (farm, stead_receipt_repo_save (farm->store, receipt, err), "cannot be deleted");
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

/* Feed that a changed receipt no longer covers goes to another lot that was there. */
static void
test_other_lot (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) receipt = save_new (farm);

  farm_receipt (farm, farm->feed, TODAY - 28, 50 * LB, 5000, FALSE);
  farm_entry (farm, TODAY - 20, 20, 10 * LB, 0);
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 365);
  receipt->day = TODAY - 15;
  ACT (farm, stead_receipt_repo_save (farm->store, receipt, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 1000);
  receipt->day = TODAY - 30;
  ACT (farm, stead_receipt_repo_save (farm->store, receipt, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 365);
  g_array_remove_index (receipt->lines, 0);
  ACT (farm, stead_receipt_repo_save (farm->store, receipt, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 1000);
  farm_assert_ledger (farm);
  farm_assert_undo (farm);
}

static void
test_delete (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) receipt = save_new (farm);
  g_autoptr(GPtrArray) uses = NULL;
  g_autoptr(GError) error = NULL;

  farm_entry (farm, TODAY - 20, 20, 10, 0);
  ACT (farm, stead_receipt_repo_delete (farm->store, receipt->id, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM movement"), ==, 0);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM lot"), ==, 0);
  uses = stead_lot_repo_uses (farm->store, farm->flock, TODAY - 30, TODAY, &error);
  g_assert_cmpuint (uses->len, ==, 1);
  g_assert_cmpfloat (((SteadUse *) uses->pdata[0])->uncovered_base, ==, 10);
  farm_assert_undo (farm);
}

/* --- signing and correcting ------------------------------------------------------ */

static void
test_sign (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) receipt = save_new (farm);
  g_autoptr(SteadReceipt) again = NULL;

  INVALID (farm, stead_receipt_repo_sign (farm->store, receipt->id, farm->student, err), "Only an advisor");
  INVALID (farm, stead_receipt_repo_sign (farm->store, receipt->id, 99, err), "Only an advisor");
  REFUSE (farm, stead_receipt_repo_sign (farm->store, 99, farm->advisor, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  ACT (farm, stead_receipt_repo_sign (farm->store, receipt->id, farm->advisor, err));
  again = get (farm, receipt->id);
  g_assert_cmpint (again->signed_by, ==, farm->advisor);
  g_assert_cmpint (again->signed_on, ==, TODAY);
  REFUSE (farm, stead_receipt_repo_save (farm->store, again, err), STEAD_STORE_ERROR_SIGNED, "signed on Mar 3, 2026");
  REFUSE (farm, stead_receipt_repo_delete (farm->store, receipt->id, err), STEAD_STORE_ERROR_SIGNED, "corrects it");
  REFUSE (farm, stead_receipt_repo_sign (farm->store, receipt->id, farm->advisor, err), STEAD_STORE_ERROR_SIGNED,
          "signed on");
  /* Its lots go on being used. */
  farm_entry (farm, TODAY - 20, 20, 5 * LB, 0);
  ACT (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY, LB, 0, err));
  farm_assert_ledger (farm);
}

static void
assert_sums (Farm   *farm,
             guint   n,
             guint   n_corrected,
             gint64  paid_cents,
             gint64  gift_cents)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) receipts = stead_receipt_repo_list (farm->store, &error);
  SteadReceiptSums sums;

  g_assert_no_error (error);
  sums = stead_receipt_sums (receipts);
  g_assert_cmpuint (sums.n, ==, n);
  g_assert_cmpuint (sums.n_corrected, ==, n_corrected);
  g_assert_cmpint (sums.paid_cents, ==, paid_cents);
  g_assert_cmpint (sums.gift_cents, ==, gift_cents);
}

/* 50 lb for $18.25 was signed; it was $20.00.  5 lb by the log, and 4 lb thrown out by hand. */
static void
test_correct (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) wrong = save_new (farm);
  g_autoptr(SteadReceipt) right = make_receipt (farm);
  g_autoptr(SteadReceipt) third = make_receipt (farm);
  SteadStock stock;

  farm_entry (farm, TODAY - 20, 20, 5 * LB, 0);
  ACT (farm, stead_lot_repo_adjust (farm->store, line_at (wrong, 1)->lot_id, STEAD_MOVE_LOST, TODAY - 5, -4 * LB,
                                    "wet", 0, err));
  right->corrects_id = wrong->id;
  line_at (right, 0)->cost_cents = 2000;
  line_at (right, 1)->cost_cents = 800;
  INVALID (farm, stead_receipt_repo_save (farm->store, right, err), "not signed yet");
  assert_sums (farm, 1, 0, 1825 + 650, 0);
  ACT (farm, stead_receipt_repo_sign (farm->store, wrong->id, farm->advisor, err));
  ACT (farm, stead_receipt_repo_save (farm->store, right, err));
  /* The feed now costs the right price; what was thrown out came out of the right lot too:
   * a tenth of the straw at $8.00, and 36 of the 40 lb are left, not 36 and another 40. */
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 200);
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'lost'"), ==, 80);
  g_assert_cmpint (fixture_number (farm->store, "SELECT sum (cents) FROM lot_stock"), ==, 2000 - 200 + 800 - 80);
  g_assert_true (stead_lot_repo_stock (farm->store, farm->straw, TODAY, 7, &stock, NULL));
  g_assert_cmpfloat_with_epsilon (stock.on_hand_base, 36 * LB, 1e-9);
  assert_sums (farm, 1, 1, 2800, 0);
  third->corrects_id = wrong->id;
  INVALID (farm, stead_receipt_repo_save (farm->store, third, err), "corrected before");
  INVALID (farm, stead_receipt_repo_delete (farm->store, right->id, err), "corrects a signed one");
  right->corrects_id = 0;
  INVALID (farm, stead_receipt_repo_save (farm->store, right, err), "cannot be turned");
  right->corrects_id = wrong->id;
  line_at (right, 0)->cost_cents = 2500;
  ACT (farm, stead_receipt_repo_save (farm->store, right, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 250);
  farm_assert_ledger (farm);
}

/* It was no feed at all: the feed of the log moves on to the next lot. */
static void
test_correct_item (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) wrong = save_new (farm);
  g_autoptr(SteadReceipt) right = make_receipt (farm);

  farm_receipt (farm, farm->feed, TODAY - 28, 50 * LB, 5000, FALSE);
  farm_entry (farm, TODAY - 20, 20, 10 * LB, 0);
  ACT (farm, stead_receipt_repo_sign (farm->store, wrong->id, farm->advisor, err));
  right->corrects_id = wrong->id;
  g_array_remove_index (right->lines, 0);
  ACT (farm, stead_receipt_repo_save (farm->store, right, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 1000);
  farm_assert_ledger (farm);
}

/* The price of what was corrected is no price: neither of the next to be used, nor of feed
 * that no receipt covers. */
static void
test_correct_tells_no_price (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) wrong = save_new (farm);
  g_autoptr(SteadReceipt) right = make_receipt (farm);
  g_autoptr(GPtrArray) uses = NULL;
  g_autoptr(GError) error = NULL;
  SteadStock stock;

  ACT (farm, stead_receipt_repo_sign (farm->store, wrong->id, farm->advisor, err));
  right->corrects_id = wrong->id;
  right->day = wrong->day - 1;          /* the wrong one is the newer, and the nearer */
  right->is_gift = TRUE;
  line_at (right, 0)->cost_cents = 5000;
  ACT (farm, stead_receipt_repo_save (farm->store, right, err));
  farm_entry (farm, TODAY - 20, 20, 60 * LB, 0);
  uses = stead_lot_repo_uses (farm->store, farm->flock, TODAY - 30, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (uses->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (((SteadUse *) uses->pdata[0])->uncovered_cents, 1000, 1e-6);   /* 10 lb at $1.00 */
  g_assert_true (stead_lot_repo_stock (farm->store, farm->feed, TODAY, 7, &stock, &error));
  g_assert_cmpfloat_with_epsilon (stock.next_unit_cents * LB, 100, 1e-9);
  g_assert_true (stock.next_is_gift);
  assert_sums (farm, 1, 1, 0, 5650);
}

/* More was taken out than the right receipt says came: told, and nothing is changed. */
static void
test_correct_below_use (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) wrong = save_new (farm);
  g_autoptr(SteadReceipt) right = make_receipt (farm);

  ACT (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY - 5, 30 * LB, 0, err));
  ACT (farm, stead_receipt_repo_sign (farm->store, wrong->id, farm->advisor, err));
  right->corrects_id = wrong->id;
  line_at (right, 1)->quantity_base = 29 * LB;
  INVALID (farm, stead_receipt_repo_save (farm->store, right, err), "already taken out");
  line_at (right, 1)->quantity_base = 30 * LB;
  ACT (farm, stead_receipt_repo_save (farm->store, right, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'used'"), ==, 650);
  farm_assert_ledger (farm);
}

/* A correction is undone whole: the wrong lot has its movements again. */
static void
test_correct_undone (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadReceipt) wrong = save_new (farm);
  g_autoptr(SteadReceipt) right = make_receipt (farm);
  g_autoptr(GError) error = NULL;
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  g_autofree char *undone = NULL;
  g_autofree char *again = NULL;

  farm_entry (farm, TODAY - 20, 20, 5 * LB, 0);
  ACT (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY - 5, 10 * LB, 0, err));
  ACT (farm, stead_receipt_repo_sign (farm->store, wrong->id, farm->advisor, err));
  before = fixture_dump (farm->store);
  right->corrects_id = wrong->id;
  line_at (right, 1)->cost_cents = 800;
  ACT (farm, stead_receipt_repo_save (farm->store, right, err));
  after = fixture_dump (farm->store);
  g_assert_true (stead_store_undo (farm->store, &error));
  g_assert_no_error (error);
  undone = fixture_dump (farm->store);
  g_assert_cmpstr (undone, ==, before);
  farm_assert_ledger (farm);
  g_assert_true (stead_store_redo (farm->store, &error));
  g_assert_no_error (error);
  again = fixture_dump (farm->store);
  g_assert_cmpstr (again, ==, after);
  farm_assert_ledger (farm);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/receipt/round-trip", test_round_trip);
  g_test_add_func ("/store/receipt/list", test_list);
  g_test_add_func ("/store/receipt/codes", test_codes);
  g_test_add_func ("/store/receipt/refused", test_refused);
  g_test_add_func ("/store/receipt/change", test_change);
  g_test_add_func ("/store/receipt/change-of-head", test_change_of_head);
  g_test_add_func ("/store/receipt/change-after-use", test_change_after_use);
  g_test_add_func ("/store/receipt/other-lot", test_other_lot);
  g_test_add_func ("/store/receipt/delete", test_delete);
  g_test_add_func ("/store/receipt/sign", test_sign);
  g_test_add_func ("/store/receipt/correct", test_correct);
  g_test_add_func ("/store/receipt/correct-item", test_correct_item);
  g_test_add_func ("/store/receipt/correct-tells-no-price", test_correct_tells_no_price);
  g_test_add_func ("/store/receipt/correct-below-use", test_correct_below_use);
  g_test_add_func ("/store/receipt/correct-undone", test_correct_undone);
  return g_test_run ();
}
