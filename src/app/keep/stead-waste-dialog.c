/* stead-waste-dialog.c - part of a lot is thrown out or given away.
 *
 * A usual reason is one choice away, so that waste can be summed up by its reasons;
 * anything else is told in a person's own words.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/keep/stead-waste-dialog.h"

#include "app/keep/stead-cash-picks.h"
#include "app/stead-ui.h"

struct _SteadWasteDialog
{
  SteadDialog    parent_instance;

  SteadLot      *lot;
  SteadMoveKind  kind;

  GtkLabel      *about;
  SteadField    *quantity, *reason, *day;
  SteadPick     *usual, *person;
};

G_DEFINE_FINAL_TYPE (SteadWasteDialog, stead_waste_dialog, STEAD_TYPE_DIALOG)

/* The choice of other words than these. */
#define OWN_WORDS 0

static const char * const lost[] = {
  N_("Past its best-by day"),
  N_("Spoiled or moldy"),
  N_("Broken or spilled"),
  N_("Eaten by mice or insects"),
  N_("Kept too warm or too long: thrown out to be safe"),
};

static const char * const given[] = {
  N_("Given to the food pantry"),
  N_("Given to the school kitchen"),
  N_("Given to those who helped"),
  N_("Given out to taste"),
};

static void
usual_cb (SteadWasteDialog *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->reason), stead_pick_get (self->usual) == OWN_WORDS);
}

/* --- saving -------------------------------------------------------------------------- */

typedef struct
{
  gint64         lot_id;
  SteadMoveKind  kind;
  SteadDay       day;
  double         base;
  const char    *reason;
  gint64         person_id;
} Leaving;

static gboolean
leave_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  const Leaving *leaving = data;

  return stead_lot_repo_adjust (store, leaving->lot_id, leaving->kind, leaving->day, -leaving->base, leaving->reason,
                                leaving->person_id, error);
}

static gboolean
read_leaving (SteadWasteDialog *self,
              SteadStore       *store,
              Leaving          *out)
{
  gboolean good = stead_field_read_quantity (self->quantity, 0, &out->base);

  good &= stead_field_read_day (self->day, STEAD_DAY_NONE, &out->day);
  out->reason = stead_pick_get_text (self->usual);
  if (stead_pick_get (self->usual) == OWN_WORDS)
    good &= stead_field_read_text (self->reason, &out->reason);
  if (!good)
    return FALSE;
  if (!(out->base > 0))
    {
      stead_field_set_error (self->quantity, _("Enter more than zero."));
      return FALSE;
    }
  if (out->base > self->lot->on_hand_base + 1e-6)
    {
      g_autofree char *there = stead_quantity_format (self->lot->on_hand_base, self->lot->unit);
      g_autofree char *text = g_strdup_printf (_("Only %s is left of this lot."), there);

      stead_field_set_error (self->quantity, text);
      return FALSE;
    }
  return stead_cash_picks_check_day (self->day, store, out->day);
}

static gboolean
stead_waste_dialog_save (SteadDialog  *dialog,
                         GError      **error)
{
  SteadWasteDialog *self = STEAD_WASTE_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  Leaving leaving = { .lot_id = self->lot->id, .kind = self->kind, .person_id = stead_pick_get (self->person) };
  g_autofree char *amount = NULL, *step = NULL;

  if (!read_leaving (self, stead_desk_get_store (desk), &leaving))
    return FALSE;
  amount = stead_quantity_format (leaving.base, self->lot->unit);
  /* Translators: steps of undo: an amount and a thing. */
  step = g_strdup_printf (self->kind == STEAD_MOVE_LOST ? _("waste: %s of %s") : _("gift: %s of %s"),
                          amount, self->lot->item_name);
  return stead_desk_act (desk, step, leave_act, &leaving, error);
}

/* --- showing ------------------------------------------------------------------------------ */

static void
stead_waste_dialog_dispose (GObject *object)
{
  SteadWasteDialog *self = STEAD_WASTE_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_WASTE_DIALOG);
  g_clear_pointer (&self->lot, stead_lot_free);
  G_OBJECT_CLASS (stead_waste_dialog_parent_class)->dispose (object);
}

static void
stead_waste_dialog_class_init (SteadWasteDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_waste_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_waste_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-waste-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadWasteDialog, about);
  gtk_widget_class_bind_template_child (widget_class, SteadWasteDialog, quantity);
  gtk_widget_class_bind_template_child (widget_class, SteadWasteDialog, reason);
  gtk_widget_class_bind_template_child (widget_class, SteadWasteDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadWasteDialog, usual);
  gtk_widget_class_bind_template_child (widget_class, SteadWasteDialog, person);
  gtk_widget_class_bind_template_callback (widget_class, usual_cb);
}

static void
stead_waste_dialog_init (SteadWasteDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
fill_reasons (SteadWasteDialog *self)
{
  const char * const *words = self->kind == STEAD_MOVE_LOST ? lost : given;
  gsize n = self->kind == STEAD_MOVE_LOST ? G_N_ELEMENTS (lost) : G_N_ELEMENTS (given);

  for (gsize i = 0; i < n; i++)
    stead_pick_append (self->usual, (gint64) i + 1, _(words[i]));
  stead_pick_append (self->usual, OWN_WORDS, _("In other words…"));
  stead_pick_show (self->usual, 1);
}

void
stead_waste_dialog_show (GtkWidget     *parent,
                         SteadDesk     *desk,
                         gint64         lot_id,
                         SteadMoveKind  kind)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  SteadLot *lot = stead_lot_repo_get (store, lot_id, &error);
  g_autofree char *amount = NULL, *text = NULL;
  SteadWasteDialog *self;

  g_return_if_fail (kind == STEAD_MOVE_LOST || kind == STEAD_MOVE_GIVEN);

  if (lot == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_WASTE_DIALOG, "title", kind == STEAD_MOVE_LOST ? _("Waste") : _("Give away"),
                       "save-label", kind == STEAD_MOVE_LOST ? _("Record waste") : _("Record gift"), NULL);
  self->lot = lot;
  self->kind = kind;
  amount = stead_quantity_format (lot->on_hand_base, lot->unit);
  /* Translators: a thing, its lot code, an amount. */
  text = g_strdup_printf (_("%s, lot %s: %s is on hand."), lot->item_name, lot->code, amount);
  gtk_label_set_text (self->about, text);
  stead_field_set_unit (self->quantity, lot->unit);
  stead_field_show_quantity (self->quantity, lot->on_hand_base);
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, stead_store_get_today (store));
  stead_cash_picks_people (self->person, store, 0);
  fill_reasons (self);
  usual_cb (self);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->quantity));
}
