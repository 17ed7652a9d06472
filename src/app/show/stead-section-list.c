/* stead-section-list.c - which sections a packet has: a tick each, and two buttons that move it.
 *
 * Arrows go from row to row, so that Tab leaves the list after the buttons of one row.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-section-list.h"

#include "answer/stead-packet-answer.h"
#include "app/stead-ui.h"

#define LIST_HEIGHT 112

/* The row goes by @step places; the button keeps the focus. */
static void
move (GtkWidget *button,
      int        step)
{
  GtkWidget *row = gtk_widget_get_ancestor (button, GTK_TYPE_LIST_BOX_ROW);
  GtkWidget *rows = gtk_widget_get_parent (row);
  int at = gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row)) + step;

  if (at < 0 || gtk_list_box_get_row_at_index (GTK_LIST_BOX (rows), at) == NULL)
    return;
  g_object_ref (row);
  gtk_list_box_remove (GTK_LIST_BOX (rows), row);
  gtk_list_box_insert (GTK_LIST_BOX (rows), row, at);
  g_object_unref (row);
  gtk_widget_grab_focus (button);
}

static void
up_cb (GtkWidget *button)
{
  move (button, -1);
}

static void
down_cb (GtkWidget *button)
{
  move (button, 1);
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

/* @label: (transfer full) */
static void
add_button (GtkWidget  *row,
            const char *icon,
            char       *label,
            GCallback   clicked)
{
  GtkWidget *button = stead_ui_icon_button (icon, label);

  gtk_widget_add_css_class (button, "flat");
  g_signal_connect (button, "clicked", clicked, NULL);
  gtk_box_append (GTK_BOX (row), button);
  g_free (label);
}

static void
add_section (GtkWidget  *rows,
             const char *key,
             gboolean    is_in)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *check = gtk_check_button_new_with_label (stead_packet_section_title (key));

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), is_in);
  gtk_widget_set_hexpand (check, TRUE);
  g_object_set_data_full (G_OBJECT (check), "key", g_strdup (key), g_free);
  gtk_box_append (GTK_BOX (row), check);
  /* Translators: a button that moves a section of a packet; %s is its title. */
  add_button (row, "go-up-symbolic", g_strdup_printf (_("Earlier: %s"), stead_packet_section_title (key)), G_CALLBACK (up_cb));
  add_button (row, "go-down-symbolic", g_strdup_printf (_("Later: %s"), stead_packet_section_title (key)), G_CALLBACK (down_cb));
  gtk_list_box_append (GTK_LIST_BOX (rows), row);
  stead_ui_name (gtk_widget_get_last_child (rows), stead_packet_section_title (key));
}

GtkWidget *
stead_section_list_new (const GPtrArray *sections)
{
  GtkWidget *list = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4), *frame = gtk_scrolled_window_new ();
  GtkWidget *name = gtk_label_new (_("Sections, in this order")), *rows = gtk_list_box_new ();

  for (guint i = 0; i < sections->len; i++)
    add_section (rows, sections->pdata[i], TRUE);
  for (const char * const *key = stead_packet_sections (); *key != NULL; key++)
    if (!g_ptr_array_find_with_equal_func ((GPtrArray *) sections, *key, g_str_equal, NULL))
      add_section (rows, *key, FALSE);
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (rows), GTK_SELECTION_NONE);
  stead_ui_name (rows, gtk_label_get_text (GTK_LABEL (name)));
  g_signal_connect (rows, "row-activated", G_CALLBACK (activated_cb), NULL);
  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (frame), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (frame), LIST_HEIGHT);
  gtk_scrolled_window_set_has_frame (GTK_SCROLLED_WINDOW (frame), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (frame), rows);
  gtk_box_append (GTK_BOX (list), name);
  gtk_box_append (GTK_BOX (list), frame);
  g_object_set_data (G_OBJECT (list), "rows", rows);
  return list;
}

void
stead_section_list_read (GtkWidget *list,
                         GPtrArray *sections)
{
  GtkWidget *rows = g_object_get_data (G_OBJECT (list), "rows");
  GtkListBoxRow *row;

  g_return_if_fail (GTK_IS_LIST_BOX (rows));
  g_ptr_array_set_size (sections, 0);
  for (int i = 0; (row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (rows), i)) != NULL; i++)
    if (gtk_check_button_get_active (check_of (row)))
      g_ptr_array_add (sections, g_strdup (g_object_get_data (G_OBJECT (check_of (row)), "key")));
}
