/* stead-statement-sheet.h - one statement as a sheet: each line with its figure, and each
 * figure a button to the entries behind it.
 */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-statement-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_STATEMENT_SHEET (stead_statement_sheet_get_type ())
G_DECLARE_FINAL_TYPE (SteadStatementSheet, stead_statement_sheet, STEAD, STATEMENT_SHEET, GtkWidget)

GtkWidget *stead_statement_sheet_new (void);
/* Takes @answer over; %NULL empties the sheet. */
void       stead_statement_sheet_set (SteadStatementSheet *self, SteadDesk *desk, SteadStatementAnswer *answer,
                                      SteadStatementPart part);

G_END_DECLS
