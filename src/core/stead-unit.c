/* stead-unit.c - the table of units and the names that people use for them.
 *
 * Factors of US units: stead-us-units.h.  A quarter, an eighth and so on of a gallon
 * or a pound have names of their own.
 */
#include "config.h"

#include "core/stead-quantity.h"
#include "core/stead-unit-private.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <string.h>

enum
{
  EA, DOZ,
  G, OZ, LB, KG, TON,
  ML, TSP, TBSP, FLOZ, CUP, PT, QT, L, GAL,
  SQFT, M2,
  CM, IN, FT, M,
  DEGF, DEGC,
  N_UNITS
};

/* By dimension, small to large. */
static const SteadUnit units[N_UNITS] = {
  [EA]   = { "ea", NC_("unit", "each"), STEAD_DIMENSION_COUNT, STEAD_UNITS_METRIC, 1, 0 },
  [DOZ]  = { "doz", NC_("unit", "doz"), STEAD_DIMENSION_COUNT, STEAD_UNITS_METRIC, 12, 0 },
  [G]    = { "g", NC_("unit", "g"), STEAD_DIMENSION_MASS, STEAD_UNITS_METRIC, 0.001, 0 },
  [OZ]   = { "oz", NC_("unit", "oz"), STEAD_DIMENSION_MASS, STEAD_UNITS_US, STEAD_POUND_KG / 16, 0 },
  [LB]   = { "lb", NC_("unit", "lb"), STEAD_DIMENSION_MASS, STEAD_UNITS_US, STEAD_POUND_KG, 0 },
  [KG]   = { "kg", NC_("unit", "kg"), STEAD_DIMENSION_MASS, STEAD_UNITS_METRIC, 1, 0 },
  [TON]  = { "ton", NC_("unit", "ton"), STEAD_DIMENSION_MASS, STEAD_UNITS_US, STEAD_POUND_KG * 2000, 0 },
  [ML]   = { "ml", NC_("unit", "mL"), STEAD_DIMENSION_VOLUME, STEAD_UNITS_METRIC, 0.001, 0 },
  [TSP]  = { "tsp", NC_("unit", "tsp"), STEAD_DIMENSION_VOLUME, STEAD_UNITS_US, STEAD_GALLON_L / 768, 0 },
  [TBSP] = { "tbsp", NC_("unit", "tbsp"), STEAD_DIMENSION_VOLUME, STEAD_UNITS_US, STEAD_GALLON_L / 256, 0 },
  [FLOZ] = { "floz", NC_("unit", "fl oz"), STEAD_DIMENSION_VOLUME, STEAD_UNITS_US, STEAD_GALLON_L / 128, 0 },
  [CUP]  = { "cup", NC_("unit", "cup"), STEAD_DIMENSION_VOLUME, STEAD_UNITS_US, STEAD_GALLON_L / 16, 0 },
  [PT]   = { "pt", NC_("unit", "pt"), STEAD_DIMENSION_VOLUME, STEAD_UNITS_US, STEAD_GALLON_L / 8, 0 },
  [QT]   = { "qt", NC_("unit", "qt"), STEAD_DIMENSION_VOLUME, STEAD_UNITS_US, STEAD_GALLON_L / 4, 0 },
  [L]    = { "l", NC_("unit", "L"), STEAD_DIMENSION_VOLUME, STEAD_UNITS_METRIC, 1, 0 },
  [GAL]  = { "gal", NC_("unit", "gal"), STEAD_DIMENSION_VOLUME, STEAD_UNITS_US, STEAD_GALLON_L, 0 },
  [SQFT] = { "sqft", NC_("unit", "sq ft"), STEAD_DIMENSION_AREA, STEAD_UNITS_US, STEAD_SQUARE_FOOT_M2, 0 },
  [M2]   = { "m2", NC_("unit", "m²"), STEAD_DIMENSION_AREA, STEAD_UNITS_METRIC, 1, 0 },
  [CM]   = { "cm", NC_("unit", "cm"), STEAD_DIMENSION_LENGTH, STEAD_UNITS_METRIC, 0.01, 0 },
  [IN]   = { "in", NC_("unit", "in"), STEAD_DIMENSION_LENGTH, STEAD_UNITS_US, STEAD_FOOT_M / 12, 0 },
  [FT]   = { "ft", NC_("unit", "ft"), STEAD_DIMENSION_LENGTH, STEAD_UNITS_US, STEAD_FOOT_M, 0 },
  [M]    = { "m", NC_("unit", "m"), STEAD_DIMENSION_LENGTH, STEAD_UNITS_METRIC, 1, 0 },
  [DEGF] = { "degF", NC_("unit", "°F"), STEAD_DIMENSION_TEMPERATURE, STEAD_UNITS_US, 5.0 / 9, -32 },
  [DEGC] = { "degC", NC_("unit", "°C"), STEAD_DIMENSION_TEMPERATURE, STEAD_UNITS_METRIC, 1, 0 },
};

/* A spelling in lower case, without points and accents. */
typedef struct
{
  const char *text;
  int         unit;
} Spelling;

static const Spelling spellings[] = {
  { "ea", EA }, { "each", EA }, { "egg", EA }, { "eggs", EA }, { "piece", EA }, { "pieces", EA },
  { "pc", EA }, { "pcs", EA }, { "ct", EA }, { "count", EA }, { "unit", EA }, { "units", EA },
  { "bird", EA }, { "birds", EA }, { "hen", EA }, { "hens", EA }, { "head", EA },
  { "doz", DOZ }, { "dozen", DOZ }, { "dozens", DOZ }, { "dz", DOZ }, { "dzn", DOZ },
  { "g", G }, { "gm", G }, { "gms", G }, { "gram", G }, { "grams", G }, { "gramme", G },
  { "grammes", G },
  { "oz", OZ }, { "ozs", OZ }, { "ounce", OZ }, { "ounces", OZ },
  { "lb", LB }, { "lbs", LB }, { "pound", LB }, { "pounds", LB }, { "#", LB },
  { "kg", KG }, { "kgs", KG }, { "kilo", KG }, { "kilos", KG }, { "kilogram", KG },
  { "kilograms", KG }, { "kilogramme", KG }, { "kilogrammes", KG },
  { "ton", TON }, { "tons", TON }, { "short ton", TON }, { "short tons", TON }, { "us ton", TON },
  { "ml", ML }, { "milliliter", ML }, { "milliliters", ML }, { "millilitre", ML },
  { "millilitres", ML }, { "cc", ML },
  { "tsp", TSP }, { "tsps", TSP }, { "teaspoon", TSP }, { "teaspoons", TSP },
  { "tbsp", TBSP }, { "tbsps", TBSP }, { "tbs", TBSP }, { "tablespoon", TBSP },
  { "tablespoons", TBSP },
  { "floz", FLOZ }, { "fl oz", FLOZ }, { "fluid ounce", FLOZ }, { "fluid ounces", FLOZ },
  { "cup", CUP }, { "cups", CUP },
  { "pt", PT }, { "pts", PT }, { "pint", PT }, { "pints", PT },
  { "qt", QT }, { "qts", QT }, { "quart", QT }, { "quarts", QT },
  { "l", L }, { "lt", L }, { "liter", L }, { "liters", L }, { "litre", L }, { "litres", L },
  { "gal", GAL }, { "gals", GAL }, { "gallon", GAL }, { "gallons", GAL },
  { "sqft", SQFT }, { "sq ft", SQFT }, { "ft2", SQFT }, { "ft²", SQFT }, { "square foot", SQFT },
  { "square feet", SQFT }, { "sf", SQFT },
  { "m2", M2 }, { "m²", M2 }, { "sq m", M2 }, { "sqm", M2 }, { "square meter", M2 },
  { "square meters", M2 }, { "square metre", M2 }, { "square metres", M2 },
  { "cm", CM }, { "cms", CM }, { "centimeter", CM }, { "centimeters", CM }, { "centimetre", CM },
  { "centimetres", CM },
  { "in", IN }, { "ins", IN }, { "inch", IN }, { "inches", IN }, { "\"", IN }, { "″", IN },
  { "ft", FT }, { "foot", FT }, { "feet", FT }, { "'", FT }, { "′", FT },
  { "m", M }, { "meter", M }, { "meters", M }, { "metre", M }, { "metres", M },
  { "f", DEGF }, { "°f", DEGF }, { "degf", DEGF }, { "deg f", DEGF }, { "fahrenheit", DEGF },
  { "degrees f", DEGF }, { "degrees fahrenheit", DEGF },
  { "°c", DEGC }, { "degc", DEGC }, { "deg c", DEGC }, { "celsius", DEGC }, { "centigrade", DEGC },
  { "degrees c", DEGC }, { "degrees celsius", DEGC },
  /* Spanish. */
  { "pieza", EA }, { "piezas", EA }, { "unidad", EA }, { "unidades", EA }, { "huevo", EA },
  { "huevos", EA }, { "ave", EA }, { "aves", EA }, { "gallina", EA }, { "gallinas", EA },
  { "docena", DOZ }, { "docenas", DOZ }, { "dna", DOZ },
  { "gr", G }, { "grs", G }, { "gramo", G }, { "gramos", G },
  { "onza", OZ }, { "onzas", OZ },
  { "libra", LB }, { "libras", LB },
  { "kilogramo", KG }, { "kilogramos", KG },
  { "tonelada corta", TON }, { "toneladas cortas", TON },
  { "mililitro", ML }, { "mililitros", ML },
  { "cdta", TSP }, { "cdita", TSP }, { "cucharadita", TSP }, { "cucharaditas", TSP },
  { "cda", TBSP }, { "cdas", TBSP }, { "cucharada", TBSP }, { "cucharadas", TBSP },
  { "onza liquida", FLOZ }, { "onzas liquidas", FLOZ },
  { "taza", CUP }, { "tazas", CUP },
  { "pinta", PT }, { "pintas", PT },
  { "cuarto", QT }, { "cuartos", QT },
  { "litro", L }, { "litros", L },
  { "galon", GAL }, { "galones", GAL },
  { "pie cuadrado", SQFT }, { "pies cuadrados", SQFT },
  { "metro cuadrado", M2 }, { "metros cuadrados", M2 },
  { "centimetro", CM }, { "centimetros", CM },
  { "pulgada", IN }, { "pulgadas", IN }, { "pulg", IN },
  { "pie", FT }, { "pies", FT },
  { "metro", M }, { "metros", M },
};

/* One letter means what its case says in a recipe; with °C and °F it follows
 * what is measured. */
static const Spelling letters[] = {
  { "T", TBSP }, { "t", TSP }, { "c", CUP }, { "C", DEGC }, { "F", DEGF },
};

static const char dimension_ends[] = { DOZ, TON, GAL, M2, M, DEGC };

const SteadUnit *
stead_unit_by_id (const char *id)
{
  for (gsize i = 0; id != NULL && i < N_UNITS; i++)
    if (g_str_equal (units[i].id, id))
      return &units[i];
  return NULL;
}

/* Lower case, without accents, points and double spaces. */
static char *
fold (const char *text)
{
  g_autofree char *wide = g_utf8_normalize (text, -1, G_NORMALIZE_DEFAULT);
  g_autofree char *lower = wide != NULL ? g_utf8_strdown (wide, -1) : NULL;
  GString *out = g_string_new (NULL);

  for (const char *p = lower; p != NULL && *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (c == '.' || g_unichar_ismark (c))
        continue;
      if (g_unichar_isspace (c) && (out->len == 0 || out->str[out->len - 1] == ' '))
        continue;
      g_string_append_unichar (out, g_unichar_isspace (c) ? ' ' : c);
    }
  g_strchomp (out->str);
  return g_string_free (out, FALSE);
}

static const SteadUnit *
spelled (const Spelling *list,
         gsize           n,
         const char     *text,
         int             dimension)
{
  for (gsize i = 0; i < n; i++)
    if (g_str_equal (list[i].text, text)
        && (dimension < 0 || (int) units[list[i].unit].dimension == dimension))
      return &units[list[i].unit];
  return NULL;
}

const SteadUnit *
stead_unit_from_text_for (const char *text,
                          int         dimension)
{
  g_autofree char *folded = NULL;
  const SteadUnit *unit;

  g_return_val_if_fail (text != NULL, NULL);

  if (!g_utf8_validate (text, -1, NULL))
    return NULL;
  folded = fold (text);
  if (dimension == STEAD_DIMENSION_TEMPERATURE && g_str_equal (folded, "c"))
    return &units[DEGC];
  /* A liquid's ounces are fluid ounces. */
  if (dimension == STEAD_DIMENSION_VOLUME
      && spelled (spellings, G_N_ELEMENTS (spellings), folded, -1) == &units[OZ])
    return &units[FLOZ];
  unit = spelled (letters, G_N_ELEMENTS (letters), text, dimension);
  if (unit == NULL)
    unit = spelled (spellings, G_N_ELEMENTS (spellings), folded, dimension);
  if (unit == NULL && dimension >= 0)
    unit = stead_unit_from_text_for (text, -1);
  return unit;
}

const SteadUnit *
stead_unit_from_text (const char *text)
{
  g_return_val_if_fail (text != NULL, NULL);
  return stead_unit_from_text_for (text, -1);
}

const SteadUnit *
stead_unit_default (SteadDimension  dimension,
                    SteadUnitSystem system)
{
  static const int defaults[][2] = {
    [STEAD_DIMENSION_COUNT] = { EA, EA },
    [STEAD_DIMENSION_MASS] = { LB, KG },
    [STEAD_DIMENSION_VOLUME] = { GAL, L },
    [STEAD_DIMENSION_AREA] = { SQFT, M2 },
    [STEAD_DIMENSION_LENGTH] = { FT, M },
    [STEAD_DIMENSION_TEMPERATURE] = { DEGF, DEGC },
  };

  g_return_val_if_fail ((gsize) dimension < G_N_ELEMENTS (defaults), &units[EA]);
  return &units[defaults[dimension][system == STEAD_UNITS_METRIC]];
}

const SteadUnit * const *
stead_unit_list (SteadDimension  dimension,
                 gsize          *n_units)
{
  static const SteadUnit *all[N_UNITS];
  static gsize ready = 0;
  int from;

  g_return_val_if_fail ((gsize) dimension < G_N_ELEMENTS (dimension_ends), NULL);
  g_return_val_if_fail (n_units != NULL, NULL);

  if (g_once_init_enter (&ready))
    {
      for (gsize i = 0; i < N_UNITS; i++)
        all[i] = &units[i];
      g_once_init_leave (&ready, 1);
    }
  from = dimension == 0 ? 0 : dimension_ends[dimension - 1] + 1;
  *n_units = (gsize) (dimension_ends[dimension] + 1 - from);
  return &all[from];
}

const char *
stead_unit_symbol (const SteadUnit *unit)
{
  g_return_val_if_fail (unit != NULL, "");
  return g_dpgettext2 (GETTEXT_PACKAGE, "unit", unit->symbol);
}

double
stead_quantity_to_base (double           value,
                        const SteadUnit *unit)
{
  g_return_val_if_fail (unit != NULL, value);
  return (value + unit->offset) * unit->factor;
}

double
stead_quantity_from_base (double           base,
                          const SteadUnit *unit)
{
  g_return_val_if_fail (unit != NULL, base);
  return base / unit->factor - unit->offset;
}
