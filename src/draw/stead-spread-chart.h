/* stead-spread-chart.h - how often each result came: columns side by side over an axis of money,
 * those below zero apart from the others, with lines at what matters.
 */
#pragma once

#include "draw/stead-axis.h"

G_BEGIN_DECLS

#define STEAD_MAX_SPREAD 48        /* columns */
#define STEAD_MAX_SPREAD_LINES 3

typedef struct
{
  double      cents;
  const char *text;      /* over it, in a row of its own */
  gboolean    bold;
} SteadSpreadLine;

typedef struct
{
  const guint     *counts;   /* (array length=n): how often, from the lowest result up */
  int              n;        /* 1 to %STEAD_MAX_SPREAD */
  double           low;      /* cents: left end of the first column … */
  double           step;     /* … and how wide each is; above 0 */
  SteadSpreadLine  lines[STEAD_MAX_SPREAD_LINES];
  int              n_lines;  /* those outside the columns are left out */
  const char      *x_name;   /* under the axis */
} SteadSpreadSeries;

typedef struct
{
  SteadBox   plot;
  double     high;           /* cents: right end of the last column */
  SteadTicks ticks;
  double     font_size;
  SteadBox   columns[STEAD_MAX_SPREAD];
  gboolean   below[STEAD_MAX_SPREAD];            /* a loss */
  double     lines[STEAD_MAX_SPREAD_LINES];      /* x; NAN: left out */
  SteadBox   texts[STEAD_MAX_SPREAD_LINES];
} SteadSpreadLayout;

void stead_spread_chart_layout (cairo_t                 *cr,
                                const SteadSpreadSeries *series,
                                const SteadDrawStyle    *style,
                                double                   width,
                                double                   height,
                                SteadSpreadLayout       *out);

void stead_spread_chart_paint  (cairo_t                 *cr,
                                const SteadSpreadSeries *series,
                                const SteadDrawStyle    *style,
                                const SteadSpreadLayout *layout);

/* The column that holds @x; -1: none. */
int  stead_spread_chart_at     (const SteadSpreadSeries *series,
                                const SteadSpreadLayout *layout,
                                double                   x);

G_END_DECLS
