/* stead-crop-warmth.c - a crop's degree days, and the day on which it can be picked. */
#include "config.h"

#include "answer/stead-crop-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* An own year with a larger share of days without a reading teaches nothing. */
#define OWN_GAPS_MOST 0.1

void
stead_crop_rule (const SteadCrop    *crop,
                 SteadDegreeDayRule *out)
{
  static const SteadDegreeDayMethod methods[] = {
    [STEAD_CROP_AVERAGE] = STEAD_DEGREE_DAYS_AVERAGE,
    [STEAD_CROP_SUBSTITUTE] = STEAD_DEGREE_DAYS_SUBSTITUTE,
    [STEAD_CROP_CEILING] = STEAD_DEGREE_DAYS_REDUCED_CEILING,
  };

  /* The plain average does not look at the upper limit. */
  *out = (SteadDegreeDayRule) { methods[crop->method], crop->base_c, isnan (crop->upper_c) ? 60 : crop->upper_c };
}

SteadDayTemps *
stead_crop_read_days (SteadStore       *store,
                      const SteadCrop  *crop,
                      SteadDay          from,
                      SteadDay          to,
                      GError          **error)
{
  g_autoptr(GPtrArray) read = stead_climate_repo_list (store, crop->climate_id, from, to, error);
  SteadDayTemps *days;

  if (read == NULL)
    return NULL;
  days = g_new (SteadDayTemps, MAX (to - from + 1, 0) + 1);
  for (SteadDay day = from; day <= to; day++)
    days[day - from] = (SteadDayTemps) { NAN, NAN };
  for (guint i = 0; i < read->len; i++)
    {
      const SteadClimateDay *day = read->pdata[i];

      days[day->day - from] = (SteadDayTemps) { day->max_c, day->min_c };
    }
  return days;
}

/* The day of the first ripe fruit as entered, or else of the first pick. */
static gboolean
find_began (SteadStore       *store,
            const SteadCrop  *crop,
            SteadDay          to,
            SteadDay         *out,
            GError          **error)
{
  g_autoptr(GPtrArray) picks = NULL;

  *out = crop->first_ripe_on;
  if (*out != STEAD_DAY_NONE)
    return TRUE;
  picks = stead_harvest_repo_list (store, crop->batch.id, crop->batch.started_on, to, error);
  if (picks == NULL)
    return FALSE;
  if (picks->len > 0)
    *out = ((const SteadHarvest *) picks->pdata[0])->day;
  return TRUE;
}

static gboolean
same_variety (const SteadCrop *a,
              const SteadCrop *b)
{
  return a->batch.id != b->batch.id && g_strcmp0 (a->crop, b->crop) == 0 && g_strcmp0 (a->variety, b->variety) == 0 &&
         a->method == b->method && fabs (a->base_c - b->base_c) < 1e-6;
}

/* Sum of degree days from setting out to the first pick; NAN if too little was read. */
static gboolean
sum_of_year (SteadStore       *store,
             const SteadCrop  *crop,
             SteadDay          began,
             double           *out,
             GError          **error)
{
  g_autofree SteadDayTemps *days = stead_crop_read_days (store, crop, crop->set_out_on, began, error);
  SteadDegreeDayRule rule;
  SteadDegreeDaySum sum;
  gsize n = (gsize) (began - crop->set_out_on + 1);

  *out = NAN;
  if (days == NULL)
    return FALSE;
  stead_crop_rule (crop, &rule);
  stead_degree_day_sum (&rule, days, n, &sum);
  if (sum.n_days > 0 && sum.sum_c > 0 && (double) sum.n_gaps <= OWN_GAPS_MOST * (double) n)
    *out = sum.sum_c * (double) n / (double) sum.n_days;
  return TRUE;
}

/* (element-type double): what own years of the variety needed. */
static GArray *
read_own_years (SteadStore       *store,
                const SteadCrop  *crop,
                GError          **error)
{
  g_autoptr(GPtrArray) crops = stead_crop_repo_list (store, TRUE, error);
  g_autoptr(GArray) sums = g_array_new (FALSE, FALSE, sizeof (double));

  if (crops == NULL)
    return NULL;
  for (guint i = 0; i < crops->len; i++)
    {
      const SteadCrop *other = crops->pdata[i];
      SteadDay began;
      double sum_c;

      if (!same_variety (other, crop) || other->set_out_on == STEAD_DAY_NONE)
        continue;
      if (!find_began (store, other, stead_store_get_today (store), &began, error))
        return NULL;
      if (began == STEAD_DAY_NONE || began < other->set_out_on)
        continue;
      if (!sum_of_year (store, other, began, &sum_c, error))
        return NULL;
      if (isfinite (sum_c))
        g_array_append_val (sums, sum_c);
    }
  return g_steal_pointer (&sums);
}

/* Whether all twelve months are entered. */
static gboolean
usual_year (const SteadUsualYear *entered,
            SteadTypicalYear     *out)
{
  out->spread_c = 0;
  for (int i = 0; i < 12; i++)
    {
      out->max_c[i] = entered->max_c[i];
      out->min_c[i] = entered->min_c[i];
    }
  return stead_typical_year_is_valid (out);
}

/* Readings are due up to yesterday; today's counts once it is there. */
static SteadDay
last_due (const SteadDayTemps *days,
          SteadDay             from,
          SteadDay             last,
          SteadDay             today)
{
  if (last < from || last < today)
    return last;
  return isnan (stead_day_mean_c (days[last - from].max_c, days[last - from].min_c)) ? last - 1 : last;
}

static void
find_last_read (SteadCropAnswer     *self,
                const SteadDayTemps *days,
                SteadDay             last)
{
  self->last_read = STEAD_DAY_NONE;
  for (SteadDay day = self->from; day <= last; day++)
    if (!isnan (stead_day_mean_c (days[day - self->from].max_c, days[day - self->from].min_c)))
      self->last_read = day;
}

static void
sum_days (SteadCropAnswer     *self,
          const SteadDayTemps *days,
          SteadDay             last)
{
  SteadDay end = self->began_on != STEAD_DAY_NONE ? MIN (last, MAX (self->began_on, self->from)) : last;
  SteadDegreeDaySum sum = { 0 };

  if (end >= self->from)
    stead_degree_day_sum (&self->rule, days, (gsize) (end - self->from + 1), &sum);
  self->sum_c = sum.sum_c;
  self->n_read = sum.n_days;
  self->n_gaps = sum.n_gaps;
  find_last_read (self, days, last);
}

/* Names the day, unless picking has begun or the crop is over. */
static gboolean
look_ahead (SteadStore           *store,
            SteadCropAnswer      *self,
            const SteadDayTemps  *days,
            SteadDay              last,
            GError              **error)
{
  g_autoptr(GError) none = NULL;
  SteadUsualYear entered;
  SteadTypicalYear normals;
  gboolean has_normals;
  SteadRipeLog log = { self->rule, self->from, days, last >= self->from ? (gsize) (last - self->from + 1) : 0 };

  if (!stead_climate_repo_usual (store, self->crop->climate_id, &entered, error))
    return FALSE;
  has_normals = usual_year (&entered, &normals);
  self->has_ripe = stead_ripe_date (&log, &self->learned, STEAD_RIPE_BY_NORMALS, has_normals ? &normals : NULL,
                                    &self->ripe, &none);
  if (self->has_ripe)
    self->assumed_c = self->ripe.assumed_c;
  else
    self->no_ripe = g_strdup (none->message);
  return TRUE;
}

gboolean
stead_crop_read_warmth (SteadStore       *store,
                        SteadCropAnswer  *self,
                        SteadDay          today,
                        GError          **error)
{
  const SteadCrop *crop = self->crop;
  SteadDay end = stead_crop_last_day (self, today), last;
  g_autoptr(GArray) own = read_own_years (store, crop, error);
  g_autofree SteadDayTemps *days = NULL;

  stead_crop_rule (crop, &self->rule);
  self->from = crop->set_out_on;
  self->last_read = STEAD_DAY_NONE;
  self->began_need_c = NAN;
  if (own == NULL || !find_began (store, crop, end, &self->began_on, error))
    return FALSE;
  if (!stead_learn (crop->ripe_need, (const double *) (gpointer) own->data, own->len, &self->learned, error))
    return FALSE;
  stead_learn_band (&self->learned, STEAD_BAND_LEVEL, &self->need_c);
  if (self->from == STEAD_DAY_NONE)
    {
      self->no_ripe = g_strdup (_("Enter the day the plants are set out. For seed that stays where it was sown, "
                                  "enter the day of sowing."));
      return TRUE;
    }
  days = stead_crop_read_days (store, crop, self->from, end, error);
  if (days == NULL)
    return FALSE;
  last = last_due (days, self->from, end, today);
  sum_days (self, days, last);
  if (self->began_on != STEAD_DAY_NONE)
    return self->began_on < self->from || sum_of_year (store, crop, self->began_on, &self->began_need_c, error);
  return crop->batch.ended_on != STEAD_DAY_NONE || look_ahead (store, self, days, last, error);
}
