/* stead-table-private.h - the table as its own files share it. */
#pragma once

#include "app/stead-table.h"

G_BEGIN_DECLS

typedef struct
{
  SteadTable          *table;    /* not owned */
  char                *title;
  gboolean             numeric;
  SteadTableText       text;
  SteadTableEdit       edit;     /* (nullable) */
  SteadTableCompare    compare;  /* (nullable) */
  gpointer             data;
  guint                index;
  GtkColumnViewColumn *column;
  GPtrArray           *cells;    /* of GtkListItem that show something now */
} SteadTableColumn;

struct _SteadTable
{
  GtkWidget            parent_instance;

  GtkWidget           *stack;       /* "rows" or "empty" */
  GtkWidget           *scrolled;
  GtkColumnView       *view;
  GtkWidget           *empty;
  GtkWidget           *editor;
  GtkWidget           *menu;        /* (nullable): made when asked for */

  GListModel          *model;       /* (nullable): as given */
  GtkFilterListModel  *filtered;
  GtkSortListModel    *sorted;
  GtkSingleSelection  *selection;
  GtkCustomFilter     *filter;
  GPtrArray           *columns;     /* of SteadTableColumn */
  int                  current;     /* column that keys edit; -1: none can be */
  guint                edited;      /* row under the editor */
  int                  sorted_by;   /* column that the menu sorted by; -1: none */
  gboolean             descending;

  char                *name;
  char                *empty_text;
  char                *needle;      /* (nullable): case folded */
  SteadTableActivate   activate;
  gpointer             activate_data;
};

/* (transfer full): what a cell shows, never NULL */
char             *stead_table_cell_text     (SteadTableColumn *column, gpointer item);
SteadTableColumn *stead_table_nth_column    (SteadTable *self, guint i);

/* stead-table-cells.c: what rows show and are called, and the editor over a cell. */
GtkListItemFactory *stead_table_cells_factory_new (SteadTableColumn *column);
/* Makes a column the one that keys edit. */
void              stead_table_cells_set_current   (SteadTable *self, int index);
/* The next column that can be edited, from @from in direction @by; -1: none. */
int               stead_table_cells_next_editable (SteadTable *self, int from, int by);
void              stead_table_cells_edit_selected (SteadTable *self);
GtkWidget        *stead_table_cells_editor_new    (SteadTable *self);

/* stead-table-menu.c: order, copy, save, and the menu with them. */
void              stead_table_menu_install        (GtkWidgetClass *widget_class);
void              stead_table_menu_open           (SteadTable *self, double x, double y);

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
