/* check-food-heat.c - the topics on cooking, holding hot and cold, receiving, reheating. */
#include "check-food.h"

#include "core/stead-food-time.h"

#include <math.h>

/* cooking */

static const char * const cooked_foods[] = {
  "raw_egg", "fish_intact", "fish_comminuted", "poultry", "stuffed_food", "plant_food", "raw_animal_food",
  "whole_roast", "egg_dish", "leftovers_or_casserole", "fish_and_shellfish", "meat_intact", "meat_ground", NULL,
};
static const char * const uses[] = { "immediate_service", "pooled_or_held", "hot_holding", NULL };
static const char * const methods[] = { "conventional", "microwave", "non_continuous", NULL };
static const char * const charts[] = { "food_code", "home", NULL };

/* Where the rows of a question stand. */
typedef struct
{
  const char     *process;
  const char     *food;
  SteadLimitFact  facts[2];
} Place;

static Place
cooking_place (CheckRow *row)
{
  static const char * const processes[] = { "cook", "cook_microwave", "cook_interrupted" };
  Place place = { .food = check_one_of (row, "food", cooked_foods, -1) };
  int method = check_word (row, "method", methods, 0);

  place.process = check_word (row, "chart", charts, 0) == 1 ? "cook_home" : processes[method];
  if (check_has (row, "use"))
    place.facts[0] = (SteadLimitFact) { "use", check_one_of (row, "use", uses, -1), 0 };
  return place;
}

static Place
table_place (CheckRow *row)
{
  static const char * const tables[] = {
    "food_code_roast", "fsis_meat_6_5_log", "fsis_meat_7_log", "fsis_chicken_7_log_12pct_fat",
    "fsis_turkey_7_log_12pct_fat", NULL,
  };
  int table = check_word (row, "table", tables, -1);

  if (table == 0)
    return (Place) { .process = "cook", .food = "whole_roast" };
  return (Place) { .process = "lethality_table", .food = tables[table] };
}

/* The lowest temperature; with a hold, the lowest for which it is long enough. */
static double
least_temp (CheckRow    *row,
            const Place *place)
{
  g_autoptr(GPtrArray) list = stead_limit_table_list (check_limits (row), place->process, place->food,
                                                      "food_temp", place->facts);
  double hold = check_number_or (row, "hold_s", HUGE_VAL);
  double least = NAN;

  for (guint i = 0; i < list->len; i++)
    {
      const SteadLimit *limit = list->pdata[i];

      if ((!limit->has_time || limit->time_s <= hold) && !(least <= limit->value))
        least = limit->value;
    }
  return least;
}

static double
least_hold (CheckRow    *row,
            const Place *place)
{
  g_autoptr(GPtrArray) list = stead_limit_table_list (check_limits (row), place->process, place->food,
                                                      "food_temp", place->facts);
  g_autoptr(GError) error = NULL;
  const SteadLimit *step = NULL;

  /* Where there is one row, there is one hold, whatever the temperature. */
  if (list->len == 1 && !check_has_temp (row, "temp"))
    step = list->pdata[0];
  else
    step = stead_limit_table_step (check_limits (row), place->process, place->food, "food_temp", place->facts,
                                   check_temp (row, "temp"), &error);
  if (step == NULL)
    return check_answer_none (row, error);
  return step->has_time ? step->time_s : 0;
}

static double
cooking_temp (CheckRow *row)
{
  Place place = cooking_place (row);

  return least_temp (row, &place);
}

static double
cooking_hold (CheckRow *row)
{
  Place place = cooking_place (row);

  return least_hold (row, &place);
}

static double
cooking_stand (CheckRow *row)
{
  Place place = cooking_place (row);

  return check_find_in (row, place.process, place.food, "stand_covered", NULL, "s");
}

static double
cooking_first (CheckRow *row)
{
  Place place = cooking_place (row);

  return check_find_in (row, place.process, place.food, "first_heating", NULL, "min");
}

static double
cooking_verdict (CheckRow *row)
{
  Place place = cooking_place (row);
  g_autoptr(GError) error = NULL;
  SteadLimitReading reading = { check_temp (row, "temp"), "F", 0, 0, check_number_or (row, "hold_s", NAN) };
  SteadJudgement judgement;

  if (!stead_limit_table_judge (check_limits (row), place.process, place.food, "food_temp", place.facts,
                                &reading, &judgement, NULL, &error))
    return check_answer_none (row, error);
  return check_answer_word (row, judgement.verdict == STEAD_LIMIT_MET ? "pass" : "fail");
}

CHECK_IN_CELSIUS (cooking_temp)

static const CheckAsk cooking_asks[] = {
  CHECK_TEMP_ASK ("min_temp", cooking_temp),
  { "min_hold", "s", cooking_hold },
  { "min_stand_covered", "s", cooking_stand },
  { "max_initial_heating", "min", cooking_first },
  { "verdict", "text", cooking_verdict },
  { NULL }
};

static double
table_temp (CheckRow *row)
{
  Place place = table_place (row);

  return least_temp (row, &place);
}

static double
table_hold (CheckRow *row)
{
  Place place = table_place (row);

  check_temp (row, "temp");
  return least_hold (row, &place);
}

CHECK_IN_CELSIUS (table_temp)

static const CheckAsk table_asks[] = {
  { "min_hold", "s", table_hold },
  CHECK_TEMP_ASK ("min_temp", table_temp),
  { NULL }
};

/* roast oven */

static const char * const ovens[] = { "still_dry", "convection", "high_humidity", NULL };

static double
oven_temp (CheckRow            *row,
           SteadLimitDirection  direction)
{
  SteadLimitFact facts[] = { { "weight_lb", NULL, 0 }, { NULL } };
  const char *oven = check_one_of (row, "oven", ovens, -1);
  const SteadLimit *limit;

  /* In moist heat the weight does not matter. */
  if (!g_str_equal (oven, "high_humidity") || check_has (row, "weight_lb"))
    facts[0].number = check_number (row, "weight_lb");
  limit = check_find (row, "roast_oven", oven, "oven_temp", facts);
  return limit != NULL && limit->direction == direction ? limit->value : NAN;
}

static double
oven_least (CheckRow *row)
{
  return oven_temp (row, STEAD_LIMIT_AT_LEAST);
}

static double
oven_most (CheckRow *row)
{
  return oven_temp (row, STEAD_LIMIT_AT_MOST);
}

CHECK_IN_CELSIUS (oven_least)
CHECK_IN_CELSIUS (oven_most)

static const CheckAsk oven_asks[] = {
  CHECK_TEMP_ASK ("min_oven_temp", oven_least),
  CHECK_TEMP_ASK ("max_oven_temp", oven_most),
  { NULL }
};

/* holding, in-use utensils, receiving */

static const char * const modes[] = { "hold_hot", "hold_cold", NULL };
static const char * const mode_words[] = { "hot", "cold", NULL };
static const char * const held_foods[] = { "tcs", "whole_roast", "raw_shell_eggs", NULL };

static const SteadLimit *
holding_row (CheckRow   *row,
             const char *measure)
{
  return check_find (row, modes[check_word (row, "mode", mode_words, -1)],
                     check_one_of (row, "food", held_foods, 0), measure, NULL);
}

/* The value of a row, if it has that direction. */
static double
value_if (const SteadLimit    *limit,
          SteadLimitDirection  direction)
{
  return limit != NULL && limit->direction == direction ? limit->value : NAN;
}

static double
holding_least (CheckRow *row)
{
  return value_if (holding_row (row, "food_temp"), STEAD_LIMIT_AT_LEAST);
}

static double
holding_most (CheckRow *row)
{
  return value_if (holding_row (row, "food_temp"), STEAD_LIMIT_AT_MOST);
}

static double
holding_air (CheckRow *row)
{
  return value_if (holding_row (row, "air_temp"), STEAD_LIMIT_AT_MOST);
}

/* A row for the air is judged by the air, one for the food by the food. */
static double
verdict_on (CheckRow         *row,
            const SteadLimit *limit,
            const char       *right,
            const char       *wrong)
{
  SteadLimitReading reading = { 0, "F", 0, 0, NAN };
  SteadJudgement judgement;

  if (limit == NULL)
    return NAN;
  reading.value = check_temp (row, g_str_equal (limit->measure, "air_temp") ? "air_temp"
                                   : g_str_equal (limit->measure, "water_temp") ? "water_temp" : "temp");
  if (!stead_limit_judge (limit, &reading, &judgement, NULL))
    return NAN;
  return check_answer_word (row, judgement.verdict == STEAD_LIMIT_MET ? right : wrong);
}

static double
holding_verdict (CheckRow *row)
{
  return verdict_on (row, holding_row (row, NULL), "pass", "fail");
}

CHECK_IN_CELSIUS (holding_least)
CHECK_IN_CELSIUS (holding_most)
CHECK_IN_CELSIUS (holding_air)

static const CheckAsk holding_asks[] = {
  CHECK_TEMP_ASK ("min_temp", holding_least),
  CHECK_TEMP_ASK ("max_temp", holding_most),
  CHECK_TEMP_ASK ("max_air_temp", holding_air),
  { "verdict", "text", holding_verdict },
  { NULL }
};

static double
utensils_verdict (CheckRow *row)
{
  return verdict_on (row, check_find (row, "hold_utensils", "water", "water_temp", NULL), "pass", "fail");
}

static const CheckAsk utensils_asks[] = {
  { "verdict", "text", utensils_verdict },
  { NULL }
};

static const char * const received_foods[] = { "cold_tcs", "hot_tcs", "raw_shell_eggs", NULL };

static const SteadLimit *
receiving_row (CheckRow   *row,
               const char *measure)
{
  return check_find (row, "receive", check_one_of (row, "food", received_foods, -1), measure, NULL);
}

static double
receiving_least (CheckRow *row)
{
  return value_if (receiving_row (row, "food_temp"), STEAD_LIMIT_AT_LEAST);
}

static double
receiving_most (CheckRow *row)
{
  return value_if (receiving_row (row, "food_temp"), STEAD_LIMIT_AT_MOST);
}

static double
receiving_air (CheckRow *row)
{
  return value_if (receiving_row (row, "air_temp"), STEAD_LIMIT_AT_MOST);
}

static double
receiving_grade (CheckRow *row)
{
  return check_find_word (row, "receive", check_one_of (row, "food", received_foods, -1), "worst_grade", NULL);
}

static double
receiving_verdict (CheckRow *row)
{
  return verdict_on (row, receiving_row (row, NULL), "accept", "reject");
}

CHECK_IN_CELSIUS (receiving_least)
CHECK_IN_CELSIUS (receiving_most)
CHECK_IN_CELSIUS (receiving_air)

static const CheckAsk receiving_asks[] = {
  CHECK_TEMP_ASK ("min_temp", receiving_least),
  CHECK_TEMP_ASK ("max_temp", receiving_most),
  CHECK_TEMP_ASK ("max_air_temp", receiving_air),
  { "worst_grade", "text", receiving_grade },
  { "verdict", "text", receiving_verdict },
  { NULL }
};

/* reheating */

static const char * const reheated_foods[] = { "cooked_on_site", "commercial_package", NULL };
static const char * const reheat_methods[] = { "conventional", "microwave", NULL };
static const char * const reheat_processes[] = { "reheat", "reheat_microwave" };
static const char * const purposes[] = { "hot_holding", "immediate_service", NULL };

static const SteadLimit *
reheat_row (CheckRow   *row,
            gboolean    is_time)
{
  const SteadLimitFact facts[] = { { "purpose", check_one_of (row, "purpose", purposes, 0), 0 }, { NULL } };
  int method = check_word (row, "method", reheat_methods, 0);

  return check_find (row, is_time ? "reheat" : reheat_processes[method],
                     check_one_of (row, "food", reheated_foods, 0), is_time ? "elapsed" : "food_temp", facts);
}

static double
reheat_temp (CheckRow *row)
{
  return value_if (reheat_row (row, FALSE), STEAD_LIMIT_AT_LEAST);
}

static double
reheat_hold (CheckRow *row)
{
  const SteadLimit *limit = reheat_row (row, FALSE);

  if (limit == NULL)
    return NAN;
  return limit->has_time ? limit->time_s : 0;
}

static double
reheat_time (CheckRow *row)
{
  const SteadLimit *limit = reheat_row (row, TRUE);

  return limit != NULL ? stead_limit_value_in (limit, "h") : NAN;
}

static double
reheat_applies (CheckRow *row)
{
  return check_answer_word (row, check_word (row, "purpose", purposes, 0) == 0 ? "yes" : "no");
}

static double
reheat_verdict (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  SteadReheatVerdict verdict;
  SteadLimitReading reading = { 0, "F", 0, 0, check_number_or (row, "hold_s", 0) };

  if (check_word (row, "purpose", purposes, 0) == 1)
    return check_answer_word (row, "pass");
  reading.value = check_temp (row, "temp");
  if (!stead_reheat_judge (check_limits (row), check_one_of (row, "food", reheated_foods, 0),
                           check_word (row, "method", reheat_methods, 0) == 1, &reading,
                           check_number (row, "elapsed_h"), &verdict, &error))
    return check_answer_none (row, error);
  /* The row tells of a heating that is over. */
  return check_answer_word (row, verdict == STEAD_REHEAT_PASS ? "pass" : "discard");
}

CHECK_IN_CELSIUS (reheat_temp)

static const CheckAsk reheat_asks[] = {
  CHECK_TEMP_ASK ("min_temp", reheat_temp),
  { "min_hold", "s", reheat_hold },
  { "max_time", "h", reheat_time },
  { "limit_applies", "text", reheat_applies },
  { "verdict", "text", reheat_verdict },
  { NULL }
};

const CheckTopic check_food_heat_topics[] = {
  { "cooking", "food use method chart edition temp_F temp_C hold_s", cooking_asks },
  { "hold time table", "table temp_F temp_C hold_s", table_asks },
  { "roast oven", "oven weight_lb", oven_asks },
  { "holding", "mode food temp_F temp_C air_temp_F air_temp_C", holding_asks },
  { "in-use utensils", "water_temp_F water_temp_C", utensils_asks },
  { "receiving", "food temp_F temp_C air_temp_F air_temp_C", receiving_asks },
  { "reheating", "food method purpose temp_F temp_C hold_s elapsed_h", reheat_asks },
  { NULL }
};
