/* stead-sale-variance.h - why a sale day brought more or less than was planned.
 *
 * The difference between plan and result is taken apart so that the parts add up to all
 * of it.  What raises the result is above 0:
 *
 *   price      (actual - planned price) x actual units
 *   cost       (planned - actual cost of one) x actual units
 *   quantity   (all actual - all planned units) x planned margin of the average unit
 *   mix        (actual units - all actual units x planned share) x planned margin
 *   lost       planned - actual worth of what was left, given away or spoiled
 *   fixed      planned - actual fixed cost
 *
 * Source: any text on cost accounting, sales mix and sales quantity variance; from
 * memory.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* One product, planned or sold. */
typedef struct
{
  double units;         /* sold, 0 or more */
  double price_cents;   /* of one; the mean, if it changed in the middle of the day */
  double cost_cents;    /* of one */
} SteadSaleLine;

typedef struct
{
  const SteadSaleLine *lines;   /* (array length=n): by product */
  double               lost_cents;
  double               fixed_cents;
} SteadSaleResult;

/* Cents; above 0 is better than planned. */
typedef struct
{
  double planned_cents;     /* left over by plan */
  double actual_cents;
  double price_cents;
  double cost_cents;
  double quantity_cents;
  double mix_cents;
  double lost_cents;
  double fixed_cents;
} SteadSaleVariance;

/**
 * stead_sale_variance:
 * @planned: the plan
 * @actual: what came, the same products in the same order
 * @n: products
 * @out: (out): actual - planned = price + cost + quantity + mix + lost + fixed
 *
 * Returns: %FALSE, with @out left alone, if nothing was planned to be sold: there is no
 *   planned mix then; or if a number cannot be
 */
gboolean stead_sale_variance (const SteadSaleResult *planned,
                              const SteadSaleResult *actual,
                              gsize                  n,
                              SteadSaleVariance     *out);

G_END_DECLS
