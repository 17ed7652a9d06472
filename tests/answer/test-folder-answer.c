/* test-folder-answer.c - the description that goes with a farm as a folder fits the folder. */
#include "config.h"

#include <string.h>

#include <gio/gio.h>
#include <glib/gstdio.h>

#include "answer/stead-folder-answer.h"

#include "demo.h"
#include "farm.h"

static void
remove_tree (const char *path)
{
  g_autoptr(GDir) folder = g_dir_open (path, 0, NULL);
  const char *name;

  while (folder != NULL && (name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *inner = g_build_filename (path, name, NULL);

      if (g_file_test (inner, G_FILE_TEST_IS_DIR))
        remove_tree (inner);
      else
        g_unlink (inner);
    }
  g_rmdir (path);
}

static char *
read_file (const char *folder,
           const char *name)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = g_build_filename (folder, name, NULL);
  char *text;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  return text;
}

/* The columns of a table, as its own file heads them, are those that are described. */
static guint
check_table (const char             *folder,
             const char             *readme,
             const SteadFolderTable *table)
{
  g_autofree char *file = g_strconcat ("tables/", table->name, ".csv", NULL);
  g_autofree char *text = read_file (folder, file);
  g_autofree char *heading = g_strdup_printf ("\n### %s (%u)\n", table->name, table->rows);
  g_auto(GStrv) lines = g_strsplit (text, "\r\n", 2);
  g_auto(GStrv) names = g_strsplit (lines[0], ",", -1);

  g_assert_nonnull (strstr (readme, heading));
  g_assert_cmpuint (g_strv_length (names), ==, table->columns->len);
  for (guint i = 0; i < table->columns->len; i++)
    g_assert_cmpstr (names[i], ==, ((const SteadFolderColumn *) table->columns->pdata[i])->name);
  return table->columns->len;
}

static void
check_folder (Demo                     *demo,
              const SteadFolderOptions *options,
              const char               *name)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = g_build_filename (demo->folder, name, NULL);
  g_autoptr(SteadLeaving) leaving = stead_folder_answer_leaving (demo->store, options, &error);
  g_autofree char *readme = NULL, *columns = NULL;
  g_auto(GStrv) rows = NULL;
  guint n = 0;

  g_assert_true (stead_folder_answer_write (demo->store, path, options, NULL, &error));
  g_assert_no_error (error);
  readme = read_file (path, "README.md");
  columns = read_file (path, "columns.csv");
  for (guint i = 0; i < leaving->tables->len; i++)
    n += check_table (path, readme, leaving->tables->pdata[i]);
  rows = g_strsplit (columns, "\r\n", -1);
  g_assert_cmpuint (g_strv_length (rows), ==, 1 + n + 1);   /* a heading; an end after the last */
  /* What is there already is left alone. */
  g_assert_false (stead_folder_answer_write (demo->store, path, options, NULL, &error));
  g_assert_nonnull (error);
  remove_tree (path);
}

static void
test_described (Demo          *demo,
                gconstpointer  data)
{
  static const SteadFolderOptions no_names = { .notes = TRUE, .pictures = TRUE };

  check_folder (demo, NULL, "whole");
  check_folder (demo, &no_names, "no-names");
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add ("/answer/folder-answer/described", Demo, NULL, demo_set_up, test_described, demo_tear_down);
  return g_test_run ();
}
