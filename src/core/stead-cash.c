/* stead-cash.c - counting the till, and money raised for a group. */
#include "config.h"

#include "core/stead-cash.h"
#include "core/stead-round.h"

#include <math.h>

gint64
stead_till_deposit_cents (gint64 counted_cents,
                          gint64 float_cents)
{
  return counted_cents - float_cents;
}

gint64
stead_till_over_cents (gint64 counted_cents,
                       gint64 float_cents,
                       gint64 recorded_cents,
                       gint64 paid_out_cents)
{
  return stead_till_deposit_cents (counted_cents, float_cents) - recorded_cents + paid_out_cents;
}

gint64
stead_petty_over_cents (gint64 fund_cents,
                        gint64 slips_cents,
                        gint64 counted_cents)
{
  return slips_cents + counted_cents - fund_cents;
}

gint64
stead_petty_refill_cents (gint64 fund_cents,
                          gint64 counted_cents)
{
  return fund_cents - counted_cents;
}

gint64
stead_bank_side_cents (const SteadBankCheck *check)
{
  g_return_val_if_fail (check != NULL, 0);
  return check->bank_cents + check->in_transit_cents + check->bank_error_cents
         - check->outstanding_cents;
}

gint64
stead_book_side_cents (const SteadBankCheck *check)
{
  g_return_val_if_fail (check != NULL, 0);
  return check->book_cents + check->additions_cents - check->deductions_cents;
}

double
stead_fundraiser_profit_cents (double items,
                               double price_cents,
                               double cost_cents,
                               double fixed_cents)
{
  return items * (price_cents - cost_cents) - fixed_cents;
}

gint64
stead_fundraiser_items_needed (double goal_cents,
                               double price_cents,
                               double cost_cents,
                               double fixed_cents)
{
  double items = (goal_cents + fixed_cents) / (price_cents - cost_cents);

  return price_cents > cost_cents && items < 9e15 ? (gint64) stead_round_up (MAX (0, items)) : -1;
}

double
stead_fundraiser_items_accounted (double received,
                                  double returned,
                                  double given)
{
  return received - returned - given;
}

double
stead_fundraiser_over_cents (double deposited_cents,
                             double items,
                             double price_cents)
{
  return deposited_cents - items * price_cents;
}

double
stead_share_out_first_cents (const SteadShareOut *share)
{
  double rest;

  g_return_val_if_fail (share != NULL, NAN);
  rest = share->receipts_cents - share->special_items * share->special_price_cents;
  return share->first_share_frac * rest + share->special_items * share->special_profit_cents;
}

double
stead_share_out_second_cents (const SteadShareOut *share)
{
  g_return_val_if_fail (share != NULL, NAN);
  return share->receipts_cents - stead_share_out_first_cents (share);
}
