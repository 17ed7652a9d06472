/* stead-water-answer.c - "How is this water, where is it going, and what does it need?" */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-water-private.h"
#include "core/stead-aquaponics.h"
#include "core/stead-nitrogen.h"
#include "store/stead-place-repo.h"

#include <math.h>

/* Feed is summed over so many whole days before today. */
#define FEED_DAYS 7

/* Protein of feed that does not say it: the feed of FAO 589's beds. */
#define PROTEIN_USUAL_FRAC 0.32

void
stead_water_answer_free (SteadWaterAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->water, stead_water_free);
  stead_water_scene_clear (&self->scene);
  g_clear_pointer (&self->tests, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self->todo);
  g_free (self->caution);
  g_clear_pointer (&self->tanks, g_ptr_array_unref);
  g_free (self);
}

/* --- the budget ------------------------------------------------------------------ */

/* Feed and its protein, over whole days. */
static gboolean
sum_feed (SteadStore        *store,
          SteadWaterAnswer  *self,
          GError           **error)
{
  SteadWaterBudget *budget = &self->budget;
  g_autoptr(GPtrArray) all = stead_water_repo_fish (store, self->water->id, self->today - FEED_DAYS,
                                                    self->today - 1, error);
  double feed = 0;
  double protein = 0;

  if (all == NULL)
    return FALSE;
  for (guint i = 0; i < all->len; i++)
    {
      const SteadWaterFish *fish = all->pdata[i];

      feed += fish->feed_kg;
      budget->protein_assumed |= isnan (fish->protein_frac) && fish->feed_kg > 0;
      protein += fish->feed_kg * (isnan (fish->protein_frac) ? PROTEIN_USUAL_FRAC : fish->protein_frac);
    }
  budget->days = all->len > 0 ? FEED_DAYS : 0;
  budget->feed_kg_day = feed / FEED_DAYS;
  budget->protein_frac = feed > 0 ? protein / feed : NAN;
  return TRUE;
}

/* The size of all beds and bays in this water. */
static gboolean
sum_beds (SteadStore        *store,
          SteadWaterAnswer  *self,
          GError           **error)
{
  g_autoptr(GPtrArray) places = stead_water_repo_places (store, self->water->id, error);
  double sum = 0;

  if (places == NULL)
    return FALSE;
  for (guint i = 0; i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];

      if (place->kind != STEAD_PLACE_TANK && !isnan (place->area_m2))
        sum += place->area_m2;
    }
  self->budget.bed_m2 = sum > 0 ? sum : NAN;
  return TRUE;
}

gboolean
stead_water_budget_read (SteadStore        *store,
                         SteadWaterAnswer  *self,
                         GError           **error)
{
  SteadWaterBudget *budget = &self->budget;
  double min_g_m2, max_g_m2;

  if (!sum_feed (store, self, error) || !sum_beds (store, self, error))
    return FALSE;
  if (!(budget->feed_kg_day > 0))
    return TRUE;
  budget->tan_g_day = stead_nitrogen_tan_g (1000 * budget->feed_kg_day, budget->protein_frac);
  budget->alkalinity_g_day = stead_nitrogen_alkalinity_g (budget->tan_g_day);
  budget->filter_min_m2 = stead_biofilter_area_m2 (budget->tan_g_day, STEAD_BIOFILTER_MOST_G_M2);
  budget->filter_max_m2 = stead_biofilter_area_m2 (budget->tan_g_day, STEAD_BIOFILTER_LEAST_G_M2);
  stead_bed_feed_rate (STEAD_BED_FRUITING, &min_g_m2, &max_g_m2);
  budget->bed_min_m2 = stead_bed_area_m2 (1000 * budget->feed_kg_day, max_g_m2);
  budget->bed_max_m2 = stead_bed_area_m2 (1000 * budget->feed_kg_day, min_g_m2);
  budget->nitrate_mgl_day = stead_nitrogen_nitrate_rise_mgl (budget->tan_g_day, self->volume_l);
  return TRUE;
}

/* --- the last test --------------------------------------------------------------- */

static gboolean
read_tests (SteadStore        *store,
            SteadWaterAnswer  *self,
            GError           **error)
{
  g_autoptr(SteadWaterTest) none = NULL;

  self->tests = stead_water_test_repo_list (store, self->water->id, stead_day_new (1900, 1, 1), self->today, error);
  if (self->tests == NULL)
    return FALSE;
  if (self->tests->len > 0)
    self->last = self->tests->pdata[self->tests->len - 1];
  none = self->last == NULL ? stead_water_test_new () : NULL;
  stead_water_judge_test (&self->scene, self->last != NULL ? self->last : none, self->lines);
  for (int i = 0; i < STEAD_N_WATER_MEASURES; i++)
    {
      self->n_act += self->lines[i].judgement.verdict == STEAD_WATER_ACT ? 1 : 0;
      self->n_watch += self->lines[i].judgement.verdict == STEAD_WATER_WATCH ? 1 : 0;
    }
  return TRUE;
}

/* The tanks that it is the volume of, unless that was entered. */
static gboolean
read_tanks (SteadStore        *store,
            SteadWaterAnswer  *self,
            GError           **error)
{
  if (!isnan (self->water->volume_l))
    return TRUE;
  self->tanks = stead_tank_repo_list_of (store, self->water->id, error);
  return self->tanks != NULL;
}

static void
find_due (SteadWaterAnswer *self)
{
  if (self->water->ended_on != STEAD_DAY_NONE)
    self->due_on = STEAD_DAY_NONE;
  else
    self->due_on = self->last == NULL ? self->today : self->last->day + self->water->test_days;
}

SteadWaterAnswer *
stead_water_answer_new (SteadStore  *store,
                        gint64       water_id,
                        GError     **error)
{
  g_autoptr(SteadWaterAnswer) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  self = g_new0 (SteadWaterAnswer, 1);
  self->today = stead_store_get_today (store);
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL)
    return NULL;
  self->water = stead_water_repo_get (store, water_id, error);
  if (self->water == NULL
      || !stead_water_repo_volume (store, self->water, &self->volume_l, error)
      || !read_tanks (store, self, error)
      || !stead_water_scene_read (store, self->water, &self->scene, error)
      || !read_tests (store, self, error)
      || !stead_water_budget_read (store, self, error))
    return NULL;
  find_due (self);
  stead_water_trends_fill (self);
  stead_water_answer_say (self);
  return g_steal_pointer (&self);
}

const SteadWaterTest *
stead_water_answer_last_of (const SteadWaterAnswer *self,
                            SteadWaterMeasure       measure,
                            double                 *out_value)
{
  g_return_val_if_fail (self != NULL && out_value != NULL, NULL);

  for (guint i = self->tests->len; i-- > 0;)
    {
      double value = stead_water_value (&self->scene, self->tests->pdata[i], measure);

      if (isnan (value))
        continue;
      *out_value = value;
      return self->tests->pdata[i];
    }
  *out_value = NAN;
  return NULL;
}

GPtrArray *
stead_water_answer_worst (const SteadWaterAnswer *self)
{
  g_return_val_if_fail (self != NULL, NULL);
  return stead_water_worst_lines (self->lines);
}
