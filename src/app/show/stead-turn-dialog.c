/* stead-turn-dialog.c - a turn of the rota.  A duty that is not there yet is made with it. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-turn-dialog.h"

#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/show/stead-show-picks.h"
#include "app/show/stead-weekday.h"
#include "app/stead-field.h"
#include "core/stead-clock.h"

struct _SteadTurnDialog
{
  SteadDialog parent_instance;

  gint64      turn_id;   /* 0: new */
  SteadDay    from_on;
  GPtrArray  *groups, *duties;

  SteadPick  *who, *weekday;
  SteadField *duty, *needs, *at;
};

G_DEFINE_FINAL_TYPE (SteadTurnDialog, stead_turn_dialog, STEAD_TYPE_DIALOG)

typedef struct
{
  SteadTurn  turn;
  SteadDuty  duty;
} Saving;

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  Saving *saving = data;

  if (!stead_duty_repo_save (store, &saving->duty, error))
    return FALSE;
  saving->turn.duty_id = saving->duty.id;
  return stead_turn_repo_save (store, &saving->turn, error);
}

static const SteadDuty *
duty_called (SteadTurnDialog *self,
             const char      *name)
{
  for (guint i = 0; i < self->duties->len; i++)
    if (g_str_equal (((SteadDuty *) self->duties->pdata[i])->name, name))
      return self->duties->pdata[i];
  return NULL;
}

static gboolean
read_turn (SteadTurnDialog *self,
           Saving          *saving)
{
  g_autoptr(GError) error = NULL;
  const char *needs = stead_field_get_text (self->needs), *name;
  const SteadGroup *group = stead_show_picks_group (self->groups, stead_pick_get (self->who));
  const SteadDuty *known;

  if (stead_pick_get (self->who) == 0)
    {
      stead_pick_say (self->who, _("Choose whose turn it is."), TRUE);
      return FALSE;
    }
  if (!stead_field_read_text (self->duty, &name))
    return FALSE;
  if (!stead_minute_parse (stead_field_get_text (self->at), &saving->turn.at_minute, &error))
    {
      stead_field_set_error (self->at, error->message);
      return FALSE;
    }
  known = duty_called (self, name);
  saving->duty = (SteadDuty) { .id = known != NULL ? known->id : 0, .name = (char *) name,
                               .needs = *needs != '\0' ? (char *) needs : known != NULL ? known->needs : NULL,
                               .retired_on = STEAD_DAY_NONE };
  saving->turn.group_id = group != NULL ? group->id : 0;
  saving->turn.person_id = group != NULL ? 0 : stead_pick_get (self->who);
  saving->turn.weekday = (int) stead_pick_get (self->weekday);
  return TRUE;
}

static gboolean
stead_turn_dialog_save (SteadDialog  *dialog,
                        GError      **error)
{
  SteadTurnDialog *self = STEAD_TURN_DIALOG (dialog);
  Saving saving = { .turn = { .id = self->turn_id, .to_on = STEAD_DAY_NONE } };
  g_autofree char *step = NULL;

  if (!read_turn (self, &saving))
    return FALSE;
  saving.turn.from_on = self->from_on;
  /* Translators: a step of undo: a duty. */
  step = g_strdup_printf (_("Turn: %s"), saving.duty.name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, &saving, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     id,
            GError     **error)
{
  return stead_turn_repo_remove (store, *(gint64 *) id, error);
}

static gboolean
stead_turn_dialog_remove (SteadDialog  *dialog,
                          GError      **error)
{
  return stead_desk_act (stead_dialog_get_desk (dialog), _("Turn removed"), remove_act,
                         &STEAD_TURN_DIALOG (dialog)->turn_id, error);
}

static void
stead_turn_dialog_dispose (GObject *object)
{
  SteadTurnDialog *self = STEAD_TURN_DIALOG (object);

  g_clear_pointer (&self->groups, g_ptr_array_unref);
  g_clear_pointer (&self->duties, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_turn_dialog_parent_class)->dispose (object);
}

static void
stead_turn_dialog_class_init (SteadTurnDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_turn_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_turn_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_turn_dialog_remove;
}

static void
stead_turn_dialog_init (SteadTurnDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->duty = STEAD_FIELD (stead_field_new (_("Duty"), STEAD_FIELD_TEXT));
  g_object_set (self->duty, "required", TRUE, "hint", _("Feed and water the hens"), NULL);
  self->needs = STEAD_FIELD (stead_field_new (_("Training that it needs, if any"), STEAD_FIELD_TEXT));
  self->who = STEAD_PICK (stead_pick_new (_("Whose turn")));
  self->weekday = STEAD_PICK (stead_pick_new (_("Each")));
  for (int day = 1; day <= 7; day++)
    stead_pick_append (self->weekday, day, stead_weekday_words (day));
  stead_pick_show (self->weekday, 1);
  self->at = STEAD_FIELD (stead_field_new (_("At, if it matters"), STEAD_FIELD_TEXT));
  g_object_set (self->at, "hint", _("7:15 am"), NULL);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->duty));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->needs));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->who));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->weekday));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->at));
  g_object_set (self, "content", box, "default-width", 460, NULL);
}

void
stead_turn_dialog_show (GtkWidget       *parent,
                        SteadDesk       *desk,
                        const SteadTurn *turn)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadTurnDialog *self = g_object_new (STEAD_TYPE_TURN_DIALOG, "title", turn == NULL ? _("A new turn") : _("Turn"),
                                        "save-label", _("Save"), NULL);

  self->from_on = turn != NULL ? turn->from_on : stead_store_get_today (store);
  self->groups = stead_group_repo_list (store, NULL);
  self->duties = stead_duty_repo_list (store, NULL);
  if (self->duties == NULL)
    self->duties = g_ptr_array_new ();
  stead_show_picks_people (self->who, store, self->groups, turn != NULL ? turn->person_id : 0);
  if (turn != NULL)
    {
      g_autofree char *at = stead_minute_format (turn->at_minute);

      self->turn_id = turn->id;
      stead_field_set_text (self->duty, turn->duty_name);
      stead_field_set_text (self->needs, turn->needs != NULL ? turn->needs : "");
      stead_field_set_text (self->at, at);
      stead_pick_show (self->who, turn->group_id != 0 ? -turn->group_id : turn->person_id);
      stead_pick_show (self->weekday, turn->weekday);
      g_object_set (self, "delete-label", _("Remove"), NULL);
    }
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}
