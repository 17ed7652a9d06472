/* test-asset-share.c - what each batch bears of a thing, by days, by space and by use.
 *
 * A thing of 365.00 that lasts ten years, worth nothing at the end, wears 0.10 a day, so
 * each share can be worked out in the head.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "answer/stead-asset-answer.h"
#include "answer/stead-statement-answer.h"
#include "shoal.h"
#include "store/stead-crop-repo.h"
#include "store/stead-place-repo.h"

typedef struct
{
  Shoal    shoal;
  Farm    *farm;
  SteadDay first;          /* 2026-03-01 */
  gint64   early, late;    /* crops from the first day to today; from day 11 to day 20 */
} World;

static gint64
save_place (World *world, const char *name, double area_m2)
{
  SteadPlaceFacts place = { .name = (char *) name, .kind = STEAD_PLACE_BAY, .area_m2 = area_m2 };

  FARM_DO (world->farm, stead_place_repo_save (world->farm->store, &place, &farm_error));
  return place.id;
}

static gint64
save_crop (World *world, const char *name, SteadDay from, SteadDay to, gint64 place)
{
  g_autoptr(SteadCrop) crop = stead_crop_new ();

  g_free (crop->batch.name);
  crop->batch.name = g_strdup (name);
  crop->batch.started_on = crop->set_out_on = from;
  crop->batch.place_id = place;
  crop->plants = 10;
  FARM_DO (world->farm, stead_crop_repo_save (world->farm->store, crop, &farm_error));
  if (to != STEAD_DAY_NONE)
    FARM_DO (world->farm, stead_batch_repo_end (world->farm->store, crop->batch.id, to, &farm_error));
  return crop->batch.id;
}

static gint64
save_thing (World *world, SteadShareBy share_by)
{
  g_autoptr(SteadAsset) asset = stead_asset_new ();
  SteadAssetShare early = { world->early, 0.5 }, late = { world->late, 0.5 };

  asset->name = g_strdup ("Fan");
  asset->bought_on = world->first;
  asset->cost_cents = 36500;
  asset->life_years = 10;
  asset->share_by = share_by;
  g_array_append_val (asset->shares, early);
  g_array_append_val (asset->shares, late);
  FARM_DO (world->farm, stead_asset_repo_save (world->farm->store, asset, &farm_error));
  return asset->id;
}

static void
set_up (World *world, gconstpointer data)
{
  shoal_set_up (&world->shoal, NULL);
  world->farm = &world->shoal.farm;
  world->first = stead_day_new (2026, 3, 1);
  world->early = save_crop (world, "Early", world->first, STEAD_DAY_NONE, save_place (world, "Bay 1", 30));
  world->late = save_crop (world, "Late", world->first + 10, world->first + 19, save_place (world, "Bay 2", 10));
}

static void
tear_down (World *world, gconstpointer data)
{
  shoal_tear_down (&world->shoal, NULL);
}

/* What March put into the growing batches and left to the farm.  "Late" has ended, so what it
 * bore stands among the costs left in batches that ended. */
static void
assert_march (World *world, gint64 early, gint64 late, gint64 farm)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStatementAnswer) march = stead_statement_answer_new (world->farm->store, world->first,
                                                                      world->farm->today, 0, &error);
  const SteadStatementLine *growing, *left, *wear;
  gint64 sum = 0;

  g_assert_no_error (error);
  growing = stead_statement_answer_line (march, STEAD_STATEMENT_BALANCE, "growing");
  for (guint i = 0; i < growing->entries->len; i++)
    {
      const SteadStatementEntry *entry = &g_array_index (growing->entries, SteadStatementEntry, i);

      sum += entry->fact == STEAD_FACT_ASSET ? entry->cents : 0;
    }
  g_assert_cmpint (sum, ==, early + late);
  left = stead_statement_answer_line (march, STEAD_STATEMENT_INCOME, "left");
  g_assert_cmpint (left != NULL ? -left->cents : 0, ==, late);
  wear = stead_statement_answer_line (march, STEAD_STATEMENT_INCOME, "wear");
  g_assert_cmpint (wear != NULL ? -wear->cents : 0, ==, farm);
  g_assert_cmpint (march->worth_end, ==, march->worth_before + march->put_in + march->net - march->taken_out);
}

/* Ten days alone, ten days with the other, eleven alone. */
static void
test_days (World *world, gconstpointer data)
{
  save_thing (world, STEAD_SHARE_DAYS);
  assert_march (world, 100 + 50 + 110, 50, 0);
}

/* 30 and 10 m²: three parts to one while both are under way. */
static void
test_space (World *world, gconstpointer data)
{
  save_thing (world, STEAD_SHARE_SPACE);
  assert_march (world, 100 + 75 + 110, 25, 0);
}

static void
test_parts (World *world, gconstpointer data)
{
  save_thing (world, STEAD_SHARE_PARTS);
  assert_march (world, 155, 50, 310 - 155 - 50);
}

/* All of the month by three uses to one; a month without a use is the farm's. */
static void
test_use (World *world, gconstpointer data)
{
  gint64 fan = save_thing (world, STEAD_SHARE_USE);

  assert_march (world, 0, 0, 310);
  FARM_DO (world->farm, stead_asset_repo_add_use (world->farm->store, fan, world->early, world->first + 4, 2, &farm_error)
                        && stead_asset_repo_add_use (world->farm->store, fan, world->early, world->first + 12, 1, &farm_error)
                        && stead_asset_repo_add_use (world->farm->store, fan, world->late, world->first + 12, 1, &farm_error));
  /* Three of four uses bear 2.325; "late" bears one of four of what had worn by its end, 20 days. */
  assert_march (world, 233, 50, 310 - 233 - 50);
}

/* The list of things says the same worth as the balance sheet. */
static void
test_worth (World *world, gconstpointer data)
{
  g_autoptr(SteadAssetAnswer) things = NULL;
  g_autoptr(SteadStatementAnswer) march = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  save_thing (world, STEAD_SHARE_DAYS);
  things = stead_asset_answer_new (world->farm->store, NULL);
  march = stead_statement_answer_new (world->farm->store, world->first, world->farm->today, 0, NULL);
  g_assert_cmpint (things->worth_cents, ==, 36500 - 310);
  whys = stead_asset_answer_whys (things);
  g_assert_cmpuint (whys->len, ==, 1);
  g_assert_nonnull (strstr (((SteadWhy *) whys->pdata[0])->worked, "($365.00 − $0.00) ÷ 10 = $36.50"));
  g_assert_nonnull (strstr (((SteadWhy *) whys->pdata[0])->worked, "$365.00 − $3.10 = $361.90"));
  g_assert_cmpint (stead_statement_answer_line (march, STEAD_STATEMENT_BALANCE, "things")->cents, ==, 36500 - 310);
}

#define ADD(name, func) g_test_add ("/answer/asset-share/" name, World, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  farm_start (&argc, &argv);
  ADD ("days", test_days);
  ADD ("space", test_space);
  ADD ("parts", test_parts);
  ADD ("use", test_use);
  ADD ("worth", test_worth);
  return g_test_run ();
}
