/* bench-class-run.c - how long the window is deaf while the packets of a class are made.
 *
 * usage: bench-class-run [STUDENTS]; the default is 150, with two pictures each
 *
 * Packets are made between frames.  A clock that ticks as often as the screen would is
 * looked at: what lies between two ticks is how long a click may have to wait.  It is told
 * beside what one packet takes in the same run, which it should not exceed by much.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <stdlib.h>

#include "app-fixture.h"
#include "app/show/stead-packets-pane.h"
#include "app/stead-window.h"
#include "class-farm.h"

#define STUDENTS 150
#define TICK_MS 5

/* A packet or two between two ticks, and a frame. */
#define MOST_RATIO 4.0

static int n_students = STUDENTS;

typedef struct
{
  gint64  last;    /* µs */
  GArray *gaps;    /* of double, ms */
} Clock;

static gboolean
tick_cb (gpointer data)
{
  Clock *clock = data;
  gint64 now = g_get_monotonic_time ();
  double gap = (double) (now - clock->last) / 1e3;

  if (clock->last != 0)
    g_array_append_val (clock->gaps, gap);
  clock->last = now;
  return G_SOURCE_CONTINUE;
}

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static void
tell (GArray *gaps,
      double  packet_ms)
{
  const double *ms = (const double *) (gpointer) gaps->data;

  g_array_sort (gaps, compare);
  g_test_message ("%d students: a packet each %.1f ms; a click waits for %.1f ms in the middle, 95th percentile %.1f ms, "
                  "%.1f ms at the longest: %.1f packets", n_students, packet_ms, ms[gaps->len / 2],
                  ms[gaps->len * 95 / 100], ms[gaps->len - 1], ms[gaps->len - 1] / packet_ms);
  g_assert_cmpfloat (ms[gaps->len * 95 / 100], <, MOST_RATIO * packet_ms);
}

/* Returns: ms */
static double
run_class (SteadPacketsPane *pane,
           const char       *folder)
{
  gint64 start = g_get_monotonic_time ();

  stead_packets_pane_run (pane, folder);
  g_assert_true (stead_packets_pane_is_running (pane));
  while (stead_packets_pane_is_running (pane))
    g_main_context_iteration (NULL, TRUE);
  return (double) (g_get_monotonic_time () - start) / 1e3;
}

static void
test_run (void)
{
  g_autofree char *folder = g_dir_make_tmp ("stead-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "class.steading", NULL);
  g_autofree char *packets = g_build_filename (folder, "packets", NULL);
  g_autoptr(SteadStore) store = class_farm_new (path, n_students, 33 * n_students, 2 * n_students);
  Clock clock = { 0, g_array_new (FALSE, FALSE, sizeof (double)) };
  SteadWindow *window = STEAD_WINDOW (stead_window_new (NULL));
  GtkWidget *pane;
  double ms;
  guint source;

  gtk_window_present (GTK_WINDOW (window));
  stead_window_take (window, store);
  stead_desk_jump (stead_window_get_desk (window), STEAD_TARGET_PACKET, 0);
  fixture_settle ();
  pane = fixture_find (GTK_WIDGET (window), STEAD_TYPE_PACKETS_PANE, 0);
  g_assert_nonnull (pane);
  source = g_timeout_add_full (G_PRIORITY_HIGH, TICK_MS, tick_cb, &clock, NULL);
  ms = run_class (STEAD_PACKETS_PANE (pane), packets);
  g_source_remove (source);
  tell (clock.gaps, ms / n_students);
  g_array_unref (clock.gaps);
  gtk_window_destroy (GTK_WINDOW (window));
  fixture_settle ();
  g_clear_object (&store);
  class_farm_remove_folder (packets);
  class_farm_remove_folder (folder);
}

int
main (int    argc,
      char **argv)
{
  if (argc == 2)
    {
      n_students = MAX (5, atoi (argv[1]));
      argc = 1;
    }
  fixture_init (&argc, &argv);
  g_test_add_func ("/bench/class-run/window-answers", test_run);
  return g_test_run ();
}
