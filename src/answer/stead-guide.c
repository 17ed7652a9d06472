/* stead-guide.c - the help: pages in the language of the program, in the order of reading. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <gio/gio.h>

#include "answer/stead-guide.h"
#include "data/help/steading-help.h"

#define PAGES "/farm/steading/Steading/help/"

static const char * const names[] = {
  STEAD_GUIDE_FIRST,
  "first-sale",
  "today", "raise", "make", "check", "price", "sell", "fund", "keep", "show",
  "trouble",
  "keys",
  NULL
};

const char * const *
stead_guide_get_names (void)
{
  return names;
}

static char *
path_of (const char *file)
{
  /* Translators: the folder of data/help with the pages in your language; "en" if there is none. */
  return g_strconcat (PAGES, C_("folder of the help", "en"), "/", file, NULL);
}

static GBytes *
look_up (const char *path)
{
  return g_resource_lookup_data (steading_help_get_resource (), path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
}

SteadGuidePage *
stead_guide_read (const char *name)
{
  g_autofree char *file = NULL;
  g_autofree char *path = NULL;
  g_autoptr(GBytes) bytes = NULL;
  g_autofree char *text = NULL;
  g_autoptr(GError) error = NULL;
  SteadGuidePage *page;

  g_return_val_if_fail (name != NULL, NULL);
  file = g_strconcat (name, ".md", NULL);
  path = path_of (file);
  bytes = look_up (path);
  if (bytes == NULL)
    return NULL;
  text = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  page = stead_guide_page_parse (text, &error);
  if (page == NULL)   /* they are part of the program: a slip is a bug, found by the tests */
    g_critical ("%s: %s", path, error->message);
  return page;
}

char *
stead_guide_picture_path (const char *file)
{
  g_return_val_if_fail (file != NULL, NULL);
  return path_of (file);
}
