/* stead-group-dialog.h - who belongs to a group. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_GROUP_DIALOG (stead_group_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadGroupDialog, stead_group_dialog, STEAD, GROUP_DIALOG, SteadDialog)

void stead_group_dialog_show (GtkWidget *parent, SteadDesk *desk);

G_END_DECLS
