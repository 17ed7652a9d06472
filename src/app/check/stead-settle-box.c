/* stead-settle-box.c - something that keeps food from being sold, and how it was settled. */
#include "config.h"

#include "app/check/stead-settle-box.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

struct _SteadSettleBox
{
  GtkWidget   parent_instance;

  gint64      id;
  int         n_ways;

  GtkLabel   *head, *text, *way, *source;
  SteadField *field;
  GtkWidget  *buttons;
};

enum { SETTLED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadSettleBox, stead_settle_box, GTK_TYPE_WIDGET)

static void
press_cb (GtkButton *button,
          gpointer   box)
{
  g_signal_emit (box, signals[SETTLED], 0, GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "way")));
}

static GtkLabel *
add_label (GtkWidget  *box,
           const char *style)
{
  GtkWidget *label = stead_make_label ("", style);

  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static void
stead_settle_box_init (SteadSettleBox *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_widget_add_css_class (box, "stop");
  self->head = add_label (box, "heading");
  self->text = add_label (box, "sentence");
  self->way = add_label (box, "strong");
  self->source = add_label (box, "soft");
  self->field = STEAD_FIELD (stead_field_new ("", STEAD_FIELD_TEXT));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->field));
  self->buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_widget_set_layout_manager (self->buttons, stead_wrap_layout_new ());
  gtk_box_append (GTK_BOX (box), self->buttons);
  gtk_widget_set_parent (box, GTK_WIDGET (self));
}

static void
stead_settle_box_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_settle_box_parent_class)->dispose (object);
}

static void
stead_settle_box_class_init (SteadSettleBoxClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_settle_box_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  signals[SETTLED] = g_signal_new ("settled", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_INT);
}

GtkWidget *
stead_settle_box_new (gint64 id)
{
  SteadSettleBox *self = g_object_new (STEAD_TYPE_SETTLE_BOX, NULL);

  self->id = id;
  return GTK_WIDGET (self);
}

gint64
stead_settle_box_get_id (SteadSettleBox *self)
{
  g_return_val_if_fail (STEAD_IS_SETTLE_BOX (self), 0);
  return self->id;
}

void
stead_settle_box_say (SteadSettleBox *self,
                      const char     *head,
                      const char     *text,
                      const char     *way,
                      const char     *source)
{
  g_return_if_fail (STEAD_IS_SETTLE_BOX (self));

  stead_make_say (self->head, head, FALSE);
  stead_make_say (self->text, text, FALSE);
  stead_make_say (self->way, way, FALSE);
  stead_make_say (self->source, source, FALSE);
}

void
stead_settle_box_ask (SteadSettleBox *self,
                      const char     *label)
{
  g_return_if_fail (STEAD_IS_SETTLE_BOX (self));

  gtk_widget_set_visible (GTK_WIDGET (self->field), label != NULL);
  if (label != NULL)
    g_object_set (self->field, "label", label, NULL);
}

void
stead_settle_box_add (SteadSettleBox *self,
                      const char     *label,
                      const char     *name)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  g_return_if_fail (STEAD_IS_SETTLE_BOX (self));

  stead_ui_name (button, name);
  g_object_set_data (G_OBJECT (button), "way", GINT_TO_POINTER (self->n_ways++));
  g_signal_connect (button, "clicked", G_CALLBACK (press_cb), self);
  gtk_box_append (GTK_BOX (self->buttons), button);
}

const char *
stead_settle_box_get_text (SteadSettleBox *self)
{
  g_return_val_if_fail (STEAD_IS_SETTLE_BOX (self), "");
  return stead_field_get_text (self->field);
}

void
stead_settle_box_complain (SteadSettleBox *self,
                           const char     *message)
{
  g_return_if_fail (STEAD_IS_SETTLE_BOX (self));
  stead_field_set_error (self->field, message);
  gtk_widget_grab_focus (GTK_WIDGET (self->field));
}
