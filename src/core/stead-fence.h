/* stead-fence.h - what a fence takes: wire, posts, gates, braces, staples.
 *
 * A pen is closed: its sides follow each other round, and a post stands at every
 * corner.  Corners and gates cut the sides into runs; line posts divide a run into
 * equal bays.  Lengths are meters.
 *
 * Before any hole is dug, have buried lines marked (stead-dig.h).  Gates, heights and
 * wires that hold animals are a matter of local extension advice.
 * Sources: USDA-NRCS Tennessee specification CS-382 and Virginia job sheet 382(b),
 * woven wire; University of Missouri Extension, constructing wire fences; Raising
 * Sheep (handbook), fence corners; a fence post selection article after Missouri
 * Extension G1191.
 */
#pragma once

#include "core/stead-us-units.h"

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_FENCE_MOST_SIDES 200
#define STEAD_FENCE_MOST_GATES 200

/* A straight fence up to 200 ft is braced by a single span at its ends, a longer one
 * by a double.  University of Missouri Extension, corner and brace assemblies. */
#define STEAD_FENCE_SINGLE_SPAN_M (200 * STEAD_FOOT_M)

/* With posts this far apart or nearer (8 ft), the first line post or gate post from a
 * corner is the brace post; with wider bays a post is added there.  Common practice,
 * no source. */
#define STEAD_FENCE_BRACE_BAY_M (8 * STEAD_FOOT_M)

/* Ground rods of an electric fence: University of Maryland Extension, slides on
 * facilities for small goat farms. */
#define STEAD_FENCE_GROUND_RODS 3

/* A gate in a side. */
typedef struct
{
  gsize  side;       /* from 0 */
  double offset_m;   /* from the start of the side to the opening */
  double width_m;    /* of the opening */
} SteadFenceGate;

typedef struct
{
  const double         *sides_m;    /* (array length=n_sides): round the pen */
  gsize                 n_sides;    /* 3 or more */
  const SteadFenceGate *gates;      /* (array length=n_gates): in any order; %NULL for none */
  gsize                 n_gates;
  double                spacing_m;  /* most distance between line posts */
} SteadFencePlan;

typedef struct
{
  double perimeter_m;
  double net_wire_m;      /* without the gates */
  gint64 corner_posts;
  gint64 gate_posts;      /* besides those that are corners; two gates share one between them */
  gint64 line_posts;
  gint64 brace_posts;     /* extra ones, 2 a corner where bays are wide */
  gint64 brace_rails;     /* 2 a corner: one for each line of fence that meets there */
} SteadFenceTakeoff;

/**
 * stead_fence_take_off:
 * @plan: the pen
 * @out: (out): what it takes
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Line posts of a run: run / spacing, rounded up, less one.
 *
 * Returns: %TRUE; or %FALSE with @out left alone: a side or the spacing is not above
 *   0, a side is longer than all others together, or a gate does not fit its side or
 *   lies in another gate
 */
gboolean stead_fence_take_off (const SteadFencePlan  *plan,
                               SteadFenceTakeoff     *out,
                               GError               **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_fence_runs:
 * @plan: the pen
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * The stretches of wire between corners and gates, round the pen: what is cut from
 * rolls (stead-cut.h).
 *
 * Returns: (transfer full) (element-type double): meters; %NULL as for
 *   stead_fence_take_off()
 */
GArray *stead_fence_runs (const SteadFencePlan  *plan,
                          GError               **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_fence_line_posts:
 * @run_m: between two fixed posts, 0 or more
 * @spacing_m: most distance, above 0
 *
 * Returns: posts between the two; %STEAD_COUNT_NONE for another number
 */
gint64 stead_fence_line_posts (double run_m,
                               double spacing_m);

/**
 * stead_fence_brace_spans:
 * @length_m: of a straight fence, above 0
 *
 * Returns: spans of the assembly at each end: 1 or 2
 */
int stead_fence_brace_spans (double length_m);

/**
 * stead_fence_staples:
 * @line_wires: horizontal wires of the fabric, 0 or more
 * @line_posts: 0 or more
 * @fixed_posts: corner and gate posts, 0 or more
 *
 * Every wire on fixed posts, every other one on line posts (common practice, no
 * source).
 *
 * Returns: how many
 */
gint64 stead_fence_staples (gint64 line_wires,
                            gint64 line_posts,
                            gint64 fixed_posts);

/**
 * stead_post_length_m:
 * @above_m: above ground, 0 or more
 * @depth_m: in the ground, 0 or more
 * @spare_m: to cut off at the top, 0 or more; 6 in for a corner post
 *
 * Source: a fence post selection article after Missouri Extension G1191.
 *
 * Returns: the sum; NAN for another number
 */
double stead_post_length_m (double above_m,
                            double depth_m,
                            double spare_m);

/**
 * stead_post_depth_m:
 * @rule_m: depth by the rule that is used
 * @frost_m: depth to which the ground freezes at the place
 *
 * Returns: the deeper of the two
 */
double stead_post_depth_m (double rule_m,
                           double frost_m);

/**
 * stead_post_hole_width_m: three times the post
 * stead_post_hole_depth_m: a third of the height above ground, and 6 in for gravel
 *
 * Source: a garden guide on concrete for fence posts.
 */
double stead_post_hole_width_m (double post_width_m);
double stead_post_hole_depth_m (double above_m);

G_END_DECLS
