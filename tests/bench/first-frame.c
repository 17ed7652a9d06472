/* first-frame.c - preloaded into a program: ends it when its window has painted
 * its first frame, and prints the milliseconds since the process was started.
 *
 * Nothing of this is in the program itself.
 */
#include <dlfcn.h>
#include <gtk/gtk.h>
#include <stdio.h>
#include <unistd.h>

/* Milliseconds since the kernel started this process (field 22 of its stat, in ticks). */
static double
age_ms (void)
{
  g_autofree char *stat = NULL, *uptime = NULL;
  g_auto(GStrv) fields = NULL;
  const char *after;
  double now, ticks = (double) sysconf (_SC_CLK_TCK);

  if (!g_file_get_contents ("/proc/self/stat", &stat, NULL, NULL)
      || !g_file_get_contents ("/proc/uptime", &uptime, NULL, NULL)
      || (after = strrchr (stat, ')')) == NULL)
    return -1;
  fields = g_strsplit (after + 2, " ", -1);
  now = g_ascii_strtod (uptime, NULL);
  return 1000 * (now - g_ascii_strtod (fields[19], NULL) / ticks);
}

static void
painted_cb (GdkFrameClock *clock,
            gpointer       data)
{
  printf ("first frame %.0f\n", age_ms ());
  fflush (stdout);
  _exit (0);
}

void gtk_window_present (GtkWindow *window);

void
gtk_window_present (GtkWindow *window)
{
  void (*real) (GtkWindow *) = (void (*) (GtkWindow *)) dlsym (RTLD_NEXT, "gtk_window_present");

  real (window);
  g_signal_connect_after (gtk_widget_get_frame_clock (GTK_WIDGET (window)), "after-paint",
                          G_CALLBACK (painted_cb), NULL);
}
