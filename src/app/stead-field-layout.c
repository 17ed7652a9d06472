/* stead-field-layout.c - a grid with wrapped text, and the truth about how high it is.
 *
 * Invariants:
 *  1. The least height is that at the natural width, and no higher than at any narrower one.
 *  2. At the least width for a height the grid is no higher than that.
 *  3. It tells no baseline: GTK 4.8 counts those of some widths only, and makes a row higher than its children.
 */
#include "config.h"

#include "app/stead-field-layout.h"

struct _SteadFieldLayout
{
  GtkLayoutManager parent_instance;
};

G_DEFINE_FINAL_TYPE (SteadFieldLayout, stead_field_layout, GTK_TYPE_LAYOUT_MANAGER)

static int
height_at (GtkWidget *child,
           int        width)
{
  int height;

  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, width, &height, NULL, NULL, NULL);
  return height;
}

/* The least width at which the child is no higher than that. */
static int
width_for (GtkWidget *child,
           int        height,
           int        least,
           int        natural)
{
  while (least < natural)
    {
      int middle = least + (natural - least) / 2;

      if (height_at (child, middle) <= height)
        natural = middle;
      else
        least = middle + 1;
    }
  return natural;
}

static void
stead_field_layout_measure (GtkLayoutManager *manager,
                            GtkWidget        *widget,
                            GtkOrientation    orientation,
                            int               for_size,
                            int              *minimum,
                            int              *natural,
                            int              *minimum_baseline,
                            int              *natural_baseline)
{
  GtkWidget *child = gtk_widget_get_first_child (widget);
  int least, wide;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, &wide, NULL, NULL);
  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_VERTICAL)
    {
      gtk_widget_measure (child, orientation, for_size < 0 ? wide : for_size, minimum, natural, NULL, NULL);
      return;
    }
  *minimum = for_size < 0 ? least : width_for (child, for_size, least, wide);
  *natural = wide;
}

static void
stead_field_layout_allocate (GtkLayoutManager *manager,
                             GtkWidget        *widget,
                             int               width,
                             int               height,
                             int               baseline)
{
  gtk_widget_allocate (gtk_widget_get_first_child (widget), width, height, -1, NULL);
}

static void
stead_field_layout_class_init (SteadFieldLayoutClass *klass)
{
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  layout_class->measure = stead_field_layout_measure;
  layout_class->allocate = stead_field_layout_allocate;
}

static void
stead_field_layout_init (SteadFieldLayout *self)
{
}
