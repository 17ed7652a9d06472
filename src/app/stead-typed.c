/* stead-typed.c - what a person has entered, to tell whether there is anything to lose. */
#include "config.h"

#include "app/stead-typed.h"
#include "app/stead-ui.h"

#define BETWEEN '\x1f'   /* nobody types it */

static void
add_lines (GtkTextView *view,
           GString     *all)
{
  g_autofree char *text = stead_ui_read_lines (view);

  g_string_append (all, text);
}

/* Returns: whether it holds something itself, and what is in it need not be looked at */
static gboolean
add_one (GtkWidget *widget,
         GString   *all)
{
  if (GTK_IS_TEXT (widget))
    g_string_append (all, gtk_editable_get_text (GTK_EDITABLE (widget)));
  else if (GTK_IS_TEXT_VIEW (widget))
    add_lines (GTK_TEXT_VIEW (widget), all);
  else if (GTK_IS_DROP_DOWN (widget))
    g_string_append_printf (all, "%u", gtk_drop_down_get_selected (GTK_DROP_DOWN (widget)));
  else if (GTK_IS_CHECK_BUTTON (widget))
    g_string_append_c (all, gtk_check_button_get_active (GTK_CHECK_BUTTON (widget)) ? '1' : '0');
  else
    return FALSE;
  g_string_append_c (all, BETWEEN);
  return TRUE;
}

static void
add_all (GtkWidget *widget,
         GString   *all)
{
  if (add_one (widget, all))
    return;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    add_all (child, all);
}

char *
stead_typed_in (GtkWidget *root)
{
  GString *all;

  g_return_val_if_fail (GTK_IS_WIDGET (root), NULL);

  all = g_string_new (NULL);
  add_all (root, all);
  return g_string_free (all, FALSE);
}
