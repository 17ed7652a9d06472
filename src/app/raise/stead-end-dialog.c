/* stead-end-dialog.c - a batch is over: on which day, and what is still open. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-end-dialog.h"

#include "answer/stead-batch-end.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"

#define RESOURCE STEAD_UI ("raise/stead-end-dialog.ui")

/* Of the grid: below the figures that they work out. */
#define WHYS_ROW 3

struct _SteadEndDialog
{
  SteadDialog   parent_instance;

  SteadBatch   *batch;
  SteadDay      day;

  SteadField   *field_day;
  GtkLabel     *about, *left;
  GtkGrid      *grid;
  SteadWhyBox  *whys;
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
  gtk_widget_class_bind_template_child (widget_class, SteadEndDialog, grid);
}

static void
stead_end_dialog_init (SteadEndDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_grid_attach (self->grid, stead_why_box_new_folded (&self->whys), 0, WHYS_ROW, 2, 1);
}

void
stead_end_dialog_show (GtkWidget *parent,
                       SteadDesk *desk,
                       gint64     batch_id)
{
  SteadStore *store;
  g_autoptr(SteadBatchEnd) end = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *about = NULL;
  SteadEndDialog *self;

  g_return_if_fail (STEAD_IS_DESK (desk));
  store = stead_desk_get_store (desk);
  g_return_if_fail (store != NULL);
  end = stead_batch_end_new (store, batch_id, &error);
  if (end == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_END_DIALOG, "title", _("End this batch"), NULL);
  self->batch = g_steal_pointer (&end->batch);
  about = g_strdup_printf (_("After this day “%s” takes no more entries, and its review is written. "
                             "It can be taken back."), self->batch->name);
  gtk_label_set_text (self->about, about);
  stead_ui_tell (self->left, end->text);
  stead_why_box_set (self->whys, end->whys);
  stead_field_set_today (self->field_day, stead_store_get_today (store));
  stead_field_show_day (self->field_day, stead_store_get_today (store));
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->field_day));
}
