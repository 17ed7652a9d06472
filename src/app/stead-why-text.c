/* stead-why-text.c - one "Why?", written out: formula, worked, source. */
#include "config.h"

#include "app/stead-why-text.h"

#include <glib/gi18n-lib.h>

#include "app/stead-ui.h"

struct _SteadWhyText
{
  GtkWidget  parent_instance;

  GtkWidget *formula;
  GtkWidget *worked;
  GtkWidget *source;
};

G_DEFINE_FINAL_TYPE (SteadWhyText, stead_why_text, GTK_TYPE_WIDGET)

static void
stead_why_text_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_why_text_parent_class)->dispose (object);
}

static void
stead_why_text_class_init (SteadWhyTextClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_why_text_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "whytext");
}

static GtkWidget *
add_label (SteadWhyText *self,
           const char   *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  stead_ui_wrap (GTK_LABEL (label));
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  /* Text to read must not be a stop of the Tab key.  Were it only not focusable, GTK 4.8 would take it
   * for having taken the focus, and Tab would go no further. */
  gtk_widget_set_can_focus (label, FALSE);
  gtk_widget_add_css_class (label, css_class);
  gtk_widget_set_parent (label, GTK_WIDGET (self));
  return label;
}

static void
stead_why_text_init (SteadWhyText *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 3);
  self->formula = add_label (self, "formula");
  self->worked = add_label (self, "worked");
  self->source = add_label (self, "source");
}

GtkWidget *
stead_why_text_new (void)
{
  return g_object_new (STEAD_TYPE_WHY_TEXT, NULL);
}

static void
show_text (GtkWidget  *label,
           const char *text)
{
  gtk_widget_set_visible (label, text != NULL && *text != '\0');
  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (label)), text) != 0)
    gtk_label_set_text (GTK_LABEL (label), text != NULL ? text : "");
}

void
stead_why_text_set (SteadWhyText   *self,
                    const SteadWhy *why)
{
  g_autofree char *source = NULL;

  g_return_if_fail (STEAD_IS_WHY_TEXT (self));

  gtk_widget_set_visible (GTK_WIDGET (self), why != NULL);
  if (why == NULL)
    return;
  if (why->source != NULL)
    /* Translators: %s is the book or rule that a formula is from. */
    source = g_strdup_printf (_("Source: %s"), why->source);
  show_text (self->formula, why->formula);
  show_text (self->worked, why->worked);
  show_text (self->source, source);
}
