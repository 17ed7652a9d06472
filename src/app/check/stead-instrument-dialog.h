/* stead-instrument-dialog.h - changes an instrument, takes it out of use, or deletes it. */
#pragma once

#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

void stead_instrument_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 instrument_id);

G_END_DECLS
