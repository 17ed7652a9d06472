/* stead-place-air-answer.c - a refrigerator, and whether it creeps up. */
#include "config.h"

#include "answer/stead-check-plan-private.h"
#include "answer/stead-limits.h"
#include "answer/stead-place-air-private.h"
#include "answer/stead-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A household air thermometer, about half a degree; common practice, no source. */
#define AIR_SD_C 0.5

#define DAY_S 86400.0

void
stead_place_air_answer_free (SteadPlaceAirAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->spells, g_ptr_array_unref);
  g_clear_pointer (&self->wrong, g_ptr_array_unref);
  g_clear_pointer (&self->people, g_ptr_array_unref);
  g_clear_pointer (&self->readings, g_ptr_array_unref);
  g_clear_pointer (&self->table, stead_limit_table_free);
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->points, g_array_unref);
  g_free (self->sentence);
  g_free (self->source);
  g_free (self->unit);
  g_free (self->most);
  g_free (self);
}

/* What does not count: other measures go, what was corrected stands apart. */
static void
part_others (SteadPlaceAirAnswer *self)
{
  GPtrArray *all = self->readings;

  self->readings = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_shown_free);
  self->wrong = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_shown_free);
  g_ptr_array_set_free_func (all, NULL);
  for (guint i = 0; i < all->len; i++)
    {
      SteadShown *shown = all->pdata[i];

      if (!g_str_equal (shown->kind, "air_temp"))
        stead_shown_free (shown);
      else
        g_ptr_array_add (shown->corrected ? self->wrong : self->readings, shown);
    }
  g_ptr_array_unref (all);
}

/* What was done about a warm spell begins the line anew: the first reading after it. */
static guint
first_of_line (const SteadPlaceAirAnswer *self)
{
  gint64 since = G_MININT64;
  guint first = 0;

  for (guint i = 0; i < self->spells->len; i++)
    {
      const SteadWarmSpell *spell = self->spells->pdata[i];

      if (spell->done != NULL)
        since = spell->last->at;
    }
  while (first < self->readings->len && ((const SteadShown *) self->readings->pdata[first])->at <= since)
    first++;
  return first;
}

static void
fit (SteadPlaceAirAnswer *self)
{
  guint first = first_of_line (self), n = self->readings->len - first;
  g_autofree double *days = g_new (double, MAX (n, 1));
  g_autofree double *values = g_new (double, MAX (n, 1));
  g_autofree double *sds = g_new (double, MAX (n, 1));
  double left;

  self->days_left = NAN;
  for (guint i = 0; i < n; i++)
    {
      const SteadShown *shown = self->readings->pdata[first + i];

      days[i] = (double) shown->at / DAY_S;
      values[i] = shown->value;
      sds[i] = AIR_SD_C;
    }
  self->has_trend = n >= 3 && stead_trend_fit (days, values, sds, n, &self->trend) && stead_trend_told (&self->trend);
  if (!self->has_trend || !(self->trend.slope > 0) || self->trend.level >= self->limit_c)
    return;
  left = (self->limit_c - self->trend.level) / self->trend.slope;
  if (left <= stead_trend_horizon_days (&self->trend))
    self->days_left = left;
}

static char *
sentence_of (const SteadPlaceAirAnswer *self,
             SteadUnitSystem            units)
{
  const SteadShown *last = self->readings->len > 0 ? self->readings->pdata[self->readings->len - 1] : NULL;
  g_autofree char *shown = last != NULL ? stead_check_value_text (last, NULL, units) : NULL;
  g_autofree char *limit = stead_check_temp_text (stead_fahrenheit_from_celsius (self->limit_c), FALSE, units);
  g_autofree char *days = NULL;

  if (last == NULL)
    return g_strdup (_("Its air was not read in these days."));
  if (stead_place_is_warm (self, last))
    /* Translators: two temperatures. */
    return g_strdup_printf (_("Its air is %1$s, warmer than %2$s. Look at the food in it now, and have the cooler seen to."),
                            shown, limit);
  if (!isnan (self->days_left))
    {
      int whole = MAX (1, (int) floor (self->days_left));

      days = stead_words_days (whole);
      /* Translators: two temperatures, "5 days". */
      return g_strdup_printf (_("Its air is %1$s and creeps up: at this pace it passes %2$s in about %3$s. Clean it, look at "
                                "the door, and have it seen to before then."), shown, limit, days);
    }
  if (self->has_trend && self->trend.slope > 0)
    return g_strdup_printf (_("Its air is %1$s and creeps up; the limit is %2$s."), shown, limit);
  return g_strdup_printf (_("Its air is %1$s; the limit is %2$s. No way up can be told."), shown, limit);
}

/* --- the chart -------------------------------------------------------------------------- */

/* Readings further apart than this are not joined; common practice, no source. */
#define GAP_DAYS 2

#define MOST_AHEAD_DAYS 14

static double
seen (const SteadPlaceAirAnswer *self,
      double                     temp_c)
{
  return self->units == STEAD_UNITS_METRIC ? temp_c : stead_fahrenheit_from_celsius (temp_c);
}

static double
day_of (gint64 at)
{
  SteadDay day = stead_time_day (at);

  return day + (double) (at - stead_time_midnight (day)) / DAY_S;
}

/* A line in °C is another one in °F. */
static void
see_trend (SteadPlaceAirAnswer *self)
{
  double factor = self->units == STEAD_UNITS_METRIC ? 1 : 1.8;

  self->line = self->trend;
  self->line.level = seen (self, self->trend.level);
  self->line.slope *= factor;
  self->line.level_var *= factor * factor;
  self->line.slope_var *= factor * factor;
  self->line.cov *= factor * factor;
}

static void
make_series (SteadPlaceAirAnswer *self,
             SteadDay             from,
             SteadDay             today)
{
  self->points = g_array_new (FALSE, TRUE, sizeof (SteadReadingPoint));
  for (guint i = 0; i < self->readings->len; i++)
    {
      const SteadShown *shown = self->readings->pdata[i];
      SteadReadingPoint point = { day_of (shown->at), seen (self, shown->value),
                                  stead_place_is_warm (self, shown) ? STEAD_WATER_ACT : STEAD_WATER_OK };

      g_array_append_val (self->points, point);
    }
  self->series = (SteadReadingSeries) {
    .points = (const SteadReadingPoint *) (void *) self->points->data, .n_points = self->points->len, .from = from, .to = today,
    .today = today, .gap_days = GAP_DAYS, .min = NAN, .max = seen (self, self->limit_c), .act_below = NAN, .act_above = NAN,
  };
  self->unit = g_strdup (self->units == STEAD_UNITS_METRIC ? "°C" : "°F");
  if (!self->has_trend)
    return;
  see_trend (self);
  self->series.trend = &self->line;
  self->series.trend_day = g_array_index (self->points, SteadReadingPoint, self->points->len - 1).day;
  self->series.ahead_days = MIN (stead_trend_horizon_days (&self->trend), MOST_AHEAD_DAYS);
  self->series.to = MAX (self->series.to, (SteadDay) ceil (self->series.trend_day) + self->series.ahead_days);
}

static char *
most_text (const SteadPlaceAirAnswer *self)
{
  g_autofree char *limit = stead_check_temp_text (stead_fahrenheit_from_celsius (self->limit_c), FALSE, self->units);

  /* Translators: a limit in a chart: "most 41 °F". */
  return g_strdup_printf (_("most %s"), limit);
}

char *
stead_place_air_point_text (const SteadPlaceAirAnswer *self,
                            gsize                      point)
{
  const SteadShown *shown;
  g_autofree char *value = NULL;
  g_autofree char *day = NULL;
  g_autofree char *time = NULL;

  g_return_val_if_fail (self != NULL && point < self->readings->len, NULL);
  shown = self->readings->pdata[point];
  value = stead_check_value_text (shown, NULL, self->units);
  day = stead_day_format (stead_time_day (shown->at), STEAD_DAY_STYLE_MEDIUM);
  time = stead_check_time_text (shown->at);
  /* Translators: a temperature, a day, a time of day. */
  return g_strdup_printf (_("%1$s on %2$s, %3$s"), value, day, time);
}

char *
stead_place_air_limit_text (const SteadPlaceAirAnswer *self)
{
  g_autofree char *limit = NULL;

  g_return_val_if_fail (self != NULL, NULL);

  limit = stead_check_temp_text (stead_fahrenheit_from_celsius (self->limit_c), FALSE, self->units);
  /* Translators: a temperature; where the limit is from. */
  return g_strdup_printf (_("Limit: at most %1$s. %2$s"), limit, self->source);
}

static gboolean
read_spells (SteadPlaceAirAnswer  *self,
             SteadStore           *store,
             gint64                place_id,
             gint64                from,
             gint64                to,
             GError              **error)
{
  g_autoptr(GPtrArray) dones = stead_done_repo_of_place (store, place_id, from, to, error);

  if (dones == NULL)
    return FALSE;
  self->spells = stead_place_warm_spells (self, dones, self->people);
  return TRUE;
}

static gboolean
needs_a_look (const SteadPlaceAirAnswer *self)
{
  if (!isnan (self->days_left))
    return TRUE;
  return self->readings->len > 0 && stead_place_is_warm (self, self->readings->pdata[self->readings->len - 1]);
}

SteadPlaceAirAnswer *
stead_place_air_answer_of_days (SteadStore  *store,
                                gint64       place_id,
                                SteadDay     from,
                                SteadDay     to,
                                GError     **error)
{
  g_autoptr(SteadPlaceAirAnswer) self = g_new0 (SteadPlaceAirAnswer, 1);
  const SteadLimit *row;
  gint64 first, last;

  g_return_val_if_fail (STEAD_IS_STORE (store) && from <= to, NULL);

  first = stead_time_midnight (from);
  last = stead_time_midnight (to + 1);
  self->farm = stead_farm_repo_get (store, error);
  self->table = self->farm != NULL ? stead_check_table_on (store, to, error) : NULL;
  self->readings = self->table != NULL ? stead_shown_repo_of_place (store, place_id, first, last, error) : NULL;
  self->people = self->readings != NULL ? stead_person_repo_list (store, error) : NULL;
  if (self->people == NULL)
    return NULL;
  row = stead_limit_table_by_id (self->table, STEAD_PLACE_COLD_ROW);
  g_return_val_if_fail (row != NULL, NULL);
  self->limit_c = (row->value - 32) / 1.8;
  self->source = stead_limits_source (row);
  self->units = self->farm->units;
  part_others (self);
  if (!read_spells (self, store, place_id, first, last, error))
    return NULL;
  fit (self);
  self->sentence = sentence_of (self, self->units);
  make_series (self, from, to);
  self->most = most_text (self);
  self->warns = needs_a_look (self);
  return g_steal_pointer (&self);
}

SteadPlaceAirAnswer *
stead_place_air_answer_new (SteadStore  *store,
                            gint64       place_id,
                            int          days,
                            GError     **error)
{
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_STORE (store) && days > 0, NULL);

  today = stead_store_get_today (store);
  return stead_place_air_answer_of_days (store, place_id, today - days + 1, today, error);
}
