/* stead-due-check.c - what is to be read today, what is held back, and what is too warm. */
#include "config.h"

#include "answer/stead-check-days-answer.h"
#include "answer/stead-due-private.h"
#include "answer/stead-place-air-private.h"

#include "core/stead-clock.h"
#include "store/stead-farm-repo.h"
#include "store/stead-place-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
look_at_list (SteadDueLook            *look,
              const SteadCheckDayList *list)
{
  gboolean late = list->day < look->today;
  g_autofree char *day = stead_day_format (list->day, STEAD_DAY_STYLE_SHORT);

  if (list->n_failed > 0)
    stead_due_add (look, STEAD_DUE_WARNING, STEAD_TARGET_CHECKLIST, list->id,
                   /* Translators: the name of a checklist. */
                   g_strdup_printf (_("%s: a reading did not meet its limit."), list->name), g_strdup (list->text));
  else if (list->n_open > 0 && late)
    stead_due_add (look, STEAD_DUE_WARNING, STEAD_TARGET_CHECKLIST, list->id,
                   /* Translators: the name of a checklist, a day. */
                   g_strdup_printf (_("%1$s of %2$s has holes."), list->name, day), g_strdup (list->text));
  else if (list->n_open > 0)
    stead_due_add (look, STEAD_DUE_TASK, STEAD_TARGET_CHECKLIST, list->id,
                   /* Translators: the name of a checklist. */
                   g_strdup_printf (_("Take the readings of %s."), list->name), g_strdup (list->text));
  else
    stead_due_add (look, STEAD_DUE_TASK, STEAD_TARGET_CHECKLIST, list->id,
                   /* Translators: the name of a checklist. */
                   g_strdup_printf (_("Have %s signed."), list->name), g_strdup (list->text));
}

gboolean
stead_due_look_at_checks (SteadDueLook *look)
{
  g_autoptr(SteadCheckTodayAnswer) checks = stead_check_today_answer_new (look->store, look->error);

  if (checks == NULL)
    return FALSE;
  for (guint i = 0; i < checks->holds->len; i++)
    {
      const SteadHold *hold = checks->holds->pdata[i];

      stead_due_add (look, STEAD_DUE_WARNING, STEAD_TARGET_HOLD, hold->id,
                     /* Translators: a batch, or a thing and its lot. */
                     g_strdup_printf (_("%s is held back: it may be neither sold nor used."), hold->what),
                     g_strdup (hold->reason));
    }
  for (guint i = 0; i < checks->lists->len; i++)
    look_at_list (look, checks->lists->pdata[i]);
  return TRUE;
}

/* --- coolers ------------------------------------------------------------------------------ */

/* One that was read lately is one that is read every day. */
static void
look_at_cooler (SteadDueLook              *look,
                const SteadPlaceFacts     *place,
                const SteadPlaceAirAnswer *air)
{
  const SteadShown *last;

  if (air->readings->len == 0)
    return;
  last = air->readings->pdata[air->readings->len - 1];
  look->answer->n_coolers += air->warns;
  if (air->warns)
    {
      stead_due_add (look, STEAD_DUE_WARNING, STEAD_TARGET_COOLER, place->id,
                     isnan (air->days_left)
                     /* Translators: the name of a place, such as a refrigerator. */
                     ? g_strdup_printf (_("%s is too warm."), place->name)
                     : g_strdup_printf (_("%s is getting warmer."), place->name), g_strdup (air->sentence));
      if (air->has_trend)
        stead_due_explain (look->answer->dues, stead_place_air_worked (air));
    }
  if (stead_time_day (last->at) < look->today)
    stead_due_add (look, STEAD_DUE_TASK, STEAD_TARGET_COOLER, place->id,
                   /* Translators: the name of a place, such as a refrigerator. */
                   g_strdup_printf (_("Read the thermometer of %s."), place->name), NULL);
}

gboolean
stead_due_look_at_coolers (SteadDueLook *look)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (look->store, look->error);

  for (guint i = 0; places != NULL && i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];
      g_autoptr(SteadPlaceAirAnswer) air = stead_place_air_answer_new (look->store, place->id, STEAD_PLACE_AIR_DAYS,
                                                                       look->error);

      if (air == NULL)
        return FALSE;
      look_at_cooler (look, place, air);
    }
  return places != NULL;
}
