/* stead-roof.h - roofs in one or two slopes, and the parts of a shed with an open front.
 *
 * Counts only.  Whether a roof carries snow and stands wind is not worked out here:
 * sizes are to be checked by a builder or the building office.
 * Sources: a metal roofing maker's guide to panel quantity; University of Florida
 * building booklet, laying out roofing; a trades-math study guide (rafters, sheets).
 * The slope length of the maker's guide (20.8 ft for a run of 20 ft at 4 in 12) is
 * wrong: it is 21.08 ft.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_roof_slope_m:
 * @run_m: horizontal, from wall to wall or to the ridge, above 0
 * @rise_m: how much higher the one end is, 0 or more
 * @overhang_m: horizontal, past the walls at both ends together, 0 or more
 *
 * Returns: (run + overhang) x sqrt (1 + (rise / run)²); NAN for another number
 */
double stead_roof_slope_m (double run_m,
                           double rise_m,
                           double overhang_m);

/**
 * stead_roof_panels:
 * @eave_m: length of the wall along the eave
 * @end_m: overhang at each end
 * @cover_m: width that one panel covers once laps are taken off
 * @slopes: 1 or 2
 *
 * One panel reaches from eave to ridge.
 *
 * Returns: how many: each slope rounded up; %STEAD_COUNT_NONE for another number
 */
gint64 stead_roof_panels (double eave_m,
                          double end_m,
                          double cover_m,
                          gint64 slopes);

/* A shed with one slope, open in front. */
typedef struct
{
  double wall_m;              /* long side */
  double depth_m;             /* front to rear */
  double front_m;             /* height of the eave in front, at least the rear one */
  double rear_m;
  double overhang_front_m;    /* horizontal */
  double overhang_rear_m;
  double end_m;               /* roof past each side wall */
  double cover_m;             /* width that a roof panel covers */
  double spacing_m;           /* of rafters, purlins and girts */
  double post_spacing_m;
  double post_depth_m;        /* in the ground */
  double girt_m;              /* length in which girts are sold */
  double sheet_length_m;      /* of a sheet of siding */
  double sheet_width_m;
  double waste_frac;          /* of girts and siding, 0 to 1 */
  double step_m;              /* in which posts, rafters and panels are sold */
  double housed_each_m2;      /* floor for one animal; 0: not asked */
} SteadShed;

typedef struct
{
  gint64 roof_panels;
  double roof_panel_m;        /* length to buy */
  gint64 rafters;
  double rafter_m;
  gint64 purlin_rows;
  gint64 front_posts;
  double front_post_m;
  gint64 rear_posts;
  double rear_post_m;
  gint64 girts;
  gint64 siding_sheets;
  gint64 capacity;            /* animals; 0 if not asked */
} SteadShedTakeoff;

/**
 * stead_shed_take_off:
 * @shed: the shed
 * @out: (out): what it takes
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Girts: rows on the rear wall at its height, and on both sides at the mean height.
 * Siding: the rear and both sides at the mean height.
 *
 * Returns: %TRUE; or %FALSE with @out left alone for a measure that cannot be
 */
gboolean stead_shed_take_off (const SteadShed   *shed,
                              SteadShedTakeoff  *out,
                              GError           **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
