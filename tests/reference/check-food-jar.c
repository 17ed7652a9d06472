/* check-food-jar.c - the topics on acid foods and jars. */
#include "check-food.h"

#include "core/stead-food-kind.h"
#include "core/stead-quantity.h"

#include <math.h>

/* acidified foods */

static SteadAcidFood
acid_food (CheckRow *row)
{
  static const char * const products[] = { "tomato", "other", NULL };

  return (SteadAcidFood) {
    .tomato = check_word (row, "product", products, 1) == 0,
    .acid_added = check_yes (row, "acid_added", 0),
    .refrigerated = check_yes (row, "refrigerated", 0),
    .ph = check_number_or (row, "pH", NAN),
    .aw = check_number_or (row, "aw", NAN),
  };
}

static double
acid_class (CheckRow *row)
{
  static const char * const words[] = { "acidified_food", "not_low_acid", "low_acid", "outside_part_114" };
  SteadAcidFood food = acid_food (row);
  g_autoptr(GError) error = NULL;
  SteadAcidKind kind;

  if (!stead_acid_kind (check_limits (row), &food, &kind, &error))
    return check_answer_none (row, error);
  return check_answer_word (row, words[kind]);
}

static double
acid_verdict (CheckRow *row)
{
  acid_food (row);
  return check_answer_word (row, stead_acid_ph_in_order (check_limits (row), check_number (row, "pH"))
                                 ? "pass" : "fail");
}

/* A figure or a word of the rule itself. */
static double
acid_rule (CheckRow *row)
{
  static const struct { const char *ask, *measure, *unit; } rules[] = {
    { "max_pH", "ph", "pH" }, { "aw_limit", "aw", "aw" }, { "max_days_to_register", "register", "d" },
    { "max_days_to_file", "file", "d" }, { "max_days_to_report_stop", "report_stop", "d" },
    { "min_record_keeping", "records", "y" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rules); i++)
    if (g_str_equal (rules[i].ask, check_ask_name (row)))
      return check_find_in (row, "acidified", "any", rules[i].measure, NULL, rules[i].unit);
  return check_find_word (row, "acidified", "any", "supervisor", NULL);
}

static double
acid_method (CheckRow *row)
{
  const SteadLimitFact facts[] = { { "ph", NULL, check_number (row, "pH") }, { NULL } };

  return check_find_word (row, "acidified", "any", "ph_method", facts);
}

static const CheckAsk acidified_asks[] = {
  { "class", "text", acid_class },
  { "verdict", "text", acid_verdict },
  { "max_pH", "pH", acid_rule },
  { "aw_limit", "aw", acid_rule },
  { "pH_method", "text", acid_method },
  { "max_days_to_register", "d", acid_rule },
  { "max_days_to_file", "d", acid_rule },
  { "max_days_to_report_stop", "d", acid_rule },
  { "min_record_keeping", "y", acid_rule },
  { "supervisor", "text", acid_rule },
  { NULL }
};

/* tomato acidification */

static const char * const jars[] = { "pint", "quart", NULL };

static double
acid_amount (CheckRow   *row,
             const char *unit)
{
  static const char * const acids[] = { "bottled_lemon_juice", "citric_acid", "vinegar_5pct", NULL };
  g_autoptr(GError) error = NULL;
  const char *in = NULL;
  double amount = NAN;

  if (!stead_jar_acid (check_limits (row), check_one_of (row, "acid", acids, -1), check_one_of (row, "jar", jars, -1),
                       check_number_or (row, "jars", 1), &amount, &in, &error))
    return check_answer_none (row, error);
  return stead_quantity_from_base (stead_quantity_to_base (amount, stead_unit_by_id (in)), stead_unit_by_id (unit));
}

static double
acid_tbsp (CheckRow *row)
{
  return acid_amount (row, "tbsp");
}

static double
acid_tsp (CheckRow *row)
{
  return acid_amount (row, "tsp");
}

static const CheckAsk amount_asks[] = {
  { "amount_tbsp", "tbsp", acid_tbsp },
  { "amount_tsp", "tsp", acid_tsp },
  { NULL }
};

/* boiling-water process time, canning method, pressure process */

static double
altitude_ft (CheckRow *row)
{
  if (!check_has (row, "altitude_m"))
    return check_number (row, "altitude_ft");
  return stead_quantity_from_base (check_number (row, "altitude_m"), stead_unit_by_id ("ft"));
}

static double
process_time (CheckRow *row)
{
  static const char * const products[] = {
    "standard_tomato_sauce", "tomato_juice", "tomato_ketchup", "tomato_paste_salsa", "whole_tomatoes_in_water",
    "whole_tomatoes_in_tomato_juice", NULL,
  };
  static const char * const packs[] = { "hot", NULL };
  g_autoptr(GError) error = NULL;
  double minutes = NAN;

  check_word (row, "pack", packs, 0);
  if (!stead_jar_process_min (check_limits (row), check_one_of (row, "product", products, -1),
                              check_one_of (row, "jar", jars, -1), altitude_ft (row), &minutes, &error))
    return check_answer_none (row, error);
  return minutes;
}

static const CheckAsk process_asks[] = {
  { "time", "min", process_time },
  { NULL }
};

static const char * const pressure_products[] = { "spaghetti_sauce_without_meat", NULL };

static double
canning_method (CheckRow *row)
{
  return check_find_word (row, "can_method", check_one_of (row, "product", pressure_products, -1), "method", NULL);
}

static const CheckAsk method_asks[] = {
  { "method", "text", canning_method },
  { NULL }
};

static double
pressure (CheckRow *row,
          gboolean  ask_time)
{
  static const char * const gauges[] = { "dial", "weighted", NULL };
  g_autoptr(GError) error = NULL;
  double minutes = NAN;
  double psi = NAN;

  if (!stead_jar_pressure (check_limits (row), check_one_of (row, "product", pressure_products, -1),
                           check_one_of (row, "jar", jars, -1), check_one_of (row, "canner", gauges, -1),
                           altitude_ft (row), &minutes, &psi, &error))
    return check_answer_none (row, error);
  return ask_time ? minutes : psi;
}

static double
pressure_time (CheckRow *row)
{
  return pressure (row, TRUE);
}

static double
pressure_psi (CheckRow *row)
{
  return pressure (row, FALSE);
}

static const CheckAsk pressure_asks[] = {
  { "time", "min", pressure_time },
  { "pressure", "psi", pressure_psi },
  { NULL }
};

/* headspace, tomato yield, canner load */

static double
headspace (CheckRow *row)
{
  static const char * const products[] = {
    "standard_tomato_sauce", "tomato_juice", "tomato_ketchup", "spaghetti_sauce_without_meat", "tomato_paste_salsa",
    "whole_tomatoes_in_water", NULL,
  };

  return check_find_in (row, "headspace", check_one_of (row, "product", products, -1), "headspace", NULL, "in");
}

static const CheckAsk headspace_asks[] = {
  { "headspace", "in", headspace },
  { NULL }
};

static const char * const yields[] = {
  "thin_sauce", "thick_sauce", "tomato_juice", "crushed_tomatoes", "whole_tomatoes", NULL,
};

static double
yield_pounds (CheckRow *row)
{
  return check_find_in (row, "tomato_yield", check_one_of (row, "product", yields, -1), "per_quart", NULL, "lb");
}

static double
yield_bushel (CheckRow *row)
{
  return check_find_in (row, "tomato_yield", "bushel", "weight", NULL, "lb");
}

static double
yield_quarts (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double quarts = NAN;
  double pounds;

  if (check_has (row, "bushels") && check_has_base (row, "tomatoes", "lb kg"))
    return check_bad_input (row, "bushels");
  pounds = check_has (row, "bushels") ? check_number (row, "bushels") * yield_bushel (row)
                                      : check_from_base (check_base (row, "tomatoes", "lb kg"), "lb");
  if (!stead_tomato_quarts (check_limits (row), check_one_of (row, "product", yields, -1), pounds, &quarts, &error))
    return check_answer_none (row, error);
  return quarts;
}

static double
yield_tomatoes (CheckRow *row)
{
  if (check_has (row, "quarts") && check_has (row, "pints"))
    return check_bad_input (row, "pints");
  return yield_pounds (row) * (check_has (row, "pints") ? check_number (row, "pints") / 2
                                                        : check_number (row, "quarts"));
}

static const CheckAsk yield_asks[] = {
  { "lb_per_quart", "lb/qt", yield_pounds },
  { "bushel_weight", "lb", yield_bushel },
  { "yield", "qt", yield_quarts },
  { "tomatoes", "lb", yield_tomatoes },
  { NULL }
};

static double
load_pounds (CheckRow *row)
{
  static const char * const products[] = { "thin_sauce", "thick_sauce", "crushed_tomatoes", NULL };
  const SteadLimitFact facts[] = { { "jar", check_one_of (row, "jar", jars, -1), 0 }, { NULL } };

  return check_find_in (row, "canner_load", check_one_of (row, "product", products, -1), "tomatoes", facts, "lb");
}

static const CheckAsk load_asks[] = {
  { "tomatoes", "lb", load_pounds },
  { NULL }
};

const CheckTopic check_food_jar_topics[] = {
  { "acidified foods", "product acid_added pH aw refrigerated", acidified_asks },
  { "tomato acidification", "acid jar jars", amount_asks },
  { "boiling-water process time", "product pack jar altitude_ft altitude_m", process_asks },
  { "canning method", "product", method_asks },
  { "pressure process", "product canner jar altitude_ft altitude_m", pressure_asks },
  { "headspace", "product", headspace_asks },
  { "tomato yield", "product bushels tomatoes_lb tomatoes_kg quarts pints", yield_asks },
  { "canner load", "product jar", load_asks },
  { NULL }
};
