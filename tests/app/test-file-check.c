/* test-file-check.c - a farm file is checked ahead, and what changed since does not pass. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "app-fixture.h"
#include "app/stead-file-check.h"
#include "app/stead-trouble.h"
#include "app/stead-window-private.h"

typedef struct
{
  char *folder;
  char *path;
} Files;

static void
set_up (Files         *files,
        gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;

  files->folder = g_dir_make_tmp ("stead-XXXXXX", NULL);
  files->path = g_build_filename (files->folder, "a.steading", NULL);
  store = stead_store_create (files->path, "A farm", &error);
  g_assert_no_error (error);
}

static void
tear_down (Files         *files,
           gconstpointer  data)
{
  stead_file_check_end ();
  g_unlink (files->path);
  g_rmdir (files->folder);
  g_free (files->path);
  g_free (files->folder);
}

static void
test_once (Files         *files,
           gconstpointer  data)
{
  g_assert_false (stead_file_check_passed (files->path));
  stead_file_check_begin (files->path);
  g_assert_false (stead_file_check_passed ("/elsewhere.steading"));
  g_assert_true (stead_file_check_passed (files->path));
  g_assert_false (stead_file_check_passed (files->path));
}

/* Writes over a page in the middle of the file: no page of SQLite's begins like that. */
static void
damage (const char *path)
{
  g_autofree char *contents = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &contents, &length, NULL));
  memset (contents + length / 8192 * 4096, 0xa5, 4096);
  g_assert_true (g_file_set_contents_full (path, contents, (gssize) length, G_FILE_SET_CONTENTS_NONE, 0600, NULL));
}

static void
test_changed (Files         *files,
              gconstpointer  data)
{
  stead_file_check_begin (files->path);
  damage (files->path);
  g_assert_false (stead_file_check_passed (files->path));
}

static void
test_absent (Files         *files,
             gconstpointer  data)
{
  stead_file_check_begin ("/elsewhere.steading");
  g_assert_false (stead_file_check_passed ("/elsewhere.steading"));
}

/* What did not pass is opened as ever: the window says what is wrong. */
static void
test_damaged (Files         *files,
              gconstpointer  data)
{
  SteadWindow *window = STEAD_WINDOW (stead_window_new (NULL));

  damage (files->path);
  stead_file_check_begin (files->path);
  stead_window_open (window, files->path);
  g_assert_nonnull (fixture_find (GTK_WIDGET (window), STEAD_TYPE_TROUBLE, 0));
  g_assert_null (stead_desk_get_store (stead_window_get_desk (window)));
  gtk_window_destroy (GTK_WINDOW (window));
  fixture_settle ();
}

/* What passed can be changed at once. */
static void
test_opens (Files         *files,
            gconstpointer  data)
{
  SteadWindow *window = STEAD_WINDOW (stead_window_new (NULL));
  g_autoptr(GError) error = NULL;
  SteadStore *store;

  stead_file_check_begin (files->path);
  stead_window_open (window, files->path);
  store = stead_desk_get_store (stead_window_get_desk (window));
  g_assert_nonnull (store);
  g_assert_true (stead_store_begin (store, "a step", &error));
  g_assert_no_error (error);
  stead_store_rollback (store);
  gtk_window_destroy (GTK_WINDOW (window));
  fixture_settle ();
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add ("/app/file-check/once", Files, NULL, set_up, test_once, tear_down);
  g_test_add ("/app/file-check/changed", Files, NULL, set_up, test_changed, tear_down);
  g_test_add ("/app/file-check/absent", Files, NULL, set_up, test_absent, tear_down);
  g_test_add ("/app/file-check/damaged", Files, NULL, set_up, test_damaged, tear_down);
  g_test_add ("/app/file-check/opens", Files, NULL, set_up, test_opens, tear_down);
  return g_test_run ();
}
