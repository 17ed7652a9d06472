/* stead-lay-text.c - a flock's weeks in words. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-flock-private.h"
#include "answer/stead-lay-text.h"

char *
stead_lay_text_week (const SteadFlockAnswer *answer,
                     gsize                   week)
{
  const SteadLayWeek *row;
  g_autofree char *day = NULL, *age = NULL, *rate = NULL, *eggs = NULL, *lost = NULL;
  double frac;

  g_return_val_if_fail (answer != NULL && week < answer->weeks->len, NULL);

  row = &g_array_index (answer->weeks, SteadLayWeek, week);
  frac = stead_flock_hen_day_frac (row->eggs, row->hen_days);
  day = stead_day_format (row->first_day, STEAD_DAY_STYLE_MEDIUM);
  age = stead_number_format (floor (row->age_weeks), 0);
  if (isnan (frac))
    /* Translators: a date, then an age in weeks */
    return g_strdup_printf (_("Week of %s, %s weeks old: no eggs were logged."), day, age);
  rate = stead_number_format (frac * 100, 0);
  eggs = stead_words_eggs (row->eggs);
  if (row->deaths == 0)
    /* Translators: a date, an age in weeks, a rate, a count with its noun */
    return g_strdup_printf (_("Week of %s, %s weeks old: %s eggs a day from 100 birds, %s in all."),
                            day, age, rate, eggs);
  lost = stead_words_flock (answer->flock->species, row->deaths);
  /* Translators: a date, an age in weeks, a rate, a count of eggs and a count of birds with their nouns */
  return g_strdup_printf (_("Week of %s, %s weeks old: %s eggs a day from 100 birds, %s in all. Lost: %s."),
                          day, age, rate, eggs, lost);
}

SteadDay
stead_lay_text_ahead_day (const SteadFlockAnswer *answer,
                          const SteadLayAhead    *week)
{
  return answer->flock->hatched_on + (SteadDay) lround ((week->age_weeks - 0.5) * 7);
}

char *
stead_lay_text_ahead (const SteadFlockAnswer *answer,
                      double                  age_weeks)
{
  const SteadLayAhead *week;
  g_autofree char *day = NULL, *age = NULL, *range = NULL;
  double at;

  g_return_val_if_fail (answer != NULL, NULL);

  at = floor (age_weeks - answer->age_weeks);
  if (!(at >= 0 && at < answer->ahead->len))
    return NULL;
  week = &g_array_index (answer->ahead, SteadLayAhead, (guint) at);
  day = stead_day_format (stead_lay_text_ahead_day (answer, week), STEAD_DAY_STYLE_MEDIUM);
  age = stead_number_format (floor (week->age_weeks), 0);
  range = stead_flock_eggs_range (&week->eggs);
  /* Translators: a day, an age in weeks, then "12 to 14 dozen" or "12 to 18 eggs". */
  return g_strdup_printf (_("Week of %s, %s weeks old: expect %s, 8 times in 10."), day, age, range);
}

void
stead_lay_ends_clear (SteadLayEnds *ends)
{
  g_clear_pointer (&ends->forecast, g_free);
  g_clear_pointer (&ends->band_high, g_free);
  g_clear_pointer (&ends->band_low, g_free);
  g_clear_pointer (&ends->band, g_free);
}

void
stead_lay_text_ends (const SteadFlockAnswer *answer,
                     SteadLayEnds           *out)
{
  g_autofree char *low = NULL, *likely = NULL, *high = NULL, *from = NULL;
  const SteadBand *end;

  g_return_if_fail (answer != NULL && out != NULL);

  *out = (SteadLayEnds) { 0 };
  if (answer->ahead_frac->len == 0)
    return;
  end = &g_array_index (answer->ahead_frac, SteadBand, answer->ahead_frac->len - 1);
  low = stead_words_percent (end->low, 0);
  from = stead_number_format (rint (end->low * 100), 0);
  likely = stead_words_percent (end->likely, 0);
  high = stead_words_percent (end->high, 0);
  /* Translators: at the end of a line in a chart; a rate such as "70%". */
  out->forecast = g_strdup_printf (answer->is_learned ? _("forecast %s") : _("expected %s"), likely);
  /* Translators: at the upper end of a band in a chart; "and over 60%" stands at the lower end. */
  out->band_high = g_strdup_printf (_("8 times in 10 under %s"), high);
  /* Translators: at the lower end of a band in a chart, after "8 times in 10 under 79%". */
  out->band_low = g_strdup_printf (_("and over %s"), low);
  /* Translators: the band of a chart; numbers of percent: "8 times in 10: 60 to 79%". */
  out->band = g_strdup_printf (_("8 times in 10: %s to %s"), from, high);
}
