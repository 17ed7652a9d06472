/* The engine of least squares: against R, against closed forms, and what it refuses. */
#include "core/stead-core-error.h"
#include "core/stead-fit.h"

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <math.h>

#define MAX_ROWS 4000

typedef struct
{
  double x[MAX_ROWS];
  double y[MAX_ROWS];
  double weight[MAX_ROWS];
  gsize  n;
} Rows;

/* Enzyme rates of cells treated with puromycin, Treloar (1974): the data set
 * "Puromycin" of R 4.2.2 (package datasets, GPL-2 or GPL-3). */
static const Rows puromycin = {
  .x = { 0.02, 0.02, 0.06, 0.06, 0.11, 0.11, 0.22, 0.22, 0.56, 0.56, 1.10, 1.10 },
  .y = { 76, 47, 97, 107, 123, 139, 159, 152, 191, 201, 207, 200 },
  .weight = { 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12 },
  .n = 12,
};

static const SteadFitParam free_at_1 = { .start = 1, .low = -INFINITY, .high = INFINITY };

/* y = a x / (b + x) */
static double
saturation_cb (const double *params,
               gsize         i,
               double       *gradient,
               gpointer      data)
{
  double x = ((const Rows *) data)->x[i];

  if (gradient != NULL)
    {
      gradient[0] = x / (params[1] + x);
      gradient[1] = -params[0] * x / ((params[1] + x) * (params[1] + x));
    }
  return params[0] * x / (params[1] + x);
}

/* y = a + b x */
static double
line_cb (const double *params,
         gsize         i,
         double       *gradient,
         gpointer      data)
{
  double x = ((const Rows *) data)->x[i];

  if (gradient != NULL)
    {
      gradient[0] = 1;
      gradient[1] = x;
    }
  return params[0] + params[1] * x;
}

static SteadFit
fit_of (SteadFitModel        model,
        const Rows          *rows,
        const SteadFitParam *params,
        gsize                n_params)
{
  return (SteadFit) { .model = model, .data = (gpointer) rows, .observed = rows->y, .n = rows->n,
                      .params = params, .n_params = n_params, .scatter = STEAD_FIT_SCATTER_FREE };
}

static void
run (const SteadFit *fit,
     SteadFitResult *out)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_fit_run (fit, out, NULL, NULL, &error));
  g_assert_no_error (error);
}

static void
assert_near (double value,
             double expected,
             double share)
{
  g_assert_cmpfloat_with_epsilon (value, expected, share * fabs (expected));
}

/* R 4.2.2, nls (rate ~ Vm * conc / (K + conc)), run on these rows, plain and with
 * weights 1 to 12: estimates, covariance, residual standard error squared. */
static void
test_like_r (void)
{
  const SteadFitParam params[] = { { .start = 200, .low = 0, .high = INFINITY },
                                   { .start = 0.05, .low = 0, .high = INFINITY } };
  SteadFit fit = fit_of (saturation_cb, &puromycin, params, 2);
  SteadFitResult result;

  run (&fit, &result);
  assert_near (result.values[0], 212.683741, 1e-6);
  assert_near (result.values[1], 0.0641212790, 1e-6);
  assert_near (result.covariance[0][0], 48.2629639216, 1e-5);
  assert_near (result.covariance[0][1], 0.0440145299163, 1e-5);
  assert_near (result.covariance[1][1], 6.85741206418e-05, 1e-5);
  assert_near (sqrt (result.phi), 10.9336582, 1e-7);
  g_assert_cmpfloat_with_epsilon (result.phi_df, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (result.told, 2, 1e-9);
  g_assert_cmpuint (result.n_used, ==, 12);

  fit.weights = puromycin.weight;
  run (&fit, &result);
  assert_near (result.values[0], 216.959510, 1e-6);
  assert_near (result.values[1], 0.0723459861, 1e-6);
  assert_near (result.covariance[0][0], 20.484579975, 1e-5);
  assert_near (result.covariance[0][1], 0.026569943444, 1e-5);
  assert_near (result.covariance[1][1], 5.78331578e-05, 1e-5);
  assert_near (sqrt (result.phi), 20.1863232, 1e-7);
}

/* The same numbers come out whichever bounds are kept, as long as they do not bind. */
static void
test_bounds (void)
{
  SteadFitParam params[] = { { .start = 100, .low = 10, .high = 1000 },
                             { .start = 0.5, .low = -INFINITY, .high = 3 } };
  SteadFit fit = fit_of (saturation_cb, &puromycin, params, 2);
  SteadFitResult result;

  run (&fit, &result);
  assert_near (result.values[0], 212.683741, 1e-6);
  assert_near (result.values[1], 0.0641212790, 1e-6);
  assert_near (result.covariance[0][1], 0.0440145299163, 1e-4);

  /* A bound below the best value holds, and the other parameter does its best. */
  params[0] = (SteadFitParam) { .start = 150, .low = 0, .high = 180 };
  run (&fit, &result);
  g_assert_cmpfloat (result.values[0], <=, 180);
  assert_near (result.values[0], 180, 1e-3);
  g_assert_cmpfloat (result.values[1], <, 0.0641);
  /* As if there were no bound: not surer than the entries are. */
  g_assert_cmpfloat (result.covariance[0][0], >, 10);
}

/* A mean with a prior: precisions add, means are weighted by them. */
static void
test_prior (void)
{
  static const Rows rows = { .y = { 9, 10, 12, 13 }, .weight = { 4, 4, 4, 4 }, .n = 4 };
  const SteadFitParam params[] = {
    { .start = 5, .low = -INFINITY, .high = INFINITY, .prior_mean = 8, .prior_sd = 0.5 },
    { .start = 0, .fixed = TRUE },
  };
  SteadFit fit = fit_of (line_cb, &rows, params, 2);
  SteadFitResult result;
  double precision = 4 * 4 + 1 / 0.25;

  fit.weights = rows.weight;
  fit.scatter = STEAD_FIT_SCATTER_KNOWN;
  run (&fit, &result);
  assert_near (result.values[0], (16 * 11 + 4 * 8) / precision, 1e-9);
  assert_near (result.covariance[0][0], 1 / precision, 1e-9);
  assert_near (result.told, 16 / precision, 1e-9);
  g_assert_cmpfloat (result.phi, ==, 1);
}

/* y = a + b: b is fixed, known to 0.3.  What is learned of a is off by as much. */
static void
test_fixed_but_unsure (void)
{
  static const Rows rows = { .x = { 1, 1, 1, 1, 1 }, .y = { 4, 5, 6, 5, 5 }, .n = 5 };
  const SteadFitParam params[] = {
    free_at_1,
    { .start = 2, .low = -INFINITY, .high = INFINITY, .prior_mean = 2, .prior_sd = 0.3, .fixed = TRUE },
  };
  SteadFit fit = fit_of (line_cb, &rows, params, 2);
  SteadFitResult result;

  fit.scatter = STEAD_FIT_SCATTER_KNOWN;
  run (&fit, &result);
  assert_near (result.values[0], 3, 1e-9);
  g_assert_cmpfloat (result.values[1], ==, 2);
  assert_near (result.covariance[0][0], 0.2 + 0.09, 1e-9);
  assert_near (result.covariance[1][1], 0.09, 1e-9);
  assert_near (result.covariance[0][1], -0.09, 1e-9);
  /* Their sum is what was seen: the errors cancel. */
  assert_near (stead_fit_sd (&result, (const double[]) { 1, 1 }, 2), sqrt (0.2), 1e-9);
}

/* Far entries keep their say in a plain mean, and lose it under either weight. */
static void
test_outlier (void)
{
  static const Rows rows = { .y = { 9.8, 10.1, 10, 9.9, 10.2, 10.3, 9.7, 100, 10, 10.1 }, .n = 10 };
  const SteadFitParam params[] = { free_at_1, { .start = 0, .fixed = TRUE } };
  SteadFit fit = fit_of (line_cb, &rows, params, 2);
  SteadFitResult result;
  double weights[10], z[10];

  for (int loss = STEAD_FIT_LOSS_HUBER; loss <= STEAD_FIT_LOSS_BISQUARE; loss++)
    {
      g_autoptr(GError) error = NULL;

      fit.loss = (SteadFitLoss) loss;
      g_assert_true (stead_fit_run (&fit, &result, weights, z, &error));
      g_assert_no_error (error);
      g_assert_cmpfloat_with_epsilon (result.values[0], 10, 0.1);
      g_assert_cmpfloat (sqrt (result.phi), <, loss == STEAD_FIT_LOSS_BISQUARE ? 0.35 : 4);
      g_assert_cmpuint (result.n_outliers, ==, 1);
      for (gsize i = 0; i < 10; i++)
        {
          g_assert_true ((weights[i] < STEAD_FIT_OUTLIER_WEIGHT) == (i == 7));
          g_assert_true ((fabs (z[i]) > 10) == (i == 7));
        }
    }
  fit.loss = STEAD_FIT_LOSS_SQUARE;
  run (&fit, &result);
  g_assert_cmpfloat (result.values[0], >, 18);
  g_assert_cmpuint (result.n_outliers, ==, 0);
}

/* Of normal entries the weights must take nothing away: phi is their variance. */
static void
test_phi_of_normal_entries (void)
{
  g_autofree Rows *rows = g_new0 (Rows, 1);
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);
  const SteadFitParam params[] = { free_at_1, free_at_1 };
  SteadFit fit = fit_of (line_cb, rows, params, 2);
  static const struct { SteadFitLoss loss; double tuning; } ways[] = {
    { STEAD_FIT_LOSS_SQUARE, 0 }, { STEAD_FIT_LOSS_HUBER, 0 }, { STEAD_FIT_LOSS_BISQUARE, 0 },
    { STEAD_FIT_LOSS_BISQUARE, 6.5 },
  };

  fit.n = rows->n = MAX_ROWS;
  for (gsize i = 0; i < MAX_ROWS; i++)
    {
      rows->x[i] = (double) i / MAX_ROWS;
      rows->y[i] = 5 + 3 * rows->x[i] + gsl_ran_gaussian (rng, 2);
    }
  for (gsize w = 0; w < G_N_ELEMENTS (ways); w++)
    {
      SteadFitResult result;

      fit.loss = ways[w].loss;
      fit.tuning = ways[w].tuning;
      run (&fit, &result);
      /* The standard error of a variance of so many is 4 sqrt (2 / 4000), 0.09. */
      g_assert_cmpfloat_with_epsilon (result.phi, 4, 0.3);
      g_assert_cmpfloat_with_epsilon (result.phi_df, MAX_ROWS - 2, 0.02 * MAX_ROWS);
      g_assert_cmpfloat_with_epsilon (result.values[0], 5, 0.2);
      g_assert_cmpfloat_with_epsilon (result.values[1], 3, 0.35);
    }
  gsl_rng_free (rng);
}

/* Scatter that is known to be at least so much, and a prior for it. */
static void
test_phi_floor_and_prior (void)
{
  static const Rows rows = { .y = { 9.9, 10, 10.1, 10, 10 }, .n = 5 };
  const SteadFitParam params[] = { free_at_1, { .start = 0, .fixed = TRUE } };
  SteadFit fit = fit_of (line_cb, &rows, params, 2);
  SteadFitResult result;

  run (&fit, &result);
  assert_near (result.phi, 0.02 / 4, 1e-9);
  fit.phi_prior = 2;
  fit.phi_prior_df = 6;
  run (&fit, &result);
  assert_near (result.phi, (0.02 + 12) / 10, 1e-9);
  assert_near (result.phi_df, 10, 1e-9);
  fit.phi_prior = 0.5;
  fit.scatter = STEAD_FIT_SCATTER_AT_LEAST;
  run (&fit, &result);
  g_assert_cmpfloat (result.phi, ==, 1);
  assert_near (result.covariance[0][0], 0.2, 1e-9);
}

/* Entries exactly on a curve: found, without a scatter and without an alarm. */
static void
test_exact_entries (void)
{
  Rows rows = { .n = 8 };
  const SteadFitParam params[] = { free_at_1, free_at_1 };
  SteadFit fit = fit_of (line_cb, &rows, params, 2);

  for (gsize i = 0; i < 8; i++)
    {
      rows.x[i] = (double) i;
      rows.y[i] = 3 - 0.25 * (double) i;
    }
  for (int loss = STEAD_FIT_LOSS_SQUARE; loss <= STEAD_FIT_LOSS_BISQUARE; loss++)
    {
      SteadFitResult result;

      fit.loss = (SteadFitLoss) loss;
      run (&fit, &result);
      assert_near (result.values[0], 3, 1e-9);
      assert_near (result.values[1], -0.25, 1e-9);
      g_assert_cmpfloat (sqrt (result.covariance[0][0]), <, 1e-9);
      g_assert_cmpuint (result.n_outliers, ==, 0);
    }
}

/* Naming: of two slips both are named; of good entries none, and the fit is plain. */
static void
test_naming (void)
{
  Rows rows = { .n = 12 };
  const SteadFitParam params[] = { free_at_1, free_at_1 };
  SteadFit fit = fit_of (line_cb, &rows, params, 2);
  gboolean named[12];
  double z[12];
  SteadFitResult plain, result;
  g_autoptr(GError) error = NULL;
  static const double noise[] = { 0.3, -0.2, 0.1, 0.4, -0.5, 0.2, -0.1, 0, 0.3, -0.4, 0.1, -0.2 };

  for (gsize i = 0; i < 12; i++)
    {
      rows.x[i] = (double) i;
      rows.y[i] = 2 + (double) i + noise[i];
    }
  run (&fit, &plain);
  g_assert_true (stead_fit_run_naming (&fit, &result, named, z, &error));
  g_assert_cmpuint (result.n_outliers, ==, 0);
  g_assert_cmpfloat (result.values[1], ==, plain.values[1]);
  for (gsize i = 0; i < 12; i++)
    g_assert_cmpfloat (fabs (z[i]), <, 3);

  rows.y[3] *= 10;
  rows.y[11] = 0;
  g_assert_true (stead_fit_run_naming (&fit, &result, named, z, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (result.n_outliers, ==, 2);
  for (gsize i = 0; i < 12; i++)
    g_assert_true (named[i] == (i == 3 || i == 11));
  g_assert_cmpfloat (z[3], >, 20);
  g_assert_cmpfloat (z[11], <, -10);
  g_assert_cmpfloat_with_epsilon (result.values[1], 1, 0.05);
}

/* Refusals: nothing is filled in, and the person is told. */
static void
assert_refused (const SteadFit *fit,
                SteadCoreError  code)
{
  SteadFitResult result = { .n_used = 99 };
  g_autoptr(GError) error = NULL;

  g_assert_false (stead_fit_run (fit, &result, NULL, NULL, &error));
  g_assert_error (error, STEAD_CORE_ERROR, (gint) code);
  g_assert_cmpuint (result.n_used, ==, 99);
}

static gboolean
stop_cb (gpointer data)
{
  return ++*(int *) data > 2;
}

static double
nowhere_cb (const double *params,
            gsize         i,
            double       *gradient,
            gpointer      data)
{
  return NAN;
}

static void
test_refusals (void)
{
  Rows rows = puromycin;
  const SteadFitParam params[] = { { .start = 100, .low = 0, .high = INFINITY },
                                   { .start = 0.5, .low = 0, .high = INFINITY } };
  const SteadFitParam two[] = { free_at_1, free_at_1 };
  SteadFit fit = fit_of (saturation_cb, &rows, params, 2);
  int asked = 0;

  /* Two points and two parameters leave nothing for the scatter. */
  fit.n = 2;
  assert_refused (&fit, STEAD_CORE_ERROR_NONE);
  fit.n = 0;
  assert_refused (&fit, STEAD_CORE_ERROR_NONE);
  fit.n = 12;
  fit.stop = stop_cb;
  fit.stop_data = &asked;
  assert_refused (&fit, STEAD_CORE_ERROR_STOPPED);
  fit.stop = NULL;
  fit.model = nowhere_cb;
  assert_refused (&fit, STEAD_CORE_ERROR_NONE);
  fit.model = saturation_cb;
  rows.y[4] = NAN;
  assert_refused (&fit, STEAD_CORE_ERROR_RANGE);
  rows.y[4] = 123;
  fit.weights = rows.weight;
  rows.weight[4] = -1;
  assert_refused (&fit, STEAD_CORE_ERROR_RANGE);
  rows.weight[4] = NAN;
  assert_refused (&fit, STEAD_CORE_ERROR_RANGE);
  /* Left out: it may be anything. */
  rows.weight[4] = 0;
  rows.y[4] = NAN;
  g_assert_true (stead_fit_run (&fit, &(SteadFitResult) { 0 }, NULL, NULL, NULL));

  /* All at one place: a level and a slope cannot be told apart. */
  rows = puromycin;
  for (gsize i = 0; i < rows.n; i++)
    rows.x[i] = 2;
  fit = fit_of (line_cb, &rows, two, 2);
  assert_refused (&fit, STEAD_CORE_ERROR_NONE);
}

static void
test_misuse (void)
{
  const SteadFitParam outside[] = { { .start = 5, .low = 0, .high = 1 }, free_at_1 };
  SteadFit fit = fit_of (line_cb, &puromycin, outside, 2);
  SteadFitResult result;

  if (g_test_subprocess ())
    {
      g_assert_false (stead_fit_run (&fit, &result, NULL, NULL, NULL));
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*param->low < param->start*");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/fit/like-r", test_like_r);
  g_test_add_func ("/core/fit/bounds", test_bounds);
  g_test_add_func ("/core/fit/prior", test_prior);
  g_test_add_func ("/core/fit/fixed-but-unsure", test_fixed_but_unsure);
  g_test_add_func ("/core/fit/outlier", test_outlier);
  g_test_add_func ("/core/fit/phi-of-normal-entries", test_phi_of_normal_entries);
  g_test_add_func ("/core/fit/phi-floor-and-prior", test_phi_floor_and_prior);
  g_test_add_func ("/core/fit/exact-entries", test_exact_entries);
  g_test_add_func ("/core/fit/naming", test_naming);
  g_test_add_func ("/core/fit/refusals", test_refusals);
  g_test_add_func ("/core/fit/misuse", test_misuse);
  return g_test_run ();
}
