/* stead-food-time.c - food and the clock: reheating, time as control, date marks, thawing. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-food-time.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Whether @value, of which NAN is not known, keeps the limit. */
static gboolean
keeps (const SteadLimit *limit,
       double            value)
{
  const SteadLimitReading reading = { value, limit->unit, 0, 0, 0 };
  SteadJudgement judgement;

  return stead_limit_judge (limit, &reading, &judgement, NULL)
         && judgement.verdict != STEAD_LIMIT_NOT_MET;
}

gboolean
stead_reheat_judge (const SteadLimitTable   *table,
                    const char              *food,
                    gboolean                 microwave,
                    const SteadLimitReading *reading,
                    double                   elapsed_h,
                    SteadReheatVerdict      *out,
                    GError                 **error)
{
  const SteadLimitFact facts[] = { { "purpose", "hot_holding", 0 }, { NULL } };
  const SteadLimit *heat, *time;
  SteadJudgement judgement;
  gboolean in_time;

  g_return_val_if_fail (table != NULL && food != NULL && reading != NULL && out != NULL, FALSE);

  heat = stead_limit_table_find (table, microwave ? "reheat_microwave" : "reheat", food, "food_temp",
                                 facts, error);
  if (heat == NULL || !stead_limit_judge (heat, reading, &judgement, error))
    return FALSE;
  time = stead_limit_table_find (table, "reheat", food, "elapsed", facts, error);
  if (time == NULL)
    return FALSE;
  in_time = keeps (time, elapsed_h);
  if (!in_time)
    *out = STEAD_REHEAT_DISCARD;
  else
    *out = judgement.verdict != STEAD_LIMIT_NOT_MET ? STEAD_REHEAT_PASS : STEAD_REHEAT_GO_ON;
  return TRUE;
}

/* Time as control */

/* Cold enough, or hot enough where that is an option; not known counts as well. */
static gboolean
starts_right (const SteadLimitTable  *table,
              const SteadTimeControl *food,
              const SteadLimitFact   *facts)
{
  const SteadLimit *cold = stead_limit_table_find (table, "time_control", food->food, "start_cold", facts, NULL);
  const SteadLimit *hot = stead_limit_table_find (table, "time_control", food->food, "start_hot", facts, NULL);

  return isnan (food->start_f) || (cold != NULL && keeps (cold, food->start_f))
         || (hot != NULL && keeps (hot, food->start_f));
}

gboolean
stead_time_control_judge (const SteadLimitTable   *table,
                          const SteadTimeControl  *food,
                          SteadTimeVerdict        *out,
                          GError                 **error)
{
  const SteadLimit *time, *warmest;

  g_return_val_if_fail (table != NULL && food != NULL && food->food != NULL && out != NULL, FALSE);

  {
    const SteadLimitFact facts[] = { { "option_h", NULL, food->option_h },
                                     { "population", food->highly_susceptible ? "HSP" : "general", 0 },
                                     { NULL } };

    if (stead_limit_table_find (table, "time_control", food->food, "use", facts, NULL) != NULL)
      {
        *out = STEAD_TIME_CONTROL_NOT_ALLOWED;
        return TRUE;
      }
    time = stead_limit_table_find (table, "time_control", food->food, "elapsed", facts, error);
    if (time == NULL)
      return FALSE;
    warmest = stead_limit_table_find (table, "time_control", food->food, "food_temp", facts, NULL);
    if (!starts_right (table, food, facts))
      *out = STEAD_TIME_CONTROL_NOT_ALLOWED;
    else if (!food->marked
             || (warmest != NULL && !isnan (food->warmest_f) && !keeps (warmest, food->warmest_f))
             || (!isnan (food->elapsed_h) && !keeps (time, food->elapsed_h)))
      *out = STEAD_TIME_CONTROL_DISCARD;
    else
      *out = STEAD_TIME_CONTROL_PASS;
  }
  return TRUE;
}

/* Date marks */

#define DATED "ready_to_eat_tcs"

/* The earliest of the days on which a part was made or opened. */
static SteadDay
first_day (const SteadFoodDays *days)
{
  SteadDay first = days->opened;

  for (gsize i = 0; i < days->n_made; i++)
    if (first == STEAD_DAY_NONE || days->made[i] < first)
      first = days->made[i];
  return first;
}

gboolean
stead_date_mark (const SteadLimitTable  *table,
                 const SteadFoodDays    *days,
                 SteadDay               *out_day,
                 GError                **error)
{
  const SteadLimit *limit;
  gboolean was_frozen;
  SteadDay first, last;

  g_return_val_if_fail (table != NULL && days != NULL && out_day != NULL, FALSE);

  limit = stead_limit_table_find (table, "date_mark", DATED, "days", NULL, error);
  if (limit == NULL)
    return FALSE;
  first = first_day (days);
  was_frozen = days->frozen != STEAD_DAY_NONE || days->thawed != STEAD_DAY_NONE;
  if (first == STEAD_DAY_NONE
      || (was_frozen && (days->frozen == STEAD_DAY_NONE || days->thawed == STEAD_DAY_NONE
                         || days->frozen < first || days->thawed <= days->frozen)))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("The days do not fit together. Enter when it was made or opened, and for "
                             "frozen food both the last day before freezing and the day of thawing."));
      return FALSE;
    }
  last = first + (SteadDay) limit->value - 1;
  if (was_frozen)
    last += days->thawed - days->frozen - 1;
  if (days->use_by != STEAD_DAY_NONE)
    last = MIN (last, days->use_by);
  *out_day = last;
  return TRUE;
}

gboolean
stead_date_mark_needed (const SteadLimitTable *table,
                        double                 held_h)
{
  const SteadLimit *limit;

  g_return_val_if_fail (table != NULL, TRUE);
  limit = stead_limit_table_find (table, "date_mark", DATED, "mark_needed", NULL, NULL);
  return limit == NULL || keeps (limit, held_h);
}

gboolean
stead_date_mark_in_order (const SteadLimitTable *table,
                          double                 held_h,
                          double                 temp_f,
                          gboolean               marked)
{
  const SteadLimit *cold, *days;

  g_return_val_if_fail (table != NULL, FALSE);

  cold = stead_limit_table_find (table, "date_mark", DATED, "food_temp", NULL, NULL);
  days = stead_limit_table_find (table, "date_mark", DATED, "days", NULL, NULL);
  return cold != NULL && days != NULL && keeps (cold, temp_f) && keeps (days, held_h / 24)
         && (marked || !stead_date_mark_needed (table, held_h));
}

/* Thawing and freezing */

gboolean
stead_thaw_in_order (const SteadLimitTable  *table,
                     const char             *method,
                     const char             *food,
                     double                  water_f,
                     gboolean                opened,
                     gboolean               *out,
                     GError                **error)
{
  const SteadLimitFact facts[] = { { "method", method, 0 }, { NULL } };
  const SteadLimit *water, *pack;

  g_return_val_if_fail (table != NULL && method != NULL && food != NULL && out != NULL, FALSE);

  if (stead_limit_table_find (table, "thaw", food, NULL, facts, error) == NULL)
    return FALSE;
  water = stead_limit_table_find (table, "thaw", food, "water_temp", facts, NULL);
  pack = stead_limit_table_find (table, "thaw", food, "package_opened", facts, NULL);
  *out = (water == NULL || keeps (water, water_f))
         && (pack == NULL || opened || !g_str_equal (pack->word, "yes"));
  return TRUE;
}

gboolean
stead_fish_freezing_h (const SteadLimitTable  *table,
                       double                  freeze_f,
                       double                  store_f,
                       double                 *out_hours,
                       GError                **error)
{
  const SteadLimitFact facts[] = { { "freeze_temp_f", NULL, freeze_f }, { "store_temp_f", NULL, store_f },
                                   { NULL } };
  const SteadLimit *limit;

  g_return_val_if_fail (table != NULL && out_hours != NULL, FALSE);

  limit = stead_limit_table_find (table, "freeze_fish", "fish", "time", facts, error);
  if (limit == NULL)
    return FALSE;
  *out_hours = stead_limit_value_in (limit, "h");
  return TRUE;
}

gboolean
stead_egg_last_day (const SteadLimitTable  *table,
                    const char             *mark,
                    SteadDay                packed,
                    SteadDay               *out_day,
                    GError                **error)
{
  const SteadLimit *limit;

  g_return_val_if_fail (table != NULL && mark != NULL && out_day != NULL, FALSE);

  limit = stead_limit_table_find (table, "egg_date", mark, "after_pack", NULL, error);
  if (limit == NULL)
    return FALSE;
  *out_day = packed + (SteadDay) limit->value;
  return TRUE;
}
