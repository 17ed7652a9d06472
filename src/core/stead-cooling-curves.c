/* stead-cooling-curves.c - all curves that some readings allow, and their weights.
 *
 * For given surroundings and rate the excess at the start is linear, so the
 * weight of a curve is known in closed form up to two numbers.  Those two are
 * summed over: the surroundings by Gauss-Legendre points between their bounds,
 * the logarithm of the rate by Gauss-Hermite points round its best value, the
 * excess by Gauss-Hermite points of its normal distribution.
 */
#include "config.h"

#include "core/stead-cooling-private.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_min.h>
#include <math.h>

/* Half-lives from two minutes to two days: no pot of food lies outside. */
#define SLOWEST log (G_LN2 / 2880)
#define FASTEST log (G_LN2 / 2)
#define SCAN_STEPS 40

#define AMBIENT_POINTS 48
#define RATE_POINTS 11
#define EXCESS_POINTS 3
#define FORGOTTEN 1e-6      /* of the weight of the best curve */

typedef gsl_min_fminimizer Minimizer;
typedef gsl_integration_fixed_workspace Points;
typedef gsl_integration_glfixed_table LegendrePoints;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Minimizer, gsl_min_fminimizer_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Points, gsl_integration_fixed_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LegendrePoints, gsl_integration_glfixed_table_free)

/* The readings under fit, and the surroundings that are tried. */
typedef struct
{
  const SteadCoolingReading *readings;
  gsize                      n;
  double                     noise_f;
  double                     ambient_f;
  double                     last_best;    /* log rate that was best nearby; NAN: none yet */
} Problem;

/* What is best for one rate. */
typedef struct
{
  double excess_f;
  double excess_sd;
  double misfit;      /* sum of squared residuals over the noise */
} Best;

static Best
best_excess (const Problem *problem,
             double         log_rate)
{
  double rate = exp (log_rate);
  double ee = 0, ey = 0, yy = 0;
  Best best;

  for (gsize i = 0; i < problem->n; i++)
    {
      double e = exp (-rate * (problem->readings[i].minute - problem->readings[0].minute));
      double y = problem->readings[i].temp_f - problem->ambient_f;

      ee += e * e;
      ey += e * y;
      yy += y * y;
    }
  best.excess_f = ey / ee;
  best.excess_sd = problem->noise_f / sqrt (ee);
  best.misfit = MAX (0, yy - ey * ey / ee) / (problem->noise_f * problem->noise_f);
  return best;
}

/* Minus the logarithm of the weight of a rate, the excess summed over. */
static double
cost (double  log_rate,
      void   *data)
{
  const Problem *problem = data;
  Best best = best_excess (problem, log_rate);

  return best.misfit / 2 - log (best.excess_sd / problem->noise_f);
}

/* Walks all rates in steps; the step with the lowest cost. */
static double
scan_log_rates (Problem *problem)
{
  double step = (FASTEST - SLOWEST) / SCAN_STEPS;
  double best = HUGE_VAL;
  double at = SLOWEST;

  for (int i = 0; i <= SCAN_STEPS; i++)
    {
      double value = cost (SLOWEST + i * step, problem);

      if (value < best)
        {
          best = value;
          at = SLOWEST + i * step;
        }
    }
  return at;
}

static gboolean
is_lowest_of_three (Problem *problem,
                    double   middle,
                    double   step)
{
  double value = cost (middle, problem);

  return middle - step >= SLOWEST && middle + step <= FASTEST
         && value < cost (middle - step, problem) && value < cost (middle + step, problem);
}

/* The lowest cost over all rates; on an edge, if it lies there. */
static double
best_log_rate (Problem *problem)
{
  gsl_function function = { cost, problem };
  g_autoptr(Minimizer) minimizer = NULL;
  double step = (FASTEST - SLOWEST) / SCAN_STEPS;
  double middle = problem->last_best;

  /* Close to the surroundings that were tried before, the best rate is close too. */
  if (isnan (middle) || !is_lowest_of_three (problem, middle, step))
    middle = scan_log_rates (problem);
  if (!is_lowest_of_three (problem, middle, step))
    return problem->last_best = middle;
  minimizer = gsl_min_fminimizer_alloc (gsl_min_fminimizer_brent);
  gsl_min_fminimizer_set (minimizer, &function, middle, middle - step, middle + step);
  for (int tries = 0; tries < 60; tries++)
    {
      gsl_min_fminimizer_iterate (minimizer);
      if (gsl_min_test_interval (gsl_min_fminimizer_x_lower (minimizer),
                                 gsl_min_fminimizer_x_upper (minimizer), 1e-4, 0) == GSL_SUCCESS)
        break;
    }
  return problem->last_best = gsl_min_fminimizer_x_minimum (minimizer);
}

/* How wide the weight is round the best rate. */
static double
log_rate_sd (Problem *problem,
             double   log_rate)
{
  double step = 1e-3;
  double curvature = (cost (log_rate + step, problem) - 2 * cost (log_rate, problem)
                      + cost (log_rate - step, problem)) / (step * step);

  return curvature > 4 ? 1 / sqrt (curvature) : 0.5;
}

typedef struct
{
  Points         *rate;
  Points         *excess;
  LegendrePoints *ambient;
} Grid;

static void
add_excesses (const Problem *problem,
              const Grid    *grid,
              double         log_rate,
              double         log_weight,
              GArray        *curves)
{
  Best best = best_excess (problem, log_rate);
  const double *x = gsl_integration_fixed_nodes (grid->excess);
  const double *w = gsl_integration_fixed_weights (grid->excess);

  for (gsize i = 0; i < EXCESS_POINTS; i++)
    {
      CoolingCurve curve = { problem->ambient_f, best.excess_f + G_SQRT2 * best.excess_sd * x[i],
                             exp (log_rate), log_weight + log (w[i]) };

      if (curve.excess_f > 0)
        g_array_append_val (curves, curve);
    }
}

/* The curves of one temperature of the surroundings, weights as logarithms.
 * Returns the logarithm of their sum, -HUGE_VAL if there is none. */
static double
add_rates (Problem    *problem,
           const Grid *grid,
           double      log_weight,
           GArray     *curves)
{
  double middle = best_log_rate (problem);
  double width = log_rate_sd (problem, middle);
  const double *x = gsl_integration_fixed_nodes (grid->rate);
  const double *w = gsl_integration_fixed_weights (grid->rate);
  double sum = -HUGE_VAL;

  for (gsize i = 0; i < RATE_POINTS; i++)
    {
      double log_rate = middle + G_SQRT2 * width * x[i];
      double log_w;

      if (log_rate < SLOWEST || log_rate > FASTEST)
        continue;
      log_w = log_weight + log (w[i]) + x[i] * x[i] + log (width) - cost (log_rate, problem);
      add_excesses (problem, grid, log_rate, log_w, curves);
      sum = MAX (sum, log_w) + log1p (exp (-fabs (sum - log_w)));
    }
  return sum;
}

/* All curves for surroundings between two bounds; narrows the bounds to where
 * the weight is. */
static void
weigh_between (Problem    *problem,
               const Grid *grid,
               double     *low,
               double     *high,
               GArray     *curves)
{
  double ambients[AMBIENT_POINTS];
  double sums[AMBIENT_POINTS];
  double best = -HUGE_VAL;
  double first = *low;
  double last = *high;
  gboolean found = FALSE;

  g_array_set_size (curves, 0);
  for (gsize i = 0; i < AMBIENT_POINTS; i++)
    {
      double weight;

      gsl_integration_glfixed_point (*low, *high, i, &ambients[i], &weight, grid->ambient);
      problem->ambient_f = ambients[i];
      sums[i] = add_rates (problem, grid, log (weight), curves);
      best = MAX (best, sums[i]);
    }
  for (gsize i = 0; i < AMBIENT_POINTS; i++)
    if (sums[i] > best + log (FORGOTTEN))
      {
        if (!found)
          first = i > 0 ? ambients[i - 1] : *low;
        last = i + 1 < AMBIENT_POINTS ? ambients[i + 1] : *high;
        found = TRUE;
      }
  *low = first;
  *high = last;
}

/* Weights from logarithms to shares of 1; what does not count is dropped. */
static void
normalize (GArray *curves)
{
  double best = -HUGE_VAL;
  double sum = 0;
  guint kept = 0;

  for (guint i = 0; i < curves->len; i++)
    best = MAX (best, g_array_index (curves, CoolingCurve, i).weight);
  for (guint i = 0; i < curves->len; i++)
    {
      CoolingCurve curve = g_array_index (curves, CoolingCurve, i);

      curve.weight = exp (curve.weight - best);
      if (curve.weight < FORGOTTEN)
        continue;
      sum += curve.weight;
      g_array_index (curves, CoolingCurve, kept++) = curve;
    }
  g_array_set_size (curves, kept);
  for (guint i = 0; i < kept; i++)
    g_array_index (curves, CoolingCurve, i).weight /= sum;
}

GArray *
cooling_weigh_curves (const SteadCoolingReading *readings,
                      gsize                      n,
                      const SteadCoolingSetting *setting)
{
  Problem problem = { readings, n, setting->noise_f, 0, NAN };
  GArray *curves = g_array_new (FALSE, FALSE, sizeof (CoolingCurve));
  g_autoptr(Points) rate = gsl_integration_fixed_alloc (gsl_integration_fixed_hermite, RATE_POINTS, 0, 1, 0, 0);
  g_autoptr(Points) excess = gsl_integration_fixed_alloc (gsl_integration_fixed_hermite, EXCESS_POINTS, 0, 1, 0, 0);
  g_autoptr(LegendrePoints) ambient = gsl_integration_glfixed_table_alloc (AMBIENT_POINTS);
  Grid grid = { rate, excess, ambient };
  double low = setting->ambient_low_f;
  double high = setting->ambient_high_f;
  double width;

  do
    {
      width = high - low;
      weigh_between (&problem, &grid, &low, &high, curves);
    }
  while (high - low < 0.7 * width);
  normalize (curves);
  return curves;
}

static double
misfit_at (double  ambient_f,
           void   *data)
{
  Problem *problem = data;

  problem->ambient_f = ambient_f;
  return best_excess (problem, best_log_rate (problem)).misfit;
}

double
cooling_least_misfit (const SteadCoolingReading *readings,
                      gsize                      n,
                      const SteadCoolingSetting *setting)
{
  Problem problem = { readings, n, setting->noise_f, 0, NAN };
  double step = (setting->ambient_high_f - setting->ambient_low_f) / 12;
  double least = HUGE_VAL;

  /* The misfit is flat in the surroundings beside what a jump does to it. */
  for (int i = 0; i <= 12; i++)
    least = MIN (least, misfit_at (setting->ambient_low_f + i * step, &problem));
  return least;
}

