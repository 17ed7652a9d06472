/* stead-table-menu.c - what can be done with a table: order, copy as text, save as CSV. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-files.h"
#include "app/stead-table-private.h"

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
  gtk_column_view_sort_by_column (self->view, stead_table_nth_column (self, (guint) by)->column,
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
    cells[i] = stead_table_nth_column (self, i)->title;
  append (text, cells, numeric, n);
  for (guint row = 0; row < n_rows; row++)
    {
      g_autoptr(GObject) item = g_list_model_get_item (G_LIST_MODEL (self->selection), row);
      g_autoptr(GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

      for (guint i = 0; i < n; i++)
        {
          g_ptr_array_add (texts, stead_table_cell_text (stead_table_nth_column (self, i), item));
          cells[i] = texts->pdata[i];
          numeric[i] = stead_table_nth_column (self, i)->numeric;
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
                                 0600, &error))
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
  stead_table_cells_edit_selected (STEAD_TABLE (widget));
}

static GMenuModel *
build_menu (SteadTable *self)
{
  GMenu *menu = g_menu_new ();
  g_autoptr(GMenu) take = g_menu_new ();
  g_autoptr(GMenu) sort = g_menu_new ();

  if (self->current >= 0)
    g_menu_append (menu, _("Change the cell"), "table.edit");
  for (guint i = 0; i < self->columns->len; i++)
    {
      SteadTableColumn *column = stead_table_nth_column (self, i);
      g_autofree char *label = NULL;
      g_autofree char *action = NULL;

      if (gtk_column_view_column_get_sorter (column->column) == NULL)
        continue;
      /* Translators: %s is the head of a column: "Sort by Date". */
      label = g_strdup_printf (_("Sort by %s"), column->title);
      action = g_strdup_printf ("table.sort(%u)", i);
      g_menu_append (sort, label, action);
    }
  g_menu_append (take, _("Copy as text"), "table.copy");
  g_menu_append (take, _("Save as CSV…"), "table.save");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (sort));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (take));
  return G_MENU_MODEL (menu);
}

void
stead_table_menu_open (SteadTable *self,
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
  stead_table_menu_open (STEAD_TABLE (widget), 24, 48);
}

void
stead_table_menu_install (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "table.edit", NULL, edit_action);
  gtk_widget_class_install_action (widget_class, "table.copy", NULL, copy_action);
  gtk_widget_class_install_action (widget_class, "table.save", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "table.sort", "i", sort_action);
  gtk_widget_class_install_action (widget_class, "table.menu", NULL, menu_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F2, 0, "table.edit", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_c, GDK_CONTROL_MASK, "table.copy", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Menu, 0, "table.menu", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, "table.menu", NULL);
}

/**
 * stead_table_to_text:
 *
 * Returns: (transfer full): all rows as shown, with the heads
 */
char *
stead_table_to_text (SteadTable *self)
{
  g_return_val_if_fail (STEAD_IS_TABLE (self), NULL);
  return write_rows (self, append_tabbed);
}
