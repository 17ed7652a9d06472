/* stead-waste-dialog.h - part of a lot is thrown out or given away, with the reason. */
#pragma once

#include "app/stead-dialog.h"
#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WASTE_DIALOG (stead_waste_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadWasteDialog, stead_waste_dialog, STEAD, WASTE_DIALOG, SteadDialog)

/* @kind: %STEAD_MOVE_LOST or %STEAD_MOVE_GIVEN */
void stead_waste_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 lot_id, SteadMoveKind kind);

G_END_DECLS
