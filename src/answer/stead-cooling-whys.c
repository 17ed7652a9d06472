/* stead-cooling-whys.c - how the forecast of a pot comes about. */
#include "config.h"

#include "answer/stead-check-plan-private.h"
#include "answer/stead-cooling-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-cooling.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NEWTON N_("Newton's law of cooling: OpenStax College Algebra 2e, Exponential and Logarithmic Models.")

typedef struct
{
  const SteadCoolingAnswer *answer;
  const SteadPot           *pot;
  const SteadLimitTable    *table;
} Cooling;

static char *
temp (const Cooling *self,
      double         temp_f)
{
  gboolean metric = self->pot->units == STEAD_UNITS_METRIC;
  g_autofree char *number = stead_number_format (metric ? (temp_f - 32) / 1.8 : temp_f, 1);

  return g_strdup_printf (metric ? "%s °C" : "%s °F", number);
}

/* A difference: a step of a thermometer, the noise of a reading. */
static char *
span (const Cooling *self,
      double         span_f)
{
  gboolean metric = self->pot->units == STEAD_UNITS_METRIC;
  g_autofree char *number = stead_number_format (metric ? span_f / 1.8 : span_f, 2);

  return g_strdup_printf (metric ? "%s °C" : "%s °F", number);
}

static const SteadCoolingReading *
reading_at (const Cooling *self,
            guint          i)
{
  return &g_array_index (self->answer->kept_readings, SteadCoolingReading, i);
}

static const SteadCoolingReading *
last_reading (const Cooling *self)
{
  return reading_at (self, self->answer->kept_readings->len - 1);
}

/* --- when each mark is due ----------------------------------------------------------- */

static SteadWhy *
due_why (const Cooling *self)
{
  const SteadCoolingAnswer *answer = self->answer;
  const SteadCoolingSeries *series = &answer->series;
  gboolean own_start = isfinite (answer->rule.start_f);
  g_autofree char *start = own_start ? temp (self, answer->rule.start_f) : NULL;
  g_autofree char *clock = stead_cooling_clock_text (answer, series->clock_min, FALSE);
  GString *worked = g_string_new (NULL);

  if (own_start && answer->clock_known)
    /* Translators: a temperature and a time of the day. */
    g_string_append_printf (worked, _("It passed %1$s at %2$s."), start, clock);
  else
    /* Translators: a time of the day. */
    g_string_append_printf (worked, _("The first reading is of %s."), clock);
  for (gsize i = 0; i < series->n_marks; i++)
    {
      const SteadCoolingMark *mark = &answer->rule.marks[i];
      g_autofree char *to = temp (self, mark->temp_f);
      g_autofree char *within = stead_check_span_text (mark->within_min * 60);
      g_autofree char *from = stead_cooling_clock_text (answer, series->marks[i].due_min - mark->within_min, FALSE);
      g_autofree char *due = stead_cooling_clock_text (answer, series->marks[i].due_min, FALSE);

      g_string_append_c (worked, '\n');
      /* Translators: a mark of cooling, a time of the day, "2 hours", a time of the day. */
      g_string_append_printf (worked, _("%1$s: %2$s + %3$s = %4$s"), to, from, within, due);
    }
  return stead_why_new (g_strdup (_("When each mark is due")),
                        own_start
                        ? _("The clock starts when the food passes the temperature at which it must begin to cool. Between two "
                            "readings that is worked out by the law of cooling. Each mark: start + the time that it may take.")
                        : _("The clock starts with the first reading. Each mark: start + the time that it may take."),
                        g_string_free (worked, FALSE), answer->source);
}

/* --- the curve ----------------------------------------------------------------------- */

static SteadWhy *
curve_why (const Cooling *self)
{
  const SteadCoolingFigures *figures = &self->answer->figures;
  g_autofree char *readings = stead_number_format (self->answer->kept_readings->len - (double) figures->first, 0);
  g_autofree char *from = stead_cooling_clock_text (self->answer, reading_at (self, (guint) figures->first)->minute, FALSE);
  g_autofree char *rate = stead_words_percent (figures->rate, 2);
  g_autofree char *rate_low = stead_words_percent (figures->rate_low, 2);
  g_autofree char *rate_high = stead_words_percent (figures->rate_high, 2);
  g_autofree char *air = temp (self, figures->ambient_f);
  g_autofree char *air_low = temp (self, figures->ambient_low_f), *air_high = temp (self, figures->ambient_high_f);

  return stead_why_new (g_strdup (_("The curve")),
                        _("Temperature = surroundings + (temperature at the first reading − surroundings) × e^(−rate × "
                          "minutes). Many such curves are laid through the readings since the last change. Each counts by how "
                          "well it fits them; the middle one is drawn."),
                        /* Translators: a number of readings, a time of the day; a rate as a percentage and its band; a
                         * temperature and its band. */
                        g_strdup_printf (_("%1$s readings from %2$s on. Rate: %3$s of the difference a minute (%4$s to %5$s). "
                                           "Surroundings: %6$s (%7$s to %8$s)."),
                                         readings, from, rate, rate_low, rate_high, air, air_low, air_high),
                        _(NEWTON));
}

/* With the middle curve through the last reading; all curves together may say a little else. */
static SteadWhy *
mark_why (const Cooling *self,
          gsize          mark)
{
  const SteadCoolingFigures *figures = &self->answer->figures;
  const SteadCoolingArrival *arrival = &self->answer->arrivals[mark];
  const SteadCoolingReading *last = last_reading (self);
  double to_f = self->answer->rule.marks[mark].temp_f;
  double minutes = stead_newton_minutes (last->temp_f, figures->ambient_f, figures->rate, to_f);
  g_autofree char *to = temp (self, to_f), *air = temp (self, figures->ambient_f), *now = temp (self, last->temp_f);
  g_autofree char *rate = stead_number_format (figures->rate, 5), *time = NULL;
  g_autofree char *at = stead_cooling_clock_text (self->answer, last->minute, FALSE);
  g_autofree char *likely = NULL, *title = NULL, *worked = NULL;

  /* Translators: a temperature. */
  title = g_strdup_printf (_("When it will be at %s"), to);
  if (!isfinite (minutes) || isinf (arrival->minute))
    /* Translators: two temperatures. */
    worked = g_strdup_printf (_("The surroundings, most likely %1$s, are too warm for %2$s."), air, to);
  else
    {
      time = stead_number_format (minutes, 0);
      likely = stead_cooling_clock_text (self->answer, arrival->minute, TRUE);
      /* Translators: the temperature now, of the surroundings, of the mark, of the surroundings; a rate; minutes; two times. */
      worked = g_strdup_printf (_("ln ((%1$s − %2$s) ÷ (%3$s − %2$s)) ÷ %4$s = %5$s min after %6$s; all curves together: %7$s"),
                                now, air, to, rate, time, at, likely);
    }
  return stead_why_new (g_steal_pointer (&title),
                        _("Minutes = ln ((temperature now − surroundings) ÷ (mark − surroundings)) ÷ rate, with the middle rate "
                          "and surroundings. All curves together, each by how well it fits, give the time that is told."),
                        g_steal_pointer (&worked), _(NEWTON));
}

/* --- how sure -------------------------------------------------------------------------- */

static SteadWhy *
band_why (const Cooling *self)
{
  const SteadCoolingFigures *figures = &self->answer->figures;
  double step_f = stead_cooling_step_c (self->pot) * 1.8;
  double noise_f = stead_cooling_noise_f (step_f);
  g_autofree char *step = span (self, step_f), *noise = span (self, noise_f), *probe = span (self, 0.5);
  g_autofree char *seen = span (self, figures->noise_f);
  GString *worked = g_string_new (NULL);

  /* Translators: three small differences of temperature. */
  g_string_append_printf (worked, _("√((%1$s)² ÷ 12 + (%2$s)²) = %3$s"), step, probe, noise);
  if (figures->scattered)
    {
      g_string_append_c (worked, '\n');
      /* Translators: a small difference of temperature. */
      g_string_append_printf (worked, _("These readings scatter more: %s."), seen);
    }
  return stead_why_new (g_strdup (_("The band")),
                        _("What one reading may be off by: √(step of the thermometer² ÷ 12 + what the place of the probe "
                          "does²). Curves within that of the readings count much, others little. 80 in 100 of them lie in "
                          "the band."),
                        g_string_free (worked, FALSE),
                        _("Step ÷ √12: the standard deviation of an even spread. Half a degree Fahrenheit for the place of the "
                          "probe: common practice, no source."));
}

static SteadWhy *
chance_why (const Cooling *self)
{
  const SteadCoolingAnswer *answer = self->answer;
  g_autofree char *all = stead_cooling_hundred_text (answer->chance);
  GString *worked = g_string_new (NULL);

  for (gsize i = 0; i < answer->rule.n_marks; i++)
    {
      g_autofree char *to = temp (self, answer->rule.marks[i].temp_f);
      g_autofree char *hundred = stead_cooling_hundred_text (answer->chances[i]);

      /* Translators: a temperature, a number out of 100. */
      g_string_append_printf (worked, _("%1$s in time: %2$s in 100."), to, hundred);
      g_string_append_c (worked, ' ');
    }
  /* Translators: a number out of 100. */
  g_string_append_printf (worked, _("All in time: %s in 100."), all);
  return stead_why_new (g_strdup (_("The chance to be in time")),
                        _("The curves that reach a mark by its time, each by how well it fits ÷ all curves"),
                        g_string_free (worked, FALSE), _("Bayes' rule; the surroundings alike anywhere between the bounds that are "
                                                         "known of the cooler."));
}

static const SteadCoolingAction *
rule_of (const GArray *actions,
         const char   *id)
{
  for (guint i = 0; i < actions->len; i++)
    if (g_str_equal (g_array_index (actions, SteadCoolingAction, i).id, id))
      return &g_array_index (actions, SteadCoolingAction, i);
  return NULL;
}

static void
add_action (const Cooling            *self,
            GString                  *worked,
            const SteadPotAction     *found,
            const SteadCoolingAction *action)
{
  g_autofree char *factor = stead_number_format (action->rate_factor, 1);
  g_autofree char *hundred = stead_cooling_hundred_text (found->plan.chance);
  g_autofree char *by = isnan (found->plan.latest_min) ? NULL
                        : stead_cooling_clock_text (self->answer, found->plan.latest_min, FALSE);

  if (worked->len > 0)
    g_string_append_c (worked, '\n');
  if (by != NULL)
    /* Translators: what to do, how many times the rate, a number out of 100, a time of the day. */
    g_string_append_printf (worked, _("%1$s: rate × %2$s, %3$s in 100 now; enough until %4$s"),
                            stead_cooling_action_name (found->id), factor, hundred, by);
  else
    /* Translators: what to do, how many times the rate, a number out of 100. */
    g_string_append_printf (worked, _("%1$s: rate × %2$s, %3$s in 100 now"), stead_cooling_action_name (found->id), factor,
                            hundred);
}

static SteadWhy *
action_why (const Cooling *self)
{
  g_autoptr(GArray) rules = stead_cooling_actions (self->table);
  GString *worked = g_string_new (NULL);

  for (guint i = 0; i < self->answer->actions->len; i++)
    {
      const SteadPotAction *found = &g_array_index (self->answer->actions, SteadPotAction, i);
      const SteadCoolingAction *action = rule_of (rules, found->id);

      if (action != NULL)
        add_action (self, worked, found, action);
    }
  return stead_why_new (g_strdup (_("What is enough, and until when")),
                        _("From the moment that something is done the curve goes on with the new rate, in ice at its "
                          "temperature. Enough: all marks in time with a chance of at least 90 in 100. The mildest that is "
                          "enough is advised; its time is the last minute at which it still is."),
                        g_string_free (worked, FALSE), _("How much faster each cools: common practice, no source. Measure again "
                                                         "after it."));
}

void
stead_cooling_put_whys (SteadCoolingAnswer    *self,
                        const SteadPot        *pot,
                        const SteadLimitTable *table)
{
  const Cooling cooling = { self, pot, table };

  if (self->kept_readings->len == 0 || last_reading (&cooling)->temp_f > self->rule.start_f)
    return;
  g_ptr_array_add (self->whys, due_why (&cooling));
  if (!self->has_fit)
    return;
  g_ptr_array_add (self->whys, curve_why (&cooling));
  for (gsize i = 0; i < self->series.n_marks; i++)
    if (self->series.marks[i].state == STEAD_COOLING_MARK_OPEN)
      g_ptr_array_add (self->whys, mark_why (&cooling, i));
  g_ptr_array_add (self->whys, band_why (&cooling));
  if (self->state == STEAD_POT_MET || self->state == STEAD_POT_FAILED)
    return;
  g_ptr_array_add (self->whys, chance_why (&cooling));
  if (self->actions->len > 0)
    g_ptr_array_add (self->whys, action_why (&cooling));
}
