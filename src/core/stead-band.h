/* stead-band.h - a figure that is not known, as the band that it likely lies in.
 *
 * Where a band cannot be worked out in closed form it is drawn: a number of worlds
 * that the log allows, each with its figure.  The draws start from a fixed seed, so
 * the same log gives the same band, to the last digit.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Of ten such bands, eight hold what then comes. */
#define STEAD_BAND_LEVEL 0.8

/* Worlds drawn for one band. */
#define STEAD_BAND_DRAWS 1000

typedef struct
{
  double low;
  double likely;
  double high;
} SteadBand;

/**
 * stead_band_normal:
 * @mean: of a bell curve
 * @sd: its standard deviation, 0 or more
 * @level: chance to lie in the band, above 0 and below 1
 * @out: (out): equal chances on either side
 */
void stead_band_normal (double     mean,
                        double     sd,
                        double     level,
                        SteadBand *out);

/**
 * stead_band_of_draws:
 * @draws: (array length=n): in any order; the function changes the order
 * @n: how many, 1 or more
 * @level: chance to lie in the band, above 0 and below 1
 * @out: (out): quantiles of the draws, between neighbors by a straight line; @likely
 *   is the median
 */
void stead_band_of_draws (double    *draws,
                          gsize      n,
                          double     level,
                          SteadBand *out);

/**
 * stead_band_holds:
 * Returns: whether @value lies in @band, its ends included
 */
gboolean stead_band_holds (const SteadBand *band,
                           double           value);

G_END_DECLS
