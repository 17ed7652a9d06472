/* stead-demo-shots.c - the pictures of the demo farm: drawn, with captions and who is on them. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-batch-repo.h"
#include "store/stead-demo-resources.h"
#include "store/stead-demo-writer-private.h"
#include "store/stead-shot-repo.h"

#define FOLDER "/farm/steading/Steading/demo/pictures/"

static gint64
write_picture (SteadDemoWriter  *writer,
               const char       *group,
               GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  int width = (int) stead_demo_number (reader, group, "width");
  int height = (int) stead_demo_number (reader, group, "height");
  g_autofree char *path = g_strconcat (FOLDER, stead_demo_group_name (group), ".jpg", NULL);
  g_autoptr(GBytes) jpeg = g_resource_lookup_data (stead_demo_get_resource (), path, 0, NULL);

  if (jpeg == NULL)
    stead_demo_fault (reader, group, "width");
  if (!stead_demo_sound (writer, error))
    return 0;
  return stead_picture_repo_add (writer->store, jpeg, width, height, error);
}

/* Whose packet it is meant for is on it, and comes first. */
static gboolean
write_shot (SteadDemoWriter  *writer,
            const char       *group,
            GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) people = stead_demo_list (reader, group, "people");
  g_autofree char *caption = stead_demo_text (reader, group, "caption");
  g_autoptr(GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  SteadShot shot = { .caption = caption, .people = ids };

  shot.day = stead_store_get_today (writer->store) - (SteadDay) stead_demo_number (reader, group, "ago");
  for (char **name = people; *name != NULL; name++)
    {
      gint64 id = stead_demo_person_of (writer, *name);

      g_array_append_val (ids, id);
    }
  shot.person_id = ids->len > 0 ? g_array_index (ids, gint64, 0) : 0;
  shot.picture_id = write_picture (writer, group, error);
  return shot.picture_id != 0 && stead_shot_repo_save (writer->store, &shot, error);
}

static gboolean
write_all (SteadDemoWriter  *writer,
           gconstpointer     what,
           GError          **error)
{
  g_auto(GStrv) groups = stead_demo_groups (&writer->story->reader, "picture");

  for (char **group = groups; *group != NULL; group++)
    if (!write_shot (writer, *group, error))
      return FALSE;
  return TRUE;
}

gboolean
stead_demo_write_shots (SteadDemoWriter  *writer,
                        GError          **error)
{
  return stead_demo_act (writer, _("Pictures"), write_all, NULL, error);
}
