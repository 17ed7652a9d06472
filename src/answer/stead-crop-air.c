/* stead-crop-air.c - what the last days' air and light were like, and what the fish feed. */
#include "config.h"

#include "answer/stead-crop-private.h"
#include "core/stead-aquaponics.h"

#include <math.h>
#include <string.h>

#define FEED_DAYS 14

/* A day and a night at which tomatoes set fruit. */
#define MILD_C 18.0

static void
judge_set (SteadCropAnswer       *self,
           const SteadClimateDay *day)
{
  SteadFruitSet set;
  gboolean cold;

  if (isnan (stead_day_mean_c (day->max_c, day->min_c)))
    return;
  set = stead_fruit_set (day->max_c, day->min_c);
  self->set_days++;
  if (set != STEAD_FRUIT_SET_POOR)
    return;
  /* A mild day alone shows whether the night was too cold. */
  cold = day->min_c < MILD_C && stead_fruit_set (MILD_C, day->min_c) == STEAD_FRUIT_SET_POOR;
  self->set_poor++;
  self->set_hot += !cold;
}

/* The humidity is a mean of the day and goes with the mean temperature. */
static void
read_deficit (SteadCropAnswer       *self,
              const SteadClimateDay *day)
{
  double mean_c = stead_day_mean_c (day->max_c, day->min_c), kpa;

  if (isnan (mean_c) || isnan (day->rh_frac) || !stead_vapor_deficit_kpa (mean_c, day->rh_frac, &kpa, NULL))
    return;
  self->deficit_kpa = kpa;
  self->deficit_day = day->day;
  self->deficit_c = mean_c;
  self->deficit_rh_frac = day->rh_frac;
}

static gboolean
read_feed (SteadStore       *store,
           SteadCropAnswer  *self,
           SteadDay          today,
           GError          **error)
{
  SteadBed bed = self->usual != NULL && self->usual->kind == STEAD_CROP_KIND_LEAFY ? STEAD_BED_LEAFY
                                                                                  : STEAD_BED_FRUITING;
  double kg, least, most;

  self->feed_g_day = self->bed_min_m2 = self->bed_max_m2 = self->feed_plants_min = self->feed_plants_max = NAN;
  if (self->crop->system != STEAD_GROW_AQUAPONIC)
    return TRUE;
  if (!stead_crop_repo_fish_feed (store, self->crop->batch.id, today - FEED_DAYS, today - 1, &kg, error))
    return FALSE;
  self->feed_g_day = kg * 1000 / FEED_DAYS;
  if (!(self->feed_g_day > 0))
    return TRUE;
  stead_bed_feed_rate (bed, &least, &most);
  self->bed_min_m2 = stead_bed_area_m2 (self->feed_g_day, most);
  self->bed_max_m2 = stead_bed_area_m2 (self->feed_g_day, least);
  stead_bed_plants_for_feed (bed, self->feed_g_day, &self->feed_plants_min, &self->feed_plants_max);
  return TRUE;
}

gboolean
stead_crop_read_air (SteadStore       *store,
                     SteadCropAnswer  *self,
                     SteadDay          today,
                     GError          **error)
{
  SteadDay end = stead_crop_last_day (self, today);
  g_autoptr(GPtrArray) days = stead_climate_repo_list (store, self->crop->climate_id,
                                                       end - STEAD_CROP_RECENT_DAYS + 1, end, error);
  gboolean tomato = strcmp (self->crop->crop, "tomato") == 0;
  double light = 0;

  if (days == NULL)
    return FALSE;
  self->deficit_kpa = NAN;
  self->deficit_day = STEAD_DAY_NONE;
  for (guint i = 0; i < days->len; i++)
    {
      const SteadClimateDay *day = days->pdata[i];

      if (tomato)
        judge_set (self, day);
      read_deficit (self, day);
      if (isnan (day->light_mol) || self->n_light >= STEAD_CROP_RECENT_DAYS)
        continue;
      light += day->light_mol;
      self->light_read[self->n_light++] = day->light_mol;
    }
  self->light_mol = self->n_light > 0 ? light / self->n_light : NAN;
  return read_feed (store, self, today, error);
}
