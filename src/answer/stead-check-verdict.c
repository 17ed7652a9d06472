/* stead-check-verdict.c - a judged reading in words. */
#include "config.h"

#include "answer/stead-check-plan-private.h"
#include "answer/stead-check-verdict.h"
#include "answer/stead-limits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
stead_check_verdict_free (SteadCheckVerdict *self)
{
  if (self == NULL)
    return;
  g_free (self->sentence);
  g_free (self->question);
  g_free (self->as_typed);
  g_free (self->otherwise);
  g_free (self->correction);
  g_free (self->correction_source);
  g_free (self);
}

/* --- what to do ---------------------------------------------------------------------- */

/* By the row, since one word means another thing at another step. */
char *
stead_check_correction_text (const SteadLimit *correction)
{
  static const struct { const char *id, *text; } texts[] = {
    { "correct-cook", N_("Cook it on, and probe again.") },
    { "correct-cool-again", N_("Heat it at once as hot as food that is heated again must get, and start the cooling again another "
                               "way: shallow pans, small portions or an ice bath. This may be done only once. Or throw it "
                               "away.") },
    { "correct-cool-twice", N_("Throw it away: it was heated again once already.") },
    { "correct-hot-known", N_("Heat it at once as hot as food that is heated again must get, and see what is wrong with the hot "
                              "holding.") },
    { "correct-cold-known", N_("Chill it quickly, in ice or in the freezer, and see what is wrong with the cooler.") },
    { "correct-receive-eggs", N_("Send the eggs back, or do not use them.") },
    { "correct-receive", N_("Send it back.") },
    { "correct-eggs", N_("Put the eggs in the cold at once and hold them back: nobody sells or uses them until it is known "
                         "how long they were warm.") },
    { "correct-thermometer", N_("Set it right or take another one, and look again at what it measured before.") },
    { "correct-sanitizer", N_("Make it anew, test it again, and sanitize once more what was done with it.") },
    { "correct-warewash", N_("Heat the water, and wash again what was washed in it.") },
    { "correct-jar", N_("Hold the lot back and tell the process authority. Never add acid and sell it without one.") },
    { "correct-thaw", N_("Finish thawing it in the refrigerator, or cook it at once.") },
    { "correct-time-start", N_("Bring it to heat or cold first: until then no clock may stand in for them.") },
    { "correct-frozen", N_("Keep it cold and use it up as thawed food; if it got warm, treat it as cold food that got "
                           "warm.") },
    { "correct-tick", N_("Do it now, before the work goes on.") },
  };

  g_return_val_if_fail (correction != NULL, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    if (g_str_equal (texts[i].id, correction->id))
      return g_strdup (_(texts[i].text));
  /* All others say so. */
  return g_strdup (_("Throw it away. Nobody can know what grew in it."));
}

/* --- the verdict ----------------------------------------------------------------------- */

/* A difference in the unit of the row, with one more digit than a thermometer shows. */
static char *
difference_text (const SteadLimit *row,
                 double            value,
                 SteadUnitSystem   units)
{
  gboolean celsius = units == STEAD_UNITS_METRIC;
  g_autofree char *number = NULL;

  if (g_str_equal (row->unit, "F") || g_str_equal (row->unit, "Fdiff") || g_str_equal (row->unit, "Cdiff"))
    {
      double f = g_str_equal (row->unit, "Cdiff") ? value * 1.8 : value;

      number = stead_number_format (celsius ? f / 1.8 : f, celsius ? 2 : 1);
      return g_strdup_printf (celsius ? "%s °C" : "%s °F", number);
    }
  if (g_str_equal (row->unit, "s") || g_str_equal (row->unit, "min") || g_str_equal (row->unit, "h")
      || g_str_equal (row->unit, "d"))
    {
      double factor = g_str_equal (row->unit, "s") ? 1 : g_str_equal (row->unit, "min") ? 60
                      : g_str_equal (row->unit, "h") ? 3600 : 86400;

      return stead_check_span_text (value * factor);
    }
  number = stead_number_format (value, 2);
  if (g_str_equal (row->unit, "pH"))
    return g_strdup_printf ("%s pH", number);
  return g_strdup_printf ("%s %s", number, row->unit);
}

static char *
limit_of (const SteadLimit *row,
          SteadUnitSystem   units)
{
  g_autoptr(GPtrArray) one = g_ptr_array_new ();

  g_ptr_array_add (one, (gpointer) row);
  return stead_check_limit_text (one, TRUE, units);
}

static char *
thermometer_text (const SteadCheckJudgement *judged,
                  SteadUnitSystem            units)
{
  const SteadLimit fahrenheit = { .unit = "F" };
  g_autofree char *off = difference_text (&fahrenheit, fabs (judged->error_f), units);
  g_autofree char *may = stead_check_row_text (judged->row, units);

  if (fabs (judged->error_f) < 0.05)
    /* Translators: a difference of temperature. */
    return g_strdup_printf (_("The thermometer shows what it should; it may be %s off."), may);
  /* Translators: two differences of temperature. */
  return judged->outcome == STEAD_CHECK_MET
         ? g_strdup_printf (_("The thermometer is %1$s off; it may be %2$s off."), off, may)
         : g_strdup_printf (_("The thermometer is %1$s off, and may be only %2$s off."), off, may);
}

/* All that is wrong with it: what is made anew has to be right in each. */
static char *
solution_text (const SteadCheckJudgement *judged)
{
  static const struct { SteadSolutionFaults fault; const char *text; } faults[] = {
    { STEAD_SOLUTION_WEAK, N_("The sanitizer is too weak.") },
    { STEAD_SOLUTION_STRONG, N_("The sanitizer is too strong.") },
    { STEAD_SOLUTION_PH, N_("The pH of the sanitizer is too high for it to work.") },
    { STEAD_SOLUTION_HARD, N_("The water is too hard for this sanitizer.") },
    { STEAD_SOLUTION_COLD, N_("The water of the sanitizer is too cold.") },
  };
  g_autoptr(GString) text = g_string_new (NULL);

  if (judged->faults == STEAD_SOLUTION_GOOD)
    return g_strdup (_("The sanitizer is as it must be."));
  for (gsize i = 0; i < G_N_ELEMENTS (faults); i++)
    if (judged->faults & faults[i].fault)
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", _(faults[i].text));
  return g_strdup (text->str);
}

static char *
not_met_text (const SteadCheckLine      *line,
              const SteadCheckJudgement *judged,
              SteadUnitSystem            units)
{
  g_autofree char *limit = limit_of (judged->row, units);
  g_autofree char *off = difference_text (judged->row, fabs (judged->margin), units);

  if (judged->own && judged->short_s > 0)
    {
      g_autofree char *time = stead_check_span_text (judged->short_s);

      /* Translators: a time. */
      return g_strdup_printf (_("The limit of the code is met, but the recipe's own is not: it was held %s too short."), time);
    }
  if (judged->own)
    /* Translators: a difference: "4 °F". */
    return g_strdup_printf (_("The limit of the code is met, but the recipe's own is not: %s are missing."), off);
  if (judged->margin >= 0 && judged->short_s > 0)
    {
      g_autofree char *time = isinf (judged->short_s) ? NULL : stead_check_span_text (judged->short_s);
      gboolean hold = judged->row->time_direction == STEAD_LIMIT_AT_LEAST;

      if (time == NULL)
        return g_strdup_printf (_("Not met: nobody knows how long it took. The limit is %s."), limit);
      /* Translators: a time, a limit. */
      return hold ? g_strdup_printf (_("Not met: hot enough, but held %1$s too short. The limit is %2$s."), time, limit)
                  : g_strdup_printf (_("Not met: it got there %1$s too late. The limit is %2$s."), time, limit);
    }
  if (judged->row->direction == STEAD_LIMIT_AT_LEAST || judged->row->direction == STEAD_LIMIT_ABOVE)
    /* Translators: a difference, a limit. */
    return g_strdup_printf (_("Not met: %1$s below it. The limit is %2$s."), off, limit);
  return g_strdup_printf (_("Not met: %1$s above it. The limit is %2$s."), off, limit);
}

static char *
met_text (const SteadCheckJudgement *judged,
          SteadUnitSystem            units)
{
  g_autofree char *limit = limit_of (judged->row, units);
  g_autofree char *margin = difference_text (judged->row, judged->margin, units);
  g_autofree char *doubt = difference_text (judged->row, judged->doubt, units);
  g_autofree char *hold = judged->hold_s > 0 ? stead_check_span_text (judged->hold_s) : NULL;

  switch (judged->outcome)
    {
    case STEAD_CHECK_IF_HELD:
      /* Translators: a time, a limit. */
      return g_strdup_printf (_("Hot enough, if it stays so for %1$s. The limit is %2$s."), hold, limit);
    case STEAD_CHECK_WITHIN_ERROR:
      /* Translators: two differences, a limit. */
      return g_strdup_printf (_("Met by %1$s, but the instrument may be off by %2$s: go on a little, or measure again. The "
                                "limit is %3$s."), margin, doubt, limit);
    case STEAD_CHECK_OPEN:
      return g_strdup (_("Still cooling: nothing is missed yet."));
    case STEAD_CHECK_MET:
    case STEAD_CHECK_NOT_MET:
    default:
      break;
    }
  if (judged->doubt > 0)
    return g_strdup_printf (_("Met by %1$s, more than the %2$s that the instrument may be off. The limit is %3$s."), margin,
                            doubt, limit);
  if (stead_limit_compare (judged->margin, 0) == 0)
    return g_strdup_printf (_("Met, just at the limit: %s."), limit);
  return g_strdup_printf (_("Met by %1$s. The limit is %2$s."), margin, limit);
}

/* --- odd readings ------------------------------------------------------------------------- */

static char *
typed_text (double      value,
            const char *unit)
{
  g_autofree char *number = stead_number_format (value, 1);

  return g_strdup_printf (g_str_equal (unit, "C") ? _("It is %s °C.") : _("It is %s °F."), number);
}

static void
ask (SteadCheckVerdict       *self,
     const SteadCheckReading *reading)
{
  const char *unit = reading->shown.unit;

  switch (self->judged.odd)
    {
    case STEAD_CHECK_ODD_FUTURE:
      self->question = g_strdup (_("The time lies ahead of now. When was it read?"));
      break;
    case STEAD_CHECK_ODD_BEFORE:
      self->question = g_strdup (_("The time lies before the step began. When was it read?"));
      break;
    case STEAD_CHECK_ODD_IMPOSSIBLE:
      self->question = g_strdup (_("Nothing here can be so hot or cold. What did the thermometer show?"));
      break;
    case STEAD_CHECK_ODD_SCALE:
      self->question = g_strdup (_("Which scale was it? The number fits the other one better."));
      self->as_typed = typed_text (reading->shown.value, unit);
      self->otherwise = typed_text (reading->shown.value, self->judged.other_unit);
      break;
    case STEAD_CHECK_ODD_NO:
    default:
      break;
    }
  self->sentence = g_strdup (self->question);
}

SteadCheckVerdict *
stead_check_verdict_new (const SteadCheckPlanAnswer  *plan,
                         const SteadCheckLine        *line,
                         const SteadCheckReading     *reading,
                         GError                     **error)
{
  g_autoptr(SteadCheckVerdict) self = g_new0 (SteadCheckVerdict, 1);
  SteadCheckJudgement *judged = &self->judged;
  SteadUnitSystem units;

  g_return_val_if_fail (plan != NULL && line != NULL && reading != NULL, NULL);
  units = plan->farm->units;
  if (!stead_check_judge (plan->table, line, reading, judged, error))
    return NULL;
  if (judged->odd != STEAD_CHECK_ODD_NO)
    {
      ask (self, reading);
      return g_steal_pointer (&self);
    }
  if (!isnan (judged->error_f))
    self->sentence = thermometer_text (judged, units);
  else if (reading->solution != NULL)
    self->sentence = solution_text (judged);
  else
    self->sentence = judged->outcome == STEAD_CHECK_NOT_MET ? not_met_text (line, judged, units) : met_text (judged, units);
  if (judged->correction != NULL)
    {
      self->correction = stead_check_correction_text (judged->correction);
      self->correction_source = stead_limits_source (judged->correction);
    }
  return g_steal_pointer (&self);
}
