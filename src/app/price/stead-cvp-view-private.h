/* stead-cvp-view-private.h - what the break-even chart and its pointer share. */
#pragma once

#include "answer/stead-cvp-labels.h"
#include "app/price/stead-cvp-view.h"

G_BEGIN_DECLS

struct _SteadCvpView
{
  GtkWidget        parent_instance;

  SteadPriceModel *model;
  SteadChartArea  *chart;
  GtkWidget       *handles[STEAD_N_HANDLES];
  gint64           told[STEAD_N_HANDLES];     /* the value that a handle's name says */

  SteadCvpLabels  *labels;                    /* (nullable) */
  SteadCvpLayout   layout;
  gboolean         laid;                      /* layout is of the present numbers and size */
  cairo_t         *scratch;                   /* to measure text with */
  gboolean         syncing;                   /* while handles follow the model */

  gboolean         dragging;
  SteadKnob        grabbed;
  double           grab_units;                /* along its line, where the grabbed handle stays */
  double           grab_x, grab_y;            /* its middle when it was grabbed */

  guint            settle_id;
  guint            tick_id;
  gint64           ease_since;
  double           from_units, from_cents;    /* ends of the axes when the move began */
  double           shown_units, shown_cents;  /* as they are now */
};

/* (nullable): nothing is known of the product yet. */
static inline const SteadPriceAnswer *
stead_cvp_view_answer (SteadCvpView *self)
{
  return self->model != NULL ? stead_price_model_get_answer (self->model) : NULL;
}

const char *stead_cvp_view_currency      (SteadCvpView *self);
/* In stead-cvp-handles.c. */
GtkWidget  *stead_cvp_view_make_handle   (SteadCvpView *self, SteadKnob knob);
/* All handles to where the model has them. */
void        stead_cvp_view_sync_handles  (SteadCvpView *self);
/* The middle of a handle. */
void        stead_cvp_view_find_place    (SteadCvpView *self, SteadKnob knob, double *x, double *y);
/* The nearest one within reach; %FALSE: none. */
gboolean    stead_cvp_view_find_handle   (SteadCvpView *self, double x, double y, SteadKnob *out);
/* Lays out and paints anew. */
void        stead_cvp_view_show          (SteadCvpView *self);

/* In stead-cvp-pointer.c. */
void        stead_cvp_view_add_pointer   (SteadCvpView *self);
void        stead_cvp_view_stop_dragging (SteadCvpView *self);

G_END_DECLS
