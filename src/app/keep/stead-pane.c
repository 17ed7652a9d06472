/* stead-pane.c - one of Keep's lists: a sentence, a table, and its buttons. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-pane.h"
#include "app/stead-ui.h"

typedef struct
{
  SteadDesk  *desk;
  SteadTable *table;
  GtkLabel   *sentence;
  GtkBox     *slot, *buttons;
} SteadPanePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (SteadPane, stead_pane, GTK_TYPE_WIDGET)

static SteadPanePrivate *
private_of (SteadPane *self)
{
  return stead_pane_get_instance_private (self);
}

static void
stead_pane_dispose (GObject *object)
{
  SteadPanePrivate *priv = private_of (STEAD_PANE (object));

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&priv->desk);
  G_OBJECT_CLASS (stead_pane_parent_class)->dispose (object);
}

static void
stead_pane_class_init (SteadPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_pane_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-pane.ui"));
  gtk_widget_class_bind_template_child_private (widget_class, SteadPane, sentence);
  gtk_widget_class_bind_template_child_private (widget_class, SteadPane, slot);
  gtk_widget_class_bind_template_child_private (widget_class, SteadPane, buttons);
}

static void
stead_pane_init (SteadPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_pane_refresh (SteadPane *self,
                    SteadDesk *desk)
{
  g_return_if_fail (STEAD_IS_PANE (self));

  g_set_object (&private_of (self)->desk, desk);
  STEAD_PANE_GET_CLASS (self)->refresh (self);
}

void
stead_pane_show (SteadPane   *self,
                 SteadTarget  target,
                 gint64       id)
{
  g_return_if_fail (STEAD_IS_PANE (self));

  if (STEAD_PANE_GET_CLASS (self)->show != NULL)
    STEAD_PANE_GET_CLASS (self)->show (self, target, id);
}

SteadDesk *
stead_pane_get_desk (SteadPane *self)
{
  g_return_val_if_fail (STEAD_IS_PANE (self), NULL);
  return private_of (self)->desk;
}

SteadStore *
stead_pane_get_store (SteadPane *self)
{
  return stead_desk_get_store (stead_pane_get_desk (self));
}

void
stead_pane_add_head (SteadPane *self,
                     GtkWidget *head)
{
  SteadPanePrivate *priv = private_of (self);
  GtkWidget *box = gtk_widget_get_parent (GTK_WIDGET (priv->sentence));
  GtkWidget *card = gtk_widget_get_last_child (box);

  gtk_box_insert_child_after (GTK_BOX (box), head, gtk_widget_get_prev_sibling (card));
}

void
stead_pane_add_body (SteadPane *self,
                     GtkWidget *body)
{
  gtk_widget_set_hexpand (body, TRUE);
  gtk_box_append (private_of (self)->slot, body);
}

SteadTable *
stead_pane_add_table (SteadPane  *self,
                      const char *name)
{
  SteadPanePrivate *priv = private_of (self);
  GtkWidget *table = stead_table_new (name);

  priv->table = STEAD_TABLE (table);
  gtk_widget_set_hexpand (table, TRUE);
  gtk_box_append (priv->slot, table);
  return priv->table;
}

GtkWidget *
stead_pane_add_button (SteadPane  *self,
                       const char *label,
                       GCallback   clicked)
{
  SteadPanePrivate *priv = private_of (self);
  GtkWidget *button = gtk_button_new_with_label (label);

  if (gtk_widget_get_first_child (GTK_WIDGET (priv->buttons)) == NULL)
    gtk_widget_add_css_class (button, "primary");
  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_box_append (priv->buttons, button);
  return button;
}

void
stead_pane_say (SteadPane    *self,
                const char   *markup,
                const GError *error)
{
  if (error != NULL)
    gtk_label_set_text (private_of (self)->sentence, error->message);
  else
    gtk_label_set_markup (private_of (self)->sentence, markup);
}

gpointer
stead_pane_get_chosen (SteadPane *self)
{
  SteadPanePrivate *priv = private_of (self);
  gpointer row = stead_table_get_selected (priv->table);

  if (row != NULL)
    return stead_row_get (row);
  stead_desk_say (priv->desk, _("Choose a row of the table first."), FALSE);
  return NULL;
}
