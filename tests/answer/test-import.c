/* test-import.c */
#include "farm.h"

#include "answer/stead-import-answer.h"

#include <locale.h>

static void
test_speed (Farm *farm, gconstpointer data)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = NULL;
  int fd = g_file_open_tmp ("stead-XXXXXX.csv", &path, &error);
  g_autoptr(GString) text = g_string_new ("Date,Eggs,Cracked,Feed (lb),Deaths,Notes\n");
  g_autoptr(SteadImport) import = NULL;
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, NULL);
  gint64 t;
  close (fd);
  flock->birds = 100000; 
  flock->housed_on = stead_day_new (1990,1,1);
  flock->hatched_on = flock->housed_on - 210;
  FARM_DO (farm, stead_flock_repo_save (farm->store, flock, &farm_error));
  for (int i = 0; i < 100000; i++)
    {
      g_autofree char *day = stead_day_format (flock->housed_on + i / 8, STEAD_DAY_STYLE_ISO);
      g_string_append_printf (text, "%s,%d,%d,%d.%d,0,\n", day, 20 + i % 8, i % 3, 5 + i % 3, i % 10);
    }
  g_file_set_contents (path, text->str, -1, NULL);
  t = g_get_monotonic_time ();
  import = stead_import_read (farm->store, STEAD_IMPORT_FLOCK_LOG, farm->flock, path, STEAD_DATE_ORDER_UNKNOWN, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  g_test_message ("read %g s: %s %s", (double) (g_get_monotonic_time () - t) / 1e6, stead_import_get_sentence (import), stead_import_get_reading (import));
  for (guint i = 0; i < stead_import_get_n_rows (import); i++)
    if (stead_import_get_row (import, i)->state != STEAD_ROW_TAKE)
      {
        g_test_message ("%u %s", stead_import_get_row (import, i)->line, stead_import_get_row (import, i)->message);
        break;
      }
  t = g_get_monotonic_time ();
  g_assert_true (stead_import_take (import, farm->store, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  g_test_message ("take %g s", (double) (g_get_monotonic_time () - t) / 1e6);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/answer/import/speed", Farm, NULL, farm_set_up, test_speed, farm_tear_down);
  return g_test_run ();
}
