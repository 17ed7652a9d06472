/* stead-water-trend.c - where each measure is going, and when it meets a limit.
 *
 * A straight line through the last few tests, each as exact as a drop kit reads.
 * Something that was done in between (a water change) makes the tests scatter about
 * the line, and then up or down is not told.
 */
#include "config.h"

#include "answer/stead-water-private.h"

#include <math.h>

/* Tests that make a trend: the last ones, and none older than this before the newest. */
#define MAX_TESTS 6
#define MAX_AGE_DAYS 35

/* What a drop kit or a hand meter tells apart, as a standard deviation: the larger of a
 * step and a share of the reading (common practice, no source). */
static const struct { double step, frac; } kit[STEAD_N_WATER_MEASURES] = {
  [STEAD_WATER_TEMPERATURE] = { 0.5, 0 },
  [STEAD_WATER_PH] = { 0.15, 0 },
  [STEAD_WATER_TAN] = { 0.15, 0.15 },
  [STEAD_WATER_NH3N] = { 0.003, 0.3 },
  [STEAD_WATER_NITRITE] = { 0.1, 0.15 },
  [STEAD_WATER_NITRATE] = { 4, 0.15 },
  [STEAD_WATER_OXYGEN] = { 0.4, 0.05 },
  [STEAD_WATER_OXYGEN_SHARE] = { 0.04, 0.05 },
  [STEAD_WATER_ALKALINITY] = { 8, 0.05 },
  [STEAD_WATER_HARDNESS] = { 8, 0.05 },
  [STEAD_WATER_CONDUCTIVITY] = { 10, 0.03 },
  [STEAD_WATER_CHLORINE] = { 0.02, 0.2 },
  [STEAD_WATER_CHLORIDE] = { 8, 0.1 },
};

/* Days from 1970, with the time of the day; noon if that is not said. */
static double
moment_of (const SteadWaterTest *test)
{
  return test->day + (test->minute >= 0 ? test->minute / 1440.0 : 0.5);
}

/* The last readings of a measure, oldest first. */
static int
collect (const SteadWaterAnswer *self,
         SteadWaterMeasure       measure,
         double                  days[MAX_TESTS],
         double                  values[MAX_TESTS],
         double                  sds[MAX_TESTS],
         SteadDay               *last_day)
{
  int n = 0;

  for (guint i = self->tests->len; i-- > 0 && n < MAX_TESTS;)
    {
      const SteadWaterTest *test = self->tests->pdata[i];
      double value = stead_water_value (&self->scene, test, measure);

      if (isnan (value))
        continue;
      if (n == 0)
        *last_day = test->day;
      else if (*last_day - test->day > MAX_AGE_DAYS)
        break;
      /* Filled from the end, so that the oldest comes first. */
      n++;
      days[MAX_TESTS - n] = moment_of (test);
      values[MAX_TESTS - n] = value;
      sds[MAX_TESTS - n] = MAX (kit[measure].step, kit[measure].frac * fabs (value));
    }
  return n;
}

/* Whether the line, or an edge of its band, passes a limit that it does not pass now. */
static gboolean
passes (const SteadWaterAnswer *self,
        SteadWaterMeasure       measure,
        const SteadTrend       *line,
        double                  band,
        double                  ahead,
        SteadWaterVerdict       now,
        SteadWaterJudgement    *there)
{
  double value = stead_trend_at (line, ahead) + band * stead_trend_sd (line, ahead);

  stead_water_judge (self->scene.sharers, measure, MAX (0, value), NULL, there);
  return there->verdict > now && there->verdict != STEAD_WATER_IMPOSSIBLE;
}

/* The first day at which it does; -1: not as far as the line goes. */
static int
first_passing (const SteadWaterAnswer *self,
               SteadWaterMeasure       measure,
               const SteadTrend       *line,
               double                  band,
               SteadWaterVerdict       now,
               SteadWaterJudgement    *there)
{
  int horizon = stead_trend_horizon_days (line);

  for (int ahead = 1; ahead <= horizon; ahead++)
    if (passes (self, measure, line, band, ahead, now, there))
      return ahead;
  return -1;
}

/* @last: the newest reading: a limit that it passes is not to be met any more, wherever
 * the line runs. */
static void
find_meeting (const SteadWaterAnswer *self,
              SteadWaterMeasure       measure,
              double                  last,
              SteadWaterTrend        *trend)
{
  double away = trend->line.slope > 0 ? STEAD_TREND_BAND : -STEAD_TREND_BAND;
  SteadWaterJudgement now, read, there;
  int likely, early, late;

  stead_water_judge (self->scene.sharers, measure, MAX (0, trend->line.level), NULL, &now);
  stead_water_judge (self->scene.sharers, measure, last, NULL, &read);
  if (read.verdict > now.verdict)
    now = read;
  if (now.verdict == STEAD_WATER_ACT || now.verdict == STEAD_WATER_UNKNOWN)
    return;
  likely = first_passing (self, measure, &trend->line, 0, now.verdict, &trend->there);
  if (likely < 0)
    return;
  early = first_passing (self, measure, &trend->line, away, now.verdict, &there);
  late = first_passing (self, measure, &trend->line, -away, now.verdict, &there);
  trend->meets = TRUE;
  trend->met_on = trend->last_day + likely;
  trend->met_early = trend->last_day + (early < 0 ? likely : early);
  trend->met_late = late < 0 ? STEAD_DAY_NONE : trend->last_day + late;
}

static void
fill_trend (SteadWaterAnswer  *self,
            SteadWaterMeasure  measure)
{
  SteadWaterTrend *trend = &self->trends[measure];
  double days[MAX_TESTS], values[MAX_TESTS], sds[MAX_TESTS];
  int n;

  *trend = (SteadWaterTrend) { .last_day = STEAD_DAY_NONE, .met_on = STEAD_DAY_NONE, .met_early = STEAD_DAY_NONE,
                               .met_late = STEAD_DAY_NONE };
  n = collect (self, measure, days, values, sds, &trend->last_day);
  trend->fitted = stead_trend_fit (days + MAX_TESTS - n, values + MAX_TESTS - n, sds + MAX_TESTS - n, (gsize) n,
                                   &trend->line);
  trend->told = trend->fitted && stead_trend_told (&trend->line);
  if (trend->told)
    find_meeting (self, measure, values[MAX_TESTS - 1], trend);
}

void
stead_water_trends_fill (SteadWaterAnswer *self)
{
  for (int i = 0; i < STEAD_N_WATER_MEASURES; i++)
    fill_trend (self, (SteadWaterMeasure) i);
}

/* --- the series of a chart --------------------------------------------------------- */

/* In the unit that the farm sees. */
static double
seen (const SteadWaterAnswer *self,
      SteadWaterMeasure       measure,
      double                  value)
{
  if (measure == STEAD_WATER_OXYGEN_SHARE)
    return 100 * value;
  return measure == STEAD_WATER_TEMPERATURE
         ? stead_quantity_from_base (value, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, self->farm->units))
         : value;
}

/* Whether the numbers that are seen are those that are kept. */
static gboolean
seen_as_kept (SteadWaterMeasure measure)
{
  return measure != STEAD_WATER_TEMPERATURE && measure != STEAD_WATER_OXYGEN_SHARE;
}

/* Points are joined over the gaps that the routine leaves, not over a forgotten month. */
static double
gap_days (const SteadWaterAnswer *self)
{
  return MAX (3, 2.5 * self->water->test_days);
}

static void
add_point (const SteadWaterAnswer *self,
           SteadWaterMeasure       measure,
           const SteadWaterTest   *test,
           GArray                 *points)
{
  SteadWaterContext context = STEAD_WATER_CONTEXT_NONE;
  SteadWaterJudgement judgement;
  SteadReadingPoint point;
  double value = stead_water_value (&self->scene, test, measure);

  if (isnan (value))
    return;
  context.chloride_mgl = test->values[STEAD_READING_CHLORIDE];
  stead_water_judge (self->scene.sharers, measure, value, &context, &judgement);
  point = (SteadReadingPoint) { moment_of (test), seen (self, measure, value), judgement.verdict };
  g_array_append_val (points, point);
}

GArray *
stead_water_answer_series (const SteadWaterAnswer *self,
                           SteadWaterMeasure       measure,
                           SteadDay                from,
                           SteadReadingSeries     *out)
{
  const SteadWaterTrend *trend;
  SteadWaterBand band;
  GArray *points;

  g_return_val_if_fail (self != NULL && out != NULL, NULL);
  g_return_val_if_fail ((guint) measure < STEAD_N_WATER_MEASURES, NULL);

  points = g_array_new (FALSE, FALSE, sizeof (SteadReadingPoint));
  for (guint i = 0; i < self->tests->len; i++)
    if (((const SteadWaterTest *) self->tests->pdata[i])->day >= from)
      add_point (self, measure, self->tests->pdata[i], points);
  stead_water_band (self->scene.sharers, measure, &band);
  trend = &self->trends[measure];
  *out = (SteadReadingSeries) {
    .points = (const SteadReadingPoint *) (gpointer) points->data, .n_points = points->len,
    .from = from, .to = self->today, .today = self->today, .gap_days = gap_days (self),
    .min = seen (self, measure, band.min), .max = seen (self, measure, band.max),
    .act_below = seen (self, measure, band.act_below), .act_above = seen (self, measure, band.act_above),
    /* A line in °C is none in °F. */
    .trend = trend->told && trend->last_day >= from && seen_as_kept (measure) ? &trend->line : NULL,
  };
  if (out->trend != NULL)
    {
      out->trend_day = g_array_index (points, SteadReadingPoint, points->len - 1).day;
      out->ahead_days = MIN (stead_trend_horizon_days (out->trend), 14);
      out->to = MAX (out->to, (SteadDay) ceil (out->trend_day) + out->ahead_days);
    }
  return points;
}
