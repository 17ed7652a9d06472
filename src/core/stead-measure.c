/* stead-measure.c - one thing measured in cups, in pounds or by the piece. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-measure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* kg of one base unit of @dimension; NAN if nothing leads there. */
static double
unit_kg (const SteadMeasure *measure,
         SteadDimension      dimension)
{
  switch (dimension)
    {
    case STEAD_DIMENSION_MASS:
      return 1;
    case STEAD_DIMENSION_VOLUME:
      return measure->density_kg_l > 0 ? measure->density_kg_l : NAN;
    case STEAD_DIMENSION_COUNT:
      return measure->piece_kg > 0 ? measure->piece_kg : NAN;
    case STEAD_DIMENSION_AREA:
    case STEAD_DIMENSION_LENGTH:
    case STEAD_DIMENSION_TEMPERATURE:
    default:
      return NAN;
    }
}

static gboolean
is_measure (SteadDimension dimension)
{
  return dimension == STEAD_DIMENSION_COUNT || dimension == STEAD_DIMENSION_MASS
         || dimension == STEAD_DIMENSION_VOLUME;
}

static gboolean
refuse (const SteadMeasure  *measure,
        const SteadUnit     *unit,
        GError             **error)
{
  const char *name = measure->name != NULL ? measure->name : "?";

  if (!is_measure (unit->dimension) || !is_measure (measure->dimension))
    /* Translators: "ft", name of an item. */
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_UNIT,
                 _("“%s” does not measure “%s”. Choose a unit of count, weight or volume."),
                 stead_unit_symbol (unit), name);
  else if (isnan (unit_kg (measure, STEAD_DIMENSION_VOLUME))
           && (unit->dimension == STEAD_DIMENSION_VOLUME || measure->dimension == STEAD_DIMENSION_VOLUME))
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_UNIT,
                 _("What a cup of “%s” weighs is not known yet. Weigh one and enter it with the item."), name);
  else
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_UNIT,
                 _("What one piece of “%s” weighs is not known yet. Weigh some and enter it with the item."), name);
  return FALSE;
}

/* Base units of @measure in one base unit of @dimension; NAN if nothing leads there. */
static double
factor_to (const SteadMeasure *measure,
           SteadDimension      dimension)
{
  if (dimension == measure->dimension)
    return 1;
  return unit_kg (measure, dimension) / unit_kg (measure, measure->dimension);
}

gboolean
stead_measure_to_base (const SteadMeasure  *measure,
                       double               amount,
                       const SteadUnit     *unit,
                       double              *out_base,
                       GError             **error)
{
  double factor;

  g_return_val_if_fail (measure != NULL && unit != NULL && out_base != NULL, FALSE);
  factor = factor_to (measure, unit->dimension);
  if (isnan (factor))
    return refuse (measure, unit, error);
  *out_base = stead_quantity_to_base (amount, unit) * factor;
  return TRUE;
}

gboolean
stead_measure_from_base (const SteadMeasure  *measure,
                         double               base,
                         const SteadUnit     *unit,
                         double              *out_amount,
                         GError             **error)
{
  double factor;

  g_return_val_if_fail (measure != NULL && unit != NULL && out_amount != NULL, FALSE);
  factor = factor_to (measure, unit->dimension);
  if (isnan (factor))
    return refuse (measure, unit, error);
  *out_amount = stead_quantity_from_base (base / factor, unit);
  return TRUE;
}

double
stead_measure_kg (const SteadMeasure *measure,
                  double              base)
{
  g_return_val_if_fail (measure != NULL, NAN);
  return base * unit_kg (measure, measure->dimension);
}

double
stead_density_from (double           amount,
                    const SteadUnit *unit,
                    double           kg)
{
  g_return_val_if_fail (unit != NULL, NAN);
  if (unit->dimension != STEAD_DIMENSION_VOLUME || !(amount > 0) || !(kg > 0))
    return NAN;
  return kg / stead_quantity_to_base (amount, unit);
}
