/* stead-run-plot.h - cash over and short by sale day, as a run chart.
 *
 * One point a count in the order of time, a line at the median, and rings around the
 * points of a sign that chance alone seldom gives (core/stead-run-chart.h).
 */
#pragma once

#include "core/stead-calendar.h"
#include "core/stead-run-chart.h"
#include "draw/stead-draw.h"

G_BEGIN_DECLS

/* The arrays belong to whoever filled them in. */
typedef struct
{
  const SteadDay *days;      /* (array length=n) */
  const double   *cents;     /* (array length=n): above 0: over, below 0: short */
  gsize           n;         /* 1 or more */
  SteadRunChart   run;
} SteadRunPlot;

/* More counts than this are drawn, but only the latest are named. */
#define STEAD_RUN_MOST_NAMES 20

typedef struct
{
  SteadBox   plot;
  double     low_cents, high_cents;   /* ends of the axis */
  SteadTicks y_ticks;
  double     font_size;
  gsize      first_named;
  SteadBox   day_boxes[STEAD_RUN_MOST_NAMES];    /* width 0: there was no room */
  SteadBox   sum_boxes[STEAD_RUN_MOST_NAMES];    /* width 0 also where it agrees */
  SteadBox   median_box;                         /* width 0: no words for it */
} SteadRunLayout;

/* @median: (nullable): words at the line of the median */
void stead_run_plot_layout (cairo_t              *cr,
                            const SteadRunPlot   *plot,
                            const char           *median,
                            const SteadDrawStyle *style,
                            double                width,
                            double                height,
                            SteadRunLayout       *out);

void stead_run_plot_paint (cairo_t              *cr,
                           const SteadRunPlot   *plot,
                           const char           *median,
                           const SteadDrawStyle *style,
                           const SteadRunLayout *layout);

/* Where the point numbered @i stands. */
double stead_run_plot_x (const SteadRunPlot *plot, const SteadRunLayout *layout, gsize i);
double stead_run_plot_y (const SteadRunLayout *layout, double cents);

G_END_DECLS
