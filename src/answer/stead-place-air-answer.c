/* stead-place-air-answer.c - a refrigerator, and whether it creeps up. */
#include "config.h"

#include "answer/stead-check-days-answer.h"
#include "answer/stead-check-plan-private.h"
#include "answer/stead-limits.h"
#include "answer/stead-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A household air thermometer, about half a degree; common practice, no source. */
#define AIR_SD_C 0.5

#define DAY_S 86400.0

/* The row that food in the cold is held to; its air has to be no warmer. */
#define COLD_ROW "hold-cold-41"

void
stead_place_air_answer_free (SteadPlaceAirAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->readings, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self->source);
  g_free (self);
}

static void
drop_others (GPtrArray *readings)
{
  for (guint i = readings->len; i > 0; i--)
    {
      const SteadShown *shown = readings->pdata[i - 1];

      if (shown->corrected || !g_str_equal (shown->kind, "air_temp"))
        g_ptr_array_remove_index (readings, i - 1);
    }
}

static void
fit (SteadPlaceAirAnswer *self)
{
  guint n = self->readings->len;
  g_autofree double *days = g_new (double, MAX (n, 1));
  g_autofree double *values = g_new (double, MAX (n, 1));
  g_autofree double *sds = g_new (double, MAX (n, 1));
  double left;

  self->days_left = NAN;
  for (guint i = 0; i < n; i++)
    {
      const SteadShown *shown = self->readings->pdata[i];

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
  if (last->value > self->limit_c + 1e-6)
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

SteadPlaceAirAnswer *
stead_place_air_answer_new (SteadStore  *store,
                            gint64       place_id,
                            int          days,
                            GError     **error)
{
  g_autoptr(SteadPlaceAirAnswer) self = NULL;
  g_autoptr(SteadFarm) farm = NULL;
  g_autoptr(SteadLimitTable) table = NULL;
  const SteadLimit *row;
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_STORE (store) && days > 0, NULL);
  today = stead_store_get_today (store);
  farm = stead_farm_repo_get (store, error);
  table = farm != NULL ? stead_check_table_on (store, today, error) : NULL;
  if (table == NULL)
    return NULL;
  self = g_new0 (SteadPlaceAirAnswer, 1);
  self->readings = stead_shown_repo_of_place (store, place_id, stead_time_midnight (today - days + 1),
                                              stead_time_midnight (today + 1), error);
  if (self->readings == NULL)
    return NULL;
  row = stead_limit_table_by_id (table, COLD_ROW);
  g_return_val_if_fail (row != NULL, NULL);
  self->limit_c = (row->value - 32) / 1.8;
  self->source = stead_limits_source (row);
  drop_others (self->readings);
  fit (self);
  self->sentence = sentence_of (self, farm->units);
  self->warns = !isnan (self->days_left) ||
                (self->readings->len > 0 &&
                 ((const SteadShown *) self->readings->pdata[self->readings->len - 1])->value > self->limit_c + 1e-6);
  return g_steal_pointer (&self);
}
