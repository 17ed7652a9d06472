/* stead-agenda-answer.c - the days ahead as an open calendar. */
#include "config.h"

#include "answer/stead-agenda-answer.h"
#include "answer/stead-routine-answer.h"
#include "answer/stead-words.h"
#include "store/stead-agenda-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-sale-repo.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  SteadAgendaAnswer *answer;
  SteadStore        *store;
  const char        *farm;       /* short mark, so that two farms' days do not mix */
  SteadDay           today;
  guint              sales;
  guint              tasks;
} Maker;

void
stead_agenda_answer_free (SteadAgendaAnswer *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->things);
  g_free (self->sentence);
  g_free (self->ics);
  g_free (self);
}

static SteadIcsThing *
add_thing (Maker      *maker,
           const char *what,
           gint64      id,
           SteadDay    day)
{
  SteadIcsThing *thing = g_new0 (SteadIcsThing, 1);

  thing->uid = g_strdup_printf ("%s-%s-%" G_GINT64_FORMAT, maker->farm, what, id);
  thing->day = day;
  g_ptr_array_add (maker->answer->things, thing);
  return thing;
}

static gboolean
add_sales (Maker   *maker,
           GError **error)
{
  g_autoptr(GPtrArray) sales = stead_sale_repo_list (maker->store, error);

  for (guint i = 0; sales != NULL && i < sales->len; i++)
    {
      const SteadSale *sale = sales->pdata[i];
      SteadIcsThing *thing;

      if (sale->day < maker->today || sale->day > maker->today + STEAD_AGENDA_DAYS)
        continue;
      thing = add_thing (maker, "sale", sale->id, STEAD_DAY_NONE);
      thing->summary = g_strdup (sale->name);
      thing->place = g_strdup (sale->location);
      thing->from_at = stead_sale_time (sale->day, sale->opens_min);
      thing->to_at = MAX (stead_sale_time (sale->day, sale->closes_min), thing->from_at + 60);
      thing->busy = TRUE;
      maker->sales++;
    }
  return sales != NULL;
}

/* What is late stands on today: it cannot be done yesterday any more. */
static gboolean
add_routines (Maker   *maker,
              GError **error)
{
  g_autoptr(GPtrArray) routines = stead_routine_repo_list (maker->store, 0, 0, error);

  for (guint i = 0; routines != NULL && i < routines->len; i++)
    {
      const SteadRoutine *routine = routines->pdata[i];
      g_autofree char *owner = NULL;
      SteadIcsThing *thing;
      SteadDay due_on;

      if (routine->paused)
        continue;
      if (!stead_routine_next (maker->store, routine, &owner, &due_on, error))
        return FALSE;
      if (due_on == STEAD_DAY_NONE || due_on > maker->today + STEAD_AGENDA_DAYS)
        continue;
      thing = add_thing (maker, "task", routine->id, MAX (due_on, maker->today));
      thing->summary = g_strdup_printf (C_("routine", "%s: %s"), owner, routine->name);
      thing->every_days = routine->every_days;
      thing->until = maker->today + STEAD_AGENDA_DAYS;
      maker->tasks++;
    }
  return routines != NULL;
}

static char *
say_day (const SteadAgendaDay *day)
{
  switch (day->kind)
    {
    case STEAD_AGENDA_PHASE:
      /* Translators: a build, and a step of the work on it. */
      return g_strdup_printf (C_("build phase", "%s: %s"), day->detail, day->name);
    case STEAD_AGENDA_BEST_BY:
      /* Translators: an item of the store room, and the code of a lot. */
      return g_strdup_printf (_("%s, lot %s: best before this day"), day->name, day->detail);
    case STEAD_AGENDA_WAIT_ENDS:
      /* Translators: a batch, and a medicine. */
      return g_strdup_printf (_("%s: the wait after %s ends"), day->name, day->detail);
    case STEAD_AGENDA_EVENT:
    default:
      return g_strdup (day->name);
    }
}

static gboolean
add_days (Maker   *maker,
          GError **error)
{
  static const char * const words[] = { "event", "phase", "lot", "wait" };
  g_autoptr(GPtrArray) days = stead_agenda_repo_list (maker->store, maker->today, maker->today + STEAD_AGENDA_DAYS, error);

  for (guint i = 0; days != NULL && i < days->len; i++)
    {
      const SteadAgendaDay *day = days->pdata[i];
      SteadIcsThing *thing = add_thing (maker, words[day->kind], day->id, day->day);

      thing->summary = say_day (day);
      if (day->kind == STEAD_AGENDA_EVENT)
        thing->place = g_strdup (day->detail);
      thing->busy = day->kind == STEAD_AGENDA_EVENT;
      maker->tasks++;
    }
  return days != NULL;
}

static char *
say (const Maker *maker)
{
  g_autofree char *sales = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u sale day", "%u sale days", maker->sales),
                                            maker->sales);
  g_autofree char *tasks = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u other day or task", "%u other days and tasks",
                                                         maker->tasks), maker->tasks);

  /* Translators: "2 sale days", "11 other days and tasks". */
  return g_strdup_printf (_("<b>%s</b> and %s in the next twelve weeks. Nobody is named."), sales, tasks);
}

SteadAgendaAnswer *
stead_agenda_answer_new (SteadStore  *store,
                         GError     **error)
{
  g_autoptr(SteadAgendaAnswer) self = g_new0 (SteadAgendaAnswer, 1);
  g_autoptr(SteadFarm) farm = NULL;
  g_autofree char *sum = NULL;
  g_autofree char *mark = NULL;
  Maker maker = { .answer = self, .store = store };

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->things = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_ics_thing_free);
  farm = stead_farm_repo_get (store, error);
  if (farm == NULL)
    return NULL;
  sum = g_compute_checksum_for_string (G_CHECKSUM_SHA256, farm->name, -1);
  mark = g_strdup_printf ("steading-%.8s", sum);
  maker.farm = mark;
  maker.today = stead_store_get_today (store);
  if (!add_sales (&maker, error) || !add_routines (&maker, error) || !add_days (&maker, error))
    return NULL;
  self->sentence = say (&maker);
  self->ics = stead_ics_write (self->things, farm->name, stead_sale_time (maker.today, 0));
  return g_steal_pointer (&self);
}
