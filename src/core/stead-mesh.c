/* stead-mesh.c - the mesh of a poultry run with a roof and an apron on the ground. */
#include "config.h"

#include "core/stead-count.h"
#include "core/stead-mesh.h"

#include <math.h>

double
stead_mesh_run_m2 (const SteadMeshRun *run)
{
  double round_m;

  g_return_val_if_fail (run != NULL, NAN);

  if (!(run->length_m > 0 && run->width_m > 0 && run->height_m > 0 && run->apron_m >= 0))
    return NAN;
  round_m = 2 * (run->length_m + run->width_m);
  return round_m * run->height_m + run->length_m * run->width_m
         + round_m * run->apron_m + 4 * run->apron_m * run->apron_m;
}

gint64
stead_mesh_rolls (double area_m2,
                  double waste_frac,
                  double roll_width_m,
                  double roll_length_m)
{
  /* Two lengths below 0 would make a roll. */
  return roll_width_m > 0
         ? stead_count_up (stead_with_waste (area_m2, waste_frac), roll_width_m * roll_length_m)
         : STEAD_COUNT_NONE;
}

gint64
stead_mesh_run_posts (const SteadMeshRun *run,
                      double              spacing_m)
{
  gint64 along;
  gint64 across;

  g_return_val_if_fail (run != NULL, STEAD_COUNT_NONE);

  along = stead_count_up (run->length_m, spacing_m);
  across = stead_count_up (run->width_m, spacing_m);
  return along > 0 && across > 0 ? 2 * (along + across) : STEAD_COUNT_NONE;
}
