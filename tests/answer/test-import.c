/* test-import.c - what a mean file holds, row by row, and what of it is taken. */
#include "farm.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-import-answer.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define POUND_KG 0.45359237   /* NIST SP 811, appendix B */

static char *
fixture (const char *name)
{
  return g_test_build_filename (G_TEST_DIST, "fixtures", "import", name, NULL);
}

static SteadImport *
read_path (Farm            *farm,
           SteadImportKind  kind,
           const char      *path,
           SteadDateOrder   order)
{
  g_autoptr(GError) error = NULL;
  SteadImport *import = stead_import_read (farm->store, kind, 0, path, order, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (import);
  return import;
}

static SteadImport *
read_log (Farm       *farm,
          const char *name)
{
  g_autofree char *path = fixture (name);

  return read_path (farm, STEAD_IMPORT_FLOCK_LOG, path, STEAD_DATE_ORDER_UNKNOWN);
}

/* Refused as a whole, with a message that holds @says. */
static void
assert_refused (Farm       *farm,
                const char *path,
                const char *says)
{
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_import_read (farm->store, STEAD_IMPORT_FLOCK_LOG, 0, path, STEAD_DATE_ORDER_UNKNOWN, NULL,
                                    NULL, NULL, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT);
  if (strstr (error->message, says) == NULL)
    g_error ("“%s” does not say “%s”", error->message, says);
}

static void
assert_counts (SteadImport *import,
               guint        take,
               guint        skip,
               guint        wrong)
{
  for (guint i = 0; i < stead_import_get_n_rows (import); i++)
    {
      const SteadImportRow *row = stead_import_get_row (import, i);

      g_test_message ("line %u: %s %s", row->line, row->understood != NULL ? row->understood : "–",
                      row->message != NULL ? row->message : "");
    }
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_TAKE), ==, take);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_SKIP), ==, skip);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_WRONG), ==, wrong);
}

static const SteadImportRow *
row_of_line (SteadImport *import,
             guint        line)
{
  for (guint i = 0; i < stead_import_get_n_rows (import); i++)
    if (stead_import_get_row (import, i)->line == line)
      return stead_import_get_row (import, i);
  g_error ("no row at line %u", line);
}

static void
take (Farm        *farm,
      SteadImport *import)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_import_take (import, farm->store, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
}

static SteadFlockTotals
totals_of (Farm *farm)
{
  SteadFlockTotals totals;

  g_assert_true (stead_flock_repo_totals (farm->store, farm->flock, stead_day_new (2026, 1, 1), farm->today, &totals,
                                          NULL));
  return totals;
}

/* A file of our own with the given text; removed with its folder by the caller. */
static char *
write_file (const char *text,
            gssize      length)
{
  g_autofree char *folder = g_dir_make_tmp ("stead-import-XXXXXX", NULL);
  char *path = g_build_filename (folder, "table.csv", NULL);

  g_assert_true (g_file_set_contents (path, text, length, NULL));
  return path;
}

static void
remove_file (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);

  g_assert_cmpint (g_remove (path), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

/* --- good files ----------------------------------------------------------------- */

static void
test_plain (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_log (farm, "log-plain.csv");
  SteadFlockTotals totals;
  g_autofree char *undo = NULL;
  g_autoptr(GPtrArray) entries = NULL;

  assert_counts (import, 3, 0, 0);
  g_assert_false (stead_import_needs_order (import));
  g_assert_cmpstr (stead_import_get_header (import)[3], ==, "Feed (lb)");
  g_assert_nonnull (strstr (stead_import_get_columns (import)[3], "lb"));
  take (farm, import);
  totals = totals_of (farm);
  g_assert_cmpint (totals.eggs, ==, 24);
  g_assert_cmpint (totals.cracked, ==, 1);
  g_assert_cmpint (totals.deaths, ==, 1);
  g_assert_cmpfloat_with_epsilon (totals.feed_kg, 4.45 * POUND_KG, 1e-9);
  /* nobody is called Ana here: the name is kept with the note */
  entries = stead_flock_repo_entries (farm->store, farm->flock, stead_day_new (2026, 3, 2), stead_day_new (2026, 3, 2),
                                      NULL);
  g_assert_cmpstr (((const SteadFlockEntry *) entries->pdata[0])->note, ==, "windy, cold (by Ana)");
  undo = stead_store_get_undo_name (farm->store);
  g_assert_nonnull (strstr (undo, "3"));
  g_assert_true (stead_store_undo (farm->store, NULL));
  g_assert_cmpint (stead_flock_repo_count_entries (farm->store, farm->flock, NULL), ==, 0);
}

static void
test_known_person (Farm          *farm,
                   gconstpointer  data)
{
  SteadPerson ana = { .name = g_strdup ("ana"), .role = STEAD_PERSON_STUDENT, .left_on = STEAD_DAY_NONE };
  g_autoptr(SteadImport) import = NULL;
  g_autoptr(GPtrArray) entries = NULL;

  FARM_DO (farm, stead_person_repo_save (farm->store, &ana, &farm_error));
  g_free (ana.name);
  import = read_log (farm, "log-plain.csv");
  take (farm, import);
  entries = stead_flock_repo_entries (farm->store, farm->flock, stead_day_new (2026, 3, 2), stead_day_new (2026, 3, 2),
                                      NULL);
  g_assert_cmpint (((const SteadFlockEntry *) entries->pdata[0])->person_id, ==, ana.id);
  g_assert_cmpstr (((const SteadFlockEntry *) entries->pdata[0])->note, ==, "windy, cold");
}

/* Spanish names, semicolons, decimal commas, kilograms; the 25th shows the order. */
static void
test_spanish (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_log (farm, "log-bom.csv");
  SteadFlockTotals totals;

  assert_counts (import, 2, 0, 0);
  g_assert_nonnull (strstr (stead_import_get_reading (import), "UTF-8"));
  g_assert_nonnull (strstr (stead_import_get_reading (import), "day/month"));
  take (farm, import);
  totals = totals_of (farm);
  g_assert_cmpint (totals.eggs, ==, 17);
  g_assert_cmpfloat_with_epsilon (totals.feed_kg, 2.15, 1e-9);
  g_assert_cmpint (stead_flock_repo_last_eggs (farm->store, farm->flock, NULL), ==, stead_day_new (2026, 3, 25));
}

static void
test_encodings (Farm          *farm,
                gconstpointer  data)
{
  static const struct { const char *name; const char *says; const char *note; SteadDay day; } files[] = {
    { "log-utf16le.csv", "UTF-16", "niña", 0 }, { "log-utf16be.csv", "UTF-16", "niña", 0 },
    { "log-windows.csv", "Windows-1252", "Muñoz", 0 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autoptr(SteadImport) import = read_log (farm, files[i].name);
      const SteadImportRow *row = stead_import_get_row (import, 0);

      assert_counts (import, 2, 0, 0);
      g_assert_nonnull (strstr (stead_import_get_reading (import), files[i].says));
      g_assert_nonnull (strstr (row->understood, files[i].note));
    }
}

static void
test_line_ends (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadImport) cr = read_log (farm, "log-cr.csv");
  g_autoptr(SteadImport) sep = read_log (farm, "log-sep.csv");
  g_autoptr(SteadImport) quoted = read_log (farm, "log-quoted.csv");

  assert_counts (cr, 2, 0, 0);
  g_assert_cmpuint (stead_import_get_row (cr, 1)->line, ==, 3);
  assert_counts (sep, 1, 0, 0);
  g_assert_cmpuint (stead_import_get_row (sep, 0)->line, ==, 3);
  assert_counts (quoted, 2, 0, 0);
  g_assert_cmpstr (stead_import_get_row (quoted, 0)->cells[2], ==, "two\nlines, \"quoted\"");
  g_assert_cmpuint (stead_import_get_row (quoted, 1)->line, ==, 4);
}

static void
test_times (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_log (farm, "log-times.csv");

  assert_counts (import, 3, 0, 0);
  take (farm, import);
  g_assert_cmpint (stead_flock_repo_last_eggs (farm->store, farm->flock, NULL), ==, stead_day_new (2026, 3, 23));
}

static void
test_other_columns (Farm          *farm,
                    gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_log (farm, "log-other-columns.csv");

  assert_counts (import, 1, 0, 0);
  g_assert_cmpstr (stead_import_get_columns (import)[1], ==, "");
  g_assert_nonnull (strstr (stead_import_get_reading (import), "Weather"));
  g_assert_nonnull (strstr (stead_import_get_reading (import), "Temperature"));
}

/* --- dates that could be either --------------------------------------------------- */

static void
test_doubtful_dates (Farm          *farm,
                     gconstpointer  data)
{
  g_autofree char *path = fixture ("log-doubtful.csv");
  g_autoptr(SteadImport) unknown = read_path (farm, STEAD_IMPORT_FLOCK_LOG, path, STEAD_DATE_ORDER_UNKNOWN);
  g_autoptr(SteadImport) mdy = NULL;
  g_autoptr(SteadImport) dmy = NULL;

  assert_counts (unknown, 0, 0, 2);
  g_assert_true (stead_import_needs_order (unknown));
  g_assert_cmpint (stead_import_get_row (unknown, 0)->column, ==, 0);
  mdy = read_path (farm, STEAD_IMPORT_FLOCK_LOG, path, STEAD_DATE_ORDER_MDY);
  assert_counts (mdy, 2, 0, 0);
  g_assert_false (stead_import_needs_order (mdy));
  g_assert_nonnull (strstr (stead_import_get_row (mdy, 0)->understood, "Mar 4"));
  /* 3 April is still to come */
  dmy = read_path (farm, STEAD_IMPORT_FLOCK_LOG, path, STEAD_DATE_ORDER_DMY);
  assert_counts (dmy, 0, 0, 2);
}

/* One row says day first, another month first: the third stays open. */
static void
test_both_orders (Farm          *farm,
                  gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_log (farm, "log-both-orders.csv");

  assert_counts (import, 2, 0, 1);
  g_assert_true (stead_import_needs_order (import));
  g_assert_cmpint (row_of_line (import, 4)->state, ==, STEAD_ROW_WRONG);
}

/* --- mean rows --------------------------------------------------------------------- */

static const struct
{
  guint         line;
  SteadRowState state;
  int           column;   /* only of wrong rows */
} mean[] = {
  { 2, STEAD_ROW_TAKE, 0 },
  { 3, STEAD_ROW_SKIP, 0 },     /* only commas */
  { 5, STEAD_ROW_SKIP, 0 },     /* the same as line 2 */
  { 6, STEAD_ROW_WRONG, 1 },    /* 99 eggs of 10 hens */
  { 7, STEAD_ROW_WRONG, 1 },    /* -4 */
  { 8, STEAD_ROW_WRONG, 0 },    /* 2027 */
  { 9, STEAD_ROW_WRONG, 0 },    /* before the flock */
  { 10, STEAD_ROW_WRONG, 0 },   /* 30 February */
  { 11, STEAD_ROW_WRONG, 2 },   /* 9 of 8 cracked */
  { 12, STEAD_ROW_WRONG, 1 },   /* 4.5 */
  { 13, STEAD_ROW_WRONG, 1 },   /* eight */
  { 14, STEAD_ROW_WRONG, 3 },   /* 2 gal of feed */
  { 15, STEAD_ROW_WRONG, 4 },   /* 11 dead of 10 */
  { 16, STEAD_ROW_SKIP, 0 },    /* a day and nothing else */
  { 17, STEAD_ROW_WRONG, 8 },   /* a cell too many */
  { 18, STEAD_ROW_TAKE, 0 },    /* short: the rest is empty */
  { 19, STEAD_ROW_WRONG, 0 },   /* no date */
  { 20, STEAD_ROW_WRONG, 2 },   /* cracked without eggs */
  { 21, STEAD_ROW_WRONG, 1 },   /* 2 doz: 24 of 10 hens */
  { 22, STEAD_ROW_TAKE, 0 },    /* 1 doz, 2 lb 4 oz */
  { 23, STEAD_ROW_WRONG, 3 },   /* (2.00) */
  { 24, STEAD_ROW_TAKE, 0 },
  { 25, STEAD_ROW_SKIP, 0 },    /* the same numbers of the same day */
  { 26, STEAD_ROW_TAKE, 0 },    /* 15 and 5 of one day are 20: two a hen */
};

static void
test_mean (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_log (farm, "log-mean.csv");
  guint counts[3] = { 0 };

  g_assert_cmpuint (stead_import_get_n_rows (import), ==, G_N_ELEMENTS (mean));
  for (gsize i = 0; i < G_N_ELEMENTS (mean); i++)
    {
      const SteadImportRow *row = row_of_line (import, mean[i].line);

      g_test_message ("line %u: %s", row->line, row->message != NULL ? row->message : row->understood);
      g_assert_cmpint (row->state, ==, mean[i].state);
      counts[row->state]++;
      if (row->state != STEAD_ROW_WRONG)
        continue;
      g_assert_cmpint (row->column, ==, mean[i].column);
      g_assert_cmpuint (strlen (row->message), >, 15);
      g_assert_null (row->understood);
    }
  assert_counts (import, counts[0], counts[1], counts[2]);
  take (farm, import);
  g_assert_cmpint (totals_of (farm).eggs, ==, 8 + 8 + 12 + 15 + 5);
}

/* The apostrophe before "=SUM(A1)" is a spreadsheet's, not the writer's. */
static void
test_apostrophe (Farm          *farm,
                 gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_log (farm, "log-mean.csv");

  g_assert_nonnull (strstr (row_of_line (import, 22)->understood, "“=SUM(A1) (by Zoe)”"));
}

/* Hens die in the order of days, not of lines: 6 on the 1st, 3 on the 3rd leave one. */
static void
test_dying (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_log (farm, "log-dying.csv");

  assert_counts (import, 3, 0, 2);
  g_assert_cmpint (row_of_line (import, 2)->state, ==, STEAD_ROW_WRONG);   /* 16 eggs on the 5th of one hen */
  g_assert_cmpint (row_of_line (import, 6)->state, ==, STEAD_ROW_WRONG);   /* 2 dead of one */
  take (farm, import);
  g_assert_cmpint (stead_flock_repo_alive (farm->store, farm->flock, farm->today, NULL), ==, 1);
}

/* What the farm's own log says counts too. */
static void
test_beside_the_log (Farm          *farm,
                     gconstpointer  data)
{
  g_autoptr(SteadImport) import = NULL;

  farm_entry (farm, stead_day_new (2026, 3, 1), 18, 0, NAN, 0);
  farm_entry (farm, stead_day_new (2026, 3, 2), 9, 0, 2.25 * POUND_KG, 0);
  import = read_log (farm, "log-plain.csv");
  /* 18 + 8 are too many; the 2nd is there already */
  assert_counts (import, 1, 1, 1);
  g_assert_cmpint (row_of_line (import, 2)->state, ==, STEAD_ROW_WRONG);
  g_assert_cmpint (row_of_line (import, 3)->state, ==, STEAD_ROW_SKIP);
}

/* Eight died later: of the ten that lived on the 3rd not three more can have gone. */
static void
test_before_later_losses (Farm          *farm,
                          gconstpointer  data)
{
  g_autofree char *path = write_file ("Date,Eggs,Deaths\n2026-03-03,8,3\n2026-03-04,8,2\n", -1);
  g_autoptr(SteadImport) import = NULL;

  farm_entry (farm, stead_day_new (2026, 3, 20), 8, 0, NAN, 8);
  import = read_path (farm, STEAD_IMPORT_FLOCK_LOG, path, STEAD_DATE_ORDER_UNKNOWN);
  assert_counts (import, 1, 0, 1);
  g_assert_cmpint (row_of_line (import, 2)->column, ==, 2);
  take (farm, import);
  remove_file (path);
}

static void
test_twice (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadImport) first = read_log (farm, "log-plain.csv");
  g_autoptr(SteadImport) second = NULL;
  g_autoptr(GError) error = NULL;

  take (farm, first);
  second = read_log (farm, "log-plain.csv");
  assert_counts (second, 0, 3, 0);
  g_assert_false (stead_import_take (second, farm->store, NULL, NULL, NULL, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT);
  g_assert_cmpint (totals_of (farm).eggs, ==, 24);
}

static void
test_unreadable_signs (Farm          *farm,
                       gconstpointer  data)
{
  g_autoptr(SteadImport) nul = read_log (farm, "log-nul.csv");
  g_autoptr(SteadImport) open = read_log (farm, "log-open-quote.csv");
  g_autoptr(GString) text = g_string_new ("Date,Eggs,Note\n2026-03-01,8,");
  g_autofree char *path = NULL;
  g_autoptr(SteadImport) longish = NULL;

  assert_counts (nul, 1, 0, 1);
  g_assert_cmpint (row_of_line (nul, 2)->column, ==, 2);
  assert_counts (open, 1, 0, 1);
  g_assert_cmpint (row_of_line (open, 3)->state, ==, STEAD_ROW_WRONG);
  for (int i = 0; i < 5000; i++)
    g_string_append (text, "x");
  path = write_file (text->str, -1);
  longish = read_path (farm, STEAD_IMPORT_FLOCK_LOG, path, STEAD_DATE_ORDER_UNKNOWN);
  assert_counts (longish, 0, 0, 1);
  remove_file (path);
}

/* Each of these is refused by the farm, so the preview says so first: at its row and cell. */
static void
test_control_signs (Farm          *farm,
                    gconstpointer  data)
{
  static const char * const signs[] = { "\x01", "\x1b", "\x7f", "\xc2\x81", "\xc2\x9f" };

  for (gsize i = 0; i < G_N_ELEMENTS (signs); i++)
    {
      g_autofree char *text = g_strdup_printf ("Date,Supplier,Item,Quantity,Cost,Kind\n"
                                               "2026-03-01,Lake%sside,Straw,4,12.00,supplies\n"
                                               "2026-03-01,Lakeside,Shav%sings,4,12.00,supplies\n", signs[i], signs[i]);
      g_autofree char *path = write_file (text, -1);
      g_autoptr(SteadImport) import = read_path (farm, STEAD_IMPORT_RECEIPTS, path, STEAD_DATE_ORDER_UNKNOWN);

      assert_counts (import, 0, 0, 2);
      g_assert_cmpint (row_of_line (import, 2)->column, ==, 1);
      g_assert_cmpint (row_of_line (import, 3)->column, ==, 2);
      remove_file (path);
    }
}

/* A cell over several lines is one line of a name, and stays as it is in a note. */
static void
test_lines_in_a_cell (Farm          *farm,
                      gconstpointer  data)
{
  static const char text[] = "Date,Supplier,Item,Quantity,Cost,Kind,Note\n"
                             "2026-03-01,\"A neigh\tbor\nnext door\",\"Straw\r\nbales\",4,12.00,supplies,\"dry\r\nand clean\"\n";
  g_autofree char *path = write_file (text, -1);
  g_autoptr(SteadImport) import = read_path (farm, STEAD_IMPORT_RECEIPTS, path, STEAD_DATE_ORDER_UNKNOWN);
  g_autoptr(GPtrArray) items = NULL;
  gboolean is_there = FALSE;

  assert_counts (import, 1, 0, 0);
  take (farm, import);
  FARM_DO (farm, (items = stead_item_repo_list (farm->store, &farm_error)) != NULL);
  for (guint i = 0; i < items->len; i++)
    is_there |= g_str_has_prefix (((const SteadItem *) items->pdata[i])->name, "Straw") &&
                strpbrk (((const SteadItem *) items->pdata[i])->name, "\r\n\t") == NULL;
  g_assert_true (is_there);
  remove_file (path);
}

/* --- files that are refused ------------------------------------------------------------ */

static void
test_refused (Farm          *farm,
              gconstpointer  data)
{
  static const struct { const char *name; const char *says; } files[] = {
    { "log-headless.csv", "first row" }, { "log-twice.csv", "Egg count" }, { "not-text.csv", "CSV" },
    { "blank.csv", "empty" }, { "gone.csv", "no such file" }, { "", "folder" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autofree char *path = fixture (files[i].name);

      assert_refused (farm, path, files[i].says);
    }
}

static void
test_refused_made (Farm          *farm,
                   gconstpointer  data)
{
  static const struct { const char *bytes; gssize length; const char *says; } files[] = {
    { "", 0, "empty" }, { "PK\3\4 and more", -1, "spreadsheet" }, { "%PDF-1.5", -1, "PDF" },
    { "SQLite format 3", 16, "database" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autofree char *path = write_file (files[i].bytes, files[i].length);

      assert_refused (farm, path, files[i].says);
      remove_file (path);
    }
}

/* 200 MB are refused by their size alone. */
static void
test_huge (Farm          *farm,
           gconstpointer  data)
{
  g_autofree char *path = write_file ("Date,Eggs\n", -1);
  gint64 start = g_get_monotonic_time ();

  g_assert_cmpint (truncate (path, 200 * 1024 * 1024), ==, 0);
  assert_refused (farm, path, "64 MB");
  g_assert_cmpint (g_get_monotonic_time () - start, <, G_USEC_PER_SEC);
  remove_file (path);
}

static void
test_unreadable (Farm          *farm,
                 gconstpointer  data)
{
  g_autofree char *path = NULL;

  if (geteuid () == 0)
    {
      g_test_skip ("root reads everything");
      return;
    }
  path = write_file ("Date,Eggs\n2026-03-01,8\n", -1);
  g_assert_cmpint (g_chmod (path, 0), ==, 0);
  assert_refused (farm, path, "cannot be read");
  remove_file (path);
}

static void
test_no_rows (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_log (farm, "log-no-rows.csv");

  assert_counts (import, 0, 0, 0);
  g_assert_cmpstr (stead_import_get_sentence (import), !=, "");
}

static void
test_which_flock (Farm          *farm,
                  gconstpointer  data)
{
  g_autofree char *path = fixture ("log-plain.csv");
  g_autoptr(SteadFlock) second = stead_flock_repo_get (farm->store, farm->flock, NULL);
  g_autoptr(SteadImport) import = NULL;
  g_autoptr(GError) error = NULL;

  second->id = 0;
  g_free (second->name);
  second->name = g_strdup ("Others");
  FARM_DO (farm, stead_flock_repo_save (farm->store, second, &farm_error));
  g_assert_null (stead_import_read (farm->store, STEAD_IMPORT_FLOCK_LOG, 0, path, STEAD_DATE_ORDER_UNKNOWN, NULL, NULL,
                                    NULL, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING);
  g_clear_error (&error);
  import = stead_import_read (farm->store, STEAD_IMPORT_FLOCK_LOG, second->id, path, STEAD_DATE_ORDER_UNKNOWN, NULL,
                              NULL, NULL, &error);
  g_assert_no_error (error);
  take (farm, import);
  g_assert_cmpint (totals_of (farm).eggs, ==, 0);
  g_assert_cmpint (stead_flock_repo_count_entries (farm->store, second->id, NULL), ==, 3);
  /* once the other is over, the one under way is meant */
  second->ended_on = farm->today;
  FARM_DO (farm, stead_flock_repo_save (farm->store, second, &farm_error));
  g_clear_object (&import);
  import = read_log (farm, "log-plain.csv");
  take (farm, import);
  g_assert_cmpint (totals_of (farm).eggs, ==, 24);
}

/* --- receipts --------------------------------------------------------------------------- */

static const struct
{
  guint         line;
  SteadRowState state;
  int           column;
  const char   *says;
} receipts[] = {
  { 2, STEAD_ROW_TAKE, 0, NULL },
  { 3, STEAD_ROW_TAKE, 0, NULL },
  { 4, STEAD_ROW_TAKE, 0, NULL },
  { 5, STEAD_ROW_TAKE, 0, NULL },
  { 6, STEAD_ROW_TAKE, 0, NULL },
  { 7, STEAD_ROW_WRONG, 2, "Layer feed" },    /* a slip: the near name is offered */
  { 8, STEAD_ROW_WRONG, 2, "Kind" },
  { 9, STEAD_ROW_WRONG, 9, "supply" },
  { 10, STEAD_ROW_WRONG, 1, NULL },
  { 11, STEAD_ROW_WRONG, 2, NULL },
  { 12, STEAD_ROW_WRONG, 3, NULL },
  { 13, STEAD_ROW_WRONG, 5, NULL },           /* (3.00) */
  { 14, STEAD_ROW_WRONG, 5, "0" },            /* no cost */
  { 15, STEAD_ROW_WRONG, 5, NULL },           /* tenths of cents */
  { 16, STEAD_ROW_WRONG, 4, NULL },           /* gallons of feed */
  { 17, STEAD_ROW_WRONG, 4, "sacks" },
  { 18, STEAD_ROW_WRONG, 6, "maybe" },
  { 19, STEAD_ROW_WRONG, 0, NULL },           /* the future */
  { 20, STEAD_ROW_SKIP, 0, "3" },             /* the same as line 3 */
};

static void
test_receipts (Farm          *farm,
               gconstpointer  data)
{
  g_autofree char *path = fixture ("receipts.csv");
  g_autoptr(SteadImport) import = read_path (farm, STEAD_IMPORT_RECEIPTS, path, STEAD_DATE_ORDER_UNKNOWN);

  g_assert_cmpuint (stead_import_get_n_rows (import), ==, G_N_ELEMENTS (receipts));
  for (gsize i = 0; i < G_N_ELEMENTS (receipts); i++)
    {
      const SteadImportRow *row = row_of_line (import, receipts[i].line);

      g_test_message ("line %u: %s", row->line, row->message != NULL ? row->message : row->understood);
      g_assert_cmpint (row->state, ==, receipts[i].state);
      if (row->state == STEAD_ROW_WRONG)
        g_assert_cmpint (row->column, ==, receipts[i].column);
      if (receipts[i].says != NULL)
        g_assert_nonnull (strstr (row->message, receipts[i].says));
    }
}

/* Five rows are three receipts: two lines on one paper, a gift, and the new grit. */
static void
test_receipts_taken (Farm          *farm,
                     gconstpointer  data)
{
  g_autofree char *path = fixture ("receipts.csv");
  g_autoptr(SteadImport) import = read_path (farm, STEAD_IMPORT_RECEIPTS, path, STEAD_DATE_ORDER_UNKNOWN);
  g_autoptr(SteadImport) again = NULL;
  g_autoptr(GPtrArray) list = NULL;
  g_autoptr(SteadItem) grit = NULL;
  gint64 sum = 0;

  take (farm, import);
  list = stead_receipt_repo_list (farm->store, NULL);
  g_assert_cmpuint (list->len, ==, 3);
  for (guint i = 0; i < list->len; i++)
    {
      const SteadReceipt *receipt = list->pdata[i];

      sum += stead_receipt_total_cents (receipt);
      g_assert_cmpint (receipt->is_gift, ==, g_str_equal (receipt->supplier, "A neighbor"));
      if (g_strcmp0 (receipt->reference, "A-17") == 0)
        g_assert_cmpuint (receipt->lines->len, ==, 2);
    }
  g_assert_cmpint (sum, ==, 101950 + 1200 + 650 + 410 + 205);
  grit = stead_item_repo_find_by_name (farm->store, "Grit", NULL);
  g_assert_nonnull (grit);
  g_assert_cmpint (grit->kind, ==, STEAD_ITEM_SUPPLY);
  g_assert_cmpstr (grit->unit->id, ==, "lb");
  again = read_path (farm, STEAD_IMPORT_RECEIPTS, path, STEAD_DATE_ORDER_UNKNOWN);
  g_assert_cmpuint (stead_import_count (again, STEAD_ROW_TAKE), ==, 0);
}

/* --- stopping, saving the wrong rows, size ------------------------------------------------ */

static void
cancel_cb (double   share,
           gpointer data)
{
  g_assert_cmpfloat (share, >=, 0);
  g_assert_cmpfloat (share, <=, 1);
  g_cancellable_cancel (data);
}

static char *
write_many (guint n)
{
  g_autoptr(GString) text = g_string_new ("Date,Eggs,Cracked,Feed (lb),Note\n");

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *day = stead_day_format (stead_day_new (2026, 1, 1) + (SteadDay) (i % 90), STEAD_DAY_STYLE_ISO);

      /* No two rows of one day give the same feed. */
      g_string_append_printf (text, "%s,0,0,0.%03u,%u\n", day, i / 90 % 1000, i);
    }
  return write_file (text->str, -1);
}

static void
test_stopped (Farm          *farm,
              gconstpointer  data)
{
  g_autofree char *path = write_many (5000);
  g_autoptr(GCancellable) reading = g_cancellable_new ();
  g_autoptr(GCancellable) taking = g_cancellable_new ();
  g_autoptr(SteadImport) import = NULL;
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_import_read (farm->store, STEAD_IMPORT_FLOCK_LOG, 0, path, STEAD_DATE_ORDER_UNKNOWN, reading,
                                    cancel_cb, reading, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_clear_error (&error);
  import = read_path (farm, STEAD_IMPORT_FLOCK_LOG, path, STEAD_DATE_ORDER_UNKNOWN);
  g_assert_false (stead_import_take (import, farm->store, taking, cancel_cb, taking, &error));
  g_assert_nonnull (error);
  g_assert_cmpint (stead_flock_repo_count_entries (farm->store, farm->flock, NULL), ==, 0);
  /* it can be taken after all */
  take (farm, import);
  g_assert_cmpint (stead_flock_repo_count_entries (farm->store, farm->flock, NULL), ==,
                   stead_import_count (import, STEAD_ROW_TAKE));
  remove_file (path);
}

/* The rows to mend come back as a table: mended, they are taken. */
static void
test_save_wrong (Farm          *farm,
                 gconstpointer  data)
{
  g_autoptr(SteadImport) import = read_log (farm, "log-mean.csv");
  g_autofree char *path = write_file ("old", -1);
  g_autofree char *text = NULL;
  g_autoptr(SteadImport) again = NULL;
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_import_save_wrong (import, path, &error));
  g_assert_no_error (error);
  again = read_path (farm, STEAD_IMPORT_FLOCK_LOG, path, STEAD_DATE_ORDER_UNKNOWN);
  g_assert_cmpuint (stead_import_get_n_rows (again), ==, stead_import_count (import, STEAD_ROW_WRONG));
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_nonnull (strstr (text, "Reason"));
  g_assert_nonnull (strstr (text, "\r\n"));
  g_assert_false (stead_import_save_wrong (import, "/nowhere/at/all.csv", &error));
  g_assert_nonnull (error);
  remove_file (path);
}

static void
test_formulas_are_disarmed (Farm          *farm,
                            gconstpointer  data)
{
  g_autofree char *table = write_file ("Date,Eggs,Note\n2026-03-01,-7,\"=1+1,\"\"x\"\"\"\n", -1);
  g_autoptr(SteadImport) import = read_path (farm, STEAD_IMPORT_FLOCK_LOG, table, STEAD_DATE_ORDER_UNKNOWN);
  g_autofree char *text = NULL;

  assert_counts (import, 0, 0, 1);
  g_assert_true (stead_import_save_wrong (import, table, NULL));
  g_assert_true (g_file_get_contents (table, &text, NULL, NULL));
  g_assert_nonnull (strstr (text, "2026-03-01,-7,\"'=1+1,\"\"x\"\"\","));
  remove_file (table);
}

/* No limit of time here; the benchmark judges speed.  This holds that it works at all. */
static void
test_many (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, NULL);
  g_autoptr(GString) text = g_string_new ("Date,Eggs,Cracked,Feed (lb),Deaths,Note\n");
  g_autofree char *path = NULL;
  g_autoptr(SteadImport) import = NULL;
  gint64 start;

  flock->birds = 200;
  flock->housed_on = stead_day_new (1990, 1, 1);
  flock->hatched_on = flock->housed_on - 210;
  FARM_DO (farm, stead_flock_repo_save (farm->store, flock, &farm_error));
  for (int i = 0; i < 100000; i++)
    {
      g_autofree char *day = stead_day_format (flock->housed_on + i / 8, STEAD_DAY_STYLE_ISO);

      g_string_append_printf (text, "%s,%d,%d,%d.%d,0,\n", day, 20 + i % 8, i % 3, 5 + i % 3, i % 10);
    }
  path = write_file (text->str, -1);
  start = g_get_monotonic_time ();
  import = read_path (farm, STEAD_IMPORT_FLOCK_LOG, path, STEAD_DATE_ORDER_UNKNOWN);
  g_test_message ("read in %.2f s", (double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_TAKE), ==, 100000);
  start = g_get_monotonic_time ();
  take (farm, import);
  g_test_message ("taken in %.2f s", (double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC);
  g_assert_cmpint (stead_flock_repo_count_entries (farm->store, farm->flock, NULL), ==, 100000);
  remove_file (path);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
#define ADD(name, test) g_test_add ("/answer/import/" name, Farm, NULL, farm_set_up, test, farm_tear_down)
  ADD ("plain", test_plain);
  ADD ("known-person", test_known_person);
  ADD ("spanish", test_spanish);
  ADD ("encodings", test_encodings);
  ADD ("line-ends", test_line_ends);
  ADD ("times", test_times);
  ADD ("other-columns", test_other_columns);
  ADD ("doubtful-dates", test_doubtful_dates);
  ADD ("both-orders", test_both_orders);
  ADD ("mean", test_mean);
  ADD ("apostrophe", test_apostrophe);
  ADD ("dying", test_dying);
  ADD ("beside-the-log", test_beside_the_log);
  ADD ("before-later-losses", test_before_later_losses);
  ADD ("twice", test_twice);
  ADD ("unreadable-signs", test_unreadable_signs);
  ADD ("control-signs", test_control_signs);
  ADD ("lines-in-a-cell", test_lines_in_a_cell);
  ADD ("refused", test_refused);
  ADD ("refused-made", test_refused_made);
  ADD ("huge", test_huge);
  ADD ("unreadable", test_unreadable);
  ADD ("no-rows", test_no_rows);
  ADD ("which-flock", test_which_flock);
  ADD ("receipts", test_receipts);
  ADD ("receipts-taken", test_receipts_taken);
  ADD ("stopped", test_stopped);
  ADD ("save-wrong", test_save_wrong);
  ADD ("formulas-are-disarmed", test_formulas_are_disarmed);
  ADD ("many", test_many);
#undef ADD
  return g_test_run ();
}
