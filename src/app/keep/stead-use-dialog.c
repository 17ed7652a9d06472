/* stead-use-dialog.c - something of the store room goes into a batch.
 *
 * Feed is written in a flock's log, not here: the log takes it from the lots.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-use-dialog.h"

#include "answer/stead-store-room-why.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "store/stead-flock-repo.h"
#include "store/stead-lot-repo.h"

/* Of the grid: below the figure that they work out. */
#define WHYS_ROW 3

struct _SteadUseDialog
{
  SteadDialog  parent_instance;

  GPtrArray   *items;     /* of SteadItem */
  GPtrArray   *flocks;    /* of SteadFlock */

  GtkDropDown *item, *batch;
  SteadField  *quantity, *day;
  GtkLabel    *on_hand;
  GtkGrid     *grid;
  SteadWhyBox *whys;
};

G_DEFINE_FINAL_TYPE (SteadUseDialog, stead_use_dialog, STEAD_TYPE_DIALOG)

typedef struct
{
  gint64   item_id, batch_id;
  SteadDay day;
  double   quantity;
} Use;

static const SteadItem *
chosen_item (SteadUseDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->item);

  return at < self->items->len ? self->items->pdata[at] : NULL;
}

static void
item_cb (SteadUseDialog *self)
{
  const SteadItem *item = chosen_item (self);
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));
  SteadStock stock;
  g_autoptr(GPtrArray) whys = NULL;
  g_autofree char *amount = NULL, *text = NULL;

  if (item == NULL || desk == NULL)
    return;
  stead_field_set_unit (self->quantity, item->unit);
  if (!stead_lot_repo_stock (stead_desk_get_store (desk), item->id,
                             stead_store_get_today (stead_desk_get_store (desk)), 28, &stock, NULL))
    return;
  amount = stead_quantity_format (stock.on_hand_base, item->unit);
  /* Translators: an amount with its unit follows */
  text = g_strdup_printf (_("On hand: %s. The oldest lot is used first."), amount);
  gtk_label_set_text (self->on_hand, text);
  whys = stead_on_hand_whys (stead_desk_get_store (desk), item->id, stock.on_hand_base, item->unit);
  stead_why_box_set (self->whys, whys);
}

static gboolean
use_act (SteadStore *store,
         gpointer    data,
         GError    **error)
{
  const Use *use = data;

  return stead_lot_repo_use (store, use->item_id, use->batch_id, use->day, use->quantity, 0, error);
}

static gboolean
stead_use_dialog_save (SteadDialog *dialog,
                       GError     **error)
{
  SteadUseDialog *self = STEAD_USE_DIALOG (dialog);
  const SteadItem *item = chosen_item (self);
  guint flock = gtk_drop_down_get_selected (self->batch);
  Use use = { 0 };
  g_autofree char *amount = NULL, *step = NULL;
  gboolean good = stead_field_read_quantity (self->quantity, 0, &use.quantity);

  good &= stead_field_read_day (self->day, STEAD_DAY_NONE, &use.day);
  if (!good || item == NULL || flock >= self->flocks->len)
    return FALSE;
  if (!(use.quantity > 0))
    {
      stead_field_set_error (self->quantity, _("Enter more than zero."));
      return FALSE;
    }
  use.item_id = item->id;
  use.batch_id = ((SteadFlock *) self->flocks->pdata[flock])->id;
  amount = stead_quantity_format (use.quantity, item->unit);
  /* Translators: an amount with its unit, then an item: "use of 2 lb Pine shavings" */
  step = g_strdup_printf (_("use of %s %s"), amount, item->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, use_act, &use, error);
}

static void
stead_use_dialog_dispose (GObject *object)
{
  SteadUseDialog *self = STEAD_USE_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_USE_DIALOG);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_clear_pointer (&self->flocks, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_use_dialog_parent_class)->dispose (object);
}

static void
stead_use_dialog_class_init (SteadUseDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_use_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_use_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-use-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadUseDialog, item);
  gtk_widget_class_bind_template_child (widget_class, SteadUseDialog, batch);
  gtk_widget_class_bind_template_child (widget_class, SteadUseDialog, quantity);
  gtk_widget_class_bind_template_child (widget_class, SteadUseDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadUseDialog, on_hand);
  gtk_widget_class_bind_template_child (widget_class, SteadUseDialog, grid);
  gtk_widget_class_bind_template_callback (widget_class, item_cb);
}

static void
stead_use_dialog_init (SteadUseDialog *self)
{
  self->items = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_item_free);
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_grid_attach (self->grid, stead_why_box_new_folded (&self->whys), 0, WHYS_ROW, 2, 1);
}

/* Everything but feed, which the log of a flock takes. */
static void
fill_items (SteadUseDialog *self,
            SteadStore     *store,
            gint64          chosen_id)
{
  g_autoptr(GPtrArray) items = stead_item_repo_list (store, NULL);
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  guint chosen = 0;

  for (guint i = 0; items != NULL && i < items->len; i++)
    {
      SteadItem *item = items->pdata[i];

      if (item->kind == STEAD_ITEM_FEED)
        continue;
      if (item->id == chosen_id)
        chosen = self->items->len;
      gtk_string_list_append (names, item->name);
      g_ptr_array_add (self->items, g_steal_pointer (&items->pdata[i]));
    }
  gtk_drop_down_set_model (self->item, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->item, chosen);
}

static void
fill_flocks (SteadUseDialog *self,
             SteadStore     *store)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  self->flocks = stead_flock_repo_list (store, FALSE, NULL);
  if (self->flocks == NULL)
    self->flocks = g_ptr_array_new ();
  for (guint i = 0; i < self->flocks->len; i++)
    gtk_string_list_append (names, ((SteadFlock *) self->flocks->pdata[i])->name);
  gtk_drop_down_set_model (self->batch, G_LIST_MODEL (names));
}

void
stead_use_dialog_show (GtkWidget *parent,
                       SteadDesk *desk,
                       gint64     item_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadUseDialog *self = g_object_new (STEAD_TYPE_USE_DIALOG, "title", _("Use in a batch"), NULL);

  fill_items (self, store, item_id);
  fill_flocks (self, store);
  if (self->items->len == 0 || self->flocks->len == 0)
    {
      stead_desk_say (desk, self->flocks->len == 0 ? _("There is no batch yet that could use something.")
                                                   : _("There is no item but feed; feed goes into a flock's log."), FALSE);
      gtk_window_destroy (GTK_WINDOW (self));
      return;
    }
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, stead_store_get_today (store));
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  item_cb (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->quantity));
}
