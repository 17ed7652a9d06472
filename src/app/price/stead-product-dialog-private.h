/* stead-product-dialog-private.h - the dialog of a product: its fields, and reading them. */
#pragma once

#include "app/price/stead-product-dialog.h"

#include "app/stead-dialog.h"
#include "app/stead-field.h"
#include "store/stead-item-repo.h"
#include "store/stead-product-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PRODUCT_DIALOG (stead_product_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadProductDialog, stead_product_dialog, STEAD, PRODUCT_DIALOG, SteadDialog)

struct _SteadProductDialog
{
  SteadDialog     parent_instance;

  SteadDesk      *desk;       /* the frame has it only from its showing on */
  SteadProduct   *product;    /* as on file, or the proposal */
  gint64          cents;      /* first price of a new product; -1: none */
  GPtrArray      *batches;    /* of SteadBatch: what the drop-down offers after "not said yet" */
  GPtrArray      *made;       /* of SteadItem: what it offers then, made or bought */
  const SteadUnit *unit;      /* that the chosen batch's output is measured in */
  gboolean        filling;    /* the lists are being filled: nobody has chosen */
  GPtrArray      *items;      /* of SteadItem: packaging */

  SteadField     *name, *base, *planned, *target, *unsold, *minutes, *price;
  GtkDropDown    *pack, *batch;
  GtkBox         *parts, *stalls;
  GtkWidget      *add_parts, *add_stalls;
  GtkCheckButton *retired;
};

/* Whether the chosen batch's output is weighed; by weight or volume, and not counted. */
gboolean          stead_product_dialog_is_weighed   (SteadProductDialog *self);
gboolean          stead_product_dialog_is_measured  (SteadProductDialog *self);
/* Pieces, or kilograms, that the pack itself names; 0: it does not. */
double            stead_product_dialog_base_of_pack (SteadProductDialog *self);
/* (nullable): the batch that is chosen; the item that is chosen instead of a batch */
const SteadBatch *stead_product_dialog_batch        (SteadProductDialog *self);
const SteadItem  *stead_product_dialog_item         (SteadProductDialog *self);
/* Reads everything, so that each field that is wrong says so at once. */
gboolean          stead_product_dialog_read         (SteadProductDialog *self,
                                                     SteadProduct       *product);

G_END_DECLS
