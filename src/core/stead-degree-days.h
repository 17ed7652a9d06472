/* stead-degree-days.h - warmth and cold summed over days.
 *
 * Temperatures are °C and sums °C-days; a °F-day is 5/9 of a °C-day.  Methods
 * differ on the same day: 92 and 68 °F give 30 or 27, 66 and 34 °F give 0 or 8.
 * A sum without its method says little, so the method is always shown with it.
 *
 * A day without both readings (NAN) is a gap.  Gaps are counted and told; they
 * are never taken for a day without warmth.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* °F-days in a °C-day. */
#define STEAD_F_DAYS_PER_C_DAY 1.8

typedef enum
{
  STEAD_DEGREE_DAYS_AVERAGE,          /* mean of the day less the base */
  STEAD_DEGREE_DAYS_SUBSTITUTE,       /* both readings are first moved into base to upper */
  STEAD_DEGREE_DAYS_REDUCED_CEILING,  /* what the maximum has above upper is taken off upper */
} SteadDegreeDayMethod;

typedef struct
{
  SteadDegreeDayMethod method;
  double               base_c;    /* below it nothing grows */
  double               upper_c;   /* above it nothing grows faster; not below base_c.
                                   * The plain average does not look at it. */
} SteadDegreeDayRule;

/* What a maximum-minimum thermometer showed for one day; NAN: not read. */
typedef struct
{
  double max_c;
  double min_c;
} SteadDayTemps;

typedef struct
{
  double sum_c;    /* °C-days of the days that were read */
  gsize  n_days;   /* days that were read */
  gsize  n_gaps;   /* days that were not, or whose maximum lies below the minimum */
} SteadDegreeDaySum;

/**
 * stead_degree_day:
 * @rule: how to count
 * @max_c: highest temperature of the day, °C, or NAN
 * @min_c: lowest temperature of the day, °C, or NAN
 *
 * Mean of the two readings less the base, never below 0.  The method of
 * substitution moves both readings into base to upper first; the reduced ceiling
 * makes a maximum above upper into upper - (maximum - upper) and leaves the
 * minimum as it is.
 * Sources: three worked days in garden answers on how long tomatoes take to ripen
 * (average); Iowa State University, Agronomy 541 lesson 2b, equation 2.1 and rules
 * 1 and 2 (substitute); table of degree-day methods, Heliyon 6(10) e05114, table 3,
 * methods VIII and IX (substitute, reduced ceiling).
 *
 * Returns: °C-days of the day; NAN for a gap, also where the maximum is below the minimum
 */
double stead_degree_day (const SteadDegreeDayRule *rule,
                         double                    max_c,
                         double                    min_c);

/**
 * stead_degree_day_of_mean:
 * @base_c: the base, °C
 * @mean_c: mean temperature of the day, °C, or NAN
 *
 * Source: Midwestern Regional Climate Center, growing degree days, worked line.
 *
 * Returns: mean less base, at least 0; NAN for a gap
 */
double stead_degree_day_of_mean (double base_c,
                                 double mean_c);

/**
 * stead_heating_degree_day:
 * @base_c: temperature up to which there is heating, °C; 18.3 (65 °F) for houses
 * @mean_c: mean temperature of the day, °C, or NAN
 *
 * Source: Statistics Netherlands, heating degree days, definition.
 *
 * Returns: base less mean, at least 0; NAN for a gap
 */
double stead_heating_degree_day (double base_c,
                                 double mean_c);

/**
 * stead_day_mean_c:
 * Returns: half the sum of the two readings; NAN for a gap, also where the
 *   maximum is below the minimum
 */
double stead_day_mean_c (double max_c,
                         double min_c);

/**
 * stead_degree_day_sum:
 * @rule: how to count
 * @days: (array length=n_days): readings, NAN where there is none
 * @n_days: how many days, read or not
 * @out_sum: (out): the sum over the days that were read, and how many were not
 */
void stead_degree_day_sum (const SteadDegreeDayRule *rule,
                           const SteadDayTemps      *days,
                           gsize                     n_days,
                           SteadDegreeDaySum        *out_sum);

/**
 * stead_heating_degree_day_sum:
 * @base_c: as for stead_heating_degree_day()
 * @days: (array length=n_days): readings outdoors, NAN where there is none
 * @n_days: how many days, read or not
 * @out_sum: (out): the sum over the days that were read, and how many were not
 */
void stead_heating_degree_day_sum (double               base_c,
                                   const SteadDayTemps *days,
                                   gsize                n_days,
                                   SteadDegreeDaySum   *out_sum);

G_END_DECLS
