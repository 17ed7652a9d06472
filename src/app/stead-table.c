/* stead-table.c - a column view as every table here has it.
 *
 * Invariants:
 *  1. A list store is filtered and sorted here; any other model is taken to be
 *     lazy: it is shown as it is, and only the rows that can be seen are read.
 *  2. One Tab goes in, one Tab goes out; arrows move inside, Left and Right
 *     between the columns that can be edited.
 *  3. A row's name is made of its cells, the current one first.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-files.h"
#include "app/stead-table-private.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"

#define LONG_LIST 5000   /* rows */

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
} Column;

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
  GPtrArray           *columns;     /* of Column */
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

G_DEFINE_FINAL_TYPE (SteadTable, stead_table, GTK_TYPE_WIDGET)

static void
column_free (Column *column)
{
  g_free (column->title);
  g_ptr_array_unref (column->cells);
  g_clear_object (&column->column);
  g_free (column);
}

static Column *
nth_column (SteadTable *self,
            guint       i)
{
  return self->columns->pdata[i];
}

static char *
cell_text (Column   *column,
           gpointer  item)
{
  char *text = column->text (item, column->data);

  return text != NULL ? text : g_strdup ("");
}

/* --- rows and cells ------------------------------------------------------------- */

/* "Eggs 22, Date Mar 3, Feed 6.8 lb": the current column first, as it is what keys change. */
static char *
row_name (SteadTable *self,
          gpointer    item)
{
  GString *name = g_string_new (NULL);

  for (int pass = 0; pass < 2; pass++)
    for (guint i = 0; i < self->columns->len; i++)
      {
        Column *column = nth_column (self, i);
        g_autofree char *text = NULL;

        if ((pass == 0) != ((int) i == self->current))
          continue;
        text = cell_text (column, item);
        if (*text == '\0')
          continue;
        if (name->len > 0)
          g_string_append (name, ", ");
        /* Translators: a cell as a screen reader says it: head of its column, then what it shows. */
        g_string_append_printf (name, C_("cell", "%1$s %2$s"), column->title, text);
      }
  return g_string_free (name, FALSE);
}

static void
name_row (SteadTable  *self,
          GtkListItem *cell)
{
  GtkWidget *parent = gtk_widget_get_parent (gtk_list_item_get_child (cell));
  GtkWidget *row = parent != NULL ? gtk_widget_get_parent (parent) : NULL;
  g_autofree char *name = NULL;

  if (row == NULL)
    return;
  name = row_name (self, gtk_list_item_get_item (cell));
  stead_ui_name (row, name);
}

static void
mark_current (Column      *column,
              GtkListItem *cell)
{
  if ((int) column->index == column->table->current)
    gtk_widget_add_css_class (gtk_list_item_get_child (cell), "current");
  else
    gtk_widget_remove_css_class (gtk_list_item_get_child (cell), "current");
}

static GtkListItem *
find_cell (Column *column,
           guint   position)
{
  for (guint i = 0; i < column->cells->len; i++)
    if (gtk_list_item_get_position (column->cells->pdata[i]) == position)
      return column->cells->pdata[i];
  return NULL;
}

/* --- editing ---------------------------------------------------------------------- */

static void
set_current (SteadTable *self,
             int         index)
{
  if (index == self->current)
    return;
  self->current = index;
  for (guint i = 0; i < self->columns->len; i++)
    {
      Column *column = nth_column (self, i);

      for (guint k = 0; k < column->cells->len; k++)
        {
          mark_current (column, column->cells->pdata[k]);
          if (i == 0)
            name_row (self, column->cells->pdata[k]);
        }
    }
}

/* The next column that can be edited, from @from in direction @by; -1: none. */
static int
next_editable (SteadTable *self,
               int         from,
               int         by)
{
  for (int i = from + by; i >= 0 && i < (int) self->columns->len; i += by)
    if (nth_column (self, (guint) i)->edit != NULL)
      return i;
  return -1;
}

static void
edit_cell (SteadTable *self,
           guint       position,
           int         index)
{
  Column *column = nth_column (self, (guint) index);
  GtkListItem *cell = find_cell (column, position);
  g_autofree char *text = NULL;
  graphene_rect_t bounds;
  GdkRectangle rect;

  if (cell == NULL || column->edit == NULL
      || !gtk_widget_compute_bounds (gtk_list_item_get_child (cell), self->editor, &bounds))
    return;
  set_current (self, index);
  self->edited = position;
  rect = (GdkRectangle) { (int) bounds.origin.x, (int) bounds.origin.y,
                          (int) bounds.size.width, (int) bounds.size.height };
  text = cell_text (column, gtk_list_item_get_item (cell));
  stead_table_editor_open (STEAD_TABLE_EDITOR (self->editor), &rect, column->title, text);
}

static gboolean
take_cb (const char  *text,
         gpointer     data,
         GError     **error)
{
  SteadTable *self = data;
  Column *column = nth_column (self, (guint) self->current);
  g_autoptr(GObject) item = g_list_model_get_item (G_LIST_MODEL (self->selection), self->edited);

  return item == NULL || column->edit (item, text, column->data, error);
}

static void
done_cb (int      by,
         gpointer data)
{
  SteadTable *self = data;
  int next = by != 0 ? next_editable (self, self->current, by) : -1;

  if (self->edited < g_list_model_get_n_items (G_LIST_MODEL (self->selection)))
    gtk_single_selection_set_selected (self->selection, self->edited);
  if (next >= 0)
    edit_cell (self, self->edited, next);
  else
    gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

static void
edit_selected (SteadTable *self)
{
  guint position = gtk_single_selection_get_selected (self->selection);

  if (self->current < 0)
    return;
  if (position == GTK_INVALID_LIST_POSITION)
    gtk_single_selection_set_selected (self->selection, position = 0);
  edit_cell (self, position, self->current);
}

/* --- the factory of a column --------------------------------------------------------- */

static void
clicked_cb (GtkGestureClick *gesture,
            int              n_press,
            double           x,
            double           y,
            GtkListItem     *cell)
{
  Column *column = g_object_get_data (G_OBJECT (cell), "column");

  set_current (column->table, (int) column->index);
  if (n_press != 2)
    return;
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  gtk_single_selection_set_selected (column->table->selection, gtk_list_item_get_position (cell));
  edit_cell (column->table, gtk_list_item_get_position (cell), (int) column->index);
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *cell,
          Column                   *column)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column->numeric ? 1 : 0);
  /* Only the column that takes what room is left may cut its text; for the others
   * a narrow table scrolls sideways. */
  if (gtk_column_view_column_get_expand (column->column))
    {
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      gtk_label_set_width_chars (GTK_LABEL (label), 12);
    }
  if (column->numeric)
    gtk_widget_add_css_class (label, "numeric");
  gtk_list_item_set_child (cell, label);
  if (column->edit != NULL)
    {
      GtkGesture *click = gtk_gesture_click_new ();

      g_object_set_data (G_OBJECT (cell), "column", column);
      g_signal_connect_object (click, "pressed", G_CALLBACK (clicked_cb), cell, 0);
      gtk_widget_add_controller (label, GTK_EVENT_CONTROLLER (click));
    }
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *cell,
         Column                   *column)
{
  g_autofree char *text = cell_text (column, gtk_list_item_get_item (cell));

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (cell)), text);
  g_ptr_array_add (column->cells, cell);
  mark_current (column, cell);
  if (column->index == 0)
    name_row (column->table, cell);
}

static void
unbind_cb (GtkSignalListItemFactory *factory,
           GtkListItem              *cell,
           Column                   *column)
{
  g_ptr_array_remove_fast (column->cells, cell);
}

/* --- filter and order ------------------------------------------------------------------ */

static gboolean
matches (gpointer item,
         gpointer data)
{
  SteadTable *self = data;

  if (self->needle == NULL)
    return TRUE;
  for (guint i = 0; i < self->columns->len; i++)
    {
      g_autofree char *text = cell_text (nth_column (self, i), item);
      g_autofree char *folded = g_utf8_casefold (text, -1);

      if (strstr (folded, self->needle) != NULL)
        return TRUE;
    }
  return FALSE;
}

static int
compare_cb (gconstpointer a,
            gconstpointer b,
            gpointer      data)
{
  Column *column = data;

  return column->compare (a, b, column->data);
}

/* Sorting a lazy model would read all of it, so then the heads do not sort. */
static void
update_sorters (SteadTable *self)
{
  gboolean lazy = self->model != NULL && !G_IS_LIST_STORE (self->model);

  for (guint i = 0; i < self->columns->len; i++)
    {
      Column *column = nth_column (self, i);
      g_autoptr(GtkSorter) sorter = NULL;

      if (column->compare == NULL)
        continue;
      if (!lazy && gtk_column_view_column_get_sorter (column->column) != NULL)
        continue;
      if (!lazy)
        sorter = GTK_SORTER (gtk_custom_sorter_new (compare_cb, column, NULL));
      gtk_column_view_column_set_sorter (column->column, sorter);
    }
}

/* "table.sort" (i): by a column; the second time the other way round. */
static void
sort_action (GtkWidget  *widget,
             const char *action,
             GVariant   *index)
{
  SteadTable *self = STEAD_TABLE (widget);
  int by = g_variant_get_int32 (index);

  self->descending = by == self->sorted_by && !self->descending;
  self->sorted_by = by;
  gtk_column_view_sort_by_column (self->view, nth_column (self, (guint) by)->column,
                                  self->descending ? GTK_SORT_DESCENDING : GTK_SORT_ASCENDING);
}

/* --- taking rows along --------------------------------------------------------------------- */

typedef void (*AppendRow) (GString            *text,
                           const char * const *cells,
                           const gboolean     *numeric,
                           guint               n_cells);

/* A tab or a line break inside a cell would break the row. */
static void
append_tabbed (GString            *text,
               const char * const *cells,
               const gboolean     *numeric,
               guint               n_cells)
{
  for (guint i = 0; i < n_cells; i++)
    {
      g_autofree char *cell = g_strdelimit (g_strdup (cells[i]), "\t\r\n", ' ');

      if (i > 0)
        g_string_append_c (text, '\t');
      g_string_append (text, cell);
    }
  g_string_append_c (text, '\n');
}

/* Heads, then every row as it is shown now. (transfer full) */
static char *
write_rows (SteadTable *self,
            AppendRow   append)
{
  guint n = self->columns->len;
  guint n_rows = g_list_model_get_n_items (G_LIST_MODEL (self->selection));
  g_autofree const char **cells = g_new0 (const char *, n + 1);
  g_autofree gboolean *numeric = g_new0 (gboolean, n + 1);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    cells[i] = nth_column (self, i)->title;
  append (text, cells, numeric, n);
  for (guint row = 0; row < n_rows; row++)
    {
      g_autoptr(GObject) item = g_list_model_get_item (G_LIST_MODEL (self->selection), row);
      g_autoptr(GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

      for (guint i = 0; i < n; i++)
        {
          g_ptr_array_add (texts, cell_text (nth_column (self, i), item));
          cells[i] = texts->pdata[i];
          numeric[i] = nth_column (self, i)->numeric;
        }
      append (text, cells, numeric, n);
    }
  return g_string_free (text, FALSE);
}

static void
copy_action (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  g_autofree char *text = stead_table_to_text (STEAD_TABLE (widget));

  gdk_clipboard_set_text (gtk_widget_get_clipboard (widget), text);
}

static void
save_chosen_cb (const char *path,
                gpointer    data)
{
  g_autoptr(SteadTable) self = data;
  g_autoptr(GError) error = NULL;
  g_autofree char *rows = NULL;
  g_autofree char *csv = NULL;

  if (path == NULL)
    return;
  rows = write_rows (self, stead_table_csv_append);
  /* The mark in front makes common spreadsheets read it as UTF-8. */
  csv = g_strconcat ("\xEF\xBB\xBF", rows, NULL);
  if (!g_file_set_contents_full (path, csv, -1, G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                 0666, &error))
    stead_files_tell (GTK_WIDGET (self), _("The table could not be saved."), error->message);
}

static void
save_action (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  SteadTable *self = STEAD_TABLE (widget);
  g_autofree char *name = g_strconcat (self->name, ".csv", NULL);

  stead_files_save (widget, _("Save the table"), name, save_chosen_cb, g_object_ref (self));
}

/* --- the menu --------------------------------------------------------------------------------- */

static void
edit_action (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  edit_selected (STEAD_TABLE (widget));
}

static GMenuModel *
build_menu (SteadTable *self)
{
  GMenu *menu = g_menu_new ();
  g_autoptr(GMenu) take = g_menu_new ();
  g_autoptr(GMenu) sort = g_menu_new ();

  if (self->current >= 0)
    g_menu_append (menu, _("Change the Cell"), "table.edit");
  for (guint i = 0; i < self->columns->len; i++)
    {
      Column *column = nth_column (self, i);
      g_autofree char *label = NULL;
      g_autofree char *action = NULL;

      if (gtk_column_view_column_get_sorter (column->column) == NULL)
        continue;
      /* Translators: %s is the head of a column: "Sort by Date". */
      label = g_strdup_printf (_("Sort by %s"), column->title);
      action = g_strdup_printf ("table.sort(%u)", i);
      g_menu_append (sort, label, action);
    }
  g_menu_append (take, _("Copy as Text"), "table.copy");
  g_menu_append (take, _("Save as CSV…"), "table.save");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (sort));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (take));
  return G_MENU_MODEL (menu);
}

static void
open_menu (SteadTable *self,
           double      x,
           double      y)
{
  g_autoptr(GMenuModel) model = build_menu (self);

  if (self->menu == NULL)
    {
      self->menu = gtk_popover_menu_new_from_model (model);
      gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
      gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
      gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
    }
  gtk_popover_menu_set_menu_model (GTK_POPOVER_MENU (self->menu), model);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), &(GdkRectangle) { (int) x, (int) y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

static void
menu_action (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  open_menu (STEAD_TABLE (widget), 24, 48);
}

static void
right_click_cb (SteadTable *self,
                int         n_press,
                double      x,
                double      y)
{
  open_menu (self, x, y);
}

/* --- keys ------------------------------------------------------------------------------------------ */

static void
activated_cb (SteadTable *self,
              guint       position)
{
  g_autoptr(GObject) item = NULL;

  if (self->activate == NULL)
    {
      gtk_single_selection_set_selected (self->selection, position);
      edit_selected (self);
      return;
    }
  item = g_list_model_get_item (G_LIST_MODEL (self->selection), position);
  if (item != NULL)
    self->activate (item, self->activate_data);
}

static gboolean
key_cb (SteadTable     *self,
        guint           keyval,
        guint           keycode,
        GdkModifierType state)
{
  int by = keyval == GDK_KEY_Right || keyval == GDK_KEY_KP_Right ? 1
         : keyval == GDK_KEY_Left || keyval == GDK_KEY_KP_Left ? -1 : 0;
  int next;

  if (by == 0 || self->current < 0 || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)) != 0)
    return GDK_EVENT_PROPAGATE;
  next = next_editable (self, self->current, by);
  if (next >= 0)
    set_current (self, next);
  return GDK_EVENT_STOP;
}

/* GTK 4.8's column view takes Tab from row to row; this lets it leave. */
static gboolean
stead_table_focus (GtkWidget        *widget,
                   GtkDirectionType  direction)
{
  SteadTable *self = STEAD_TABLE (widget);

  if (gtk_widget_get_focus_child (widget) != NULL
      && (direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD))
    return FALSE;
  return gtk_widget_child_focus (self->stack, direction);
}

/* --- the object --------------------------------------------------------------------------------------- */

static void
update_empty (SteadTable *self)
{
  gboolean empty = g_list_model_get_n_items (G_LIST_MODEL (self->selection)) == 0;
  gboolean filtered = empty && self->needle != NULL && self->model != NULL
                      && g_list_model_get_n_items (self->model) > 0;

  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), empty ? "empty" : "rows");
  if (filtered)
    gtk_label_set_text (GTK_LABEL (self->empty), _("No row has these words."));
  else
    gtk_label_set_text (GTK_LABEL (self->empty), self->empty_text != NULL ? self->empty_text : "");
}

static void
stead_table_dispose (GObject *object)
{
  SteadTable *self = STEAD_TABLE (object);

  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_func (self->selection, update_empty, self);
  stead_ui_drop_children (GTK_WIDGET (self));
  self->view = NULL;
  self->menu = NULL;
  g_clear_object (&self->selection);
  g_clear_object (&self->sorted);
  g_clear_object (&self->filtered);
  g_clear_object (&self->filter);
  g_clear_object (&self->model);
  g_clear_pointer (&self->columns, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_table_parent_class)->dispose (object);
}

static void
stead_table_finalize (GObject *object)
{
  SteadTable *self = STEAD_TABLE (object);

  g_free (self->name);
  g_free (self->empty_text);
  g_free (self->needle);
  G_OBJECT_CLASS (stead_table_parent_class)->finalize (object);
}

static void
stead_table_class_init (SteadTableClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = stead_table_dispose;
  object_class->finalize = stead_table_finalize;
  widget_class->focus = stead_table_focus;

  gtk_widget_class_install_action (widget_class, "table.edit", NULL, edit_action);
  gtk_widget_class_install_action (widget_class, "table.copy", NULL, copy_action);
  gtk_widget_class_install_action (widget_class, "table.save", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "table.sort", "i", sort_action);
  gtk_widget_class_install_action (widget_class, "table.menu", NULL, menu_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F2, 0, "table.edit", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_c, GDK_CONTROL_MASK, "table.copy", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Menu, 0, "table.menu", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, "table.menu", NULL);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "table");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
make_models (SteadTable *self)
{
  self->filter = gtk_custom_filter_new (matches, self, NULL);
  self->filtered = gtk_filter_list_model_new (NULL, NULL);
  self->sorted = gtk_sort_list_model_new (G_LIST_MODEL (g_object_ref (self->filtered)), NULL);
  self->selection = gtk_single_selection_new (G_LIST_MODEL (g_object_ref (self->sorted)));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  g_signal_connect_object (self->selection, "items-changed", G_CALLBACK (update_empty), self, G_CONNECT_SWAPPED);
}

static void
make_view (SteadTable *self)
{
  self->view = GTK_COLUMN_VIEW (gtk_column_view_new (GTK_SELECTION_MODEL (g_object_ref (self->selection))));
  gtk_sort_list_model_set_sorter (self->sorted, gtk_column_view_get_sorter (self->view));
  g_signal_connect_swapped (self->view, "activate", G_CALLBACK (activated_cb), self);
  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), GTK_WIDGET (self->view));

  self->empty = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->empty), TRUE);
  gtk_label_set_justify (GTK_LABEL (self->empty), GTK_JUSTIFY_CENTER);
  gtk_label_set_max_width_chars (GTK_LABEL (self->empty), 48);
  gtk_widget_add_css_class (self->empty, "empty");

  self->stack = gtk_stack_new ();
  gtk_stack_add_named (GTK_STACK (self->stack), self->empty, "empty");
  gtk_stack_add_named (GTK_STACK (self->stack), self->scrolled, "rows");
  gtk_widget_set_parent (self->stack, GTK_WIDGET (self));
}

static void
stead_table_init (SteadTable *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  self->columns = g_ptr_array_new_with_free_func ((GDestroyNotify) column_free);
  self->current = -1;
  self->sorted_by = -1;
  self->name = g_strdup ("");
  make_models (self);
  make_view (self);
  self->editor = stead_table_editor_new (take_cb, done_cb, self);
  gtk_widget_set_parent (self->editor, GTK_WIDGET (self));

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (self->scrolled, keys);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (right_click_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

GtkWidget *
stead_table_new (const char *name)
{
  SteadTable *self = g_object_new (STEAD_TYPE_TABLE, NULL);

  stead_table_set_name (self, name);
  return GTK_WIDGET (self);
}

/**
 * stead_table_set_name:
 * @name: what a screen reader calls the table, and its file when it is saved
 */
void
stead_table_set_name (SteadTable *self,
                      const char *name)
{
  g_return_if_fail (STEAD_IS_TABLE (self));
  g_return_if_fail (name != NULL);

  g_free (self->name);
  self->name = g_strdup (name);
  stead_ui_name (GTK_WIDGET (self->view), name);
}

void
stead_table_add_column (SteadTable        *self,
                        const char        *title,
                        gboolean           numeric,
                        gboolean           expand,
                        SteadTableText     text,
                        SteadTableEdit     edit,
                        SteadTableCompare  compare,
                        gpointer           data)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  Column *column;

  g_return_if_fail (STEAD_IS_TABLE (self));
  g_return_if_fail (title != NULL && text != NULL);

  column = g_new0 (Column, 1);
  *column = (Column) { .table = self, .title = g_strdup (title), .numeric = numeric, .text = text,
                       .edit = edit, .compare = compare, .data = data,
                       .index = self->columns->len, .cells = g_ptr_array_new () };
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), column);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), column);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), column);
  column->column = gtk_column_view_column_new (title, factory);
  gtk_column_view_column_set_expand (column->column, expand);
  gtk_column_view_column_set_resizable (column->column, TRUE);
  g_ptr_array_add (self->columns, column);
  if (edit != NULL && self->current < 0)
    self->current = (int) column->index;
  update_sorters (self);
  gtk_column_view_append_column (self->view, column->column);
}

void
stead_table_set_model (SteadTable *self,
                       GListModel *model)
{
  guint selected;
  gboolean lazy, in_bits;

  g_return_if_fail (STEAD_IS_TABLE (self));
  g_return_if_fail (model == NULL || G_IS_LIST_MODEL (model));

  selected = gtk_single_selection_get_selected (self->selection);
  g_set_object (&self->model, model);
  lazy = model != NULL && !G_IS_LIST_STORE (model);
  update_sorters (self);
  /* A long list is filtered and sorted bit by bit, so that the window never waits. */
  in_bits = model != NULL && !lazy && g_list_model_get_n_items (model) > LONG_LIST;
  gtk_filter_list_model_set_incremental (self->filtered, in_bits);
  gtk_sort_list_model_set_incremental (self->sorted, in_bits);
  gtk_filter_list_model_set_model (self->filtered, lazy ? NULL : model);
  gtk_single_selection_set_model (self->selection, lazy ? model : G_LIST_MODEL (self->sorted));
  if (selected != GTK_INVALID_LIST_POSITION)
    stead_table_select (self, selected);
  update_empty (self);
}

void
stead_table_set_empty (SteadTable *self,
                       const char *text)
{
  g_return_if_fail (STEAD_IS_TABLE (self));

  g_free (self->empty_text);
  self->empty_text = g_strdup (text);
  update_empty (self);
}

void
stead_table_set_activate (SteadTable         *self,
                          SteadTableActivate  activate,
                          gpointer            data)
{
  g_return_if_fail (STEAD_IS_TABLE (self));

  self->activate = activate;
  self->activate_data = data;
}

gpointer
stead_table_get_selected (SteadTable *self)
{
  g_return_val_if_fail (STEAD_IS_TABLE (self), NULL);
  return gtk_single_selection_get_selected_item (self->selection);
}

/**
 * stead_table_select:
 * @position: as shown now; past the end selects the last row
 */
void
stead_table_select (SteadTable *self,
                    guint       position)
{
  guint n;

  g_return_if_fail (STEAD_IS_TABLE (self));

  n = g_list_model_get_n_items (G_LIST_MODEL (self->selection));
  if (n > 0)
    gtk_single_selection_set_selected (self->selection, MIN (position, n - 1));
}

/**
 * stead_table_set_filter:
 * @text: (nullable): case aside; does nothing to a lazy model
 */
void
stead_table_set_filter (SteadTable *self,
                        const char *text)
{
  g_return_if_fail (STEAD_IS_TABLE (self));

  g_clear_pointer (&self->needle, g_free);
  if (text != NULL && *text != '\0')
    self->needle = g_utf8_casefold (text, -1);
  gtk_filter_list_model_set_filter (self->filtered, self->needle != NULL ? GTK_FILTER (self->filter) : NULL);
  gtk_filter_changed (GTK_FILTER (self->filter), GTK_FILTER_CHANGE_DIFFERENT);
  update_empty (self);
}

char *
stead_table_to_text (SteadTable *self)
{
  g_return_val_if_fail (STEAD_IS_TABLE (self), NULL);
  return write_rows (self, append_tabbed);
}
