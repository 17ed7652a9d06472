/* stead-cooling-chart.h - a pot that cools: readings, the curve with its band, and what it must be below by when. */
#pragma once

#include "core/stead-cooling-series.h"
#include "draw/stead-axis.h"
#include "draw/stead-key.h"

G_BEGIN_DECLS

typedef struct
{
  const char *unit;                          /* (nullable): over the left axis, "°F in the middle of the pot" */
  gboolean    celsius;                       /* how the left axis counts */
  const char *expected;                      /* "expected" at the end of the curve */
  const char *too_warm;                      /* "too warm" beside the hatched area */
  const char *now;                           /* "now" */
  const char *act;                           /* (nullable): "act by 11:50 AM" */
  const char *marks[STEAD_COOLING_MARKS];    /* over the plot, "70 °F by 12:00 PM" */
} SteadCoolingWords;

typedef struct
{
  SteadBox  plot;
  SteadAxis x_axis;          /* minutes after midnight of the first reading's day */
  double    low_f, high_f;   /* at the ends of the plot */
  SteadTicks y_ticks;        /* in the unit shown */
  gboolean  celsius;
  double    font_size;       /* the text that this box carries */
  gboolean  narrow;          /* named by keys over the plot, not beside it */
  gboolean  has_now, has_act, has_ahead;
  double    now_x, act_x;
  double    due_x[STEAD_COOLING_MARKS], due_y[STEAD_COOLING_MARKS];
  double    right_labels_x, right_labels_width;
  int       n_keys;
  SteadKey  keys[STEAD_MAX_KEYS];

  /* What each text covers; width 0 where there is none. */
  SteadBox  unit_box, now_box, act_box, mark_box[STEAD_COOLING_MARKS];
} SteadCoolingLayout;

void stead_cooling_chart_layout (cairo_t                  *cr,
                                 const SteadCoolingSeries *series,
                                 const SteadCoolingWords  *words,
                                 const SteadDrawStyle     *style,
                                 double                    width,
                                 double                    height,
                                 SteadCoolingLayout       *out);

/* Where a minute of the series stands, and a temperature. */
double stead_cooling_chart_x (const SteadCoolingLayout *layout,
                              const SteadCoolingSeries *series,
                              double                    minute);
double stead_cooling_chart_y (const SteadCoolingLayout *layout,
                              double                    temp_f);

/* The reading nearest to @x; -1 if there is none. */
int    stead_cooling_chart_nearest (const SteadCoolingLayout *layout,
                                    const SteadCoolingSeries *series,
                                    double                    x);

void stead_cooling_chart_paint (cairo_t                  *cr,
                                const SteadCoolingSeries *series,
                                const SteadCoolingWords  *words,
                                const SteadDrawStyle     *style,
                                const SteadCoolingLayout *layout);

G_END_DECLS
