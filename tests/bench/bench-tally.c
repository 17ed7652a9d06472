/* bench-tally.c - a tap on the tally until it is durable on disk, against a plain write of one row.
 *
 * usage: bench-tally            400 taps of a sale day
 *        bench-tally --short    a test: 40 taps, no limit of time
 *
 * Goal: a tap is durable within 20 ms at the 99th percentile.  The plain write is one row
 * in a transaction of its own, on the same disk, with the same care for a power cut; how
 * long that takes is the disk's, so where the disk alone is slower than the goal, a tap
 * may take twice as long as it.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "store/stead-sale-tally.h"

#define TODAY (stead_day_new (2026, 3, 3))

static double
now_ms (void)
{
  return (double) g_get_monotonic_time () / 1e3;
}

static int
by_value (const void *a,
          const void *b)
{
  double one = *(const double *) a, two = *(const double *) b;

  return one < two ? -1 : one > two;
}

static double
quantile (double *values,
          int     n,
          double  share)
{
  qsort (values, (gsize) n, sizeof *values, by_value);
  return values[MIN (n - 1, (int) (share * n))];
}

/* A product and a sale day of today; returns the line. */
static gint64
make_sale (SteadStore *store)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadProduct) product = stead_product_new ();
  g_autoptr(SteadSale) sale = stead_sale_new ();
  SteadSaleGood *good = stead_sale_good_new ();

  stead_store_set_today (store, TODAY);
  product->name = g_strdup ("Eggs");
  g_assert_true (stead_store_begin (store, "plan", &error) && stead_product_repo_save (store, product, &error));
  sale->name = g_strdup ("Market");
  sale->day = TODAY;
  sale->closes_min = 600;
  good->product_id = product->id;
  good->price_cents = 450;
  good->planned = 1000;
  g_ptr_array_add (sale->goods, good);
  g_assert_true (stead_sale_repo_save (store, sale, NULL, &error) && stead_store_commit (store, &error));
  return good->id;
}

static void
run (sqlite3    *db,
     const char *sql)
{
  if (sqlite3_exec (db, sql, NULL, NULL, NULL) != SQLITE_OK)
    g_error ("%s", sqlite3_errmsg (db));
}

static sqlite3 *
make_plain (const char *path)
{
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  run (db, "PRAGMA journal_mode = DELETE; PRAGMA synchronous = EXTRA; CREATE TABLE t (id INTEGER PRIMARY KEY, at INTEGER)");
  return db;
}

int
main (int    argc,
      char **argv)
{
  gboolean is_short = argc > 1 && strcmp (argv[1], "--short") == 0;
  int n = is_short ? 40 : 400;
  g_autofree double *ours = g_new (double, n);
  g_autofree double *plain = g_new (double, n);
  g_autofree char *folder = g_dir_make_tmp ("stead-bench-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "a.steading", NULL);
  g_autofree char *plain_path = g_build_filename (folder, "plain.db", NULL);
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_create (path, "Bench", &error);
  sqlite3 *db = make_plain (plain_path);
  gint64 line_id = make_sale (store);
  double slow, slow_plain, usual, usual_plain;

  for (int i = 0; i < n; i++)
    {
      double before = now_ms ();

      g_assert_true (stead_store_begin (store, "tap", &error) &&
                     stead_sale_tally_add (store, line_id, STEAD_TAP_SOLD, 1, i, NULL, &error) &&
                     stead_store_commit (store, &error));
      ours[i] = now_ms () - before;
      before = now_ms ();
      run (db, "BEGIN IMMEDIATE; INSERT INTO t (at) VALUES (1); COMMIT");
      plain[i] = now_ms () - before;
    }
  usual = quantile (ours, n, 0.5);
  usual_plain = quantile (plain, n, 0.5);
  slow = quantile (ours, n, 0.99);
  slow_plain = quantile (plain, n, 0.99);
  printf ("1..1\n");
  printf ("# a tap durable in %.2f ms (99 of 100: %.2f ms); a plain row in %.2f ms (%.2f ms); ratio %.1f\n",
          usual, slow, usual_plain, slow_plain, usual / MAX (usual_plain, 1e-3));
  printf ("%s - a tap is durable, %.1f ms\n", is_short || slow < MAX (20, 2 * slow_plain) ? "ok" : "not ok", slow);
  g_object_unref (store);
  sqlite3_close (db);
  {
    g_autofree char *rm = g_strdup_printf ("rm -r '%s'", folder);

    return system (rm) != 0;
  }
}
