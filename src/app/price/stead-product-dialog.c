/* stead-product-dialog.c - a product: what is sold, out of what, in what, and what
 * its sale day costs.
 *
 * Every rule that the farm file holds is told here first, at the field where it
 * is broken.  A price typed for a new product is saved in the same step.
 */
#include "config.h"

#include "app/price/stead-product-dialog-private.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-batch-outlook.h"
#include "answer/stead-words.h"
#include "app/keep/stead-item-dialog.h"
#include "app/price/stead-product-part-row.h"
#include "app/price/stead-stall-cost-row.h"
#include "app/stead-ui.h"
#include "store/stead-store-watch.h"

G_DEFINE_FINAL_TYPE (SteadProductDialog, stead_product_dialog, STEAD_TYPE_DIALOG)

/* Saving ------------------------------------------------------------------------------ */

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadProductDialog *self = data;
  gboolean is_new = self->product->id == 0;

  stead_store_watch_id (store, &self->product->id);
  if (!stead_product_repo_save (store, self->product, error))
    return FALSE;
  return !is_new || self->cents < 0
         || stead_product_repo_set_price (store, self->product->id, stead_store_get_today (store), self->cents,
                                          NULL, error);
}

static gboolean
stead_product_dialog_save (SteadDialog  *dialog,
                           GError      **error)
{
  SteadProductDialog *self = STEAD_PRODUCT_DIALOG (dialog);
  gboolean is_new = self->product->id == 0;
  g_autofree char *step = NULL;

  if (!stead_product_dialog_read (self, self->product))
    return FALSE;
  step = g_strdup_printf (is_new ? _("new product %s") : _("changes to product %s"), self->product->name);
  if (!stead_desk_act (self->desk, step, save_act, self, error))
    return FALSE;
  if (is_new)
    stead_desk_set_product (self->desk, self->product->id);
  return TRUE;
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_product_repo_delete (store, ((SteadProduct *) data)->id, error);
}

static gboolean
stead_product_dialog_remove (SteadDialog  *dialog,
                             GError      **error)
{
  SteadProductDialog *self = STEAD_PRODUCT_DIALOG (dialog);
  g_autofree char *step = g_strdup_printf (_("deleting product %s"), self->product->name);

  return stead_desk_act (self->desk, step, remove_act, self->product, error);
}

/* Lines --------------------------------------------------------------------------------- */

/* Taking a line off must not drop the focus out of the dialog. */
static void
take_off (GtkWidget *row,
          GtkWidget *then)
{
  gtk_widget_grab_focus (then);
  gtk_box_remove (GTK_BOX (gtk_widget_get_parent (row)), row);
}

static SteadProductPartRow *
add_part (SteadProductDialog *self)
{
  GtkWidget *row = stead_product_part_row_new ();

  stead_product_part_row_set_items (STEAD_PRODUCT_PART_ROW (row), self->items);
  g_signal_connect (row, "removed", G_CALLBACK (take_off), self->add_parts);
  gtk_box_append (self->parts, row);
  return STEAD_PRODUCT_PART_ROW (row);
}

static void
read_items (SteadProductDialog *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  g_autoptr(GPtrArray) items = stead_item_repo_list (store, NULL);

  g_clear_pointer (&self->items, g_ptr_array_unref);
  self->items = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_item_free);
  for (guint i = 0; items != NULL && i < items->len; i++)
    if (((SteadItem *) items->pdata[i])->kind == STEAD_ITEM_PACKAGING)
      g_ptr_array_add (self->items, g_steal_pointer (&items->pdata[i]));
  gtk_widget_set_sensitive (self->add_parts, self->items->len > 0);
}

static void
add_part_cb (SteadProductDialog *self)
{
  if (self->items->len > 0)
    gtk_widget_child_focus (GTK_WIDGET (add_part (self)), GTK_DIR_TAB_FORWARD);
}

static void
new_item_cb (SteadProductDialog *self)
{
  stead_item_dialog_show (GTK_WIDGET (self), self->desk, 0);
}

/* An item that was just made can be chosen at once. */
static void
facts_changed_cb (SteadProductDialog *self)
{
  read_items (self);
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->parts)); row != NULL && self->items->len > 0;
       row = gtk_widget_get_next_sibling (row))
    stead_product_part_row_set_items (STEAD_PRODUCT_PART_ROW (row), self->items);
}

static SteadStallCostRow *
add_stall (SteadProductDialog *self)
{
  const SteadFarm *farm = stead_desk_get_farm (self->desk);
  GtkWidget *row = stead_stall_cost_row_new (farm->currency);

  g_signal_connect (row, "removed", G_CALLBACK (take_off), self->add_stalls);
  gtk_box_append (self->stalls, row);
  return STEAD_STALL_COST_ROW (row);
}

static void
add_stall_cb (SteadProductDialog *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (add_stall (self)));
}

static void
show_base (SteadProductDialog *self,
           double              base)
{
  if (stead_product_dialog_is_measured (self))
    stead_field_show_quantity (self->base, base);
  else
    stead_field_show_number (self->base, base);
}

/* A pack that names what is in it needs no number from the person. */
static void
pack_cb (SteadProductDialog *self)
{
  double base = self->unit != NULL ? stead_product_dialog_base_of_pack (self) : 0;

  gtk_widget_set_sensitive (GTK_WIDGET (self->base), !(base > 0));
  if (base > 0)
    show_base (self, base);
}

/* Eggs are counted; fish and fruit are weighed, or counted if they were harvested so.
 * The pack follows, since nobody sells fish by the dozen. */
static void
batch_cb (SteadProductDialog *self)
{
  const SteadBatch *batch;
  const SteadItem *item;
  const SteadUnit *before = self->unit;
  SteadUnitSystem units;

  if (self->filling)
    return;
  batch = stead_product_dialog_batch (self);
  item = stead_product_dialog_item (self);
  units = stead_desk_get_farm (self->desk)->units;
  self->unit = stead_unit_by_id ("ea");
  if (batch != NULL && !stead_batch_output_unit (stead_desk_get_store (self->desk), batch, &self->unit, NULL))
    self->unit = stead_unit_by_id ("ea");
  if (item != NULL)
    self->unit = item->unit;
  if (stead_product_dialog_is_weighed (self))
    self->unit = stead_unit_default (STEAD_DIMENSION_MASS, units);
  g_object_set (self->base, "kind", stead_product_dialog_is_measured (self) ? STEAD_FIELD_QUANTITY : STEAD_FIELD_NUMBER,
                "label", stead_product_dialog_is_weighed (self) ? _("Weight of one")
                         : stead_product_dialog_is_measured (self) ? _("Amount in one")
                         : item != NULL ? _("Pieces in one")
                         : batch == NULL || batch->kind == STEAD_BATCH_FLOCK ? _("Eggs in one") : _("Pieces in one"),
                NULL);
  if (stead_product_dialog_is_measured (self))
    stead_field_set_unit (self->base, self->unit);
  if (before != NULL && before->dimension != self->unit->dimension)
    {
      stead_field_set_text (self->base, "");
      gtk_drop_down_set_selected (self->pack, item != NULL && !stead_product_dialog_is_weighed (self) ? STEAD_PACK_PIECE
                                              : !stead_product_dialog_is_weighed (self) ? STEAD_PACK_DOZEN
                                              : units == STEAD_UNITS_US ? STEAD_PACK_POUND : STEAD_PACK_KILOGRAM);
    }
  pack_cb (self);
}

/* Showing ---------------------------------------------------------------------------------- */

static void
fill_packs (SteadProductDialog *self)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  for (int pack = STEAD_PACK_DOZEN; pack <= STEAD_PACK_PACK; pack++)
    gtk_string_list_append (names, stead_words_pack_name ((SteadPack) pack));
  gtk_drop_down_set_model (self->pack, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->pack, self->product->pack);
}

/* What the farm makes or keeps to sell: of the store room, from the farm. */
static void
read_made (SteadProductDialog *self,
           SteadStore         *store)
{
  g_autoptr(GPtrArray) items = stead_item_repo_list (store, NULL);

  self->made = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_item_free);
  for (guint i = 0; items != NULL && i < items->len; i++)
    if (((SteadItem *) items->pdata[i])->kind == STEAD_ITEM_PRODUCE)
      g_ptr_array_add (self->made, g_steal_pointer (&items->pdata[i]));
}

static void
fill_batches (SteadProductDialog *self,
              SteadStore         *store)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  guint chosen = 0;

  self->filling = TRUE;
  self->batches = stead_batch_repo_list (store, TRUE, NULL);
  if (self->batches == NULL)
    self->batches = g_ptr_array_new ();
  read_made (self, store);
  gtk_string_list_append (names, _("Not said yet"));
  for (guint i = 0; i < self->batches->len; i++)
    {
      const SteadBatch *batch = self->batches->pdata[i];

      gtk_string_list_append (names, batch->name);
      if (batch->id == self->product->batch_id)
        chosen = i + 1;
    }
  for (guint i = 0; i < self->made->len; i++)
    {
      const SteadItem *item = self->made->pdata[i];
      /* Translators: something of the store room that a product is packed from. */
      g_autofree char *name = g_strdup_printf (_("%s, out of the store room"), item->name);

      gtk_string_list_append (names, name);
      if (self->product->batch_id == 0 && item->id == self->product->item_id)
        chosen = self->batches->len + 1 + i;
    }
  if (self->product->id == 0 && self->batches->len > 0)
    chosen = 1;
  gtk_drop_down_set_model (self->batch, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->batch, chosen);
  self->filling = FALSE;
  batch_cb (self);
}

static void
show_lines (SteadProductDialog *self)
{
  const SteadProduct *product = self->product;

  for (guint i = 0; i < product->parts->len && self->items->len > 0; i++)
    stead_product_part_row_show (add_part (self), &g_array_index (product->parts, SteadProductPart, i));
  for (guint i = 0; i < product->stall_costs->len; i++)
    stead_stall_cost_row_show (add_stall (self), product->stall_costs->pdata[i]);
}

static void
show_product (SteadProductDialog *self)
{
  const SteadProduct *product = self->product;
  gboolean is_new = product->id == 0;

  show_base (self, product->base_per_unit);
  gtk_widget_set_visible (GTK_WIDGET (self->price), is_new);
  gtk_widget_set_visible (GTK_WIDGET (self->retired), !is_new);
  gtk_check_button_set_active (self->retired, product->retired_on != STEAD_DAY_NONE);
  show_lines (self);
  pack_cb (self);
  if (is_new)
    return;
  stead_field_set_text (self->name, product->name);
  stead_field_show_count (self->planned, product->planned_units);
  stead_field_show_money (self->target, product->target_cents);
  stead_field_show_number (self->unsold, product->unsold_frac);
  stead_field_show_number (self->minutes, product->pack_minutes);
}

static void
stead_product_dialog_dispose (GObject *object)
{
  SteadProductDialog *self = STEAD_PRODUCT_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_PRODUCT_DIALOG);
  g_clear_pointer (&self->product, stead_product_free);
  g_clear_pointer (&self->batches, g_ptr_array_unref);
  g_clear_pointer (&self->made, g_ptr_array_unref);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_product_dialog_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, name);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, base);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, planned);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, target);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, unsold);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, minutes);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, price);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, pack);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, batch);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, parts);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, stalls);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, add_parts);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, add_stalls);
  gtk_widget_class_bind_template_child (widget_class, SteadProductDialog, retired);
  gtk_widget_class_bind_template_callback (widget_class, pack_cb);
  gtk_widget_class_bind_template_callback (widget_class, batch_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_part_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_stall_cb);
  gtk_widget_class_bind_template_callback (widget_class, new_item_cb);
}

static void
stead_product_dialog_class_init (SteadProductDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_product_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_product_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_product_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("price/stead-product-dialog.ui"));
  bind_children (widget_class);
}

static void
stead_product_dialog_init (SteadProductDialog *self)
{
  self->cents = -1;
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_product_dialog_show (GtkWidget *parent,
                           SteadDesk *desk,
                           gint64     product_id)
{
  SteadStore *store;
  SteadProductDialog *self;
  g_autoptr(SteadProduct) product = NULL;
  g_autoptr(GError) error = NULL;

  g_return_if_fail (STEAD_IS_DESK (desk));

  store = stead_desk_get_store (desk);
  g_return_if_fail (store != NULL);
  product = product_id > 0 ? stead_product_repo_get (store, product_id, &error) : stead_product_new ();
  if (product == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_PRODUCT_DIALOG, "title", product_id > 0 ? _("Edit the product") : _("New product"),
                       "delete-label", product_id > 0 ? _("Delete the product") : NULL, NULL);
  self->desk = g_object_ref (desk);
  self->product = g_steal_pointer (&product);
  stead_field_set_currency (self->target, stead_desk_get_farm (desk)->currency);
  stead_field_set_currency (self->price, stead_desk_get_farm (desk)->currency);
  fill_packs (self);
  fill_batches (self, store);
  read_items (self);
  show_product (self);
  g_signal_connect_object (desk, "changed", G_CALLBACK (facts_changed_cb), self, G_CONNECT_SWAPPED);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}
