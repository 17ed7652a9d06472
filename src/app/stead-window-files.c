/* stead-window-files.c - the window and its farm file: new, open, copy, earlier day.
 *
 * Invariants:
 *  1. What stands in the way of opening is a page that says what to do, not a
 *     dialog over nothing.
 *  2. A large file is shown first and checked in a worker; until it is found
 *     whole no change is taken.  Any other is checked before it is shown.
 *  3. Going back to an earlier day keeps what was there beside it.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "answer/stead-demo-answer.h"
#include "app/stead-backups.h"
#include "app/stead-first-look.h"
#include "app/stead-files.h"
#include "app/stead-new-farm.h"
#include "app/stead-settings.h"
#include "app/stead-trouble.h"
#include "app/stead-welcome.h"
#include "app/stead-window-private.h"

static SteadWindow *
window_of (GtkWidget *widget)
{
  return STEAD_WINDOW (widget);
}

/* --- opening ------------------------------------------------------------------------- */

static void
remember (const char *path)
{
  g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);
  char *groups[] = { NULL };
  GtkRecentData data = { .mime_type = (char *) "application/x-steading-farm",
                         .app_name = (char *) "Steading",
                         .app_exec = (char *) "steading %f",
                         .groups = groups };

  if (uri == NULL)
    return;
  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
  stead_settings_set_text ("last-file", uri);
}

static void
show_trouble (SteadWindow  *self,
              const char   *path,
              const GError *error)
{
  g_autofree char *copy = g_strdup (path);

  stead_window_set_path (self, copy);
  stead_window_show_alone (self, stead_trouble_new (copy, error));
}

static void
check_in_worker (GTask        *task,
                 gpointer      source,
                 gpointer      path,
                 GCancellable *cancellable)
{
  GError *error = NULL;

  if (stead_store_check_file (path, cancellable, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

/* The window may show another farm by now; then this is no longer its business. */
static void
checked_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  SteadWindow *self = STEAD_WINDOW (source);
  g_autoptr(SteadStore) store = data;
  g_autoptr(GError) error = NULL;
  gboolean whole = g_task_propagate_boolean (G_TASK (result), &error);

  if (stead_desk_get_store (stead_window_get_desk (self)) != store)
    return;
  if (!whole)
    {
      show_trouble (self, stead_store_get_path (store), error);
      return;
    }
  stead_store_allow_changes (store);
  if (!stead_store_is_read_only (store))
    stead_window_set_notice (self, NULL, FALSE);
}

/* After the frames that are due: the first look at the farm does not wait for it. */
static gboolean
start_check_idle (gpointer task)
{
  g_task_run_in_thread (task, check_in_worker);
  return G_SOURCE_REMOVE;
}

static void
check_later (SteadWindow *self,
             SteadStore  *store)
{
  GTask *task = g_task_new (self, NULL, checked_cb, g_object_ref (store));

  g_task_set_task_data (task, g_strdup (stead_store_get_path (store)), g_free);
  if (!stead_store_is_read_only (store))
    stead_window_set_notice (self, _("This large farm is being checked. You can look around; "
                                     "changes can be made in a moment."), FALSE);
  g_idle_add_full (G_PRIORITY_LOW, start_check_idle, task, g_object_unref);
}

static gboolean
open_file (SteadWindow *self,
           const char  *path,
           gboolean     read_only)
{
  gboolean large = stead_first_look_is_large (path);
  gboolean passed = !large && stead_first_look_passed (path);
  SteadStoreOpenFlags flags = (read_only ? STEAD_STORE_OPEN_READ_ONLY : STEAD_STORE_OPEN_DEFAULT)
                              | (large || passed ? STEAD_STORE_OPEN_DEFER_CHECK : STEAD_STORE_OPEN_DEFAULT);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_open (path, flags, &error);

  if (store == NULL)
    {
      show_trouble (self, path, error);
      return FALSE;
    }
  if (passed)
    stead_store_allow_changes (store);
  stead_window_take (self, store);
  if (large)
    check_later (self, store);
  return TRUE;
}

void
stead_window_open (SteadWindow *self,
                   const char  *path)
{
  g_return_if_fail (STEAD_IS_WINDOW (self));
  g_return_if_fail (path != NULL);

  if (open_file (self, path, FALSE))
    remember (path);
}

/* Through the program, so that a farm that is open already is raised. */
static void
open_through_application (SteadWindow *self,
                          const char  *path)
{
  g_autoptr(GFile) file = g_file_new_for_path (path);

  g_application_open (G_APPLICATION (gtk_window_get_application (GTK_WINDOW (self))), &file, 1, "");
}

static void
open_chosen_cb (const char *path,
                gpointer    data)
{
  g_autoptr(SteadWindow) self = data;

  if (path != NULL)
    open_through_application (self, path);
}

static void
open_action (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  stead_files_open (widget, _("Open a farm"), _("Farms"), "*.steading", open_chosen_cb, g_object_ref (window_of (widget)));
}

static void
open_path_action (GtkWidget  *widget,
                  const char *action,
                  GVariant   *path)
{
  open_through_application (window_of (widget), g_variant_get_string (path, NULL));
}

static void
retry_action (GtkWidget  *widget,
              const char *action,
              GVariant   *parameter)
{
  SteadWindow *self = window_of (widget);
  g_autofree char *path = g_strdup (stead_window_get_path (self));

  if (path != NULL)
    stead_window_open (self, path);
}

/* --- without a farm ---------------------------------------------------------------------- */

void
stead_window_welcome (SteadWindow *self)
{
  g_return_if_fail (STEAD_IS_WINDOW (self));

  stead_window_set_path (self, NULL);
  stead_window_show_alone (self, stead_welcome_new ());
}

static void
welcome_action (GtkWidget  *widget,
                const char *action,
                GVariant   *parameter)
{
  stead_window_welcome (window_of (widget));
}

static void
made_cb (SteadWindow *self,
         SteadStore  *store)
{
  remember (stead_store_get_path (store));
}

static void
done_cb (SteadWindow *self,
         SteadStore  *store)
{
  g_autoptr(SteadStore) kept = g_object_ref (store);

  stead_window_take (self, kept);
  stead_window_go (self, "today");
}

/* A farm that is open stays open: the new one gets a window of its own. */
static void
new_farm_action (GtkWidget  *widget,
                 const char *action,
                 GVariant   *parameter)
{
  SteadWindow *self = window_of (widget);
  GtkWidget *page;

  if (stead_desk_get_store (stead_window_get_desk (self)) != NULL)
    {
      self = STEAD_WINDOW (stead_window_new (gtk_window_get_application (GTK_WINDOW (self))));
      gtk_window_present (GTK_WINDOW (self));
    }
  page = stead_new_farm_new ();
  g_signal_connect_object (page, "made", G_CALLBACK (made_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (page, "done", G_CALLBACK (done_cb), self, G_CONNECT_SWAPPED);
  stead_window_set_path (self, NULL);
  stead_window_show_alone (self, page);
}

/* --- the demo farm -------------------------------------------------------------------------- */

typedef struct
{
  char     *path;
  SteadDay  today;
} Demo;

static void
demo_free (Demo *demo)
{
  g_free (demo->path);
  g_free (demo);
}

static SteadDay
present_day (void)
{
  g_autoptr(GDateTime) now = g_date_time_new_now_local ();

  return stead_day_new (g_date_time_get_year (now), g_date_time_get_month (now), g_date_time_get_day_of_month (now));
}

/* A copy for each day: its story ends today, and what was tried yesterday is kept. */
static Demo *
demo_new (void)
{
  Demo *demo = g_new0 (Demo, 1);
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "steading", NULL);
  g_autofree char *day = NULL;
  g_autofree char *name = NULL;

  g_mkdir_with_parents (folder, 0700);
  demo->today = present_day ();
  day = stead_day_format (demo->today, STEAD_DAY_STYLE_ISO);
  name = g_strdup_printf ("Ember Lake School Farm %s.steading", day);
  demo->path = g_build_filename (folder, name, NULL);
  return demo;
}

static void
make_demo_in_worker (GTask        *task,
                     gpointer      source,
                     gpointer      data,
                     GCancellable *cancellable)
{
  Demo *demo = data;
  GError *error = NULL;
  g_autoptr(SteadStore) store = NULL;

  if (!g_file_test (demo->path, G_FILE_TEST_EXISTS))
    {
      store = stead_demo_answer_create (demo->path, NULL, demo->today, &error);
      if (store == NULL)
        {
          g_task_return_error (task, error);
          return;
        }
    }
  g_task_return_boolean (task, TRUE);
}

static void
demo_made_cb (GObject      *source,
              GAsyncResult *result,
              gpointer      data)
{
  SteadWindow *self = STEAD_WINDOW (source);
  g_autoptr(GtkWidget) welcome = data;
  Demo *demo = g_task_get_task_data (G_TASK (result));
  g_autoptr(GError) error = NULL;

  stead_welcome_busy (STEAD_WELCOME (welcome), FALSE);
  if (!g_task_propagate_boolean (G_TASK (result), &error))
    stead_files_tell (GTK_WIDGET (self), _("The demo farm could not be made."), error->message);
  else if (gtk_widget_get_root (welcome) == GTK_ROOT (self))
    stead_window_open (self, demo->path);
}

static GtkWidget *
find_welcome (GtkWidget *widget)
{
  GtkWidget *found = STEAD_IS_WELCOME (widget) ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget);
       child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_welcome (child);
  return found;
}

static void
demo_action (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  GtkWidget *welcome = find_welcome (widget);
  g_autoptr(GTask) task = NULL;

  if (welcome == NULL)
    return;
  stead_welcome_busy (STEAD_WELCOME (welcome), TRUE);
  task = g_task_new (widget, NULL, demo_made_cb, g_object_ref (welcome));
  g_task_set_task_data (task, demo_new (), (GDestroyNotify) demo_free);
  g_task_run_in_thread (task, make_demo_in_worker);
}

/* --- copies ------------------------------------------------------------------------------------ */

static void
copy_chosen_cb (const char *path,
                gpointer    data)
{
  g_autoptr(SteadWindow) self = data;
  SteadDesk *desk = stead_window_get_desk (self);
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autofree char *name = NULL;
  g_autofree char *text = NULL;

  if (path == NULL || store == NULL)
    return;
  if (!stead_store_save_copy (store, path, NULL, &error))
    {
      stead_files_tell (GTK_WIDGET (self), _("The copy could not be saved."), error->message);
      return;
    }
  /* Who could only read wanted the copy to work in. */
  if (stead_store_is_read_only (store))
    {
      open_through_application (self, path);
      return;
    }
  name = g_path_get_basename (path);
  /* Translators: %s is the name of a file. */
  text = g_strdup_printf (_("A copy was saved as %s."), name);
  stead_desk_say (desk, text, FALSE);
}

static void
save_copy_action (GtkWidget  *widget,
                  const char *action,
                  GVariant   *parameter)
{
  SteadWindow *self = window_of (widget);
  const SteadFarm *farm = stead_desk_get_farm (stead_window_get_desk (self));
  /* Translators: file name of a copy; %s is the farm's name. */
  g_autofree char *name = g_strdup_printf (_("%s copy.steading"), farm != NULL ? farm->name : _("Farm"));

  stead_files_save (widget, _("Save a copy of the farm"), g_strdelimit (name, "/", '-'),
                    copy_chosen_cb, g_object_ref (self));
}

/* --- an earlier day ------------------------------------------------------------------------------ */

static void
look_cb (SteadWindow *self,
         const char  *backup)
{
  SteadWindow *other = STEAD_WINDOW (stead_window_new (gtk_window_get_application (GTK_WINDOW (self))));

  if (open_file (other, backup, TRUE))
    stead_window_set_notice (other, _("This is the farm as it was on an earlier day. It can only be read. "
                                      "Save a copy to work in it."), TRUE);
  gtk_window_present (GTK_WINDOW (other));
}

static void
restore_cb (SteadWindow *self,
            const char  *backup)
{
  g_autofree char *path = g_strdup (stead_window_get_path (self));
  g_autoptr(GError) error = NULL;
  gboolean restored;

  if (path == NULL)
    return;
  stead_window_close_farm (self);
  restored = stead_store_restore (backup, path, &error);
  stead_window_open (self, path);
  if (restored)
    stead_desk_say (stead_window_get_desk (self),
                    _("The farm is as it was on that day. What it was before is kept beside it."), FALSE);
  else
    stead_files_tell (GTK_WIDGET (self), _("The earlier day could not be brought back."), error->message);
}

static void
backups_action (GtkWidget  *widget,
                const char *action,
                GVariant   *parameter)
{
  SteadWindow *self = window_of (widget);
  GtkWidget *dialog;

  if (stead_window_get_path (self) == NULL)
    return;
  dialog = stead_backups_new (GTK_WINDOW (self), stead_window_get_path (self));
  g_signal_connect_object (dialog, "look", G_CALLBACK (look_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (dialog, "restore", G_CALLBACK (restore_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
stead_window_install_files (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.open", NULL, open_action);
  gtk_widget_class_install_action (widget_class, "win.open-path", "s", open_path_action);
  gtk_widget_class_install_action (widget_class, "win.retry", NULL, retry_action);
  gtk_widget_class_install_action (widget_class, "win.welcome", NULL, welcome_action);
  gtk_widget_class_install_action (widget_class, "win.new-farm", NULL, new_farm_action);
  gtk_widget_class_install_action (widget_class, "win.demo", NULL, demo_action);
  gtk_widget_class_install_action (widget_class, "win.save-copy", NULL, save_copy_action);
  gtk_widget_class_install_action (widget_class, "win.backups", NULL, backups_action);
}
