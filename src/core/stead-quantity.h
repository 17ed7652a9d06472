/* stead-quantity.h - amounts of things, their units, and the text of them.
 *
 * Inside the program an amount is a double in the base unit of its dimension:
 * pieces, kilograms, litres, square metres, metres, degrees Celsius.  Units are
 * chosen only where a person reads or types.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_DIMENSION_COUNT,        /* pieces */
  STEAD_DIMENSION_MASS,         /* kg */
  STEAD_DIMENSION_VOLUME,       /* L */
  STEAD_DIMENSION_AREA,         /* m² */
  STEAD_DIMENSION_LENGTH,       /* m */
  STEAD_DIMENSION_TEMPERATURE,  /* °C */
} SteadDimension;

typedef enum
{
  STEAD_UNITS_US,
  STEAD_UNITS_METRIC,
} SteadUnitSystem;

/* One unit.  Never freed: units are a table in the program. */
typedef struct
{
  const char     *id;         /* stable, stored in the file: "lb", "doz", "degF" */
  const char     *symbol;     /* what a person reads; translate with stead_unit_symbol() */
  SteadDimension  dimension;
  SteadUnitSystem system;     /* where it is at home; dozens are at home in both */
  double          factor;     /* base units in one of it */
  double          offset;     /* base = (value + offset) * factor; only °F has one */
} SteadUnit;

/**
 * stead_unit_by_id:
 * @id: (nullable): a stored id: "ea", "doz", "g", "kg", "oz", "lb", "ton", "ml",
 *   "l", "tsp", "tbsp", "floz", "cup", "pt", "qt", "gal", "cm", "m", "ft", "in", "m2",
 *   "sqft", "degC", "degF"
 *
 * Returns: (transfer none) (nullable): the unit
 */
const SteadUnit *stead_unit_by_id (const char *id);

/**
 * stead_unit_from_text:
 * @text: any spelling, case and plural that people use: "lbs", "Pound", "#"
 *
 * English and Spanish spellings, whatever the locale: one farm writes both.
 * "T" and "t" are the spoons of a recipe, "c" its cup, "C" degrees Celsius.
 *
 * Returns: (transfer none) (nullable): the unit
 */
const SteadUnit *stead_unit_from_text (const char *text);

/**
 * stead_unit_default:
 * @dimension: what is measured
 * @system: the farm's units
 *
 * Returns: (transfer none): the unit a farm's amounts are shown in unless an
 *   item says otherwise: lb or kg, gal or L, sq ft or m², °F or °C, pieces
 */
const SteadUnit *stead_unit_default (SteadDimension  dimension,
                                     SteadUnitSystem system);

/**
 * stead_unit_list:
 * @dimension: what is measured
 * @n_units: (out): how many
 *
 * Returns: (transfer none) (array length=n_units): units to choose from, small to large
 */
const SteadUnit * const *stead_unit_list (SteadDimension  dimension,
                                          gsize          *n_units);

/**
 * stead_unit_symbol:
 *
 * Returns: (transfer none): the unit's short name in the person's language
 */
const char *stead_unit_symbol (const SteadUnit *unit);

/**
 * stead_quantity_to_base:
 * stead_quantity_from_base:
 *
 * Between a number in @unit and the base unit of its dimension.
 * Source of the factors: NIST Special Publication 811, appendix B (from memory).
 */
double stead_quantity_to_base (double           value,
                               const SteadUnit *unit);
double stead_quantity_from_base (double           base,
                                 const SteadUnit *unit);

/**
 * stead_number_parse:
 * @text: "12", "1,234.5", "1.234,5", "4,5", "1/2", "1 1/2", "1½", "−3"
 * @out_value: (out): the number; always finite, at most 1e12 away from 0
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE with @error set and @out_value left alone
 */
gboolean stead_number_parse (const char  *text,
                             double      *out_value,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_quantity_parse:
 * @text: "2 lb 4 oz", "1 1/2 cups", "3 doz", "3 doz 4", "250 g", "6.8"
 * @dimension: what must be measured
 * @fallback: the unit of a bare number
 * @out_base: (out): the amount in base units; finite, never negative except a temperature
 * @out_unit: (out) (optional): the unit first named, or @fallback
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE with @error set and the outputs left alone
 */
gboolean stead_quantity_parse (const char       *text,
                               SteadDimension    dimension,
                               const SteadUnit  *fallback,
                               double           *out_base,
                               const SteadUnit **out_unit,
                               GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_number_format:
 * @value: a number
 * @max_digits: digits after the point at most, 0 to 6; zeros at the end are cut
 *
 * Returns: (transfer full): the text with the locale's grouping and point and a
 *   true minus sign; without a locale as American English writes it
 */
char *stead_number_format (double value,
                           int    max_digits) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_quantity_format:
 * @base: an amount in base units
 * @unit: the unit to show it in
 *
 * The text a person reads, rounded to what can be told apart on a farm scale:
 * "6.8 lb", "3 doz", "72 °F"; pieces are the number alone.
 *
 * Returns: (transfer full): the text
 */
char *stead_quantity_format (double           base,
                             const SteadUnit *unit) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_quantity_format_mixed:
 * @base: an amount in base units
 * @unit: the larger unit: lb gives "2 lb 4 oz", doz gives "3 doz 4", ft "6 ft 3 in"
 *
 * Returns: (transfer full): the text; as stead_quantity_format() for other units
 */
char *stead_quantity_format_mixed (double           base,
                                   const SteadUnit *unit) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
