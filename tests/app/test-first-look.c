/* test-first-look.c - a farm file is checked ahead, and what changed since does not pass. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "app-fixture.h"
#include "app/stead-first-look.h"
#include "app/stead-trouble.h"
#include "app/stead-window-private.h"
#include "store/stead-flock-repo.h"

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
  stead_first_look_end ();
  g_unlink (files->path);
  g_rmdir (files->folder);
  g_free (files->path);
  g_free (files->folder);
}

static void
test_once (Files         *files,
           gconstpointer  data)
{
  g_assert_false (stead_first_look_passed (files->path));
  stead_first_look_begin (files->path);
  g_assert_false (stead_first_look_passed ("/elsewhere.steading"));
  g_assert_true (stead_first_look_passed (files->path));
  g_assert_false (stead_first_look_passed (files->path));
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
  stead_first_look_begin (files->path);
  damage (files->path);
  g_assert_false (stead_first_look_passed (files->path));
}

static void
test_absent (Files         *files,
             gconstpointer  data)
{
  stead_first_look_begin ("/elsewhere.steading");
  g_assert_false (stead_first_look_passed ("/elsewhere.steading"));
}

/* What did not pass is opened as ever: the window says what is wrong. */
static void
test_damaged (Files         *files,
              gconstpointer  data)
{
  SteadWindow *window = STEAD_WINDOW (stead_window_new (NULL));

  damage (files->path);
  stead_first_look_begin (files->path);
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

  stead_first_look_begin (files->path);
  stead_window_open (window, files->path);
  store = stead_desk_get_store (stead_window_get_desk (window));
  g_assert_nonnull (store);
  g_assert_true (stead_store_begin (store, "a step", &error));
  g_assert_no_error (error);
  stead_store_rollback (store);
  gtk_window_destroy (GTK_WINDOW (window));
  fixture_settle ();
}

/* The farm with one flock more, so with something due: its eggs. */
static SteadStore *
open_with_due (Files      *files,
               const char *hens)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_open (files->path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_autoptr(SteadFlock) flock = stead_flock_new ();

  g_assert_no_error (error);
  flock->name = g_strdup (hens);
  flock->housed_on = stead_store_get_today (store) - 20;
  flock->hatched_on = flock->housed_on - 180;
  flock->birds = 30;
  flock->eggs_expected = 300;
  g_assert_true (stead_store_begin (store, "a flock", &error) && stead_flock_repo_save (store, flock, &error)
                 && stead_store_commit (store, &error));
  g_assert_no_error (error);
  return g_steal_pointer (&store);
}

/* What is due, and what the posts say, was found in the thread, as it would be now, and is given once. */
static void
test_due (Files         *files,
          gconstpointer  data)
{
  g_autoptr(SteadStore) store = open_with_due (files, "Brown hens");
  g_autoptr(SteadDueAnswer) own = stead_due_answer_new (store, NULL);
  g_autoptr(SteadStripAnswer) own_strip = stead_strip_answer_new (store, own, 0, NULL);
  g_autoptr(SteadDueAnswer) due = NULL;
  g_autoptr(SteadStripAnswer) strip = NULL;

  g_assert_null (stead_first_look_take_due (store));
  g_assert_null (stead_first_look_take_strip (store));
  stead_first_look_begin (files->path);
  due = stead_first_look_take_due (store);
  strip = stead_first_look_take_strip (store);
  g_assert_nonnull (due);
  g_assert_nonnull (strip);
  g_assert_cmpuint (own->dues->len, >, 0);
  g_assert_cmpuint (due->dues->len, ==, own->dues->len);
  g_assert_cmpstr (due->sentence, ==, own->sentence);
  g_assert_cmpstr (strip->raise, ==, own_strip->raise);
  g_assert_cmpstr (strip->raise, !=, NULL);
  g_assert_null (stead_first_look_take_due (store));
  g_assert_null (stead_first_look_take_strip (store));
}

/* Nor is it given of a farm that changed, of another day or of another farm. */
static void
test_due_of_then (Files         *files,
                  gconstpointer  data)
{
  g_autoptr(SteadStore) store = open_with_due (files, "Brown hens");
  g_autoptr(SteadStore) other = stead_store_create_memory ("Another farm", NULL);
  g_autoptr(SteadStore) again = NULL;

  stead_first_look_begin (files->path);
  g_assert_null (stead_first_look_take_due (other));
  stead_store_set_today (store, stead_store_get_today (store) + 1);
  g_assert_null (stead_first_look_take_due (store));
  stead_first_look_begin (files->path);
  again = open_with_due (files, "White hens");
  g_assert_null (stead_first_look_take_due (again));
  g_assert_null (stead_first_look_take_strip (again));
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add ("/app/first-look/once", Files, NULL, set_up, test_once, tear_down);
  g_test_add ("/app/first-look/changed", Files, NULL, set_up, test_changed, tear_down);
  g_test_add ("/app/first-look/absent", Files, NULL, set_up, test_absent, tear_down);
  g_test_add ("/app/first-look/damaged", Files, NULL, set_up, test_damaged, tear_down);
  g_test_add ("/app/first-look/opens", Files, NULL, set_up, test_opens, tear_down);
  g_test_add ("/app/first-look/due", Files, NULL, set_up, test_due, tear_down);
  g_test_add ("/app/first-look/due-of-then", Files, NULL, set_up, test_due_of_then, tear_down);
  return g_test_run ();
}
