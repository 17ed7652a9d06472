/* stead-growth-curve.h - the growth curve of young animals, learned from weighings.
 *
 * Logistic: weight = asym / (1 + e^((mid - age) / scale)).  It grows like interest at
 * first, fastest at the age mid, where half the full weight is reached, and levels
 * out.  For chicks and pullets; fish grow by warmth (stead-growth-fit.h).
 */
#pragma once

#include "core/stead-band.h"

G_BEGIN_DECLS

#define STEAD_GROWTH_MAX_OUTLIERS 16

typedef struct
{
  double age_days;
  double weight_g;  /* of one animal, or the mean of several; above 0 */
  double animals;   /* how many it is the mean of, 1 or more */
} SteadGrowthPoint;

typedef struct
{
  double asym_g;            /* weight that it levels out at */
  double mid_days;          /* age of fastest growth */
  double scale_days;        /* the smaller, the faster */
  double covariance[3][3];  /* of these three, in this order */
  double sd_g;              /* of one animal around the curve */
  double df;                /* as if it were known from so many weighings more than one */
  double last_age_days;     /* of the weighings used */
  gboolean tells_full;      /* whether the weighings reach far enough to tell asym_g */
  gsize  n_used;            /* weighings that were learned from */
  gsize  n_outliers;        /* that lie far off and do not count; the first are listed */
  gsize  outliers[STEAD_GROWTH_MAX_OUTLIERS];  /* indices */
} SteadGrowthCurve;

/**
 * stead_growth_curve_fit:
 * @points: (array length=n): weighings, in any order
 * @n: how many
 * @out: (out): the curve and how sure it is
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Least squares, each weighing with the weight of its number of animals
 * (stead_fit_run_naming()).  @tells_full is %FALSE as long as the full weight is not
 * known within a fifth, or growth is still speeding up at the last weighing: then
 * only the ages that were weighed mean something.
 *
 * Returns: %TRUE, or %FALSE with fewer than four weighings at four ages, if they do
 *   not grow, or if no curve can be told from them
 */
gboolean stead_growth_curve_fit (const SteadGrowthPoint  *points,
                                 gsize                    n,
                                 SteadGrowthCurve        *out,
                                 GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_growth_curve_weight_g:
 * Returns: expected weight of one animal
 */
double stead_growth_curve_weight_g (const SteadGrowthCurve *curve,
                                    double                  age_days);

/**
 * stead_growth_curve_band:
 * @curve: a learned curve
 * @age_days: age of the animals
 * @animals: the band is to hold the mean weight of so many; INFINITY: of the curve
 * @level: chance to lie in the band, above 0 and below 1
 * @out: (out): weight in g, 0 or more
 *
 * Covariance of the curve and scatter of the animals, with the wider tails of few
 * weighings (Student).
 */
void stead_growth_curve_band (const SteadGrowthCurve *curve,
                              double                  age_days,
                              double                  animals,
                              double                  level,
                              SteadBand              *out);

G_END_DECLS
