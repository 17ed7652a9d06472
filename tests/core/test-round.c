/* Rounding: halves away from zero, and binary noise cleared. */
#include "core/stead-round.h"

#include <math.h>

static void
test_half_away (void)
{
  static const struct { double value, rounded; } cases[] = {
    { 0.5, 1 }, { -0.5, -1 }, { 1.5, 2 }, { 2.5, 3 }, { 0.49999999999, 1 }, { 0.4999, 0 }, { -2.5, -3 },
    { 1e15 + 0.5, 1e15 + 1 }, { 5000000.4, 5000000 }, { 0, 0 }, { 9007199254740993.0, 9007199254740993.0 },
    /* 1.005 is stored as 1.00499999999999989. */
    { 1.005 * 100, 101 }, { 2.675 * 100, 268 }, { 1.1 * 1.1 * 100 - 0.5, 121 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("%.17g", cases[i].value);
      g_assert_cmpfloat (stead_round_half_away (cases[i].value), ==, cases[i].rounded);
    }
}

static void
test_up_and_down (void)
{
  g_assert_cmpfloat (stead_round_up (3.0000000001), ==, 3);
  g_assert_cmpfloat (stead_round_up (3.00001), ==, 4);
  g_assert_cmpfloat (stead_round_up (-3.5), ==, -3);
  g_assert_cmpfloat (stead_round_up (0.1 + 0.2 - 0.3), ==, 0);
  g_assert_cmpfloat (stead_round_down (2.9999999999), ==, 3);
  g_assert_cmpfloat (stead_round_down (2.9999), ==, 2);
  g_assert_cmpfloat (stead_round_down (-3.5), ==, -4);
  /* A third of 3, three times: 1 - 2^-53 in the worst case, never 0. */
  g_assert_cmpfloat (stead_round_down (3 * (1.0 / 3)), ==, 1);
  /* Noise grows with the number, but never to a unit. */
  g_assert_cmpfloat (stead_round_up (1e9 + 0.001), ==, 1e9 + 1);
}

static void
test_digits (void)
{
  g_assert_cmpfloat (stead_round_digits (1.005, 2), ==, 1.01);
  g_assert_cmpfloat (stead_round_digits (-1.005, 2), ==, -1.01);
  g_assert_cmpfloat (stead_round_digits (12345, -2), ==, 12300);
  g_assert_cmpfloat (stead_round_digits (12350, -2), ==, 12400);
  g_assert_cmpfloat (stead_round_digits (0.1234567, 6), ==, 0.123457);
}

/* Each whole number, and its half on both sides, of many sizes. */
static void
test_every_half (void)
{
  for (double n = 0; n < 1e9; n = 3 * n + 1)
    {
      g_assert_cmpfloat (stead_round_half_away (n + 0.5), ==, n + 1);
      g_assert_cmpfloat (stead_round_half_away (-n - 0.5), ==, -n - 1);
      g_assert_cmpfloat (stead_round_half_away (n + 0.4999), ==, n);
      g_assert_cmpfloat (stead_round_up (n), ==, n);
      g_assert_cmpfloat (stead_round_down (n), ==, n);
    }
}

/* Invented amounts: to square feet or degrees Fahrenheit and back. */
static void
test_back (void)
{
  const double foot_m2 = 0.3048 * 0.3048;
  gboolean drifts = FALSE;

  for (int i = 1; i <= 1000; i++)
    {
      double before = i / 10.0;
      double there = before / foot_m2 * foot_m2;

      drifts = drifts || there > before || there < before;
      g_assert_cmpfloat (stead_round_back (there, before), ==, before);
      g_assert_cmpfloat (stead_round_back (-there, -before), ==, -before);
    }
  g_assert_true (drifts);   /* without it some of them come back changed */
  g_assert_cmpfloat (stead_round_back (9.300003, 9.3), ==, 9.300003);
  g_assert_cmpfloat (stead_round_back (0, 9.3), ==, 0);
  g_assert_cmpfloat (stead_round_back (1e-12, 0), ==, 1e-12);
  g_assert_cmpfloat (stead_round_back (4, NAN), ==, 4);
  g_assert_true (isnan (stead_round_back (NAN, 4)));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/round/half-away", test_half_away);
  g_test_add_func ("/core/round/up-and-down", test_up_and_down);
  g_test_add_func ("/core/round/digits", test_digits);
  g_test_add_func ("/core/round/every-half", test_every_half);
  g_test_add_func ("/core/round/back", test_back);
  return g_test_run ();
}
