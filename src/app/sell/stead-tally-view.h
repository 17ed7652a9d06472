/* stead-tally-view.h - the stall while it sells: one tap a unit, from a button or a key. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_TALLY_VIEW (stead_tally_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadTallyView, stead_tally_view, STEAD, TALLY_VIEW, GtkBox)

/* Reads the sale anew and shows it. */
void stead_tally_view_show (SteadTallyView *self, SteadDesk *desk, gint64 sale_id);

G_END_DECLS
