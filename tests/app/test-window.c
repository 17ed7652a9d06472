/* test-window.c - one window: what it shows with a farm, without one, and in between. */
#include "config.h"

#include <glib/gstdio.h>

#include "app-fixture.h"
#include "app/stead-new-farm.h"
#include "app/stead-strip.h"
#include "app/stead-trouble.h"
#include "app/stead-welcome.h"
#include "app/stead-window-private.h"
#include "app/today/stead-today-page.h"

static SteadWindow *
present (void)
{
  SteadWindow *window = STEAD_WINDOW (stead_window_new (NULL));

  gtk_window_present (GTK_WINDOW (window));
  fixture_settle ();
  return window;
}

static SteadStrip *
strip_of (SteadWindow *window)
{
  return STEAD_STRIP (fixture_find (GTK_WIDGET (window), STEAD_TYPE_STRIP, 0));
}

static void
destroy (SteadWindow *window)
{
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  gtk_window_destroy (GTK_WINDOW (window));
  fixture_settle ();
  g_assert_null (window);
}

static void
test_welcome (void)
{
  SteadWindow *window = present ();

  g_assert_nonnull (fixture_find (GTK_WIDGET (window), STEAD_TYPE_WELCOME, 0));
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (strip_of (window))));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.new-farm", NULL));
  g_assert_null (fixture_find (GTK_WIDGET (window), STEAD_TYPE_WELCOME, 0));
  g_assert_nonnull (fixture_find (GTK_WIDGET (window), STEAD_TYPE_NEW_FARM, 0));
  destroy (window);
}

static void
test_places (void)
{
  static const char * const names[] = { "today", "raise", "make", "check", "price", "sell", "fund", "keep", "show" };
  g_autoptr(SteadStore) store = fixture_farm ();
  SteadWindow *window = present ();
  SteadStrip *strip = strip_of (window);

  stead_window_take (window, store);
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (strip)));
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "Test farm");
  g_assert_nonnull (fixture_find (GTK_WIDGET (window), STEAD_TYPE_TODAY_PAGE, 0));
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.place", "i", (int) i + 1));
      fixture_settle ();
      g_assert_cmpstr (stead_strip_get_selected (strip), ==, names[i]);
      g_assert_cmpstr (stead_strip_get_nth (strip, (guint) i), ==, names[i]);
    }
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.place", "i", 10));
  g_assert_cmpstr (stead_strip_get_selected (strip), ==, "show");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.back", NULL);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.back", NULL);
  g_assert_cmpstr (stead_strip_get_selected (strip), ==, "fund");
  stead_desk_jump (stead_window_get_desk (window), STEAD_TARGET_RECIPE, 1);
  g_assert_cmpstr (stead_strip_get_selected (strip), ==, "make");
  destroy (window);
}

static gboolean
rename_farm (SteadStore  *store,
             gpointer     name,
             GError     **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);

  g_free (farm->name);
  farm->name = g_strdup (name);
  return stead_farm_repo_set (store, farm, error);
}

static void
test_steps (void)
{
  g_autoptr(SteadStore) store = fixture_farm ();
  g_autoptr(GError) error = NULL;
  SteadWindow *window = present ();

  stead_window_take (window, store);
  g_assert_true (stead_desk_act (stead_window_get_desk (window), "A new name", rename_farm,
                                 (gpointer) "Hill farm", &error));
  fixture_settle ();
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "Hill farm");
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.undo", NULL));
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "Test farm");
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.redo", NULL));
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "Hill farm");
  destroy (window);
}

static void
test_trouble (void)
{
  g_autofree char *folder = g_dir_make_tmp ("stead-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "text.steading", NULL);
  g_autofree char *after = NULL;
  SteadWindow *window = present ();

  g_assert_true (g_file_set_contents (path, "Dear diary", -1, NULL));
  stead_window_open (window, path);
  g_assert_nonnull (fixture_find (GTK_WIDGET (window), STEAD_TYPE_TROUBLE, 0));
  g_assert_cmpstr (stead_window_get_path (window), ==, path);
  g_assert_null (stead_desk_get_store (stead_window_get_desk (window)));
  g_assert_true (g_file_get_contents (path, &after, NULL, NULL));
  g_assert_cmpstr (after, ==, "Dear diary");
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.welcome", NULL));
  g_assert_nonnull (fixture_find (GTK_WIDGET (window), STEAD_TYPE_WELCOME, 0));
  g_assert_null (stead_window_get_path (window));
  destroy (window);
  g_assert_cmpint (g_remove (path), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/app/window/welcome", test_welcome);
  g_test_add_func ("/app/window/places", test_places);
  g_test_add_func ("/app/window/steps", test_steps);
  g_test_add_func ("/app/window/trouble", test_trouble);
  return g_test_run ();
}
