/* bench-season.c - 100,000 seasons of twelve products drawn, on two threads.
 *
 * usage: bench-season [ROUNDS]   medians, in ms, for bench-season.py to set beside the same model in NumPy
 *        bench-season --short    a test: all seasons are drawn; no limit of time
 */
#include "config.h"

#include <stdio.h>
#include <stdlib.h>

#include "core/stead-season.h"

#define PRODUCTS 12
#define DRAWS 100000
#define ROUNDS 15

static int
compare (const void *a,
         const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Mean profit: so that the two can be held against each other. */
static double
draw_once (const SteadSeason *season)
{
  g_autoptr(SteadSeasonDraws) draws = stead_season_draws_new (season, DRAWS, 7, NULL);
  double mean, sd;

  stead_season_draws_run_all (draws, NULL, NULL, NULL);
  stead_season_draws_moments (draws, &mean, &sd);
  return mean;
}

int
main (int    argc,
      char **argv)
{
  SteadSeasonProduct products[PRODUCTS];
  SteadSeason season = { products, PRODUCTS, { 0.9, 1, 1.3 }, { 6000, 7000, 9000 }, 12, 0.5 };
  gboolean is_short = argc > 1 && g_str_equal (argv[1], "--short");
  int rounds = is_short ? 1 : argc > 1 ? CLAMP (atoi (argv[1]), 1, 1000) : ROUNDS;
  double ms[1000], mean = 0;

  for (int i = 0; i < PRODUCTS; i++)
    products[i] = (SteadSeasonProduct) { { 10 + i, 20 + i, 30 + i }, { 0.8, 1, 1.1 }, 450, 160, 80, 30, 0, 0,
                                         (guint32) i + 1, (guint32) i + 1 };
  for (int round = 0; round < rounds; round++)
    {
      gint64 began = g_get_monotonic_time ();

      mean = draw_once (&season);
      ms[round] = (double) (g_get_monotonic_time () - began) / 1000;
    }
  if (is_short)
    {
      printf ("1..1\n%sok 1 /bench/season\n", mean > 0 ? "" : "not ");
      return mean > 0 ? 0 : 1;
    }
  qsort (ms, (size_t) rounds, sizeof *ms, compare);
  printf ("%.3f %.1f\n", ms[rounds / 2], mean);
  return 0;
}
