/* check-fence.c - the topics on fences: take-off, posts, concrete. */
#include "check.h"

#include "core/stead-concrete.h"
#include "core/stead-count.h"
#include "core/stead-fence.h"
#include "core/stead-outline.h"

#include <math.h>

/* Liters of check_from_base() in a m³. */
#define LITERS 1000

static double
counted (gint64 count)
{
  return count == STEAD_COUNT_NONE ? NAN : (double) count;
}

static double
feet (double length_m)
{
  return check_from_base (length_m, "ft");
}

static double
cubic_feet (double volume_m3)
{
  return check_from_base (volume_m3 * LITERS, "cuft");
}

/* A weight of a bag that the list of yields has. */
static int
bag_of (CheckRow *row)
{
  static const char * const bags[] = { "40", "60", "80", NULL };
  static const int pounds[] = { 40, 60, 80 };

  return pounds[check_word (row, "bag_lb", bags, -1)];
}

/* fence takeoff */

static SteadFenceGate *
gates_of (CheckRow *row,
          gsize    *n)
{
  const double *sides;
  g_autofree double *offsets_m = NULL;
  g_autofree double *widths_m = NULL;
  SteadFenceGate *gates;

  *n = 0;
  if (!check_has (row, "gate_side") && !check_has (row, "gate_offset_ft") && !check_has (row, "gate_width_ft"))
    return NULL;
  sides = check_list (row, "gate_side", n);
  offsets_m = check_base_list (row, "gate_offset", "ft", n);
  widths_m = check_base_list (row, "gate_width", "ft", n);
  gates = g_new0 (SteadFenceGate, *n);
  for (gsize i = 0; i < *n; i++)
    {
      if (!(sides[i] >= 1 && sides[i] == floor (sides[i])))
        check_bad_input (row, "gate_side");
      else
        gates[i] = (SteadFenceGate) { (gsize) sides[i] - 1, offsets_m[i], widths_m[i] };
    }
  return gates;
}

static gboolean
take_off (CheckRow          *row,
          SteadFenceTakeoff *out)
{
  gsize n_sides = 0;
  gsize n_gates = 0;
  g_autofree double *sides_m = check_base_list (row, "sides", "ft", &n_sides);
  g_autofree SteadFenceGate *gates = gates_of (row, &n_gates);
  g_autoptr(GError) error = NULL;
  /* The way round and its corners need no line posts. */
  double spacing_m = check_has (row, "spacing_ft") ? check_base (row, "spacing", "ft") : 1;
  SteadFencePlan plan = { sides_m, n_sides, gates, n_gates, spacing_m };

  if (stead_fence_take_off (&plan, out, &error))
    return TRUE;
  check_answer_none (row, error);
  return FALSE;
}

#define FENCE_ASK(name, value)                                       \
  static double name (CheckRow *row)                                 \
  {                                                                  \
    SteadFenceTakeoff fence;                                         \
                                                                     \
    return take_off (row, &fence) ? (double) (value) : NAN;          \
  }

FENCE_ASK (fence_perimeter, feet (fence.perimeter_m))
FENCE_ASK (fence_net_wire, feet (fence.net_wire_m))
FENCE_ASK (fence_corners, fence.corner_posts)
FENCE_ASK (fence_gates, fence.gate_posts)
FENCE_ASK (fence_brace_rails, fence.brace_rails)

/* These hang on how far posts are apart. */
#define FENCE_POST_ASK(name, value)                                  \
  static double name (CheckRow *row)                                 \
  {                                                                  \
    SteadFenceTakeoff fence;                                         \
                                                                     \
    check_need (row, "spacing_ft");                                  \
    return take_off (row, &fence) ? (double) (value) : NAN;          \
  }

FENCE_POST_ASK (fence_line, fence.line_posts)
FENCE_POST_ASK (fence_total, fence.corner_posts + fence.gate_posts + fence.line_posts)
FENCE_POST_ASK (fence_brace_posts, fence.brace_posts)

static double
fence_to_buy_m (CheckRow *row)
{
  SteadFenceTakeoff fence;

  return take_off (row, &fence)
         ? stead_with_waste (fence.net_wire_m, check_frac_or (row, "waste_pct", 0)) : NAN;
}

static double
fence_to_buy (CheckRow *row)
{
  return feet (fence_to_buy_m (row));
}

static double
fence_rolls (CheckRow *row)
{
  return counted (stead_count_up (fence_to_buy_m (row), check_base (row, "roll", "ft")));
}

static double
fence_concrete_m3 (CheckRow *row)
{
  SteadFenceTakeoff fence;
  SteadPostHole hole = { STEAD_HOLE_ROUND, check_base (row, "hole_dia", "in"), STEAD_HOLE_ROUND,
                         check_base (row, "post_dia", "in"), check_base (row, "hole_depth", "in") };

  if (!take_off (row, &fence))
    return NAN;
  return stead_with_waste ((double) (fence.corner_posts + fence.gate_posts) * stead_post_hole_m3 (&hole),
                           check_frac_or (row, "concrete_waste_pct", 0));
}

static double
fence_concrete (CheckRow *row)
{
  return cubic_feet (fence_concrete_m3 (row));
}

static double
fence_bags_80 (CheckRow *row)
{
  return counted (stead_concrete_bags (fence_concrete_m3 (row), 80));
}

static double
fence_bags_60 (CheckRow *row)
{
  return counted (stead_concrete_bags (fence_concrete_m3 (row), 60));
}

static const CheckAsk fence_asks[] = {
  { "perimeter", "ft", fence_perimeter },
  { "net_wire", "ft", fence_net_wire },
  { "wire_to_buy", "ft", fence_to_buy },
  { "rolls", "count", fence_rolls },
  { "corner_posts", "count", fence_corners },
  { "gate_posts", "count", fence_gates },
  { "line_posts", "count", fence_line },
  { "total_posts", "count", fence_total },
  { "brace_posts", "count", fence_brace_posts },
  { "brace_rails", "count", fence_brace_rails },
  { "concrete", "cuft", fence_concrete },
  { "bags_80lb", "count", fence_bags_80 },
  { "bags_60lb", "count", fence_bags_60 },
  { NULL }
};

/* fence wire */

static double
wire_net_m (CheckRow *row)
{
  gsize n = 0;
  g_autofree double *gates_m = NULL;
  double net_m;

  if (check_has (row, "net_ft"))
    return check_has (row, "perimeter_ft") ? check_bad_input (row, "net_ft") : check_base (row, "net", "ft");
  net_m = check_base (row, "perimeter", "ft");
  if (check_has (row, "gate_width_ft"))
    gates_m = check_base_list (row, "gate_width", "ft", &n);
  for (gsize i = 0; i < n; i++)
    net_m -= gates_m[i];
  return net_m;
}

static double
wire_net (CheckRow *row)
{
  return feet (wire_net_m (row));
}

static double
wire_rolls (CheckRow *row)
{
  double need_m = stead_with_waste (wire_net_m (row), check_frac_or (row, "waste_pct", 0));

  return counted (stead_count_up (need_m, check_base (row, "roll", "ft")));
}

static const CheckAsk wire_asks[] = {
  { "net_wire", "ft", wire_net },
  { "rolls", "count", wire_rolls },
  { NULL }
};

/* fence run */

static double
run_line_posts (CheckRow *row)
{
  return counted (stead_fence_line_posts (check_base (row, "run", "ft"), check_base (row, "spacing", "ft")));
}

static double
run_posts (CheckRow *row)
{
  return counted (stead_count_members (check_base (row, "run", "ft"), check_base (row, "spacing", "ft")));
}

static double
run_bay (CheckRow *row)
{
  return feet (stead_count_bay (check_base (row, "run", "ft"), check_base (row, "spacing", "ft")));
}

static const CheckAsk run_asks[] = {
  { "line_posts", "count", run_line_posts },
  { "posts_with_ends", "count", run_posts },
  { "bay_length", "ft", run_bay },
  { NULL }
};

/* fence bracing, staples, labor, ground rods */

static double
brace_type (CheckRow *row)
{
  int spans = stead_fence_brace_spans (check_base (row, "length", "ft"));

  return check_answer_word (row, spans == 1 ? "single_span" : "double_span");
}

/* The corner of a pen is where two lines of fence meet. */
static double
brace_assemblies (CheckRow *row)
{
  static const char * const lines[] = { "2", NULL };
  static const double triangle[] = { 1, 1, 1 };
  SteadFencePlan plan = { triangle, 3, NULL, 0, 1 };
  SteadFenceTakeoff fence;

  check_word (row, "fence_lines", lines, -1);
  return stead_fence_take_off (&plan, &fence, NULL)
         ? (double) fence.brace_rails / (double) fence.corner_posts : NAN;
}

static const CheckAsk brace_asks[] = {
  { "brace_type", "text", brace_type },
  { "assemblies", "count", brace_assemblies },
  { NULL }
};

/* A whole number of things. */
static gint64
whole (CheckRow   *row,
       const char *name)
{
  double value = check_number (row, name);

  if (value >= 0 && value <= STEAD_COUNT_MOST && value == floor (value))
    return (gint64) value;
  check_bad_input (row, name);
  return 0;
}

static double
staples (CheckRow *row)
{
  return (double) stead_fence_staples (whole (row, "line_wires"), whole (row, "line_posts"),
                                       whole (row, "fixed_posts"));
}

static const CheckAsk staple_asks[] = {
  { "staples", "count", staples },
  { NULL }
};

static double
labor_rate (CheckRow *row)
{
  return check_number (row, "labor_h") / check_number (row, "length_ft");
}

static const CheckAsk labor_asks[] = {
  { "rate", "h/ft", labor_rate },
  { NULL }
};

static double
ground_rods (CheckRow *row)
{
  return check_answer_word (row, whole (row, "rods") >= STEAD_FENCE_GROUND_RODS ? "enough" : "too_few");
}

static const CheckAsk rod_asks[] = {
  { "verdict", "text", ground_rods },
  { NULL }
};

/* post length, depth and hole; square check */

static double
post_length_m (CheckRow *row)
{
  double spare_m = check_has (row, "spare_ft") ? check_base (row, "spare", "ft") : 0;

  return stead_post_length_m (check_base (row, "above", "ft"), check_base (row, "depth", "ft"), spare_m);
}

static double
post_length (CheckRow *row)
{
  return feet (post_length_m (row));
}

static double
post_buy_length (CheckRow *row)
{
  double step_m = check_has (row, "step_ft") ? check_base (row, "step", "ft") : 2 * 0.3048;

  return feet (stead_step_up (post_length_m (row), step_m));
}

static const CheckAsk length_asks[] = {
  { "length", "ft", post_length },
  { "buy_length", "ft", post_buy_length },
  { NULL }
};

static double
post_depth (CheckRow *row)
{
  return feet (stead_post_depth_m (check_base (row, "rule", "ft"), check_base (row, "frost", "in")));
}

static const CheckAsk depth_asks[] = {
  { "depth", "ft", post_depth },
  { NULL }
};

static double
hole_width (CheckRow *row)
{
  return check_from_base (stead_post_hole_width_m (check_base (row, "post_width", "in")), "in");
}

static double
hole_depth (CheckRow *row)
{
  return check_from_base (stead_post_hole_depth_m (check_base (row, "above", "in")), "in");
}

static const CheckAsk hole_asks[] = {
  { "hole_dia", "in", hole_width },
  { "hole_depth", "in", hole_depth },
  { NULL }
};

static double
diagonal (CheckRow *row)
{
  return feet (stead_square_diagonal_m (check_base (row, "length", "ft"), check_base (row, "width", "ft")));
}

static const CheckAsk square_asks[] = {
  { "diagonal", "ft", diagonal },
  { NULL }
};

/* concrete bag yield, post hole concrete, footing depth */

static double
bag_yield (CheckRow *row)
{
  return cubic_feet (stead_concrete_bag_m3 (bag_of (row)));
}

static double
bags_per_yard (CheckRow *row)
{
  double yard_m3 = 27 * 28.316846592 / LITERS;

  return counted (stead_concrete_bags (yard_m3, bag_of (row)));
}

static const CheckAsk yield_asks[] = {
  { "yield", "cuft", bag_yield },
  { "bags_per_cuyd", "count", bags_per_yard },
  { NULL }
};

/* NAME_dia_in for a round thing, NAME_side_in for a square one. */
static double
width_of (CheckRow       *row,
          const char     *stem,
          gboolean        needed,
          SteadHoleShape *out_shape)
{
  g_autofree char *dia = g_strconcat (stem, "_dia", NULL);
  g_autofree char *side = g_strconcat (stem, "_side", NULL);
  gboolean is_round = check_has_base (row, dia, "in");
  gboolean is_square = check_has_base (row, side, "in");

  *out_shape = is_square ? STEAD_HOLE_SQUARE : STEAD_HOLE_ROUND;
  if (is_round && is_square)
    return check_bad_input (row, side);
  if (!is_round && !is_square && !needed)
    return 0;
  return check_base (row, is_square ? side : dia, "in");
}

static double
hole_m3 (CheckRow *row)
{
  SteadPostHole hole = { 0 };

  hole.hole_width_m = width_of (row, "hole", TRUE, &hole.hole_shape);
  hole.post_width_m = width_of (row, "post", FALSE, &hole.post_shape);
  hole.depth_m = check_base (row, "depth", "in");
  return stead_post_hole_m3 (&hole);
}

static double
hole_volume (CheckRow *row)
{
  return cubic_feet (hole_m3 (row));
}

static double
wasted_m3 (CheckRow *row)
{
  return stead_with_waste (hole_m3 (row), check_frac_or (row, "waste_pct", 0));
}

static double
job_m3 (CheckRow *row)
{
  return wasted_m3 (row) * (check_has (row, "holes") ? (double) whole (row, "holes") : 1);
}

static double
job_volume (CheckRow *row)
{
  return cubic_feet (job_m3 (row));
}

static double
job_bags (CheckRow *row)
{
  return counted (stead_concrete_bags (job_m3 (row), bag_of (row)));
}

static double
job_bags_by_hole (CheckRow *row)
{
  return counted (stead_concrete_bags_by_hole (wasted_m3 (row),
                                               check_has (row, "holes") ? whole (row, "holes") : 1,
                                               bag_of (row)));
}

static const CheckAsk concrete_asks[] = {
  { "volume_per_hole", "cuft", hole_volume },
  { "job_volume", "cuft", job_volume },
  { "bags", "count", job_bags },
  { "bags_rounded_per_hole", "count", job_bags_by_hole },
  { NULL }
};

static double
footing (CheckRow *row)
{
  return check_from_base (stead_footing_depth_m (check_base (row, "frost", "in")), "in");
}

static const CheckAsk footing_asks[] = {
  { "min_depth", "in", footing },
  { NULL }
};

const CheckTopic check_fence_topics[] = {
  { "fence takeoff",
    "sides_ft gate_side gate_offset_ft gate_width_ft spacing_ft waste_pct roll_ft hole_dia_in "
    "post_dia_in hole_depth_in concrete_waste_pct", fence_asks },
  { "fence wire", "net_ft perimeter_ft gate_width_ft waste_pct roll_ft", wire_asks },
  { "fence run", "run_ft spacing_ft", run_asks },
  { "fence bracing", "length_ft fence_lines", brace_asks },
  { "fence staples", "line_wires line_posts fixed_posts", staple_asks },
  { "fence labor", "length_ft labor_h", labor_asks },
  { "ground rods", "rods", rod_asks },
  { "post length", "above_ft depth_ft spare_ft step_ft", length_asks },
  { "post depth", "rule_ft frost_in", depth_asks },
  { "post hole size", "post_width_in above_in", hole_asks },
  { "square check", "length_ft width_ft", square_asks },
  { "concrete bag yield", "bag_lb", yield_asks },
  { "post hole concrete",
    "hole_dia_in hole_side_in post_dia_in post_side_in depth_in holes waste_pct bag_lb", concrete_asks },
  { "footing depth", "frost_in", footing_asks },
  { NULL }
};
