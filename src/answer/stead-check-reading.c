/* stead-check-reading.c - "Does this reading of a list meet its limit, and what is to be done?" */
#include "config.h"

#include "answer/stead-check-answer-private.h"
#include "answer/stead-check-plan-private.h"
#include "answer/stead-limits.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
stead_check_read_free (gpointer data)
{
  SteadCheckRead *read = data;

  g_free (read->value);
  g_free (read->time);
  g_free (read->day);
  g_free (read->who);
  g_free (read->tool);
  g_free (read->sentence);
  g_free (read->todo);
  g_free (read->todo_source);
  g_free (read->done);
  g_free (read->noted);
  g_free (read);
}

static const SteadInstrument *
instrument_of (const SteadCheckAnswer *self,
               gint64                  id)
{
  for (guint i = 0; i < self->instruments->len; i++)
    if (((const SteadInstrument *) self->instruments->pdata[i])->id == id)
      return self->instruments->pdata[i];
  return NULL;
}

static SteadCheckReading
reading_of (const SteadCheckAnswer *self,
            const SteadListLine    *line,
            const SteadShown       *shown)
{
  const SteadInstrument *instrument = instrument_of (self, shown->instrument_id);
  gboolean temperature = g_strcmp0 (line->unit, "F") == 0 || g_strcmp0 (line->unit, "C") == 0;
  SteadCheckReading reading = { .at = shown->at, .now = G_MAXINT64, .began = STEAD_CHECK_NO_TIME, .elapsed_h = NAN,
                                .since_good_h = NAN, .confirmed = TRUE,
                                .elevation_ft = self->farm->elevation_m / STEAD_FOOT_M };

  reading.shown = (SteadLimitReading) { .value = shown->value, .unit = temperature ? "C" : line->unit,
                                        .time_s = shown->held_s > 0 ? shown->held_s : NAN };
  if (instrument != NULL)
    {
      reading.shown.error = isnan (instrument->error) ? 0 : instrument->error;
      reading.shown.step = isnan (instrument->step) ? 0 : instrument->step;
    }
  return reading;
}

/* Hours since the last reading of the line that met its limit. */
static double
since_good_h (const SteadListLine *line,
              const SteadShown    *shown)
{
  double hours = NAN;

  for (guint i = 0; i < line->readings->len; i++)
    {
      const SteadShown *other = line->readings->pdata[i];
      SteadJudgement judgement;

      if (other->at < shown->at && !other->corrected && stead_list_line_judge (line, other, NULL, &judgement, NULL) &&
          judgement.verdict != STEAD_LIMIT_NOT_MET)
        hours = (double) (shown->at - other->at) / 3600;
    }
  return hours;
}

/* What was mixed is judged by all that was measured of it; hot water by its warmth alone. */
static gboolean
is_mixed (const SteadCheckedLine *line)
{
  return line->plan.kind == STEAD_CHECK_LINE_SANITIZER && g_strcmp0 (line->plan.subject, "hot_water") != 0;
}

/* The answer lends its farm and its table to the generator's words. */
static SteadCheckVerdict *
verdict_of (const SteadCheckAnswer  *self,
            const SteadCheckLine    *plan,
            const SteadCheckReading *reading,
            GError                 **error)
{
  const SteadCheckPlanAnswer lent = { .farm = self->farm, .table = self->table };

  return stead_check_verdict_new (&lent, plan, reading, error);
}

static SteadReadState
state_of (const SteadCheckJudgement *judged,
          const SteadShown          *shown)
{
  switch (judged->outcome)
    {
    case STEAD_CHECK_MET: return STEAD_READ_MET;
    case STEAD_CHECK_WITHIN_ERROR:
    case STEAD_CHECK_IF_HELD: return STEAD_READ_UNSURE;
    case STEAD_CHECK_OPEN: return STEAD_READ_OPEN;
    case STEAD_CHECK_NOT_MET:
    default: return shown->n_actions > 0 ? STEAD_READ_HANDLED : STEAD_READ_FAILED;
    }
}

/* A tick that was not done, and a reading that nothing compares with. */
static void
judge_plainly (SteadCheckRead         *read,
               const SteadCheckAnswer *self,
               const SteadCheckedLine *line)
{
  const SteadShown *shown = read->shown;
  const SteadLimit *row;

  read->state = STEAD_READ_MET;
  if (!g_str_equal (shown->kind, STEAD_MEASURE_DONE) || shown->value > 0)
    return;
  read->state = shown->n_actions > 0 ? STEAD_READ_HANDLED : STEAD_READ_FAILED;
  row = stead_check_correction (self->table, &line->plan, NULL);
  if (row == NULL)
    return;
  read->todo = stead_check_correction_text (row);
  read->todo_source = stead_limits_source (row);
}

static void
judge_read (SteadCheckRead         *read,
            const SteadCheckAnswer *self,
            const SteadCheckedLine *line)
{
  SteadCheckReading reading = reading_of (self, line->line, read->shown);
  g_autoptr(SteadCheckVerdict) verdict = NULL;
  SteadSolution solution;

  if (is_mixed (line))
    {
      /* Strength and pH belong to the warmth of the same time, which stands for all. */
      if (!g_str_equal (read->shown->kind, line->line->measure))
        return;
      stead_list_line_solution (line->line, read->shown, &solution);
      reading.solution = &solution;
    }
  reading.since_good_h = since_good_h (line->line, read->shown);
  verdict = verdict_of (self, &line->plan, &reading, NULL);
  if (verdict == NULL)
    {
      read->state = STEAD_READ_UNSURE;
      return;
    }
  read->state = state_of (&verdict->judged, read->shown);
  read->sentence = g_steal_pointer (&verdict->sentence);
  if (verdict->judged.outcome != STEAD_CHECK_NOT_MET)
    return;
  read->todo = g_steal_pointer (&verdict->correction);
  read->todo_source = g_steal_pointer (&verdict->correction_source);
}

/* Hours since the pot was read first: the clock of cooling is no older. */
static double
pot_hours (const SteadListLine *line,
           const SteadShown    *shown)
{
  for (guint i = 0; i < line->readings->len; i++)
    {
      const SteadShown *other = line->readings->pdata[i];

      if (!other->corrected && other->pot_id == shown->pot_id)
        return (double) (shown->at - other->at) / 3600;
    }
  return NAN;
}

/* The one that shows that a mark was missed; the others are judged with their pot. */
static void
judge_pot_read (SteadCheckRead         *read,
                const SteadCheckAnswer *self,
                const SteadCheckedLine *line)
{
  const SteadShown *shown = read->shown;
  SteadCheckReading reading = reading_of (self, line->line, shown);
  SteadJudgement judgement;
  const SteadLimit *row;

  read->state = shown->n_actions > 0 ? STEAD_READ_HANDLED : STEAD_READ_OPEN;
  if (!stead_list_line_judge (line->line, shown, NULL, &judgement, NULL))
    return;
  read->state = shown->n_actions > 0 ? STEAD_READ_HANDLED : STEAD_READ_FAILED;
  read->sentence = g_strdup (_("Not met: it cooled too slowly."));
  reading.elapsed_h = pot_hours (line->line, shown);
  row = line->known ? stead_check_correction (self->table, &line->plan, &reading) : NULL;
  if (row == NULL)
    return;
  read->todo = stead_check_correction_text (row);
  read->todo_source = stead_limits_source (row);
}

static char *
done_text (const SteadCheckAnswer *self,
           const GPtrArray        *dones,
           gint64                  reading_id)
{
  g_autoptr(GString) text = g_string_new (NULL);

  for (guint i = 0; i < dones->len; i++)
    {
      const SteadDone *done = dones->pdata[i];
      g_autofree char *who = NULL;
      g_autofree char *time = NULL;

      if (done->reading_id != reading_id)
        continue;
      who = stead_check_initials (stead_check_person_name (self, done->person_id));
      time = stead_check_time_text (done->at);
      if (text->len > 0)
        g_string_append_c (text, ' ');
      g_string_append_printf (text, *who != '\0' ? "%s (%s, %s)" : "%s (%s%s)", done->text, who, time);
    }
  return text->len > 0 ? g_strdup (text->str) : NULL;
}

static char *
noted_text (const SteadShown *shown)
{
  g_autofree char *time = stead_check_time_text (shown->noted_at);
  g_autofree char *day = NULL;

  if (stead_time_day (shown->noted_at) == stead_time_day (shown->at))
    /* Translators: a time of day. */
    return g_strdup_printf (_("typed in later, at %s"), time);
  day = stead_day_format (stead_time_day (shown->noted_at), STEAD_DAY_STYLE_SHORT);
  /* Translators: a day and a time of day. */
  return g_strdup_printf (_("typed in later, on %1$s at %2$s"), day, time);
}

SteadCheckRead *
stead_check_read_new (const SteadCheckAnswer *self,
                      const SteadCheckedLine *line,
                      const SteadShown       *shown,
                      const GPtrArray        *dones)
{
  SteadCheckRead *read = g_new0 (SteadCheckRead, 1);
  const SteadInstrument *instrument = instrument_of (self, shown->instrument_id);
  const char *name = stead_check_person_name (self, shown->person_id);
  SteadDay day = stead_time_day (shown->at);

  read->shown = shown;
  read->value = stead_check_value_text (shown, line->line->unit, self->farm->units);
  read->time = stead_check_time_text (shown->at);
  read->day = day != self->list->day ? stead_day_format (day, STEAD_DAY_STYLE_SHORT) : NULL;
  read->who = name != NULL ? stead_check_initials (name) : NULL;
  read->tool = instrument != NULL ? g_strdup (instrument->name) : NULL;
  read->done = done_text (self, dones, shown->id);
  read->late = self->list->signed_at != STEAD_TIME_NONE && shown->id > self->list->seal_reading;
  read->noted = shown->noted_at != 0 ? noted_text (shown) : NULL;
  if (stead_list_line_is_cooling (line->line))
    judge_pot_read (read, self, line);
  else if (line->known && line->plan.measure != NULL)
    judge_read (read, self, line);
  else
    judge_plainly (read, self, line);
  if (shown->corrected)
    read->state = STEAD_READ_CORRECTED;
  return read;
}

/* --- before it is kept ------------------------------------------------------------------------- */

SteadCheckVerdict *
stead_check_answer_judge (SteadCheckAnswer        *self,
                          const SteadCheckedLine  *line,
                          double                   value,
                          const char              *unit,
                          const SteadSolution     *solution,
                          double                   held_s,
                          gint64                   at,
                          gboolean                 confirmed,
                          GError                 **error)
{
  SteadShown shown = { .at = at, .instrument_id = line->line->instrument_id, .held_s = held_s };
  SteadCheckReading reading;

  g_return_val_if_fail (self != NULL && line != NULL && unit != NULL && line->known, NULL);
  g_return_val_if_fail (line->plan.measure != NULL, NULL);
  reading = reading_of (self, line->line, &shown);
  reading.shown.value = value;
  reading.shown.unit = unit;
  reading.confirmed = confirmed;
  reading.solution = is_mixed (line) ? solution : NULL;
  reading.since_good_h = since_good_h (line->line, &shown);
  return verdict_of (self, &line->plan, &reading, error);
}
