/* stead-outline-view.c - the plan of a build with a handle at each corner. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/fund/stead-outline-view.h"
#include "app/stead-chart-style.h"
#include "core/stead-us-units.h"
#include "paper/stead-build-figure.h"

/* So long after the last arrow key the handle is put down. */
#define PUT_DOWN_MS 700

struct _SteadOutlineView
{
  GtkWidget        parent_instance;

  SteadBuild      *build;
  SteadUnitSystem  units;
  SteadPlanLayout  layout;
  gboolean         held;      /* the scale stays while a handle moves */
  int              chosen;    /* -1: none */
  int              dragged;
  double           from_x, from_y;
  guint            put_down;
};

G_DEFINE_FINAL_TYPE (SteadOutlineView, stead_outline_view, GTK_TYPE_WIDGET)

enum { MOVING, DRAWN, N_SIGNALS };
static guint signals[N_SIGNALS];

static SteadBuildCorner *
corner (SteadOutlineView *self,
        int            i)
{
  return &g_array_index (self->build->corners, SteadBuildCorner, i);
}

static double
grid_m (SteadOutlineView *self)
{
  return self->units == STEAD_UNITS_US ? STEAD_FOOT_M : 0.5;
}

static void
stead_outline_view_snapshot (GtkWidget   *widget,
                          GtkSnapshot *snapshot)
{
  SteadOutlineView *self = STEAD_OUTLINE_VIEW (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  SteadPlanLayout hold = self->layout;
  SteadPlanFigure *figure;
  SteadDrawStyle style;
  cairo_t *cr;

  if (self->build == NULL || self->build->corners->len < 3 || width < 40 || height < 40)
    return;
  figure = stead_plan_figure_new (self->build, self->units, TRUE);
  stead_chart_style (widget, "USD", &style);
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  stead_plan_drawing_layout (cr, &figure->plan, &style, width, height, self->held ? &hold : NULL, &self->layout);
  stead_plan_drawing_paint (cr, &figure->plan, &style, &self->layout, gtk_widget_has_focus (widget) ? self->chosen : -1);
  cairo_destroy (cr);
  stead_plan_figure_free (figure);
}

static void
say_corner (SteadOutlineView *self)
{
  g_autofree char *x = NULL;
  g_autofree char *y = NULL;
  g_autofree char *text = NULL;

  if (self->chosen < 0 || self->build == NULL || self->chosen >= (int) self->build->corners->len)
    return;
  x = stead_build_length_text (corner (self, self->chosen)->x_m, self->units);
  y = stead_build_length_text (corner (self, self->chosen)->y_m, self->units);
  /* Translators: said by a screen reader: which corner of a plan, and where it is. */
  text = g_strdup_printf (_("Corner %d: %s to the right, %s down"), self->chosen + 1, x, y);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

static void
moved (SteadOutlineView *self)
{
  say_corner (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[MOVING], 0);
}

static void
put_down (SteadOutlineView *self)
{
  g_clear_handle_id (&self->put_down, g_source_remove);
  self->held = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[DRAWN], 0);
}

static gboolean
put_down_cb (gpointer data)
{
  SteadOutlineView *self = data;

  self->put_down = 0;
  put_down (self);
  return G_SOURCE_REMOVE;
}

/* --- keys --------------------------------------------------------------------------------- */

static gboolean
step (SteadOutlineView *self,
      int            by)
{
  int next = self->chosen + by;

  if (next < 0 || next >= (int) self->build->corners->len)
    return FALSE;
  self->chosen = next;
  say_corner (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return TRUE;
}

static gboolean
key_cb (SteadOutlineView   *self,
        guint            key,
        guint            code,
        GdkModifierType  state)
{
  double grid = grid_m (self), dx = 0, dy = 0;

  if (self->build == NULL || self->build->corners->len < 3 || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  if (key == GDK_KEY_Tab || key == GDK_KEY_ISO_Left_Tab)
    return step (self, key == GDK_KEY_Tab && (state & GDK_SHIFT_MASK) == 0 ? 1 : -1);
  if (key == GDK_KEY_Left || key == GDK_KEY_Right)
    dx = key == GDK_KEY_Left ? -grid : grid;
  else if (key == GDK_KEY_Up || key == GDK_KEY_Down)
    dy = key == GDK_KEY_Up ? -grid : grid;
  else
    return FALSE;
  if (self->chosen < 0)
    self->chosen = 0;
  corner (self, self->chosen)->x_m += dx;
  corner (self, self->chosen)->y_m += dy;
  self->held = TRUE;
  g_clear_handle_id (&self->put_down, g_source_remove);
  self->put_down = g_timeout_add (PUT_DOWN_MS, put_down_cb, self);
  moved (self);
  return TRUE;
}

static void
focus_cb (SteadOutlineView *self)
{
  if (self->chosen < 0)
    self->chosen = 0;
  say_corner (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
leave_cb (SteadOutlineView *self)
{
  if (self->put_down != 0)
    put_down (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* --- pointer ------------------------------------------------------------------------------ */

static void
drag_begin_cb (SteadOutlineView *self,
               double         x,
               double         y)
{
  SteadPlanFigure *figure;

  self->dragged = -1;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (self->build == NULL || self->build->corners->len < 3)
    return;
  figure = stead_plan_figure_new (self->build, self->units, TRUE);
  self->dragged = stead_plan_drawing_handle (&self->layout, &figure->plan, x, y);
  stead_plan_figure_free (figure);
  if (self->dragged < 0)
    return;
  self->chosen = self->dragged;
  self->held = TRUE;
  self->from_x = corner (self, self->dragged)->x_m;
  self->from_y = corner (self, self->dragged)->y_m;
}

static void
drag_update_cb (SteadOutlineView *self,
                double         dx,
                double         dy)
{
  double grid = grid_m (self);

  if (self->dragged < 0)
    return;
  corner (self, self->dragged)->x_m = round ((self->from_x + dx / self->layout.scale) / grid) * grid;
  corner (self, self->dragged)->y_m = round ((self->from_y + dy / self->layout.scale) / grid) * grid;
  moved (self);
}

static void
drag_end_cb (SteadOutlineView *self,
             double         dx,
             double         dy)
{
  if (self->dragged < 0)
    return;
  drag_update_cb (self, dx, dy);
  self->dragged = -1;
  put_down (self);
}

/* --- the object --------------------------------------------------------------------------- */

static void
stead_outline_view_dispose (GObject *object)
{
  SteadOutlineView *self = STEAD_OUTLINE_VIEW (object);

  g_clear_handle_id (&self->put_down, g_source_remove);
  g_clear_pointer (&self->build, stead_build_free);
  G_OBJECT_CLASS (stead_outline_view_parent_class)->dispose (object);
}

static void
stead_outline_view_class_init (SteadOutlineViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_outline_view_dispose;
  widget_class->snapshot = stead_outline_view_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  signals[MOVING] = g_signal_new ("moving", STEAD_TYPE_OUTLINE_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[DRAWN] = g_signal_new ("drawn", STEAD_TYPE_OUTLINE_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
stead_outline_view_init (SteadOutlineView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkGesture *drag = gtk_gesture_drag_new ();

  self->chosen = self->dragged = -1;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Plan of the build"), -1);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_size_request (GTK_WIDGET (self), 280, 300);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect_swapped (focus, "enter", G_CALLBACK (focus_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
}

void
stead_outline_view_set (SteadOutlineView    *self,
                     const SteadBuild *build,
                     SteadUnitSystem   units)
{
  g_return_if_fail (STEAD_IS_OUTLINE_VIEW (self));
  g_clear_handle_id (&self->put_down, g_source_remove);
  g_clear_pointer (&self->build, stead_build_free);
  self->build = build != NULL ? stead_build_copy (build) : NULL;
  self->units = units;
  self->held = FALSE;
  self->dragged = -1;
  gtk_widget_set_visible (GTK_WIDGET (self), build != NULL && build->corners->len >= 3);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const SteadBuild *
stead_outline_view_get (SteadOutlineView *self)
{
  return self->build;
}

int
stead_outline_view_get_chosen (SteadOutlineView *self)
{
  return self->build != NULL && self->chosen < (int) self->build->corners->len ? self->chosen : -1;
}
