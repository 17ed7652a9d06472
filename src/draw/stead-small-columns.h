/* stead-small-columns.h - one small column for each of many, to see at a glance who stands out. */
#pragma once

#include "draw/stead-draw.h"

G_BEGIN_DECLS

/* The array belongs to whoever filled it in. */
typedef struct
{
  const double *values;      /* (array length=n): 0 or more */
  int           n;           /* 1 or more */
  double        full;        /* what all could reach, a line; 0: the highest is the measure */
  SteadRole     role;
  SteadPattern  pattern;
  const char   *most;        /* (nullable): over the columns: "most 51 h" */
} SteadSmallColumns;

typedef struct
{
  SteadBox plot;
  double   font_size;
  double   top;              /* the value at the upper edge */
  double   step;             /* from one column's left edge to the next one's */
  SteadBox most_box;         /* width 0: there is none, or it has no room */
} SteadSmallColumnsLayout;

void stead_small_columns_layout (cairo_t                  *cr,
                                 const SteadSmallColumns  *columns,
                                 const SteadDrawStyle     *style,
                                 double                    width,
                                 double                    height,
                                 SteadSmallColumnsLayout  *out);

void stead_small_columns_paint  (cairo_t                       *cr,
                                 const SteadSmallColumns       *columns,
                                 const SteadDrawStyle          *style,
                                 const SteadSmallColumnsLayout *layout);

/* Where a column stands: its height is 0 where its value is. */
SteadBox stead_small_columns_box (const SteadSmallColumns       *columns,
                                  const SteadSmallColumnsLayout *layout,
                                  int                            i);
/* The column over which @x lies; -1: none. */
int      stead_small_columns_at  (const SteadSmallColumns       *columns,
                                  const SteadSmallColumnsLayout *layout,
                                  double                         x);

G_END_DECLS
