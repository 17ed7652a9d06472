/* stead-one-stop.h - a list that is one stop of the Tab key. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A box round a list: Tab comes to the row that is chosen and leaves the list from any row;
 * arrows go from row to row.  GTK's own Tab goes through all rows, and chooses each on the way. */
#define STEAD_TYPE_ONE_STOP (stead_one_stop_get_type ())
G_DECLARE_FINAL_TYPE (SteadOneStop, stead_one_stop, STEAD, ONE_STOP, GtkBox)

G_END_DECLS
