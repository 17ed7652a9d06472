/* stead-recipe.c - what an ingredient, a recipe and a portion cost. */
#include "config.h"

#include "core/stead-recipe.h"
#include "core/stead-round.h"

#include <math.h>

double
stead_recipe_yield_frac (double usable,
                         double bought)
{
  return bought > 0 ? usable / bought : NAN;
}

double
stead_recipe_usable_cents (double bought_cents,
                           double yield_frac)
{
  return yield_frac > 0 ? bought_cents / yield_frac : NAN;
}

double
stead_recipe_to_buy (double usable_needed,
                     double yield_frac)
{
  return yield_frac > 0 ? usable_needed / yield_frac : NAN;
}

gint64
stead_recipe_portions_per_pack (double pack,
                                double portion)
{
  return portion > 0 ? (gint64) stead_round_down (pack / portion) : 0;
}

gint64
stead_recipe_packs (double portions,
                    double pack,
                    double portion)
{
  gint64 each = stead_recipe_portions_per_pack (pack, portion);

  return each > 0 ? (gint64) stead_round_up (portions / (double) each) : -1;
}

double
stead_recipe_line_cents (double            quantity,
                         double            unit_cents,
                         SteadLineRounding rounding)
{
  double line = quantity * unit_cents;

  return rounding == STEAD_LINES_ROUNDED ? stead_round_half_away (line) : line;
}

double
stead_recipe_total_cents (const double     *quantity,
                          const double     *unit_cents,
                          gsize             n,
                          SteadLineRounding rounding)
{
  double total = 0;

  g_return_val_if_fail ((quantity != NULL && unit_cents != NULL) || n == 0, NAN);
  for (gsize i = 0; i < n; i++)
    total += stead_recipe_line_cents (quantity[i], unit_cents[i], rounding);
  return total;
}

double
stead_recipe_scale (double recipe_portions,
                    double recipe_size,
                    double wanted_portions,
                    double wanted_size)
{
  double made = recipe_portions * recipe_size;

  return made > 0 ? wanted_portions * wanted_size / made : NAN;
}
