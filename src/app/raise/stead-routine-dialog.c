/* stead-routine-dialog.c - the tasks of one batch or one water; all of them are saved as
 * one step.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-routine-dialog.h"

#include "app/raise/stead-routine-row.h"
#include "app/stead-ui.h"
#include "store/stead-routine-repo.h"

#define RESOURCE STEAD_UI ("raise/stead-routine-dialog.ui")

struct _SteadRoutineDialog
{
  SteadDialog  parent_instance;

  gint64       batch_id, water_id;
  SteadDay     today;
  GPtrArray   *before;     /* of SteadRoutine: as on file */

  GtkBox      *rows;
};

G_DEFINE_FINAL_TYPE (SteadRoutineDialog, stead_routine_dialog, STEAD_TYPE_DIALOG)

static void
take_off_cb (GtkWidget *row,
             gpointer   data)
{
  SteadRoutineDialog *self = data;

  gtk_box_remove (self->rows, row);
}

static SteadRoutineRow *
add_row (SteadRoutineDialog *self)
{
  GtkWidget *row = stead_routine_row_new (self->batch_id != 0, self->today);

  g_signal_connect (row, "removed", G_CALLBACK (take_off_cb), self);
  gtk_box_append (self->rows, row);
  return STEAD_ROUTINE_ROW (row);
}

static void
add_cb (SteadRoutineDialog *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (add_row (self)));
}

/* --- saving ------------------------------------------------------------------------ */

/* What is saved: the tasks as they stand in the dialog, and those on file. */
typedef struct
{
  GPtrArray *now;
  GPtrArray *before;
} Saving;

static gboolean
is_kept (GPtrArray *now,
         gint64     id)
{
  for (guint i = 0; i < now->len; i++)
    if (((const SteadRoutine *) now->pdata[i])->id == id)
      return TRUE;
  return FALSE;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const Saving *saving = data;

  for (guint i = 0; i < saving->before->len; i++)
    {
      gint64 id = ((const SteadRoutine *) saving->before->pdata[i])->id;

      if (!is_kept (saving->now, id) && !stead_routine_repo_delete (store, id, error))
        return FALSE;
    }
  for (guint i = 0; i < saving->now->len; i++)
    if (!stead_routine_repo_save (store, saving->now->pdata[i], error))
      return FALSE;
  return TRUE;
}

/* Reads every row, so that each one that is wrong says so at once. */
static GPtrArray *
read_rows (SteadRoutineDialog *self)
{
  g_autoptr(GPtrArray) now = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_routine_free);
  gboolean good = TRUE;

  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->rows)); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    {
      SteadRoutine *routine = stead_routine_row_read (STEAD_ROUTINE_ROW (row));

      good &= routine != NULL;
      if (routine == NULL)
        continue;
      routine->batch_id = self->batch_id;
      routine->water_id = self->water_id;
      g_ptr_array_add (now, routine);
    }
  return good ? g_steal_pointer (&now) : NULL;
}

static gboolean
stead_routine_dialog_save (SteadDialog *dialog,
                           GError     **error)
{
  SteadRoutineDialog *self = STEAD_ROUTINE_DIALOG (dialog);
  g_autoptr(GPtrArray) now = read_rows (self);
  Saving saving = { now, self->before };

  return now != NULL && stead_desk_act (stead_dialog_get_desk (dialog), _("changes to a routine"), save_act, &saving, error);
}

/* --- the type ------------------------------------------------------------------------ */

static void
stead_routine_dialog_dispose (GObject *object)
{
  SteadRoutineDialog *self = STEAD_ROUTINE_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_ROUTINE_DIALOG);
  g_clear_pointer (&self->before, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_routine_dialog_parent_class)->dispose (object);
}

static void
stead_routine_dialog_class_init (SteadRoutineDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_routine_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_routine_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadRoutineDialog, rows);
  gtk_widget_class_bind_template_callback (widget_class, add_cb);
}

static void
stead_routine_dialog_init (SteadRoutineDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_routine_dialog_show (GtkWidget *parent,
                           SteadDesk *desk,
                           gint64     batch_id,
                           gint64     water_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) before = NULL;
  SteadRoutineDialog *self;

  g_return_if_fail ((batch_id == 0) != (water_id == 0));

  before = stead_routine_repo_list (store, batch_id, water_id, &error);
  if (before == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_ROUTINE_DIALOG, "title", _("Routine"), "default-width", 760, "default-height", 360, NULL);
  self->batch_id = batch_id;
  self->water_id = water_id;
  self->today = stead_store_get_today (store);
  self->before = g_steal_pointer (&before);
  for (guint i = 0; i < self->before->len; i++)
    stead_routine_row_show (add_row (self), self->before->pdata[i]);
  if (self->before->len == 0)
    add_row (self);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}
