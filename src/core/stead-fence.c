/* stead-fence.c - what a fence takes: wire, posts, gates, braces, staples. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-count.h"
#include "core/stead-fence.h"
#include "core/stead-round.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>

/* Two lengths that differ by less are one: a tenth of a millimeter. */
#define SAME_M 1e-4

/* No side, gate or height of a school's pen is longer: 100 km. */
#define LONGEST_M 1e5

static gboolean
set_range (GError    **error,
           const char *message)
{
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE, message);
  return FALSE;
}

static gboolean
check_sides (const SteadFencePlan  *plan,
             double                *out_perimeter_m,
             GError               **error)
{
  double sum = 0;
  double longest = 0;

  if (plan->n_sides < 3 || plan->n_sides > STEAD_FENCE_MOST_SIDES)
    return set_range (error, _("A closed pen has three sides or more, and 200 at most. Check the sides."));
  for (gsize i = 0; i < plan->n_sides; i++)
    {
      if (!(plan->sides_m[i] > 0 && plan->sides_m[i] <= LONGEST_M))
        return set_range (error, _("Every side of a pen needs a length above 0. Check the sides."));
      sum += plan->sides_m[i];
      longest = MAX (longest, plan->sides_m[i]);
    }
  if (longest > sum - longest + SAME_M)
    return set_range (error, _("One side is longer than all the others together, so the pen cannot close. "
                               "Check the sides."));
  *out_perimeter_m = sum;
  return TRUE;
}

static int
compare_gates (const void *a,
               const void *b)
{
  const SteadFenceGate *left = a;
  const SteadFenceGate *right = b;

  if (left->side != right->side)
    return left->side < right->side ? -1 : 1;
  return (left->offset_m > right->offset_m) - (left->offset_m < right->offset_m);
}

/* The gates in order round the pen; NULL with @error set if one does not fit. */
static SteadFenceGate *
order_gates (const SteadFencePlan  *plan,
             GError               **error)
{
  g_autofree SteadFenceGate *gates = NULL;

  if (plan->n_gates > STEAD_FENCE_MOST_GATES)
    {
      set_range (error, _("There are too many gates. Check the gates."));
      return NULL;
    }
  gates = g_new (SteadFenceGate, plan->n_gates + 1);
  for (gsize i = 0; i < plan->n_gates; i++)
    {
      gates[i] = plan->gates[i];
      if (gates[i].side >= plan->n_sides || !(gates[i].width_m > 0) || !(gates[i].offset_m >= 0)
          || !(gates[i].offset_m + gates[i].width_m <= plan->sides_m[gates[i].side] + SAME_M))
        {
          set_range (error, _("A gate does not fit into its side. Make it narrower, or move it."));
          return NULL;
        }
    }
  qsort (gates, plan->n_gates, sizeof *gates, compare_gates);
  for (gsize i = 1; i < plan->n_gates; i++)
    if (gates[i].side == gates[i - 1].side
        && gates[i].offset_m < gates[i - 1].offset_m + gates[i - 1].width_m - SAME_M)
      {
        set_range (error, _("Two gates overlap. Move one of them."));
        return NULL;
      }
  return g_steal_pointer (&gates);
}

/* Cuts one side into runs at its gates, and counts the posts of the gates. */
static void
cut_side (const SteadFencePlan  *plan,
          gsize                  side,
          const SteadFenceGate **gate,
          const SteadFenceGate  *end,
          GArray                *runs,
          gint64                *gate_posts)
{
  double at_m = 0;           /* end of the last gate, or the corner */
  double length_m = plan->sides_m[side];
  double run_m;

  for (; *gate < end && (*gate)->side == side; (*gate)++)
    {
      run_m = (*gate)->offset_m - at_m;
      /* Right at a corner or at the gate before, the post stands already. */
      if (run_m > SAME_M)
        {
          g_array_append_val (runs, run_m);
          *gate_posts += 1;
        }
      at_m = (*gate)->offset_m + (*gate)->width_m;
      *gate_posts += at_m < length_m - SAME_M ? 1 : 0;
    }
  run_m = length_m - at_m;
  if (run_m > SAME_M)
    g_array_append_val (runs, run_m);
}

static GArray *
cut_pen (const SteadFencePlan  *plan,
         double                *out_perimeter_m,
         gint64                *out_gate_posts,
         GError               **error)
{
  g_autofree SteadFenceGate *gates = NULL;
  GArray *runs;
  const SteadFenceGate *gate;

  if (!check_sides (plan, out_perimeter_m, error))
    return NULL;
  gates = order_gates (plan, error);
  if (gates == NULL)
    return NULL;
  runs = g_array_new (FALSE, FALSE, sizeof (double));
  gate = gates;
  *out_gate_posts = 0;
  for (gsize i = 0; i < plan->n_sides; i++)
    cut_side (plan, i, &gate, gates + plan->n_gates, runs, out_gate_posts);
  return runs;
}

GArray *
stead_fence_runs (const SteadFencePlan  *plan,
                  GError               **error)
{
  double perimeter_m;
  gint64 gate_posts;

  g_return_val_if_fail (plan != NULL && (plan->sides_m != NULL || plan->n_sides == 0), NULL);
  g_return_val_if_fail (plan->gates != NULL || plan->n_gates == 0, NULL);
  return cut_pen (plan, &perimeter_m, &gate_posts, error);
}

/* Posts between those that are fixed; FALSE for a spacing that cannot be. */
static gboolean
count_line_posts (const GArray *runs,
                  double        spacing_m,
                  gint64       *out)
{
  *out = 0;
  for (guint i = 0; i < runs->len; i++)
    {
      gint64 posts = stead_fence_line_posts (g_array_index (runs, double, i), spacing_m);

      if (posts == STEAD_COUNT_NONE)
        return FALSE;
      *out += posts;
    }
  return TRUE;
}

gboolean
stead_fence_take_off (const SteadFencePlan  *plan,
                      SteadFenceTakeoff     *out,
                      GError               **error)
{
  SteadFenceTakeoff found = { 0 };
  g_autoptr(GArray) runs = NULL;
  gboolean wide;

  g_return_val_if_fail (plan != NULL && (plan->sides_m != NULL || plan->n_sides == 0), FALSE);
  g_return_val_if_fail (plan->gates != NULL || plan->n_gates == 0, FALSE);
  g_return_val_if_fail (out != NULL, FALSE);

  runs = cut_pen (plan, &found.perimeter_m, &found.gate_posts, error);
  if (runs == NULL)
    return FALSE;
  if (!count_line_posts (runs, plan->spacing_m, &found.line_posts))
    return set_range (error, _("The distance between posts must be above 0, and not tiny beside the sides."));
  for (guint i = 0; i < runs->len; i++)
    found.net_wire_m += g_array_index (runs, double, i);
  found.corner_posts = (gint64) plan->n_sides;
  found.brace_rails = 2 * found.corner_posts;
  wide = plan->spacing_m > STEAD_FENCE_BRACE_BAY_M * (1 + STEAD_ROUND_NOISE);
  found.brace_posts = wide ? 2 * found.corner_posts : 0;
  *out = found;
  return TRUE;
}

gint64
stead_fence_line_posts (double run_m,
                        double spacing_m)
{
  gint64 bays = stead_count_up (run_m, spacing_m);

  return bays == STEAD_COUNT_NONE ? STEAD_COUNT_NONE : MAX (bays - 1, 0);
}

int
stead_fence_brace_spans (double length_m)
{
  return length_m <= STEAD_FENCE_SINGLE_SPAN_M * (1 + STEAD_ROUND_NOISE) ? 1 : 2;
}

gint64
stead_fence_staples (gint64 line_wires,
                     gint64 line_posts,
                     gint64 fixed_posts)
{
  g_return_val_if_fail (line_wires >= 0 && line_posts >= 0 && fixed_posts >= 0, 0);
  g_return_val_if_fail (line_wires <= STEAD_COUNT_MOST && line_posts <= STEAD_COUNT_MOST
                        && fixed_posts <= STEAD_COUNT_MOST, 0);
  return line_wires * fixed_posts + (line_wires + 1) / 2 * line_posts;
}

double
stead_post_length_m (double above_m,
                     double depth_m,
                     double spare_m)
{
  return above_m >= 0 && depth_m >= 0 && spare_m >= 0 ? above_m + depth_m + spare_m : NAN;
}

double
stead_post_depth_m (double rule_m,
                    double frost_m)
{
  return rule_m >= 0 && frost_m >= 0 ? MAX (rule_m, frost_m) : NAN;
}

double
stead_post_hole_width_m (double post_width_m)
{
  return post_width_m > 0 ? 3 * post_width_m : NAN;
}

double
stead_post_hole_depth_m (double above_m)
{
  return above_m >= 0 ? above_m / 3 + 6 * STEAD_INCH_M : NAN;
}
