/* stead-path-chart.h - lines over a plane of two numbers, with marks, points and a band:
 * the path of profit as sales grow, what people ask for along a price, and what it earns.
 */
#pragma once

#include "draw/stead-axis.h"
#include "draw/stead-key.h"

G_BEGIN_DECLS

#define STEAD_MAX_PATHS 4
#define STEAD_MAX_PATH_MARKS 10

typedef struct
{
  double x, y;
} SteadPathPoint;

typedef struct
{
  const SteadPathPoint *points;
  int                   n;
  const char           *name;   /* beside its end */
  SteadRole             role;
  SteadLine             line;
} SteadPath;

/* A ringed place with its words. */
typedef struct
{
  double      x, y;
  const char *text;      /* (nullable) */
  gboolean    bold;      /* the one that the chart is looked at for: on ink */
  gboolean    drop;      /* a dotted line leads down to the axis */
} SteadPathMark;

typedef struct
{
  SteadPath              paths[STEAD_MAX_PATHS];
  int                    n_paths;
  SteadPathMark          marks[STEAD_MAX_PATH_MARKS];
  int                    n_marks;
  const SteadPathPoint  *band_low, *band_high;   /* (array length=n_band) (nullable) */
  int                    n_band;
  const SteadPathPoint  *dots;                   /* (array length=n_dots) (nullable): what was seen */
  int                    n_dots;
  const char            *x_name;                 /* under the lower axis */
  const char            *y_name;                 /* (nullable): over the left axis */
  gboolean               x_money, y_money;       /* else numbers */
  gboolean               zero;                   /* the left axis holds 0, and what lies under it is washed */
} SteadPathSeries;

typedef struct
{
  SteadBox   plot;
  double     x_low, x_high, y_low, y_high;
  SteadTicks x_ticks, y_ticks;
  double     font_size;
  gboolean   narrow;
  double     right_x, right_width;
  SteadKey   keys[STEAD_MAX_PATHS];
  SteadBox   marks[STEAD_MAX_PATH_MARKS];   /* what the words cover; width 0: none */
} SteadPathLayout;

void stead_path_chart_layout (cairo_t               *cr,
                              const SteadPathSeries *series,
                              const SteadDrawStyle  *style,
                              double                 width,
                              double                 height,
                              SteadPathLayout       *out);

void stead_path_chart_paint  (cairo_t               *cr,
                              const SteadPathSeries *series,
                              const SteadDrawStyle  *style,
                              const SteadPathLayout *layout);

double stead_path_chart_x    (const SteadPathLayout *layout, double value);
double stead_path_chart_y    (const SteadPathLayout *layout, double value);
/* And back: the value that a pixel means. */
double stead_path_chart_at   (const SteadPathLayout *layout, double x);

G_END_DECLS
