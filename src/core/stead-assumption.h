/* stead-assumption.h - what becomes of a sale day when its assumptions change.
 *
 * The cost of one unit is taken apart by what moves it: what is bought to go in, what the
 * keeping costs anyway, what goes with each unit that can be sold, and the packaging.
 */
#pragma once

#include "core/stead-breakeven.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_ASSUME_PRICE,      /* cents */
  STEAD_ASSUME_PLANNED,    /* units */
  STEAD_ASSUME_FIXED,      /* cents, of the day, without steps */
  STEAD_ASSUME_INPUT,      /* price of what goes in, as a multiple of the farm's: 1.1 */
  STEAD_ASSUME_YIELD,      /* what comes out of it, likewise; above 0 */
  STEAD_ASSUME_UNSOLD,     /* share given up, 0 to 0.9 */
  STEAD_ASSUME_PACKAGING,  /* its price, as a multiple */
  STEAD_ASSUME_WORK,       /* share of the unpaid work that is paid, 0 to 1 */
  STEAD_ASSUME_DEATHS,     /* share of the animals or plants that dies beyond the log, 0 to 0.9 */
  STEAD_ASSUME_WARMTH,     /* warmth that growth counts, as a multiple of the farm's; above 0 */
} SteadAssumption;

#define STEAD_N_ASSUMPTIONS (STEAD_ASSUME_WARMTH + 1)

/* One unit's cost as the farm has it, unrounded cents. */
typedef struct
{
  double input_cents;    /* feed, ingredients: by their price, over all that comes out */
  double shared_cents;   /* the rest of the keep, over all that comes out */
  double good_cents;     /* goes with what comes out, however much it is: pullets spread over lay */
  double pack_cents;
  double rounding_cents; /* what the sheet shows beyond the sum of the above */
  double unsold_frac;    /* on which the above rest, 0 to 0.9 */
  double work_cents;     /* unpaid work at the farm's rate; not in the above */
} SteadUnitParts;

/**
 * stead_assume_unit_cents:
 *
 * ((input x its price + shared / warmth / alive) / yield + good / alive)
 * x (1 - unsold as it is) / (1 - unsold) + packaging x its price + work x share paid.
 * (Common practice, no source: normal loss is carried by the good units.)  Who lives, 1 - deaths,
 * eats as before and bears the keep of all.  Growth counts degree days (core/stead-fish-growth.h,
 * core/stead-degree-days.h): half the warmth takes twice the days of keep, and as much feed.
 *
 * Returns: cost of one unit under @values, cents; NAN for a yield or a warmth of 0, all unsold or all dead
 */
double stead_assume_unit_cents (const SteadUnitParts *parts,
                                const double          values[STEAD_N_ASSUMPTIONS]);

/* @base with its price, cost, fixed cost and plan under @values. */
void   stead_assume_cvp        (const SteadUnitParts *parts,
                                const SteadCvp       *base,
                                const double          values[STEAD_N_ASSUMPTIONS],
                                SteadCvp             *out);

/* How far profit goes when one assumption alone moves by the same share to both sides. */
typedef struct
{
  SteadAssumption assumption;
  double          low, high;                  /* its values */
  double          low_cents, high_cents;      /* profit of the day there */
} SteadSwing;

/**
 * stead_assume_tornado:
 * @frac: the share, above 0 and below 1
 * @out: (array length=STEAD_N_ASSUMPTIONS): the longest first; those that move nothing are left out
 *
 * Source: Saylor Managerial Accounting, section 6.3 (sensitivity).
 *
 * Returns: how many
 */
int    stead_assume_tornado    (const SteadUnitParts *parts,
                                const SteadCvp       *base,
                                const double          values[STEAD_N_ASSUMPTIONS],
                                double                frac,
                                SteadSwing            out[STEAD_N_ASSUMPTIONS]);

G_END_DECLS
