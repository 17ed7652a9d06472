/* stead-measures.c - what a cup, a piece and the trimming of common foods come to. */
#include "config.h"

#include "answer/stead-measures.h"
#include "core/stead-measure.h"
#include "data/measures/steading-measures.h"

#include <csv.h>
#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#define FILE_PATH "/farm/steading/Steading/measures/measures.csv"

enum
{
  ID, NAMES, WHAT, VALUE, UNIT, SOURCE, WHERE, STATUS, NOTE, N_COLUMNS
};

typedef struct
{
  char *cells[N_COLUMNS];
} Row;

typedef struct
{
  GArray *rows;     /* of Row, without the heading */
  Row     row;
  int     at;
  gboolean heading;
} Reader;

static void
cell_cb (void  *text,
         size_t size,
         void  *data)
{
  Reader *reader = data;

  if (reader->at < N_COLUMNS)
    reader->row.cells[reader->at++] = g_strndup (text, size);
}

static void
row_cb (int   end,
        void *data)
{
  Reader *reader = data;

  g_warn_if_fail (reader->at == N_COLUMNS);
  if (reader->heading)
    for (int i = 0; i < N_COLUMNS; i++)
      g_free (reader->row.cells[i]);
  else
    g_array_append_val (reader->rows, reader->row);
  reader->row = (Row) { { NULL } };
  reader->heading = FALSE;
  reader->at = 0;
}

/* It is part of the program, and is read once. */
static const GArray *
all_rows (void)
{
  static GArray *rows;
  g_autoptr(GBytes) bytes = NULL;
  Reader reader = { .heading = TRUE };
  struct csv_parser parser;

  if (rows != NULL)
    return rows;
  reader.rows = rows = g_array_new (FALSE, TRUE, sizeof (Row));
  bytes = g_resource_lookup_data (steading_measures_get_resource (), FILE_PATH, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  csv_init (&parser, CSV_APPEND_NULL);
  csv_parse (&parser, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), cell_cb, row_cb, &reader);
  csv_fini (&parser, cell_cb, row_cb, &reader);
  csv_free (&parser);
  return rows;
}

static gboolean
is_named (const Row  *row,
          const char *folded)
{
  g_auto(GStrv) names = g_strsplit (row->cells[NAMES], "|", -1);

  return g_strv_contains ((const char * const *) names, folded);
}

static char *
source_of (const Row *row)
{
  const char * const *cells = (const char * const *) row->cells;

  if (g_str_equal (cells[STATUS], "practice"))
    return g_strdup (_("common practice, no source"));
  if (g_str_equal (cells[STATUS], "memory"))
    return g_strdup_printf (_("%s, %s (from memory: weigh your own)"), cells[SOURCE], cells[WHERE]);
  return g_strdup_printf ("%s, %s", cells[SOURCE], cells[WHERE]);
}

static void
take_row (SteadFoodMeasure *out,
          const Row        *row)
{
  double value = g_ascii_strtod (row->cells[VALUE], NULL);

  if (g_str_equal (row->cells[WHAT], "cup") && out->density_source == NULL)
    {
      out->density_kg_l = stead_density_from (1, stead_unit_by_id ("cup"), value / 1000);
      out->density_source = source_of (row);
    }
  else if (g_str_equal (row->cells[WHAT], "piece") && out->piece_source == NULL)
    {
      out->piece_kg = value / 1000;
      out->piece_source = source_of (row);
    }
  else if (g_str_equal (row->cells[WHAT], "yield") && out->yield_source == NULL)
    {
      out->yield_frac = value / 100;
      out->yield_source = source_of (row);
    }
}

void
stead_food_measure_free (SteadFoodMeasure *measure)
{
  if (measure == NULL)
    return;
  g_free (measure->density_source);
  g_free (measure->piece_source);
  g_free (measure->yield_source);
  g_free (measure);
}

SteadFoodMeasure *
stead_measures_find (const char *name)
{
  g_autoptr(SteadFoodMeasure) found = g_new0 (SteadFoodMeasure, 1);
  g_autofree char *stripped = NULL;
  g_autofree char *folded = NULL;
  const GArray *rows = all_rows ();

  g_return_val_if_fail (name != NULL, NULL);
  stripped = g_strstrip (g_strdup (name));
  folded = g_utf8_strdown (stripped, -1);
  found->density_kg_l = found->piece_kg = found->yield_frac = NAN;
  for (guint i = 0; i < rows->len; i++)
    if (is_named (&g_array_index (rows, Row, i), folded))
      take_row (found, &g_array_index (rows, Row, i));
  if (found->density_source == NULL && found->piece_source == NULL && found->yield_source == NULL)
    return NULL;
  return g_steal_pointer (&found);
}
