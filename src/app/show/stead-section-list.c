/* stead-section-list.c - which sections a packet has: a tick each, and two buttons that move it.
 *
 * By the keyboard it is one stop: arrows go from row to row, Space ticks, Alt with an arrow moves.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-section-list.h"

#include "answer/stead-packet-answer.h"
#include "app/stead-ui.h"

#define STEAD_TYPE_SECTION_LIST (stead_section_list_get_type ())
G_DECLARE_FINAL_TYPE (SteadSectionList, stead_section_list, STEAD, SECTION_LIST, GtkBox)

struct _SteadSectionList
{
  GtkBox      parent_instance;

  GtkListBox *rows;
};

G_DEFINE_FINAL_TYPE (SteadSectionList, stead_section_list, GTK_TYPE_BOX)

/* The row goes by @step places, and has the focus then. */
static void
move (GtkWidget *row,
      int        step)
{
  GtkWidget *rows = gtk_widget_get_parent (row);
  int at = gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row)) + step;

  if (at < 0 || gtk_list_box_get_row_at_index (GTK_LIST_BOX (rows), at) == NULL)
    return;
  g_object_ref (row);
  gtk_list_box_remove (GTK_LIST_BOX (rows), row);
  gtk_list_box_insert (GTK_LIST_BOX (rows), row, at);
  g_object_unref (row);
  gtk_widget_grab_focus (row);
}

static void
up_cb (GtkWidget *button)
{
  move (gtk_widget_get_ancestor (button, GTK_TYPE_LIST_BOX_ROW), -1);
}

static void
down_cb (GtkWidget *button)
{
  move (gtk_widget_get_ancestor (button, GTK_TYPE_LIST_BOX_ROW), 1);
}

/* (transfer none) */
static GtkCheckButton *
check_of (GtkListBoxRow *row)
{
  return GTK_CHECK_BUTTON (gtk_widget_get_first_child (gtk_list_box_row_get_child (row)));
}

/* Space or Return on the row itself. */
static void
activated_cb (GtkListBox    *rows,
              GtkListBoxRow *row)
{
  gtk_check_button_set_active (check_of (row), !gtk_check_button_get_active (check_of (row)));
}

static gboolean
key_cb (GtkWidget       *row,
        guint            key,
        guint            code,
        GdkModifierType  state)
{
  gboolean is_move = (state & GDK_ALT_MASK) != 0 && (key == GDK_KEY_Up || key == GDK_KEY_Down);

  if (is_move)
    move (row, key == GDK_KEY_Up ? -1 : 1);
  return is_move;
}

/* What a screen reader says of the row. */
static void
name_cb (GtkCheckButton *check)
{
  GtkWidget *row = gtk_widget_get_ancestor (GTK_WIDGET (check), GTK_TYPE_LIST_BOX_ROW);
  /* Translators: a section of a packet. */
  g_autofree char *name = g_strdup_printf (gtk_check_button_get_active (check) ? _("In the packet: %s") : _("Left out: %s"),
                                           gtk_check_button_get_label (check));

  if (row != NULL)
    stead_ui_name (row, name);
}

/* @label: (transfer full) */
static void
add_button (GtkWidget  *row,
            const char *icon,
            char       *label,
            GCallback   clicked)
{
  GtkWidget *button = stead_ui_icon_button (icon, label);

  gtk_widget_add_css_class (button, "quiet");
  gtk_widget_set_focusable (button, FALSE);
  g_signal_connect (button, "clicked", clicked, NULL);
  gtk_box_append (GTK_BOX (row), button);
  g_free (label);
}

static void
add_section (GtkListBox *rows,
             const char *key,
             gboolean    is_in)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *place = gtk_list_box_row_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkWidget *check = gtk_check_button_new_with_label (stead_packet_section_title (key));

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), is_in);
  gtk_widget_set_hexpand (check, TRUE);
  gtk_widget_set_focusable (check, FALSE);
  g_object_set_data_full (G_OBJECT (check), "key", g_strdup (key), g_free);
  gtk_box_append (GTK_BOX (row), check);
  /* Translators: a button that moves a section of a packet; %s is its title. */
  add_button (row, "go-up-symbolic", g_strdup_printf (_("Earlier: %s"), stead_packet_section_title (key)), G_CALLBACK (up_cb));
  add_button (row, "go-down-symbolic", g_strdup_printf (_("Later: %s"), stead_packet_section_title (key)), G_CALLBACK (down_cb));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (place), row);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), place);
  gtk_widget_add_controller (place, keys);
  gtk_list_box_append (rows, place);
  g_signal_connect (check, "notify::active", G_CALLBACK (name_cb), NULL);
  name_cb (GTK_CHECK_BUTTON (check));
}

/* Tab leaves the list: GTK's own takes it from row to row. */
static gboolean
stead_section_list_focus (GtkWidget        *widget,
                          GtkDirectionType  direction)
{
  if (gtk_widget_get_focus_child (widget) != NULL && (direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD))
    return FALSE;
  return GTK_WIDGET_CLASS (stead_section_list_parent_class)->focus (widget, direction);
}

static void
stead_section_list_class_init (SteadSectionListClass *klass)
{
  GTK_WIDGET_CLASS (klass)->focus = stead_section_list_focus;
}

static void
stead_section_list_init (SteadSectionList *self)
{
  GtkWidget *name = gtk_label_new (_("Sections, in this order"));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 4);
  self->rows = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->rows, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->rows), "orderlist");
  stead_ui_name (GTK_WIDGET (self->rows), gtk_label_get_text (GTK_LABEL (name)));
  g_signal_connect (self->rows, "row-activated", G_CALLBACK (activated_cb), NULL);
  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_box_append (GTK_BOX (self), name);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->rows));
}

GtkWidget *
stead_section_list_new (const GPtrArray *sections)
{
  SteadSectionList *self = g_object_new (STEAD_TYPE_SECTION_LIST, NULL);

  for (guint i = 0; i < sections->len; i++)
    add_section (self->rows, sections->pdata[i], TRUE);
  for (const char * const *key = stead_packet_sections (); *key != NULL; key++)
    if (!g_ptr_array_find_with_equal_func ((GPtrArray *) sections, *key, g_str_equal, NULL))
      add_section (self->rows, *key, FALSE);
  return GTK_WIDGET (self);
}

void
stead_section_list_read (GtkWidget *list,
                         GPtrArray *sections)
{
  GtkListBoxRow *row;

  g_return_if_fail (STEAD_IS_SECTION_LIST (list));
  g_ptr_array_set_size (sections, 0);
  for (int i = 0; (row = gtk_list_box_get_row_at_index (STEAD_SECTION_LIST (list)->rows, i)) != NULL; i++)
    if (gtk_check_button_get_active (check_of (row)))
      g_ptr_array_add (sections, g_strdup (g_object_get_data (G_OBJECT (check_of (row)), "key")));
}
