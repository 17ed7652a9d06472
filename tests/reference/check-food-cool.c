/* check-food-cool.c - the topics on cooling. */
#include "check-food.h"

#include "core/stead-cooling.h"

#include <math.h>

#define MIN_PER_H 60

/* cooling */

static const char * const starts[] = { "cooked", "ambient_ingredients", "received_warm", NULL };
static const char * const wordings[] = { "food_code", "additional_4h", NULL };
static const char * const stages[] = { "stage_1", "stage_2", "total", NULL };

static gboolean
cooling_rule (CheckRow         *row,
              SteadCoolingRule *rule)
{
  g_autoptr(GError) error = NULL;

  if (stead_cooling_rule (check_limits (row), check_one_of (row, "start", starts, 0),
                          check_one_of (row, "rule", wordings, 0), rule, &error))
    return TRUE;
  check_answer_none (row, error);
  return FALSE;
}

/* Hours for a stage; of a wording that only has stages the total is their sum. */
static double
cooling_time (CheckRow *row)
{
  SteadCoolingRule rule;
  int stage = check_word (row, "stage", stages, -1);
  const SteadCoolingMark *last;

  if (!cooling_rule (row, &rule))
    return NAN;
  last = &rule.marks[rule.n_marks - 1];
  if (stage == 0 && rule.n_marks == 2)
    return rule.marks[0].within_min / MIN_PER_H;
  if (stage == 1 && last->from_previous)
    return last->within_min / MIN_PER_H;
  if (stage == 2)
    return (last->within_min + (last->from_previous ? rule.marks[0].within_min : 0)) / MIN_PER_H;
  return NAN;
}

static double
cooling_verdict (CheckRow *row)
{
  static const char * const words[] = { "pass", "open", "fail_stage_1", "fail_stage_2", "fail_total" };
  SteadCoolingRule rule;
  double from = MIN_PER_H * check_number_or (row, "at_135F_h", 0);
  double at[STEAD_COOLING_MARKS];
  SteadCoolingVerdict verdict;

  if (!cooling_rule (row, &rule))
    return NAN;
  for (gsize i = 0; i < rule.n_marks; i++)
    at[i] = MIN_PER_H * check_number_or (row, i + 1 == rule.n_marks ? "at_41F_h" : "at_70F_h", NAN);
  verdict = stead_cooling_verdict (&rule, from, at);
  if (verdict == STEAD_COOLING_OPEN)
    check_need (row, rule.n_marks == 2 ? "at_70F_h at_41F_h" : "at_41F_h");
  return check_answer_word (row, words[verdict]);
}

static const CheckAsk cooling_asks[] = {
  { "max_time", "h", cooling_time },
  { "verdict", "text", cooling_verdict },
  { NULL }
};

static double
mean_rate (CheckRow *row)
{
  return (check_temp (row, "from_temp") - check_temp (row, "to_temp")) / check_number (row, "time_h");
}

static const CheckAsk rate_asks[] = {
  { "mean_rate", "F/h", mean_rate },
  { NULL }
};

static double
corrective (CheckRow *row)
{
  const SteadLimitFact facts[] = {
    { "temp_f", NULL, check_temp (row, "temp") },
    { "elapsed_h", NULL, check_number (row, "elapsed_h") },
    { "reheated", check_yes (row, "reheated_before", 0) ? "yes" : "no", 0 },
    { NULL },
  };

  return check_find_word (row, "correct", "cool", "action", facts);
}

static const CheckAsk corrective_asks[] = {
  { "action", "text", corrective },
  { NULL }
};

/* cooling forecast, Newton cooling */

static double
forecast_at_41 (CheckRow *row)
{
  SteadCoolingRule rule;
  double air = check_temp (row, "air_temp");
  double rate;

  if (!cooling_rule (row, &rule))
    return NAN;
  rate = stead_newton_rate (rule.start_f, air, check_number (row, "at_70F_h"), rule.marks[0].temp_f);
  return stead_newton_minutes (rule.start_f, air, rate, rule.marks[1].temp_f);
}

/* The other way round: the latest arrival at 70 °F for an arrival at 41 °F. */
static double
forecast_at_70 (CheckRow *row)
{
  SteadCoolingRule rule;
  double air = check_temp (row, "air_temp");
  double rate;

  if (!cooling_rule (row, &rule))
    return NAN;
  rate = stead_newton_rate (rule.start_f, air, check_number (row, "at_41F_h"), rule.marks[1].temp_f);
  return stead_newton_minutes (rule.start_f, air, rate, rule.marks[0].temp_f);
}

static double
forecast_air (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  SteadCoolingRule rule;
  double air = NAN;

  if (!cooling_rule (row, &rule))
    return NAN;
  if (!stead_cooling_warmest_ambient (&rule, MIN_PER_H * check_number (row, "at_70F_h"),
                                      MIN_PER_H * check_number (row, "at_41F_h"), &air, &error))
    return check_answer_none (row, error);
  return air;
}

CHECK_IN_CELSIUS (forecast_air)

static const CheckAsk forecast_asks[] = {
  { "at_41F", "h", forecast_at_41 },
  { "at_70F", "h", forecast_at_70 },
  CHECK_TEMP_ASK ("warmest_air", forecast_air),
  { NULL }
};

static double
newton_k (CheckRow *row)
{
  return stead_newton_rate (check_temp (row, "start_temp"), check_temp (row, "air_temp"),
                            check_number (row, "reading_min"), check_temp (row, "reading_temp"));
}

static double
newton_time (CheckRow *row)
{
  return stead_newton_minutes (check_temp (row, "start_temp"), check_temp (row, "air_temp"), newton_k (row),
                               check_temp (row, "target_temp"));
}

static double
newton_temp (CheckRow *row)
{
  return stead_newton_temp (check_temp (row, "start_temp"), check_temp (row, "air_temp"), newton_k (row),
                            check_number (row, "elapsed_min"));
}

CHECK_IN_CELSIUS (newton_temp)

static const CheckAsk newton_asks[] = {
  { "time", "min", newton_time },
  { "k", "1/min", newton_k },
  CHECK_TEMP_ASK ("temp", newton_temp),
  { NULL }
};

const CheckTopic check_food_cool_topics[] = {
  { "cooling", "rule start stage at_135F_h at_70F_h at_41F_h", cooling_asks },
  { "cooling rate", "from_temp_F from_temp_C to_temp_F to_temp_C time_h", rate_asks },
  { "cooling corrective", "temp_F temp_C elapsed_h reheated_before", corrective_asks },
  { "cooling forecast", "air_temp_F air_temp_C at_70F_h at_41F_h", forecast_asks },
  { "Newton cooling",
    "start_temp_F start_temp_C air_temp_F air_temp_C reading_min reading_temp_F reading_temp_C "
    "target_temp_F target_temp_C elapsed_min", newton_asks },
  { NULL }
};
