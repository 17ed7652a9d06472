/* stead-demo-writer.c - the tools with which the story is written down. */
#include "config.h"

#include <string.h>

#include "store/stead-demo-writer-private.h"

gboolean
stead_demo_act (SteadDemoWriter  *writer,
                const char       *name,
                SteadDemoDeed     deed,
                gconstpointer     what,
                GError          **error)
{
  if (!stead_store_begin (writer->store, name, error))
    return FALSE;
  if (deed (writer, what, error))
    return stead_store_commit (writer->store, error);
  stead_store_rollback (writer->store);
  return FALSE;
}

SteadDay
stead_demo_day_at (SteadDemoWriter *writer,
                   int              at)
{
  return writer->story->first + at;
}

gint64
stead_demo_id_of (SteadDemoWriter *writer,
                  const char      *kind,
                  const char      *name)
{
  g_autofree char *group = g_strconcat (kind, " ", name, NULL);
  gint64 id = GPOINTER_TO_SIZE (g_hash_table_lookup (writer->ids, group));

  if (id == 0)
    stead_demo_fault (&writer->story->reader, group, name);
  return id;
}

void
stead_demo_set_id (SteadDemoWriter *writer,
                   const char      *group,
                   gint64           id)
{
  g_hash_table_insert (writer->ids, g_strdup (group), GSIZE_TO_POINTER ((gsize) id));
}

/* The reader's first fault becomes the error of the whole. */
gboolean
stead_demo_sound (SteadDemoWriter  *writer,
                  GError          **error)
{
  if (writer->story->reader.error == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&writer->story->reader.error));
  return FALSE;
}

/* The place of @word in @words, 0 if it is none of them; a fault then. */
int
stead_demo_word_of (SteadDemoWriter    *writer,
                    const char         *group,
                    const char         *key,
                    const char * const *words)
{
  g_autofree char *word = stead_demo_text (&writer->story->reader, group, key);

  for (int i = 0; words[i] != NULL; i++)
    if (strcmp (word, words[i]) == 0)
      return i;
  stead_demo_fault (&writer->story->reader, group, key);
  return 0;
}

const SteadUnit *
stead_demo_unit_of (SteadDemoWriter *writer,
                    const char      *group)
{
  g_autofree char *id = stead_demo_text (&writer->story->reader, group, "unit");
  const SteadUnit *unit = stead_unit_by_id (id);

  if (unit == NULL)
    stead_demo_fault (&writer->story->reader, group, "unit");
  return unit;
}

/* One action for each group of a kind. */
gboolean
stead_demo_write_groups (SteadDemoWriter  *writer,
                         const char       *kind,
                         SteadDemoDeed     deed,
                         GError          **error)
{
  g_auto(GStrv) groups = stead_demo_groups (&writer->story->reader, kind);

  for (char **group = groups; *group != NULL; group++)
    if (!stead_demo_act (writer, stead_demo_group_name (*group), deed, *group, error))
      return FALSE;
  return TRUE;
}
