/* check-food-egg.c - the topics on the law of eggs; weight classes stand with the hens. */
#include "check-food.h"

#include "core/stead-calendar.h"
#include "core/stead-food-time.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* egg rule coverage */

static double
covered (CheckRow *row)
{
  static const char * const rules[] = { "21_CFR_118", "9_CFR_590_50", NULL };
  const SteadLimitFact facts[] = {
    { "sells_all_direct", check_yes (row, "sells_all_direct", 0) ? "yes" : "no", 0 },
    { "hens", NULL, check_number (row, "hens") },
    { NULL },
  };

  return check_find_word (row, "egg_rule", check_one_of (row, "rule", rules, -1), "covered", facts);
}

static const CheckAsk coverage_asks[] = {
  { "covered", "text", covered },
  { NULL }
};

/* egg refrigeration */

static const char * const places[] = { "farm", "retail", NULL };

static double
air_temp (CheckRow *row)
{
  const char *place = check_one_of (row, "place", places, 0);
  const SteadLimit *free_time = stead_limit_table_find (check_limits (row), "egg_cold", place, "since_lay", NULL, NULL);

  /* On the farm there is no limit before the eggs must be cold. */
  if (free_time != NULL && check_has (row, "since_lay_h")
      && stead_limit_compare (check_number (row, "since_lay_h"), stead_limit_value_in (free_time, "h")) < 0)
    return NAN;
  return check_find_in (row, "egg_cold", place, "air_temp", NULL, "F");
}

static double
tempering (CheckRow *row)
{
  return check_find_in (row, "egg_cold", check_one_of (row, "place", places, 0), "tempering", NULL, "h");
}

#define H_PER_D 24

static double
refrigerate_by (CheckRow *row)
{
  g_auto(GStrv) parts = g_strsplit (check_text (row, "laid_at"), "T", 2);
  double hours = check_find_in (row, "egg_cold", check_one_of (row, "place", places, 0), "since_lay", NULL, "h");
  int hour = -1, minute = -1, used = 0;
  g_autofree char *day_text = NULL;
  g_autofree char *text = NULL;
  SteadDay day;

  if (isnan (hours))
    return NAN;
  if (g_strv_length (parts) != 2 || strlen (parts[1]) != 5
      || sscanf (parts[1], "%2d:%2d%n", &hour, &minute, &used) != 2 || used != 5
      || hour < 0 || hour > 23 || minute < 0 || minute > 59)
    return check_bad_input (row, "laid_at");
  day = check_day_of (row, "laid_at", parts[0]);
  hour += (int) hours;
  if (day == STEAD_DAY_NONE)
    return NAN;
  day_text = stead_day_format (day + hour / H_PER_D, STEAD_DAY_STYLE_ISO);
  text = g_strdup_printf ("%sT%02d:%02d", day_text, hour % H_PER_D, minute);
  return check_answer_word (row, text);
}

CHECK_IN_CELSIUS (air_temp)

static const CheckAsk cold_asks[] = {
  CHECK_TEMP_ASK ("max_air_temp", air_temp),
  { "max_tempering_time", "h", tempering },
  { "refrigerate_by", "text", refrigerate_by },
  { NULL }
};

/* egg label */

static const char * const statement_places[] = { "outside", "inside_lid", NULL };

static double
statement (CheckRow *row)
{
  check_word (row, "statement_place", statement_places, 0);
  return check_find_word (row, "egg_label", "carton", "statement", NULL);
}

static double
outside_words (CheckRow *row)
{
  const SteadLimitFact facts[] = {
    { "statement_place", check_one_of (row, "statement_place", statement_places, 0), 0 }, { NULL },
  };

  return check_find_word (row, "egg_label", "carton", "outside_words", facts);
}

static const CheckAsk label_asks[] = {
  { "safe_handling_statement", "text", statement },
  { "outside_words", "text", outside_words },
  { NULL }
};

/* egg dating */

static double
latest_date (CheckRow *row)
{
  static const char * const marks[] = { "sell_by", "best_by", NULL };
  g_autoptr(GError) error = NULL;
  SteadDay packed = check_day (row, "packed");
  SteadDay day = STEAD_DAY_NONE;

  if (!stead_egg_last_day (check_limits (row), check_one_of (row, "mark", marks, -1), packed, &day, &error))
    return check_answer_none (row, error);
  return packed != STEAD_DAY_NONE ? check_answer_day (row, day) : NAN;
}

static double
day_of_year (CheckRow *row)
{
  SteadDay packed = check_day (row, "packed");

  return packed != STEAD_DAY_NONE ? (double) stead_day_of_year (packed) : (double) NAN;
}

static double
lay_to_pack (CheckRow *row)
{
  return check_find_in (row, "egg_date", "pack", "since_lay", NULL, "d");
}

static const CheckAsk dating_asks[] = {
  { "latest_date", "text", latest_date },
  { "day_of_year", "d", day_of_year },
  { "max_lay_to_pack", "d", lay_to_pack },
  { NULL }
};

/* egg washing */

static double
wash_temp (CheckRow *row)
{
  double least = check_find_in (row, "egg_wash", "water", "water_temp", NULL, "F");
  double above = check_find_in (row, "egg_wash", "water", "above_egg", NULL, "Fdiff");

  return fmax (least, check_temp (row, "egg_temp") + above);
}

static double
rinse_least (CheckRow *row)
{
  return check_find_in (row, "egg_wash", "rinse", "chlorine", NULL, "mg/L");
}

static double
rinse_most (CheckRow *row)
{
  return check_find_in (row, "egg_wash", "rinse", "chlorine_most", NULL, "mg/L");
}

static double
wash_change (CheckRow *row)
{
  return check_find_in (row, "egg_wash", "water", "change", NULL, "h");
}

CHECK_IN_CELSIUS (wash_temp)

static const CheckAsk washing_asks[] = {
  CHECK_TEMP_ASK ("min_water_temp", wash_temp),
  { "min_rinse_chlorine", "mg/L", rinse_least },
  { "max_rinse_chlorine", "mg/L", rinse_most },
  { "water_change_interval", "h", wash_change },
  { NULL }
};

/* egg storage, state egg rule */

static double
storage (CheckRow *row)
{
  static const char * const forms[] = { "raw_in_shell", "hard_cooked", NULL };
  const SteadLimitFact facts[] = { { "temp_f", NULL, check_temp_or (row, "temp", 40) }, { NULL } };

  return check_find_in (row, "storage_life", check_one_of (row, "form", forms, -1), "days", facts, "d");
}

static const CheckAsk storage_asks[] = {
  { "max_days", "d", storage },
  { NULL }
};

/* A place or a mark of its own decides; what the row does not name is no fact. */
static gsize
state_facts (CheckRow       *row,
             SteadLimitFact *facts)
{
  static const char * const marks[] = { "best_by", NULL };
  static const char * const shops[] = { "farmers_market", NULL };
  gsize n = 0;

  if (check_has (row, "mark"))
    facts[n++] = (SteadLimitFact) { "mark", check_one_of (row, "mark", marks, -1), 0 };
  if (check_has (row, "place"))
    facts[n++] = (SteadLimitFact) { "place", check_one_of (row, "place", shops, -1), 0 };
  if (check_has_temp (row, "air_temp"))
    facts[n++] = (SteadLimitFact) { "air_temp_f", NULL, check_temp (row, "air_temp") };
  if (check_has (row, "hens"))
    facts[n++] = (SteadLimitFact) { "hens", NULL, check_number (row, "hens") };
  facts[n] = (SteadLimitFact) { NULL };
  return n;
}

static const char * const states[] = { "Utah", "California", "Kansas", NULL };

static double
state_days (CheckRow *row)
{
  SteadLimitFact facts[5];

  state_facts (row, facts);
  return check_find_in (row, "egg_state", check_one_of (row, "state", states, -1), "after_laying", facts, "d");
}

static double
state_warm_days (CheckRow *row)
{
  SteadLimitFact facts[5];

  state_facts (row, facts);
  return check_find_in (row, "egg_state", check_one_of (row, "state", states, -1), "unrefrigerated", facts, "d");
}

static double
state_covered (CheckRow *row)
{
  SteadLimitFact facts[5];

  state_facts (row, facts);
  check_need (row, "hens");
  return check_find_word (row, "egg_state", check_one_of (row, "state", states, -1), "covered", facts);
}

static const CheckAsk state_asks[] = {
  { "max_days", "d", state_days },
  { "max_unrefrigerated_days", "d", state_warm_days },
  { "covered", "text", state_covered },
  { NULL }
};

const CheckTopic check_food_egg_topics[] = {
  { "egg rule coverage", "rule hens sells_all_direct", coverage_asks },
  { "egg refrigeration", "place since_lay_h laid_at", cold_asks },
  { "egg label", "statement_place", label_asks },
  { "egg dating", "packed mark", dating_asks },
  { "egg washing", "egg_temp_F egg_temp_C", washing_asks },
  { "egg storage", "form temp_F temp_C", storage_asks },
  { "state egg rule", "state mark place air_temp_F air_temp_C hens", state_asks },
  { NULL }
};
