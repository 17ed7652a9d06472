/* stead-product-part-row.c - one line of packaging in the product dialog. */
#include "config.h"

#include "app/price/stead-product-part-row.h"

#include <glib/gi18n-lib.h>

#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-item-repo.h"

struct _SteadProductPartRow
{
  GtkWidget    parent_instance;

  GPtrArray   *items;      /* of SteadItem */
  gint64       item_id;    /* chosen */

  GtkDropDown *item;
  SteadField  *quantity;
};

enum { REMOVED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadProductPartRow, stead_product_part_row, GTK_TYPE_WIDGET)

static void
item_cb (SteadProductPartRow *self)
{
  guint at = gtk_drop_down_get_selected (self->item);
  const SteadItem *item;

  if (self->items == NULL || at >= self->items->len)
    return;
  item = self->items->pdata[at];
  self->item_id = item->id;
  stead_field_set_unit (self->quantity, item->unit);
}

static void
remove_cb (SteadProductPartRow *self)
{
  g_signal_emit (self, signals[REMOVED], 0);
}

static void
stead_product_part_row_dispose (GObject *object)
{
  SteadProductPartRow *self = STEAD_PRODUCT_PART_ROW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_PRODUCT_PART_ROW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->items, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_product_part_row_parent_class)->dispose (object);
}

static void
stead_product_part_row_class_init (SteadProductPartRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_product_part_row_dispose;
  signals[REMOVED] = g_signal_new ("removed", STEAD_TYPE_PRODUCT_PART_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("price/stead-product-part.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadProductPartRow, item);
  gtk_widget_class_bind_template_child (widget_class, SteadProductPartRow, quantity);
  gtk_widget_class_bind_template_callback (widget_class, item_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
}

static void
stead_product_part_row_init (SteadProductPartRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
stead_product_part_row_new (void)
{
  return g_object_new (STEAD_TYPE_PRODUCT_PART_ROW, NULL);
}

void
stead_product_part_row_set_items (SteadProductPartRow *self,
                                  GPtrArray           *items)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  gint64 before;

  g_return_if_fail (STEAD_IS_PRODUCT_PART_ROW (self) && items != NULL);

  before = self->item_id;
  for (guint i = 0; i < items->len; i++)
    gtk_string_list_append (names, ((SteadItem *) items->pdata[i])->name);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  gtk_drop_down_set_model (self->item, G_LIST_MODEL (names));
  self->items = g_ptr_array_ref (items);
  stead_product_part_row_choose (self, before);
}

void
stead_product_part_row_choose (SteadProductPartRow *self,
                               gint64               item_id)
{
  g_return_if_fail (STEAD_IS_PRODUCT_PART_ROW (self));

  for (guint i = 0; self->items != NULL && i < self->items->len; i++)
    if (((SteadItem *) self->items->pdata[i])->id == item_id)
      gtk_drop_down_set_selected (self->item, i);
  item_cb (self);
}

void
stead_product_part_row_show (SteadProductPartRow    *self,
                             const SteadProductPart *part)
{
  g_return_if_fail (STEAD_IS_PRODUCT_PART_ROW (self) && part != NULL);

  stead_product_part_row_choose (self, part->item_id);
  stead_field_show_quantity (self->quantity, part->quantity_base);
}

gboolean
stead_product_part_row_read (SteadProductPartRow *self,
                             SteadProductPart    *out)
{
  SteadProductPart part = { .item_id = self->item_id };

  g_return_val_if_fail (STEAD_IS_PRODUCT_PART_ROW (self) && out != NULL, FALSE);

  if (!stead_field_read_quantity (self->quantity, 0, &part.quantity_base))
    return FALSE;
  if (!(part.quantity_base > 0))
    {
      stead_field_set_error (self->quantity, _("Enter more than zero."));
      return FALSE;
    }
  *out = part;
  return TRUE;
}

void
stead_product_part_row_complain (SteadProductPartRow *self,
                                 const char          *message)
{
  g_return_if_fail (STEAD_IS_PRODUCT_PART_ROW (self));

  stead_field_set_error (self->quantity, message);
}
