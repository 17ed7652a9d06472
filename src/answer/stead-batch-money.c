/* stead-batch-money.c - what went into a batch so far, and what will still go in. */
#include "config.h"

#include "answer/stead-batch-money.h"
#include "answer/stead-cost-private.h"

#include <math.h>

#include "store/stead-crop-repo.h"
#include "store/stead-fish-repo.h"

/* The days that what is used of late is averaged over; with fewer than half of them
 * nothing is made of it. */
#define LATE_DAYS 28

void
stead_batch_money_clear (SteadBatchMoney *money)
{
  g_clear_pointer (&money->batch, stead_batch_free);
  g_clear_pointer (&money->uses, g_ptr_array_unref);
}

/* --- so far --------------------------------------------------------------------- */

static void
add_uses (const GPtrArray  *uses,
          SteadBatchKind    kind,
          double           *cents,
          double           *gift)
{
  for (guint i = 0; i < uses->len; i++)
    {
      const SteadUse *use = uses->pdata[i];
      SteadCostKind part = stead_cost_kind_of_use (kind, use->kind);

      cents[part] += (double) use->cost_cents;
      if (use->uncovered_base > 0 && isfinite (use->uncovered_cents))
        cents[part] += use->uncovered_cents;
      if (gift != NULL)
        gift[part] += (double) use->gift_cents;
    }
}

static gboolean
read_uses (SteadStore       *store,
           SteadBatchMoney  *self,
           GError          **error)
{
  self->uses = stead_lot_repo_uses (store, self->batch->id, self->from, self->to, error);
  if (self->uses == NULL)
    return FALSE;
  add_uses (self->uses, self->batch->kind, self->so_far, self->gift);
  for (guint i = 0; i < self->uses->len; i++)
    {
      const SteadUse *use = self->uses->pdata[i];

      if (use->kind == STEAD_ITEM_FEED)
        self->fed_kg += use->quantity_base + use->uncovered_base;
    }
  return TRUE;
}

static gboolean
read_moves (SteadStore       *store,
            SteadBatchMoney  *self,
            GError          **error)
{
  g_autoptr(GPtrArray) moves = stead_fish_repo_moves (store, self->batch->id, error);

  for (guint i = 0; moves != NULL && i < moves->len; i++)
    {
      const SteadFishMove *move = moves->pdata[i];

      if (move->day > self->to)
        continue;
      if (move->to_id == self->batch->id)
        self->moved_in_cents += (double) move->cost_cents;
      else
        self->moved_out_cents += (double) move->cost_cents;
    }
  return moves != NULL;
}

static void
add_start (SteadBatchMoney *self,
           gint64           cents,
           gboolean         is_gift)
{
  self->start_cents = (double) cents;
  self->so_far[STEAD_COST_START] += (double) cents;
  self->gift[STEAD_COST_START] += is_gift ? (double) cents : 0;
}

/* The animals, the seed or plants, at their full price. */
static gboolean
read_start (SteadStore       *store,
            SteadBatchMoney  *self,
            GError          **error)
{
  g_autoptr(SteadFlock) flock = NULL;
  g_autoptr(SteadFish) fish = NULL;
  g_autoptr(SteadCrop) crop = NULL;

  switch (self->batch->kind)
    {
    case STEAD_BATCH_FLOCK:
      flock = stead_flock_repo_get (store, self->batch->id, error);
      if (flock == NULL
          || !stead_flock_repo_totals (store, self->batch->id, self->from, self->to, &self->laid, error))
        return FALSE;
      add_start (self, flock->birds_cost_cents, flock->birds_are_gift);
      self->salvage_cents = (double) flock->salvage_cents;
      return TRUE;
    case STEAD_BATCH_FISH:
      fish = stead_fish_repo_get (store, self->batch->id, error);
      if (fish == NULL || !read_moves (store, self, error))
        return FALSE;
      add_start (self, fish->cost_cents, fish->is_gift);
      self->so_far[STEAD_COST_START] += self->moved_in_cents;
      return TRUE;
    case STEAD_BATCH_CROP:
      crop = stead_crop_repo_get (store, self->batch->id, error);
      if (crop == NULL)
        return FALSE;
      add_start (self, crop->cost_cents, crop->is_gift);
      return TRUE;
    case STEAD_BATCH_KITCHEN:
    default:
      return TRUE;
    }
}

static gboolean
read_charges (SteadStore       *store,
              SteadBatchMoney  *self,
              GError          **error)
{
  g_autoptr(GPtrArray) charges = stead_asset_charges (store, self->batch->id, self->from, self->to, error);

  for (guint i = 0; charges != NULL && i < charges->len; i++)
    {
      const SteadAssetCharge *charge = charges->pdata[i];

      self->so_far[STEAD_COST_ASSETS] += charge->cents;
      self->gift[STEAD_COST_ASSETS] += charge->asset->is_gift ? charge->cents : 0;
    }
  return charges != NULL;
}

/* Sum of what is paid for: all but packaging, which goes with the product, and unpaid work. */
static double
sum_of (const double *cents)
{
  double sum = 0;

  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    if (kind != STEAD_COST_PACKAGING)
      sum += cents[kind];
  return sum;
}

/* Fish that moved to another group took their part of everything along. */
static void
take_off_moved (SteadBatchMoney *self)
{
  double sum = sum_of (self->so_far);

  self->kept_frac = sum > 0 ? CLAMP (1 - self->moved_out_cents / sum, 0, 1) : 1;
  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    {
      self->so_far[kind] *= self->kept_frac;
      self->gift[kind] *= self->kept_frac;
    }
}

/* --- to come ---------------------------------------------------------------------- */

/* Cents of the last four weeks, by kind, and their days; 0 days: too young to tell. */
static gboolean
read_late (SteadStore       *store,
           SteadBatchMoney  *self,
           double           *cents,
           int              *out_days,
           GError          **error)
{
  SteadDay from = MAX (self->from, self->to - LATE_DAYS + 1);
  int days = self->to - from + 1;
  g_autoptr(GPtrArray) uses = NULL;
  g_autoptr(GPtrArray) charges = NULL;

  *out_days = 0;
  if (days < LATE_DAYS / 2)
    return TRUE;
  uses = stead_lot_repo_uses (store, self->batch->id, from, self->to, error);
  charges = uses != NULL ? stead_asset_charges (store, self->batch->id, from, self->to, error) : NULL;
  if (charges == NULL)
    return FALSE;
  add_uses (uses, self->batch->kind, cents, NULL);
  for (guint i = 0; i < charges->len; i++)
    {
      const SteadAssetCharge *charge = charges->pdata[i];

      if (charge->asset->method == STEAD_DEPRECIATION_UNITS)
        cents[STEAD_COST_ASSETS] += charge->cents;
    }
  *out_days = days;
  return TRUE;
}

/* What wears by time charges the days to come; what wears by use, as of late. */
static gboolean
add_charges_to_come (SteadStore       *store,
                     SteadBatchMoney  *self,
                     double            late_day_cents,
                     GError          **error)
{
  g_autoptr(GPtrArray) charges = stead_asset_charges (store, self->batch->id, self->to + 1,
                                                      self->to + self->days_left, error);

  for (guint i = 0; charges != NULL && i < charges->len; i++)
    {
      const SteadAssetCharge *charge = charges->pdata[i];

      if (charge->asset->method != STEAD_DEPRECIATION_UNITS)
        self->to_come[STEAD_COST_ASSETS] += charge->cents;
    }
  self->to_come[STEAD_COST_ASSETS] += late_day_cents * self->days_left;
  return charges != NULL;
}

/* The next bag's price; else the plan's, else what it cost so far; NAN. */
static gboolean
read_feed_price (SteadStore             *store,
                 const SteadBatchMoney  *self,
                 double                 *out_cents,
                 GError                **error)
{
  SteadStock stock;

  *out_cents = NAN;
  if (self->batch->feed_item_id != 0)
    {
      if (!stead_lot_repo_stock (store, self->batch->feed_item_id, self->to, 1, &stock, error))
        return FALSE;
      *out_cents = stock.next_unit_cents;
    }
  if (isnan (*out_cents))
    *out_cents = self->plan.feed_cents_kg;
  if (isnan (*out_cents) && self->fed_kg > 0)
    *out_cents = self->so_far[STEAD_COST_FEED] / self->fed_kg;
  return TRUE;
}

/* What the plan has left; NAN without one, and where it is used up while animals still
 * have to eat. */
static double
planned_feed_left (const SteadBatchMoney *self)
{
  double left = self->plan.feed_kg - self->fed_kg;

  return left > 0 || self->days_left == 0 ? MAX (0, left) : NAN;
}

static gboolean
add_feed_to_come (SteadStore       *store,
                  SteadBatchMoney  *self,
                  double            late_day_cents,
                  GError          **error)
{
  double price, kg = self->outlook.feed_kg;

  self->feed_basis = STEAD_TO_COME_FORECAST;
  if (isnan (kg))
    {
      self->feed_basis = STEAD_TO_COME_PLAN;
      kg = isnan (self->plan.feed_kg) ? NAN : planned_feed_left (self);
    }
  if (!read_feed_price (store, self, &price, error))
    return FALSE;
  if (!isnan (kg) && (isfinite (price) || !(kg > 0)))
    {
      self->feed_to_come_kg = kg;
      self->to_come[STEAD_COST_FEED] = kg > 0 ? kg * price : 0;
      return TRUE;
    }
  self->feed_basis = self->days_left > 0 ? STEAD_TO_COME_LATE : STEAD_TO_COME_NOTHING;
  self->to_come[STEAD_COST_FEED] = late_day_cents * self->days_left;
  return TRUE;
}

/* All that the plan has left for other costs goes to supplies; without a plan, and where
 * all of it is spent before the end, as of late. */
static void
add_other_to_come (SteadBatchMoney *self,
                   const double    *late_cents,
                   int              late_days)
{
  double spent = self->so_far[STEAD_COST_BEDDING] + self->so_far[STEAD_COST_SUPPLIES]
                 + self->so_far[STEAD_COST_ASSETS] + self->to_come[STEAD_COST_ASSETS];

  if (self->plan.other_cents > spent)
    self->to_come[STEAD_COST_SUPPLIES] = self->plan.other_cents - spent;
  else if (late_days > 0)
    {
      self->to_come[STEAD_COST_BEDDING] = late_cents[STEAD_COST_BEDDING] / late_days * self->days_left;
      self->to_come[STEAD_COST_SUPPLIES] = late_cents[STEAD_COST_SUPPLIES] / late_days * self->days_left;
    }
}

static gboolean
read_to_come (SteadStore       *store,
              SteadBatchMoney  *self,
              GError          **error)
{
  double late[STEAD_N_COST_KINDS] = { 0 };
  int late_days = 0;

  self->feed_to_come_kg = NAN;
  if (self->outlook.basis == STEAD_OUTLOOK_OVER)
    return TRUE;
  if (self->outlook.ends_on != STEAD_DAY_NONE && self->outlook.ends_on > self->to)
    self->days_left = self->outlook.ends_on - self->to;
  if (!read_late (store, self, late, &late_days, error)
      || !add_charges_to_come (store, self, late_days > 0 ? late[STEAD_COST_ASSETS] / late_days : 0, error)
      || !add_feed_to_come (store, self, late_days > 0 ? late[STEAD_COST_FEED] / late_days : 0, error))
    return FALSE;
  add_other_to_come (self, late, late_days);
  return TRUE;
}

/* --- all -------------------------------------------------------------------------- */

static void
add_labor (SteadBatchMoney *self,
           const SteadFarm *farm)
{
  double day_cents = self->batch->care_minutes_day / 60 * (double) farm->labor_cents_hour;

  self->so_far[STEAD_COST_LABOR] = day_cents * self->days;
  self->to_come[STEAD_COST_LABOR] = day_cents * self->days_left;
}

static void
sum_up (SteadBatchMoney *self)
{
  self->good_base = self->batch->kind == STEAD_BATCH_FLOCK
                    ? (double) (self->laid.eggs - self->laid.cracked) : self->harvested.good_base;
  self->cost = (SteadBatchCost) {
    .so_far_cents = sum_of (self->so_far),
    .to_come_cents = sum_of (self->to_come) - self->salvage_cents,
    .good_base = self->good_base,
    .expected_base = isnan (self->outlook.expected_base) ? 0 : self->outlook.expected_base,
    .carried_cents = self->harvested.cost_cents,
  };
}

gboolean
stead_batch_money_read (SteadStore       *store,
                        const SteadFarm  *farm,
                        gint64            batch_id,
                        SteadBatchMoney  *out,
                        GError          **error)
{
  g_auto(SteadBatchMoney) self = { 0 };
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_STORE (store) && farm != NULL && out != NULL, FALSE);
  today = stead_store_get_today (store);
  self.batch = stead_batch_repo_get (store, batch_id, error);
  if (self.batch == NULL)
    return FALSE;
  self.from = self.batch->started_on;
  self.to = MAX (self.from, self.batch->ended_on == STEAD_DAY_NONE ? today : MIN (today, self.batch->ended_on));
  self.days = self.to - self.from + 1;
  if (!stead_batch_repo_plan (store, batch_id, &self.plan, error)
      || !stead_batch_outlook_read (store, self.batch, &self.outlook, error)
      || !stead_harvest_repo_totals (store, batch_id, self.from, self.to, &self.harvested, error)
      || !read_uses (store, &self, error)
      || !read_start (store, &self, error)
      || !read_charges (store, &self, error))
    return FALSE;
  take_off_moved (&self);
  if (!read_to_come (store, &self, error))
    return FALSE;
  add_labor (&self, farm);
  sum_up (&self);
  *out = self;
  self = (SteadBatchMoney) { 0 };
  return TRUE;
}
