/* stead-product-dialog-read.c - what the dialog of a product says, field by field.
 *
 * Every rule that the farm file holds is told here first, at the field where it is broken.
 */
#include "config.h"

#include "app/price/stead-product-dialog-private.h"

#include <glib/gi18n-lib.h>

#include "app/price/stead-product-part-row.h"
#include "app/price/stead-stall-cost-row.h"
#include "core/stead-us-units.h"

#define MAX_UNSOLD 0.9
#define MAX_MINUTES 1440.0
#define MAX_PLANNED 10000000

gboolean
stead_product_dialog_is_weighed (SteadProductDialog *self)
{
  return self->unit->dimension == STEAD_DIMENSION_MASS;
}

gboolean
stead_product_dialog_is_measured (SteadProductDialog *self)
{
  return self->unit->dimension != STEAD_DIMENSION_COUNT;
}

/* A pound is exact: NIST Special Publication 811, appendix B. */
double
stead_product_dialog_base_of_pack (SteadProductDialog *self)
{
  SteadPack pack = (SteadPack) gtk_drop_down_get_selected (self->pack);

  switch (pack)
    {
    case STEAD_PACK_DOZEN:      return stead_product_dialog_is_measured (self) ? 0 : 12;
    case STEAD_PACK_HALF_DOZEN: return stead_product_dialog_is_measured (self) ? 0 : 6;
    case STEAD_PACK_TRAY:       return stead_product_dialog_is_measured (self) ? 0 : 30;
    case STEAD_PACK_PIECE:      return stead_product_dialog_is_measured (self) ? 0 : 1;
    case STEAD_PACK_POUND:      return stead_product_dialog_is_weighed (self) ? STEAD_POUND_KG : 0;
    case STEAD_PACK_KILOGRAM:   return stead_product_dialog_is_weighed (self) ? 1 : 0;
    case STEAD_PACK_JAR:
    case STEAD_PACK_PACK:
    default:                    return 0;
    }
}

const SteadBatch *
stead_product_dialog_batch (SteadProductDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->batch);

  return at == 0 || at > self->batches->len ? NULL : self->batches->pdata[at - 1];
}

const SteadItem *
stead_product_dialog_item (SteadProductDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->batch);
  guint before = self->batches->len + 1;

  return at < before || at - before >= self->made->len ? NULL : self->made->pdata[at - before];
}

/* Reading --------------------------------------------------------------------------- */

static gboolean
refuse_unless (gboolean    good,
               SteadField *field,
               const char *message)
{
  if (!good)
    stead_field_set_error (field, message);
  return good;
}

/* What is in one: as the pack names it, to the last digit, or as it was typed. */
static gboolean
read_base (SteadProductDialog *self,
           SteadProduct       *product)
{
  double base = stead_product_dialog_base_of_pack (self);

  if (!(base > 0) && !(stead_product_dialog_is_measured (self) ? stead_field_read_quantity (self->base, 0, &base)
                                         : stead_field_read_number (self->base, 0, &base)))
    return FALSE;
  product->base_per_unit = base;
  return refuse_unless (base > 0, self->base,
                        stead_product_dialog_is_weighed (self) ? _("Enter what one weighs: more than 0.")
                                          : _("Enter how many pieces go into one, such as 12."));
}

static gboolean
read_numbers (SteadProductDialog *self,
              SteadProduct       *product)
{
  gboolean is_new = product->id == 0;
  gboolean good = read_base (self, product);

  good &= stead_field_read_count (self->planned, 0, &product->planned_units);
  good &= stead_field_read_money (self->target, 0, &product->target_cents);
  good &= stead_field_read_number (self->unsold, 0, &product->unsold_frac);
  good &= stead_field_read_number (self->minutes, 0, &product->pack_minutes);
  if (is_new)
    good &= stead_field_read_money (self->price, -1, &self->cents);
  if (!good)
    return FALSE;
  good = refuse_unless (product->planned_units <= MAX_PLANNED, self->planned, _("This is more than one day can sell."));
  good &= refuse_unless (product->target_cents >= 0, self->target, _("Enter a profit of 0 or more."));
  good &= refuse_unless (product->unsold_frac >= 0 && product->unsold_frac <= MAX_UNSOLD, self->unsold,
                         _("Enter a share of 0 to 90 %."));
  good &= refuse_unless (product->pack_minutes >= 0 && product->pack_minutes <= MAX_MINUTES, self->minutes,
                         _("Enter 0 to 1440 minutes."));
  if (is_new)
    good &= refuse_unless (self->cents >= -1, self->price, _("Enter a price of 0 or more."));
  return good;
}

static gboolean
read_parts (SteadProductDialog *self,
            SteadProduct       *product)
{
  gboolean good = TRUE;

  g_array_set_size (product->parts, 0);
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->parts)); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    {
      SteadProductPart part;

      if (!stead_product_part_row_read (STEAD_PRODUCT_PART_ROW (row), &part))
        {
          good = FALSE;
          continue;
        }
      for (guint i = 0; i < product->parts->len; i++)
        if (g_array_index (product->parts, SteadProductPart, i).item_id == part.item_id)
          {
            stead_product_part_row_complain (STEAD_PRODUCT_PART_ROW (row),
                                             _("This stands on a line above. Put the amounts together."));
            good = FALSE;
          }
      g_array_append_val (product->parts, part);
    }
  return good;
}

static gboolean
read_stalls (SteadProductDialog *self,
             SteadProduct       *product)
{
  gboolean good = TRUE, stepped = FALSE;

  g_ptr_array_set_size (product->stall_costs, 0);
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->stalls)); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    {
      SteadStallCost *cost = stead_stall_cost_row_read (STEAD_STALL_COST_ROW (row));

      if (cost == NULL)
        {
          good = FALSE;
          continue;
        }
      if (cost->per_units > 0 && stepped)
        {
          stead_stall_cost_row_complain (STEAD_STALL_COST_ROW (row),
                                         _("Only one cost can come again with the number sold."));
          good = FALSE;
        }
      stepped |= cost->per_units > 0;
      g_ptr_array_add (product->stall_costs, cost);
    }
  return good;
}

gboolean
stead_product_dialog_read (SteadProductDialog *self,
                           SteadProduct       *product)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  const SteadBatch *batch = stead_product_dialog_batch (self);
  const SteadItem *item = stead_product_dialog_item (self);
  const char *name = NULL;
  gboolean good = stead_field_read_text (self->name, &name);

  good &= read_numbers (self, product);
  good &= read_parts (self, product);
  good &= read_stalls (self, product);
  if (!good)
    return FALSE;
  g_free (product->name);
  product->name = g_strstrip (g_strdup (name));
  product->pack = (SteadPack) gtk_drop_down_get_selected (self->pack);
  product->batch_id = batch != NULL ? batch->id : 0;
  if (batch == NULL)
    product->item_id = item != NULL ? item->id : 0;
  if (!gtk_check_button_get_active (self->retired))
    product->retired_on = STEAD_DAY_NONE;
  else if (product->retired_on == STEAD_DAY_NONE)
    product->retired_on = stead_store_get_today (store);
  return TRUE;
}
