/* stead-export-pane.c - what left the farm, and the ways out. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-export-pane.h"

#include "answer/stead-release-answer.h"
#include "app/show/stead-export-dialog.h"
#include "app/show/stead-purge-dialog.h"
#include "app/show/stead-release-dialogs.h"
#include "app/stead-files.h"
#include "app/stead-window.h"
#include "store/stead-folder.h"

struct _SteadExportPane
{
  SteadPane   parent_instance;

  SteadTable *table;
};

G_DEFINE_FINAL_TYPE (SteadExportPane, stead_export_pane, STEAD_TYPE_PANE)

/* --- the log ---------------------------------------------------------------------- */

static const SteadRelease *
release_of (gconstpointer item)
{
  return stead_row_get (STEAD_ROW ((gpointer) item));
}

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (release_of (item)->day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
what_text (gpointer item,
           gpointer data)
{
  return g_strdup (release_of (item)->what);
}

static char *
whom_text (gpointer item,
           gpointer data)
{
  return g_strdup (release_of (item)->to_whom);
}

static char *
ground_text (gpointer item,
             gpointer data)
{
  return g_strdup (release_of (item)->ground);
}

static void
stead_export_pane_refresh (SteadPane *pane)
{
  SteadExportPane *self = STEAD_EXPORT_PANE (pane);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadReleaseAnswer) answer = stead_release_answer_new (stead_pane_get_store (pane), &error);
  g_autoptr(GListModel) rows = NULL;

  stead_pane_say (pane, answer != NULL ? answer->sentence : NULL, error);
  if (answer == NULL)
    return;
  rows = stead_rows_from_array (g_steal_pointer (&answer->releases), (GDestroyNotify) stead_release_free);
  stead_table_set_model (self->table, rows);
}

/* --- buttons ------------------------------------------------------------------------ */

static void
export_cb (SteadPane *pane)
{
  stead_export_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane));
}

static void
note_cb (SteadPane *pane)
{
  stead_release_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane));
}

static void
purge_cb (SteadPane *pane)
{
  stead_purge_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane));
}

/* A folder on its way to a farm file. */
typedef struct
{
  SteadPane *pane;
  char      *folder, *path;
} Taking;

static void
taking_free (gpointer data)
{
  Taking *taking = data;

  g_object_unref (taking->pane);
  g_free (taking->folder);
  g_free (taking->path);
  g_free (taking);
}

static void
take_thread (GTask        *task,
             gpointer      source,
             gpointer      data,
             GCancellable *cancellable)
{
  const Taking *taking = data;
  GError *error = NULL;

  if (stead_folder_read (taking->folder, taking->path, cancellable, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
taken_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  const Taking *taking = g_task_get_task_data (G_TASK (result));
  g_autoptr(GError) error = NULL;
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (taking->pane));

  if (!g_task_propagate_boolean (G_TASK (result), &error))
    stead_files_tell (GTK_WIDGET (taking->pane), _("The folder was not taken in."), error->message);
  else if (STEAD_IS_WINDOW (root))
    stead_window_open (STEAD_WINDOW (root), taking->path);
}

static void
farm_chosen_cb (const char *path,
                gpointer    data)
{
  Taking *taking = data;
  g_autoptr(GTask) task = NULL;

  if (path == NULL)
    {
      taking_free (taking);
      return;
    }
  taking->path = g_strdup (path);
  task = g_task_new (taking->pane, NULL, taken_cb, NULL);
  g_task_set_task_data (task, taking, taking_free);
  g_task_run_in_thread (task, take_thread);
}

static void
mark_chosen_cb (const char *path,
                gpointer    data)
{
  g_autoptr(SteadPane) pane = data;
  g_autofree char *name = NULL;
  g_autofree char *file = NULL;
  Taking *taking;

  if (path == NULL)
    return;
  taking = g_new0 (Taking, 1);
  taking->folder = g_path_get_dirname (path);
  name = g_path_get_basename (taking->folder);
  file = g_strconcat (name, ".steading", NULL);
  taking->pane = g_object_ref (pane);
  stead_files_save (GTK_WIDGET (pane), _("Where to keep the new farm"), file, farm_chosen_cb, taking);
}

static void
take_cb (SteadPane *pane)
{
  stead_files_open (GTK_WIDGET (pane), _("Choose the file folder.csv in the folder"), _("Folder of a farm"), "folder.csv",
                    mark_chosen_cb, g_object_ref (pane));
}

static void
stead_export_pane_class_init (SteadExportPaneClass *klass)
{
  STEAD_PANE_CLASS (klass)->refresh = stead_export_pane_refresh;
}

static void
stead_export_pane_init (SteadExportPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  self->table = stead_pane_add_table (pane, _("What left the farm"));
  stead_table_add_column (self->table, _("Day"), FALSE, FALSE, day_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("What"), FALSE, TRUE, what_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("To whom"), FALSE, FALSE, whom_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Ground"), FALSE, FALSE, ground_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Nothing that names people was exported. Exports are written down here by themselves: "
                                        "what, to whom, and on which ground. Note what is printed and handed out."));
  stead_pane_add_button (pane, _("Export…"), G_CALLBACK (export_cb));
  stead_pane_add_button (pane, _("Note what was handed out…"), G_CALLBACK (note_cb));
  stead_pane_add_button (pane, _("Take in a folder…"), G_CALLBACK (take_cb));
  stead_pane_add_button (pane, _("Remove people…"), G_CALLBACK (purge_cb));
}
