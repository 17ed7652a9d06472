/* check-cash.c - the topics on cash, fundraisers and statements. */
#include "check.h"

#include "core/stead-cash.h"
#include "core/stead-round.h"
#include "core/stead-statement.h"

#include <math.h>

static gint64
whole (double cents)
{
  return (gint64) stead_round_half_away (cents);
}

static gint64
cents_of (CheckRow   *row,
          const char *name)
{
  return whole (check_cents (row, name));
}

static gint64
cents_or (CheckRow   *row,
          const char *name)
{
  return whole (check_cents_or (row, name, 0));
}

/* cash-up */

static gint64
counted_of (CheckRow *row)
{
  gsize n = 0;
  const double *faces;
  const double *pieces;
  double sum = 0;

  if (check_has (row, "counted_usd"))
    return cents_of (row, "counted_usd");
  faces = check_cents_list (row, "denominations_usd", &n);
  pieces = check_list (row, "pieces", &n);
  for (gsize i = 0; i < n; i++)
    sum += stead_round_half_away (faces[i]) * pieces[i];
  return whole (sum);
}

static double
till_counted (CheckRow *row)
{
  return (double) counted_of (row);
}

static double
till_deposit (CheckRow *row)
{
  return (double) stead_till_deposit_cents (counted_of (row), cents_of (row, "float_usd"));
}

static double
till_over (CheckRow *row)
{
  return (double) stead_till_over_cents (counted_of (row), cents_of (row, "float_usd"),
                                         cents_of (row, "recorded_sales_usd"),
                                         cents_or (row, "paid_out_usd"));
}

static const CheckAsk till_asks[] = {
  { "counted", "USD", till_counted },
  { "deposit", "USD", till_deposit },
  { "over_short", "USD", till_over },
  { NULL }
};

/* cash-up week */

static gint64
day_over (CheckRow *row,
          gsize     item)
{
  gsize n = 0;
  const double *counted = check_cents_list (row, "counted_usd", &n);
  const double *recorded = check_cents_list (row, "recorded_sales_usd", &n);

  return stead_till_over_cents (whole (counted[item]), cents_of (row, "float_usd"),
                                whole (recorded[item]), 0);
}

static gsize
days_of (CheckRow *row)
{
  gsize n = 0;

  check_list (row, "counted_usd", &n);
  return n;
}

static double
week_day (CheckRow *row)
{
  return (double) day_over (row, check_item (row, days_of (row)));
}

static double
week_net (CheckRow *row)
{
  gint64 sum = 0;

  for (gsize i = 0; i < days_of (row); i++)
    sum += day_over (row, i);
  return (double) sum;
}

static const CheckAsk week_asks[] = {
  { "over_short", "USD", week_day },
  { "net_over_short", "USD", week_net },
  { NULL }
};

/* petty cash */

static double
petty_over (CheckRow *row)
{
  check_need (row, "slips_usd");
  return (double) stead_petty_over_cents (cents_of (row, "fund_usd"),
                                          whole (check_cents_sum_or (row, "slips_usd")),
                                          cents_of (row, "counted_usd"));
}

static double
petty_refill (CheckRow *row)
{
  return (double) stead_petty_refill_cents (cents_of (row, "fund_usd"), cents_of (row, "counted_usd"));
}

static const CheckAsk petty_asks[] = {
  { "over_short", "USD", petty_over },
  { "refill", "USD", petty_refill },
  { NULL }
};

/* bank check */

static double
bank_side (CheckRow *row)
{
  SteadBankCheck check = {
    .bank_cents = cents_of (row, "bank_usd"),
    .in_transit_cents = whole (check_cents_sum_or (row, "deposits_in_transit_usd")),
    .outstanding_cents = whole (check_cents_sum_or (row, "outstanding_checks_usd")),
    .bank_error_cents = whole (check_cents_sum_or (row, "bank_errors_usd")),
  };

  check_need (row, "deposits_in_transit_usd outstanding_checks_usd");
  return (double) stead_bank_side_cents (&check);
}

static double
book_side (CheckRow *row)
{
  SteadBankCheck check = {
    .book_cents = cents_of (row, "book_usd"),
    .additions_cents = whole (check_cents_sum_or (row, "book_additions_usd")),
    .deductions_cents = whole (check_cents_sum_or (row, "book_deductions_usd")),
  };

  return (double) stead_book_side_cents (&check);
}

static const CheckAsk bank_asks[] = {
  { "bank_side", "USD", bank_side },
  { "book_side", "USD", book_side },
  { NULL }
};

/* fundraiser */

static double
fund_profit (CheckRow *row)
{
  return stead_fundraiser_profit_cents (check_number (row, "items"), check_cents (row, "price_usd"),
                                        check_cents (row, "cost_usd"),
                                        check_cents_or (row, "fixed_cost_usd", 0));
}

static double
fund_needed (CheckRow *row)
{
  gint64 items = stead_fundraiser_items_needed (check_cents (row, "goal_usd"),
                                                check_cents (row, "price_usd"),
                                                check_cents (row, "cost_usd"),
                                                check_cents_or (row, "fixed_cost_usd", 0));

  return items >= 0 ? (double) items : NAN;
}

static double
fund_accounted (CheckRow *row)
{
  return stead_fundraiser_items_accounted (check_number (row, "received_items"),
                                           check_number_or (row, "returned_items", 0),
                                           check_number_or (row, "given_items", 0));
}

static double
fund_items (CheckRow *row)
{
  return check_has (row, "items") ? check_number (row, "items") : fund_accounted (row);
}

static double
fund_expected (CheckRow *row)
{
  return -stead_fundraiser_over_cents (0, fund_items (row), check_cents (row, "price_usd"));
}

static double
fund_over (CheckRow *row)
{
  return stead_fundraiser_over_cents (check_cents (row, "deposited_usd"), fund_items (row),
                                      check_cents (row, "price_usd"));
}

static const CheckAsk fund_asks[] = {
  { "profit", "USD", fund_profit },
  { "items_needed", "items", fund_needed },
  { "accounted_items", "items", fund_accounted },
  { "expected_cash", "USD", fund_expected },
  { "over_short", "USD", fund_over },
  { NULL }
};

/* fundraiser split */

static SteadShareOut
share_of (CheckRow *row)
{
  return (SteadShareOut) { check_cents (row, "receipts_usd"), check_number (row, "special_items"),
                           check_cents (row, "special_price_usd"),
                           check_cents (row, "special_profit_usd"),
                           check_frac (row, "first_share_pct") };
}

static double
share_first (CheckRow *row)
{
  SteadShareOut share = share_of (row);

  return stead_share_out_first_cents (&share);
}

static double
share_second (CheckRow *row)
{
  SteadShareOut share = share_of (row);

  return stead_share_out_second_cents (&share);
}

static const CheckAsk share_asks[] = {
  { "first", "USD", share_first },
  { "second", "USD", share_second },
  { NULL }
};

/* accrual income */

static SteadAccrual
year_of (CheckRow *row)
{
  return (SteadAccrual) {
    .sales = check_cents_or (row, "sales_usd", 0),
    .cash_costs = check_cents_or (row, "cash_costs_usd", 0),
    .inventory_begin = check_cents_or (row, "inventory_begin_usd", 0),
    .inventory_end = check_cents_or (row, "inventory_end_usd", 0),
    .receivable_change = check_cents_or (row, "receivable_change_usd", 0),
    .prepaid_change = check_cents_or (row, "prepaid_change_usd", 0),
    .payable_change = check_cents_or (row, "payable_change_usd", 0),
    .depreciation = check_cents_or (row, "depreciation_usd", 0),
  };
}

static double
accrual_net (CheckRow *row)
{
  SteadAccrual year = year_of (row);

  return stead_accrual_net_cents (&year);
}

static double
accrual_cash_net (CheckRow *row)
{
  SteadAccrual year = year_of (row);
  SteadAccrual cash = { .sales = year.sales, .cash_costs = year.cash_costs };

  return stead_accrual_net_cents (&cash);
}

static double
accrual_stock (CheckRow *row)
{
  SteadAccrual year = year_of (row);
  SteadAccrual stock = { .inventory_begin = year.inventory_begin, .inventory_end = year.inventory_end };

  return stead_accrual_net_cents (&stock);
}

static double
accrual_after_depreciation (CheckRow *row)
{
  return accrual_cash_net (row) - check_cents_or (row, "depreciation_usd", 0);
}

static double
accrual_worth (CheckRow *row)
{
  return stead_worth_end_cents (check_cents_or (row, "net_worth_begin_usd", 0), 0, accrual_net (row),
                                check_cents_or (row, "withdrawals_usd", 0));
}

static const CheckAsk accrual_asks[] = {
  { "accrual_net", "USD", accrual_net },
  { "cash_net", "USD", accrual_cash_net },
  { "inventory_change", "USD", accrual_stock },
  { "net_after_depreciation", "USD", accrual_after_depreciation },
  { "net_worth_end", "USD", accrual_worth },
  { NULL }
};

/* accrual line */

static const char * const kinds[] = { "revenue", "expense", "purchases", "production", NULL };

static double
line_accrual (CheckRow *row)
{
  int kind = check_word (row, "kind", kinds, -1);

  if (kind == 2)
    return stead_purchases_cents (check_cents (row, "cost_sold_usd"),
                                  check_cents_or (row, "inventory_change_usd", 0));
  if (kind == 3)
    return stead_production_cents (check_cents (row, "sales_usd"),
                                   check_cents (row, "inventory_begin_usd"),
                                   check_cents (row, "inventory_end_usd"));
  return stead_accrual_from_cash_cents ((SteadAccrualLine) kind, check_cents (row, "cash_usd"),
                                        check_cents_or (row, "receivable_change_usd", 0),
                                        check_cents_or (row, "payable_change_usd", 0),
                                        check_cents_or (row, "prepaid_change_usd", 0));
}

static double
line_cash (CheckRow *row)
{
  int kind = check_word (row, "kind", kinds, -1);
  double accrual;

  if (kind == 3)
    return check_bad_input (row, "kind");
  /* What was bought is paid like any expense. */
  accrual = kind == 2 ? line_accrual (row) : check_cents (row, "accrual_usd");
  return stead_cash_from_accrual_cents (kind == 0 ? STEAD_ACCRUAL_REVENUE : STEAD_ACCRUAL_EXPENSE,
                                        accrual, check_cents_or (row, "receivable_change_usd", 0),
                                        check_cents_or (row, "payable_change_usd", 0),
                                        kind == 2 ? 0 : check_cents_or (row, "prepaid_change_usd", 0));
}

static const CheckAsk line_asks[] = {
  { "cash", "USD", line_cash },
  { "accrual", "USD", line_accrual },
  { NULL }
};

/* cash flow */

static SteadCashFlow
flow_of (CheckRow *row)
{
  return (SteadCashFlow) { check_cents (row, "net_usd"), check_cents_sum_or (row, "noncash_usd"),
                           check_cents_sum_or (row, "working_capital_changes_usd"),
                           check_cents_sum_or (row, "investing_usd"),
                           check_cents_sum_or (row, "financing_usd") };
}

static double
flow_operating (CheckRow *row)
{
  SteadCashFlow flow = flow_of (row);

  return stead_cash_flow_operating_cents (&flow);
}

static double
flow_change (CheckRow *row)
{
  SteadCashFlow flow = flow_of (row);

  return stead_cash_flow_change_cents (&flow);
}

static const CheckAsk flow_asks[] = {
  { "operating", "USD", flow_operating },
  { "net_change", "USD", flow_change },
  { NULL }
};

/* net worth */

static double
worth_end (CheckRow *row)
{
  return stead_worth_end_cents (check_cents (row, "net_worth_begin_usd"),
                                check_cents_or (row, "contributions_usd", 0),
                                check_cents (row, "net_usd"),
                                check_cents_or (row, "withdrawals_usd", 0));
}

static double
worth_now (CheckRow *row)
{
  return stead_worth_cents (check_cents (row, "assets_usd"), check_cents (row, "debts_usd"));
}

static double
worth_change (CheckRow *row)
{
  return stead_worth_cents (check_cents (row, "assets_end_usd"), check_cents (row, "debts_end_usd"))
         - stead_worth_cents (check_cents (row, "assets_begin_usd"),
                              check_cents (row, "debts_begin_usd"));
}

static double
worth_working (CheckRow *row)
{
  return stead_working_capital_cents (check_cents (row, "current_assets_usd"),
                                      check_cents (row, "current_debts_usd"));
}

static double
worth_ratio (CheckRow *row)
{
  return stead_current_ratio (check_cents (row, "current_assets_usd"),
                              check_cents (row, "current_debts_usd"));
}

static const CheckAsk worth_asks[] = {
  { "net_worth_end", "USD", worth_end },
  { "net_worth", "USD", worth_now },
  { "change", "USD", worth_change },
  { "working_capital", "USD", worth_working },
  { "current_ratio", "ratio", worth_ratio },
  { NULL }
};

const CheckTopic check_cash_topics[] = {
  { "cash-up",
    "counted_usd denominations_usd pieces float_usd recorded_sales_usd paid_out_usd", till_asks },
  { "cash-up week", "counted_usd recorded_sales_usd float_usd item", week_asks },
  { "petty cash", "fund_usd slips_usd counted_usd", petty_asks },
  { "bank check",
    "bank_usd deposits_in_transit_usd outstanding_checks_usd bank_errors_usd book_usd "
    "book_additions_usd book_deductions_usd", bank_asks },
  { "fundraiser",
    "items price_usd cost_usd fixed_cost_usd goal_usd received_items returned_items given_items "
    "deposited_usd", fund_asks },
  { "fundraiser split",
    "receipts_usd special_items special_price_usd special_profit_usd first_share_pct", share_asks },
  { "accrual income",
    "sales_usd cash_costs_usd inventory_begin_usd inventory_end_usd receivable_change_usd "
    "prepaid_change_usd payable_change_usd depreciation_usd net_worth_begin_usd withdrawals_usd",
    accrual_asks },
  { "accrual line",
    "kind accrual_usd cash_usd receivable_change_usd payable_change_usd prepaid_change_usd "
    "cost_sold_usd inventory_change_usd sales_usd inventory_begin_usd inventory_end_usd", line_asks },
  { "cash flow",
    "net_usd noncash_usd working_capital_changes_usd investing_usd financing_usd", flow_asks },
  { "net worth",
    "net_worth_begin_usd contributions_usd net_usd withdrawals_usd assets_usd debts_usd "
    "assets_begin_usd debts_begin_usd assets_end_usd debts_end_usd current_assets_usd "
    "current_debts_usd", worth_asks },
  { NULL }
};
