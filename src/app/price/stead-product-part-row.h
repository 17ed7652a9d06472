/* stead-product-part-row.h - one line of packaging in the product dialog. */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-product-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PRODUCT_PART_ROW (stead_product_part_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadProductPartRow, stead_product_part_row, STEAD, PRODUCT_PART_ROW, GtkWidget)

/* Signal "removed" (): the person takes the line off. */

GtkWidget *stead_product_part_row_new       (void);
/* @items: (transfer none) (element-type SteadItem): one at least; the choice is kept if it is among them */
void       stead_product_part_row_set_items (SteadProductPartRow *self, GPtrArray *items);
void       stead_product_part_row_choose    (SteadProductPartRow *self, gint64 item_id);
void       stead_product_part_row_show      (SteadProductPartRow *self, const SteadProductPart *part);
/* %FALSE: a field says what is wrong */
gboolean   stead_product_part_row_read      (SteadProductPartRow *self, SteadProductPart *out);
/* A message at the amount. */
void       stead_product_part_row_complain  (SteadProductPartRow *self, const char *message);

G_END_DECLS
