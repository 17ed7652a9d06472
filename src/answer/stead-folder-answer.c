/* stead-folder-answer.c - what leaves the farm, and the folder that it leaves in. */
#include "config.h"

#include "answer/stead-folder-answer.h"
#include "answer/stead-words.h"
#include "store/stead-farm-repo.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define NEW_LINE "\r\n"

static const SteadFolderOptions everything = { .names = TRUE, .notes = TRUE, .pictures = TRUE };

void
stead_leaving_free (SteadLeaving *leaving)
{
  if (leaving == NULL)
    return;
  g_clear_pointer (&leaving->tables, g_ptr_array_unref);
  g_free (leaving->sentence);
  g_free (leaving->warning);
  g_free (leaving);
}

/* --- what leaves --------------------------------------------------------------- */

static gboolean
is_chosen (const SteadFolderOptions *options,
           const char               *table)
{
  return options->tables == NULL || g_strv_contains (options->tables, table);
}

static guint
rows_of (const SteadLeaving *leaving,
         const char         *name)
{
  for (guint i = 0; i < leaving->tables->len; i++)
    {
      const SteadFolderTable *table = leaving->tables->pdata[i];

      if (g_str_equal (table->name, name))
        return table->rows;
    }
  return 0;
}

static gboolean
has_notes (const SteadLeaving *leaving)
{
  for (guint i = 0; i < leaving->tables->len; i++)
    {
      const SteadFolderTable *table = leaving->tables->pdata[i];

      for (guint at = 0; table->rows > 0 && at < table->columns->len; at++)
        if (((const SteadFolderColumn *) table->columns->pdata[at])->kind == STEAD_FOLDER_NOTE)
          return TRUE;
    }
  return FALSE;
}

static char *
say_leaving (const SteadLeaving       *leaving,
             const SteadFolderOptions *options)
{
  g_autofree char *tables = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u table", "%u tables", leaving->tables->len),
                                             leaving->tables->len);
  g_autofree char *rows = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%'u row", "%'u rows", leaving->rows),
                                           leaving->rows);
  g_autofree char *people = NULL;
  g_autofree char *pictures = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u picture", "%u pictures",
                                                            leaving->pictures), leaving->pictures);

  if (options->names)
    people = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u person by name", "%u people by name", leaving->people),
                              leaving->people);
  else
    people = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u person by number only", "%u people by number only",
                                           leaving->people), leaving->people);
  /* Translators: "103 tables", "5,210 rows", "16 people by name", "9 pictures". */
  return g_strdup_printf (_("<b>%s</b> with %s leave the farm: %s, and %s."), tables, rows, people, pictures);
}

/* What the person who hands it out must think of. */
static char *
warn (const SteadLeaving       *leaving,
      const SteadFolderOptions *options)
{
  GString *text = g_string_new (NULL);

  if (options->names && leaving->people > 0)
    g_string_append (text, _("It names people. Names of students may only leave the school with consent, or where the "
                             "law or the school's rules allow it."));
  if (options->notes && has_notes (leaving))
    g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "",
                            _("Notes are in it as they were written; they may name people, too."));
  if (leaving->pictures > 0)
    g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "",
                            _("Pictures are in it, without the place and time that a camera adds. Look who is on them."));
  if (text->len > 0)
    return g_string_free (text, FALSE);
  g_string_free (text, TRUE);
  return NULL;
}

SteadLeaving *
stead_folder_answer_leaving (SteadStore                *store,
                             const SteadFolderOptions  *options,
                             GError                   **error)
{
  g_autoptr(SteadLeaving) leaving = g_new0 (SteadLeaving, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  options = options != NULL ? options : &everything;
  leaving->tables = stead_folder_list_tables (store, error);
  if (leaving->tables == NULL)
    return NULL;
  for (guint i = leaving->tables->len; i > 0; i--)
    if (!is_chosen (options, ((const SteadFolderTable *) leaving->tables->pdata[i - 1])->name))
      g_ptr_array_remove_index (leaving->tables, i - 1);
  for (guint i = 0; i < leaving->tables->len; i++)
    leaving->rows += ((const SteadFolderTable *) leaving->tables->pdata[i])->rows;
  leaving->people = rows_of (leaving, "person");
  leaving->pictures = options->pictures ? rows_of (leaving, "picture") : 0;
  leaving->whole = options->tables == NULL && options->names && options->notes && options->pictures;
  leaving->sentence = say_leaving (leaving, options);
  leaving->warning = warn (leaving, options);
  return g_steal_pointer (&leaving);
}

/* --- the description ------------------------------------------------------------- */

static const char *
type_word (SteadFolderType type)
{
  switch (type)
    {
    case STEAD_FOLDER_NUMBER:
      return _("number");
    case STEAD_FOLDER_TEXT:
      return _("text");
    case STEAD_FOLDER_DAY:
      return _("day");
    case STEAD_FOLDER_MOMENT:
      return _("moment");
    case STEAD_FOLDER_PICTURE:
      return _("file name");
    case STEAD_FOLDER_WHOLE:
    default:
      return _("whole number");
    }
}

static void
describe_head (GString            *text,
               const char         *farm,
               const SteadLeaving *leaving,
               SteadDay            today)
{
  g_autofree char *day = stead_day_format (today, STEAD_DAY_STYLE_ISO);

  g_string_append_printf (text, "# %s\n\n", farm);
  g_string_append_printf (text, leaving->whole ? _("The whole farm as a folder, written on %s.")
                                               : _("A part of the farm as a folder, written on %s."), day);
  g_string_append (text, "\n\n");
  g_string_append (text, _("- Each table is a file in tables/: comma-separated values (RFC 4180), UTF-8, the names of the "
                           "columns in the first line.\n"
                           "- Texts stand in quotation marks, numbers do not; numbers have a decimal point. Nothing "
                           "between two commas means: not known.\n"
                           "- Days are written 2026-03-03. Moments are written 2026-03-03T14:05:00Z, in universal time.\n"
                           "- Money is in the smallest unit of the farm's currency (see the table farm): 1250 is 12.50 dollars.\n"
                           "- A text that a spreadsheet could take for a formula has an apostrophe (') before it. So has a "
                           "text that begins with an apostrophe, and a text that is empty but known. Take one apostrophe "
                           "off to have the text as it was.\n"
                           "- Pictures are in pictures/, as JPEG, without the place and time that cameras add.\n"
                           "- columns.csv tells type, unit and meaning of each column once more, for programs.\n"));
  g_string_append_c (text, '\n');
  if (leaving->whole)
    g_string_append (text, _("Take the folder in again with “Take in a folder…” or with the command steading --import-folder FOLDER "
                             "FILE. Every row of every table is then as it was, with signatures and seals: the seals are "
                             "in the tables, and they are checked when the folder is taken in. The steps of undo are not "
                             "in the folder, so what was done before cannot be undone in the new farm. The dated copies "
                             "stay with the old file.\n"));
  else
    g_string_append (text, _("What was not chosen is left out, so this folder cannot be taken in as a farm. Where names "
                             "were left out, people stand under their role and number.\n"));
  g_string_append_c (text, '\n');
}

static void
describe_column (GString                 *text,
                 const char              *table,
                 const SteadFolderColumn *column)
{
  g_autofree char *meaning = stead_folder_answer_meaning (table, column);
  g_autofree char *unit = stead_folder_answer_unit (table, column);

  g_string_append_printf (text, "| %s | %s%s%s | %s | %s |\n", column->name, type_word (column->type),
                          column->key ? "*" : "", column->needed ? "" : "?", unit, meaning);
}

static char *
describe (const char         *farm,
          const SteadLeaving *leaving,
          SteadDay            today)
{
  GString *text = g_string_new (NULL);

  describe_head (text, farm, leaving, today);
  g_string_append (text, _("## Tables and columns\n\n* behind a type: no two rows share it. ? behind a type: may be empty.\n"));
  for (guint i = 0; i < leaving->tables->len; i++)
    {
      const SteadFolderTable *table = leaving->tables->pdata[i];
      const char *meaning = stead_folder_answer_table (table->name);

      g_string_append_printf (text, "\n### %s (%u)\n\n%s\n\n", table->name, table->rows, meaning != NULL ? meaning : "");
      /* Translators: heads of a table in a text file; keep the lines and the upright strokes. */
      g_string_append (text, _("| column | type | unit | meaning |\n| --- | --- | --- | --- |\n"));
      for (guint at = 0; at < table->columns->len; at++)
        describe_column (text, table->name, table->columns->pdata[at]);
    }
  return g_string_free (text, FALSE);
}

static void
add_quoted (GString    *text,
            const char *cell)
{
  g_auto(GStrv) parts = g_strsplit (cell, "\"", -1);
  g_autofree char *doubled = g_strjoinv ("\"\"", parts);

  g_string_append_printf (text, ",\"%s\"", doubled);
}

/* The same for programs: in English, since their readers look for these words. */
static char *
describe_for_programs (const SteadLeaving *leaving)
{
  static const char * const types[] = { "integer", "number", "text", "date", "datetime", "file" };
  GString *text = g_string_new ("table,column,type,key,needed,unit,points_to,meaning" NEW_LINE);

  for (guint i = 0; i < leaving->tables->len; i++)
    {
      const SteadFolderTable *table = leaving->tables->pdata[i];

      for (guint at = 0; at < table->columns->len; at++)
        {
          const SteadFolderColumn *column = table->columns->pdata[at];
          g_autofree char *meaning = stead_folder_answer_meaning (table->name, column);
          g_autofree char *unit = stead_folder_answer_unit (table->name, column);

          g_string_append_printf (text, "%s,%s,%s,%d,%d", table->name, column->name, types[column->type], column->key,
                                  column->needed);
          add_quoted (text, unit);
          g_string_append_printf (text, ",%s", column->points_to != NULL ? column->points_to : "");
          add_quoted (text, meaning);
          g_string_append (text, NEW_LINE);
        }
    }
  return g_string_free (text, FALSE);
}

static void
take_text (GHashTable *besides,
           const char *name,
           char       *text)
{
  g_hash_table_insert (besides, g_strdup (name), g_bytes_new_take (text, strlen (text)));
}

gboolean
stead_folder_answer_write (SteadStore                *store,
                           const char                *path,
                           const SteadFolderOptions  *options,
                           GCancellable              *cancellable,
                           GError                   **error)
{
  SteadFolderOptions own = options != NULL ? *options : everything;
  g_autoptr(SteadLeaving) leaving = stead_folder_answer_leaving (store, &own, error);
  g_autoptr(SteadFarm) farm = leaving != NULL ? stead_farm_repo_get (store, error) : NULL;
  g_autoptr(GHashTable) besides = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) g_bytes_unref);

  if (farm == NULL)
    return FALSE;
  take_text (besides, "README.md", describe (farm->name, leaving, stead_store_get_today (store)));
  take_text (besides, "columns.csv", describe_for_programs (leaving));
  own.besides = besides;
  return stead_folder_write (store, path, &own, cancellable, error);
}
