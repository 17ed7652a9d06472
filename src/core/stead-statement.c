/* stead-statement.c - from cash to what was really earned, and back. */
#include "config.h"

#include "core/stead-statement.h"

#include <math.h>

double
stead_accrual_net_cents (const SteadAccrual *year)
{
  g_return_val_if_fail (year != NULL, NAN);
  return year->sales - year->cash_costs + (year->inventory_end - year->inventory_begin)
         + year->receivable_change + year->prepaid_change - year->payable_change
         - year->depreciation;
}

/* What has to be added to the cash of a line. */
static double
beyond_cash (SteadAccrualLine line,
             double           receivable_change,
             double           payable_change,
             double           prepaid_change)
{
  return line == STEAD_ACCRUAL_REVENUE ? receivable_change : payable_change - prepaid_change;
}

double
stead_accrual_from_cash_cents (SteadAccrualLine line,
                               double           cash_cents,
                               double           receivable_change,
                               double           payable_change,
                               double           prepaid_change)
{
  return cash_cents + beyond_cash (line, receivable_change, payable_change, prepaid_change);
}

double
stead_cash_from_accrual_cents (SteadAccrualLine line,
                               double           accrual_cents,
                               double           receivable_change,
                               double           payable_change,
                               double           prepaid_change)
{
  return accrual_cents - beyond_cash (line, receivable_change, payable_change, prepaid_change);
}

double
stead_purchases_cents (double cost_sold_cents,
                       double inventory_change_cents)
{
  return cost_sold_cents + inventory_change_cents;
}

double
stead_production_cents (double sales_cents,
                        double begin_cents,
                        double end_cents)
{
  return sales_cents + end_cents - begin_cents;
}

double
stead_cash_flow_operating_cents (const SteadCashFlow *flow)
{
  g_return_val_if_fail (flow != NULL, NAN);
  return flow->net + flow->noncash + flow->working_capital;
}

double
stead_cash_flow_change_cents (const SteadCashFlow *flow)
{
  g_return_val_if_fail (flow != NULL, NAN);
  return stead_cash_flow_operating_cents (flow) + flow->investing + flow->financing;
}

double
stead_worth_cents (double assets_cents,
                   double debts_cents)
{
  return assets_cents - debts_cents;
}

double
stead_worth_end_cents (double begin_cents,
                       double contributions_cents,
                       double net_cents,
                       double withdrawals_cents)
{
  return begin_cents + contributions_cents + net_cents - withdrawals_cents;
}

double
stead_working_capital_cents (double current_assets_cents,
                             double current_debts_cents)
{
  return current_assets_cents - current_debts_cents;
}

double
stead_current_ratio (double current_assets_cents,
                     double current_debts_cents)
{
  return current_debts_cents > 0 ? current_assets_cents / current_debts_cents : NAN;
}
