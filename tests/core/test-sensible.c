/* test-sensible.c - amounts that a cook can measure, worked by hand.
 *
 * That 3 teaspoons are a tablespoon, 16 tablespoons a cup, 4 cups a quart and 4
 * quarts a gallon: NIST Special Publication 811, appendix B (from memory).
 */
#include "config.h"

#include "core/stead-sensible.h"

#include <math.h>

typedef struct
{
  double      amount;
  const char *unit;
  double      sensible;
  const char *in;
  const char *text;
} Row;

static void
test_rows (void)
{
  static const Row rows[] = {
    { 0.37, "ea", 1, "ea", "1" },                       /* no 0.37 egg */
    { 12.5, "ea", 13, "ea", "13" },
    { 6.4, "ea", 6, "ea", "6" },
    { 2.2, "doz", 26.0 / 12, "doz", "2 doz 2" },        /* 26.4 eggs */
    { 1.5, "cup", 1.5, "cup", "1 1/2 cups" },
    { 0.35, "cup", 1.0 / 3, "cup", "1/3 cup" },
    { 0.70, "cup", 2.0 / 3, "cup", "2/3 cup" },
    { 2.96, "cup", 3, "cup", "3 cups" },
    { 2.7, "cup", 8.0 / 3, "cup", "2 2/3 cups" },
    { 0.125, "cup", 2, "tbsp", "2 tbsp" },              /* 1/8 cup */
    { 0.1, "tbsp", 0.25, "tsp", "1/4 tsp" },            /* 0.3 tsp */
    { 6, "tsp", 2, "tbsp", "2 tbsp" },
    { 7, "tsp", 7, "tsp", "7 tsp" },                    /* 2 1/3 tbsp has no spoon: no worse, so it stays */
    { 8, "tbsp", 0.5, "cup", "1/2 cup" },
    { 32, "cup", 8, "qt", "8 qt" },
    { 9.3, "cup", 9.5, "cup", "9 1/2 cups" },
    { 0.01, "tsp", 0.125, "tsp", "1/8 tsp" },
    { 1234, "g", 1240, "g", "1,240 g" },                /* steps of 20 g */
    { 43.2, "g", 43, "g", "43 g" },
    { 0.5, "kg", 0.5, "kg", "0.5 kg" },
    { 3.04, "oz", 3, "oz", "3 oz" },                    /* tenths */
    { 2.26, "lb", 2.25, "lb", "2 lb 4 oz" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      SteadSensible out;
      g_autofree char *text = NULL;

      stead_sensible_amount (rows[i].amount, stead_unit_by_id (rows[i].unit), &out);
      g_assert_cmpstr (out.unit->id, ==, rows[i].in);
      g_assert_cmpfloat_with_epsilon (out.amount, rows[i].sensible, 1e-9);
      text = stead_sensible_format (out.amount, out.unit);
      g_assert_cmpstr (text, ==, rows[i].text);
      /* The effect says how far it is from the exact amount. */
      g_assert_cmpfloat_with_epsilon (stead_quantity_to_base (rows[i].amount, stead_unit_by_id (rows[i].unit)) * out.effect,
                                      stead_quantity_to_base (out.amount, out.unit), 1e-9);
    }
}

/* Whatever is scaled, cups and spoons from a half on are off by an eighth at most, weights by
 * a hundredth. */
static void
test_bounds (void)
{
  static const char * const volumes[] = { "tsp", "tbsp", "cup", "qt", "gal" };
  static const char * const weights[] = { "g", "kg", "lb", "ml", "l" };

  for (int round = 0; round < 20000; round++)
    {
      double amount = pow (10, g_test_rand_double_range (log10 (0.5), 2));
      SteadSensible out;

      stead_sensible_amount (amount, stead_unit_by_id (volumes[round % 5]), &out);
      g_assert_cmpfloat (fabs (out.effect - 1), <=, 0.34);
      g_assert_cmpfloat (out.amount, >, 0);
      /* What is sensible already stays. */
      amount = out.amount;
      stead_sensible_amount (amount, out.unit, &out);
      g_assert_cmpfloat (out.effect, ==, 1);
      stead_sensible_amount (MAX (amount, 3.2), stead_unit_by_id (weights[round % 5]), &out);
      g_assert_cmpfloat (fabs (out.effect - 1), <=, 0.0101);
    }
}

static void
test_factors (void)
{
  static const double need[] = { 2, 0, 12, 0.5 }, on_hand[] = { 9, 0, 30, 4 };
  gsize limiting = 99;

  /* 5 eggs at 1.3 are 6.5, so 7: the factor at which they are whole is 7/5. */
  g_assert_cmpfloat_with_epsilon (stead_scale_whole (5, 1.3), 1.4, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_scale_whole (4, 0.1), 0.25, 1e-12);
  /* 9/2 = 4.5, 30/12 = 2.5, 4/0.5 = 8: the third runs out first. */
  g_assert_cmpfloat_with_epsilon (stead_scale_on_hand (need, on_hand, 4, &limiting), 2.5, 1e-12);
  g_assert_cmpuint (limiting, ==, 2);
  g_assert_true (isnan (stead_scale_on_hand (need, on_hand, 0, NULL)));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/sensible/rounds-to-what-can-be-measured", test_rows);
  g_test_add_func ("/core/sensible/stays-near-and-stays-put", test_bounds);
  g_test_add_func ("/core/sensible/names-what-runs-out-first", test_factors);
  return g_test_run ();
}
