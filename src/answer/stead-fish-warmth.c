/* stead-fish-warmth.c - how warm the water of a group of fish was, and what is to be expected.
 *
 * A day without a reading is a gap, not 0.  For growth a gap between two readings is
 * taken as a straight line, and before the first and after the last as the nearest.
 */
#include "config.h"

#include "answer/stead-fish-private.h"
#include "core/stead-fish-growth.h"

#include <math.h>
#include <string.h>

/* One day about the mean of others, where too few were read to tell.  Common practice, no source. */
#define USUAL_SD_C 1.0

/* A tank whose readings never differ is read too coarsely. */
#define LEAST_SD_C 0.3

/* An old reading says less of the coming days. */
#define OLD_SD_C 2.0

/* Warm and cold days come in runs: a sum of days scatters as one of a third as many
 * days on their own would (common practice, no source; as in stead-learn.h). */
#define DAYS_OF_A_RUN 3.0

void
stead_fish_warmth_clear (SteadFishWarmth *warmth)
{
  g_clear_pointer (&warmth->known_c, g_free);
  g_clear_pointer (&warmth->filled_c, g_free);
}

/* --- gaps ------------------------------------------------------------------------ */

static void
fill_between (SteadFishWarmth *warmth,
              gsize            a,
              gsize            b)
{
  double step = (warmth->known_c[b] - warmth->known_c[a]) / (double) (b - a);

  for (gsize i = a; i <= b; i++)
    warmth->filled_c[i] = warmth->known_c[a] + step * (double) (i - a);
}

static void
fill_gaps (SteadFishWarmth *warmth)
{
  gsize last = 0;
  gboolean begun = FALSE;

  for (gsize i = 0; i < warmth->n; i++)
    {
      if (isnan (warmth->known_c[i]))
        continue;
      if (begun)
        fill_between (warmth, last, i);
      else
        for (gsize j = 0; j <= i; j++)
          warmth->filled_c[j] = warmth->known_c[i];
      last = i;
      begun = TRUE;
    }
  for (gsize i = last; i < warmth->n; i++)
    warmth->filled_c[i] = warmth->known_c[last];
}

/* --- the coming days ---------------------------------------------------------------- */

/* Mean and spread of the readings of the last days; how many there are. */
static gsize
measure_recent (const SteadFishWarmth *warmth,
                double                *mean,
                double                *sd)
{
  gsize from = warmth->n > STEAD_FISH_RECENT_DAYS ? warmth->n - STEAD_FISH_RECENT_DAYS : 0;
  double sum = 0, squares = 0;
  gsize n = 0;

  for (gsize i = from; i < warmth->n; i++)
    if (!isnan (warmth->known_c[i]))
      {
        sum += warmth->known_c[i];
        n++;
      }
  if (n == 0)
    return 0;
  *mean = sum / (double) n;
  for (gsize i = from; i < warmth->n; i++)
    if (!isnan (warmth->known_c[i]))
      squares += pow (warmth->known_c[i] - *mean, 2);
  *sd = n >= 3 ? MAX (LEAST_SD_C, sqrt (squares / (double) (n - 1))) : USUAL_SD_C;
  return n;
}

static void
look_ahead (SteadFishWarmth *warmth,
            SteadDay         to)
{
  gsize n = measure_recent (warmth, &warmth->ahead_c, &warmth->ahead_sd_c);

  if (n > 0)
    {
      warmth->kind = STEAD_FISH_WARMTH_RECENT;
      warmth->ahead_days = (double) n;
    }
  else if (warmth->last_known != STEAD_DAY_NONE && to - warmth->last_known <= STEAD_FISH_OLD_READING_DAYS)
    {
      warmth->kind = STEAD_FISH_WARMTH_LAST;
      warmth->ahead_c = warmth->last_c;
      warmth->ahead_sd_c = OLD_SD_C;
      warmth->ahead_days = 1;
    }
}

gboolean
stead_fish_warmth_read (SteadStore       *store,
                        const SteadFish  *group,
                        SteadDay          to,
                        SteadFishWarmth  *out,
                        GError          **error)
{
  g_auto(SteadFishWarmth) warmth = { .from = group->batch.started_on, .last_known = STEAD_DAY_NONE, .last_c = NAN,
                                     .ahead_c = NAN };

  to = MAX (to, warmth.from);
  warmth.n = (gsize) (to - warmth.from) + 1;
  warmth.known_c = g_new (double, warmth.n);
  if (!stead_fish_repo_temperatures (store, group->batch.id, warmth.from, to, warmth.known_c, error))
    return FALSE;
  for (gsize i = 0; i < warmth.n; i++)
    {
      if (isnan (warmth.known_c[i]))
        continue;
      warmth.n_known++;
      warmth.last_known = warmth.from + (SteadDay) i;
      warmth.last_c = warmth.known_c[i];
    }
  if (warmth.n_known > 0)
    {
      warmth.filled_c = g_new (double, warmth.n);
      fill_gaps (&warmth);
    }
  look_ahead (&warmth, to);
  *out = warmth;
  memset (&warmth, 0, sizeof warmth);
  return TRUE;
}

/* --- degree-days ------------------------------------------------------------------- */

double
stead_fish_warmth_sum (const SteadFishWarmth *warmth,
                       const SteadFishKind   *kind,
                       SteadDay               from,
                       SteadDay               to)
{
  double sum = 0;

  for (SteadDay day = MAX (from, warmth->from); day < to && warmth->filled_c != NULL; day++)
    {
      gsize i = MIN ((gsize) (day - warmth->from), warmth->n - 1);

      sum += stead_fish_degree_day (kind, warmth->filled_c[i]);
    }
  return sum;
}

void
stead_fish_warmth_ahead (const SteadFishWarmth *warmth,
                         const SteadFishKind   *kind,
                         double                 days,
                         double                *out_sum,
                         double                *out_sd)
{
  double low = stead_fish_degree_day (kind, warmth->ahead_c - warmth->ahead_sd_c);
  double high = stead_fish_degree_day (kind, warmth->ahead_c + warmth->ahead_sd_c);
  /* Where growth stops, or rises no more with warmth, a degree does not count in full. */
  double day_sd = fabs (high - low) / 2;

  *out_sum = days * stead_fish_degree_day (kind, warmth->ahead_c);
  *out_sd = day_sd * sqrt (DAYS_OF_A_RUN * (days + days * days / MAX (1, warmth->ahead_days)));
}
