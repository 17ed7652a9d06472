/* stead-pdf-language.c - tells a finished PDF what language it is in. */
#include "config.h"

#include "paper/stead-paper-error.h"
#include "paper/stead-pdf-language.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* What the end of the file tells. */
typedef struct
{
  guint64  xref_at;       /* of the newest cross-reference section */
  guint64  size;          /* object numbers are below it */
  guint64  root;          /* number of the catalog, generation 0 */
  char    *trailer;       /* its dictionary without << and >> */
} Tail;

static void
tail_clear (Tail *tail)
{
  g_free (tail->trailer);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Tail, tail_clear)

static gboolean
refuse (GError     **error,
        const char  *what)
{
  g_set_error (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_WRITE,
               _("The PDF could not be finished (%s)."), what);
  return FALSE;
}

/* The number after a key; 0 where there is none, which no key here may be. */
static guint64
number_after (const char *text,
              const char *key)
{
  const char *at = strstr (text, key);

  return at == NULL ? 0 : g_ascii_strtoull (at + strlen (key), NULL, 10);
}

/* Everything between the outer << and >> that follow @from.  Strings and names may
 * hold no angle brackets here: cairo writes those of a trailer and a catalog as hex. */
static char *
dictionary_at (const char *from)
{
  const char *start = strstr (from, "<<");
  int depth = 0;

  if (start == NULL)
    return NULL;
  for (const char *at = start; *at != '\0'; at++)
    {
      if (at[0] == '<' && at[1] == '<')
        {
          depth++;
          at++;
        }
      else if (at[0] == '>' && at[1] == '>')
        {
          depth--;
          at++;
          if (depth == 0)
            return g_strndup (start + 2, (gsize) (at - 1 - start - 2));
        }
    }
  return NULL;
}

/* The last "startxref"; what lies before it may hold any byte, so no text function will do. */
static const char *
last_startxref (const char *pdf,
                gsize       length)
{
  static const char word[] = "startxref";
  gsize size = strlen (word);

  for (gsize at = length >= size ? length - size + 1 : 0; at > 0; at--)
    if (memcmp (pdf + at - 1, word, size) == 0)
      return pdf + at - 1;
  return NULL;
}

static gboolean
read_tail (const char  *pdf,
           gsize        length,
           Tail        *out,
           GError     **error)
{
  const char *start = last_startxref (pdf, length);

  if (start == NULL)
    return refuse (error, "no startxref");
  out->xref_at = number_after (start, "startxref");
  if (out->xref_at == 0 || out->xref_at + 4 > length || strncmp (pdf + out->xref_at, "xref", 4) != 0)
    return refuse (error, "no cross-reference table");
  start = g_strstr_len (pdf + out->xref_at, (gssize) (length - out->xref_at), "trailer");
  out->trailer = start == NULL ? NULL : dictionary_at (start);
  if (out->trailer == NULL)
    return refuse (error, "no trailer");
  out->size = number_after (out->trailer, "/Size");
  out->root = number_after (out->trailer, "/Root");
  if (out->size == 0 || out->root == 0 || out->root >= out->size)
    return refuse (error, "no catalog in the trailer");
  return TRUE;
}

/* Where the catalog lies: its line of the one section, "0 N", that cairo writes. */
static gboolean
find_object (const char  *pdf,
             gsize        length,
             const Tail  *tail,
             guint64     *out_at,
             GError     **error)
{
  const char *at = pdf + tail->xref_at + 4;
  char *end;
  guint64 first = g_ascii_strtoull (at, &end, 10);
  guint64 n = g_ascii_strtoull (end, &end, 10);
  guint64 line;

  while (g_ascii_isspace (*end))
    end++;
  line = (guint64) (end - pdf) + (tail->root - first) * 20;   /* an entry is always 20 bytes */
  if (tail->root < first || tail->root >= first + n || line + 20 > length || pdf[line + 17] != 'n')
    return refuse (error, "the catalog is not in the table");
  *out_at = g_ascii_strtoull (pdf + line, NULL, 10);
  if (*out_at == 0 || *out_at >= length)
    return refuse (error, "the catalog lies outside the file");
  return TRUE;
}

/* The trailer's entries without what the new one says itself. */
static char *
trailer_rest (const char *trailer)
{
  g_autoptr(GRegex) prev = g_regex_new ("/Prev\\s+\\d+\\s*", 0, 0, NULL);

  return g_regex_replace_literal (prev, trailer, -1, 0, "", 0, NULL);
}

static gboolean
tag_is_plain (const char *language)
{
  for (const char *at = language; *at != '\0'; at++)
    if (!g_ascii_isalnum (*at) && *at != '-')
      return FALSE;
  return *language != '\0';
}

GBytes *
stead_pdf_set_language (GBytes      *pdf,
                        const char  *language,
                        GError     **error)
{
  g_auto(Tail) tail = { 0 };
  g_autofree char *copy = NULL;    /* ends in NUL, so that text functions stop */
  g_autofree char *catalog = NULL;
  g_autofree char *rest = NULL;
  g_autofree char *update = NULL;
  gsize length;
  const char *data = g_bytes_get_data (pdf, &length);
  guint64 at, new_at;
  GByteArray *out;

  g_return_val_if_fail (tag_is_plain (language), NULL);
  copy = g_malloc (length + 1);
  if (length > 0)   /* an empty GBytes has no data */
    memcpy (copy, data, length);
  copy[length] = '\0';
  if (!read_tail (copy, length, &tail, error) || !find_object (copy, length, &tail, &at, error))
    return NULL;
  catalog = dictionary_at (copy + at);
  if (catalog == NULL || strstr (catalog, "/Catalog") == NULL)
    {
      refuse (error, "the catalog cannot be read");
      return NULL;
    }
  if (strstr (catalog, "/Lang") != NULL)
    return g_bytes_ref (pdf);
  rest = trailer_rest (tail.trailer);
  out = g_byte_array_sized_new ((guint) length + 1024);
  g_byte_array_append (out, (const guint8 *) data, (guint) length);
  if (data[length - 1] != '\n')
    g_byte_array_append (out, (const guint8 *) "\n", 1);
  new_at = out->len;
  update = g_strdup_printf ("%" G_GUINT64_FORMAT " 0 obj\n"
                            "<<%s/Lang (%s)\n   /ViewerPreferences << /DisplayDocTitle true >>\n>>\nendobj\n",
                            tail.root, catalog, language);
  g_byte_array_append (out, (const guint8 *) update, (guint) strlen (update));
  at = out->len;
  g_free (update);
  update = g_strdup_printf ("xref\n%" G_GUINT64_FORMAT " 1\n%010" G_GUINT64_FORMAT " 00000 n \n"
                            "trailer\n<<%s/Prev %" G_GUINT64_FORMAT "\n>>\nstartxref\n%" G_GUINT64_FORMAT "\n%%%%EOF\n",
                            tail.root, new_at, rest, tail.xref_at, at);
  g_byte_array_append (out, (const guint8 *) update, (guint) strlen (update));
  return g_byte_array_free_to_bytes (out);
}
