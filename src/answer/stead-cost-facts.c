/* stead-cost-facts.c - reads what one unit costs out of the farm.
 *
 * The sheet is that of the whole flock: its costs of the period over all of its
 * good eggs, as if all were packed like this product.  So one egg carries the
 * same cost whichever product it ends in, and of several products of one flock
 * none is charged twice.  (Common practice, no source.)
 */
#include "config.h"

#include "answer/stead-cost-private.h"

#include <math.h>

void
stead_asset_charge_free (SteadAssetCharge *charge)
{
  if (charge == NULL)
    return;
  stead_asset_free (charge->asset);
  g_free (charge);
}

void
stead_pack_cost_free (SteadPackCost *pack)
{
  if (pack == NULL)
    return;
  stead_item_free (pack->item);
  g_free (pack);
}

void
stead_cost_facts_clear (SteadCostFacts *facts)
{
  g_clear_pointer (&facts->charges, g_ptr_array_unref);
  g_clear_pointer (&facts->packs, g_ptr_array_unref);
}

SteadDepreciable
stead_asset_depreciable (const SteadAsset *asset)
{
  return (SteadDepreciable) {
    .method = asset->method,
    .basis_cents = (double) (asset->cost_cents + asset->extra_cents),
    .salvage_cents = (double) asset->salvage_cents,
    .life_years = asset->life_years,
    .life_units = asset->life_units,
  };
}

/* Straight line and declining balance: by the days in use. */
static gboolean
charge_time (SteadStore        *store,
             SteadAssetCharge  *charge,
             gint64             batch_id,
             SteadDay           from,
             SteadDay           to,
             GError           **error)
{
  const SteadAsset *asset = charge->asset;
  SteadDepreciable thing = stead_asset_depreciable (asset);
  SteadDay first = MAX (from, asset->bought_on);
  SteadDay last = asset->gone_on == STEAD_DAY_NONE ? to : MIN (to, asset->gone_on);
  double all;

  if (last < first)
    return TRUE;
  if (!stead_asset_share_cents (store, asset, batch_id, first, last, &charge->cents, error))
    return FALSE;
  charge->days = last - first + 1;
  charge->from_years = (first - asset->bought_on) / STEAD_DAYS_A_YEAR;
  charge->to_years = (last + 1 - asset->bought_on) / STEAD_DAYS_A_YEAR;
  all = stead_depreciation_between (&thing, charge->from_years, charge->to_years);
  charge->frac = all > 0 ? charge->cents / all : 0;
  return TRUE;
}

/* By units: each use names the batch that it was for, so no share is taken. */
static gboolean
charge_units (SteadStore        *store,
              SteadAssetCharge  *charge,
              gint64             batch_id,
              SteadDay           from,
              SteadDay           to,
              GError           **error)
{
  SteadDepreciable thing = stead_asset_depreciable (charge->asset);

  charge->frac = 1;
  if (!stead_asset_repo_uses (store, charge->asset->id, batch_id, from, to, &charge->units,
                              &charge->units_before, error))
    return FALSE;
  charge->cents = stead_depreciation_for_use (&thing, charge->units_before, charge->units);
  return TRUE;
}

GPtrArray *
stead_asset_charges (SteadStore  *store,
                     gint64       batch_id,
                     SteadDay     from,
                     SteadDay     to,
                     GError     **error)
{
  g_autoptr(GPtrArray) assets = stead_asset_repo_list (store, error);
  g_autoptr(GPtrArray) charges = NULL;

  if (assets == NULL)
    return NULL;
  charges = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_asset_charge_free);
  while (assets->len > 0)
    {
      g_autoptr(SteadAssetCharge) charge = g_new0 (SteadAssetCharge, 1);

      charge->asset = g_ptr_array_steal_index (assets, 0);
      if (charge->asset->method != STEAD_DEPRECIATION_UNITS
          ? !charge_time (store, charge, batch_id, from, to, error)
          : !charge_units (store, charge, batch_id, from, to, error))
        return NULL;
      if (charge->cents > 0)
        g_ptr_array_add (charges, g_steal_pointer (&charge));
    }
  return g_steal_pointer (&charges);
}

/* Fish, seed and ingredients out of the store room are what a tank, a bed or a pot begins
 * with; a flock's birds are spread over their lay by their own rule. */
SteadCostKind
stead_cost_kind_of_use (SteadBatchKind batch,
                        SteadItemKind  item)
{
  switch (item)
    {
    case STEAD_ITEM_FEED: return STEAD_COST_FEED;
    case STEAD_ITEM_BEDDING: return STEAD_COST_BEDDING;
    case STEAD_ITEM_SEED:
    case STEAD_ITEM_LIVESTOCK:
      return batch == STEAD_BATCH_FLOCK ? STEAD_COST_SUPPLIES : STEAD_COST_START;
    case STEAD_ITEM_INGREDIENT:
    case STEAD_ITEM_PRODUCE:
      return batch == STEAD_BATCH_KITCHEN ? STEAD_COST_START : STEAD_COST_SUPPLIES;
    case STEAD_ITEM_PACKAGING:
    case STEAD_ITEM_SUPPLY:
    default: return STEAD_COST_SUPPLIES;
    }
}

SteadBatchKind
stead_cost_batch_kind (const SteadCostAnswer *answer)
{
  return answer->batch != NULL ? answer->batch->kind : STEAD_BATCH_KITCHEN;
}

void
stead_cost_add_uses (SteadCostAnswer *answer)
{
  for (guint i = 0; i < answer->uses->len; i++)
    {
      const SteadUse *use = answer->uses->pdata[i];
      SteadCostPart *part = &answer->sheet.parts[stead_cost_kind_of_use (stead_cost_batch_kind (answer), use->kind)];

      part->total_cents += (double) use->cost_cents;
      part->gift_cents += (double) use->gift_cents;
      if (use->uncovered_base > 0 && isfinite (use->uncovered_cents))
        part->total_cents += use->uncovered_cents;
    }
}

/* The birds are spread over the eggs expected of them.  Eggs beyond those carry
 * nothing: never more than the birds' cost less their worth at the end. */
static void
add_birds (SteadCostAnswer *answer,
           SteadCostFacts  *facts)
{
  const SteadFlock *flock = answer->flock;
  SteadCostPart *part = &answer->sheet.parts[STEAD_COST_START];
  double hens = (double) MAX (1, facts->hens);
  double salvage = (double) flock->salvage_cents;
  double spread = MAX (0, facts->bird_cents - salvage);
  double egg = MAX (0, stead_flock_bird_cents_per_egg (facts->bird_cents / hens, salvage / hens,
                                                       flock->eggs_expected));
  double left = MAX (0, spread - egg * (double) facts->eggs_before);

  part->total_cents = egg * (double) answer->totals.eggs;
  facts->birds_spread = part->total_cents > left;
  if (facts->birds_spread)
    part->total_cents = left;
  part->gift_cents = facts->bird_cents > 0 ? part->total_cents * facts->bird_gift_cents / facts->bird_cents : 0;
}

void
stead_cost_add_charges (SteadCostAnswer      *answer,
                        const SteadCostFacts *facts)
{
  SteadCostPart *part = &answer->sheet.parts[STEAD_COST_ASSETS];

  for (guint i = 0; i < facts->charges->len; i++)
    {
      const SteadAssetCharge *charge = facts->charges->pdata[i];

      part->total_cents += charge->cents;
      part->gift_cents += charge->asset->is_gift ? charge->cents : 0;
    }
}

void
stead_cost_add_packaging (SteadCostAnswer      *answer,
                          const SteadCostFacts *facts)
{
  SteadCostPart *part = &answer->sheet.parts[STEAD_COST_PACKAGING];

  for (guint i = 0; i < facts->packs->len; i++)
    {
      const SteadPackCost *pack = facts->packs->pdata[i];

      if (!isfinite (pack->unit_cents))
        continue;
      part->unit_cents += pack->unit_cents;
      part->gift_cents += pack->is_gift ? pack->unit_cents * answer->sheet.good_units : 0;
    }
}

static void
add_labor (SteadCostAnswer      *answer,
           const SteadCostFacts *facts)
{
  double minutes = answer->flock->care_minutes_day * facts->days
                   + answer->product->pack_minutes * answer->sheet.good_units;

  answer->sheet.parts[STEAD_COST_LABOR].total_cents = minutes / 60 * (double) answer->farm->labor_cents_hour;
}

void
stead_cost_facts_settle (SteadCostAnswer *answer,
                         SteadCostFacts  *facts)
{
  SteadCostSheet *sheet = &answer->sheet;
  double base_per_unit = answer->product->base_per_unit;

  *sheet = (SteadCostSheet) { 0 };
  sheet->made_units = (double) answer->totals.eggs / base_per_unit;
  sheet->good_units = (double) (answer->totals.eggs - answer->totals.cracked) / base_per_unit
                      * (1 - answer->product->unsold_frac);
  stead_cost_add_uses (answer);
  add_birds (answer, facts);
  stead_cost_add_charges (answer, facts);
  stead_cost_add_packaging (answer, facts);
  add_labor (answer, facts);
  stead_cost_sheet_settle (sheet);
}

/* Packaging goes at the price of the next one to be taken: what the next unit will cost. */
static SteadPackCost *
read_pack (SteadStore              *store,
           const SteadProductPart  *part,
           SteadDay                 today,
           GError                 **error)
{
  g_autoptr(SteadPackCost) pack = g_new0 (SteadPackCost, 1);
  SteadStock stock;

  pack->item = stead_item_repo_get (store, part->item_id, error);
  if (pack->item == NULL || !stead_lot_repo_stock (store, part->item_id, today, 1, &stock, error))
    return NULL;
  pack->quantity_base = part->quantity_base;
  pack->lot_cents = stock.next_cost_cents;
  pack->lot_base = stock.next_base;
  pack->unit_cents = stock.next_unit_cents * part->quantity_base;
  pack->is_gift = stock.next_is_gift;
  return g_steal_pointer (&pack);
}

static gboolean
read_packs (SteadStore          *store,
            const SteadProduct  *product,
            SteadCostFacts      *facts,
            GError             **error)
{
  SteadDay today = stead_store_get_today (store);

  facts->packs = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_pack_cost_free);
  for (guint i = 0; product->parts != NULL && i < product->parts->len; i++)
    {
      SteadPackCost *pack = read_pack (store, &g_array_index (product->parts, SteadProductPart, i), today, error);

      if (pack == NULL)
        return FALSE;
      g_ptr_array_add (facts->packs, pack);
    }
  return TRUE;
}

static gboolean
read_eggs_before (SteadStore             *store,
                  const SteadCostAnswer  *answer,
                  SteadCostFacts         *facts,
                  GError                **error)
{
  facts->eggs_before = stead_flock_repo_eggs (store, answer->flock->id, answer->flock->housed_on, answer->from - 1,
                                              error);
  return facts->eggs_before >= 0;
}

/* What went into birds raised here before they began to lay: it is spread over their
 * lay as the price of bought pullets is (UC Davis, Hen value, September 2002), over the
 * hens that came so far: deaths before lay are carried by the others. */
static gboolean
read_rearing (SteadStore             *store,
              const SteadCostAnswer  *answer,
              SteadCostFacts         *facts,
              GError                **error)
{
  const SteadFlock *flock = answer->flock;
  SteadDay lay = stead_flock_first_lay (flock);
  g_autoptr(GPtrArray) uses = stead_lot_repo_uses (store, flock->id, flock->housed_on, lay - 1, error);
  g_autoptr(GPtrArray) charges = NULL;

  charges = uses != NULL ? stead_asset_charges (store, flock->id, flock->housed_on, lay - 1, error) : NULL;
  facts->hens = charges != NULL ? stead_flock_repo_alive (store, flock->id, lay, error) : -1;
  if (facts->hens < 0)
    return FALSE;
  for (guint i = 0; i < uses->len; i++)
    {
      const SteadUse *use = uses->pdata[i];
      double cents = (double) use->cost_cents;

      if (use->uncovered_base > 0 && isfinite (use->uncovered_cents))
        cents += use->uncovered_cents;
      *(use->kind == STEAD_ITEM_FEED ? &facts->reared_feed_cents : &facts->reared_other_cents) += cents;
      facts->bird_gift_cents += (double) use->gift_cents;
    }
  for (guint i = 0; i < charges->len; i++)
    {
      const SteadAssetCharge *charge = charges->pdata[i];

      facts->reared_other_cents += charge->cents;
      facts->bird_gift_cents += charge->asset->is_gift ? charge->cents : 0;
    }
  facts->bird_cents += facts->reared_feed_cents + facts->reared_other_cents;
  return TRUE;
}

static gboolean
read_birds (SteadStore             *store,
            const SteadCostAnswer  *answer,
            SteadCostFacts         *facts,
            GError                **error)
{
  const SteadFlock *flock = answer->flock;

  facts->bird_cents = (double) flock->birds_cost_cents;
  facts->bird_gift_cents = flock->birds_are_gift ? facts->bird_cents : 0;
  facts->hens = flock->birds;
  return !flock->reared || stead_flock_first_lay (flock) <= flock->housed_on
         || read_rearing (store, answer, facts, error);
}

static void
count_days (const SteadCostAnswer *answer,
            SteadCostFacts        *facts)
{
  double onset;
  SteadDay laying;

  facts->days = answer->to - answer->from + 1;
  if (answer->flock == NULL)
    return;
  onset = answer->flock->curve.onset_age_weeks + answer->flock->curve.half_week;
  laying = answer->flock->hatched_on + (SteadDay) ceil (onset * 7);
  facts->laying_days = CLAMP (answer->to - laying + 1, 0, facts->days);
}

gboolean
stead_cost_facts_read (SteadStore             *store,
                       const SteadCostAnswer  *answer,
                       SteadCostFacts         *facts,
                       GError                **error)
{
  count_days (answer, facts);
  if (answer->kitchen != NULL)
    return stead_cost_kitchen_charges (store, answer, facts, error)
           && read_packs (store, answer->product, facts, error);
  facts->charges = stead_asset_charges (store, answer->batch->id, answer->from, answer->to, error);
  if (facts->charges == NULL || !read_packs (store, answer->product, facts, error))
    return FALSE;
  return answer->flock == NULL
         || (read_eggs_before (store, answer, facts, error) && read_birds (store, answer, facts, error));
}
