/* pond.c - a tank of fish, for the tests of batches. */
#include "config.h"
#include "pond.h"

#include <math.h>

#include "store/stead-water-repo.h"

static gint64
add_item (Pond          *pond,
          const char    *name,
          SteadItemKind  kind)
{
  SteadItem item = { .name = (char *) name, .kind = kind, .unit = stead_unit_by_id ("kg"), .reorder_base = NAN };

  FARM_DO (&pond->farm, stead_item_repo_save (pond->farm.store, &item, &farm_error));
  return item.id;
}

gint64
pond_tank (Pond       *pond,
           const char *name)
{
  g_autoptr(SteadTank) tank = stead_tank_new ();

  tank->name = g_strdup (name);
  tank->shape = STEAD_TANK_OTHER;
  tank->volume_l = 2000;
  FARM_DO (&pond->farm, stead_tank_repo_save (pond->farm.store, tank, &farm_error));
  return tank->place_id;
}

static void
add_fish (Pond *pond)
{
  g_autoptr(SteadFish) fish = stead_fish_new ();

  fish->batch.name = g_strdup ("Catfish 1");
  fish->batch.started_on = stead_day_new (2026, 1, 1);
  fish->batch.place_id = pond_tank (pond, "Tank 1");
  fish->batch.feed_item_id = pond->feed;
  fish->batch.care_minutes_day = 12;
  fish->stocked = 200;
  fish->stocked_g = 20;
  fish->cost_cents = 5000;
  FARM_DO (&pond->farm, stead_fish_repo_save (pond->farm.store, fish, &farm_error));
  pond->fish = fish->batch.id;
}

static void
add_product (Pond *pond)
{
  g_autoptr(SteadProduct) product = stead_product_new ();

  g_free (product->name);
  product->name = g_strdup ("Catfish");
  product->pack = STEAD_PACK_KILOGRAM;
  product->base_per_unit = 1;
  product->batch_id = pond->fish;
  FARM_DO (&pond->farm, stead_product_repo_save (pond->farm.store, product, &farm_error));
  pond->product = product->id;
}

void
pond_plan (Pond     *pond,
           double    output_kg,
           SteadDay  ends_on)
{
  SteadBatchPlan plan;

  stead_batch_plan_init (&plan);
  plan.output_base = output_kg;
  plan.ends_on = ends_on;
  FARM_DO (&pond->farm, stead_batch_repo_set_plan (pond->farm.store, pond->fish, &plan, &farm_error));
}

void
pond_set_up (Pond          *pond,
             gconstpointer  data)
{
  farm_set_up (&pond->farm, data);
  pond->feed = add_item (pond, "Fish feed", STEAD_ITEM_FEED);
  pond->dressed = add_item (pond, "Catfish, dressed", STEAD_ITEM_PRODUCE);
  add_fish (pond);
  add_product (pond);
  farm_buy (&pond->farm, stead_day_new (2026, 1, 1), pond->feed, 50, 7500, FALSE);
  farm_buy (&pond->farm, stead_day_new (2026, 2, 1), pond->feed, 50, 9000, FALSE);
  pond_plan (pond, 60, stead_day_new (2026, 4, 30));
}

void
pond_tear_down (Pond          *pond,
                gconstpointer  data)
{
  farm_tear_down (&pond->farm, data);
}

void
pond_feed (Pond *pond)
{
  for (SteadDay day = stead_day_new (2026, 1, 1); day <= pond->farm.today; day++)
    {
      SteadFishEntry entry = { .fish_id = pond->fish, .day = day, .feed_kg = 1, .water_c = NAN };

      FARM_DO (&pond->farm, stead_fish_repo_save_entry (pond->farm.store, &entry, &farm_error));
    }
}

gint64
pond_harvest (Pond     *pond,
              SteadDay  day,
              double    kg,
              gint64    pieces,
              gint64    cents,
              gboolean  is_last)
{
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();

  harvest->batch_id = pond->fish;
  harvest->item_id = pond->dressed;
  harvest->day = day;
  harvest->quantity_base = kg;
  harvest->pieces = pieces;
  harvest->cost_cents = cents;
  harvest->is_last = is_last;
  FARM_DO (&pond->farm, stead_harvest_repo_save (pond->farm.store, harvest, &farm_error));
  return harvest->id;
}
