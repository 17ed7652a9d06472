/* stead-line-parse.c - the cursor that goes over a typed line. */
#include "config.h"

#include "answer/stead-line-parse-private.h"

#include <string.h>

/* Takes @message over.  The first fault counts. */
gboolean
stead_parse_fail (SteadParse *parse,
                  int         start,
                  int         end,
                  char       *message)
{
  if (parse->reading->understood != NULL)
    {
      g_free (message);
      return FALSE;
    }
  parse->reading->understood = message;
  parse->reading->error_start = start;
  parse->reading->error_end = end;
  return FALSE;
}

/* A message of the layer below, at its place. */
gboolean
stead_parse_fail_with (SteadParse   *parse,
                       int           start,
                       int           end,
                       const GError *error)
{
  return stead_parse_fail (parse, start, end, g_markup_escape_text (error->message, -1));
}

const SteadToken *
stead_parse_token_at (const SteadParse *parse,
                      guint             at)
{
  return at < parse->tokens->len ? &g_array_index (parse->tokens, SteadToken, at) : NULL;
}

char *
stead_parse_text_of (const SteadParse *parse,
                     int               start,
                     int               end)
{
  return g_strndup (parse->line + start, (gsize) (end - start));
}

SteadWord
stead_parse_word_at (const SteadParse *parse,
                     guint             at)
{
  const SteadToken *token = stead_parse_token_at (parse, at);

  return token != NULL && token->kind == STEAD_TOKEN_WORD ? stead_line_word (token->folded) : STEAD_WORD_NONE;
}

gboolean
stead_parse_is_number (const SteadToken *token)
{
  return token != NULL && token->kind == STEAD_TOKEN_NUMBER;
}

const SteadUnit *
stead_parse_unit_at (const SteadParse *parse,
                     guint             at)
{
  const SteadToken *token = stead_parse_token_at (parse, at);
  g_autofree char *text = NULL;

  if (token == NULL || token->kind != STEAD_TOKEN_WORD || stead_parse_word_at (parse, at) != STEAD_WORD_NONE)
    return NULL;
  text = stead_parse_text_of (parse, token->start, token->end);
  return stead_unit_from_text (text);
}

gboolean
stead_parse_is_fraction (const SteadParse *parse,
                         const SteadToken *token)
{
  return stead_parse_is_number (token)
         && memchr (parse->line + token->start, '/', (gsize) (token->end - token->start)) != NULL;
}

void
stead_parse_skip_fillers (SteadParse *parse)
{
  while (stead_parse_word_at (parse, parse->at) == STEAD_WORD_FILLER)
    parse->at++;
}

gboolean
stead_parse_is_kind (SteadWord word)
{
  return word != STEAD_WORD_NONE && word != STEAD_WORD_BY && word != STEAD_WORD_NOTE
         && word != STEAD_WORD_FILLER && word != STEAD_WORD_REFUSED;
}

gint64
stead_parse_feed_item (const SteadParse *parse)
{
  if (parse->subject == NULL)
    return 0;
  return parse->subject->flock != NULL ? parse->subject->flock->feed_item_id : parse->subject->fish->batch.feed_item_id;
}

/* The names of a list of facts whose second field is a name, for matching. */
const char **
stead_parse_names (GPtrArray *facts,
                   gsize      name_offset)
{
  const char **names = g_new0 (const char *, facts->len + 1);

  for (guint i = 0; i < facts->len; i++)
    names[i] = G_STRUCT_MEMBER (char *, facts->pdata[i], name_offset);
  return names;
}

/* The cursor goes behind a name that takes @length bytes from @start. */
void
stead_parse_skip_name (SteadParse *parse,
                       int         start,
                       int         length)
{
  const SteadToken *token;

  while ((token = stead_parse_token_at (parse, parse->at)) != NULL && token->start < start + length)
    parse->at++;
}
