/* stead-bar-chart.h - named bars between two values of money, one under the other: the
 * steps from nothing to the whole cost of a unit, from last month's cost to this one's,
 * or how far profit lies apart when one thing changes.
 */
#pragma once

#include "draw/stead-axis.h"

G_BEGIN_DECLS

#define STEAD_MAX_BARS 20

typedef struct
{
  const char   *name;      /* left of it */
  const char   *value;     /* right of it: "$1.46" */
  double        from, to;  /* cents; it may go either way */
  SteadRole     role;
  SteadPattern  pattern;
  gboolean      total;     /* a sum: its name and value are bold */
} SteadBar;

typedef struct
{
  const SteadBar *bars;
  int             n;         /* at most %STEAD_MAX_BARS */
  gboolean        steps;     /* each begins where the last one ended: thin lines join them */
  double          base;      /* a line through all bars; NAN: none */
  const char     *base_name; /* (nullable): at its head */
} SteadBarSeries;

typedef struct
{
  SteadBox   plot;
  double     low, high;               /* of the lower axis, cents */
  SteadTicks ticks;
  double     font_size;
  SteadBox   bars[STEAD_MAX_BARS];
  SteadBox   names[STEAD_MAX_BARS];   /* what the texts cover */
  SteadBox   values[STEAD_MAX_BARS];
  double     base_x;
} SteadBarLayout;

/* The height at which every bar has room for its name. */
double stead_bar_chart_height (const SteadBarSeries *series,
                               const SteadDrawStyle *style);

void   stead_bar_chart_layout (cairo_t              *cr,
                               const SteadBarSeries *series,
                               const SteadDrawStyle *style,
                               double                width,
                               double                height,
                               SteadBarLayout       *out);

/* @marked: a bar to ring, or -1 */
void   stead_bar_chart_paint  (cairo_t              *cr,
                               const SteadBarSeries *series,
                               const SteadDrawStyle *style,
                               const SteadBarLayout *layout,
                               int                   marked);

/* The bar whose row holds @y; -1: none. */
int    stead_bar_chart_at     (const SteadBarSeries *series,
                               const SteadBarLayout *layout,
                               double                y);

G_END_DECLS
