/* stead-line-token.c - cuts a typed line into numbers, days and words. */
#include "config.h"

#include "answer/stead-line-private.h"

#include <string.h>

char *
stead_line_fold (const char *text)
{
  g_autofree char *wide = g_utf8_normalize (text, -1, G_NORMALIZE_DEFAULT);
  g_autofree char *lower = NULL;
  GString *out = g_string_new (NULL);

  if (wide == NULL)
    return g_string_free (out, FALSE);
  lower = g_utf8_casefold (wide, -1);
  for (const char *p = lower; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (!g_unichar_ismark (c))
        g_string_append_unichar (out, c == 0x2019 ? '\'' : c);
    }
  return g_string_free (out, FALSE);
}

/* ¼, ½, ⅓ and their like. */
static gboolean
is_fraction_sign (gunichar c)
{
  return c == 0x00BC || c == 0x00BD || c == 0x00BE || (c >= 0x2150 && c <= 0x215E);
}

static gboolean
is_minus (gunichar c)
{
  return c == '-' || c == 0x2212;
}

static gboolean
digit_at (const char *p,
          const char *end)
{
  return p < end && g_ascii_isdigit (*p);
}

/* Digits with points, commas, slashes and dashes between them.  Counts those
 * that a date has; a dash goes on only in a text like 2026-03-03. */
static const char *
end_of_digits (const char *p,
               const char *end,
               gboolean   *is_date)
{
  const char *start = p;
  int points = 0;
  int slashes = 0;
  int dashes = 0;
  gboolean short_groups = TRUE;

  while (digit_at (p, end))
    {
      const char *group = p;

      while (digit_at (p, end))
        p++;
      short_groups = short_groups && (p - group <= 2 || group != start);
      if (p >= end || !digit_at (p + 1, end))
        break;
      if (*p == '.')
        points++;
      else if (*p == '/')
        slashes++;
      else if (*p == '-' && (dashes == 1 || p - start == 4))
        dashes++;
      else if (*p != ',')
        break;
      p++;
    }
  *is_date = slashes == 2 || dashes == 2 || (points == 2 && short_groups);
  return p;
}

static const char *
end_of_word (const char *p,
             const char *end)
{
  while (p < end)
    {
      gunichar c = g_utf8_get_char (p);
      const char *next = g_utf8_next_char (p);
      gboolean joint = c == '\'' || c == 0x2019 || c == '-';

      if (joint && next < end && g_unichar_isalpha (g_utf8_get_char (next)))
        p = next;
      else if (g_unichar_isalnum (c) || g_unichar_ismark (c) || c == 0x00B2)
        p = next;
      else
        break;
    }
  return p;
}

static gboolean
is_between (gunichar c)
{
  return g_unichar_isspace (c) || (c < 128 && strchr (",;:.()", (int) c) != NULL);
}

/* One token at @p; returns its end. */
static const char *
take_token (const char *p,
            const char *end,
            SteadToken *token)
{
  gunichar c = g_utf8_get_char (p);
  const char *next = g_utf8_next_char (p);
  gboolean is_date = FALSE;

  token->kind = STEAD_TOKEN_OTHER;
  if (g_ascii_isdigit (*p) || (is_minus (c) && digit_at (next, end)))
    {
      p = end_of_digits (g_ascii_isdigit (*p) ? p : next, end, &is_date);
      token->kind = is_date ? STEAD_TOKEN_DATE : STEAD_TOKEN_NUMBER;
      if (!is_date && p < end && is_fraction_sign (g_utf8_get_char (p)))
        p = g_utf8_next_char (p);
      return p;
    }
  if (is_fraction_sign (c))
    {
      token->kind = STEAD_TOKEN_NUMBER;
      return next;
    }
  if (c == '#' || g_unichar_isalpha (c))
    {
      token->kind = STEAD_TOKEN_WORD;
      return c == '#' ? next : end_of_word (p, end);
    }
  /* "78 °F" */
  if (c == 0x00B0 && next < end && g_unichar_isalpha (g_utf8_get_char (next)))
    {
      token->kind = STEAD_TOKEN_WORD;
      return end_of_word (next, end);
    }
  return next;
}

static void
clear_token (gpointer data)
{
  g_free (((SteadToken *) data)->folded);
}

GArray *
stead_line_tokens (const char *line,
                   int         start,
                   int         end)
{
  GArray *tokens = g_array_new (FALSE, TRUE, sizeof (SteadToken));
  const char *p = line + start;
  const char *stop = line + end;

  g_array_set_clear_func (tokens, clear_token);
  while (p < stop)
    {
      SteadToken token = { 0 };
      const char *from = p;

      if (is_between (g_utf8_get_char (p)))
        {
          p = g_utf8_next_char (p);
          continue;
        }
      p = take_token (p, stop, &token);
      token.start = (int) (from - line);
      token.end = (int) (p - line);
      if (token.kind == STEAD_TOKEN_WORD)
        {
          g_autofree char *word = g_strndup (from, (gsize) (p - from));

          token.folded = stead_line_fold (word);
        }
      g_array_append_val (tokens, token);
    }
  return tokens;
}
