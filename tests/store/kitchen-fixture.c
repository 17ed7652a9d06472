/* kitchen-fixture.c - what is cooked of what is in the store room. */
#include "config.h"

#include "kitchen-fixture.h"
#include "store/stead-recost.h"
#include "store/stead-store-watch.h"

gint64
kitchen_begin (Farm       *farm,
               const char *name,
               SteadDay    day)
{
  g_autofree char *sql = g_strdup_printf ("INSERT INTO batch (kind, name, started_on) VALUES ('kitchen', '%s', %d)",
                                          name, day);

  fixture_act (farm->store, name, sql);
  return fixture_number (farm->store, "SELECT max (id) FROM batch");
}

/* All of it in one action, as a person does it. */
static gboolean
cook (Farm          *farm,
      SteadHarvest  *harvest,
      gint64         uses,
      double         used,
      GError       **error)
{
  stead_store_watch_id (farm->store, &harvest->id);
  stead_store_watch_id (farm->store, &harvest->lot_id);
  return stead_lot_repo_use (farm->store, uses, harvest->batch_id, harvest->day, used, 0, error) &&
         stead_harvest_repo_save (farm->store, harvest, error) &&
         stead_recost_batch (farm->store, harvest->batch_id, error);
}

gint64
kitchen_cook (Farm       *farm,
              const char *name,
              SteadDay    day,
              gint64      uses,
              double      used,
              gint64      makes,
              double      made)
{
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();

  harvest->batch_id = kitchen_begin (farm, name, day);
  harvest->day = day;
  harvest->item_id = makes;
  harvest->quantity_base = made;
  ACT (farm, cook (farm, harvest, uses, used, err));
  return harvest->batch_id;
}

gint64
kitchen_cents (Farm   *farm,
               gint64  batch_id)
{
  g_autofree char *sql = g_strdup_printf ("SELECT sum (m.cost_cents) FROM lot l JOIN movement m ON m.lot_id = l.id"
                                          " AND m.kind = 'made' WHERE l.batch_id = %" G_GINT64_FORMAT, batch_id);

  return fixture_number (farm->store, sql);
}
