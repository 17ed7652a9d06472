/* stead-place-dialog.h - a place of the farm: new, or changed. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"
#include "store/stead-place-repo.h"

G_BEGIN_DECLS

/* @place_id: 0 for a new one, which is proposed to be of @kind. */
void stead_place_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 place_id, SteadPlaceKind kind);

G_END_DECLS
