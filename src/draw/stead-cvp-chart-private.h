/* stead-cvp-chart-private.h - what the layout and the paint of the break-even chart share. */
#pragma once

#include "draw/stead-axis.h"
#include "draw/stead-cvp-chart.h"

G_BEGIN_DECLS

/* The costs between two edges of steps: straight. */
typedef struct
{
  double units0, units1;
  double cost0, cost1;    /* cents at the two ends, from inside */
  double fixed;           /* cents of it that are fixed here */
} SteadCvpPiece;

/**
 * stead_cvp_piece_next:
 * @piece: (inout): one with units1 at 0 to begin; becomes the next one
 *
 * Steps closer than two pixels run together into pieces of that width, so that
 * there are never more pieces than pixels.
 *
 * Returns: %FALSE past the right end of the axis
 */
gboolean stead_cvp_piece_next (const SteadCvp       *cvp,
                               const SteadCvpLayout *layout,
                               SteadCvpPiece        *piece);

SteadAxis stead_cvp_chart_x_axis (const SteadCvpLayout *layout);
SteadAxis stead_cvp_chart_y_axis (const SteadCvpLayout *layout);

/* Width of the lines, of the ring, gap of the tick texts; handles need room on a screen. */
double stead_cvp_line_width (const SteadDrawStyle *style);
double stead_cvp_ring_radius (const SteadDrawStyle *style);
double stead_cvp_tick_gap (const SteadDrawStyle *style);

/* Padding of the chip round its text. */
#define STEAD_CVP_CHIP_PAD_X_EM 0.6
#define STEAD_CVP_CHIP_PAD_Y_EM 0.25

/* Widest that a chip's text runs before it breaks. */
double stead_cvp_chip_text_width (const SteadCvpLayout *layout);

G_END_DECLS
