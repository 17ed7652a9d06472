/* stead-turn-dialog.h - a turn of the rota; a training that was given. */
#pragma once

#include "app/stead-dialog.h"
#include "store/stead-people-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_TURN_DIALOG (stead_turn_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadTurnDialog, stead_turn_dialog, STEAD, TURN_DIALOG, SteadDialog)

/* @turn: (nullable): a new one; otherwise it is ended or removed */
void stead_turn_dialog_show (GtkWidget *parent, SteadDesk *desk, const SteadTurn *turn);

#define STEAD_TYPE_TRAINING_DIALOG (stead_training_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadTrainingDialog, stead_training_dialog, STEAD, TRAINING_DIALOG, SteadDialog)

/* @training_id: 0: a new one */
void stead_training_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 training_id);

G_END_DECLS
