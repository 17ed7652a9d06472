/* stead-measure.h - one thing measured in cups, in pounds or by the piece.
 *
 * A recipe says cups of flour, the store room keeps pounds.  Weight is the bridge:
 * the weight of a liter leads from a volume to it, the weight of a piece from a
 * count.  Neither is ever guessed: what is missing is asked for by name.
 */
#pragma once

#include "core/stead-quantity.h"

G_BEGIN_DECLS

/* How one thing is measured; 0 or NAN: not known. */
typedef struct
{
  const char     *name;          /* for the message: "Flour" */
  SteadDimension  dimension;     /* in which it is kept: pieces, kg or L */
  double          density_kg_l;  /* weight of a liter as it is scooped or poured */
  double          piece_kg;      /* weight of a piece */
} SteadMeasure;

/**
 * stead_measure_to_base:
 * @amount: how much, 0 or more
 * @unit: in this unit: one of a count, a weight or a volume
 * @out_base: (out): the same in base units of @measure's dimension
 *
 * Volume x density = weight = pieces x weight of a piece; units by
 * stead_quantity_to_base().
 *
 * Returns: %TRUE, or %FALSE with @error UNIT, which asks for the weight of a cup
 *   or of a piece, and @out_base left alone
 */
gboolean stead_measure_to_base (const SteadMeasure  *measure,
                                double               amount,
                                const SteadUnit     *unit,
                                double              *out_base,
                                GError             **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_measure_from_base:
 *
 * The other way: how much of @unit @base is.
 */
gboolean stead_measure_from_base (const SteadMeasure  *measure,
                                  double               base,
                                  const SteadUnit     *unit,
                                  double              *out_amount,
                                  GError             **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_measure_kg:
 *
 * Returns: the weight of @base of it; NAN if nothing leads there
 */
double stead_measure_kg (const SteadMeasure *measure,
                         double              base);

/**
 * stead_density_from:
 * @amount: how much was weighed, above 0
 * @unit: a volume: cup
 * @kg: what it weighed, above 0
 *
 * Returns: kg of a liter; NAN if nothing was measured, or @unit is no volume
 */
double stead_density_from (double           amount,
                           const SteadUnit *unit,
                           double           kg);

G_END_DECLS
