/* check-food-kind.c - the topics on what a food is, who eats it, and where it comes from. */
#include "check-food.h"

#include "core/stead-food-kind.h"

#include <math.h>

/* pH-aw interaction, TCS by definition */

static double
interaction (CheckRow *row)
{
  static const char * const tables[] = { "A", "B", NULL };
  static const char * const words[] = { "non_TCS", "PA" };
  gboolean heated = check_word (row, "table", tables, -1) == 0;
  g_autoptr(GError) error = NULL;
  SteadTcsClass class;

  check_need (row, "aw pH");
  if (!stead_tcs_class (check_limits (row), heated, check_number (row, "aw"), check_number (row, "pH"), &class, &error))
    return check_answer_none (row, error);
  return check_answer_word (row, words[class]);
}

static const CheckAsk interaction_asks[] = {
  { "class", "text", interaction },
  { NULL }
};

static double
named (CheckRow *row)
{
  static const char * const foods[] = {
    "cut_tomatoes", "garlic_in_oil", "hard_cooked_egg_air_cooled", "cut_leafy_greens", "cut_melons", "sprouts",
    "raw_animal_food", "cooked_animal_food", "cooked_plant_food", "pasteurized_shell_egg",
    "unopened_sterile_container", NULL,
  };
  const SteadLimitFact facts[] = { { "acidified", check_yes (row, "acidified", 0) ? "yes" : "no", 0 }, { NULL } };

  return check_find_word (row, "tcs_name", check_one_of (row, "food", foods, -1), "class", facts);
}

static const CheckAsk named_asks[] = {
  { "class", "text", named },
  { NULL }
};

/* highly susceptible population, raw egg use */

static double
susceptible (CheckRow *row)
{
  static const char * const places[] = { "preschool", "elementary_school", "middle_school", NULL };
  static const char * const foods[] = { "other", "juice", NULL };
  const SteadLimitFact facts[] = {
    { "food", check_one_of (row, "food", foods, 0), 0 },
    { "youngest_age_y", NULL, check_number (row, "youngest_age_y") },
    { NULL },
  };

  return check_find_word (row, "highly_susceptible", check_one_of (row, "place", places, -1), "is_hsp", facts);
}

static const CheckAsk susceptible_asks[] = {
  { "is_HSP", "text", susceptible },
  { NULL }
};

static double
raw_egg (CheckRow *row)
{
  static const char * const populations[] = { "general", "HSP", NULL };
  static const char * const cookings[] = { "none", "undercooked", "full", "baked", NULL };
  static const char * const times[] = { "ahead", "just_before_baking", NULL };
  const SteadLimitFact facts[] = {
    { "cooking", check_one_of (row, "cooking", cookings, -1), 0 },
    { "combined", check_one_of (row, "combined", times, 0), 0 },
    { "haccp_plan", check_yes (row, "haccp_plan", 0) ? "yes" : "no", 0 },
    { "eggs_combined", NULL, check_number (row, "eggs_combined") },
    { "servings", NULL, check_number (row, "servings") },
    { NULL },
  };

  return check_find_word (row, "raw_egg_use", check_one_of (row, "population", populations, -1), "action", facts);
}

static const CheckAsk raw_egg_asks[] = {
  { "action", "text", raw_egg },
  { NULL }
};

/* major allergens, consumer advisory */

static double
label_day (CheckRow *row)
{
  const char *text;
  double day = 0;

  check_day (row, "label_date");
  for (text = check_text (row, "label_date"); *text != '\0'; text++)
    if (g_ascii_isdigit (*text))
      day = 10 * day + (*text - '0');
  return day;
}

static double
allergen_count (CheckRow *row)
{
  static const char * const foods[] = {
    "milk", "egg", "fish", "crustacean_shellfish", "tree_nuts", "wheat", "peanuts", "soybeans", "sesame",
  };
  const SteadLimitFact facts[] = { { "label_day", NULL, label_day (row) }, { NULL } };
  double count = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (foods); i++)
    count += stead_limit_table_find (check_limits (row), "allergen", foods[i], "declare", facts, NULL) != NULL;
  return count;
}

static double
allergen_declare (CheckRow *row)
{
  static const char * const foods[] = {
    "milk", "egg", "fish", "crustacean_shellfish", "tree_nuts", "wheat", "peanuts", "soybeans", "sesame",
    "highly_refined_soybean_oil", NULL,
  };
  const SteadLimitFact facts[] = { { "label_day", NULL, label_day (row) }, { NULL } };
  const char *food = check_one_of (row, "food", foods, -1);
  const SteadLimit *limit = stead_limit_table_find (check_limits (row), "allergen",
                                                    g_str_has_suffix (food, "_oil") ? "highly_refined_oil" : food,
                                                    "declare", facts, NULL);

  return check_answer_word (row, limit != NULL ? limit->word : "no");
}

static double
allergen_notice (CheckRow *row)
{
  if (check_yes (row, "packaged", 1))
    return NAN;
  return check_find_word (row, "allergen_notice", "unpackaged", "notice", NULL);
}

static const CheckAsk allergen_asks[] = {
  { "count", "count", allergen_count },
  { "must_declare", "text", allergen_declare },
  { "notice", "text", allergen_notice },
  { NULL }
};

static double
advisory (CheckRow *row)
{
  static const char * const foods[] = { "egg", "ground_meat", "fish", "meat", NULL };
  static const char * const cookings[] = { "undercooked", "full", NULL };
  static const char * const menus[] = { "general", "childrens", NULL };
  const SteadLimitFact facts[] = {
    { "cooking", check_one_of (row, "cooking", cookings, -1), 0 },
    { "menu", check_one_of (row, "menu", menus, 0), 0 },
    { NULL },
  };

  return check_find_word (row, "advisory", check_one_of (row, "food", foods, -1), "action", facts);
}

static const CheckAsk advisory_asks[] = {
  { "action", "text", advisory },
  { NULL }
};

/* food source, variance, temporary food establishment, food storage */

static double
source_verdict (CheckRow *row)
{
  static const char * const packages[] = { "sealed_jar", NULL };
  static const char * const makers[] = { "private_home", "processing_plant", NULL };
  const SteadLimitFact facts[] = { { "made_in", check_one_of (row, "made_in", makers, -1), 0 }, { NULL } };

  return check_find_word (row, "food_source", check_one_of (row, "package", packages, -1), "verdict", facts);
}

static const CheckAsk source_asks[] = {
  { "verdict", "text", source_verdict },
  { NULL }
};

static double
variance (CheckRow *row)
{
  static const char * const processes[] = { "acid_added_to_make_non_TCS", NULL };
  static const char * const places[] = { "retail_kitchen", NULL };
  const SteadLimitFact facts[] = { { "place", check_one_of (row, "place", places, -1), 0 }, { NULL } };

  return check_find_word (row, "variance", check_one_of (row, "process", processes, -1), "needed", facts);
}

static const CheckAsk variance_asks[] = {
  { "variance_needed", "text", variance },
  { NULL }
};

static double
event_days (CheckRow *row)
{
  return check_find_in (row, "event", "temporary_food_establishment", "days_in_a_row", NULL, "d");
}

static const CheckAsk event_asks[] = {
  { "max_days", "d", event_days },
  { NULL }
};

static double
store_height (CheckRow *row)
{
  static const char * const places[] = { "dry_store", NULL };

  return check_find_in (row, "store", check_one_of (row, "place", places, -1), "height", NULL, "in");
}

static const CheckAsk store_asks[] = {
  { "min_height", "in", store_height },
  { NULL }
};

const CheckTopic check_food_kind_topics[] = {
  { "pH-aw interaction", "table aw pH", interaction_asks },
  { "TCS by definition", "food acidified", named_asks },
  { "highly susceptible population", "place youngest_age_y food", susceptible_asks },
  { "raw egg use", "population eggs_combined cooking servings combined haccp_plan", raw_egg_asks },
  { "major allergens", "food label_date packaged edition", allergen_asks },
  { "consumer advisory", "food cooking menu", advisory_asks },
  { "food source", "package made_in", source_asks },
  { "variance", "process place", variance_asks },
  { "temporary food establishment", "", event_asks },
  { "food storage", "place", store_asks },
  { NULL }
};
