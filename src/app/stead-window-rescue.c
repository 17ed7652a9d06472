/* stead-window-rescue.c - the window and a damaged farm: what can be read, in a new farm.
 *
 * The damaged file stays as it is, and no file is written over.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "answer/stead-rescue-answer.h"
#include "app/stead-files.h"
#include "app/stead-window-private.h"

#define MOST_LINES 6

typedef struct
{
  char *from;
  char *to;
} Rescue;

static void
rescue_free (Rescue *rescue)
{
  g_free (rescue->from);
  g_free (rescue->to);
  g_free (rescue);
}

static void
rescue_in_worker (GTask        *task,
                  gpointer      source,
                  gpointer      data,
                  GCancellable *cancellable)
{
  Rescue *rescue = data;
  GError *error = NULL;
  SteadRescue *found;

  found = stead_rescue_run (rescue->from, rescue->to, cancellable, &error);
  if (found != NULL)
    g_task_return_pointer (task, found, (GDestroyNotify) stead_rescue_free);
  else
    g_task_return_error (task, error);
}

static void
rescued_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  SteadWindow *self = STEAD_WINDOW (source);
  Rescue *rescue = g_task_get_task_data (G_TASK (result));
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadRescue) found = g_task_propagate_pointer (G_TASK (result), &error);
  g_autofree char *text = NULL;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.rescue", TRUE);
  if (found == NULL)
    {
      stead_files_tell (GTK_WIDGET (self), _("The farm could not be rescued."), error->message);
      return;
    }
  text = stead_rescue_answer_text (found, MOST_LINES);
  stead_window_open (self, rescue->to);
  stead_files_tell (GTK_WIDGET (self), _("This is the rescued farm. Compare it with your papers."), text);
}

static void
rescue_chosen_cb (const char *path,
                  gpointer    data)
{
  g_autoptr(SteadWindow) self = data;
  const char *from = stead_window_get_path (self);
  g_autoptr(GTask) task = NULL;
  Rescue *rescue;

  if (path == NULL || from == NULL)
    return;
  if (g_str_equal (path, from))
    {
      stead_files_tell (GTK_WIDGET (self), _("The farm could not be rescued."),
                        _("This is the damaged farm itself. Give the new farm another name."));
      return;
    }
  rescue = g_new0 (Rescue, 1);
  rescue->from = g_strdup (from);
  rescue->to = g_strdup (path);
  task = g_task_new (self, NULL, rescued_cb, NULL);
  g_task_set_task_data (task, rescue, (GDestroyNotify) rescue_free);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.rescue", FALSE);
  g_task_run_in_thread (task, rescue_in_worker);
}

static void
rescue_action (GtkWidget  *widget,
               const char *action,
               GVariant   *parameter)
{
  SteadWindow *self = STEAD_WINDOW (widget);
  g_autofree char *stem = NULL;
  g_autofree char *name = NULL;

  if (stead_window_get_path (self) == NULL)
    return;
  stem = g_path_get_basename (stead_window_get_path (self));
  if (g_str_has_suffix (stem, ".steading"))
    stem[strlen (stem) - strlen (".steading")] = '\0';
  /* Translators: file name of a farm that was rescued; %s is that of the damaged one. */
  name = g_strdup_printf (_("%s rescued.steading"), stem);
  stead_files_save (widget, _("Rescue what can be read"), name, rescue_chosen_cb, g_object_ref (self));
}

void
stead_window_install_rescue (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.rescue", NULL, rescue_action);
}
