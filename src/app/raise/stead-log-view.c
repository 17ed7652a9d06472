/* stead-log-view.c - a flock's entries as a table that can be edited.
 *
 * A cell that is edited becomes a changed copy of its entry, which the farm
 * file checks as it checks a new one; what it refuses is told in the cell.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-log-view.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-flock-answer.h"
#include "app/raise/stead-log-model.h"
#include "app/stead-files.h"
#include "app/stead-import-dialog.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "paper/stead-paper.h"

#define RESOURCE STEAD_UI ("raise/stead-log-view.ui")

struct _SteadLogView
{
  GtkWidget      parent_instance;

  SteadDesk     *desk;
  gint64         flock_id;
  char          *flock_name;
  SteadLogModel *model;
  GHashTable    *people;      /* id → name */

  GtkBox        *log_slot;
  GtkWidget     *leave_out, *delete_entry;
  SteadTable    *table;
};

G_DEFINE_FINAL_TYPE (SteadLogView, stead_log_view, GTK_TYPE_WIDGET)

static const SteadFlockEntry *
row_entry (gpointer item)
{
  return stead_row_get (item);
}

static const SteadUnit *
mass_unit (SteadLogView *self)
{
  return stead_unit_default (STEAD_DIMENSION_MASS, stead_desk_get_farm (self->desk)->units);
}

/* --- what the cells show ----------------------------------------------------- */

static char *
day_text (gpointer item,
          gpointer data)
{
  return row_entry (item)->id == 0 ? g_strdup ("") : stead_day_format (row_entry (item)->day, STEAD_DAY_STYLE_MEDIUM);
}

/* An empty cell for zero: the eye finds the few hens lost. */
static char *
count_text (gint32 count)
{
  return count > 0 ? stead_number_format (count, 0) : g_strdup ("");
}

static char *
eggs_text (gpointer item,
           gpointer data)
{
  gint32 eggs = row_entry (item)->eggs;

  return eggs == STEAD_COUNT_NONE ? g_strdup ("") : stead_number_format (eggs, 0);
}

static char *
cracked_text (gpointer item,
              gpointer data)
{
  return count_text (row_entry (item)->cracked);
}

static char *
deaths_text (gpointer item,
             gpointer data)
{
  return count_text (row_entry (item)->deaths);
}

static char *
culled_text (gpointer item,
             gpointer data)
{
  return count_text (row_entry (item)->culled);
}

static char *
feed_text (gpointer item,
           gpointer data)
{
  double kg = row_entry (item)->feed_kg;

  return isnan (kg) ? g_strdup ("") : stead_quantity_format (kg, mass_unit (data));
}

static char *
note_text (gpointer item,
           gpointer data)
{
  const SteadFlockEntry *entry = row_entry (item);

  return g_strdup (entry->note != NULL ? entry->note : "");
}

static char *
left_out_text (gpointer item,
               gpointer data)
{
  return g_strdup (row_entry (item)->left_out ? _("yes") : "");
}

static char *
person_text (gpointer item,
             gpointer data)
{
  SteadLogView *self = data;
  const char *name = g_hash_table_lookup (self->people, &row_entry (item)->person_id);

  return g_strdup (name != NULL ? name : "");
}

/* --- editing ------------------------------------------------------------------ */

static SteadFlockEntry *
copy_entry (const SteadFlockEntry *entry)
{
  SteadFlockEntry *copy = g_memdup2 (entry, sizeof *entry);

  copy->note = g_strdup (entry->note);
  return copy;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_flock_repo_save_entry (store, data, error);
}

static gboolean
save_changed (SteadLogView    *self,
              SteadFlockEntry *entry,
              GError         **error)
{
  g_autofree char *name = stead_flock_answer_entry_name (entry, stead_desk_get_farm (self->desk));
  g_autofree char *step = g_strdup_printf (_("change to %s"), name);

  return stead_desk_act (self->desk, step, save_act, entry, error);
}

/* An empty cell means @if_empty. */
static gboolean
parse_count (const char *text,
             gint32      if_empty,
             gint32     *out,
             GError    **error)
{
  g_autofree char *trimmed = g_strstrip (g_strdup (text));
  double value;

  if (trimmed[0] == '\0')
    {
      *out = if_empty;
      return TRUE;
    }
  if (!stead_number_parse (trimmed, &value, error))
    return FALSE;
  if (value < 0 || value > 1e6 || value != floor (value))
    {
      g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT, _("Enter a whole number, 0 or more."));
      return FALSE;
    }
  *out = (gint32) value;
  return TRUE;
}

typedef enum { EDIT_EGGS, EDIT_CRACKED, EDIT_DEATHS, EDIT_CULLED } CountColumn;

static gboolean
edit_count (SteadLogView *self,
            gpointer      item,
            CountColumn   column,
            const char   *text,
            GError      **error)
{
  g_autoptr(SteadFlockEntry) entry = copy_entry (row_entry (item));
  gint32 *counts[] = { &entry->eggs, &entry->cracked, &entry->deaths, &entry->culled };

  return parse_count (text, column == EDIT_EGGS ? STEAD_COUNT_NONE : 0, counts[column], error)
         && save_changed (self, entry, error);
}

static gboolean
eggs_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  return edit_count (data, item, EDIT_EGGS, text, error);
}

static gboolean
cracked_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  return edit_count (data, item, EDIT_CRACKED, text, error);
}

static gboolean
deaths_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  return edit_count (data, item, EDIT_DEATHS, text, error);
}

static gboolean
culled_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  return edit_count (data, item, EDIT_CULLED, text, error);
}

static gboolean
day_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  SteadLogView *self = data;
  g_autoptr(SteadFlockEntry) entry = copy_entry (row_entry (item));
  SteadDay today = stead_store_get_today (stead_desk_get_store (self->desk));

  return stead_day_parse (text, today, stead_date_order_from_locale (), &entry->day, error)
         && save_changed (self, entry, error);
}

static gboolean
feed_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  SteadLogView *self = data;
  g_autoptr(SteadFlockEntry) entry = copy_entry (row_entry (item));
  g_autofree char *trimmed = g_strstrip (g_strdup (text));

  if (trimmed[0] == '\0')
    entry->feed_kg = NAN;
  else if (!stead_quantity_parse (trimmed, STEAD_DIMENSION_MASS, mass_unit (self), &entry->feed_kg, NULL, error))
    return FALSE;
  return save_changed (self, entry, error);
}

static gboolean
note_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  g_autoptr(SteadFlockEntry) entry = copy_entry (row_entry (item));

  g_free (entry->note);
  entry->note = text[0] != '\0' ? g_strdup (text) : NULL;
  return save_changed (data, entry, error);
}

static void
build_table (SteadLogView *self)
{
  GtkWidget *table = stead_table_new (_("Entries of the flock"));

  self->table = STEAD_TABLE (table);
  stead_table_add_column (self->table, _("Day"), FALSE, FALSE, day_text, day_edit, NULL, self);
  stead_table_add_column (self->table, _("Eggs"), TRUE, FALSE, eggs_text, eggs_edit, NULL, self);
  stead_table_add_column (self->table, _("Cracked"), TRUE, FALSE, cracked_text, cracked_edit, NULL, self);
  stead_table_add_column (self->table, _("Feed"), TRUE, FALSE, feed_text, feed_edit, NULL, self);
  stead_table_add_column (self->table, _("Died"), TRUE, FALSE, deaths_text, deaths_edit, NULL, self);
  stead_table_add_column (self->table, _("Taken out"), TRUE, FALSE, culled_text, culled_edit, NULL, self);
  stead_table_add_column (self->table, _("Note"), FALSE, TRUE, note_text, note_edit, NULL, self);
  stead_table_add_column (self->table, _("By"), FALSE, FALSE, person_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Left out"), FALSE, FALSE, left_out_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Entries appear here: record a day at the left, or import a table."));
  stead_table_set_model (self->table, G_LIST_MODEL (self->model));
  gtk_widget_set_hexpand (table, TRUE);
  gtk_box_append (self->log_slot, table);
}

/* --- what the buttons do ------------------------------------------------------ */

static SteadFlockEntry *
selected_copy (SteadLogView *self)
{
  gpointer row = stead_table_get_selected (self->table);

  if (row != NULL && row_entry (row)->id != 0)
    return copy_entry (row_entry (row));
  stead_desk_say (self->desk, _("Choose an entry of the log first."), FALSE);
  return NULL;
}

static void
leave_out_cb (SteadLogView *self)
{
  g_autoptr(SteadFlockEntry) entry = selected_copy (self);
  g_autoptr(GError) error = NULL;

  if (entry == NULL)
    return;
  entry->left_out = !entry->left_out;
  if (!save_changed (self, entry, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

static gboolean
delete_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_flock_repo_delete_entry (store, ((SteadFlockEntry *) data)->id, error);
}

static void
delete_entry_cb (SteadLogView *self)
{
  g_autoptr(SteadFlockEntry) entry = selected_copy (self);
  g_autofree char *name = NULL, *step = NULL;
  g_autoptr(GError) error = NULL;

  if (entry == NULL)
    return;
  name = stead_flock_answer_entry_name (entry, stead_desk_get_farm (self->desk));
  step = g_strdup_printf (_("deleting %s"), name);
  if (!stead_desk_act (self->desk, step, delete_act, entry, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

static void
import_cb (SteadLogView *self)
{
  stead_import_dialog_show (GTK_WIDGET (self), self->desk, STEAD_IMPORT_FLOCK_LOG, self->flock_id);
}

static void
export_chosen_cb (const char *path,
                  gpointer    data)
{
  g_autoptr(SteadLogView) self = data;
  SteadPaperOptions options = { .period = STEAD_PERIOD_WHOLE_BATCH };
  g_autoptr(GError) error = NULL;
  g_autofree char *base = NULL, *text = NULL;

  if (path == NULL)
    return;
  if (!stead_paper_write (stead_desk_get_store (self->desk), "flock-log", self->flock_name, &options, path, &error))
    {
      stead_desk_say (self->desk, error->message, FALSE);
      return;
    }
  base = g_path_get_basename (path);
  text = g_strdup_printf (_("The log is saved as %s."), base);
  stead_desk_say (self->desk, text, FALSE);
}

static void
export_cb (SteadLogView *self)
{
  g_autofree char *name = g_strdup_printf ("%s.xlsx", self->flock_name);

  stead_files_save (GTK_WIDGET (self), _("Save the log as a spreadsheet (.xlsx) or a table (.csv)"), name,
                    export_chosen_cb, g_object_ref (self));
}

/* --- the type ------------------------------------------------------------------ */

static void
stead_log_view_dispose (GObject *object)
{
  SteadLogView *self = STEAD_LOG_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_LOG_VIEW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->model);
  g_clear_object (&self->desk);
  g_clear_pointer (&self->people, g_hash_table_unref);
  g_clear_pointer (&self->flock_name, g_free);
  G_OBJECT_CLASS (stead_log_view_parent_class)->dispose (object);
}

static void
stead_log_view_class_init (SteadLogViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_log_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadLogView, log_slot);
  gtk_widget_class_bind_template_child (widget_class, SteadLogView, leave_out);
  gtk_widget_class_bind_template_child (widget_class, SteadLogView, delete_entry);
  gtk_widget_class_bind_template_callback (widget_class, leave_out_cb);
  gtk_widget_class_bind_template_callback (widget_class, delete_entry_cb);
  gtk_widget_class_bind_template_callback (widget_class, import_cb);
  gtk_widget_class_bind_template_callback (widget_class, export_cb);
}

static void
stead_log_view_init (SteadLogView *self)
{
  self->model = stead_log_model_new ();
  self->people = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
  build_table (self);
}

static void
load_people (SteadLogView *self,
             SteadStore   *store)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  g_hash_table_remove_all (self->people);
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      SteadPerson *person = people->pdata[i];

      g_hash_table_insert (self->people, g_memdup2 (&person->id, sizeof person->id), g_strdup (person->name));
    }
}

void
stead_log_view_show (SteadLogView     *self,
                     SteadDesk        *desk,
                     const SteadFlock *flock)
{
  SteadStore *store = stead_desk_get_store (desk);

  g_return_if_fail (STEAD_IS_LOG_VIEW (self));

  g_set_object (&self->desk, desk);
  self->flock_id = flock->id;
  g_free (self->flock_name);
  self->flock_name = g_strdup (flock->name);
  load_people (self, store);
  stead_log_model_load (self->model, store, flock->id);
}
