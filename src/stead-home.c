/* stead-home.c - where the program's own files lie: installed, or in a build folder.
 *
 * Found from the program's own path, never from one written in at build time, so
 * that two builds in different folders are the same bytes.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

#include "stead-home.h"

#include "answer/stead-language.h"

#define COMPILED_SCHEMA "gschemas.compiled"

char *
stead_home_build_folder (const char *program)
{
  g_autofree char *src = NULL;
  g_autofree char *build = NULL;
  g_autofree char *schema = NULL;

  g_return_val_if_fail (program != NULL, NULL);

  src = g_path_get_dirname (program);
  build = g_path_get_dirname (src);
  schema = g_build_filename (build, "data", COMPILED_SCHEMA, NULL);
  return g_file_test (schema, G_FILE_TEST_IS_REGULAR) ? g_steal_pointer (&build) : NULL;
}

/* The translations: those that the environment names, of the build, of the system. */
static char *
locale_folder (const char *build)
{
  const char *named = g_getenv ("STEAD_LOCALE_DIR");

  if (named != NULL && *named != '\0')
    return g_strdup (named);
  return build != NULL ? g_build_filename (build, "po", NULL) : g_strdup (STEAD_LOCALE_DIR);
}

void
stead_home_init (void)
{
  g_autofree char *program = g_file_read_link ("/proc/self/exe", NULL);
  g_autofree char *build = program != NULL ? stead_home_build_folder (program) : NULL;
  g_autofree char *locales = locale_folder (build);

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, locales);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  stead_language_init ();

  if (build != NULL)
    {
      g_autofree char *schemas = g_build_filename (build, "data", NULL);

      g_setenv ("GSETTINGS_SCHEMA_DIR", schemas, FALSE);
    }
}
