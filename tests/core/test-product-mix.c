/* Plans under limits: published models, and the ranges tried out. */
#include "core/stead-core-error.h"
#include "core/stead-product-mix.h"

#include <math.h>

/* Answer thread on the toy-maker model (read): 20 and 60 for 180, with ranges. */
static void
test_published (void)
{
  const double margins[] = { 3, 2 };
  const double finishing[] = { 2, 1 };
  const double carpentry[] = { 1, 1 };
  const double demand[] = { 1, 0 };
  const SteadMixLimit limits[] = { { finishing, STEAD_MIX_AT_MOST, 100 },
                                   { carpentry, STEAD_MIX_AT_MOST, 80 },
                                   { demand, STEAD_MIX_AT_MOST, 40 } };
  SteadProductPlan products[2];
  SteadLimitPlan plans[3];
  double best;

  g_assert_true (stead_product_mix_solve (margins, 2, limits, 3, products, plans, &best, NULL));
  g_assert_cmpfloat_with_epsilon (best, 180, 1e-9);
  g_assert_cmpfloat_with_epsilon (products[0].quantity, 20, 1e-9);
  g_assert_cmpfloat_with_epsilon (products[1].quantity, 60, 1e-9);
  g_assert_cmpfloat_with_epsilon (products[0].margin_low, 2, 1e-9);
  g_assert_cmpfloat_with_epsilon (products[0].margin_high, 4, 1e-9);
  g_assert_cmpfloat_with_epsilon (plans[0].shadow_price, 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (plans[0].low, 80, 1e-9);
  g_assert_cmpfloat_with_epsilon (plans[0].high, 120, 1e-9);
  g_assert_cmpfloat (plans[2].shadow_price, ==, 0);
  g_assert_cmpfloat_with_epsilon (plans[2].low, 20, 1e-9);
  g_assert_true (isinf (plans[2].high));
}

static void
test_no_plan (void)
{
  const double margins[] = { 1, 1 };
  const double both[] = { 1, 1 };
  const double first[] = { 1, 0 };
  const SteadMixLimit against[] = { { both, STEAD_MIX_AT_MOST, 5 }, { first, STEAD_MIX_AT_LEAST, 6 } };
  SteadProductPlan products[2] = { { -7 }, { -7 } };
  SteadLimitPlan plans[2];
  double best = -7;
  g_autoptr(GError) contradiction = NULL;
  g_autoptr(GError) endless = NULL;

  g_assert_false (stead_product_mix_solve (margins, 2, against, 2, products, plans, &best, &contradiction));
  g_assert_error (contradiction, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_false (stead_product_mix_solve (margins, 2, against + 1, 1, products, plans, &best, &endless));
  g_assert_error (endless, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_cmpstr (contradiction->message, !=, endless->message);
  g_assert_cmpfloat (best, ==, -7);
  g_assert_cmpfloat (products[0].quantity, ==, -7);
}

typedef struct
{
  double           margins[3];
  double           uses[3][3];
  SteadMixLimit    limits[3];
  SteadProductPlan products[3];
  SteadLimitPlan   plans[3];
  double           best;
} Model;

static void
solve_model (Model *model)
{
  g_autoptr(GError) error = NULL;

  for (int i = 0; i < 3; i++)
    model->limits[i].use = model->uses[i];
  g_assert_true (stead_product_mix_solve (model->margins, 3, model->limits, 3, model->products,
                                          model->plans, &model->best, &error));
}

/* No plan of a fine grid beats the best one, and the plan keeps its limits. */
static void
check_best (const Model *model)
{
  for (double a = 0; a <= 60; a += 3)
    for (double b = 0; b <= 60; b += 3)
      for (double c = 0; c <= 60; c += 3)
        {
          gboolean kept = TRUE;

          for (int i = 0; i < 3 && kept; i++)
            kept = model->uses[i][0] * a + model->uses[i][1] * b + model->uses[i][2] * c
                   <= model->limits[i].amount;
          if (kept)
            g_assert_cmpfloat (model->margins[0] * a + model->margins[1] * b + model->margins[2] * c, <=,
                               model->best + 1e-6);
        }
  for (int i = 0; i < 3; i++)
    g_assert_cmpfloat (model->plans[i].unused, >=, -1e-6);
}

/* One more of a limit inside its range brings its shadow price; a margin moved
 * inside its range leaves the plan as it is. */
static void
check_ranges (const Model *model)
{
  for (int i = 0; i < 3; i++)
    {
      const SteadLimitPlan *plan = &model->plans[i];
      double step = MIN (1, (plan->high - model->limits[i].amount) * 0.9);
      Model moved = *model;

      moved.limits[i].amount += step;
      solve_model (&moved);
      g_assert_cmpfloat_with_epsilon (moved.best, model->best + step * plan->shadow_price, 1e-6);
      g_assert_cmpfloat (plan->low, <=, model->limits[i].amount + 1e-6);
    }
  for (int i = 0; i < 3; i++)
    {
      const SteadProductPlan *plan = &model->products[i];
      double step = MIN (1, (plan->margin_high - model->margins[i]) * 0.9);
      Model moved = *model;

      g_assert_cmpfloat (plan->margin_low, <=, model->margins[i] + 1e-6);
      g_assert_cmpfloat (plan->margin_high, >=, model->margins[i] - 1e-6);
      moved.margins[i] += step;
      solve_model (&moved);
      g_assert_cmpfloat_with_epsilon (moved.best, model->best + step * plan->quantity, 1e-6);
      if (plan->quantity > 0)
        continue;
      /* Past the end of its range a product that was left out is made. */
      moved.margins[i] = plan->margin_high + 0.01;
      solve_model (&moved);
      g_assert_cmpfloat (moved.products[i].quantity, >, 0);
    }
}

/* Whole plans against every whole plan there is. */
static void
test_whole (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (21);

  for (int round = 0; round < 60; round++)
    {
      double margins[2] = { g_rand_int_range (rand, 1, 20), g_rand_int_range (rand, 1, 20) }, quantities[2], best, most = 0;
      double uses[2][2];
      SteadMixLimit limits[2];
      gboolean proven = FALSE;

      for (int k = 0; k < 2; k++)
        {
          for (int i = 0; i < 2; i++)
            uses[k][i] = g_rand_int_range (rand, 1, 9);
          limits[k] = (SteadMixLimit) { uses[k], STEAD_MIX_AT_MOST, g_rand_double_range (rand, 5, 60) };
        }
      g_assert_true (stead_product_mix_solve_whole (margins, 2, limits, 2, 500, quantities, &best, &proven, NULL));
      g_assert_true (proven);
      for (int a = 0; a <= 60; a++)
        for (int b = 0; b <= 60; b++)
          if (uses[0][0] * a + uses[0][1] * b <= limits[0].amount && uses[1][0] * a + uses[1][1] * b <= limits[1].amount)
            most = MAX (most, margins[0] * a + margins[1] * b);
      g_assert_cmpfloat_with_epsilon (best, most, 1e-6);
      g_assert_cmpfloat_with_epsilon (margins[0] * quantities[0] + margins[1] * quantities[1], most, 1e-6);
      g_assert_cmpfloat (quantities[0], ==, floor (quantities[0]));
    }
}

/* Half a unit is promised and whole ones do not reach it; nothing limits it; nothing keeps to it. */
static void
test_whole_refused (void)
{
  const double one[] = { 1 };
  const SteadMixLimit between[] = { { one, STEAD_MIX_AT_LEAST, 0.4 }, { one, STEAD_MIX_AT_MOST, 0.6 } };
  const double margin = 1;
  double quantity = -1, best = -1;
  gboolean proven = FALSE;
  g_autoptr(GError) error = NULL;

  g_assert_false (stead_product_mix_solve_whole (&margin, 1, between, 2, 500, &quantity, &best, &proven, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_cmpfloat (quantity, ==, -1);
  g_assert_false (stead_product_mix_solve_whole (&margin, 1, NULL, 0, 500, &quantity, &best, &proven, NULL));
}

static void
test_random_models (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (13);

  for (int round = 0; round < 200; round++)
    {
      Model model = { 0 };

      for (int i = 0; i < 3; i++)
        {
          model.margins[i] = g_rand_double_range (rand, 1, 20);
          model.limits[i] = (SteadMixLimit) { model.uses[i], STEAD_MIX_AT_MOST, g_rand_double_range (rand, 20, 60) };
          for (int j = 0; j < 3; j++)
            model.uses[i][j] = g_rand_double_range (rand, 1, 10);
        }
      solve_model (&model);
      if (round < 20)
        check_best (&model);
      check_ranges (&model);
    }
}

/* Numbers from a slip of the pen end in a plan or in a message: the solver neither
 * walks in circles nor takes the program down. */
static void
test_wild_numbers (void)
{
  static const double wild[] = { 0, -1, 1e12, 1e-6, 99999, -0.5, 3, 7, 1e300, 1e-300, 0.1 };
  g_autoptr(GRand) rand = g_rand_new_with_seed (18);
  guint refused = 0;
  guint solved = 0;

  for (int round = 0; round < 4000; round++)
    {
      Model model = { .best = -7 };
      g_autoptr(GError) error = NULL;

      for (int i = 0; i < 3; i++)
        {
          model.margins[i] = wild[g_rand_int_range (rand, 0, G_N_ELEMENTS (wild))];
          model.limits[i] = (SteadMixLimit) { model.uses[i], (SteadMixSense) g_rand_int_range (rand, 0, 2),
                                           wild[g_rand_int_range (rand, 0, G_N_ELEMENTS (wild))] };
          for (int j = 0; j < 3; j++)
            model.uses[i][j] = wild[g_rand_int_range (rand, 0, G_N_ELEMENTS (wild))];
        }
      if (stead_product_mix_solve (model.margins, 3, model.limits, 3, model.products, model.plans,
                                   &model.best, &error))
        {
          g_assert_true (isfinite (model.best));
          solved++;
          continue;
        }
      g_assert_true (error->domain == STEAD_CORE_ERROR);
      g_assert_cmpfloat (model.best, ==, -7);
      refused += error->code == STEAD_CORE_ERROR_RANGE;
    }
  /* The case means something only while both happen. */
  g_assert_cmpuint (solved, >, 100);
  g_assert_cmpuint (refused, >, 0);
}

/* OpenStax Principles of Accounting vol. 2, section 10.6 (read; the bookcase's
 * margin is 45 by the text's own prices). */
static void
test_scarce (void)
{
  const double margins[] = { 45, 185, 55 };
  const double use[] = { 0.25, 1, 0.5 };
  const double demand[] = { 40000, 60000, 48000 };
  const double losing[] = { -1, 2, -3 };
  double quantities[3];

  stead_scarce_fill (margins, use, demand, 3, 80000, quantities);
  g_assert_cmpuint (stead_scarce_best (margins, use, 3), ==, 1);
  g_assert_cmpfloat (quantities[0], ==, 40000);
  g_assert_cmpfloat (quantities[1], ==, 60000);
  g_assert_cmpfloat (quantities[2], ==, 20000);
  stead_scarce_fill (losing, use, demand, 3, 1e9, quantities);
  g_assert_cmpfloat (quantities[0], ==, 0);
  g_assert_cmpfloat (quantities[1], ==, 60000);
  stead_scarce_fill (margins, use, demand, 3, 0, quantities);
  g_assert_cmpfloat (quantities[1], ==, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/product-mix/whole", test_whole);
  g_test_add_func ("/core/product-mix/whole-refused", test_whole_refused);
  g_test_add_func ("/core/product-mix/published", test_published);
  g_test_add_func ("/core/product-mix/no-plan", test_no_plan);
  g_test_add_func ("/core/product-mix/random-models", test_random_models);
  g_test_add_func ("/core/product-mix/wild-numbers", test_wild_numbers);
  g_test_add_func ("/core/product-mix/scarce", test_scarce);
  return g_test_run ();
}
