/* shoal.c - the small made-up farm, with a tank of fish. */
#include "config.h"
#include "shoal.h"

#include <math.h>


gint64
shoal_tank (Shoal       *shoal,
           const char *name,
           double      volume_l)
{
  g_autoptr(SteadTank) tank = stead_tank_new ();

  tank->name = g_strdup (name);
  tank->shape = STEAD_TANK_OTHER;
  tank->volume_l = volume_l;
  FARM_DO (&shoal->farm, stead_tank_repo_save (shoal->farm.store, tank, &farm_error));
  return tank->place_id;
}

gint64
shoal_group (Shoal       *shoal,
            const char *name,
            gint64      tank,
            gint64      fish,
            double      weight_g,
            int         days)
{
  g_autoptr(SteadFish) group = stead_fish_new ();

  group->batch.name = g_strdup (name);
  group->batch.place_id = tank;
  group->batch.started_on = shoal->farm.today - days;
  group->batch.feed_item_id = shoal->pellets;
  group->stocked = fish;
  group->stocked_g = weight_g;
  group->cost_cents = 10000;
  group->tgc = 0.1027;
  group->sale_g = 500;
  group->sale_frac = 0.5;
  group->spread_frac = 0;
  FARM_DO (&shoal->farm, stead_fish_repo_save (shoal->farm.store, group, &farm_error));
  return group->batch.id;
}

void
shoal_set_up (Shoal          *shoal,
             gconstpointer  data)
{
  SteadItem item = { .name = g_strdup ("Fish pellets"), .kind = STEAD_ITEM_FEED, .unit = stead_unit_by_id ("kg"),
                     .reorder_base = NAN };

  farm_set_up (&shoal->farm, data);
  FARM_DO (&shoal->farm, stead_item_repo_save (shoal->farm.store, &item, &farm_error));
  g_free (item.name);
  shoal->pellets = item.id;
  shoal->tank = shoal_tank (shoal, "Tank A", 1500);
  shoal->fish = shoal_group (shoal, "Tilapia", shoal->tank, 100, 50, 45);
}

void
shoal_tear_down (Shoal          *shoal,
                gconstpointer  data)
{
  farm_tear_down (&shoal->farm, data);
}

void
shoal_enter (Shoal           *shoal,
            SteadFishEntry  entry)
{
  entry.fish_id = entry.fish_id == 0 ? shoal->fish : entry.fish_id;
  FARM_DO (&shoal->farm, stead_fish_repo_save_entry (shoal->farm.store, &entry, &farm_error));
}

/* Water of one warmth each @step days up to today, the first day among them. */
void
shoal_warm (Shoal   *shoal,
           gint64  fish,
           double  water_c,
           int     days,
           int     step)
{
  for (int i = 0; i <= days; i += step)
    shoal_enter (shoal, (SteadFishEntry) { .fish_id = fish, .day = shoal->farm.today - days + i, .feed_kg = NAN,
                                    .water_c = water_c });
}

void
shoal_weigh (Shoal     *shoal,
            gint64    fish,
            SteadDay  day,
            int       n,
            double    mean_g)
{
  g_autoptr(SteadWeighing) weighing = stead_weighing_new ();

  weighing->batch_id = fish;
  weighing->day = day;
  weighing->n = n;
  weighing->total_kg = n * mean_g / 1000;
  FARM_DO (&shoal->farm, stead_weighing_repo_save (shoal->farm.store, weighing, &farm_error));
}

void
shoal_change (Shoal *shoal,
        void (*set) (SteadFish *group))
{
  g_autoptr(SteadFish) group = stead_fish_repo_get (shoal->farm.store, shoal->fish, NULL);

  set (group);
  FARM_DO (&shoal->farm, stead_fish_repo_save (shoal->farm.store, group, &farm_error));
}
