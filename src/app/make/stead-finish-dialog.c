/* stead-finish-dialog.c - what came out of a kitchen batch: good, spoiled, tasted. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/make/stead-finish-dialog.h"

#include "answer/stead-kitchen-answer.h"
#include "answer/stead-recipe-answer.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-store-watch.h"

struct _SteadFinishDialog
{
  SteadDialog         parent_instance;

  SteadKitchenAnswer *answer;
  SteadHarvest       *harvest;   /* what is written; of its own */

  SteadField         *day, *good, *lost, *reason, *tasted, *best_by, *note;
  GtkLabel           *missing, *caution;
};

G_DEFINE_FINAL_TYPE (SteadFinishDialog, stead_finish_dialog, STEAD_TYPE_DIALOG)

/* --- reading --------------------------------------------------------------------------- */

/* The reason is asked for as soon as something is lost. */
static void
typed_cb (SteadFinishDialog *self)
{
  double lost = 0;

  if (self->answer == NULL)
    return;
  gtk_widget_set_visible (GTK_WIDGET (self->reason),
                          stead_make_peek (stead_field_get_text (self->lost), self->answer->kitchen->item_unit, &lost)
                          && lost > 0);
}

static char *
typed (SteadField *field)
{
  return stead_field_is_empty (field) ? NULL : g_strdup (stead_field_get_text (field));
}

static gboolean
check (SteadFinishDialog *self)
{
  const SteadHarvest *harvest = self->harvest;

  if (harvest->day > stead_store_get_today (stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self)))))
    stead_field_set_error (self->day, _("That day is still to come. Finish it on the day."));
  else if (!(harvest->quantity_base > 0) && !(harvest->lost_base > 0))
    stead_field_set_error (self->good, _("Enter how much came out: good, or spoiled."));
  else if (harvest->lost_base > 0 && stead_field_is_empty (self->reason))
    stead_field_set_error (self->reason, _("Write down why, so that others can learn from it."));
  else if (harvest->best_by != STEAD_DAY_NONE && harvest->best_by < harvest->day)
    stead_field_set_error (self->best_by, _("The best-by day lies before the day it was made. Check both."));
  else
    return TRUE;
  return FALSE;
}

static gboolean
read_harvest (SteadFinishDialog *self)
{
  SteadHarvest *harvest = self->harvest;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &harvest->day);

  good &= stead_field_read_quantity (self->good, 0, &harvest->quantity_base);
  good &= stead_field_read_quantity (self->lost, 0, &harvest->lost_base);
  good &= stead_field_read_quantity (self->tasted, 0, &harvest->tasted_base);
  good &= stead_field_read_day (self->best_by, STEAD_DAY_NONE, &harvest->best_by);
  if (!good || !check (self))
    return FALSE;
  g_free (harvest->reason);
  harvest->reason = harvest->lost_base > 0 ? typed (self->reason) : NULL;
  g_free (harvest->note);
  harvest->note = typed (self->note);
  return TRUE;
}

/* --- saving ------------------------------------------------------------------------------ */

static gboolean
finish_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  SteadHarvest *harvest = data;

  stead_store_watch_id (store, &harvest->id);
  stead_store_watch_id (store, &harvest->lot_id);
  return stead_kitchen_repo_finish (store, harvest, error);
}

static gboolean
stead_finish_dialog_save (SteadDialog *dialog,
                          GError     **error)
{
  SteadFinishDialog *self = STEAD_FINISH_DIALOG (dialog);
  const SteadKitchen *kitchen = self->answer->kitchen;
  g_autofree char *amount = NULL, *step = NULL;

  if (!read_harvest (self))
    return FALSE;
  amount = stead_recipe_amount (self->harvest->quantity_base, kitchen->item_unit, kitchen->item_name);
  /* Translators: a step that can be undone: an amount, the name of a kitchen batch */
  step = g_strdup_printf (_("%s out of “%s”"), amount, kitchen->batch.name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, finish_act, self->harvest, error);
}

/* --- the object --------------------------------------------------------------------------- */

static void
stead_finish_dialog_dispose (GObject *object)
{
  SteadFinishDialog *self = STEAD_FINISH_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_FINISH_DIALOG);
  g_clear_pointer (&self->answer, stead_kitchen_answer_free);
  g_clear_pointer (&self->harvest, stead_harvest_free);
  G_OBJECT_CLASS (stead_finish_dialog_parent_class)->dispose (object);
}

static void
stead_finish_dialog_class_init (SteadFinishDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_finish_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_finish_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("make/stead-finish-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadFinishDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadFinishDialog, good);
  gtk_widget_class_bind_template_child (widget_class, SteadFinishDialog, lost);
  gtk_widget_class_bind_template_child (widget_class, SteadFinishDialog, reason);
  gtk_widget_class_bind_template_child (widget_class, SteadFinishDialog, tasted);
  gtk_widget_class_bind_template_child (widget_class, SteadFinishDialog, best_by);
  gtk_widget_class_bind_template_child (widget_class, SteadFinishDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadFinishDialog, missing);
  gtk_widget_class_bind_template_child (widget_class, SteadFinishDialog, caution);
  gtk_widget_class_bind_template_callback (widget_class, typed_cb);
}

static void
stead_finish_dialog_init (SteadFinishDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* --- opening -------------------------------------------------------------------------------- */

static void
show_amount (SteadField *field,
             double      base)
{
  if (base > 0)
    stead_field_show_quantity (field, base);
}

static void
show_harvest (SteadFinishDialog *self)
{
  const SteadHarvest *harvest = self->harvest;
  const SteadUnit *unit = self->answer->kitchen->item_unit;
  const SteadUnit *shown = g_str_equal (unit->id, "ea") ? NULL : unit;

  stead_field_set_unit (self->good, shown);
  stead_field_set_unit (self->lost, shown);
  stead_field_set_unit (self->tasted, shown);
  stead_field_show_day (self->day, harvest->day);
  show_amount (self->good, harvest->quantity_base);
  show_amount (self->lost, harvest->lost_base);
  show_amount (self->tasted, harvest->tasted_base);
  stead_field_set_text (self->reason, harvest->reason != NULL ? harvest->reason : "");
  stead_field_set_text (self->note, harvest->note != NULL ? harvest->note : "");
  if (harvest->best_by != STEAD_DAY_NONE)
    stead_field_show_day (self->best_by, harvest->best_by);
  stead_make_say (self->missing, self->answer->all_taken ? NULL
                  : _("Not all ingredients were taken out of the store room: the lot will cost less than it should."), FALSE);
  stead_make_say (self->caution, self->answer->caution, FALSE);
  typed_cb (self);
}

/* The day on which it is most likely finished: today, or the kitchen day of one entered later. */
static SteadHarvest *
new_harvest (const SteadKitchenAnswer *answer,
             SteadDay                  today,
             gint64                    person_id)
{
  SteadHarvest *harvest = stead_harvest_new ();

  harvest->batch_id = answer->kitchen->batch.id;
  harvest->day = answer->kitchen->batch.started_on < today - 1 ? answer->kitchen->batch.started_on : today;
  harvest->person_id = person_id;
  return harvest;
}

void
stead_finish_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     batch_id,
                          gint64     person_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadKitchenAnswer) answer = stead_kitchen_answer_new (store, batch_id, &error);
  SteadFinishDialog *self;

  if (answer == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_FINISH_DIALOG, "title", _("What came out"), NULL);
  self->harvest = answer->harvest != NULL ? g_steal_pointer (&answer->harvest)
                                          : new_harvest (answer, stead_store_get_today (store), person_id);
  self->answer = g_steal_pointer (&answer);
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_set_today (self->best_by, stead_store_get_today (store));
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  show_harvest (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->good));
}
