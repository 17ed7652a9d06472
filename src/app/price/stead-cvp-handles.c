/* stead-cvp-handles.c - the handles of the break-even chart: where they stand, and what they are told.
 *
 * Invariants: those of stead-cvp-view.c.
 */
#include "config.h"

#include "app/price/stead-cvp-view-private.h"

#include <math.h>

#include "app/price/stead-knob-words.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"

#define REACH 22.0              /* px round the middle of a handle in which it is grabbed */
#define SETTLE_MS 700           /* after the last key the axis may move again */

/* The line of a knob at @units, in cents. */
static double
line_cents (const SteadCvp *cvp,
            SteadKnob       knob,
            double          units)
{
  switch (knob)
    {
    case STEAD_KNOB_PRICE:     return stead_cvp_revenue_cents (cvp, units);
    case STEAD_KNOB_UNIT_COST: return stead_cvp_cost_cents (cvp, units);
    case STEAD_KNOB_FIXED:     return stead_cvp_fixed_cents (cvp, units);
    default:                   return 0;
    }
}

void
stead_cvp_view_find_place (SteadCvpView *self,
                           SteadKnob     knob,
                           double       *x,
                           double       *y)
{
  const SteadCvpLayout *layout = &self->layout;

  switch (knob)
    {
    case STEAD_KNOB_PRICE:     *x = layout->price_x; *y = layout->price_y; break;
    case STEAD_KNOB_UNIT_COST: *x = layout->cost_x;  *y = layout->cost_y;  break;
    case STEAD_KNOB_FIXED:     *x = layout->fixed_x; *y = layout->fixed_y; break;
    default:                   *x = layout->plan_x;  *y = layout->plan_y;  break;
    }
  if (!self->dragging || knob != self->grabbed || knob == STEAD_KNOB_PLANNED)
    return;
  *x = stead_cvp_chart_x (layout, self->grab_units);
  *y = stead_cvp_chart_y (layout, line_cents (&stead_cvp_view_answer (self)->cvp, knob, self->grab_units));
  *y = MAX (*y, layout->plot.y);
}

gboolean
stead_cvp_view_find_handle (SteadCvpView *self,
                            double        x,
                            double        y,
                            SteadKnob    *out)
{
  double best = REACH;
  gboolean found = FALSE;

  for (int knob = 0; self->laid && knob < STEAD_N_HANDLES; knob++)
    {
      double hx, hy, distance;

      stead_cvp_view_find_place (self, knob, &hx, &hy);
      distance = hypot (hx - x, hy - y);
      if (distance < best || (found && distance == best && gtk_widget_has_focus (self->handles[knob])))
        {
          best = distance;
          found = TRUE;
          *out = knob;
        }
    }
  return found;
}

static void
sync_handle (SteadCvpView *self,
             SteadKnob     knob)
{
  GtkAdjustment *adjustment = gtk_range_get_adjustment (GTK_RANGE (self->handles[knob]));
  const SteadPriceAnswer *answer = stead_cvp_view_answer (self);
  gint64 value = stead_price_model_get (self->model, knob);
  double units, cents, top, step = 1;

  stead_price_model_get_range (self->model, &units, &cents);
  if (knob == STEAD_KNOB_FIXED)
    step = pow (10, stead_currency_digits (stead_cvp_view_currency (self)));
  top = knob == STEAD_KNOB_PLANNED ? units : knob == STEAD_KNOB_FIXED ? cents : cents / units;
  top = MAX (ceil (2 * top), (double) value + 10 * step);
  gtk_adjustment_configure (adjustment, (double) value, 0, top, step, 10 * step, 0);
  if (self->told[knob] != value)
    {
      g_autofree char *name = stead_knob_said (answer, knob, value);

      self->told[knob] = value;
      stead_ui_name (self->handles[knob], name);
    }
}

void
stead_cvp_view_sync_handles (SteadCvpView *self)
{
  gboolean any = stead_cvp_view_answer (self) != NULL;

  self->syncing = TRUE;
  for (int knob = 0; knob < STEAD_N_HANDLES; knob++)
    {
      gtk_widget_set_child_visible (self->handles[knob], any);
      if (any)
        sync_handle (self, knob);
    }
  self->syncing = FALSE;
}

/* The axis moves only a while after the last key. */
static gboolean
settle_cb (gpointer data)
{
  SteadCvpView *self = data;

  self->settle_id = 0;
  stead_price_model_release (self->model);
  return G_SOURCE_REMOVE;
}

static void
value_changed_cb (SteadCvpView  *self,
                  GtkAdjustment *adjustment)
{
  SteadKnob knob = STEAD_KNOB_PRICE;

  if (self->syncing || self->model == NULL)
    return;
  while (gtk_range_get_adjustment (GTK_RANGE (self->handles[knob])) != adjustment)
    knob++;
  stead_price_model_hold (self->model);
  g_clear_handle_id (&self->settle_id, g_source_remove);
  self->settle_id = g_timeout_add (SETTLE_MS, settle_cb, self);
  stead_price_model_set (self->model, knob, llround (gtk_adjustment_get_value (adjustment)));
}

GtkWidget *
stead_cvp_view_make_handle (SteadCvpView *self,
                            SteadKnob     knob)
{
  static const char * const classes[] = { "price", "unit-cost", "fixed", "planned" };
  GtkOrientation orientation = knob == STEAD_KNOB_PLANNED ? GTK_ORIENTATION_HORIZONTAL
                                                          : GTK_ORIENTATION_VERTICAL;
  GtkWidget *scale = gtk_scale_new (orientation, gtk_adjustment_new (0, 0, 1, 1, 10, 0));

  gtk_range_set_inverted (GTK_RANGE (scale), orientation == GTK_ORIENTATION_VERTICAL);
  gtk_range_set_round_digits (GTK_RANGE (scale), 0);
  gtk_scale_set_draw_value (GTK_SCALE (scale), FALSE);
  gtk_widget_add_css_class (scale, "handle");
  gtk_widget_add_css_class (scale, classes[knob]);
  gtk_widget_set_can_target (scale, FALSE);
  gtk_widget_set_parent (scale, GTK_WIDGET (self));
  g_signal_connect_swapped (gtk_range_get_adjustment (GTK_RANGE (scale)), "value-changed",
                            G_CALLBACK (value_changed_cb), self);
  return scale;
}
