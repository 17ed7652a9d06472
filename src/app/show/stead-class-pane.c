/* stead-class-pane.c - the people of the farm, one row each. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-class-pane.h"

#include "answer/stead-class-answer.h"
#include "app/stead-import-dialog.h"
#include "app/stead-people-window.h"

struct _SteadClassPane
{
  SteadPane   parent_instance;

  SteadTable *table;
};

G_DEFINE_FINAL_TYPE (SteadClassPane, stead_class_pane, STEAD_TYPE_PANE)

static const SteadPerson *
person_of (gconstpointer item)
{
  return stead_row_get (STEAD_ROW ((gpointer) item));
}

static char *
name_text (gpointer item,
           gpointer data)
{
  return g_strdup (person_of (item)->name);
}

static char *
role_text (gpointer item,
           gpointer data)
{
  return g_strdup (stead_words_role (person_of (item)->role));
}

static char *
year_text (gpointer item,
           gpointer data)
{
  int year = person_of (item)->class_year;

  return year > 0 ? g_strdup_printf ("%d", year) : g_strdup ("");
}

static int
compare_names (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  return g_utf8_collate (person_of (a)->name, person_of (b)->name);
}

static void
people_cb (SteadPane *pane)
{
  stead_people_window_show (GTK_WIDGET (pane), stead_pane_get_desk (pane));
}

static void
import_cb (SteadPane *pane)
{
  stead_import_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), STEAD_IMPORT_PEOPLE, 0);
}

static void
stead_class_pane_refresh (SteadPane *pane)
{
  SteadClassPane *self = STEAD_CLASS_PANE (pane);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadClassAnswer) answer = stead_class_answer_new (stead_pane_get_store (pane), &error);
  g_autoptr(GListModel) rows = NULL;

  stead_pane_say (pane, answer != NULL ? answer->sentence : NULL, error);
  if (answer == NULL)
    return;
  rows = stead_rows_from_array (g_steal_pointer (&answer->people), (GDestroyNotify) stead_person_free);
  stead_table_set_model (self->table, rows);
}

static void
stead_class_pane_class_init (SteadClassPaneClass *klass)
{
  STEAD_PANE_CLASS (klass)->refresh = stead_class_pane_refresh;
}

static void
stead_class_pane_init (SteadClassPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  self->table = stead_pane_add_table (pane, _("The class"));
  stead_table_add_column (self->table, _("Name"), FALSE, TRUE, name_text, NULL, compare_names, self);
  stead_table_add_column (self->table, _("Role"), FALSE, FALSE, role_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Class of"), TRUE, FALSE, year_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Nobody is entered yet. The names of those who work on the farm belong here, "
                                        "so that the log can say who did what."));
  stead_pane_add_button (pane, _("People…"), G_CALLBACK (people_cb));
  stead_pane_add_button (pane, _("Import a class list…"), G_CALLBACK (import_cb));
}
