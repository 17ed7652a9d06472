/* store-fixture.c - what the tests of the farm file share. */
#include "config.h"

#include <glib/gstdio.h>

#include "store-fixture.h"
#include "store/stead-schema.h"

void
fixture_run (SteadStore *store,
             const char *sql)
{
  int rc = sqlite3_exec (stead_store_get_db (store), sql, NULL, NULL, NULL);

  if (rc != SQLITE_OK)
    g_error ("%s: %s", sql, sqlite3_errmsg (stead_store_get_db (store)));
}

void
fixture_act (SteadStore *store,
             const char *name,
             const char *sql)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_store_begin (store, name, &error));
  g_assert_no_error (error);
  fixture_run (store, sql);
  g_assert_true (stead_store_commit (store, &error));
  g_assert_no_error (error);
}

gint64
fixture_number (SteadStore *store,
                const char *sql)
{
  sqlite3_stmt *stmt = NULL;
  gint64 number;

  g_assert_cmpint (sqlite3_prepare_v2 (stead_store_get_db (store), sql, -1, &stmt, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_ROW);
  number = sqlite3_column_int64 (stmt, 0);
  sqlite3_finalize (stmt);
  return number;
}

static void
dump_table (GString    *text,
            sqlite3    *db,
            const char *table)
{
  g_autofree char *sql = g_strdup_printf ("SELECT * FROM %s ORDER BY 1, 2", table);
  sqlite3_stmt *stmt = NULL;

  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL), ==, SQLITE_OK);
  while (sqlite3_step (stmt) == SQLITE_ROW)
    {
      g_string_append (text, table);
      for (int i = 0; i < sqlite3_column_count (stmt); i++)
        {
          const char *value = (const char *) sqlite3_column_text (stmt, i);

          g_string_append_printf (text, "|%d:%s", sqlite3_column_type (stmt, i), value != NULL ? value : "");
        }
      g_string_append_c (text, '\n');
    }
  g_assert_cmpint (sqlite3_finalize (stmt), ==, SQLITE_OK);
}

char *
fixture_dump (SteadStore *store)
{
  GString *text = g_string_new (NULL);

  for (gsize i = 0; stead_schema_undo_tables[i] != NULL; i++)
    dump_table (text, stead_store_get_db (store), stead_schema_undo_tables[i]);
  return g_string_free (text, FALSE);
}

void
fixture_fill (SteadStore *store)
{
  fixture_act (store, "people",
               "INSERT INTO person (name, role) VALUES ('Ada', 'student'), ('Mr. Reed', 'advisor');"
               "INSERT INTO place (name, kind) VALUES ('Coop 1', 'coop');");
  fixture_act (store, "item",
               "INSERT INTO item (name, kind, unit) VALUES ('Layer feed', 'feed', 'kg'), ('Straw', 'bedding', 'kg');");
  fixture_act (store, "flock",
               "INSERT INTO batch (kind, name, place_id, started_on, feed_item_id, care_minutes_day)"
               " VALUES ('flock', 'Hens 1', 1, 20000, 1, 20);"
               "INSERT INTO flock (batch_id, species, strain, hatched_on, birds, birds_cost_cents, birds_are_gift, reared,"
               " salvage_cents, eggs_expected, level_frac, decline_week, steepness_week, half_week,"
               " onset_age_weeks)"
               " VALUES (1, 'hen', 'brown hybrid', 19860, 30, 45000, 0, 0, 6000, 300,"
               " 0.95, 0.004, 1.2, 22, 18);");
  fixture_act (store, "receipt",
               "INSERT INTO receipt (day, supplier, is_gift) VALUES (20000, 'Feed store', 0);"
               "INSERT INTO receipt_line (receipt_id, item_id, quantity_base, cost_cents) VALUES (1, 1, 22.5, 1899);"
               "INSERT INTO lot (code, item_id, receipt_line_id, day) VALUES ('F1', 1, 1, 20000);"
               "INSERT INTO movement (lot_id, day, kind, quantity_base, cost_cents)"
               " VALUES (1, 20000, 'received', 22.5, 1899);");
  fixture_act (store, "22 eggs",
               "INSERT INTO batch_entry (batch_id, day, eggs, cracked, feed_kg, person_id)"
               " VALUES (1, 20001, 22, 1, 3.3, 1);"
               "INSERT INTO movement (lot_id, day, kind, quantity_base, cost_cents, batch_id, entry_id)"
               " VALUES (1, 20001, 'used', -3.3, -279, 1, 1);");
  fixture_act (store, "price",
               "INSERT INTO product (name, pack, base_per_unit, batch_id, unsold_frac, pack_minutes, planned_units,"
               " target_cents) VALUES ('Eggs', 'dozen', 12, NULL, 0.05, 3, 20, 1000);"
               "INSERT INTO product_part VALUES (1, 2, 0.1);"
               "INSERT INTO price (product_id, from_day, cents) VALUES (1, 20001, 450);");
}

char *
fixture_folder (void)
{
  g_autoptr(GError) error = NULL;
  char *folder = g_dir_make_tmp ("stead-store-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

static void
remove_all (const char *path)
{
  g_autoptr(GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *inner = g_build_filename (path, name, NULL);

      remove_all (inner);
    }
  g_remove (path);
}

void
fixture_remove (char *folder)
{
  remove_all (folder);
  g_free (folder);
}

char *
fixture_sum (const char *path)
{
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  return g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *) bytes, length);
}
