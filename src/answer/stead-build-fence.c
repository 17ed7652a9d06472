/* stead-build-fence.c - what the fence of a pen takes, its gates, and a poultry run. */
#include "config.h"

#include "answer/stead-build-takeoff-private.h"
#include "answer/stead-rules.h"
#include "core/stead-count.h"
#include "core/stead-egg.h"
#include "core/stead-lumber.h"
#include "core/stead-mesh.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FT STEAD_FOOT_M
#define IN STEAD_INCH_M

/* A line post stands 2 ft deep: NRCS Tennessee CS-382 (data/rules, fen-09b); a corner
 * post has 6 in to spare at its top (core/stead-fence.h). */
#define LINE_DEPTH_M (2 * FT)
#define SPARE_M (6 * IN)

/* A rail of a brace (common practice, no source). */
#define BRACE_RAIL_M (8 * FT)

/* Boards are sold in this length where nothing else is said. */
#define BOARD_M (16 * FT)

/* How much higher posts stand where the fence goes up in level steps. */
static double
step_m (const SteadBuild *build)
{
  double most = 0;

  for (guint i = 0; i < build->corners->len; i++)
    {
      const SteadBuildCorner *corner = &g_array_index (build->corners, SteadBuildCorner, i);

      if (corner->steps > 0)
        most = MAX (most, fabs (corner->rise_m) / corner->steps);
    }
  return most;
}

static void
add_post (SteadBuildTakeoff *self,
          SteadUnitSystem         units,
          const char        *key,
          const char        *name,
          double             length_m,
          gint64             count,
          char              *how)
{
  g_autofree char *length = stead_build_length_text (stead_build_bought_m (length_m, units), units);

  stead_build_need_add (self, STEAD_BUILD_PART_FENCE, g_strdup (key),
                        /* Translators: a thing and its length: "Line post, 6 ft". */
                        g_strdup_printf (C_("thing", "%s, %s"), name, length), (double) count, NULL, how);
}

static void
add_posts (SteadBuildTakeoff       *self,
           const SteadBuild        *build,
           SteadUnitSystem               units,
           const SteadFenceTakeoff *fence)
{
  double step = step_m (build);
  double fixed = stead_post_length_m (build->height_m + step, self->hole_depth_m, SPARE_M);
  double line = stead_post_length_m (build->height_m + step, MAX (LINE_DEPTH_M, isnan (build->frost_m) ? 0 : LINE_DEPTH_M), 0);
  g_autofree char *rail = stead_build_length_text (BRACE_RAIL_M, units);
  g_autofree char *spacing = stead_build_length_text (build->spacing_m, units);

  add_post (self, units, "corner_post", _("Corner post"), fixed, fence->corner_posts, g_strdup (_("one at each corner")));
  add_post (self, units, "gate_post", _("Gate post"), fixed, fence->gate_posts,
            g_strdup (_("two at each gate; a corner or the next gate may share one")));
  add_post (self, units, "line_post", _("Line post"), line, fence->line_posts + fence->brace_posts,
            g_strdup_printf (_("in each run, length ÷ %s rounded up, less one; and %d at wide bays for the braces"),
                             spacing, (int) fence->brace_posts));
  stead_build_need_add (self, STEAD_BUILD_PART_FENCE, g_strdup ("brace_rail"),
                        g_strdup_printf (C_("thing", "%s, %s"), _("Brace rail"), rail), (double) fence->brace_rails, NULL,
                        g_strdup (_("one for each line of fence that meets at a corner")));
}

/* Whole rolls for the net length and its waste. */
static void
add_woven (SteadBuildTakeoff       *self,
           const SteadBuild        *build,
           SteadUnitSystem               units,
           const SteadFenceTakeoff *fence)
{
  double need_m = fence->net_wire_m * (1 + build->wire_waste);
  g_autofree char *net = stead_build_length_text (fence->net_wire_m, units);
  g_autofree char *whole = stead_build_length_text (need_m, units);
  g_autofree char *roll = stead_build_length_text (build->roll_m, units);
  gint64 staples = stead_fence_staples (build->rows, fence->line_posts + fence->brace_posts,
                                        fence->corner_posts + fence->gate_posts);

  stead_build_need_add (self, STEAD_BUILD_PART_FENCE, g_strdup_printf ("wire_roll_%.0f", build->roll_m * 1000),
                        g_strdup_printf (_("Woven wire, roll of %s"), roll), ceil (need_m / build->roll_m - 1e-9), NULL,
                        /* Translators: "128 ft between the posts, 134.4 ft with waste". */
                        g_strdup_printf (_("%s between the posts, %s with waste"), net, whole));
  stead_build_need_add (self, STEAD_BUILD_PART_FENCE, g_strdup ("staple"), g_strdup (_("Fence staples")),
                        (double) staples, NULL,
                        g_strdup (_("every wire on fixed posts, every other one on line posts")));
}

static void
add_boards (SteadBuildTakeoff       *self,
            const SteadBuild        *build,
            SteadUnitSystem               units,
            const SteadFenceTakeoff *fence)
{
  gint64 boards = stead_fence_boards (fence->net_wire_m, build->rows, BOARD_M, build->wood_waste);
  g_autofree char *length = stead_build_length_text (BOARD_M, units);

  if (boards != STEAD_COUNT_NONE)
    stead_build_need_add (self, STEAD_BUILD_PART_FENCE, g_strdup ("fence_board"),
                          g_strdup_printf (C_("thing", "%s, %s"), _("Fence board"), length), (double) boards, NULL,
                          g_strdup_printf (_("%d boards above each other, with waste"), build->rows));
}

static void
add_electric (SteadBuildTakeoff       *self,
              const SteadBuild        *build,
              SteadUnitSystem               units,
              const SteadFenceTakeoff *fence)
{
  gint64 posts = fence->corner_posts + fence->gate_posts + fence->line_posts + fence->brace_posts;
  double need_m = fence->net_wire_m * build->rows * (1 + build->wire_waste);
  g_autofree char *roll = stead_build_length_text (build->roll_m, units);
  g_autofree char *whole = stead_build_length_text (need_m, units);

  stead_build_need_add (self, STEAD_BUILD_PART_FENCE, g_strdup_printf ("electric_roll_%.0f", build->roll_m * 1000),
                        g_strdup_printf (_("Electric wire, roll of %s"), roll), ceil (need_m / build->roll_m - 1e-9), NULL,
                        g_strdup_printf (_("%d wires, %s with waste"), build->rows, whole));
  stead_build_need_add (self, STEAD_BUILD_PART_FENCE, g_strdup ("insulator"), g_strdup (_("Insulators")),
                        (double) (posts * build->rows), NULL, g_strdup (_("one for each wire on each post")));
  stead_build_need_add (self, STEAD_BUILD_PART_FENCE, g_strdup ("ground_rod"), g_strdup (_("Ground rods")),
                        STEAD_FENCE_GROUND_RODS, NULL, g_strdup (_("three at least")));
  stead_build_need_add (self, STEAD_BUILD_PART_FENCE, g_strdup ("energizer"), g_strdup (_("Energizer")), 1, NULL,
                        g_strdup (_("one for the fence")));
}

gboolean
stead_build_add_fence (SteadBuildTakeoff  *self,
                       const SteadBuild   *build,
                       SteadUnitSystem          units,
                       gint64             *out_holes,
                       GError            **error)
{
  SteadFencePlan plan = { (const double *) (gpointer) self->sides_m->data, self->sides_m->len,
                          (const SteadFenceGate *) (gpointer) build->gates->data, build->gates->len, build->spacing_m };
  SteadFenceTakeoff fence;
  double longest = 0;

  if (build->fence == STEAD_BUILD_FENCE_NONE)
    return TRUE;
  if (!stead_fence_take_off (&plan, &fence, error))
    return FALSE;
  for (guint i = 0; i < self->sides_m->len; i++)
    longest = MAX (longest, g_array_index (self->sides_m, double, i));
  self->braces = stead_fence_brace_spans (longest);
  self->net_wire_m = fence.net_wire_m;
  *out_holes = fence.corner_posts + fence.gate_posts;
  add_posts (self, build, units, &fence);
  if (build->fence == STEAD_BUILD_FENCE_WOVEN)
    add_woven (self, build, units, &fence);
  else if (build->fence == STEAD_BUILD_FENCE_BOARDS)
    add_boards (self, build, units, &fence);
  else
    add_electric (self, build, units, &fence);
  return TRUE;
}

void
stead_build_add_gates (SteadBuildTakeoff *self,
                       const SteadBuild  *build,
                       SteadUnitSystem         units)
{
  for (guint i = 0; i < build->gates->len; i++)
    {
      double width = g_array_index (build->gates, SteadFenceGate, i).width_m;
      g_autofree char *text = stead_build_length_text (width, units);
      guint n = 0;
      gboolean told = FALSE;

      for (guint k = 0; k < build->gates->len; k++)
        if (fabs (g_array_index (build->gates, SteadFenceGate, k).width_m - width) < 0.0005)
          {
            told |= k < i;
            n++;
          }
      if (!told)
        stead_build_need_add (self, STEAD_BUILD_PART_GATE, g_strdup_printf ("gate_%.0f", width * 1000),
                              g_strdup_printf (_("Gate for an opening of %s"), text), n, NULL,
                              g_strdup (_("a gate is 3 to 5 in shorter than its opening")));
    }
}

/* --- a run for poultry ------------------------------------------------------------------- */

static double
rule_in (const char *measure,
         double      none)
{
  const SteadLimit *row = stead_rules_figure ("space", "laying_hen", measure);

  return row != NULL ? row->value : none;
}

static void
add_birds (SteadBuildTakeoff *self,
           const SteadBuild  *build,
           SteadUnitSystem         units)
{
  double per_box = rule_in ("hens_per_nest_box", 4);
  double perch = build->head * rule_in ("perch_per_head", 10) * IN;
  double feeder = build->head * rule_in ("feeder_per_head", 3) * IN;
  gboolean us = units == STEAD_UNITS_US;
  const char *unit = us ? C_("unit", "ft") : C_("unit", "m");

  if (build->head == 0)
    return;
  stead_build_need_add (self, STEAD_BUILD_PART_ANIMALS, g_strdup ("nest_box"), g_strdup (_("Nest boxes")),
                        ceil (build->head / per_box), NULL, g_strdup_printf (_("%d birds, %d to a box"), build->head, (int) per_box));
  stead_build_need_add (self, STEAD_BUILD_PART_ANIMALS, g_strdup (us ? "perch_ft" : "perch_m"), g_strdup (_("Perch")),
                        us ? perch / FT : perch, unit, g_strdup_printf (_("%d birds, 10 in each"), build->head));
  stead_build_need_add (self, STEAD_BUILD_PART_ANIMALS, g_strdup (us ? "bird_feeder_ft" : "bird_feeder_m"),
                        g_strdup (_("Feeder")), us ? feeder / FT : feeder, unit,
                        g_strdup_printf (_("%d birds, 3 in each"), build->head));
}

gboolean
stead_build_add_run (SteadBuildTakeoff  *self,
                     const SteadBuild   *build,
                     SteadUnitSystem          units,
                     gint64             *out_holes,
                     GError            **error)
{
  SteadMeshRun run = { g_array_index (self->sides_m, double, 0), g_array_index (self->sides_m, double, 1),
                       build->height_m, build->apron_m };
  double m2 = stead_mesh_run_m2 (&run);
  gint64 rolls = stead_mesh_rolls (m2, build->wire_waste, build->roll_width_m, build->roll_m);
  gint64 posts = stead_mesh_run_posts (&run, build->spacing_m);
  gint64 doors = 2 * (gint64) build->gates->len;
  g_autofree char *width = stead_build_length_text (build->roll_width_m, units);
  g_autofree char *roll = stead_build_length_text (build->roll_m, units);
  g_autofree char *area = stead_build_area_text (m2, units);

  if (rolls == STEAD_COUNT_NONE || posts == STEAD_COUNT_NONE)
    return stead_build_check (build, error);
  add_post (self, units, "run_post", _("Post of the run"), build->height_m + LINE_DEPTH_M, posts,
            g_strdup (_("on each side, length ÷ spacing, rounded up")));
  add_post (self, units, "door_post", _("Post of a door"), build->height_m + LINE_DEPTH_M, doors, g_strdup (_("two at each door")));
  stead_build_need_add (self, STEAD_BUILD_PART_COVER,
                        g_strdup_printf ("mesh_%.0f_%.0f", build->roll_width_m * 1000, build->roll_m * 1000),
                        g_strdup_printf (_("Wire mesh, roll of %s by %s"), width, roll), (double) rolls, NULL,
                        g_strdup_printf (_("%s of walls, roof and apron, with waste"), area));
  add_birds (self, build, units);
  *out_holes = 4 + doors;
  return TRUE;
}
