/* stead-folder-words.c - what each table and column holds, in the language of whoever reads it. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-folder-words-private.h"

static const SteadFolderWords *
find_in (const SteadFolderWords *words,
         const char             *name)
{
  for (; words->name != NULL; words++)
    if (g_str_equal (words->name, name))
      return words;
  return NULL;
}

/* A table's own words come before those of all columns of the name. */
static const SteadFolderWords *
find (const char *table,
      const char *column)
{
  g_autofree char *own = g_strconcat (table, ".", column, NULL);
  const SteadFolderWords *words = find_in (stead_folder_column_words, own);

  return words != NULL ? words : find_in (stead_folder_column_words, column);
}

const char *
stead_folder_answer_table (const char *table)
{
  const SteadFolderWords *words = find_in (stead_folder_table_words, table);

  return words != NULL ? g_dpgettext2 (GETTEXT_PACKAGE, "table of the folder", words->meaning) : NULL;
}

static const char *
unit_of_name (const char *name)
{
  static const struct { const char *ending, *unit; } units[] = {
    { "_cents", NC_("unit of a column", "smallest unit of the currency") },
    { "_base", NC_("unit of a column", "base unit of the item: pieces, kg, L or m²") },
    { "_frac", NC_("unit of a column", "share, 0 to 1") },
    { "_minutes", NC_("unit of a column", "minutes") }, { "_hours", NC_("unit of a column", "hours") },
    { "_days", NC_("unit of a column", "days") }, { "_weeks", NC_("unit of a column", "weeks") },
    { "_years", NC_("unit of a column", "years") },
    { "_kg", "kg" }, { "_mgl", "mg/L" }, { "_g", "g" }, { "_c", "°C" }, { "_m2", "m²" }, { "_m3", "m³" }, { "_m", "m" },
    { "_cm", "cm" }, { "_mm", "mm" }, { "_l", "L" }, { "_s", "s" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_has_suffix (name, units[i].ending))
      return g_dpgettext2 (GETTEXT_PACKAGE, "unit of a column", units[i].unit);
  if (g_str_equal (name, "cents"))
    return C_("unit of a column", "smallest unit of the currency");
  return g_str_equal (name, "minutes") ? C_("unit of a column", "minutes") : "";
}

char *
stead_folder_answer_unit (const char              *table,
                          const SteadFolderColumn *column)
{
  const SteadFolderWords *words = find (table, column->name);

  if (words != NULL && words->unit != NULL)
    return g_strdup (g_dpgettext2 (GETTEXT_PACKAGE, "unit of a column", words->unit));
  if (column->type != STEAD_FOLDER_WHOLE && column->type != STEAD_FOLDER_NUMBER)
    return g_strdup ("");
  return g_strdup (unit_of_name (column->name));
}

char *
stead_folder_answer_meaning (const char              *table,
                             const SteadFolderColumn *column)
{
  const SteadFolderWords *words = find (table, column->name);

  if (words != NULL && column->points_to == NULL)
    return g_strdup (g_dpgettext2 (GETTEXT_PACKAGE, "column of the folder", words->meaning));
  if (column->points_to != NULL)
    /* Translators: %s is the name of a table, which is never translated. */
    return g_strdup_printf (_("id of a row of “%s”"), column->points_to);
  return g_strdup ("");
}
