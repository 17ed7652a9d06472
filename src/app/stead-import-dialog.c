/* stead-import-dialog.c - the preview of a CSV, row by row, before anything is taken.
 *
 * Reading and taking run in a worker with a connection of its own, so that the
 * window never stops; both can be stopped, and what is stopped leaves nothing.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-import-dialog.h"

#include "app/stead-files.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"

#define RESOURCE STEAD_UI ("stead-import-dialog.ui")

#define STEAD_TYPE_IMPORT_DIALOG (stead_import_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadImportDialog, stead_import_dialog, STEAD, IMPORT_DIALOG, GtkWindow)

struct _SteadImportDialog
{
  GtkWindow        parent_instance;

  SteadDesk       *desk;
  SteadImportKind  kind;
  gint64           batch_id;
  char            *path;
  SteadImport     *import;       /* (nullable): while it is being read */
  GCancellable    *cancellable;  /* (nullable): of the work under way */

  GtkLabel        *sentence, *reading, *error;
  GtkWidget       *order_box, *save_wrong, *take;
  GtkCheckButton  *order_mdy, *order_dmy, *only_wrong;
  GtkBox          *table_slot;
  GtkProgressBar  *progress;
  SteadTable      *table;
};

G_DEFINE_FINAL_TYPE (SteadImportDialog, stead_import_dialog, GTK_TYPE_WINDOW)

/* What one run of the worker needs; nothing of it is a widget but @progress_of,
 * which only the main thread touches. */
typedef struct
{
  SteadImportKind  kind;
  gint64           batch_id;
  char            *path;         /* of the table */
  char            *farm_path;
  SteadDay         today;        /* that was set, or STEAD_DAY_NONE */
  SteadDateOrder   order;
  SteadImport     *import;       /* taken, not read, if set */
  GWeakRef         progress_of;  /* the dialog */
  double           shown;
} Work;

static void
work_free (gpointer data)
{
  Work *work = data;

  g_free (work->path);
  g_free (work->farm_path);
  g_clear_object (&work->import);
  g_weak_ref_clear (&work->progress_of);
  g_free (work);
}

typedef struct
{
  SteadImportDialog *dialog;   /* (nullable): it may have been closed */
  double             share;
} Progress;

static void
progress_free (gpointer data)
{
  Progress *progress = data;

  g_clear_object (&progress->dialog);
  g_free (progress);
}

static gboolean
progress_idle (gpointer data)
{
  Progress *progress = data;

  if (progress->dialog != NULL && progress->dialog->cancellable != NULL)
    gtk_progress_bar_set_fraction (progress->dialog->progress, progress->share);
  return G_SOURCE_REMOVE;
}

/* Called in the worker, often: the main thread hears of each hundredth part. */
static void
progress_cb (double   share,
             gpointer data)
{
  Work *work = data;
  Progress *progress;

  if (share < work->shown + 0.01)
    return;
  work->shown = share;
  progress = g_new0 (Progress, 1);
  progress->dialog = g_weak_ref_get (&work->progress_of);
  progress->share = share;
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, progress_idle, progress, progress_free);
}

static void
work_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  Work *work = data;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_open (work->farm_path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_autoptr(SteadImport) import = NULL;

  if (store == NULL)
    {
      g_task_return_error (task, g_steal_pointer (&error));
      return;
    }
  stead_store_set_today (store, work->today);
  if (work->import != NULL)
    {
      if (!stead_import_take (work->import, store, cancellable, progress_cb, work, &error))
        g_task_return_error (task, g_steal_pointer (&error));
      else
        g_task_return_boolean (task, TRUE);
      return;
    }
  import = stead_import_read (store, work->kind, work->batch_id, work->path, work->order,
                              cancellable, progress_cb, work, &error);
  if (import == NULL)
    g_task_return_error (task, g_steal_pointer (&error));
  else
    g_task_return_pointer (task, g_steal_pointer (&import), g_object_unref);
}

/* --- the table ----------------------------------------------------------------- */

static const SteadImportRow *
row_of (gpointer item)
{
  return stead_row_get (item);
}

static char *
line_text (gpointer item,
           gpointer data)
{
  return stead_number_format (row_of (item)->line, 0);
}

static char *
state_text (gpointer item,
            gpointer data)
{
  switch (row_of (item)->state)
    {
    case STEAD_ROW_TAKE:
      return g_strdup (_("✓ take"));
    case STEAD_ROW_SKIP:
      return g_strdup (_("– skip"));
    case STEAD_ROW_WRONG:
      return g_strdup (_("✗ wrong"));
    default:
      g_return_val_if_reached (g_strdup (""));
    }
}

static char *
cells_text (gpointer item,
            gpointer data)
{
  return g_strjoinv (" | ", row_of (item)->cells);
}

static char *
judged_text (gpointer item,
             gpointer data)
{
  const SteadImportRow *row = row_of (item);
  const char *text = row->state == STEAD_ROW_TAKE && row->message == NULL ? row->understood : row->message;

  return g_strdup (text != NULL ? text : "");
}

static void
build_table (SteadImportDialog *self)
{
  GtkWidget *table = stead_table_new (_("Rows of the file"));

  self->table = STEAD_TABLE (table);
  stead_table_add_column (self->table, _("Line"), TRUE, FALSE, line_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("What happens"), FALSE, FALSE, state_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("In the file"), FALSE, FALSE, cells_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("As understood"), FALSE, TRUE, judged_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("No rows to show."));
  gtk_widget_set_hexpand (table, TRUE);
  gtk_box_append (self->table_slot, table);
}

/* Rows belong to the import, which outlives the table's model. */
static void
show_rows (SteadImportDialog *self)
{
  gboolean only_wrong = gtk_check_button_get_active (self->only_wrong);
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  g_autoptr(GListModel) model = NULL;

  for (guint i = 0; self->import != NULL && i < stead_import_get_n_rows (self->import); i++)
    {
      const SteadImportRow *row = stead_import_get_row (self->import, i);

      if (!only_wrong || row->state == STEAD_ROW_WRONG)
        g_ptr_array_add (rows, (gpointer) row);
    }
  model = stead_rows_from_array (g_steal_pointer (&rows), NULL);
  stead_table_set_model (self->table, model);
}

/* --- states of the dialog -------------------------------------------------------- */

static void
show_busy (SteadImportDialog *self,
           gboolean           busy)
{
  guint good = self->import != NULL ? stead_import_count (self->import, STEAD_ROW_TAKE) : 0;
  guint wrong = self->import != NULL ? stead_import_count (self->import, STEAD_ROW_WRONG) : 0;
  g_autofree char *label = g_strdup_printf (ngettext ("Take %u row", "Take %u rows", good), good);

  gtk_widget_set_visible (GTK_WIDGET (self->progress), busy);
  gtk_widget_set_sensitive (self->take, !busy && good > 0);
  gtk_widget_set_visible (self->save_wrong, !busy && wrong > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->only_wrong), wrong > 0);
  gtk_widget_set_sensitive (self->order_box, !busy);
  gtk_button_set_label (GTK_BUTTON (self->take), label);
  if (!busy)
    g_clear_object (&self->cancellable);
}

static GTask *
start_work (SteadImportDialog   *self,
            SteadDateOrder       order,
            SteadImport         *import,
            GAsyncReadyCallback  done)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  Work *work = g_new0 (Work, 1);
  GTask *task;

  work->kind = self->kind;
  work->batch_id = self->batch_id;
  work->path = g_strdup (self->path);
  work->farm_path = g_strdup (stead_store_get_path (store));
  work->today = stead_store_get_set_day (store);
  work->order = order;
  work->import = import != NULL ? g_object_ref (import) : NULL;
  g_weak_ref_init (&work->progress_of, self);
  self->cancellable = g_cancellable_new ();
  task = g_task_new (self, self->cancellable, done, NULL);
  g_task_set_task_data (task, work, work_free);
  gtk_progress_bar_set_fraction (self->progress, 0);
  stead_ui_tell (self->error, NULL);
  show_busy (self, TRUE);
  return task;
}

static void
read_done_cb (GObject      *source,
              GAsyncResult *result,
              gpointer      data)
{
  SteadImportDialog *self = STEAD_IMPORT_DIALOG (source);
  g_autoptr(GError) error = NULL;
  SteadImport *import = g_task_propagate_pointer (G_TASK (result), &error);

  if (self->desk == NULL)     /* closed in the meantime */
    {
      g_clear_object (&import);
      return;
    }
  g_clear_object (&self->import);
  self->import = import;
  show_busy (self, FALSE);
  show_rows (self);
  if (import == NULL)
    {
      gtk_label_set_text (self->sentence, _("This file cannot be taken."));
      gtk_label_set_text (self->reading, "");
      stead_ui_tell (self->error, error->message);
      return;
    }
  gtk_label_set_markup (self->sentence, stead_import_get_sentence (import));
  gtk_label_set_text (self->reading, stead_import_get_reading (import));
  if (stead_import_needs_order (import))
    gtk_widget_set_visible (self->order_box, TRUE);
}

static void
start_reading (SteadImportDialog *self,
               SteadDateOrder     order)
{
  g_autoptr(GTask) task = NULL;

  gtk_label_set_text (self->sentence, _("Reading the file…"));
  task = start_work (self, order, NULL, read_done_cb);
  g_task_run_in_thread (task, work_in_thread);
}

static void
order_cb (SteadImportDialog *self)
{
  gboolean mdy = gtk_check_button_get_active (self->order_mdy);

  if (self->cancellable == NULL && (mdy || gtk_check_button_get_active (self->order_dmy)))
    start_reading (self, mdy ? STEAD_DATE_ORDER_MDY : STEAD_DATE_ORDER_DMY);
}

static void
only_wrong_cb (SteadImportDialog *self)
{
  show_rows (self);
}

static void
take_done_cb (GObject      *source,
              GAsyncResult *result,
              gpointer      data)
{
  SteadImportDialog *self = STEAD_IMPORT_DIALOG (source);
  g_autoptr(GError) error = NULL;
  gboolean taken = g_task_propagate_boolean (G_TASK (result), &error);
  g_autofree char *text = NULL;
  guint n;

  if (self->desk == NULL)
    return;
  show_busy (self, FALSE);
  stead_store_poll (stead_desk_get_store (self->desk));
  if (!taken)
    {
      stead_ui_tell (self->error, error->message);
      return;
    }
  n = stead_import_count (self->import, STEAD_ROW_TAKE);
  text = g_strdup_printf (ngettext ("Imported: %u row.", "Imported: %u rows.", n), n);
  stead_desk_say (self->desk, text, TRUE);
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
take_cb (SteadImportDialog *self)
{
  g_autoptr(GTask) task = start_work (self, STEAD_DATE_ORDER_UNKNOWN, self->import, take_done_cb);

  g_task_run_in_thread (task, work_in_thread);
}

/* While something runs, Cancel stops it; nothing half done stays. */
static void
cancel_cb (SteadImportDialog *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  if (self->cancellable == NULL || self->import == NULL)
    gtk_window_close (GTK_WINDOW (self));
}

static void
wrong_chosen_cb (const char *path,
                 gpointer    data)
{
  g_autoptr(SteadImportDialog) self = data;
  g_autoptr(GError) error = NULL;

  if (path != NULL && self->import != NULL && !stead_import_save_wrong (self->import, path, &error))
    stead_ui_tell (self->error, error->message);
}

static void
save_wrong_cb (SteadImportDialog *self)
{
  stead_files_save (GTK_WIDGET (self), _("Save the rows to mend"), _("rows to mend.csv"),
                    wrong_chosen_cb, g_object_ref (self));
}

static gboolean
close_request_cb (SteadImportDialog *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  return FALSE;
}

static void
stead_import_dialog_dispose (GObject *object)
{
  SteadImportDialog *self = STEAD_IMPORT_DIALOG (object);

  if (self->table != NULL)
    stead_table_set_model (self->table, NULL);
  self->table = NULL;
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_IMPORT_DIALOG);
  g_clear_object (&self->import);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->desk);
  g_clear_pointer (&self->path, g_free);
  G_OBJECT_CLASS (stead_import_dialog_parent_class)->dispose (object);
}

static void
stead_import_dialog_class_init (SteadImportDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_import_dialog_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadImportDialog, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadImportDialog, reading);
  gtk_widget_class_bind_template_child (widget_class, SteadImportDialog, error);
  gtk_widget_class_bind_template_child (widget_class, SteadImportDialog, order_box);
  gtk_widget_class_bind_template_child (widget_class, SteadImportDialog, order_mdy);
  gtk_widget_class_bind_template_child (widget_class, SteadImportDialog, order_dmy);
  gtk_widget_class_bind_template_child (widget_class, SteadImportDialog, only_wrong);
  gtk_widget_class_bind_template_child (widget_class, SteadImportDialog, save_wrong);
  gtk_widget_class_bind_template_child (widget_class, SteadImportDialog, take);
  gtk_widget_class_bind_template_child (widget_class, SteadImportDialog, table_slot);
  gtk_widget_class_bind_template_child (widget_class, SteadImportDialog, progress);
  gtk_widget_class_bind_template_callback (widget_class, order_cb);
  gtk_widget_class_bind_template_callback (widget_class, only_wrong_cb);
  gtk_widget_class_bind_template_callback (widget_class, save_wrong_cb);
  gtk_widget_class_bind_template_callback (widget_class, cancel_cb);
  gtk_widget_class_bind_template_callback (widget_class, take_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
stead_import_dialog_init (SteadImportDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect (self, "close-request", G_CALLBACK (close_request_cb), NULL);
  build_table (self);
}

/* --- how it starts ---------------------------------------------------------------- */

/* What stays known while the person looks for the file. */
typedef struct
{
  GtkWidget       *parent;
  SteadDesk       *desk;
  SteadImportKind  kind;
  gint64           batch_id;
} Asked;

static void
asked_free (Asked *asked)
{
  g_object_unref (asked->parent);
  g_object_unref (asked->desk);
  g_free (asked);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Asked, asked_free)

static void
file_chosen_cb (const char *path,
                gpointer    data)
{
  g_autoptr(Asked) asked = data;
  SteadImportDialog *self;
  g_autofree char *base = NULL, *title = NULL;

  if (path == NULL)
    return;
  base = g_path_get_basename (path);
  /* Translators: a file's name follows */
  title = g_strdup_printf (_("Import %s"), base);
  self = g_object_new (STEAD_TYPE_IMPORT_DIALOG, "transient-for", gtk_widget_get_root (asked->parent),
                       "title", title, NULL);
  self->desk = g_object_ref (asked->desk);
  self->kind = asked->kind;
  self->batch_id = asked->batch_id;
  self->path = g_strdup (path);
  gtk_window_present (GTK_WINDOW (self));
  start_reading (self, STEAD_DATE_ORDER_UNKNOWN);
}

void
stead_import_dialog_show (GtkWidget      *parent,
                          SteadDesk      *desk,
                          SteadImportKind kind,
                          gint64          batch_id)
{
  static const char * const titles[] = {
    [STEAD_IMPORT_FLOCK_LOG] = N_("Import a flock's log"),
    [STEAD_IMPORT_RECEIPTS] = N_("Import receipts"),
    [STEAD_IMPORT_FISH_LOG] = N_("Import a log of fish"),
    [STEAD_IMPORT_WEIGHINGS] = N_("Import weighings"),
    [STEAD_IMPORT_TEMPERATURES] = N_("Import temperatures"),
    [STEAD_IMPORT_PICKS] = N_("Import picks"),
    [STEAD_IMPORT_BANK] = N_("Import a statement of an account"),
    [STEAD_IMPORT_PEOPLE] = N_("Import a class list"),
    [STEAD_IMPORT_COOLER] = N_("Import a cooler's logger"),
    [STEAD_IMPORT_POT] = N_("Import a pot's logger"),
  };
  Asked *asked;

  g_return_if_fail (stead_desk_get_store (desk) != NULL);

  asked = g_new0 (Asked, 1);
  asked->parent = g_object_ref (parent);
  asked->desk = g_object_ref (desk);
  asked->kind = kind;
  asked->batch_id = batch_id;
  stead_files_open (parent, _(titles[kind]), _("Tables (CSV, text)"), "*.[ct][sx][vt]", file_chosen_cb, asked);
}
