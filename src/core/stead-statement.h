/* stead-statement.h - from cash to what was really earned, and back.
 *
 * Invariants:
 *  1. Worth at the end = worth at first + own money put in + net - taken out.
 *  2. A rise is positive everywhere: of what is owed to the farm, of what it
 *     owes, of what it paid ahead.
 * Sources: OpenStax Principles of Accounting vol. 1, sections 2.3, 5.3, 16.3;
 * Saylor Financial Accounting, sections 17.2 and 17.3; farm accounting slides on
 * the accrual income statement (production).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A year in cash, and what cash does not show.  Cents. */
typedef struct
{
  double sales;              /* cash received */
  double cash_costs;         /* cash paid */
  double inventory_begin;    /* stock and growing animals */
  double inventory_end;
  double receivable_change;
  double prepaid_change;
  double payable_change;
  double depreciation;
} SteadAccrual;

/**
 * stead_accrual_net_cents:
 * Returns: sales - costs + change of stock, of receivables and of prepaid things -
 *   change of payables - depreciation
 */
double stead_accrual_net_cents (const SteadAccrual *year);

typedef enum
{
  STEAD_ACCRUAL_REVENUE,     /* accrual = cash + rise of receivables */
  STEAD_ACCRUAL_EXPENSE,     /* accrual = cash + rise of payables - rise of prepaid */
} SteadAccrualLine;

/**
 * stead_accrual_from_cash_cents: what a line was really worth
 * stead_cash_from_accrual_cents: the cash behind it
 */
double stead_accrual_from_cash_cents (SteadAccrualLine line,
                                      double           cash_cents,
                                      double           receivable_change,
                                      double           payable_change,
                                      double           prepaid_change);
double stead_cash_from_accrual_cents (SteadAccrualLine line,
                                      double           accrual_cents,
                                      double           receivable_change,
                                      double           payable_change,
                                      double           prepaid_change);

/**
 * stead_purchases_cents: cost of goods sold + rise of the stock
 * stead_production_cents: sales + stock at the end - stock at first
 */
double stead_purchases_cents (double cost_sold_cents,
                              double inventory_change_cents);
double stead_production_cents (double sales_cents,
                               double begin_cents,
                               double end_cents);

/* Where the cash of a year came from and went.  Cents; effects on cash, signed. */
typedef struct
{
  double net;              /* profit */
  double noncash;          /* depreciation positive, gains on things sold negative */
  double working_capital;  /* a rise of stock or receivables negative, of payables positive */
  double investing;
  double financing;        /* loans, own money, grants for the pen */
} SteadCashFlow;

/**
 * stead_cash_flow_operating_cents: profit + noncash + working capital
 * stead_cash_flow_change_cents: + investing + financing
 */
double stead_cash_flow_operating_cents (const SteadCashFlow *flow);
double stead_cash_flow_change_cents (const SteadCashFlow *flow);

/**
 * stead_worth_cents: what is owned less what is owed
 */
double stead_worth_cents (double assets_cents,
                          double debts_cents);

/**
 * stead_worth_end_cents: worth at first + own money put in + net - taken out
 * stead_working_capital_cents: what can be used within a year less what falls due in it
 * stead_current_ratio: the same as a ratio; NAN without debts due
 */
double stead_worth_end_cents (double begin_cents,
                              double contributions_cents,
                              double net_cents,
                              double withdrawals_cents);
double stead_working_capital_cents (double current_assets_cents,
                                    double current_debts_cents);
double stead_current_ratio (double current_assets_cents,
                            double current_debts_cents);

G_END_DECLS
