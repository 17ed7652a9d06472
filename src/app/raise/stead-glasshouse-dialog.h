/* stead-glasshouse-dialog.h - what keeps a bay warm: cover, air, heater. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_GLASSHOUSE_DIALOG (stead_glasshouse_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadGlasshouseDialog, stead_glasshouse_dialog, STEAD, GLASSHOUSE_DIALOG, SteadDialog)

/* @place_id: a bay */
void stead_glasshouse_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 place_id);

G_END_DECLS
