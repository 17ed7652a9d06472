/* stead-import-answer.c - "What is in this file, and what of it can be taken?" */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-import-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

struct _SteadImport
{
  GObject          parent_instance;

  SteadImportKind  kind;
  SteadFarm       *farm;
  char           **header;
  char           **columns;
  GPtrArray       *rows;       /* of SteadImportRow, without the header */
  guint            counts[STEAD_ROW_WRONG + 1];
  gboolean         needs_order;
  char            *sentence;
  char            *reading;
};

G_DEFINE_FINAL_TYPE (SteadImport, stead_import, G_TYPE_OBJECT)

static void
stead_import_finalize (GObject *object)
{
  SteadImport *self = STEAD_IMPORT (object);

  for (guint i = 0; self->rows != NULL && i < self->rows->len; i++)
    {
      SteadImportRow *row = self->rows->pdata[i];

      stead_import_methods (self->kind)->free_fact (row->fact);
    }
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->farm, stead_farm_free);
  g_strfreev (self->header);
  g_strfreev (self->columns);
  g_free (self->sentence);
  g_free (self->reading);
  G_OBJECT_CLASS (stead_import_parent_class)->finalize (object);
}

static void
stead_import_class_init (SteadImportClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_import_finalize;
}

static void
stead_import_init (SteadImport *self)
{
}

gboolean
stead_import_kind_from_name (const char      *name,
                             SteadImportKind *out_kind)
{
  g_return_val_if_fail (name != NULL && out_kind != NULL, FALSE);

  for (int kind = 0; kind <= STEAD_IMPORT_COOLER; kind++)
    if (g_str_equal (stead_import_methods ((SteadImportKind) kind)->name, name))
      {
        *out_kind = (SteadImportKind) kind;
        return TRUE;
      }
  return FALSE;
}

static char *
encoding_sentence (SteadEncoding encoding)
{
  switch (encoding)
    {
    case STEAD_ENCODING_UTF16: return g_strdup (_("The letters are UTF-16."));
    case STEAD_ENCODING_WINDOWS_1252:
      return g_strdup (_("The letters are not UTF-8 and were read as Windows-1252: check names with accents."));
    case STEAD_ENCODING_UTF8:
    default: return g_strdup (_("The letters are UTF-8."));
    }
}

static const char *
separator_sentence (char separator)
{
  return separator == ',' ? _("Commas part the columns.")
         : separator == ';' ? _("Semicolons part the columns.") : _("Tabs part the columns.");
}

static const char *
order_sentence (SteadDateOrder order)
{
  switch (order)
    {
    case STEAD_DATE_ORDER_MDY: return _("Dates are read as month/day/year.");
    case STEAD_DATE_ORDER_DMY: return _("Dates are read as day/month/year.");
    case STEAD_DATE_ORDER_YMD: return _("Dates are read as year/month/day.");
    case STEAD_DATE_ORDER_UNKNOWN:
    default: return NULL;
    }
}

/* Columns that are left aside are named, so that nobody thinks they were taken. */
static char *
unused_sentence (const SteadImport *self)
{
  g_autoptr(GPtrArray) unused = g_ptr_array_new ();
  g_autofree char *list = NULL;

  for (int i = 0; self->header[i] != NULL; i++)
    if (self->columns[i][0] == '\0' && self->header[i][0] != '\0')
      g_ptr_array_add (unused, self->header[i]);
  if (unused->len == 0)
    return NULL;
  g_ptr_array_add (unused, NULL);
  list = stead_words_list ((const char * const *) unused->pdata);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "This column is not used: %s.",
                                       "These columns are not used: %s.", unused->len - 1), list);
}

static char *
reading_of (const SteadImport     *self,
            const SteadImportText *text,
            SteadDateOrder         order)
{
  GString *reading = g_string_new (NULL);
  g_autofree char *encoding = encoding_sentence (text->encoding);
  g_autofree char *unused = unused_sentence (self);

  stead_words_add (reading, encoding);
  stead_words_add (reading, separator_sentence (text->separator));
  stead_words_add (reading, order_sentence (order));
  stead_words_add (reading, unused);
  return stead_words_end (reading);
}

static char *
sentence_of (const SteadImport *self)
{
  GString *text;
  guint take = self->counts[STEAD_ROW_TAKE];
  guint skip = self->counts[STEAD_ROW_SKIP];
  guint wrong = self->counts[STEAD_ROW_WRONG];
  g_autofree char *n_take = stead_number_format (take, 0);
  g_autofree char *n_skip = stead_number_format (skip, 0);
  g_autofree char *n_wrong = stead_number_format (wrong, 0);
  g_autofree char *taken = NULL;
  g_autofree char *skipped = NULL;
  g_autofree char *faulty = NULL;

  if (self->rows->len == 0)
    return g_strdup (_("The file names its columns, but has no rows."));
  taken = take == 0 ? g_strdup (_("<b>No row</b> can be taken."))
                    : g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%s row</b> can be taken.",
                                                    "<b>%s rows</b> can be taken.", take), n_take);
  skipped = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s is blank or already in the farm.",
                                          "%s are blank or already in the farm.", skip), n_skip);
  faulty = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%s row</b> is wrong and is left out.",
                                         "<b>%s rows</b> are wrong and are left out.", wrong), n_wrong);
  text = g_string_new (NULL);
  stead_words_add (text, taken);
  stead_words_add (text, skip > 0 ? skipped : NULL);
  stead_words_add (text, wrong > 0 ? faulty : NULL);
  stead_words_add (text, self->needs_order ? _("Say first whether the month or the day comes first in its dates.") : NULL);
  return stead_words_end (text);
}

/* The names of the columns, from the first row that is not blank. */
static gboolean
take_header (SteadImport   *self,
             SteadColumns  *columns,
             GError       **error)
{
  SteadImportRow *first;
  guint n;

  while (self->rows->len > 0 && stead_import_row_is_blank (self->rows->pdata[0]))
    g_ptr_array_remove_index (self->rows, 0);
  if (self->rows->len == 0)
    {
      g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT, _("This file is empty."));
      return FALSE;
    }
  first = self->rows->pdata[0];
  self->header = g_steal_pointer (&first->cells);
  first->cells = g_new0 (char *, 1);
  if (!stead_import_columns_find (self->kind, (const char * const *) self->header, columns, error))
    return FALSE;
  g_ptr_array_remove_index (self->rows, 0);
  n = g_strv_length (self->header);
  self->columns = g_new0 (char *, n + 1);
  for (guint i = 0; i < n; i++)
    {
      SteadColumn column = STEAD_COLUMN_NONE;

      for (int c = STEAD_COLUMN_DATE; c < STEAD_N_COLUMNS; c++)
        if (columns->at[c] == (int) i)
          column = c;
      self->columns[i] = stead_import_column_name (column, columns->unit[column]);
    }
  return TRUE;
}

/* Cells beyond the header cannot be told what they are. */
static void
mark_ragged (SteadImport *self)
{
  guint n = g_strv_length (self->header);

  for (guint i = 0; i < self->rows->len; i++)
    {
      SteadImportRow *row = self->rows->pdata[i];
      guint cells = 0;

      if (row->state == STEAD_ROW_WRONG)
        continue;
      for (guint c = 0; row->cells[c] != NULL; c++)
        if (row->cells[c][0] != '\0')
          cells = c + 1;
      if (cells <= n)
        continue;
      row->state = STEAD_ROW_WRONG;
      row->column = (int) n;
      row->message = g_strdup_printf (_("This row has %u cells, but the first row names %u columns. "
                                        "A comma inside a text needs quotation marks."), cells, n);
    }
}

static void
count_rows (SteadImport *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    self->counts[((const SteadImportRow *) self->rows->pdata[i])->state]++;
}

static gboolean
read_file (SteadImport       *self,
           SteadImportJudge  *judge,
           const char        *path,
           gint64             batch_id,
           GError           **error)
{
  g_auto(SteadImportText) text = { 0 };
  SteadColumns columns;
  gboolean judged;

  if (!stead_import_text_read (path, &text, error)
      || (self->rows = stead_import_table_read (&text, judge->cancellable, error)) == NULL
      || !take_header (self, &columns, error))
    return FALSE;
  mark_ragged (self);
  if (judge->order == STEAD_DATE_ORDER_UNKNOWN)
    judge->order = stead_import_find_order (self->rows, &columns);
  judge->columns = &columns;
  judged = stead_import_methods (self->kind)->prepare (judge, batch_id, error)
           && stead_import_methods (self->kind)->judge (judge, self->rows, error);
  judge->columns = NULL;
  if (!judged)
    return FALSE;
  self->needs_order = judge->ambiguous;
  count_rows (self);
  self->reading = reading_of (self, &text, judge->order);
  self->sentence = sentence_of (self);
  return TRUE;
}

SteadImport *
stead_import_read (SteadStore      *store,
                   SteadImportKind  kind,
                   gint64           batch_id,
                   const char      *path,
                   SteadDateOrder   order,
                   GCancellable    *cancellable,
                   void           (*progress) (double share, gpointer data),
                   gpointer         data,
                   GError         **error)
{
  g_autoptr(SteadImport) self = NULL;
  SteadImportJudge judge;
  gboolean read;

  g_return_val_if_fail (STEAD_IS_STORE (store) && path != NULL, NULL);

  self = g_object_new (STEAD_TYPE_IMPORT, NULL);
  self->kind = kind;
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL)
    return NULL;
  judge = (SteadImportJudge) { .store = store, .kind = kind, .farm = self->farm, .order = order,
                               .today = stead_store_get_today (store), .cancellable = cancellable,
                               .progress = progress, .data = data };
  judge.people = stead_person_repo_list (store, error);
  read = judge.people != NULL && read_file (self, &judge, path, batch_id, error);
  g_clear_pointer (&judge.people, g_ptr_array_unref);
  g_clear_pointer (&judge.items, g_ptr_array_unref);
  g_clear_pointer (&judge.flock, stead_flock_free);
  g_clear_pointer (&judge.crop, stead_crop_free);
  g_clear_pointer (&judge.fish, stead_fish_free);
  g_clear_pointer (&judge.groups, g_ptr_array_unref);
  return read ? g_steal_pointer (&self) : NULL;
}

const char * const *
stead_import_get_header (SteadImport *self)
{
  g_return_val_if_fail (STEAD_IS_IMPORT (self), NULL);
  return (const char * const *) self->header;
}

const char * const *
stead_import_get_columns (SteadImport *self)
{
  g_return_val_if_fail (STEAD_IS_IMPORT (self), NULL);
  return (const char * const *) self->columns;
}

guint
stead_import_get_n_rows (SteadImport *self)
{
  g_return_val_if_fail (STEAD_IS_IMPORT (self), 0);
  return self->rows->len;
}

const SteadImportRow *
stead_import_get_row (SteadImport *self,
                      guint        i)
{
  SteadImportRow *row;

  g_return_val_if_fail (STEAD_IS_IMPORT (self), NULL);
  g_return_val_if_fail (i < self->rows->len, NULL);

  /* Put in words only when looked at: a file may have a hundred thousand rows. */
  row = self->rows->pdata[i];
  if (row->understood == NULL && row->fact != NULL)
    row->understood = stead_import_methods (self->kind)->understood (self->farm, row->fact);
  return row;
}

guint
stead_import_count (SteadImport   *self,
                    SteadRowState  state)
{
  g_return_val_if_fail (STEAD_IS_IMPORT (self), 0);
  g_return_val_if_fail (state <= STEAD_ROW_WRONG, 0);
  return self->counts[state];
}

gboolean
stead_import_needs_order (SteadImport *self)
{
  g_return_val_if_fail (STEAD_IS_IMPORT (self), FALSE);
  return self->needs_order;
}

const char *
stead_import_get_sentence (SteadImport *self)
{
  g_return_val_if_fail (STEAD_IS_IMPORT (self), NULL);
  return self->sentence;
}

const char *
stead_import_get_reading (SteadImport *self)
{
  g_return_val_if_fail (STEAD_IS_IMPORT (self), NULL);
  return self->reading;
}

gboolean
stead_import_take (SteadImport   *self,
                   SteadStore    *store,
                   GCancellable  *cancellable,
                   void         (*progress) (double share, gpointer data),
                   gpointer       data,
                   GError       **error)
{
  guint n;
  g_autofree char *name = NULL;
  gboolean written;

  g_return_val_if_fail (STEAD_IS_IMPORT (self), FALSE);
  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);

  n = self->counts[STEAD_ROW_TAKE];
  if (n == 0)
    {
      g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT,
                           _("No row of the file can be taken. Mend the rows that are wrong first."));
      return FALSE;
    }
  name = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Import of %u row", "Import of %u rows", n), n);
  if (!stead_store_begin (store, name, error))
    return FALSE;
  written = stead_import_methods (self->kind)->write (self->rows, store, cancellable, progress, data, error);
  if (!written || g_cancellable_set_error_if_cancelled (cancellable, error))
    {
      stead_store_rollback (store);
      return FALSE;
    }
  return stead_store_commit (store, error);
}

/* RFC 4180, and safe in a spreadsheet: a text that looks like a formula gets an apostrophe. */
static void
append_cell (GString    *out,
             const char *cell,
             gboolean    first)
{
  double number;
  gboolean formula = *cell != '\0' && strchr ("=+-@\t\r", *cell) != NULL && !stead_number_parse (cell, &number, NULL);

  if (!first)
    g_string_append_c (out, ',');
  if (!formula && strpbrk (cell, ",\"\r\n") == NULL)
    {
      g_string_append (out, cell);
      return;
    }
  g_string_append (out, formula ? "\"'" : "\"");
  for (const char *p = cell; *p != '\0'; p++)
    {
      if (*p == '"')
        g_string_append_c (out, '"');
      g_string_append_c (out, *p);
    }
  g_string_append_c (out, '"');
}

static void
append_cells (GString             *out,
              const char * const  *cells,
              const char          *line,
              const char          *reason,
              guint                n_columns)
{
  guint n = g_strv_length ((char **) cells);

  for (guint i = 0; i < MAX (n, n_columns); i++)
    append_cell (out, i < n ? cells[i] : "", i == 0);
  append_cell (out, line, FALSE);
  append_cell (out, reason, FALSE);
  g_string_append (out, "\r\n");
}

gboolean
stead_import_save_wrong (SteadImport  *self,
                         const char   *path,
                         GError      **error)
{
  g_autoptr(GString) out = g_string_new ("\xEF\xBB\xBF");
  guint n_columns;

  g_return_val_if_fail (STEAD_IS_IMPORT (self), FALSE);
  g_return_val_if_fail (path != NULL, FALSE);

  n_columns = g_strv_length (self->header);
  append_cells (out, (const char * const *) self->header, C_("column", "Line"), C_("column", "Reason"), n_columns);
  for (guint i = 0; i < self->rows->len; i++)
    {
      const SteadImportRow *row = self->rows->pdata[i];
      g_autofree char *line = g_strdup_printf ("%u", row->line);

      if (row->state == STEAD_ROW_WRONG)
        append_cells (out, (const char * const *) row->cells, line, row->message, n_columns);
    }
  return g_file_set_contents_full (path, out->str, (gssize) out->len,
                                   G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0600, error);
}
