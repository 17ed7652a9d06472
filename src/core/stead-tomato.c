/* stead-tomato.c - tomatoes from the bushel to the jar. */
#include "config.h"

#include "core/stead-tomato.h"

#define POUND_KG 0.45359237
#define QUART_L 0.946352946

double
stead_tomato_kg_per_l (SteadTomatoProduct product)
{
  switch (product)
    {
    case STEAD_TOMATO_THICK_SAUCE:
      return 6.5 * POUND_KG / QUART_L;
    case STEAD_TOMATO_JUICE:
      return 3.25 * POUND_KG / QUART_L;
    case STEAD_TOMATO_THIN_SAUCE:
    default:
      return 5 * POUND_KG / QUART_L;
    }
}

double
stead_tomato_product_l (SteadTomatoProduct product,
                        double             tomatoes_kg)
{
  return tomatoes_kg / stead_tomato_kg_per_l (product);
}

double
stead_tomato_needed_kg (SteadTomatoProduct product,
                        double             product_l)
{
  return product_l * stead_tomato_kg_per_l (product);
}
