/* stead-trace-chart.h - the trace of a lot, from receipts on the left to what is left on the right.
 *
 * A card for each lot and batch, a band at its left edge that tells by its pattern
 * whether it came or was made, and a bar at its foot for how much of it is left.
 */
#pragma once

#include "core/stead-flow.h"
#include "draw/stead-draw.h"

G_BEGIN_DECLS

typedef struct
{
  gboolean is_drawn;
  SteadBox card;
  SteadBox title, detail, state;   /* what each text covers; width 0 where there is none */
  SteadBox bar;                    /* how much is left; width 0: not told */
} SteadTraceCard;

/* A column with more cards than there is room for ends with how many are not drawn. */
typedef struct
{
  guint    n_hidden;
  SteadBox more;
} SteadTraceColumn;

typedef struct
{
  double            font_size;     /* the text that this box carries */
  guint             n_cards;
  SteadTraceCard   *cards;         /* one for each node */
  int               n_columns;
  SteadTraceColumn *columns;
  double            text_width;    /* in which the texts of a card break */
} SteadTraceLayout;

void stead_trace_layout_clear (SteadTraceLayout *layout);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SteadTraceLayout, stead_trace_layout_clear)

/**
 * stead_trace_chart_height:
 * @width: in which it is to be drawn
 *
 * Returns: the least height in which every card has room at the full size of the text
 */
double stead_trace_chart_height (cairo_t              *cr,
                                 const SteadFlow      *flow,
                                 const SteadDrawStyle *style,
                                 double                width);

/* @out: to be cleared with stead_trace_layout_clear() */
void   stead_trace_chart_layout (cairo_t              *cr,
                                 const SteadFlow      *flow,
                                 const SteadDrawStyle *style,
                                 double                width,
                                 double                height,
                                 SteadTraceLayout     *out);

void   stead_trace_chart_paint  (cairo_t                *cr,
                                 const SteadFlow        *flow,
                                 const SteadDrawStyle   *style,
                                 const SteadTraceLayout *layout);

/* The node whose card holds the point; -1: none. */
int    stead_trace_chart_at     (const SteadTraceLayout *layout,
                                 double                  x,
                                 double                  y);

G_END_DECLS
