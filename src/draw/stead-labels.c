/* stead-labels.c - where labels stand, so that none covers another and all stay inside. */
#include "config.h"

#include <math.h>

#include "draw/stead-labels.h"

#define MAX_END_LABELS 8
#define N_RINGS 6

/* What covering costs: a box far more than a line, a line more than distance. */
#define BOX_WEIGHT 1000.0
#define STROKE_WEIGHT 6.0
#define RING_WEIGHT 18.0

gboolean
stead_box_overlaps (const SteadBox *a,
                    const SteadBox *b)
{
  return a->width > 0 && b->width > 0 && a->height > 0 && b->height > 0
         && a->x < b->x + b->width && b->x < a->x + a->width
         && a->y < b->y + b->height && b->y < a->y + a->height;
}

void
stead_obstacles_add_box (SteadObstacles *self,
                         SteadBox        box)
{
  if (self->n_boxes < STEAD_MAX_OBSTACLES && box.width > 0 && box.height > 0)
    self->boxes[self->n_boxes++] = box;
}

void
stead_obstacles_add_stroke (SteadObstacles *self,
                            double          x0,
                            double          y0,
                            double          x1,
                            double          y1)
{
  if (self->n_strokes < STEAD_MAX_STROKES)
    self->strokes[self->n_strokes++] = (SteadStroke) { x0, y0, x1, y1 };
}

/* Cuts [t0, t1] to the part where start + t * run lies in [low, high]. */
static gboolean
cut_span (double  start,
          double  run,
          double  low,
          double  high,
          double *t0,
          double *t1)
{
  double a, b;

  if (run == 0)
    return start >= low && start <= high;
  a = (low - start) / run;
  b = (high - start) / run;
  *t0 = MAX (*t0, MIN (a, b));
  *t1 = MIN (*t1, MAX (a, b));
  return *t0 < *t1;
}

/* Length of the stroke inside the box (Liang and Barsky's way of clipping). */
static double
stroke_inside (const SteadStroke *stroke,
               const SteadBox    *box)
{
  double t0 = 0, t1 = 1;
  double dx = stroke->x1 - stroke->x0, dy = stroke->y1 - stroke->y0;

  if (!cut_span (stroke->x0, dx, box->x, box->x + box->width, &t0, &t1)
      || !cut_span (stroke->y0, dy, box->y, box->y + box->height, &t0, &t1))
    return 0;
  return (t1 - t0) * hypot (dx, dy);
}

static double
covering (const SteadObstacles *obstacles,
          const SteadBox       *box,
          gboolean             *out_clear)
{
  double sum = 0;

  *out_clear = TRUE;
  for (int i = 0; i < obstacles->n_boxes; i++)
    if (stead_box_overlaps (box, &obstacles->boxes[i]))
      {
        *out_clear = FALSE;
        sum += BOX_WEIGHT;
      }
  for (int i = 0; i < obstacles->n_strokes; i++)
    sum += STROKE_WEIGHT * stroke_inside (&obstacles->strokes[i], box);
  return sum;
}

gboolean
stead_labels_place (const SteadObstacles *obstacles,
                    double                x,
                    double                y,
                    double                width,
                    double                height,
                    double                gap,
                    SteadBox             *out)
{
  /* Below right first: under a break-even the costs lie above. */
  static const signed char sides[][2] = {
    { 1, 1 }, { -1, -1 }, { 1, 0 }, { -1, 0 }, { 0, 1 }, { 0, -1 }, { 1, -1 }, { -1, 1 },
  };
  const SteadBox *inside = &obstacles->inside;
  double best = INFINITY;
  gboolean best_clear = FALSE;

  for (int ring = 0; ring < N_RINGS; ring++)
    for (gsize i = 0; i < G_N_ELEMENTS (sides); i++)
      {
        double away = gap + ring * height * 0.9;
        SteadBox box = { .width = width, .height = height };
        gboolean clear;
        double cost;

        box.x = x + sides[i][0] * (width / 2 + away) - width / 2;
        box.y = y + sides[i][1] * (height / 2 + away) - height / 2;
        box.x = MAX (inside->x, MIN (box.x, inside->x + inside->width - width));
        box.y = MAX (inside->y, MIN (box.y, inside->y + inside->height - height));
        cost = covering (obstacles, &box, &clear) + RING_WEIGHT * ring + (double) i;
        if (cost < best)
          {
            best = cost;
            best_clear = clear;
            *out = box;
          }
      }
  return best_clear;
}

gboolean
stead_labels_spread (SteadEndLabel *labels,
                     int            n,
                     double         top,
                     double         bottom)
{
  int order[MAX_END_LABELS];
  double edge = top;

  g_return_val_if_fail (n >= 0 && n <= MAX_END_LABELS, FALSE);
  for (int i = 0; i < n; i++)
    {
      int at = i;

      for (; at > 0 && labels[order[at - 1]].want_y > labels[i].want_y; at--)
        order[at] = order[at - 1];
      order[at] = i;
    }
  for (int i = 0; i < n; i++)
    {
      SteadEndLabel *label = &labels[order[i]];

      label->y = MAX (label->want_y, edge + label->height / 2);
      edge = label->y + label->height / 2;
    }
  if (edge <= bottom)
    return TRUE;
  edge = bottom;
  for (int i = n - 1; i >= 0; i--)
    {
      SteadEndLabel *label = &labels[order[i]];

      label->y = MIN (label->y, edge - label->height / 2);
      edge = label->y - label->height / 2;
    }
  return edge >= top - 1e-9;   /* sums of halves */
}
