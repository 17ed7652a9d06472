/* stead-share-chart.h - one sum cut into parts in several ways, a bar for each way: the bars are
 * equally long, and what moves between them is seen.
 */
#pragma once

#include "draw/stead-draw.h"

G_BEGIN_DECLS

#define STEAD_MAX_SHARES 6   /* parts */
#define STEAD_MAX_WAYS 4     /* bars */

typedef struct
{
  const char   *name;
  SteadRole     role;
  SteadPattern  pattern;
} SteadShareChartPart;

typedef struct
{
  const char *name;                       /* of the way, left of its bar */
  const char *texts[STEAD_MAX_SHARES];    /* of each part: "$912.40" */
  double      cents[STEAD_MAX_SHARES];    /* 0 or more; they make the same sum in each way */
  gboolean    chosen;                     /* its name is bold */
} SteadShareWay;

typedef struct
{
  SteadShareChartPart parts[STEAD_MAX_SHARES];
  int                 n_parts;
  SteadShareWay  ways[STEAD_MAX_WAYS];
  int            n_ways;
} SteadShareSeries;

typedef struct
{
  double   font_size;
  SteadBox keys[STEAD_MAX_SHARES];                     /* the square and its name */
  SteadBox names[STEAD_MAX_WAYS];
  SteadBox bars[STEAD_MAX_WAYS][STEAD_MAX_SHARES];
  SteadBox texts[STEAD_MAX_WAYS][STEAD_MAX_SHARES];    /* width 0: there is no room for it */
} SteadShareLayout;

/* The height at which every bar has room for its texts. */
double stead_share_chart_height (const SteadShareSeries *series,
                                 const SteadDrawStyle   *style);

void   stead_share_chart_layout (cairo_t                *cr,
                                 const SteadShareSeries *series,
                                 const SteadDrawStyle   *style,
                                 double                  width,
                                 double                  height,
                                 SteadShareLayout       *out);

void   stead_share_chart_paint  (cairo_t                *cr,
                                 const SteadShareSeries *series,
                                 const SteadDrawStyle   *style,
                                 const SteadShareLayout *layout);

/* The bar whose row holds @y; -1: none. */
int    stead_share_chart_at     (const SteadShareSeries *series,
                                 const SteadShareLayout *layout,
                                 double                  y);

G_END_DECLS
