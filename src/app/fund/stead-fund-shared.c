/* stead-fund-shared.c - what the dialogs of Fund do alike. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/fund/stead-fund-dialogs.h"

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_build_repo_save (store, data, error);
}

gboolean
stead_fund_save_build (SteadForm   *dialog,
                       SteadBuild  *build,
                       const char  *what,
                       GError     **error)
{
  /* Translators: name of a step to undo: what was changed ("gates"), name of the build. */
  g_autofree char *step = g_strdup_printf (_("%s of “%s”"), what, build->name);

  return stead_form_act (dialog, step, save_act, build, error);
}

SteadBuildLine *
stead_fund_find_line (SteadDesk            *desk,
                      gint64                build_id,
                      const SteadBuildRow  *row,
                      GError              **error)
{
  g_autoptr(GPtrArray) lines = stead_build_line_repo_list (stead_desk_get_store (desk), build_id, error);
  SteadBuildLine *line;

  if (lines == NULL)
    return NULL;
  for (guint i = 0; row != NULL && row->line_id != 0 && i < lines->len; i++)
    if (((SteadBuildLine *) lines->pdata[i])->id == row->line_id)
      return g_ptr_array_steal_index (lines, i);
  line = stead_build_line_new ();
  line->build_id = build_id;
  if (row == NULL)
    return line;
  line->part = row->part;
  line->key = g_strdup (row->key);
  return line;
}

GtkDropDown *
stead_fund_add_part (SteadForm  *dialog,
                     const char *label,
                     const char *any,
                     int         part)
{
  g_autoptr(GPtrArray) words = g_ptr_array_new ();

  if (any != NULL)
    g_ptr_array_add (words, (gpointer) any);
  for (int i = 0; i < STEAD_N_BUILD_PARTS; i++)
    g_ptr_array_add (words, (gpointer) stead_build_part_name ((SteadBuildPart) i));
  g_ptr_array_add (words, NULL);
  return stead_form_add_choice (dialog, label, (const char * const *) words->pdata,
                                (guint) (any != NULL ? part + 1 : part));
}

int
stead_fund_get_part (GtkDropDown *choice,
                     gboolean     with_any)
{
  return (int) gtk_drop_down_get_selected (choice) - (with_any ? 1 : 0);
}
