/* stead-demo-grades.c - the demo farm's eggs sorted by weight, held to the light, and a
 * few of them broken out to see how fresh they are.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-demo-writer-private.h"
#include "store/stead-egg-repo.h"

#define N_FOUND 3   /* blood spots, cracks, dirt */

static gboolean
write_sheet (SteadDemoWriter  *writer,
             const char       *group,
             GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) counts = stead_demo_list (reader, group, "classes");
  g_auto(GStrv) found = stead_demo_list (reader, group, "found");
  SteadEggGrading sheet = { .flock_id = writer->flock_id, .day = stead_demo_day_at (writer, writer->at),
                            .person_id = stead_demo_person_on (writer, writer->at) };

  if (g_strv_length (counts) != STEAD_N_EGG_CLASSES)
    stead_demo_fault (reader, group, "classes");
  else if (g_strv_length (found) != N_FOUND)
    stead_demo_fault (reader, group, "found");
  else
    {
      for (int i = 0; i < STEAD_N_EGG_CLASSES; i++)
        sheet.counts[i] = (gint32) stead_demo_number_of (reader, counts[i]);
      sheet.blood = (gint32) stead_demo_number_of (reader, found[0]);
      sheet.checked = (gint32) stead_demo_number_of (reader, found[1]);
      sheet.dirty = (gint32) stead_demo_number_of (reader, found[2]);
    }
  return stead_demo_sound (writer, error) && stead_egg_repo_save_grading (writer->store, &sheet, error);
}

/* Each broken-out egg: its weight in g, a blank, the height of its white in mm. */
static gboolean
write_samples (SteadDemoWriter  *writer,
               const char       *group,
               GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) broken = stead_demo_list (reader, group, "broken");

  for (guint i = 0; broken[i] != NULL; i++)
    {
      g_auto(GStrv) parts = g_strsplit (broken[i], " ", 2);
      SteadEggSample sample = { .flock_id = writer->flock_id, .day = stead_demo_day_at (writer, writer->at),
                                .egg_c = NAN, .person_id = stead_demo_person_on (writer, writer->at) };

      if (g_strv_length (parts) != 2)
        stead_demo_fault (reader, group, "broken");
      else
        {
          sample.egg_g = stead_demo_number_of (reader, parts[0]);
          sample.albumen_mm = stead_demo_number_of (reader, parts[1]);
        }
      if (!stead_demo_sound (writer, error) || !stead_egg_repo_save_sample (writer->store, &sample, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_grades (SteadDemoWriter  *writer,
              gconstpointer     what,
              GError          **error)
{
  return write_sheet (writer, what, error) && write_samples (writer, what, error);
}

/**
 * stead_demo_live_grades:
 *
 * The sheets of today.
 *
 * Returns: %TRUE, or %FALSE with @error
 */
gboolean
stead_demo_live_grades (SteadDemoWriter  *writer,
                        GError          **error)
{
  g_auto(GStrv) groups = stead_demo_groups (&writer->story->reader, "grading");

  for (guint i = 0; groups[i] != NULL; i++)
    if (stead_demo_days_back (writer, groups[i], "back", -1) == writer->at &&
        !stead_demo_act (writer, _("Grading of eggs"), write_grades, groups[i], error))
      return FALSE;
  return TRUE;
}
