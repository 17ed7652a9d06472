/* stead-product-dialog.h - a product, new or as it is, in a window of its own. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

/* @product_id: 0: a new one, which is then the one shown in Price */
void stead_product_dialog_show (GtkWidget *parent,
                                SteadDesk *desk,
                                gint64     product_id);

G_END_DECLS
