/* bench-switch.c - from place to place, ten thousand times: how long a switch takes until
 * the new place is laid out, and whether memory grows with it.
 *
 * usage: bench-switch [SWITCHES]; the default is 10,000
 *
 * Fails if what is in use after the last round is more than after the first tenth by over
 * MOST_GROWTH bytes a switch.  A page is made once, so the rounds before are left out.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <malloc.h>
#include <stdlib.h>

#include "app-fixture.h"
#include "app/stead-window.h"
#include "store/stead-demo-farm.h"

#define PLACES 9
#define SWITCHES 10000
#define MOST_GROWTH 32.0

static int n_switches = SWITCHES;

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
switch_to (SteadWindow *window,
           int          place)
{
  gint64 start = g_get_monotonic_time ();

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.place", "i", place + 1));
  fixture_settle ();
  return (double) (g_get_monotonic_time () - start) / 1000;
}

static double
in_use (void)
{
  struct mallinfo2 info = mallinfo2 ();

  return (double) info.uordblks + (double) info.hblkhd;
}

static void
test_switches (void)
{
  g_autofree char *folder = g_dir_make_tmp ("stead-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "demo.steading", NULL);
  g_autofree double *times = g_new (double, n_switches);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_demo_farm_create (path, NULL, stead_day_new (2026, 3, 3), &error);
  SteadWindow *window = STEAD_WINDOW (stead_window_new (NULL));
  int warm = MAX (2 * PLACES, n_switches / 10 / PLACES * PLACES);
  double before = 0, growth;

  g_assert_no_error (error);
  g_clear_object (&store);
  gtk_window_present (GTK_WINDOW (window));
  fixture_settle ();
  stead_window_open (window, path);
  for (int i = 0; i < n_switches; i++)
    {
      if (i == warm)
        before = in_use ();
      times[i] = switch_to (window, i % PLACES);
    }
  growth = (in_use () - before) / (n_switches - warm);
  qsort (times + warm, (gsize) (n_switches - warm), sizeof *times, compare);
  g_test_message ("%d switches: median %.1f ms, 95th percentile %.1f ms, longest %.1f ms", n_switches,
                  times[warm + (n_switches - warm) / 2], times[warm + (n_switches - warm) * 95 / 100], times[n_switches - 1]);
  g_test_message ("in use: %.1f MB, %.1f bytes more a switch", in_use () / 1e6, growth);
  g_assert_cmpfloat (growth, <, n_switches < 1000 ? 100 * MOST_GROWTH : MOST_GROWTH);
  gtk_window_destroy (GTK_WINDOW (window));
  fixture_settle ();
  g_unlink (path);
  g_rmdir (folder);
}

int
main (int    argc,
      char **argv)
{
  if (argc == 2)
    {
      n_switches = MAX (4 * PLACES, atoi (argv[1]));
      argc = 1;
    }
  fixture_init (&argc, &argv);
  g_test_add_func ("/bench/switch/memory-stays", test_switches);
  return g_test_run ();
}
