/* stead-log-fish.c - the log of a group of fish: feed, warmth of the water, fish lost. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-log-kind.h"

#include "answer/stead-fish-answer.h"

static const SteadFishEntry *
row_entry (gpointer item)
{
  return stead_row_get (item);
}

static gpointer
copy_entry (gconstpointer from)
{
  const SteadFishEntry *entry = from;
  SteadFishEntry *copy = g_memdup2 (entry, sizeof *entry);

  copy->reason = g_strdup (entry->reason);
  copy->note = g_strdup (entry->note);
  return copy;
}

static gpointer
blank_entry (void)
{
  SteadFishEntry *entry = g_new0 (SteadFishEntry, 1);

  entry->feed_kg = entry->water_c = NAN;
  return entry;
}

static void
free_entry (gpointer entry)
{
  stead_fish_entry_free (entry);
}

static gboolean
save_entry (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_fish_repo_save_entry (store, data, error);
}

static char *
name_entry (gconstpointer    entry,
            const SteadFarm *farm)
{
  return stead_fish_entry_name (entry, farm);
}

/* --- columns ------------------------------------------------------------------- */

static char *
feed_text (gpointer item,
           gpointer data)
{
  return stead_log_quantity_text (data, row_entry (item)->feed_kg, STEAD_DIMENSION_MASS);
}

static gboolean
feed_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  g_autoptr(SteadFishEntry) entry = copy_entry (row_entry (item));

  return stead_log_parse_quantity (data, text, STEAD_DIMENSION_MASS, &entry->feed_kg, error)
         && stead_log_view_save (data, entry, error);
}

static char *
refused_text (gpointer item,
              gpointer data)
{
  return g_strdup (row_entry (item)->refused ? _("yes") : "");
}

static char *
water_text (gpointer item,
            gpointer data)
{
  return stead_log_quantity_text (data, row_entry (item)->water_c, STEAD_DIMENSION_TEMPERATURE);
}

static gboolean
water_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  g_autoptr(SteadFishEntry) entry = copy_entry (row_entry (item));

  return stead_log_parse_quantity (data, text, STEAD_DIMENSION_TEMPERATURE, &entry->water_c, error)
         && stead_log_view_save (data, entry, error);
}

static char *
deaths_text (gpointer item,
             gpointer data)
{
  return stead_log_count_text (row_entry (item)->deaths);
}

static gboolean
deaths_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  g_autoptr(SteadFishEntry) entry = copy_entry (row_entry (item));

  return stead_log_parse_count (text, 0, &entry->deaths, error) && stead_log_view_save (data, entry, error);
}

static char *
culled_text (gpointer item,
             gpointer data)
{
  return stead_log_count_text (row_entry (item)->culled);
}

static gboolean
culled_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  g_autoptr(SteadFishEntry) entry = copy_entry (row_entry (item));

  return stead_log_parse_count (text, 0, &entry->culled, error) && stead_log_view_save (data, entry, error);
}

static char *
reason_text (gpointer item,
             gpointer data)
{
  const char *reason = row_entry (item)->reason;

  return g_strdup (reason != NULL ? reason : "");
}

static gboolean
reason_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  g_autoptr(SteadFishEntry) entry = copy_entry (row_entry (item));

  g_free (entry->reason);
  entry->reason = text[0] != '\0' ? g_strdup (text) : NULL;
  return stead_log_view_save (data, entry, error);
}

static void
add_columns (SteadLogView *view)
{
  stead_log_view_add_column (view, _("Feed"), TRUE, feed_text, feed_edit);
  stead_log_view_add_column (view, _("Feed left"), FALSE, refused_text, NULL);
  stead_log_view_add_column (view, _("Water"), TRUE, water_text, water_edit);
  stead_log_view_add_column (view, C_("fish", "Died"), TRUE, deaths_text, deaths_edit);
  stead_log_view_add_column (view, C_("fish", "Taken out"), TRUE, culled_text, culled_edit);
  stead_log_view_add_column (view, _("Reason"), FALSE, reason_text, reason_edit);
}

const SteadLogKind stead_log_fish = {
  .source = { stead_fish_repo_count_entries, stead_fish_repo_page_entries, blank_entry, free_entry },
  .copy = copy_entry,
  .save = save_entry,
  .remove = stead_fish_repo_delete_entry,
  .name = name_entry,
  .columns = add_columns,
  .id_at = G_STRUCT_OFFSET (SteadFishEntry, id),
  .day_at = G_STRUCT_OFFSET (SteadFishEntry, day),
  .note_at = G_STRUCT_OFFSET (SteadFishEntry, note),
  .person_at = G_STRUCT_OFFSET (SteadFishEntry, person_id),
  .left_out_at = G_STRUCT_OFFSET (SteadFishEntry, left_out),
  .import = STEAD_IMPORT_FISH_LOG,
  .import_label = N_("Import a log…"),
  .paper = "fish-log",
  .table_label = N_("Entries of the fish"),
  .empty = N_("Entries appear here: record a day at the left, or import a table."),
};
