/* stead-line-words.c - the words of the one-line entry, and names found in it.
 *
 * English and Spanish are read in every locale: one school writes both.
 */
#include "config.h"

#include "answer/stead-line-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Folded: lower case, without accents. */
static const struct { const char *text; SteadWord word; } words[] = {
  { "egg", STEAD_WORD_EGGS }, { "eggs", STEAD_WORD_EGGS },
  { "huevo", STEAD_WORD_EGGS }, { "huevos", STEAD_WORD_EGGS }, { "blanquillos", STEAD_WORD_EGGS },
  { "cracked", STEAD_WORD_CRACKED }, { "crack", STEAD_WORD_CRACKED }, { "cracks", STEAD_WORD_CRACKED },
  { "broken", STEAD_WORD_CRACKED }, { "broke", STEAD_WORD_CRACKED },
  { "roto", STEAD_WORD_CRACKED }, { "rotos", STEAD_WORD_CRACKED }, { "quebrado", STEAD_WORD_CRACKED },
  { "quebrados", STEAD_WORD_CRACKED }, { "rajado", STEAD_WORD_CRACKED }, { "rajados", STEAD_WORD_CRACKED },
  { "agrietado", STEAD_WORD_CRACKED }, { "agrietados", STEAD_WORD_CRACKED },
  { "feed", STEAD_WORD_FEED }, { "food", STEAD_WORD_FEED }, { "fed", STEAD_WORD_FEED },
  { "alimento", STEAD_WORD_FEED }, { "comida", STEAD_WORD_FEED }, { "pienso", STEAD_WORD_FEED },
  { "dead", STEAD_WORD_DEAD }, { "died", STEAD_WORD_DEAD }, { "death", STEAD_WORD_DEAD },
  { "deaths", STEAD_WORD_DEAD },
  { "muerta", STEAD_WORD_DEAD }, { "muertas", STEAD_WORD_DEAD }, { "muerto", STEAD_WORD_DEAD },
  { "muertos", STEAD_WORD_DEAD }, { "murio", STEAD_WORD_DEAD }, { "murieron", STEAD_WORD_DEAD },
  { "culled", STEAD_WORD_CULLED }, { "cull", STEAD_WORD_CULLED }, { "culls", STEAD_WORD_CULLED },
  { "removed", STEAD_WORD_CULLED },
  { "descartada", STEAD_WORD_CULLED }, { "descartadas", STEAD_WORD_CULLED },
  { "retirada", STEAD_WORD_CULLED }, { "retiradas", STEAD_WORD_CULLED },
  { "retirado", STEAD_WORD_CULLED }, { "retirados", STEAD_WORD_CULLED },
  { "bedding", STEAD_WORD_BEDDING }, { "litter", STEAD_WORD_BEDDING }, { "cama", STEAD_WORD_BEDDING },
  { "water", STEAD_WORD_WATER }, { "temp", STEAD_WORD_WATER }, { "temperature", STEAD_WORD_WATER },
  { "agua", STEAD_WORD_WATER }, { "temperatura", STEAD_WORD_WATER },
  { "left", STEAD_WORD_REFUSED }, { "refused", STEAD_WORD_REFUSED }, { "uneaten", STEAD_WORD_REFUSED },
  { "sobro", STEAD_WORD_REFUSED }, { "sobrante", STEAD_WORD_REFUSED }, { "rechazado", STEAD_WORD_REFUSED },
  { "by", STEAD_WORD_BY }, { "por", STEAD_WORD_BY },
  { "note", STEAD_WORD_NOTE }, { "nota", STEAD_WORD_NOTE },
  { "of", STEAD_WORD_FILLER }, { "them", STEAD_WORD_FILLER }, { "and", STEAD_WORD_FILLER },
  { "the", STEAD_WORD_FILLER }, { "a", STEAD_WORD_FILLER }, { "on", STEAD_WORD_FILLER },
  { "was", STEAD_WORD_FILLER }, { "were", STEAD_WORD_FILLER }, { "found", STEAD_WORD_FILLER },
  { "hen", STEAD_WORD_FILLER }, { "hens", STEAD_WORD_FILLER }, { "bird", STEAD_WORD_FILLER },
  { "birds", STEAD_WORD_FILLER }, { "fish", STEAD_WORD_FILLER }, { "fishes", STEAD_WORD_FILLER }, { "used", STEAD_WORD_FILLER }, { "given", STEAD_WORD_FILLER },
  { "collected", STEAD_WORD_FILLER }, { "with", STEAD_WORD_FILLER },
  { "de", STEAD_WORD_FILLER }, { "del", STEAD_WORD_FILLER }, { "y", STEAD_WORD_FILLER },
  { "el", STEAD_WORD_FILLER }, { "la", STEAD_WORD_FILLER }, { "los", STEAD_WORD_FILLER },
  { "las", STEAD_WORD_FILLER }, { "con", STEAD_WORD_FILLER }, { "ellos", STEAD_WORD_FILLER },
  { "gallina", STEAD_WORD_FILLER }, { "gallinas", STEAD_WORD_FILLER },
  { "pez", STEAD_WORD_FILLER }, { "peces", STEAD_WORD_FILLER }, { "en", STEAD_WORD_FILLER },
};

SteadWord
stead_line_word (const char *folded)
{
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_str_equal (words[i].text, folded))
      return words[i].word;
  return STEAD_WORD_NONE;
}

const char *
stead_line_word_offered (SteadWord word)
{
  switch (word)
    {
    /* Translators: words of the one-line entry. Spanish: use exactly "huevos",
     * "rotos", "alimento", "muertas", "retiradas", "cama", "agua", "sobró alimento", "por", "nota". */
    case STEAD_WORD_EGGS: return C_("one-line entry", "eggs");
    case STEAD_WORD_CRACKED: return C_("one-line entry", "cracked");
    case STEAD_WORD_FEED: return C_("one-line entry", "feed");
    case STEAD_WORD_DEAD: return C_("one-line entry", "dead");
    case STEAD_WORD_CULLED: return C_("one-line entry", "culled");
    case STEAD_WORD_BEDDING: return C_("one-line entry", "bedding");
    case STEAD_WORD_WATER: return C_("one-line entry", "water");
    case STEAD_WORD_REFUSED: return C_("one-line entry", "feed left");
    case STEAD_WORD_BY: return C_("one-line entry", "by");
    case STEAD_WORD_NOTE: return C_("one-line entry", "note");
    case STEAD_WORD_NONE:
    case STEAD_WORD_FILLER:
    default: return "";
    }
}

/* Where @name ends in @text, if @text begins with it and a word ends there; 0: it
 * does not.  Walks both texts a letter at a time, since folding changes lengths. */
static int
length_of_prefix (const char *text,
                  const char *name)
{
  g_autofree char *wanted = stead_line_fold (name);
  const char *p = text;
  g_autoptr(GString) seen = g_string_new (NULL);

  if (*wanted == '\0')
    return 0;
  while (*p != '\0' && seen->len < strlen (wanted))
    {
      g_autofree char *letter = NULL;
      g_autofree char *folded = NULL;
      const char *next = g_utf8_next_char (p);

      letter = g_strndup (p, (gsize) (next - p));
      folded = stead_line_fold (letter);
      g_string_append (seen, folded);
      p = next;
    }
  /* A mark that folds to nothing belongs to the letter before it. */
  while (*p != '\0' && g_unichar_ismark (g_utf8_get_char (p)))
    p = g_utf8_next_char (p);
  if (!g_str_equal (seen->str, wanted) || g_unichar_isalnum (g_utf8_get_char (p)))
    return 0;
  return (int) (p - text);
}

/* The end of the first @n words of @text, where a number may be one. */
static int
length_of_words (const char *text,
                 int         n)
{
  const char *p = text;
  const char *end = text;

  for (int i = 0; i < n; i++)
    {
      while (*p == ' ')
        p++;
      if (!g_unichar_isalnum (g_utf8_get_char (p)))
        break;
      while (*p != '\0' && (g_unichar_isalnum (g_utf8_get_char (p)) || *p == '\'' || *p == '-'
                            || g_unichar_ismark (g_utf8_get_char (p))))
        p = g_utf8_next_char (p);
      end = p;
    }
  return (int) (end - text);
}

static SteadNameMatch
match_whole (const char         *text,
             const char * const *names)
{
  SteadNameMatch match = { -1, 0, FALSE };

  for (int i = 0; names[i] != NULL; i++)
    {
      int length = length_of_prefix (text, names[i]);

      if (length > match.length)
        match = (SteadNameMatch) { i, length, FALSE };
    }
  return match;
}

/* Names that begin with @start, or one of whose words does. */
static int
count_beginning (const char         *start,
                 const char * const *names,
                 int                *out_index)
{
  int n = 0;

  for (int i = 0; names[i] != NULL; i++)
    {
      g_autofree char *folded = stead_line_fold (names[i]);
      gboolean found = g_str_has_prefix (folded, start);

      for (const char *at = strchr (folded, ' '); at != NULL && !found; at = strchr (at + 1, ' '))
        found = g_str_has_prefix (at + 1, start);
      if (!found)
        continue;
      if (n == 0)
        *out_index = i;
      n++;
    }
  return n;
}

SteadNameMatch
stead_line_match_name (const char         *text,
                       const char * const *names,
                       int                 n_words)
{
  SteadNameMatch match = match_whole (text, names);

  for (int n = n_words; n > 0 && match.index < 0; n--)
    {
      int length = length_of_words (text, n);
      g_autofree char *start = g_strndup (text, (gsize) length);
      g_autofree char *folded = stead_line_fold (start);
      int index = -1;
      int found = *folded == '\0' ? 0 : count_beginning (folded, names, &index);

      if (found == 1)
        match = (SteadNameMatch) { index, length, FALSE };
      else if (found > 1)
        return (SteadNameMatch) { -1, length, TRUE };
    }
  return match;
}
