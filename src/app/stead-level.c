/* stead-level.c - fields side by side stand on one line, however long their labels are.
 *
 * Each label of a row is as high as the highest of them at its own width, and columns are as
 * wide as each other.  A short label goes down to its field.  A size group does that in GTK 4.8
 * and no more in 4.18, where it forgets the width; here it only tells who stands in the row.
 */
#include "config.h"

#include "app/stead-level.h"

#include "app/stead-field.h"

/* --- the height of a label ---------------------------------------------------- */

#define STEAD_TYPE_LEVEL_LAYOUT (stead_level_layout_get_type ())
G_DECLARE_FINAL_TYPE (SteadLevelLayout, stead_level_layout, STEAD, LEVEL_LAYOUT, GtkLayoutManager)

struct _SteadLevelLayout
{
  GtkLayoutManager parent_instance;

  GtkSizeGroup    *row;
};

G_DEFINE_FINAL_TYPE (SteadLevelLayout, stead_level_layout, GTK_TYPE_LAYOUT_MANAGER)

static GtkSizeRequestMode
stead_level_layout_get_request_mode (GtkLayoutManager *manager,
                                     GtkWidget        *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
stead_level_layout_measure (GtkLayoutManager *manager,
                            GtkWidget        *widget,
                            GtkOrientation    orientation,
                            int               for_size,
                            int              *minimum,
                            int              *natural,
                            int              *minimum_baseline,
                            int              *natural_baseline)
{
  SteadLevelLayout *self = STEAD_LEVEL_LAYOUT (manager);

  GTK_WIDGET_GET_CLASS (widget)->measure (widget, orientation, for_size, minimum, natural,
                                          minimum_baseline, natural_baseline);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    return;
  *minimum_baseline = *natural_baseline = -1;
  for (GSList *link = gtk_size_group_get_widgets (self->row); link != NULL; link = link->next)
    {
      int least, wanted, least_baseline, wanted_baseline;

      GTK_WIDGET_GET_CLASS (link->data)->measure (link->data, orientation, for_size, &least, &wanted,
                                                  &least_baseline, &wanted_baseline);
      *minimum = MAX (*minimum, least);
      *natural = MAX (*natural, wanted);
    }
}

static void
stead_level_layout_allocate (GtkLayoutManager *manager,
                             GtkWidget        *widget,
                             int               width,
                             int               height,
                             int               baseline)
{
  GTK_WIDGET_GET_CLASS (widget)->size_allocate (widget, width, height, baseline);
}

static void
stead_level_layout_dispose (GObject *object)
{
  g_clear_object (&STEAD_LEVEL_LAYOUT (object)->row);
  G_OBJECT_CLASS (stead_level_layout_parent_class)->dispose (object);
}

static void
stead_level_layout_class_init (SteadLevelLayoutClass *klass)
{
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_level_layout_dispose;
  layout_class->get_request_mode = stead_level_layout_get_request_mode;
  layout_class->measure = stead_level_layout_measure;
  layout_class->allocate = stead_level_layout_allocate;
}

static void
stead_level_layout_init (SteadLevelLayout *self)
{
}

static GtkLayoutManager *
level_layout_new (GtkSizeGroup *row)
{
  SteadLevelLayout *self = g_object_new (STEAD_TYPE_LEVEL_LAYOUT, NULL);

  self->row = g_object_ref (row);
  return GTK_LAYOUT_MANAGER (self);
}

/* --- the labels of a row -------------------------------------------------------- */

/* (nullable): the label over the field, the choice or the box @child */
static GtkWidget *
label_over (GtkWidget *child)
{
  GtkWidget *label = child;
  gboolean is_compact = FALSE;

  while (label != NULL && !GTK_IS_LABEL (label))
    {
      if (STEAD_IS_FIELD (label))
        g_object_get (label, "compact", &is_compact, NULL);
      label = is_compact ? NULL : gtk_widget_get_first_child (label);
    }
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
      group = gtk_size_group_new (GTK_SIZE_GROUP_NONE);
      g_hash_table_insert (rows, GINT_TO_POINTER (row), group);
    }
  gtk_size_group_add_widget (group, label);
  gtk_widget_set_layout_manager (label, level_layout_new (group));
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
