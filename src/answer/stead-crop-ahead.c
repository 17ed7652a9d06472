/* stead-crop-ahead.c - what was picked of a crop week by week, and what is still to come. */
#include "config.h"

#include "answer/stead-crop-private.h"
#include "core/stead-pick.h"

#include <math.h>

/* Weeks that a chart shows at most, and before the first pick. */
#define WEEKS_MOST 80
#define WEEKS_BEFORE 2

static SteadDay
week_of (SteadDay day)
{
  /* Weeks begin on Monday, which is 1. */
  return day - (stead_day_weekday (day) + 6) % 7;
}

/* The whole crop as it is expected, without what the pickings teach. */
static gboolean
make_plan (const SteadCropAnswer *self,
           SteadDay               today,
           SteadHarvestPlan      *out)
{
  const SteadCrop *crop = self->crop;
  double plant_kg = self->plan_kg / (double) crop->plants;
  int span = MAX ((int) round (crop->pick_weeks * 7), 1);

  *out = (SteadHarvestPlan) {
    .shape = self->usual != NULL ? self->usual->shape : STEAD_HARVEST_BELL,
    .plants = (double) crop->plants,
    .plant_kg = plant_kg, .plant_low_kg = plant_kg, .plant_high_kg = plant_kg,
    .start = self->began_on, .start_early = self->began_on, .start_late = self->began_on,
    .span = span,
  };
  if (self->began_on == STEAD_DAY_NONE)
    {
      if (!self->has_ripe || self->ripe.day == STEAD_DAY_NONE)
        return FALSE;
      /* Nothing is ripe yet, so it will be tomorrow at the soonest. */
      out->start = MAX (self->ripe.day, today + 1);
      out->start_early = MAX (self->ripe.early, today + 1);
      out->start_late = self->ripe.late == STEAD_DAY_NONE ? out->start : MAX (self->ripe.late, today + 1);
    }
  out->last_day = out->start_late + span - 1;
  return TRUE;
}

/* What is expected from @first to @last, by what the pickings so far say. */
static SteadBand
expect (const SteadCropAnswer  *self,
        const SteadHarvestPlan *plan,
        SteadDay                first,
        SteadDay                last)
{
  SteadHarvestSpan span;
  double alive = (double) self->plants / (double) self->crop->plants;

  if (first > last)
    return (SteadBand) { 0, 0, 0 };
  stead_harvest_between (plan, first, last, &span);
  return (SteadBand) { span.low_kg * self->factor.low * alive, span.kg * self->factor.likely * alive,
                       span.high_kg * self->factor.high * alive };
}

static void
look_ahead (SteadCropAnswer        *self,
            const SteadHarvestPlan *plan,
            SteadDay                today)
{
  SteadHarvestSpan due;
  double good = self->picked.good_base;

  self->due_kg = 0;
  if (plan->start <= today)
    {
      stead_harvest_between (plan, plan->start, today, &due);
      self->due_kg = due.kg;
    }
  stead_pick_factor (self->plan_kg, MIN (self->due_kg, self->plan_kg), good + self->picked.lost_base, &self->factor);
  self->ends_on = plan->last_day;
  self->next_week = expect (self, plan, today + 1, today + 7);
  self->rest_kg = expect (self, plan, today + 1, plan->last_day);
  self->total_kg = (SteadBand) { good + self->rest_kg.low, good + self->rest_kg.likely, good + self->rest_kg.high };
}

/* Empty weeks from the first that tells something to the last. */
static void
make_weeks (SteadCropAnswer        *self,
            const SteadHarvestPlan *plan,
            const GPtrArray        *picks,
            SteadDay                end)
{
  SteadDay first = plan != NULL ? plan->start_early : end;
  SteadDay last = plan != NULL ? plan->last_day : end;

  if (picks->len > 0)
    first = MIN (first, ((const SteadHarvest *) picks->pdata[0])->day);
  first = week_of (MIN (first, end)) - 7 * WEEKS_BEFORE;
  first = MAX (first, week_of (self->crop->batch.started_on));
  last = MAX (last, end);
  for (SteadDay day = first; day <= last && self->weeks->len < WEEKS_MOST; day += 7)
    {
      SteadPickWeek week = { day, 0, 0, NAN, NAN, NAN };

      g_array_append_val (self->weeks, week);
    }
}

static void
add_pick (SteadCropAnswer    *self,
          const SteadHarvest *pick)
{
  for (guint i = 0; i < self->weeks->len; i++)
    {
      SteadPickWeek *week = &g_array_index (self->weeks, SteadPickWeek, i);

      if (pick->day < week->first_day || pick->day > week->first_day + 6)
        continue;
      week->picked_kg += pick->quantity_base;
      week->lost_kg += pick->lost_base;
    }
}

/* The week under way has what was picked, and what its other days should bring. */
static void
fill_ahead (SteadCropAnswer        *self,
            const SteadHarvestPlan *plan,
            SteadDay                today)
{
  for (guint i = 0; i < self->weeks->len; i++)
    {
      SteadPickWeek *week = &g_array_index (self->weeks, SteadPickWeek, i);
      SteadBand band;

      if (week->first_day + 6 <= today || week->first_day > plan->last_day)
        continue;
      band = expect (self, plan, MAX (week->first_day, today + 1), week->first_day + 6);
      week->low_kg = week->picked_kg + band.low;
      week->likely_kg = week->picked_kg + band.likely;
      week->high_kg = week->picked_kg + band.high;
    }
}

static void
make_series (SteadCropAnswer *self,
             SteadDay         today)
{
  gboolean over = self->crop->batch.ended_on != STEAD_DAY_NONE;
  gboolean seen = self->began_on != STEAD_DAY_NONE;

  self->series = (SteadHarvestSeries) {
    .weeks = (const SteadPickWeek *) (gpointer) self->weeks->data,
    .n_weeks = self->weeks->len,
    .today = over ? STEAD_DAY_NONE : today,
    .first_ripe = seen ? self->began_on : self->has_ripe ? self->ripe.day : STEAD_DAY_NONE,
    .ripe_early = seen ? self->began_on : self->has_ripe ? self->ripe.early : STEAD_DAY_NONE,
    .ripe_late = seen ? self->began_on : self->has_ripe ? self->ripe.late : STEAD_DAY_NONE,
  };
}

static gboolean
read_plan (SteadStore       *store,
           SteadCropAnswer  *self,
           GError          **error)
{
  SteadBatchPlan plan;

  if (!stead_batch_repo_plan (store, self->crop->batch.id, &plan, error))
    return FALSE;
  self->plan_kg = (double) self->crop->plants * self->crop->yield_kg;
  self->plan_entered = plan.output_base > 0;
  if (self->plan_entered)
    self->plan_kg = plan.output_base;
  return TRUE;
}

gboolean
stead_crop_read_picks (SteadStore       *store,
                       SteadCropAnswer  *self,
                       SteadDay          today,
                       GError          **error)
{
  const SteadCrop *crop = self->crop;
  SteadDay end = stead_crop_last_day (self, today);
  g_autoptr(GPtrArray) picks = stead_harvest_repo_list (store, crop->batch.id, crop->batch.started_on, end, error);
  SteadHarvestPlan plan;
  gboolean over;
  const SteadBand none = { NAN, NAN, NAN };

  if (picks == NULL || !read_plan (store, self, error) ||
      !stead_harvest_repo_totals (store, crop->batch.id, crop->batch.started_on, end, &self->picked, error))
    return FALSE;
  over = crop->batch.ended_on != STEAD_DAY_NONE || self->picked.is_over;
  self->n_picks = picks->len;
  self->first_pick = picks->len > 0 ? ((const SteadHarvest *) picks->pdata[0])->day : STEAD_DAY_NONE;
  self->last_pick = picks->len > 0 ? ((const SteadHarvest *) picks->pdata[picks->len - 1])->day : STEAD_DAY_NONE;
  self->plant_kg = stead_crop_yield_plant_kg (self->picked.good_base, (double) crop->plants);
  self->m2_kg = stead_crop_yield_m2_kg (self->picked.good_base, crop->area_m2);
  self->factor = self->next_week = self->rest_kg = self->total_kg = none;
  self->due_kg = NAN;
  self->ends_on = crop->batch.ended_on;
  self->weeks = g_array_new (FALSE, FALSE, sizeof (SteadPickWeek));
  over |= !make_plan (self, today, &plan);
  if (!over)
    look_ahead (self, &plan, today);
  make_weeks (self, over ? NULL : &plan, picks, end);
  for (guint i = 0; i < picks->len; i++)
    add_pick (self, picks->pdata[i]);
  if (!over)
    fill_ahead (self, &plan, today);
  make_series (self, today);
  return TRUE;
}
