/* farm.c - a small made-up farm in memory. */
#include "config.h"
#include "farm.h"

#include <libintl.h>
#include <locale.h>
#include <math.h>

void
farm_start (int    *argc,
            char ***argv)
{
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, g_getenv ("STEAD_LOCALE_DIR"));
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  g_test_init (argc, argv, NULL);
}

gboolean
farm_in_english (void)
{
  const char *language = g_getenv ("LANGUAGE");

  return language == NULL || *language == '\0';
}

const SteadWhy *
farm_find_why (const GPtrArray *whys,
               const char      *title)
{
  for (guint i = 0; i < whys->len; i++)
    if (g_strcmp0 (((const SteadWhy *) whys->pdata[i])->title, g_dgettext (GETTEXT_PACKAGE, title)) == 0)
      return whys->pdata[i];
  g_error ("no why: %s", title);
}

static gint64
add_item (Farm          *farm,
          const char    *name,
          SteadItemKind  kind,
          const char    *unit)
{
  SteadItem item = { .name = g_strdup (name), .kind = kind, .unit = stead_unit_by_id (unit), .reorder_base = NAN };
  gint64 id;

  FARM_DO (farm, stead_item_repo_save (farm->store, &item, &farm_error));
  id = item.id;
  g_free (item.name);
  return id;
}

static void
add_flock (Farm *farm)
{
  g_autoptr(SteadFlock) flock = stead_flock_new ();

  g_free (flock->name);
  flock->name = g_strdup ("Brown hens");
  flock->housed_on = stead_day_new (2026, 1, 1);
  flock->hatched_on = flock->housed_on - 30 * 7;
  flock->birds = 10;
  flock->birds_cost_cents = 14000;
  flock->salvage_cents = 2000;
  flock->eggs_expected = 300;
  flock->care_minutes_day = 10;
  flock->feed_item_id = farm->feed;
  FARM_DO (farm, stead_flock_repo_save (farm->store, flock, &farm_error));
  farm->flock = flock->id;
}

static void
add_product (Farm *farm)
{
  g_autoptr(SteadProduct) product = stead_product_new ();
  SteadProductPart part = { farm->carton, 1 };
  SteadStallCost *table = g_new0 (SteadStallCost, 1);

  g_free (product->name);
  product->name = g_strdup ("Eggs");
  product->pack = STEAD_PACK_DOZEN;
  product->base_per_unit = 12;
  product->batch_id = farm->flock;
  product->planned_units = 72;
  g_array_append_val (product->parts, part);
  table->name = g_strdup ("Table");
  table->cents = 2000;
  g_ptr_array_add (product->stall_costs, table);
  FARM_DO (farm, stead_product_repo_save (farm->store, product, &farm_error));
  farm->product = product->id;
  FARM_DO (farm, stead_product_repo_set_price (farm->store, farm->product, stead_day_new (2026, 1, 10), 450,
                                               NULL, &farm_error));
}

void
farm_set_up (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  farm->store = stead_store_create_memory ("Test farm", &error);
  g_assert_no_error (error);
  farm->today = stead_day_new (2026, 3, 31);
  stead_store_set_today (farm->store, farm->today);
  farm->feed = add_item (farm, "Layer feed", STEAD_ITEM_FEED, "kg");
  farm->carton = add_item (farm, "Carton", STEAD_ITEM_PACKAGING, "ea");
  farm->straw = add_item (farm, "Straw", STEAD_ITEM_BEDDING, "ea");
  add_flock (farm);
  add_product (farm);
}

void
farm_tear_down (Farm          *farm,
                gconstpointer  data)
{
  g_assert_finalize_object (farm->store);
}

void
farm_entry (Farm     *farm,
            SteadDay  day,
            int       eggs,
            int       cracked,
            double    feed_kg,
            int       deaths)
{
  SteadFlockEntry entry = { .flock_id = farm->flock, .day = day, .eggs = eggs, .cracked = cracked,
                            .feed_kg = feed_kg, .deaths = deaths };

  FARM_DO (farm, stead_flock_repo_save_entry (farm->store, &entry, &farm_error));
}

void
farm_log (Farm *farm)
{
  g_autoptr(GPtrArray) entries = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_flock_entry_free);
  SteadDay first = stead_day_new (2026, 1, 1);

  for (SteadDay day = first; day <= farm->today; day++)
    {
      SteadFlockEntry *entry = g_new0 (SteadFlockEntry, 1);

      *entry = (SteadFlockEntry) { .flock_id = farm->flock, .day = day, .eggs = 8,
                                   .cracked = (day - first) % 10 == 9 ? 1 : 0, .feed_kg = 1 };
      g_ptr_array_add (entries, entry);
    }
  FARM_DO (farm, stead_flock_repo_add_entries (farm->store, entries, NULL, NULL, NULL, &farm_error));
}

gint64
farm_buy (Farm     *farm,
          SteadDay  day,
          gint64    item,
          double    base,
          gint64    cents,
          gboolean  gift)
{
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
  SteadReceiptLine line = { .item_id = item, .quantity_base = base, .cost_cents = cents,
                            .best_by = STEAD_DAY_NONE };

  receipt->day = day;
  g_free (receipt->supplier);
  receipt->supplier = g_strdup ("Lakeside Feed & Seed");
  receipt->is_gift = gift;
  g_array_append_val (receipt->lines, line);
  FARM_DO (farm, stead_receipt_repo_save (farm->store, receipt, &farm_error));
  return receipt->id;
}

void
farm_stock (Farm *farm)
{
  farm_buy (farm, stead_day_new (2026, 1, 1), farm->feed, 50, 6000, FALSE);
  farm_buy (farm, stead_day_new (2026, 2, 1), farm->feed, 50, 6400, FALSE);
  farm_buy (farm, stead_day_new (2026, 1, 1), farm->carton, 100, 3100, FALSE);
  farm_buy (farm, stead_day_new (2026, 1, 1), farm->straw, 10, 5000, FALSE);
}
