/* stead-lay-text.c - a flock's weeks in words. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

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
    return g_strdup_printf (_("Week of %s, %s weeks old: %s eggs a day from 100 hens, %s in all."),
                            day, age, rate, eggs);
  lost = stead_words_hens (row->deaths);
  /* Translators: a date, an age in weeks, a rate, a count of eggs and a count of hens with their nouns */
  return g_strdup_printf (_("Week of %s, %s weeks old: %s eggs a day from 100 hens, %s in all. Lost: %s."),
                          day, age, rate, eggs, lost);
}
