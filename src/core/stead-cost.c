/* stead-cost.c - what one sold unit costs, built up part by part. */
#include "config.h"

#include "core/stead-cost.h"
#include "core/stead-money.h"

void
stead_cost_sheet_settle (SteadCostSheet *sheet)
{
  double good;
  double loss_share;

  g_return_if_fail (sheet != NULL);

  good = MAX (0, sheet->good_units);
  loss_share = sheet->made_units > good ? 1 - good / sheet->made_units : 0;
  sheet->unit_cents = 0;
  sheet->unit_labor_cents = 0;
  sheet->unit_cash_cents = 0;
  sheet->loss_unit_cents = 0;

  for (SteadCostKind kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    {
      SteadCostPart *part = &sheet->parts[kind];
      double gift_unit;

      part->kind = kind;
      if (kind == STEAD_COST_PACKAGING)
        part->total_cents = part->unit_cents * good;
      if (!(good > 0))
        {
          part->unit_cents = 0;
          part->shown_cents = 0;
          continue;
        }
      if (kind != STEAD_COST_PACKAGING)
        part->unit_cents = part->total_cents / good;
      part->shown_cents = stead_money_round (part->unit_cents);
      if (kind == STEAD_COST_LABOR)
        continue;

      /* Rounded line by line as the sheet is, so that without gifts the two
       * totals are the same to the cent. */
      gift_unit = part->gift_cents / good;
      sheet->unit_cents += part->shown_cents;
      sheet->unit_cash_cents += stead_money_round (part->unit_cents - gift_unit);
      if (kind != STEAD_COST_PACKAGING)
        sheet->loss_unit_cents += part->unit_cents * loss_share;
    }
  sheet->unit_labor_cents = sheet->unit_cents + sheet->parts[STEAD_COST_LABOR].shown_cents;
}

double
stead_cost_fifo (SteadLayer *layers,
                 gsize       n,
                 double      quantity,
                 double     *out_cost_cents)
{
  double cost = 0;
  double missing = quantity;

  g_return_val_if_fail (layers != NULL || n == 0, quantity);
  g_return_val_if_fail (quantity >= 0, quantity);
  g_return_val_if_fail (out_cost_cents != NULL, quantity);

  for (gsize i = 0; i < n && missing > 0; i++)
    {
      double taken = MIN (layers[i].quantity, missing);
      double share;

      if (!(taken > 0))
        continue;
      share = taken / layers[i].quantity;
      cost += layers[i].cost_cents * share;
      /* The last bit of a layer takes what is left of its cost, noise and all. */
      layers[i].cost_cents = share < 1 ? layers[i].cost_cents * (1 - share) : 0;
      layers[i].quantity = share < 1 ? layers[i].quantity - taken : 0;
      missing = missing > taken ? missing - taken : 0;
    }
  *out_cost_cents = cost;
  return missing;
}
