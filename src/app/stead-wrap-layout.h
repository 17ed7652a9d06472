/* stead-wrap-layout.h - children in a row that goes on in a next line where it must.
 *
 * For rows of buttons: with large text, in a long-worded language or on a small
 * screen none of them is cut off.  Reading order and Tab order stay the same.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_WRAP_LAYOUT (stead_wrap_layout_get_type ())
G_DECLARE_FINAL_TYPE (SteadWrapLayout, stead_wrap_layout, STEAD, WRAP_LAYOUT, GtkLayoutManager)

/* Children are 6 pixels apart, and so are lines. */
GtkLayoutManager *stead_wrap_layout_new (void);

G_END_DECLS
