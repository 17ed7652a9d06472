/* stead-food-label.h - what the law wants on the label of a food.
 *
 * The statements are the law's own words: they are English in every language.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_net_weight_text:
 * @weight_oz: net weight, avoirdupois ounces, above 0, under 4 lb
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * "Net Wt. 12 oz"; from 1 lb on "Net Wt. 24 oz (1 lb 8 oz)".
 * Source: 21 CFR 101.7(m) (101.105 in 2015).
 *
 * Returns: (transfer full) (nullable): the statement, or %NULL with @error set
 */
char *stead_net_weight_text (double   weight_oz,
                             GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_net_fluid_text:
 * @volume_floz: net volume, fluid ounces, above 0, under a gallon
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * "Net 12 fl oz"; from a pint on "Net 52 fl oz (1 qt 1 pt 4 oz)".
 *
 * Returns: (transfer full) (nullable): the statement, or %NULL with @error set
 */
char *stead_net_fluid_text (double   volume_floz,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_panel_cylinder:
 * @height: of the jar or can
 * @circumference: of it, in the same unit
 * @share: of the surface that counts, from the table: 0.4
 *
 * Returns: area of the main panel, that unit squared
 */
double stead_panel_cylinder (double height,
                             double circumference,
                             double share);

/**
 * stead_ingredient_order:
 * @weights: (array length=n): weight of each ingredient, in one unit
 * @out_order: (array length=n) (out caller-allocates): the places, heaviest
 *   first; equal ones stay in the order of the recipe
 *
 * Source: 21 CFR 101.4(a)(1).
 */
void stead_ingredient_order (const double *weights,
                             gsize         n,
                             gsize        *out_order);

G_END_DECLS
