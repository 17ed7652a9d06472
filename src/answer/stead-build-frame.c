/* stead-build-frame.c - what a shelter takes, and a hoop house. */
#include "config.h"

#include "answer/stead-build-takeoff-private.h"
#include "core/stead-hoop.h"
#include "core/stead-roof.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FT STEAD_FOOT_M

/* In which girts and siding are sold where nothing else is said. */
#define GIRT_M (16 * FT)
#define SHEET_LENGTH_M (8 * FT)
#define SHEET_WIDTH_M (4 * FT)

/* Sizes of what is cut; rafters of 2x6 as in the worked case (build-and-records, case 2). */
#define RAFTER "2x6"
#define RAIL "2x4"

static void
add_wood (SteadBuildTakeoff *self,
          SteadUnitSystem         units,
          const char        *key,
          const char        *name,
          double             length_m,
          double             count,
          char              *how)
{
  g_autofree char *length = stead_build_length_text (length_m, units);

  stead_build_need_add (self, STEAD_BUILD_PART_SHELTER, g_strdup (key),
                        g_strdup_printf (C_("thing", "%s, %s"), name, length), count, NULL, how);
}

static void
add_piece (GArray *pieces,
           double  length_m,
           double  count)
{
  /* What is longer than what is sold is spliced on a rafter or post. */
  while (length_m > GIRT_M)
    {
      SteadCutPiece whole = { GIRT_M, (guint) count };

      g_array_append_val (pieces, whole);
      length_m -= GIRT_M;
    }
  if (length_m > 0.01)
    {
      SteadCutPiece piece = { length_m, (guint) count };

      g_array_append_val (pieces, piece);
    }
}

/* Rows of boards that are @spacing apart, one at each end. */
static double
rows (double height_m,
      double spacing_m)
{
  return ceil (height_m / spacing_m - 1e-9) + 1;
}

static GArray *
rail_pieces (const SteadBuildShelter *s,
             gint64                   purlin_rows)
{
  GArray *pieces = g_array_new (FALSE, FALSE, sizeof (SteadCutPiece));

  add_piece (pieces, s->wall_m + 2 * s->end_m, (double) purlin_rows);
  add_piece (pieces, s->wall_m, rows (s->rear_m, s->rafter_spacing_m));
  add_piece (pieces, s->depth_m, 2 * rows ((s->front_m + s->rear_m) / 2, s->rafter_spacing_m));
  return pieces;
}

static gboolean
add_rails (SteadBuildTakeoff       *self,
           const SteadBuild        *build,
           SteadUnitSystem               units,
           const SteadShedTakeoff  *shed,
           GError                 **error)
{
  g_autoptr(GArray) pieces = rail_pieces (&build->shelter, shed->purlin_rows);
  double purlin_m = build->shelter.wall_m + 2 * build->shelter.end_m;
  gboolean cut;

  if (!stead_build_cut (self, build, units, STEAD_BUILD_PART_SHELTER, RAIL, pieces, &cut, error))
    return FALSE;
  if (cut)
    return TRUE;
  add_wood (self, units, "purlin", _("Purlin 2x4"), stead_build_bought_m (MIN (purlin_m, GIRT_M), units),
            (double) shed->purlin_rows * ceil (purlin_m / GIRT_M - 1e-9), g_strdup (_("slope ÷ spacing, rounded up, and one more row")));
  add_wood (self, units, "girt", _("Girt 2x4"), GIRT_M, (double) shed->girts, g_strdup (_("rows on the rear and both sides, with waste")));
  return TRUE;
}

static gboolean
add_rafters (SteadBuildTakeoff       *self,
             const SteadBuild        *build,
             SteadUnitSystem               units,
             const SteadShedTakeoff  *shed,
             GError                 **error)
{
  const SteadBuildShelter *s = &build->shelter;
  g_autoptr(GArray) pieces = g_array_new (FALSE, FALSE, sizeof (SteadCutPiece));
  SteadCutPiece piece = { stead_roof_slope_m (s->depth_m, s->front_m - s->rear_m, s->overhang_front_m + s->overhang_rear_m),
                          (guint) shed->rafters };
  gboolean cut;

  g_array_append_val (pieces, piece);
  if (!stead_build_cut (self, build, units, STEAD_BUILD_PART_SHELTER, RAFTER, pieces, &cut, error))
    return FALSE;
  if (!cut)
    add_wood (self, units, "rafter", _("Rafter 2x6"), shed->rafter_m, (double) shed->rafters,
              g_strdup (_("wall ÷ spacing, rounded up, and one more")));
  return TRUE;
}

static SteadShed
shed_of (const SteadBuild *build,
         SteadUnitSystem        units)
{
  const SteadBuildShelter *s = &build->shelter;

  return (SteadShed) {
    .wall_m = s->wall_m, .depth_m = s->depth_m, .front_m = s->front_m, .rear_m = s->rear_m,
    .overhang_front_m = s->overhang_front_m, .overhang_rear_m = s->overhang_rear_m, .end_m = s->end_m,
    .cover_m = s->cover_m, .spacing_m = s->rafter_spacing_m, .post_spacing_m = s->post_spacing_m,
    .post_depth_m = s->post_depth_m, .girt_m = GIRT_M, .sheet_length_m = SHEET_LENGTH_M,
    .sheet_width_m = SHEET_WIDTH_M, .waste_frac = build->wood_waste,
    .step_m = units == STEAD_UNITS_US ? 2 * FT : 0.5,
  };
}

gboolean
stead_build_add_shelter (SteadBuildTakeoff  *self,
                         const SteadBuild   *build,
                         SteadUnitSystem          units,
                         gint64             *out_holes,
                         GError            **error)
{
  SteadShed shed = shed_of (build, units);
  SteadShedTakeoff takeoff;

  if (!stead_shed_take_off (&shed, &takeoff, error))
    return FALSE;
  add_wood (self, units, "front_post", _("Shelter post, front"), takeoff.front_post_m, (double) takeoff.front_posts,
            g_strdup (_("wall ÷ spacing, rounded up, and one more")));
  add_wood (self, units, "rear_post", _("Shelter post, rear"), takeoff.rear_post_m, (double) takeoff.rear_posts,
            g_strdup (_("wall ÷ spacing, rounded up, and one more")));
  if (!add_rafters (self, build, units, &takeoff, error) || !add_rails (self, build, units, &takeoff, error))
    return FALSE;
  add_wood (self, units, "roof_panel", _("Roof panel"), takeoff.roof_panel_m, (double) takeoff.roof_panels,
            g_strdup (_("wall with its ends ÷ what one panel covers, rounded up")));
  add_wood (self, units, "siding", _("Siding sheet"), SHEET_LENGTH_M, (double) takeoff.siding_sheets,
            g_strdup (_("rear and both sides, with waste")));
  *out_holes = takeoff.front_posts + takeoff.rear_posts;
  return TRUE;
}

/* --- a hoop house ------------------------------------------------------------------------ */

static void
add_cover (SteadBuildTakeoff *self,
           const char        *key,
           const char        *name,
           double             a_m,
           double             b_m,
           double             count,
           SteadUnitSystem         units)
{
  g_autofree char *a = stead_build_length_text (a_m, units);
  g_autofree char *b = stead_build_length_text (b_m, units);

  stead_build_need_add (self, STEAD_BUILD_PART_COVER, g_strdup (key),
                        /* Translators: a sheet and its two measures: "End piece, 14 ft by 8 ft". */
                        g_strdup_printf (_("%s, %s by %s"), name, a, b), count, NULL,
                        g_strdup (_("2 ft to hold on to are added to each measure")));
}

gboolean
stead_build_add_hoop (SteadBuildTakeoff  *self,
                      const SteadBuild   *build,
                      SteadUnitSystem          units,
                      GError            **error)
{
  SteadHoop hoop = { .length_m = g_array_index (self->sides_m, double, 0),
                     .width_m = g_array_index (self->sides_m, double, 1),
                     .spacing_m = build->spacing_m, .height_m = build->height_m, .extra_m = STEAD_HOOP_EXTRA_M };
  SteadHoopTakeoff takeoff;
  g_autofree char *bow = NULL;
  gboolean us = units == STEAD_UNITS_US;

  if (!stead_hoop_take_off (&hoop, &takeoff, error))
    return FALSE;
  bow = stead_build_length_text (takeoff.bow_m, units);
  stead_build_need_add (self, STEAD_BUILD_PART_COVER, g_strdup ("bow"), g_strdup_printf (C_("thing", "%s, %s"), _("Bow"), bow),
                        (double) takeoff.bows, NULL, g_strdup (_("length ÷ spacing, rounded up, and one more")));
  stead_build_need_add (self, STEAD_BUILD_PART_COVER, g_strdup ("ground_post"), g_strdup (_("Ground post")),
                        (double) takeoff.ground_posts, NULL, g_strdup (_("two for each bow")));
  add_cover (self, "hoop_cover", _("Cover"), takeoff.cover_width_m, takeoff.cover_length_m, 1, units);
  add_cover (self, "hoop_end", _("End piece"), takeoff.end_width_m, takeoff.end_height_m, (double) takeoff.end_pieces, units);
  stead_build_need_add (self, STEAD_BUILD_PART_COVER, g_strdup (us ? "base_board_ft" : "base_board_m"), g_strdup (_("Base board")),
                        us ? takeoff.base_board_m / FT : takeoff.base_board_m, us ? C_("unit", "ft") : C_("unit", "m"),
                        g_strdup (_("round the house")));
  return TRUE;
}
