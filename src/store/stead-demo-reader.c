/* stead-demo-reader.c - reads the description of the demo farm. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "core/stead-money.h"
#include "store/stead-demo-private.h"
#include "store/stead-store-error.h"

void
stead_demo_fault (SteadDemoReader *reader,
                  const char      *group,
                  const char      *key)
{
  if (reader->error != NULL)
    return;
  g_set_error (&reader->error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID,
               _("The description of the demo farm is wrong or incomplete at “%s” in [%s]."), key, group);
}

char *
stead_demo_text_if (SteadDemoReader *reader,
                    const char      *group,
                    const char      *key)
{
  char *text = reader->error == NULL ? g_key_file_get_string (reader->keys, group, key, NULL) : NULL;

  return text != NULL ? g_strstrip (text) : NULL;
}

char *
stead_demo_text (SteadDemoReader *reader,
                 const char      *group,
                 const char      *key)
{
  char *text = stead_demo_text_if (reader, group, key);

  if (text != NULL && *text != '\0')
    return text;
  g_free (text);
  stead_demo_fault (reader, group, key);
  return g_strdup ("");
}

double
stead_demo_number_of (SteadDemoReader *reader,
                      const char      *text)
{
  char *end = NULL;
  double number = g_ascii_strtod (text, &end);

  if (end != text && *end == '\0')
    return number;
  stead_demo_fault (reader, "…", text);
  return 0;
}

double
stead_demo_number_if (SteadDemoReader *reader,
                      const char      *group,
                      const char      *key,
                      double           missing)
{
  g_autofree char *text = stead_demo_text_if (reader, group, key);

  return text != NULL ? stead_demo_number_of (reader, text) : missing;
}

double
stead_demo_number (SteadDemoReader *reader,
                   const char      *group,
                   const char      *key)
{
  g_autofree char *text = stead_demo_text (reader, group, key);

  return reader->error == NULL ? stead_demo_number_of (reader, text) : 0;
}

gint64
stead_demo_cents_of (SteadDemoReader *reader,
                     const char      *text)
{
  return stead_money_round (100 * stead_demo_number_of (reader, text));
}

gint64
stead_demo_cents (SteadDemoReader *reader,
                  const char      *group,
                  const char      *key)
{
  g_autofree char *text = stead_demo_text (reader, group, key);

  return reader->error == NULL ? stead_demo_cents_of (reader, text) : 0;
}

char **
stead_demo_list (SteadDemoReader *reader,
                 const char      *group,
                 const char      *key)
{
  g_autofree char *text = stead_demo_text_if (reader, group, key);
  char **parts = g_strsplit (text != NULL ? text : "", "|", -1);

  for (char **part = parts; *part != NULL; part++)
    g_strstrip (*part);
  return parts;
}

char **
stead_demo_groups (SteadDemoReader *reader,
                   const char      *kind)
{
  g_auto(GStrv) all = g_key_file_get_groups (reader->keys, NULL);
  g_autofree char *start = g_strconcat (kind, " ", NULL);
  GPtrArray *found = g_ptr_array_new ();

  for (char **group = all; *group != NULL; group++)
    if (g_str_has_prefix (*group, start))
      g_ptr_array_add (found, g_strdup (*group));
  g_ptr_array_add (found, NULL);
  return (char **) g_ptr_array_free (found, FALSE);
}

const char *
stead_demo_group_name (const char *group)
{
  return strchr (group, ' ') + 1;
}
