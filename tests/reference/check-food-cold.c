/* check-food-cold.c - the topics on time, dates, thawing, freezing, processes and growth. */
#include "check-food.h"

#include "core/stead-calendar.h"
#include "core/stead-checklist.h"
#include "core/stead-food-time.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define MIN_PER_H 60

/* time control */

static const char * const timed_foods[] = { "tcs", "raw_eggs", "cut_produce_or_opened_sealed", NULL };
static const char * const populations[] = { "general", "HSP", NULL };
static const char * const options[] = { "4", "6", NULL };

static double
time_row (CheckRow   *row,
          const char *measure,
          const char *unit)
{
  const double hours[] = { 4, 6 };
  const SteadLimitFact facts[] = { { "option_h", NULL, hours[check_word (row, "option_h", options, -1)] }, { NULL } };

  return check_find_in (row, "time_control", check_one_of (row, "food", timed_foods, 0), measure, facts, unit);
}

static double
time_most (CheckRow *row)
{
  return time_row (row, "elapsed", "h");
}

static double
time_start (CheckRow *row)
{
  return time_row (row, "start_cold", "F");
}

static double
time_warmest (CheckRow *row)
{
  return time_row (row, "food_temp", "F");
}

static double
time_discard_by (CheckRow *row)
{
  const char *text = check_text (row, "removed_at");
  int hour = -1, minute = -1, used = 0;
  g_autofree char *by = NULL;

  if (strlen (text) != 5 || sscanf (text, "%2d:%2d%n", &hour, &minute, &used) != 2 || used != 5
      || hour < 0 || hour > 23 || minute < 0 || minute > 59)
    return check_bad_input (row, "removed_at");
  minute += MIN_PER_H * hour + (int) (MIN_PER_H * time_most (row));
  by = g_strdup_printf ("%02d:%02d", minute / MIN_PER_H % 24, minute % MIN_PER_H);
  return check_answer_word (row, by);
}

static double
time_verdict (CheckRow *row)
{
  static const char * const words[] = { "pass", "discard", "not_allowed" };
  g_autoptr(GError) error = NULL;
  const double hours[] = { 4, 6 };
  SteadTimeControl food = {
    .food = check_one_of (row, "food", timed_foods, 0),
    .highly_susceptible = check_word (row, "population", populations, 0) == 1,
    .marked = check_yes (row, "marked", 1),
    .option_h = NAN,
    .start_f = check_temp_or (row, "start_temp", NAN),
    .warmest_f = check_temp_or (row, "max_temp", NAN),
    .elapsed_h = check_number_or (row, "elapsed_h", NAN),
  };
  SteadTimeVerdict verdict;

  /* Raw eggs for the highly susceptible are out, whatever the option. */
  if (check_has (row, "option_h") || !food.highly_susceptible || !g_str_equal (food.food, "raw_eggs"))
    food.option_h = hours[check_word (row, "option_h", options, -1)];
  if (!stead_time_control_judge (check_limits (row), &food, &verdict, &error))
    return check_answer_none (row, error);
  return check_answer_word (row, words[verdict]);
}

CHECK_IN_CELSIUS (time_start)
CHECK_IN_CELSIUS (time_warmest)

static const CheckAsk time_asks[] = {
  { "max_time", "h", time_most },
  CHECK_TEMP_ASK ("max_start_temp", time_start),
  CHECK_TEMP_ASK ("max_temp", time_warmest),
  { "discard_by", "text", time_discard_by },
  { "verdict", "text", time_verdict },
  { NULL }
};

/* date marking */

static double
date_days (CheckRow *row)
{
  /* Warmer than the rule allows there are no days. */
  if (!stead_date_mark_in_order (check_limits (row), 0, check_temp_or (row, "temp", 41), TRUE))
    return NAN;
  return check_find_in (row, "date_mark", "ready_to_eat_tcs", "days", NULL, "d");
}

static double
date_needed (CheckRow *row)
{
  return check_answer_word (row, stead_date_mark_needed (check_limits (row), check_number (row, "held_h"))
                                 ? "yes" : "no");
}

static SteadDay
day_or_none (CheckRow   *row,
             const char *name)
{
  return check_has (row, name) ? check_day (row, name) : STEAD_DAY_NONE;
}

static double
date_use_by (CheckRow *row)
{
  g_autoptr(GArray) made = g_array_new (FALSE, FALSE, sizeof (SteadDay));
  g_autoptr(GError) error = NULL;
  SteadFoodDays days = {
    .opened = day_or_none (row, "opened"), .use_by = day_or_none (row, "maker_use_by"),
    .frozen = day_or_none (row, "frozen_on"), .thawed = day_or_none (row, "thawed_on"),
  };
  SteadDay day;

  if (check_has (row, "prepared"))
    {
      g_auto(GStrv) parts = g_strsplit (check_text (row, "prepared"), "|", -1);

      for (gsize i = 0; parts[i] != NULL; i++)
        {
          day = check_day_of (row, "prepared", parts[i]);
          g_array_append_val (made, day);
        }
    }
  else
    check_need (row, "opened");
  days.made = (const SteadDay *) (void *) made->data;
  days.n_made = made->len;
  if (!stead_date_mark (check_limits (row), &days, &day, &error))
    return check_answer_none (row, error);
  return check_answer_day (row, day);
}

static double
date_verdict (CheckRow *row)
{
  return check_answer_word (row, stead_date_mark_in_order (check_limits (row), check_number (row, "held_h"),
                                                           check_temp_or (row, "temp", 41),
                                                           check_yes (row, "marked", 1)) ? "pass" : "discard");
}

static const CheckAsk date_asks[] = {
  { "max_days", "d", date_days },
  { "mark_needed", "text", date_needed },
  { "use_by", "text", date_use_by },
  { "verdict", "text", date_verdict },
  { NULL }
};

/* thawing */

static const char * const thaw_methods[] = { "refrigeration", "running_water", "microwave", NULL };
static const char * const thawed_foods[] = { "raw_animal", "ready_to_eat", "vacuum_packed_fish", "other", NULL };

static double
thaw_row (CheckRow   *row,
          const char *measure,
          const char *unit)
{
  const SteadLimitFact facts[] = { { "method", check_one_of (row, "method", thaw_methods, -1), 0 }, { NULL } };
  const char *food = check_one_of (row, "food", thawed_foods, 3);

  return unit != NULL ? check_find_in (row, "thaw", food, measure, facts, unit)
                      : check_find_word (row, "thaw", food, measure, facts);
}

static double
thaw_water (CheckRow *row)
{
  return thaw_row (row, "water_temp", "F");
}

static double
thaw_food (CheckRow *row)
{
  return thaw_row (row, "food_temp", "F");
}

static double
thaw_above (CheckRow *row)
{
  return thaw_row (row, "above_41F", "h");
}

static double
thaw_next (CheckRow *row)
{
  return thaw_row (row, "next_step", NULL);
}

static double
thaw_verdict (CheckRow *row)
{
  const char *method = check_one_of (row, "method", thaw_methods, -1);
  const char *food = check_one_of (row, "food", thawed_foods, 3);
  g_autoptr(GError) error = NULL;
  gboolean in_order = FALSE;
  double water = NAN;

  if (g_str_equal (method, "running_water"))
    water = check_temp (row, "water_temp");
  if (g_str_equal (food, "vacuum_packed_fish") && g_str_equal (method, "refrigeration"))
    check_need (row, "package_opened");
  if (!stead_thaw_in_order (check_limits (row), method, food, water, check_yes (row, "package_opened", 0),
                            &in_order, &error))
    return check_answer_none (row, error);
  return check_answer_word (row, in_order ? "pass" : "fail");
}

CHECK_IN_CELSIUS (thaw_water)
CHECK_IN_CELSIUS (thaw_food)

static const CheckAsk thaw_asks[] = {
  CHECK_TEMP_ASK ("max_water_temp", thaw_water),
  CHECK_TEMP_ASK ("max_food_temp", thaw_food),
  { "max_time_above_41F", "h", thaw_above },
  { "next_step", "text", thaw_next },
  { "verdict", "text", thaw_verdict },
  { NULL }
};

/* parasite freezing */

static const char * const fishes[] = { "tank_raised", "pond_raised", "wild", NULL };
static const char * const feeds[] = { "pellets", "live_fish", NULL };
static const char * const servings[] = { "raw_or_undercooked", "cooked", NULL };

/* Whether the fish needs no freezing, as far as the row tells. */
static const SteadLimit *
requirement_row (CheckRow *row)
{
  SteadLimitFact facts[4] = { { NULL } };
  gsize n = 0;

  if (check_has (row, "fish"))
    facts[n++] = (SteadLimitFact) { "fish", check_one_of (row, "fish", fishes, -1), 0 };
  if (check_has (row, "feed"))
    facts[n++] = (SteadLimitFact) { "feed", check_one_of (row, "feed", feeds, -1), 0 };
  facts[n++] = (SteadLimitFact) { "served", check_one_of (row, "served", servings, 0), 0 };
  return stead_limit_table_find (check_limits (row), "freeze_fish", "fish", "requirement", facts, NULL);
}

static double
freezing_time (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double freeze = check_temp (row, "freeze_temp");
  double hours = NAN;

  if (!stead_fish_freezing_h (check_limits (row), freeze, check_temp_or (row, "store_temp", freeze), &hours, &error))
    return check_answer_none (row, error);
  return hours;
}

static double
freezing_requirement (CheckRow *row)
{
  const SteadLimit *limit = requirement_row (row);

  check_need (row, "fish feed served");
  return limit != NULL ? check_answer_word (row, limit->word) : NAN;
}

static double
freezing_records (CheckRow *row)
{
  return check_find_in (row, "freeze_fish", "fish", "records", NULL, "d");
}

static double
freezing_verdict (CheckRow *row)
{
  const SteadLimit *limit = requirement_row (row);
  double hours = 0;

  if (limit != NULL && g_str_equal (limit->word, "exempt"))
    return check_answer_word (row, "pass");
  /* Too warm is no freezing at all. */
  if (!stead_fish_freezing_h (check_limits (row), check_temp (row, "freeze_temp"),
                              check_temp_or (row, "store_temp", check_temp (row, "freeze_temp")), &hours, NULL))
    hours = HUGE_VAL;
  return check_answer_word (row, stead_limit_compare (check_number (row, "time_h"), hours) >= 0 ? "pass" : "fail");
}

static const CheckAsk freezing_asks[] = {
  { "min_time", "h", freezing_time },
  { "requirement", "text", freezing_requirement },
  { "min_record_keeping", "d", freezing_records },
  { "verdict", "text", freezing_verdict },
  { NULL }
};

/* process approach */

static GArray *
steps_of (CheckRow *row)
{
  GArray *steps = g_array_new (FALSE, FALSE, sizeof (SteadStep));
  g_auto(GStrv) parts = g_strsplit (check_text (row, "steps"), "|", -1);

  for (gsize i = 0; parts[i] != NULL; i++)
    {
      SteadStep step = STEAD_STEP_RECEIVE;

      if (!stead_step_by_id (parts[i], &step))
        check_bad_input (row, "steps");
      g_array_append_val (steps, step);
    }
  if (steps->len == 0)
    check_bad_input (row, "steps");
  return steps;
}

static double
process_word (CheckRow *row)
{
  static const char * const words[] = { "no_cook", "same_day", "complex" };
  g_autoptr(GArray) steps = steps_of (row);

  return check_answer_word (row, words[stead_process_kind ((const SteadStep *) (void *) steps->data, steps->len)]);
}

static double
process_trips (CheckRow *row)
{
  g_autoptr(GArray) steps = steps_of (row);

  return stead_process_trips ((const SteadStep *) (void *) steps->data, steps->len);
}

static const CheckAsk process_asks[] = {
  { "process", "text", process_word },
  { "complete_trips", "count", process_trips },
  { NULL }
};

/* growth limits, exposure time */

static const char * const growers[] = {
  "Salmonella", "Listeria_monocytogenes", "C_botulinum_proteolytic", "S_aureus_toxin", NULL,
};
static const char * const exposed[] = { "Salmonella", "C_perfringens", NULL };

static double
growth_temp (CheckRow *row)
{
  return check_find_in (row, "growth", check_one_of (row, "pathogen", growers, -1), "temp", NULL, "F");
}

static double
growth_ph (CheckRow *row)
{
  return check_find_in (row, "growth", check_one_of (row, "pathogen", growers, -1), "ph", NULL, "pH");
}

static double
growth_aw (CheckRow *row)
{
  return check_find_in (row, "growth", check_one_of (row, "pathogen", growers, -1), "aw", NULL, "aw");
}

CHECK_IN_CELSIUS (growth_temp)

static const CheckAsk growth_asks[] = {
  CHECK_TEMP_ASK ("min_temp", growth_temp),
  { "min_pH", "pH", growth_ph },
  { "min_aw", "aw", growth_aw },
  { NULL }
};

static double
exposure_time (CheckRow *row)
{
  const SteadLimitFact facts[] = { { "temp_f", NULL, check_temp (row, "temp") }, { NULL } };

  return check_find_in (row, "exposure", check_one_of (row, "pathogen", exposed, -1), "time", facts, "h");
}

static const CheckAsk exposure_asks[] = {
  { "max_time", "h", exposure_time },
  { NULL }
};

const CheckTopic check_food_cold_topics[] = {
  { "time control",
    "option_h food population start_temp_F start_temp_C max_temp_F max_temp_C elapsed_h marked removed_at",
    time_asks },
  { "date marking",
    "prepared opened maker_use_by frozen_on thawed_on held_h temp_F temp_C marked", date_asks },
  { "thawing", "method food water_temp_F water_temp_C package_opened", thaw_asks },
  { "parasite freezing",
    "fish feed served freeze_temp_F freeze_temp_C store_temp_F store_temp_C time_h", freezing_asks },
  { "process approach", "steps", process_asks },
  { "growth limits", "pathogen", growth_asks },
  { "exposure time", "pathogen temp_F temp_C", exposure_asks },
  { NULL }
};
