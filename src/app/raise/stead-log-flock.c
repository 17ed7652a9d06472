/* stead-log-flock.c - the log of a flock: eggs, feed, hens lost. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-log-kind.h"

#include "answer/stead-flock-answer.h"
#include "store/stead-flock-repo.h"

static const SteadFlockEntry *
row_entry (gpointer item)
{
  return stead_row_get (item);
}

static gpointer
copy_entry (gconstpointer from)
{
  const SteadFlockEntry *entry = from;
  SteadFlockEntry *copy = g_memdup2 (entry, sizeof *entry);

  copy->reason = g_strdup (entry->reason);
  copy->note = g_strdup (entry->note);
  return copy;
}

static gpointer
blank_entry (void)
{
  return g_new0 (SteadFlockEntry, 1);
}

static void
free_entry (gpointer entry)
{
  stead_flock_entry_free (entry);
}

static gboolean
save_entry (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_flock_repo_save_entry (store, data, error);
}

static char *
name_entry (gconstpointer    entry,
            const SteadFarm *farm)
{
  return stead_flock_answer_entry_name (entry, farm);
}

/* --- columns ------------------------------------------------------------------- */

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
  return stead_log_count_text (row_entry (item)->cracked);
}

static char *
deaths_text (gpointer item,
             gpointer data)
{
  return stead_log_count_text (row_entry (item)->deaths);
}

static char *
culled_text (gpointer item,
             gpointer data)
{
  return stead_log_count_text (row_entry (item)->culled);
}

static char *
feed_text (gpointer item,
           gpointer data)
{
  return stead_log_quantity_text (data, row_entry (item)->feed_kg, STEAD_DIMENSION_MASS);
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

  return stead_log_parse_count (text, column == EDIT_EGGS ? STEAD_COUNT_NONE : 0, counts[column], error)
         && stead_log_view_save (self, entry, error);
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
feed_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  g_autoptr(SteadFlockEntry) entry = copy_entry (row_entry (item));

  return stead_log_parse_quantity (data, text, STEAD_DIMENSION_MASS, &entry->feed_kg, error)
         && stead_log_view_save (data, entry, error);
}

static void
add_columns (SteadLogView *view)
{
  stead_log_view_add_column (view, _("Eggs"), TRUE, eggs_text, eggs_edit);
  stead_log_view_add_column (view, _("Cracked"), TRUE, cracked_text, cracked_edit);
  stead_log_view_add_column (view, _("Feed"), TRUE, feed_text, feed_edit);
  stead_log_view_add_column (view, _("Died"), TRUE, deaths_text, deaths_edit);
  stead_log_view_add_column (view, _("Taken out"), TRUE, culled_text, culled_edit);
}

const SteadLogKind stead_log_flock = {
  .source = { stead_flock_repo_count_entries, stead_flock_repo_page_entries, blank_entry, free_entry },
  .copy = copy_entry,
  .save = save_entry,
  .remove = stead_flock_repo_delete_entry,
  .name = name_entry,
  .columns = add_columns,
  .id_at = G_STRUCT_OFFSET (SteadFlockEntry, id),
  .day_at = G_STRUCT_OFFSET (SteadFlockEntry, day),
  .note_at = G_STRUCT_OFFSET (SteadFlockEntry, note),
  .person_at = G_STRUCT_OFFSET (SteadFlockEntry, person_id),
  .left_out_at = G_STRUCT_OFFSET (SteadFlockEntry, left_out),
  .import = STEAD_IMPORT_FLOCK_LOG,
  .import_label = N_("Import a log…"),
  .paper = "flock-log",
  .table_label = N_("Entries of the flock"),
  .empty = N_("Entries appear here: record a day at the left, or import a table."),
};
