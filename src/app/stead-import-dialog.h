/* stead-import-dialog.h - the preview of a CSV, row by row, before anything is taken. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-import-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

/* Asks for the file, reads it in a worker, shows what will be taken, and takes it. */
void stead_import_dialog_show (GtkWidget *parent, SteadDesk *desk, SteadImportKind kind, gint64 batch_id);

G_END_DECLS
