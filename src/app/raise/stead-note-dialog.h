/* stead-note-dialog.h - a note on a batch, with a picture. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_NOTE_DIALOG (stead_note_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadNoteDialog, stead_note_dialog, STEAD, NOTE_DIALOG, SteadDialog)

/* @note_id: 0 for a new one.  Returns: (nullable) (transfer none): the dialog */
SteadNoteDialog *stead_note_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 batch_id, gint64 note_id);
/* As if the person had chosen this file. */
void             stead_note_dialog_take_picture (SteadNoteDialog *self, const char *path);

G_END_DECLS
