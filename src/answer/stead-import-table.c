/* stead-import-table.c - text to rows of cells, with libcsv.
 *
 * The parser does not tell where it is, so it is fed one line at a time: a row
 * begins at the first line that is not blank after the row before it.
 */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-import-private.h"

#include <csv.h>
#include <glib/gi18n-lib.h>
#include <string.h>

/* How many lines pass between two looks whether the person stopped it. */
#define LINES_A_LOOK 4096

typedef struct
{
  GPtrArray *rows;
  GPtrArray *cells;      /* of the row under way */
  guint      line;       /* being fed, from 1 */
  guint      row_line;   /* where the row under way began; 0: not yet */
} Table;

void
stead_import_row_free (SteadImportRow *row)
{
  if (row == NULL)
    return;
  g_strfreev (row->cells);
  g_free (row->understood);
  g_free (row->message);
  g_free (row);
}

static void
cell_cb (void  *cell,
         size_t length,
         void  *data)
{
  Table *table = data;

  g_ptr_array_add (table->cells, g_strndup (cell != NULL ? cell : "", length));
}

static void
row_cb (int   end,
        void *data)
{
  Table *table = data;
  SteadImportRow *row = g_new0 (SteadImportRow, 1);
  guint n = table->cells->len;

  row->line = table->row_line;
  row->column = -1;
  g_ptr_array_add (table->cells, NULL);
  row->cells = g_memdup2 (table->cells->pdata, (n + 1) * sizeof (char *));
  g_ptr_array_set_size (table->cells, 0);
  g_ptr_array_add (table->rows, row);
  table->row_line = 0;
}

/* The end of the line at @p, its sign included: CR, LF or both. */
static const char *
end_of_line (const char *p,
             const char *end)
{
  while (p < end && *p != '\n' && *p != '\r')
    p++;
  if (p + 1 < end && p[0] == '\r' && p[1] == '\n')
    return p + 2;
  return p < end ? p + 1 : end;
}

static gboolean
is_blank (const char *p,
          const char *end)
{
  while (p < end && (*p == ' ' || *p == '\r' || *p == '\n'))
    p++;
  return p == end;
}

static gboolean
set_parse_error (struct csv_parser  *parser,
                 guint               line,
                 GError            **error)
{
  g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT,
               _("The table cannot be read at line %u: %s"), line, csv_strerror (csv_error (parser)));
  return FALSE;
}

static gboolean
feed (struct csv_parser      *parser,
      Table                  *table,
      const SteadImportText  *text,
      GCancellable           *cancellable,
      GError                **error)
{
  const char *end = text->text + text->length;

  for (const char *p = text->text; p < end; table->line++)
    {
      const char *next = end_of_line (p, end);

      if (table->line % LINES_A_LOOK == 0 && g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;
      if (table->row_line == 0 && !is_blank (p, next))
        table->row_line = table->line;
      if (csv_parse (parser, p, (size_t) (next - p), cell_cb, row_cb, table) != (size_t) (next - p))
        return set_parse_error (parser, table->line, error);
      p = next;
    }
  return TRUE;
}

/* The rest of the file is one cell: tell where it began instead of taking it. */
static void
mark_open_quote (Table *table)
{
  SteadImportRow *row;

  if (table->rows->len == 0)
    return;
  row = table->rows->pdata[table->rows->len - 1];
  row->state = STEAD_ROW_WRONG;
  row->message = g_strdup (_("A quotation mark that opens in this row is never closed. "
                             "Close it, and import the rest again."));
}

static void
clear_cells (GPtrArray *cells)
{
  for (guint i = 0; i < cells->len; i++)
    g_free (cells->pdata[i]);
  g_ptr_array_unref (cells);
}

GPtrArray *
stead_import_table_read (const SteadImportText  *text,
                         GCancellable           *cancellable,
                         GError                **error)
{
  g_autoptr(GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_import_row_free);
  Table table = { .rows = rows, .cells = g_ptr_array_new (), .line = text->first_line };
  struct csv_parser parser;
  gboolean fed;
  gboolean open_quote;

  if (csv_init (&parser, 0) != 0)
    g_error ("libcsv could not be set up");
  csv_set_delim (&parser, (unsigned char) text->separator);
  fed = feed (&parser, &table, text, cancellable, error);
  /* Strict about the end alone: a quotation mark inside a cell is let pass. */
  csv_set_opts (&parser, CSV_STRICT | CSV_STRICT_FINI);
  open_quote = fed && csv_fini (&parser, cell_cb, row_cb, &table) != 0;
  if (open_quote)
    {
      /* The row under way is handed out after all, to be shown. */
      csv_set_opts (&parser, 0);
      csv_fini (&parser, cell_cb, row_cb, &table);
      mark_open_quote (&table);
    }
  csv_free (&parser);
  clear_cells (table.cells);
  return fed ? g_steal_pointer (&rows) : NULL;
}
