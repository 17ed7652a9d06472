/* stead-roof.c - roofs in one or two slopes, and the parts of a shed with an open front. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-count.h"
#include "core/stead-roof.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A measure of a shed lies between these, or is a slip of the pen. */
#define SHORTEST_M 1e-3
#define LONGEST_M 1e4

double
stead_roof_slope_m (double run_m,
                    double rise_m,
                    double overhang_m)
{
  if (!(run_m > 0 && rise_m >= 0 && overhang_m >= 0))
    return NAN;
  return (run_m + overhang_m) * hypot (1, rise_m / run_m);
}

gint64
stead_roof_panels (double eave_m,
                   double end_m,
                   double cover_m,
                   gint64 slopes)
{
  gint64 each;

  if (!(eave_m > 0 && end_m >= 0) || slopes < 1 || slopes > 2)
    return STEAD_COUNT_NONE;
  each = stead_count_up (eave_m + 2 * end_m, cover_m);
  return each == STEAD_COUNT_NONE ? STEAD_COUNT_NONE : each * slopes;
}

static double
mean_height_m (const SteadShed *shed)
{
  return (shed->front_m + shed->rear_m) / 2;
}

/* Lengths of horizontal boards that carry the siding, end to end. */
static gint64
count_girts (const SteadShed *shed)
{
  double rear_rows = (double) stead_count_members (shed->rear_m, shed->spacing_m);
  double side_rows = (double) stead_count_members (mean_height_m (shed), shed->spacing_m);

  if (rear_rows < 0 || side_rows < 0)
    return STEAD_COUNT_NONE;
  return stead_count_up (stead_with_waste (rear_rows * shed->wall_m + 2 * side_rows * shed->depth_m,
                                           shed->waste_frac), shed->girt_m);
}

static gint64
count_siding (const SteadShed *shed)
{
  double area_m2 = shed->wall_m * shed->rear_m + 2 * shed->depth_m * mean_height_m (shed);

  return stead_count_up (stead_with_waste (area_m2, shed->waste_frac),
                         shed->sheet_length_m * shed->sheet_width_m);
}

/* Each of them between @least and the longest that a school builds. */
static gboolean
are_lengths (const double *lengths_m,
             gsize         n,
             double        least_m)
{
  for (gsize i = 0; i < n; i++)
    if (!(lengths_m[i] >= least_m && lengths_m[i] <= LONGEST_M))
      return FALSE;
  return TRUE;
}

static gboolean
is_shed (const SteadShed *shed)
{
  const double sizes_m[] = { shed->wall_m, shed->depth_m, shed->front_m, shed->rear_m, shed->cover_m,
                             shed->spacing_m, shed->post_spacing_m, shed->girt_m, shed->sheet_length_m,
                             shed->sheet_width_m, shed->step_m };
  const double maybe_m[] = { shed->overhang_front_m, shed->overhang_rear_m, shed->end_m, shed->post_depth_m };

  return are_lengths (sizes_m, G_N_ELEMENTS (sizes_m), SHORTEST_M)
         && are_lengths (maybe_m, G_N_ELEMENTS (maybe_m), 0)
         && shed->front_m >= shed->rear_m && shed->housed_each_m2 >= 0;
}

static gboolean
is_whole (const SteadShedTakeoff *parts)
{
  const gint64 counts[] = { parts->roof_panels, parts->rafters, parts->purlin_rows, parts->front_posts,
                            parts->girts, parts->siding_sheets, parts->capacity };

  for (gsize i = 0; i < G_N_ELEMENTS (counts); i++)
    if (counts[i] == STEAD_COUNT_NONE)
      return FALSE;
  return isfinite (parts->rafter_m) && isfinite (parts->front_post_m) && isfinite (parts->rear_post_m);
}

gboolean
stead_shed_take_off (const SteadShed   *shed,
                     SteadShedTakeoff  *out,
                     GError           **error)
{
  SteadShedTakeoff found;
  double slope_m;

  g_return_val_if_fail (shed != NULL && out != NULL, FALSE);

  slope_m = stead_roof_slope_m (shed->depth_m, shed->front_m - shed->rear_m,
                                shed->overhang_front_m + shed->overhang_rear_m);
  found = (SteadShedTakeoff) {
    .roof_panels = stead_roof_panels (shed->wall_m, shed->end_m, shed->cover_m, 1),
    .roof_panel_m = stead_step_up (slope_m, shed->step_m),
    .rafters = stead_count_members (shed->wall_m, shed->spacing_m),
    .rafter_m = stead_step_up (slope_m, shed->step_m),
    .purlin_rows = stead_count_members (slope_m, shed->spacing_m),
    .front_posts = stead_count_members (shed->wall_m, shed->post_spacing_m),
    .front_post_m = stead_step_up (shed->front_m + shed->post_depth_m, shed->step_m),
    .rear_posts = stead_count_members (shed->wall_m, shed->post_spacing_m),
    .rear_post_m = stead_step_up (shed->rear_m + shed->post_depth_m, shed->step_m),
    .girts = count_girts (shed),
    .siding_sheets = count_siding (shed),
    .capacity = shed->housed_each_m2 > 0
                ? stead_count_down (shed->wall_m * shed->depth_m, shed->housed_each_m2) : 0,
  };
  if (!is_shed (shed) || !is_whole (&found))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("A shed needs lengths above 0, a front at least as high as its rear, and spacings "
                             "and stock lengths above 0. Check its measures."));
      return FALSE;
    }
  *out = found;
  return TRUE;
}
