/* stead-batch-again.c - the next batch, made after the model of a former one. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-batch-again.h"
#include "store/stead-crop-repo.h"
#include "store/stead-fish-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-repo-private.h"
#include "store/stead-routine-repo.h"

gboolean
stead_batch_repo_start_read (SteadStore       *store,
                             gint64            model_id,
                             SteadBatchStart  *out,
                             GError          **error)
{
  g_autoptr(SteadBatch) model = NULL;
  g_autoptr(SteadFlock) flock = NULL;
  g_autoptr(SteadFish) fish = NULL;
  g_autoptr(SteadCrop) crop = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  model = stead_batch_repo_get (store, model_id, error);
  if (model == NULL)
    return FALSE;
  *out = (SteadBatchStart) { .started_on = stead_store_get_today (store), .count = 1 };
  switch (model->kind)
    {
    case STEAD_BATCH_FLOCK:
      flock = stead_flock_repo_get (store, model_id, error);
      if (flock == NULL)
        return FALSE;
      out->count = flock->birds;
      out->cost_cents = flock->birds_cost_cents;
      return TRUE;
    case STEAD_BATCH_FISH:
      fish = stead_fish_repo_get (store, model_id, error);
      if (fish == NULL)
        return FALSE;
      out->count = MAX (1, fish->stocked);
      out->cost_cents = fish->cost_cents;
      return TRUE;
    case STEAD_BATCH_CROP:
      crop = stead_crop_repo_get (store, model_id, error);
      if (crop == NULL)
        return FALSE;
      out->count = crop->plants;
      out->cost_cents = crop->cost_cents;
      return TRUE;
    case STEAD_BATCH_KITCHEN:
    default:
      return TRUE;
    }
}

/* --- the batch itself ------------------------------------------------------------- */

static void
set_name (char       **name,
          const char  *to)
{
  g_free (*name);
  *name = g_strdup (to);
}

static gboolean
again_flock (SteadStore             *store,
             gint64                  model_id,
             const SteadBatchStart  *start,
             gint64                 *out_id,
             GError                **error)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (store, model_id, error);

  if (flock == NULL)
    return FALSE;
  flock->id = 0;
  set_name (&flock->name, start->name);
  flock->hatched_on += start->started_on - flock->housed_on;
  flock->housed_on = start->started_on;
  flock->ended_on = flock->lay_began_on = STEAD_DAY_NONE;
  flock->birds = start->count;
  flock->birds_cost_cents = start->cost_cents;
  if (!flock->reared)
    flock->salvage_cents = MIN (flock->salvage_cents, start->cost_cents);
  g_clear_pointer (&flock->note, g_free);
  if (!stead_flock_repo_save (store, flock, error))
    return FALSE;
  *out_id = flock->id;
  return TRUE;
}

static void
begin_batch (SteadBatch            *batch,
             const SteadBatchStart *start)
{
  batch->id = 0;
  set_name (&batch->name, start->name);
  batch->started_on = start->started_on;
  batch->ended_on = STEAD_DAY_NONE;
  g_clear_pointer (&batch->note, g_free);
}

static gboolean
again_fish (SteadStore             *store,
            gint64                  model_id,
            const SteadBatchStart  *start,
            gint64                 *out_id,
            GError                **error)
{
  g_autoptr(SteadFish) fish = stead_fish_repo_get (store, model_id, error);

  if (fish == NULL)
    return FALSE;
  begin_batch (&fish->batch, start);
  fish->stocked = start->count;
  fish->cost_cents = start->cost_cents;
  fish->purge_from = STEAD_DAY_NONE;
  if (!stead_fish_repo_save (store, fish, error))
    return FALSE;
  *out_id = fish->batch.id;
  return TRUE;
}

/* A day that is still to come is not a fact yet. */
static SteadDay
moved_day (SteadStore *store,
           SteadDay    day,
           SteadDay    by)
{
  return day == STEAD_DAY_NONE || day + by > stead_store_get_today (store) ? STEAD_DAY_NONE : day + by;
}

static gboolean
again_crop (SteadStore             *store,
            gint64                  model_id,
            const SteadBatchStart  *start,
            gint64                 *out_id,
            GError                **error)
{
  g_autoptr(SteadCrop) crop = stead_crop_repo_get (store, model_id, error);
  SteadDay by;

  if (crop == NULL)
    return FALSE;
  by = start->started_on - crop->batch.started_on;
  crop->sown_on = moved_day (store, crop->sown_on, by);
  crop->set_out_on = moved_day (store, crop->set_out_on, by);
  crop->first_ripe_on = STEAD_DAY_NONE;
  begin_batch (&crop->batch, start);
  crop->plants = start->count;
  crop->cost_cents = start->cost_cents;
  if (!stead_crop_repo_save (store, crop, error))
    return FALSE;
  *out_id = crop->batch.id;
  return TRUE;
}

/* --- what goes along ---------------------------------------------------------------- */

static gboolean
copy_plan (SteadStore  *store,
           gint64       model_id,
           SteadDay     by,
           gint64       id,
           GError     **error)
{
  SteadBatchPlan plan;

  if (!stead_batch_repo_plan (store, model_id, &plan, error))
    return FALSE;
  if (plan.ends_on != STEAD_DAY_NONE)
    plan.ends_on += by;
  return stead_batch_repo_set_plan (store, id, &plan, error);
}

static gboolean
copy_routines (SteadStore  *store,
               gint64       model_id,
               SteadDay     by,
               gint64       id,
               GError     **error)
{
  g_autoptr(GPtrArray) routines = stead_routine_repo_list (store, model_id, 0, error);

  for (guint i = 0; routines != NULL && i < routines->len; i++)
    {
      SteadRoutine *routine = routines->pdata[i];

      routine->id = 0;
      routine->batch_id = id;
      if (routine->start_on != STEAD_DAY_NONE)
        routine->start_on += by;
      if (!stead_routine_repo_save (store, routine, error))
        return FALSE;
    }
  return routines != NULL;
}

static gboolean
again_batch (SteadStore             *store,
             const SteadBatch       *model,
             const SteadBatchStart  *start,
             gint64                 *out_id,
             GError                **error)
{
  switch (model->kind)
    {
    case STEAD_BATCH_FLOCK: return again_flock (store, model->id, start, out_id, error);
    case STEAD_BATCH_FISH: return again_fish (store, model->id, start, out_id, error);
    case STEAD_BATCH_CROP: return again_crop (store, model->id, start, out_id, error);
    case STEAD_BATCH_KITCHEN:
    default: return stead_repo_missing (error);
    }
}

gboolean
stead_batch_repo_start_again (SteadStore             *store,
                              gint64                  model_id,
                              const SteadBatchStart  *start,
                              gint64                 *out_id,
                              GError                **error)
{
  g_autoptr(SteadBatch) model = NULL;
  SteadDay by;
  gint64 id = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store) && start != NULL && out_id != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  model = stead_batch_repo_get (store, model_id, error);
  if (model == NULL)
    return FALSE;
  if (start->started_on == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day it began."));
  if (start->count < 1)
    return stead_repo_refuse (error, _("Enter how many it begins with: 1 or more."));
  by = start->started_on - model->started_on;
  if (!again_batch (store, model, start, &id, error)
      || !copy_plan (store, model_id, by, id, error)
      || !copy_routines (store, model_id, by, id, error))
    return FALSE;
  *out_id = id;
  return TRUE;
}
