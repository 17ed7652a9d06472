/* stead-fish-move-dialog.h - fish go to another tank, all of them or some. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FISH_MOVE_DIALOG (stead_fish_move_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadFishMoveDialog, stead_fish_move_dialog, STEAD, FISH_MOVE_DIALOG, SteadDialog)

void stead_fish_move_dialog_show (GtkWidget *parent,
                                  SteadDesk *desk,
                                  gint64     fish_id);

G_END_DECLS
