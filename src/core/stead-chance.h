/* stead-chance.h - uncertain numbers: three-point guesses, sums, and reaching a goal.
 *
 * Independent parts only: weeks that share the same weather move together, and
 * a spread that leaves this out is too small.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A guess by its lowest, likeliest and highest value, in this order. */
typedef struct
{
  double low;
  double likely;
  double high;
} SteadThreePoint;

/**
 * stead_pert_mean: (a + 4 m + b) / 6
 * stead_pert_variance: ((b - a) / 6)^2
 * stead_triangle_mean: (a + m + b) / 3
 * stead_triangle_variance: (a² + m² + b² - a m - a b - m b) / 18
 * stead_triangle_density: density of the triangular shape at @x; NAN for a shape without width
 * stead_triangle_chance_at_most: chance of @x or less, 0 to 1; NAN for a shape without width
 * stead_triangle_quantile: value not passed with @chance, 0 to 1; the likeliest value for a
 *   shape without width; NAN for another chance
 *
 * The two shapes differ: name the one that is used.
 * Source: project management question on task times (pert); documentation of a
 * statistics library and an R manual (triangle).
 */
double stead_pert_mean (const SteadThreePoint *guess);
double stead_pert_variance (const SteadThreePoint *guess);
double stead_triangle_mean (const SteadThreePoint *guess);
double stead_triangle_variance (const SteadThreePoint *guess);
double stead_triangle_density (const SteadThreePoint *guess,
                               double                 x);
double stead_triangle_chance_at_most (const SteadThreePoint *guess,
                                      double                 x);
double stead_triangle_quantile (const SteadThreePoint *guess,
                                double                 chance);

/**
 * stead_normal_chance_at_most: chance of @x or less, 0 to 1; NAN without spread
 * stead_normal_quantile: value not passed with @chance, above 0 and below 1; NAN outside
 */
double stead_normal_chance_at_most (double mean,
                                    double sd,
                                    double x);
double stead_normal_quantile (double mean,
                              double sd,
                              double chance);

/**
 * stead_ruin_chance_reach:
 * @win_chance: of one step up, above 0 and below 1
 * @start: steps above nothing, 0 to @target
 * @target: steps, above 0
 *
 * Source: course page on the gambler's ruin.
 *
 * Returns: chance to reach @target before nothing, 0 to 1; NAN outside
 */
double stead_ruin_chance_reach (double win_chance,
                                double start,
                                double target);

/**
 * stead_ruin_expected_steps:
 * Returns: mean number of steps to either end; NAN outside
 */
double stead_ruin_expected_steps (double win_chance,
                                  double start,
                                  double target);

/* Saving towards a goal by weeks that vary. */
typedef struct
{
  double missing_cents;   /* goal less what is there, above 0 */
  double mean_cents;      /* of a week */
  double sd_cents;        /* of a week */
} SteadSaving;

/**
 * stead_saving_chance_after: chance that the total after @weeks is enough
 * stead_saving_chance_ever_by: chance that it was enough at some time by then: the
 *   inverse Gaussian distribution function, from memory, for a walk without steps
 * stead_saving_mean_weeks: mean time to the goal; NAN without gain
 * stead_saving_variance_weeks2: its variance; NAN without gain
 */
double stead_saving_chance_after (const SteadSaving *goal,
                                  double             weeks);
double stead_saving_chance_ever_by (const SteadSaving *goal,
                                    double             weeks);
double stead_saving_mean_weeks (const SteadSaving *goal);
double stead_saving_variance_weeks2 (const SteadSaving *goal);

G_END_DECLS
