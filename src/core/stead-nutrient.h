/* stead-nutrient.h - fertilizer for a concentration, and thinning a stock.
 *
 * A ppm is a mg of the nutrient in a liter.  An injector of 1:100 is taken as
 * growers do: one part of stock gives 100 parts of feed.
 *
 * Some fertilizers burn skin and eyes: gloves, goggles, an adult.  Too strong a
 * feed burns roots; measure the feed before it runs.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_nutrient_product_g:
 * @target_ppm: mg/L of the nutrient wanted in the water that reaches the plants
 * @nutrient_frac: share of it in the product: 0.20 for nitrogen of a 20-10-20
 * @water_l: liters that reach the plants: for an injector, liters of stock x ratio
 *
 * Source: University of Massachusetts, Fertilizer calculations for greenhouse
 * crops: ounces = ppm x gallons x 3.785 / (share x 28,350).
 *
 * Returns: grams of the product; NAN unless the share is above 0 to 1
 */
double stead_nutrient_product_g (double target_ppm,
                                 double nutrient_frac,
                                 double water_l);

/**
 * stead_nutrient_ppm:
 * @product_g: grams of the product in @water_l
 * @nutrient_frac: share of the nutrient in it, 0 to 1
 * @water_l: liters that reach the plants, above 0
 *
 * Source: Texas A&M, nutrition and fertility calculations, sections I and II.
 *
 * Returns: mg/L of the nutrient; NAN outside these ranges
 */
double stead_nutrient_ppm (double product_g,
                           double nutrient_frac,
                           double water_l);

/**
 * stead_nutrient_stock_l:
 * @stock_ppm: strength of the stock, not below @final_ppm, above 0
 * @final_ppm: strength wanted, in the same unit
 * @final_l: how much is wanted
 *
 * C1 V1 = C2 V2.
 * Source: How to mix a concentrate for an injector, a grower's newsletter.
 *
 * Returns: stock to be filled up with water; NAN if it is weaker than what is wanted
 */
double stead_nutrient_stock_l (double stock_ppm,
                               double final_ppm,
                               double final_l);

G_END_DECLS
