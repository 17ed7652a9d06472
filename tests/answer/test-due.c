/* test-due.c - what is due, what runs out, and the strip's figures, case by case. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-due-answer.h"
#include "answer/stead-flock-answer.h"
#include "answer/stead-stock-answer.h"
#include "core/stead-money.h"
#include "store/stead-sale-repo.h"

#include <math.h>
#include <string.h>

static SteadDueAnswer *
ask (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadDueAnswer *answer = stead_due_answer_new (farm->store, &error);

  g_assert_no_error (error);
  g_assert_nonnull (answer);
  return answer;
}

/* How many lines of that kind lead to that place; each has words. */
static int
count (const SteadDueAnswer *answer,
       SteadDueKind          kind,
       SteadTarget           target,
       gint64                id)
{
  int n = 0;

  for (guint i = 0; i < answer->dues->len; i++)
    {
      const SteadDue *due = answer->dues->pdata[i];

      g_assert_cmpuint (strlen (due->text), >, 5);
      n += due->kind == kind && due->target == target && due->id == id ? 1 : 0;
    }
  return n;
}

static void
change_flock (Farm *farm,
              void (*change) (SteadFlock *flock))
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, NULL);

  change (flock);
  FARM_DO (farm, stead_flock_repo_save (farm->store, flock, &farm_error));
}

/* Eggs and feed of every day up to yesterday. */
static void
log_to_yesterday (Farm *farm)
{
  for (SteadDay day = stead_day_new (2026, 1, 1); day < farm->today; day++)
    farm_entry (farm, day, 8, 0, 1, 0);
}

static void
test_morning_and_evening (Farm          *farm,
                          gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) morning = NULL;
  g_autoptr(SteadDueAnswer) evening = NULL;

  farm_stock (farm);
  log_to_yesterday (farm);
  morning = ask (farm);
  g_assert_cmpint (count (morning, STEAD_DUE_TASK, STEAD_TARGET_FLOCK, farm->flock), ==, 2);
  g_assert_cmpint (morning->n_tasks, ==, 2);
  g_assert_cmpint (morning->n_warnings, ==, 0);
  NUMBERS_ARE (morning->sentence, 2);
  farm_entry (farm, farm->today, 8, 0, 1, 0);
  evening = ask (farm);
  g_assert_cmpint (evening->n_tasks, ==, 0);
  g_assert_cmpint (count (evening, STEAD_DUE_DONE, STEAD_TARGET_FLOCK, farm->flock), ==, 2);
  NUMBERS_ARE (((const SteadDue *) evening->dues->pdata[0])->text, 8);
  g_assert_null (strstr (evening->sentence, "<b>"));
}

static void
make_chicks (SteadFlock *flock)
{
  flock->hatched_on = flock->housed_on - 7;
}

/* Who is too young to lay has no eggs to collect. */
static void
test_too_young (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) answer = NULL;

  farm_stock (farm);
  change_flock (farm, make_chicks);
  answer = ask (farm);
  g_assert_cmpint (count (answer, STEAD_DUE_TASK, STEAD_TARGET_FLOCK, farm->flock), ==, 1);
  g_assert_cmpint (count (answer, STEAD_DUE_WARNING, STEAD_TARGET_FLOCK, farm->flock), ==, 0);
}

static void
change_litter (SteadFlock *flock)
{
  flock->bedding_days = 14;
}

static void
test_bedding (Farm          *farm,
              gconstpointer  data)
{
  int explained = 0;
  static const struct { int days_ago; int tasks; int done; } cases[] = { { 13, 2, 0 }, { 14, 3, 0 }, { 0, 2, 1 } };

  farm_stock (farm);
  log_to_yesterday (farm);
  change_flock (farm, change_litter);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(SteadDueAnswer) answer = NULL;

      FARM_DO (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, farm->today - cases[i].days_ago, 1, 0,
                                         &farm_error));
      answer = ask (farm);
      g_assert_cmpint (count (answer, STEAD_DUE_TASK, STEAD_TARGET_FLOCK, farm->flock), ==, cases[i].tasks);
      g_assert_cmpint (count (answer, STEAD_DUE_DONE, STEAD_TARGET_FLOCK, farm->flock), ==, cases[i].done);
      for (guint k = 0; k < answer->dues->len; k++)
        {
          const SteadDue *due = answer->dues->pdata[k];

          /* March 17 and two weeks */
          if (due->kind == STEAD_DUE_TASK && due->worked != NULL)
            NUMBERS_ARE (due->worked, 17, 14, 31);
          explained += due->kind == STEAD_DUE_TASK && due->worked != NULL;
        }
      g_assert_true (stead_store_undo (farm->store, NULL));
    }
  g_assert_cmpint (explained, ==, 1);
}

/* Never changed: counted from the day on which the hens came. */
static void
test_bedding_never (Farm          *farm,
                    gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) answer = NULL;

  farm_stock (farm);
  log_to_yesterday (farm);
  change_flock (farm, change_litter);
  answer = ask (farm);
  g_assert_cmpint (count (answer, STEAD_DUE_TASK, STEAD_TARGET_FLOCK, farm->flock), ==, 3);
}

static void
test_gaps (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(GPtrArray) whys = NULL;
  g_autoptr(SteadDueAnswer) answer = NULL;
  const SteadDue *due;

  farm_stock (farm);
  for (int ago = 1; ago <= 7; ago++)
    if (ago != 2 && ago != 5)
      farm_entry (farm, farm->today - ago, 8, 0, 1, 0);
  answer = ask (farm);
  g_assert_cmpint (count (answer, STEAD_DUE_WARNING, STEAD_TARGET_FLOCK, farm->flock), ==, 1);
  due = answer->dues->pdata[0];
  g_assert_cmpint (due->kind, ==, STEAD_DUE_WARNING);
  NUMBERS_ARE (due->text, 2);
  NUMBERS_ARE (due->worked, 7, 5, 2);
  whys = stead_due_answer_whys (answer);
  NUMBERS_ARE (farm_find_why (whys, "How many things are due")->worked, answer->n_warnings, answer->n_tasks,
               answer->dues->len - (guint) answer->n_warnings - (guint) answer->n_tasks);
  g_assert_nonnull (strstr (farm_find_why (whys, "Why a line stands here")->worked, due->worked));
}

static double
tenth (double number)
{
  return round (10 * number) / 10;
}

static void
test_low_lay (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) flock = NULL;
  g_autoptr(SteadDueAnswer) answer = NULL;

  farm_stock (farm);
  for (int ago = 7; ago >= 1; ago--)
    farm_entry (farm, farm->today - ago, ago <= 2 ? 1 : 8, 0, 1, 0);
  answer = ask (farm);
  g_assert_cmpint (count (answer, STEAD_DUE_WARNING, STEAD_TARGET_FLOCK, farm->flock), ==, 1);
  g_assert_nonnull (((const SteadDue *) answer->dues->pdata[0])->detail);
  flock = stead_flock_answer_new (farm->store, farm->flock, NULL);
  g_assert_cmpint (flock->low.of_seven, ==, 2);
  /* March 29 and 30: an egg of ten hens each */
  NUMBERS_ARE (((const SteadDue *) answer->dues->pdata[0])->worked, 29, 1, 10, tenth (flock->low.days[0].likely),
               tenth (flock->low.days[0].least), 30, 1, 10, tenth (flock->low.days[1].likely),
               tenth (flock->low.days[1].least));
}

static void
test_uncovered (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) answer = NULL;
  const SteadDue *due;

  farm_buy (farm, stead_day_new (2026, 1, 1), farm->feed, 70, 8400, FALSE);
  farm_log (farm);
  answer = ask (farm);
  g_assert_cmpint (count (answer, STEAD_DUE_WARNING, STEAD_TARGET_NEW_RECEIPT, farm->feed), ==, 1);
  for (guint i = 0; i < answer->dues->len; i++)
    {
      due = answer->dues->pdata[i];
      if (due->target == STEAD_TARGET_NEW_RECEIPT)
        {
          NUMBERS_ARE (due->text, 20);
          NUMBERS_ARE (due->worked, 84, 12, 64, 20);
        }
    }
}

/* 100 kg less 90 are ten days: enough.  A reorder mark or a smaller bag is not. */
static void
test_feed_low (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) enough = NULL;
  g_autoptr(SteadDueAnswer) marked = NULL;
  g_autoptr(SteadItem) item = stead_item_repo_get (farm->store, farm->feed, NULL);

  farm_stock (farm);
  farm_log (farm);
  enough = ask (farm);
  g_assert_cmpint (count (enough, STEAD_DUE_WARNING, STEAD_TARGET_ITEM, farm->feed), ==, 0);
  item->reorder_base = 10.5;
  FARM_DO (farm, stead_item_repo_save (farm->store, item, &farm_error));
  marked = ask (farm);
  g_assert_cmpint (count (marked, STEAD_DUE_WARNING, STEAD_TARGET_ITEM, farm->feed), ==, 1);
  for (guint i = 0; i < marked->dues->len; i++)
    if (((const SteadDue *) marked->dues->pdata[i])->target == STEAD_TARGET_ITEM)
      NUMBERS_ARE (((const SteadDue *) marked->dues->pdata[i])->worked, 10, 1, 10, 10.5);
}

static void
test_feed_runs_out (Farm          *farm,
                    gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) answer = NULL;

  farm_buy (farm, stead_day_new (2026, 1, 1), farm->feed, 96.5, 8400, FALSE);
  farm_log (farm);
  answer = ask (farm);
  g_assert_cmpint (count (answer, STEAD_DUE_WARNING, STEAD_TARGET_ITEM, farm->feed), ==, 1);
  for (guint i = 0; i < answer->dues->len; i++)
    if (((const SteadDue *) answer->dues->pdata[i])->target == STEAD_TARGET_ITEM)
      NUMBERS_ARE (((const SteadDue *) answer->dues->pdata[i])->text, 6, 6.5);
}

static void
test_best_by (Farm          *farm,
              gconstpointer  data)
{
  static const struct { int days; int warnings; } cases[] = { { -1, 1 }, { 0, 0 }, { 1, 0 } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
      SteadReceiptLine line = { .item_id = farm->feed, .quantity_base = 5, .cost_cents = 500,
                                .best_by = farm->today + cases[i].days };
      g_autoptr(SteadDueAnswer) answer = NULL;

      receipt->day = stead_day_new (2026, 1, 1);
      g_free (receipt->supplier);
      receipt->supplier = g_strdup ("Lakeside Feed & Seed");
      g_array_append_val (receipt->lines, line);
      FARM_DO (farm, stead_receipt_repo_save (farm->store, receipt, &farm_error));
      answer = ask (farm);
      g_assert_cmpint (count (answer, STEAD_DUE_WARNING, STEAD_TARGET_LOT,
                              g_array_index (receipt->lines, SteadReceiptLine, 0).lot_id), ==, cases[i].warnings);
      g_assert_true (stead_store_undo (farm->store, NULL));
    }
}

static void
test_no_price (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) before = NULL;
  g_autoptr(SteadDueAnswer) after = ask (farm);

  g_assert_cmpint (count (after, STEAD_DUE_TASK, STEAD_TARGET_PRODUCT, farm->product), ==, 0);
  stead_store_set_today (farm->store, stead_day_new (2026, 1, 9));
  before = ask (farm);
  g_assert_cmpint (count (before, STEAD_DUE_TASK, STEAD_TARGET_PRODUCT, farm->product), ==, 1);
}

/* Warnings, tasks, then what is done; and the counts are theirs. */
static void
test_order (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) answer = NULL;
  int last = 0;
  int kinds[3] = { 0 };

  farm_entry (farm, farm->today, 8, 0, NAN, 0);
  answer = ask (farm);
  for (guint i = 0; i < answer->dues->len; i++)
    {
      static const int place[] = { [STEAD_DUE_WARNING] = 0, [STEAD_DUE_TASK] = 1, [STEAD_DUE_DONE] = 2 };
      const SteadDue *due = answer->dues->pdata[i];

      g_assert_cmpint (place[due->kind], >=, last);
      last = place[due->kind];
      kinds[due->kind]++;
    }
  g_assert_cmpint (kinds[STEAD_DUE_TASK], ==, answer->n_tasks);
  g_assert_cmpint (kinds[STEAD_DUE_WARNING], ==, answer->n_warnings);
  g_assert_cmpint (kinds[STEAD_DUE_DONE], >, 0);
  NUMBERS_ARE (answer->sentence, answer->n_tasks, answer->n_warnings);
}

static void
end_in_march (SteadFlock *flock)
{
  flock->ended_on = stead_day_new (2026, 3, 30);
}

static void
test_ended_flock (Farm          *farm,
                  gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) answer = NULL;

  change_flock (farm, end_in_march);
  answer = ask (farm);
  g_assert_cmpint (count (answer, STEAD_DUE_TASK, STEAD_TARGET_FLOCK, farm->flock), ==, 0);
}

/* --- stock --------------------------------------------------------------------------- */

static const SteadStockLine *
line_of (const SteadStockAnswer *answer,
         gint64                  item)
{
  for (guint i = 0; i < answer->lines->len; i++)
    if (((const SteadStockLine *) answer->lines->pdata[i])->item->id == item)
      return answer->lines->pdata[i];
  g_assert_not_reached ();
}

static void
test_stock (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStockAnswer) answer = NULL;
  const SteadStockLine *feed;

  farm_stock (farm);
  farm_log (farm);
  answer = stead_stock_answer_new (farm->store, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (answer->lines->len, ==, 3);
  feed = line_of (answer, farm->feed);
  g_assert_cmpfloat_with_epsilon (feed->days, 10, 1e-6);
  g_assert_false (feed->low);
  NUMBERS_ARE (feed->on_hand, 10);
  NUMBERS_ARE (feed->lasts, 10);
  g_assert_true (isnan (line_of (answer, farm->carton)->days));
  /* 10 kg at $1.28, 100 cartons for $31.00, 10 straw for $50.00 */
  g_assert_cmpint (answer->value_cents, ==, 1280 + 3100 + 5000);
  NUMBERS_ARE (answer->sentence, 93.80, 3);
  for (guint i = 1; i < answer->lines->len; i++)
    g_assert_cmpint (((const SteadStockLine *) answer->lines->pdata[i])->item->kind, >=,
                     ((const SteadStockLine *) answer->lines->pdata[i - 1])->item->kind);
}

static void
test_stock_empty (Farm          *farm,
                  gconstpointer  data)
{
  g_autoptr(SteadStockAnswer) answer = stead_stock_answer_new (farm->store, NULL);

  g_assert_cmpint (answer->value_cents, ==, 0);
  for (guint i = 0; i < answer->lines->len; i++)
    g_assert_false (((const SteadStockLine *) answer->lines->pdata[i])->low);
}

/* --- strip --------------------------------------------------------------------------- */

static SteadStripAnswer *
strip (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadStripAnswer *answer = stead_strip_answer_new (farm->store, NULL, 0, &error);

  g_assert_no_error (error);
  return answer;
}

/* A sale comes soon, is today, and must be cashed up once it is over. */
static void
test_sale (Farm          *farm,
           gconstpointer  data)
{
  static const struct { int day; int n_tasks, n_warnings; } looks[] = {
    { -3, 0, 0 }, { -2, 1, 0 }, { -1, 1, 0 }, { 0, 1, 0 }, { 1, 0, 1 } };
  g_autoptr(SteadSale) sale = stead_sale_new ();
  SteadDay day = farm->today;

  sale->name = g_strdup ("Market");
  sale->day = day;
  sale->opens_min = 540;
  sale->closes_min = 780;
  FARM_DO (farm, stead_sale_repo_save (farm->store, sale, NULL, &farm_error));
  for (gsize i = 0; i < G_N_ELEMENTS (looks); i++)
    {
      g_autoptr(SteadDueAnswer) answer = NULL;

      stead_store_set_today (farm->store, day + looks[i].day);
      answer = ask (farm);
      g_assert_cmpint (count (answer, STEAD_DUE_TASK, STEAD_TARGET_SALE, sale->id), ==, looks[i].n_tasks);
      g_assert_cmpint (count (answer, STEAD_DUE_WARNING, STEAD_TARGET_SALE, sale->id), ==, looks[i].n_warnings);
    }
}

/* Where a post is narrow, the day of the sale stands alone; it is never cut off. */
static void
test_strip_in_brief (Farm          *farm,
                     gconstpointer  data)
{
  g_autoptr(SteadSale) sale = stead_sale_new ();
  g_autoptr(SteadStripAnswer) none = strip (farm);
  g_autoptr(SteadStripAnswer) soon = NULL;
  g_autoptr(SteadStripAnswer) now = NULL;
  g_autofree char *day = NULL;

  g_assert_null (none->sell_brief);
  g_assert_null (none->fund_brief);         /* no build yet */
  sale->name = g_strdup ("Market");
  sale->day = farm->today + 6;
  sale->opens_min = 540;
  sale->closes_min = 780;
  FARM_DO (farm, stead_sale_repo_save (farm->store, sale, NULL, &farm_error));
  day = stead_day_format (sale->day, STEAD_DAY_STYLE_SHORT);
  soon = strip (farm);
  g_assert_cmpstr (soon->sell_brief, ==, day);
  g_assert_nonnull (strstr (soon->sell, day));
  g_assert_cmpuint (strlen (soon->sell), >, strlen (day));
  stead_store_set_today (farm->store, sale->day);
  now = strip (farm);
  g_assert_null (now->sell_brief);
}

static void
test_strip (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadStripAnswer) before = strip (farm);
  g_autoptr(SteadStripAnswer) after = NULL;

  g_assert_true (before->today_warns);      /* a week without eggs in the log */
  NUMBERS_ARE (before->raise, 1);
  g_assert_cmpuint (strlen (before->price), >, 0);
  NUMBERS_ARE (before->keep, 0.00);
  farm_stock (farm);
  farm_log (farm);
  after = strip (farm);
  g_assert_false (after->today_warns);
  NUMBERS_ARE (after->price, 2.68);         /* the same 84 days as in the cost's test: 1.88 + 0.49 + 0.31 */
  NUMBERS_ARE (after->keep, 93.80);
}

static void
test_strip_of_nothing (void)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_create_memory ("Empty", &error);
  g_autoptr(SteadStripAnswer) answer = stead_strip_answer_new (store, NULL, 0, &error);

  g_assert_no_error (error);
  g_assert_false (answer->today_warns);
  g_assert_cmpuint (strlen (answer->today), >, 0);
  g_assert_cmpuint (strlen (answer->raise), >, 0);
  g_assert_cmpuint (strlen (answer->price), >, 0);
  NUMBERS_ARE (answer->keep, 0.00);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
#define ADD(name, test) g_test_add ("/answer/due/" name, Farm, NULL, farm_set_up, test, farm_tear_down)
  ADD ("morning-and-evening", test_morning_and_evening);
  ADD ("too-young", test_too_young);
  ADD ("bedding", test_bedding);
  ADD ("bedding-never", test_bedding_never);
  ADD ("gaps", test_gaps);
  ADD ("low-lay", test_low_lay);
  ADD ("uncovered", test_uncovered);
  ADD ("sale", test_sale);
  ADD ("strip-in-brief", test_strip_in_brief);
  ADD ("feed-low", test_feed_low);
  ADD ("feed-runs-out", test_feed_runs_out);
  ADD ("best-by", test_best_by);
  ADD ("no-price", test_no_price);
  ADD ("order", test_order);
  ADD ("ended-flock", test_ended_flock);
  ADD ("stock", test_stock);
  ADD ("stock-empty", test_stock_empty);
  ADD ("strip", test_strip);
#undef ADD
  g_test_add_func ("/answer/due/strip-of-nothing", test_strip_of_nothing);
  return g_test_run ();
}
