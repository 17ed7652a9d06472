/* stead-batch-outlook.c - what a batch is still expected to give. */
#include "config.h"

#include "answer/stead-batch-outlook.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-crop-answer.h"
#include "answer/stead-fish-answer.h"
#include "answer/stead-flock-answer.h"
#include "store/stead-farm-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-item-repo.h"

/* Over how many days a flock's eggs of late are looked at. */
#define LATE_DAYS 28
/* An end that is farther off is none. */
#define FAR_DAYS 36500

static SteadBatchOutlook
no_outlook (SteadOutlookBasis basis)
{
  double none = basis == STEAD_OUTLOOK_OVER ? 0 : NAN;

  return (SteadBatchOutlook) { basis, none, NAN, NAN, STEAD_DAY_NONE, none, FALSE };
}

/* --- flocks -------------------------------------------------------------------- */

/* Eggs a day in the last weeks; 0 without any. */
static gboolean
late_pace (SteadStore        *store,
           const SteadFlock  *flock,
           double            *out_day,
           GError           **error)
{
  SteadDay today = stead_store_get_today (store);
  SteadDay from = MAX (flock->housed_on, today - LATE_DAYS + 1);
  gint64 late = stead_flock_repo_eggs (store, flock->id, from, today, error);

  if (late < 0)
    return FALSE;
  *out_day = today >= from ? (double) late / (today - from + 1) : 0;
  return TRUE;
}

/* What all hens were expected to lay, less what they did, and by when at this pace. */
static void
expected_rest (const SteadFlockAnswer *answer,
               SteadDay                today,
               double                  good_frac,
               double                  pace,
               SteadBatchOutlook      *out)
{
  const SteadFlock *flock = answer->flock;
  double all = MAX (0, flock->eggs_expected * (double) flock->birds - (double) answer->so_far.eggs);

  out->expected_base = all * good_frac;
  if (out->ends_on == STEAD_DAY_NONE && pace > 0 && all / pace < FAR_DAYS)
    out->ends_on = today + (SteadDay) ceil (all / pace);
}

/* Up to the planned end what the learned curve forecasts; past its last age, and without
 * one, as many a day as of late.  As much of it good as so far. */
static gboolean
flock_outlook (SteadStore             *store,
               const SteadBatch       *batch,
               const SteadBatchPlan   *plan,
               SteadBatchOutlook      *out,
               GError                **error)
{
  g_autoptr(SteadFlockAnswer) answer = stead_flock_answer_new (store, batch->id, error);
  SteadDay today = stead_store_get_today (store);
  double good_frac, pace;
  SteadBand eggs;

  if (answer == NULL || !late_pace (store, answer->flock, &pace, error))
    return FALSE;
  good_frac = answer->so_far.eggs > 0 ? 1 - (double) answer->so_far.cracked / (double) answer->so_far.eggs : 1;
  out->basis = STEAD_OUTLOOK_FORECAST;
  out->ends_on = plan->ends_on;
  if (plan->ends_on != STEAD_DAY_NONE && stead_flock_answer_until (answer, plan->ends_on, &eggs))
    {
      out->expected_base = eggs.likely * good_frac;
      out->low_base = eggs.low * good_frac;
      out->high_base = eggs.high * good_frac;
    }
  else if (plan->ends_on > today && pace > 0)
    out->expected_base = pace * (plan->ends_on - today) * good_frac;
  else
    expected_rest (answer, today, good_frac, pace, out);
  return TRUE;
}

/* --- crops --------------------------------------------------------------------- */

/* By the thermometer and the pickings so far; before the first can be told, what was
 * planned of all plants.  Crops that are counted, not weighed, have a plan alone. */
static gboolean
crop_outlook (SteadStore                *store,
              const SteadBatch          *batch,
              const SteadHarvestTotals  *harvested,
              const SteadBatchPlan      *plan,
              SteadBatchOutlook         *out,
              GError                   **error)
{
  g_autoptr(SteadCropAnswer) crop = NULL;
  const SteadUnit *unit;

  if (!stead_batch_output_unit (store, batch, &unit, error))
    return FALSE;
  if (unit->dimension != STEAD_DIMENSION_MASS)
    return TRUE;
  crop = stead_crop_answer_new (store, batch->id, error);
  if (crop == NULL)
    return FALSE;
  if (isfinite (crop->rest_kg.likely))
    *out = (SteadBatchOutlook) { STEAD_OUTLOOK_FORECAST, crop->rest_kg.likely, crop->rest_kg.low, crop->rest_kg.high,
                                 crop->ends_on, NAN, FALSE };
  else if (crop->plan_kg > 0)
    {
      out->basis = STEAD_OUTLOOK_PLAN;
      out->expected_base = MAX (0, crop->plan_kg - harvested->good_base);
      out->ends_on = crop->ends_on;
    }
  if (plan->ends_on != STEAD_DAY_NONE && out->ends_on == STEAD_DAY_NONE)
    out->ends_on = plan->ends_on;
  return TRUE;
}

/* --- fish ------------------------------------------------------------------------ */

/* What was left of the live weight in the harvests so far; 1 and @out_is_live without one. */
static gboolean
dressed_frac (SteadStore        *store,
              const SteadBatch  *batch,
              double            *out_frac,
              gboolean          *out_is_live,
              GError           **error)
{
  g_autoptr(GPtrArray) harvests = stead_harvest_repo_list (store, batch->id, batch->started_on,
                                                           stead_store_get_today (store), error);
  double good_kg = 0, live_kg = 0;

  for (guint i = 0; harvests != NULL && i < harvests->len; i++)
    {
      const SteadHarvest *harvest = harvests->pdata[i];

      if (isnan (harvest->live_kg))
        continue;
      good_kg += harvest->quantity_base;
      live_kg += harvest->live_kg;
    }
  *out_is_live = !(live_kg > 0);
  *out_frac = live_kg > 0 ? good_kg / live_kg : 1;
  return harvests != NULL;
}

/* What all fish that swim will weigh on the day of sale; while no such day can be named,
 * the plan, else the weight that they are meant to be sold at. */
static gboolean
fish_outlook (SteadStore            *store,
              const SteadBatch      *batch,
              const SteadBatchPlan  *plan,
              SteadBatchOutlook     *out,
              GError               **error)
{
  g_autoptr(SteadFishAnswer) fish = stead_fish_answer_new (store, batch->id, error);
  const SteadUnit *unit;
  gboolean counted;
  double frac;

  if (fish == NULL || !stead_batch_output_unit (store, batch, &unit, error)
      || !dressed_frac (store, batch, &frac, &out->is_live, error))
    return FALSE;
  counted = unit->dimension != STEAD_DIMENSION_MASS;
  out->is_live &= !counted;
  if (fish->sale_day != STEAD_DAY_NONE && isfinite (fish->harvest_kg.likely))
    {
      const SteadBand *band = counted ? &fish->harvest_fish : &fish->harvest_kg;
      double each = counted ? 1 : frac;

      out->basis = STEAD_OUTLOOK_FORECAST;
      out->expected_base = band->likely * each;
      out->low_base = band->low * each;
      out->high_base = band->high * each;
      out->ends_on = fish->sale_day;
      if (fish->fcr > 0 && isfinite (fish->biomass_kg))
        out->feed_kg = MAX (0, fish->harvest_kg.likely - fish->biomass_kg) * fish->fcr;
    }
  else if (isnan (plan->output_base) && fish->alive > 0)
    {
      out->basis = STEAD_OUTLOOK_PLAN;
      out->expected_base = counted ? (double) fish->alive : (double) fish->alive * fish->group->sale_g / 1000 * frac;
    }
  else
    out->is_live = FALSE;
  return TRUE;
}

/* --- all ------------------------------------------------------------------------ */

static void
plan_outlook (const SteadBatchPlan     *plan,
              const SteadHarvestTotals *harvested,
              SteadBatchOutlook        *out)
{
  out->ends_on = plan->ends_on;
  if (isnan (plan->output_base))
    return;
  out->basis = STEAD_OUTLOOK_PLAN;
  out->expected_base = MAX (0, plan->output_base - harvested->good_base);
}

gboolean
stead_batch_outlook_read (SteadStore         *store,
                          const SteadBatch   *batch,
                          SteadBatchOutlook  *out,
                          GError            **error)
{
  SteadDay today;
  SteadHarvestTotals harvested;
  SteadBatchPlan plan;
  SteadBatchOutlook outlook;

  g_return_val_if_fail (STEAD_IS_STORE (store) && batch != NULL && out != NULL, FALSE);
  today = stead_store_get_today (store);
  if (!stead_harvest_repo_totals (store, batch->id, batch->started_on, today, &harvested, error)
      || !stead_batch_repo_plan (store, batch->id, &plan, error))
    return FALSE;
  outlook = no_outlook (STEAD_OUTLOOK_NONE);
  if (batch->ended_on != STEAD_DAY_NONE || (harvested.is_over && batch->kind != STEAD_BATCH_FLOCK))
    outlook = no_outlook (STEAD_OUTLOOK_OVER);
  else if (batch->kind == STEAD_BATCH_FLOCK)
    {
      if (!flock_outlook (store, batch, &plan, &outlook, error))
        return FALSE;
    }
  else
    {
      plan_outlook (&plan, &harvested, &outlook);
      if (batch->kind == STEAD_BATCH_CROP && !crop_outlook (store, batch, &harvested, &plan, &outlook, error))
        return FALSE;
      if (batch->kind == STEAD_BATCH_FISH && !fish_outlook (store, batch, &plan, &outlook, error))
        return FALSE;
    }
  *out = outlook;
  return TRUE;
}

const char *
stead_batch_outlook_live (void)
{
  return _("What is expected is live weight: until a first harvest tells how much is left after cutting, "
           "cut fish costs more by weight than this.");
}

gboolean
stead_batch_output_unit (SteadStore         *store,
                         const SteadBatch   *batch,
                         const SteadUnit   **out,
                         GError            **error)
{
  g_autoptr(SteadItem) item = NULL;
  g_autoptr(SteadFarm) farm = NULL;
  gint64 item_id;

  g_return_val_if_fail (STEAD_IS_STORE (store) && batch != NULL && out != NULL, FALSE);
  item_id = stead_harvest_repo_last_item (store, batch->id, error);
  if (item_id > 0)
    item = stead_item_repo_get (store, item_id, error);
  farm = item_id >= 0 && (item_id == 0 || item != NULL) ? stead_farm_repo_get (store, error) : NULL;
  if (farm == NULL)
    return FALSE;
  *out = item != NULL ? item->unit
         : batch->kind == STEAD_BATCH_FLOCK ? stead_unit_by_id ("ea")
         : stead_unit_default (STEAD_DIMENSION_MASS, farm->units);
  return TRUE;
}
