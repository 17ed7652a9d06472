/* stead-field-layout.h - a grid with wrapped text, and the truth about how high it is.
 *
 * Without a width a grid tells its height at its least width, where every text wraps; in a
 * row of fields GTK 4.18 takes that for the least height of all.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_FIELD_LAYOUT (stead_field_layout_get_type ())
G_DECLARE_FINAL_TYPE (SteadFieldLayout, stead_field_layout, STEAD, FIELD_LAYOUT, GtkLayoutManager)

G_END_DECLS
