/* stead-fish-sample.h - some weighed fish, and what they say of all.
 *
 * Weigh about 30 fish or a tenth of them, after a day without feed.
 *
 * The weights of a cohort are taken as lognormal: a weight is never below 0, and
 * a few big fish stretch the upper end, as in any tank where some eat first.  The
 * spread is held as the coefficient of variation, sd / mean, which stays about
 * the same while the fish grow.
 */
#pragma once

#include "core/stead-fish.h"

G_BEGIN_DECLS

/* Figures of a sample. */
typedef struct
{
  gsize  n;
  double mean_g;
  double sd_g;         /* of the fish, n - 1 in the divisor; NAN for one fish */
  double se_g;         /* of the mean, sd / sqrt (n); NAN for one fish */
  double cv_frac;      /* sd / mean; NAN for one fish */
  double condition;    /* mean of 100 W / L^3; NAN without lengths */
} SteadFishSample;

/**
 * stead_fish_sample:
 * @weights_g: (array length=n): each fish, above 0
 * @lengths_cm: (array length=n) (nullable): the same fish, above 0
 * @n: how many fish
 * @out_sample: (out): the figures
 * @error: return location for a #GError in %STEAD_CORE_ERROR; it names the fish
 *
 * Returns: %TRUE, or %FALSE without fish or with a weight or length that cannot be
 */
gboolean stead_fish_sample (const double     *weights_g,
                            const double     *lengths_cm,
                            gsize             n,
                            SteadFishSample  *out_sample,
                            GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_fish_share_over:
 * @mean_g: mean weight, above 0
 * @cv_frac: spread, sd / mean, 0 or more
 * @sale_g: weight from which a fish can be sold, above 0
 *
 * Returns: share of the fish at or over @sale_g; NAN for what cannot be
 */
double stead_fish_share_over (double mean_g,
                              double cv_frac,
                              double sale_g);

/**
 * stead_fish_mean_for_share_g:
 * @cv_frac: spread, 0 or more
 * @sale_g: weight from which a fish can be sold, above 0
 * @share: share of the fish that must have it, above 0 and below 1
 *
 * The inverse of stead_fish_share_over().
 *
 * Returns: mean weight at which the share has it; NAN for what cannot be
 */
double stead_fish_mean_for_share_g (double cv_frac,
                                    double sale_g,
                                    double share);

/**
 * stead_fish_days_for_share:
 * @fish: the species
 * @mean_g: mean weight today, above 0
 * @cv_frac: spread, taken to stay
 * @sale_g: weight from which a fish can be sold
 * @share: share of the fish that must have it, above 0 and below 1
 * @tgc_x100: growth coefficient, 100-fold
 * @temps_c: (array length=n): mean temperature of each day to come
 * @out_days: (out): days from today, with a part of the last one
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE with @out_days left alone
 */
gboolean stead_fish_days_for_share (const SteadFishKind  *fish,
                                    double                mean_g,
                                    double                cv_frac,
                                    double                sale_g,
                                    double                share,
                                    double                tgc_x100,
                                    const double         *temps_c,
                                    gsize                 n,
                                    double               *out_days,
                                    GError              **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
