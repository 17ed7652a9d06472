/* stead-water-ends.c - the words in a chart of a reading. */
#include "config.h"

#include "answer/stead-reading-unit.h"
#include "answer/stead-water-answer.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define WORD_JOINER "\u2060"

void
stead_water_ends_clear (SteadWaterEnds *ends)
{
  g_clear_pointer (&ends->unit, g_free);
  g_clear_pointer (&ends->most, g_free);
  g_clear_pointer (&ends->least, g_free);
  g_clear_pointer (&ends->harm_above, g_free);
  g_clear_pointer (&ends->harm_below, g_free);
}

static const char *
unit_name (const SteadWaterAnswer *self,
           SteadWaterMeasure       measure)
{
  if (measure == STEAD_WATER_OXYGEN_SHARE)
    return "%";
  if (measure == STEAD_WATER_NH3N)
    measure = STEAD_WATER_TAN;
  for (int i = 0; i < STEAD_N_READINGS; i++)
    if (stead_reading_measure ((SteadReading) i) == measure)
      return stead_reading_unit_symbol (stead_reading_unit_default ((SteadReading) i, self->farm->units));
  g_return_val_if_reached ("");
}

/* Beside a chart a line must not break within "mg/L". */
static char *
value_text (SteadWaterMeasure measure,
            double            value,
            SteadUnitSystem   units)
{
  g_autofree char *text = stead_water_value_text (measure, value, units);
  g_auto(GStrv) parts = g_strsplit (text, "/", -1);

  return g_strjoinv ("/" WORD_JOINER, parts);
}

void
stead_water_answer_ends (const SteadWaterAnswer *self,
                         SteadWaterMeasure       measure,
                         SteadWaterEnds         *out)
{
  SteadUnitSystem units;
  SteadWaterBand band;
  g_autofree char *max = NULL, *min = NULL, *above = NULL, *below = NULL;

  g_return_if_fail (self != NULL && out != NULL);

  units = self->farm->units;
  stead_water_band (self->scene.sharers, measure, &band);
  max = value_text (measure, band.max, units);
  min = value_text (measure, band.min, units);
  above = value_text (measure, band.act_above, units);
  below = value_text (measure, band.act_below, units);
  out->unit = g_strdup (unit_name (self, measure));
  /* Translators: in these four: beside a line in a chart; a limit, and whose it is. */
  if (band.max_row != NULL)
    out->most = g_strdup_printf (_("most %s, %s"), max, stead_water_sharer_name (band.max_row->whose));
  if (band.min_row != NULL)
    out->least = g_strdup_printf (_("least %s, %s"), min, stead_water_sharer_name (band.min_row->whose));
  if (band.above_row != NULL)
    out->harm_above = g_strdup_printf (_("harm above %s, %s"), above, stead_water_sharer_name (band.above_row->whose));
  if (band.below_row != NULL)
    out->harm_below = g_strdup_printf (_("harm below %s, %s"), below, stead_water_sharer_name (band.below_row->whose));
}

/* From what a series shows to what the file keeps. */
static double
kept_value (const SteadWaterAnswer *self,
            SteadWaterMeasure       measure,
            double                  value)
{
  if (measure == STEAD_WATER_OXYGEN_SHARE)
    return value / 100;
  if (measure != STEAD_WATER_TEMPERATURE)
    return value;
  return stead_quantity_to_base (value, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, self->farm->units));
}

/* (nullable) (transfer none): what was done on a day, by the test of that day. */
static const char *
done_on (const SteadWaterAnswer *self,
         SteadDay                day)
{
  for (guint i = 0; i < self->tests->len; i++)
    {
      const SteadWaterTest *test = self->tests->pdata[i];

      if (test->day == day && test->action != NULL)
        return test->action;
    }
  return NULL;
}

char *
stead_water_answer_done_text (const SteadWaterAnswer *self,
                              SteadDay                from,
                              guint                   most)
{
  g_autoptr(GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);

  g_return_val_if_fail (self != NULL, NULL);

  for (guint i = self->tests->len; i-- > 0 && lines->len < most;)
    {
      const SteadWaterTest *test = self->tests->pdata[i];
      g_autofree char *day = NULL;

      if (test->day < from || test->action == NULL)
        continue;
      day = stead_day_format (test->day, STEAD_DAY_STYLE_SHORT);
      /* Translators: a day, and what was done then. */
      g_ptr_array_insert (lines, 0, g_strdup_printf (C_("what was done", "%s: %s"), day, test->action));
    }
  if (lines->len == 0)
    return NULL;
  g_ptr_array_add (lines, NULL);
  return g_strjoinv ("\n", (char **) lines->pdata);
}

char *
stead_water_answer_point_text (const SteadWaterAnswer  *self,
                               SteadWaterMeasure        measure,
                               const SteadReadingPoint *point)
{
  SteadWaterLine line = { .measure = measure };
  g_autofree char *day = NULL;
  g_autofree char *sentence = NULL;
  const char *done;

  g_return_val_if_fail (self != NULL && point != NULL, NULL);

  line.value = kept_value (self, measure, point->value);
  stead_water_judge (self->scene.sharers, measure, line.value, NULL, &line.judgement);
  day = stead_day_format ((SteadDay) floor (point->day), STEAD_DAY_STYLE_MEDIUM);
  sentence = stead_water_line_sentence (&line, self->farm->units);
  done = done_on (self, (SteadDay) floor (point->day));
  if (done != NULL)
    /* Translators: a day, a sentence about a reading, what was done then. */
    return g_strdup_printf (_("%s: %s What was done: %s"), day, sentence, done);
  /* Translators: a day, and a sentence about a reading. */
  return g_strdup_printf (_("%s: %s"), day, sentence);
}
