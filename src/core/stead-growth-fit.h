/* stead-growth-fit.h - the growth of a cohort of fish, learned from its weighings.
 *
 * The cube root of the mean weight grows by the thermal growth coefficient with the
 * degree-days (stead-fish-growth.h).  The coefficient starts from the species' own
 * and is learned: each weighing counts by one over its variance, and so does the
 * starting value.  With two weighings that is the mean of the old and the new
 * coefficient, each by one over its variance; from the third on the weighing that two
 * spans share is counted once, which a running mean of coefficients would miss.
 */
#pragma once

#include "core/stead-alive.h"
#include "core/stead-band.h"

G_BEGIN_DECLS

#define STEAD_GROWTH_FIT_MAX_WEIGHINGS 500
#define STEAD_GROWTH_FIT_MAX_OUTLIERS 16

/* How well the species' coefficient is known before any weighing: as a standard
 * deviation, a share of it.  Common practice, no source. */
#define STEAD_GROWTH_TGC_SD_FRAC 0.20

/* What a weighing is off besides the choice of the fish: water on them, the scale, a
 * net that catches the slow ones.  Share of the weight.  Common practice, no source. */
#define STEAD_GROWTH_WEIGHING_SD_FRAC 0.02

/* Spread of single weights, sd / mean, until single fish were weighed; it counts as
 * ten fish.  Common practice, no source. */
#define STEAD_GROWTH_USUAL_CV_FRAC 0.25
#define STEAD_GROWTH_USUAL_CV_FISH 10

/* Deaths of a fish in a day in grow-out: 2 % in 24 weeks; it counts as one death.
 * Source: update on tilapia and vegetable production in the UVI aquaponic system. */
#define STEAD_GROWTH_USUAL_DEATHS_DAY 0.00012
#define STEAD_GROWTH_USUAL_DEATHS 1

typedef struct
{
  double fish;         /* weighed, 1 or more */
  double mean_g;       /* of them, above 0 */
  double sd_g;         /* of single fish; NAN or 0: weighed in bulk */
  double degree_days;  /* since the weighing before; of the first one not used */
} SteadGrowthWeighing;

typedef struct
{
  double   tgc_x100;       /* growth coefficient, 100-fold */
  double   tgc_sd_x100;    /* its standard deviation */
  double   mean_g;         /* mean weight at the last weighing, by all of them */
  double   root_g13;       /* its cube root */
  double   covariance[2][2];  /* of root_g13 and tgc_x100 */
  double   cv_frac;        /* spread of single weights */
  double   cv_df;          /* as if it were known from so many fish more than one */
  double   phi;            /* scatter of the weighings: 1 is as their variance says */
  double   phi_df;
  gsize    n_used;
  gsize    n_outliers;     /* weighings far off, that do not count; the first are listed */
  gsize    outliers[STEAD_GROWTH_FIT_MAX_OUTLIERS];  /* indices */
  gboolean last_is_far_off;  /* the last weighing is among them: weigh again */
} SteadGrowthFit;

/**
 * stead_growth_fit:
 * @weighings: (array length=n): oldest first; the first may be the stocking
 * @n: how many, 1 to STEAD_GROWTH_FIT_MAX_WEIGHINGS
 * @tgc_x100: the species' coefficient, 100-fold, above 0
 * @out: (out): what the weighings say
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Variance of a mean weight: sd² / fish, and the share STEAD_GROWTH_WEIGHING_SD_FRAC
 * of the weight, squared; carried through the cube root, sd (W) / (3 W^(2/3)).  The sd
 * is the spread of all weighings together, as a share of the weight: that of one small
 * sample would make it count too much or too little by chance.  A weighing far off the
 * others is named and does not count (stead_fit_run_naming()).
 *
 * Returns: %TRUE, or %FALSE without a weighing or with a number that cannot be
 */
gboolean stead_growth_fit (const SteadGrowthWeighing  *weighings,
                           gsize                       n,
                           double                      tgc_x100,
                           SteadGrowthFit             *out,
                           GError                    **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_growth_fit_weight:
 * @fit: what was learned
 * @degree_days: from the last weighing on, 0 or more
 * @degree_days_sd: how unsure that sum is, as a standard deviation; 0: it is known
 * @level: chance to lie in the band, above 0 and below 1
 * @out: (out): mean weight of all the fish of the cohort, g
 */
void stead_growth_fit_weight (const SteadGrowthFit *fit,
                              double                degree_days,
                              double                degree_days_sd,
                              double                level,
                              SteadBand            *out);

/**
 * stead_growth_fit_need:
 * @fit: what was learned
 * @target_g: mean weight wanted, above 0
 * @level: chance to lie in the band, above 0 and below 1
 * @out: (out): degree-days from the last weighing until it is reached, 0: it is
 *   reached; @low is the soonest.  INFINITY if it may never be
 */
void stead_growth_fit_need (const SteadGrowthFit *fit,
                            double                target_g,
                            double                level,
                            SteadBand            *out);

/* A coming day that is asked about. */
typedef struct
{
  double days;            /* from today, 0 or more */
  double degree_days;     /* from the last weighing until then */
  double degree_days_sd;  /* how unsure that sum is; 0: known */
} SteadGrowthDay;

typedef struct
{
  SteadBand mean_g;      /* mean weight */
  SteadBand alive;       /* fish */
  SteadBand biomass_kg;  /* of all of them */
  SteadBand ready_frac;  /* share of at least the sale weight */
  SteadBand ready;       /* fish of at least the sale weight */
} SteadGrowthAhead;

/**
 * stead_growth_fit_ahead:
 * @fit: what was learned
 * @fish: alive today, deaths so far, fish-days of them; the usual rates above fit
 * @days: (array length=n): coming days, in order
 * @n: how many
 * @sale_g: weight from which a fish can be sold, above 0
 * @level: chance to lie in a band, above 0 and below 1
 * @out: (out) (array length=n): what each day will find
 *
 * Drawn: growth by its covariance, deaths by the cohort's own, spread of single
 * weights by its own uncertainty.  Single weights are lognormal
 * (stead-fish-sample.h).  A sickness that takes many at once is not in it.
 */
void stead_growth_fit_ahead (const SteadGrowthFit *fit,
                             const SteadAlive     *fish,
                             const SteadGrowthDay *days,
                             gsize                 n,
                             double                sale_g,
                             double                level,
                             SteadGrowthAhead     *out);

G_END_DECLS
