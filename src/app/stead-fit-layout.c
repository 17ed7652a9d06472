/* stead-fit-layout.c - of children that say the same, the first one that fits is shown.
 *
 * Invariant: the first child decides the natural width, the last one the least; each
 * child could be shown at the height that was asked for.
 */
#include "config.h"

#include "app/stead-fit-layout.h"

struct _SteadFitLayout
{
  GtkLayoutManager parent_instance;
};

G_DEFINE_FINAL_TYPE (SteadFitLayout, stead_fit_layout, GTK_TYPE_LAYOUT_MANAGER)

static int
natural_width (GtkWidget *child)
{
  int natural;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &natural, NULL, NULL);
  return natural;
}

static void
stead_fit_layout_measure (GtkLayoutManager *manager,
                          GtkWidget        *widget,
                          GtkOrientation    orientation,
                          int               for_size,
                          int              *minimum,
                          int              *natural,
                          int              *minimum_baseline,
                          int              *natural_baseline)
{
  *minimum = *natural = 0;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      int least, wanted;

      if (!gtk_widget_should_layout (child))
        continue;
      gtk_widget_measure (child, orientation, -1, &least, &wanted, NULL, NULL);
      *natural = MAX (*natural, wanted);
      *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? least : MAX (*minimum, least);
    }
}

static void
stead_fit_layout_allocate (GtkLayoutManager *manager,
                           GtkWidget        *widget,
                           int               width,
                           int               height,
                           int               baseline)
{
  GtkWidget *shown = NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_should_layout (child) && (shown == NULL || natural_width (shown) > width))
      shown = child;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    gtk_widget_set_child_visible (child, child == shown);
  if (shown != NULL)
    gtk_widget_size_allocate (shown, &(GtkAllocation) { 0, 0, width, height }, -1);
}

static void
stead_fit_layout_class_init (SteadFitLayoutClass *klass)
{
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  layout_class->measure = stead_fit_layout_measure;
  layout_class->allocate = stead_fit_layout_allocate;
}

static void
stead_fit_layout_init (SteadFitLayout *self)
{
}

GtkLayoutManager *
stead_fit_layout_new (void)
{
  return g_object_new (STEAD_TYPE_FIT_LAYOUT, NULL);
}
