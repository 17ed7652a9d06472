/* stead-place-warm.c - when a cooler was too warm, what is to be done about it, and what was done.
 *
 * Readings above the limit that follow one another are one spell: what is done about any
 * of them is done about all of them.
 */
#include "config.h"

#include "answer/stead-limits.h"
#include "answer/stead-place-air-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* What typing and keeping in °C leave of a figure in °F. */
#define NOISE_C 1e-6

void
stead_warm_spell_free (SteadWarmSpell *spell)
{
  if (spell == NULL)
    return;
  g_free (spell->text);
  g_free (spell->todo);
  g_free (spell->todo_source);
  g_free (spell->done);
  g_free (spell);
}

gboolean
stead_place_is_warm (const SteadPlaceAirAnswer *self,
                     const SteadShown          *shown)
{
  return shown->value > self->limit_c + NOISE_C;
}

/* A cooler is judged as what is held cold in it. */
static SteadCheckLine
line_of (const SteadPlaceAirAnswer *self,
         GPtrArray                 *rows)
{
  g_ptr_array_add (rows, (gpointer) stead_limit_table_by_id (self->table, STEAD_PLACE_COLD_ROW));
  return (SteadCheckLine) { .kind = STEAD_CHECK_LINE_HOLD_COLD, .stage = STEAD_CHECK_STAGE_HOLD, .food = -1,
                            .measure = "food_temp", .unit = "F", .rows = rows, .own_least_c = NAN, .own_most_c = NAN,
                            .own_hold_s = NAN };
}

/* --- telling ---------------------------------------------------------------------------- */

static char *
moment_text (gint64 at)
{
  g_autofree char *day = stead_day_format (stead_time_day (at), STEAD_DAY_STYLE_SHORT);
  g_autofree char *time = stead_check_time_text (at);

  /* Translators: a day, a time of day. */
  return g_strdup_printf (C_("moment", "%1$s, %2$s"), day, time);
}

static char *
spell_text (const SteadPlaceAirAnswer *self,
            const SteadWarmSpell      *spell)
{
  g_autofree char *peak = stead_check_value_text (spell->peak, NULL, self->farm->units);
  g_autofree char *from = moment_text (spell->first->at);
  g_autofree char *to = NULL;

  if (spell->first == spell->last)
    /* Translators: a day and a time, a temperature. */
    return g_strdup_printf (_("Too warm on %1$s: %2$s."), from, peak);
  to = moment_text (spell->last->at);
  /* Translators: two times, each a day and a time of day, a temperature. */
  return g_strdup_printf (_("Too warm from %1$s to %2$s, up to %3$s."), from, to, peak);
}

static void
add_done (GString         *text,
          const SteadDone *done,
          const GPtrArray *people)
{
  g_autofree char *who = stead_place_initials (people, done->person_id);
  g_autofree char *when = moment_text (done->at);

  if (text->len > 0)
    g_string_append_c (text, ' ');
  if (who != NULL)
    g_string_append_printf (text, "%s (%s, %s)", done->text, who, when);
  else
    g_string_append_printf (text, "%s (%s)", done->text, when);
}

static char *
done_text (const SteadPlaceAirAnswer *self,
           const SteadWarmSpell      *spell,
           const GPtrArray           *dones,
           const GPtrArray           *people)
{
  g_autoptr(GString) text = g_string_new (NULL);

  for (guint i = 0; i < dones->len; i++)
    {
      const SteadDone *done = dones->pdata[i];

      for (guint n = 0; n < self->readings->len; n++)
        {
          const SteadShown *shown = self->readings->pdata[n];

          if (shown->id == done->reading_id && shown->at >= spell->first->at && shown->at <= spell->last->at)
            add_done (text, done, people);
        }
    }
  return text->len > 0 ? g_strdup (text->str) : NULL;
}

/* @good: (nullable): the last reading before the spell that met the limit */
static void
finish (SteadWarmSpell            *spell,
        const SteadPlaceAirAnswer *self,
        const SteadShown          *good,
        const GPtrArray           *dones,
        const GPtrArray           *people)
{
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  const SteadCheckLine line = line_of (self, rows);
  SteadCheckReading reading = { .at = spell->last->at, .now = G_MAXINT64, .began = STEAD_CHECK_NO_TIME, .elapsed_h = NAN,
                                .since_good_h = NAN, .confirmed = TRUE };
  const SteadLimit *row;

  reading.shown = (SteadLimitReading) { .value = spell->last->value, .unit = "C", .time_s = NAN };
  if (good != NULL)
    reading.since_good_h = (double) (spell->last->at - good->at) / 3600;
  row = stead_check_correction (self->table, &line, &reading);
  spell->text = spell_text (self, spell);
  spell->done = done_text (self, spell, dones, people);
  if (row == NULL)
    return;
  spell->todo = stead_check_correction_text (row);
  spell->todo_source = stead_limits_source (row);
}

GPtrArray *
stead_place_warm_spells (const SteadPlaceAirAnswer *self,
                         const GPtrArray           *dones,
                         const GPtrArray           *people)
{
  g_autoptr(GPtrArray) spells = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_warm_spell_free);
  const SteadShown *good = NULL;

  for (guint i = 0; i < self->readings->len; i++)
    {
      const SteadShown *shown = self->readings->pdata[i];
      SteadWarmSpell *spell;

      if (!stead_place_is_warm (self, shown))
        {
          good = shown;
          continue;
        }
      spell = g_new0 (SteadWarmSpell, 1);
      spell->first = spell->last = spell->peak = shown;
      for (; i + 1 < self->readings->len && stead_place_is_warm (self, self->readings->pdata[i + 1]); i++)
        {
          spell->last = self->readings->pdata[i + 1];
          spell->peak = spell->last->value > spell->peak->value ? spell->last : spell->peak;
        }
      finish (spell, self, good, dones, people);
      g_ptr_array_add (spells, spell);
    }
  return g_steal_pointer (&spells);
}

/* --- before it is kept ------------------------------------------------------------------- */

SteadCheckVerdict *
stead_place_air_answer_judge (const SteadPlaceAirAnswer  *self,
                              double                      value,
                              const char                 *unit,
                              gboolean                    confirmed,
                              GError                    **error)
{
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  SteadCheckReading reading = { .at = STEAD_CHECK_NO_TIME, .now = G_MAXINT64, .began = STEAD_CHECK_NO_TIME, .elapsed_h = NAN,
                                .since_good_h = NAN, .confirmed = confirmed };
  SteadCheckPlanAnswer lent;
  SteadCheckLine line;

  g_return_val_if_fail (self != NULL && unit != NULL, NULL);

  lent = (SteadCheckPlanAnswer) { .farm = self->farm, .table = self->table };
  line = line_of (self, rows);
  reading.shown = (SteadLimitReading) { .value = value, .unit = unit, .time_s = NAN };
  return stead_check_verdict_new (&lent, &line, &reading, error);
}
