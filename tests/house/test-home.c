/* test-home.c - the program finds its own files, and Spanish, without being installed. */
#include "config.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "stead-home.h"

/* A folder with data/gschemas.compiled in it, if @is_build. */
static char *
make_folder (gboolean is_build)
{
  g_autofree char *folder = g_dir_make_tmp ("stead-home-XXXXXX", NULL);
  g_autofree char *data = g_build_filename (folder, "data", NULL);
  g_autofree char *schema = g_build_filename (data, "gschemas.compiled", NULL);

  g_assert_nonnull (folder);
  g_assert_cmpint (g_mkdir (data, 0700), ==, 0);
  if (is_build)
    g_assert_true (g_file_set_contents (schema, "x", 1, NULL));
  return g_steal_pointer (&folder);
}

static void
remove_folder (const char *folder)
{
  g_autofree char *data = g_build_filename (folder, "data", NULL);
  g_autofree char *schema = g_build_filename (data, "gschemas.compiled", NULL);

  g_unlink (schema);
  g_assert_cmpint (g_rmdir (data), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

static void
test_build_folder (void)
{
  g_autofree char *folder = make_folder (TRUE);
  g_autofree char *program = g_build_filename (folder, "src", "steading", NULL);
  g_autofree char *found = stead_home_build_folder (program);

  g_assert_cmpstr (found, ==, folder);
  remove_folder (folder);
}

static void
test_installed (void)
{
  g_autofree char *folder = make_folder (FALSE);
  g_autofree char *program = g_build_filename (folder, "bin", "steading", NULL);
  g_autofree char *found = stead_home_build_folder (program);

  g_assert_null (found);
  remove_folder (folder);
}

/* Runs in a process of its own, since gettext reads its environment once. */
static void
test_spanish (void)
{
  if (g_test_subprocess ())
    {
      g_setenv ("LANGUAGE", "es", TRUE);
      stead_home_init ();
      g_print ("%s", _("School farm planner"));
      return;
    }
  g_test_trap_subprocess (NULL, 0, 0);
  g_test_trap_assert_passed ();
  g_test_trap_assert_stdout ("*Planificador de granja escolar*");
}

static void
test_settings (void)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr(GSettingsSchema) schema = NULL;
  g_autoptr(GSettings) settings = NULL;

  g_assert_nonnull (source);
  schema = g_settings_schema_source_lookup (source, STEAD_APP_ID, TRUE);
  g_assert_nonnull (schema);
  settings = g_settings_new (STEAD_APP_ID);
  g_assert_cmpint (g_settings_get_enum (settings, "color-scheme"), ==, 0);
  g_assert_true (g_settings_set_string (settings, "color-scheme", "dark"));
  g_assert_cmpint (g_settings_get_enum (settings, "color-scheme"), ==, 2);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/house/home/build-folder", test_build_folder);
  g_test_add_func ("/house/home/installed", test_installed);
  g_test_add_func ("/house/home/spanish", test_spanish);
  g_test_add_func ("/house/home/settings", test_settings);
  return g_test_run ();
}
