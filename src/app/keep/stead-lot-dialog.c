/* stead-lot-dialog.c - a lot's card.
 *
 * A count says how much is there; the ledger gets the difference.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/keep/stead-lot-dialog.h"

#include "app/keep/stead-label-dialog.h"
#include "app/keep/stead-trace-window.h"

#include "answer/stead-wait.h"
#include "app/stead-field.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"
#include "store/stead-lot-repo.h"

struct _SteadLotDialog
{
  SteadDialog  parent_instance;

  SteadLot    *lot;

  GtkGrid     *grid;
  GtkLabel    *about;
  GtkBox      *slot;
  GtkDropDown *kind;
  GtkWidget   *labels;
  SteadField  *quantity, *reason, *day;
};

G_DEFINE_FINAL_TYPE (SteadLotDialog, stead_lot_dialog, STEAD_TYPE_DIALOG)

/* As the drop-down offers them. */
static const SteadMoveKind changes[] = { STEAD_MOVE_COUNTED, STEAD_MOVE_LOST, STEAD_MOVE_GIVEN };

static const char *
move_label (SteadMoveKind kind)
{
  switch (kind)
    {
    case STEAD_MOVE_RECEIVED:
      return _("came");
    case STEAD_MOVE_MADE:
      return _("made");
    case STEAD_MOVE_USED:
      return _("used");
    case STEAD_MOVE_SOLD:
      return _("sold");
    case STEAD_MOVE_GIVEN:
      return _("given away");
    case STEAD_MOVE_LOST:
      return _("lost or spoiled");
    case STEAD_MOVE_COUNTED:
      return _("counted");
    case STEAD_MOVE_CORRECTED:
      return _("corrected");
    default:
      g_return_val_if_reached (NULL);
    }
}

static const SteadMove *
move_of (gpointer item)
{
  return stead_row_get (item);
}

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (move_of (item)->day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
kind_text (gpointer item,
           gpointer data)
{
  return g_strdup (move_label (move_of (item)->kind));
}

static char *
quantity_text (gpointer item,
               gpointer data)
{
  return stead_quantity_format (move_of (item)->quantity_base, move_of (item)->unit);
}

static char *
cost_text (gpointer item,
           gpointer data)
{
  return stead_money_format (move_of (item)->cost_cents,
                             stead_desk_get_farm (stead_dialog_get_desk (data))->currency);
}

static char *
reason_text (gpointer item,
             gpointer data)
{
  return g_strdup (move_of (item)->reason != NULL ? move_of (item)->reason : "");
}

static void
show_moves (SteadLotDialog *self,
            SteadStore     *store)
{
  GtkWidget *table = stead_table_new (_("What happened to the lot"));
  g_autoptr(GPtrArray) moves = stead_lot_repo_moves (store, self->lot->id, NULL);
  g_autoptr(GListModel) model = NULL;

  stead_table_add_column (STEAD_TABLE (table), _("Day"), FALSE, FALSE, day_text, NULL, NULL, self);
  stead_table_add_column (STEAD_TABLE (table), _("What"), FALSE, FALSE, kind_text, NULL, NULL, self);
  stead_table_add_column (STEAD_TABLE (table), _("Amount"), TRUE, FALSE, quantity_text, NULL, NULL, self);
  stead_table_add_column (STEAD_TABLE (table), _("Cost"), TRUE, FALSE, cost_text, NULL, NULL, self);
  stead_table_add_column (STEAD_TABLE (table), _("Why"), FALSE, TRUE, reason_text, NULL, NULL, self);
  gtk_widget_set_hexpand (table, TRUE);
  gtk_box_append (self->slot, table);
  if (moves != NULL)
    model = stead_rows_from_array (g_steal_pointer (&moves), (GDestroyNotify) stead_move_free);
  stead_table_set_model (STEAD_TABLE (table), model);
}

static void
kind_cb (SteadLotDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->kind);
  gboolean counted = at >= G_N_ELEMENTS (changes) || changes[at] == STEAD_MOVE_COUNTED;

  g_object_set (self->quantity, "label", counted ? _("How much is really there") : _("How much"), NULL);
}

/* What is made or grown here is sold in packs of ours. */
static void
labels_cb (SteadLotDialog *self)
{
  stead_label_dialog_show (GTK_WIDGET (self), stead_dialog_get_desk (STEAD_DIALOG (self)), self->lot);
}

static void
trace_cb (SteadLotDialog *self)
{
  stead_trace_window_show (GTK_WIDGET (self), stead_dialog_get_desk (STEAD_DIALOG (self)), self->lot->id);
}

typedef struct
{
  gint64        lot_id;
  SteadMoveKind kind;
  SteadDay      day;
  double        quantity;
  const char   *reason;
} Change;

static gboolean
change_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  const Change *change = data;

  return stead_lot_repo_adjust (store, change->lot_id, change->kind, change->day, change->quantity,
                                change->reason, 0, error);
}

static gboolean
stead_lot_dialog_save (SteadDialog *dialog,
                       GError     **error)
{
  SteadLotDialog *self = STEAD_LOT_DIALOG (dialog);
  Change change = { .lot_id = self->lot->id };
  guint at = gtk_drop_down_get_selected (self->kind);
  g_autofree char *step = NULL;
  gboolean good = stead_field_read_quantity (self->quantity, NAN, &change.quantity);

  good &= stead_field_read_text (self->reason, &change.reason);
  good &= stead_field_read_day (self->day, STEAD_DAY_NONE, &change.day);
  if (!good || at >= G_N_ELEMENTS (changes))
    return FALSE;
  change.kind = changes[at];
  change.quantity = change.kind == STEAD_MOVE_COUNTED ? change.quantity - self->lot->on_hand_base : -change.quantity;
  if (fabs (change.quantity) < 1e-9)
    {
      stead_field_set_error (self->quantity, change.kind == STEAD_MOVE_COUNTED
                             ? _("That is what the farm has on record: nothing to change.") : _("Enter more than zero."));
      return FALSE;
    }
  /* Translators: a lot's code, then what happened to it: "lot F26062-1 counted" */
  step = g_strdup_printf (_("lot %s %s"), self->lot->code, move_label (change.kind));
  return stead_desk_act (stead_dialog_get_desk (dialog), step, change_act, &change, error);
}

static void
show_lot (SteadLotDialog *self)
{
  const SteadLot *lot = self->lot;
  g_autofree char *amount = stead_quantity_format (lot->on_hand_base, lot->unit);
  g_autofree char *came = stead_quantity_format (lot->received_base, lot->unit);
  g_autofree char *day = stead_day_format (lot->day, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: an item, an amount that came, a date, a supplier, an amount that is left */
  g_autofree char *text = g_strdup_printf (_("%s: %s came on %s from %s; %s is on hand."), lot->item_name, came, day,
                                           lot->supplier != NULL ? lot->supplier : _("the farm"), amount);
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  gtk_label_set_text (self->about, text);
  gtk_widget_set_visible (self->labels, lot->item_kind == STEAD_ITEM_PRODUCE);
  for (gsize i = 0; i < G_N_ELEMENTS (changes); i++)
    gtk_string_list_append (names, move_label (changes[i]));
  gtk_drop_down_set_model (self->kind, G_LIST_MODEL (names));
  stead_field_set_unit (self->quantity, lot->unit);
}

static void
stead_lot_dialog_dispose (GObject *object)
{
  SteadLotDialog *self = STEAD_LOT_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_LOT_DIALOG);
  g_clear_pointer (&self->lot, stead_lot_free);
  G_OBJECT_CLASS (stead_lot_dialog_parent_class)->dispose (object);
}

static void
stead_lot_dialog_class_init (SteadLotDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_lot_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_lot_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-lot-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadLotDialog, grid);
  gtk_widget_class_bind_template_child (widget_class, SteadLotDialog, about);
  gtk_widget_class_bind_template_child (widget_class, SteadLotDialog, slot);
  gtk_widget_class_bind_template_child (widget_class, SteadLotDialog, kind);
  gtk_widget_class_bind_template_child (widget_class, SteadLotDialog, labels);
  gtk_widget_class_bind_template_child (widget_class, SteadLotDialog, quantity);
  gtk_widget_class_bind_template_child (widget_class, SteadLotDialog, reason);
  gtk_widget_class_bind_template_child (widget_class, SteadLotDialog, day);
  gtk_widget_class_bind_template_callback (widget_class, kind_cb);
  gtk_widget_class_bind_template_callback (widget_class, labels_cb);
  gtk_widget_class_bind_template_callback (widget_class, trace_cb);
}

static void
stead_lot_dialog_init (SteadLotDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* Over everything else: what may not be sold or eaten. */
static void
show_caution (SteadLotDialog *self,
              SteadStore     *store)
{
  g_autofree char *caution = NULL;
  GtkWidget *label;

  if (!stead_wait_lot_caution (store, self->lot, &caution, NULL) || caution == NULL)
    return;
  label = gtk_label_new (caution);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "caution");
  gtk_grid_insert_row (self->grid, 0);
  gtk_grid_attach (self->grid, label, 0, 0, 2, 1);
}

/* (transfer full) (nullable) */
static SteadLot *
find_lot (SteadStore *store,
          gint64      lot_id,
          GError    **error)
{
  g_autoptr(GPtrArray) lots = stead_lot_repo_list (store, TRUE, error);

  for (guint i = 0; lots != NULL && i < lots->len; i++)
    if (((SteadLot *) lots->pdata[i])->id == lot_id)
      return g_steal_pointer (&lots->pdata[i]);
  return NULL;
}

void
stead_lot_dialog_show (GtkWidget *parent,
                       SteadDesk *desk,
                       gint64     lot_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  SteadLot *lot = find_lot (store, lot_id, &error);
  g_autofree char *title = NULL;
  SteadLotDialog *self;

  if (lot == NULL)
    {
      stead_desk_say (desk, error != NULL ? error->message : _("This lot is not there any more."), FALSE);
      return;
    }
  /* Translators: a lot's code follows */
  title = g_strdup_printf (_("Lot %s"), lot->code);
  self = g_object_new (STEAD_TYPE_LOT_DIALOG, "title", title, NULL);
  self->lot = lot;
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, stead_store_get_today (store));
  show_lot (self);
  show_caution (self, store);
  kind_cb (self);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  show_moves (self, store);
}
