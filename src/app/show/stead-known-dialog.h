/* stead-known-dialog.h - work that the farm knows of, to be taken over into the hours. */
#pragma once

#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_KNOWN_DIALOG (stead_known_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadKnownDialog, stead_known_dialog, STEAD, KNOWN_DIALOG, GtkWindow)

void stead_known_dialog_show (GtkWidget *parent, SteadDesk *desk, SteadDay from, SteadDay to);

G_END_DECLS
