/* Budgets, prices, and the value of a hen. */
#include "core/stead-bird-value.h"
#include "core/stead-budget.h"
#include "core/stead-feed.h"
#include "core/stead-price.h"

#include <math.h>

/* Farm management course notes, watermelon budget (read). */
static void
test_enterprise (void)
{
  SteadBudget budget = { .receipts_cents = 640000, .variable_cents = 553500, .fixed_cents = 62500,
                         .output_units = 400, .price_cents = 1600 };
  SteadBudgetFigures figures;

  stead_budget_figures (&budget, &figures);
  g_assert_cmpfloat_with_epsilon (figures.net_cents, 24000, 1e-6);
  g_assert_cmpfloat_with_epsilon (figures.unit_cost_cents, 1540, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures.even_units, 385, 1e-9);
  /* A by-product is income, and takes its share off the cost of the main one. */
  budget.by_product_cents = 16000;
  stead_budget_figures (&budget, &figures);
  g_assert_cmpfloat_with_epsilon (figures.receipts_cents, 656000, 1e-6);
  g_assert_cmpfloat_with_epsilon (figures.unit_cost_cents, 1500, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures.above_variable_cents, 656000 - 553500, 1e-6);
  budget.output_units = 0;
  budget.price_cents = 0;
  stead_budget_figures (&budget, &figures);
  g_assert_true (isnan (figures.unit_cost_cents));
  g_assert_true (isnan (figures.even_units));
}

/* A small-flock owner's cost table, Colorado (read): 11.69 with labor of 5.00. */
static void
test_views (void)
{
  SteadCostViews views = { .cash_cents = 669, .labor_cents = 500 };

  g_assert_cmpfloat (stead_cost_without_labor_cents (&views), ==, 669);
  g_assert_cmpfloat (stead_cost_full_cents (&views), ==, 1169);
  views.gift_cents = 31;
  g_assert_cmpfloat (stead_cost_without_labor_cents (&views), ==, 700);
  /* A jam seller's arithmetic (read): 112 less 40 in 3.5 hours. */
  g_assert_cmpfloat_with_epsilon (stead_return_per_hour_cents (7200, 3.5), 2057.14, 0.005);
  g_assert_true (isnan (stead_return_per_hour_cents (7200, 0)));
}

/* OpenStax Contemporary Mathematics, section 6.2 (read). */
static void
test_price (void)
{
  g_assert_cmpfloat_with_epsilon (stead_price_from_markup (6200, 0.15), 7130, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_markup_frac (9000, 10350), 0.15, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_cost_from_markup (1062, 0.2), 885, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_price_discounted (7580, 0.25), 5685, 1e-9);
  g_assert_cmpint (stead_sales_tax_cents (42899, 0.0825), ==, 3539);
  g_assert_cmpfloat_with_epsilon (stead_price_from_margin (195, 0.4), 325, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_net_of_tax_cents (500, 0.0825), 461.89, 0.005);
}

/* Markup and margin are two names of one gain. */
static void
test_markup_and_margin (void)
{
  for (double k = 0; k < 5; k += 0.07)
    {
      double margin = stead_margin_of_markup (k);

      g_assert_cmpfloat_with_epsilon (stead_markup_of_margin (margin), k, 1e-12);
      g_assert_cmpfloat_with_epsilon (stead_price_from_margin (100, margin),
                                      stead_price_from_markup (100, k), 1e-9);
      g_assert_cmpfloat_with_epsilon (stead_margin_frac (100, stead_price_from_markup (100, k)), margin, 1e-12);
    }
  g_assert_true (isnan (stead_price_from_margin (100, 1)));
  g_assert_true (isnan (stead_markup_of_margin (1)));
  g_assert_true (isnan (stead_margin_of_markup (-1)));
  g_assert_true (isnan (stead_cost_from_markup (100, -1)));
  g_assert_true (isnan (stead_markup_frac (0, 100)));
  g_assert_true (isnan (stead_margin_frac (100, 0)));
}

/* UC Davis, Hen value, September 2002 (read): 3.00 at week 22, nothing at 80. */
static void
test_bird (void)
{
  SteadBirdValue bird = { .pullet_cents = 275, .placing_cents = 25, .start_week = 22, .end_week = 80 };

  g_assert_cmpfloat (stead_bird_start_cents (&bird), ==, 300);
  g_assert_cmpfloat_with_epsilon (stead_bird_weekly_cents (&bird), 5.17, 0.005);
  g_assert_cmpfloat_with_epsilon (stead_bird_value_at_cents (&bird, 51), 150, 1e-9);
  g_assert_cmpfloat (stead_bird_value_at_cents (&bird, 10), ==, 300);
  bird.salvage_cents = 50;
  g_assert_cmpfloat_with_epsilon (stead_bird_value_at_cents (&bird, 200), 50, 1e-9);
  bird.end_week = 22;
  g_assert_true (isnan (stead_bird_weekly_cents (&bird)));
}

static void
test_feed (void)
{
  /* Catfish (derived): 5,000 lb of gain at 1.6; hens (read): 0.3 lb at 85 percent. */
  g_assert_cmpfloat_with_epsilon (stead_feed_for_gain (5000, 1.6), 8000, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_feed_per_dozen (0.3, 0.85) * 24, 102, 0.5);
  g_assert_cmpfloat_with_epsilon (stead_feed_conversion (119, 62.8), 1.90, 0.01);
  g_assert_true (isnan (stead_feed_per_dozen (0.3, 0)));
  g_assert_true (isnan (stead_feed_conversion (1, 0)));
  /* A flock owner's pullet (read): 7.5 lb of a 13.00 bag of 50 lb. */
  g_assert_cmpfloat_with_epsilon (stead_feed_cents (7.5, 1300, 50), 195, 1e-9);
  g_assert_true (isnan (stead_feed_cents (7.5, 1300, 0)));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/budget/enterprise", test_enterprise);
  g_test_add_func ("/core/budget/views", test_views);
  g_test_add_func ("/core/price/published", test_price);
  g_test_add_func ("/core/price/markup-and-margin", test_markup_and_margin);
  g_test_add_func ("/core/bird-value/published", test_bird);
  g_test_add_func ("/core/feed/published", test_feed);
  return g_test_run ();
}
