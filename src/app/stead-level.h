/* stead-level.h - fields side by side stand on one line, however long their labels are. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* In each grid inside of @widget: labels that stand over what they name, in one row, are all as
 * high as the highest of them.  To be called once, when all fields are there. */
void stead_level_fields (GtkWidget *widget);

G_END_DECLS
