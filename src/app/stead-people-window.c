/* stead-people-window.c - who works on the farm: a table to edit, a line to add.
 *
 * Names are the only thing here about a person, with a role and a class year.
 * "Forget the name" puts the role in its place everywhere, for good: that is what
 * a person may ask for, so it is the one step that cannot be undone, and it says so.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-field.h"
#include "app/stead-people-window.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "core/stead-core-error.h"

struct _SteadPeopleWindow
{
  GtkWindow   parent_instance;

  SteadTable *table;
  SteadField *name;
  GtkWidget  *role;
  SteadField *class_year;
  GtkWidget  *error;
  GtkWidget  *forget;
  GtkWidget  *sure;

  SteadDesk  *desk;
};

G_DEFINE_FINAL_TYPE (SteadPeopleWindow, stead_people_window, GTK_TYPE_WINDOW)

static const char *
role_name (SteadPersonRole role)
{
  switch (role)
    {
    case STEAD_PERSON_ADVISOR: return C_("role", "Advisor");
    case STEAD_PERSON_HELPER:  return C_("role", "Helper");
    case STEAD_PERSON_STUDENT:
    default:                   return C_("role", "Student");
    }
}

/* --- the table --------------------------------------------------------------------------- */

static char *
name_text (gpointer item,
           gpointer data)
{
  return g_strdup (((SteadPerson *) stead_row_get (item))->name);
}

static char *
role_text (gpointer item,
           gpointer data)
{
  return g_strdup (role_name (((SteadPerson *) stead_row_get (item))->role));
}

static char *
year_text (gpointer item,
           gpointer data)
{
  const SteadPerson *person = stead_row_get (item);

  return person->class_year > 0 ? g_strdup_printf ("%d", person->class_year) : g_strdup ("");
}

static int
compare_names (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  const SteadPerson *x = stead_row_get ((SteadRow *) a), *y = stead_row_get ((SteadRow *) b);

  return g_utf8_collate (x->name, y->name);
}

static gboolean
save_person (SteadStore  *store,
             gpointer     person,
             GError     **error)
{
  return stead_person_repo_save (store, person, error);
}

static gboolean
change (SteadPeopleWindow  *self,
        SteadPerson        *person,
        GError            **error)
{
  /* Translators: a step that can be undone; %s is a person's name. */
  g_autofree char *name = g_strdup_printf (_("Person: %s"), person->name);

  return stead_desk_act (self->desk, name, save_person, person, error);
}

/* What the row holds stays as it is until the table is filled anew. */
static SteadPerson *
copy_of (gpointer item)
{
  const SteadPerson *person = stead_row_get (item);
  SteadPerson *copy = g_new0 (SteadPerson, 1);

  *copy = *person;
  copy->name = g_strdup (person->name);
  return copy;
}

static gboolean
edit_name (gpointer     item,
           const char  *text,
           gpointer     data,
           GError     **error)
{
  g_autoptr(SteadPerson) person = copy_of (item);

  g_free (person->name);
  person->name = g_strstrip (g_strdup (text));
  return change (data, person, error);
}

static gboolean
edit_year (gpointer     item,
           const char  *text,
           gpointer     data,
           GError     **error)
{
  g_autoptr(SteadPerson) person = copy_of (item);
  guint64 year = 0;

  if (*text != '\0' && !g_ascii_string_to_unsigned (text, 10, 1990, 2199, &year, NULL))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("Enter a year such as 2027, or nothing."));
      return FALSE;
    }
  person->class_year = (int) year;
  return change (data, person, error);
}

static void
refresh (SteadPeopleWindow *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  GPtrArray *people = store != NULL ? stead_person_repo_list (store, NULL) : NULL;
  g_autoptr(GListModel) rows = NULL;

  if (people != NULL)
    rows = stead_rows_from_array (people, (GDestroyNotify) stead_person_free);
  stead_table_set_model (self->table, rows);
  gtk_widget_set_visible (self->sure, FALSE);
}

/* --- a new person -------------------------------------------------------------------------- */

static void
add_cb (SteadPeopleWindow *self)
{
  g_autoptr(SteadPerson) person = g_new0 (SteadPerson, 1);
  g_autoptr(GError) error = NULL;
  const char *name;
  gint64 year;

  stead_ui_tell (GTK_LABEL (self->error), NULL);
  if (!stead_field_read_text (self->name, &name) || !stead_field_read_count (self->class_year, 0, &year))
    return;
  person->name = g_strstrip (g_strdup (name));
  person->role = (SteadPersonRole) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->role));
  person->class_year = (int) MIN (year, 9999);
  person->left_on = STEAD_DAY_NONE;
  if (!change (self, person, &error))
    {
      stead_ui_tell (GTK_LABEL (self->error), error->message);
      return;
    }
  stead_field_set_text (self->name, "");
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}

/* --- forgetting a name ------------------------------------------------------------------------ */

static void
forget_cb (SteadPeopleWindow *self)
{
  if (stead_table_get_selected (self->table) == NULL)
    stead_ui_tell (GTK_LABEL (self->error), _("First choose a person in the list."));
  else
    gtk_widget_set_visible (self->sure, TRUE);
}

static void
keep_cb (SteadPeopleWindow *self)
{
  gtk_widget_set_visible (self->sure, FALSE);
}

static gboolean
forget_person (SteadStore  *store,
               gpointer     id,
               GError     **error)
{
  return stead_person_repo_forget (store, *(gint64 *) id, error);
}

static void
forget_now_cb (SteadPeopleWindow *self)
{
  SteadRow *row = stead_table_get_selected (self->table);
  g_autoptr(GError) error = NULL;
  gint64 id;

  if (row == NULL)
    return;
  id = ((SteadPerson *) stead_row_get (row))->id;
  /* Translators: a step's name; it does not say whose name was forgotten. */
  if (!stead_desk_act (self->desk, _("A name forgotten"), forget_person, &id, &error))
    stead_ui_tell (GTK_LABEL (self->error), error->message);
  gtk_widget_set_visible (self->sure, FALSE);
}

/* --- the object ----------------------------------------------------------------------------------- */

static void
stead_people_window_dispose (GObject *object)
{
  SteadPeopleWindow *self = STEAD_PEOPLE_WINDOW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_PEOPLE_WINDOW);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_people_window_parent_class)->dispose (object);
}

static void
stead_people_window_class_init (SteadPeopleWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_people_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("stead-people-window.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadPeopleWindow, table);
  gtk_widget_class_bind_template_child (widget_class, SteadPeopleWindow, name);
  gtk_widget_class_bind_template_child (widget_class, SteadPeopleWindow, role);
  gtk_widget_class_bind_template_child (widget_class, SteadPeopleWindow, class_year);
  gtk_widget_class_bind_template_child (widget_class, SteadPeopleWindow, error);
  gtk_widget_class_bind_template_child (widget_class, SteadPeopleWindow, forget);
  gtk_widget_class_bind_template_child (widget_class, SteadPeopleWindow, sure);
  gtk_widget_class_bind_template_callback (widget_class, add_cb);
  gtk_widget_class_bind_template_callback (widget_class, forget_cb);
  gtk_widget_class_bind_template_callback (widget_class, forget_now_cb);
  gtk_widget_class_bind_template_callback (widget_class, keep_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
stead_people_window_init (SteadPeopleWindow *self)
{
  g_autoptr(GtkStringList) roles = gtk_string_list_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  for (int role = STEAD_PERSON_STUDENT; role <= STEAD_PERSON_HELPER; role++)
    gtk_string_list_append (roles, role_name ((SteadPersonRole) role));
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->role), G_LIST_MODEL (roles));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  stead_table_set_name (self->table, _("People"));
  stead_table_add_column (self->table, _("Name"), FALSE, TRUE, name_text, edit_name, compare_names, self);
  stead_table_add_column (self->table, _("Role"), FALSE, FALSE, role_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Class of"), TRUE, FALSE, year_text, edit_year, NULL, self);
  stead_table_set_empty (self->table, _("Nobody is entered yet. The names of those who work on the farm belong here, "
                                        "so that the log can say who did what."));
}

void
stead_people_window_show (GtkWidget *parent,
                          SteadDesk *desk)
{
  SteadPeopleWindow *self = g_object_new (STEAD_TYPE_PEOPLE_WINDOW, NULL);

  self->desk = g_object_ref (desk);
  g_signal_connect_object (desk, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
  gtk_window_set_transient_for (GTK_WINDOW (self), GTK_WINDOW (gtk_widget_get_root (parent)));
  gtk_window_present (GTK_WINDOW (self));
}
