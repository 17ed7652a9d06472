/* stead-tomato.h - tomatoes from the bushel to the jar.
 *
 * How much gets into jars.  How it is made safe is no part of this: bottled tomatoes
 * need a tested recipe with added acid.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_TOMATO_THIN_SAUCE,
  STEAD_TOMATO_THICK_SAUCE,
  STEAD_TOMATO_JUICE,
} SteadTomatoProduct;

/* A bushel of tomatoes, 53 pounds: National Center for Home Food Preservation,
 * Standard tomato sauce, Quantity. */
#define STEAD_TOMATO_BUSHEL_KG (53 * 0.45359237)

/**
 * stead_tomato_kg_per_l:
 * Pounds for a quart: thin sauce 5, thick 6.5, juice 3.25.  Averages: a canner load
 * differs a little.
 * Sources: National Center for Home Food Preservation, Standard tomato sauce,
 * Quantity; canning tomato juice yields, a home canning guide.
 *
 * Returns: kg of tomatoes for a liter
 */
double stead_tomato_kg_per_l (SteadTomatoProduct product);

/**
 * stead_tomato_product_l: liters that come of so many kg
 * stead_tomato_needed_kg: kg that so many liters need
 */
double stead_tomato_product_l (SteadTomatoProduct product,
                               double             tomatoes_kg);
double stead_tomato_needed_kg (SteadTomatoProduct product,
                               double             product_l);

G_END_DECLS
