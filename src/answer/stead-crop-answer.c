/* stead-crop-answer.c - "How is this crop doing, when can it be picked, and how much?" */
#include "config.h"

#include "answer/stead-crop-private.h"
#include "store/stead-place-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
stead_crop_answer_free (SteadCropAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->crop, stead_crop_free);
  g_clear_pointer (&self->weeks, g_array_unref);
  g_free (self->thermometer);
  g_free (self->no_ripe);
  g_free (self->feeding);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

SteadDay
stead_crop_last_day (const SteadCropAnswer *self,
                     SteadDay               today)
{
  SteadDay ended = self->crop->batch.ended_on;

  return ended == STEAD_DAY_NONE ? today : MIN (today, ended);
}

/* The place's name, or "outdoors". */
static gboolean
read_thermometer (SteadStore       *store,
                  SteadCropAnswer  *self,
                  GError          **error)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, error);

  if (places == NULL)
    return FALSE;
  for (guint i = 0; i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];

      if (place->id == self->crop->climate_id)
        self->thermometer = g_strdup (place->name);
    }
  if (self->thermometer == NULL)
    self->thermometer = g_strdup (C_("thermometer", "outdoors"));
  return TRUE;
}

static gboolean
read_plants (SteadStore       *store,
             SteadCropAnswer  *self,
             SteadDay          today,
             GError          **error)
{
  self->plants = stead_crop_repo_plants (store, self->crop->batch.id, stead_crop_last_day (self, today) + 1, error);
  if (self->plants < 0)
    return FALSE;
  self->lost = self->crop->plants - self->plants;
  self->density_m2 = isnan (self->crop->area_m2) ? NAN : (double) self->plants / self->crop->area_m2;
  return TRUE;
}

SteadCropAnswer *
stead_crop_answer_new (SteadStore  *store,
                       gint64       crop_id,
                       GError     **error)
{
  g_autoptr(SteadCropAnswer) self = NULL;
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  today = stead_store_get_today (store);
  self = g_new0 (SteadCropAnswer, 1);
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL)
    return NULL;
  self->crop = stead_crop_repo_get (store, crop_id, error);
  if (self->crop == NULL)
    return NULL;
  self->usual = stead_crop_defaults (self->crop->crop);
  if (!read_thermometer (store, self, error)
      || !read_plants (store, self, today, error)
      || !stead_crop_read_warmth (store, self, today, error)
      || !stead_crop_read_picks (store, self, today, error)
      || !stead_crop_read_air (store, self, today, error))
    return NULL;
  self->sentence = stead_crop_sentence (self, today);
  self->caution = stead_crop_caution (self, today);
  self->feeding = stead_crop_feeding (self);
  self->rule_text = _("Book figures are for planning, not promises. Local extension advice and your own years go first.");
  return g_steal_pointer (&self);
}
