/* fuzz-paper.c - whatever words a farm file holds, a paper of it is made whole or says why not.
 *
 * Built with -DSTEAD_LIBFUZZER and clang -fsanitize=fuzzer this is a target for
 * the fuzzer; built plainly it makes every paper in every format of the words in
 * the files named on its command line, which the ordinary tests do with the seeds.
 *
 * The first byte chooses the paper, the second its format and which line goes where.
 * The words go past the repositories, as a stranger's file has them.
 */
#include "config.h"

#include <csv.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>

#include "demo.h"
#include "paper/stead-paper.h"
#include "store/stead-store-internal.h"

int LLVMFuzzerTestOneInput (const guint8 *data,
                            size_t        size);

/* In the order of SteadFormat. */
static const char * const endings[] = { "pdf", "png", "svg", "csv", "xlsx", "ics" };

static Demo demo;
static GBytes *base;       /* the demo farm as a file */
static GPtrArray *places;  /* of char *, statements that put words into a column that takes any */

/* --- the farm ------------------------------------------------------------------ */

static sqlite3 *
open_base (void)
{
  g_autoptr(GError) error = NULL;
  sqlite3 *db = stead_connection_open_bytes (g_bytes_get_data (base, NULL), g_bytes_get_size (base), &stead_schema,
                                             &error);
  int version;

  g_assert_no_error (error);
  g_assert_true (stead_connection_recognize (db, &stead_schema, &version, &error));
  return db;
}

/* Returns: whether a row took them */
static gboolean
put_words (sqlite3    *db,
           const char *sql,
           const char *words)
{
  g_autoptr(sqlite3_stmt) stmt = NULL;

  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL), ==, SQLITE_OK);
  sqlite3_bind_text (stmt, 1, words, -1, SQLITE_STATIC);
  return sqlite3_step (stmt) == SQLITE_DONE && sqlite3_changes (db) > 0;
}

/* Lists of words that are fixed, signed rows and the like refuse other words. */
static void
find_places (void)
{
  g_autoptr(sqlite3) db = open_base ();
  g_autoptr(sqlite3_stmt) columns = NULL;

  places = g_ptr_array_new_with_free_func (g_free);
  g_assert_cmpint (sqlite3_prepare_v2 (db, "SELECT m.name, c.name FROM sqlite_schema m, pragma_table_info(m.name) c"
                                       " WHERE m.type = 'table' AND c.type = 'TEXT' AND c.pk = 0"
                                       " ORDER BY m.name, c.cid", -1, &columns, NULL), ==, SQLITE_OK);
  g_assert_true (stead_connection_exec (db, "BEGIN", NULL));
  while (sqlite3_step (columns) == SQLITE_ROW)
    {
      g_autofree char *sql = g_strdup_printf ("UPDATE OR IGNORE \"%s\" SET \"%s\" = ?1", sqlite3_column_text (columns, 0),
                                              sqlite3_column_text (columns, 1));

      if (put_words (db, sql, "Ember Lake"))
        g_ptr_array_add (places, g_steal_pointer (&sql));
    }
  g_assert_cmpuint (places->len, >, 50);
}

static void
make_base (void)
{
  g_autofree char *path = NULL;
  char *bytes;
  gsize length;

  demo_set_up (&demo, NULL);
  path = g_strdup (stead_store_get_path (demo.store));
  g_clear_object (&demo.store);
  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  base = g_bytes_new_take (bytes, length);
  demo.store = stead_store_create_memory ("Ember Lake", NULL);
  find_places ();
}

static SteadStore *
make_farm (char  **lines,
           guint   first)
{
  g_autoptr(sqlite3) db = open_base ();
  guint n = g_strv_length (lines);
  SteadStore *store;

  g_assert_true (stead_connection_exec (db, "BEGIN", NULL));
  for (guint i = 0; i < places->len; i++)
    (void) put_words (db, places->pdata[i], lines[(i + first) % n]);
  g_assert_true (stead_connection_exec (db, "COMMIT", NULL));
  store = stead_store_wrap (g_steal_pointer (&db), NULL, &stead_schema);
  stead_store_set_today (store, DEMO_TODAY);
  return store;
}

/* --- what was made --------------------------------------------------------------- */

typedef struct
{
  guint fields;    /* of this row */
  guint columns;   /* of the first */
} Table;

/* No field is taken for a formula by a spreadsheet: a number, or it does not begin as one. */
static void
field_cb (void   *field,
          size_t  length,
          void   *data)
{
  Table *table = data;
  g_autofree char *text = g_strndup (field, length);
  char *end = NULL;

  table->fields++;
  if (*text == '\0' || strchr ("=+-@\t\r\n", *text) == NULL)
    return;
  g_ascii_strtod (text, &end);
  if (end == text || *end != '\0')
    g_error ("a spreadsheet may run this: %s", text);
}

static void
row_cb (int   ended_by,
        void *data)
{
  Table *table = data;

  if (table->columns == 0)
    table->columns = table->fields;
  g_assert_cmpuint (table->fields, ==, table->columns);
  table->fields = 0;
}

static void
check_csv (const char *text,
           gsize       length)
{
  struct csv_parser parser;
  Table table = { 0 };

  g_assert_cmpint (csv_init (&parser, CSV_STRICT | CSV_STRICT_FINI), ==, 0);
  g_assert_cmpuint (csv_parse (&parser, text, length, field_cb, row_cb, &table), ==, length);
  g_assert_cmpint (csv_fini (&parser, field_cb, row_cb, &table), ==, 0);
  csv_free (&parser);
}

/* Lines of at most 75 octets that end in CR LF: RFC 5545, 3.1. */
static void
check_ics (const char *text)
{
  g_auto(GStrv) lines = g_strsplit (text, "\r\n", -1);
  guint n = g_strv_length (lines);

  g_assert_cmpstr (lines[0], ==, "BEGIN:VCALENDAR");
  g_assert_cmpstr (lines[n - 2], ==, "END:VCALENDAR");
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpuint (strlen (lines[i]), <=, 75);
      g_assert_null (strpbrk (lines[i], "\r\n"));
    }
}

static void
check_svg (const char *text,
           gsize       length)
{
  static const GMarkupParser parser = { NULL };
  g_autoptr(GMarkupParseContext) context = g_markup_parse_context_new (&parser, 0, NULL, NULL);
  g_autoptr(GError) error = NULL;

  g_markup_parse_context_parse (context, text, (gssize) length, &error);
  g_assert_no_error (error);
}

static void
check_file (const char *path,
            guint       ending)
{
  static const char * const heads[] = { "%PDF-", "\211PNG", "<?xml", "\357\273\277", "PK\003\004", "BEGIN:VCALENDAR\r\n" };
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_assert_true (g_str_has_prefix (bytes, heads[ending]));
  if (strchr ("\357B<", *heads[ending]) != NULL)
    g_assert_true (g_utf8_validate_len (bytes, length, NULL));
  if (1 << ending == STEAD_FORMAT_CSV)
    check_csv (bytes, length);
  else if (1 << ending == STEAD_FORMAT_ICS)
    check_ics (bytes);
  else if (1 << ending == STEAD_FORMAT_SVG)
    check_svg (bytes, length);
}

static void
try_paper (SteadStore           *store,
           const SteadPaperKind *kind,
           guint                 ending)
{
  g_autofree char *name = g_strconcat ("fuzz.", endings[ending], NULL);
  g_autofree char *path = g_build_filename (demo.folder, name, NULL);
  g_autoptr(GError) error = NULL;

  if (stead_paper_write (store, kind->name, NULL, NULL, path, &error))
    {
      g_assert_no_error (error);
      check_file (path, ending);
    }
  else
    {
      g_assert_nonnull (error);
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
      g_assert_cmpuint (strlen (error->message), >, 10);
      g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
    }
  g_remove (path);
}

int
LLVMFuzzerTestOneInput (const guint8 *data,
                        size_t        size)
{
  g_autofree char *text = NULL;
  g_auto(GStrv) lines = NULL;
  g_autoptr(SteadStore) store = NULL;
  const SteadPaperKind *kinds;
  guint ending;
  gsize n;

  if (size < 3)
    return 0;
  if (base == NULL)
    make_base ();
  text = g_strndup ((const char *) data + 2, size - 2);
  lines = g_strsplit (*text != '\0' ? text : " ", "\n", 0);
  store = make_farm (lines, data[1]);
  kinds = stead_paper_list (&n);
  kinds += data[0] % n;
  for (ending = data[1] % G_N_ELEMENTS (endings); (kinds->formats & 1 << ending) == 0;)
    ending = (ending + 1) % G_N_ELEMENTS (endings);
  try_paper (store, kinds, ending);
  return 0;
}

#ifndef STEAD_LIBFUZZER
static void
try_file (const char *contents,
          GRand      *rand)
{
  gsize n;
  const SteadPaperKind *kinds = stead_paper_list (&n);

  for (guint kind = 0; kind < n; kind++)
    for (guint ending = 0; ending < G_N_ELEMENTS (endings); ending++)
      {
        g_autofree char *text = g_strconcat ("..", contents, NULL);

        if ((kinds[kind].formats & 1 << ending) == 0)
          continue;
        text[0] = (char) kind;
        text[1] = (char) (ending + G_N_ELEMENTS (endings) * (guint) g_rand_int_range (rand, 0, 40));
        LLVMFuzzerTestOneInput ((const guint8 *) text, strlen (contents) + 2);
      }
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (20260303);

  printf ("1..%d\n", argc - 1);
  for (int i = 1; i < argc; i++)
    {
      g_autofree char *contents = NULL;

      if (!g_file_get_contents (argv[i], &contents, NULL, NULL))
        {
          printf ("Bail out! %s cannot be read\n", argv[i]);
          return 1;
        }
      try_file (contents, rand);
      printf ("ok %d %s\n", i, argv[i]);
    }
  if (base != NULL)
    {
      demo_tear_down (&demo, NULL);
      g_bytes_unref (base);
      g_ptr_array_unref (places);
    }
  return argc < 2;
}
#endif
