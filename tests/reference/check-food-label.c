/* check-food-label.c - the topics on labels. */
#include "check-food.h"

#include "core/stead-food-label.h"
#include "core/stead-quantity.h"

#include <math.h>

/* net quantity, panel area */

static double
in_unit (double      base,
         const char *unit)
{
  return stead_quantity_from_base (base, stead_unit_by_id (unit));
}

static double
net_statement (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *text = NULL;

  if (check_has (row, "volume_qt"))
    text = stead_net_fluid_text (32 * check_number (row, "volume_qt"), &error);
  else if (check_has (row, "weight_g"))
    text = stead_net_weight_text (in_unit (check_number (row, "weight_g") / 1000, "oz"), &error);
  else
    text = stead_net_weight_text (16 * check_number (row, "weight_lb"), &error);
  return text != NULL ? check_answer_word (row, text) : check_answer_none (row, error);
}

static double
type_row (CheckRow   *row,
          const char *measure,
          const char *unit)
{
  const SteadLimitFact facts[] = { { "panel_in2", NULL, check_number (row, "panel_area_in2") }, { NULL } };

  return check_find_in (row, "label_type", "net_quantity", measure, facts, unit);
}

static double
type_height (CheckRow *row)
{
  return type_row (row, "type_height", "in");
}

static double
bottom_share (CheckRow *row)
{
  return type_row (row, "bottom_share", "pct");
}

static const CheckAsk net_asks[] = {
  { "statement", "text", net_statement },
  { "min_type_height", "in", type_height },
  { "bottom_share", "pct", bottom_share },
  { NULL }
};

static double
panel_area (CheckRow *row)
{
  static const char * const shapes[] = { "cylinder", NULL };
  double share = check_find_in (row, "label_panel", check_one_of (row, "shape", shapes, -1), "share", NULL, "pct");

  return stead_panel_cylinder (check_number (row, "height_in"), check_number (row, "circumference_in"), share / 100);
}

static const CheckAsk panel_asks[] = {
  { "panel_area", "in2", panel_area },
  { NULL }
};

/* ingredient order */

static double
order (CheckRow *row)
{
  g_auto(GStrv) names = g_strsplit (check_text (row, "ingredients"), "|", -1);
  gsize n = g_strv_length (names);
  const double *weights = check_list (row, "weights_g", &n);
  g_autofree gsize *places = g_new0 (gsize, n);
  g_autoptr(GString) text = g_string_new (NULL);

  if (g_strv_length (names) != n)
    return check_bad_input (row, "ingredients");
  stead_ingredient_order (weights, n, places);
  for (gsize i = 0; i < n; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "|" : "", names[places[i]]);
  return check_answer_word (row, text->str);
}

static double
placement (CheckRow *row)
{
  double most = check_find_in (row, "label_order", "ingredient", "clause_share", NULL, "pct");

  return check_answer_word (row, stead_limit_compare (check_number (row, "share_pct"), most) <= 0
                                 ? "may_move_to_clause" : "must_stay_in_order");
}

static const CheckAsk order_asks[] = {
  { "order", "text", order },
  { "placement", "text", placement },
  { NULL }
};

/* reference amount */

static double
amount (CheckRow   *row,
        const char *unit)
{
  static const char * const foods[] = {
    "egg", "tomato_sauce_or_puree", "spaghetti_sauce", "catsup", "salsa_or_barbecue_sauce",
    "scrambled_eggs_or_omelet", "hot_sauce", "egg_salad", NULL,
  };

  return check_find_in (row, "reference_amount", check_one_of (row, "food", foods, -1), "amount", NULL, unit);
}

static double
amount_g (CheckRow *row)
{
  return amount (row, "g");
}

static double
amount_tbsp (CheckRow *row)
{
  return amount (row, "tbsp");
}

static double
amount_tsp (CheckRow *row)
{
  return amount (row, "tsp");
}

static const CheckAsk amount_asks[] = {
  { "amount_g", "g", amount_g },
  { "amount_tbsp", "tbsp", amount_tbsp },
  { "amount_tsp", "tsp", amount_tsp },
  { NULL }
};

/* nutrition facts exemption */

static double
exemption (CheckRow *row)
{
  static const char * const types[] = { "retailer", "low_volume", NULL };
  const char *type = check_one_of (row, "type", types, -1);
  gboolean retailer = g_str_equal (type, "retailer");
  SteadLimitFact facts[5] = { { NULL } };
  gsize n = 0;

  check_need (row, retailer ? "total_sales_usd" : "employees units");
  facts[n++] = (SteadLimitFact) { "importer", check_yes (row, "importer", 0) ? "yes" : "no", 0 };
  for (const char * const *name = (const char * const []) { "total_sales_usd", "employees", "units", NULL };
       *name != NULL; name++)
    if (check_has (row, *name))
      facts[n++] = (SteadLimitFact) { *name, NULL, check_number (row, *name) };
  return check_find_word (row, "nutrition_exemption", type, "verdict", facts);
}

static const CheckAsk exemption_asks[] = {
  { "verdict", "text", exemption },
  { NULL }
};

const CheckTopic check_food_label_topics[] = {
  { "net quantity", "weight_lb weight_g volume_qt panel_area_in2", net_asks },
  { "panel area", "shape height_in circumference_in", panel_asks },
  { "ingredient order", "ingredients weights_g share_pct", order_asks },
  { "reference amount", "food", amount_asks },
  { "nutrition facts exemption", "type total_sales_usd employees units importer", exemption_asks },
  { NULL }
};
