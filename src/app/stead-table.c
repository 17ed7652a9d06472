/* stead-table.c - a column view as every table here has it.
 *
 * Invariants:
 *  1. A list store is filtered and sorted here; any other model is taken to be
 *     lazy: it is shown as it is, and only the rows that can be seen are read.
 *  2. Its rows are made when it is first shown, not before: a column view makes two
 *     hundred of them at once, and a place has tables that nobody may look at.
 *  3. One Tab goes in, one Tab goes out; arrows move inside, Left and Right
 *     between the columns that can be edited.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-table-private.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"

#define LONG_LIST 5000   /* rows */

G_DEFINE_FINAL_TYPE (SteadTable, stead_table, GTK_TYPE_WIDGET)

static void
column_free (SteadTableColumn *column)
{
  g_free (column->title);
  g_ptr_array_unref (column->cells);
  g_clear_object (&column->column);
  g_free (column);
}

SteadTableColumn *
stead_table_nth_column (SteadTable *self,
                        guint       i)
{
  return self->columns->pdata[i];
}

char *
stead_table_cell_text (SteadTableColumn *column,
                       gpointer          item)
{
  char *text = column->text (item, column->data);

  return text != NULL ? text : g_strdup ("");
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
      g_autofree char *text = stead_table_cell_text (stead_table_nth_column (self, i), item);
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
  SteadTableColumn *column = data;

  return column->compare (a, b, column->data);
}

/* Sorting a lazy model would read all of it, so then the heads do not sort. */
static void
update_sorters (SteadTable *self)
{
  gboolean lazy = self->model != NULL && !G_IS_LIST_STORE (self->model);

  for (guint i = 0; i < self->columns->len; i++)
    {
      SteadTableColumn *column = stead_table_nth_column (self, i);
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

/* --- keys ------------------------------------------------------------------------------------------ */

static void
activated_cb (SteadTable *self,
              guint       position)
{
  g_autoptr(GObject) item = NULL;

  if (self->activate == NULL)
    {
      gtk_single_selection_set_selected (self->selection, position);
      stead_table_cells_edit_selected (self);
      return;
    }
  item = g_list_model_get_item (G_LIST_MODEL (self->selection), position);
  if (item != NULL)
    self->activate (item, self->activate_data);
}

static gboolean
key_cb (SteadTable      *self,
        guint            keyval,
        guint            keycode,
        GdkModifierType  state)
{
  int by = keyval == GDK_KEY_Right || keyval == GDK_KEY_KP_Right ? 1
         : keyval == GDK_KEY_Left || keyval == GDK_KEY_KP_Left ? -1 : 0;
  int next;

  if (by == 0 || self->current < 0 || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)) != 0)
    return GDK_EVENT_PROPAGATE;
  next = stead_table_cells_next_editable (self, self->current, by);
  if (next >= 0)
    stead_table_cells_set_current (self, next);
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

static void
right_click_cb (SteadTable *self,
                int         n_press,
                double      x,
                double      y)
{
  stead_table_menu_open (self, x, y);
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
stead_table_map (GtkWidget *widget)
{
  SteadTable *self = STEAD_TABLE (widget);

  if (gtk_column_view_get_model (self->view) == NULL)
    gtk_column_view_set_model (self->view, GTK_SELECTION_MODEL (self->selection));
  GTK_WIDGET_CLASS (stead_table_parent_class)->map (widget);
}

static void
stead_table_class_init (SteadTableClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = stead_table_dispose;
  object_class->finalize = stead_table_finalize;
  widget_class->map = stead_table_map;
  widget_class->focus = stead_table_focus;

  stead_table_menu_install (widget_class);
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
  self->view = GTK_COLUMN_VIEW (gtk_column_view_new (NULL));
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
  gtk_stack_set_hhomogeneous (GTK_STACK (self->stack), FALSE);
  gtk_stack_set_vhomogeneous (GTK_STACK (self->stack), FALSE);
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
  self->editor = stead_table_cells_editor_new (self);
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

/* The head of numbers stands over them.  GTK 4.8 has no call for it: the head's
 * box is found in the header row, which has a title for each column in order. */
static void
align_head (SteadTable *self,
            guint       index)
{
  GtkWidget *header = gtk_widget_get_first_child (GTK_WIDGET (self->view));
  GtkWidget *title = header != NULL ? gtk_widget_get_first_child (header) : NULL;
  GtkWidget *box;

  for (guint i = 0; title != NULL && i < index; i++)
    title = gtk_widget_get_next_sibling (title);
  box = title != NULL ? gtk_widget_get_first_child (title) : NULL;
  if (box == NULL)
    return;
  gtk_widget_set_halign (box, GTK_ALIGN_END);
  /* The arrow of sorting has its room even while it is not shown: it goes before the words. */
  if (gtk_widget_get_last_child (box) != gtk_widget_get_first_child (box))
    gtk_widget_insert_after (gtk_widget_get_last_child (box), box, NULL);
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
  SteadTableColumn *column;

  g_return_if_fail (STEAD_IS_TABLE (self));
  g_return_if_fail (title != NULL && text != NULL);

  column = g_new0 (SteadTableColumn, 1);
  *column = (SteadTableColumn) { .table = self, .title = g_strdup (title), .numeric = numeric, .text = text,
                       .edit = edit, .compare = compare, .data = data,
                       .index = self->columns->len, .cells = g_ptr_array_new () };
  column->column = gtk_column_view_column_new (title, stead_table_cells_factory_new (column));
  gtk_column_view_column_set_expand (column->column, expand);
  gtk_column_view_column_set_resizable (column->column, TRUE);
  g_ptr_array_add (self->columns, column);
  if (edit != NULL && self->current < 0)
    self->current = (int) column->index;
  update_sorters (self);
  gtk_column_view_append_column (self->view, column->column);
  if (numeric)
    align_head (self, column->index);
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
