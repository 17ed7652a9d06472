/* test-csv.c - a CSV is safe to open and says what was there.
 *
 * Quoting: RFC 4180, section 2, rules 5 to 7.  Formula injection: OWASP, "CSV
 * Injection" (characters = + - @, tab, CR; from memory).
 */
#include <locale.h>

#include "paper/stead-csv.h"

static void
test_texts (void)
{
  static const struct { const char *text, *field; } cases[] = {
    { "Layer feed", "Layer feed" },
    { "", "" },
    { "feed, in bags", "\"feed, in bags\"" },
    { "the \"good\" bag", "\"the \"\"good\"\" bag\"" },
    { "two\nlines", "\"two\nlines\"" },
    { "two\rlines", "\"two\rlines\"" },
    { "a;b", "a;b" },
    { "=1+1", "\"'=1+1\"" },
    { "+1", "\"'+1\"" },
    { "-1", "\"'-1\"" },
    { "@SUM(A1)", "\"'@SUM(A1)\"" },
    { "\tx", "\"'\tx\"" },
    { "\rx", "\"'\rx\"" },
    { "\nx", "\"'\nx\"" },
    { "=\"a\",b", "\"'=\"\"a\"\",b\"" },
    { "a=b", "a=b" },
    { "'quoted", "'quoted" },
    { "naïve – 3 × 4", "naïve – 3 × 4" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GString) line = g_string_new (NULL);

      stead_csv_add_text (line, cases[i].text, ',');
      g_assert_cmpstr (line->str, ==, cases[i].field);
    }
}

static void
test_semicolon_is_quoted_where_it_separates (void)
{
  g_autoptr(GString) line = g_string_new (NULL);

  stead_csv_add_text (line, "a;b", ';');
  g_string_append_c (line, ';');
  stead_csv_add_text (line, "a,b", ';');
  g_assert_cmpstr (line->str, ==, "\"a;b\";a,b");
}

static SteadLogAnswer *
small_log (void)
{
  SteadLogAnswer *log = g_new0 (SteadLogAnswer, 1);
  static const SteadCellKind kinds[] = { STEAD_CELL_DAY, STEAD_CELL_COUNT, STEAD_CELL_NUMBER, STEAD_CELL_MONEY,
                                         STEAD_CELL_TEXT };
  SteadLogCell *row;

  log->currency = g_strdup ("USD");
  log->columns = g_array_new (FALSE, TRUE, sizeof (SteadLogColumn));
  log->rows = g_ptr_array_new_with_free_func (g_free);
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      SteadLogColumn column = { g_strdup_printf ("C%zu", i), kinds[i], 3, FALSE };

      g_array_append_val (log->columns, column);
    }
  row = g_new0 (SteadLogCell, 5);
  row[0] = (SteadLogCell) { .filled = TRUE, .whole = stead_day_new (2026, 3, 3) };
  row[1] = (SteadLogCell) { .filled = TRUE, .whole = -12 };
  row[2] = (SteadLogCell) { .filled = TRUE, .number = 1234.5 };
  row[3] = (SteadLogCell) { .filled = TRUE, .whole = -350 };
  row[4] = (SteadLogCell) { .filled = TRUE, .text = g_strdup ("=HYPERLINK(\"x\")") };
  g_ptr_array_add (log->rows, row);
  row = g_new0 (SteadLogCell, 5);
  row[2] = (SteadLogCell) { .filled = TRUE, .number = -0.0001 };
  g_ptr_array_add (log->rows, row);
  return log;
}

/* Numbers are numbers, a minus and all; only texts are made harmless. */
static void
test_for_programs (void)
{
  g_autoptr(SteadLogAnswer) log = small_log ();
  g_autoptr(GBytes) csv = stead_csv_from_log (log, FALSE);
  g_autofree char *text = g_strndup (g_bytes_get_data (csv, NULL), g_bytes_get_size (csv));

  g_assert_cmpstr (text, ==,
                   "\xef\xbb\xbf" "C0,C1,C2,C3,C4\r\n"
                   "2026-03-03,-12,1234.5,-3.50,\"'=HYPERLINK(\"\"x\"\")\"\r\n"
                   ",,0,,\r\n");
}

static void
test_for_a_spreadsheet_with_a_point (void)
{
  g_autoptr(SteadLogAnswer) log = small_log ();
  g_autoptr(GBytes) plain = stead_csv_from_log (log, FALSE);
  g_autoptr(GBytes) sheet = stead_csv_from_log (log, TRUE);

  g_assert_true (g_bytes_equal (plain, sheet));
}

static void
test_for_a_spreadsheet_with_a_comma (void)
{
  g_autofree char *folder = g_dir_make_tmp ("steading-locale-XXXXXX", NULL);
  g_autofree char *made = g_build_filename (folder, "es_ES.UTF-8", NULL);
  g_autofree char *command = g_strdup_printf ("localedef -i es_ES -f UTF-8 %s", made);
  g_autofree char *remove = g_strdup_printf ("rm -r %s", folder);

  g_spawn_command_line_sync (command, NULL, NULL, NULL, NULL);
  g_setenv ("LOCPATH", folder, TRUE);
  if (setlocale (LC_NUMERIC, "es_ES.UTF-8") == NULL)
    {
      g_spawn_command_line_sync (remove, NULL, NULL, NULL, NULL);
      g_test_skip ("localedef could not make a locale with a decimal comma");
      return;
    }
  g_spawn_command_line_sync (remove, NULL, NULL, NULL, NULL);
  {
    g_autoptr(SteadLogAnswer) log = small_log ();
    g_autoptr(GBytes) sheet = stead_csv_from_log (log, TRUE);
    g_autoptr(GBytes) plain = stead_csv_from_log (log, FALSE);
    g_autofree char *text = g_strndup (g_bytes_get_data (sheet, NULL), g_bytes_get_size (sheet));
    g_autofree char *point = g_strndup (g_bytes_get_data (plain, NULL), g_bytes_get_size (plain));

    g_assert_nonnull (strstr (text, "2026-03-03;-12;1234,5;-3,50;"));
    g_assert_nonnull (strstr (point, "2026-03-03,-12,1234.5,-3.50,"));
  }
  setlocale (LC_ALL, "");
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/paper/csv/texts", test_texts);
  g_test_add_func ("/paper/csv/semicolon-is-quoted-where-it-separates", test_semicolon_is_quoted_where_it_separates);
  g_test_add_func ("/paper/csv/for-programs", test_for_programs);
  g_test_add_func ("/paper/csv/for-a-spreadsheet-with-a-point", test_for_a_spreadsheet_with_a_point);
  g_test_add_func ("/paper/csv/for-a-spreadsheet-with-a-comma", test_for_a_spreadsheet_with_a_comma);
  return g_test_run ();
}
