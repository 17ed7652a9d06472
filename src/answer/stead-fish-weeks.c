/* stead-fish-weeks.c - a group of fish week by week. */
#include "config.h"

#include "answer/stead-fish-private.h"

#include <math.h>

/* Number at the end of @day. */
static gint64
number_on (const GArray *counts,
           SteadDay      day)
{
  gint64 number = 0;

  for (guint i = 0; i < counts->len; i++)
    {
      const SteadFishCount *count = &g_array_index (counts, SteadFishCount, i);

      if (count->day <= day)
        number = count->n;
    }
  return number;
}

/* Mean of the days that were read. */
static double
mean_warmth (const SteadFishWarmth *warmth,
             SteadDay               from,
             SteadDay               to)
{
  double sum = 0;
  int n = 0;

  for (SteadDay day = from; day <= to; day++)
    {
      double known_c = warmth->known_c[day - warmth->from];

      if (isnan (known_c))
        continue;
      sum += known_c;
      n++;
    }
  return n > 0 ? sum / n : NAN;
}

static SteadFishWeek *
week_of (SteadFishAnswer *self,
         SteadDay         day)
{
  guint at = (guint) ((day - self->group->batch.started_on) / 7);

  return at < self->weeks->len ? &g_array_index (self->weeks, SteadFishWeek, at) : NULL;
}

static gboolean
add_entries (SteadStore       *store,
             SteadFishAnswer  *self,
             SteadDay          to,
             GError          **error)
{
  g_autoptr(GPtrArray) entries = stead_fish_repo_entries (store, self->group->batch.id,
                                                          self->group->batch.started_on, to, error);

  for (guint i = 0; entries != NULL && i < entries->len; i++)
    {
      const SteadFishEntry *entry = entries->pdata[i];
      SteadFishWeek *week = week_of (self, entry->day);
      SteadGrowthLoss loss = { entry->day, (gint64) entry->deaths + entry->culled };

      if (loss.n > 0)
        g_array_append_val (self->losses, loss);
      if (week == NULL)
        continue;
      week->deaths += loss.n;
      if (!isnan (entry->feed_kg))
        week->feed_kg = (isnan (week->feed_kg) ? 0 : week->feed_kg) + entry->feed_kg;
    }
  return entries != NULL;
}

static gboolean
add_harvests (SteadStore       *store,
              SteadFishAnswer  *self,
              SteadDay          to,
              GError          **error)
{
  g_autoptr(GPtrArray) harvests = stead_harvest_repo_list (store, self->group->batch.id,
                                                           self->group->batch.started_on, to, error);

  for (guint i = 0; harvests != NULL && i < harvests->len; i++)
    {
      const SteadHarvest *harvest = harvests->pdata[i];
      SteadFishWeek *week = week_of (self, harvest->day);

      if (week != NULL && harvest->pieces > 0)
        week->harvested += harvest->pieces;
    }
  return harvests != NULL;
}

gboolean
stead_fish_fill_weeks (SteadStore              *store,
                       SteadFishAnswer         *self,
                       const SteadFishWarmth   *warmth,
                       const SteadFishLearned  *learned,
                       const GArray            *counts,
                       GError                 **error)
{
  SteadDay to = warmth->from + (SteadDay) warmth->n - 1;

  for (SteadDay day = warmth->from; day <= to; day += 7)
    {
      SteadDay last = MIN (day + 6, to);
      SteadFishWeek week = { .first_day = day, .alive = number_on (counts, last), .feed_kg = NAN,
                             .water_c = mean_warmth (warmth, day, last),
                             .mean_g = stead_fish_learned_mean_g (learned, last) };

      g_array_append_val (self->weeks, week);
    }
  return add_entries (store, self, to, error) && add_harvests (store, self, to, error);
}

/* --- ahead ------------------------------------------------------------------------------ */

/* Weights between two steps of the forecast, on the straight line from one to the other;
 * a step is a week, in which a fish grows by a few parts in a hundred. */
static gboolean
mean_on (const GArray *steps,
         SteadDay      day,
         SteadBand    *out)
{
  for (guint i = 0; i + 1 < steps->len; i++)
    {
      const SteadGrowthStep *a = &g_array_index (steps, SteadGrowthStep, i);
      const SteadGrowthStep *b = a + 1;
      double share;

      if (day < a->day || day > b->day || a->day == b->day)
        continue;
      share = (double) (day - a->day) / (double) (b->day - a->day);
      out->low = a->low_g + share * (b->low_g - a->low_g);
      out->likely = a->likely_g + share * (b->likely_g - a->likely_g);
      out->high = a->high_g + share * (b->high_g - a->high_g);
      return TRUE;
    }
  return FALSE;
}

GArray *
stead_fish_answer_weeks_ahead (const SteadFishAnswer *self,
                               guint                  most)
{
  g_autoptr(GArray) weeks = g_array_new (FALSE, FALSE, sizeof (SteadFishWeekAhead));
  SteadFishWeekAhead week;

  g_return_val_if_fail (self != NULL, NULL);

  if (self->weeks == NULL || self->weeks->len == 0 || self->series.today == STEAD_DAY_NONE)
    return g_steal_pointer (&weeks);
  week.first_day = g_array_index (self->weeks, SteadFishWeek, self->weeks->len - 1).first_day + 7;
  while (weeks->len < most && mean_on (self->steps, week.first_day + 6, &week.mean_g))
    {
      g_array_append_val (weeks, week);
      week.first_day += 7;
    }
  return g_steal_pointer (&weeks);
}
