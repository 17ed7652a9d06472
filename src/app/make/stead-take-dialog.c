/* stead-take-dialog.c - something out of one lot, chosen by hand, for a kitchen batch.
 *
 * What expires first stands first.  A lot past its best-by day asks for a reason.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/make/stead-take-dialog.h"

#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"

struct _SteadTakeDialog
{
  SteadDialog  parent_instance;

  GPtrArray   *lots;       /* of SteadKitchenTake */
  gint64       batch_id, person_id;
  SteadDay     day;
  double       need_base;

  SteadPick   *lot;
  SteadField  *amount, *reason;
  GtkLabel    *past;
};

G_DEFINE_FINAL_TYPE (SteadTakeDialog, stead_take_dialog, STEAD_TYPE_DIALOG)

typedef struct
{
  SteadTakeDialog *self;
  gint64           lot_id;
  double           base;
  const char      *reason;   /* (nullable) */
} Take;

static const SteadKitchenTake *
chosen_lot (SteadTakeDialog *self)
{
  gint64 id = stead_pick_get (self->lot);

  for (guint i = 0; i < self->lots->len; i++)
    if (((SteadKitchenTake *) self->lots->pdata[i])->lot_id == id)
      return self->lots->pdata[i];
  return NULL;
}

static void
lot_cb (SteadTakeDialog *self)
{
  const SteadKitchenTake *lot = chosen_lot (self);
  g_autofree char *day = NULL, *text = NULL;

  if (lot == NULL)
    return;
  if (lot->past)
    {
      day = stead_day_format (lot->best_by, STEAD_DAY_STYLE_MEDIUM);
      text = g_strdup_printf (_("Its best-by day, %s, is over. Smell, look and ask an adult before you use it; never use "
                                "food that may be spoiled."), day);
    }
  stead_make_say (self->past, text, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->reason), lot->past);
  stead_field_show_quantity (self->amount, self->need_base > 0 ? MIN (self->need_base, lot->base) : lot->base);
}

static gboolean
take_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const Take *take = data;

  return stead_kitchen_repo_take (store, take->self->batch_id, take->lot_id, take->self->day, take->base, take->reason,
                                  take->self->person_id, error);
}

static gboolean
read_take (SteadTakeDialog        *self,
           const SteadKitchenTake *lot,
           Take                   *take)
{
  g_autofree char *most = NULL, *text = NULL;

  if (!stead_field_read_quantity (self->amount, 0, &take->base))
    return FALSE;
  if (!(take->base > 0))
    {
      stead_field_set_error (self->amount, _("Enter more than zero."));
      return FALSE;
    }
  if (take->base > lot->base * (1 + 1e-9))
    {
      most = stead_quantity_format (lot->base, lot->unit);
      /* Translators: an amount with its unit follows */
      text = g_strdup_printf (_("This lot holds %s. Take so much, or less."), most);
      stead_field_set_error (self->amount, text);
      return FALSE;
    }
  if (lot->past && stead_field_is_empty (self->reason))
    {
      stead_field_set_error (self->reason, _("Write down why it is used all the same, or take another lot."));
      return FALSE;
    }
  take->lot_id = lot->lot_id;
  take->reason = lot->past ? stead_field_get_text (self->reason) : NULL;
  return TRUE;
}

static gboolean
stead_take_dialog_save (SteadDialog *dialog,
                        GError     **error)
{
  SteadTakeDialog *self = STEAD_TAKE_DIALOG (dialog);
  const SteadKitchenTake *lot = chosen_lot (self);
  Take take = { .self = self };
  g_autofree char *amount = NULL, *step = NULL;

  if (lot == NULL || !read_take (self, lot, &take))
    return FALSE;
  amount = stead_quantity_format (take.base, lot->unit);
  /* Translators: an amount with its unit, an item, the code of its lot: "3 doz Eggs out of lot R26-7" */
  step = g_strdup_printf (_("%s %s out of lot %s"), amount, lot->item_name, lot->lot_code);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, take_act, &take, error);
}

static void
stead_take_dialog_dispose (GObject *object)
{
  SteadTakeDialog *self = STEAD_TAKE_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_TAKE_DIALOG);
  g_clear_pointer (&self->lots, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_take_dialog_parent_class)->dispose (object);
}

static void
stead_take_dialog_class_init (SteadTakeDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_take_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_take_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("make/stead-take-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadTakeDialog, lot);
  gtk_widget_class_bind_template_child (widget_class, SteadTakeDialog, amount);
  gtk_widget_class_bind_template_child (widget_class, SteadTakeDialog, reason);
  gtk_widget_class_bind_template_child (widget_class, SteadTakeDialog, past);
  gtk_widget_class_bind_template_callback (widget_class, lot_cb);
}

static void
stead_take_dialog_init (SteadTakeDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static char *
lot_text (const SteadKitchenTake *lot)
{
  g_autofree char *amount = stead_quantity_format (lot->base, lot->unit);
  g_autofree char *came = stead_day_format (lot->day, STEAD_DAY_STYLE_SHORT);
  g_autofree char *best_by = lot->best_by != STEAD_DAY_NONE ? stead_day_format (lot->best_by, STEAD_DAY_STYLE_SHORT) : NULL;

  if (best_by != NULL)
    /* Translators: the code of a lot, a day, an amount: "R26-7, best by Dec 3: 5 doz" */
    return g_strdup_printf (_("%s, best by %s: %s"), lot->lot_code, best_by, amount);
  /* Translators: the code of a lot, a day, an amount */
  return g_strdup_printf (_("%s, came %s: %s"), lot->lot_code, came, amount);
}

void
stead_take_dialog_show (GtkWidget              *parent,
                        SteadDesk              *desk,
                        gint64                  batch_id,
                        const SteadKitchenPart *part,
                        double                  need_base,
                        SteadDay                day,
                        gint64                  person_id)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) lots = stead_kitchen_repo_lots (stead_desk_get_store (desk), part->item_id, day, &error);
  g_autofree char *title = NULL, *none = NULL;
  SteadTakeDialog *self;

  if (lots == NULL || lots->len == 0)
    {
      /* Translators: an item follows */
      none = g_strdup_printf (_("No lot of “%s” is on hand on that day. Enter its receipt in Keep first."), part->item_name);
      stead_desk_say (desk, lots == NULL ? error->message : none, FALSE);
      return;
    }
  /* Translators: title of a dialog; an item follows */
  title = g_strdup_printf (_("Take %s"), part->item_name);
  self = g_object_new (STEAD_TYPE_TAKE_DIALOG, "title", title, NULL);
  self->lots = g_steal_pointer (&lots);
  self->batch_id = batch_id;
  self->person_id = person_id;
  self->day = day;
  self->need_base = need_base;
  stead_field_set_unit (self->amount, part->item_unit);
  for (guint i = 0; i < self->lots->len; i++)
    {
      const SteadKitchenTake *lot = self->lots->pdata[i];
      g_autofree char *text = lot_text (lot);

      stead_pick_append (self->lot, lot->lot_id, text);
    }
  stead_pick_show (self->lot, 0);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  lot_cb (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->amount));
}
