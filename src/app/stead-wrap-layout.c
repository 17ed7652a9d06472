/* stead-wrap-layout.c - children in a row that goes on in a next line where it must.
 *
 * Invariants:
 *  1. A child gets its natural width, or the whole line where that is less.
 *  2. A line is as high as its highest child; each child fills its line's height.
 *  3. A child that is aligned with the end goes there, and what comes after it too.
 *  4. What measuring asks for is what allocating uses: both walk the same lines.
 */
#include "config.h"

#include "app/stead-wrap-layout.h"

#include "app/stead-layout-private.h"

#define SPACING 6

struct _SteadWrapLayout
{
  GtkLayoutManager parent_instance;
};

G_DEFINE_FINAL_TYPE (SteadWrapLayout, stead_wrap_layout, GTK_TYPE_LAYOUT_MANAGER)

static int
width_of (GtkWidget *child,
          int        room)
{
  int least;
  int natural;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, &natural, NULL, NULL);
  return MAX (least, MIN (natural, room));
}

/* One line from @first on: its height, what it leaves free, and the child that begins the next one. */
static int
measure_line (GtkWidget  *first,
              int         room,
              int        *rest,
              GtkWidget **next)
{
  GtkWidget *child = first;
  int used = 0;
  int height = 0;

  while (child != NULL)
    {
      int width = width_of (child, room);

      if (child != first && used + SPACING + width > room)
        break;
      used += (child != first ? SPACING : 0) + width;
      height = MAX (height, stead_layout_height (child, width));
      child = stead_layout_next (child);
    }
  *rest = MAX (room - used, 0);
  *next = child;
  return height;
}

static int
height_for (GtkWidget *widget,
            int        room)
{
  GtkWidget *child = stead_layout_first (widget);
  int height = 0;
  int rest;

  while (child != NULL)
    {
      height += measure_line (child, room, &rest, &child);
      height += child != NULL ? SPACING : 0;
    }
  return height;
}

/* As narrow as the widest child, as wide as one line of all. */
static void
measure_width (GtkWidget *widget,
               int       *minimum,
               int       *natural)
{
  *minimum = 0;
  *natural = 0;
  for (GtkWidget *child = stead_layout_first (widget); child != NULL; child = stead_layout_next (child))
    {
      int least;
      int wanted;

      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, &wanted, NULL, NULL);
      *minimum = MAX (*minimum, least);
      *natural += wanted + (*natural > 0 ? SPACING : 0);
    }
}

static void
stead_wrap_layout_measure (GtkLayoutManager *manager,
                           GtkWidget        *widget,
                           GtkOrientation    orientation,
                           int               for_size,
                           int              *minimum,
                           int              *natural,
                           int              *minimum_baseline,
                           int              *natural_baseline)
{
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    measure_width (widget, minimum, natural);
  else
    *minimum = *natural = height_for (widget, for_size < 0 ? G_MAXINT / 2 : for_size);
}

static void
stead_wrap_layout_allocate (GtkLayoutManager *manager,
                            GtkWidget        *widget,
                            int               width,
                            int               height,
                            int               baseline)
{
  gboolean from_right = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  GtkWidget *child = stead_layout_first (widget);
  int y = 0;

  while (child != NULL)
    {
      GtkWidget *next;
      int rest;
      int line = measure_line (child, width, &rest, &next);
      int x = 0;

      for (; child != next; child = stead_layout_next (child))
        {
          int own = width_of (child, width);
          GtkAllocation box = { 0, y, own, line };

          if (gtk_widget_get_halign (child) == GTK_ALIGN_END)
            {
              x += rest;
              rest = 0;
            }
          box.x = from_right ? width - x - own : x;
          gtk_widget_size_allocate (child, &box, -1);
          x += own + SPACING;
        }
      y += line + SPACING;
    }
}

static GtkSizeRequestMode
stead_wrap_layout_get_request_mode (GtkLayoutManager *manager,
                                    GtkWidget        *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
stead_wrap_layout_class_init (SteadWrapLayoutClass *klass)
{
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  layout_class->measure = stead_wrap_layout_measure;
  layout_class->allocate = stead_wrap_layout_allocate;
  layout_class->get_request_mode = stead_wrap_layout_get_request_mode;
}

static void
stead_wrap_layout_init (SteadWrapLayout *self)
{
}

GtkLayoutManager *
stead_wrap_layout_new (void)
{
  return g_object_new (STEAD_TYPE_WRAP_LAYOUT, NULL);
}
