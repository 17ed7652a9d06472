/* stead-learn.h - a figure that starts from a book and is learned from own years.
 *
 * For what a farm sees once a year: the warmth that a variety needs to its first ripe
 * fruit.  A book's figure counts as one own year.  How much years differ is learned
 * with it, so the band of a farm whose years are alike gets narrow, slowly.
 */
#pragma once

#include "core/stead-band.h"

G_BEGIN_DECLS

/* Half the width of the band without own years, as a share of the book's figure. */
#define STEAD_LEARN_BAND_FRAC 0.15

typedef struct
{
  double mean;      /* what the next year is expected to need */
  double scale;     /* its spread: Student's distribution with @df */
  double df;
  gsize  n_years;   /* own years behind it */
} SteadLearned;

/**
 * stead_learn:
 * @book: the book's figure, above 0
 * @years: (array length=n): own figures of years that are over, each above 0
 * @n: how many, 0 or more
 * @out: (out): what was learned
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Normal years around a mean of the variety, both unknown (the conjugate prior of a
 * normal mean and variance).  The book counts as one year for the mean and as four
 * for the spread of years, which is set so that without own years 8 of 10 needs lie
 * within STEAD_LEARN_BAND_FRAC of the book.  Source: any text on Bayesian statistics;
 * from memory.  The 15 % are common practice, no source.
 *
 * Returns: %TRUE, or %FALSE if a year is not above 0
 */
gboolean stead_learn (double         book,
                      const double  *years,
                      gsize          n,
                      SteadLearned  *out,
                      GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_learn_band:
 * @learned: what was learned
 * @level: chance to lie in the band, above 0 and below 1
 * @out: (out): what the next year will need, 0 or more
 */
void stead_learn_band (const SteadLearned *learned,
                       double              level,
                       SteadBand          *out);

/* How much the days to come will bring. */
typedef struct
{
  const double *recent;     /* (nullable): degree-days of each of the last days, oldest first; two
                             * weeks are usual */
  gsize         n_recent;
  const double *usual;      /* (nullable) (array length=n_recent): what these days bring in a usual year */
  const double *coming;     /* (nullable) (array length=n_coming): the same of each day to come */
  gsize         n_coming;
} SteadLearnDays;

/* How far a day strays from the usual year while too few days tell, °C-days (common
 * practice, no source). */
#define STEAD_LEARN_DAY_SPREAD_C 3.0

/**
 * stead_learn_days:
 * @learned: degree-days needed
 * @so_far: degree-days since the start
 * @days: three recent days at least, or days to come; recent ones go with @usual where there
 *   are days to come
 * @level: chance to lie in the band, above 0 and below 1
 * @out: (out): days from now until the need is met; it is not met yet, as whoever
 *   looks at the plant can see.  INFINITY if it may never be, or not within @n_coming
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Drawn: the need, as long as it is above @so_far; the mean of the coming days, as
 * unsure as the recent ones leave it; and the coming days' own scatter.  Without a
 * usual year the coming days are like the recent ones.  With one, what the recent days
 * were off it, on the whole, is how unsure the coming ones are.  Warm and cold days come
 * in runs: the sum of days that follow each other scatters as much as that of a third
 * as many days on their own (common practice, no source).
 *
 * Returns: %TRUE, or %FALSE if the days to come bring no warmth
 */
gboolean stead_learn_days (const SteadLearned    *learned,
                           double                 so_far,
                           const SteadLearnDays  *days,
                           double                 level,
                           SteadBand             *out,
                           GError               **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
