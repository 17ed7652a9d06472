/* stead-alive.h - how many animals will be alive, by the deaths so far.
 *
 * Each animal has the same chance to die in a unit of time, whatever its age, and
 * dies on its own.  A predator or a sickness that takes many at once is not in it.
 * The chance is learned: what is usual counts as a few deaths seen before.
 */
#pragma once

#include "core/stead-band.h"

G_BEGIN_DECLS

/* The unit of time is the caller's, the same all through: a week, a day. */
typedef struct
{
  double alive;         /* now, 0 or more */
  double deaths;        /* seen so far */
  double exposure;      /* animals x units of time in which they were seen */
  double usual_rate;    /* deaths of one animal in a unit of time, above 0 */
  double usual_deaths;  /* as how many deaths the usual rate counts, above 0 */
} SteadAlive;

/**
 * stead_alive_rate:
 * Returns: deaths of one animal in a unit of time, usual and seen taken together:
 *   the mean of a gamma distribution
 */
double stead_alive_rate (const SteadAlive *flock);

/**
 * stead_alive_after:
 * @flock: the animals
 * @time: units of time from now, 0 or more
 *
 * Returns: expected number alive: alive (b / (b + time))^a, a deaths seen and usual,
 *   b the exposure that goes with them
 */
double stead_alive_after (const SteadAlive *flock,
                          double            time);

/**
 * stead_alive_band:
 * @flock: the animals, at most 1,000,000
 * @time: units of time from now, 0 or more
 * @level: chance to lie in the band, above 0 and below 1
 * @out: (out): number alive; @likely is the expected number
 */
void stead_alive_band (const SteadAlive *flock,
                       double            time,
                       double            level,
                       SteadBand        *out);

G_END_DECLS
