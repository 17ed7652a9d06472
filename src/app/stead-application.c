/* stead-application.c - the program with a window: one process, one window a farm. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-guide.h"
#include "app/stead-application.h"
#include "app/stead-first-look.h"
#include "app/stead-help-window.h"
#include "app/stead-scheme.h"
#include "app/stead-settings.h"
#include "app/stead-ui.h"
#include "app/stead-window.h"

struct _SteadApplication
{
  GtkApplication parent_instance;
};

G_DEFINE_FINAL_TYPE (SteadApplication, stead_application, GTK_TYPE_APPLICATION)

static gpointer
ref_window (gconstpointer window,
            gpointer      data)
{
  return g_object_ref ((gpointer) window);
}

/* As if each window was closed, the last used one first: one in which something is typed
 * that would be lost stays, and with it those below. */
static void
quit_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  GtkApplication *application = data;
  g_autolist(GtkWindow) windows = g_list_copy_deep (gtk_application_get_windows (application), ref_window, NULL);
  gboolean stays = FALSE;

  for (GList *l = windows; l != NULL && !stays; l = l->next)
    if (gtk_widget_get_visible (l->data))
      {
        gtk_window_close (l->data);
        stays = g_list_find (gtk_application_get_windows (application), l->data) != NULL;
      }
}

static void
close_on_escape (GtkWindow *window)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys),
                                        gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                          gtk_named_action_new ("window.close")));
  gtk_widget_add_controller (GTK_WIDGET (window), keys);
}

/* A window of its own that only shows something; made when asked for. */
static void
show (GtkApplication *application,
      const char     *path,
      const char     *id)
{
  g_autoptr(GtkBuilder) builder = gtk_builder_new_from_resource (path);
  GtkWindow *window = GTK_WINDOW (gtk_builder_get_object (builder, id));

  gtk_window_set_transient_for (window, gtk_application_get_active_window (application));
  close_on_escape (window);
  gtk_window_present (window);
}

/* Of the window, or of the one that a dialog belongs to; the first page where there is no place.
 * (nullable): the help itself has the keys, and stays as it is. */
static const char *
page_in_view (GtkApplication *application)
{
  GtkWindow *window = gtk_application_get_active_window (application);
  const char *place = NULL;

  if (STEAD_IS_HELP_WINDOW (window))
    return NULL;
  while (window != NULL && !STEAD_IS_WINDOW (window))
    window = gtk_window_get_transient_for (window);
  if (window != NULL)
    place = stead_window_get_place (STEAD_WINDOW (window));
  return place != NULL ? place : STEAD_GUIDE_FIRST;
}

static void
help_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  stead_help_window_present (data, page_in_view (data));
}

/* Not as GtkApplication's own help overlay: that is a hidden window from the start,
 * and GTK 4.8 answers a screen reader that asks for a window just closed with it,
 * though it has no path to answer with. */
static void
keys_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  show (data, STEAD_UI ("stead-keys.ui"), "keys");
}

static void
about_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       data)
{
  GtkWidget *about = g_object_new (GTK_TYPE_ABOUT_DIALOG,
                                   "transient-for", gtk_application_get_active_window (GTK_APPLICATION (data)),
                                   "modal", TRUE,
                                   "program-name", _("Steading"),
                                   "version", STEAD_VERSION,
                                   "logo-icon-name", STEAD_APP_ID,
                                   "comments", _("From the henhouse to the till: plan a school farm's enterprise."),
                                   "license-type", GTK_LICENSE_GPL_3_0,
                                   NULL);

  gtk_widget_add_css_class (about, "steading");
  gtk_window_present (GTK_WINDOW (about));
}

static const GActionEntry actions[] = {
  { .name = "quit", .activate = quit_cb },
  { .name = "help", .activate = help_cb },
  { .name = "keys", .activate = keys_cb },
  { .name = "about", .activate = about_cb },
};

/* The window of a farm that is open already. */
static SteadWindow *
find_window (SteadApplication *self,
             const char       *path)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (STEAD_IS_WINDOW (l->data) && g_strcmp0 (stead_window_get_path (l->data), path) == 0)
      return l->data;
  return NULL;
}

/* The farm of the last time, if it is still there: most people have one. */
static char *
last_file (void)
{
  g_autofree char *uri = stead_settings_get_text ("last-file");
  g_autofree char *path = *uri != '\0' ? g_filename_from_uri (uri, NULL, NULL) : NULL;

  return path != NULL && g_file_test (path, G_FILE_TEST_IS_REGULAR) ? g_steal_pointer (&path) : NULL;
}

/* (nullable): the one that had the keys last; the help is none */
static GtkWindow *
main_window (GtkApplication *application)
{
  for (GList *l = gtk_application_get_windows (application); l != NULL; l = l->next)
    if (STEAD_IS_WINDOW (l->data))
      return l->data;
  return NULL;
}

static void
stead_application_activate (GApplication *application)
{
  GtkWindow *window = main_window (GTK_APPLICATION (application));
  g_autofree char *last = last_file ();

  if (window == NULL)
    {
      window = GTK_WINDOW (stead_window_new (GTK_APPLICATION (application)));
      if (last != NULL)
        stead_window_open (STEAD_WINDOW (window), last);
    }
  gtk_window_present (window);
}

static void
stead_application_open (GApplication  *application,
                        GFile        **files,
                        int            n_files,
                        const char    *hint)
{
  SteadApplication *self = STEAD_APPLICATION (application);

  for (int i = 0; i < n_files; i++)
    {
      g_autofree char *path = g_file_get_path (files[i]);
      SteadWindow *window = find_window (self, path);

      if (window == NULL)
        window = find_window (self, NULL);
      if (window == NULL)
        window = STEAD_WINDOW (stead_window_new (GTK_APPLICATION (self)));
      if (path != NULL && g_strcmp0 (stead_window_get_path (window), path) != 0)
        stead_window_open (window, path);
      gtk_window_present (GTK_WINDOW (window));
    }
}

/* The help alone does not keep the program going. */
static void
stead_application_window_removed (GtkApplication *application,
                                  GtkWindow      *window)
{
  GTK_APPLICATION_CLASS (stead_application_parent_class)->window_removed (application, window);
  if (STEAD_IS_WINDOW (window) && main_window (application) == NULL)
    stead_help_window_close (application);
}

static void
set_keys (GtkApplication *application)
{
  static const struct { const char *action; const char *keys[3]; } keys[] = {
    { "app.quit", { "<Control>q" } },
    { "window.close", { "<Control>w" } },
    { "win.undo-here", { "<Control>z" } },
    { "win.redo-here", { "<Control><Shift>z", "<Control>y" } },
    { "win.jump", { "<Control>k", "<Control>f" } },
    { "win.print", { "<Control>p" } },
    { "win.back", { "<Alt>Left" } },
    { "win.menu", { "F10" } },
    { "win.new-farm", { "<Control>n" } },
    { "win.open", { "<Control>o" } },
    { "win.save-copy", { "<Control><Shift>s" } },
    { "win.preferences", { "<Control>comma" } },
    { "app.keys", { "<Control>question" } },
    { "app.help", { "F1" } },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_application_set_accels_for_action (application, keys[i].action, (const char **) keys[i].keys);
  for (int i = 1; i <= 9; i++)
    {
      g_autofree char *action = g_strdup_printf ("win.place(%d)", i);
      g_autofree char *key = g_strdup_printf ("<Alt>%d", i);

      gtk_application_set_accels_for_action (application, action, (const char *[]) { key, NULL });
    }
}

static void
stead_application_startup (GApplication *application)
{
  stead_ui_register ();
  G_APPLICATION_CLASS (stead_application_parent_class)->startup (application);
  stead_scheme_start ();
  gtk_window_set_default_icon_name (STEAD_APP_ID);
  g_action_map_add_action_entries (G_ACTION_MAP (application), actions, G_N_ELEMENTS (actions), application);
  set_keys (GTK_APPLICATION (application));
}

static void
stead_application_class_init (SteadApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  application_class->startup = stead_application_startup;
  application_class->activate = stead_application_activate;
  application_class->open = stead_application_open;
  GTK_APPLICATION_CLASS (klass)->window_removed = stead_application_window_removed;
}

static void
stead_application_init (SteadApplication *self)
{
}

/* (transfer full) (nullable): the farm that will be opened first */
static char *
first_file (int    argc,
            char **argv)
{
  g_autoptr(GFile) file = NULL;

  if (argc < 2)
    return last_file ();
  if (*argv[1] == '-')
    return NULL;
  file = g_file_new_for_commandline_arg (argv[1]);
  return g_file_get_path (file);
}

/**
 * stead_application_run:
 * @argc: length of @argv
 * @argv: the command line: the program, then farm files
 *
 * Returns: the program's exit status
 */
int
stead_application_run (int    argc,
                       char **argv)
{
  g_autoptr(SteadApplication) application = NULL;
  g_autofree char *first = NULL;
  int status;

  /* It is set; setting it again would be seen by the thread of the first look. */
  gtk_disable_setlocale ();
  g_set_application_name (_("Steading"));
  g_set_prgname (STEAD_APP_ID);
  first = first_file (argc, argv);
  if (first != NULL)
    stead_first_look_begin (first);
  application = g_object_new (STEAD_TYPE_APPLICATION,
                              "application-id", STEAD_APP_ID,
                              "flags", G_APPLICATION_HANDLES_OPEN,
                              NULL);
  status = g_application_run (G_APPLICATION (application), argc, argv);
  stead_first_look_end ();
  return status;
}
