/* stead-pots-view.h - the pots of one line that cool. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_POTS_VIEW (stead_pots_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadPotsView, stead_pots_view, STEAD, POTS_VIEW, GtkWidget)

/* Signal: "back" (): the list is wanted again. */

/* %FALSE: the list has no such line. */
gboolean stead_pots_view_show (SteadPotsView *self, SteadDesk *desk, gint64 list_id, gint64 line_id);

G_END_DECLS
