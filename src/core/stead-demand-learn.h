/* stead-demand-learn.h - the demand of a sale day, from a guess and from past days.
 *
 * A day that sold out tells only that people asked for that much or more.  Taking what
 * was sold for what was asked for would make every guess too low, a little more each
 * season.
 */
#pragma once

#include "core/stead-chance.h"
#include "core/stead-order.h"

G_BEGIN_DECLS

/* The guess counts as so many past days.  Common practice, no source. */
#define STEAD_DEMAND_GUESS_DAYS 2

#define STEAD_DEMAND_MOST_DAYS 1000

/* One product on one past day. */
typedef struct
{
  double   sold;       /* 0 or more; with people who had to be sent away, if counted */
  gboolean sold_out;   /* more might have been asked for */
} SteadPastDay;

/**
 * stead_demand_learn:
 * @guess: lowest, likeliest and highest, in this order and 0 or more
 * @days: (array length=n): past days that are like the one to come
 * @n: 0 to %STEAD_DEMAND_MOST_DAYS
 * @out: (out): normal demand of one more such day
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Mean and variance of the guess (triangle) and of the days together, the guess as
 * %STEAD_DEMAND_GUESS_DAYS days; a day that sold out stands for what it is expected to
 * have been, by the bell curve above what was sold, until nothing changes (maximum
 * likelihood with censored readings by expectation and maximization: Dempster, Laird
 * and Rubin 1977).  The spread grows by what few days leave unknown of the mean.
 *
 * Returns: %TRUE; or %FALSE with @out left alone for a number that cannot be
 */
gboolean stead_demand_learn (const SteadThreePoint  *guess,
                             const SteadPastDay     *days,
                             gsize                   n,
                             SteadDemand            *out,
                             GError                **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
