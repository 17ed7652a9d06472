/* stead-new-farm-facts.c - what the steps of a new farm write.
 *
 * Each function is one change with a name: it can be undone, and its failure
 * leaves the file as it was.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/stead-new-farm-facts.h"
#include "store/stead-flock-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-receipt-repo.h"

#define BEDDING_DAYS 30
#define LAY_FROM_WEEKS 17   /* over which a hen's eggs are expected, as the flock's dialog has it */
#define LAY_TO_WEEKS 78

typedef gboolean (*Write) (SteadStore *store, gconstpointer facts, gint64 *out_id, GError **error);

static gboolean
as_one_change (SteadStore     *store,
               const char     *name,
               Write           write,
               gconstpointer   facts,
               gint64         *out_id,
               GError        **error)
{
  if (!stead_store_begin (store, name, error))
    return FALSE;
  if (write (store, facts, out_id, error))
    return stead_store_commit (store, error);
  stead_store_rollback (store);
  return FALSE;
}

static gboolean
write_settings (SteadStore     *store,
                gconstpointer   data,
                gint64         *out_id,
                GError        **error)
{
  const SteadNewFarmFacts *facts = data;
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);

  if (farm == NULL)
    return FALSE;
  farm->units = facts->units;
  g_free (farm->currency);
  farm->currency = g_strdup (facts->currency);
  farm->school_year_month = facts->month;
  farm->school_year_mday = facts->mday;
  return stead_farm_repo_set (store, farm, error);
}

gboolean
stead_new_farm_save_settings (SteadStore               *store,
                              const SteadNewFarmFacts  *facts,
                              GError                  **error)
{
  return as_one_change (store, _("Settings of the farm"), write_settings, facts, NULL, error);
}

static gboolean
save_item (SteadStore       *store,
           const char       *name,
           SteadItemKind     kind,
           const SteadUnit  *unit,
           gint64           *out_id,
           GError          **error)
{
  g_autoptr(SteadItem) item = g_new0 (SteadItem, 1);

  item->name = g_strdup (name);
  item->kind = kind;
  item->unit = unit;
  item->reorder_base = NAN;
  if (!stead_item_repo_save (store, item, error))
    return FALSE;
  *out_id = item->id;
  return TRUE;
}

static gboolean
save_feed_item (SteadStore  *store,
                gint64      *out_id,
                GError     **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);

  return farm != NULL && save_item (store, _("Layer feed"), STEAD_ITEM_FEED,
                                    stead_unit_default (STEAD_DIMENSION_MASS, farm->units), out_id, error);
}

static gboolean
write_flock (SteadStore     *store,
             gconstpointer   data,
             gint64         *out_id,
             GError        **error)
{
  const SteadNewFlockFacts *facts = data;
  g_autoptr(SteadFlock) flock = stead_flock_new ();
  SteadFlockEntry entry = { .day = stead_store_get_today (store), .eggs = (gint32) facts->eggs_today,
                            .cracked = facts->eggs_today < 0 ? STEAD_COUNT_NONE : 0,
                            .deaths = 0, .culled = 0, .feed_kg = NAN };

  g_free (flock->name);
  flock->name = g_strdup (facts->name);
  flock->housed_on = facts->came_on;
  flock->hatched_on = facts->came_on - 7 * facts->age_weeks;
  flock->birds = facts->birds;
  flock->birds_cost_cents = facts->birds * facts->bird_cents;
  flock->birds_are_gift = facts->bird_cents == 0;
  flock->eggs_expected = rint (stead_lay_curve_eggs (&flock->curve, LAY_FROM_WEEKS, LAY_TO_WEEKS));
  flock->bedding_days = BEDDING_DAYS;
  if (!save_feed_item (store, &flock->feed_item_id, error) || !stead_flock_repo_save (store, flock, error))
    return FALSE;
  *out_id = flock->id;
  entry.flock_id = flock->id;
  return facts->eggs_today < 0 || stead_flock_repo_save_entry (store, &entry, error);
}

gboolean
stead_new_farm_save_flock (SteadStore                *store,
                           const SteadNewFlockFacts  *facts,
                           gint64                    *out_flock_id,
                           GError                   **error)
{
  gint64 id = 0;
  /* Translators: a step that can be undone; %s is the name of a flock. */
  g_autofree char *name = g_strdup_printf (_("New flock: %s"), facts->name);

  if (!as_one_change (store, name, write_flock, facts, &id, error))
    return FALSE;
  *out_flock_id = id;
  return TRUE;
}

static void
add_line (SteadReceipt *receipt,
          gint64        item_id,
          double        quantity,
          gint64        cents)
{
  SteadReceiptLine line = { .item_id = item_id, .quantity_base = quantity, .cost_cents = cents,
                            .best_by = STEAD_DAY_NONE };

  g_array_append_val (receipt->lines, line);
}

/* The flock's feed; without a flock it is made here. */
static gboolean
feed_item (SteadStore  *store,
           gint64       flock_id,
           gint64      *out_id,
           GError     **error)
{
  g_autoptr(SteadFlock) flock = NULL;

  if (flock_id == 0)
    return save_feed_item (store, out_id, error);
  flock = stead_flock_repo_get (store, flock_id, error);
  if (flock == NULL)
    return FALSE;
  *out_id = flock->feed_item_id;
  return TRUE;
}

static gboolean
write_receipt (SteadStore                  *store,
               const SteadNewProductFacts  *facts,
               gint64                       carton_id,
               GError                     **error)
{
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
  gint64 feed_id;

  receipt->day = stead_store_get_today (store);
  receipt->supplier = g_strdup (facts->supplier);
  if (facts->feed_kg > 0)
    {
      if (!feed_item (store, facts->flock_id, &feed_id, error))
        return FALSE;
      add_line (receipt, feed_id, facts->feed_kg, facts->feed_cents);
    }
  if (facts->cartons > 0)
    add_line (receipt, carton_id, (double) facts->cartons, facts->carton_cents);
  return receipt->lines->len == 0 || stead_receipt_repo_save (store, receipt, error);
}

static double
eggs_in (SteadPack pack)
{
  switch (pack)
    {
    case STEAD_PACK_HALF_DOZEN: return 6;
    case STEAD_PACK_TRAY:       return 30;
    case STEAD_PACK_DOZEN:
    case STEAD_PACK_PIECE:
    case STEAD_PACK_POUND:
    case STEAD_PACK_KILOGRAM:
    case STEAD_PACK_JAR:
    case STEAD_PACK_PACK:
    default:                    return 12;
    }
}

static gboolean
write_product (SteadStore     *store,
               gconstpointer   data,
               gint64         *out_id,
               GError        **error)
{
  const SteadNewProductFacts *facts = data;
  g_autoptr(SteadProduct) product = stead_product_new ();
  SteadProductPart carton = { .quantity_base = 1 };

  if (!save_item (store, _("Egg carton"), STEAD_ITEM_PACKAGING, stead_unit_by_id ("ea"), &carton.item_id, error)
      || !write_receipt (store, facts, carton.item_id, error))
    return FALSE;
  g_free (product->name);
  product->name = g_strdup (_("Eggs"));
  product->pack = facts->pack;
  product->base_per_unit = eggs_in (facts->pack);
  product->batch_id = facts->flock_id;
  g_array_append_val (product->parts, carton);
  if (!stead_product_repo_save (store, product, error))
    return FALSE;
  return facts->price_cents < 0
         || stead_product_repo_set_price (store, product->id, stead_store_get_today (store), facts->price_cents,
                                          NULL, error);
}

gboolean
stead_new_farm_save_product (SteadStore                  *store,
                             const SteadNewProductFacts  *facts,
                             GError                     **error)
{
  return as_one_change (store, _("What is bought and sold"), write_product, facts, NULL, error);
}
