/* stead-folder-cells.c - values as the cells of a table, and back.
 *
 * What is written is read back as it was, to the last bit of a number and the last
 * sign of a text, also by way of another program that keeps cells as they are.
 */
#include "config.h"

#include <csv.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "store/stead-folder-private.h"

#define SECONDS_A_DAY 86400
#define BOM "\xef\xbb\xbf"

/* --- writing ---------------------------------------------------------------- */

/* Signs that begin a formula, as OWASP's page on CSV injection lists them, and the
 * same in the width of East Asian scripts; some programs look past blanks. */
static gboolean
looks_live (const char *text,
            gsize       length)
{
  static const char * const signs[] = { "=", "+", "-", "@", "\xef\xbc\x9d", "\xef\xbc\x8b", "\xef\xbc\x8d", "\xef\xbc\xa0" };

  if (length == 0 || *text == '\'' || *text == '\t' || *text == '\r' || *text == '\n')
    return TRUE;
  while (length > 0 && g_ascii_isspace (*text))
    {
      text++;
      length--;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (signs); i++)
    if (length >= strlen (signs[i]) && memcmp (text, signs[i], strlen (signs[i])) == 0)
      return TRUE;
  return FALSE;
}

void
stead_folder_add_text (GString    *line,
                       const char *text,
                       gsize       length)
{
  g_string_append_c (line, '"');
  if (looks_live (text, length))
    g_string_append_c (line, '\'');
  for (gsize i = 0; i < length; i++)
    {
      if (text[i] == '"')
        g_string_append_c (line, '"');
      g_string_append_c (line, text[i]);
    }
  g_string_append_c (line, '"');
}

static gint64
floor_days (gint64 seconds)
{
  gint64 days = seconds / SECONDS_A_DAY;

  return seconds % SECONDS_A_DAY < 0 ? days - 1 : days;
}

static gboolean
is_shown_day (gint64 day)
{
  return day > G_MININT32 && day <= G_MAXINT32 && stead_day_is_valid ((SteadDay) day);
}

/* A number that is no day of our calendar stays a number. */
void
stead_folder_add_whole (GString         *line,
                        SteadFolderType  type,
                        gint64           value)
{
  gint64 day = type == STEAD_FOLDER_MOMENT ? floor_days (value) : value;

  if ((type == STEAD_FOLDER_DAY || type == STEAD_FOLDER_MOMENT) && is_shown_day (day))
    {
      g_autofree char *text = stead_day_format ((SteadDay) day, STEAD_DAY_STYLE_ISO);
      int second = (int) (value - day * SECONDS_A_DAY);

      g_string_append (line, text);
      if (type == STEAD_FOLDER_MOMENT)
        g_string_append_printf (line, "T%02d:%02d:%02dZ", second / 3600, second / 60 % 60, second % 60);
      return;
    }
  g_string_append_printf (line, "%" G_GINT64_FORMAT, value);
}

/* The fewest digits that give the very same number back. */
void
stead_folder_add_number (GString *line,
                         double   value)
{
  static const char * const formats[] = { "%.15g", "%.16g", "%.17g" };
  char text[G_ASCII_DTOSTR_BUF_SIZE] = "";

  for (gsize i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_ascii_formatd (text, sizeof text, formats[i], value);
      if (g_ascii_strtod (text, NULL) == value)
        break;
    }
  g_string_append (line, text);
}

char *
stead_folder_picture (gint64 id)
{
  return g_strdup_printf (STEAD_FOLDER_PICTURES "/%" G_GINT64_FORMAT ".jpg", id);
}

/* --- reading ---------------------------------------------------------------- */

static gboolean
take_day (const char *text,
          int        *used,
          gint64     *out)
{
  int year, month, mday;
  SteadDay day;

  if (sscanf (text, "%4d-%2d-%2d%n", &year, &month, &mday, used) != 3 || *used != 10)
    return FALSE;
  day = stead_day_new (year, month, mday);
  *out = day;
  return day != STEAD_DAY_NONE;
}

static gboolean
take_moment (const char *text,
             gint64     *out)
{
  int used = 0, end = 0;
  int hour, minute, second;
  gint64 day;

  if (!take_day (text, &used, &day) ||
      sscanf (text + used, "T%2d:%2d:%2dZ%n", &hour, &minute, &second, &end) != 3 || end != 10 || text[used + end] != '\0' ||
      hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 59)
    return FALSE;
  *out = day * SECONDS_A_DAY + hour * 3600 + minute * 60 + second;
  return TRUE;
}

gboolean
stead_folder_take_whole (const SteadFolderCell *cell,
                         SteadFolderType        type,
                         gint64                *out)
{
  int used = 0;

  if (strlen (cell->text) != cell->length)
    return FALSE;
  if (g_ascii_string_to_signed (cell->text, 10, G_MININT64, G_MAXINT64, out, NULL))
    return TRUE;
  if (type == STEAD_FOLDER_DAY)
    return take_day (cell->text, &used, out) && cell->text[used] == '\0';
  return type == STEAD_FOLDER_MOMENT && take_moment (cell->text, out);
}

gboolean
stead_folder_take_number (const SteadFolderCell *cell,
                          double                *out)
{
  char *end = NULL;

  if (strlen (cell->text) != cell->length || cell->length == 0 || g_ascii_isspace (*cell->text))
    return FALSE;
  *out = g_ascii_strtod (cell->text, &end);
  return *end == '\0' && !isnan (*out);
}

const char *
stead_folder_take_text (const SteadFolderCell *cell,
                        gsize                 *out_length)
{
  gsize skip = cell->length > 0 && *cell->text == '\'' ? 1 : 0;

  *out_length = cell->length - skip;
  return cell->text + skip;
}

typedef struct
{
  GArray             *cells;
  guint               line;        /* being fed, from 1 */
  guint               row_line;
  SteadFolderRowFunc  func;
  gpointer            data;
  GError             *error;
} Rows;

static void
clear_cell (gpointer cell)
{
  g_free (((SteadFolderCell *) cell)->text);
}

static void
cell_cb (void   *text,
         size_t  length,
         void   *data)
{
  Rows *rows = data;
  SteadFolderCell cell = { .text = g_malloc (length + 1), .length = length };

  if (length > 0)
    memcpy (cell.text, text, length);
  cell.text[length] = '\0';
  g_array_append_val (rows->cells, cell);
}

static void
row_cb (int   end,
        void *data)
{
  Rows *rows = data;

  if (rows->error == NULL)
    rows->func ((const SteadFolderCell *) (gpointer) rows->cells->data, rows->cells->len, rows->row_line, rows->data,
                &rows->error);
  g_array_set_size (rows->cells, 0);
  rows->row_line = 0;
}

/* Blanks belong to the cell, as RFC 4180 says (section 2, rule 4). */
static int
no_space (unsigned char sign)
{
  return 0;
}

/* A line at a time, so that it is known where a row began. */
static gboolean
feed (struct csv_parser *parser,
      Rows              *rows,
      const char        *text,
      gsize              length)
{
  const char *end = text + length;

  while (text < end && rows->error == NULL)
    {
      const char *stop = memchr (text, '\n', (gsize) (end - text));
      gsize size = stop != NULL ? (gsize) (stop + 1 - text) : (gsize) (end - text);

      rows->line++;
      if (rows->row_line == 0)
        rows->row_line = rows->line;
      if (csv_parse (parser, text, size, cell_cb, row_cb, rows) != size)
        return FALSE;
      text += size;
    }
  return rows->error != NULL || csv_fini (parser, cell_cb, row_cb, rows) == 0;
}

gboolean
stead_folder_read_rows (const char          *path,
                        const char          *name,
                        SteadFolderRowFunc   func,
                        gpointer             data,
                        GError             **error)
{
  Rows rows = { .func = func, .data = data };
  g_autofree char *text = NULL;
  g_autoptr(GError) own = NULL;
  struct csv_parser parser;
  gsize length, skip;
  gboolean whole;

  if (!g_file_get_contents (path, &text, &length, &own))
    return g_error_matches (own, G_FILE_ERROR, G_FILE_ERROR_NOENT)
           ? stead_repo_refuse (error, _("The folder lacks the file “%s”. Nothing was taken in."), name)
           : stead_repo_refuse (error, _("“%s” cannot be read (%s). Nothing was taken in."), name, own->message);
  if (!g_utf8_validate_len (text, length, NULL) && memchr (text, '\0', length) == NULL)
    return stead_repo_refuse (error, _("“%s” is not saved as UTF-8. Save it so, and try again. "
                                         "Nothing was taken in."), name);
  if (csv_init (&parser, CSV_STRICT | CSV_STRICT_FINI) != 0)
    g_error ("out of memory");
  csv_set_space_func (&parser, no_space);
  rows.cells = g_array_new (FALSE, FALSE, sizeof (SteadFolderCell));
  g_array_set_clear_func (rows.cells, clear_cell);
  skip = g_str_has_prefix (text, BOM) ? strlen (BOM) : 0;
  whole = feed (&parser, &rows, text + skip, length - skip);
  csv_free (&parser);
  g_array_unref (rows.cells);
  if (rows.error != NULL)
    {
      g_propagate_error (error, rows.error);
      return FALSE;
    }
  return whole || stead_repo_refuse (error, _("“%s”, line %u: a quotation mark is missing or stands where none may. "
                                                "Nothing was taken in."), name, rows.line);
}
