/* stead-cvp-pointer.c - the pointer on the break-even chart: what it is near to, and what it drags.
 *
 * The handle that is nearest is the one that is grabbed, and a press beside a handle moves
 * nothing.  One that is dragged keeps its place along its line, so that it stays under the pointer.
 */
#include "config.h"

#include "app/price/stead-cvp-view-private.h"

#include <math.h>

#include "core/stead-money.h"

static gint64
snapped (SteadCvpView *self,
         SteadKnob     knob,
         double        value)
{
  double step = 1;

  if (stead_currency_digits (stead_cvp_view_currency (self)) > 0)
    step = knob == STEAD_KNOB_PRICE ? 5 : knob == STEAD_KNOB_FIXED ? 100 : 1;
  return llround (value / step) * (gint64) step;
}

/* What the grabbed handle means when its middle is at @x, @y. */
static double
value_at (SteadCvpView *self,
          double        x,
          double        y)
{
  const SteadCvp *cvp = &stead_cvp_view_answer (self)->cvp;
  const SteadCvpLayout *layout = &self->layout;
  double units = MAX (self->grab_units, layout->max_units / 1000);
  double cents = stead_cvp_chart_cents_at (layout, MAX (y, layout->plot.y));

  switch (self->grabbed)
    {
    case STEAD_KNOB_PRICE:
      return cents / units;
    case STEAD_KNOB_UNIT_COST:
      return (cents - stead_cvp_fixed_cents (cvp, units)) / units;
    case STEAD_KNOB_FIXED:
      return cents - (stead_cvp_fixed_cents (cvp, self->grab_units) - cvp->fixed_cents);
    default:
      return MIN (stead_cvp_chart_units_at (layout, x), layout->max_units);
    }
}

static void
drag_begin_cb (SteadCvpView   *self,
               double          x,
               double          y,
               GtkGestureDrag *drag)
{
  SteadKnob knob;

  if (stead_cvp_view_answer (self) == NULL || !stead_cvp_view_find_handle (self, x, y, &knob))
    {
      gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_DENIED);
      return;
    }
  gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_CLAIMED);
  g_clear_handle_id (&self->settle_id, g_source_remove);
  stead_cvp_view_find_place (self, knob, &self->grab_x, &self->grab_y);
  self->grab_units = stead_cvp_chart_units_at (&self->layout, self->grab_x);
  self->grabbed = knob;
  self->dragging = TRUE;
  stead_price_model_hold (self->model);
  gtk_widget_grab_focus (self->handles[knob]);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "grabbing");
}

static void
drag_update_cb (SteadCvpView *self,
                double        dx,
                double        dy)
{
  double value;

  if (!self->dragging || !self->laid)
    return;
  value = value_at (self, self->grab_x + dx, self->grab_y + dy);
  stead_price_model_set (self->model, self->grabbed, snapped (self, self->grabbed, MAX (value, 0)));
}

void
stead_cvp_view_stop_dragging (SteadCvpView *self)
{
  if (!self->dragging)
    return;
  self->dragging = FALSE;
  gtk_widget_set_cursor (GTK_WIDGET (self), NULL);
  stead_price_model_release (self->model);
  stead_cvp_view_show (self);
}

/* The handle that the next press would grab looks it. */
static void
motion_cb (SteadCvpView *self,
           double        x,
           double        y)
{
  SteadKnob near = STEAD_KNOB_TARGET;

  if (self->dragging)
    return;
  if (stead_cvp_view_answer (self) == NULL || !stead_cvp_view_find_handle (self, x, y, &near))
    near = STEAD_KNOB_TARGET;
  for (int knob = 0; knob < STEAD_N_HANDLES; knob++)
    if (knob == (int) near)
      gtk_widget_set_state_flags (self->handles[knob], GTK_STATE_FLAG_PRELIGHT, FALSE);
    else
      gtk_widget_unset_state_flags (self->handles[knob], GTK_STATE_FLAG_PRELIGHT);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), near != STEAD_KNOB_TARGET ? "grab" : NULL);
}

static void
leave_cb (SteadCvpView *self)
{
  motion_cb (self, -1e6, -1e6);
}

void
stead_cvp_view_add_pointer (SteadCvpView *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();

  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (drag, "end", G_CALLBACK (stead_cvp_view_stop_dragging), self);
  g_signal_connect_swapped (drag, "cancel", G_CALLBACK (stead_cvp_view_stop_dragging), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}

