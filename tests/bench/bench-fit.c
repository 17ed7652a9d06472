/* bench-fit.c - one refit of a flock's laying curve with its bands, as after an entry.
 *
 * usage: bench-fit [RUNS]     times so many refits (default 300) of flocks of 72 weeks,
 *                             prints the median and the 99th percentile of each part
 *        bench-fit --rows     prints the weeks of the first flock: week of lay, hen-days, eggs
 *        bench-fit --short    a test: memory must not grow; no limit of time
 *
 * bench-fit.py runs it beside scipy.
 */
#include "core/stead-lay-fit.h"

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <malloc.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define WEEKS 72
#define AHEAD 8               /* coming weeks: up to week 80 of lay */
#define HENS 30
#define FLOCKS 20             /* different ones, in turn */
#define LONG_RUNS 300
#define WARM_RUNS 20
#define SHORT_RUNS 200
#define GROWTH_BYTES 16384    /* what one lost row of weeks a refit would take many times */

typedef enum { FIT, BANDS, COMING, N_PARTS } Part;

static const char *const part_names[N_PARTS] = { "fit", "bands", "ahead" };

static SteadLayWeek flocks[FLOCKS][WEEKS];
static double ages[WEEKS + AHEAD];

/* Each flock has its own curve, a sick week and a slip of the pen. */
static void
make_flocks (void)
{
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);

  for (gsize f = 0; f < FLOCKS; f++)
    {
      SteadLayCurve curve;

      stead_lay_curve_default (&curve);
      curve.level_frac += gsl_ran_gaussian (rng, STEAD_LAY_LEVEL_SD / 2);
      curve.decline_week += gsl_ran_gaussian (rng, STEAD_LAY_DECLINE_SD / 2);
      curve.half_week += gsl_ran_gaussian (rng, STEAD_LAY_HALF_SD);
      for (gsize w = 0; w < WEEKS; w++)
        {
          double age = curve.onset_age_weeks + (double) w + 0.5;
          double rate = CLAMP (stead_lay_curve_frac (&curve, age), 0, 0.99);

          flocks[f][w] = (SteadLayWeek) { .age_weeks = age, .days_logged = 7, .hen_days = 7 * HENS,
                                          .eggs = gsl_ran_binomial (rng, rate, 7 * HENS),
                                          .deaths = gsl_ran_binomial (rng, 0.002, HENS) };
        }
      flocks[f][20 + f].eggs /= 2;
      flocks[f][45].eggs *= 10;
    }
  for (gsize i = 0; i < WEEKS + AHEAD; i++)
    ages[i] = 18.5 + (double) i;
  gsl_rng_free (rng);
}

/* Time that the processor spent on this thread: other programs do not count. */
static double
own_us (void)
{
  struct timespec t;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &t);
  return (double) t.tv_sec * 1e6 + (double) t.tv_nsec / 1e3;
}

/* What a page does after an entry: refit, the band of the whole chart, coming weeks. */
static void
refit (gsize   run,
       double *us)
{
  const SteadLayWeek *weeks = flocks[run % FLOCKS];
  double began = own_us (), fitted, banded;
  SteadBand bands[WEEKS + AHEAD], total;
  SteadLayAhead coming[AHEAD];
  SteadLayFit fit;

  g_assert_true (stead_lay_fit (weeks, WEEKS, NULL, &fit, NULL, NULL));
  fitted = own_us ();
  g_assert_true (stead_lay_fit_bands (&fit, ages, WEEKS + AHEAD, 7 * HENS, 0.8, bands, NULL));
  banded = own_us ();
  g_assert_true (stead_lay_fit_ahead (&fit, HENS, ages[WEEKS], AHEAD, 0.8, coming, &total, NULL));
  us[FIT] = fitted - began;
  us[BANDS] = banded - fitted;
  us[COMING] = own_us () - banded;
}

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static void
print_times (const char *name,
             double     *us,
             gsize       n)
{
  qsort (us, n, sizeof *us, compare);
  printf ("%s %.1f %.1f\n", name, us[n / 2], us[n - 1 - n / 100]);
}

/* Lines of a name, the median and the 99th percentile, in millionths of a second. */
static int
run_benchmark (gsize runs)
{
  g_autofree double *us = g_new (double, (N_PARTS + 1) * runs);

  for (gsize i = 0; i < runs; i++)
    {
      double parts[N_PARTS];

      refit (i, parts);
      us[N_PARTS * runs + i] = 0;
      for (gsize p = 0; p < N_PARTS; p++)
        {
          us[p * runs + i] = parts[p];
          us[N_PARTS * runs + i] += parts[p];
        }
    }
  for (gsize p = 0; p < N_PARTS; p++)
    print_times (part_names[p], us + p * runs, runs);
  print_times ("all", us + N_PARTS * runs, runs);
  return 0;
}

static int
print_rows (void)
{
  for (gsize w = 0; w < WEEKS; w++)
    printf ("%.1f %.0f %" G_GINT64_FORMAT "\n", (double) w + 0.5, flocks[0][w].hen_days, flocks[0][w].eggs);
  return 0;
}

static void
test_memory (void)
{
  double us[N_PARTS];
  gint64 before, growth;

  for (gsize i = 0; i < WARM_RUNS; i++)
    refit (i, us);
  before = (gint64) mallinfo2 ().uordblks;
  for (gsize i = 0; i < SHORT_RUNS; i++)
    refit (i, us);
  growth = (gint64) mallinfo2 ().uordblks - before;
  g_test_message ("grew by %" G_GINT64_FORMAT " bytes in %d refits", growth, SHORT_RUNS);
  g_assert_cmpint (growth, <=, GROWTH_BYTES);
}

int
main (int    argc,
      char **argv)
{
  make_flocks ();
  if (argc > 1 && g_str_equal (argv[1], "--rows"))
    return print_rows ();
  if (argc < 2 || !g_str_equal (argv[1], "--short"))
    return run_benchmark (argc > 1 ? (gsize) MAX (10, atoi (argv[1])) : LONG_RUNS);

  argv[1] = argv[0];
  argc--;
  argv++;
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/fit/memory-holds-still", test_memory);
  return g_test_run ();
}
