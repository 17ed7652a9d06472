/* stead-cost-change.h - why one unit costs more or less than it did: price, use, yield, volume.
 *
 * A part of the cost is price x use / yield / volume; what has none of a factor has 1.
 * Sources: OpenStax Principles of Accounting vol. 2, sections 8.2 (price change x what is
 * used now; change of use x former price) and 8.3.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_CHANGE_USE,      /* how much goes in, for each bird-day or each unit made */
  STEAD_CHANGE_YIELD,    /* how much comes out of it: eggs for each bird-day, good ones of those made */
  STEAD_CHANGE_VOLUME,   /* how many share what costs the same anyway */
  STEAD_CHANGE_PRICE,    /* what is paid for one of what goes in */
} SteadChangeKind;

#define STEAD_N_CHANGE_KINDS (STEAD_CHANGE_PRICE + 1)

typedef struct
{
  double price;    /* cents for one of what goes in; 0 or more */
  double use;      /* 0 or more */
  double yield;    /* above 0 */
  double volume;   /* above 0 */
} SteadCostFactors;

/* Returns: price x use / yield / volume, cents */
double stead_cost_factors_cents (const SteadCostFactors *factors);

/**
 * stead_cost_change:
 * @before: of the part in the former period
 * @after: of the part now
 * @out_cents: (out) (array length=STEAD_N_CHANGE_KINDS): what each factor adds; they sum to the
 *   change exactly, but for binary noise
 *
 * Use first, then yield, then volume, all at the former price; price last, on what is used now.
 */
void   stead_cost_change        (const SteadCostFactors *before,
                                 const SteadCostFactors *after,
                                 double                  out_cents[STEAD_N_CHANGE_KINDS]);

G_END_DECLS
