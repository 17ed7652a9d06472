/* stead-folder-words.c - what each table and column holds, out of data/folder. */
#include "config.h"

#include "answer/stead-folder-answer.h"
#include "data/folder/steading-folder.h"

#include <csv.h>
#include <string.h>

#define PREFIX "/farm/steading/Steading/folder/"

typedef struct
{
  char *meaning, *unit;
} Words;

typedef struct
{
  GHashTable *words;
  char       *cells[3];
  guint       at;
} Reader;

static void
cell_cb (void   *text,
         size_t  size,
         void   *data)
{
  Reader *reader = data;

  if (reader->at < G_N_ELEMENTS (reader->cells))
    reader->cells[reader->at++] = g_strndup (text, size);
}

static void
row_cb (int   end,
        void *data)
{
  Reader *reader = data;
  Words *words = g_new0 (Words, 1);

  words->meaning = reader->cells[1];
  words->unit = reader->cells[2];
  g_hash_table_insert (reader->words, reader->cells[0], words);
  memset (reader->cells, 0, sizeof reader->cells);
  reader->at = 0;
}

static GHashTable *
read_words (const char *name)
{
  g_autofree char *path = g_strconcat (PREFIX, name, NULL);
  g_autoptr(GBytes) bytes = g_resource_lookup_data (steading_folder_get_resource (), path, G_RESOURCE_LOOKUP_FLAGS_NONE,
                                                    NULL);
  Reader reader = { .words = g_hash_table_new (g_str_hash, g_str_equal) };
  struct csv_parser parser;

  csv_init (&parser, CSV_APPEND_NULL);
  csv_parse (&parser, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), cell_cb, row_cb, &reader);
  csv_fini (&parser, cell_cb, row_cb, &reader);
  csv_free (&parser);
  return reader.words;
}

/* They are part of the program, and are read once. */
static const Words *
find (const char *table,
      const char *column)
{
  static GHashTable *columns;
  g_autofree char *own = g_strconcat (table, ".", column, NULL);
  const Words *words;

  if (columns == NULL)
    columns = read_words ("columns.csv");
  words = g_hash_table_lookup (columns, own);
  return words != NULL ? words : g_hash_table_lookup (columns, column);
}

const char *
stead_folder_answer_table (const char *table)
{
  static GHashTable *tables;
  const Words *words;

  if (tables == NULL)
    tables = read_words ("tables.csv");
  words = g_hash_table_lookup (tables, table);
  return words != NULL ? words->meaning : NULL;
}

static const char *
unit_of_name (const char *name)
{
  static const struct { const char *ending, *unit; } units[] = {
    { "_cents", "smallest unit of the currency" }, { "_base", "base unit of the item: pieces, kg, L or m²" },
    { "_kg", "kg" }, { "_mgl", "mg/L" }, { "_g", "g" }, { "_c", "°C" }, { "_m2", "m²" }, { "_m3", "m³" }, { "_m", "m" },
    { "_cm", "cm" }, { "_mm", "mm" }, { "_l", "L" }, { "_frac", "share, 0 to 1" }, { "_minutes", "minutes" },
    { "_days", "days" }, { "_weeks", "weeks" }, { "_years", "years" }, { "_hours", "hours" }, { "_s", "s" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_has_suffix (name, units[i].ending))
      return units[i].unit;
  if (g_str_equal (name, "cents"))
    return "smallest unit of the currency";
  return g_str_equal (name, "minutes") ? "minutes" : "";
}

char *
stead_folder_answer_unit (const char              *table,
                          const SteadFolderColumn *column)
{
  const Words *words = find (table, column->name);

  if (words != NULL && words->unit != NULL && *words->unit != '\0')
    return g_strdup (words->unit);
  if (column->type != STEAD_FOLDER_WHOLE && column->type != STEAD_FOLDER_NUMBER)
    return g_strdup ("");
  return g_strdup (unit_of_name (column->name));
}

char *
stead_folder_answer_meaning (const char              *table,
                             const SteadFolderColumn *column)
{
  const Words *words = find (table, column->name);

  if (words != NULL && column->points_to == NULL)
    return g_strdup (words->meaning);
  if (column->points_to != NULL)
    return g_strdup_printf ("id of a row of “%s”", column->points_to);
  return g_strdup ("");
}
