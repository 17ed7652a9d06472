/* stead-table.h - a column view as every table here has it: one Tab in, one Tab
 * out, rows with names, a filter, and "Copy as text" and "Save as CSV" in its menu.
 *
 * GTK 4.8's column view takes Tab from row to row; this bin lets it leave.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_TABLE (stead_table_get_type ())
G_DECLARE_FINAL_TYPE (SteadTable, stead_table, STEAD, TABLE, GtkWidget)

/* Text of one cell; (transfer full). */
typedef char *(*SteadTableText) (gpointer item, gpointer data);
/* A cell that was edited: %FALSE with @error keeps the editor open with the message. */
typedef gboolean (*SteadTableEdit) (gpointer item, const char *text, gpointer data, GError **error);
/* Order of two items in a column. */
typedef int (*SteadTableCompare) (gconstpointer a, gconstpointer b, gpointer data);
typedef void (*SteadTableActivate) (gpointer item, gpointer data);

/* @name: what a screen reader calls the table */
GtkWidget *stead_table_new (const char *name);
void stead_table_set_name       (SteadTable *self, const char *name);   /* for a table made in a .ui file */

/**
 * stead_table_add_column:
 * @title: head of the column
 * @numeric: right-aligned, tabular figures
 * @text: what a cell shows
 * @edit: (nullable): Return or F2 on the cell opens an entry
 * @compare: (nullable): makes the column sortable by its head
 */
void stead_table_add_column (SteadTable        *self,
                             const char        *title,
                             gboolean           numeric,
                             gboolean           expand,
                             SteadTableText     text,
                             SteadTableEdit     edit,
                             SteadTableCompare  compare,
                             gpointer           data);

/* @model: (transfer none): of GObjects.  A GListStore is sorted and filtered here;
 * any other model is taken to be lazy and shown as it is. */
void stead_table_set_model      (SteadTable *self, GListModel *model);
/* Shown instead of rows while the model is empty: what belongs here, and the first step. */
void stead_table_set_empty      (SteadTable *self, const char *text);
void stead_table_set_activate   (SteadTable *self, SteadTableActivate activate, gpointer data);
/* (nullable) (transfer none) */
gpointer stead_table_get_selected (SteadTable *self);
void stead_table_select         (SteadTable *self, guint position);
/* Writes anew the cells that show this item of the model: a list to which the same one comes again leaves
 * them as they are, from GTK 4.12 on. */
void stead_table_write_again    (SteadTable *self, gpointer item);
/* Typed text that rows must contain (any cell); NULL shows all. */
void stead_table_set_filter     (SteadTable *self, const char *text);
/* All rows as shown, tab-separated with the heads. (transfer full) */
char *stead_table_to_text       (SteadTable *self);

/* A row item that carries any C struct: free function and pointer. */
#define STEAD_TYPE_ROW (stead_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadRow, stead_row, STEAD, ROW, GObject)
SteadRow *stead_row_new (gpointer fact, GDestroyNotify destroy);   /* (transfer full) fact */
gpointer  stead_row_get (SteadRow *self);
/* Returns: (transfer full): a list store of SteadRow; @facts: (transfer full): the
 * array is freed, its facts live on in the rows */
GListModel *stead_rows_from_array (GPtrArray *facts, GDestroyNotify destroy);

G_END_DECLS
