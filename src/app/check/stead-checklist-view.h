/* stead-checklist-view.h - one checklist: what stops, what is held, its lines, and the signature. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CHECKLIST_VIEW (stead_checklist_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadChecklistView, stead_checklist_view, STEAD, CHECKLIST_VIEW, GtkWidget)

/* Signal: "pots" (gint64 line_id): the pots of a line are wanted. */

void stead_checklist_view_show (SteadChecklistView *self, SteadDesk *desk, gint64 list_id);

G_END_DECLS
