/* stead-build-figure.c - the plan of a build and its fan chart, out of the answers. */
#include "config.h"

#include "core/stead-money.h"
#include "core/stead-us-units.h"
#include "paper/stead-build-figure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FT STEAD_FOOT_M
#define PRINT_TEXT 9.0

/* --- plan ------------------------------------------------------------------------------- */

/* "48 ft", and where the ground rises: "48 ft, rises 2 ft in 3 steps". */
static char *
side_text (const SteadBuild *build,
           guint             i,
           SteadUnitSystem   units)
{
  const SteadBuildCorner *a = &g_array_index (build->corners, SteadBuildCorner, i);
  const SteadBuildCorner *b = &g_array_index (build->corners, SteadBuildCorner, (i + 1) % build->corners->len);
  g_autofree char *length = stead_build_length_text (hypot (b->x_m - a->x_m, b->y_m - a->y_m), units);
  g_autofree char *rise = stead_build_length_text (fabs (a->rise_m), units);

  if (a->rise_m == 0)
    return g_steal_pointer (&length);
  if (a->steps > 0)
    /* Translators: length of a side, how much the ground rises, level steps of the fence. */
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s, slope %s in %d step", "%s, slope %s in %d steps", (gulong) a->steps),
                            length, rise, a->steps);
  /* Translators: length of a side, and how much the ground rises along it. */
  return g_strdup_printf (_("%s, slope %s"), length, rise);
}

static void
add_shelter (SteadPlanFigure  *self,
             const SteadBuild *build,
             SteadUnitSystem   units)
{
  const SteadBuildShelter *s = &build->shelter;
  gboolean turned = s->turn % 2 == 1;
  g_autofree char *wall = stead_build_length_text (s->wall_m, units);
  g_autofree char *depth = stead_build_length_text (s->depth_m, units);

  if (!build->has_shelter)
    return;
  self->plan.has_shelter = TRUE;
  self->plan.shelter_open = s->turn;
  self->plan.shelter_m = (SteadBox) { s->x_m, s->y_m, turned ? s->depth_m : s->wall_m, turned ? s->wall_m : s->depth_m };
  /* Translators: two measures of a shelter on a plan. */
  self->shelter_text = g_strdup_printf (C_("two measures", "%s by %s"), wall, depth);
}

SteadPlanFigure *
stead_plan_figure_new (const SteadBuild *build,
                       SteadUnitSystem   units,
                       gboolean          handles)
{
  SteadPlanFigure *self = g_new0 (SteadPlanFigure, 1);
  guint n = build->corners->len, n_gates = build->gates->len;
  double across = 0;

  self->corners = g_new0 (SteadCorner, n + 1);
  self->gates = g_new0 (SteadFenceGate, n_gates + 1);
  self->side_texts = g_new0 (char *, n + 1);
  self->gate_texts = g_new0 (char *, n_gates + 1);
  for (guint i = 0; i < n; i++)
    {
      const SteadBuildCorner *corner = &g_array_index (build->corners, SteadBuildCorner, i);

      self->corners[i] = (SteadCorner) { corner->x_m, corner->y_m };
      self->side_texts[i] = side_text (build, i, units);
      across = MAX (across, hypot (corner->x_m - self->corners[0].x_m, corner->y_m - self->corners[0].y_m));
    }
  for (guint i = 0; i < n_gates; i++)
    {
      g_autofree char *width = NULL;

      self->gates[i] = g_array_index (build->gates, SteadFenceGate, i);
      width = stead_build_length_text (self->gates[i].width_m, units);
      /* Translators: on a plan, the width of a gate. */
      self->gate_texts[i] = g_strdup_printf (_("gate %s"), width);
    }
  add_shelter (self, build, units);
  self->plan.bar_m = units == STEAD_UNITS_US ? (across > 40 ? 20 : 10) * FT : across > 40 ? 5 : 2;
  self->bar_text = stead_build_length_text (self->plan.bar_m, units);
  self->plan.corners = self->corners;
  self->plan.n = n;
  self->plan.gates = self->gates;
  self->plan.n_gates = n_gates;
  self->plan.side_texts = (const char * const *) self->side_texts;
  self->plan.gate_texts = (const char * const *) self->gate_texts;
  self->plan.shelter_text = self->shelter_text;
  self->plan.bar_text = self->bar_text;
  self->plan.handles = handles;
  return self;
}

void
stead_plan_figure_free (gpointer figure)
{
  SteadPlanFigure *self = figure;

  if (self == NULL)
    return;
  g_free (self->corners);
  g_free (self->gates);
  g_strfreev (self->side_texts);
  g_strfreev (self->gate_texts);
  g_free (self->shelter_text);
  g_free (self->bar_text);
  g_free (self);
}

void
stead_plan_figure_print (cairo_t  *cr,
                         double    width,
                         double    height,
                         gpointer  figure)
{
  const SteadPlanFigure *self = figure;
  SteadDrawStyle style = { STEAD_SCHEME_PRINT, PRINT_TEXT, NULL, NULL };
  SteadPlanLayout layout;

  stead_plan_drawing_layout (cr, &self->plan, &style, width, height, NULL, &layout);
  stead_plan_drawing_paint (cr, &self->plan, &style, &layout, -1);
}

/* --- fan -------------------------------------------------------------------------------- */

static void
name_dates (SteadFundFigure      *self,
            const SteadBuildPath *path)
{
  for (int i = 0; i < STEAD_FUND_MOST_DATES; i++)
    {
      g_autofree char *day = NULL;

      self->path.days[i] = path->days[i];
      if (path->days[i] == STEAD_DAY_NONE)
        continue;
      day = stead_day_format (path->days[i], STEAD_DAY_STYLE_SHORT);
      /* Translators: so many of 100 chances that the goal is reached by the day. */
      self->dates[i] = g_strdup_printf (_("%d of 100: %s"), (int) lround (stead_build_sureties[i] * 100), day);
      self->words.dates[i] = self->dates[i];
    }
}

SteadFundFigure *
stead_fund_figure_new (const SteadBuildPath *path)
{
  SteadFundFigure *self = g_new0 (SteadFundFigure, 1);
  g_autofree char *goal = stead_money_format (stead_money_round (path->goal_cents), path->currency);

  g_return_val_if_fail (path->fans->len > 0, self);
  self->points = g_new0 (SteadFundPoint, path->fans->len);
  self->chances = g_new0 (double, path->fans->len);
  for (guint i = 0; i < path->fans->len; i++)
    {
      const SteadBuildFan *fan = &g_array_index (path->fans, SteadBuildFan, i);

      self->points[i] = (SteadFundPoint) { fan->day, fan->wide, fan->narrow };
      self->chances[i] = fan->chance;
    }
  self->currency = g_strdup (path->currency);
  /* Translators: beside the line of a goal in a chart. */
  self->goal = g_strdup_printf (_("goal %s"), goal);
  self->words.goal = self->goal;
  name_dates (self, path);
  if (path->goal_on != STEAD_DAY_NONE)
    {
      g_autofree char *day = stead_day_format (path->goal_on, STEAD_DAY_STYLE_SHORT);

      /* Translators: beside a line in a chart. */
      self->wanted = g_strdup_printf (_("wanted by %s"), day);
      self->words.wanted = self->wanted;
    }
  self->path.points = self->points;
  self->path.n = path->fans->len;
  self->path.goal_cents = path->goal_cents;
  self->path.wanted = path->goal_on;
  return self;
}

void
stead_fund_figure_free (gpointer figure)
{
  SteadFundFigure *self = figure;

  if (self == NULL)
    return;
  g_free (self->points);
  g_free (self->chances);
  g_free (self->goal);
  g_free (self->wanted);
  g_free (self->currency);
  for (int i = 0; i < STEAD_FUND_MOST_DATES; i++)
    g_free (self->dates[i]);
  g_free (self);
}

void
stead_fund_figure_print (cairo_t  *cr,
                         double    width,
                         double    height,
                         gpointer  figure)
{
  const SteadFundFigure *self = figure;
  SteadDrawStyle style = { STEAD_SCHEME_PRINT, PRINT_TEXT, NULL, self->currency };
  SteadFundLayout layout;

  stead_fund_chart_layout (cr, &self->path, &self->words, &style, width, height, &layout);
  stead_fund_chart_paint (cr, &self->path, &self->words, &style, &layout);
}
