/* stead-table-editor.c - an entry in a popover over a table's cell.
 *
 * Return takes the text and closes; Tab takes it and goes on to the next cell;
 * Escape leaves the cell as it was.  What cannot be taken stays in the entry with
 * the reason under it.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-field.h"
#include "app/stead-table-private.h"
#include "app/stead-ui.h"

struct _SteadTableEditor
{
  GtkWidget       parent_instance;

  GtkWidget      *popover;
  SteadField     *field;
  char           *before;    /* the text that the cell had */
  SteadTableTake  take;
  SteadTableDone  done;
  gpointer        data;
};

G_DEFINE_FINAL_TYPE (SteadTableEditor, stead_table_editor, GTK_TYPE_WIDGET)

static gboolean
take_text (SteadTableEditor *self)
{
  g_autoptr(GError) error = NULL;
  const char *text = stead_field_get_text (self->field);

  if (g_strcmp0 (text, self->before) == 0)
    return TRUE;
  if (self->take (text, self->data, &error))
    return TRUE;
  stead_field_set_error (self->field, error != NULL ? error->message : _("This cannot be taken."));
  return FALSE;
}

static void
finish (SteadTableEditor *self,
        int               by)
{
  if (!take_text (self))
    return;
  gtk_popover_popdown (GTK_POPOVER (self->popover));
  self->done (by, self->data);
}

static void
activate_cb (SteadTableEditor *self)
{
  finish (self, 0);
}

static gboolean
key_cb (SteadTableEditor *self,
        guint             keyval)
{
  if (keyval != GDK_KEY_Tab && keyval != GDK_KEY_ISO_Left_Tab && keyval != GDK_KEY_KP_Tab)
    return GDK_EVENT_PROPAGATE;
  finish (self, keyval == GDK_KEY_ISO_Left_Tab ? -1 : 1);
  return GDK_EVENT_STOP;
}

static void
stead_table_editor_dispose (GObject *object)
{
  SteadTableEditor *self = STEAD_TABLE_EDITOR (object);

  g_clear_pointer (&self->popover, gtk_widget_unparent);
  g_clear_pointer (&self->before, g_free);
  G_OBJECT_CLASS (stead_table_editor_parent_class)->dispose (object);
}

static void
stead_table_editor_class_init (SteadTableEditorClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_table_editor_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
stead_table_editor_init (SteadTableEditor *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->field = STEAD_FIELD (stead_field_new (NULL, STEAD_FIELD_TEXT));
  self->popover = gtk_popover_new ();
  gtk_widget_add_css_class (self->popover, "steading");
  gtk_popover_set_position (GTK_POPOVER (self->popover), GTK_POS_BOTTOM);
  gtk_popover_set_child (GTK_POPOVER (self->popover), GTK_WIDGET (self->field));
  gtk_widget_set_parent (self->popover, GTK_WIDGET (self));

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->field), keys);
  g_signal_connect_swapped (self->field, "activate", G_CALLBACK (activate_cb), self);
}

GtkWidget *
stead_table_editor_new (SteadTableTake take,
                        SteadTableDone done,
                        gpointer       data)
{
  SteadTableEditor *self = g_object_new (STEAD_TYPE_TABLE_EDITOR, NULL);

  self->take = take;
  self->done = done;
  self->data = data;
  return GTK_WIDGET (self);
}

/* @cell: in this widget's coordinates; @name: what the cell is, for the label */
void
stead_table_editor_open (SteadTableEditor   *self,
                         const GdkRectangle *cell,
                         const char         *name,
                         const char         *text)
{
  g_free (self->before);
  self->before = g_strdup (text);
  g_object_set (self->field, "label", name, "text", text, NULL);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->popover), cell);
  gtk_popover_popup (GTK_POPOVER (self->popover));
  gtk_widget_grab_focus (GTK_WIDGET (self->field));
}
