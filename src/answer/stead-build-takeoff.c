/* stead-build-takeoff.c - what the drawing of a build takes, thing by thing. */
#include "config.h"

#include "answer/stead-build-takeoff-private.h"
#include "core/stead-concrete.h"
#include "core/stead-count.h"
#include "core/stead-fill.h"
#include "core/stead-hoop.h"
#include "core/stead-mesh.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FT STEAD_FOOT_M
#define CUYD (27 * FT * FT * FT)

/* A circular saw's cut (common practice, no source). */
#define KERF_M (STEAD_INCH_M / 8)

const char *
stead_build_part_name (SteadBuildPart part)
{
  switch (part)
    {
    case STEAD_BUILD_PART_FENCE: return C_("part of a build", "Fence");
    case STEAD_BUILD_PART_GATE: return C_("part of a build", "Gates");
    case STEAD_BUILD_PART_SHELTER: return C_("part of a build", "Shelter");
    case STEAD_BUILD_PART_GROUND: return C_("part of a build", "Ground");
    case STEAD_BUILD_PART_COVER: return C_("part of a build", "Frame");
    case STEAD_BUILD_PART_ANIMALS: return C_("part of a build", "Animals");
    case STEAD_BUILD_PART_OTHER:
    default: return C_("part of a build", "Other");
    }
}

char *
stead_build_length_text (double     m,
                         SteadUnitSystem units)
{
  g_autofree char *number = stead_number_format (units == STEAD_UNITS_US ? m / FT : m,
                                                 units == STEAD_UNITS_US ? 1 : 2);

  return g_strdup_printf (units == STEAD_UNITS_US ? C_("length", "%s ft") : C_("length", "%s m"), number);
}

char *
stead_build_area_text (double     m2,
                       SteadUnitSystem units)
{
  g_autofree char *number = stead_number_format (units == STEAD_UNITS_US ? m2 / STEAD_SQUARE_FOOT_M2 : m2,
                                                 units == STEAD_UNITS_US ? 0 : 1);

  return g_strdup_printf (units == STEAD_UNITS_US ? C_("area", "%s sq ft") : C_("area", "%s m²"), number);
}

/* --- the struct --------------------------------------------------------------------- */

static void
need_free (gpointer data)
{
  SteadBuildNeed *need = data;

  g_free (need->key);
  g_free (need->name);
  g_free (need->how);
  g_free (need);
}

static void
cut_free (gpointer data)
{
  SteadBuildCut *cut = data;

  g_free (cut->size);
  g_array_unref (cut->pieces);
  g_array_unref (cut->stocks);
  g_clear_pointer (&cut->plan, stead_cut_plan_free);
  g_free (cut);
}

void
stead_build_takeoff_free (SteadBuildTakeoff *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->needs);
  g_ptr_array_unref (self->cuts);
  g_array_unref (self->sides_m);
  g_free (self);
}

void
stead_build_need_add (SteadBuildTakeoff *self,
                      SteadBuildPart     part,
                      char              *key,
                      char              *name,
                      double             quantity,
                      const char        *unit,
                      char              *how)
{
  SteadBuildNeed *need = g_new0 (SteadBuildNeed, 1);

  *need = (SteadBuildNeed) { key, part, name, quantity, unit, how };
  if (quantity > 0)
    g_ptr_array_add (self->needs, need);
  else
    need_free (need);
}

double
stead_build_bought_m (double     m,
                      SteadUnitSystem units)
{
  double step = units == STEAD_UNITS_US ? 2 * FT : 0.5;

  /* A hair over a length is that length. */
  return ceil (m / step - 1e-9) * step;
}

/* --- cutting -------------------------------------------------------------------------- */

static GArray *
stocks_of (const SteadBuild *build,
           const char       *size)
{
  GArray *stocks = g_array_new (FALSE, FALSE, sizeof (SteadCutStock));
  gboolean priced = TRUE;

  for (guint i = 0; i < build->stocks->len; i++)
    {
      const SteadBuildStock *stock = &g_array_index (build->stocks, SteadBuildStock, i);
      SteadCutStock one = { stock->length_m, (double) stock->price_cents };

      if (g_strcmp0 (stock->size, size) != 0)
        continue;
      priced = priced && stock->price_cents > 0;
      g_array_append_val (stocks, one);
    }
  /* Least money where all have prices, else least length. */
  for (guint i = 0; !priced && i < stocks->len; i++)
    g_array_index (stocks, SteadCutStock, i).price_cents = 0;
  return stocks;
}

static void
add_cut_needs (SteadBuildTakeoff   *self,
               SteadUnitSystem           units,
               SteadBuildPart       part,
               const SteadBuildCut *cut)
{
  for (guint s = 0; s < cut->stocks->len; s++)
    {
      double length_m = g_array_index (cut->stocks, SteadCutStock, s).length_m;
      g_autofree char *length = stead_build_length_text (length_m, units);
      guint n = 0;

      for (guint i = 0; i < cut->plan->bars->len; i++)
        {
          const SteadCutBar *bar = cut->plan->bars->pdata[i];

          n += bar->stock == s ? bar->times : 0;
        }
      stead_build_need_add (self, part, g_strdup_printf ("stock_%s_%.0f", cut->size, length_m * 1000),
                            /* Translators: size and length of a board: "2x4, 12 ft". */
                            g_strdup_printf (C_("board", "%s, %s"), cut->size, length), n, NULL,
                            g_strdup (_("cut with the least to buy; see the cutting plan")));
    }
}

gboolean
stead_build_cut (SteadBuildTakeoff  *self,
                 const SteadBuild   *build,
                 SteadUnitSystem          units,
                 SteadBuildPart      part,
                 const char         *size,
                 GArray             *pieces,
                 gboolean           *out_cut,
                 GError            **error)
{
  g_autoptr(GArray) stocks = stocks_of (build, size);
  SteadCutPlan *plan;
  SteadBuildCut *cut;

  *out_cut = FALSE;
  if (stocks->len == 0 || pieces->len == 0)
    return TRUE;
  plan = stead_cut_plan_new ((const SteadCutPiece *) (gpointer) pieces->data, pieces->len,
                             (const SteadCutStock *) (gpointer) stocks->data, stocks->len, KERF_M, error);
  if (plan == NULL)
    return FALSE;
  cut = g_new0 (SteadBuildCut, 1);
  *cut = (SteadBuildCut) { g_strdup (size), g_array_ref (pieces), g_steal_pointer (&stocks), plan };
  g_ptr_array_add (self->cuts, cut);
  add_cut_needs (self, units, part, cut);
  *out_cut = TRUE;
  return TRUE;
}

/* --- concrete and ground ------------------------------------------------------------------ */

gboolean
stead_build_add_concrete (SteadBuildTakeoff  *self,
                          const SteadBuild   *build,
                          gint64              holes,
                          GError            **error)
{
  SteadPostHole hole = { STEAD_HOLE_ROUND, build->hole_m, STEAD_HOLE_ROUND, build->post_m, self->hole_depth_m };
  double each_m3 = stead_post_hole_m3 (&hole) * (1 + build->mix_waste);
  gint64 bags = holes > 0 ? stead_concrete_bags (each_m3 * (double) holes, build->bag_lb) : 0;

  if (bags == STEAD_COUNT_NONE)
    return TRUE;
  self->bags_by_hole = holes > 0 ? stead_concrete_bags_by_hole (each_m3, holes, build->bag_lb) : 0;
  stead_build_need_add (self, STEAD_BUILD_PART_GROUND, g_strdup_printf ("concrete_%d", build->bag_lb),
                        /* Translators: a bag as it is sold. */
                        g_strdup_printf (_("Concrete mix, bag of %d lb"), build->bag_lb), (double) bags, NULL,
                        g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                                      "%d hole, rounded up once for the job; hole by hole it would be %d",
                                                      "%d holes, rounded up once for the job; hole by hole it would be %d",
                                                      (gulong) holes),
                                         (int) holes, (int) self->bags_by_hole));
  return TRUE;
}

static void
add_bedding (SteadBuildTakeoff *self,
             const SteadBuild  *build,
             SteadUnitSystem         units)
{
  double m3 = stead_fill_m3 (self->shelter_m2, build->bed_m);
  g_autofree char *area = stead_build_area_text (self->shelter_m2, units);
  g_autofree char *depth = stead_build_length_text (build->bed_m, units);

  if (!(m3 > 0))
    return;
  stead_build_need_add (self, STEAD_BUILD_PART_GROUND, g_strdup (units == STEAD_UNITS_US ? "bedding_cuyd" : "bedding_m3"),
                        g_strdup (_("Bedding")), units == STEAD_UNITS_US ? m3 / CUYD : m3,
                        units == STEAD_UNITS_US ? C_("unit of volume", "cu yd") : C_("unit of volume", "m³"),
                        g_strdup_printf (_("%s of floor, %s deep"), area, depth));
}

/* --- the whole ------------------------------------------------------------------------- */

static void
measure (SteadBuildTakeoff *self,
         const SteadBuild  *build)
{
  guint n = build->corners->len;
  g_autofree SteadCorner *corners = g_new0 (SteadCorner, n + 1);
  g_autofree double *level = g_new0 (double, n + 1);

  for (guint i = 0; i < n; i++)
    corners[i] = (SteadCorner) { g_array_index (build->corners, SteadBuildCorner, i).x_m,
                                 g_array_index (build->corners, SteadBuildCorner, i).y_m };
  stead_outline_sides (corners, n, level);
  self->area_m2 = stead_outline_area_m2 (corners, n);
  for (guint i = 0; i < n; i++)
    {
      const SteadBuildCorner *corner = &g_array_index (build->corners, SteadBuildCorner, i);
      double side = corner->steps > 0 ? level[i] : hypot (level[i], corner->rise_m);

      self->perimeter_m += side;
      g_array_append_val (self->sides_m, side);
    }
}

static gboolean
add_all (SteadBuildTakeoff  *self,
         const SteadBuild   *build,
         SteadUnitSystem          units,
         GError            **error)
{
  gint64 fence_holes = 0, shelter_holes = 0;

  self->shelter_m2 = build->kind != STEAD_BUILD_PEN ? self->area_m2
                     : build->has_shelter ? build->shelter.wall_m * build->shelter.depth_m : 0;
  if (build->kind == STEAD_BUILD_PEN && !stead_build_add_fence (self, build, units, &fence_holes, error))
    return FALSE;
  if (build->kind == STEAD_BUILD_RUN && !stead_build_add_run (self, build, units, &fence_holes, error))
    return FALSE;
  if (build->kind == STEAD_BUILD_HOOP && !stead_build_add_hoop (self, build, units, error))
    return FALSE;
  stead_build_add_gates (self, build, units);
  if (build->kind == STEAD_BUILD_PEN && build->has_shelter &&
      !stead_build_add_shelter (self, build, units, &shelter_holes, error))
    return FALSE;
  if (!stead_build_add_concrete (self, build, fence_holes + shelter_holes, error))
    return FALSE;
  add_bedding (self, build, units);
  return TRUE;
}

SteadBuildTakeoff *
stead_build_takeoff_new (const SteadBuild  *build,
                         SteadUnitSystem         units,
                         GError           **error)
{
  g_autoptr(SteadBuildTakeoff) self = NULL;

  g_return_val_if_fail (build != NULL, NULL);
  if (!stead_build_check (build, error))
    return NULL;
  self = g_new0 (SteadBuildTakeoff, 1);
  self->needs = g_ptr_array_new_with_free_func (need_free);
  self->cuts = g_ptr_array_new_with_free_func (cut_free);
  self->sides_m = g_array_new (FALSE, FALSE, sizeof (double));
  self->hole_depth_m = isnan (build->frost_m) ? build->depth_m : stead_post_depth_m (build->depth_m, build->frost_m);
  if (build->kind == STEAD_BUILD_LIST)
    return g_steal_pointer (&self);
  measure (self, build);
  return add_all (self, build, units, error) ? g_steal_pointer (&self) : NULL;
}
