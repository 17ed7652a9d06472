/* What goods out of stock cost. */
#include "core/stead-core-error.h"
#include "core/stead-stock-cost.h"

#include <math.h>

/* OpenStax Principles of Accounting vol. 1, sections 10.2 and 10.3 (read). */
static const SteadMovement spy_cars[] = {
  { 150, 2100 }, { -120, 0 }, { 225, 2700 }, { -180, 0 }, { 210, 3300 },
};

static void
test_published (void)
{
  static const struct { SteadStockMethod method; double sold, stock, within; } cases[] = {
    { STEAD_STOCK_FIFO, 720000, 895500, 1e-6 },
    { STEAD_STOCK_LIFO, 738000, 877500, 1e-6 },
    { STEAD_STOCK_LIFO_PERIODIC, 936000, 679500, 1e-6 },
    /* The text works from averages rounded to the cent. */
    { STEAD_STOCK_AVERAGE_PERIODIC, 828300, 787200, 500 },
    { STEAD_STOCK_AVERAGE_MOVING, 725300, 890200, 200 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SteadStockFigures figures;

      g_assert_true (stead_stock_figures (spy_cars, 5, cases[i].method, &figures, NULL));
      g_assert_cmpfloat_with_epsilon (figures.sold_cents, cases[i].sold, cases[i].within);
      g_assert_cmpfloat_with_epsilon (figures.stock_cents, cases[i].stock, cases[i].within);
    }
}

/* Whatever the convention: what went out and what is left are all that came in,
 * nothing costs less than the cheapest or more than the dearest, and with one
 * price all conventions agree. */
static void
test_nothing_is_lost (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (9);

  for (int round = 0; round < 500; round++)
    {
      SteadMovement movements[20];
      double stock = 0, in = 0, out = 0;
      gboolean one_price = round % 2 == 0;

      for (int i = 0; i < 20; i++)
        {
          gboolean goes_out = stock > 1 && g_rand_boolean (rand);
          double quantity = goes_out ? -floor (g_rand_double_range (rand, 0, stock))
                                     : g_rand_int_range (rand, 1, 100);

          movements[i] = (SteadMovement) { quantity, one_price ? 7 : g_rand_int_range (rand, 100, 200) };
          stock += quantity;
          out -= MIN (0, quantity);
          in += quantity > 0 ? quantity * movements[i].unit_cents : 0;
        }
      for (SteadStockMethod m = STEAD_STOCK_FIFO; m <= STEAD_STOCK_AVERAGE_MOVING; m++)
        {
          SteadStockFigures figures;

          g_assert_true (stead_stock_figures (movements, 20, m, &figures, NULL));
          g_assert_cmpfloat_with_epsilon (figures.sold_cents + figures.stock_cents, in, 1e-6);
          if (one_price)
            g_assert_cmpfloat_with_epsilon (figures.sold_cents, 7 * out, 1e-6);
          else
            {
              g_assert_cmpfloat (figures.sold_cents, >=, 100 * out - 1e-6);
              g_assert_cmpfloat (figures.sold_cents, <=, 200 * out + 1e-6);
            }
        }
    }
}

static void
test_more_than_there_is (void)
{
  const SteadMovement movements[] = { { 10, 100 }, { -11, 0 }, { 5, 100 } };

  for (SteadStockMethod m = STEAD_STOCK_FIFO; m <= STEAD_STOCK_AVERAGE_MOVING; m++)
    {
      g_autoptr(GError) error = NULL;
      SteadStockFigures figures = { -1, -1, -1 };

      g_assert_false (stead_stock_figures (movements, 3, m, &figures, &error));
      g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
      g_assert_cmpfloat (figures.sold_cents, ==, -1);
    }
}

static void
test_nothing_at_all (void)
{
  SteadStockFigures figures;

  g_assert_true (stead_stock_figures (NULL, 0, STEAD_STOCK_FIFO, &figures, NULL));
  g_assert_cmpfloat (figures.sold_cents, ==, 0);
  g_assert_true (isnan (figures.unit_cents));
}

/* OpenStax vol. 1, section 10.1 (read); Saylor, section 8.5 (derived). */
static void
test_count (void)
{
  g_assert_cmpfloat (stead_stock_on_record (50, 20, 18), ==, 52);
  g_assert_cmpfloat (stead_stock_shrink (65, 63), ==, 2);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/stock-cost/published", test_published);
  g_test_add_func ("/core/stock-cost/nothing-is-lost", test_nothing_is_lost);
  g_test_add_func ("/core/stock-cost/more-than-there-is", test_more_than_there_is);
  g_test_add_func ("/core/stock-cost/nothing-at-all", test_nothing_at_all);
  g_test_add_func ("/core/stock-cost/count", test_count);
  return g_test_run ();
}
