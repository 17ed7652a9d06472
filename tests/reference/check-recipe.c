/* check-recipe.c - the topics on ingredients, recipes and the cost of food. */
#include "check.h"

#include "core/stead-goods.h"
#include "core/stead-price.h"
#include "core/stead-recipe.h"

#include <math.h>

/* recipe */

static double
unit_price (CheckRow *row)
{
  if (check_has (row, "as_bought_unit_usd"))
    return check_cents (row, "as_bought_unit_usd");
  /* What all of it cost, for one: the same division as a yield's. */
  return stead_recipe_yield_frac (check_cents (row, "as_bought_total_usd"),
                                  check_number (row, "as_bought_qty"));
}

static double
yield_of (CheckRow *row)
{
  double bought;

  if (check_has (row, "yield_pct"))
    return check_frac (row, "yield_pct");
  if (!check_has (row, "usable_qty") && !check_has (row, "trim_qty"))
    return 1;
  bought = check_number (row, "as_bought_qty");
  return stead_recipe_yield_frac (check_has (row, "usable_qty")
                                  ? check_number (row, "usable_qty")
                                  : bought - check_number (row, "trim_qty"), bought);
}

static double
yield_pct (CheckRow *row)
{
  return 100 * yield_of (row);
}

static double
usable_qty (CheckRow *row)
{
  return check_number (row, "as_bought_qty") * yield_of (row);
}

static double
usable_unit_cost (CheckRow *row)
{
  return stead_recipe_usable_cents (unit_price (row), yield_of (row));
}

static double
ingredient_cost (CheckRow *row)
{
  return stead_recipe_line_cents (check_number (row, "recipe_qty"), usable_unit_cost (row),
                                  STEAD_LINES_UNROUNDED);
}

static double
as_bought_needed (CheckRow *row)
{
  return stead_recipe_to_buy (check_number (row, "usable_needed_qty"), yield_of (row));
}

static double
portions_per_pack (CheckRow *row)
{
  return (double) stead_recipe_portions_per_pack (check_number (row, "pack_qty"),
                                                  check_number (row, "portion_qty"));
}

static double
packs_needed (CheckRow *row)
{
  gint64 packs = stead_recipe_packs (check_number (row, "portions"), check_number (row, "pack_qty"),
                                     check_number (row, "portion_qty"));

  return packs >= 0 ? (double) packs : NAN;
}

static const CheckAsk recipe_asks[] = {
  { "unit_price", "USD/unit", unit_price },
  { "yield_pct", "%", yield_pct },
  { "usable_qty", "units", usable_qty },
  { "usable_unit_cost", "USD/unit", usable_unit_cost },
  { "ingredient_cost", "USD", ingredient_cost },
  { "as_bought_needed", "units", as_bought_needed },
  { "portions_per_pack", "portions", portions_per_pack },
  { "packs_needed", "packs", packs_needed },
  { NULL }
};

/* recipe total */

static SteadLineRounding
line_rounding (CheckRow *row)
{
  static const char * const words[] = { "cent", "none", NULL };

  return (SteadLineRounding) check_word (row, "line_rounding", words, STEAD_LINES_ROUNDED);
}

static double
total_line (CheckRow *row)
{
  gsize n = 0;
  const double *quantities = check_list (row, "quantities", &n);
  const double *costs = check_cents_list (row, "unit_costs_usd", &n);
  gsize item = check_item (row, n);

  return stead_recipe_line_cents (quantities[item], costs[item], line_rounding (row));
}

static double
total_sum (CheckRow *row)
{
  gsize n = 0;
  const double *quantities = check_list (row, "quantities", &n);
  const double *costs = check_cents_list (row, "unit_costs_usd", &n);

  return stead_recipe_total_cents (quantities, costs, n, line_rounding (row));
}

static double
total_portion (CheckRow *row)
{
  return total_sum (row) / check_number (row, "portions");
}

static const CheckAsk total_asks[] = {
  { "line", "USD", total_line },
  { "total", "USD", total_sum },
  { "portion", "USD", total_portion },
  { NULL }
};

/* recipe scale */

static double
scale_factor (CheckRow *row)
{
  return stead_recipe_scale (check_number (row, "recipe_portions"),
                             check_number_or (row, "recipe_size", 1),
                             check_number (row, "wanted_portions"),
                             check_number_or (row, "wanted_size", 1));
}

static const CheckAsk scale_asks[] = {
  { "factor", "ratio", scale_factor },
  { NULL }
};

/* food cost */

static double
food_price (CheckRow *row)
{
  return stead_price_from_margin (check_cents (row, "portion_cost_usd"),
                                  1 - check_frac (row, "food_cost_target_pct"));
}

static double
food_used (CheckRow *row)
{
  SteadGoods goods = { .begin_materials = check_cents (row, "inventory_begin_usd"),
                       .purchases = check_cents (row, "purchases_usd"),
                       .end_materials = check_cents (row, "inventory_end_usd") };
  SteadGoodsFigures figures;

  stead_goods_figures (&goods, &figures);
  return figures.materials_used;
}

static double
food_cost_pct (CheckRow *row)
{
  return 100 * (1 - stead_margin_frac (food_used (row), check_cents (row, "sales_usd")));
}

static const CheckAsk food_asks[] = {
  { "price", "USD", food_price },
  { "used", "USD", food_used },
  { "cost_pct", "%", food_cost_pct },
  { NULL }
};

const CheckTopic check_recipe_topics[] = {
  { "recipe",
    "as_bought_qty as_bought_total_usd as_bought_unit_usd yield_pct usable_qty trim_qty "
    "usable_needed_qty recipe_qty pack_qty portion_qty portions", recipe_asks },
  { "recipe total", "quantities unit_costs_usd portions line_rounding item", total_asks },
  { "recipe scale", "recipe_portions wanted_portions recipe_size wanted_size", scale_asks },
  { "food cost",
    "portion_cost_usd food_cost_target_pct inventory_begin_usd purchases_usd inventory_end_usd "
    "sales_usd", food_asks },
  { NULL }
};
