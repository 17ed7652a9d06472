/* stead-month-chart.h - columns over months: one for each, or two side by side. */
#pragma once

#include "draw/stead-axis.h"

G_BEGIN_DECLS

#define STEAD_MONTHS_MAX 24

typedef struct
{
  int                 n;         /* 1 to %STEAD_MONTHS_MAX */
  const char * const *names;     /* under each */
  const double       *values;    /* 0 or more */
  const double       *others;    /* (nullable): beside them, 0 or more */
  SteadRole           role, other_role;
  SteadPattern        pattern, other_pattern;
  gboolean            money;     /* values are minor units */
} SteadMonthSeries;

typedef struct
{
  SteadBox  plot;
  SteadAxis axis;
  double    font_size;
  SteadBox  columns[STEAD_MONTHS_MAX];
  SteadBox  others[STEAD_MONTHS_MAX];
} SteadMonthLayout;

void stead_month_chart_layout (cairo_t                *cr,
                               const SteadMonthSeries *series,
                               const SteadDrawStyle   *style,
                               double                  width,
                               double                  height,
                               SteadMonthLayout       *out);

void stead_month_chart_paint  (cairo_t                *cr,
                               const SteadMonthSeries *series,
                               const SteadDrawStyle   *style,
                               const SteadMonthLayout *layout);

G_END_DECLS
