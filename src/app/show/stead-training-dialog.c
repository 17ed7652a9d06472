/* stead-training-dialog.c - a training that was given: of what, to whom, and until when it holds. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-turn-dialog.h"

#include "app/keep/stead-pick.h"
#include "app/show/stead-show-picks.h"
#include "app/stead-field.h"

struct _SteadTrainingDialog
{
  SteadDialog parent_instance;

  gint64      training_id;   /* 0: new */

  SteadPick  *who, *given_by;
  SteadField *subject, *given_on, *until_on, *note;
};

G_DEFINE_FINAL_TYPE (SteadTrainingDialog, stead_training_dialog, STEAD_TYPE_DIALOG)

static gboolean
save_act (SteadStore  *store,
          gpointer     training,
          GError     **error)
{
  return stead_training_repo_save (store, training, error);
}

static gboolean
stead_training_dialog_save (SteadDialog  *dialog,
                            GError      **error)
{
  SteadTrainingDialog *self = STEAD_TRAINING_DIALOG (dialog);
  SteadTraining training = { .id = self->training_id, .person_id = stead_pick_get (self->who),
                             .given_by = stead_pick_get (self->given_by) };
  g_autofree char *step = NULL;
  const char *subject;

  stead_pick_say (self->who, NULL, FALSE);
  if (training.person_id == 0)
    {
      stead_pick_say (self->who, _("Choose who was trained."), TRUE);
      return FALSE;
    }
  if (!stead_field_read_text (self->subject, &subject) ||
      !stead_field_read_day (self->given_on, STEAD_DAY_NONE, &training.given_on) ||
      !stead_field_read_day (self->until_on, STEAD_DAY_NONE, &training.until_on))
    return FALSE;
  if (training.until_on != STEAD_DAY_NONE && training.until_on < training.given_on)
    {
      stead_field_set_error (self->until_on, _("A training ends on or after the day on which it was given."));
      return FALSE;
    }
  training.subject = (char *) subject;
  training.note = (char *) stead_field_get_text (self->note);
  /* Translators: a step of undo: what somebody was trained for. */
  step = g_strdup_printf (_("Training: %s"), subject);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, &training, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     id,
            GError     **error)
{
  return stead_training_repo_remove (store, *(gint64 *) id, error);
}

static gboolean
stead_training_dialog_remove (SteadDialog  *dialog,
                              GError      **error)
{
  return stead_desk_act (stead_dialog_get_desk (dialog), _("Training removed"), remove_act,
                         &STEAD_TRAINING_DIALOG (dialog)->training_id, error);
}

static void
stead_training_dialog_class_init (SteadTrainingDialogClass *klass)
{
  STEAD_DIALOG_CLASS (klass)->save = stead_training_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_training_dialog_remove;
}

static gpointer
add_field (GtkWidget      *box,
           const char     *label,
           SteadFieldKind  kind,
           gboolean        required)
{
  GtkWidget *field = stead_field_new (label, kind);

  g_object_set (field, "required", required, NULL);
  gtk_box_append (GTK_BOX (box), field);
  return field;
}

static void
stead_training_dialog_init (SteadTrainingDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->who = STEAD_PICK (stead_pick_new (_("Who was trained")));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->who));
  self->subject = add_field (box, _("For which tool or task"), STEAD_FIELD_TEXT, TRUE);
  self->given_on = add_field (box, _("Given on"), STEAD_FIELD_DAY, TRUE);
  self->until_on = add_field (box, _("Holds until, if it ends"), STEAD_FIELD_DAY, FALSE);
  self->given_by = STEAD_PICK (stead_pick_new (_("Given by")));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->given_by));
  self->note = add_field (box, _("Note"), STEAD_FIELD_TEXT, FALSE);
  g_object_set (self, "content", box, "default-width", 460, NULL);
}

/* (transfer full) (nullable) */
static SteadTraining *
find_training (SteadStore *store,
               gint64      training_id)
{
  g_autoptr(GPtrArray) trainings = stead_training_repo_list (store, 0, NULL);

  for (guint i = 0; trainings != NULL && i < trainings->len; i++)
    if (((SteadTraining *) trainings->pdata[i])->id == training_id)
      return g_ptr_array_steal_index (trainings, i);
  return NULL;
}

void
stead_training_dialog_show (GtkWidget *parent,
                            SteadDesk *desk,
                            gint64     training_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(SteadTraining) training = find_training (store, training_id);
  SteadTrainingDialog *self = g_object_new (STEAD_TYPE_TRAINING_DIALOG, "title",
                                            training == NULL ? _("A new training") : _("Training"),
                                            "save-label", _("Save"), NULL);
  SteadDay today = stead_store_get_today (store);

  stead_show_picks_people (self->who, store, NULL, training != NULL ? training->person_id : 0);
  stead_show_picks_people (self->given_by, store, NULL, training != NULL ? training->given_by : 0);
  stead_field_set_today (self->given_on, today);
  stead_field_set_today (self->until_on, today);
  stead_field_show_day (self->given_on, training != NULL ? training->given_on : today);
  if (training != NULL)
    {
      self->training_id = training->id;
      stead_field_set_text (self->subject, training->subject);
      stead_field_set_text (self->note, training->note != NULL ? training->note : "");
      if (training->until_on != STEAD_DAY_NONE)
        stead_field_show_day (self->until_on, training->until_on);
      g_object_set (self, "delete-label", _("Remove"), NULL);
    }
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}
