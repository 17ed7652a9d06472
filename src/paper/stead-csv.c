/* stead-csv.c - rows as comma-separated values, RFC 4180. */
#include "config.h"

#include "core/stead-money.h"
#include "paper/stead-csv.h"

#include <locale.h>
#include <string.h>

#define BOM "\xef\xbb\xbf"
#define NEW_LINE "\r\n"

void
stead_csv_add_text (GString    *line,
                    const char *text,
                    char        separator)
{
  gboolean formula = *text != '\0' && strchr ("=+-@\t\r\n", *text) != NULL;
  gboolean quoted = formula || strpbrk (text, "\"\r\n") != NULL || strchr (text, separator) != NULL;

  if (!quoted)
    {
      g_string_append (line, text);
      return;
    }
  g_string_append_c (line, '"');
  if (formula)
    g_string_append_c (line, '\'');
  for (const char *at = text; *at != '\0'; at++)
    {
      if (*at == '"')
        g_string_append_c (line, '"');
      g_string_append_c (line, *at);
    }
  g_string_append_c (line, '"');
}

/* A number with @digits after the point, without zeros at its end. */
static void
add_number (GString    *line,
            double      value,
            int         digits,
            const char *decimal)
{
  char format[8], text[G_ASCII_DTOSTR_BUF_SIZE];
  char *point;

  g_snprintf (format, sizeof format, "%%.%df", digits);
  g_ascii_formatd (text, sizeof text, format, value);
  point = strchr (text, '.');
  if (point != NULL)
    {
      char *end = text + strlen (text);

      while (end[-1] == '0')
        *--end = '\0';
      if (end[-1] == '.')
        *--end = '\0';
    }
  if (g_str_equal (text, "-0"))
    g_strlcpy (text, "0", sizeof text);
  point = strchr (text, '.');
  if (point == NULL)
    {
      g_string_append (line, text);
      return;
    }
  *point = '\0';
  g_string_append (line, text);
  g_string_append (line, decimal);
  g_string_append (line, point + 1);
}

static void
add_cell (GString              *line,
          const SteadLogAnswer *log,
          const SteadLogColumn *column,
          const SteadLogCell   *cell,
          char                  separator,
          const char           *decimal)
{
  g_autofree char *text = NULL;

  if (!cell->filled)
    return;
  switch (column->kind)
    {
    case STEAD_CELL_DAY:
      text = stead_day_format ((SteadDay) cell->whole, STEAD_DAY_STYLE_ISO);
      g_string_append (line, text);
      return;
    case STEAD_CELL_COUNT:
      g_string_append_printf (line, "%" G_GINT64_FORMAT, cell->whole);
      return;
    case STEAD_CELL_NUMBER:
      add_number (line, cell->number, column->digits, decimal);
      return;
    case STEAD_CELL_MONEY:
      text = stead_money_format_stored (cell->whole, log->currency);
      if (strchr (text, '.') != NULL)
        {
          g_auto(GStrv) parts = g_strsplit (text, ".", 2);

          g_string_append_printf (line, "%s%s%s", parts[0], decimal, parts[1]);
          return;
        }
      g_string_append (line, text);
      return;
    case STEAD_CELL_TEXT:
    default:
      stead_csv_add_text (line, cell->text, separator);
      return;
    }
}

GBytes *
stead_csv_from_log (const SteadLogAnswer *log,
                    gboolean              for_spreadsheet)
{
  const char *decimal = for_spreadsheet ? localeconv ()->decimal_point : ".";
  char separator = *decimal == ',' ? ';' : ',';
  GString *out = g_string_new (BOM);

  for (guint column = 0; column < log->columns->len; column++)
    {
      if (column > 0)
        g_string_append_c (out, separator);
      stead_csv_add_text (out, stead_log_answer_column (log, column)->title, separator);
    }
  g_string_append (out, NEW_LINE);
  for (guint row = 0; row < log->rows->len; row++)
    {
      for (guint column = 0; column < log->columns->len; column++)
        {
          if (column > 0)
            g_string_append_c (out, separator);
          add_cell (out, log, stead_log_answer_column (log, column),
                    stead_log_answer_cell (log, row, column), separator, decimal);
        }
      g_string_append (out, NEW_LINE);
    }
  return g_string_free_to_bytes (out);
}
