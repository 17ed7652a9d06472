/* check-budget.c - the topics on budgets, hours, small comparisons and price. */
#include "check.h"

#include "core/stead-budget.h"
#include "core/stead-choice.h"
#include "core/stead-price.h"
#include "core/stead-round.h"

#include <math.h>

/* enterprise budget */

static double
product_receipts (CheckRow *row)
{
  gsize n = 0;
  const double *quantities;
  const double *prices;
  double sum = 0;

  if (check_has (row, "receipts_usd"))
    return check_cents (row, "receipts_usd");
  quantities = check_list (row, "quantities", &n);
  prices = check_cents_list (row, "prices_usd", &n);
  for (gsize i = 0; i < n; i++)
    sum += quantities[i] * prices[i];
  return sum;
}

static double
output_units (CheckRow *row)
{
  gsize n = 0;
  const double *quantities;
  double sum = 0;

  if (!check_has (row, "quantities"))
    return check_number (row, "units");
  quantities = check_list (row, "quantities", &n);
  for (gsize i = 0; i < n; i++)
    sum += quantities[i];
  return sum;
}

static SteadBudget
budget_of (CheckRow *row)
{
  return (SteadBudget) {
    .by_product_cents = check_cents_or (row, "by_product_value_usd", 0),
    .variable_cents = check_cents_sum_or (row, "variable_lines_usd"),
    .fixed_cents = check_cents_sum_or (row, "fixed_lines_usd"),
  };
}

static SteadBudgetFigures
figures_of (const SteadBudget *budget)
{
  SteadBudgetFigures figures;

  stead_budget_figures (budget, &figures);
  return figures;
}

static SteadBudgetFigures
with_receipts (CheckRow *row)
{
  SteadBudget budget = budget_of (row);

  budget.receipts_cents = product_receipts (row);
  return figures_of (&budget);
}

static double
budget_receipts (CheckRow *row)
{
  return with_receipts (row).receipts_cents;
}

static double
budget_variable (CheckRow *row)
{
  return budget_of (row).variable_cents;
}

static double
budget_fixed (CheckRow *row)
{
  return budget_of (row).fixed_cents;
}

static double
budget_total (CheckRow *row)
{
  SteadBudget budget = budget_of (row);

  return figures_of (&budget).total_cost_cents;
}

static double
budget_above (CheckRow *row)
{
  return with_receipts (row).above_variable_cents;
}

static double
budget_net (CheckRow *row)
{
  return with_receipts (row).net_cents;
}

static double
budget_unit (CheckRow *row)
{
  SteadBudget budget = budget_of (row);

  budget.output_units = output_units (row);
  return figures_of (&budget).unit_cost_cents;
}

static double
budget_even_units (CheckRow *row)
{
  SteadBudget budget = budget_of (row);

  budget.price_cents = check_cents (row, "price_usd");
  return figures_of (&budget).even_units;
}

static double
budget_share (CheckRow *row)
{
  gsize n_variable = 0;
  gsize n_fixed = 0;
  const double *variable = check_cents_list (row, "variable_lines_usd", &n_variable);
  const double *fixed = check_has (row, "fixed_lines_usd")
                        ? check_cents_list (row, "fixed_lines_usd", &n_fixed) : NULL;
  gsize item = check_item (row, n_variable + n_fixed);
  double line = item < n_variable ? variable[item] : fixed[item - n_variable];

  return 100 * line / budget_total (row);
}

static const CheckAsk budget_asks[] = {
  { "receipts", "USD", budget_receipts },
  { "variable_total", "USD", budget_variable },
  { "fixed_total", "USD", budget_fixed },
  { "total_cost", "USD", budget_total },
  { "above_variable", "USD", budget_above },
  { "net", "USD", budget_net },
  { "cost_per_unit", "USD/unit", budget_unit },
  { "break_even_price", "USD/unit", budget_unit },
  { "break_even_quantity", "units", budget_even_units },
  { "share_pct", "%", budget_share },
  { NULL }
};

/* cost build-up */

static SteadCostViews
views_of (CheckRow *row)
{
  check_need (row, "parts_usd");
  return (SteadCostViews) { .cash_cents = check_cents_sum_or (row, "parts_usd"),
                            .gift_cents = check_cents_sum_or (row, "donated_usd"),
                            .labor_cents = check_cents_sum_or (row, "labor_usd") };
}

static double
views_total (CheckRow *row)
{
  SteadCostViews views = views_of (row);

  return stead_cost_full_cents (&views);
}

static double
views_without_labor (CheckRow *row)
{
  SteadCostViews views = views_of (row);

  return stead_cost_without_labor_cents (&views);
}

static double
views_cash (CheckRow *row)
{
  return views_of (row).cash_cents;
}

static const CheckAsk views_asks[] = {
  { "total", "USD", views_total },
  { "without_labor", "USD", views_without_labor },
  { "cash_only", "USD", views_cash },
  { NULL }
};

/* return per hour */

static double
hour_margin (CheckRow *row)
{
  if (check_has (row, "net_usd"))
    return check_cents (row, "net_usd");
  return check_cents (row, "sales_usd") - check_cents (row, "cash_costs_usd");
}

static double
hour_return (CheckRow *row)
{
  return stead_return_per_hour_cents (hour_margin (row), check_number (row, "unpaid_h"));
}

static const CheckAsk hour_asks[] = {
  { "margin", "USD", hour_margin },
  { "return_per_hour", "USD/h", hour_return },
  { NULL }
};

/* partial budget and accounting return */

static double
partial_change (CheckRow *row)
{
  SteadPartialBudget budget = {
    .added_returns_cents = check_cents_or (row, "added_returns_usd", 0),
    .reduced_costs_cents = check_cents_or (row, "reduced_costs_usd", 0),
    .added_costs_cents = check_cents_or (row, "added_costs_usd", 0),
    .reduced_returns_cents = check_cents_or (row, "reduced_returns_usd", 0),
  };

  return stead_partial_budget_cents (&budget);
}

static const CheckAsk partial_asks[] = {
  { "net_change", "USD", partial_change },
  { NULL }
};

static double
accounting_return (CheckRow *row)
{
  return 100 * stead_accounting_return_frac (check_cents (row, "added_returns_usd"),
                                             check_cents (row, "added_costs_usd"),
                                             check_cents (row, "investment_usd"));
}

static const CheckAsk accounting_asks[] = {
  { "return_pct", "%", accounting_return },
  { NULL }
};

/* price */

static double
price_of (CheckRow *row)
{
  if (check_has (row, "discount_pct"))
    return stead_price_discounted (check_cents (row, "price_usd"), check_frac (row, "discount_pct"));
  if (check_has (row, "margin_pct"))
    return stead_price_from_margin (check_cents (row, "cost_usd"), check_frac (row, "margin_pct"));
  return stead_price_from_markup (check_cents (row, "cost_usd"), check_frac (row, "markup_pct"));
}

static double
price_cost (CheckRow *row)
{
  if (check_has (row, "margin_pct"))
    return stead_price_discounted (check_cents (row, "price_usd"), check_frac (row, "margin_pct"));
  return stead_cost_from_markup (check_cents (row, "price_usd"), check_frac (row, "markup_pct"));
}

static double
price_markup (CheckRow *row)
{
  if (check_has (row, "margin_pct"))
    return 100 * stead_markup_of_margin (check_frac (row, "margin_pct"));
  return 100 * stead_markup_frac (check_cents (row, "cost_usd"), check_cents (row, "price_usd"));
}

static double
price_margin (CheckRow *row)
{
  if (check_has (row, "markup_pct"))
    return 100 * stead_margin_of_markup (check_frac (row, "markup_pct"));
  return 100 * stead_margin_frac (check_cents (row, "cost_usd"), check_cents (row, "price_usd"));
}

static double
whole_cents (CheckRow   *row,
             const char *name)
{
  return stead_round_half_away (check_cents (row, name));
}

static double
price_tax (CheckRow *row)
{
  double tax = check_frac (row, "tax_pct");

  if (!(tax >= 0 && tax <= 1))
    return check_bad_input (row, "tax_pct");
  return (double) stead_sales_tax_cents ((gint64) whole_cents (row, "price_usd"), tax);
}

static double
price_with_tax (CheckRow *row)
{
  return whole_cents (row, "price_usd") + price_tax (row);
}

static double
price_net (CheckRow *row)
{
  return stead_net_of_tax_cents (check_cents (row, "price_usd"), check_frac (row, "tax_pct"));
}

static double
price_target_cost (CheckRow *row)
{
  return stead_price_discounted (check_cents (row, "price_usd"), check_frac (row, "profit_pct"));
}

static const CheckAsk price_asks[] = {
  { "price", "USD", price_of },
  { "cost", "USD", price_cost },
  { "markup_pct", "%", price_markup },
  { "margin_pct", "%", price_margin },
  { "tax", "USD", price_tax },
  { "price_with_tax", "USD", price_with_tax },
  { "net_of_tax", "USD", price_net },
  { "target_cost", "USD", price_target_cost },
  { NULL }
};

const CheckTopic check_budget_topics[] = {
  { "enterprise budget",
    "quantities prices_usd receipts_usd by_product_value_usd variable_lines_usd fixed_lines_usd "
    "units price_usd item", budget_asks },
  { "cost build-up", "parts_usd donated_usd labor_usd", views_asks },
  { "return per hour", "sales_usd cash_costs_usd net_usd unpaid_h", hour_asks },
  { "partial budget",
    "added_returns_usd reduced_costs_usd added_costs_usd reduced_returns_usd", partial_asks },
  { "accounting return", "added_returns_usd added_costs_usd investment_usd", accounting_asks },
  { "price",
    "cost_usd price_usd markup_pct margin_pct discount_pct tax_pct profit_pct", price_asks },
  { NULL }
};
