/* stead-due-check.c - what is to be read today, and what is held back. */
#include "config.h"

#include "answer/stead-check-days-answer.h"
#include "answer/stead-due-private.h"

#include <glib/gi18n-lib.h>

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
