/* stead-table-csv.c - the rows of a table as CSV.
 *
 * RFC 4180: CRLF, quotes round a field with comma, quote or line break, inner
 * quotes doubled.  A text that starts like a formula is defused (OWASP, "CSV
 * injection"): a leading apostrophe; a number column is left alone, so that
 * −3.50 stays a number.
 */
#include "config.h"

#include <string.h>

#include "app/stead-table-private.h"

static gboolean
is_like_formula (const char *cell)
{
  return *cell != '\0' && strchr ("=+-@\t\r\n", *cell) != NULL;
}

static void
append_cell (GString    *csv,
             const char *cell,
             gboolean    numeric)
{
  gboolean defuse = !numeric && is_like_formula (cell);
  gboolean quote = defuse || strpbrk (cell, ",\"\r\n") != NULL;

  if (quote)
    g_string_append_c (csv, '"');
  if (defuse)
    g_string_append_c (csv, '\'');
  for (const char *p = cell; *p != '\0'; p++)
    {
      if (*p == '"')
        g_string_append_c (csv, '"');
      g_string_append_c (csv, *p);
    }
  if (quote)
    g_string_append_c (csv, '"');
}

void
stead_table_csv_append (GString            *csv,
                        const char * const *cells,
                        const gboolean     *numeric,
                        guint               n_cells)
{
  for (guint i = 0; i < n_cells; i++)
    {
      if (i > 0)
        g_string_append_c (csv, ',');
      append_cell (csv, cells[i], numeric[i]);
    }
  g_string_append (csv, "\r\n");
}
