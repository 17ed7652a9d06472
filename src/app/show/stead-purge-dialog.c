/* stead-purge-dialog.c - people who left are removed for good.
 *
 * The button works only once somebody is chosen: pressing it is the answer to a question
 * that the whole dialog asks.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-purge-dialog.h"

#include "app/stead-files.h"
#include "app/stead-ui.h"
#include "store/stead-purge.h"

struct _SteadPurgeDialog
{
  SteadDialog     parent_instance;

  GtkBox         *people;
  GtkLabel       *copies;
  GtkCheckButton *with_copies;
};

G_DEFINE_FINAL_TYPE (SteadPurgeDialog, stead_purge_dialog, STEAD_TYPE_DIALOG)

static GArray *
read_chosen (SteadPurgeDialog *self)
{
  GArray *ids = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (GtkWidget *at = gtk_widget_get_first_child (GTK_WIDGET (self->people)); at != NULL; at = gtk_widget_get_next_sibling (at))
    {
      const gint64 *id = g_object_get_data (G_OBJECT (at), "id");

      if (id != NULL && gtk_check_button_get_active (GTK_CHECK_BUTTON (at)))
        g_array_append_val (ids, *id);
    }
  return ids;
}

static char *
say_purged (const SteadPurged *purged,
            guint              undeleted)
{
  g_autofree char *done = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u person was removed.", "%u people were removed.",
                                                        purged->people), purged->people);
  g_autofree char *left = NULL;
  g_autofree char *copies = NULL;

  if (purged->left > 0)
    left = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "The name stays in %u row that is signed.",
                                         "The name stays in %u rows that are signed.", purged->left), purged->left);
  if (undeleted > 0)
    copies = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u copy still holds it.", "%u copies still hold it.",
                                           undeleted), undeleted);
  return g_strjoin (" ", done, left != NULL ? left : copies != NULL ? copies : "",
                    left != NULL && copies != NULL ? copies : "", NULL);
}

static gboolean
stead_purge_dialog_save (SteadDialog  *dialog,
                         GError      **error)
{
  SteadPurgeDialog *self = STEAD_PURGE_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  g_autoptr(GArray) ids = read_chosen (self);
  g_autoptr(SteadPurged) purged = NULL;
  g_autofree char *said = NULL;
  guint undeleted;

  if (ids->len == 0)
    {
      stead_dialog_show_error (dialog, _("Choose who is removed."));
      return FALSE;
    }
  purged = stead_purge_people (stead_desk_get_store (desk), ids, error);
  if (purged == NULL)
    return FALSE;
  undeleted = gtk_check_button_get_active (self->with_copies) ? stead_purge_delete_copies (purged->copies)
                                                              : purged->copies->len;
  said = say_purged (purged, undeleted);
  stead_desk_say (desk, g_strchomp (said), FALSE);
  return TRUE;
}

/* --- showing --------------------------------------------------------------------------- */

static void
add_person (SteadPurgeDialog       *self,
            const SteadPurgePerson *person)
{
  g_autofree char *left = person->left_on != STEAD_DAY_NONE ? stead_day_format (person->left_on, STEAD_DAY_STYLE_MEDIUM) : NULL;
  g_autofree char *until = person->keep_until != STEAD_DAY_NONE ? stead_day_format (person->keep_until, STEAD_DAY_STYLE_MEDIUM)
                                                                : NULL;
  g_autofree char *text = NULL;
  GtkWidget *check;

  if (until != NULL)
    /* Translators: a person, and the school's day for removing what is kept of the person. */
    text = g_strdup_printf (_("%s, to be kept until %s"), person->name, until);
  else if (left != NULL)
    /* Translators: a person, and the day on which the person left. */
    text = g_strdup_printf (_("%s, left on %s"), person->name, left);
  check = gtk_check_button_new_with_label (text != NULL ? text : person->name);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), person->due);
  g_object_set_data_full (G_OBJECT (check), "id", g_memdup2 (&person->id, sizeof person->id), g_free);
  gtk_box_append (self->people, check);
}

static void
fill_people (SteadPurgeDialog *self,
             SteadStore       *store)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) people = stead_purge_list (store, &error);
  GtkWidget *nobody;

  if (people == NULL)
    {
      stead_dialog_show_error (STEAD_DIALOG (self), error->message);
      return;
    }
  for (guint i = 0; i < people->len; i++)
    add_person (self, people->pdata[i]);
  if (people->len > 0)
    return;
  nobody = gtk_label_new (_("Nobody has left. Say of a person who left on which day that was; then he or she stands here."));
  gtk_label_set_wrap (GTK_LABEL (nobody), TRUE);
  gtk_label_set_xalign (GTK_LABEL (nobody), 0);
  gtk_box_append (self->people, nobody);
}

/* Named one by one, so that the person can look for them elsewhere, too. */
static void
fill_copies (SteadPurgeDialog *self,
             SteadStore       *store)
{
  const char *path = stead_store_get_path (store);
  g_autoptr(GPtrArray) copies = path != NULL ? stead_purge_list_copies (path) : NULL;
  g_autoptr(GString) names = g_string_new (NULL);
  g_autofree char *text = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->with_copies), copies != NULL && copies->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->copies), copies != NULL && copies->len > 0);
  if (copies == NULL || copies->len == 0)
    return;
  for (guint i = 0; i < copies->len; i++)
    {
      g_autofree char *name = g_filename_display_basename (copies->pdata[i]);

      g_string_append_printf (names, "%s“%s”", i > 0 ? ", " : "", name);
    }
  /* Translators: names of files, in quotes. */
  text = g_strdup_printf (_("These copies beside the farm hold the names, too: %s."), names->str);
  gtk_label_set_text (self->copies, text);
}

static void
stead_purge_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_PURGE_DIALOG);
  G_OBJECT_CLASS (stead_purge_dialog_parent_class)->dispose (object);
}

static void
stead_purge_dialog_class_init (SteadPurgeDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_purge_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_purge_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("show/stead-purge-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadPurgeDialog, people);
  gtk_widget_class_bind_template_child (widget_class, SteadPurgeDialog, copies);
  gtk_widget_class_bind_template_child (widget_class, SteadPurgeDialog, with_copies);
}

static void
stead_purge_dialog_init (SteadPurgeDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_purge_dialog_show (GtkWidget *parent,
                         SteadDesk *desk)
{
  SteadPurgeDialog *self = g_object_new (STEAD_TYPE_PURGE_DIALOG, NULL);

  fill_people (self, stead_desk_get_store (desk));
  fill_copies (self, stead_desk_get_store (desk));
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}
