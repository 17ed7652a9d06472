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

char *
stead_language_enter (const char *language)
{
  const char *locale = setlocale (LC_MESSAGES, NULL);
  /* The plain C locale translates nothing, whatever LANGUAGE says. */
  gboolean plain = g_strcmp0 (locale, "C") == 0 || g_strcmp0 (locale, "POSIX") == 0;
  const char *before = g_getenv (VARIABLE);
  char *former = g_strconcat (plain ? "!" : "", before != NULL ? before : "", NULL);

  g_return_val_if_fail (g_strv_contains (stead_language_list (), language), former);

  if (plain)
    setlocale (LC_MESSAGES, "C.UTF-8");
  set_language (language);
  return former;
}

void
stead_language_leave (char *former)
{
  g_autofree char *owned = former;

  g_return_if_fail (former != NULL);

  if (*former == '!')
    setlocale (LC_MESSAGES, "C");
  set_language (*former == '!' ? former + 1 : former);
}
