/* stead-price-history-chart.h - the prices of one product over time, as steps. */
#pragma once

#include "core/stead-calendar.h"
#include "draw/stead-draw.h"

G_BEGIN_DECLS

/* A price holds from its day to the next one's.  The arrays belong to whoever filled them in. */
typedef struct
{
  const SteadDay *days;         /* rising */
  const gint64   *cents;        /* 0 or more */
  gsize           n;
  SteadDay        today;        /* the last price is drawn up to here */
  gint64          cost_cents;   /* what one unit costs now, a line to compare with; -1: none */
} SteadPriceHistory;

typedef struct
{
  const char *cost;    /* (nullable): "costs $2.41 now" */
} SteadPriceHistoryWords;

/* More changes than this are drawn, but only the latest are named. */
#define STEAD_PRICE_MAX_NAMES 20

typedef struct
{
  SteadBox   plot;
  SteadDay   min_day, max_day;
  double     max_cents;
  SteadTicks y_ticks;
  double     font_size;
  gsize      first_named;                          /* the first change that is named */
  SteadBox   price_boxes[STEAD_PRICE_MAX_NAMES];   /* width 0: there was no room */
  SteadBox   day_boxes[STEAD_PRICE_MAX_NAMES];
  SteadBox   cost_box;
} SteadPriceHistoryLayout;

void stead_price_history_chart_layout (cairo_t                       *cr,
                                       const SteadPriceHistory       *history,
                                       const SteadPriceHistoryWords  *words,
                                       const SteadDrawStyle          *style,
                                       double                         width,
                                       double                         height,
                                       SteadPriceHistoryLayout       *out);

void stead_price_history_chart_paint (cairo_t                       *cr,
                                      const SteadPriceHistory       *history,
                                      const SteadPriceHistoryWords  *words,
                                      const SteadDrawStyle          *style,
                                      const SteadPriceHistoryLayout *layout);

/* The point at which the change numbered @i begins. */
double stead_price_history_chart_x (const SteadPriceHistoryLayout *layout,
                                    SteadDay                       day);
double stead_price_history_chart_y (const SteadPriceHistoryLayout *layout,
                                    double                         cents);

G_END_DECLS
