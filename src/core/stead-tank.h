/* stead-tank.h - how much water a tank holds, and how fast it is changed.
 *
 * Use the depth of the water, not the height of the wall: a round tank of 10 feet
 * and 4 feet holds 2,350 gallons to the brim and runs at 2,060.
 *
 * Lengths are meters, volumes litres.  Sources: a veterinary manual, formulae to
 * calculate tank volumes; UVI aquaponic system (turnover).
 */
#pragma once

#include "core/stead-us-units.h"

#include <glib.h>

G_BEGIN_DECLS

/* A cubic foot in litres. */
#define STEAD_TANK_CUFT_L (1000 * STEAD_CUBIC_FOOT_M3)

/**
 * stead_tank_box_l: length x width x depth of the water
 * stead_tank_round_l: pi r² x depth of the water
 *
 * Returns: litres; NAN if a length is below 0
 */
double stead_tank_box_l (double length_m,
                         double width_m,
                         double depth_m);
double stead_tank_round_l (double diameter_m,
                           double depth_m);

/**
 * stead_tank_cone_l:
 * @diameter_m: of the round wall
 * @wall_depth_m: depth of the water along the wall, 0 or more
 * @cone_depth_m: depth of the cone below the wall, 0 or more
 * @outlet_m: diameter at the tip, 0 for a point, at most @diameter_m
 *
 * A cylinder over a cone: pi r² x wall + pi/3 (r² + r o + o²) x cone, where o is
 * the radius of the outlet.
 *
 * Returns: litres; NAN for lengths that cannot be
 */
double stead_tank_cone_l (double diameter_m,
                          double wall_depth_m,
                          double cone_depth_m,
                          double outlet_m);

/**
 * stead_tank_round_depth_m: depth at which a round tank holds @volume_l
 * stead_tank_round_diameter_m: diameter at which it does
 *
 * Returns: meters; NAN without the other length
 */
double stead_tank_round_depth_m (double volume_l,
                                 double diameter_m);
double stead_tank_round_diameter_m (double volume_l,
                                    double depth_m);

/**
 * stead_tank_turnover_min: volume / flow
 * stead_tank_flow_l_min: flow that changes the volume in @minutes
 *
 * Returns: minutes, or litres a minute; NAN without a flow or a time
 */
double stead_tank_turnover_min (double volume_l,
                                double flow_l_min);
double stead_tank_flow_l_min (double volume_l,
                              double minutes);

G_END_DECLS
