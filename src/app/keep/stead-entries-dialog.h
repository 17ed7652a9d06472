/* stead-entries-dialog.h - the entries behind a figure of a statement. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-statement-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

/* Copies what it shows of @line. */
void stead_entries_dialog_show (GtkWidget *parent, SteadDesk *desk, const SteadStatementAnswer *answer,
                                const SteadStatementLine *line);

G_END_DECLS
