/* stead-crop-log.c - what was written down of a crop: picks, plants lost, notes. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-crop-log.h"

#include "answer/stead-crop-pick.h"
#include "app/stead-import-dialog.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"

#define RESOURCE STEAD_UI ("raise/stead-crop-log.ui")

struct _SteadCropLog
{
  GtkWidget       parent_instance;

  SteadDesk      *desk;
  gint64          crop_id;
  SteadUnitSystem units;
  GHashTable     *people;    /* id → name */

  GtkBox         *slot;
  GtkWidget      *remove;
  SteadTable     *table;
};

G_DEFINE_FINAL_TYPE (SteadCropLog, stead_crop_log, GTK_TYPE_WIDGET)

/* A line of the log: a pick, or an entry. */
typedef struct
{
  SteadDay  day;
  gint64    harvest_id;   /* 0: an entry */
  gint64    entry_id;
  double    good_kg, lost_kg;
  gint32    plants;
  char     *grade, *reason, *note, *lot;
  gint64    person_id;
} Line;

static void
line_free (gpointer data)
{
  Line *line = data;

  g_free (line->grade);
  g_free (line->reason);
  g_free (line->note);
  g_free (line->lot);
  g_free (line);
}

static const Line *
row_line (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

/* --- what the cells show ----------------------------------------------------- */

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (row_line (item)->day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
kg_text (double        kg,
         SteadCropLog *self)
{
  return kg > 0 ? stead_crop_kg_text (kg, self->units) : g_strdup ("");
}

static char *
picked_text (gpointer item,
             gpointer data)
{
  return kg_text (row_line (item)->good_kg, data);
}

static char *
lost_text (gpointer item,
           gpointer data)
{
  return kg_text (row_line (item)->lost_kg, data);
}

static char *
or_empty (const char *text)
{
  return g_strdup (text != NULL ? text : "");
}

static char *
grade_text (gpointer item,
            gpointer data)
{
  return or_empty (row_line (item)->grade);
}

static char *
lot_text (gpointer item,
          gpointer data)
{
  return or_empty (row_line (item)->lot);
}

static char *
plants_text (gpointer item,
             gpointer data)
{
  return row_line (item)->plants > 0 ? stead_number_format (row_line (item)->plants, 0) : g_strdup ("");
}

static char *
note_text (gpointer item,
           gpointer data)
{
  const Line *line = row_line (item);

  if (line->reason != NULL && line->note != NULL)
    return g_strdup_printf ("%s; %s", line->reason, line->note);
  return or_empty (line->reason != NULL ? line->reason : line->note);
}

static char *
person_text (gpointer item,
             gpointer data)
{
  SteadCropLog *self = data;

  return or_empty (g_hash_table_lookup (self->people, &row_line (item)->person_id));
}

static int
compare_day (gconstpointer a,
             gconstpointer b,
             gpointer      data)
{
  SteadDay x = row_line (a)->day, y = row_line (b)->day;

  return (x > y) - (x < y);
}

static void
build_table (SteadCropLog *self)
{
  GtkWidget *table = stead_table_new (_("Entries of the crop"));

  self->table = STEAD_TABLE (table);
  stead_table_add_column (self->table, _("Day"), FALSE, FALSE, day_text, NULL, compare_day, self);
  stead_table_add_column (self->table, _("Picked"), TRUE, FALSE, picked_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Grade"), FALSE, FALSE, grade_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Lot"), FALSE, FALSE, lot_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Thrown out"), TRUE, FALSE, lost_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Plants lost"), TRUE, FALSE, plants_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Note"), FALSE, TRUE, note_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("By"), FALSE, FALSE, person_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Picks, lost plants and notes appear here: record a day at the left."));
  gtk_widget_set_hexpand (table, TRUE);
  gtk_box_append (self->slot, table);
}

/* --- deleting ------------------------------------------------------------------ */

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  const Line *line = data;

  return line->harvest_id != 0 ? stead_harvest_repo_delete (store, line->harvest_id, error)
                               : stead_crop_repo_delete_entry (store, line->entry_id, error);
}

static char *
line_name (SteadCropLog *self,
           const Line   *line)
{
  const SteadPick pick = { .day = line->day, .good_kg = line->good_kg, .lost_kg = line->lost_kg };
  const SteadCropEntry entry = { .day = line->day, .lost = line->plants };

  return line->harvest_id != 0 ? stead_crop_pick_name (&pick, self->units) : stead_crop_entry_name (&entry);
}

static void
remove_cb (SteadCropLog *self)
{
  gpointer row = stead_table_get_selected (self->table);
  g_autofree char *name = NULL, *step = NULL;
  g_autoptr(GError) error = NULL;

  if (row == NULL)
    {
      stead_desk_say (self->desk, _("Choose an entry of the log first."), FALSE);
      return;
    }
  name = line_name (self, row_line (row));
  step = g_strdup_printf (_("deleting %s"), name);
  if (!stead_desk_act (self->desk, step, remove_act, (gpointer) row_line (row), &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

static void
import_cb (SteadCropLog *self)
{
  stead_import_dialog_show (GTK_WIDGET (self), self->desk, STEAD_IMPORT_PICKS, self->crop_id);
}

/* --- showing ------------------------------------------------------------------- */

static void
add_picks (GPtrArray       *lines,
           const GPtrArray *picks)
{
  for (guint i = 0; i < picks->len; i++)
    {
      const SteadHarvest *pick = picks->pdata[i];
      Line *line = g_new0 (Line, 1);

      *line = (Line) { .day = pick->day, .harvest_id = pick->id, .good_kg = pick->quantity_base,
                       .lost_kg = pick->lost_base, .grade = g_strdup (pick->grade),
                       .reason = g_strdup (pick->reason), .note = g_strdup (pick->note),
                       .lot = g_strdup (pick->lot_code), .person_id = pick->person_id };
      g_ptr_array_add (lines, line);
    }
}

static void
add_entries (GPtrArray       *lines,
             const GPtrArray *entries)
{
  for (guint i = 0; i < entries->len; i++)
    {
      const SteadCropEntry *entry = entries->pdata[i];
      Line *line = g_new0 (Line, 1);

      *line = (Line) { .day = entry->day, .entry_id = entry->id, .plants = entry->lost,
                       .reason = g_strdup (entry->reason), .note = g_strdup (entry->note),
                       .person_id = entry->person_id };
      g_ptr_array_add (lines, line);
    }
}

/* Newest first. */
static int
newest_first (gconstpointer a,
              gconstpointer b)
{
  const Line *x = *(const Line * const *) a, *y = *(const Line * const *) b;

  return (y->day > x->day) - (y->day < x->day);
}

static void
load_people (SteadCropLog *self,
             SteadStore   *store)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  g_hash_table_remove_all (self->people);
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];

      g_hash_table_insert (self->people, g_memdup2 (&person->id, sizeof person->id), g_strdup (person->name));
    }
}

void
stead_crop_log_show (SteadCropLog          *self,
                     SteadDesk             *desk,
                     const SteadCropAnswer *answer)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadDay first = answer->crop->batch.started_on, last = stead_store_get_today (store);
  g_autoptr(GPtrArray) picks = NULL;
  g_autoptr(GPtrArray) entries = NULL;
  g_autoptr(GPtrArray) lines = g_ptr_array_new ();
  g_autoptr(GListModel) model = NULL;

  g_return_if_fail (STEAD_IS_CROP_LOG (self));

  g_set_object (&self->desk, desk);
  self->crop_id = answer->crop->batch.id;
  self->units = answer->farm->units;
  load_people (self, store);
  picks = stead_harvest_repo_list (store, answer->crop->batch.id, first, last, NULL);
  entries = stead_crop_repo_entries (store, answer->crop->batch.id, first, last, NULL);
  if (picks != NULL)
    add_picks (lines, picks);
  if (entries != NULL)
    add_entries (lines, entries);
  g_ptr_array_sort (lines, newest_first);
  model = stead_rows_from_array (g_steal_pointer (&lines), line_free);
  stead_table_set_model (self->table, model);
}

static void
stead_crop_log_dispose (GObject *object)
{
  SteadCropLog *self = STEAD_CROP_LOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_CROP_LOG);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  g_clear_pointer (&self->people, g_hash_table_unref);
  G_OBJECT_CLASS (stead_crop_log_parent_class)->dispose (object);
}

static void
stead_crop_log_class_init (SteadCropLogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_crop_log_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadCropLog, slot);
  gtk_widget_class_bind_template_child (widget_class, SteadCropLog, remove);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
  gtk_widget_class_bind_template_callback (widget_class, import_cb);
}

static void
stead_crop_log_init (SteadCropLog *self)
{
  self->people = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
  build_table (self);
}
