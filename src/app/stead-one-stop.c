/* stead-one-stop.c - a list that is one stop of the Tab key. */
#include "config.h"

#include "app/stead-one-stop.h"

struct _SteadOneStop
{
  GtkBox parent_instance;
};

G_DEFINE_FINAL_TYPE (SteadOneStop, stead_one_stop, GTK_TYPE_BOX)

/* (nullable): the row that is chosen, of the first list below @widget */
static GtkWidget *
chosen_row (GtkWidget *widget)
{
  if (GTK_IS_LIST_BOX (widget))
    return GTK_WIDGET (gtk_list_box_get_selected_row (GTK_LIST_BOX (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *row = chosen_row (child);

      if (row != NULL)
        return row;
    }
  return NULL;
}

static gboolean
stead_one_stop_focus (GtkWidget        *widget,
                      GtkDirectionType  direction)
{
  GtkWidget *row = chosen_row (widget);

  if (direction != GTK_DIR_TAB_FORWARD && direction != GTK_DIR_TAB_BACKWARD)
    return GTK_WIDGET_CLASS (stead_one_stop_parent_class)->focus (widget, direction);
  if (gtk_widget_get_focus_child (widget) != NULL)
    return FALSE;
  if (row != NULL && gtk_widget_grab_focus (row))
    return TRUE;
  return GTK_WIDGET_CLASS (stead_one_stop_parent_class)->focus (widget, GTK_DIR_TAB_FORWARD);
}

static void
stead_one_stop_class_init (SteadOneStopClass *klass)
{
  GTK_WIDGET_CLASS (klass)->focus = stead_one_stop_focus;
}

static void
stead_one_stop_init (SteadOneStop *self)
{
  gtk_widget_set_layout_manager (GTK_WIDGET (self), gtk_bin_layout_new ());
}
