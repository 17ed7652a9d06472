/* stead-cvp-chart.h - money in against all costs, by units sold. */
#pragma once

#include "core/stead-breakeven.h"
#include "draw/stead-draw.h"

G_BEGIN_DECLS

/* Words that the chart bears; the answer layer fills them in. */
typedef struct
{
  const char *axis;         /* "dozens sold on the sale day" */
  const char *even;         /* "break-even 46 dozen"; (nullable) */
  const char *plan;         /* "plan 72" */
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
  gboolean    has_even;
  double      even_x, even_y;
  double      plan_x;
  double      plan_revenue_y, plan_cost_y;
  double      price_x, price_y;      /* the handle at the end of "money in" */
  double      cost_x, cost_y;        /* the handle at the end of "all costs" */
  double      fixed_x, fixed_y;      /* the handle at the start of the costs */
  double      right_labels_x;
  double      label_money_in_y, label_all_costs_y, label_fixed_y;  /* moved apart where they would touch */
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

/* No heap of its own but Pango's for measuring. */
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

/* From a pixel back to the value that a handle there means: units at @x, cents at @y. */
double stead_cvp_chart_units_at (const SteadCvpLayout *layout,
                                 double                x);
double stead_cvp_chart_cents_at (const SteadCvpLayout *layout,
                                 double                y);

G_END_DECLS
