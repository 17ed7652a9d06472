/* stead-fund-chart.h - money for a goal over time: a fan, the goal, and the days on which
 * it is reached so surely.
 */
#pragma once

#include "core/stead-band.h"
#include "core/stead-calendar.h"
#include "draw/stead-axis.h"

G_BEGIN_DECLS

#define STEAD_FUND_MOST_DATES 3

typedef struct
{
  SteadDay  day;
  SteadBand wide;     /* minor units */
  SteadBand narrow;
} SteadFundPoint;

typedef struct
{
  const SteadFundPoint *points;   /* (array length=n): by day; 1 or more */
  gsize                 n;
  double                goal_cents;
  SteadDay              days[STEAD_FUND_MOST_DATES];   /* STEAD_DAY_NONE: not reached */
  SteadDay              wanted;                        /* STEAD_DAY_NONE: none */
} SteadFundPath;

typedef struct
{
  const char *goal;                          /* "goal $959.75" */
  const char *dates[STEAD_FUND_MOST_DATES];  /* (nullable): "50 of 100: May 3" */
  const char *wanted;                        /* (nullable): "wanted by May 20" */
} SteadFundWords;

typedef struct
{
  SteadBox  plot;
  SteadAxis money, days;
  double    font_size;
  SteadBox  goal_box;
  SteadBox  date_boxes[STEAD_FUND_MOST_DATES];
  SteadBox  wanted_box;
} SteadFundLayout;

void stead_fund_chart_layout (cairo_t              *cr,
                              const SteadFundPath  *path,
                              const SteadFundWords *words,
                              const SteadDrawStyle *style,
                              double                width,
                              double                height,
                              SteadFundLayout      *out);
void stead_fund_chart_paint  (cairo_t               *cr,
                              const SteadFundPath   *path,
                              const SteadFundWords  *words,
                              const SteadDrawStyle  *style,
                              const SteadFundLayout *layout);
/* The point nearest to @x; -1: none */
int  stead_fund_chart_nearest (const SteadFundLayout *layout, const SteadFundPath *path, double x);
/* Where the middle of a point stands */
void stead_fund_chart_point  (const SteadFundLayout *layout, const SteadFundPath *path, int point, double *x, double *y);

G_END_DECLS
