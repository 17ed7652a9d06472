/* fish-fixture.c - a farm with two tanks and a group of fish. */
#include "config.h"

#include <math.h>

#include "fish-fixture.h"
#include "store/stead-place-repo.h"

static gint64
make_place (Pond           *pond,
            const char     *name,
            SteadPlaceKind  kind)
{
  SteadPlaceFacts place = { .name = g_strdup (name), .kind = kind, .area_m2 = NAN };

  ACT (pond->farm, stead_place_repo_save (pond->farm->store, &place, err));
  g_free (place.name);
  return place.id;
}

static gint64
make_tank (Pond       *pond,
           const char *name)
{
  gint64 id = make_place (pond, name, STEAD_PLACE_TANK);
  g_autofree char *sql = g_strdup_printf ("INSERT INTO tank (place_id, shape, volume_l) VALUES (%" G_GINT64_FORMAT
                                          ", 'other', 1500)", id);

  fixture_act (pond->farm->store, name, sql);
  return id;
}

gint64
pond_group (Pond       *pond,
            const char *name,
            gint64      tank,
            int         days)
{
  g_autoptr(SteadFish) group = stead_fish_new ();

  group->batch.name = g_strdup (name);
  group->batch.place_id = tank;
  group->batch.started_on = TODAY - days;
  group->batch.feed_item_id = pond->pellets;
  g_free (group->species);
  group->species = g_strdup ("channel_catfish");
  group->tgc = 0.08;
  group->stocked = 100;
  group->stocked_g = 45;
  group->cost_cents = 12000;
  ACT (pond->farm, stead_fish_repo_save (pond->farm->store, group, err));
  return group->batch.id;
}

gint64
pond_entry (Pond     *pond,
            gint64    fish,
            SteadDay  day,
            double    feed_kg,
            int       deaths)
{
  SteadFishEntry entry = { .fish_id = fish, .day = day, .feed_kg = feed_kg, .deaths = deaths, .water_c = NAN };

  ACT (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err));
  return entry.id;
}

void
pond_entry_at (Pond     *pond,
               gint64    fish,
               SteadDay  day,
               double    water_c)
{
  SteadFishEntry entry = { .fish_id = fish, .day = day, .feed_kg = NAN, .water_c = water_c };

  ACT (pond->farm, stead_fish_repo_save_entry (pond->farm->store, &entry, err));
}

gint64
pond_weigh (Pond     *pond,
            gint64    fish,
            SteadDay  day,
            int       n,
            double    total_kg)
{
  g_autoptr(SteadWeighing) weighing = stead_weighing_new ();

  weighing->batch_id = fish;
  weighing->day = day;
  weighing->n = n;
  weighing->total_kg = total_kg;
  ACT (pond->farm, stead_weighing_repo_save (pond->farm->store, weighing, err));
  return weighing->id;
}

Pond *
pond_new (void)
{
  Pond *pond = g_new0 (Pond, 1);

  pond->farm = farm_new ();
  pond->pellets = farm_item (pond->farm, "Fish pellets", STEAD_ITEM_FEED, "kg");
  pond->house = make_place (pond, "Hen house", STEAD_PLACE_COOP);
  pond->tank = make_tank (pond, "Tank A");
  pond->second = make_tank (pond, "Tank B");
  pond->cats = pond_group (pond, "Cats A", pond->tank, 100);
  return pond;
}

void
pond_free (Pond *pond)
{
  farm_free (pond->farm);
  g_free (pond);
}
