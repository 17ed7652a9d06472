/* stead-plan-drawing.h - the plan of a pen to scale: sides with their lengths, gates,
 * shelter, slope, and a handle at each corner.
 */
#pragma once

#include "core/stead-fence.h"
#include "core/stead-outline.h"
#include "draw/stead-draw.h"

G_BEGIN_DECLS

#define STEAD_PLAN_MOST_NAMED 40

typedef struct
{
  const SteadCorner    *corners;       /* (array length=n) */
  gsize                 n;
  const SteadFenceGate *gates;         /* (array length=n_gates) */
  gsize                 n_gates;
  gboolean              has_shelter;
  SteadBox              shelter_m;     /* on the plan */
  int                   shelter_open;  /* its open side: 0 down, then quarter turns to the left */
  const char * const   *side_texts;    /* (array length=n): "48 ft" */
  const char * const   *gate_texts;    /* (array length=n_gates): "gate 12 ft" */
  const char           *shelter_text;  /* (nullable) */
  double                bar_m;         /* of the scale */
  const char           *bar_text;      /* "10 ft" */
  gboolean              handles;       /* on screen */
} SteadPlan;

typedef struct
{
  SteadBox plot;
  double   scale;               /* pixels a meter */
  double   origin_x, origin_y;  /* where 0, 0 of the plan stands */
  double   font_size;
  double   handle_radius;
  SteadBox bar_box;
  SteadBox side_boxes[STEAD_PLAN_MOST_NAMED];   /* width 0: no room for its name */
  SteadBox gate_boxes[STEAD_PLAN_MOST_NAMED];
} SteadPlanLayout;

/* @hold: (nullable): a layout whose scale and origin are kept, while a handle is dragged */
void stead_plan_drawing_layout (cairo_t               *cr,
                                const SteadPlan       *plan,
                                const SteadDrawStyle  *style,
                                double                 width,
                                double                 height,
                                const SteadPlanLayout *hold,
                                SteadPlanLayout       *out);
/* @chosen: the corner whose handle has the focus; -1: none */
void stead_plan_drawing_paint  (cairo_t               *cr,
                                const SteadPlan       *plan,
                                const SteadDrawStyle  *style,
                                const SteadPlanLayout *layout,
                                int                    chosen);

void stead_plan_drawing_place  (const SteadPlanLayout *layout, double x_m, double y_m, double *x, double *y);
void stead_plan_drawing_back   (const SteadPlanLayout *layout, double x, double y, double *x_m, double *y_m);
/* The corner whose handle is at the point; -1: none */
int  stead_plan_drawing_handle (const SteadPlanLayout *layout, const SteadPlan *plan, double x, double y);

G_END_DECLS
