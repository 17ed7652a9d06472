/* test-statement.c - the statements: they balance to the cent, over thousands of histories.
 *
 * Expected values are not taken from the statements: they are kept beside each history as
 * it is made up, worked out by hand, or read through other repositories.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "answer/stead-statement-answer.h"
#include "core/stead-depreciation.h"
#include "core/stead-money.h"
#include "shoal.h"
#include "store/stead-closing-repo.h"
#include "store/stead-crop-repo.h"
#include "store/stead-harvest-repo.h"
#include "numbers.h"

typedef struct
{
  Shoal     shoal;
  Farm     *farm;
  gint64    till, bank, fund;
  gint64    eggs, tomatoes;          /* enterprises */
  gint64    fruit;                   /* an item from the farm */
  gint64    crop, late_crop, fish, second_fish;
  gint64    house, mixer;            /* assets: by parts; by units */
  gint64    advisor;
  SteadDay  first;                   /* nothing is earlier */
} World;

static gint64
save_account (World *world, const char *name, SteadAccountKind kind, gint64 cents)
{
  SteadAccount account = { .name = (char *) name, .kind = kind, .opened_on = world->first, .opening_cents = cents,
                           .closed_on = STEAD_DAY_NONE };

  FARM_DO (world->farm, stead_account_repo_save (world->farm->store, &account, &farm_error));
  return account.id;
}

static gint64
save_enterprise (World *world, const char *name)
{
  SteadEnterprise enterprise = { .name = (char *) name };

  FARM_DO (world->farm, stead_enterprise_repo_save (world->farm->store, &enterprise, &farm_error));
  return enterprise.id;
}

static gint64
save_crop (World *world, const char *name, SteadDay started, gint64 cents, gboolean gift)
{
  g_autoptr(SteadCrop) crop = stead_crop_new ();

  g_free (crop->batch.name);
  crop->batch.name = g_strdup (name);
  crop->batch.started_on = crop->set_out_on = started;
  crop->plants = 40;
  crop->cost_cents = cents;
  crop->is_gift = gift;
  FARM_DO (world->farm, stead_crop_repo_save (world->farm->store, crop, &farm_error));
  return crop->batch.id;
}

static gint64
save_asset (World *world, const char *name, SteadDay bought, gint64 cents, SteadShareBy share_by, gint64 first,
            gint64 second)
{
  g_autoptr(SteadAsset) asset = stead_asset_new ();
  SteadAssetShare one = { first, 0.5 }, two = { second, 0.3 };

  asset->name = g_strdup (name);
  asset->bought_on = bought;
  asset->cost_cents = cents;
  asset->life_years = 3;
  asset->salvage_cents = cents / 10;
  asset->share_by = share_by;
  g_array_append_val (asset->shares, one);
  g_array_append_val (asset->shares, two);
  FARM_DO (world->farm, stead_asset_repo_save (world->farm->store, asset, &farm_error));
  return asset->id;
}

static void
world_set_up (World *world)
{
  SteadItem item = { .name = (char *) "Tomatoes", .kind = STEAD_ITEM_PRODUCE, .unit = stead_unit_by_id ("kg"),
                     .reorder_base = NAN };
  SteadFund fund = { .name = (char *) "Pen", .closed_on = STEAD_DAY_NONE };
  SteadPerson advisor = { .name = (char *) "Ms. Reed", .role = STEAD_PERSON_ADVISOR, .left_on = STEAD_DAY_NONE };

  shoal_set_up (&world->shoal, NULL);
  world->farm = &world->shoal.farm;
  world->first = stead_day_new (2026, 1, 1);
  FARM_DO (world->farm, stead_item_repo_save (world->farm->store, &item, &farm_error)
                        && stead_fund_repo_save (world->farm->store, &fund, &farm_error)
                        && stead_person_repo_save (world->farm->store, &advisor, &farm_error));
  world->fruit = item.id;
  world->fund = fund.id;
  world->advisor = advisor.id;
  world->till = save_account (world, "Till", STEAD_ACCOUNT_TILL, 5000);
  world->bank = save_account (world, "School", STEAD_ACCOUNT_ACTIVITY, 80000);
  world->eggs = save_enterprise (world, "Eggs");
  world->tomatoes = save_enterprise (world, "Tomatoes");
  world->crop = save_crop (world, "Tomatoes bay 1", world->first + 5, 3700, FALSE);
  world->late_crop = save_crop (world, "Tomatoes bay 2", world->first + 31, 2100, TRUE);
  world->fish = world->shoal.fish;
  world->second_fish = shoal_group (&world->shoal, "Tilapia 2", shoal_tank (&world->shoal, "Tank B", 1500), 90, 60, 40);
  save_asset (world, "Hen house", world->first - 200, 120000, STEAD_SHARE_PARTS, world->farm->flock, world->crop);
  save_asset (world, "Fan", world->first + 3, 33333, STEAD_SHARE_DAYS, world->crop, world->late_crop);
  save_asset (world, "Cart", world->first + 10, 7777, STEAD_SHARE_USE, world->fish, world->crop);
  FARM_DO (world->farm, stead_enterprise_repo_set_batch (world->farm->store, world->farm->flock, world->eggs, &farm_error)
                        && stead_enterprise_repo_set_product (world->farm->store, world->farm->product, world->eggs, &farm_error)
                        && stead_enterprise_repo_set_batch (world->farm->store, world->crop, world->tomatoes, &farm_error)
                        && stead_enterprise_repo_set_batch (world->farm->store, world->late_crop, world->tomatoes, &farm_error));
}

/* --- histories ------------------------------------------------------------------------ */

/* What a history did, kept beside it. */
typedef struct
{
  SteadDay day;
  gint64   cents;
} Done;

typedef struct
{
  World  *world;
  GRand  *rand;
  GArray *bought;      /* of Done: cost of receipts, as they came */
  GArray *put_in;      /* of Done: own money, grants, gifts in kind */
  GArray *taken_out;
  GArray *cash;        /* of Done: all that moved in or out of the farm */
  GArray *lines;       /* of gint64: cash lines that can be corrected */
  GArray *lots;        /* of gint64: ids, filled lazily */
  gboolean failed;
} History;

static SteadDay
any_day (History *history)
{
  return history->world->first + g_rand_int_range (history->rand, 0, 90);
}

/* A day some days after @day, at most today. */
static SteadDay
later_day (History *history, SteadDay day, int most)
{
  SteadDay later = day + g_rand_int_range (history->rand, 0, most);

  return MIN (history->world->farm->today, later);
}

static SteadDay
day_from (History *history, SteadDay first)
{
  SteadDay day = any_day (history);

  return MAX (day, first);
}

static gint64
any_cents (History *history)
{
  return g_rand_int_range (history->rand, 1, 9000);
}

static void
note (GArray *done, SteadDay day, gint64 cents)
{
  Done one = { day, cents };

  g_array_append_val (done, one);
}

static gint64
sum_until (const GArray *done, SteadDay from, SteadDay to)
{
  gint64 cents = 0;

  for (guint i = 0; i < done->len; i++)
    {
      const Done *one = &g_array_index (done, Done, i);

      cents += one->day >= from && one->day <= to ? one->cents : 0;
    }
  return cents;
}

static gboolean
do_receipt (History *history, GError **error)
{
  World *world = history->world;
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
  const gint64 items[] = { world->farm->feed, world->farm->carton, world->farm->straw, world->shoal.pellets };
  int n = g_rand_int_range (history->rand, 1, 4);

  receipt->day = any_day (history);
  receipt->supplier = g_strdup ("Store");
  receipt->is_gift = g_rand_int_range (history->rand, 0, 6) == 0;
  for (int i = 0; i < n; i++)
    {
      SteadReceiptLine line = { .item_id = items[g_rand_int_range (history->rand, 0, 4)], .best_by = STEAD_DAY_NONE,
                                .quantity_base = g_rand_double_range (history->rand, 1, 60),
                                .cost_cents = any_cents (history) };

      g_array_append_val (receipt->lines, line);
    }
  if (!stead_receipt_repo_save (world->farm->store, receipt, error))
    return FALSE;
  note (history->bought, receipt->day, stead_receipt_total_cents (receipt));
  if (receipt->is_gift)
    note (history->put_in, receipt->day, stead_receipt_total_cents (receipt));
  if (!receipt->is_gift && g_rand_boolean (history->rand))
    {
      g_autoptr(SteadCashLine) line = stead_cash_line_new ();

      line->account_id = world->bank;
      line->day = later_day (history, receipt->day, 20);
      line->cents = -stead_receipt_total_cents (receipt) + g_rand_int_range (history->rand, -1, 2) * 100;
      line->cents = line->cents >= 0 ? -1 : line->cents;
      line->category = STEAD_CASH_SUPPLIES;
      line->receipt_id = receipt->id;
      if (!stead_cash_repo_save (world->farm->store, line, error))
        return FALSE;
      note (history->cash, line->day, line->cents);
    }
  /* Some were written down wrong, signed, and corrected on a later day. */
  if (g_rand_int_range (history->rand, 0, 4) == 0)
    {
      g_autoptr(SteadReceipt) right = stead_receipt_new ();

      right->day = receipt->day;
      right->supplier = g_strdup ("Store");
      right->is_gift = receipt->is_gift;
      right->corrects_id = receipt->id;
      for (guint i = 0; i < receipt->lines->len; i++)
        {
          SteadReceiptLine line = g_array_index (receipt->lines, SteadReceiptLine, i);

          line.id = 0;
          line.cost_cents = any_cents (history);
          g_array_append_val (right->lines, line);
        }
      if (!stead_receipt_repo_sign (world->farm->store, receipt->id, world->advisor, error)
          || !stead_receipt_repo_save (world->farm->store, right, error))
        return FALSE;
      note (history->bought, receipt->day, stead_receipt_total_cents (right) - stead_receipt_total_cents (receipt));
      if (receipt->is_gift)
        note (history->put_in, receipt->day, stead_receipt_total_cents (right) - stead_receipt_total_cents (receipt));
    }
  return TRUE;
}

static gboolean
do_use (History *history, GError **error)
{
  World *world = history->world;
  const gint64 batches[] = { world->farm->flock, world->crop, world->fish };
  g_autoptr(GPtrArray) lots = stead_lot_repo_list (world->farm->store, FALSE, error);
  g_autoptr(GError) refused = NULL;
  const SteadLot *lot;
  double base;
  SteadDay day;

  if (lots == NULL)
    return FALSE;
  if (lots->len == 0)
    return TRUE;
  lot = lots->pdata[g_rand_int_range (history->rand, 0, (gint32) lots->len)];
  day = later_day (history, MAX (lot->day, world->first + 6), 30);
  base = g_rand_int_range (history->rand, 0, 4) == 0 ? lot->on_hand_base
         : lot->on_hand_base * g_rand_double_range (history->rand, 0.1, 0.9);
  switch (g_rand_int_range (history->rand, 0, 7))
    {
    case 0:
      return stead_lot_repo_adjust (world->farm->store, lot->id, STEAD_MOVE_LOST, day, -base, "Mice", 0, &refused)
             || refused != NULL;
    case 1:
      return stead_lot_repo_adjust (world->farm->store, lot->id, STEAD_MOVE_GIVEN, day, -base, "Neighbor", 0, &refused)
             || refused != NULL;
    case 2:
      return stead_lot_repo_adjust (world->farm->store, lot->id, STEAD_MOVE_COUNTED, day,
                                    g_rand_boolean (history->rand) ? 1 : -base, "Count", 0, &refused)
             || refused != NULL;
    case 3:
    case 4:
      return stead_lot_repo_sell (world->farm->store, lot->item_id, day, base, "Market", 0, &refused) || refused != NULL;
    default:
      return stead_lot_repo_use (world->farm->store, lot->item_id, batches[g_rand_int_range (history->rand, 0, 3)], day,
                                 base, 0, &refused) || refused != NULL;
    }
}

static gboolean
do_log (History *history, GError **error)
{
  World *world = history->world;
  SteadFlockEntry entry = { .flock_id = world->farm->flock, .day = any_day (history),
                            .eggs = g_rand_int_range (history->rand, 0, 10), .feed_kg = g_rand_double (history->rand) * 3 };

  return stead_flock_repo_save_entry (world->farm->store, &entry, error);
}

static gboolean
do_harvest (History *history, GError **error)
{
  World *world = history->world;
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
  gint64 crops[] = { world->crop, world->late_crop };

  harvest->batch_id = crops[g_rand_int_range (history->rand, 0, 2)];
  harvest->day = day_from (history, world->first + 31);
  harvest->item_id = world->fruit;
  harvest->quantity_base = g_rand_double_range (history->rand, 0.5, 20);
  harvest->cost_cents = g_rand_int_range (history->rand, 0, 3000);
  harvest->pieces = STEAD_COUNT_NONE;
  return stead_harvest_repo_save (world->farm->store, harvest, error);
}

static gboolean
do_cash (History *history, GError **error)
{
  World *world = history->world;
  g_autoptr(SteadCashLine) line = stead_cash_line_new ();
  int sign;

  line->category = (SteadCashCategory) g_rand_int_range (history->rand, 0, STEAD_CASH_TRANSFER);
  sign = stead_cash_category_sign (line->category);
  if (sign == 0)
    sign = g_rand_boolean (history->rand) ? 1 : -1;
  line->cents = sign * any_cents (history);
  line->day = any_day (history);
  line->account_id = g_rand_boolean (history->rand) ? world->till : world->bank;
  line->fund_id = g_rand_int_range (history->rand, 0, 3) == 0 ? world->fund : 0;
  line->batch_id = g_rand_int_range (history->rand, 0, 3) == 0 ? world->crop : 0;
  line->product_id = g_rand_int_range (history->rand, 0, 2) == 0 ? world->farm->product : 0;
  if (!stead_cash_repo_save (world->farm->store, line, error))
    return FALSE;
  note (history->cash, line->day, line->cents);
  if (line->category == STEAD_CASH_PUT_IN || line->category == STEAD_CASH_GRANT)
    note (history->put_in, line->day, line->cents);
  else if (line->category == STEAD_CASH_TAKEN_OUT)
    note (history->taken_out, line->day, -line->cents);
  if (g_rand_int_range (history->rand, 0, 5) == 0)
    {
      g_autoptr(SteadCashLine) right = stead_cash_line_copy (line);
      SteadDay day = later_day (history, line->day, 30);
      gint64 off;

      right->cents = sign * any_cents (history);
      off = right->cents - line->cents;
      if (!stead_cash_repo_correct (world->farm->store, line->id, day, right, "Wrong", 0, error))
        return FALSE;
      note (history->cash, day, off);
      if (line->category == STEAD_CASH_PUT_IN || line->category == STEAD_CASH_GRANT)
        note (history->put_in, day, off);
      else if (line->category == STEAD_CASH_TAKEN_OUT)
        note (history->taken_out, day, -off);
    }
  return TRUE;
}

static gboolean
do_transfer (History *history, GError **error)
{
  World *world = history->world;
  SteadTransfer transfer = { .day = any_day (history), .cents = any_cents (history), .from_account = world->till,
                             .to_account = world->bank,
                             .to_fund = g_rand_boolean (history->rand) ? world->fund : 0 };

  return stead_cash_repo_transfer (world->farm->store, &transfer, error) != 0;
}

/* A thing that is bought, perhaps used, and perhaps sold or broken again. */
static gboolean
do_thing (History *history, GError **error)
{
  World *world = history->world;
  g_autoptr(SteadAsset) asset = stead_asset_new ();
  SteadAssetShare one = { world->crop, 0.4 }, two = { world->fish, 0.6 };
  const gint64 batches[] = { world->farm->flock, world->crop, world->fish };

  asset->name = g_strdup_printf ("Thing %u", g_rand_int (history->rand));
  asset->bought_on = any_day (history);
  asset->cost_cents = any_cents (history);
  asset->extra_cents = g_rand_int_range (history->rand, 0, 300);
  asset->salvage_cents = g_rand_int_range (history->rand, 0, (gint32) asset->cost_cents);
  asset->method = g_rand_int_range (history->rand, 0, 3);
  asset->life_years = g_rand_double_range (history->rand, 0.1, 4);
  asset->life_units = 20;
  asset->share_by = g_rand_int_range (history->rand, 0, 4);
  g_array_append_val (asset->shares, one);
  g_array_append_val (asset->shares, two);
  if (!stead_asset_repo_save (world->farm->store, asset, error))
    return FALSE;
  for (int i = 0; i < 4; i++)
    if ((asset->method == STEAD_DEPRECIATION_UNITS || asset->share_by == STEAD_SHARE_USE)
        && !stead_asset_repo_add_use (world->farm->store, asset->id, batches[g_rand_int_range (history->rand, 0, 3)],
                                      later_day (history, asset->bought_on, 40),
                                      g_rand_double_range (history->rand, 0.5, 9), error))
      return FALSE;
  if (g_rand_boolean (history->rand))
    return TRUE;
  asset->gone_on = later_day (history, asset->bought_on, 50);
  asset->gone_cents = g_rand_boolean (history->rand) ? any_cents (history) : -1;
  return stead_asset_repo_save (world->farm->store, asset, error);
}

/* Fish that move take a part of their cost along. */
static gboolean
do_move (History *history, GError **error)
{
  World *world = history->world;
  g_autoptr(GError) refused = NULL;
  SteadFishMove move = { .day = day_from (history, world->farm->today - 30), .from_id = world->fish,
                         .to_id = world->second_fish, .n = 3, .mean_g = 60,
                         .cost_cents = g_rand_int_range (history->rand, 0, 500) };

  return stead_fish_repo_save_move (world->farm->store, &move, &refused) || refused != NULL;
}

static gboolean
do_end (History *history, GError **error)
{
  if (g_rand_int_range (history->rand, 0, 4) != 0)
    return TRUE;
  return stead_batch_repo_end (history->world->farm->store, history->world->late_crop, history->world->farm->today, error);
}

static gboolean
history_run (History *history, int acts)
{
  static gboolean (* const todo[]) (History *, GError **) = { do_receipt, do_use, do_use, do_log, do_harvest, do_cash,
                                                              do_cash, do_transfer, do_thing, do_move };
  g_autoptr(GError) error = NULL;

  for (int i = 0; i < acts; i++)
    if (!todo[g_rand_int_range (history->rand, 0, G_N_ELEMENTS (todo))] (history, &error))
      {
        g_test_message ("left: %s", error->message);
        return FALSE;
      }
  return do_end (history, &error) || error != NULL;
}

/* --- what must hold of any ----------------------------------------------------------------- */

static void
assert_lines (const SteadStatementAnswer *answer)
{
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadStatementLine *line = answer->lines->pdata[i];
      gint64 sum = 0;

      for (guint j = 0; j < line->entries->len; j++)
        sum += g_array_index (line->entries, SteadStatementEntry, j).cents;
      if (!line->is_total && !g_str_has_prefix (line->name, "fund_"))
        g_assert_cmpint (sum, ==, line->cents);
    }
}

static void
assert_balances (const SteadStatementAnswer *answer)
{
  g_assert_cmpint (answer->worth_end, ==, answer->worth_before + answer->put_in + answer->net - answer->taken_out);
  g_assert_cmpint (answer->owned_end - answer->owed_end, ==, answer->worth_end);
  g_assert_cmpint (answer->owned_before - answer->owed_before, ==, answer->worth_before);
  g_assert_cmpint (answer->cash_end, ==,
                   answer->cash_before + answer->operating + answer->investing + answer->financing);
  /* The same net by the books' own method: core knows nothing of postings. */
  g_assert_cmpint (stead_money_round (stead_accrual_net_cents (&answer->accrual)), ==, answer->net - answer->gone);
  g_assert_cmpint (answer->cost.put, ==, answer->cost.stock + answer->cost.growing + answer->cost.sold
                                         + answer->cost.eggs + answer->cost.lost + answer->cost.given
                                         + answer->cost.counted + answer->cost.left);
}

/* Against what the history kept, and against other repositories. */
static void
assert_kept (const History *history, const SteadStatementAnswer *answer)
{
  World *world = history->world;
  g_autoptr(GPtrArray) lots = NULL;
  gint64 cents, stock = 0, starts = 0;

  g_assert_true (stead_cash_repo_balance (world->farm->store, 0, STEAD_FUND_ANY, answer->to, &cents, NULL));
  g_assert_cmpint (answer->cash_end, ==, cents);
  g_assert_cmpint (answer->cash_end, ==, 85000 + sum_until (history->cash, world->first, answer->to));
  /* Openings and the crop that was given are in the set-up. */
  g_assert_cmpint (answer->taken_out, ==, sum_until (history->taken_out, answer->from, answer->to));
  cents = sum_until (history->put_in, answer->from, answer->to);
  cents += answer->from <= world->first ? 85000 : 0;
  cents += answer->from <= world->first + 31 && answer->to >= world->first + 31 ? 2100 : 0;
  g_assert_cmpint (answer->put_in, ==, cents);
  if (answer->to < world->farm->today)
    return;
  lots = stead_lot_repo_list (world->farm->store, FALSE, NULL);
  for (guint i = 0; i < lots->len; i++)
    stock += ((SteadLot *) lots->pdata[i])->on_hand_cents;
  g_assert_cmpint (answer->cost.stock, ==, stock);
  /* The flock, two groups of fish, two crops, everything bought, and what things wore in batches. */
  starts = 14000 + 10000 + 10000 + 3700 + 2100;
  cents = answer->cost.put - starts - sum_until (history->bought, world->first, answer->to);
  if (answer->from <= world->first - 200)
    {
      const SteadStatementLine *wear = stead_statement_answer_line (answer, STEAD_STATEMENT_INCOME, "wear");

      g_assert_cmpint (cents, ==, (gint64) answer->accrual.depreciation + (wear != NULL ? wear->cents : 0));
    }
}

/* The parts of two spans that meet sum to the span. */
static void
assert_meets (History *history, SteadDay from, SteadDay to)
{
  World *world = history->world;
  SteadDay middle = from + g_rand_int_range (history->rand, 0, to - from);
  g_autoptr(SteadStatementAnswer) whole = stead_statement_answer_new (world->farm->store, from, to, 0, NULL);
  g_autoptr(SteadStatementAnswer) first = stead_statement_answer_new (world->farm->store, from, middle, 0, NULL);
  g_autoptr(SteadStatementAnswer) second = stead_statement_answer_new (world->farm->store, middle + 1, to, 0, NULL);

  g_assert_cmpint (first->net + second->net, ==, whole->net);
  g_assert_cmpint (first->operating + second->operating, ==, whole->operating);
  g_assert_cmpint (first->worth_end, ==, second->worth_before);
  g_assert_cmpint (second->worth_end, ==, whole->worth_end);
}

static void
check_history (History *history)
{
  World *world = history->world;
  SteadDay from = world->first + g_rand_int_range (history->rand, 0, 50);
  SteadDay to = from + g_rand_int_range (history->rand, 1, 38);
  g_autoptr(SteadStatementAnswer) part = stead_statement_answer_new (world->farm->store, from, to, 0, NULL);
  g_autoptr(SteadStatementAnswer) all = stead_statement_answer_new (world->farm->store, world->first - 300,
                                                                    world->farm->today, 0, NULL);

  g_assert_nonnull (part);
  g_assert_nonnull (all);
  assert_lines (part);
  assert_lines (all);
  assert_balances (part);
  assert_balances (all);
  assert_kept (history, part);
  assert_kept (history, all);
  g_assert_cmpint (all->worth_before, ==, 0);
  if (g_rand_int_range (history->rand, 0, 10) == 0)
    assert_meets (history, from, to);
}

/* Returns: whether the history could be told at all */
static gboolean
one_history (World *world, guint32 seed)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (seed);
  g_autoptr(GArray) bought = g_array_new (FALSE, FALSE, sizeof (Done));
  g_autoptr(GArray) put_in = g_array_new (FALSE, FALSE, sizeof (Done));
  g_autoptr(GArray) taken_out = g_array_new (FALSE, FALSE, sizeof (Done));
  g_autoptr(GArray) cash = g_array_new (FALSE, FALSE, sizeof (Done));
  g_autoptr(GError) error = NULL;
  History history = { .world = world, .rand = rand, .bought = bought, .put_in = put_in, .taken_out = taken_out,
                      .cash = cash };
  gboolean told;

  g_test_message ("seed %u", seed);
  g_assert_true (stead_store_begin (world->farm->store, "History", &error));
  told = history_run (&history, g_rand_int_range (rand, 3, 30));
  if (told)
    check_history (&history);
  stead_store_rollback (world->farm->store);
  return told;
}

static void
test_histories (void)
{
  const char *asked = g_getenv ("STEAD_HISTORIES");
  guint n = asked != NULL ? (guint) g_ascii_strtoull (asked, NULL, 10) : 2000, told = 0;
  World world = { 0 };

  world_set_up (&world);
  for (guint i = 0; i < n; i++)
    told += one_history (&world, 20260331 + i);
  g_test_message ("%u of %u told", told, n);
  g_assert_cmpuint (told, >, n * 8 / 10);
  shoal_tear_down (&world.shoal, NULL);
}

/* --- a month worked out by hand -------------------------------------------------------------- */

static gint64
add_line (Farm *farm, gint64 account, SteadDay day, gint64 cents, SteadCashCategory category, gint64 fund,
          gint64 receipt, gint64 product)
{
  g_autoptr(SteadCashLine) line = stead_cash_line_new ();

  line->account_id = account;
  line->day = day;
  line->cents = cents;
  line->category = category;
  line->fund_id = fund;
  line->receipt_id = receipt;
  line->product_id = product;
  FARM_DO (farm, stead_cash_repo_save (farm->store, line, &farm_error));
  return line->id;
}

/* Ten hens for 140.00, worth 20.00 at the end, 300 eggs of each; eight eggs and 1 kg of feed a
 * day from January 1 (farm.h).  Feed of lot 1 lasts 50 days, until February 19; then it costs
 * 1.28 a kg.  The hen house is 365.00 for ten years: 0.10 a day, 60 % borne by the hens. */
static gint64
march_set_up (Farm *farm, gint64 *out_sale, gint64 *out_eggs)
{
  SteadAccount till = { .name = (char *) "Till", .kind = STEAD_ACCOUNT_TILL, .opened_on = stead_day_new (2026, 3, 1),
                        .opening_cents = 5000, .closed_on = STEAD_DAY_NONE };
  SteadFund fund = { .name = (char *) "Pen", .closed_on = STEAD_DAY_NONE };
  SteadEnterprise eggs = { .name = (char *) "Eggs" };
  g_autoptr(SteadAsset) house = stead_asset_new ();
  g_autoptr(GPtrArray) lots = NULL;
  SteadAssetShare share = { farm->flock, 0.6 };
  gint64 feed;

  farm_stock (farm);
  farm_log (farm);
  feed = 1;   /* the first receipt of farm_stock(): 60.00 of feed */
  house->name = g_strdup ("Hen house");
  house->bought_on = stead_day_new (2026, 1, 1);
  house->cost_cents = 36500;
  house->life_years = 10;
  g_array_append_val (house->shares, share);
  FARM_DO (farm, stead_asset_repo_save (farm->store, house, &farm_error)
                 && stead_account_repo_save (farm->store, &till, &farm_error)
                 && stead_fund_repo_save (farm->store, &fund, &farm_error)
                 && stead_enterprise_repo_save (farm->store, &eggs, &farm_error)
                 && stead_enterprise_repo_set_batch (farm->store, farm->flock, eggs.id, &farm_error)
                 && stead_enterprise_repo_set_product (farm->store, farm->product, eggs.id, &farm_error)
                 && stead_lot_repo_sell (farm->store, farm->carton, stead_day_new (2026, 3, 7), 20, "Market", 0,
                                         &farm_error));
  lots = stead_lot_repo_list (farm->store, FALSE, NULL);
  for (guint i = 0; i < lots->len; i++)
    if (((SteadLot *) lots->pdata[i])->item_id == farm->straw)
      FARM_DO (farm, stead_lot_repo_adjust (farm->store, ((SteadLot *) lots->pdata[i])->id, STEAD_MOVE_LOST,
                                            stead_day_new (2026, 3, 10), -1, "Wet", 0, &farm_error));
  *out_sale = add_line (farm, till.id, stead_day_new (2026, 3, 7), 9000, STEAD_CASH_SALES, 0, 0, farm->product);
  add_line (farm, till.id, stead_day_new (2026, 3, 7), -2000, STEAD_CASH_FEES, 0, 0, 0);
  add_line (farm, till.id, stead_day_new (2026, 3, 15), 10000, STEAD_CASH_GRANT, fund.id, 0, 0);
  add_line (farm, till.id, stead_day_new (2026, 3, 20), -6000, STEAD_CASH_SUPPLIES, 0, feed, 0);
  *out_eggs = eggs.id;
  return till.id;
}

static void
assert_line (const SteadStatementAnswer *answer, SteadStatementPart part, const char *name, gint64 before, gint64 cents)
{
  const SteadStatementLine *line = stead_statement_answer_line (answer, part, name);

  g_test_message ("%s", name);
  g_assert_nonnull (line);
  g_assert_cmpint (line->before_cents, ==, before);
  g_assert_cmpint (line->cents, ==, cents);
}

static void
test_march (void)
{
  Farm farm = { 0 };
  gint64 sale, eggs;
  g_autoptr(SteadStatementAnswer) bare = NULL;
  g_autoptr(SteadStatementAnswer) march = NULL;
  g_autoptr(SteadStatementAnswer) part = NULL;
  g_autoptr(GPtrArray) whys = NULL, whys_of_part = NULL;

  farm_set_up (&farm, NULL);
  bare = stead_statement_answer_new (farm.store, stead_day_new (2026, 3, 1), farm.today, 0, NULL);
  g_assert_false (bare->has_accounts);
  if (farm_in_english ())
    g_assert_nonnull (strstr (bare->sentence, "no sale and no payment"));
  march_set_up (&farm, &sale, &eggs);
  march = stead_statement_answer_new (farm.store, stead_day_new (2026, 3, 1), farm.today, 0, NULL);
  g_assert_nonnull (march);
  assert_line (march, STEAD_STATEMENT_CASH, "sales", 0, 9000);
  assert_line (march, STEAD_STATEMENT_CASH, "fees", 0, -2000);
  assert_line (march, STEAD_STATEMENT_CASH, "supplies", 0, -6000);
  assert_line (march, STEAD_STATEMENT_CASH, "operating", 0, 1000);
  assert_line (march, STEAD_STATEMENT_CASH, "financing", 0, 15000);
  assert_line (march, STEAD_STATEMENT_CASH, "cash_end", 0, 16000);
  assert_line (march, STEAD_STATEMENT_INCOME, "sales", 0, 9000);
  assert_line (march, STEAD_STATEMENT_INCOME, "sold", 0, -620);      /* 20 cartons of 0.31 */
  assert_line (march, STEAD_STATEMENT_INCOME, "eggs", 0, -4960);     /* 31 kg of 1.28; 248 eggs of 0.04 */
  assert_line (march, STEAD_STATEMENT_INCOME, "paid_fees", 0, -2000);
  assert_line (march, STEAD_STATEMENT_INCOME, "wear", 0, -310);      /* 31 days */
  assert_line (march, STEAD_STATEMENT_INCOME, "lost", 0, -500);
  assert_line (march, STEAD_STATEMENT_INCOME, "net", 0, 610);
  assert_line (march, STEAD_STATEMENT_BALANCE, "stock", 13348, 8260);
  assert_line (march, STEAD_STATEMENT_BALANCE, "flocks", 12112, 11120);
  assert_line (march, STEAD_STATEMENT_BALANCE, "things", 35910, 35600);
  assert_line (march, STEAD_STATEMENT_BALANCE, "owned", 61370, 70980);
  assert_line (march, STEAD_STATEMENT_BALANCE, "owed_receipts", -20500, -14500);
  assert_line (march, STEAD_STATEMENT_BALANCE, "owed_batches", -14000, -14000);
  assert_line (march, STEAD_STATEMENT_BALANCE, "owed_things", -36500, -36500);
  assert_line (march, STEAD_STATEMENT_BALANCE, "worth", -9630, 5980);
  assert_line (march, STEAD_STATEMENT_WORTH, "grant", 0, 10000);
  assert_line (march, STEAD_STATEMENT_WORTH, "opening", 0, 5000);
  g_assert_cmpint (march->restricted_end, ==, 10000);
  g_assert_cmpint (march->n_unpaid, ==, 3);
  g_assert_cmpint (march->unpaid_cents, ==, 14500);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (march->sentence, "earned <b>$6.10</b>"));
      g_assert_nonnull (strstr (march->sentence, "worth <b>$59.80</b>"));
      g_assert_nonnull (strstr (march->caution, "3 receipts of $145.00"));
    }
  whys = stead_statement_answer_whys (march);
  g_assert_cmpuint (whys->len, ==, 4);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[0])->worked, 0, 10, 0, 150, 160);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[1])->worked, 90, 6.2, 49.6, 20, 3.1, 5, 6.1);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[2])->worked, 709.8, 650, 59.8);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[3])->worked, 59.8, 96.3, 156.1, 6.1, 150, 0, 156.1);
  part = stead_statement_answer_new (farm.store, stead_day_new (2026, 3, 1), farm.today, eggs, NULL);
  whys_of_part = stead_statement_answer_whys (part);
  g_assert_cmpuint (whys_of_part->len, ==, 2);
  g_assert_cmpint (part->sales, ==, 9000);
  g_assert_cmpint (part->net, ==, 9000 - 4960 - 186);   /* 60 % of the house's wear */
  farm_tear_down (&farm, NULL);
}

/* What a closed period says stays so, whatever is entered and corrected later. */
static void
test_closed (void)
{
  Farm farm = { 0 };
  SteadPerson advisor = { .name = (char *) "Ms. Reed", .role = STEAD_PERSON_ADVISOR, .left_on = STEAD_DAY_NONE };
  SteadDay from = stead_day_new (2026, 3, 1), through = stead_day_new (2026, 3, 14);
  gint64 sale, eggs, till;
  g_autoptr(SteadStatementAnswer) before = NULL;
  g_autoptr(SteadStatementAnswer) after = NULL;
  g_autoptr(SteadStatementAnswer) later = NULL;
  g_autoptr(SteadReceipt) right = stead_receipt_new ();
  SteadReceiptLine line = { .quantity_base = 50, .cost_cents = 5000, .best_by = STEAD_DAY_NONE };

  farm_set_up (&farm, NULL);
  till = march_set_up (&farm, &sale, &eggs);
  FARM_DO (&farm, stead_person_repo_save (farm.store, &advisor, &farm_error)
                  && stead_receipt_repo_sign (farm.store, 2, advisor.id, &farm_error)
                  && stead_closing_repo_close (farm.store, through, advisor.id, NULL, &farm_error));
  before = stead_statement_answer_new (farm.store, from, through, 0, NULL);
  FARM_DO (&farm, stead_cash_repo_correct (farm.store, sale, through + 3, NULL, "Never sold", 0, &farm_error));
  add_line (&farm, till, through + 4, 700, STEAD_CASH_SALES, 0, 0, 0);
  farm_buy (&farm, through + 1, farm.feed, 10, 900, FALSE);
  /* The second lot of feed, 64.00, should have been 50.00. */
  line.item_id = farm.feed;
  right->supplier = g_strdup ("Lakeside Feed & Seed");
  right->day = through + 5;
  right->corrects_id = 2;
  g_array_append_val (right->lines, line);
  FARM_DO (&farm, stead_receipt_repo_save (farm.store, right, &farm_error));
  after = stead_statement_answer_new (farm.store, from, through, 0, NULL);
  g_assert_cmpuint (before->lines->len, ==, after->lines->len);
  for (guint i = 0; i < before->lines->len; i++)
    {
      const SteadStatementLine *a = before->lines->pdata[i], *b = after->lines->pdata[i];

      g_assert_cmpstr (a->name, ==, b->name);
      g_assert_cmpint (a->before_cents, ==, b->before_cents);
      g_assert_cmpint (a->cents, ==, b->cents);
    }
  later = stead_statement_answer_new (farm.store, through + 1, farm.today, 0, NULL);
  assert_balances (later);
  g_assert_cmpint (later->worth_before, ==, after->worth_end);
  g_assert_cmpint (later->sales, ==, 700 - 9000);
  farm_tear_down (&farm, NULL);
}

/* Twenty thousand lines of the cash book: a statement costs a few readings of them, not more
 * with each line. */
static void
test_large (void)
{
  Farm farm = { 0 };
  SteadAccount till = { .name = (char *) "Till", .kind = STEAD_ACCOUNT_TILL, .opened_on = stead_day_new (2026, 1, 1),
                        .closed_on = STEAD_DAY_NONE };
  g_autoptr(SteadStatementAnswer) answer = NULL;
  g_autoptr(GPtrArray) lines = NULL;
  g_autoptr(GError) error = NULL;
  SteadCashFilter filter;
  gint64 begin, read, state;

  farm_set_up (&farm, NULL);
  FARM_DO (&farm, stead_account_repo_save (farm.store, &till, &farm_error));
  g_assert_true (stead_store_begin (farm.store, "Lines", &error));
  for (int i = 0; i < 20000; i++)
    {
      g_autoptr(SteadCashLine) line = stead_cash_line_new ();

      line->account_id = till.id;
      line->day = stead_day_new (2026, 1, 1) + i % 90;
      line->cents = 100 + i % 7;
      line->category = STEAD_CASH_SALES;
      g_assert_true (stead_cash_repo_save (farm.store, line, &error));
    }
  g_assert_true (stead_store_commit (farm.store, &error));
  stead_cash_filter_init (&filter);
  begin = g_get_monotonic_time ();
  lines = stead_cash_repo_list (farm.store, &filter, &error);
  read = g_get_monotonic_time () - begin;
  begin = g_get_monotonic_time ();
  answer = stead_statement_answer_new (farm.store, stead_day_new (2026, 3, 1), farm.today, 0, &error);
  state = g_get_monotonic_time () - begin;
  g_test_message ("reading %g ms, statement %g ms, %.1f times", (double) read / 1000, (double) state / 1000,
                  (double) state / (double) read);
  g_assert_cmpuint (lines->len, ==, 20000);
  g_assert_cmpint (answer->sales, >, 0);
  g_assert_cmpint (state, <, 20 * read + 100000);
  farm_tear_down (&farm, NULL);
}

int
main (int argc, char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/statement/march", test_march);
  g_test_add_func ("/answer/statement/closed", test_closed);
  g_test_add_func ("/answer/statement/large", test_large);
  g_test_add_func ("/answer/statement/histories", test_histories);
  return g_test_run ();
}
