/* test-undo.c - steps are undone and redone, all or nothing. */
#include "config.h"

#include "store-fixture.h"

static SteadStore *
new_farm (void)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_create_memory ("Test Farm", &error);

  g_assert_no_error (error);
  return store;
}

static void
test_undo_all (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *start = fixture_dump (store);
  g_autofree char *end = NULL;
  g_autofree char *back = NULL;
  g_autofree char *again = NULL;
  g_autoptr(GError) error = NULL;

  fixture_fill (store);
  end = fixture_dump (store);
  for (int i = 0; i < 6; i++)
    {
      g_assert_true (stead_store_undo (store, &error));
      g_assert_no_error (error);
    }
  back = fixture_dump (store);
  g_assert_cmpstr (back, ==, start);
  g_assert_false (stead_store_undo (store, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  for (int i = 0; i < 6; i++)
    g_assert_true (stead_store_redo (store, &error));
  again = fixture_dump (store);
  g_assert_cmpstr (again, ==, end);
}

static void
test_cascade (void)
{
  g_autoptr(SteadStore) store = new_farm ();
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  g_autoptr(GError) error = NULL;

  fixture_fill (store);
  before = fixture_dump (store);
  fixture_act (store, "delete flock", "DELETE FROM batch WHERE id = 1");
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM flock_entry"), ==, 0);
  g_assert_true (stead_store_undo (store, &error));
  g_assert_no_error (error);
  after = fixture_dump (store);
  g_assert_cmpstr (after, ==, before);
  g_assert_true (stead_store_redo (store, &error));
  g_assert_no_error (error);
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM flock_entry"), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/undo/all", test_undo_all);
  g_test_add_func ("/store/undo/cascade", test_cascade);
  return g_test_run ();
}
