/* stead-score-chart.h - scores of practices over time, a line for each part and person. */
#pragma once

#include "core/stead-score.h"
#include "draw/stead-axis.h"
#include "draw/stead-key.h"

G_BEGIN_DECLS

typedef struct
{
  SteadBox  plot;
  SteadAxis days, shares;
  double    font_size;
  gboolean  narrow;              /* named by keys over the plot, not beside it */
  double    names_width;
  SteadKey  keys[STEAD_SCORE_MOST_LINES];
  SteadBox  unit_box, event_box;   /* width 0: there is none */
} SteadScoreLayout;

/**
 * stead_score_chart_layout:
 *
 * The left axis goes from none to all of the points, so that two events can be
 * compared; the lower one from the first practice to the event or the last score.
 */
void stead_score_chart_layout (cairo_t                *cr,
                               const SteadScoreSeries *series,
                               const SteadDrawStyle   *style,
                               double                  width,
                               double                  height,
                               SteadScoreLayout       *out);

void stead_score_chart_paint  (cairo_t                *cr,
                               const SteadScoreSeries *series,
                               const SteadDrawStyle   *style,
                               const SteadScoreLayout *layout);

/* Where a score stands. */
void stead_score_chart_point  (const SteadScoreLayout *layout,
                               const SteadScorePoint  *point,
                               double                 *x,
                               double                 *y);

G_END_DECLS
