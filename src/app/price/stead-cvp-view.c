/* stead-cvp-view.c - the break-even chart with its four handles.
 *
 * A handle is a GtkScale of the size of its knob: it has the keys, the focus and
 * the value for assistive tools.  The pointer goes through it to this widget,
 * which knows what a place on the chart means; so the handle that is nearest to
 * the pointer is the one that is grabbed, and a press beside a handle moves nothing.
 *
 * Invariants:
 *  1. A handle stands on the line that it moves.
 *  2. The handle that is being dragged keeps its place along its line, whatever
 *     the layout would like, so that it stays under the pointer.
 */
#include "config.h"

#include "app/price/stead-cvp-view-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-cvp-labels.h"
#include "app/price/stead-knob-words.h"
#include "app/stead-chart-style.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"

#define MIN_WIDTH 420
#define MIN_HEIGHT 300
#define EASE_US (G_TIME_SPAN_MILLISECOND * 220)

G_DEFINE_FINAL_TYPE (SteadCvpView, stead_cvp_view, GTK_TYPE_WIDGET)

/* Layout --------------------------------------------------------------------- */

static void
lay_into (SteadCvpView         *self,
          cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          SteadCvpLayout       *out)
{
  const SteadCvpLabels *labels = self->labels;
  const SteadCvpWords words = { labels->axis, labels->even, labels->lasting, labels->plan, labels->plan_gap,
                                labels->money_in, labels->all_costs, labels->fixed_costs };

  stead_cvp_chart_layout (cr, &stead_cvp_view_answer (self)->cvp, &words, style, self->shown_units, self->shown_cents,
                          width, height, out);
}

const char *
stead_cvp_view_currency (SteadCvpView *self)
{
  return stead_cvp_view_answer (self)->cost->farm->currency;
}

static void
lay_out (SteadCvpView *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  int height = gtk_widget_get_height (GTK_WIDGET (self));
  SteadDrawStyle style;

  self->laid = FALSE;
  if (stead_cvp_view_answer (self) == NULL || width < 2 || height < 2)
    return;
  stead_chart_style (GTK_WIDGET (self->chart), stead_cvp_view_currency (self), &style);
  lay_into (self, self->scratch, &style, width, height, &self->layout);
  self->laid = TRUE;
}

static void
paint_cb (cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          gpointer              data)
{
  SteadCvpView *self = data;
  const SteadCvpLabels *labels = self->labels;
  SteadCvpLayout other;
  const SteadCvpLayout *layout = &self->layout;

  if (stead_cvp_view_answer (self) == NULL || labels == NULL)
    return;
  if (!self->laid || width != gtk_widget_get_width (GTK_WIDGET (self))
      || height != gtk_widget_get_height (GTK_WIDGET (self)))
    {
      lay_into (self, cr, style, width, height, &other);
      layout = &other;
    }
  stead_cvp_chart_paint (cr, &stead_cvp_view_answer (self)->cvp,
                         &(SteadCvpWords) { labels->axis, labels->even, labels->lasting, labels->plan,
                                            labels->plan_gap, labels->money_in, labels->all_costs,
                                            labels->fixed_costs },
                         style, layout);
}

/* Following the model --------------------------------------------------------------- */

void
stead_cvp_view_show (SteadCvpView *self)
{
  lay_out (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
}

static gboolean
ease_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  SteadCvpView *self = STEAD_CVP_VIEW (widget);
  double units, cents, share, eased;

  stead_price_model_get_range (self->model, &units, &cents);
  if (self->ease_since == 0)
    self->ease_since = gdk_frame_clock_get_frame_time (clock);
  share = (double) (gdk_frame_clock_get_frame_time (clock) - self->ease_since) / (double) EASE_US;
  share = CLAMP (share, 0, 1);
  eased = 1 - pow (1 - share, 3);
  self->shown_units = share < 1 ? self->from_units + (units - self->from_units) * eased : units;
  self->shown_cents = share < 1 ? self->from_cents + (cents - self->from_cents) * eased : cents;
  stead_cvp_view_show (self);
  if (share < 1)
    return G_SOURCE_CONTINUE;
  self->tick_id = 0;
  return G_SOURCE_REMOVE;
}

static gboolean
wants_motion (SteadCvpView *self)
{
  gboolean motion = FALSE;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-enable-animations", &motion, NULL);
  return motion && self->laid && gtk_widget_get_mapped (GTK_WIDGET (self));
}

static void
stop_moving (SteadCvpView *self)
{
  if (self->tick_id != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick_id);
  self->tick_id = 0;
}

/* Ends of the axes go where the model has them: at once, or in a short move. */
static void
follow_range (SteadCvpView *self)
{
  double units, cents;

  stead_price_model_get_range (self->model, &units, &cents);
  if (units == self->shown_units && cents == self->shown_cents)
    return;
  if (!wants_motion (self))
    {
      stop_moving (self);
      self->shown_units = units;
      self->shown_cents = cents;
      return;
    }
  self->from_units = self->shown_units;
  self->from_cents = self->shown_cents;
  self->ease_since = 0;
  if (self->tick_id == 0)
    self->tick_id = gtk_widget_add_tick_callback (GTK_WIDGET (self), ease_cb, NULL, NULL);
}

static void
describe (SteadCvpView *self)
{
  const SteadPriceAnswer *answer = stead_cvp_view_answer (self);
  g_autofree char *plain = stead_words_plain (answer->sentence);

  stead_chart_area_set_currency (self->chart, stead_cvp_view_currency (self));
  stead_chart_area_describe (self->chart, _("Money in and costs, by how many are sold"), plain);
}

static void
changed_cb (SteadCvpView *self)
{
  g_clear_pointer (&self->labels, stead_cvp_labels_free);
  if (stead_cvp_view_answer (self) != NULL)
    {
      self->labels = stead_cvp_labels_new (stead_cvp_view_answer (self));
      describe (self);
      follow_range (self);
    }
  stead_cvp_view_sync_handles (self);
  stead_cvp_view_show (self);
}

/* Another product: nothing of the former one eases into it, and every name is new. */
static void
loaded_cb (SteadCvpView *self)
{
  for (int knob = 0; knob < STEAD_N_HANDLES; knob++)
    self->told[knob] = -1;
  self->laid = FALSE;
}

/* Words at a point -------------------------------------------------------------------- */

static char *
hint_cb (double   x,
         double   y,
         gpointer data)
{
  SteadCvpView *self = data;
  const SteadCvpLayout *layout = &self->layout;
  SteadKnob knob = self->grabbed;

  if (stead_cvp_view_answer (self) == NULL || !self->laid)
    return NULL;
  if (self->dragging || stead_cvp_view_find_handle (self, x, y, &knob))
    return stead_knob_said (stead_cvp_view_answer (self), knob, stead_price_model_get (self->model, knob));
  if (x < layout->plot.x || x > layout->plot.x + layout->plot.width
      || y < layout->plot.y || y > layout->plot.y + layout->plot.height)
    return NULL;
  return stead_cvp_labels_point (stead_cvp_view_answer (self), llround (stead_cvp_chart_units_at (layout, x)));
}

static char *
step_cb (int       index,
         double   *x,
         double   *y,
         gpointer  data)
{
  SteadCvpView *self = data;
  g_autoptr(GArray) rows = NULL;
  const SteadPriceRow *row;

  if (stead_cvp_view_answer (self) == NULL || !self->laid)
    return NULL;
  rows = stead_price_answer_table (stead_cvp_view_answer (self));
  if (index >= (int) rows->len)
    return NULL;
  row = &g_array_index (rows, SteadPriceRow, index);
  if ((double) row->units > self->shown_units)
    return NULL;
  *x = stead_cvp_chart_x (&self->layout, (double) row->units);
  *y = stead_cvp_chart_y (&self->layout, (double) row->revenue_cents);
  return stead_cvp_labels_point (stead_cvp_view_answer (self), row->units);
}

/* Widget --------------------------------------------------------------------------------- */

static void
stead_cvp_view_measure (GtkWidget      *widget,
                        GtkOrientation  orientation,
                        int             for_size,
                        int            *minimum,
                        int            *natural,
                        int            *minimum_baseline,
                        int            *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? MIN_WIDTH : MIN_HEIGHT;
  *natural = *minimum;
}

static void
allocate_handle (SteadCvpView *self,
                 SteadKnob     knob)
{
  GtkWidget *handle = self->handles[knob];
  GtkRequisition size;
  double x, y;

  if (!gtk_widget_get_child_visible (handle))
    return;
  gtk_widget_get_preferred_size (handle, &size, NULL);
  stead_cvp_view_find_place (self, knob, &x, &y);
  gtk_widget_size_allocate (handle, &(GtkAllocation) { (int) lround (x - size.width / 2.0),
                                                       (int) lround (y - size.height / 2.0),
                                                       size.width, size.height }, -1);
}

static void
stead_cvp_view_size_allocate (GtkWidget *widget,
                              int        width,
                              int        height,
                              int        baseline)
{
  SteadCvpView *self = STEAD_CVP_VIEW (widget);

  gtk_widget_size_allocate (GTK_WIDGET (self->chart), &(GtkAllocation) { 0, 0, width, height }, -1);
  lay_out (self);
  for (int knob = 0; knob < STEAD_N_HANDLES; knob++)
    allocate_handle (self, knob);
}

/* The chart first, then the handles in their order, wherever they stand. */
static gboolean
stead_cvp_view_focus (GtkWidget        *widget,
                      GtkDirectionType  direction)
{
  SteadCvpView *self = STEAD_CVP_VIEW (widget);
  GtkWidget *order[1 + STEAD_N_HANDLES] = { GTK_WIDGET (self->chart) };
  GtkWidget *at = gtk_widget_get_focus_child (widget);
  int n = G_N_ELEMENTS (order), go = direction == GTK_DIR_TAB_FORWARD ? 1 : -1, i = go > 0 ? -1 : n;

  if (direction != GTK_DIR_TAB_FORWARD && direction != GTK_DIR_TAB_BACKWARD)
    return FALSE;
  for (int knob = 0; knob < STEAD_N_HANDLES; knob++)
    order[1 + knob] = self->handles[knob];
  for (int k = 0; k < n; k++)
    if (order[k] == at)
      i = k;
  for (i += go; i >= 0 && i < n; i += go)
    if (gtk_widget_child_focus (order[i], direction))
      return TRUE;
  return FALSE;
}

static void
stead_cvp_view_unmap (GtkWidget *widget)
{
  SteadCvpView *self = STEAD_CVP_VIEW (widget);

  stead_cvp_view_stop_dragging (self);
  if (self->settle_id != 0)
    {
      g_clear_handle_id (&self->settle_id, g_source_remove);
      stead_price_model_release (self->model);
    }
  GTK_WIDGET_CLASS (stead_cvp_view_parent_class)->unmap (widget);
}

static void
stead_cvp_view_dispose (GObject *object)
{
  SteadCvpView *self = STEAD_CVP_VIEW (object);

  g_clear_handle_id (&self->settle_id, g_source_remove);
  stop_moving (self);
  if (self->model != NULL)
    g_signal_handlers_disconnect_by_data (self->model, self);
  g_clear_object (&self->model);
  self->laid = FALSE;
  stead_ui_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (stead_cvp_view_parent_class)->dispose (object);
}

static void
stead_cvp_view_finalize (GObject *object)
{
  SteadCvpView *self = STEAD_CVP_VIEW (object);

  g_clear_pointer (&self->labels, stead_cvp_labels_free);
  cairo_destroy (self->scratch);
  G_OBJECT_CLASS (stead_cvp_view_parent_class)->finalize (object);
}

static void
stead_cvp_view_class_init (SteadCvpViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = stead_cvp_view_dispose;
  object_class->finalize = stead_cvp_view_finalize;
  widget_class->measure = stead_cvp_view_measure;
  widget_class->size_allocate = stead_cvp_view_size_allocate;
  widget_class->focus = stead_cvp_view_focus;
  widget_class->unmap = stead_cvp_view_unmap;
  gtk_widget_class_set_css_name (widget_class, "cvpview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
stead_cvp_view_init (SteadCvpView *self)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 1, 1);

  self->scratch = cairo_create (surface);
  cairo_surface_destroy (surface);
  self->shown_units = 10;
  self->shown_cents = 100;
  self->chart = STEAD_CHART_AREA (stead_chart_area_new ());
  gtk_widget_set_parent (GTK_WIDGET (self->chart), GTK_WIDGET (self));
  stead_chart_area_set_paint (self->chart, paint_cb, hint_cb, self);
  stead_chart_area_set_step (self->chart, step_cb);
  stead_chart_area_set_file_name (self->chart, _("break-even"));
  for (int knob = 0; knob < STEAD_N_HANDLES; knob++)
    {
      self->told[knob] = -1;
      self->handles[knob] = stead_cvp_view_make_handle (self, knob);
    }
  stead_cvp_view_add_pointer (self);
}

GtkWidget *
stead_cvp_view_new (SteadPriceModel *model)
{
  SteadCvpView *self;

  g_return_val_if_fail (STEAD_IS_PRICE_MODEL (model), NULL);

  self = g_object_new (STEAD_TYPE_CVP_VIEW, NULL);
  self->model = g_object_ref (model);
  g_signal_connect_swapped (model, "loaded", G_CALLBACK (loaded_cb), self);
  g_signal_connect_swapped (model, "changed", G_CALLBACK (changed_cb), self);
  changed_cb (self);
  return GTK_WIDGET (self);
}

SteadChartArea *
stead_cvp_view_get_chart (SteadCvpView *self)
{
  g_return_val_if_fail (STEAD_IS_CVP_VIEW (self), NULL);

  return self->chart;
}

GtkWidget *
stead_cvp_view_get_handle (SteadCvpView *self,
                           SteadKnob     knob)
{
  g_return_val_if_fail (STEAD_IS_CVP_VIEW (self) && knob < STEAD_N_HANDLES, NULL);

  return self->handles[knob];
}

const SteadCvpLayout *
stead_cvp_view_get_layout (SteadCvpView *self)
{
  g_return_val_if_fail (STEAD_IS_CVP_VIEW (self), NULL);

  return &self->layout;
}
