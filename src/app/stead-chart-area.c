/* stead-chart-area.c - a drawn chart as a widget.
 *
 * The chart itself is painted by whoever owns the numbers; this widget gives it
 * a style that fits the theme and the text size, a name and a sentence for the
 * screen reader, and words for the value under the pointer or the arrow keys.
 */
#include "config.h"

#include "app/stead-chart-area-private.h"

#include <glib/gi18n-lib.h>

#include "app/stead-chart-style.h"
#include "app/stead-ui.h"

#define HINT_PAD_X 8
#define HINT_PAD_Y 4
#define HINT_GAP 12
#define NOWHERE (-1)

enum { PROP_LABEL = 1, PROP_DESCRIPTION, N_PROPS };

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (SteadChartArea, stead_chart_area, GTK_TYPE_WIDGET)

void
stead_chart_area_get_style (SteadChartArea *self,
                            const char     *currency,
                            SteadDrawStyle *out)
{
  g_return_if_fail (STEAD_IS_CHART_AREA (self) && out != NULL);

  stead_chart_style (GTK_WIDGET (self), currency != NULL ? currency : self->currency, out);
}

/* What a screen reader hears ------------------------------------------------ */

/* While the arrow keys go from value to value, the value is part of the name:
 * a change of the name of what has the focus is read aloud. */
static void
update_accessible (SteadChartArea *self)
{
  g_autofree char *name = NULL;

  if (self->at != NOWHERE && self->said != NULL)
    name = g_strdup_printf ("%s: %s", self->label, self->said);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name != NULL ? name : self->label,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, self->sentence,
                                  -1);
}

static void
say (SteadChartArea *self,
     char           *text,
     double          x,
     double          y)
{
  gboolean was_stepping = self->at != NOWHERE;

  if (text == NULL && self->said == NULL)
    return;
  g_free (self->said);
  self->said = text;
  self->said_x = x;
  self->said_y = y;
  if (was_stepping)
    update_accessible (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
fall_silent (SteadChartArea *self)
{
  gboolean was_stepping = self->at != NOWHERE;

  say (self, NULL, 0, 0);
  self->at = NOWHERE;
  if (was_stepping)
    update_accessible (self);
}

/* Pointer and keys ----------------------------------------------------------- */

static void
motion_cb (SteadChartArea *self,
           double          x,
           double          y)
{
  if (self->hint == NULL)
    return;
  if (self->at != NOWHERE)
    fall_silent (self);
  say (self, self->hint (x, y, self->data), x, y);
}

static void
leave_cb (SteadChartArea *self)
{
  if (self->at == NOWHERE)
    fall_silent (self);
}

static gboolean
go_to (SteadChartArea *self,
       int             index)
{
  double x = 0, y = 0;
  char *text = index < 0 ? NULL : self->step (index, &x, &y, self->data);

  if (text == NULL)
    return FALSE;
  self->at = index;
  say (self, text, x, y);
  return TRUE;
}

/* "i": −1 and 1 go one place on, −2 to the first, 2 to the last. */
static gboolean
step_cb (GtkWidget *widget,
         GVariant  *args,
         gpointer   data)
{
  SteadChartArea *self = STEAD_CHART_AREA (widget);
  int move = 0;

  if (self->step == NULL)
    return FALSE;
  g_variant_get (args, "(i)", &move);
  if (move == -2)
    go_to (self, 0);
  else if (move == 2)
    while (go_to (self, self->at + 1))
      ;
  else
    go_to (self, self->at == NOWHERE ? 0 : self->at + move);
  return TRUE;
}

static gboolean
escape_cb (GtkWidget *widget,
           GVariant  *args,
           gpointer   data)
{
  SteadChartArea *self = STEAD_CHART_AREA (widget);
  gboolean had = self->said != NULL;

  fall_silent (self);
  return had;    /* else the key goes on to whatever can be left */
}

static void
focus_left_cb (SteadChartArea *self)
{
  if (self->at != NOWHERE)
    fall_silent (self);
}

/* Widget ------------------------------------------------------------------------ */

static void
snapshot_chart (SteadChartArea       *self,
                GtkSnapshot          *snapshot,
                const SteadDrawStyle *style,
                float                 width,
                float                 height)
{
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));

  self->paint (cr, style, (double) width, (double) height, self->data);
  cairo_destroy (cr);
}

static GdkRGBA
role_rgba (SteadScheme scheme,
           SteadRole   role)
{
  guint32 rgb = stead_palette_rgb (scheme, role);

  return (GdkRGBA) { (float) (rgb >> 16 & 0xff) / 255.f, (float) (rgb >> 8 & 0xff) / 255.f,
                     (float) (rgb & 0xff) / 255.f, 1.f };
}

/* A chip beside the pointer, on whichever side has room. */
static void
snapshot_said (SteadChartArea *self,
               GtkSnapshot    *snapshot,
               SteadScheme     scheme,
               float           width,
               float           height)
{
  g_autoptr(PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), self->said);
  GdkRGBA ground = role_rgba (scheme, STEAD_ROLE_INK), ink = role_rgba (scheme, STEAD_ROLE_CARD);
  GskRoundedRect chip;
  float x = (float) self->said_x + HINT_GAP, y = (float) self->said_y - HINT_GAP, w, h;
  int text_w, text_h;

  pango_layout_get_pixel_size (layout, &text_w, &text_h);
  w = (float) text_w + 2 * HINT_PAD_X;
  h = (float) text_h + 2 * HINT_PAD_Y;
  if (x + w > width)
    x = (float) self->said_x - HINT_GAP - w;
  x = CLAMP (x, 0, MAX (0, width - w));
  y = CLAMP (y - h, 0, MAX (0, height - h));
  gsk_rounded_rect_init_from_rect (&chip, &GRAPHENE_RECT_INIT (x, y, w, h), 5);
  gtk_snapshot_push_rounded_clip (snapshot, &chip);
  gtk_snapshot_append_color (snapshot, &ground, &chip.bounds);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (x + HINT_PAD_X, y + HINT_PAD_Y));
  gtk_snapshot_append_layout (snapshot, layout, &ink);
  gtk_snapshot_restore (snapshot);
}

static void
stead_chart_area_snapshot (GtkWidget   *widget,
                           GtkSnapshot *snapshot)
{
  SteadChartArea *self = STEAD_CHART_AREA (widget);
  float width = (float) gtk_widget_get_width (widget), height = (float) gtk_widget_get_height (widget);
  SteadDrawStyle style;

  if (self->paint == NULL || width < 1 || height < 1)
    return;
  stead_chart_area_get_style (self, NULL, &style);
  snapshot_chart (self, snapshot, &style, width, height);
  if (self->said != NULL)
    snapshot_said (self, snapshot, style.scheme, width, height);
}

static void
stead_chart_area_size_allocate (GtkWidget *widget,
                                int        width,
                                int        height,
                                int        baseline)
{
  SteadChartArea *self = STEAD_CHART_AREA (widget);

  if (self->menu != NULL)
    gtk_popover_present (GTK_POPOVER (self->menu));
}

static void
stead_chart_area_get_property (GObject    *object,
                               guint       id,
                               GValue     *value,
                               GParamSpec *pspec)
{
  SteadChartArea *self = STEAD_CHART_AREA (object);

  switch (id)
    {
    case PROP_LABEL:
      g_value_set_string (value, self->label);
      break;
    case PROP_DESCRIPTION:
      g_value_set_string (value, self->sentence);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
stead_chart_area_set_property (GObject      *object,
                               guint         id,
                               const GValue *value,
                               GParamSpec   *pspec)
{
  SteadChartArea *self = STEAD_CHART_AREA (object);

  switch (id)
    {
    case PROP_LABEL:
      stead_chart_area_describe (self, g_value_get_string (value), self->sentence);
      break;
    case PROP_DESCRIPTION:
      stead_chart_area_describe (self, self->label, g_value_get_string (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
stead_chart_area_dispose (GObject *object)
{
  SteadChartArea *self = STEAD_CHART_AREA (object);

  g_clear_pointer (&self->menu, gtk_widget_unparent);
  self->paint = NULL;
  self->hint = NULL;
  self->step = NULL;
  G_OBJECT_CLASS (stead_chart_area_parent_class)->dispose (object);
}

static void
stead_chart_area_finalize (GObject *object)
{
  SteadChartArea *self = STEAD_CHART_AREA (object);

  g_free (self->label);
  g_free (self->sentence);
  g_free (self->file_name);
  g_free (self->currency);
  g_free (self->said);
  G_OBJECT_CLASS (stead_chart_area_parent_class)->finalize (object);
}

static void
add_bindings (GtkWidgetClass *widget_class)
{
  static const struct { guint keyval; guint keypad; int move; } moves[] = {
    { GDK_KEY_Left, GDK_KEY_KP_Left, -1 }, { GDK_KEY_Right, GDK_KEY_KP_Right, 1 },
    { GDK_KEY_Home, GDK_KEY_KP_Home, -2 }, { GDK_KEY_End, GDK_KEY_KP_End, 2 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (moves); i++)
    {
      gtk_widget_class_add_binding (widget_class, moves[i].keyval, 0, step_cb, "(i)", moves[i].move);
      gtk_widget_class_add_binding (widget_class, moves[i].keypad, 0, step_cb, "(i)", moves[i].move);
    }
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, escape_cb, NULL);
}

static void
stead_chart_area_class_init (SteadChartAreaClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = stead_chart_area_get_property;
  object_class->set_property = stead_chart_area_set_property;
  object_class->dispose = stead_chart_area_dispose;
  object_class->finalize = stead_chart_area_finalize;
  widget_class->snapshot = stead_chart_area_snapshot;
  widget_class->size_allocate = stead_chart_area_size_allocate;

  props[PROP_LABEL] = g_param_spec_string ("label", NULL, NULL, NULL,
                                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  props[PROP_DESCRIPTION] = g_param_spec_string ("description", NULL, NULL, NULL,
                                                 G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);

  gtk_widget_class_set_css_name (widget_class, "chart");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  stead_chart_area_install_menu (widget_class);
  add_bindings (widget_class);
}

static void
add_controllers (SteadChartArea *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  stead_chart_area_add_menu (self);
}

static void
stead_chart_area_init (SteadChartArea *self)
{
  self->at = NOWHERE;
  self->label = g_strdup ("");
  self->sentence = g_strdup ("");
  self->file_name = g_strdup (_("chart"));
  self->currency = g_strdup ("USD");
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  stead_ui_name (GTK_WIDGET (self), _("Chart"));
  add_controllers (self);
}

GtkWidget *
stead_chart_area_new (void)
{
  return g_object_new (STEAD_TYPE_CHART_AREA, NULL);
}

void
stead_chart_area_set_paint (SteadChartArea  *self,
                            SteadChartPaint  paint,
                            SteadChartHint   hint,
                            gpointer         data)
{
  g_return_if_fail (STEAD_IS_CHART_AREA (self));

  self->paint = paint;
  self->hint = hint;
  self->data = data;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
stead_chart_area_set_step (SteadChartArea *self,
                           SteadChartStep  step)
{
  g_return_if_fail (STEAD_IS_CHART_AREA (self));

  self->step = step;
}

static gboolean
take_text (char       **where,
           const char  *text)
{
  if (text == NULL)
    text = "";
  if (g_strcmp0 (*where, text) == 0)
    return FALSE;
  g_free (*where);
  *where = g_strdup (text);
  return TRUE;
}

void
stead_chart_area_describe (SteadChartArea *self,
                           const char     *label,
                           const char     *sentence)
{
  gboolean new_label, new_sentence;

  g_return_if_fail (STEAD_IS_CHART_AREA (self));

  new_label = take_text (&self->label, label);
  new_sentence = take_text (&self->sentence, sentence);
  if (!new_label && !new_sentence)
    return;
  if (self->at != NOWHERE && !go_to (self, self->at))
    fall_silent (self);
  update_accessible (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  if (new_label)
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_LABEL]);
  if (new_sentence)
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_DESCRIPTION]);
}

void
stead_chart_area_set_file_name (SteadChartArea *self,
                                const char     *name)
{
  g_return_if_fail (STEAD_IS_CHART_AREA (self) && name != NULL);

  take_text (&self->file_name, name);
}

void
stead_chart_area_set_currency (SteadChartArea *self,
                               const char     *currency)
{
  g_return_if_fail (STEAD_IS_CHART_AREA (self) && currency != NULL);

  if (take_text (&self->currency, currency))
    gtk_widget_queue_draw (GTK_WIDGET (self));
}
