/* stead-place-air-why.c - where the air of a cooler is going, worked out. */
#include "config.h"

#include "answer/stead-check-days-answer.h"
#include "answer/stead-place-air-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

char *
stead_place_air_worked (const SteadPlaceAirAnswer *self)
{
  g_autofree char *level = stead_number_format (self->line.level, 2), *slope = stead_number_format (fabs (self->line.slope), 3);
  g_autofree char *half = stead_number_format (STEAD_TREND_BAND * sqrt (self->line.slope_var), 2);
  g_autofree char *line = NULL, *limit = NULL, *days = NULL;

  /* Translators: readings, a temperature, a unit, a change a day, how far that may be off. */
  line = g_strdup_printf (self->line.slope > 0 ? _("By the line through %1$d readings it is now at %2$s %3$s and rises by %4$s %3$s a "
                                                   "day, give or take %5$s.")
                                               : _("By the line through %1$d readings it is now at %2$s %3$s and falls by %4$s %3$s a "
                                                   "day, give or take %5$s."),
                          self->line.n, level, self->unit, slope, half);
  if (isnan (self->days_left))
    return g_steal_pointer (&line);
  limit = stead_number_format (self->series.max, 1);
  days = stead_number_format (self->days_left, 1);
  /* Translators: the sentence above; the limit, the temperature, the change a day, days. */
  return g_strdup_printf (_("%1$s\n(%2$s − %3$s) ÷ %4$s = %5$s days"), line, limit, level, slope, days);
}

GPtrArray *
stead_place_air_answer_whys (const SteadPlaceAirAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (self->has_trend)
    g_ptr_array_add (whys, stead_why_new (
      g_strdup (_("Where the air is going")),
      _("A straight line through the readings since something was last done about it, each as exact as half a degree Celsius. "
        "Days until the limit = (limit − where the line is now) ÷ change a day. It is carried on for no longer than twice the "
        "days that it was measured over."),
      stead_place_air_worked (self), _("Weighted least squares; how exact a thermometer is: common practice, no source.")));
  return whys;
}
