/* stead-end-dialog.c - a batch is over: on which day, and what is still open. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-end-dialog.h"

#include "answer/stead-batch-answer.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"
#include "store/stead-fish-repo.h"

#define RESOURCE STEAD_UI ("raise/stead-end-dialog.ui")

struct _SteadEndDialog
{
  SteadDialog   parent_instance;

  SteadBatch   *batch;
  SteadDay      day;

  SteadField   *field_day;
  GtkLabel     *about, *left;
};

G_DEFINE_FINAL_TYPE (SteadEndDialog, stead_end_dialog, STEAD_TYPE_DIALOG)

static gboolean
end_act (SteadStore  *store,
         gpointer     data,
         GError     **error)
{
  SteadEndDialog *self = data;

  return stead_batch_repo_end (store, self->batch->id, self->day, error);
}

static gboolean
stead_end_dialog_save (SteadDialog  *dialog,
                       GError      **error)
{
  SteadEndDialog *self = STEAD_END_DIALOG (dialog);
  g_autofree char *step = NULL;

  if (!stead_field_read_day (self->field_day, STEAD_DAY_NONE, &self->day))
    return FALSE;
  if (self->day < self->batch->started_on)
    {
      stead_field_set_error (self->field_day, _("It cannot end before it began."));
      return FALSE;
    }
  /* Translators: name of a step to undo; name of a batch. */
  step = g_strdup_printf (_("end of “%s”"), self->batch->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, end_act, self, error);
}

/* What would be left behind: fish that swim, cost that no lot carries. */
static char *
left_text (SteadStore             *store,
           const SteadBatchAnswer *answer)
{
  const SteadBatch *batch = answer->money.batch;
  GString *text = g_string_new (NULL);
  gint64 left = stead_batch_left_cents (&answer->money.cost);
  gint64 alive = batch->kind == STEAD_BATCH_FISH
                 ? stead_fish_repo_alive (store, batch->id, answer->money.to + 1, NULL) : 0;

  if (alive > 0)
    g_string_append_printf (text, ngettext ("By the log %d fish still swims: enter its harvest, its death or its move first.",
                                            "By the log %d fish still swim: enter their harvest, deaths or move first.",
                                            (gulong) alive), (int) alive);
  if (batch->kind != STEAD_BATCH_FLOCK && answer->money.harvested.good_base > 0 && !answer->money.harvested.is_over
      && left > 0)
    {
      g_autofree char *money = stead_money_format (left, answer->farm->currency);

      if (text->len > 0)
        g_string_append_c (text, ' ');
      g_string_append_printf (text, _("%s of its cost is in no lot. Mark the last harvest as the last, and its lot "
                                      "carries the rest."), money);
    }
  return g_string_free (text, text->len == 0);
}

static void
stead_end_dialog_dispose (GObject *object)
{
  SteadEndDialog *self = STEAD_END_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_END_DIALOG);
  g_clear_pointer (&self->batch, stead_batch_free);
  G_OBJECT_CLASS (stead_end_dialog_parent_class)->dispose (object);
}

static void
stead_end_dialog_class_init (SteadEndDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_end_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_end_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child_full (widget_class, "day", FALSE, G_STRUCT_OFFSET (SteadEndDialog, field_day));
  gtk_widget_class_bind_template_child (widget_class, SteadEndDialog, about);
  gtk_widget_class_bind_template_child (widget_class, SteadEndDialog, left);
}

static void
stead_end_dialog_init (SteadEndDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_end_dialog_show (GtkWidget *parent,
                       SteadDesk *desk,
                       gint64     batch_id)
{
  SteadStore *store;
  g_autoptr(SteadBatchAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *about = NULL;
  g_autofree char *left = NULL;
  SteadEndDialog *self;

  g_return_if_fail (STEAD_IS_DESK (desk));
  store = stead_desk_get_store (desk);
  g_return_if_fail (store != NULL);
  answer = stead_batch_answer_new (store, batch_id, &error);
  if (answer == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_END_DIALOG, "title", _("End this batch"), NULL);
  self->batch = stead_batch_copy (answer->money.batch);
  about = g_strdup_printf (_("After this day “%s” takes no more entries, and its review is written. "
                             "It can be taken back."), self->batch->name);
  left = left_text (store, answer);
  gtk_label_set_text (self->about, about);
  stead_ui_tell (self->left, left);
  stead_field_set_today (self->field_day, stead_store_get_today (store));
  stead_field_show_day (self->field_day, stead_store_get_today (store));
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->field_day));
}
