/* stead-depreciation.h - the yearly share of a thing that lasts.
 *
 * Source: OpenStax Principles of Accounting vol. 1, section 11.3.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_DEPRECIATION_STRAIGHT_LINE,
  STEAD_DEPRECIATION_DOUBLE_DECLINING,
  STEAD_DEPRECIATION_UNITS,
} SteadDepreciationMethod;

typedef struct
{
  SteadDepreciationMethod method;
  double basis_cents;        /* price + delivery + setting up */
  double salvage_cents;      /* worth at the end, 0 to the basis */
  double life_years;         /* above 0; not used by UNITS */
  double life_units;         /* above 0; only UNITS */
} SteadDepreciable;

/* What is bought, by how its cost is treated. */
typedef enum
{
  STEAD_THING_FENCE,
  STEAD_THING_BUILDING,
  STEAD_THING_EQUIPMENT,
  STEAD_THING_BREEDING_STOCK,
  STEAD_THING_SUPPLIES,       /* used up within the year */
  STEAD_THING_MARKET_STOCK,   /* animals raised for sale */
} SteadThing;

/**
 * stead_thing_is_depreciated:
 *
 * Source: Colorado State University Extension 3.766, economic depreciation.
 *
 * Returns: whether its cost is spread over years: long-lived things and breeding
 *   stock are, what is used up or raised for sale is not
 */
gboolean stead_thing_is_depreciated (SteadThing thing);

/**
 * stead_depreciation_between:
 * @thing: as described
 * @from_years: start of the span, years since it was bought, 0 or more
 * @to_years: end of the span, not before @from_years
 *
 * By time only (%STEAD_DEPRECIATION_UNITS is a caller's bug here).  Within a
 * year of a declining balance the charge runs evenly.
 *
 * Returns: the charge of the span, unrounded cents; 0 past the end of life
 */
double stead_depreciation_between (const SteadDepreciable *thing,
                                   double                  from_years,
                                   double                  to_years);

/**
 * stead_depreciation_book_value:
 * Returns: the value left after @years, never below the salvage value
 */
double stead_depreciation_book_value (const SteadDepreciable *thing,
                                      double                  years);

/**
 * stead_depreciation_unit_rate:
 * @thing: with life_units above 0
 *
 * Returns: the charge for one unit of use, unrounded cents
 */
double stead_depreciation_unit_rate (const SteadDepreciable *thing);

/**
 * stead_depreciation_for_use:
 * @thing: with method %STEAD_DEPRECIATION_UNITS
 * @used_before: units used before, 0 or more
 * @units: units used now, 0 or more
 *
 * Returns: the charge for @units, unrounded cents; never more than what is left
 */
double stead_depreciation_for_use (const SteadDepreciable *thing,
                                   double                  used_before,
                                   double                  units);

G_END_DECLS
