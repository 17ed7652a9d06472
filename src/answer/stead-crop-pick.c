/* stead-crop-pick.c - writes down what was picked of a crop, with the cost that its lot carries. */
#include "config.h"

#include "answer/stead-crop-pick.h"

#include "answer/stead-cost-in-private.h"
#include "answer/stead-harvest-answer.h"
#include "store/stead-item-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* --- cost ------------------------------------------------------------------- */

gint64
stead_crop_cost_in (SteadStore       *store,
                    const SteadCrop  *crop,
                    SteadWhy        **out_why,
                    GError          **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);
  g_auto(SteadBatchMoney) money = { 0 };
  SteadCostIn cost;

  if (farm == NULL || !stead_batch_money_read (store, farm, crop->batch.id, &money, error))
    return -1;
  stead_cost_in_of_money (&money, &cost);
  if (out_why != NULL)
    *out_why = stead_cost_in_why (&cost, STEAD_BATCH_CROP, farm->currency);
  return cost.total_cents;
}

/* --- item ------------------------------------------------------------------- */

/* "Tomatoes" */
static char *
item_name (const SteadCrop *crop)
{
  const char *word = stead_crop_word (crop->crop);
  g_autofree char *first = g_utf8_substring (word, 0, 1);
  g_autofree char *upper = g_utf8_strup (first, -1);

  return g_strconcat (upper, g_utf8_next_char (word), NULL);
}

static gint64
item_of_last_pick (SteadStore *store,
                   gint64      crop_id)
{
  g_autoptr(GPtrArray) picks = stead_harvest_repo_list (store, crop_id, G_MININT32 + 1, G_MAXINT32, NULL);

  for (guint i = picks != NULL ? picks->len : 0; i > 0; i--)
    if (((const SteadHarvest *) picks->pdata[i - 1])->item_id != 0)
      return ((const SteadHarvest *) picks->pdata[i - 1])->item_id;
  return 0;
}

static gboolean
find_item (SteadStore  *store,
           gint64       crop_id,
           gint64      *out,
           GError     **error)
{
  g_autoptr(SteadCrop) crop = NULL;
  g_autoptr(SteadFarm) farm = NULL;
  g_autoptr(GPtrArray) items = NULL;
  g_autoptr(SteadItem) made = NULL;
  g_autofree char *name = NULL;

  *out = item_of_last_pick (store, crop_id);
  if (*out != 0)
    return TRUE;
  crop = stead_crop_repo_get (store, crop_id, error);
  farm = crop != NULL ? stead_farm_repo_get (store, error) : NULL;
  items = farm != NULL ? stead_item_repo_list (store, error) : NULL;
  if (items == NULL)
    return FALSE;
  name = item_name (crop);
  for (guint i = 0; i < items->len; i++)
    {
      const SteadItem *item = items->pdata[i];

      if (item->kind != STEAD_ITEM_PRODUCE || g_utf8_collate (item->name, name) != 0)
        continue;
      *out = item->id;
      return TRUE;
    }
  made = g_new0 (SteadItem, 1);
  made->name = g_steal_pointer (&name);
  made->kind = STEAD_ITEM_PRODUCE;
  made->unit = stead_unit_default (STEAD_DIMENSION_MASS, farm->units);
  made->reorder_base = NAN;
  if (!stead_item_repo_save (store, made, error))
    return FALSE;
  *out = made->id;
  return TRUE;
}

/* --- writing ---------------------------------------------------------------- */

gboolean
stead_crop_pick_save (SteadStore       *store,
                      const SteadPick  *pick,
                      GError          **error)
{
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();

  g_return_val_if_fail (STEAD_IS_STORE (store) && pick != NULL, FALSE);

  harvest->batch_id = pick->crop_id;
  harvest->day = pick->day;
  harvest->quantity_base = pick->good_kg;
  harvest->lost_base = pick->lost_kg;
  harvest->reason = g_strdup (pick->reason);
  harvest->grade = g_strdup (pick->grade);
  harvest->note = g_strdup (pick->note);
  harvest->person_id = pick->person_id;
  if (pick->good_kg > 0
      && (!find_item (store, pick->crop_id, &harvest->item_id, error)
          || !stead_harvest_cost (store, harvest, &harvest->cost_cents, error)))
    return FALSE;
  return stead_harvest_repo_save (store, harvest, error);
}

char *
stead_crop_pick_name (const SteadPick *pick,
                      SteadUnitSystem  units)
{
  g_autofree char *amount = NULL, *day = NULL;

  g_return_val_if_fail (pick != NULL, NULL);

  day = stead_day_format (pick->day, STEAD_DAY_STYLE_SHORT);
  amount = stead_crop_kg_text (pick->good_kg > 0 ? pick->good_kg : pick->lost_kg, units);
  /* Translators: "12 lb", a day. */
  return g_strdup_printf (pick->good_kg > 0 ? _("%s picked on %s") : _("%s thrown out on %s"), amount, day);
}
