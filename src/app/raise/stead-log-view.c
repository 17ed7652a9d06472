/* stead-log-view.c - what was written down of a batch, as a table that can be edited. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-log-view.h"

#include "answer/stead-answer-error.h"
#include "app/stead-files.h"
#include "app/stead-import-dialog.h"
#include "app/stead-ui.h"
#include "paper/stead-paper.h"
#include "store/stead-farm-repo.h"

#define RESOURCE STEAD_UI ("raise/stead-log-view.ui")

struct _SteadLogView
{
  GtkWidget           parent_instance;

  SteadDesk          *desk;
  const SteadLogKind *kind;        /* (nullable): until it is first shown */
  gint64              batch_id;
  char               *name;
  SteadLogModel      *model;
  GHashTable         *people;      /* id → name */

  GtkBox             *log_slot;
  GtkButton          *add, *change, *import;
  SteadTable         *table;
};

G_DEFINE_FINAL_TYPE (SteadLogView, stead_log_view, GTK_TYPE_WIDGET)

/* --- what every entry has --------------------------------------------------------- */

static gint64
id_of (SteadLogView  *self,
       gconstpointer  entry)
{
  return G_STRUCT_MEMBER (gint64, entry, self->kind->id_at);
}

static char *
day_text (gpointer item,
          gpointer data)
{
  SteadLogView *self = data;
  gconstpointer entry = stead_row_get (item);

  return id_of (self, entry) == 0 ? g_strdup ("")
         : stead_day_format (G_STRUCT_MEMBER (SteadDay, entry, self->kind->day_at), STEAD_DAY_STYLE_MEDIUM);
}

static char *
note_text (gpointer item,
           gpointer data)
{
  SteadLogView *self = data;
  const char *note = G_STRUCT_MEMBER (const char *, stead_row_get (item), self->kind->note_at);

  return g_strdup (note != NULL ? note : "");
}

static char *
left_out_text (gpointer item,
               gpointer data)
{
  SteadLogView *self = data;

  return g_strdup (G_STRUCT_MEMBER (gboolean, stead_row_get (item), self->kind->left_out_at) ? _("yes") : "");
}

static char *
person_text (gpointer item,
             gpointer data)
{
  SteadLogView *self = data;
  const char *name = g_hash_table_lookup (self->people,
                                          &G_STRUCT_MEMBER (gint64, stead_row_get (item), self->kind->person_at));

  return g_strdup (name != NULL ? name : "");
}

/* --- what a kind's columns need ----------------------------------------------------- */

SteadUnitSystem
stead_log_view_units (SteadLogView *self)
{
  return stead_desk_get_farm (self->desk)->units;
}

char *
stead_log_count_text (gint32 count)
{
  return count > 0 ? stead_number_format (count, 0) : g_strdup ("");
}

gboolean
stead_log_parse_count (const char *text,
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

gboolean
stead_log_parse_quantity (SteadLogView    *self,
                          const char      *text,
                          SteadDimension   dimension,
                          double          *out,
                          GError         **error)
{
  g_autofree char *trimmed = g_strstrip (g_strdup (text));

  if (trimmed[0] == '\0')
    {
      *out = NAN;
      return TRUE;
    }
  return stead_quantity_parse (trimmed, dimension, stead_unit_default (dimension, stead_log_view_units (self)), out,
                               NULL, error);
}

char *
stead_log_quantity_text (SteadLogView   *self,
                         double          base,
                         SteadDimension  dimension)
{
  return isnan (base) ? g_strdup ("")
         : stead_quantity_format (base, stead_unit_default (dimension, stead_log_view_units (self)));
}

gboolean
stead_log_view_save (SteadLogView  *self,
                     gpointer       entry,
                     GError       **error)
{
  g_autofree char *name = self->kind->name (entry, stead_desk_get_farm (self->desk));
  g_autofree char *step = g_strdup_printf (_("change to %s"), name);

  return stead_desk_act (self->desk, step, self->kind->save, entry, error);
}

static gboolean
day_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  SteadLogView *self = data;
  gpointer entry = self->kind->copy (stead_row_get (item));
  SteadDay today = stead_store_get_today (stead_desk_get_store (self->desk));
  gboolean saved = stead_day_parse (text, today, stead_date_order_from_locale (),
                                    &G_STRUCT_MEMBER (SteadDay, entry, self->kind->day_at), error)
                   && stead_log_view_save (self, entry, error);

  self->kind->source.free (entry);
  return saved;
}

static gboolean
note_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  SteadLogView *self = data;
  gpointer entry = self->kind->copy (stead_row_get (item));
  char **note = &G_STRUCT_MEMBER (char *, entry, self->kind->note_at);
  gboolean saved;

  g_free (*note);
  *note = text[0] != '\0' ? g_strdup (text) : NULL;
  saved = stead_log_view_save (self, entry, error);
  self->kind->source.free (entry);
  return saved;
}

/* --- the table ---------------------------------------------------------------------- */

void
stead_log_view_add_column (SteadLogView   *self,
                           const char     *title,
                           gboolean        numeric,
                           SteadTableText  text,
                           SteadTableEdit  edit)
{
  stead_table_add_column (self->table, title, numeric, FALSE, text, edit, NULL, self);
}

static void
open_row (gpointer item,
          gpointer data)
{
  SteadLogView *self = data;
  gint64 id = id_of (self, stead_row_get (item));

  if (id != 0)
    self->kind->open (GTK_WIDGET (self), self->desk, self->batch_id, id);
}

static void
build_table (SteadLogView *self)
{
  const SteadLogKind *kind = self->kind;
  GtkWidget *table = stead_table_new (_(kind->table_label));
  gboolean in_cells = kind->open == NULL;

  self->table = STEAD_TABLE (table);
  stead_log_view_add_column (self, _("Day"), FALSE, day_text, in_cells ? day_edit : NULL);
  kind->columns (self);
  stead_table_add_column (self->table, _("Note"), FALSE, TRUE, note_text, in_cells ? note_edit : NULL, NULL, self);
  stead_log_view_add_column (self, _("By"), FALSE, person_text, NULL);
  stead_log_view_add_column (self, _("Left out"), FALSE, left_out_text, NULL);
  stead_table_set_empty (self->table, _(kind->empty));
  stead_table_set_model (self->table, G_LIST_MODEL (self->model));
  if (!in_cells)
    stead_table_set_activate (self->table, open_row, self);
  gtk_widget_set_hexpand (table, TRUE);
  gtk_box_append (self->log_slot, table);
}

static void
build (SteadLogView       *self,
       const SteadLogKind *kind)
{
  self->kind = kind;
  self->model = stead_log_model_new (&kind->source);
  build_table (self);
  gtk_widget_set_visible (GTK_WIDGET (self->add), kind->add_label != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->change), kind->open != NULL);
  if (kind->add_label != NULL)
    gtk_button_set_label (self->add, _(kind->add_label));
  gtk_button_set_label (self->import, _(kind->import_label));
}

/* --- what the buttons do ------------------------------------------------------------ */

/* (transfer full) (nullable) */
static gpointer
selected_copy (SteadLogView *self)
{
  gpointer row = stead_table_get_selected (self->table);

  if (row != NULL && id_of (self, stead_row_get (row)) != 0)
    return self->kind->copy (stead_row_get (row));
  stead_desk_say (self->desk, _("Choose an entry of the log first."), FALSE);
  return NULL;
}

static void
add_cb (SteadLogView *self)
{
  self->kind->open (GTK_WIDGET (self), self->desk, self->batch_id, 0);
}

static void
change_cb (SteadLogView *self)
{
  gpointer entry = selected_copy (self);

  if (entry == NULL)
    return;
  self->kind->open (GTK_WIDGET (self), self->desk, self->batch_id, id_of (self, entry));
  self->kind->source.free (entry);
}

static void
leave_out_cb (SteadLogView *self)
{
  gpointer entry = selected_copy (self);
  g_autoptr(GError) error = NULL;

  if (entry == NULL)
    return;
  G_STRUCT_MEMBER (gboolean, entry, self->kind->left_out_at) ^= TRUE;
  if (!stead_log_view_save (self, entry, &error))
    stead_desk_say (self->desk, error->message, FALSE);
  self->kind->source.free (entry);
}

typedef struct
{
  const SteadLogKind *kind;
  gint64              id;
} Removing;

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  const Removing *removing = data;

  return removing->kind->remove (store, removing->id, error);
}

static void
delete_entry_cb (SteadLogView *self)
{
  gpointer entry = selected_copy (self);
  g_autofree char *name = NULL, *step = NULL;
  g_autoptr(GError) error = NULL;
  Removing removing;

  if (entry == NULL)
    return;
  removing = (Removing) { self->kind, id_of (self, entry) };
  name = self->kind->name (entry, stead_desk_get_farm (self->desk));
  step = g_strdup_printf (_("deleting %s"), name);
  if (!stead_desk_act (self->desk, step, remove_act, &removing, &error))
    stead_desk_say (self->desk, error->message, FALSE);
  self->kind->source.free (entry);
}

static void
import_cb (SteadLogView *self)
{
  stead_import_dialog_show (GTK_WIDGET (self), self->desk, self->kind->import, self->batch_id);
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
  if (!stead_paper_write (stead_desk_get_store (self->desk), self->kind->paper, self->name, &options, path, &error))
    {
      stead_desk_say (self->desk, error->message, FALSE);
      return;
    }
  base = g_path_get_basename (path);
  text = g_strdup_printf (_("The table is saved as %s."), base);
  stead_desk_say (self->desk, text, FALSE);
}

static void
export_cb (SteadLogView *self)
{
  g_autofree char *name = g_strdup_printf ("%s.xlsx", self->name);

  stead_files_save (GTK_WIDGET (self), _("Save as a spreadsheet (.xlsx) or a table (.csv)"), name,
                    export_chosen_cb, g_object_ref (self));
}

/* --- the type ------------------------------------------------------------------------ */

static void
stead_log_view_dispose (GObject *object)
{
  SteadLogView *self = STEAD_LOG_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_LOG_VIEW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->model);
  g_clear_object (&self->desk);
  g_clear_pointer (&self->people, g_hash_table_unref);
  g_clear_pointer (&self->name, g_free);
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
  gtk_widget_class_bind_template_child (widget_class, SteadLogView, add);
  gtk_widget_class_bind_template_child (widget_class, SteadLogView, change);
  gtk_widget_class_bind_template_child (widget_class, SteadLogView, import);
  gtk_widget_class_bind_template_callback (widget_class, add_cb);
  gtk_widget_class_bind_template_callback (widget_class, change_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_out_cb);
  gtk_widget_class_bind_template_callback (widget_class, delete_entry_cb);
  gtk_widget_class_bind_template_callback (widget_class, import_cb);
  gtk_widget_class_bind_template_callback (widget_class, export_cb);
}

static void
stead_log_view_init (SteadLogView *self)
{
  self->people = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
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
stead_log_view_show (SteadLogView       *self,
                     SteadDesk          *desk,
                     const SteadLogKind *kind,
                     gint64              batch_id,
                     const char         *name)
{
  SteadStore *store = stead_desk_get_store (desk);

  g_return_if_fail (STEAD_IS_LOG_VIEW (self));
  g_return_if_fail (self->kind == NULL || self->kind == kind);

  g_set_object (&self->desk, desk);
  self->batch_id = batch_id;
  g_free (self->name);
  self->name = g_strdup (name);
  if (self->kind == NULL)
    build (self, kind);
  load_people (self, store);
  stead_log_model_load (self->model, store, batch_id);
}
