/* stead-limit-parse.c - the text of a table of limits, with libcsv. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-limit-private.h"

#include <csv.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

typedef enum
{
  COLUMN_ID,
  COLUMN_PROCESS,
  COLUMN_SUBJECT,
  COLUMN_WHEN,
  COLUMN_MEASURE,
  COLUMN_DIRECTION,
  COLUMN_LIMIT,
  COLUMN_UNIT,
  COLUMN_TIME_DIRECTION,
  COLUMN_TIME,
  COLUMN_TIME_UNIT,
  COLUMN_HAZARD,
  COLUMN_SOURCE,
  COLUMN_WHERE,
  COLUMN_VERSION,
  COLUMN_STATUS,
  COLUMN_NOTE,
} Column;

const char * const limit_column_names[] = {
  "id", "process", "subject", "when", "measure", "direction", "limit", "unit",
  "time_direction", "time", "time_unit", "hazard", "source", "where", "version",
  "status", "note", NULL,
};

#define N_COLUMNS (COLUMN_NOTE + 1)

G_STATIC_ASSERT (G_N_ELEMENTS (limit_column_names) == N_COLUMNS + 1);

static const char * const direction_names[] = {
  [STEAD_LIMIT_AT_LEAST] = "at_least", [STEAD_LIMIT_AT_MOST] = "at_most",
  [STEAD_LIMIT_ABOVE] = "above", [STEAD_LIMIT_BELOW] = "below", [STEAD_LIMIT_IS] = "is",
};

/* Cells that no row may leave empty. */
static const Column must_have[] = {
  COLUMN_ID, COLUMN_PROCESS, COLUMN_SUBJECT, COLUMN_MEASURE, COLUMN_DIRECTION, COLUMN_LIMIT,
  COLUMN_UNIT, COLUMN_HAZARD, COLUMN_SOURCE, COLUMN_WHERE, COLUMN_VERSION, COLUMN_STATUS,
};

static gboolean
parse_number (const char *text,
              double     *out)
{
  char *end = NULL;
  double value;

  if (*text == '\0' || strspn (text, "0123456789.-") != strlen (text))
    return FALSE;
  value = g_ascii_strtod (text, &end);
  if (*end != '\0' || !isfinite (value))
    return FALSE;
  *out = value;
  return TRUE;
}

static gboolean
parse_direction (const char          *text,
                 SteadLimitDirection *out)
{
  for (gsize i = 0; i < G_N_ELEMENTS (direction_names); i++)
    if (g_str_equal (direction_names[i], text))
      {
        *out = (SteadLimitDirection) i;
        return TRUE;
      }
  return FALSE;
}

/* Seconds in a unit of time; 0 if it is none. */
static double
seconds_in (const char *unit)
{
  static const struct { const char *unit; double s; } units[] = {
    { "s", 1 }, { "min", 60 }, { "h", 3600 }, { "d", 86400 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_equal (units[i].unit, unit))
      return units[i].s;
  return 0;
}

/* Conditions */

static void
condition_clear (gpointer data)
{
  LimitCondition *condition = data;

  g_free (condition->name);
  g_strfreev (condition->words);
}

static gboolean
parse_condition (const char     *term,
                 LimitCondition *out)
{
  gsize n = strcspn (term, "<>=");
  const char *value = term + n;
  char sign = *value;
  gboolean or_equal;

  if (n == 0 || sign == '\0')
    return FALSE;
  value++;
  or_equal = sign != '=' && *value == '=';
  value += or_equal ? 1 : 0;
  out->op = sign == '=' ? LIMIT_IF_EQUAL
            : sign == '<' ? (or_equal ? LIMIT_IF_AT_MOST : LIMIT_IF_LESS)
                          : (or_equal ? LIMIT_IF_AT_LEAST : LIMIT_IF_MORE);
  if (!parse_number (value, &out->number))
    {
      if (*value == '\0' || out->op != LIMIT_IF_EQUAL)
        return FALSE;
      out->words = g_strsplit (value, "|", -1);
    }
  out->name = g_strndup (term, n);
  return TRUE;
}

GArray *
limit_conditions_parse (const char *text)
{
  g_autoptr(GArray) conditions = g_array_new (FALSE, TRUE, sizeof (LimitCondition));
  g_auto(GStrv) terms = g_strsplit (text, " ", -1);

  g_array_set_clear_func (conditions, condition_clear);
  for (gsize i = 0; terms[i] != NULL; i++)
    {
      LimitCondition condition = { 0 };

      if (*terms[i] == '\0')
        continue;
      if (!parse_condition (terms[i], &condition))
        return NULL;
      g_array_append_val (conditions, condition);
    }
  return g_steal_pointer (&conditions);
}

/* A row */

/* The limit as a number, or as a word where the unit says so. */
static gboolean
parse_value (const char * const *cells,
             GStringChunk       *strings,
             SteadLimit         *limit)
{
  if (g_str_equal (cells[COLUMN_UNIT], "word") || g_str_equal (cells[COLUMN_UNIT], "text"))
    {
      limit->value = NAN;
      limit->word = g_string_chunk_insert_const (strings, cells[COLUMN_LIMIT]);
      return limit->direction == STEAD_LIMIT_IS;
    }
  return parse_number (cells[COLUMN_LIMIT], &limit->value);
}

static gboolean
parse_time (const char * const *cells,
            SteadLimit         *limit)
{
  double unit_s = seconds_in (cells[COLUMN_TIME_UNIT]);

  limit->time_s = NAN;
  limit->has_time = *cells[COLUMN_TIME] != '\0';
  if (!limit->has_time)
    return *cells[COLUMN_TIME_DIRECTION] == '\0' && *cells[COLUMN_TIME_UNIT] == '\0';
  if (unit_s == 0 || !parse_number (cells[COLUMN_TIME], &limit->time_s) || limit->time_s < 0
      || !parse_direction (cells[COLUMN_TIME_DIRECTION], &limit->time_direction))
    return FALSE;
  limit->time_s *= unit_s;
  return limit->time_direction == STEAD_LIMIT_AT_LEAST || limit->time_direction == STEAD_LIMIT_AT_MOST;
}

static const char *
missing_cell (const char * const *cells)
{
  for (gsize i = 0; i < G_N_ELEMENTS (must_have); i++)
    if (*cells[must_have[i]] == '\0')
      return limit_column_names[must_have[i]];
  return NULL;
}

LimitRow *
limit_row_parse (const char * const  *cells,
                 GStringChunk        *strings,
                 const char         **out_column)
{
  g_autoptr(LimitRow) row = g_new0 (LimitRow, 1);
  const struct { const char **place; Column column; } texts[] = {
    { &row->limit.id, COLUMN_ID }, { &row->limit.process, COLUMN_PROCESS },
    { &row->limit.subject, COLUMN_SUBJECT }, { &row->limit.when, COLUMN_WHEN },
    { &row->limit.measure, COLUMN_MEASURE }, { &row->limit.unit, COLUMN_UNIT },
    { &row->limit.hazard, COLUMN_HAZARD }, { &row->limit.source, COLUMN_SOURCE },
    { &row->limit.where, COLUMN_WHERE }, { &row->limit.version, COLUMN_VERSION },
    { &row->limit.status, COLUMN_STATUS }, { &row->limit.note, COLUMN_NOTE },
  };

  *out_column = missing_cell (cells);
  if (*out_column != NULL)
    return NULL;
  if (!parse_direction (cells[COLUMN_DIRECTION], &row->limit.direction))
    *out_column = limit_column_names[COLUMN_DIRECTION];
  else if (!parse_value (cells, strings, &row->limit))
    *out_column = limit_column_names[COLUMN_LIMIT];
  else if (!parse_time (cells, &row->limit))
    *out_column = limit_column_names[COLUMN_TIME];
  else if ((row->conditions = limit_conditions_parse (cells[COLUMN_WHEN])) == NULL)
    *out_column = limit_column_names[COLUMN_WHEN];
  if (*out_column != NULL)
    return NULL;
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    *texts[i].place = g_string_chunk_insert_const (strings, cells[texts[i].column]);
  row->subjects = g_strsplit (row->limit.subject, "|", -1);
  return g_steal_pointer (&row);
}

/* A table */

typedef struct
{
  SteadLimitTable *table;
  const char      *name;
  GPtrArray       *cells;               /* of the line under way */
  guint            place[N_COLUMNS];    /* where each column stands */
  gboolean         has_header;
  guint            line;
  GPtrArray       *rows;                /* of LimitRow, read so far */
  GHashTable      *ids;
  GError          *error;
} Reader;

static void
reader_clear (Reader *reader)
{
  g_clear_pointer (&reader->cells, g_ptr_array_unref);
  g_clear_pointer (&reader->rows, g_ptr_array_unref);
  g_clear_pointer (&reader->ids, g_hash_table_unref);
  g_clear_error (&reader->error);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Reader, reader_clear)

static void
set_cell_error (Reader     *reader,
                const char *column)
{
  g_set_error (&reader->error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
               _("Limits “%s”, row %u: the column “%s” is missing or cannot be read."),
               reader->name, reader->line, column);
}

static void
read_header (Reader *reader)
{
  for (gsize c = 0; c < N_COLUMNS && reader->error == NULL; c++)
    if (!g_ptr_array_find_with_equal_func (reader->cells, limit_column_names[c], g_str_equal,
                                           &reader->place[c]))
      set_cell_error (reader, limit_column_names[c]);
  reader->has_header = TRUE;
}

static void
read_row (Reader *reader)
{
  const char *cells[N_COLUMNS];
  const char *column = NULL;
  g_autoptr(LimitRow) row = NULL;

  for (gsize c = 0; c < N_COLUMNS; c++)
    {
      if (reader->place[c] >= reader->cells->len)
        {
          set_cell_error (reader, limit_column_names[c]);
          return;
        }
      cells[c] = reader->cells->pdata[reader->place[c]];
    }
  row = limit_row_parse (cells, reader->table->strings, &column);
  if (row == NULL)
    {
      set_cell_error (reader, column);
      return;
    }
  if (g_hash_table_contains (reader->table->by_id, row->limit.id)
      || !g_hash_table_add (reader->ids, (char *) row->limit.id))
    {
      g_set_error (&reader->error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
                   _("Limits “%s”, row %u: “%s” stands there twice."),
                   reader->name, reader->line, row->limit.id);
      return;
    }
  g_ptr_array_add (reader->rows, g_steal_pointer (&row));
}

static void
cell_cb (void  *data,
         size_t length,
         void  *user_data)
{
  Reader *reader = user_data;

  g_ptr_array_add (reader->cells, g_strndup (data != NULL ? data : "", length));
}

static void
row_cb (int   end,
        void *user_data)
{
  Reader *reader = user_data;

  reader->line++;
  if (reader->error != NULL || reader->cells->len == 0)
    ;
  else if (!reader->has_header)
    read_header (reader);
  else
    read_row (reader);
  g_ptr_array_set_size (reader->cells, 0);
}

static void
parse_text (Reader *reader,
            GBytes *csv)
{
  struct csv_parser parser;
  gsize length = 0;
  const char *text = g_bytes_get_data (csv, &length);

  if (csv_init (&parser, CSV_STRICT | CSV_STRICT_FINI) != 0)
    g_error ("out of memory");
  if ((length > 0 && csv_parse (&parser, text, length, cell_cb, row_cb, reader) != length)
      || csv_fini (&parser, cell_cb, row_cb, reader) != 0)
    {
      g_clear_error (&reader->error);
      g_set_error (&reader->error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
                   _("The limits “%s” cannot be read after row %u: %s"),
                   reader->name, reader->line, csv_strerror (csv_error (&parser)));
    }
  csv_free (&parser);
  if (!reader->has_header && reader->error == NULL)
    set_cell_error (reader, limit_column_names[0]);
}

gboolean
stead_limit_table_add_csv (SteadLimitTable  *table,
                           const char       *name,
                           GBytes           *csv,
                           GError          **error)
{
  g_auto(Reader) reader = { .table = table, .name = name };

  g_return_val_if_fail (table != NULL && name != NULL && csv != NULL, FALSE);

  reader.cells = g_ptr_array_new_with_free_func (g_free);
  reader.rows = g_ptr_array_new_with_free_func ((GDestroyNotify) limit_row_free);
  reader.ids = g_hash_table_new (g_str_hash, g_str_equal);
  parse_text (&reader, csv);
  if (reader.error != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&reader.error));
      return FALSE;
    }
  for (guint i = 0; i < reader.rows->len; i++)
    {
      LimitRow *row = reader.rows->pdata[i];

      g_ptr_array_add (table->rows, row);
      g_hash_table_insert (table->by_id, (char *) row->limit.id, row);
    }
  g_ptr_array_extend_and_steal (table->own, g_steal_pointer (&reader.rows));
  return TRUE;
}
