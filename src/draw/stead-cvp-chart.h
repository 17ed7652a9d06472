/* stead-cvp-chart.h - money in against all costs, by units sold. */
#pragma once

#include "core/stead-breakeven.h"
#include "draw/stead-key.h"

G_BEGIN_DECLS

/* Words that the chart bears; the answer layer fills them in. */
typedef struct
{
  const char *axis;         /* "dozens sold on the sale day" */
  const char *even;         /* "break-even 46 dozen"; (nullable) */
  const char *lasting;      /* (nullable): with steps, "no loss from 61 dozen on" */
  const char *plan;         /* "plan 72"; (nullable) */
  const char *plan_gap;     /* (nullable): "$54.48 left", at the plan between the lines */
  const char *money_in;     /* "money in" */
  const char *all_costs;    /* "all costs" */
  const char *fixed_costs;  /* "fixed costs" */
} SteadCvpWords;

/* Where everything stands; all that a test or a handle needs, in the box's coordinates. */
typedef struct
{
  SteadBox    plot;            /* the axes' rectangle */
  double      max_units;       /* right end of the axis */
  double      max_cents;       /* upper end */
  double      min_cents;       /* lower end: 0 */
  SteadTicks  x_ticks;
  SteadTicks  y_ticks;         /* in cents */
  double      font_size;       /* the text that this box carries */
  gboolean    has_even;
  double      even_x, even_y;
  gboolean    has_lasting;     /* steps make a second crossing, and this one holds */
  double      lasting_x, lasting_y;
  gboolean    has_plan;        /* it lies on the axis */
  double      plan_x, plan_y;  /* the handle at the foot of the plan's line */
  double      plan_revenue_y, plan_cost_y;
  double      price_x, price_y;      /* the handle at the end of "money in": where the line leaves the plot */
  double      cost_x, cost_y;        /* the handle at the end of "all costs"; moved back along the line
                                        where it would cover the price's */
  double      fixed_x, fixed_y;      /* the handle at the start of the costs; moved right along the line
                                        where it would cover the plan's */
  gboolean    narrow;                /* the lines are named by keys over the plot, not at their ends */
  double      right_labels_x, right_labels_width;
  double      label_money_in_y, label_all_costs_y, label_fixed_y;  /* moved apart where they would touch */
  SteadKey    keys[3];               /* money in, all costs, fixed costs: what they are called and drawn with */

  /* What each text covers, for tests and for whoever lays something over the chart;
   * width 0 where there is none. */
  SteadBox    money_in_box, all_costs_box, fixed_box;
  SteadBox    axis_box, plan_box, even_box, lasting_box, gap_box;
} SteadCvpLayout;

/**
 * stead_cvp_chart_range:
 * @cvp: the numbers
 * @max_units: (out): a round right end that shows the plan and the break-even
 * @max_cents: (out): a round upper end
 *
 * Held still during a drag by passing the same range on, so that the line moves
 * under the pointer and not the axis under the line.
 */
void stead_cvp_chart_range (const SteadCvp *cvp,
                            double         *max_units,
                            double         *max_cents);

/**
 * stead_cvp_chart_layout:
 * @words: they must outlive @out, which points to them
 *
 * The texts of the ticks are made and freed on the way; nothing is kept but what
 * the text cache keeps.
 *
 * The price that a handle at (x, y) means is cents_at (y) / units_at (x), since the
 * line may leave the plot at the top.
 */
void stead_cvp_chart_layout (cairo_t              *cr,
                             const SteadCvp       *cvp,
                             const SteadCvpWords  *words,
                             const SteadDrawStyle *style,
                             double                max_units,
                             double                max_cents,
                             double                width,
                             double                height,
                             SteadCvpLayout       *out);

void stead_cvp_chart_paint (cairo_t              *cr,
                            const SteadCvp       *cvp,
                            const SteadCvpWords  *words,
                            const SteadDrawStyle *style,
                            const SteadCvpLayout *layout);

/* The room that a handle takes round its place: its radius, px. */
#define STEAD_CVP_HANDLE_RADIUS 14.0

/* From a pixel back to the value that a handle there means: units at @x, cents at @y. */
double stead_cvp_chart_units_at (const SteadCvpLayout *layout,
                                 double                x);
double stead_cvp_chart_cents_at (const SteadCvpLayout *layout,
                                 double                y);

/* And forward, for what is laid over the chart. */
double stead_cvp_chart_x (const SteadCvpLayout *layout,
                          double                units);
double stead_cvp_chart_y (const SteadCvpLayout *layout,
                          double                cents);

G_END_DECLS
