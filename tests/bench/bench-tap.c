/* bench-tap.c - a tap on the tally in the window, until the frame with it is painted.
 *
 * usage: bench-tap [TAPS]; the default is 200
 *
 * On the demo farm: the tap is written and durable, the page reads its answers anew, the
 * frame with it is painted; what the posts say comes after.  The time by the clock has the
 * disk and the wait for the frame clock in it, which paints sixty times a second; the
 * processor's share does not hang on what else the machine does.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <stdlib.h>
#include <time.h>

#include "app-fixture.h"
#include "app/sell/stead-tally-parts.h"
#include "app/sell/stead-tally-view.h"
#include "app/stead-window.h"
#include "store/stead-demo-farm.h"
#include "store/stead-product-repo.h"
#include "store/stead-sale-repo.h"

#define TAPS 200
#define WARM 5

static int n_taps = TAPS;

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
work_ms (void)
{
  struct timespec used;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &used);
  return (double) used.tv_sec * 1e3 + (double) used.tv_nsec / 1e6;
}

/* A sale of today with every product of the farm; @out_line gets the line of the first. */
static gint64
make_sale (SteadStore *store,
           gint64     *out_line)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, FALSE, &error);
  g_autoptr(SteadSale) sale = stead_sale_new ();

  g_assert_no_error (error);
  sale->name = g_strdup ("Market");
  sale->day = stead_store_get_today (store);
  sale->closes_min = 600;
  for (guint i = 0; i < products->len; i++)
    {
      SteadSaleGood *good = stead_sale_good_new ();

      good->product_id = ((const SteadProduct *) products->pdata[i])->id;
      good->price_cents = 450;
      good->planned = 1000;
      g_ptr_array_add (sale->goods, good);
    }
  g_assert_true (stead_store_begin (store, "plan", &error) && stead_sale_repo_save (store, sale, NULL, &error)
                 && stead_store_commit (store, &error));
  g_assert_no_error (error);
  *out_line = ((const SteadSaleGood *) sale->goods->pdata[0])->id;
  return sale->id;
}

static void
tell (const char *name,
      double     *ms)
{
  qsort (ms, (gsize) n_taps, sizeof *ms, compare);
  g_test_message ("%s: median %.1f ms, 95th percentile %.1f ms, longest %.1f ms", name, ms[n_taps / 2],
                  ms[MIN (n_taps - 1, n_taps * 95 / 100)], ms[n_taps - 1]);
}

static void
tap_often (SteadWindow *window,
           GtkWidget   *tally,
           gint64       line_id)
{
  g_autofree double *ms = g_new (double, n_taps);
  g_autofree double *work = g_new (double, n_taps);

  for (int i = -WARM; i < n_taps; i++)
    {
      gint64 start = g_get_monotonic_time ();
      double worked = work_ms ();

      g_assert_true (gtk_widget_activate_action (tally, STEAD_TALLY_SOLD, "x", line_id));
      fixture_wait_frame (GTK_WIDGET (window));
      if (i >= 0)
        {
          ms[i] = (double) (g_get_monotonic_time () - start) / 1000;
          work[i] = work_ms () - worked;
        }
      fixture_settle ();
    }
  tell ("a tap on screen", ms);
  tell ("of the processor", work);
}

static void
test_taps (void)
{
  g_autofree char *folder = g_dir_make_tmp ("stead-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "demo.steading", NULL);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_demo_farm_create (path, NULL, stead_day_new (2026, 3, 3), &error);
  SteadWindow *window = STEAD_WINDOW (stead_window_new (NULL));
  gint64 sale, line_id;
  GtkWidget *tally;

  g_assert_no_error (error);
  gtk_window_present (GTK_WINDOW (window));
  sale = make_sale (store, &line_id);
  stead_window_take (window, store);
  stead_desk_jump (stead_window_get_desk (window), STEAD_TARGET_SALE, sale);
  fixture_settle ();
  tally = fixture_find (GTK_WIDGET (window), STEAD_TYPE_TALLY_VIEW, 0);
  g_assert_nonnull (tally);
  g_assert_true (gtk_widget_get_mapped (tally));
  tap_often (window, tally, line_id);
  gtk_window_destroy (GTK_WINDOW (window));
  fixture_settle ();
  g_clear_object (&store);
  g_unlink (path);
  g_rmdir (folder);
}

int
main (int    argc,
      char **argv)
{
  if (argc == 2)
    {
      n_taps = MAX (1, atoi (argv[1]));
      argc = 1;
    }
  fixture_init (&argc, &argv);
  g_test_add_func ("/bench/tap/on-screen", test_taps);
  return g_test_run ();
}
