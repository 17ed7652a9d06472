/* stead-log-weighings.c - the weighings of a group of fish: each a sample, with its spread. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-log-kind.h"

#include "answer/stead-fish-text.h"
#include "app/raise/stead-weighing-dialog.h"

static const SteadWeighing *
row_weighing (gpointer item)
{
  return stead_row_get (item);
}

static gpointer
copy_weighing (gconstpointer from)
{
  const SteadWeighing *weighing = from;
  SteadWeighing *copy = g_memdup2 (weighing, sizeof *weighing);

  copy->single = weighing->single != NULL ? g_array_copy (weighing->single) : NULL;
  copy->note = g_strdup (weighing->note);
  return copy;
}

static gpointer
blank_weighing (void)
{
  return stead_weighing_new ();
}

static void
free_weighing (gpointer weighing)
{
  stead_weighing_free (weighing);
}

static gboolean
save_weighing (SteadStore *store,
               gpointer    data,
               GError    **error)
{
  return stead_weighing_repo_save (store, data, error);
}

static char *
name_weighing (gconstpointer    weighing,
               const SteadFarm *farm)
{
  return stead_fish_weighing_name (weighing);
}

/* There are few: a weighing every two weeks. */
static gint64
count_weighings (SteadStore *store,
                 gint64      batch_id,
                 GError    **error)
{
  g_autoptr(GPtrArray) all = stead_weighing_repo_list (store, batch_id, error);

  return all != NULL ? (gint64) all->len : -1;
}

/* Newest first, as the log has it. */
static GPtrArray *
page_weighings (SteadStore *store,
                gint64      batch_id,
                gint64      offset,
                gint64      limit,
                GError    **error)
{
  g_autoptr(GPtrArray) all = stead_weighing_repo_list (store, batch_id, error);
  g_autoptr(GPtrArray) page = NULL;

  if (all == NULL)
    return NULL;
  page = g_ptr_array_new_with_free_func (free_weighing);
  for (gint64 i = offset; i < MIN (offset + limit, (gint64) all->len); i++)
    g_ptr_array_add (page, g_steal_pointer (&all->pdata[all->len - 1 - i]));
  return g_steal_pointer (&page);
}

/* --- columns ------------------------------------------------------------------- */

static char *
number_text (gpointer item,
             gpointer data)
{
  gint64 n = row_weighing (item)->n;

  return n > 0 ? stead_number_format ((double) n, 0) : g_strdup ("");
}

static char *
mean_text (gpointer item,
           gpointer data)
{
  const SteadWeighing *weighing = row_weighing (item);

  return weighing->n > 0 ? stead_fish_weight_text (stead_weighing_mean_g (weighing), stead_log_view_units (data))
                         : g_strdup ("");
}

static char *
total_text (gpointer item,
            gpointer data)
{
  const SteadWeighing *weighing = row_weighing (item);

  return weighing->n > 0 ? stead_log_quantity_text (data, weighing->total_kg, STEAD_DIMENSION_MASS) : g_strdup ("");
}

/* In hundredths of the mean; nothing where they were weighed all together. */
static char *
spread_text (gpointer item,
             gpointer data)
{
  const SteadWeighing *weighing = row_weighing (item);
  double mean = stead_weighing_mean_g (weighing);

  return isnan (weighing->sd_g) || !(mean > 0) ? g_strdup ("")
         : stead_number_format (100 * weighing->sd_g / mean, 0);
}

static char *
length_text (gpointer item,
             gpointer data)
{
  double cm = row_weighing (item)->length_cm;
  gboolean us = stead_log_view_units (data) == STEAD_UNITS_US;

  return isnan (cm) ? g_strdup ("") : stead_quantity_format (cm / 100, stead_unit_by_id (us ? "in" : "cm"));
}

static char *
condition_text (gpointer item,
                gpointer data)
{
  double condition = stead_fish_weighing_condition (row_weighing (item));

  return isnan (condition) ? g_strdup ("") : stead_number_format (condition, 2);
}

static void
add_columns (SteadLogView *view)
{
  stead_log_view_add_column (view, _("Fish"), TRUE, number_text, NULL);
  stead_log_view_add_column (view, _("Mean"), TRUE, mean_text, NULL);
  stead_log_view_add_column (view, _("Total"), TRUE, total_text, NULL);
  stead_log_view_add_column (view, _("Spread, %"), TRUE, spread_text, NULL);
  stead_log_view_add_column (view, _("Length"), TRUE, length_text, NULL);
  stead_log_view_add_column (view, _("Condition"), TRUE, condition_text, NULL);
}

const SteadLogKind stead_log_weighings = {
  .source = { count_weighings, page_weighings, blank_weighing, free_weighing },
  .copy = copy_weighing,
  .save = save_weighing,
  .remove = stead_weighing_repo_delete,
  .name = name_weighing,
  .columns = add_columns,
  .open = stead_weighing_dialog_show,
  .add_label = N_("Weigh fish…"),
  .id_at = G_STRUCT_OFFSET (SteadWeighing, id),
  .day_at = G_STRUCT_OFFSET (SteadWeighing, day),
  .note_at = G_STRUCT_OFFSET (SteadWeighing, note),
  .person_at = G_STRUCT_OFFSET (SteadWeighing, person_id),
  .left_out_at = G_STRUCT_OFFSET (SteadWeighing, left_out),
  .import = STEAD_IMPORT_WEIGHINGS,
  .import_label = N_("Import weighings…"),
  .paper = "weighings",
  .table_label = N_("Weighings of the fish"),
  .empty = N_("Weighings appear here: weigh some fish, or import a table. Each one sharpens the forecast."),
};
