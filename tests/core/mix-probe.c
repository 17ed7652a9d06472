/* mix-probe.c - lets another program see what becomes of a plan under limits.
 *
 * usage: mix-probe < NUMBERS    products and limits; the margins; then of each limit its uses,
 *                               1 for "at least" or 0 for "at most", and the amount
 *
 * Prints lines of a name and numbers, to the last digit: "best" and "worth" (of one more of
 * each limit), "low" and "high" (between which that holds), "whole"; or "clash" (which limits).
 */
#include "core/stead-product-clash.h"

#include <stdio.h>

static double
read_number (void)
{
  double number = 0;

  if (scanf ("%lf", &number) != 1)
    g_error ("a number is missing");
  return number;
}

static void
print_plans (const SteadLimitPlan *plans,
             gsize                 n)
{
  printf ("worth");
  for (gsize k = 0; k < n; k++)
    printf (" %.17g", plans[k].shadow_price);
  printf ("\nlow");
  for (gsize k = 0; k < n; k++)
    printf (" %.17g", plans[k].low);
  printf ("\nhigh");
  for (gsize k = 0; k < n; k++)
    printf (" %.17g", plans[k].high);
  printf ("\n");
}

static void
print_clash (const SteadMixLimit *limits,
             gsize                n_limits,
             gsize                n_products)
{
  g_autofree gboolean *clash = g_new0 (gboolean, n_limits);

  printf ("clash");
  if (stead_product_clash_find (limits, n_limits, n_products, clash) > 0)
    for (gsize k = 0; k < n_limits; k++)
      if (clash[k])
        printf (" %" G_GSIZE_FORMAT, k);
  printf ("\n");
}

int
main (void)
{
  gsize n = (gsize) read_number (), m = (gsize) read_number ();
  g_autofree double *margins = g_new (double, n), *uses = g_new (double, n * m), *wholes = g_new0 (double, n);
  g_autofree SteadMixLimit *limits = g_new (SteadMixLimit, m);
  g_autofree SteadProductPlan *products = g_new0 (SteadProductPlan, n);
  g_autofree SteadLimitPlan *plans = g_new0 (SteadLimitPlan, m);
  double best;
  gboolean proven;

  for (gsize i = 0; i < n; i++)
    margins[i] = read_number ();
  for (gsize k = 0; k < m; k++)
    {
      for (gsize i = 0; i < n; i++)
        uses[k * n + i] = read_number ();
      limits[k].use = uses + k * n;
      limits[k].sense = read_number () > 0 ? STEAD_MIX_AT_LEAST : STEAD_MIX_AT_MOST;
      limits[k].amount = read_number ();
    }
  if (stead_product_mix_solve (margins, n, limits, m, products, plans, &best, NULL))
    {
      printf ("best %.17g\n", best);
      print_plans (plans, m);
    }
  if (stead_product_mix_solve_whole (margins, n, limits, m, 5000, wholes, &best, &proven, NULL) && proven)
    printf ("whole %.17g\n", best);
  print_clash (limits, m, n);
  return 0;
}
