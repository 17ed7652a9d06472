/* stead-line-complete.c - what a line that is being typed could become. */
#include "config.h"

#include "answer/stead-line-parse-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define MAX_OFFERS 8

typedef struct
{
  GPtrArray  *offers;   /* of char * */
  const char *kept;     /* the line up to the word that is being typed */
  char       *typed;    /* that word, folded */
} Offer;

static void
offer (Offer      *self,
       const char *word,
       const char *after)
{
  g_autofree char *folded = stead_line_fold (word);

  if (self->offers->len < MAX_OFFERS && g_str_has_prefix (folded, self->typed)
      && strlen (folded) > strlen (self->typed))
    g_ptr_array_add (self->offers, g_strconcat (self->kept, word, after, NULL));
}

static void
offer_names (Offer      *self,
             GPtrArray  *facts,
             gsize       name_offset,
             const char *after)
{
  for (guint i = 0; i < facts->len; i++)
    offer (self, G_STRUCT_MEMBER (char *, facts->pdata[i], name_offset), after);
}

/* Whether the line has this amount already. */
static gboolean
has_word (GArray    *tokens,
          SteadWord  word)
{
  for (guint i = 0; i < tokens->len; i++)
    {
      const SteadToken *token = &g_array_index (tokens, SteadToken, i);

      if (token->kind == STEAD_TOKEN_WORD && stead_line_word (token->folded) == word)
        return TRUE;
    }
  return FALSE;
}

/* Whether the line that is being typed is of fish. */
static gboolean
is_of_fish (const SteadLineReader *reader,
            const char            *line)
{
  g_autofree const char **names = stead_parse_names (reader->subjects, G_STRUCT_OFFSET (SteadLineSubject, name));
  SteadNameMatch match = stead_line_match_name (line + strspn (line, " "), names, 0);

  if (match.index >= 0)
    return ((const SteadLineSubject *) reader->subjects->pdata[match.index])->fish != NULL;
  return reader->flocks->len == 0 && reader->fish->len > 0;
}

/* After a number: what it may count, likely things first. */
static void
offer_kinds (Offer                 *self,
             const SteadLineReader *reader,
             GArray                *tokens)
{
  static const SteadWord of_flock[] = { STEAD_WORD_EGGS, STEAD_WORD_CRACKED, STEAD_WORD_FEED, STEAD_WORD_DEAD,
                                        STEAD_WORD_CULLED, STEAD_WORD_NONE };
  static const SteadWord of_fish[] = { STEAD_WORD_FEED, STEAD_WORD_WATER, STEAD_WORD_DEAD, STEAD_WORD_CULLED,
                                       STEAD_WORD_NONE };
  const SteadWord *kinds = is_of_fish (reader, self->kept) ? of_fish : of_flock;
  const char *degrees = stead_unit_symbol (stead_unit_default (STEAD_DIMENSION_TEMPERATURE, reader->farm->units));
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, reader->farm->units);

  for (gsize i = 0; kinds[i] != STEAD_WORD_NONE; i++)
    {
      const char *word = stead_line_word_offered (kinds[i]);
      g_autofree char *feed = g_strdup_printf ("%s %s", stead_unit_symbol (unit), word);

      if (has_word (tokens, kinds[i]))
        continue;
      offer (self, kinds[i] == STEAD_WORD_FEED ? feed : kinds[i] == STEAD_WORD_WATER ? degrees : word, "");
      if (kinds[i] == STEAD_WORD_FEED && *self->typed != '\0')
        offer (self, word, "");
    }
  offer_names (self, reader->items, G_STRUCT_OFFSET (SteadItem, name), "");
}

/* After an amount: who, when. */
static void
offer_rest (Offer                 *self,
            const SteadLineReader *reader,
            GArray                *tokens)
{
  if (is_of_fish (reader, self->kept) && !has_word (tokens, STEAD_WORD_REFUSED))
    offer (self, stead_line_word_offered (STEAD_WORD_REFUSED), "");
  offer (self, _("yesterday"), "");
  offer (self, stead_line_word_offered (STEAD_WORD_BY), " ");
  offer (self, stead_line_word_offered (STEAD_WORD_NOTE), ": ");
}

/* The token that is still being typed: the last one, if the line ends in it. */
static const SteadToken *
open_token (GArray     *tokens,
            const char *line)
{
  const SteadToken *last = tokens->len > 0 ? &g_array_index (tokens, SteadToken, tokens->len - 1) : NULL;

  return last != NULL && last->kind == STEAD_TOKEN_WORD && last->end == (int) strlen (line) ? last : NULL;
}

static void
offer_all (Offer                 *self,
           const SteadLineReader *reader,
           GArray                *tokens,
           guint                  n_before)
{
  const SteadToken *before = n_before > 0 ? &g_array_index (tokens, SteadToken, n_before - 1) : NULL;
  SteadWord word = before != NULL && before->kind == STEAD_TOKEN_WORD ? stead_line_word (before->folded)
                                                                      : STEAD_WORD_NONE;

  if (before == NULL)
    offer_names (self, reader->subjects, G_STRUCT_OFFSET (SteadLineSubject, name), ": ");
  else if (before->kind == STEAD_TOKEN_NUMBER)
    offer_kinds (self, reader, tokens);
  else if (word == STEAD_WORD_BY)
    offer_names (self, reader->people, G_STRUCT_OFFSET (SteadPerson, name), "");
  else
    offer_rest (self, reader, tokens);
  /* "Hens 2" has two words; its first number is not a count. */
  if (before != NULL && n_before == 1)
    offer_names (self, reader->subjects, G_STRUCT_OFFSET (SteadLineSubject, name), ": ");
}

char **
stead_line_reader_complete (SteadLineReader *self,
                            const char      *line)
{
  g_autoptr(GPtrArray) offers = g_ptr_array_new_with_free_func (g_free);
  g_autoptr(GArray) tokens = NULL;
  const SteadToken *open;
  g_autofree char *kept = NULL;
  g_autofree char *typed = NULL;
  Offer state;

  g_return_val_if_fail (self != NULL && line != NULL, NULL);

  if (g_utf8_validate (line, -1, NULL))
    {
      tokens = stead_line_tokens (line, 0, (int) strlen (line));
      open = open_token (tokens, line);
      kept = g_strndup (line, open != NULL ? (gsize) open->start : strlen (line));
      typed = stead_line_fold (open != NULL ? line + open->start : "");
      state = (Offer) { offers, kept, typed };
      if (open != NULL || *kept == '\0' || g_str_has_suffix (kept, " "))
        offer_all (&state, self, tokens, tokens->len - (open != NULL ? 1 : 0));
    }
  g_ptr_array_add (offers, NULL);
  return (char **) g_ptr_array_free (g_steal_pointer (&offers), FALSE);
}

static const char *
example_here (const SteadLineReader *self,
              gboolean               is_fish)
{
  if (self->farm->units != STEAD_UNITS_METRIC)
    return stead_line_example (is_fish);
  return is_fish ? C_("one-line entry", "0.5 kg feed, 1 dead, 25 C")
                 : C_("one-line entry", "22 eggs, 1 cracked, 3.1 kg feed");
}

/* Of the first flock, or else the first group of fish; its name only where it is needed. */
char *
stead_line_reader_hint (const SteadLineReader *self)
{
  const char *name = NULL, *line;
  gboolean is_fish;

  g_return_val_if_fail (self != NULL, NULL);

  is_fish = self->flocks->len == 0 && self->fish->len > 0;
  line = example_here (self, is_fish);
  if (self->flocks->len + self->fish->len > 1)
    name = is_fish ? ((const SteadFish *) self->fish->pdata[0])->batch.name
                   : ((const SteadFlock *) self->flocks->pdata[0])->name;
  if (name == NULL)
    /* Translators: %s is an example of what may be typed: "22 eggs, 1 cracked, 6.8 lb feed". */
    return g_markup_printf_escaped (_("Say it as you would: <b>%s</b>. A day and a name may follow."), line);
  /* Translators: a flock, and an example: "Brown hens: 22 eggs, 1 cracked, 6.8 lb feed". */
  return g_markup_printf_escaped (_("Say it as you would: <b>%s: %s</b>. A day and a name may follow."), name, line);
}
