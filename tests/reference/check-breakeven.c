/* check-breakeven.c - the topics on cost, volume and profit. */
#include "check.h"

#include "core/stead-absorption.h"
#include "core/stead-breakeven.h"
#include "core/stead-cost-line.h"
#include "core/stead-mix.h"
#include "core/stead-round.h"
#include "core/stead-sensitivity.h"

#include <math.h>

/* break-even */

static SteadCvp
cvp_of (CheckRow *row)
{
  return (SteadCvp) { .price_cents = check_cents (row, "price_usd"),
                      .variable_cents = check_cents (row, "variable_cost_usd"),
                      .fixed_cents = check_cents_or (row, "fixed_cost_usd", 0) };
}

static SteadCvp
cvp_with_fixed (CheckRow *row)
{
  SteadCvp cvp = cvp_of (row);

  cvp.fixed_cents = check_cents (row, "fixed_cost_usd");
  return cvp;
}

static double
pretax_of (CheckRow *row)
{
  if (!check_has (row, "after_tax_target_usd"))
    return check_cents (row, "target_profit_usd");
  return stead_pretax_cents (check_cents (row, "after_tax_target_usd"), check_frac (row, "tax_pct"));
}

static SteadCvpFigures
figures_of (CheckRow *row)
{
  SteadCvp cvp = cvp_with_fixed (row);
  SteadCvpFigures figures;

  cvp.planned_units = check_number (row, "units");
  stead_cvp_figures (&cvp, &figures);
  return figures;
}

static double
unit_margin (CheckRow *row)
{
  SteadCvp cvp = cvp_of (row);
  SteadCvpFigures figures;

  stead_cvp_figures (&cvp, &figures);
  return figures.margin_cents;
}

static double
margin_ratio (CheckRow *row)
{
  SteadCvp cvp = cvp_of (row);
  SteadCvpFigures figures;

  stead_cvp_figures (&cvp, &figures);
  return 100 * figures.margin_frac;
}

static double
even_units (CheckRow *row)
{
  SteadCvp cvp = cvp_with_fixed (row);

  return stead_cvp_even_units (&cvp, 0);
}

static double
whole (gint64 units)
{
  return units >= 0 ? (double) units : NAN;
}

static double
even_whole_units (CheckRow *row)
{
  SteadCvp cvp = cvp_with_fixed (row);

  return whole (stead_cvp_even_whole_units (&cvp, 0));
}

static double
even_sales (CheckRow *row)
{
  SteadCvp cvp = cvp_with_fixed (row);
  SteadCvpFigures figures;

  stead_cvp_figures (&cvp, &figures);
  return figures.even_sales_cents;
}

static double
profit (CheckRow *row)
{
  return figures_of (row).profit_cents;
}

static double
target_units (CheckRow *row)
{
  SteadCvp cvp = cvp_with_fixed (row);

  return stead_cvp_even_units (&cvp, pretax_of (row));
}

static double
target_whole_units (CheckRow *row)
{
  SteadCvp cvp = cvp_with_fixed (row);

  return whole (stead_cvp_even_whole_units (&cvp, pretax_of (row)));
}

static double
target_sales (CheckRow *row)
{
  return target_units (row) * check_cents (row, "price_usd");
}

static double
safety_units (CheckRow *row)
{
  return figures_of (row).safety_units;
}

static double
safety_sales (CheckRow *row)
{
  return figures_of (row).safety_units * check_cents (row, "price_usd");
}

static double
safety_pct (CheckRow *row)
{
  return 100 * figures_of (row).safety_frac;
}

static double
needed_price (CheckRow *row)
{
  SteadCvp cvp = { .variable_cents = check_cents (row, "variable_cost_usd"),
                   .fixed_cents = check_cents (row, "fixed_cost_usd"),
                   .planned_units = check_number (row, "units") };
  SteadCvpFigures figures;

  stead_cvp_figures (&cvp, &figures);
  return figures.needed_price_cents;
}

static const CheckAsk break_even_asks[] = {
  { "unit_margin", "USD/unit", unit_margin },
  { "margin_ratio_pct", "%", margin_ratio },
  { "break_even_units", "units", even_units },
  { "break_even_whole_units", "units", even_whole_units },
  { "break_even_sales", "USD", even_sales },
  { "profit", "USD", profit },
  { "pretax_target", "USD", pretax_of },
  { "target_units", "units", target_units },
  { "target_whole_units", "units", target_whole_units },
  { "target_sales", "USD", target_sales },
  { "margin_of_safety_units", "units", safety_units },
  { "margin_of_safety_sales", "USD", safety_sales },
  { "margin_of_safety_pct", "%", safety_pct },
  { "needed_price", "USD/unit", needed_price },
  { NULL }
};

/* break-even by ratio */

static double
ratio_even_sales (CheckRow *row)
{
  return stead_ratio_even_cents (check_frac (row, "margin_ratio_pct"),
                                 check_cents (row, "fixed_cost_usd"), 0);
}

static double
ratio_even_units (CheckRow *row)
{
  return ratio_even_sales (row) / check_cents (row, "price_usd");
}

static double
ratio_target_sales (CheckRow *row)
{
  return stead_ratio_even_cents (check_frac (row, "margin_ratio_pct"),
                                 check_cents (row, "fixed_cost_usd"),
                                 check_cents (row, "target_profit_usd"));
}

static double
ratio_safety_sales (CheckRow *row)
{
  return check_cents (row, "sales_usd") - ratio_even_sales (row);
}

static const CheckAsk ratio_asks[] = {
  { "break_even_sales", "USD", ratio_even_sales },
  { "break_even_units", "units", ratio_even_units },
  { "target_sales", "USD", ratio_target_sales },
  { "margin_of_safety_sales", "USD", ratio_safety_sales },
  { NULL }
};

/* break-even mix */

static SteadMix
mix_of (CheckRow *row)
{
  SteadMix mix = { 0 };

  mix.units = check_list (row, "mix", &mix.n);
  mix.price_cents = check_cents_list (row, "prices_usd", &mix.n);
  if (check_has (row, "variable_costs_usd"))
    mix.variable_cents = check_cents_list (row, "variable_costs_usd", &mix.n);
  return mix;
}

static SteadMix
full_mix_of (CheckRow *row)
{
  SteadMix mix = mix_of (row);

  mix.variable_cents = check_cents_list (row, "variable_costs_usd", &mix.n);
  mix.fixed_cents = check_cents (row, "fixed_cost_usd");
  return mix;
}

static double
mix_price (CheckRow *row)
{
  SteadMix mix = mix_of (row);

  return stead_mix_price_cents (&mix);
}

static double
mix_variable (CheckRow *row)
{
  SteadMix mix = mix_of (row);

  mix.variable_cents = check_cents_list (row, "variable_costs_usd", &mix.n);
  return stead_mix_variable_cents (&mix);
}

static double
mix_margin (CheckRow *row)
{
  return mix_price (row) - mix_variable (row);
}

static double
mix_weighted_margin (CheckRow *row)
{
  SteadMix mix = mix_of (row);

  return mix_margin (row) / stead_mix_basket_units (&mix);
}

static double
mix_baskets (CheckRow *row)
{
  SteadMix mix = full_mix_of (row);

  return stead_mix_even_baskets (&mix, 0);
}

static double
mix_whole_baskets (CheckRow *row)
{
  return stead_round_up (mix_baskets (row));
}

static double
mix_units (CheckRow *row)
{
  SteadMix mix = mix_of (row);

  return mix_baskets (row) * mix.units[check_item (row, mix.n)];
}

static double
mix_total_units (CheckRow *row)
{
  SteadMix mix = mix_of (row);

  return mix_baskets (row) * stead_mix_basket_units (&mix);
}

static double
mix_total_whole_units (CheckRow *row)
{
  return stead_round_up (mix_total_units (row));
}

static double
mix_sales (CheckRow *row)
{
  return mix_baskets (row) * mix_price (row);
}

static double
mix_target_baskets (CheckRow *row)
{
  SteadMix mix = full_mix_of (row);

  return stead_mix_even_baskets (&mix, check_cents (row, "target_profit_usd"));
}

static double
mix_target_total_units (CheckRow *row)
{
  SteadMix mix = mix_of (row);

  return mix_target_baskets (row) * stead_mix_basket_units (&mix);
}

static double
mix_target_units (CheckRow *row)
{
  SteadMix mix = mix_of (row);

  return mix_target_baskets (row) * mix.units[check_item (row, mix.n)];
}

static const CheckAsk mix_asks[] = {
  { "composite_price", "USD", mix_price },
  { "composite_variable_cost", "USD", mix_variable },
  { "composite_margin", "USD", mix_margin },
  { "weighted_margin", "USD/unit", mix_weighted_margin },
  { "break_even_composites", "units", mix_baskets },
  { "break_even_whole_composites", "units", mix_whole_baskets },
  { "break_even_units", "units", mix_units },
  { "break_even_total_units", "units", mix_total_units },
  { "break_even_total_whole_units", "units", mix_total_whole_units },
  { "break_even_sales", "USD", mix_sales },
  { "target_total_units", "units", mix_target_total_units },
  { "target_units", "units", mix_target_units },
  { NULL }
};

/* break-even sales mix */

static double
sales_mix_frac (CheckRow *row)
{
  gsize n = 0;

  check_cents_list (row, "sales_totals_usd", &n);
  check_cents_list (row, "margin_totals_usd", &n);
  return check_cents_sum_or (row, "margin_totals_usd") / check_cents_sum_or (row, "sales_totals_usd");
}

static double
sales_mix_ratio (CheckRow *row)
{
  return 100 * sales_mix_frac (row);
}

static double
sales_mix_even (CheckRow *row)
{
  return stead_ratio_even_cents (sales_mix_frac (row), check_cents (row, "fixed_cost_usd"), 0);
}

static double
sales_mix_target (CheckRow *row)
{
  return stead_ratio_even_cents (sales_mix_frac (row), check_cents (row, "fixed_cost_usd"),
                                 check_cents (row, "target_profit_usd"));
}

static double
sales_mix_safety (CheckRow *row)
{
  return check_cents (row, "planned_sales_usd") - sales_mix_even (row);
}

static const CheckAsk sales_mix_asks[] = {
  { "margin_ratio_pct", "%", sales_mix_ratio },
  { "break_even_sales", "USD", sales_mix_even },
  { "target_sales", "USD", sales_mix_target },
  { "margin_of_safety_sales", "USD", sales_mix_safety },
  { NULL }
};

/* stepped fixed cost */

static SteadCvp
steps_of (CheckRow *row)
{
  return (SteadCvp) { .fixed_cents = check_cents_or (row, "fixed_cost_usd", 0),
                      .step_cents = check_cents (row, "step_usd"),
                      .step_units = check_number (row, "step_units") };
}

static double
step_fixed (CheckRow *row)
{
  SteadCvp cvp = steps_of (row);

  return stead_cvp_fixed_cents (&cvp, check_number (row, "units"));
}

static double
step_total (CheckRow *row)
{
  SteadCvp cvp = steps_of (row);

  cvp.variable_cents = check_cents (row, "variable_cost_usd");
  return stead_cvp_cost_cents (&cvp, check_number (row, "units"));
}

static SteadCvp
priced_steps_of (CheckRow *row)
{
  SteadCvp cvp = steps_of (row);

  cvp.variable_cents = check_cents (row, "variable_cost_usd");
  cvp.price_cents = check_cents (row, "price_usd");
  return cvp;
}

static double
step_first (CheckRow *row)
{
  SteadCvp cvp = priced_steps_of (row);
  double units = whole (stead_cvp_even_whole_units (&cvp, 0));

  return units <= check_number (row, "max_units") ? units : NAN;
}

static double
step_lasting (CheckRow *row)
{
  SteadCvp cvp = priced_steps_of (row);
  double max_units = check_number (row, "max_units");

  return max_units >= 0 && max_units <= 1e9
         ? whole (stead_cvp_lasting_whole_units (&cvp, max_units)) : NAN;
}

static double
step_crossings (CheckRow *row)
{
  SteadCvp cvp = priced_steps_of (row);
  double max_units = check_number (row, "max_units");

  return max_units >= 0 && max_units <= 1e9 ? (double) stead_cvp_crossings (&cvp, max_units) : NAN;
}

static const CheckAsk step_asks[] = {
  { "fixed_cost", "USD", step_fixed },
  { "total_cost", "USD", step_total },
  { "first_break_even_units", "units", step_first },
  { "lasting_break_even_units", "units", step_lasting },
  { "crossings", "count", step_crossings },
  { NULL }
};

/* sensitivity */

static SteadCvp
base_of (CheckRow *row)
{
  SteadCvp cvp = cvp_with_fixed (row);

  cvp.planned_units = check_number_or (row, "units", 0);
  return cvp;
}

static SteadCvpChange
change_of (CheckRow *row)
{
  return (SteadCvpChange) {
    .price_frac = check_frac_or (row, "price_change_pct", 0),
    .units_frac = check_frac_or (row, "units_change_pct", 0),
    .variable_cents = check_cents_or (row, "variable_cost_change_usd", 0),
    .fixed_cents = check_cents_or (row, "fixed_cost_change_usd", 0),
  };
}

static double
profit_change (CheckRow *row)
{
  SteadCvp base = base_of (row);
  SteadCvpChange change = change_of (row);

  check_need (row, "units");
  return stead_cvp_profit_change_cents (&base, &change);
}

static double
profit_change_pct (CheckRow *row)
{
  SteadCvp base = base_of (row);

  return 100 * profit_change (row) / stead_cvp_profit_cents (&base, base.planned_units);
}

static double
changed_even_units (CheckRow *row)
{
  SteadCvp base = base_of (row);
  SteadCvpChange change = change_of (row);
  SteadCvp changed;

  stead_cvp_changed (&base, &change, &changed);
  return stead_cvp_even_units (&changed, 0);
}

static double
swing (CheckRow *row)
{
  SteadCvp base = base_of (row);
  SteadCvpChange change = change_of (row);

  check_need (row, "units");
  return stead_cvp_swing_cents (&base, &change);
}

static const CheckAsk sensitivity_asks[] = {
  { "profit_change", "USD", profit_change },
  { "profit_change_pct", "%", profit_change_pct },
  { "break_even_units", "units", changed_even_units },
  { "swing", "USD", swing },
  { NULL }
};

/* operating leverage */

static double
total_margin (CheckRow *row)
{
  if (check_has (row, "total_margin_usd"))
    return check_cents (row, "total_margin_usd");
  return check_cents (row, "sales_usd") - check_cents (row, "variable_total_usd");
}

static double
leverage_profit (CheckRow *row)
{
  if (check_has (row, "profit_usd"))
    return check_cents (row, "profit_usd");
  return total_margin (row) - check_cents (row, "fixed_cost_usd");
}

static double
leverage_degree (CheckRow *row)
{
  return stead_leverage (total_margin (row), leverage_profit (row));
}

static double
leverage_change (CheckRow *row)
{
  return leverage_degree (row) * check_number (row, "sales_change_pct");
}

static double
leverage_new_profit (CheckRow *row)
{
  return leverage_profit (row) + total_margin (row) * check_frac (row, "sales_change_pct");
}

static double
leverage_new_degree (CheckRow *row)
{
  return stead_leverage (total_margin (row) * (1 + check_frac (row, "sales_change_pct")),
                         leverage_new_profit (row));
}

static const CheckAsk leverage_asks[] = {
  { "profit", "USD", leverage_profit },
  { "degree", "ratio", leverage_degree },
  { "profit_change_pct", "%", leverage_change },
  { "new_profit", "USD", leverage_new_profit },
  { "new_degree", "ratio", leverage_new_degree },
  { NULL }
};

/* absorption and variable costing */

static SteadMaking
making_of (CheckRow   *row,
           const char *needed)
{
  check_need (row, needed);
  return (SteadMaking) {
    .made_units = check_number_or (row, "made_units", 0),
    .sold_units = check_number_or (row, "sold_units", 0),
    .begin_units = check_number_or (row, "begin_units", 0),
    .price_cents = check_cents_or (row, "price_usd", 0),
    .variable_make_cents = check_cents (row, "variable_make_usd"),
    .variable_sell_cents = check_cents_or (row, "variable_sell_usd", 0),
    .fixed_make_cents = check_cents_or (row, "fixed_make_usd", 0),
    .fixed_sell_cents = check_cents_or (row, "fixed_sell_usd", 0),
  };
}

static double
absorption_unit (CheckRow *row)
{
  SteadMaking making = making_of (row, "made_units fixed_make_usd");

  return stead_making_unit_cents (&making, STEAD_COSTING_ABSORPTION);
}

static double
variable_unit (CheckRow *row)
{
  SteadMaking making = making_of (row, "variable_make_usd");

  return stead_making_unit_cents (&making, STEAD_COSTING_VARIABLE);
}

static double
absorption_profit (CheckRow *row)
{
  SteadMaking making = making_of (row, "made_units sold_units price_usd fixed_make_usd");

  return stead_making_profit_cents (&making, STEAD_COSTING_ABSORPTION);
}

static double
variable_profit (CheckRow *row)
{
  SteadMaking making = making_of (row, "sold_units price_usd fixed_make_usd");

  return stead_making_profit_cents (&making, STEAD_COSTING_VARIABLE);
}

static double
absorption_stock (CheckRow *row)
{
  SteadMaking making = making_of (row, "made_units sold_units fixed_make_usd");

  return stead_making_stock_cents (&making, STEAD_COSTING_ABSORPTION);
}

static double
variable_stock (CheckRow *row)
{
  SteadMaking making = making_of (row, "made_units sold_units");

  return stead_making_stock_cents (&making, STEAD_COSTING_VARIABLE);
}

static const CheckAsk absorption_asks[] = {
  { "absorption_unit_cost", "USD/unit", absorption_unit },
  { "variable_unit_cost", "USD/unit", variable_unit },
  { "absorption_profit", "USD", absorption_profit },
  { "variable_profit", "USD", variable_profit },
  { "absorption_stock", "USD", absorption_stock },
  { "variable_stock", "USD", variable_stock },
  { NULL }
};

/* cost line */

static gboolean
line_of (CheckRow      *row,
         SteadCostLine *line)
{
  static const char * const methods[] = { "high_low", "least_squares", NULL };
  g_autoptr(GError) error = NULL;
  gsize n = 0;
  const double *activity;
  const double *costs;
  gboolean found;

  if (check_has (row, "fixed_cost_usd") && check_has (row, "variable_cost_usd"))
    {
      *line = (SteadCostLine) { .variable_cents = check_cents (row, "variable_cost_usd"),
                                .fixed_cents = check_cents (row, "fixed_cost_usd") };
      return TRUE;
    }
  activity = check_list (row, "activity", &n);
  costs = check_cents_list (row, "costs_usd", &n);
  found = check_word (row, "method", methods, -1) == 0
          ? stead_cost_line_high_low (activity, costs, n, line, &error)
          : stead_cost_line_fit (activity, costs, n, line, &error);
  if (!found)
    check_answer_none (row, error);
  return found;
}

static double
line_variable (CheckRow *row)
{
  SteadCostLine line;

  return line_of (row, &line) ? line.variable_cents : NAN;
}

static double
line_fixed (CheckRow *row)
{
  SteadCostLine line;

  return line_of (row, &line) ? line.fixed_cents : NAN;
}

static double
line_total (CheckRow *row)
{
  SteadCostLine line;

  return line_of (row, &line) ? stead_cost_line_at (&line, check_number (row, "units")) : NAN;
}

static const CheckAsk line_asks[] = {
  { "variable_cost", "USD/unit", line_variable },
  { "fixed_cost", "USD", line_fixed },
  { "total_cost", "USD", line_total },
  { NULL }
};

const CheckTopic check_breakeven_topics[] = {
  { "break-even",
    "price_usd variable_cost_usd fixed_cost_usd units target_profit_usd after_tax_target_usd tax_pct",
    break_even_asks },
  { "break-even by ratio",
    "margin_ratio_pct fixed_cost_usd price_usd sales_usd target_profit_usd", ratio_asks },
  { "break-even mix",
    "prices_usd variable_costs_usd mix fixed_cost_usd target_profit_usd item", mix_asks },
  { "break-even sales mix",
    "sales_totals_usd margin_totals_usd fixed_cost_usd target_profit_usd planned_sales_usd",
    sales_mix_asks },
  { "stepped fixed cost",
    "fixed_cost_usd step_usd step_units variable_cost_usd price_usd units max_units", step_asks },
  { "sensitivity",
    "price_usd variable_cost_usd fixed_cost_usd units price_change_pct units_change_pct "
    "fixed_cost_change_usd variable_cost_change_usd", sensitivity_asks },
  { "operating leverage",
    "total_margin_usd sales_usd variable_total_usd fixed_cost_usd profit_usd sales_change_pct",
    leverage_asks },
  { "absorption and variable costing",
    "made_units sold_units begin_units price_usd variable_make_usd variable_sell_usd "
    "fixed_make_usd fixed_sell_usd", absorption_asks },
  { "cost line",
    "method activity costs_usd fixed_cost_usd variable_cost_usd units", line_asks },
  { NULL }
};
