/* What a farm learns of a figure that it sees once a year. */
#include "core/stead-core-error.h"
#include "core/stead-learn.h"

#include <math.h>

#define BOOK 722.0   /* °C-days to the first ripe tomato, 1,300 °F-days */

static SteadLearned
learn (const double *years,
       gsize         n)
{
  g_autoptr(GError) error = NULL;
  SteadLearned learned;

  g_assert_true (stead_learn (BOOK, years, n, &learned, &error));
  g_assert_no_error (error);
  return learned;
}

/* Without own years: the book, and 15 % on either side. */
static void
test_book (void)
{
  SteadLearned learned = learn (NULL, 0);
  SteadBand band;

  stead_learn_band (&learned, 0.8, &band);
  g_assert_cmpfloat_with_epsilon (band.low, 0.85 * BOOK, 1e-6);
  g_assert_cmpfloat_with_epsilon (band.likely, BOOK, 1e-9);
  g_assert_cmpfloat_with_epsilon (band.high, 1.15 * BOOK, 1e-6);
}

/* The book counts as one year; years that agree narrow the band, years that do not
 * widen it. */
static void
test_own_years (void)
{
  const double alike[] = { 800, 810, 790, 805, 795 }, apart[] = { 600, 1000, 700, 900, 800 };
  SteadLearned learned = learn (alike, 5);
  SteadBand close, far;

  g_assert_cmpfloat_with_epsilon (learned.mean, (BOOK + 4000) / 6, 1e-9);
  g_assert_cmpuint (learned.n_years, ==, 5);
  stead_learn_band (&learned, 0.8, &close);
  g_assert_cmpfloat (close.high - close.low, <, 0.25 * BOOK);
  learned = learn (apart, 5);
  stead_learn_band (&learned, 0.8, &far);
  g_assert_cmpfloat (far.high - far.low, >, 0.35 * BOOK);
}

/* By hand, conjugate normal prior: 4 s0^2 + squares around the mean + what lies between
 * the mean and the book. */
static void
test_formula (void)
{
  const double years[] = { 800, 760 };
  SteadLearned learned = learn (years, 2);
  /* 90 % quantile of Student's distribution with 4 degrees of freedom, from tables. */
  double s0 = 0.15 * BOOK / (1.5332 * G_SQRT2);
  double squares = 4 * s0 * s0 + 2 * 20 * 20 + 2.0 / 3 * (780 - BOOK) * (780 - BOOK);

  g_assert_cmpfloat_with_epsilon (learned.mean, (BOOK + 1560) / 3, 1e-9);
  g_assert_cmpfloat_with_epsilon (learned.df, 6, 1e-12);
  g_assert_cmpfloat_with_epsilon (learned.scale, sqrt (squares / 6 * (1 + 1.0 / 3)), 0.01);
}

/* Days that bring the same each make the date the need over the day's sum. */
static void
test_days (void)
{
  const double even[] = { 12, 12, 12, 12, 12, 12, 12 };
  SteadLearned learned = learn (NULL, 0);
  g_autoptr(GError) error = NULL;
  SteadBand band;

  g_assert_true (stead_learn_days (&learned, 200, &(SteadLearnDays) { even, 7, NULL, NULL, 0 }, 0.8, &band, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (band.likely, (BOOK - 200) / 12, 1e-9);
  g_assert_cmpfloat_with_epsilon (band.low, (0.85 * BOOK - 200) / 12, 0.5);
  g_assert_cmpfloat_with_epsilon (band.high, (1.15 * BOOK - 200) / 12, 0.5);
}

/* With a usual year the days to come differ: 10 a day for twenty days, 20 from then on. */
static void
test_usual_year (void)
{
  const double even[] = { 10, 10, 10, 10, 10 }, warm[] = { 14, 14, 14, 14, 14 };
  double coming[200];
  SteadLearnDays days = { even, 5, even, coming, G_N_ELEMENTS (coming) };
  SteadLearned learned = learn (NULL, 0);
  SteadBand band, off, none;

  for (gsize i = 0; i < G_N_ELEMENTS (coming); i++)
    coming[i] = i < 20 ? 10 : 20;
  g_assert_true (stead_learn_days (&learned, 100, &days, 0.8, &band, NULL));
  g_assert_cmpfloat_with_epsilon (band.likely, 20 + (BOOK - 300) / 20, 1e-9);
  g_assert_cmpfloat_with_epsilon (band.low, 20 + (0.85 * BOOK - 300) / 20, 0.5);
  g_assert_cmpfloat_with_epsilon (band.high, 20 + (1.15 * BOOK - 300) / 20, 0.5);
  /* A house that is warmer than its usual year, and one that nobody reads, are less sure. */
  days.recent = warm;
  g_assert_true (stead_learn_days (&learned, 100, &days, 0.8, &off, NULL));
  g_assert_cmpfloat (off.high - off.low, >, 1.2 * (band.high - band.low));
  days.n_recent = 0;
  g_assert_true (stead_learn_days (&learned, 100, &days, 0.8, &none, NULL));
  g_assert_cmpfloat (none.high - none.low, >, band.high - band.low);
  /* Beyond what is told of the year there is no date. */
  days.n_coming = 25;
  g_assert_true (stead_learn_days (&learned, 100, &days, 0.8, &none, NULL));
  g_assert_true (isinf (none.high));
}

/* Past what was expected and still not ripe: soon, but not yesterday. */
static void
test_late (void)
{
  const double recent[] = { 12, 9, 14, 11, 13, 8, 12, 15, 10 };
  const SteadLearnDays days = { recent, 9, NULL, NULL, 0 };
  SteadLearned learned = learn (NULL, 0);
  SteadBand band;

  for (double so_far = BOOK; so_far < 3 * BOOK; so_far += 100)
    {
      g_assert_true (stead_learn_days (&learned, so_far, &days, 0.8, &band, NULL));
      g_assert_true (band.low >= 0 && band.low < band.likely && band.likely < band.high);
      g_assert_true (isfinite (band.high));
    }
}

static void
test_refusals (void)
{
  const double years[] = { 700, 0 }, cold[] = { 0, 0, 0, 0 };
  SteadLearned learned = { .n_years = 9 };
  g_autoptr(GError) error = NULL;
  SteadBand band;

  g_assert_false (stead_learn (BOOK, years, 2, &learned, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpuint (learned.n_years, ==, 9);
  g_clear_error (&error);
  learned = learn (NULL, 0);
  g_assert_false (stead_learn_days (&learned, 10, &(SteadLearnDays) { cold, 4, NULL, NULL, 0 }, 0.8, &band, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/learn/book", test_book);
  g_test_add_func ("/core/learn/own-years", test_own_years);
  g_test_add_func ("/core/learn/formula", test_formula);
  g_test_add_func ("/core/learn/days", test_days);
  g_test_add_func ("/core/learn/usual-year", test_usual_year);
  g_test_add_func ("/core/learn/late", test_late);
  g_test_add_func ("/core/learn/refusals", test_refusals);
  return g_test_run ();
}
