/* stead-cooling-words.c - the forecast of a pot in words. */
#include "config.h"

#include "answer/stead-check-plan-private.h"
#include "answer/stead-check-verdict.h"
#include "answer/stead-cooling-private.h"
#include "answer/stead-words.h"
#include "core/stead-clock.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define DAY_MIN (24 * 60)

const char *
stead_cooling_action_name (const char *id)
{
  static const struct { const char *id, *name; } names[] = {
    { "stir", N_("Stir it often") },
    { "shallow_pan", N_("Spread it in shallow pans") },
    { "small_portions", N_("Divide it into small portions") },
    { "ice_bath", N_("Set it in an ice bath and stir it") },
  };

  g_return_val_if_fail (id != NULL, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_str_equal (names[i].id, id))
      return _(names[i].name);
  return id;
}

char *
stead_cooling_clock_text (const SteadCoolingAnswer *self,
                          double                    minute,
                          gboolean                  late)
{
  double whole = late ? ceil (minute - 1e-6) : floor (minute + 1e-6);

  return stead_minute_format ((int) fmod (self->series.first_of_day + whole + 10.0 * DAY_MIN, DAY_MIN));
}

static char *
mark_text (const SteadCoolingAnswer *self,
           gsize                     mark,
           SteadUnitSystem           units)
{
  return stead_check_temp_text (self->rule.marks[mark].temp_f, FALSE, units);
}

char *
stead_cooling_hundred_text (double chance)
{
  /* Nobody knows a chance of one. */
  return stead_number_format (CLAMP (floor (chance * 100 + 0.5), 1, 99), 0);
}

/* When one mark is reached, with its band. */
static char *
arrival_text (const SteadCoolingAnswer *self,
              gsize                     mark,
              SteadUnitSystem           units)
{
  const SteadCoolingArrival *arrival = &self->arrivals[mark];
  g_autofree char *temp = mark_text (self, mark, units);
  g_autofree char *due = stead_cooling_clock_text (self, self->series.marks[mark].due_min, FALSE);
  g_autofree char *likely = isinf (arrival->minute) ? NULL : stead_cooling_clock_text (self, arrival->minute, TRUE);
  g_autofree char *low = isinf (arrival->low) ? NULL : stead_cooling_clock_text (self, arrival->low, FALSE);
  g_autofree char *high = isinf (arrival->high) ? NULL : stead_cooling_clock_text (self, arrival->high, TRUE);

  if (self->series.marks[mark].state == STEAD_COOLING_MARK_MET)
    /* Translators: a temperature. */
    return g_strdup_printf (_("%s was reached in time."), temp);
  if (likely == NULL)
    /* Translators: a temperature, a time of the day. */
    return g_strdup_printf (_("It will hardly ever be at %1$s, which is due by %2$s."), temp, due);
  if (high == NULL)
    /* Translators: a temperature and two times of the day. */
    return g_strdup_printf (_("It will be at %1$s about %2$s, or perhaps never; it is due by %3$s."), temp, likely, due);
  /* Translators: a temperature and four times of the day; the two in the middle are a band. */
  return g_strdup_printf (_("It will be at %1$s about %2$s (%3$s to %4$s, 80 in 100); it is due by %5$s."), temp, likely, low,
                          high, due);
}

static char *
forecast_text (const SteadCoolingAnswer *self,
               SteadUnitSystem           units)
{
  GString *out = g_string_new (NULL);
  g_autofree char *hundred = stead_cooling_hundred_text (self->chance);

  for (gsize i = 0; i < self->series.n_marks; i++)
    {
      g_autofree char *arrival = arrival_text (self, i, units);

      g_string_append_printf (out, "%s ", arrival);
    }
  /* Translators: a number out of 100. */
  g_string_append_printf (out, self->state == STEAD_POT_ON_TRACK ? _("In time with a chance of %s in 100.")
                                                                 : _("In time with a chance of only %s in 100."), hundred);
  return g_string_free (out, FALSE);
}

static char *
waiting_text (const SteadCoolingAnswer *self,
              SteadUnitSystem           units)
{
  g_autofree char *temp = mark_text (self, 0, units);
  g_autofree char *due = NULL;

  if (self->kept_readings->len == 0)
    return g_strdup (_("No reading yet. Probe the middle of the pot when it leaves the heat."));
  if (self->kept_readings->len > 0
      && g_array_index (self->kept_readings, SteadCoolingReading, self->kept_readings->len - 1).temp_f > self->rule.start_f)
    {
      g_autofree char *start = stead_check_temp_text (self->rule.start_f, FALSE, units);

      /* Translators: a temperature. */
      return g_strdup_printf (_("The clock starts when it passes %s; probe it again soon."), start);
    }
  due = stead_cooling_clock_text (self, self->series.marks[0].due_min, FALSE);
  /* Translators: a temperature and a time of the day. */
  return g_strdup_printf (_("Three readings make a forecast. %1$s is due by %2$s."), temp, due);
}

/* The first mark that was missed, or that nobody looked at in time. */
static char *
late_text (const SteadCoolingAnswer *self,
           SteadUnitSystem           units)
{
  for (gsize i = 0; i < self->series.n_marks; i++)
    {
      const SteadCoolingDue *due = &self->series.marks[i];
      g_autofree char *temp = mark_text (self, i, units);
      g_autofree char *time = stead_cooling_clock_text (self, due->due_min, FALSE);

      if (due->state == STEAD_COOLING_MARK_MISSED)
        /* Translators: a temperature and a time of the day. */
        return g_strdup_printf (_("Cooled too slowly: %1$s was due by %2$s."), temp, time);
      if (due->state == STEAD_COOLING_MARK_UNPROVEN)
        return g_strdup_printf (_("Nobody knows whether it was in time: %1$s was due by %2$s, and no reading until then shows "
                                  "it."), temp, time);
      if (due->state == STEAD_COOLING_MARK_OPEN)
        return g_strdup_printf (_("The time for %1$s ended at %2$s, and nobody looked: measure it now."), temp, time);
    }
  return g_strdup ("");
}

static char *
action_text (const SteadCoolingAnswer *self)
{
  const SteadPotAction *action;
  g_autofree char *hundred = NULL;
  g_autofree char *time = NULL;

  if (self->correction != NULL)
    return stead_check_correction_text (self->correction);
  if (self->best < 0)
    return NULL;
  action = &g_array_index (self->actions, SteadPotAction, self->best);
  hundred = stead_cooling_hundred_text (action->plan.chance);
  if (self->state == STEAD_POT_TOO_LATE)
    /* Translators: what to do, a number out of 100. */
    return g_strdup_printf (_("%1$s at once: nothing is surely enough, but that makes it %2$s in 100."),
                            stead_cooling_action_name (action->id), hundred);
  time = stead_cooling_clock_text (self, action->plan.latest_min, FALSE);
  /* Translators: what to do, a time of the day, a number out of 100. */
  return g_strdup_printf (_("%1$s by %2$s: that is enough, with a chance of %3$s in 100 if it is done now."),
                          stead_cooling_action_name (action->id), time, hundred);
}

static void
add_notes (SteadCoolingAnswer    *self,
           const SteadLimitTable *table)
{
  const SteadLimit *gap = stead_limit_table_find (table, "cool", "cooked", "check_gap", NULL, NULL);
  g_autoptr(GArray) notices = NULL;
  const SteadCoolingReading *readings = (const SteadCoolingReading *) (void *) self->kept_readings->data;
  double noise_f = self->has_fit ? self->figures.noise_f : stead_cooling_noise_f (1);

  if (self->kept_readings->len == 0)
    return;
  if (!self->clock_known && !(readings[self->kept_readings->len - 1].temp_f > self->rule.start_f))
    g_ptr_array_add (self->notes, g_strdup (_("Nobody saw when the clock started: it started before the first reading, so there "
                                              "is less time than it looks.")));
  if (self->has_fit && self->figures.jumped)
    g_ptr_array_add (self->notes, g_strdup (_("The curve changed between two readings: was it moved, split or stirred? Say so "
                                              "at the reading.")));
  if (self->has_fit && self->figures.scattered)
    g_ptr_array_add (self->notes, g_strdup (_("The readings scatter: stir before probing, and probe the middle.")));
  notices = stead_cooling_notices (readings, self->kept_readings->len,
                                   gap != NULL ? stead_limit_value_in (gap, "min") : 60, noise_f);
  for (guint i = 0; i < notices->len; i++)
    {
      const SteadCoolingNotice *notice = &g_array_index (notices, SteadCoolingNotice, i);
      g_autofree char *time = stead_cooling_clock_text (self, readings[notice->at].minute, FALSE);

      g_ptr_array_add (self->notes, notice->what == STEAD_COOLING_GAP
                                    /* Translators: a time of the day. */
                                    ? g_strdup_printf (_("Long without a reading before %s."), time)
                                    : g_strdup_printf (_("Warmer at %s than before: probe again."), time));
    }
}

static void
name_chart (SteadCoolingAnswer *self,
            SteadUnitSystem     units)
{
  self->names.unit = g_strdup (units == STEAD_UNITS_US ? _("°F in the middle of the pot") : _("°C in the middle of the pot"));
  self->names.expected = g_strdup (C_("temperature of a pot", "expected"));
  self->names.too_warm = g_strdup (C_("temperature of a pot", "too warm"));
  self->names.now = g_strdup (C_("time", "now"));
  if (!isnan (self->series.act_min) && self->kept_readings->len > 0)
    {
      g_autofree char *time = stead_cooling_clock_text (self, self->series.act_min, FALSE);

      /* Translators: the last time at which doing something is enough: "act by 11:50 AM". */
      self->names.act = g_strdup_printf (_("act by %s"), time);
    }
  for (gsize i = 0; i < self->series.n_marks; i++)
    {
      g_autofree char *temp = mark_text (self, i, units);
      g_autofree char *time = stead_cooling_clock_text (self, self->series.marks[i].due_min, FALSE);

      /* Translators: a mark of cooling: "70 °F by 12:00 PM". */
      self->names.marks[i] = g_strdup_printf (_("%1$s by %2$s"), temp, time);
    }
}

/* The rows of the rule, for its source. */
static GPtrArray *
rows_of (const SteadPot        *pot,
         const SteadLimitTable *table)
{
  static const char * const stages[] = { "stage_1", "stage_2", "total" };
  const char *start = pot->start != NULL ? pot->start : "cooked";
  const char *rule = pot->wording != NULL ? pot->wording : "food_code";
  GPtrArray *rows = g_ptr_array_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (stages); i++)
    {
      const SteadLimitFact facts[] = { { "stage", stages[i], 0 }, { "rule", rule, 0 }, { NULL, NULL, 0 } };
      const SteadLimit *row = stead_limit_table_find (table, "cool", start, "food_temp", facts, NULL);

      if (row != NULL)
        g_ptr_array_add (rows, (gpointer) row);
    }
  return rows;
}

void
stead_cooling_put_words (SteadCoolingAnswer    *self,
                         const SteadPot        *pot,
                         const SteadLimitTable *table)
{
  g_autoptr(GPtrArray) rows = rows_of (pot, table);

  self->source = stead_check_sources_text (rows);
  switch (self->state)
    {
    case STEAD_POT_ON_TRACK:
    case STEAD_POT_ACT:
    case STEAD_POT_TOO_LATE:
      self->sentence = forecast_text (self, pot->units);
      break;
    case STEAD_POT_MET:
      self->sentence = g_strdup (_("Cooled in time: the readings show each mark."));
      break;
    case STEAD_POT_FAILED:
    case STEAD_POT_LOOK:
      self->sentence = late_text (self, pot->units);
      break;
    case STEAD_POT_WAITING:
    default:
      self->sentence = waiting_text (self, pot->units);
      break;
    }
  self->action = action_text (self);
  name_chart (self, pot->units);
  add_notes (self, table);
  self->caution = g_strdup (_("A forecast is an estimate: thick food lags behind it, and only probe readings count."));
}
