/* stead-labels.h - where labels stand, so that none covers another and all stay inside.
 *
 * Numbers in, numbers out: no cairo_t, no heap.
 */
#pragma once

#include "draw/stead-draw.h"

G_BEGIN_DECLS

#define STEAD_MAX_OBSTACLES 24
#define STEAD_MAX_STROKES 96

typedef struct
{
  double x0, y0, x1, y1;
} SteadStroke;

/* What a label has to keep clear of. */
typedef struct
{
  SteadBox    inside;                       /* no label leaves it */
  SteadBox    boxes[STEAD_MAX_OBSTACLES];   /* no label covers one of them */
  int         n_boxes;
  SteadStroke strokes[STEAD_MAX_STROKES];   /* lines that labels had better not cross */
  int         n_strokes;
} SteadObstacles;

gboolean stead_box_overlaps (const SteadBox *a,
                             const SteadBox *b);

/* Both forget what is more than they hold: the label is then placed as well as may be. */
void stead_obstacles_add_box    (SteadObstacles *self,
                                 SteadBox        box);
void stead_obstacles_add_stroke (SteadObstacles *self,
                                 double          x0,
                                 double          y0,
                                 double          x1,
                                 double          y1);

/**
 * stead_labels_place:
 * @obstacles: what to keep clear of
 * @x: the point that the label speaks of
 * @y: the same
 * @width: of the label
 * @height: of the label
 * @gap: between the point and the label
 * @out: (out): where it stands, inside @obstacles->inside
 *
 * Tries places round the point, the near ones first, and takes the one that covers
 * least; the same numbers always give the same place.
 *
 * Returns: whether no box is covered
 */
gboolean stead_labels_place (const SteadObstacles *obstacles,
                             double                x,
                             double                y,
                             double                width,
                             double                height,
                             double                gap,
                             SteadBox             *out);

/* A label at the end of a line. */
typedef struct
{
  double want_y;   /* vertical middle that it would like */
  double height;
  double y;        /* vertical middle that it gets */
} SteadEndLabel;

/**
 * stead_labels_spread:
 * @labels: (array length=n): those of one side
 * @n: at most 8
 * @top: the first label does not start above it
 * @bottom: the last label does not end below it, if there is room for all of them
 *
 * Moves labels apart that would touch, as little as may be, and keeps their order.
 *
 * Returns: whether there was room
 */
gboolean stead_labels_spread (SteadEndLabel *labels,
                              int            n,
                              double         top,
                              double         bottom);

G_END_DECLS
