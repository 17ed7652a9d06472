/* test-demo-farm.c - the farm that a visitor sees first. */
#include "config.h"

#include <glib/gstdio.h>
#include <math.h>

#include "repo-fixture.h"
#include "store/stead-demo-farm.h"

/* Days on which somebody may look: winter, the day after a sale, a leap day, New Year. */
static const int days[][3] = {
  { 2026, 3, 3 }, { 2026, 11, 25 }, { 2028, 2, 29 }, { 2027, 1, 1 }, { 2026, 7, 5 }, { 2026, 6, 6 },
};

static SteadStore *
make (const char *folder,
      const char *name,
      SteadDay    today)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = g_build_filename (folder, name, NULL);
  SteadStore *store = stead_demo_farm_create (path, NULL, today, &error);

  g_assert_no_error (error);
  g_assert_nonnull (store);
  g_assert_cmpint (stead_store_get_today (store), ==, today);
  return store;
}

static void
test_same (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autoptr(SteadStore) one = make (folder, "one.steading", TODAY);
  g_autoptr(SteadStore) two = make (folder, "two.steading", TODAY);
  g_autoptr(SteadStore) later = make (folder, "later.steading", TODAY + 1);
  g_autofree char *first = fixture_dump (one);
  g_autofree char *second = fixture_dump (two);
  g_autofree char *third = fixture_dump (later);

  g_assert_cmpstr (first, ==, second);
  g_assert_cmpstr (first, !=, third);
}

static void
test_sound (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();

  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    {
      SteadDay today = stead_day_new (days[i][0], days[i][1], days[i][2]);
      g_autofree char *name = g_strdup_printf ("%d.steading", (int) i);
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_autoptr(GError) error = NULL;
      g_autoptr(SteadStore) store = make (folder, name, today);
      g_autoptr(GPtrArray) wrong = NULL;
      Farm farm = { .store = store };

      farm_assert_ledger (&farm);
      g_clear_object (&store);
      wrong = stead_store_verify (path, NULL, &error);
      g_assert_no_error (error);
      for (guint j = 0; j < wrong->len; j++)
        g_test_message ("%s", (char *) wrong->pdata[j]);
      g_assert_cmpuint (wrong->len, ==, 0);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/demo/same", test_same);
  g_test_add_func ("/store/demo/sound", test_sound);
  return g_test_run ();
}
