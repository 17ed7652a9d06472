/* bench-import.c - a log of 100,000 rows into a farm file, against the sqlite3 shell.
 *
 * usage: bench-import [ROWS]      prints what reading and taking took, and the ratio to
 *                                 the shell's own import in the same run
 *        bench-import --short     a test: a small log goes in whole; no limit of time
 *
 * The shell imports the same facts into a table with the same columns, checks,
 * foreign keys and indexes (copied out of the farm file), with the same pragmas.
 * It judges no date, no hen and no double, and records no step of undo.
 */
#include "answer/farm.h"
#include "answer/stead-import-answer.h"

#include <glib/gstdio.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define LONG_ROWS 100000
#define SHORT_ROWS 3000
#define ROWS_A_DAY 8
#define HENS 200

typedef struct
{
  char *folder;
  char *farm;      /* the farm file */
  char *table;     /* what a person imports */
  char *plain;     /* the same facts as the table of the file has them */
  char *shell;     /* the shell's database */
} Paths;

static Paths
paths_new (void)
{
  char *folder = g_dir_make_tmp ("stead-bench-XXXXXX", NULL);

  return (Paths) { folder, g_build_filename (folder, "farm.steading", NULL), g_build_filename (folder, "table.csv", NULL),
                   g_build_filename (folder, "plain.csv", NULL), g_build_filename (folder, "shell.db", NULL) };
}

/* The folder holds files of ours alone, and one folder of dated copies. */
static void
remove_tree (const char *path)
{
  g_autoptr(GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *inner = g_build_filename (path, name, NULL);

      remove_tree (inner);
    }
  g_remove (path);
}

static void
paths_clear (Paths *paths)
{
  remove_tree (paths->folder);
  g_free (paths->folder);
  g_free (paths->farm);
  g_free (paths->table);
  g_free (paths->plain);
  g_free (paths->shell);
}

static double
now (void)
{
  return (double) g_get_monotonic_time () / G_USEC_PER_SEC;
}

/* One flock that has lived long enough for all the rows. */
static SteadStore *
make_farm (const char *path,
           int         rows)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_create (path, "Bench", &error);
  g_autoptr(SteadFlock) flock = stead_flock_new ();

  g_assert_no_error (error);
  g_free (flock->name);
  flock->name = g_strdup ("Hens");
  flock->housed_on = stead_store_get_today (store) - rows / ROWS_A_DAY - 1;
  flock->hatched_on = flock->housed_on - 126;
  flock->birds = HENS;
  flock->eggs_expected = 300;
  g_assert_true (stead_store_begin (store, "Flock", &error));
  g_assert_true (stead_flock_repo_save (store, flock, &error));
  g_assert_true (stead_store_commit (store, &error));
  return store;
}

static void
write_tables (const Paths *paths,
              SteadDay     first,
              int          rows)
{
  g_autoptr(GString) table = g_string_new ("Date,Eggs,Cracked,Feed (kg),Deaths,Note\n");
  g_autoptr(GString) plain = g_string_new ("id,batch_id,day,eggs,cracked,deaths,culled,feed_kg,note,person_id,left_out,water_c,refused,reason\n");

  for (int i = 0; i < rows; i++)
    {
      SteadDay day = first + i / ROWS_A_DAY;
      g_autofree char *date = stead_day_format (day, STEAD_DAY_STYLE_ISO);

      g_string_append_printf (table, "%s,%d,%d,%d.%d,0,row %d\n", date, 20 + i % 8, i % 3, 2 + i % 3, i % 10, i);
      g_string_append_printf (plain, "%d,1,%d,%d,%d,0,0,%d.%d,row %d,1,0,20,0,none\n", i + 1, day, 20 + i % 8, i % 3, 2 + i % 3,
                              i % 10, i);
    }
  g_assert_true (g_file_set_contents (paths->table, table->str, -1, NULL));
  g_assert_true (g_file_set_contents (paths->plain, plain->str, -1, NULL));
}

static void
import (const Paths *paths,
        SteadStore  *store,
        int          rows,
        double      *read_s,
        double      *take_s)
{
  g_autoptr(GError) error = NULL;
  double start = now ();
  g_autoptr(SteadImport) table = stead_import_read (store, STEAD_IMPORT_FLOCK_LOG, 0, paths->table,
                                                    STEAD_DATE_ORDER_UNKNOWN, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  *read_s = now () - start;
  g_assert_cmpuint (stead_import_count (table, STEAD_ROW_TAKE), ==, (guint) rows);
  start = now ();
  g_assert_true (stead_import_take (table, store, NULL, NULL, NULL, &error));
  *take_s = now () - start;
}

static char *
run_shell (const char *database,
           const char *script)
{
  const char *argv[] = { "sqlite3", "-batch", "-bail", database, script, NULL };
  g_autoptr(GError) error = NULL;
  g_autofree char *complaints = NULL;
  char *out = NULL;
  int status;

  if (!g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out, &complaints, &status, &error))
    g_error ("sqlite3 cannot be run: %s", error->message);
  if (!g_spawn_check_wait_status (status, NULL))
    g_error ("sqlite3: %s", complaints);
  return out;
}

static double
shell_import (const Paths *paths,
              int          rows)
{
  g_autofree char *schema = run_shell (paths->farm, "SELECT sql || ';' FROM sqlite_schema WHERE tbl_name = 'batch_entry'"
                                                    " AND name <> 'batch_entry_water'"
                                                    " AND type IN ('table', 'index') AND sql IS NOT NULL"
                                                    " ORDER BY type DESC, name");
  g_autofree char *setup = g_strconcat ("CREATE TABLE batch (id INTEGER PRIMARY KEY); CREATE TABLE person (id INTEGER"
                                        " PRIMARY KEY); INSERT INTO batch VALUES (1); INSERT INTO person VALUES (1);",
                                        schema, NULL);
  g_autofree char *script = g_strdup_printf ("PRAGMA foreign_keys = ON; PRAGMA synchronous = EXTRA;\n.mode csv\n"
                                             ".import --skip 1 %s batch_entry\n", paths->plain);
  g_autofree char *file = g_build_filename (paths->folder, "import.sql", NULL);
  g_autofree char *command = g_strconcat (".read ", file, NULL);
  g_autofree char *made G_GNUC_UNUSED = run_shell (paths->shell, setup);
  g_autofree char *imported = NULL;
  g_autofree char *count = NULL;
  double start;

  g_assert_true (g_file_set_contents (file, script, -1, NULL));
  start = now ();
  imported = run_shell (paths->shell, command);
  start = now () - start;
  count = run_shell (paths->shell, "SELECT count (*) FROM batch_entry");
  g_assert_cmpint (atoi (count), ==, rows);
  return start;
}

int
main (int    argc,
      char **argv)
{
  gboolean brief = argc > 1 && strcmp (argv[1], "--short") == 0;
  int rows = brief ? SHORT_ROWS : argc > 1 ? atoi (argv[1]) : LONG_ROWS;
  Paths paths = paths_new ();
  SteadStore *store = make_farm (paths.farm, rows);
  double read_s = 0, take_s = 0, shell_s;

  g_assert_cmpint (rows, >, 0);
  write_tables (&paths, stead_store_get_today (store) - rows / ROWS_A_DAY, rows);
  import (&paths, store, rows, &read_s, &take_s);
  g_object_unref (store);
  shell_s = shell_import (&paths, rows);
  paths_clear (&paths);
  printf ("%s%d rows: read %.2f s, taken %.2f s; the sqlite3 shell %.2f s; ratio %.2f (aim: 0.5 and more)\n",
          brief ? "# " : "", rows, read_s, take_s, shell_s, shell_s / (read_s + take_s));
  if (brief)
    printf ("ok 1 /bench/import/all-rows-go-in\n1..1\n");
  return 0;
}
