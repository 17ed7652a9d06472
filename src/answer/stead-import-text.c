/* stead-import-text.c - the bytes of a stranger's file as UTF-8 text. */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-import-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* A text table has hardly any NULs; UTF-16 without its mark has one in two. */
#define MAX_NULS 100

void
stead_import_text_clear (SteadImportText *text)
{
  g_clear_pointer (&text->text, g_free);
}

static gboolean
refuse (GError     **error,
        const char  *message)
{
  g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT, message);
  return FALSE;
}

/* Looks before anything is read: a folder, or a file of hundreds of megabytes. */
static gboolean
check_file (const char  *path,
            GError     **error)
{
  g_autoptr(GFile) file = g_file_new_for_path (path);
  g_autoptr(GError) local_error = NULL;
  g_autoptr(GFileInfo) info = NULL;

  info = g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_TYPE "," G_FILE_ATTRIBUTE_STANDARD_SIZE,
                            G_FILE_QUERY_INFO_NONE, NULL, &local_error);
  if (info == NULL)
    {
      if (g_error_matches (local_error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND))
        return refuse (error, _("There is no such file. Check its name and folder."));
      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT,
                   _("The file cannot be read: %s"), local_error->message);
      return FALSE;
    }
  if (g_file_info_get_file_type (info) == G_FILE_TYPE_DIRECTORY)
    return refuse (error, _("This is a folder. Choose the CSV file in it."));
  if (g_file_info_get_file_type (info) != G_FILE_TYPE_REGULAR)
    return refuse (error, _("This is not an ordinary file. Choose a CSV file."));
  if (g_file_info_get_size (info) > STEAD_IMPORT_MAX_BYTES)
    return refuse (error, _("This file is larger than 64 MB. Split it into parts and import one at a time."));
  if (g_file_info_get_size (info) == 0)
    return refuse (error, _("This file is empty."));
  return TRUE;
}

static gboolean
begins (const char *bytes,
        gsize       length,
        const char *mark,
        gsize       mark_length)
{
  return length >= mark_length && memcmp (bytes, mark, mark_length) == 0;
}

/* Files that people pick by mistake. */
static gboolean
check_kind (const char  *bytes,
            gsize        length,
            GError     **error)
{
  if (begins (bytes, length, "PK\3\4", 4) || begins (bytes, length, "\xD0\xCF\x11\xE0", 4))
    return refuse (error, _("This is a spreadsheet or another packed file. Save it as CSV first, then import that."));
  if (begins (bytes, length, "%PDF", 4))
    return refuse (error, _("This is a PDF. Choose a CSV file."));
  if (begins (bytes, length, "SQLite format 3", 16))
    return refuse (error, _("This is a farm or another database. Choose a CSV file."));
  return TRUE;
}

/* NULs cannot stand in our texts: they become a sign that makes their row wrong. */
static gboolean
replace_nuls (char    *bytes,
              gsize    length,
              GError **error)
{
  guint nuls = 0;

  for (char *p = memchr (bytes, '\0', length); p != NULL; p = memchr (p, '\0', length - (gsize) (p - bytes)))
    {
      *p = '\1';
      if (++nuls > MAX_NULS)
        return refuse (error, _("This is not a text table. Save it as CSV in UTF-8, then import that."));
    }
  return TRUE;
}

static gboolean
convert (SteadImportText  *out,
         const char       *bytes,
         gsize             length,
         const char       *charset,
         GError          **error)
{
  gsize written = 0;
  char *text = g_convert (bytes, (gssize) length, "UTF-8", charset, NULL, &written, NULL);

  if (text == NULL)
    return refuse (error, _("The letters of this file cannot be read. Save it as CSV in UTF-8, then import that."));
  out->text = text;
  out->length = written;
  return TRUE;
}

static gboolean
decode (SteadImportText  *out,
        char             *bytes,
        gsize             length,
        GError          **error)
{
  gboolean little = begins (bytes, length, "\xFF\xFE", 2);

  if (little || begins (bytes, length, "\xFE\xFF", 2))
    {
      out->encoding = STEAD_ENCODING_UTF16;
      return convert (out, bytes + 2, (length - 2) & ~(gsize) 1, little ? "UTF-16LE" : "UTF-16BE", error)
             && replace_nuls (out->text, out->length, error);
    }
  if (!replace_nuls (bytes, length, error))
    return FALSE;
  if (begins (bytes, length, "\xEF\xBB\xBF", 3))
    {
      bytes += 3;
      length -= 3;
    }
  if (!g_utf8_validate (bytes, (gssize) length, NULL))
    {
      out->encoding = STEAD_ENCODING_WINDOWS_1252;
      return convert (out, bytes, length, "WINDOWS-1252", error);
    }
  out->encoding = STEAD_ENCODING_UTF8;
  out->text = g_strndup (bytes, length);
  out->length = length;
  return TRUE;
}

/* "sep=;" in the first line is a note of a spreadsheet to itself. */
static void
take_sep_line (SteadImportText *out)
{
  const char *end;

  if (g_ascii_strncasecmp (out->text, "sep=", 4) != 0 || out->length < 5)
    return;
  out->separator = out->text[4];
  end = strchr (out->text, '\n');
  out->first_line = 2;
  out->length = end == NULL ? 0 : out->length - (gsize) (end + 1 - out->text);
  memmove (out->text, end == NULL ? out->text + strlen (out->text) : end + 1, out->length + 1);
}

/* Counts the separators of the first line that is not blank, outside of quotes. */
static char
find_separator (const char *text)
{
  static const char separators[] = { ',', ';', '\t' };
  guint counts[G_N_ELEMENTS (separators)] = { 0 };
  gboolean quoted = FALSE;
  gsize best = 0;

  text += strspn (text, " \r\n");
  for (const char *p = text; *p != '\0' && (quoted || (*p != '\n' && *p != '\r')); p++)
    {
      if (*p == '"')
        quoted = !quoted;
      for (gsize i = 0; !quoted && i < G_N_ELEMENTS (separators); i++)
        counts[i] += *p == separators[i] ? 1 : 0;
    }
  for (gsize i = 1; i < G_N_ELEMENTS (separators); i++)
    if (counts[i] > counts[best])
      best = i;
  return separators[best];
}

gboolean
stead_import_text_read (const char       *path,
                        SteadImportText  *out,
                        GError          **error)
{
  g_autofree char *bytes = NULL;
  g_autoptr(GError) local_error = NULL;
  gsize length = 0;

  if (!check_file (path, error))
    return FALSE;
  if (!g_file_get_contents (path, &bytes, &length, &local_error))
    {
      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT,
                   _("The file cannot be read: %s"), local_error->message);
      return FALSE;
    }
  *out = (SteadImportText) { .first_line = 1 };
  if (!check_kind (bytes, length, error) || !decode (out, bytes, length, error))
    return FALSE;
  take_sep_line (out);
  if (out->separator != ',' && out->separator != ';' && out->separator != '\t')
    out->separator = find_separator (out->text);
  return TRUE;
}
