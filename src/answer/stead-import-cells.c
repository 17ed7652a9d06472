/* stead-import-cells.c - cells of a stranger's table to days, counts and names. */
#include "config.h"

#include "answer/stead-import-private.h"
#include "answer/stead-line-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define ROWS_A_LOOK 1024
#define MAX_COUNT 1e6

const char *
stead_import_cell (const SteadImportJudge *judge,
                   const SteadImportRow   *row,
                   SteadColumn             column)
{
  int at = judge->columns->at[column];

  for (int i = 0; i <= at; i++)
    if (row->cells[i] == NULL)
      return "";
  return at >= 0 ? row->cells[at] : "";
}

gboolean
stead_import_wrong (const SteadImportJudge *judge,
                    SteadImportRow         *row,
                    SteadColumn             column,
                    char                   *message)
{
  row->state = STEAD_ROW_WRONG;
  row->column = column == STEAD_COLUMN_NONE ? -1 : judge->columns->at[column];
  g_free (row->message);
  row->message = message;
  return FALSE;
}

void
stead_import_skip (SteadImportRow *row,
                   char           *message)
{
  row->state = STEAD_ROW_SKIP;
  g_free (row->message);
  row->message = message;
}

/* Those above the 7 bits, too: some decode an unused byte of Windows-1252 as one. */
static gboolean
has_control_sign (const char *cell)
{
  for (const char *p = cell; *p != '\0'; p = g_utf8_next_char (p))
    if (g_unichar_iscntrl (g_utf8_get_char (p)) && *p != '\t' && *p != '\n' && *p != '\r')
      return TRUE;
  return FALSE;
}

gboolean
stead_import_check_cells (SteadImportRow *row)
{
  for (int i = 0; row->cells[i] != NULL; i++)
    {
      char *message = NULL;

      if (strlen (row->cells[i]) > STEAD_IMPORT_MAX_CELL)
        message = g_strdup (_("This cell is far too long. Perhaps a quotation mark is missing before it."));
      else if (has_control_sign (row->cells[i]))
        message = g_strdup (_("This cell holds a sign that cannot be read. Type it again."));
      if (message == NULL)
        continue;
      row->state = STEAD_ROW_WRONG;
      row->column = i;
      row->message = message;
      return FALSE;
    }
  return TRUE;
}

gboolean
stead_import_row_is_blank (const SteadImportRow *row)
{
  for (int i = 0; row->cells[i] != NULL; i++)
    if (row->cells[i][strspn (row->cells[i], " \t")] != '\0')
      return FALSE;
  return TRUE;
}

/* "2026-03-03", the usual cell, without the machinery for the unusual ones. */
static gboolean
read_iso_day (const char *cell,
              SteadDay   *out_day)
{
  static const char pattern[] = "0000-00-00";
  SteadDay day;

  for (gsize i = 0; i < strlen (pattern); i++)
    if (pattern[i] == '0' ? !g_ascii_isdigit (cell[i]) : cell[i] != pattern[i])
      return FALSE;
  if (cell[strlen (pattern)] != '\0')
    return FALSE;
  day = stead_day_new (atoi (cell), atoi (cell + 5), atoi (cell + 8));
  if (day == STEAD_DAY_NONE)
    return FALSE;
  *out_day = day;
  return TRUE;
}

/* Spreadsheets put a time behind a day: "3/3/2026 0:00:00", "2026-03-03T00:00". */
static char *
without_time (const char *cell)
{
  const char *colon = strchr (cell, ':');
  const char *p;

  if (colon == NULL || colon - cell < 8)
    return g_strdup (cell);
  for (p = colon - 1; p > cell && g_ascii_isdigit (*p); p--)
    ;
  if (*p != ' ' && *p != 'T')
    return g_strdup (cell);
  return g_strndup (cell, (gsize) (p - cell));
}

/* The first two numbers of "13/2/2026" or "13.2."; FALSE for any other text. */
static gboolean
two_numbers (const char *cell,
             int        *first,
             int        *second)
{
  char sign = '\0';
  int used = 0;

  cell += strspn (cell, " ");
  if (sscanf (cell, "%4d%c%4d%n", first, &sign, second, &used) < 3 || used == 0)
    return FALSE;
  return (sign == '/' || sign == '.' || sign == '-') && *first >= 0 && *second >= 0;
}

SteadDateOrder
stead_import_find_order (GPtrArray          *rows,
                         const SteadColumns *columns)
{
  const SteadImportJudge judge = { .columns = columns };
  gboolean mdy = FALSE;
  gboolean dmy = FALSE;

  for (guint i = 0; i < rows->len; i++)
    {
      const SteadImportRow *row = rows->pdata[i];
      const char *cell = stead_import_cell (&judge, row, STEAD_COLUMN_DATE);
      SteadDay day;
      int first;
      int second;

      if (row->state == STEAD_ROW_WRONG || read_iso_day (cell, &day) || !two_numbers (cell, &first, &second)
          || first > 31)
        continue;
      dmy = dmy || (first > 12 && second <= 12);
      mdy = mdy || (second > 12 && second <= 31 && first <= 12);
    }
  if (mdy == dmy)
    return STEAD_DATE_ORDER_UNKNOWN;
  return mdy ? STEAD_DATE_ORDER_MDY : STEAD_DATE_ORDER_DMY;
}

/* A day of digits that can be read two ways while nobody told which. */
static gboolean
is_ambiguous (const SteadImportJudge *judge,
              const char             *cell)
{
  int first;
  int second;

  return judge->order == STEAD_DATE_ORDER_UNKNOWN && two_numbers (cell, &first, &second)
         && first >= 1 && first <= 12 && second >= 1 && second <= 12 && first != second;
}

gboolean
stead_import_read_day (SteadImportJudge *judge,
                       SteadImportRow   *row,
                       SteadColumn       column,
                       SteadDay         *out_day)
{
  const char *cell = stead_import_cell (judge, row, column);
  g_autofree char *text = NULL;
  g_autoptr(GError) error = NULL;

  if (*cell == '\0')
    return stead_import_wrong (judge, row, column, g_strdup (_("The date is missing.")));
  if (read_iso_day (cell, out_day))
    return TRUE;
  text = without_time (cell);
  if (is_ambiguous (judge, text))
    {
      judge->ambiguous = TRUE;
      return stead_import_wrong (judge, row, column,
                                 g_strdup_printf (_("“%s” can be read in two ways. Say whether the month or the day "
                                                    "comes first."), cell));
    }
  if (!stead_day_parse (text, judge->today, judge->order, out_day, &error))
    return stead_import_wrong (judge, row, column, g_strdup (error->message));
  return TRUE;
}

/* Plain digits, the usual cell, without the machinery for the unusual ones. */
static gboolean
read_digits (const char *cell,
             gint32     *out)
{
  gsize length = strspn (cell, "0123456789");

  if (length == 0 || length > 6 || cell[length] != '\0')
    return FALSE;
  *out = (gint32) g_ascii_strtoll (cell, NULL, 10);
  return TRUE;
}

gboolean
stead_import_read_count (const SteadImportJudge *judge,
                         SteadImportRow         *row,
                         SteadColumn             column,
                         gint32                 *out)
{
  const char *cell = stead_import_cell (judge, row, column);
  g_autoptr(GError) error = NULL;
  double value;

  if (*cell == '\0' || read_digits (cell, out))
    return TRUE;
  if (!stead_quantity_parse (cell, STEAD_DIMENSION_COUNT, stead_unit_by_id ("ea"), &value, NULL, &error))
    return stead_import_wrong (judge, row, column, g_strdup (error->message));
  if (fabs (value - round (value)) > 1e-9)
    return stead_import_wrong (judge, row, column,
                               g_strdup_printf (_("“%s” is not a whole number. Eggs and birds are counted whole."), cell));
  if (value > MAX_COUNT)
    return stead_import_wrong (judge, row, column,
                               g_strdup_printf (_("“%s” is too large. Check how many digits you typed."), cell));
  *out = (gint32) round (value);
  return TRUE;
}

gboolean
stead_import_read_yes (const SteadImportJudge *judge,
                       SteadImportRow         *row,
                       SteadColumn             column,
                       const char * const     *yes,
                       const char * const     *no,
                       gboolean               *out)
{
  static const char * const any_yes[] = { "yes", "y", "true", "1", "x", "si", "s", NULL };
  static const char * const any_no[] = { "", "no", "n", "false", "0", "-", NULL };
  const char *cell = stead_import_cell (judge, row, column);
  g_autofree char *folded = stead_line_fold (cell);

  g_strstrip (folded);
  *out = g_strv_contains (any_yes, folded) || (yes != NULL && g_strv_contains (yes, folded));
  if (*out || g_strv_contains (any_no, folded) || (no != NULL && g_strv_contains (no, folded)))
    return TRUE;
  return stead_import_wrong (judge, row, column, g_strdup_printf (_("“%s” is neither yes nor no."), cell));
}

char *
stead_import_read_text (const SteadImportJudge *judge,
                        const SteadImportRow   *row,
                        SteadColumn             column)
{
  const char *cell = stead_import_cell (judge, row, column);
  g_autofree char *text = NULL;

  /* Our own export puts an apostrophe before what looks like a formula. */
  if (cell[0] == '\'' && cell[1] != '\0' && strchr ("=+-@", cell[1]) != NULL)
    cell++;
  text = g_strstrip (g_strdup (cell));
  g_strdelimit (text, column == STEAD_COLUMN_NOTE ? "\r" : "\t\r\n", ' ');
  return *text != '\0' ? g_steal_pointer (&text) : NULL;
}

gint64
stead_import_find_person (const SteadImportJudge *judge,
                          const char             *name)
{
  g_autofree char *wanted = NULL;

  if (name == NULL || *name == '\0')
    return 0;
  wanted = stead_line_fold (name);
  for (guint i = 0; i < judge->people->len; i++)
    {
      const SteadPerson *person = judge->people->pdata[i];
      g_autofree char *folded = stead_line_fold (person->name);

      if (g_str_equal (folded, wanted))
        return person->id;
    }
  return -1;
}

gboolean
stead_import_go_on (const SteadImportJudge *judge,
                    guint                   done,
                    guint                   all,
                    GError                **error)
{
  if (done % ROWS_A_LOOK != 0)
    return TRUE;
  if (g_cancellable_set_error_if_cancelled (judge->cancellable, error))
    return FALSE;
  if (judge->progress != NULL && all > 0)
    judge->progress ((double) done / all, judge->data);
  return TRUE;
}

/* "6.8": the usual cell; the unusual ones go through the parser of amounts. */
static gboolean
read_plain_decimal (const char *cell,
                    double     *out)
{
  gsize whole = strspn (cell, "0123456789");
  gsize part;

  if (whole == 0 || whole > 6)
    return FALSE;
  part = cell[whole] == '.' ? strspn (cell + whole + 1, "0123456789") : 0;
  if (cell[whole] == '.' && (part < 1 || part > 2))
    return FALSE;
  if (cell[whole + (cell[whole] == '.' ? part + 1 : 0)] != '\0')
    return FALSE;
  *out = g_ascii_strtod (cell, NULL);
  return TRUE;
}

gboolean
stead_import_read_quantity (const SteadImportJudge *judge,
                            SteadImportRow         *row,
                            SteadColumn             column,
                            const SteadUnit        *fallback,
                            double                 *out_base)
{
  const char *cell = stead_import_cell (judge, row, column);
  const SteadUnit *unit = judge->columns->unit[column];
  g_autoptr(GError) error = NULL;
  double value;

  if (*cell == '\0')
    return TRUE;
  if (unit == NULL || unit->dimension != fallback->dimension)
    unit = fallback;
  if (read_plain_decimal (cell, &value))
    {
      *out_base = stead_quantity_to_base (value, unit);
      return TRUE;
    }
  if (!stead_quantity_parse (cell, unit->dimension, unit, out_base, NULL, &error))
    return stead_import_wrong (judge, row, column, g_strdup (error->message));
  return TRUE;
}

void
stead_import_read_person (const SteadImportJudge  *judge,
                          const SteadImportRow    *row,
                          gint64                  *out_id,
                          char                   **note)
{
  g_autofree char *name = stead_import_read_text (judge, row, STEAD_COLUMN_PERSON);
  gint64 id = stead_import_find_person (judge, name);
  char *longer;

  if (id >= 0)
    {
      *out_id = id;
      return;
    }
  longer = *note == NULL ? g_strdup_printf (_("by %s"), name)
                         /* Translators: a note and the name of a person. */
                         : g_strdup_printf (_("%s (by %s)"), *note, name);
  g_free (*note);
  *note = longer;
}

gboolean
stead_import_is_to_read (SteadImportRow *row)
{
  if (row->state == STEAD_ROW_WRONG || !stead_import_check_cells (row))
    return FALSE;
  if (!stead_import_row_is_blank (row))
    return TRUE;
  stead_import_skip (row, g_strdup (_("This row is blank.")));
  return FALSE;
}
