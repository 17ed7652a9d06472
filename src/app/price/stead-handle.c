/* stead-handle.c - an assumption to turn: its name, a slider, its value in words. */
#include "config.h"

#include "app/price/stead-handle.h"

#include "app/stead-ui.h"

struct _SteadHandle
{
  GtkWidget        parent_instance;

  char            *name;
  SteadHandleText  text;
  gpointer         data;
  GtkWidget       *box, *label, *value, *scale;
  gboolean         quiet;    /* the code turns it, not the person */
};

enum { TURNED, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadHandle, stead_handle, GTK_TYPE_WIDGET)

static void
show_value (SteadHandle *self)
{
  g_autofree char *text = self->text (stead_handle_get (self), self->data);
  g_autofree char *said = g_strdup_printf ("%s, %s", self->name, text);

  gtk_label_set_text (GTK_LABEL (self->value), text);
  stead_ui_name (self->scale, said);
}

static void
changed_cb (SteadHandle *self)
{
  show_value (self);
  if (!self->quiet)
    g_signal_emit (self, signals[TURNED], 0, stead_handle_get (self));
}

static void
stead_handle_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_handle_parent_class)->dispose (object);
}

static void
stead_handle_finalize (GObject *object)
{
  g_free (STEAD_HANDLE (object)->name);
  G_OBJECT_CLASS (stead_handle_parent_class)->finalize (object);
}

static void
stead_handle_class_init (SteadHandleClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_handle_dispose;
  G_OBJECT_CLASS (klass)->finalize = stead_handle_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
  signals[TURNED] = g_signal_new ("turned", STEAD_TYPE_HANDLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_DOUBLE);
}

static void
stead_handle_init (SteadHandle *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_label_set_wrap (GTK_LABEL (self->label), TRUE);
  gtk_widget_set_hexpand (self->label, TRUE);
  self->value = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->value, "value");
  self->scale = gtk_scale_new_with_range (GTK_ORIENTATION_HORIZONTAL, 0, 1, 0.1);
  gtk_scale_set_draw_value (GTK_SCALE (self->scale), FALSE);
  g_signal_connect_swapped (self->scale, "value-changed", G_CALLBACK (changed_cb), self);
  gtk_box_append (GTK_BOX (head), self->label);
  gtk_box_append (GTK_BOX (head), self->value);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_add_css_class (self->box, "assumption");
  gtk_box_append (GTK_BOX (self->box), head);
  gtk_box_append (GTK_BOX (self->box), self->scale);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
stead_handle_new (const char      *name,
                  SteadHandleText  text,
                  gpointer         data)
{
  SteadHandle *self = g_object_new (STEAD_TYPE_HANDLE, NULL);

  self->name = g_strdup (name);
  self->text = text;
  self->data = data;
  gtk_label_set_text (GTK_LABEL (self->label), name);
  show_value (self);
  return GTK_WIDGET (self);
}

void
stead_handle_range (SteadHandle *self,
                    double       low,
                    double       high,
                    double       step)
{
  g_return_if_fail (STEAD_IS_HANDLE (self));

  self->quiet = TRUE;
  gtk_range_set_range (GTK_RANGE (self->scale), low, MAX (high, low + step));
  gtk_range_set_increments (GTK_RANGE (self->scale), step, 10 * step);
  gtk_range_set_round_digits (GTK_RANGE (self->scale), step < 1 ? 3 : 0);
  self->quiet = FALSE;
}

void
stead_handle_set (SteadHandle *self,
                  double       value)
{
  g_return_if_fail (STEAD_IS_HANDLE (self));

  self->quiet = TRUE;
  gtk_range_set_value (GTK_RANGE (self->scale), value);
  show_value (self);
  self->quiet = FALSE;
}

double
stead_handle_get (SteadHandle *self)
{
  g_return_val_if_fail (STEAD_IS_HANDLE (self), 0);

  return gtk_range_get_value (GTK_RANGE (self->scale));
}
