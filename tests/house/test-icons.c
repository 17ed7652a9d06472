/* test-icons.c - the bundled icons are found by name, as the program finds them. */
#include "config.h"

#include <gtk/gtk.h>

#define ICONS "/farm/steading/Steading/icons"

/* A theme that knows only the resources: what is installed must not help. */
static GtkIconTheme *
bundled_theme (void)
{
  static const char *const paths[] = { ICONS, NULL };
  static const char *const no_paths[] = { NULL };
  GtkIconTheme *theme = gtk_icon_theme_new ();

  gtk_icon_theme_set_search_path (theme, no_paths);
  gtk_icon_theme_set_resource_path (theme, paths);
  return theme;
}

static void
assert_folder_found (const char *folder,
                     guint       at_least)
{
  g_autoptr(GtkIconTheme) theme = bundled_theme ();
  g_autoptr(GError) error = NULL;
  g_auto(GStrv) files = g_resources_enumerate_children (folder, G_RESOURCE_LOOKUP_FLAGS_NONE,
                                                        &error);

  g_assert_no_error (error);
  g_assert_cmpuint (g_strv_length (files), >=, at_least);
  for (guint i = 0; files[i] != NULL; i++)
    {
      g_autofree char *name = g_strndup (files[i], strlen (files[i]) - strlen (".svg"));

      g_assert_true (g_str_has_suffix (files[i], ".svg"));
      g_test_message ("%s", name);
      g_assert_true (gtk_icon_theme_has_icon (theme, name));
    }
}

static void
test_actions (void)
{
  assert_folder_found (ICONS "/scalable/actions", 25);
}

static void
test_application (void)
{
  assert_folder_found (ICONS "/scalable/apps", 2);
}

static void
test_unknown (void)
{
  g_autoptr(GtkIconTheme) theme = bundled_theme ();

  g_assert_false (gtk_icon_theme_has_icon (theme, "stead-no-such-icon-symbolic"));
}

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/house/icons/actions-found", test_actions);
  g_test_add_func ("/house/icons/application-found", test_application);
  g_test_add_func ("/house/icons/unknown-not-found", test_unknown);
  return g_test_run ();
}
