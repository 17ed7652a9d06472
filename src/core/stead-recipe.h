/* stead-recipe.h - what an ingredient, a recipe and a portion cost.
 *
 * Yield is usable / bought.  A need is rounded up to whole packs, portions that
 * a pack gives are rounded down.  Spices, salt, cooking times and pan depth do
 * not scale straight, and a bottled acidified sauce must never be changed from
 * its reviewed formula.
 * Sources: Bakery and Business Math, chapter 25 (yields); foodservice management
 * text supplement, p. 597 (lines rounded, then added); culinary class slides.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_recipe_yield_frac: usable / bought; NAN without anything bought
 * stead_recipe_usable_cents: cost of one usable unit: bought cost / yield; NAN without yield
 * stead_recipe_to_buy: need / yield; NAN without yield
 */
double stead_recipe_yield_frac (double usable,
                                double bought);
double stead_recipe_usable_cents (double bought_cents,
                                  double yield_frac);
double stead_recipe_to_buy (double usable_needed,
                            double yield_frac);

/**
 * stead_recipe_portions_per_pack:
 * Returns: whole portions that one pack gives; 0 for a portion larger than a pack
 */
gint64 stead_recipe_portions_per_pack (double pack,
                                       double portion);

/**
 * stead_recipe_packs:
 * Returns: whole packs to buy for @portions; -1 if a pack gives no portion
 */
gint64 stead_recipe_packs (double portions,
                           double pack,
                           double portion);

typedef enum
{
  STEAD_LINES_ROUNDED,    /* each line to the cent, then added: what a sheet shows */
  STEAD_LINES_UNROUNDED,
} SteadLineRounding;

/**
 * stead_recipe_line_cents:
 * Returns: quantity x unit cost, by the rule
 */
double stead_recipe_line_cents (double            quantity,
                                double            unit_cents,
                                SteadLineRounding rounding);

/**
 * stead_recipe_total_cents:
 * @quantity: (array length=n): by line
 * @unit_cents: (array length=n): by line
 *
 * Returns: the sum of the lines
 */
double stead_recipe_total_cents (const double     *quantity,
                                 const double     *unit_cents,
                                 gsize             n,
                                 SteadLineRounding rounding);

/**
 * stead_recipe_scale:
 * Returns: wanted portions x size / (recipe's portions x size); NAN for an empty recipe
 */
double stead_recipe_scale (double recipe_portions,
                           double recipe_size,
                           double wanted_portions,
                           double wanted_size);

G_END_DECLS
