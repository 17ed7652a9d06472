/* stead-mesh.h - the mesh of a poultry run with a roof and an apron on the ground.
 *
 * An apron of 18 to 24 in lies flat round the run against digging animals: keeper
 * practice, not a standard.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  double length_m;
  double width_m;
  double height_m;
  double apron_m;      /* width of the strip round the run; 0: none */
} SteadMeshRun;

/**
 * stead_mesh_run_m2:
 * Returns: walls, roof, and the apron with its corners: P h + L W + P a + 4 a²; doors
 *   are not taken off; NAN for a measure that cannot be
 */
double stead_mesh_run_m2 (const SteadMeshRun *run);

/**
 * stead_mesh_rolls:
 * @area_m2: to be covered
 * @waste_frac: overlaps and cuts, 0 to 1
 * @roll_width_m: of a roll
 * @roll_length_m: of a roll
 *
 * Returns: rolls by area, rounded up; %STEAD_COUNT_NONE for another number
 */
gint64 stead_mesh_rolls (double area_m2,
                         double waste_frac,
                         double roll_width_m,
                         double roll_length_m);

/**
 * stead_mesh_run_posts:
 * @run: the run
 * @spacing_m: most distance between posts
 *
 * Corners counted once; posts of the door come on top.
 *
 * Returns: over the four sides: side / spacing, rounded up; %STEAD_COUNT_NONE for
 *   another number
 */
gint64 stead_mesh_run_posts (const SteadMeshRun *run,
                             double              spacing_m);

G_END_DECLS
