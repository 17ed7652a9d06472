/* test-page.c - a place is refreshed when it is seen, and only then. */
#include "config.h"

#include "app-fixture.h"
#include "app/stead-page.h"

#define TEST_TYPE_PAGE (test_page_get_type ())
G_DECLARE_FINAL_TYPE (TestPage, test_page, TEST, PAGE, SteadPage)

struct _TestPage
{
  SteadPage    parent_instance;
  int          refreshed;
  SteadTarget  target;
  gint64       id;
  gboolean     mapped_when_shown;
};

G_DEFINE_FINAL_TYPE (TestPage, test_page, STEAD_TYPE_PAGE)

static void
test_page_refresh (SteadPage *page)
{
  TEST_PAGE (page)->refreshed++;
  /* A refresh that causes a change must not run into itself. */
  stead_page_invalidate (page);
}

static void
test_page_show (SteadPage   *page,
                SteadTarget  target,
                gint64       id)
{
  TEST_PAGE (page)->target = target;
  TEST_PAGE (page)->id = id;
}

static void
test_page_class_init (TestPageClass *klass)
{
  STEAD_PAGE_CLASS (klass)->refresh = test_page_refresh;
  STEAD_PAGE_CLASS (klass)->show = test_page_show;
}

static void
test_page_init (TestPage *self)
{
  gtk_widget_set_parent (gtk_label_new ("x"), GTK_WIDGET (self));
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
change (SteadDesk  *desk,
        const char *name)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_desk_act (desk, name, rename_farm, (gpointer) name, &error));
  g_assert_no_error (error);
}

static void
test_refresh (void)
{
  g_autoptr(SteadDesk) desk = stead_desk_new ();
  g_autoptr(SteadStore) store = fixture_farm ();
  GtkWidget *stack = gtk_stack_new ();
  TestPage *page = g_object_new (TEST_TYPE_PAGE, "desk", desk, NULL);
  GtkWindow *window;

  gtk_stack_add_named (GTK_STACK (stack), gtk_label_new ("other"), "other");
  gtk_stack_add_named (GTK_STACK (stack), GTK_WIDGET (page), "page");
  window = fixture_show (stack);
  stead_desk_set_store (desk, store);
  change (desk, "One");
  change (desk, "Two");
  g_assert_cmpint (page->refreshed, ==, 0);              /* hidden: nothing is read */

  gtk_stack_set_visible_child_name (GTK_STACK (stack), "page");
  g_assert_cmpint (page->refreshed, ==, 1);              /* seen: once for both changes */
  page->refreshed = 0;
  change (desk, "Three");
  g_assert_cmpint (page->refreshed, ==, 1);
  gtk_stack_set_visible_child_name (GTK_STACK (stack), "other");
  change (desk, "Four");
  g_assert_cmpint (page->refreshed, ==, 1);

  stead_page_show (STEAD_PAGE (page), STEAD_TARGET_FLOCK, 5);
  g_assert_cmpint (page->target, ==, STEAD_TARGET_FLOCK);
  g_assert_cmpint (page->id, ==, 5);
  fixture_close (window);
}

static void
test_without_farm (void)
{
  g_autoptr(SteadDesk) desk = stead_desk_new ();
  TestPage *page = g_object_new (TEST_TYPE_PAGE, "desk", desk, NULL);
  GtkWindow *window = fixture_show (GTK_WIDGET (page));

  g_assert_cmpint (page->refreshed, ==, 0);
  g_assert_null (stead_page_get_store (STEAD_PAGE (page)));
  fixture_close (window);
}

static void
test_finalizes (void)
{
  SteadDesk *desk = stead_desk_new ();
  TestPage *page = g_object_ref_sink (g_object_new (TEST_TYPE_PAGE, "desk", desk, NULL));

  g_assert_finalize_object (page);
  g_assert_finalize_object (desk);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/app/page/refresh", test_refresh);
  g_test_add_func ("/app/page/without-farm", test_without_farm);
  g_test_add_func ("/app/page/finalizes", test_finalizes);
  return g_test_run ();
}
