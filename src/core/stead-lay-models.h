/* stead-lay-models.h - published laying curves, to compare with and to choose from.
 *
 * t is the week of lay, 0 to 80: no curve here was fitted beyond.  The sums are
 * kept from overflowing by log-sum-exp.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Week of lay up to which laying curves are used. */
#define STEAD_LAY_LAST_WEEK 80

/* One hen or a tiny flock: a rise and a fall, each a logistic curve.
 * Source: Grossman and Koops (2001), a model for individual egg production. */
typedef struct
{
  double max_eggs_week;  /* m, 7 */
  double k1;             /* height of the rise, share of m: 0.88 */
  double k2;             /* height after the fall: 0.76 */
  double c2_week;        /* middle of the fall: 25 */
} SteadLayIndividual;

/* A flock as a grower sketches it: rise, plateau, slope.
 * Source: Grossman et al. (2000), a persistency model for egg production. */
typedef struct
{
  double plateau_eggs_week;   /* yp */
  double start_week;          /* t1, start of the rise */
  double top_week;            /* t2, end of the rise */
  double rounding_week;       /* r, how soft the corners are, above 0 */
  double persistency_week;    /* P, length of the plateau */
  double slope_eggs_week2;    /* b4, after the plateau, below 0 */
} SteadLayPersistency;

/**
 * stead_lay_individual: y = m k1 (1-e^-t)/(1+e^-t) - m (k1-k2) (1-e^-t)/(1+e^-(t-c2))
 * stead_lay_individual_sum: its integral from week 0 to @t
 *
 * Returns: eggs a week, or eggs
 */
double stead_lay_individual (const SteadLayIndividual *model,
                             double                    t);
double stead_lay_individual_sum (const SteadLayIndividual *model,
                                 double                    t);

/**
 * stead_lay_persistency:
 *
 * y = r yp / (t2 - t1) [F(t1) - F(t2)] + r b4 F(t2 + P),
 * F(a) = ln ((e^(t/r) + e^(a/r)) / (1 + e^(a/r)))
 *
 * Returns: eggs a week
 */
double stead_lay_persistency (const SteadLayPersistency *model,
                              double                     t);

/**
 * stead_lay_gamma: y = a t^b e^(-c t); it rises too early and falls too fast
 * stead_lay_gamma_root: y = a t^b e^(-c t + d sqrt t)
 * stead_lay_decline: y = 1 / (0.01 + a r^t) - c (t - d), percent hen-day
 * stead_lay_compartment: y = a e^(-x t) / (1 + e^(-c (t - d))), in the unit of a
 *
 * Formulas from memory (Wood; McNally; Adams and Bell; Yang), agreed with by
 * several texts; no original could be read.
 */
double stead_lay_gamma (double a,
                        double b,
                        double c,
                        double t);
double stead_lay_gamma_root (double a,
                             double b,
                             double c,
                             double d,
                             double t);
double stead_lay_decline (double a,
                          double r,
                          double c,
                          double d,
                          double t);
double stead_lay_compartment (double a,
                              double x,
                              double c,
                              double d,
                              double t);

G_END_DECLS
