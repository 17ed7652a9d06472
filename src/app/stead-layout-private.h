/* stead-layout-private.h - what the layouts of children share. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The child that is laid out at @child or after it. */
static inline GtkWidget *
stead_layout_from (GtkWidget *child)
{
  while (child != NULL && !gtk_widget_should_layout (child))
    child = gtk_widget_get_next_sibling (child);
  return child;
}

static inline GtkWidget *
stead_layout_first (GtkWidget *widget)
{
  return stead_layout_from (gtk_widget_get_first_child (widget));
}

static inline GtkWidget *
stead_layout_next (GtkWidget *child)
{
  return stead_layout_from (gtk_widget_get_next_sibling (child));
}

/* The natural height of @child where it is @width wide. */
static inline int
stead_layout_height (GtkWidget *child,
                     int        width)
{
  int natural;

  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, width, NULL, &natural, NULL, NULL);
  return natural;
}

G_END_DECLS
