/* stead-ui.c - what every part of the window needs before it is made. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-columns-layout.h"
#include "app/stead-desk.h"
#include "app/stead-field.h"
#include "app/stead-one-stop.h"
#include "app/stead-page.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

/* Made by glib-compile-resources from ui/steading.gresource.xml and from the icons;
 * naming both here is what makes the linker take them out of the library. */
void       steading_register_resource   (void);
GResource *steading_icons_get_resource  (void);

void
stead_ui_register (void)
{
  static gsize done = 0;

  if (!g_once_init_enter (&done))
    return;
  steading_register_resource ();
  g_warn_if_fail (steading_icons_get_resource () != NULL);
  g_type_ensure (STEAD_TYPE_DESK);
  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_ONE_STOP);
  g_type_ensure (STEAD_TYPE_PAGE);
  g_type_ensure (STEAD_TYPE_TABLE);
  g_type_ensure (STEAD_TYPE_COLUMNS_LAYOUT);
  g_type_ensure (STEAD_TYPE_WRAP_LAYOUT);
  g_once_init_leave (&done, 1);
}

void
stead_ui_drop_children (GtkWidget *widget)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (widget)) != NULL)
    gtk_widget_unparent (child);
}

void
stead_ui_name (GtkWidget  *widget,
               const char *text)
{
  gtk_accessible_reset_relation (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_RELATION_LABELLED_BY);
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

/* What looks in a long list has no name of its own. */
static void
name_search (GtkWidget *widget)
{
  if (GTK_IS_SEARCH_ENTRY (widget))
    stead_ui_name (widget, _("Find a line"));
  for (GtkWidget *child = gtk_widget_get_first_child (widget);
       child != NULL;
       child = gtk_widget_get_next_sibling (child))
    name_search (child);
}

static void
name_drop_down (GtkWidget *drop_down)
{
  GList *labels = gtk_widget_list_mnemonic_labels (drop_down);

  name_search (drop_down);
  if (labels != NULL && GTK_IS_LABEL (labels->data))
    stead_ui_name (gtk_widget_get_first_child (drop_down), gtk_label_get_text (labels->data));
  g_list_free (labels);
}

void
stead_ui_name_drop_downs (GtkWidget *widget)
{
  if (GTK_IS_DROP_DOWN (widget))
    {
      name_drop_down (widget);
      return;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget);
       child != NULL;
       child = gtk_widget_get_next_sibling (child))
    stead_ui_name_drop_downs (child);
}

/* (nullable) */
static GtkWidget *
find_label (GtkWidget *widget)
{
  GtkWidget *found = NULL;

  if (GTK_IS_LABEL (widget))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget);
       child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_label (child);
  return found;
}

static void
name_items (GtkWidget *widget)
{
  gboolean is_item = gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (widget)) == GTK_ACCESSIBLE_ROLE_MENU_ITEM;
  GtkWidget *label = is_item ? find_label (widget) : NULL;

  if (label != NULL)
    stead_ui_name (widget, gtk_label_get_text (GTK_LABEL (label)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget);
       child != NULL && !is_item;
       child = gtk_widget_get_next_sibling (child))
    name_items (child);
}

void
stead_ui_name_menu (GtkMenuButton *button)
{
  GtkPopover *menu;

  g_return_if_fail (GTK_IS_MENU_BUTTON (button));

  menu = gtk_menu_button_get_popover (button);
  g_return_if_fail (menu != NULL);
  g_signal_connect (menu, "map", G_CALLBACK (name_items), NULL);
}

void
stead_ui_expander_set_child (GtkWidget *expander,
                             GtkWidget *child)
{
  g_object_bind_property (expander, "expanded", child, "can-focus", G_BINDING_SYNC_CREATE);
  gtk_expander_set_child (GTK_EXPANDER (expander), child);
}

GtkWidget *
stead_ui_icon_button (const char *icon,
                      const char *name)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_widget_set_tooltip_text (button, name);
  stead_ui_name (button, name);
  return button;
}

/* A line of a narrow page holds about as many letters. */
#define LONGEST_WORD 24

static gboolean
has_long_word (const char *text)
{
  glong n = 0;

  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at))
    {
      n = g_unichar_isspace (g_utf8_get_char (at)) ? 0 : n + 1;
      if (n > LONGEST_WORD)
        return TRUE;
    }
  return FALSE;
}

static void
choose_wrap (GtkLabel *label)
{
  gtk_label_set_wrap_mode (label, has_long_word (gtk_label_get_text (label)) ? PANGO_WRAP_WORD_CHAR : PANGO_WRAP_WORD);
}

void
stead_ui_wrap (GtkLabel *label)
{
  gtk_label_set_wrap (label, TRUE);
  choose_wrap (label);
  g_signal_connect (label, "notify::label", G_CALLBACK (choose_wrap), NULL);
}

void
stead_ui_tell (GtkLabel   *label,
               const char *text)
{
  g_return_if_fail (GTK_IS_LABEL (label));
  gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL);
}

static void
hush_unseen (GtkStack *stack)
{
  GtkWidget *seen = gtk_stack_get_visible_child (stack);

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (stack)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    gtk_accessible_update_state (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_STATE_HIDDEN, child != seen, -1);
}

void
stead_ui_hush_stack (GtkStack *stack)
{
  g_signal_connect (stack, "notify::visible-child", G_CALLBACK (hush_unseen), NULL);
  hush_unseen (stack);
}

char *
stead_ui_read_lines (GtkTextView *view)
{
  char *text = NULL;

  g_return_val_if_fail (GTK_IS_TEXT_VIEW (view), NULL);
  g_object_get (gtk_text_view_get_buffer (view), "text", &text, NULL);
  return text;
}

GtkWidget *
stead_ui_row_new (int spacing)
{
  GtkWidget *row = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (row), spacing);
  return row;
}

void
stead_ui_row_append (GtkWidget *row,
                     GtkWidget *child)
{
  gtk_grid_attach_next_to (GTK_GRID (row), child, gtk_widget_get_last_child (row), GTK_POS_RIGHT, 1, 1);
}
