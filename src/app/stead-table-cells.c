/* stead-table-cells.c - what a table's rows show, what they are called, and the
 * editor over a cell.
 *
 * Invariant: a row's name is made of its cells, the current one first, since that
 * is what keys change; every cell that shows something now is in its column's list.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-table-private.h"
#include "app/stead-ui.h"

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
        SteadTableColumn *column = stead_table_nth_column (self, i);
        g_autofree char *text = NULL;

        if ((pass == 0) != ((int) i == self->current))
          continue;
        text = stead_table_cell_text (column, item);
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
mark_current (SteadTableColumn *column,
              GtkListItem      *cell)
{
  if ((int) column->index == column->table->current)
    gtk_widget_add_css_class (gtk_list_item_get_child (cell), "current");
  else
    gtk_widget_remove_css_class (gtk_list_item_get_child (cell), "current");
}

static GtkListItem *
find_cell (SteadTableColumn *column,
           guint             position)
{
  for (guint i = 0; i < column->cells->len; i++)
    if (gtk_list_item_get_position (column->cells->pdata[i]) == position)
      return column->cells->pdata[i];
  return NULL;
}

/* --- editing ---------------------------------------------------------------------- */

void
stead_table_cells_set_current (SteadTable *self,
                               int         index)
{
  if (index == self->current)
    return;
  self->current = index;
  for (guint i = 0; i < self->columns->len; i++)
    {
      SteadTableColumn *column = stead_table_nth_column (self, i);

      for (guint k = 0; k < column->cells->len; k++)
        {
          mark_current (column, column->cells->pdata[k]);
          if (i == 0)
            name_row (self, column->cells->pdata[k]);
        }
    }
}

/* The next column that can be edited, from @from in direction @by; -1: none. */
int
stead_table_cells_next_editable (SteadTable *self,
                                 int         from,
                                 int         by)
{
  for (int i = from + by; i >= 0 && i < (int) self->columns->len; i += by)
    if (stead_table_nth_column (self, (guint) i)->edit != NULL)
      return i;
  return -1;
}

static void
edit_cell (SteadTable *self,
           guint       position,
           int         index)
{
  SteadTableColumn *column = stead_table_nth_column (self, (guint) index);
  GtkListItem *cell = find_cell (column, position);
  g_autofree char *text = NULL;
  graphene_rect_t bounds;
  GdkRectangle rect;

  if (cell == NULL || column->edit == NULL
      || !gtk_widget_compute_bounds (gtk_list_item_get_child (cell), self->editor, &bounds))
    return;
  stead_table_cells_set_current (self, index);
  self->edited = position;
  rect = (GdkRectangle) { (int) bounds.origin.x, (int) bounds.origin.y,
                          (int) bounds.size.width, (int) bounds.size.height };
  text = stead_table_cell_text (column, gtk_list_item_get_item (cell));
  stead_table_editor_open (STEAD_TABLE_EDITOR (self->editor), &rect, column->title, text);
}

static gboolean
take_cb (const char  *text,
         gpointer     data,
         GError     **error)
{
  SteadTable *self = data;
  SteadTableColumn *column = stead_table_nth_column (self, (guint) self->current);
  g_autoptr(GObject) item = g_list_model_get_item (G_LIST_MODEL (self->selection), self->edited);

  return item == NULL || column->edit (item, text, column->data, error);
}

static void
done_cb (int      by,
         gpointer data)
{
  SteadTable *self = data;
  int next = by != 0 ? stead_table_cells_next_editable (self, self->current, by) : -1;

  if (self->edited < g_list_model_get_n_items (G_LIST_MODEL (self->selection)))
    gtk_single_selection_set_selected (self->selection, self->edited);
  if (next >= 0)
    edit_cell (self, self->edited, next);
  else
    gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

void
stead_table_cells_edit_selected (SteadTable *self)
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
  SteadTableColumn *column = g_object_get_data (G_OBJECT (cell), "column");

  stead_table_cells_set_current (column->table, (int) column->index);
  if (n_press != 2)
    return;
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  gtk_single_selection_set_selected (column->table->selection, gtk_list_item_get_position (cell));
  edit_cell (column->table, gtk_list_item_get_position (cell), (int) column->index);
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *cell,
          SteadTableColumn         *column)
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
write_cell (SteadTableColumn *column,
            GtkListItem      *cell)
{
  g_autofree char *text = stead_table_cell_text (column, gtk_list_item_get_item (cell));

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (cell)), text);
  if (column->index == 0)
    name_row (column->table, cell);
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *cell,
         SteadTableColumn         *column)
{
  write_cell (column, cell);
  g_ptr_array_add (column->cells, cell);
  mark_current (column, cell);
}

static void
unbind_cb (GtkSignalListItemFactory *factory,
           GtkListItem              *cell,
           SteadTableColumn         *column)
{
  g_ptr_array_remove_fast (column->cells, cell);
}

void
stead_table_write_again (SteadTable *self,
                         gpointer    item)
{
  g_return_if_fail (STEAD_IS_TABLE (self));

  for (guint i = 0; i < self->columns->len; i++)
    {
      SteadTableColumn *column = stead_table_nth_column (self, i);

      for (guint c = 0; c < column->cells->len; c++)
        if (gtk_list_item_get_item (column->cells->pdata[c]) == item)
          write_cell (column, column->cells->pdata[c]);
    }
}

GtkListItemFactory *
stead_table_cells_factory_new (SteadTableColumn *column)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), column);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), column);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), column);
  return factory;
}

GtkWidget *
stead_table_cells_editor_new (SteadTable *self)
{
  return stead_table_editor_new (take_cb, done_cb, self);
}
