/* stead-cooling-answer.c - "Will the pot be cold in time, how surely, and what is enough if not?" */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-cooling-private.h"
#include "answer/stead-limits.h"
#include "answer/stead-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A chance that is enough to go on without acting, or after acting; and the width of bands.
 * Common practice, no source. */
#define ENOUGH_FRAC 0.9
#define BAND_FRAC 0.8
/* Less than this is no chance to wait for: 1 in 20; common practice, no source. */
#define FAINT_FRAC 0.05

#define STEPS 60
#define TENTH_F_IN_C (0.1 / 1.8)

/* About how cold a cooler is, for reading between two readings. */
#define ABOUT_AIR_F 38

void
stead_cooling_answer_free (SteadCoolingAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->actions, g_array_unref);
  g_clear_pointer (&self->kept_readings, g_array_unref);
  g_clear_pointer (&self->kept_steps, g_array_unref);
  g_clear_pointer (&self->notes, g_ptr_array_unref);
  g_clear_pointer (&self->whys, g_ptr_array_unref);
  g_free (self->names.unit);
  g_free (self->names.expected);
  g_free (self->names.too_warm);
  g_free (self->names.now);
  g_free (self->names.act);
  for (gsize i = 0; i < STEAD_COOLING_MARKS; i++)
    g_free (self->names.marks[i]);
  g_free (self->sentence);
  g_free (self->action);
  g_free (self->source);
  g_free (self->caution);
  g_free (self);
}

static double
minute_of (const SteadPot *pot,
           gint64          at)
{
  return (double) (at - pot->readings[0].at) / 60;
}

static gboolean
read_readings (SteadCoolingAnswer  *self,
               const SteadPot      *pot,
               GError             **error)
{
  for (gsize i = 0; i < pot->n_readings; i++)
    {
      const SteadPotReading *reading = &pot->readings[i];
      SteadCoolingReading kept = { minute_of (pot, reading->at), stead_fahrenheit_from_celsius (reading->temp_c),
                                   reading->changed };

      if (!isfinite (reading->temp_c) || reading->at > pot->now || (i > 0 && reading->at <= pot->readings[i - 1].at))
        {
          g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT,
                               _("The readings must stand in the order of their times, and none after now. If the clock "
                                 "was changed meanwhile, correct the times."));
          return FALSE;
        }
      g_array_append_val (self->kept_readings, kept);
    }
  return TRUE;
}

static const SteadCoolingReading *
readings_of (const SteadCoolingAnswer *self)
{
  return (const SteadCoolingReading *) (void *) self->kept_readings->data;
}

/* --- what the readings prove ------------------------------------------------------------ */

/* Without a start of its own the clock starts with the first reading. */
static void
start_clock (SteadCoolingAnswer *self)
{
  SteadCoolingSeries *series = &self->series;

  if (isinf (self->rule.start_f))
    {
      self->clock_known = TRUE;
      series->clock_min = 0;
    }
  else
    series->clock_min = stead_cooling_clock (readings_of (self), self->kept_readings->len, self->rule.start_f, ABOUT_AIR_F,
                                             &self->clock_known);
}

/* The last reading alone tells whether the clock has started at all. */
static gboolean
is_still_hot (const SteadCoolingAnswer *self)
{
  return readings_of (self)[self->kept_readings->len - 1].temp_f > self->rule.start_f;
}

static void
read_marks (SteadCoolingAnswer *self)
{
  SteadCoolingSeries *series = &self->series;
  SteadCoolingMarkState states[STEAD_COOLING_MARKS];
  double before = series->clock_min;

  stead_cooling_mark_states (&self->rule, readings_of (self), self->kept_readings->len, series->clock_min, states);
  series->n_marks = self->rule.n_marks;
  for (gsize i = 0; i < self->rule.n_marks; i++)
    {
      const SteadCoolingMark *mark = &self->rule.marks[i];

      series->marks[i].temp_f = mark->temp_f;
      series->marks[i].state = states[i];
      series->marks[i].due_min = (mark->from_previous ? before : series->clock_min) + mark->within_min;
      /* A mark that counts from the one before counts from when that is reached: at the latest when it was due. */
      before = series->marks[i].due_min;
      for (guint r = 0; r < self->kept_readings->len; r++)
        if (readings_of (self)[r].temp_f <= mark->temp_f && readings_of (self)[r].minute >= series->clock_min)
          {
            before = MIN (before, readings_of (self)[r].minute);
            break;
          }
    }
}

static SteadPotState
proven_state (const SteadCoolingAnswer *self)
{
  const SteadCoolingSeries *series = &self->series;
  gboolean met = TRUE, look = FALSE;

  if (is_still_hot (self))
    return STEAD_POT_WAITING;
  for (gsize i = 0; i < series->n_marks; i++)
    {
      if (series->marks[i].state == STEAD_COOLING_MARK_MISSED || series->marks[i].state == STEAD_COOLING_MARK_UNPROVEN)
        return STEAD_POT_FAILED;
      met &= series->marks[i].state == STEAD_COOLING_MARK_MET;
      look |= series->marks[i].state == STEAD_COOLING_MARK_OPEN && series->now_min > series->marks[i].due_min;
    }
  return met ? STEAD_POT_MET : look ? STEAD_POT_LOOK : STEAD_POT_WAITING;
}

/* --- what the curve foretells ------------------------------------------------------------- */

double
stead_cooling_step_c (const SteadPot *pot)
{
  return pot->step_c > 0 ? pot->step_c : TENTH_F_IN_C;
}

static void
set_air (const SteadPot        *pot,
         const SteadLimitTable *table,
         SteadCoolingSetting   *out)
{
  const SteadLimit *low = stead_limit_table_find (table, "cool_action", "cooler", "ambient_low", NULL, NULL);
  const SteadLimit *high = stead_limit_table_find (table, "cool_action", "cooler", "ambient_high", NULL, NULL);

  out->ambient_low_f = !isnan (pot->air_low_c) ? stead_fahrenheit_from_celsius (pot->air_low_c)
                       : low != NULL ? low->value : 32;
  out->ambient_high_f = !isnan (pot->air_high_c) ? stead_fahrenheit_from_celsius (pot->air_high_c)
                        : high != NULL ? high->value : 45;
  out->noise_f = stead_cooling_noise_f (stead_cooling_step_c (pot) * 1.8);
}

static void
add_actions (SteadCoolingAnswer    *self,
             const SteadCoolingFit *fit,
             const SteadLimitTable *table)
{
  g_autoptr(GArray) actions = stead_cooling_actions (table);
  double best = -1;

  for (guint i = 0; i < actions->len; i++)
    {
      const SteadCoolingAction *action = &g_array_index (actions, SteadCoolingAction, i);
      SteadPotAction found = { action->id, { 0 } };

      stead_cooling_fit_act (fit, &self->rule, self->series.clock_min, action, self->series.now_min, ENOUGH_FRAC,
                             &found.plan);
      g_array_append_val (self->actions, found);
      /* The first that is enough is the mildest; of those that do as little the strongest. */
      if (best < ENOUGH_FRAC && found.plan.chance >= best)
        {
          best = found.plan.chance;
          self->best = (int) i;
        }
    }
}

static void
add_steps (SteadCoolingAnswer    *self,
           const SteadCoolingFit *fit)
{
  double from = readings_of (self)[self->figures.first].minute;

  for (int i = 0; i <= STEPS; i++)
    {
      SteadCoolingStep step = { from + (self->series.end_min - from) * i / STEPS, 0, 0, 0 };

      step.likely_f = stead_cooling_fit_temp (fit, step.minute, BAND_FRAC, &step.low_f, &step.high_f);
      g_array_append_val (self->kept_steps, step);
    }
}

static void
foretell (SteadCoolingAnswer    *self,
          const SteadPot        *pot,
          const SteadLimitTable *table)
{
  SteadCoolingSetting setting;
  g_autoptr(SteadCoolingFit) fit = NULL;

  set_air (pot, table, &setting);
  if (!(setting.ambient_high_f > setting.ambient_low_f))
    setting.ambient_high_f = setting.ambient_low_f + 1;
  fit = stead_cooling_fit (readings_of (self), self->kept_readings->len, &setting, NULL);
  if (fit == NULL)
    return;
  self->has_fit = TRUE;
  self->figures = *stead_cooling_fit_figures (fit);
  for (gsize i = 0; i < self->rule.n_marks; i++)
    {
      stead_cooling_fit_arrival (fit, self->rule.marks[i].temp_f, BAND_FRAC, &self->arrivals[i]);
      self->chances[i] = stead_cooling_fit_chance (fit, &self->rule, self->series.clock_min, i);
    }
  self->chance = stead_cooling_fit_chance (fit, &self->rule, self->series.clock_min, self->rule.n_marks);
  add_steps (self, fit);
  if (self->state != STEAD_POT_WAITING)
    return;
  if (self->chance >= ENOUGH_FRAC)
    self->state = STEAD_POT_ON_TRACK;
  else
    {
      add_actions (self, fit, table);
      self->state = STEAD_POT_TOO_LATE;
      if (self->best >= 0
          && g_array_index (self->actions, SteadPotAction, self->best).plan.chance >= ENOUGH_FRAC)
        {
          self->state = STEAD_POT_ACT;
          self->series.act_min = g_array_index (self->actions, SteadPotAction, self->best).plan.latest_min;
        }
    }
}

/* --- the whole ------------------------------------------------------------------------------ */

static void
set_series (SteadCoolingAnswer *self,
            const SteadPot     *pot)
{
  SteadCoolingSeries *series = &self->series;
  g_autoptr(GDateTime) first = g_date_time_new_from_unix_local (pot->readings[0].at);
  double last = readings_of (self)[self->kept_readings->len - 1].minute;

  series->now_min = minute_of (pot, pot->now);
  series->act_min = NAN;
  series->end_min = MAX (last, series->clock_min);
  for (gsize i = 0; i < series->n_marks; i++)
    series->end_min = MAX (series->end_min, series->marks[i].due_min);
  series->end_min += 15;
  series->first_of_day = g_date_time_get_hour (first) * 60 + g_date_time_get_minute (first);
}

/* Whether none of the actions is worth the wait. */
static gboolean
is_hopeless (const SteadCoolingAnswer *self)
{
  return self->state == STEAD_POT_TOO_LATE && self->best >= 0
         && g_array_index (self->actions, SteadPotAction, self->best).plan.chance < FAINT_FRAC;
}

/* What is to be done once a mark was missed; and what can still be done before, where no way of
 * cooling is likely to be enough. */
static void
find_correction (SteadCoolingAnswer    *self,
                 const SteadPot        *pot,
                 const SteadLimitTable *table)
{
  const SteadCoolingReading *last = &readings_of (self)[self->kept_readings->len - 1];
  const SteadLimitFact facts[] = {
    { "elapsed_h", NULL, (last->minute - self->series.clock_min) / 60 }, { "temp_f", NULL, last->temp_f },
    { "reheated", pot->reheated ? "yes" : "no", 0 }, { NULL, NULL, 0 },
  };

  if (is_hopeless (self))
    {
      const SteadLimit *row = stead_limit_table_find (table, "correct", "cool", "action", facts, NULL);

      if (row != NULL && g_strcmp0 (row->word, "reheat") == 0)
        self->correction = row;
    }
  if (self->state != STEAD_POT_FAILED)
    return;
  self->correction = stead_limit_table_find (table, "correct", "cool", "action", facts, NULL);
  if (self->correction == NULL)
    self->correction = stead_limit_table_by_id (table, "correct-cool-late-2");
}

SteadCoolingAnswer *
stead_cooling_answer_new (const SteadPot  *pot,
                          GError         **error)
{
  g_autoptr(SteadCoolingAnswer) self = g_new0 (SteadCoolingAnswer, 1);
  const SteadLimitTable *table;

  g_return_val_if_fail (pot != NULL && (pot->readings != NULL || pot->n_readings == 0), NULL);

  table = pot->table != NULL ? pot->table : stead_limits_get ();
  self->actions = g_array_new (FALSE, FALSE, sizeof (SteadPotAction));
  self->kept_readings = g_array_new (FALSE, FALSE, sizeof (SteadCoolingReading));
  self->kept_steps = g_array_new (FALSE, FALSE, sizeof (SteadCoolingStep));
  self->notes = g_ptr_array_new_with_free_func (g_free);
  self->whys = stead_whys_new ();
  self->chance = self->chances[0] = self->chances[1] = NAN;
  self->series.now_min = self->series.act_min = NAN;
  self->best = -1;
  if (!stead_cooling_rule (table, pot->start != NULL ? pot->start : "cooked",
                           pot->wording != NULL ? pot->wording : "food_code", &self->rule, error)
      || !read_readings (self, pot, error))
    return NULL;
  if (pot->n_readings > 0)
    {
      start_clock (self);
      read_marks (self);
      set_series (self, pot);
      self->state = proven_state (self);
      foretell (self, pot, table);
      find_correction (self, pot, table);
    }
  self->series.readings = readings_of (self);
  self->series.n_readings = self->kept_readings->len;
  self->series.steps = (const SteadCoolingStep *) (void *) self->kept_steps->data;
  self->series.n_steps = self->kept_steps->len;
  stead_cooling_put_words (self, pot, table);
  stead_cooling_put_whys (self, pot, table);
  return g_steal_pointer (&self);
}
