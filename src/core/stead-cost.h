/* stead-cost.h - what one sold unit costs, built up part by part.
 *
 * Invariants:
 *  1. Unit costs stay unrounded until the sheet is shown; each shown line is
 *     rounded once and the shown total is the sum of the shown lines.
 *  2. Normal loss (cracked, unsold) has no line of its own: the good units carry
 *     it.  The share that it makes of each line is told beside the sheet.
 *  3. Unpaid labor is never in the total; it stands apart, with and without.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_COST_FEED,
  STEAD_COST_START,      /* what it began with: pullets, spread over lay; fingerlings; seed and plants */
  STEAD_COST_BEDDING,
  STEAD_COST_SUPPLIES,   /* other things used up: grit, soap, medicine by a veterinarian's order */
  STEAD_COST_ASSETS,     /* depreciation of what is used for years */
  STEAD_COST_OVERHEAD,   /* what belongs to no one batch, by the rate that the farm chose */
  STEAD_COST_PACKAGING,
  STEAD_COST_LABOR,      /* unpaid student work, shown apart */
} SteadCostKind;

#define STEAD_N_COST_KINDS (STEAD_COST_LABOR + 1)

/* One line of the sheet. */
typedef struct
{
  SteadCostKind kind;
  double        total_cents;   /* over the period, unrounded; per unit x good units for packaging */
  double        gift_cents;    /* of which given in kind, at fair value */
  double        unit_cents;    /* unrounded, for one unit that is sold */
  gint64        shown_cents;   /* the same, rounded: what stands on the sheet */
} SteadCostPart;

/* The sheet of one product over one period. */
typedef struct
{
  SteadCostPart parts[STEAD_N_COST_KINDS]; /* by kind; one that is not there has total 0 */
  double        made_units;         /* units that the period gave, losses included (packs) */
  double        good_units;         /* of them, units that can be sold: losses taken off */
  gint64        unit_cents;         /* sum of the shown lines without labor */
  gint64        unit_labor_cents;   /* with labor: unit_cents + the shown labor line */
  gint64        unit_cash_cents;    /* without labor and without gifts, rounded */
  double        loss_unit_cents;    /* of unit_cents, what cracked and unsold units add */
} SteadCostSheet;

/**
 * stead_cost_sheet_settle:
 * @sheet: made_units, good_units and each part's total_cents and gift_cents are
 *   filled in; the rest is computed here.  Packaging is given by its unit_cents
 *   (one pack of it goes with each unit sold), and its total is computed.
 *
 * With no good units every unit figure is 0 and the caller must say that there
 * is nothing to divide by.
 */
void stead_cost_sheet_settle (SteadCostSheet *sheet);

/* One receipt's worth of a thing, oldest first. */
typedef struct
{
  double quantity;    /* base units, above 0 */
  double cost_cents;  /* for all of it */
} SteadLayer;

/**
 * stead_cost_fifo:
 * @layers: (array length=n): oldest first; emptied as they are used
 * @n: how many
 * @quantity: how much is taken, base units
 * @out_cost_cents: (out): what the taken part cost, unrounded
 *
 * Source: OpenStax Principles of Accounting vol. 1, section 10.2.
 *
 * Returns: the part of @quantity that the layers could not cover, 0 or more
 */
double stead_cost_fifo (SteadLayer *layers,
                        gsize       n,
                        double      quantity,
                        double     *out_cost_cents);

G_END_DECLS
