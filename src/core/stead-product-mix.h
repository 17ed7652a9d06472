/* stead-product-mix.h - how much of each product, under several limits.
 *
 * A linear program: the largest sum of margin x quantity, quantities 0 or more,
 * fractions allowed.  A shadow price tells what one more of a limit is worth,
 * as long as the limit stays inside its range; the plan stays the same as long
 * as a margin stays inside its own.
 * Source of the method: OpenStax Contemporary Mathematics, section 5.11; solved
 * with GLPK.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_MIX_AT_MOST,
  STEAD_MIX_AT_LEAST,
} SteadMixSense;

typedef struct
{
  const double  *use;     /* (array length=n_products): of one unit of each product */
  SteadMixSense  sense;
  double         amount;
} SteadMixLimit;

/* Of one product at the best plan. */
typedef struct
{
  double quantity;
  double margin_low;    /* the plan stays the same from here; -INFINITY: no end */
  double margin_high;   /* to here; INFINITY: no end */
} SteadProductPlan;

/* Of one limit at the best plan. */
typedef struct
{
  double unused;        /* amount less use; below 0 for a minimum that is passed */
  double shadow_price;  /* change of the best sum for one more of the limit */
  double low;           /* the shadow price holds from here; -INFINITY: no end */
  double high;          /* to here; INFINITY: no end */
} SteadLimitPlan;

/**
 * stead_product_mix_solve:
 * @margins: (array length=n_products): of one unit; below 0 for a bought input
 * @n_products: 1 or more
 * @limits: (array length=n_limits): what is scarce or promised
 * @n_limits: how many
 * @out_products: (out) (array length=n_products): the plan
 * @out_limits: (out) (array length=n_limits): what each limit does to it
 * @out_best: (out): the best sum
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE if the limits contradict each other, the sum has no
 *   end, or numbers of too different sizes keep it from being solved
 */
gboolean stead_product_mix_solve (const double        *margins,
                                  gsize                n_products,
                                  const SteadMixLimit *limits,
                                  gsize                n_limits,
                                  SteadProductPlan    *out_products,
                                  SteadLimitPlan      *out_limits,
                                  double              *out_best,
                                  GError             **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_product_mix_solve_whole:
 * @most_ms: how long may be looked for, 1 or more; farm plans take a few thousandths of a second
 * @out_quantities: (out) (array length=n_products): the plan in whole units
 * @out_best: (out): its sum
 * @out_proven: (out): no better one is possible; %FALSE: none was found in the time
 *
 * As stead_product_mix_solve(), but no unit is made in part.  A whole plan has no shadow prices:
 * one more of a limit changes nothing, or all of a unit.  (Branch and bound of GLPK.)
 */
gboolean stead_product_mix_solve_whole (const double        *margins,
                                        gsize                n_products,
                                        const SteadMixLimit *limits,
                                        gsize                n_limits,
                                        int                  most_ms,
                                        double              *out_quantities,
                                        double              *out_best,
                                        gboolean            *out_proven,
                                        GError             **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_scarce_fill:
 * @margins: (array length=n): of one unit
 * @use: (array length=n): of the one scarce thing, by one unit, above 0
 * @demand: (array length=n): most units that sell
 * @n: products
 * @capacity: of the scarce thing
 * @out_quantity: (out) (array length=n): best plan
 *
 * By margin for one of the scarce thing, the best first; equal ones in order.
 * Source: OpenStax Principles of Accounting vol. 2, section 10.6.
 */
void stead_scarce_fill (const double *margins,
                        const double *use,
                        const double *demand,
                        gsize         n,
                        double        capacity,
                        double       *out_quantity);

/**
 * stead_scarce_best:
 * Returns: the product with the highest margin for one of the scarce thing, from 0
 */
gsize stead_scarce_best (const double *margins,
                         const double *use,
                         gsize         n);

G_END_DECLS
