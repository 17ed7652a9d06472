/* stead-hours-check-dialog.c - an advisor checks hours, which freezes them. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-hours-check-dialog.h"

#include "answer/stead-hours-answer.h"
#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/show/stead-show-picks.h"

struct _SteadHoursCheckDialog
{
  SteadDialog parent_instance;

  SteadDay    from, to;
  gint64      person_id;

  GtkLabel   *about;
  SteadPick  *advisor;
};

G_DEFINE_FINAL_TYPE (SteadHoursCheckDialog, stead_hours_check_dialog, STEAD_TYPE_DIALOG)

typedef struct
{
  SteadDay from, to;
  gint64   person_id, advisor_id;
  int      n;
} Checking;

static gboolean
check_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  Checking *checking = data;

  return stead_work_repo_check (store, checking->from, checking->to, checking->person_id, checking->advisor_id,
                                &checking->n, error);
}

static gboolean
stead_hours_check_dialog_save (SteadDialog  *dialog,
                               GError      **error)
{
  SteadHoursCheckDialog *self = STEAD_HOURS_CHECK_DIALOG (dialog);
  Checking checking = { self->from, self->to, self->person_id, stead_pick_get (self->advisor), 0 };

  if (checking.advisor_id == 0)
    {
      stead_pick_say (self->advisor, _("An advisor is entered among the people first."), TRUE);
      return FALSE;
    }
  return stead_desk_act (stead_dialog_get_desk (dialog), _("Hours checked"), check_act, &checking, error);
}

static void
stead_hours_check_dialog_class_init (SteadHoursCheckDialogClass *klass)
{
  STEAD_DIALOG_CLASS (klass)->save = stead_hours_check_dialog_save;
}

static void
stead_hours_check_dialog_init (SteadHoursCheckDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->about = GTK_LABEL (stead_make_label ("", "sentence"));
  gtk_label_set_use_markup (self->about, TRUE);
  self->advisor = STEAD_PICK (stead_pick_new (_("Checked by")));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->about));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->advisor));
  gtk_box_append (GTK_BOX (box), stead_make_label (_("What is checked stays as it is: nobody can change it or undo it, not "
                                                     "even this step. A mistake found later is mended by a correction "
                                                     "beside it."), NULL));
  g_object_set (self, "content", box, "default-width", 560, NULL);
}

void
stead_hours_check_dialog_show (GtkWidget *parent,
                               SteadDesk *desk,
                               SteadDay   from,
                               SteadDay   to,
                               gint64     person_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadHoursAnswer) answer = stead_hours_answer_new (store, from, to, person_id, &error);
  SteadHoursCheckDialog *self;

  if (answer == NULL || answer->n_unchecked == 0)
    {
      stead_desk_say (desk, answer == NULL ? error->message : _("Nothing is to be checked in this week."), FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_HOURS_CHECK_DIALOG, "title", _("Check hours"), "save-label", _("Check them all"), NULL);
  self->from = from;
  self->to = to;
  self->person_id = person_id;
  gtk_label_set_markup (self->about, answer->sentence);
  stead_show_picks_advisors (self->advisor, store);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}
