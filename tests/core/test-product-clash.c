/* Limits that clash: cases that can be proved by hand, and every set of limits tried out. */
#include "core/stead-product-clash.h"

#include <string.h>

#define MOST_LIMITS 7

static void
clash_is (const SteadMixLimit *limits,
          gsize                n_limits,
          gsize                n_products,
          const char          *expected)
{
  gboolean clash[MOST_LIMITS];
  char found[MOST_LIMITS + 1] = "";
  gsize n = stead_product_clash_find (limits, n_limits, n_products, clash), said = 0;

  for (gsize k = 0; k < n_limits; k++)
    {
      found[k] = clash[k] ? 'x' : '.';
      said += clash[k];
    }
  g_assert_cmpuint (n, ==, said);
  g_assert_cmpstr (found, ==, expected);
}

/* By hand, 120 eggs: 8 dozen (96) and 5 of six (30) are 126 eggs, while each alone, and 9 trays of
 * none, can be had; a promise of 0 clashes with nothing. */
static void
test_promises (void)
{
  const double eggs[] = { 12, 6, 30 }, dozen[] = { 1, 0, 0 }, six[] = { 0, 1, 0 }, tray[] = { 0, 0, 1 };
  SteadMixLimit limits[] = { { eggs, STEAD_MIX_AT_MOST, 120 }, { dozen, STEAD_MIX_AT_LEAST, 8 },
                          { six, STEAD_MIX_AT_LEAST, 5 }, { tray, STEAD_MIX_AT_LEAST, 0 } };

  clash_is (limits, 4, 3, "xxx.");
  limits[2].amount = 4;                  /* 96 + 24 = 120: just enough */
  clash_is (limits, 4, 3, "....");
  limits[3].amount = 0.01;
  clash_is (limits, 4, 3, "xxxx");       /* any two of the three promises fit */
  limits[3].amount = 5;                  /* 150 eggs: these two are fewer */
  clash_is (limits, 4, 3, "x..x");
}

/* At least 6 and at most 5 of one thing; beside them two others that clash in threes. */
static void
test_upside_down (void)
{
  const double a[] = { 1, 0, 0 }, b[] = { 0, 1, 0 }, c[] = { 0, 0, 1 }, both[] = { 0, 1, 1 };
  const SteadMixLimit limits[] = { { both, STEAD_MIX_AT_MOST, 10 }, { b, STEAD_MIX_AT_LEAST, 7 },
                                { c, STEAD_MIX_AT_LEAST, 7 }, { a, STEAD_MIX_AT_MOST, 5 },
                                { a, STEAD_MIX_AT_LEAST, 6 } };

  clash_is (limits, 5, 3, "...xx");
  clash_is (limits, 4, 3, "xxx.");
}

/* Less than nothing of it: one limit alone, even one that nothing uses. */
static void
test_alone (void)
{
  const double one[] = { 2 }, none[] = { 0 };
  const SteadMixLimit less[] = { { one, STEAD_MIX_AT_MOST, 10 }, { one, STEAD_MIX_AT_MOST, -1 } };
  const SteadMixLimit unused[] = { { none, STEAD_MIX_AT_LEAST, 1 }, { one, STEAD_MIX_AT_MOST, 10 } };

  clash_is (less, 2, 1, ".x");
  clash_is (unused, 2, 1, "x.");
  clash_is (NULL, 0, 1, "");
}

static gboolean
has_plan (const SteadMixLimit *limits,
          guint                chosen,
          gsize                n_limits,
          gsize                n_products)
{
  const double margins[3] = { -1, -1, -1 };      /* so that the sum has an end */
  SteadMixLimit some[MOST_LIMITS];
  SteadProductPlan products[3];
  SteadLimitPlan plans[MOST_LIMITS];
  double best;
  gsize n = 0;

  for (gsize k = 0; k < n_limits; k++)
    if (chosen & (1u << k))
      some[n++] = limits[k];
  return stead_product_mix_solve (margins, n_products, some, n, products, plans, &best, NULL);
}

/* The fewest limits of all sets of limits that have no plan; 0: all can be kept. */
static guint
fewest (const SteadMixLimit *limits,
        gsize                n_limits,
        gsize                n_products)
{
  guint least = G_MAXUINT;

  for (guint chosen = 1; chosen < 1u << n_limits; chosen++)
    {
      guint n = (guint) __builtin_popcount (chosen);

      if (n < least && !has_plan (limits, chosen, n_limits, n_products))
        least = n;
    }
  return least == G_MAXUINT ? 0 : least;
}

static void
test_every_set (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (33);
  guint sizes[MOST_LIMITS + 1] = { 0 };

  for (int round = 0; round < 400; round++)
    {
      double uses[MOST_LIMITS][3];
      SteadMixLimit limits[MOST_LIMITS];
      gboolean clash[MOST_LIMITS];
      guint chosen = 0, n;

      for (int k = 0; k < MOST_LIMITS; k++)
        {
          for (int i = 0; i < 3; i++)
            uses[k][i] = g_rand_int_range (rand, -2, 7) * g_rand_int_range (rand, 0, 2);
          limits[k] = (SteadMixLimit) { uses[k], (SteadMixSense) g_rand_int_range (rand, 0, 2),
                                     g_rand_int_range (rand, 0, 30) };
        }
      n = (guint) stead_product_clash_find (limits, MOST_LIMITS, 3, clash);
      g_assert_cmpuint (n, ==, fewest (limits, MOST_LIMITS, 3));
      for (guint k = 0; k < MOST_LIMITS; k++)
        chosen |= clash[k] ? 1u << k : 0;
      g_assert_true (n == 0 || !has_plan (limits, chosen, MOST_LIMITS, 3));
      sizes[n]++;
    }
  /* The case means something only while small and larger clashes, and plans, are among them. */
  g_assert_cmpuint (sizes[0], >, 10);
  g_assert_cmpuint (sizes[1] + sizes[2], >, 10);
  g_assert_cmpuint (sizes[3] + sizes[4], >=, 5);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/product-clash/promises", test_promises);
  g_test_add_func ("/core/product-clash/upside-down", test_upside_down);
  g_test_add_func ("/core/product-clash/alone", test_alone);
  g_test_add_func ("/core/product-clash/every-set", test_every_set);
  return g_test_run ();
}
