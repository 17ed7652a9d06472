/* test-still-named.c - who stands against a deletion is found wherever the file itself would refuse it. */
#include "config.h"

#include <string.h>

#include "store-fixture.h"
#include "store/stead-demo-farm.h"
#include "store/stead-product-repo.h"
#include "store/stead-repo-private.h"
#include "store/stead-still-named.h"

#define TODAY (stead_day_new (2026, 11, 27))

static SteadStore *
make (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "demo.steading", NULL);
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_demo_farm_create (path, NULL, TODAY, &error);

  g_assert_no_error (error);
  return store;
}

/* (transfer full): the text that @sql gives, which is no literal, so that the store may not keep it */
static char *
text_of (SteadStore *store,
         const char *sql)
{
  sqlite3_stmt *stmt = NULL;
  char *text;

  g_assert_cmpint (sqlite3_prepare_v2 (stead_store_get_db (store), sql, -1, &stmt, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_ROW);
  text = g_strdup ((const char *) sqlite3_column_text (stmt, 0));
  sqlite3_finalize (stmt);
  return text;
}

/* How many rows of others name this one, by the references that the file knows of itself. */
static gint64
count_references (SteadStore *store,
                  const char *table,
                  gint64      id)
{
  static const char find[] =
    "SELECT coalesce (group_concat ('(SELECT count (*) FROM \"' || m.name || '\" WHERE \"' || f.\"from\" || '\" = %2$d)', ' + '), '0')"
    " FROM sqlite_schema m, pragma_foreign_key_list (m.name) f"
    " WHERE m.type = 'table' AND f.\"table\" = '%1$s' AND f.on_delete NOT IN ('CASCADE', 'SET NULL')";
  g_autofree char *sql = g_strdup_printf (find, table, (int) id);
  g_autofree char *sum = text_of (store, sql);
  g_autofree char *count = g_strconcat ("SELECT ", sum, NULL);

  return fixture_number (store, count);
}

static void
test_nobody_is_missed (void)
{
  static const char * const tables[] = { "account", "asset", "batch", "event", "fund", "product", "receipt" };
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autoptr(SteadStore) store = make (folder);
  int n_named = 0, n_free = 0;

  for (gsize t = 0; t < G_N_ELEMENTS (tables); t++)
    {
      g_autofree char *newest = g_strdup_printf ("SELECT coalesce (max (id), 0) FROM %s", tables[t]);

      for (gint64 id = fixture_number (store, newest); id > 0; id--)
        {
          g_autofree char *by = stead_still_named (store, tables[t], id);
          gint64 n = count_references (store, tables[t], id);

          g_test_message ("%s %d: %d references, %s", tables[t], (int) id, (int) n, by != NULL ? by : "nobody");
          g_assert_true ((by != NULL) == (n > 0));
          n_named += by != NULL;
          n_free += by == NULL;
        }
    }
  /* Both happen, or this tells nothing. */
  g_assert_cmpint (n_named, >, 10);
  g_assert_cmpint (n_free, >, 0);
}

/* The refusal that a person reads says where to look. */
static void
test_the_message (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autoptr(SteadStore) store = make (folder);
  g_autoptr(GError) error = NULL;
  gint64 product = fixture_number (store, "SELECT min (product_id) FROM sale_line");
  gint64 before = fixture_number (store, "SELECT count (*) FROM product");

  g_assert_true (stead_store_begin (store, "Test", &error));
  g_assert_false (stead_product_repo_delete (store, product, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  g_assert_nonnull (strstr (error->message, "a sale"));
  g_assert_nonnull (strstr (error->message, "Take it out there first."));
  stead_store_rollback (store);
  g_assert_cmpint (fixture_number (store, "SELECT count (*) FROM product"), ==, before);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/still-named/nobody-is-missed", test_nobody_is_missed);
  g_test_add_func ("/store/still-named/the-message", test_the_message);
  return g_test_run ();
}
