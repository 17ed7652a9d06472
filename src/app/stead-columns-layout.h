/* stead-columns-layout.h - children in columns of one width, as many as there is room for.
 *
 * For cards: on a wide screen they stand side by side and leave no empty half, on a small
 * one or with large text they stand in one column.  Reading order and Tab order stay the
 * same.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_COLUMNS_LAYOUT (stead_columns_layout_get_type ())
G_DECLARE_FINAL_TYPE (SteadColumnsLayout, stead_columns_layout, STEAD, COLUMNS_LAYOUT, GtkLayoutManager)

/**
 * stead_columns_layout_new:
 * @most: columns at most, 1 to 8
 * @least_width: of a column, in pixels; a child may need more.  One column may be narrower
 * @even: whether children stand in rows, each as high as its highest child; else each
 *   goes under the column that is shortest
 *
 * The properties are "most", "least-width" and "even".  Children are 12 pixels apart.
 */
GtkLayoutManager *stead_columns_layout_new (int      most,
                                            int      least_width,
                                            gboolean even);

G_END_DECLS
