/* stead-language.c - words in another language than the program's.
 *
 * gettext looks at LANGUAGE anew whenever its catalogs may have changed; naming the domain
 * once more tells it so.  The variable is there from the start, so that later only its
 * value is replaced, in place: another thread that reads the environment meanwhile sees
 * the old text or the new one.
 */
#include "config.h"

#include "answer/stead-language.h"

#include <glib/gi18n-lib.h>
#include <libintl.h>
#include <locale.h>
#include <string.h>

#define VARIABLE "LANGUAGE"

/* The language of the texts in the code. */
#define OWN "en"

const char * const *
stead_language_list (void)
{
  static const char * const languages[] = { OWN, "es", NULL };

  return languages;
}

static void
set_language (const char *language)
{
  g_setenv (VARIABLE, language, TRUE);
  textdomain (textdomain (NULL));
}

void
stead_language_init (void)
{
  g_autofree char *chosen = g_strdup (g_getenv (VARIABLE));
  /* The head of a catalog: without one there is no translation into the user's language. */
  gboolean translated = *dgettext (GETTEXT_PACKAGE, "") != '\0';

  /* GLib decides once for all, at the first word, whether this program is translated; of an
   * English one it would say no. */
  if (!translated)
    set_language ("es");
  g_dgettext (GETTEXT_PACKAGE, "School farm planner");
  /* A window whose parts speak two languages would be worse than an English one. */
  set_language (!translated ? OWN : chosen != NULL ? chosen : "");
}

/* Some locale in which a catalog is looked at. */
static void
set_any_locale (void)
{
  static const char * const locales[] = { "en_US.UTF-8", "es_US.UTF-8", "es_ES.UTF-8", "C.UTF-8" };

  for (gsize i = 0; i < G_N_ELEMENTS (locales); i++)
    if (setlocale (LC_MESSAGES, locales[i]) != NULL)
      return;
}

/* The plain C locale translates nothing, whatever LANGUAGE says; where the C library is newer, nor does C.UTF-8. */
static gboolean
is_plain (const char *locale)
{
  return g_str_equal (locale, "C") || g_str_equal (locale, "POSIX") || g_str_has_prefix (locale, "C.");
}

char *
stead_language_enter (const char *language)
{
  const char *locale = setlocale (LC_MESSAGES, NULL);
  const char *before = g_getenv (VARIABLE);
  /* The locale, where it must be set again, and the language; the plain ones hold no such sign. */
  char *former = g_strconcat (is_plain (locale) ? locale : "", "!", before != NULL ? before : "", NULL);

  g_return_val_if_fail (g_strv_contains (stead_language_list (), language), former);

  if (is_plain (locale))
    set_any_locale ();
  set_language (language);
  return former;
}

void
stead_language_leave (char *former)
{
  char *language;

  g_return_if_fail (former != NULL);

  language = strchr (former, '!');
  g_return_if_fail (language != NULL);
  *language++ = '\0';
  if (*former != '\0')
    setlocale (LC_MESSAGES, former);
  set_language (language);
  g_free (former);
}
