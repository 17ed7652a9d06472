/* stead-cash.h - counting the till, and money raised for a group.
 *
 * Deposit exactly what is there.  Never top up a drawer from a pocket and never
 * hide an over: look at the pattern by person and drawer, not only at the sum.
 * Two people count together and sign.
 * Sources: OpenStax Principles of Accounting vol. 1, sections 8.4 (petty cash)
 * and 8.6 (bank); an answered exercise on a stall's week (over and short); an
 * article on school fundraisers and a concession stand's page (fundraiser).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_till_deposit_cents: counted - float
 * stead_till_over_cents: deposit - recorded sales + paid out with a signed slip;
 *   below 0: short
 */
gint64 stead_till_deposit_cents (gint64 counted_cents,
                                 gint64 float_cents);
gint64 stead_till_over_cents (gint64 counted_cents,
                              gint64 float_cents,
                              gint64 recorded_cents,
                              gint64 paid_out_cents);

/**
 * stead_petty_over_cents: slips + cash - fund; below 0: short
 * stead_petty_refill_cents: fund - cash
 */
gint64 stead_petty_over_cents (gint64 fund_cents,
                               gint64 slips_cents,
                               gint64 counted_cents);
gint64 stead_petty_refill_cents (gint64 fund_cents,
                                 gint64 counted_cents);

/* A bank statement against the own book; both sides must agree. */
typedef struct
{
  gint64 bank_cents;         /* balance on the statement */
  gint64 in_transit_cents;   /* deposits that it does not show yet */
  gint64 outstanding_cents;  /* checks that it does not show yet */
  gint64 bank_error_cents;   /* signed: what the bank must add */
  gint64 book_cents;         /* own balance */
  gint64 additions_cents;    /* interest and such, found on the statement */
  gint64 deductions_cents;   /* fees and such */
} SteadBankCheck;

gint64 stead_bank_side_cents (const SteadBankCheck *check);
gint64 stead_book_side_cents (const SteadBankCheck *check);

/**
 * stead_fundraiser_profit_cents: items x (price - cost) - fixed
 * stead_fundraiser_items_needed: (goal + fixed) / (price - cost), rounded up; -1: never
 */
double stead_fundraiser_profit_cents (double items,
                                      double price_cents,
                                      double cost_cents,
                                      double fixed_cents);
gint64 stead_fundraiser_items_needed (double goal_cents,
                                      double price_cents,
                                      double cost_cents,
                                      double fixed_cents);

/**
 * stead_fundraiser_items_accounted: received - returned - given away: what must
 *   be matched by money
 * stead_fundraiser_over_cents: deposited - items x price; below 0: short
 */
double stead_fundraiser_items_accounted (double received,
                                         double returned,
                                         double given);
double stead_fundraiser_over_cents (double deposited_cents,
                                    double items,
                                    double price_cents);

/* Takings shared by two groups, with items that one of them sold under its own rule. */
typedef struct
{
  double receipts_cents;
  double special_items;
  double special_price_cents;
  double special_profit_cents;   /* of one, which goes to the first group */
  double first_share_frac;       /* of the rest */
} SteadShareOut;

/**
 * stead_share_out_first_cents: share of the rest + special profit
 * stead_share_out_second_cents: what remains of all
 */
double stead_share_out_first_cents (const SteadShareOut *share);
double stead_share_out_second_cents (const SteadShareOut *share);

G_END_DECLS
