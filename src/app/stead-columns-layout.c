/* stead-columns-layout.c - children in columns of one width, as many as there is room for.
 *
 * Invariants:
 *  1. All columns have one width, and each child fills its own.
 *  2. What measuring asks for is what allocating uses: both place the children alike.
 */
#include "config.h"

#include "app/stead-columns-layout.h"

#include "app/stead-layout-private.h"

#define SPACING 12
#define MOST_COLUMNS 8

struct _SteadColumnsLayout
{
  GtkLayoutManager parent_instance;

  int              most;
  int              least_width;
  gboolean         even;
};

enum { PROP_MOST = 1, PROP_LEAST_WIDTH, PROP_EVEN };

G_DEFINE_FINAL_TYPE (SteadColumnsLayout, stead_columns_layout, GTK_TYPE_LAYOUT_MANAGER)

/* --- placing ------------------------------------------------------------------------------ */

/* Where the next child goes. */
typedef struct
{
  int n;                       /* columns */
  int width;                   /* of each */
  int bottoms[MOST_COLUMNS];   /* of what stands in it, with the space below */
  int at;                      /* in rows: the column of the next child */
  int top;                     /* in rows: of the present one */
} Places;

static int
least_width (GtkWidget *widget)
{
  int widest = 0;

  for (GtkWidget *child = stead_layout_first (widget); child != NULL; child = stead_layout_next (child))
    {
      int least;

      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
      widest = MAX (widest, least);
    }
  return widest;
}

static Places
begin (SteadColumnsLayout *self,
       GtkWidget          *widget,
       int                 room)
{
  int needed = MAX (self->least_width, least_width (widget));
  Places places = { .n = self->most };
  int children = 0;

  for (GtkWidget *child = stead_layout_first (widget); child != NULL; child = stead_layout_next (child))
    children++;
  /* Fewer children than columns have the room to themselves, unless rows line up. */
  if (!self->even)
    places.n = MIN (places.n, MAX (1, children));
  while (places.n > 1 && places.n * needed + (places.n - 1) * SPACING > room)
    places.n--;
  places.width = (room - (places.n - 1) * SPACING) / places.n;
  return places;
}

/* The height of the row that @child begins. */
static int
row_height (const Places *places,
            GtkWidget    *child)
{
  int height = 0;

  for (int i = 0; i < places->n && child != NULL; i++)
    {
      height = MAX (height, stead_layout_height (child, places->width));
      child = stead_layout_next (child);
    }
  return height;
}

static int
shortest (const Places *places)
{
  int found = 0;

  for (int i = 1; i < places->n; i++)
    if (places->bottoms[i] < places->bottoms[found])
      found = i;
  return found;
}

/* The box of the next child, from the left. */
static GtkAllocation
place (SteadColumnsLayout *self,
       Places             *places,
       GtkWidget          *child)
{
  int column = self->even ? places->at : shortest (places);
  int height = self->even && places->at > 0 ? places->top : self->even ? row_height (places, child)
                                                                       : stead_layout_height (child, places->width);
  GtkAllocation box = { column * (places->width + SPACING), places->bottoms[column], places->width, height };

  places->bottoms[column] += height + SPACING;
  places->top = height;
  places->at = (places->at + 1) % places->n;
  return box;
}

static int
height_for (SteadColumnsLayout *self,
            GtkWidget          *widget,
            int                 room)
{
  Places places = begin (self, widget, room);
  int height = 0;

  for (GtkWidget *child = stead_layout_first (widget); child != NULL; child = stead_layout_next (child))
    {
      GtkAllocation box = place (self, &places, child);

      height = MAX (height, box.y + box.height);
    }
  return height;
}

/* --- the layout ---------------------------------------------------------------------------- */

static void
measure_width (SteadColumnsLayout *self,
               GtkWidget          *widget,
               int                *minimum,
               int                *natural)
{
  int columns = 0, widest = 0;

  *minimum = least_width (widget);
  for (GtkWidget *child = stead_layout_first (widget); child != NULL; child = stead_layout_next (child))
    {
      int wanted;

      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &wanted, NULL, NULL);
      widest = MAX (widest, wanted);
      columns = MIN (columns + 1, self->most);
    }
  *natural = MAX (*minimum, columns * widest + MAX (0, columns - 1) * SPACING);
}

static void
stead_columns_layout_measure (GtkLayoutManager *manager,
                              GtkWidget        *widget,
                              GtkOrientation    orientation,
                              int               for_size,
                              int              *minimum,
                              int              *natural,
                              int              *minimum_baseline,
                              int              *natural_baseline)
{
  SteadColumnsLayout *self = STEAD_COLUMNS_LAYOUT (manager);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    measure_width (self, widget, minimum, natural);
  else
    *minimum = *natural = height_for (self, widget, for_size < 0 ? G_MAXINT / 2 : for_size);
}

static void
stead_columns_layout_allocate (GtkLayoutManager *manager,
                               GtkWidget        *widget,
                               int               width,
                               int               height,
                               int               baseline)
{
  SteadColumnsLayout *self = STEAD_COLUMNS_LAYOUT (manager);
  gboolean from_right = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  Places places = begin (self, widget, width);

  for (GtkWidget *child = stead_layout_first (widget); child != NULL; child = stead_layout_next (child))
    {
      GtkAllocation box = place (self, &places, child);

      if (from_right)
        box.x = width - box.x - box.width;
      gtk_widget_size_allocate (child, &box, -1);
    }
}

static GtkSizeRequestMode
stead_columns_layout_get_request_mode (GtkLayoutManager *manager,
                                       GtkWidget        *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
stead_columns_layout_set_property (GObject      *object,
                                   guint         id,
                                   const GValue *value,
                                   GParamSpec   *spec)
{
  SteadColumnsLayout *self = STEAD_COLUMNS_LAYOUT (object);

  switch (id)
    {
    case PROP_MOST: self->most = g_value_get_int (value); break;
    case PROP_LEAST_WIDTH: self->least_width = g_value_get_int (value); break;
    case PROP_EVEN: self->even = g_value_get_boolean (value); break;
    default: G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec); break;
    }
}

static void
stead_columns_layout_class_init (SteadColumnsLayoutClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);
  GParamFlags flags = G_PARAM_WRITABLE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS;

  object_class->set_property = stead_columns_layout_set_property;
  g_object_class_install_property (object_class, PROP_MOST, g_param_spec_int ("most", NULL, NULL, 1, MOST_COLUMNS, 2, flags));
  g_object_class_install_property (object_class, PROP_LEAST_WIDTH,
                                   g_param_spec_int ("least-width", NULL, NULL, 0, 10000, 420, flags));
  g_object_class_install_property (object_class, PROP_EVEN, g_param_spec_boolean ("even", NULL, NULL, FALSE, flags));
  layout_class->measure = stead_columns_layout_measure;
  layout_class->allocate = stead_columns_layout_allocate;
  layout_class->get_request_mode = stead_columns_layout_get_request_mode;
}

static void
stead_columns_layout_init (SteadColumnsLayout *self)
{
}

GtkLayoutManager *
stead_columns_layout_new (int      most,
                          int      least_width,
                          gboolean even)
{
  return g_object_new (STEAD_TYPE_COLUMNS_LAYOUT, "most", most, "least-width", least_width, "even", even, NULL);
}
