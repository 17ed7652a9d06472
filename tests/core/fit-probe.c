/* fit-probe.c - lets another program see what the fits make of given rows.
 *
 * usage: fit-probe growth < ROWS    age, weight, animals a line
 *        fit-probe lay < ROWS       age of the birds, hen-days, eggs a line
 *        fit-probe curve < ROWS     week of lay, rate, one over its variance a line: the
 *                                   laying curve with its usual priors, plain least squares
 *
 * Prints lines of a name and numbers, to the last digit.
 */
#include "core/stead-fit.h"
#include "core/stead-growth-curve.h"
#include "core/stead-lay-fit.h"

#include <math.h>
#include <stdio.h>

#define MAX_ROWS 500

static double rows[MAX_ROWS][3];

static gsize
read_rows (void)
{
  gsize n = 0;

  while (n < MAX_ROWS && scanf ("%lf %lf %lf", &rows[n][0], &rows[n][1], &rows[n][2]) == 3)
    n++;
  return n;
}

static void
print_numbers (const char   *name,
               const double *numbers,
               gsize         n)
{
  printf ("%s", name);
  for (gsize i = 0; i < n; i++)
    printf (" %.17g", numbers[i]);
  printf ("\n");
}

static int
refuse (const GError *error)
{
  printf ("error %s\n", error->message);
  return 1;
}

static int
probe_growth (gsize n)
{
  SteadGrowthPoint points[MAX_ROWS];
  SteadGrowthCurve curve;
  g_autoptr(GError) error = NULL;

  for (gsize i = 0; i < n; i++)
    points[i] = (SteadGrowthPoint) { rows[i][0], rows[i][1], rows[i][2] };
  if (!stead_growth_curve_fit (points, n, &curve, &error))
    return refuse (error);
  print_numbers ("values", (const double[]) { curve.asym_g, curve.mid_days, curve.scale_days }, 3);
  print_numbers ("covariance", &curve.covariance[0][0], 9);
  print_numbers ("sd", &curve.sd_g, 1);
  print_numbers ("outliers", (const double[]) { (double) curve.n_outliers }, 1);
  return 0;
}

static int
probe_lay (gsize n)
{
  SteadLayWeek weeks[MAX_ROWS];
  double weights[MAX_ROWS], learned[STEAD_LAY_N_PARAMS];
  SteadLayFit fit;
  g_autoptr(GError) error = NULL;

  for (gsize i = 0; i < n; i++)
    weeks[i] = (SteadLayWeek) { .age_weeks = rows[i][0], .days_logged = 7, .hen_days = rows[i][1],
                                .eggs = llround (rows[i][2]) };
  if (!stead_lay_fit (weeks, n, NULL, &fit, weights, &error))
    return refuse (error);
  for (gsize p = 0; p < STEAD_LAY_N_PARAMS; p++)
    learned[p] = fit.learned[p];
  print_numbers ("values", &fit.curve.level_frac, STEAD_LAY_N_PARAMS);
  print_numbers ("covariance", &fit.covariance[0][0], STEAD_LAY_N_PARAMS * STEAD_LAY_N_PARAMS);
  print_numbers ("learned", learned, STEAD_LAY_N_PARAMS);
  print_numbers ("phi", &fit.phi, 1);
  print_numbers ("weights", weights, n);
  return 0;
}

static double
curve_cb (const double *params,
          gsize         i,
          double       *gradient,
          gpointer      data)
{
  double t = rows[i][0];
  double y = stead_lay_compartment (params[0], params[1], params[2], params[3], t);
  double not_yet = 1 - 1 / (1 + exp (-params[2] * (t - params[3])));

  if (gradient != NULL)
    {
      gradient[0] = y / params[0];
      gradient[1] = -t * y;
      gradient[2] = y * not_yet * (t - params[3]);
      gradient[3] = -y * not_yet * params[2];
    }
  return y;
}

static int
probe_curve (gsize n)
{
  SteadFitParam params[] = {
    { .start = 0.97, .low = 0, .high = 1.2, .prior_mean = 0.97, .prior_sd = STEAD_LAY_LEVEL_SD },
    { .start = 0.004, .low = 0, .high = 0.1, .prior_mean = 0.004, .prior_sd = STEAD_LAY_DECLINE_SD },
    { .start = 1.3, .low = 0, .high = INFINITY, .prior_mean = 1.3, .prior_sd = STEAD_LAY_STEEPNESS_SD },
    { .start = 2, .low = -INFINITY, .high = INFINITY, .prior_mean = 2, .prior_sd = STEAD_LAY_HALF_SD },
  };
  double observed[MAX_ROWS], weights[MAX_ROWS];
  SteadFit fit = { .model = curve_cb, .observed = observed, .weights = weights, .n = n, .params = params,
                   .n_params = 4, .scatter = STEAD_FIT_SCATTER_KNOWN };
  SteadFitResult result;
  g_autoptr(GError) error = NULL;

  for (gsize i = 0; i < n; i++)
    {
      observed[i] = rows[i][1];
      weights[i] = rows[i][2];
    }
  if (!stead_fit_run (&fit, &result, NULL, NULL, &error))
    return refuse (error);
  print_numbers ("values", result.values, 4);
  for (gsize p = 0; p < 4; p++)
    print_numbers ("row", result.covariance[p], 4);
  return 0;
}

int
main (int    argc,
      char **argv)
{
  gsize n = read_rows ();

  if (argc == 2 && g_str_equal (argv[1], "growth"))
    return probe_growth (n);
  if (argc == 2 && g_str_equal (argv[1], "lay"))
    return probe_lay (n);
  if (argc == 2 && g_str_equal (argv[1], "curve"))
    return probe_curve (n);
  fprintf (stderr, "usage: fit-probe growth|lay|curve < ROWS\n");
  return 2;
}
