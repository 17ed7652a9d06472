/* stead-origin-pick.c - where animals come from: paid for as entered here, or out of the store room.
 *
 * Those of the store room bring their cost along from their receipt, so that it is
 * entered once.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-origin-pick.h"

#include "app/stead-ui.h"
#include "core/stead-money.h"
#include "core/stead-quantity.h"
#include "store/stead-farm-repo.h"
#include "store/stead-lot-repo.h"

/* All lots of one item. */
typedef struct
{
  gint64  item_id;
  char   *name;
  double  on_hand;
  gint64  cents;
} Origin;

struct _SteadOriginPick
{
  GtkWidget    parent_instance;

  GPtrArray   *origins;     /* of Origin: after "bought, the cost stands below" */
  GtkDropDown *choice;
};

G_DEFINE_FINAL_TYPE (SteadOriginPick, stead_origin_pick, GTK_TYPE_WIDGET)

enum { SIGNAL_CHANGED, N_SIGNALS };
static guint signals[N_SIGNALS];

static void
origin_free (Origin *origin)
{
  g_free (origin->name);
  g_free (origin);
}

static const Origin *
chosen (SteadOriginPick *self)
{
  guint at = gtk_drop_down_get_selected (self->choice);

  return at > 0 && at <= self->origins->len ? self->origins->pdata[at - 1] : NULL;
}

static void
selected_cb (SteadOriginPick *self)
{
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
stead_origin_pick_dispose (GObject *object)
{
  SteadOriginPick *self = STEAD_ORIGIN_PICK (object);

  if (self->choice != NULL)
    g_signal_handlers_disconnect_by_func (self->choice, selected_cb, self);
  self->choice = NULL;
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->origins, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_origin_pick_parent_class)->dispose (object);
}

static void
stead_origin_pick_class_init (SteadOriginPickClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_origin_pick_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", STEAD_TYPE_ORIGIN_PICK, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
}

static void
stead_origin_pick_init (SteadOriginPick *self)
{
  GtkExpression *name = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkWidget *label = gtk_label_new (_("Where they come from"));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);
  self->origins = g_ptr_array_new_with_free_func ((GDestroyNotify) origin_free);
  self->choice = GTK_DROP_DOWN (gtk_drop_down_new (NULL, name));
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), GTK_WIDGET (self->choice));
  gtk_widget_set_parent (label, GTK_WIDGET (self));
  gtk_widget_set_parent (GTK_WIDGET (self->choice), GTK_WIDGET (self));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  g_signal_connect_swapped (self->choice, "notify::selected", G_CALLBACK (selected_cb), self);
}

GtkWidget *
stead_origin_pick_new (void)
{
  return g_object_new (STEAD_TYPE_ORIGIN_PICK, NULL);
}

/* The lots come by item name, so those of one item stand together. */
static void
add_lot (SteadOriginPick *self,
         const SteadLot  *lot)
{
  Origin *origin = self->origins->len > 0 ? self->origins->pdata[self->origins->len - 1] : NULL;

  if (lot->item_kind != STEAD_ITEM_LIVESTOCK || lot->unit->dimension != STEAD_DIMENSION_COUNT)
    return;
  if (origin == NULL || origin->item_id != lot->item_id)
    {
      origin = g_new0 (Origin, 1);
      origin->item_id = lot->item_id;
      origin->name = g_strdup (lot->item_name);
      g_ptr_array_add (self->origins, origin);
    }
  origin->on_hand += lot->on_hand_base;
  origin->cents += lot->on_hand_cents;
}

static char *
origin_text (const Origin *origin,
             const char   *currency)
{
  g_autofree char *number = stead_number_format (floor (origin->on_hand), 0);
  g_autofree char *money = stead_money_format (origin->cents, currency);

  /* Translators: an item of the store room, how many are there, what they cost. */
  return g_strdup_printf (_("Store room: %s, %s for %s"), origin->name, number, money);
}

gboolean
stead_origin_pick_fill (SteadOriginPick *self,
                        SteadStore      *store)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  g_autoptr(GPtrArray) lots = NULL;
  g_autoptr(SteadFarm) farm = NULL;

  g_return_val_if_fail (STEAD_IS_ORIGIN_PICK (self) && STEAD_IS_STORE (store), FALSE);

  lots = stead_lot_repo_list (store, FALSE, NULL);
  farm = stead_farm_repo_get (store, NULL);
  g_ptr_array_set_size (self->origins, 0);
  for (guint i = 0; lots != NULL && i < lots->len; i++)
    add_lot (self, lots->pdata[i]);
  gtk_string_list_append (names, _("On no receipt yet: enter the cost"));
  for (guint i = 0; i < self->origins->len; i++)
    {
      g_autofree char *text = origin_text (self->origins->pdata[i], farm != NULL ? farm->currency : "USD");

      gtk_string_list_append (names, text);
    }
  gtk_drop_down_set_model (self->choice, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->choice, 0);
  return self->origins->len > 0;
}

gint64
stead_origin_pick_get_item (SteadOriginPick *self)
{
  g_return_val_if_fail (STEAD_IS_ORIGIN_PICK (self), 0);
  return chosen (self) != NULL ? chosen (self)->item_id : 0;
}

gint64
stead_origin_pick_get_on_hand (SteadOriginPick *self)
{
  g_return_val_if_fail (STEAD_IS_ORIGIN_PICK (self), 0);
  return chosen (self) != NULL ? (gint64) floor (chosen (self)->on_hand) : 0;
}
