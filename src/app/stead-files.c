/* stead-files.c - the one place that asks for files and shows messages. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-files.h"

typedef struct
{
  GtkFileChooserNative *dialog;
  SteadFileChosen       chosen;
  gpointer              data;
} Asking;

static GtkWindow *
window_of (GtkWidget *widget)
{
  GtkRoot *root = widget != NULL ? gtk_widget_get_root (widget) : NULL;

  return GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL;
}

static void
response_cb (GtkNativeDialog *dialog,
             int              response,
             Asking          *asking)
{
  g_autoptr(GFile) file = NULL;
  g_autofree char *path = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  if (file != NULL)
    path = g_file_get_path (file);
  gtk_native_dialog_hide (dialog);
  asking->chosen (path, asking->data);
  g_object_unref (asking->dialog);
  g_free (asking);
}

/* The dialog is kept by @asking until it was answered. */
static void
ask (GtkFileChooserNative *dialog,
     SteadFileChosen       chosen,
     gpointer              data)
{
  Asking *asking = g_new0 (Asking, 1);

  asking->dialog = dialog;
  asking->chosen = chosen;
  asking->data = data;
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect (dialog, "response", G_CALLBACK (response_cb), asking);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static void
add_filter (GtkFileChooserNative *dialog,
            const char           *name,
            const char           *pattern)
{
  g_autoptr(GtkFileFilter) filter = gtk_file_filter_new ();
  g_autoptr(GtkFileFilter) all = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, name);
  gtk_file_filter_add_pattern (filter, pattern);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), filter);
  gtk_file_filter_set_name (all, _("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), all);
}

/**
 * stead_files_open:
 * @parent: the widget that asks
 * @title: of the dialog
 * @pattern_name: (nullable): "Tables (CSV)"
 * @pattern: (nullable): "*.csv"
 * @chosen: is called once, with %NULL if the person gave up
 */
void
stead_files_open (GtkWidget       *parent,
                  const char      *title,
                  const char      *pattern_name,
                  const char      *pattern,
                  SteadFileChosen  chosen,
                  gpointer         data)
{
  GtkFileChooserNative *dialog;

  g_return_if_fail (title != NULL && chosen != NULL);

  dialog = gtk_file_chooser_native_new (title, window_of (parent), GTK_FILE_CHOOSER_ACTION_OPEN,
                                        C_("button", "Open"), C_("button", "Cancel"));
  if (pattern_name != NULL && pattern != NULL)
    add_filter (dialog, pattern_name, pattern);
  ask (dialog, chosen, data);
}

/* Where people keep their papers, so that nothing is lost in a hidden folder. */
static void
suggest_folder (GtkFileChooser *chooser)
{
  const char *path = g_get_user_special_dir (G_USER_DIRECTORY_DOCUMENTS);
  g_autoptr(GFile) folder = g_file_new_for_path (path != NULL ? path : g_get_home_dir ());

  gtk_file_chooser_set_current_folder (chooser, folder, NULL);
}

/**
 * stead_files_save:
 * @parent: the widget that asks
 * @title: of the dialog
 * @name: file name put forward
 * @chosen: is called once, with %NULL if the person gave up; that a file of the
 *   name is replaced was agreed to in the dialog
 */
void
stead_files_save (GtkWidget       *parent,
                  const char      *title,
                  const char      *name,
                  SteadFileChosen  chosen,
                  gpointer         data)
{
  GtkFileChooserNative *dialog;

  g_return_if_fail (title != NULL && name != NULL && chosen != NULL);

  dialog = gtk_file_chooser_native_new (title, window_of (parent), GTK_FILE_CHOOSER_ACTION_SAVE,
                                        C_("button", "Save"), C_("button", "Cancel"));
  suggest_folder (GTK_FILE_CHOOSER (dialog));
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  ask (dialog, chosen, data);
}

/**
 * stead_files_tell:
 * @parent: the widget whose press is answered
 * @text: what happened
 * @detail: (nullable): what to do
 */
void
stead_files_tell (GtkWidget  *parent,
                  const char *text,
                  const char *detail)
{
  GtkWidget *dialog;

  g_return_if_fail (text != NULL);

  dialog = gtk_message_dialog_new (window_of (parent), GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                   GTK_MESSAGE_OTHER, GTK_BUTTONS_CLOSE, "%s", text);
  if (detail != NULL)
    gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s", detail);
  gtk_widget_add_css_class (dialog, "steading");
  g_signal_connect (dialog, "response", G_CALLBACK (gtk_window_destroy), NULL);
  gtk_window_present (GTK_WINDOW (dialog));
}
