/* stead-cooling-forecast.c - when a cooling pot gets there, and what can still be done. */
#include "config.h"

#include "core/stead-cooling-private.h"

#include <math.h>

#define ACTION_AMBIENTS 5

/* Weighed numbers */

static int
by_value (gconstpointer a,
          gconstpointer b)
{
  double x = ((const Weighed *) a)->value;
  double y = ((const Weighed *) b)->value;

  return (x > y) - (x < y);
}

void
cooling_sort (GArray *values)
{
  g_array_sort (values, by_value);
}

double
cooling_quantile (const GArray *sorted,
                  double        share)
{
  double sum = 0;
  double last = NAN;
  double last_sum = 0;

  /* Points stand for a smooth spread: each for the weight round it, half of it on
   * either side, and straight lines between.  Equal points are one. */
  for (guint i = 0; i < sorted->len;)
    {
      double value = g_array_index (sorted, Weighed, i).value;
      double weight = 0;
      double middle;

      for (; i < sorted->len && g_array_index (sorted, Weighed, i).value == value; i++)
        weight += g_array_index (sorted, Weighed, i).weight;
      middle = sum + weight / 2;
      /* Never is no point of a spread: all of its weight lies at it. */
      if (isinf (value))
        return share > sum || isnan (last) ? value : last;
      if (middle >= share)
        return isnan (last) ? value : last + (value - last) * (share - last_sum) / (middle - last_sum);
      sum += weight;
      last = value;
      last_sum = middle;
    }
  return last;
}

/* Curves */

/* When the readings before the curve passed @temp_f: between two of them along a
 * straight line, which is late rather than early.  NAN if they did not. */
static double
past_arrival (const SteadCoolingFit *fit,
              double                 temp_f)
{
  const SteadCoolingReading *past = (const SteadCoolingReading *) (void *) fit->past->data;

  for (guint i = 1; i < fit->past->len; i++)
    if (past[i].temp_f <= temp_f)
      {
        double share = (past[i - 1].temp_f - temp_f) / (past[i - 1].temp_f - past[i].temp_f);

        return past[i - 1].minute + CLAMP (share, 0, 1) * (past[i].minute - past[i - 1].minute);
      }
  return NAN;
}

/* When a curve that starts at @start_min is at @temp_f; before its start, if it is
 * colder by then; HUGE_VAL for never. */
static double
arrival (const CoolingCurve *curve,
         double              start_min,
         double              temp_f)
{
  if (temp_f <= curve->ambient_f)
    return HUGE_VAL;
  return start_min + log (curve->excess_f / (temp_f - curve->ambient_f)) / curve->rate;
}

static double
temp_at (const CoolingCurve *curve,
         double              minutes)
{
  return curve->ambient_f + curve->excess_f * exp (-curve->rate * minutes);
}

void
stead_cooling_fit_arrival (const SteadCoolingFit *fit,
                           double                 temp_f,
                           double                 band_frac,
                           SteadCoolingArrival   *out)
{
  g_autoptr(GArray) times = g_array_new (FALSE, FALSE, sizeof (Weighed));
  double past;

  g_return_if_fail (fit != NULL && out != NULL && band_frac > 0 && band_frac < 1);

  past = past_arrival (fit, temp_f);
  *out = (SteadCoolingArrival) { past, past, past, 0 };
  if (!isnan (past))
    return;
  for (guint i = 0; i < fit->curves->len; i++)
    {
      const CoolingCurve *curve = &g_array_index (fit->curves, CoolingCurve, i);
      Weighed time = { arrival (curve, fit->start_min, temp_f), curve->weight };

      if (isinf (time.value))
        out->chance_never += curve->weight;
      g_array_append_val (times, time);
    }
  cooling_sort (times);
  out->minute = cooling_quantile (times, 0.5);
  out->low = cooling_quantile (times, (1 - band_frac) / 2);
  out->high = cooling_quantile (times, (1 + band_frac) / 2);
}

double
stead_cooling_fit_temp (const SteadCoolingFit *fit,
                        double                 minute,
                        double                 band_frac,
                        double                *out_low,
                        double                *out_high)
{
  g_autoptr(GArray) temps = g_array_new (FALSE, FALSE, sizeof (Weighed));

  g_return_val_if_fail (fit != NULL && band_frac > 0 && band_frac < 1, NAN);

  for (guint i = 0; i < fit->curves->len; i++)
    {
      const CoolingCurve *curve = &g_array_index (fit->curves, CoolingCurve, i);
      Weighed temp = { temp_at (curve, minute - fit->start_min), curve->weight };

      g_array_append_val (temps, temp);
    }
  cooling_sort (temps);
  if (out_low != NULL)
    *out_low = cooling_quantile (temps, (1 - band_frac) / 2);
  if (out_high != NULL)
    *out_high = cooling_quantile (temps, (1 + band_frac) / 2);
  return cooling_quantile (temps, 0.5);
}

/* Acting */

/* A curve, and the one that it turns into when something is done. */
typedef struct
{
  const SteadCoolingFit *fit;
  const CoolingCurve    *before;
  const CoolingCurve    *after;      /* NULL: nothing is done */
  double                 act_min;
} Course;

static double
course_arrival (const Course *course,
                double        temp_f)
{
  double minute = past_arrival (course->fit, temp_f);

  if (!isnan (minute))
    return minute;
  minute = arrival (course->before, course->fit->start_min, temp_f);
  if (course->after == NULL || minute <= course->act_min)
    return minute;
  return arrival (course->after, course->act_min, temp_f);
}

/* Whether a course makes one mark, or all of them if @mark is their number. */
static gboolean
in_time (const Course           *course,
         const SteadCoolingRule *rule,
         double                  clock_min,
         gsize                   mark)
{
  double previous = clock_min;

  for (gsize i = 0; i < rule->n_marks; i++)
    {
      double minute = course_arrival (course, rule->marks[i].temp_f);
      double from = rule->marks[i].from_previous ? previous : clock_min;

      if ((mark == i || mark == rule->n_marks) && !(minute - from <= rule->marks[i].within_min))
        return FALSE;
      previous = minute;
    }
  return TRUE;
}

double
stead_cooling_fit_chance (const SteadCoolingFit  *fit,
                          const SteadCoolingRule *rule,
                          double                  clock_min,
                          gsize                   mark)
{
  double chance = 0;

  g_return_val_if_fail (fit != NULL && rule != NULL && mark <= rule->n_marks, NAN);

  for (guint i = 0; i < fit->curves->len; i++)
    {
      const CoolingCurve *curve = &g_array_index (fit->curves, CoolingCurve, i);
      Course course = { fit, curve, NULL, 0 };

      if (in_time (&course, rule, clock_min, mark))
        chance += curve->weight;
    }
  return MIN (chance, 1);
}

/* The share of the new surroundings in which one curve is in time after all. */
static double
share_in_time (const SteadCoolingFit    *fit,
               const CoolingCurve       *curve,
               const SteadCoolingRule   *rule,
               double                    clock_min,
               const SteadCoolingAction *action,
               double                    act_min)
{
  double temp_f = temp_at (curve, act_min - fit->start_min);
  int n = isnan (action->ambient_low_f) ? 1 : ACTION_AMBIENTS;
  int made = 0;

  for (int i = 0; i < n; i++)
    {
      CoolingCurve after = { curve->ambient_f, 0, curve->rate * action->rate_factor, 0 };
      Course course = { fit, curve, NULL, act_min };

      if (n > 1)
        after.ambient_f = action->ambient_low_f
                          + (action->ambient_high_f - action->ambient_low_f) * (i + 0.5) / n;
      after.excess_f = temp_f - after.ambient_f;
      /* Food that is colder than the new surroundings stays where it is. */
      course.after = after.excess_f > 0 ? &after : NULL;
      made += in_time (&course, rule, clock_min, rule->n_marks);
    }
  return (double) made / n;
}

static double
chance_after (const SteadCoolingFit    *fit,
              const SteadCoolingRule   *rule,
              double                    clock_min,
              const SteadCoolingAction *action,
              double                    act_min)
{
  double chance = 0;

  for (guint i = 0; i < fit->curves->len; i++)
    {
      const CoolingCurve *curve = &g_array_index (fit->curves, CoolingCurve, i);

      chance += curve->weight * share_in_time (fit, curve, rule, clock_min, action, act_min);
    }
  return MIN (chance, 1);
}

void
stead_cooling_fit_act (const SteadCoolingFit    *fit,
                       const SteadCoolingRule   *rule,
                       double                    clock_min,
                       const SteadCoolingAction *action,
                       double                    now_min,
                       double                    wanted_frac,
                       SteadCoolingPlan         *out)
{
  double late = 0;
  double low, high;

  g_return_if_fail (fit != NULL && rule != NULL && action != NULL && out != NULL);

  out->chance = chance_after (fit, rule, clock_min, action, now_min);
  out->latest_min = NAN;
  if (out->chance < wanted_frac)
    return;
  for (gsize i = 0; i < rule->n_marks; i++)
    late = rule->marks[i].within_min + (rule->marks[i].from_previous ? late : 0);
  /* Waiting never helps, so the whole minutes that are early enough come first. */
  low = 0;
  high = MAX (1, floor (clock_min + late - now_min) + 1);
  while (high - low > 1)
    {
      double middle = floor ((low + high) / 2);

      if (chance_after (fit, rule, clock_min, action, now_min + middle) >= wanted_frac)
        low = middle;
      else
        high = middle;
    }
  out->latest_min = now_min + low;
}

GArray *
stead_cooling_actions (const SteadLimitTable *table)
{
  GArray *actions = g_array_new (FALSE, FALSE, sizeof (SteadCoolingAction));

  g_return_val_if_fail (table != NULL, actions);

  for (guint i = 0; i < stead_limit_table_get_n_rows (table); i++)
    {
      const SteadLimit *row = stead_limit_table_get_row (table, i);
      const SteadLimit *low, *high;
      SteadCoolingAction action = { row->subject, row->value, NAN, NAN };

      if (!g_str_equal (row->process, "cool_action") || !g_str_equal (row->measure, "rate_factor"))
        continue;
      low = stead_limit_table_find (table, "cool_action", row->subject, "ambient_low", NULL, NULL);
      high = stead_limit_table_find (table, "cool_action", row->subject, "ambient_high", NULL, NULL);
      if (low != NULL && high != NULL)
        {
          action.ambient_low_f = low->value;
          action.ambient_high_f = high->value;
        }
      g_array_append_val (actions, action);
    }
  return actions;
}
