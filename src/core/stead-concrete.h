/* stead-concrete.h - concrete round posts: holes, the job, bags.
 *
 * Round up once for the job.  Bags rounded for each hole are shown beside it, for
 * whoever mixes hole by hole.  Wear gloves and a dust mask: cement burns skin and
 * lungs.  Wood in concrete can rot at the ground line: slope the top so that it sheds
 * water.
 * Sources: a patio guide and a garden guide on concrete for posts (volume); a
 * construction article on what a bag covers and a construction reference (yields).
 */
#pragma once

#include "core/stead-us-units.h"

#include <glib.h>

G_BEGIN_DECLS

/* 12 in: the least depth of a footing, whatever the frost.  An article on IRC 2024
 * R403.1.4; the building office of the place decides. */
#define STEAD_FOOTING_LEAST_M (12 * STEAD_INCH_M)

typedef enum
{
  STEAD_HOLE_ROUND,    /* width is the diameter */
  STEAD_HOLE_SQUARE,   /* width is the side */
} SteadHoleShape;

typedef struct
{
  SteadHoleShape hole_shape;
  double         hole_width_m;
  SteadHoleShape post_shape;
  double         post_width_m;   /* as it really is: a 4x4 has 3.5 in; 0: no post in it */
  double         depth_m;        /* of the concrete */
} SteadPostHole;

/**
 * stead_post_hole_m3:
 * Returns: (area of the hole - area of the post) x depth, m³; NAN for a post that does
 *   not fit, or a number that cannot be
 */
double stead_post_hole_m3 (const SteadPostHole *hole);

/**
 * stead_concrete_bag_m3:
 * @bag_lb: weight of a bag of dry mix as it is sold: 40, 60 or 80 pounds
 *
 * Returns: what it makes: 0.30, 0.45 or 0.60 cubic feet, as m³; NAN for another bag
 */
double stead_concrete_bag_m3 (int bag_lb);

/**
 * stead_concrete_bags:
 * @volume_m3: of the job, waste included
 * @bag_lb: as above
 *
 * Returns: bags, rounded up once; %STEAD_COUNT_NONE for another number
 */
gint64 stead_concrete_bags (double volume_m3,
                            int    bag_lb);

/**
 * stead_concrete_bags_by_hole:
 * @hole_m3: of one hole, waste included
 * @holes: how many, 0 or more
 * @bag_lb: as above
 *
 * Returns: bags, rounded up for each hole; %STEAD_COUNT_NONE for another number
 */
gint64 stead_concrete_bags_by_hole (double hole_m3,
                                    gint64 holes,
                                    int    bag_lb);

/**
 * stead_footing_depth_m:
 * @frost_m: depth to which the ground freezes at the place, 0 or more
 *
 * Returns: the frost depth, but never less than 12 in
 */
double stead_footing_depth_m (double frost_m);

G_END_DECLS
