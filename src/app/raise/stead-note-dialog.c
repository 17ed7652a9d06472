/* stead-note-dialog.c - a note on a batch, with a picture.
 *
 * The picture is made small in a thread; the note can be saved once it is.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-note-dialog.h"

#include "app/stead-field.h"
#include "app/stead-files.h"
#include "app/stead-picture.h"
#include "app/stead-ui.h"
#include "store/stead-batch-repo.h"
#include "store/stead-store-watch.h"

#define RESOURCE STEAD_UI ("raise/stead-note-dialog.ui")

struct _SteadNoteDialog
{
  SteadDialog      parent_instance;

  SteadBatch      *batch;
  SteadBatchNote  *note;        /* as on file, or a new one */
  SteadPicture    *chosen;      /* (nullable): to be added */
  GCancellable    *reading;     /* (nullable): a picture is on its way */

  SteadField      *day;
  GtkTextView     *text;
  GtkPicture      *picture;
  GtkWidget       *choose, *drop;
  GtkSpinner      *spinner;
  GtkLabel        *trouble;
};

G_DEFINE_FINAL_TYPE (SteadNoteDialog, stead_note_dialog, STEAD_TYPE_DIALOG)

/* --- the picture ---------------------------------------------------------------------- */

static void
show_trouble (SteadNoteDialog *self,
              const char      *text)
{
  stead_ui_tell (self->trouble, text);
}

static void
show_picture (SteadNoteDialog *self,
              GBytes          *jpeg)
{
  g_autoptr(GdkTexture) texture = jpeg != NULL ? gdk_texture_new_from_bytes (jpeg, NULL) : NULL;

  gtk_picture_set_paintable (self->picture, GDK_PAINTABLE (texture));
  gtk_widget_set_visible (GTK_WIDGET (self->picture), texture != NULL);
  gtk_widget_set_visible (self->drop, texture != NULL);
}

static void
set_reading (SteadNoteDialog *self,
             GCancellable    *reading)
{
  g_set_object (&self->reading, reading);
  gtk_widget_set_sensitive (self->choose, reading == NULL);
  if (reading != NULL)
    gtk_spinner_start (self->spinner);
  else
    gtk_spinner_stop (self->spinner);
}

static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  g_autoptr(SteadNoteDialog) self = data;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPicture) picture = stead_picture_read_finish (result, &error);

  /* A dialog that was closed meanwhile has nothing left to show it in. */
  if (self->reading == NULL || g_task_get_cancellable (G_TASK (result)) != self->reading)
    return;
  set_reading (self, NULL);
  if (picture == NULL)
    {
      show_trouble (self, error->message);
      return;
    }
  show_trouble (self, NULL);
  show_picture (self, picture->jpeg);
  g_clear_pointer (&self->chosen, stead_picture_free);
  self->chosen = g_steal_pointer (&picture);
}

static void
chosen_cb (const char *path,
           gpointer    data)
{
  g_autoptr(SteadNoteDialog) self = data;
  g_autoptr(GCancellable) reading = NULL;

  if (path == NULL || self->note == NULL)
    return;
  reading = g_cancellable_new ();
  set_reading (self, reading);
  show_trouble (self, NULL);
  stead_picture_read_async (path, reading, read_cb, g_object_ref (self));
}

static void
choose_cb (SteadNoteDialog *self)
{
  stead_files_open (GTK_WIDGET (self), _("Choose a picture"), NULL, NULL, chosen_cb, g_object_ref (self));
}

static void
drop_cb (SteadNoteDialog *self)
{
  gtk_widget_grab_focus (self->choose);
  g_clear_pointer (&self->chosen, stead_picture_free);
  self->note->picture_id = 0;
  show_picture (self, NULL);
}

void
stead_note_dialog_take_picture (SteadNoteDialog *self,
                                const char      *path)
{
  g_return_if_fail (STEAD_IS_NOTE_DIALOG (self) && path != NULL);
  chosen_cb (path, g_object_ref (self));
}

/* --- saving ------------------------------------------------------------------------------ */

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadNoteDialog *self = data;

  stead_store_watch_id (store, &self->note->id);
  stead_store_watch_id (store, &self->note->picture_id);
  if (self->chosen != NULL)
    {
      gint64 id = stead_picture_repo_add (store, self->chosen->jpeg, self->chosen->width, self->chosen->height, error);

      if (id == 0)
        return FALSE;
      self->note->picture_id = id;
    }
  return stead_batch_repo_save_note (store, self->note, error);
}

static gboolean
stead_note_dialog_save (SteadDialog  *dialog,
                        GError      **error)
{
  SteadNoteDialog *self = STEAD_NOTE_DIALOG (dialog);
  g_autofree char *step = NULL;

  if (!stead_field_read_day (self->day, STEAD_DAY_NONE, &self->note->day))
    return FALSE;
  if (self->reading != NULL)
    {
      show_trouble (self, _("The picture is still being read. Save again in a moment."));
      return FALSE;
    }
  g_free (self->note->text);
  self->note->text = stead_ui_read_lines (self->text);
  /* Translators: name of a step to undo; name of a batch. */
  step = g_strdup_printf (_("note on “%s”"), self->batch->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, self, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_batch_repo_delete_note (store, ((SteadBatchNote *) data)->id, error);
}

static gboolean
stead_note_dialog_remove (SteadDialog  *dialog,
                          GError      **error)
{
  SteadNoteDialog *self = STEAD_NOTE_DIALOG (dialog);
  g_autofree char *step = g_strdup_printf (_("deleting a note on “%s”"), self->batch->name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->note, error);
}

/* --- showing -------------------------------------------------------------------------------- */

static void
stead_note_dialog_dispose (GObject *object)
{
  SteadNoteDialog *self = STEAD_NOTE_DIALOG (object);

  if (self->reading != NULL)
    g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_NOTE_DIALOG);
  g_clear_pointer (&self->chosen, stead_picture_free);
  g_clear_pointer (&self->note, stead_batch_note_free);
  g_clear_pointer (&self->batch, stead_batch_free);
  G_OBJECT_CLASS (stead_note_dialog_parent_class)->dispose (object);
}

static void
stead_note_dialog_class_init (SteadNoteDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_note_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_note_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_note_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadNoteDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadNoteDialog, text);
  gtk_widget_class_bind_template_child (widget_class, SteadNoteDialog, picture);
  gtk_widget_class_bind_template_child (widget_class, SteadNoteDialog, choose);
  gtk_widget_class_bind_template_child (widget_class, SteadNoteDialog, drop);
  gtk_widget_class_bind_template_child (widget_class, SteadNoteDialog, spinner);
  gtk_widget_class_bind_template_child (widget_class, SteadNoteDialog, trouble);
  gtk_widget_class_bind_template_callback (widget_class, choose_cb);
  gtk_widget_class_bind_template_callback (widget_class, drop_cb);
}

static void
stead_note_dialog_init (SteadNoteDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  show_trouble (self, NULL);
}

static SteadBatchNote *
find_note (SteadStore *store,
           gint64      batch_id,
           gint64      id)
{
  g_autoptr(GPtrArray) all = id != 0 ? stead_batch_repo_notes (store, batch_id, NULL) : NULL;
  SteadBatchNote *note;

  for (guint i = 0; all != NULL && i < all->len; i++)
    if (((SteadBatchNote *) all->pdata[i])->id == id)
      return g_ptr_array_steal_index (all, i);
  note = g_new0 (SteadBatchNote, 1);
  note->batch_id = batch_id;
  note->day = stead_store_get_today (store);
  return note;
}

SteadNoteDialog *
stead_note_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     batch_id,
                        gint64     note_id)
{
  SteadStore *store;
  g_autoptr(SteadBatch) batch = NULL;
  g_autoptr(GBytes) jpeg = NULL;
  g_autoptr(GError) error = NULL;
  SteadNoteDialog *self;

  g_return_val_if_fail (STEAD_IS_DESK (desk), NULL);
  store = stead_desk_get_store (desk);
  g_return_val_if_fail (store != NULL, NULL);
  batch = stead_batch_repo_get (store, batch_id, &error);
  if (batch == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return NULL;
    }
  self = g_object_new (STEAD_TYPE_NOTE_DIALOG, "title", note_id == 0 ? _("Note") : _("Change the note"),
                       "delete-label", note_id != 0 ? _("Delete the note") : NULL, NULL);
  self->batch = g_steal_pointer (&batch);
  self->note = find_note (store, batch_id, note_id);
  if (self->note->picture_id != 0)
    jpeg = stead_picture_repo_get (store, self->note->picture_id, NULL);
  show_picture (self, jpeg);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->text), self->note->text != NULL ? self->note->text : "", -1);
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, self->note->day);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->text));
  return self;
}
