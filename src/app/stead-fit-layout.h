/* stead-fit-layout.h - of children that say the same, the first one that fits is shown.
 *
 * They stand from the longest to the shortest: "$275.84 on hand", "$275.84".  The last
 * one is shown where nothing fits, and may be cut off.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_FIT_LAYOUT (stead_fit_layout_get_type ())
G_DECLARE_FINAL_TYPE (SteadFitLayout, stead_fit_layout, STEAD, FIT_LAYOUT, GtkLayoutManager)

GtkLayoutManager *stead_fit_layout_new (void);

G_END_DECLS
