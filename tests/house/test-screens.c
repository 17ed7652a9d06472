/* test-screens.c - each file of ui/ builds the widget that it describes.
 *
 * A plain validator knows neither our own types nor our callbacks, so it refuses
 * every screen of ours.  This makes each of them for real: a wrong property, a
 * missing callback or an unknown child is a critical message, and that is fatal.
 * Built with its symbols exported, so that GtkBuilder finds the types by name.
 */
#include "config.h"

#include <gtk/gtk.h>

#include "app/stead-desk.h"
#include "app/stead-ui.h"

#define SCREENS "/farm/steading/Steading/ui/"

/* The class that a file's <template> describes, or NULL. */
static char *
template_class (const char *resource)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GBytes) bytes = g_resources_lookup_data (resource, G_RESOURCE_LOOKUP_FLAGS_NONE, &error);
  g_autoptr(GRegex) regex = g_regex_new ("<template[^>]*\\sclass=\"(\\w+)\"", 0, 0, NULL);
  g_autoptr(GMatchInfo) match = NULL;
  gsize length;
  const char *text;

  g_assert_no_error (error);
  text = g_bytes_get_data (bytes, &length);
  g_regex_match_full (regex, text, (gssize) length, 0, 0, &match, NULL);
  return g_match_info_matches (match) ? g_match_info_fetch (match, 1) : NULL;
}

/* One widget of @type, with an empty desk if it wants one. */
static GtkWidget *
make_widget (GType type)
{
  g_autoptr(GTypeClass) klass = g_type_class_ref (type);
  g_autoptr(SteadDesk) desk = stead_desk_new ();

  if (g_object_class_find_property (G_OBJECT_CLASS (klass), "desk") != NULL)
    return g_object_new (type, "desk", desk, NULL);
  return g_object_new (type, NULL);
}

static void
drop_widget (GtkWidget *widget)
{
  if (GTK_IS_WINDOW (widget))
    {
      g_object_ref (widget);
      gtk_window_destroy (GTK_WINDOW (widget));
    }
  else
    {
      g_object_ref_sink (widget);
    }
  g_assert_finalize_object (widget);
}

static void
test_screen (gconstpointer data)
{
  g_autofree char *name = template_class (data);
  g_autoptr(GtkBuilder) builder = gtk_builder_new ();
  GtkWidget *widget;
  GType type;

  if (name == NULL)
    {
      g_autoptr(GError) error = NULL;

      gtk_builder_add_from_resource (builder, data, &error);
      g_assert_no_error (error);
      return;
    }

  type = gtk_builder_get_type_from_name (builder, name);
  g_assert_true (g_type_is_a (type, GTK_TYPE_WIDGET));
  if (G_TYPE_IS_ABSTRACT (type))   /* made and seen through each of its kinds */
    return;
  widget = make_widget (type);
  g_assert_nonnull (gtk_widget_get_first_child (widget));
  drop_widget (widget);
}

/* A case for each .ui below @folder; the folders are walked to the leaves. */
static guint
add_screens (const char *folder)
{
  g_auto(GStrv) names = g_resources_enumerate_children (folder, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  guint added = 0;

  for (guint i = 0; names != NULL && names[i] != NULL; i++)
    {
      g_autofree char *path = g_strconcat (folder, names[i], NULL);

      if (g_str_has_suffix (path, "/"))
        {
          added += add_screens (path);
        }
      else if (g_str_has_suffix (path, ".ui"))
        {
          g_autofree char *test = g_strconcat ("/house/screens/", path + strlen (SCREENS), NULL);

          g_test_add_data_func_full (test, g_strdup (path), test_screen, g_free);
          added++;
        }
    }
  return added;
}

/* The finder and the builder can fail: a screen with a fault is told. */
static void
test_fault_is_told (void)
{
  static const char screen[] = "<interface><object class=\"GtkButton\">"
                               "<property name=\"no-such-property\">1</property>"
                               "</object></interface>";
  g_autoptr(GtkBuilder) builder = gtk_builder_new ();
  g_autoptr(GError) error = NULL;

  g_assert_false (gtk_builder_add_from_string (builder, screen, -1, &error));
  g_assert_error (error, GTK_BUILDER_ERROR, GTK_BUILDER_ERROR_INVALID_PROPERTY);
}

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  stead_ui_register ();
  g_assert_cmpuint (add_screens (SCREENS), >, 0);
  g_test_add_func ("/house/screens/fault-is-told", test_fault_is_told);
  return g_test_run ();
}
