/* stead-build-figure.h - the plan of a build and its fan chart, out of the answers: the
 * printed page and the window paint the same.
 */
#pragma once

#include "answer/stead-build-path.h"
#include "draw/stead-fund-chart.h"
#include "draw/stead-plan-drawing.h"

G_BEGIN_DECLS

typedef struct
{
  SteadPlan       plan;
  SteadCorner    *corners;
  SteadFenceGate *gates;
  char          **side_texts;
  char          **gate_texts;
  char           *shelter_text;
  char           *bar_text;
} SteadPlanFigure;

/* @handles: on screen */
SteadPlanFigure *stead_plan_figure_new   (const SteadBuild *build, SteadUnitSystem units, gboolean handles) G_GNUC_WARN_UNUSED_RESULT;
void             stead_plan_figure_free  (gpointer figure);
void             stead_plan_figure_print (cairo_t *cr, double width, double height, gpointer figure);

typedef struct
{
  SteadFundPath   path;
  SteadFundWords  words;
  SteadFundPoint *points;
  double         *chances;   /* one a point: that the goal was reached by then */
  char           *goal;
  char           *dates[STEAD_FUND_MOST_DATES];
  char           *wanted;
  char           *currency;
} SteadFundFigure;

/* @path: after its run */
SteadFundFigure *stead_fund_figure_new   (const SteadBuildPath *path) G_GNUC_WARN_UNUSED_RESULT;
void             stead_fund_figure_free  (gpointer figure);
void             stead_fund_figure_print (cairo_t *cr, double width, double height, gpointer figure);

G_END_DECLS
