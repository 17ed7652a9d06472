/* test-unread.c - no paper is made of half a farm, and none of nothing.
 *
 * Whatever statement fails on the way to a document, there is a message and no file.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <sqlite3.h>

#include "demo.h"
#include "farm.h"
#include "paper/stead-packet-paper.h"
#include "paper/stead-paper.h"
#include "stumble.h"

/* In the order of SteadFormat. */
static const char * const endings[] = { "pdf", "png", "svg", "csv", "xlsx", "ics" };

static gboolean
write_once (SteadStore            *store,
            const SteadPaperKind  *kind,
            const char            *folder,
            gsize                  ending,
            GError               **error)
{
  g_autofree char *file = g_strconcat (kind->name, ".", endings[ending], NULL);
  g_autofree char *path = g_build_filename (folder, file, NULL);
  gboolean written = stead_paper_write (store, kind->name, NULL, NULL, path, error);

  g_assert_true (written == g_file_test (path, G_FILE_TEST_EXISTS));
  g_remove (path);
  return written;
}

static guint
stumble_all (Demo                  *demo,
             const SteadPaperKind  *kind,
             gsize                  ending)
{
  for (guint n = 0;; n++)
    {
      g_autoptr(GError) error = NULL;
      gboolean written;

      stumble_arm (SQLITE_IOERR);
      written = write_once (demo->store, kind, demo->folder, ending, &error);
      if (stumble_check (kind->name, written, error))
        continue;
      g_assert_no_error (error);   /* the demo farm has something for every paper */
      return n;
    }
}

static void
test_no_paper_of_half_a_farm (Demo          *demo,
                              gconstpointer  data)
{
  gsize n_kinds;
  const SteadPaperKind *kinds = stead_paper_list (&n_kinds);
  guint n = 0;

  for (gsize i = 0; i < n_kinds; i++)
    for (gsize e = 0; e < G_N_ELEMENTS (endings); e++)
      if ((kinds[i].formats & 1 << e) != 0)
        {
          gint64 start = g_get_monotonic_time ();
          guint found = stumble_all (demo, &kinds[i], e);

          g_test_message ("%s.%s: %u places, %.1f s", kinds[i].name, endings[e], found,
                          1e-6 * (double) (g_get_monotonic_time () - start));
          n += found;
        }
  g_assert_cmpuint (n, >, 200);
}

/* On its first day a farm has nothing: a paper says so, or what to enter first. */
static void
test_first_day (Demo          *demo,
                gconstpointer  data)
{
  g_autoptr(SteadStore) store = stead_store_create_memory ("First day", NULL);
  gsize n_kinds;
  const SteadPaperKind *kinds = stead_paper_list (&n_kinds);

  stead_store_set_today (store, DEMO_TODAY);
  for (gsize i = 0; i < n_kinds; i++)
    for (gsize e = 0; e < G_N_ELEMENTS (endings); e++)
      {
        g_autoptr(GError) error = NULL;

        if (!write_once (store, &kinds[i], demo->folder, e, &error))
          g_assert_true (error != NULL && g_utf8_strlen (error->message, -1) > 10);
        else
          g_assert_true ((kinds[i].formats & 1 << e) != 0);
      }
}

/* A file for each packet and each student who has none, each for the owner's eyes only. */
static void
test_packets_of_a_class (Demo          *demo,
                         gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *folder = g_build_filename (demo->folder, "packets", NULL);
  g_autoptr(SteadPacketRun) run = stead_packet_run_new (demo->store, folder, &error);
  g_autoptr(SteadStore) empty = stead_store_create_memory ("Nobody", NULL);
  GDir *made;
  const char *name;
  guint n = 0;

  g_assert_no_error (error);
  g_assert_cmpuint (stead_packet_run_count (run), >, 3);
  while (stead_packet_run_done (run) < stead_packet_run_count (run))
    {
      g_assert_true (stead_packet_run_step (run, &error));
      g_assert_no_error (error);
    }
  made = g_dir_open (folder, 0, &error);
  g_assert_no_error (error);
  while ((name = g_dir_read_name (made)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      GStatBuf facts;

      g_assert_true (g_str_has_suffix (name, ".pdf"));
      g_assert_cmpint (g_stat (path, &facts), ==, 0);
      g_assert_cmpint (facts.st_mode & 0077, ==, 0);
      g_assert_cmpint (facts.st_size, >, 1000);
      g_remove (path);
      n++;
    }
  g_dir_close (made);
  g_rmdir (folder);
  g_assert_cmpuint (n, ==, stead_packet_run_count (run));
  g_assert_null (stead_packet_run_new (empty, folder, &error));
  g_assert_nonnull (error);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add ("/paper/unread/no-paper-of-half-a-farm", Demo, NULL, demo_set_up, test_no_paper_of_half_a_farm,
              demo_tear_down);
  g_test_add ("/paper/unread/first-day", Demo, NULL, demo_set_up, test_first_day, demo_tear_down);
  g_test_add ("/paper/unread/packets-of-a-class", Demo, NULL, demo_set_up, test_packets_of_a_class, demo_tear_down);
  return g_test_run ();
}
