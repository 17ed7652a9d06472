/* stead-import-rows.c - what the judges of dated rows have in common: their order, what is
 * there already, what is let go, and which batch the file is of.
 */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-import-private.h"

#include <glib/gi18n-lib.h>

static int
compare_days (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  const SteadImportRow *x = *(SteadImportRow * const *) a, *y = *(SteadImportRow * const *) b;
  SteadImportDayOf day_of = *(SteadImportDayOf *) data;
  SteadDay x_day = day_of (x->fact), y_day = day_of (y->fact);

  if (x_day != y_day)
    return x_day < y_day ? -1 : 1;
  return (x->line > y->line) - (x->line < y->line);
}

GPtrArray *
stead_import_rows_by_day (GPtrArray        *rows,
                          SteadImportDayOf  day_of)
{
  GPtrArray *sorted = g_ptr_array_sized_new (rows->len);

  for (guint i = 0; i < rows->len; i++)
    if (((const SteadImportRow *) rows->pdata[i])->fact != NULL)
      g_ptr_array_add (sorted, rows->pdata[i]);
  g_ptr_array_sort_with_data (sorted, compare_days, &day_of);
  return sorted;
}

gboolean
stead_import_is_double (GHashTable     *seen,
                        SteadImportRow *row)
{
  gpointer line;

  if (!g_hash_table_lookup_extended (seen, row->fact, NULL, &line))
    return FALSE;
  if (line == NULL)
    stead_import_skip (row, g_strdup (_("The farm already has an entry of this day with these numbers.")));
  else
    stead_import_skip (row, g_strdup_printf (_("Line %u already says the same."), GPOINTER_TO_UINT (line)));
  return TRUE;
}

void
stead_import_drop_facts (GPtrArray      *rows,
                         GDestroyNotify  free_fact)
{
  for (guint i = 0; i < rows->len; i++)
    {
      SteadImportRow *row = rows->pdata[i];

      if (row->state != STEAD_ROW_TAKE)
        g_clear_pointer (&row->fact, free_fact);
    }
}

/* --- of which batch --------------------------------------------------------------- */

/* (transfer full) (nullable): the only one under way, or the only one there ever was.
 * @none, @several: what to say otherwise */
static gpointer
only_one (SteadStore     *store,
          GPtrArray    *(*list) (SteadStore *store, gboolean with_ended, GError **error),
          const char     *none,
          const char     *several,
          GError        **error)
{
  g_autoptr(GPtrArray) found = list (store, FALSE, error);

  if (found != NULL && found->len == 0)
    {
      g_ptr_array_unref (found);
      found = list (store, TRUE, error);
    }
  if (found == NULL)
    return NULL;
  if (found->len == 1)
    return g_ptr_array_steal_index (found, 0);
  g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING, found->len == 0 ? none : several);
  return NULL;
}

SteadFlock *
stead_import_find_flock (SteadStore  *store,
                         gint64       flock_id,
                         GError     **error)
{
  if (flock_id != 0)
    return stead_flock_repo_get (store, flock_id, error);
  return only_one (store, stead_flock_repo_list, _("There is no flock yet. Set one up in Raise first."),
                   _("There are several flocks. Say which one the file is of."), error);
}

SteadFish *
stead_import_find_fish (SteadStore  *store,
                        gint64       fish_id,
                        GError     **error)
{
  if (fish_id != 0)
    return stead_fish_repo_get (store, fish_id, error);
  return only_one (store, stead_fish_repo_list, _("There are no fish yet. Set up a group in Raise first."),
                   _("There are several groups of fish. Say which one the file is of."), error);
}

SteadCrop *
stead_import_find_crop (SteadStore  *store,
                        gint64       crop_id,
                        GError     **error)
{
  if (crop_id != 0)
    return stead_crop_repo_get (store, crop_id, error);
  return only_one (store, stead_crop_repo_list, _("There is no crop yet. Add one in Raise."),
                   _("There are several crops. Say which one the file is of."), error);
}
