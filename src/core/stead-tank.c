/* stead-tank.c - how much water a tank holds, and how fast it is changed. */
#include "config.h"

#include "core/stead-tank.h"

#include <math.h>

#define M3_L 1000

double
stead_tank_box_l (double length_m,
                  double width_m,
                  double depth_m)
{
  if (!(length_m >= 0 && width_m >= 0 && depth_m >= 0))
    return NAN;
  return M3_L * length_m * width_m * depth_m;
}

double
stead_tank_round_l (double diameter_m,
                    double depth_m)
{
  return stead_tank_cone_l (diameter_m, depth_m, 0, 0);
}

double
stead_tank_cone_l (double diameter_m,
                   double wall_depth_m,
                   double cone_depth_m,
                   double outlet_m)
{
  double r = diameter_m / 2;
  double o = outlet_m / 2;

  if (!(r >= 0 && wall_depth_m >= 0 && cone_depth_m >= 0 && o >= 0 && o <= r))
    return NAN;
  return M3_L * G_PI * (r * r * wall_depth_m + (r * r + r * o + o * o) * cone_depth_m / 3);
}

double
stead_tank_round_depth_m (double volume_l,
                          double diameter_m)
{
  return volume_l >= 0 && diameter_m > 0 ? volume_l / stead_tank_round_l (diameter_m, 1) : NAN;
}

double
stead_tank_round_diameter_m (double volume_l,
                             double depth_m)
{
  return volume_l >= 0 && depth_m > 0 ? sqrt (volume_l / stead_tank_round_l (1, depth_m)) : NAN;
}

double
stead_tank_turnover_min (double volume_l,
                         double flow_l_min)
{
  return flow_l_min > 0 ? volume_l / flow_l_min : NAN;
}

double
stead_tank_flow_l_min (double volume_l,
                       double minutes)
{
  return minutes > 0 ? volume_l / minutes : NAN;
}
