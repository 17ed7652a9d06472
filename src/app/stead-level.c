/* stead-level.c - fields side by side stand on one line, however long their labels are.
 *
 * Labels of one row share a size group: GTK then asks each of them how high it is at the
 * same width, and columns are as wide as each other.  A short label goes down to its field.
 */
#include "config.h"

#include "app/stead-level.h"

#include "app/stead-field.h"

/* (nullable): the label over the field, the choice or the box @child */
static GtkWidget *
label_over (GtkWidget *child)
{
  GtkWidget *label = child;
  gboolean is_compact = FALSE;

  if (STEAD_IS_FIELD (child))
    g_object_get (child, "compact", &is_compact, NULL);
  if (is_compact)
    return NULL;
  while (label != NULL && !GTK_IS_LABEL (label))
    label = gtk_widget_get_first_child (label);
  return label != NULL && gtk_label_get_mnemonic_widget (GTK_LABEL (label)) != NULL ? label : NULL;
}

static void
add_label (GHashTable *rows,
           int         row,
           GtkWidget  *label)
{
  GtkSizeGroup *group = g_hash_table_lookup (rows, GINT_TO_POINTER (row));

  if (group == NULL)
    {
      group = gtk_size_group_new (GTK_SIZE_GROUP_VERTICAL);
      g_hash_table_insert (rows, GINT_TO_POINTER (row), group);
    }
  gtk_size_group_add_widget (group, label);
  gtk_label_set_yalign (GTK_LABEL (label), 1);
}

static void
level_grid (GtkGrid *grid)
{
  g_autoptr(GHashTable) rows = g_hash_table_new_full (NULL, NULL, NULL, g_object_unref);

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (grid));
       child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *label = label_over (child);
      int row;

      gtk_grid_query_child (grid, child, NULL, &row, NULL, NULL);
      /* A label that is a cell itself stands beside what it names. */
      if (label != NULL && label != child)
        add_label (rows, row, label);
    }
}

void
stead_level_fields (GtkWidget *widget)
{
  g_return_if_fail (GTK_IS_WIDGET (widget));

  if (STEAD_IS_FIELD (widget))
    return;
  if (GTK_IS_GRID (widget))
    level_grid (GTK_GRID (widget));
  for (GtkWidget *child = gtk_widget_get_first_child (widget);
       child != NULL;
       child = gtk_widget_get_next_sibling (child))
    stead_level_fields (child);
}
