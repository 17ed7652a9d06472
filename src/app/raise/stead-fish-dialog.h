/* stead-fish-dialog.h - the plan of a group of fish: new, or changed. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FISH_DIALOG (stead_fish_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadFishDialog, stead_fish_dialog, STEAD, FISH_DIALOG, SteadDialog)

/* @fish_id: 0 for a new group */
void stead_fish_dialog_show (GtkWidget *parent,
                             SteadDesk *desk,
                             gint64     fish_id);

G_END_DECLS
