/* stead-fish-growth.h - growth of fish by warmth and days.
 *
 * The thermal growth coefficient is shown 100-fold here, as on the fish farmers'
 * calculations page; many books print it 1,000-fold:
 *   TGC = 100 (W2^(1/3) - W1^(1/3)) / sum of daily degrees Celsius, W in grams.
 *
 * Limits (Jobling 2003, the thermal growth coefficient model: a cautionary
 * note): it presumes a weight proportional to the cube of the length, steady
 * growth in length, and a rate that rises with warmth.  Above the optimum growth
 * falls while degree-days go on; so a day counts no more than the optimum, and
 * nothing below the warmth at which the species feeds.
 */
#pragma once

#include "core/stead-fish.h"

G_BEGIN_DECLS

/* Temperatures of water that can be: below is ice, above no fish lives. */
#define STEAD_FISH_LEAST_C 0
#define STEAD_FISH_MOST_C 45

/**
 * stead_fish_degree_day:
 * @fish: the species
 * @temp_c: mean temperature of the water on one day
 *
 * Returns: degree-days that the day counts: @temp_c, at most the optimum, 0 below
 *   the warmth at which the fish feeds
 */
double stead_fish_degree_day (const SteadFishKind *fish,
                              double               temp_c);

/**
 * stead_fish_degree_days:
 * @temps_c: (array length=n): mean temperature of each day, 0 to 45
 * @out_sum: (out): their degree-days
 * @error: return location for a #GError in %STEAD_CORE_ERROR; it names the day
 *
 * Returns: %TRUE, or %FALSE if a temperature cannot be
 */
gboolean stead_fish_degree_days (const SteadFishKind  *fish,
                                 const double         *temps_c,
                                 gsize                 n,
                                 double               *out_sum,
                                 GError              **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_fish_tgc_x100:
 * @start_g: mean weight at the first weighing, above 0
 * @end_g: at the second, above 0
 * @degree_days: between them, above 0
 *
 * Returns: the coefficient, 100-fold; below 0 if they lost weight; NAN if a
 *   number is not above 0
 */
double stead_fish_tgc_x100 (double start_g,
                            double end_g,
                            double degree_days);

/**
 * stead_fish_weight_g:
 * @start_g: mean weight today, above 0
 * @tgc_x100: the coefficient, 100-fold
 * @degree_days: to come, 0 or more
 *
 * Returns: mean weight then, (W1^(1/3) + TGC x sum / 100)^3, not below 0; NAN for
 *   a weight or a sum that cannot be
 */
double stead_fish_weight_g (double start_g,
                            double tgc_x100,
                            double degree_days);

/**
 * stead_fish_start_g: the weight from which @degree_days lead to @end_g
 *
 * Returns: the weight before; NAN if no fish was that small
 */
double stead_fish_start_g (double end_g,
                           double tgc_x100,
                           double degree_days);

/**
 * stead_fish_degree_days_to:
 * @target_g: weight wanted
 *
 * Returns: degree-days from @start_g to @target_g, 0 if it is reached already;
 *   NAN without growth
 */
double stead_fish_degree_days_to (double start_g,
                                  double target_g,
                                  double tgc_x100);

/**
 * stead_fish_forecast:
 * @fish: the species, for the optimum and the least warmth
 * @start_g: mean weight at the start of the first day, above 0
 * @tgc_x100: the coefficient, 100-fold, 0 or more
 * @temps_c: (array length=n): mean temperature of each day, 0 to 45
 * @n: days
 * @out_weights_g: (array length=n): weight at the end of each day
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE with @out_weights_g left alone
 */
gboolean stead_fish_forecast (const SteadFishKind  *fish,
                              double                start_g,
                              double                tgc_x100,
                              const double         *temps_c,
                              gsize                 n,
                              double               *out_weights_g,
                              GError              **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_fish_days_to:
 * @target_g: weight wanted
 * @temps_c: (array length=n): mean temperature of each day to come, 0 to 45
 * @out_days: (out): days from the start of the first day, with a part of the last
 *   one; 0 if @target_g is reached already
 * @error: return location for a #GError in %STEAD_CORE_ERROR;
 *   %STEAD_CORE_ERROR_NONE if the days end before
 *
 * The inverse of stead_fish_forecast().
 *
 * Returns: %TRUE, or %FALSE with @out_days left alone
 */
gboolean stead_fish_days_to (const SteadFishKind  *fish,
                             double                start_g,
                             double                target_g,
                             double                tgc_x100,
                             const double         *temps_c,
                             gsize                 n,
                             double               *out_days,
                             GError              **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_fish_sgr_pct: specific growth rate, 100 (ln W2 - ln W1) / days
 *
 * It falls as fish grow, so it is never carried on into the future.
 *
 * Returns: percent a day; NAN if a number is not above 0
 */
double stead_fish_sgr_pct (double start_g,
                           double end_g,
                           double days);

/**
 * stead_fish_condition: 100 x weight / length^3
 * stead_fish_condition_weight_g: the weight of that condition
 * stead_fish_condition_length_cm: the length
 *
 * Total or standard length: say which, and keep to it.  Compare with the mean of
 * your own stock, not with another species.
 * Source: Fulton's condition factor, a river research trust's page.
 *
 * Returns: the third number; NAN if one of the two is not above 0
 */
double stead_fish_condition (double weight_g,
                             double length_cm);
double stead_fish_condition_weight_g (double condition,
                                      double length_cm);
double stead_fish_condition_length_cm (double condition,
                                       double weight_g);

G_END_DECLS
