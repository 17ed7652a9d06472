/* stead-fish-ahead.c - the coming weeks of a group of fish: weight, number, sale day, harvest.
 *
 * A week that lies outside what the growth table knows is not drawn, and no day is
 * named by it: the answer then says why.
 */
#include "config.h"

#include "answer/stead-fish-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-fish-growth.h"
#include "core/stead-fish-sample.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define AHEAD_WEEKS (STEAD_FISH_AHEAD_DAYS / 7)

/* The chart shows at least so much, and so much past the latest sale day. */
#define LEAST_WEEKS 8
#define PAST_SALE_WEEKS 2

/* Core draws single fish up to here; more are drawn as so many and scaled. */
#define DRAWN_FISH_MOST 1e6

/* Yields that are shown, where core has them. */
static const SteadFishCut cuts[] = {
  STEAD_FISH_CUT_HEADED, STEAD_FISH_CUT_GUTTED, STEAD_FISH_CUT_FILLET, STEAD_FISH_CUT_HAND_FILLET,
};

typedef struct
{
  SteadGrowthDay   days[AHEAD_WEEKS + 1];
  SteadGrowthAhead weeks[AHEAD_WEEKS + 1];
  gsize            n;       /* weeks that the growth table covers */
  double           scale;   /* of the numbers, where more swim than are drawn */
} Ahead;

/* --- what is known beforehand ------------------------------------------------------ */

/* Deaths seen, and in how many fish-days. */
static SteadAlive
deaths_so_far (const SteadFishAnswer *self,
               const GArray          *counts,
               SteadDay               to)
{
  double year = CLAMP (self->group->deaths_year, 0.0001, 0.9999);
  SteadAlive alive = { .alive = (double) self->alive,
                       .deaths = (double) (self->so_far.deaths + self->so_far.culled),
                       .usual_rate = -log1p (-year) / 365, .usual_deaths = STEAD_GROWTH_USUAL_DEATHS };

  for (guint i = 0; i < counts->len; i++)
    {
      const SteadFishCount *count = &g_array_index (counts, SteadFishCount, i);
      SteadDay until = i + 1 < counts->len ? (count + 1)->day : to + 1;

      alive.exposure += (double) count->n * MAX (0, until - count->day);
    }
  return alive;
}

static void
scale_band (SteadBand *band,
            double     factor)
{
  band->low *= factor;
  band->likely *= factor;
  band->high *= factor;
}

/* Weeks in which the likely fish weigh no more than the table has. */
static gsize
covered_weeks (const SteadFishLearned *learned,
               const Ahead            *ahead)
{
  gsize n = 0;

  if (!learned->is_known)
    return AHEAD_WEEKS + 1;
  while (n <= AHEAD_WEEKS && ahead->weeks[n].mean_g.likely <= learned->kind.stages[STEAD_FISH_GROWOUT].max_g)
    n++;
  return n;
}

static void
run_ahead (const SteadFishAnswer  *self,
           const SteadFishWarmth  *warmth,
           const SteadFishLearned *learned,
           const GArray           *counts,
           SteadDay                today,
           Ahead                  *ahead)
{
  SteadAlive alive = deaths_so_far (self, counts, today);

  ahead->scale = MAX (1, alive.alive / DRAWN_FISH_MOST);
  alive.alive = round (alive.alive / ahead->scale);
  for (int i = 0; i <= AHEAD_WEEKS; i++)
    {
      SteadGrowthDay *day = &ahead->days[i];

      day->days = 7.0 * i;
      stead_fish_warmth_ahead (warmth, &learned->kind, day->days, &day->degree_days, &day->degree_days_sd);
      day->degree_days += learned->since_base;
    }
  stead_growth_fit_ahead (&learned->fit, &alive, ahead->days, AHEAD_WEEKS + 1, self->group->sale_g,
                          STEAD_BAND_LEVEL, ahead->weeks);
  for (int i = 0; i <= AHEAD_WEEKS; i++)
    {
      scale_band (&ahead->weeks[i].alive, ahead->scale);
      scale_band (&ahead->weeks[i].biomass_kg, ahead->scale);
    }
  ahead->n = covered_weeks (learned, ahead);
}

/* --- the sale day --------------------------------------------------------------------- */

typedef double (*WeekFunc) (const SteadGrowthAhead *week);

static double
likely_mean (const SteadGrowthAhead *week)
{
  return week->mean_g.likely;
}

static double
high_share (const SteadGrowthAhead *week)
{
  return week->ready_frac.high;
}

static double
low_share (const SteadGrowthAhead *week)
{
  return week->ready_frac.low;
}

/* Weeks until a figure that rises is reached, a part of a week by a straight line; NAN:
 * not within the forecast. */
static double
weeks_until (const Ahead *ahead,
             WeekFunc     figure,
             double       wanted)
{
  for (gsize i = 0; i < ahead->n; i++)
    {
      double here = figure (&ahead->weeks[i]), before = i > 0 ? figure (&ahead->weeks[i - 1]) : here;

      if (here < wanted)
        continue;
      return i == 0 ? 0 : (double) i - (here - wanted) / (here - before);
    }
  return NAN;
}

static SteadDay
day_after (SteadDay today,
           double   weeks)
{
  return isnan (weeks) ? STEAD_DAY_NONE : today + (SteadDay) ceil (weeks * 7 - 1e-6);
}

static void
band_at (const Ahead *ahead,
         double       weeks,
         gsize        offset,
         SteadBand   *out)
{
  gsize i = (gsize) MIN (floor (weeks), (double) ahead->n - 1);
  const SteadBand *a = (const SteadBand *) (gconstpointer) ((const char *) &ahead->weeks[i] + offset);
  const SteadBand *b = i + 1 < ahead->n
                       ? (const SteadBand *) (gconstpointer) ((const char *) &ahead->weeks[i + 1] + offset) : a;
  double part = weeks - (double) i;

  out->low = a->low + part * (b->low - a->low);
  out->likely = a->likely + part * (b->likely - a->likely);
  out->high = a->high + part * (b->high - a->high);
}

/* What the harvest weighs dressed, by each trial that core knows of this fish. */
static void
add_dressed (SteadFishAnswer *self)
{
  for (gsize i = 0; self->is_known && i < G_N_ELEMENTS (cuts); i++)
    {
      const SteadFishYield *yield = stead_fish_yield (self->species, cuts[i], NULL);
      SteadFishDressed dressed;

      if (yield == NULL)
        continue;
      dressed = (SteadFishDressed) { cuts[i], yield->frac, yield->frac * self->purged_kg, yield->source };
      g_array_append_val (self->dressed, dressed);
    }
}

static void
find_sale (SteadFishAnswer *self,
           const Ahead     *ahead,
           SteadDay         today)
{
  double wanted = self->group->sale_frac;
  double weeks = weeks_until (ahead, likely_mean,
                              stead_fish_mean_for_share_g (self->cv_frac, self->group->sale_g, wanted));

  if (isnan (weeks))
    return;
  self->sale_day = day_after (today, weeks);
  self->sale_soonest = day_after (today, weeks_until (ahead, high_share, wanted));
  if (self->sale_soonest == STEAD_DAY_NONE || self->sale_soonest > self->sale_day)
    self->sale_soonest = self->sale_day;
  self->sale_latest = day_after (today, weeks_until (ahead, low_share, wanted));
  if (self->sale_latest != STEAD_DAY_NONE)
    self->sale_latest = MAX (self->sale_latest, self->sale_day);
  self->latest_past_table = self->sale_latest == STEAD_DAY_NONE && ahead->n <= AHEAD_WEEKS;
  band_at (ahead, weeks, G_STRUCT_OFFSET (SteadGrowthAhead, alive), &self->harvest_fish);
  band_at (ahead, weeks, G_STRUCT_OFFSET (SteadGrowthAhead, biomass_kg), &self->harvest_kg);
  self->purged_kg = self->group->purge_days > 0
                    ? stead_fish_fasted_kg (self->harvest_kg.likely, STEAD_FISH_FASTING_LOSS_FRAC)
                    : self->harvest_kg.likely;
  if (self->group->purge_days > 0)
    self->purge_day = MAX (today, self->sale_day - self->group->purge_days);
  add_dressed (self);
}

/* --- why no day is named ----------------------------------------------------------------- */

static char *
why_no_sale (const SteadFishAnswer  *self,
             const SteadFishLearned *learned,
             const Ahead            *ahead)
{
  const SteadUnit *degrees = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, self->farm->units);
  g_autofree char *at = stead_quantity_format (self->ahead_c, degrees);

  if (self->sale_day != STEAD_DAY_NONE)
    return NULL;
  if (!(stead_fish_degree_day (&learned->kind, self->ahead_c) > 0))
    /* Translators: a temperature. */
    return g_strdup_printf (_("At %s these fish hardly grow, so no day of sale can be named."), at);
  if (ahead->n <= AHEAD_WEEKS)
    {
      g_autofree char *most = stead_fish_weight_text (learned->kind.stages[STEAD_FISH_GROWOUT].max_g,
                                                      self->farm->units);

      /* Translators: a weight. */
      return g_strdup_printf (_("The growth table of this fish ends at %s. Beyond that nothing is foretold."), most);
    }
  /* Translators: a temperature. */
  return g_strdup_printf (_("At %s too few reach the sale weight within a year."), at);
}

/* A forecast needs the warmth of the water, and of a fish without a table two weighings. */
static char *
why_no_forecast (const SteadFishAnswer  *self,
                 const SteadFishWarmth  *warmth,
                 const SteadFishLearned *learned)
{
  if (isnan (learned->mean_g.likely) || self->alive < 1)
    return NULL;
  if (warmth->kind == STEAD_FISH_WARMTH_NONE)
    return g_strdup (warmth->n_known > 0
                     ? _("The temperature of the water was last read more than two months ago. "
                         "Enter it, and the forecast goes on.")
                     : _("Enter the temperature of the water: without it no growth can be foretold."));
  if (!learned->is_known && learned->n_learned < 2)
    return g_strdup (_("The program has no growth table for this fish. Weigh some twice, a month apart, "
                       "and the forecast begins."));
  return NULL;
}

/* --- the line of the chart ------------------------------------------------------------------ */

static void
add_steps (SteadFishAnswer *self,
           const Ahead     *ahead,
           SteadDay         today)
{
  SteadDay sale = self->sale_latest != STEAD_DAY_NONE ? self->sale_latest : self->sale_day;
  gsize until = sale == STEAD_DAY_NONE ? AHEAD_WEEKS
                : (gsize) MAX (LEAST_WEEKS, (sale - today) / 7 + 1 + PAST_SALE_WEEKS);

  for (gsize i = 0; i < ahead->n && i <= until; i++)
    {
      const SteadBand *mean = &ahead->weeks[i].mean_g;
      SteadGrowthStep step = { today + (SteadDay) (7 * i), mean->low, mean->likely, mean->high };

      g_array_append_val (self->steps, step);
    }
}

gboolean
stead_fish_look_ahead (SteadFishAnswer         *self,
                       const SteadFishWarmth   *warmth,
                       const SteadFishLearned  *learned,
                       const GArray            *counts,
                       GError                 **error)
{
  SteadDay today = warmth->from + (SteadDay) warmth->n - 1;
  g_autofree Ahead *ahead = NULL;

  self->no_sale = why_no_forecast (self, warmth, learned);
  if (self->no_sale != NULL || isnan (learned->mean_g.likely) || self->alive < 1)
    return TRUE;
  self->ahead_c = warmth->ahead_c;
  ahead = g_new0 (Ahead, 1);
  run_ahead (self, warmth, learned, counts, today, ahead);
  find_sale (self, ahead, today);
  self->no_sale = why_no_sale (self, learned, ahead);
  add_steps (self, ahead, today);
  return TRUE;
}
