/* stead-check-log-cooler.c - what was read of refrigerators, in the logs of checks.
 *
 * A logger reads every few minutes: a day of one cooler is one row.
 */
#include "config.h"

#include "answer/stead-check-days-answer.h"
#include "answer/stead-places-answer.h"
#include "paper/stead-check-log-private.h"

#include <glib/gi18n-lib.h>

typedef gboolean (*CoolerFunc) (SteadCheckLog             *log,
                                const SteadPlaceFacts     *place,
                                const SteadPlaceAirAnswer *air,
                                GError                   **error);

static gboolean
each_cooler (SteadCheckLog  *log,
             CoolerFunc      func,
             GError        **error)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (log->store, error);

  for (guint i = 0; places != NULL && i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];
      g_autoptr(SteadPlaceAirAnswer) air = stead_place_air_answer_of_days (log->store, place->id, log->from, log->to, error);

      if (air == NULL || (air->readings->len > 0 && !func (log, place, air, error)))
        return FALSE;
    }
  return places != NULL;
}

/* --- a row for each day ------------------------------------------------------------------- */

/* The readings of one day, from @first up to @end. */
typedef struct
{
  const SteadShown *lowest, *highest, *last;
  guint             end;
  gboolean          by_one;    /* nobody else read it */
} CoolerDay;

static CoolerDay
day_from (const SteadPlaceAirAnswer *air,
          guint                      first)
{
  const SteadShown *start = air->readings->pdata[first];
  CoolerDay day = { start, start, start, first + 1, TRUE };

  for (; day.end < air->readings->len; day.end++)
    {
      const SteadShown *shown = air->readings->pdata[day.end];

      if (stead_time_day (shown->at) != stead_time_day (start->at))
        break;
      day.lowest = shown->value < day.lowest->value ? shown : day.lowest;
      day.highest = shown->value > day.highest->value ? shown : day.highest;
      day.by_one = day.by_one && shown->person_id == start->person_id;
      day.last = shown;
    }
  return day;
}

static char *
reading_text (const SteadPlaceAirAnswer *air,
              const CoolerDay           *day,
              gboolean                   warm)
{
  g_autofree char *low = stead_check_value_text (day->lowest, NULL, air->units);
  g_autofree char *high = stead_check_value_text (day->highest, NULL, air->units);
  const char *verdict = warm ? C_("verdict", "not met") : C_("verdict", "met");

  if (g_str_equal (low, high))
    return g_strdup_printf ("%s: %s", low, verdict);
  /* Translators: two temperatures of one day, and whether the limit was met. */
  return g_strdup_printf (C_("log of a cooler", "%1$s to %2$s: %3$s"), low, high, verdict);
}

static const SteadWarmSpell *
spell_of (const SteadPlaceAirAnswer *air,
          const CoolerDay           *day)
{
  for (guint i = 0; i < air->spells->len; i++)
    {
      const SteadWarmSpell *spell = air->spells->pdata[i];

      if (spell->first->at <= day->highest->at && spell->last->at >= day->highest->at)
        return spell;
    }
  return NULL;
}

static char *
who_text (const GPtrArray *people,
          const CoolerDay *day)
{
  for (guint i = 0; day->by_one && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];

      if (person->id == day->last->person_id)
        return stead_check_initials (person->name);
    }
  return NULL;
}

static void
begin_cooler (SteadCheckLog             *log,
              const SteadPlaceFacts     *place,
              const SteadPlaceAirAnswer *air)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a log of readings", "Day"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a log of readings", "Air"), STEAD_ALIGN_LEFT, 0.8 },
    { C_("column of a log of readings", "Who"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a log of readings", "What was done"), STEAD_ALIGN_LEFT, 2 },
  };

  stead_pages_add_heading (log->pages, place->name);
  stead_pages_add_table (log->pages, columns, G_N_ELEMENTS (columns));
}

/* A wrong reading stays beside the right one. */
static void
add_corrected (SteadCheckLog             *log,
               const SteadPlaceAirAnswer *air)
{
  g_autoptr(GPtrArray) rows = NULL;

  if (air->wrong->len == 0)
    return;
  rows = stead_place_air_rows (air, G_MAXUINT);
  for (guint i = rows->len; i > 0; i--)
    if (((const SteadAirRow *) rows->pdata[i - 1])->wrong)
      stead_pages_add_note (log->pages, ((const SteadAirRow *) rows->pdata[i - 1])->text);
}

static gboolean
add_days (SteadCheckLog              *log,
          const SteadPlaceFacts      *place,
          const SteadPlaceAirAnswer  *air,
          GError                    **error)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (log->store, error);
  g_autofree char *limit = stead_place_air_limit_text (air);
  CoolerDay day = { .end = 0 };

  if (people == NULL)
    return FALSE;
  begin_cooler (log, place, air);
  while (day.end < air->readings->len)
    {
      const SteadWarmSpell *spell;
      g_autofree char *when = NULL;
      g_autofree char *reading = NULL;
      g_autofree char *who = NULL;

      day = day_from (air, day.end);
      spell = spell_of (air, &day);
      when = stead_day_format (stead_time_day (day.last->at), STEAD_DAY_STYLE_SHORT);
      reading = reading_text (air, &day, spell != NULL);
      who = who_text (people, &day);
      stead_pages_add_row (log->pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { when, reading, who, spell != NULL ? spell->done : NULL });
    }
  add_corrected (log, air);
  stead_pages_add_note (log->pages, limit);
  return TRUE;
}

gboolean
stead_check_log_add_coolers (SteadCheckLog  *log,
                             GError        **error)
{
  return each_cooler (log, add_days, error);
}

/* --- a row for each time that it was too warm --------------------------------------------------- */

static gboolean
add_spells (SteadCheckLog              *log,
            const SteadPlaceFacts      *place,
            const SteadPlaceAirAnswer  *air,
            GError                    **error)
{
  for (guint i = 0; i < air->spells->len; i++)
    {
      const SteadWarmSpell *spell = air->spells->pdata[i];
      g_autofree char *day = stead_day_format (stead_time_day (spell->first->at), STEAD_DAY_STYLE_SHORT);
      g_autofree char *time = stead_check_time_text (spell->first->at);
      g_autofree char *when = g_strdup_printf ("%s %s", day, time);
      g_autofree char *what = g_strdup_printf ("%s: %s\n%s", place->name, spell->text, air->source);
      g_autofree char *value = stead_check_value_text (spell->peak, NULL, air->units);

      stead_check_log_add (log, spell->first->at,
                           (const char *[]) { when, what, value, NULL,
                                              spell->done != NULL ? spell->done : _("Nothing was written down."), NULL });
    }
  return TRUE;
}

gboolean
stead_check_log_add_warm (SteadCheckLog  *log,
                          GError        **error)
{
  return each_cooler (log, add_spells, error);
}
