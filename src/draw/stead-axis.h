/* stead-axis.h - one axis of a chart: its range, its round steps, their texts. */
#pragma once

#include "draw/stead-draw.h"

G_BEGIN_DECLS

typedef struct _SteadAxis SteadAxis;

struct _SteadAxis
{
  double     low, high;   /* values at the two ends; high above low */
  SteadTicks ticks;
  /* (transfer full): the text of one tick */
  char    *(*text) (const SteadAxis      *axis,
                    const SteadDrawStyle *style,
                    double                value);
};

/* Texts: whole or broken numbers, percent of a share without its sign, money in minor units. */
char *stead_axis_text_number  (const SteadAxis *axis, const SteadDrawStyle *style, double value);
char *stead_axis_text_hundred (const SteadAxis *axis, const SteadDrawStyle *style, double value);
char *stead_axis_text_money   (const SteadAxis *axis, const SteadDrawStyle *style, double value);

/* Width of the widest text; height of one. */
void stead_axis_measure (cairo_t              *cr,
                         const SteadDrawStyle *style,
                         const SteadAxis      *axis,
                         double               *width,
                         double               *height);

/* Where a value stands, outside the plot too. */
double stead_axis_x (const SteadAxis *axis,
                     const SteadBox  *plot,
                     double           value);
double stead_axis_y (const SteadAxis *axis,
                     const SteadBox  *plot,
                     double           value);

/* Hairlines through the plot and texts that end @gap left of it.  The zero line is
 * stronger than the others. */
void stead_axis_paint_left (cairo_t              *cr,
                            const SteadDrawStyle *style,
                            const SteadAxis      *axis,
                            const SteadBox       *plot,
                            double                gap);

/* Short ticks under the plot and texts that begin @gap under it. */
void stead_axis_paint_bottom (cairo_t              *cr,
                              const SteadDrawStyle *style,
                              const SteadAxis      *axis,
                              const SteadBox       *plot,
                              double                gap);

G_END_DECLS
