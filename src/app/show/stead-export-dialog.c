/* stead-export-dialog.c - what is to leave the farm, shown before it does.
 *
 * Nothing that names people leaves without who gets it and on which ground: both are
 * written into the log in the moment in which the file is there.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-export-dialog.h"

#include "answer/stead-folder-answer.h"
#include "answer/stead-release-answer.h"
#include "answer/stead-words.h"
#include "app/keep/stead-pick.h"
#include "app/stead-field.h"
#include "app/stead-files.h"
#include "app/stead-ui.h"
#include "paper/stead-paper.h"
#include "paper/stead-workbook.h"
#include "store/stead-release-repo.h"

/* What tells least of people comes first, and is what is put forward. */
typedef enum
{
  WHAT_WORKBOOK = 1,
  WHAT_SEASON,
  WHAT_CALENDAR,
  WHAT_TABLES,
  WHAT_WHOLE,
} What;

static const struct
{
  What        what;
  const char *label;
  const char *ending;   /* of the file's name; none: a folder */
} kinds[] = {
  { WHAT_WORKBOOK, N_("Workbook: hours, money, stock, production, sales, people"), ".xlsx" },
  { WHAT_SEASON, N_("Season summary (PDF)"), ".pdf" },
  { WHAT_CALENDAR, N_("Calendar of sale days and due work"), ".ics" },
  { WHAT_TABLES, N_("Tables with a description"), "" },
  { WHAT_WHOLE, N_("The whole farm as a folder"), "" },
};

struct _SteadExportDialog
{
  SteadDialog     parent_instance;

  SteadPick      *what, *ground;
  GtkWidget      *choices, *release, *tables_box;
  GtkCheckButton *names, *notes, *pictures;
  GtkLabel       *leaving, *warning, *tables;
  SteadField     *whom;
};

G_DEFINE_FINAL_TYPE (SteadExportDialog, stead_export_dialog, STEAD_TYPE_DIALOG)

/* --- what was chosen ------------------------------------------------------------------ */

static What
what_of (SteadExportDialog *self)
{
  return (What) stead_pick_get (self->what);
}

static gboolean
is_folder (What what)
{
  return what == WHAT_WHOLE || what == WHAT_TABLES;
}

static SteadFolderOptions
options_of (SteadExportDialog *self)
{
  gboolean whole = what_of (self) == WHAT_WHOLE;

  return (SteadFolderOptions) { .names = whole || gtk_check_button_get_active (self->names),
                                .notes = whole || gtk_check_button_get_active (self->notes),
                                .pictures = whole || gtk_check_button_get_active (self->pictures) };
}

/* Whether the log must hold it: anybody could be known by it. */
static gboolean
is_sensitive (SteadExportDialog *self)
{
  SteadFolderOptions options = options_of (self);

  if (is_folder (what_of (self)))
    return options.names || options.notes || options.pictures;
  return what_of (self) == WHAT_WORKBOOK && options.names;
}

/* --- what will leave -------------------------------------------------------------------- */

static void
show_folder (SteadExportDialog *self)
{
  SteadStore *store = stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self)));
  SteadFolderOptions options = options_of (self);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadLeaving) leaving = stead_folder_answer_leaving (store, &options, &error);
  g_autoptr(GString) list = g_string_new (NULL);

  if (leaving == NULL)
    {
      stead_dialog_show_error (STEAD_DIALOG (self), error->message);
      return;
    }
  for (guint i = 0; i < leaving->tables->len; i++)
    {
      const SteadFolderTable *table = leaving->tables->pdata[i];

      if (table->rows > 0)
        g_string_append_printf (list, "%s%s\u00a0%u", list->len > 0 ? ", " : "", table->name, table->rows);
    }
  gtk_label_set_markup (self->leaving, leaving->sentence);
  gtk_label_set_text (self->tables, list->str);
  gtk_label_set_text (self->warning, leaving->warning != NULL ? leaving->warning : "");
  gtk_widget_set_visible (GTK_WIDGET (self->warning), leaving->warning != NULL);
}

static const char *
say_file (SteadExportDialog *self)
{
  if (what_of (self) == WHAT_WORKBOOK && gtk_check_button_get_active (self->names))
    return _("Six sheets of this school year leave the farm. People are in it <b>by name</b>, with their hours.");
  if (what_of (self) == WHAT_WORKBOOK)
    return _("Six sheets of this school year leave the farm. People are in it by <b>role and number</b>, with their hours.");
  if (what_of (self) == WHAT_SEASON)
    return _("Sums of this school year leave the farm: eggs, fish, crops, jars, sales, money and builds. "
             "<b>Nobody</b> is named.");
  return _("Sale days and due work of the next twelve weeks leave the farm. <b>Nobody</b> is named.");
}

static void
changed_cb (SteadExportDialog *self)
{
  What what = what_of (self);

  gtk_widget_set_visible (self->choices, what == WHAT_TABLES || what == WHAT_WORKBOOK);
  gtk_widget_set_visible (GTK_WIDGET (self->notes), what == WHAT_TABLES);
  gtk_widget_set_visible (GTK_WIDGET (self->pictures), what == WHAT_TABLES);
  gtk_widget_set_visible (self->tables_box, is_folder (what));
  gtk_widget_set_visible (self->release, is_sensitive (self));
  if (is_folder (what))
    {
      show_folder (self);
      return;
    }
  gtk_label_set_markup (self->leaving, say_file (self));
  gtk_widget_set_visible (GTK_WIDGET (self->warning), FALSE);
}

/* --- writing -------------------------------------------------------------------------------- */

/* What goes out, kept from the dialog to the end of writing. */
typedef struct
{
  GtkWidget          *over;      /* what messages stand over */
  SteadDesk          *desk;
  What                what;
  SteadFolderOptions  options;
  gboolean            is_logged;
  char               *farm, *path, *sentence, *whom, *ground;
  SteadDay            today;        /* that was set, or STEAD_DAY_NONE */
} Going;

static void
going_free (gpointer data)
{
  Going *going = data;

  g_object_unref (going->over);
  g_object_unref (going->desk);
  g_free (going->farm);
  g_free (going->path);
  g_free (going->sentence);
  g_free (going->whom);
  g_free (going->ground);
  g_free (going);
}

static gboolean
release_act (SteadStore  *store,
             gpointer     data,
             GError     **error)
{
  const Going *going = data;
  SteadRelease release = { .day = stead_store_get_today (store), .what = going->sentence, .to_whom = going->whom,
                           .ground = going->ground };
  g_autoptr(GArray) people = going->options.names ? stead_release_repo_named (store, error) : NULL;

  if (going->options.names && people == NULL)
    return FALSE;
  return stead_release_repo_add (store, &release, people, error);
}

static gboolean
write_going (const Going   *going,
             GCancellable  *cancellable,
             GError       **error)
{
  g_autoptr(SteadStore) store = stead_store_open (going->farm, STEAD_STORE_OPEN_READ_ONLY, error);

  if (store == NULL)
    return FALSE;
  stead_store_set_today (store, going->today);
  switch (going->what)
    {
    case WHAT_WORKBOOK:
      return stead_workbook_save (store, going->options.names, going->path, error);
    case WHAT_SEASON:
      return stead_paper_write (store, "season", NULL, NULL, going->path, error);
    case WHAT_CALENDAR:
      return stead_paper_write (store, "calendar", NULL, NULL, going->path, error);
    case WHAT_WHOLE:
    case WHAT_TABLES:
    default:
      return stead_folder_answer_write (store, going->path, &going->options, cancellable, error);
    }
}

static void
write_thread (GTask        *task,
              gpointer      source,
              gpointer      data,
              GCancellable *cancellable)
{
  GError *error = NULL;

  if (write_going (data, cancellable, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
written_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  Going *going = g_task_get_task_data (G_TASK (result));
  g_autofree char *name = g_filename_display_basename (going->path);
  g_autofree char *said = NULL;
  g_autoptr(GError) error = NULL;

  if (!g_task_propagate_boolean (G_TASK (result), &error))
    {
      stead_files_tell (going->over, _("Nothing left the farm."), error->message);
      return;
    }
  if (going->is_logged && !stead_desk_act (going->desk, _("what left the farm"), release_act, going, &error))
    stead_files_tell (going->over, _("The export was written, but it could not be written into the log."), error->message);
  /* Translators: the name of a file or folder. */
  said = g_strdup_printf (_("“%s” was written. Only you can read it on this computer."), name);
  stead_desk_say (going->desk, said, FALSE);
}

static void
place_chosen_cb (const char *path,
                 gpointer    data)
{
  Going *going = data;
  g_autoptr(GTask) task = NULL;

  if (path == NULL)
    {
      going_free (going);
      return;
    }
  going->path = g_strdup (path);
  task = g_task_new (NULL, NULL, written_cb, NULL);
  g_task_set_task_data (task, going, going_free);
  g_task_run_in_thread (task, write_thread);
}

/* The name put forward: the farm's, and what it is. */
static char *
name_of (SteadExportDialog *self,
         const char        *farm)
{
  static const char * const words[] = { NULL, N_("workbook"), N_("season"), N_("calendar"), N_("tables"), N_("folder") };
  What what = what_of (self);

  return g_strdup_printf ("%s %s%s", farm, _(words[what]), kinds[what - 1].ending);
}

static char *
plain_leaving (SteadExportDialog *self)
{
  g_autofree char *plain = stead_words_plain (gtk_label_get_label (self->leaving));
  g_autofree char *all = g_strdup_printf ("%s: %s", _(kinds[what_of (self) - 1].label), plain);

  return g_utf8_substring (all, 0, MIN (g_utf8_strlen (all, -1), 400));
}

static gboolean
stead_export_dialog_save (SteadDialog  *dialog,
                          GError      **error)
{
  SteadExportDialog *self = STEAD_EXPORT_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  SteadStore *store = stead_desk_get_store (desk);
  const char *whom = NULL;
  g_autofree char *name = NULL;
  Going *going;

  if (is_sensitive (self) && !stead_field_read_text (self->whom, &whom))
    return FALSE;
  going = g_new0 (Going, 1);
  going->over = g_object_ref (GTK_WIDGET (gtk_window_get_transient_for (GTK_WINDOW (self))));
  going->desk = g_object_ref (desk);
  going->what = what_of (self);
  going->options = options_of (self);
  going->is_logged = is_sensitive (self);
  going->farm = g_strdup (stead_store_get_path (store));
  going->sentence = plain_leaving (self);
  going->whom = g_strdup (whom);
  going->ground = g_strdup (stead_pick_get_text (self->ground));
  going->today = stead_store_get_set_day (store);
  name = name_of (self, stead_desk_get_farm (desk)->name);
  g_strdelimit (name, "/", '-');
  stead_files_save (going->over, _("Where to export to"), name, place_chosen_cb, going);
  return TRUE;
}

/* --- showing ---------------------------------------------------------------------------------- */

static void
stead_export_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_EXPORT_DIALOG);
  G_OBJECT_CLASS (stead_export_dialog_parent_class)->dispose (object);
}

static void
stead_export_dialog_class_init (SteadExportDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_export_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_export_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("show/stead-export-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadExportDialog, what);
  gtk_widget_class_bind_template_child (widget_class, SteadExportDialog, ground);
  gtk_widget_class_bind_template_child (widget_class, SteadExportDialog, choices);
  gtk_widget_class_bind_template_child (widget_class, SteadExportDialog, release);
  gtk_widget_class_bind_template_child (widget_class, SteadExportDialog, tables_box);
  gtk_widget_class_bind_template_child (widget_class, SteadExportDialog, names);
  gtk_widget_class_bind_template_child (widget_class, SteadExportDialog, notes);
  gtk_widget_class_bind_template_child (widget_class, SteadExportDialog, pictures);
  gtk_widget_class_bind_template_child (widget_class, SteadExportDialog, leaving);
  gtk_widget_class_bind_template_child (widget_class, SteadExportDialog, warning);
  gtk_widget_class_bind_template_child (widget_class, SteadExportDialog, tables);
  gtk_widget_class_bind_template_child (widget_class, SteadExportDialog, whom);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
}

static void
stead_export_dialog_init (SteadExportDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    stead_pick_append (self->what, kinds[i].what, _(kinds[i].label));
  stead_pick_show (self->what, WHAT_WORKBOOK);
  for (int i = 0; stead_release_grounds ()[i] != NULL; i++)
    stead_pick_append (self->ground, i + 1, _(stead_release_grounds ()[i]));
  stead_pick_show (self->ground, 1);
}

void
stead_export_dialog_show (GtkWidget *parent,
                          SteadDesk *desk)
{
  SteadExportDialog *self = g_object_new (STEAD_TYPE_EXPORT_DIALOG, NULL);

  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  changed_cb (self);
}
