/* test-guide.c - the pages of the help: all there, in each language, and true about the places. */
#include "config.h"

#include <locale.h>
#include <glib/gi18n-lib.h>
#include <gio/gio.h>

#include "answer/stead-guide.h"

static SteadGuidePage *
read_page (const char *name)
{
  SteadGuidePage *page = stead_guide_read (name);

  if (page == NULL)
    g_error ("there is no page “%s”", name);
  return page;
}

/* A page about a place bears the name of its post. */
static void
test_titles (void)
{
  static const struct { const char *name; const char *post; } places[] = {
    { "today", NC_("place", "Today") }, { "raise", NC_("place", "Raise") }, { "make", NC_("place", "Make") },
    { "check", NC_("place", "Check") }, { "price", NC_("place", "Price") }, { "sell", NC_("place", "Sell") },
    { "fund", NC_("place", "Fund") }, { "keep", NC_("place", "Keep") }, { "show", NC_("place", "Show") },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    {
      g_autoptr(SteadGuidePage) page = read_page (places[i].name);

      g_assert_cmpstr (page->title, ==, g_dpgettext2 (GETTEXT_PACKAGE, "place", places[i].post));
    }
}

static void
check_links (const char *markup)
{
  g_autoptr(GRegex) regex = g_regex_new ("<a href=\"([^\"]*)\">", 0, 0, NULL);
  g_autoptr(GMatchInfo) match = NULL;

  for (g_regex_match (regex, markup, 0, &match); g_match_info_matches (match); g_match_info_next (match, NULL))
    {
      g_autofree char *name = g_match_info_fetch (match, 1);

      g_assert_true (g_strv_contains (stead_guide_get_names (), name));
    }
}

static void
check_picture (const SteadGuideBlock *block)
{
  g_autofree char *path = stead_guide_picture_path (block->other);
  g_autoptr(GBytes) bytes = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  const guint8 *data;
  gsize size;

  g_assert_nonnull (bytes);
  data = g_bytes_get_data (bytes, &size);
  g_assert_cmpmem (data, 4, "\x89PNG", 4);
  g_assert_cmpuint (size, <, 60000);            /* the program carries them all */
  g_assert_cmpuint (data[25], ==, 3);           /* of at most 256 colors: PNG (2003), 11.2.2 */
  g_assert_cmpint (g_utf8_strlen (block->markup, -1), >, 20);
}

static void
test_pages (void)
{
  for (const char * const *name = stead_guide_get_names (); *name != NULL; name++)
    {
      g_autoptr(SteadGuidePage) page = read_page (*name);

      g_assert_cmpuint (page->blocks->len, >, 4);
      for (guint i = 0; i < page->blocks->len; i++)
        {
          const SteadGuideBlock *block = page->blocks->pdata[i];

          check_links (block->markup);
          if (block->kind == STEAD_GUIDE_PICTURE)
            check_picture (block);
          else if (block->other != NULL)
            check_links (block->other);
        }
    }
}

static char *
shape_of (const char *language,
          const char *name)
{
  g_autofree char *path = g_strdup_printf ("/farm/steading/Steading/help/%s/%s.md", language, name);
  g_autoptr(GBytes) bytes = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  g_autofree char *text = NULL;
  g_autoptr(SteadGuidePage) page = NULL;
  g_autoptr(GString) shape = g_string_new (NULL);

  g_assert_nonnull (bytes);
  text = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  page = stead_guide_page_parse (text, NULL);
  g_assert_nonnull (page);
  for (guint i = 0; i < page->blocks->len; i++)
    {
      const SteadGuideBlock *block = page->blocks->pdata[i];

      g_string_append_printf (shape, " %d", block->kind);
      if (block->kind == STEAD_GUIDE_PICTURE)
        g_string_append (shape, block->other);
    }
  return g_string_free (g_steal_pointer (&shape), FALSE);
}

/* Both languages say the same: block by block they are of one kind. */
static void
test_languages (void)
{
  for (const char * const *name = stead_guide_get_names (); *name != NULL; name++)
    {
      g_autofree char *english = shape_of ("en", *name);
      g_autofree char *spanish = shape_of ("es", *name);

      g_test_message ("%s", *name);
      g_assert_cmpstr (english, ==, spanish);
    }
}

/* Every text in the folder is shown. */
static void
test_none_is_forgotten (void)
{
  g_auto(GStrv) files = g_resources_enumerate_children ("/farm/steading/Steading/help/en/",
                                                        G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  guint n = 0;

  for (gsize i = 0; files[i] != NULL; i++)
    n += g_str_has_suffix (files[i], ".md");
  g_assert_cmpuint (n, ==, g_strv_length ((char **) stead_guide_get_names ()));
  g_assert_null (stead_guide_read ("no such page"));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  bindtextdomain (GETTEXT_PACKAGE, g_getenv ("STEAD_LOCALE_DIR"));
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  setlocale (LC_ALL, "");
  g_test_add_func ("/answer/guide/places-by-their-posts", test_titles);
  g_test_add_func ("/answer/guide/pages", test_pages);
  g_test_add_func ("/answer/guide/languages-say-the-same", test_languages);
  g_test_add_func ("/answer/guide/none-is-forgotten", test_none_is_forgotten);
  return g_test_run ();
}
