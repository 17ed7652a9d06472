/* stead-crop-due.c - what is due at the crops under way, and what is wrong there. */
#include "config.h"

#include "answer/stead-crop-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A thermometer counts as followed while it was read within these days. */
#define FOLLOWED_DAYS 14

/* Days between two pickings (common practice, no source). */
#define PICK_DAYS 3

/* How far a night may fall under what the house is set to keep, and the hottest day that
 * lets tomato flowers set fruit (95 °F: see stead_fruit_set()). */
#define NIGHT_SHORT_C 3.0
#define DAY_MOST_C 35.0

/* Takes @text and @detail over. */
static void
add (GPtrArray             *dues,
     const SteadCropAnswer *answer,
     SteadDueKind           kind,
     char                  *text,
     char                  *detail)
{
  SteadDue *due = g_new0 (SteadDue, 1);

  *due = (SteadDue) { kind, text, detail, STEAD_TARGET_BATCH, answer->crop->batch.id };
  g_ptr_array_add (dues, due);
}

static char *
degrees (const SteadCropAnswer *answer,
         double                 temp_c)
{
  return stead_quantity_format (temp_c, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, answer->farm->units));
}

/* --- the thermometer ------------------------------------------------------------ */

static void
judge_night (GPtrArray             *dues,
             const SteadCropAnswer *answer,
             const SteadClimateDay *day,
             const SteadGlasshouse *house)
{
  const char *name = answer->crop->batch.name;
  g_autofree char *reading = NULL, *kept = NULL;

  if (house != NULL && day->min_c < house->inside_c - NIGHT_SHORT_C)
    {
      reading = degrees (answer, day->min_c);
      kept = degrees (answer, house->inside_c);
      add (dues, answer, STEAD_DUE_WARNING,
           /* Translators: a crop, two temperatures. */
           g_strdup_printf (_("%s: the house fell to %s; %s should be kept."), name, reading, kept),
           g_strdup (_("Check the heater, its fuel and open vents. Let an adult see to fire and gas.")));
    }
  else if (day->max_c > DAY_MOST_C)
    {
      reading = degrees (answer, day->max_c);
      add (dues, answer, STEAD_DUE_WARNING,
           /* Translators: a crop, a temperature. */
           g_strdup_printf (_("%s: it got as hot as %s."), name, reading),
           g_strdup (_("Open vents, run the fans and put up shade. People need shade and water too.")));
    }
}

/* The newest reading of the last two days, and whether today's is still to come. */
static gboolean
look_at_thermometer (SteadStore             *store,
                     GPtrArray              *dues,
                     const SteadCropAnswer  *answer,
                     SteadDay                today,
                     GError                **error)
{
  gint64 place = answer->crop->climate_id;
  g_autoptr(GPtrArray) days = stead_climate_repo_list (store, place, today - FOLLOWED_DAYS + 1, today, error);
  g_autofree SteadGlasshouse *house = NULL;
  g_autoptr(GError) failed = NULL;
  const SteadClimateDay *last;

  if (days == NULL)
    return FALSE;
  if (days->len == 0)
    return TRUE;
  last = days->pdata[days->len - 1];
  if (last->day == today)
    add (dues, answer, STEAD_DUE_DONE, g_strdup_printf (_("Thermometer read: %s"), answer->thermometer), NULL);
  else
    add (dues, answer, STEAD_DUE_TASK,
         /* Translators: the place of the thermometer, or "outdoors". */
         g_strdup_printf (_("Read the thermometer: %s."), answer->thermometer), NULL);
  if (last->day < today - 1 || place == 0)
    return TRUE;
  house = stead_glasshouse_repo_get (store, place, &failed);
  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  judge_night (dues, answer, last, house);
  return TRUE;
}

/* --- picking ------------------------------------------------------------------- */

static void
look_at_picks (GPtrArray             *dues,
               const SteadCropAnswer *answer,
               SteadDay               today)
{
  const char *name = answer->crop->batch.name;

  if (answer->last_pick == today)
    add (dues, answer, STEAD_DUE_DONE, g_strdup_printf (_("%s: picked"), name), NULL);
  else if (answer->began_on == STEAD_DAY_NONE)
    {
      if (answer->has_ripe && answer->ripe.day != STEAD_DAY_NONE && answer->ripe.day <= today)
        add (dues, answer, STEAD_DUE_TASK, g_strdup_printf (_("Look whether %s can be picked."), name),
             g_strdup (_("By its degree days the first pick is due.")));
    }
  else if (answer->next_week.likely > 0 && (answer->last_pick == STEAD_DAY_NONE || today - answer->last_pick >= PICK_DAYS))
    add (dues, answer, STEAD_DUE_TASK, g_strdup_printf (_("Pick %s."), name), NULL);
}

static gboolean
has_id (const GArray *ids,
        gint64        id)
{
  for (guint i = 0; i < ids->len; i++)
    if (g_array_index (ids, gint64, i) == id)
      return TRUE;
  return FALSE;
}

gboolean
stead_crop_find_dues (SteadStore  *store,
                      GPtrArray   *dues,
                      GError     **error)
{
  SteadDay today = stead_store_get_today (store);
  g_autoptr(GPtrArray) crops = stead_crop_repo_list (store, FALSE, error);
  /* Crops that share a thermometer ask for it once. */
  g_autoptr(GArray) read = g_array_new (FALSE, FALSE, sizeof (gint64));

  if (crops == NULL)
    return FALSE;
  for (guint i = 0; i < crops->len; i++)
    {
      const SteadCrop *crop = crops->pdata[i];
      g_autoptr(SteadCropAnswer) answer = NULL;

      if (crop->batch.started_on > today)
        continue;
      answer = stead_crop_answer_new (store, crop->batch.id, error);
      if (answer == NULL)
        return FALSE;
      if (!has_id (read, crop->climate_id) && !look_at_thermometer (store, dues, answer, today, error))
        return FALSE;
      g_array_append_val (read, crop->climate_id);
      look_at_picks (dues, answer, today);
      if (answer->caution != NULL)
        add (dues, answer, STEAD_DUE_WARNING, g_strdup_printf (_("%s: the plants need a look."), crop->batch.name),
             g_strdup (answer->caution));
    }
  return TRUE;
}
