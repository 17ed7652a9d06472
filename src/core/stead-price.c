/* stead-price.c - cost, markup, margin, discount and sales tax. */
#include "config.h"

#include "core/stead-money.h"
#include "core/stead-price.h"

#include <math.h>

double
stead_price_from_markup (double cost_cents,
                         double markup_frac)
{
  return cost_cents * (1 + markup_frac);
}

double
stead_price_from_margin (double cost_cents,
                         double margin_frac)
{
  return margin_frac < 1 ? cost_cents / (1 - margin_frac) : NAN;
}

double
stead_price_discounted (double price_cents,
                        double discount_frac)
{
  return price_cents * (1 - discount_frac);
}

double
stead_cost_from_markup (double price_cents,
                        double markup_frac)
{
  return markup_frac > -1 ? price_cents / (1 + markup_frac) : NAN;
}

double
stead_markup_frac (double cost_cents,
                   double price_cents)
{
  return cost_cents > 0 ? (price_cents - cost_cents) / cost_cents : NAN;
}

double
stead_margin_frac (double cost_cents,
                   double price_cents)
{
  return price_cents > 0 ? (price_cents - cost_cents) / price_cents : NAN;
}

double
stead_margin_of_markup (double markup_frac)
{
  return markup_frac > -1 ? markup_frac / (1 + markup_frac) : NAN;
}

double
stead_markup_of_margin (double margin_frac)
{
  return margin_frac < 1 ? margin_frac / (1 - margin_frac) : NAN;
}

gint64
stead_sales_tax_cents (gint64 price_cents,
                       double tax_frac)
{
  return stead_money_round ((double) price_cents * tax_frac);
}

double
stead_net_of_tax_cents (double price_cents,
                        double tax_frac)
{
  return tax_frac > -1 ? price_cents / (1 + tax_frac) : NAN;
}
