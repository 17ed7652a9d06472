/* bench-packets.c - the packets of a whole class in one run.
 *
 * usage: bench-packets            150 students, 5,000 entries of hours; then 300 pictures besides
 *        bench-packets --short    a test: a fifth of all that, no limit of time
 *
 * Goals: a packet without pictures as PDF takes less than 100 ms; one more student costs no
 * more in a large class than in one of a tenth of it; and memory in use does not grow over a
 * run, with pictures or without.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <malloc.h>
#include <string.h>

#include "class-farm.h"
#include "paper/stead-packet-paper.h"

#define MOST_MS 100.0
#define MOST_RATIO 3.0
#define MOST_GROWTH_BYTES (256 * 1024)   /* what a hash or a pool may take more at once */
#define LEAST_PICTURE_BYTES 50000

typedef struct
{
  int    students, entries, pictures;
  double ms;       /* a packet */
  double longest;  /* ms; the first, which finds out what all of them need */
  gint64 growth;   /* bytes in use more at the end than after a fifth of the run */
  gint64 bytes;    /* of all packets */
} Class;

static double
now_ms (void)
{
  return (double) g_get_monotonic_time () / 1e3;
}

static gsize
in_use (void)
{
  struct mallinfo2 info = mallinfo2 ();

  return info.uordblks + info.hblkhd;
}

static gint64
count_bytes (const char *folder)
{
  g_autoptr(GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  gint64 bytes = 0;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      GStatBuf facts;

      g_assert_cmpint (g_stat (path, &facts), ==, 0);
      bytes += facts.st_size;
    }
  return bytes;
}

static void
time_run (SteadStore *store,
          const char *folder,
          Class      *class)
{
  g_autoptr(GError) error = NULL;
  SteadPacketRun *run = stead_packet_run_new (store, folder, &error);
  double start = now_ms (), begun = start;
  guint n = stead_packet_run_count (run);
  gsize early = 0;

  g_assert_no_error (error);
  g_assert_cmpuint (n, >=, (guint) class->students);
  for (guint i = 0; i < n; i++, begun = now_ms ())
    {
      g_assert_true (stead_packet_run_step (run, &error));
      class->longest = MAX (class->longest, now_ms () - begun);
      if (i == n / 5)
        early = in_use ();
    }
  class->growth = (gint64) in_use () - (gint64) early;
  class->ms = (now_ms () - start) / n;
  stead_packet_run_free (run);
}

static void
time_class (const char *folder,
            Class      *class)
{
  g_autofree char *path = g_build_filename (folder, "class.steading", NULL);
  g_autofree char *packets = g_build_filename (folder, "packets", NULL);
  g_autoptr(SteadStore) store = class_farm_new (path, class->students, class->entries, class->pictures);

  time_run (store, packets, class);
  class->bytes = count_bytes (packets);
  g_print ("# %d students, %d entries of hours, %d pictures: %.1f ms (%.1f the longest) and %.0f kB a packet, %+"
           G_GINT64_FORMAT " bytes over the run\n", class->students, class->entries, class->pictures, class->ms,
           class->longest, (double) class->bytes / 1e3 / class->students, class->growth);
  g_clear_object (&store);
  class_farm_remove_folder (packets);
  g_remove (path);
}

static gboolean
tell (const char *name,
      gboolean    holds)
{
  static int count;

  g_print ("%sok %d /bench/packets/%s\n", holds ? "" : "not ", ++count, name);
  return holds;
}

int
main (int    argc,
      char **argv)
{
  gboolean is_short = argc > 1 && strcmp (argv[1], "--short") == 0;
  int students = is_short ? 30 : 150, entries = is_short ? 1000 : 5000;
  g_autofree char *folder = g_dir_make_tmp ("bench-packets-XXXXXX", NULL);
  Class small = { .students = students / 10, .entries = entries / 10 };
  Class large = { .students = students, .entries = entries };
  Class seen = { .students = students, .entries = entries, .pictures = 2 * students };
  gboolean holds;

  time_class (folder, &small);
  time_class (folder, &large);
  time_class (folder, &seen);
  class_farm_remove_folder (folder);
  g_print ("# ratio of large to small class: %.2f\n1..5\n", large.ms / small.ms);
  holds = tell ("even", large.ms / small.ms <= MOST_RATIO);
  holds &= tell ("flat", large.growth <= MOST_GROWTH_BYTES);
  holds &= tell ("flat-with-pictures", seen.growth <= MOST_GROWTH_BYTES);
  holds &= tell ("pictures-are-in", seen.bytes - large.bytes >= (gint64) seen.pictures * LEAST_PICTURE_BYTES);
  holds &= tell ("fast", is_short || large.ms <= MOST_MS);
  return holds ? 0 : 1;
}
