/* bench-switch.c - from place to place, ten thousand times: how long a switch takes until
 * the first frame of the new place is painted, and whether memory grows with it.
 *
 * usage: bench-switch [SWITCHES]; the default is 10,000
 *
 * The time goes from the action of a post's key to the end of the frame, with the wait for
 * the frame clock in it, which paints sixty times a second.  The processor's share of it
 * does not hang on what else the machine does.  A page is made once, when it is first
 * shown: those times stand apart.
 *
 * Fails if what is in use after the last round is more than after the first tenth by over
 * MOST_GROWTH bytes a switch.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <malloc.h>
#include <stdlib.h>
#include <time.h>

#include "app-fixture.h"
#include "app/stead-window.h"
#include "store/stead-demo-farm.h"

#define PLACES 9
#define SWITCHES 10000
#define MOST_GROWTH 32.0

/* A switch, by the clock and by the processor. */
typedef struct
{
  double ms;
  double work_ms;
} Took;

static int n_switches = SWITCHES;

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

static void
switch_to (SteadWindow *window,
           int          place,
           Took        *took)
{
  gint64 start = g_get_monotonic_time ();
  double worked = work_ms ();

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.place", "i", place + 1));
  fixture_wait_frame (GTK_WIDGET (window));
  took->ms = (double) (g_get_monotonic_time () - start) / 1000;
  took->work_ms = work_ms () - worked;
  fixture_settle ();
}

/* Of the @n switches to one place, or to all. */
static void
tell (const char *name,
      const Took *took,
      int         n)
{
  g_autofree double *ms = g_new (double, n);
  g_autofree double *work = g_new (double, n);
  int most = MIN (n - 1, n * 95 / 100);

  for (int i = 0; i < n; i++)
    {
      ms[i] = took[i].ms;
      work[i] = took[i].work_ms;
    }
  qsort (ms, (gsize) n, sizeof *ms, compare);
  qsort (work, (gsize) n, sizeof *work, compare);
  g_test_message ("%-6s median %5.1f ms, 95th percentile %5.1f ms, longest %6.1f ms; of the processor %5.1f, %5.1f, %6.1f ms",
                  name, ms[n / 2], ms[most], ms[n - 1], work[n / 2], work[most], work[n - 1]);
}

/* @took go round the places. */
static void
tell_places (const Took *took,
             int         n)
{
  static const char * const names[PLACES] = { "Today", "Raise", "Make", "Check", "Price", "Sell", "Fund", "Keep", "Show" };

  for (int place = 0; place < PLACES; place++)
    {
      g_autoptr(GArray) own = g_array_new (FALSE, FALSE, sizeof (Took));

      for (int i = place; i < n; i += PLACES)
        g_array_append_vals (own, &took[i], 1);
      tell (names[place], (const Took *) (void *) own->data, (int) own->len);
    }
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
  g_autofree Took *took = g_new (Took, n_switches);
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
      switch_to (window, i % PLACES, &took[i]);
    }
  growth = (in_use () - before) / (n_switches - warm);
  tell ("first", took, PLACES);
  tell_places (took + warm, n_switches - warm);
  tell ("all", took + warm, n_switches - warm);
  g_test_message ("%d switches; in use: %.1f MB, %.1f bytes more a switch", n_switches, in_use () / 1e6, growth);
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
