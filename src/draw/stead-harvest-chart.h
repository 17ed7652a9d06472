/* stead-harvest-chart.h - what is picked of a crop, week by week, and what is to come. */
#pragma once

#include "core/stead-harvest-series.h"
#include "draw/stead-axis.h"
#include "draw/stead-key.h"

G_BEGIN_DECLS

typedef struct
{
  const char *amount;     /* (nullable): over the left axis, "lb a week" */
  const char *picked;     /* "picked" */
  const char *lost;       /* "thrown out" */
  const char *expected;   /* "expected, with its band" */
  const char *today;      /* "today" */
  const char *ripe;       /* (nullable): over the plot, "first pick: May 12" */
  double      factor;     /* from kg to the unit that amounts are shown in */
} SteadHarvestWords;

typedef struct
{
  SteadBox   plot;
  SteadDay   first, last;       /* days at its two ends */
  SteadTicks x_ticks, y_ticks;  /* days; amounts in the unit shown */
  double     max_kg;            /* at the top of the plot */
  double     factor;
  double     font_size;         /* the text that this box carries */
  double     bar_width;
  gboolean   has_picked, has_lost, has_ahead, has_today, has_ripe;
  double     today_x, ripe_x, ripe_early_x, ripe_late_x;
  int        n_keys;
  SteadKey   keys[STEAD_MAX_KEYS];

  /* What each text covers; width 0 where there is none. */
  SteadBox   amount_box, today_box, ripe_box;
} SteadHarvestLayout;

void stead_harvest_chart_layout (cairo_t                  *cr,
                                 const SteadHarvestSeries *series,
                                 const SteadHarvestWords  *words,
                                 const SteadDrawStyle     *style,
                                 double                    width,
                                 double                    height,
                                 SteadHarvestLayout       *out);

double stead_harvest_chart_x (const SteadHarvestLayout *layout,
                              SteadDay                  day);
double stead_harvest_chart_y (const SteadHarvestLayout *layout,
                              double                    kg);

/* The bar of what was picked in a week (what was thrown out stands on it); %FALSE if nothing was. */
gboolean stead_harvest_chart_bar (const SteadHarvestLayout *layout,
                                  const SteadPickWeek      *week,
                                  SteadBox                 *out);

/* The week under @x, or the nearest; -1 without weeks. */
int stead_harvest_chart_nearest (const SteadHarvestLayout *layout,
                                 const SteadHarvestSeries *series,
                                 double                    x);

/* @marked: the week to point out, or -1 */
void stead_harvest_chart_paint (cairo_t                  *cr,
                                const SteadHarvestSeries *series,
                                const SteadHarvestWords  *words,
                                const SteadDrawStyle     *style,
                                const SteadHarvestLayout *layout,
                                int                       marked);

G_END_DECLS
