/* stead-fill.c - gravel and bedding: what is spread over a floor. */
#include "config.h"

#include "core/stead-fill.h"

#include <math.h>

static double
product (double a,
         double b)
{
  return a >= 0 && b >= 0 ? a * b : NAN;
}

double
stead_fill_m3 (double area_m2,
               double depth_m)
{
  return product (area_m2, depth_m);
}

double
stead_fill_kg (double volume_m3,
               double kg_m3)
{
  return product (volume_m3, kg_m3);
}
