/* stead-guide-page.c - a page of the help, read line by line.
 *
 * Invariants:
 *  1. A page that is returned has a title, and each block its markup.
 *  2. Markup is well formed: what opens is closed within its block.
 */
#include "config.h"

#include <string.h>

#include "core/stead-core-error.h"
#include "core/stead-guide-page.h"

static void
block_free (SteadGuideBlock *block)
{
  g_free (block->markup);
  g_free (block->other);
  g_free (block);
}

void
stead_guide_page_free (SteadGuidePage *page)
{
  if (page == NULL)
    return;
  g_free (page->title);
  g_ptr_array_unref (page->blocks);
  g_free (page);
}

/* --- within the words ---------------------------------------------------------------- */

/* What stands before the first @close, and goes on behind it; NULL: it is never closed. */
static char *
take_until (const char **at,
            const char  *close)
{
  const char *end = strstr (*at, close);
  char *inner;

  if (end == NULL || end == *at)
    return NULL;
  inner = g_strndup (*at, (gsize) (end - *at));
  *at = end + strlen (close);
  return inner;
}

static gboolean
take_wrapped (GString     *out,
              const char **at,
              const char  *mark,
              const char  *element)
{
  g_autofree char *inner = NULL;
  g_autofree char *escaped = NULL;

  *at += strlen (mark);
  inner = take_until (at, mark);
  if (inner == NULL)
    return FALSE;
  escaped = g_markup_escape_text (inner, -1);
  g_string_append_printf (out, "<%s>%s</%s>", element, escaped, element);
  return TRUE;
}

/* [words](PAGE) */
static gboolean
take_link (GString     *out,
           const char **at)
{
  g_autofree char *words = NULL;
  g_autofree char *page = NULL;
  g_autofree char *link = NULL;

  *at += 1;
  words = take_until (at, "](");
  page = words != NULL ? take_until (at, ")") : NULL;
  if (page == NULL || strpbrk (page, " /:") != NULL)
    return FALSE;
  link = g_markup_printf_escaped ("<a href=\"%s\">%s</a>", page, words);
  g_string_append (out, link);
  return TRUE;
}

static void
take_letter (GString     *out,
             const char **at)
{
  g_autofree char *escaped = g_markup_escape_text (*at, g_utf8_next_char (*at) - *at);

  g_string_append (out, escaped);
  *at = g_utf8_next_char (*at);
}

/* (nullable): the words as Pango reads them */
static char *
to_markup (const char *words)
{
  g_autoptr(GString) out = g_string_new (NULL);
  gboolean good = TRUE;

  while (good && *words != '\0')
    {
      if (g_str_has_prefix (words, "**"))
        good = take_wrapped (out, &words, "**", "b");
      else if (*words == '`')
        good = take_wrapped (out, &words, "`", "tt");
      else if (*words == '[')
        good = take_link (out, &words);
      else if (*words == '*' || *words == '<' || *words == '\\')
        good = FALSE;
      else
        take_letter (out, &words);
    }
  return good && out->len > 0 ? g_strdup (out->str) : NULL;
}

/* --- blocks ------------------------------------------------------------------------------- */

typedef struct
{
  SteadGuidePage *page;
  GString        *words;    /* of the block that is being read; NULL between blocks */
  SteadGuideKind  kind;     /* of that block */
  int             number;
  gboolean        in_table; /* the line before was a row */
} Reader;

static void
add_block (Reader         *reader,
           SteadGuideKind  kind,
           int             number,
           char           *markup,
           char           *other)
{
  SteadGuideBlock *block = g_new0 (SteadGuideBlock, 1);

  block->kind = kind;
  block->number = number;
  block->markup = markup;
  block->other = other;
  g_ptr_array_add (reader->page->blocks, block);
}

/* Ends the block that is being read.  Returns: whether its words could be understood */
static gboolean
end_block (Reader *reader)
{
  char *markup;

  if (reader->words == NULL)
    return TRUE;
  markup = to_markup (reader->words->str);
  g_string_free (g_steal_pointer (&reader->words), TRUE);
  if (markup == NULL)
    return FALSE;
  add_block (reader, reader->kind, reader->number, markup, NULL);
  return TRUE;
}

static gboolean
begin_block (Reader         *reader,
             SteadGuideKind  kind,
             int             number,
             const char     *words)
{
  if (!end_block (reader) || *words == '\0')
    return FALSE;
  reader->words = g_string_new (words);
  reader->kind = kind;
  reader->number = number;
  return TRUE;
}

static gboolean
go_on (Reader     *reader,
       const char *words)
{
  g_string_append_printf (reader->words, " %s", words);
  return TRUE;
}

/* ![what it shows](NAME.png) */
static gboolean
read_picture (Reader     *reader,
              const char *line)
{
  const char *at = line + 2;
  g_autofree char *shows = take_until (&at, "](");
  g_autofree char *file = shows != NULL ? take_until (&at, ")") : NULL;

  if (file == NULL || *at != '\0' || strchr (file, '/') != NULL || !end_block (reader))
    return FALSE;
  add_block (reader, STEAD_GUIDE_PICTURE, 0, g_steal_pointer (&shows), g_steal_pointer (&file));
  return TRUE;
}

/* | key | what it does | */
static gboolean
read_row (Reader     *reader,
          const char *line)
{
  g_auto(GStrv) cells = g_strsplit (line, "|", -1);
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;
  gboolean is_head = !reader->in_table;

  if (!end_block (reader))
    return FALSE;
  reader->in_table = TRUE;
  if (g_str_has_prefix (line, "|--"))
    return !is_head;
  if (g_strv_length (cells) != 4)
    return FALSE;
  first = to_markup (g_strstrip (cells[1]));
  second = to_markup (g_strstrip (cells[2]));
  if (first == NULL || second == NULL)
    return FALSE;
  add_block (reader, is_head ? STEAD_GUIDE_HEAD : STEAD_GUIDE_ROW, 0,
             g_steal_pointer (&second), g_steal_pointer (&first));
  return TRUE;
}

/* "12. " gives 12 and where the words begin; 0: no step */
static int
step_number (const char  *line,
             const char **words)
{
  char *end;
  guint64 number = g_ascii_isdigit (*line) ? g_ascii_strtoull (line, &end, 10) : 0;

  if (number < 1 || number > 99 || !g_str_has_prefix (end, ". "))
    return 0;
  *words = end + 2;
  return (int) number;
}

static gboolean
read_line (Reader     *reader,
           const char *line)
{
  const char *words = NULL;
  int number = step_number (line, &words);

  if (*line != '|')
    reader->in_table = FALSE;
  if (*line == '\0')
    return end_block (reader);
  if (*line == '|')
    return read_row (reader, line);
  if (g_str_has_prefix (line, "![" ))
    return read_picture (reader, line);
  if (g_str_has_prefix (line, "## "))
    return begin_block (reader, STEAD_GUIDE_HEADING, 0, line + 3);
  if (g_str_has_prefix (line, "- "))
    return begin_block (reader, STEAD_GUIDE_POINT, 0, line + 2);
  if (number > 0)
    return begin_block (reader, STEAD_GUIDE_STEP, number, words);
  if (g_str_has_prefix (line, "> ") && reader->words != NULL && reader->kind == STEAD_GUIDE_CAUTION)
    return go_on (reader, line + 2);
  if (g_str_has_prefix (line, "> "))
    return begin_block (reader, STEAD_GUIDE_CAUTION, 0, line + 2);
  if (*line == '#' || *line == '>')
    return FALSE;
  if (g_str_has_prefix (line, "  "))
    return reader->words != NULL && reader->kind != STEAD_GUIDE_TEXT && go_on (reader, line + 2);
  if (reader->words != NULL && reader->kind == STEAD_GUIDE_TEXT)
    return go_on (reader, line);
  return begin_block (reader, STEAD_GUIDE_TEXT, 0, line);
}

SteadGuidePage *
stead_guide_page_parse (const char  *text,
                        GError     **error)
{
  g_autoptr(SteadGuidePage) page = g_new0 (SteadGuidePage, 1);
  g_auto(GStrv) lines = NULL;
  Reader reader = { .page = page };
  gsize n, at = 0;
  gboolean good;

  g_return_val_if_fail (text != NULL, NULL);
  page->blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) block_free);
  lines = g_strsplit (text, "\n", -1);
  n = g_strv_length (lines);
  good = g_utf8_validate (text, -1, NULL) && n > 0 && g_str_has_prefix (lines[0], "# ") && lines[0][2] != '\0';
  if (good)
    page->title = g_strdup (lines[0] + 2);
  while (good && ++at < n)
    good = read_line (&reader, lines[at]);
  if (good && end_block (&reader))
    return g_steal_pointer (&page);
  if (reader.words != NULL)
    g_string_free (reader.words, TRUE);
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
               "Line %" G_GSIZE_FORMAT ", or the block that ends there, is not understood.", at + 1);
  return NULL;
}
