/* check-main.c - compares the program's computations with a file of published values.
 *
 * usage: check-reference FILE.csv
 *
 * Prints a line for each row and closes with the counts.  Exit status: 0 if every
 * row is ok, 1 if one differs or is unknown, 2 if the file cannot be read or
 * holds no row.
 */
#include "check-row.h"

#include <csv.h>
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const CheckTopic * const areas[] = {
  check_breakeven_topics,
  check_goods_topics,
  check_shared_topics,
  check_budget_topics,
  check_hens_topics,
  check_default_topics,
  check_fish_topics,
  check_water_topics,
  check_recipe_topics,
  check_planning_topics,
  check_time_topics,
  check_cash_topics,
  check_food_heat_topics,
  check_food_cold_topics,
  check_food_cool_topics,
  check_food_clean_topics,
  check_food_kind_topics,
  check_food_jar_topics,
  check_food_egg_topics,
  check_food_label_topics,
  check_lethality_topics,
  check_crop_topics,
  check_greenhouse_topics,
  check_animals_topics,
  check_fence_topics,
  check_build_topics,
  check_hours_topics,
  check_rules_topics,
  NULL,
};

static const char * const column_names[] = {
  "id", "topic", "inputs", "expected", "unit", "tolerance",
};

#define N_COLUMNS G_N_ELEMENTS (column_names)

typedef struct
{
  GPtrArray *cells;               /* of the row being read */
  gsize      place[N_COLUMNS];    /* where each column stands */
  gsize      n_columns;           /* of the header; 0: not read yet */
  GString   *trouble;             /* why the file cannot be used */
  guint      line;
  guint      counts[CHECK_UNKNOWN + 1];
} Reader;

static void
cell_cb (void   *data,
         size_t  length,
         void   *user_data)
{
  Reader *reader = user_data;

  g_ptr_array_add (reader->cells, g_strndup (data != NULL ? data : "", length));
}

static void
read_header (Reader *reader)
{
  for (gsize c = 0; c < N_COLUMNS; c++)
    {
      guint found = reader->cells->len;

      for (guint i = 0; i < reader->cells->len; i++)
        if (g_str_equal (reader->cells->pdata[i], column_names[c]))
          found = i;
      if (found == reader->cells->len)
        g_string_append_printf (reader->trouble, "no column %s\n", column_names[c]);
      reader->place[c] = found;
    }
  reader->n_columns = reader->cells->len;
}

static const char *
cell (Reader *reader,
      gsize   column)
{
  return reader->cells->pdata[reader->place[column]];
}

static void
check_cells (Reader *reader)
{
  CheckFields fields;
  g_autofree char *says = NULL;
  CheckVerdict verdict = CHECK_UNKNOWN;

  if (reader->cells->len != reader->n_columns)
    {
      printf ("%s unknown row %u: %u cells where the header has %" G_GSIZE_FORMAT "\n",
              reader->place[0] < reader->cells->len ? cell (reader, 0) : "?",
              reader->line, reader->cells->len, reader->n_columns);
      reader->counts[CHECK_UNKNOWN]++;
      return;
    }
  fields = (CheckFields) { cell (reader, 0), cell (reader, 1), cell (reader, 2),
                           cell (reader, 3), cell (reader, 4), cell (reader, 5) };
  verdict = check_row_run (&fields, areas, &says);
  printf ("%s %s\n", fields.id, says);
  reader->counts[verdict]++;
}

static void
row_cb (int   terminator,
        void *user_data)
{
  Reader *reader = user_data;

  reader->line++;
  if (reader->cells->len == 0 || reader->trouble->len > 0)
    ;
  else if (reader->n_columns == 0)
    read_header (reader);
  else
    check_cells (reader);
  g_ptr_array_set_size (reader->cells, 0);
}

/* A byte order mark is no part of the first name. */
static const char *
skip_mark (const char *text,
           gsize      *length)
{
  if (*length >= 3 && memcmp (text, "\xef\xbb\xbf", 3) == 0)
    {
      *length -= 3;
      return text + 3;
    }
  return text;
}

static gboolean
read_file (const char *path,
           Reader     *reader)
{
  g_autofree char *contents = NULL;
  g_autoptr(GError) error = NULL;
  struct csv_parser parser;
  const char *text;
  gsize length = 0;
  gboolean done;

  if (!g_file_get_contents (path, &contents, &length, &error))
    {
      g_string_append_printf (reader->trouble, "%s\n", error->message);
      return FALSE;
    }
  text = skip_mark (contents, &length);
  if (csv_init (&parser, CSV_STRICT | CSV_STRICT_FINI) != 0)
    {
      g_string_append (reader->trouble, "no memory for reading\n");
      return FALSE;
    }
  done = csv_parse (&parser, text, length, cell_cb, row_cb, reader) == length
         && csv_fini (&parser, cell_cb, row_cb, reader) == 0;
  if (!done)
    g_string_append_printf (reader->trouble, "row %u: %s\n", reader->line + 1,
                            csv_strerror (csv_error (&parser)));
  csv_free (&parser);
  return done;
}

int
main (int   argc,
      char *argv[])
{
  Reader reader = { 0 };
  guint wrong;
  guint rows;
  int status = EXIT_SUCCESS;

  setlocale (LC_ALL, "");
  if (argc != 2)
    {
      fprintf (stderr, "usage: check-reference FILE.csv\n");
      return 2;
    }
  reader.cells = g_ptr_array_new_with_free_func (g_free);
  reader.trouble = g_string_new (NULL);
  read_file (argv[1], &reader);
  wrong = reader.counts[CHECK_DIFFERS] + reader.counts[CHECK_UNKNOWN];
  rows = reader.counts[CHECK_OK] + wrong;
  if (rows == 0 && reader.trouble->len == 0)
    g_string_append (reader.trouble, "no rows\n");
  printf ("%u rows: %u ok, %u differ, %u unknown\n", rows, reader.counts[CHECK_OK],
          reader.counts[CHECK_DIFFERS], reader.counts[CHECK_UNKNOWN]);
  if (reader.trouble->len > 0)
    {
      fprintf (stderr, "check-reference: %s: %s", argv[1], reader.trouble->str);
      status = 2;
    }
  else if (wrong > 0)
    status = EXIT_FAILURE;
  g_ptr_array_unref (reader.cells);
  g_string_free (reader.trouble, TRUE);
  return status;
}
