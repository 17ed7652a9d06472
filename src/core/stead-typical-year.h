/* stead-typical-year.h - what the weather of a day is like in a usual year.
 *
 * Twelve monthly means of the daily maximum and minimum, as weather services
 * print them, and how far a day strays from them.  Between the middles of two
 * months the days lie on a straight line; its ends are set so that the days of a
 * month have the month's mean.  A line through the means themselves would take
 * some of the heat off July and some of the cold off January.
 *
 * The straying matters.  In April a heater runs on the cold days although the
 * mean day needs none: degree days of the mean day alone come out too low.
 */
#pragma once

#include "core/stead-calendar.h"
#include "core/stead-degree-days.h"

G_BEGIN_DECLS

typedef struct
{
  double max_c[12];   /* mean of the daily maximum, January first */
  double min_c[12];   /* mean of the daily minimum; not above the maximum */
  double spread_c;    /* standard deviation of a day's mean about the usual; 0: not known */
} SteadTypicalYear;

/**
 * stead_typical_year_is_valid:
 * Returns: whether all numbers are finite, no maximum lies below its minimum and
 *   the spread is not below 0
 */
gboolean stead_typical_year_is_valid (const SteadTypicalYear *year);

/**
 * stead_typical_year_day:
 * @year: a valid year
 * @day: a valid day of any year
 * @out_temps: (out): the usual readings of that day; the maximum is never below the minimum
 */
void stead_typical_year_day (const SteadTypicalYear *year,
                             SteadDay                day,
                             SteadDayTemps          *out_temps);

/**
 * stead_typical_year_degree_day:
 * @year: a valid year
 * @rule: how to count
 * @day: a valid day of any year
 *
 * The mean over days that stray as a bell curve of @year's spread, both readings
 * by the same amount.
 *
 * Returns: °C-days to be expected of that day
 */
double stead_typical_year_degree_day (const SteadTypicalYear   *year,
                                      const SteadDegreeDayRule *rule,
                                      SteadDay                  day);

/**
 * stead_typical_year_heating_degree_day:
 * @year: a valid year
 * @base_c: as for stead_heating_degree_day()
 * @day: a valid day of any year
 *
 * Returns: heating °C-days to be expected of that day
 */
double stead_typical_year_heating_degree_day (const SteadTypicalYear *year,
                                              double                  base_c,
                                              SteadDay                day);

/* Days that a month must have been read before its mean is worth something. */
#define STEAD_TYPICAL_MONTH_LEAST_DAYS 20

/**
 * stead_typical_year_from_days:
 * @first_day: the day of @days[0]
 * @days: (array length=n_days): own readings, NAN where there is none
 * @n_days: how many days, read or not
 * @out_year: (out): monthly means, and the spread about them
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE if a month of the year was read on fewer than
 *   %STEAD_TYPICAL_MONTH_LEAST_DAYS days
 */
gboolean stead_typical_year_from_days (SteadDay              first_day,
                                       const SteadDayTemps  *days,
                                       gsize                 n_days,
                                       SteadTypicalYear     *out_year,
                                       GError              **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
