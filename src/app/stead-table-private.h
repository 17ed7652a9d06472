/* stead-table-private.h - the columns of a table, shared by its own files. */
#pragma once

#include "app/stead-table.h"

G_BEGIN_DECLS

/* The table's cell editor: an entry in a popover over the cell. */
#define STEAD_TYPE_TABLE_EDITOR (stead_table_editor_get_type ())
G_DECLARE_FINAL_TYPE (SteadTableEditor, stead_table_editor, STEAD, TABLE_EDITOR, GtkWidget)

/* Takes the text: %FALSE with @error keeps the editor open. */
typedef gboolean (*SteadTableTake) (const char *text, gpointer data, GError **error);
/* It was closed with its text taken: @step is 0, or +1 (-1) for Tab (Shift+Tab) to the next cell. */
typedef void (*SteadTableDone) (int step, gpointer data);

GtkWidget *stead_table_editor_new  (SteadTableTake      take,
                                    SteadTableDone      done,
                                    gpointer            data);
void       stead_table_editor_open (SteadTableEditor   *self,
                                    const GdkRectangle *cell,
                                    const char         *name,
                                    const char         *text);

/* One row of CSV (RFC 4180), CRLF at its end; text that a spreadsheet would take
 * for a formula gets an apostrophe in front, numbers are left alone. */
void stead_table_csv_append (GString     *csv,
                             const char * const  *cells,
                             const gboolean     *numeric,
                             guint               n_cells);

G_END_DECLS
