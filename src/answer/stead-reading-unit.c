/* stead-reading-unit.c - the units that meters and kits show, reading by reading. */
#include "config.h"

#include "answer/stead-line-private.h"
#include "answer/stead-reading-unit.h"
#include "core/stead-water.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* One German degree of hardness: 10 mg/L of CaO, as CaCO3 (100.09 / 56.08). */
#define GERMAN_DEGREE_MGL 17.85

#define SUBSCRIPT_ZERO 0x2080
#define MICRO_SIGN 0x00b5
#define GREEK_MU 0x03bc
#define DEGREE_SIGN 0x00b0

static const SteadReadingUnit temperature[] = { { "degF", NC_("unit of a reading", "°F") },
                                                { "degC", NC_("unit of a reading", "°C") } };
static const SteadReadingUnit plain[] = { { "mgl", NC_("unit of a reading", "mg/L") },
                                          { "ppm", NC_("unit of a reading", "ppm") } };
static const SteadReadingUnit ammonia[] = { { "n", NC_("unit of a reading", "mg/L as N") },
                                            { "ppm", NC_("unit of a reading", "ppm as N") },
                                            { "nh3", NC_("unit of a reading", "mg/L as NH₃") },
                                            { "nh4", NC_("unit of a reading", "mg/L as NH₄") } };
static const SteadReadingUnit nitrite[] = { { "mgl", NC_("unit of a reading", "mg/L as NO₂") },
                                            { "ppm", NC_("unit of a reading", "ppm as NO₂") },
                                            { "n", NC_("unit of a reading", "mg/L as N") } };
static const SteadReadingUnit nitrate[] = { { "mgl", NC_("unit of a reading", "mg/L as NO₃") },
                                            { "ppm", NC_("unit of a reading", "ppm as NO₃") },
                                            { "n", NC_("unit of a reading", "mg/L as N") } };
static const SteadReadingUnit hardness[] = { { "mgl", NC_("unit of a reading", "mg/L as CaCO₃") },
                                             { "ppm", NC_("unit of a reading", "ppm as CaCO₃") },
                                             { "dh", NC_("unit of a reading", "°dH") } };
static const SteadReadingUnit conductivity[] = { { "us", NC_("unit of a reading", "µS/cm") },
                                                 { "ms", NC_("unit of a reading", "mS/cm") } };

static const struct
{
  const SteadReadingUnit *units;
  gsize                   n;
} by_reading[STEAD_N_READINGS] = {
  [STEAD_READING_TEMPERATURE] = { temperature, G_N_ELEMENTS (temperature) },
  [STEAD_READING_PH] = { NULL, 0 },
  [STEAD_READING_TAN] = { ammonia, G_N_ELEMENTS (ammonia) },
  [STEAD_READING_NITRITE] = { nitrite, G_N_ELEMENTS (nitrite) },
  [STEAD_READING_NITRATE] = { nitrate, G_N_ELEMENTS (nitrate) },
  [STEAD_READING_OXYGEN] = { plain, G_N_ELEMENTS (plain) },
  [STEAD_READING_ALKALINITY] = { hardness, G_N_ELEMENTS (hardness) },
  [STEAD_READING_HARDNESS] = { hardness, G_N_ELEMENTS (hardness) },
  [STEAD_READING_CONDUCTIVITY] = { conductivity, G_N_ELEMENTS (conductivity) },
  [STEAD_READING_CHLORINE] = { plain, G_N_ELEMENTS (plain) },
  [STEAD_READING_CHLORIDE] = { plain, G_N_ELEMENTS (plain) },
};

/* What people write, folded: lower case, signs as one space. */
static const struct { const char *text; const char *id; } spellings[] = {
  { "f", "degF" }, { "degf", "degF" }, { "deg f", "degF" }, { "fahrenheit", "degF" },
  { "c", "degC" }, { "degc", "degC" }, { "deg c", "degC" }, { "celsius", "degC" }, { "centigrados", "degC" },
  { "mg l", "mgl" }, { "mgl", "mgl" }, { "mg per l", "mgl" }, { "mg litro", "mgl" }, { "ppm", "ppm" },
  { "mg l no2", "mgl" }, { "mg l no3", "mgl" }, { "mg l caco3", "mgl" }, { "ppm caco3", "ppm" },
  { "mg l as no2", "mgl" }, { "mg l as no3", "mgl" }, { "mg l as caco3", "mgl" }, { "ppm no2", "ppm" },
  { "ppm no3", "ppm" }, { "no2", "mgl" }, { "no3", "mgl" }, { "caco3", "mgl" },
  { "n", "n" }, { "mg l n", "n" }, { "mg l as n", "n" }, { "mg n l", "n" }, { "ppm n", "n" }, { "ppm as n", "n" },
  { "no2 n", "n" }, { "no3 n", "n" }, { "nh3 n", "n" }, { "nh4 n", "n" }, { "mg l no2 n", "n" },
  { "mg l no3 n", "n" }, { "mg l nh3 n", "n" }, { "como n", "n" }, { "mg l como n", "n" },
  { "nh3", "nh3" }, { "mg l nh3", "nh3" }, { "mg l as nh3", "nh3" }, { "ppm nh3", "nh3" },
  { "nh4", "nh4" }, { "mg l nh4", "nh4" }, { "mg l as nh4", "nh4" }, { "ppm nh4", "nh4" },
  { "dh", "dh" }, { "dkh", "dh" }, { "dgh", "dh" }, { "kh", "dh" }, { "gh", "dh" },
  { "us cm", "us" }, { "us", "us" }, { "microsiemens cm", "us" }, { "umho cm", "us" }, { "ms cm", "ms" },
  { "ms", "ms" }, { "ds m", "ms" },
};

const char *
stead_reading_id (SteadReading reading)
{
  static const char * const ids[STEAD_N_READINGS] = {
    [STEAD_READING_TEMPERATURE] = "temperature", [STEAD_READING_PH] = "ph", [STEAD_READING_TAN] = "tan",
    [STEAD_READING_NITRITE] = "nitrite", [STEAD_READING_NITRATE] = "nitrate", [STEAD_READING_OXYGEN] = "oxygen",
    [STEAD_READING_ALKALINITY] = "alkalinity", [STEAD_READING_HARDNESS] = "hardness",
    [STEAD_READING_CONDUCTIVITY] = "conductivity", [STEAD_READING_CHLORINE] = "chlorine",
    [STEAD_READING_CHLORIDE] = "chloride",
  };

  g_return_val_if_fail ((guint) reading < STEAD_N_READINGS, "");
  return ids[reading];
}

const SteadReadingUnit *
stead_reading_units (SteadReading  reading,
                     gsize        *n_units)
{
  g_return_val_if_fail ((guint) reading < STEAD_N_READINGS && n_units != NULL, NULL);
  *n_units = by_reading[reading].n;
  return by_reading[reading].units;
}

const char *
stead_reading_unit_symbol (const SteadReadingUnit *unit)
{
  return unit != NULL ? g_dpgettext2 (GETTEXT_PACKAGE, "unit of a reading", unit->symbol) : "";
}

static const SteadReadingUnit *
find (SteadReading  reading,
      const char   *id)
{
  for (gsize i = 0; id != NULL && i < by_reading[reading].n; i++)
    if (g_str_equal (by_reading[reading].units[i].id, id))
      return &by_reading[reading].units[i];
  return NULL;
}

const SteadReadingUnit *
stead_reading_unit_default (SteadReading    reading,
                            SteadUnitSystem system)
{
  g_return_val_if_fail ((guint) reading < STEAD_N_READINGS, NULL);
  if (reading == STEAD_READING_TEMPERATURE)
    return find (reading, system == STEAD_UNITS_METRIC ? "degC" : "degF");
  return by_reading[reading].units;
}

const SteadReadingUnit *
stead_reading_unit_by_id (SteadReading    reading,
                          const char     *id,
                          SteadUnitSystem system)
{
  const SteadReadingUnit *unit;

  g_return_val_if_fail ((guint) reading < STEAD_N_READINGS, NULL);
  unit = find (reading, id);
  return unit != NULL ? unit : stead_reading_unit_default (reading, system);
}

/* Lower case, a small number as a number, µ as u, and every other sign as one space. */
static char *
tidy (const char *text)
{
  g_autofree char *folded = stead_line_fold (text);
  GString *out = g_string_new (NULL);

  for (const char *at = folded; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar c = g_utf8_get_char (at);

      if (c >= SUBSCRIPT_ZERO && c <= SUBSCRIPT_ZERO + 9)
        g_string_append_c (out, (char) ('0' + c - SUBSCRIPT_ZERO));
      else if (c == MICRO_SIGN || c == GREEK_MU)
        g_string_append_c (out, 'u');
      else if (g_unichar_isalnum (c))
        g_string_append_unichar (out, c);
      else if (out->len > 0 && out->str[out->len - 1] != ' ' && c != DEGREE_SIGN)
        g_string_append_c (out, ' ');
    }
  return g_strchomp (g_string_free (out, FALSE));
}

const SteadReadingUnit *
stead_reading_unit_from_text (SteadReading  reading,
                              const char   *text)
{
  g_autofree char *folded = NULL;

  g_return_val_if_fail ((guint) reading < STEAD_N_READINGS && text != NULL, NULL);
  folded = tidy (text);
  for (gsize i = 0; i < G_N_ELEMENTS (spellings); i++)
    if (g_str_equal (spellings[i].text, folded))
      {
        const SteadReadingUnit *unit = find (reading, spellings[i].id);

        /* "mg/L" of ammonia: kits that do not say it mean nitrogen. */
        if (unit == NULL && reading == STEAD_READING_TAN && g_str_equal (spellings[i].id, "mgl"))
          unit = find (reading, "n");
        return unit;
      }
  return NULL;
}

/* mg/L (µS/cm) kept for one of the unit; temperatures apart. */
static double
factor_of (SteadReading            reading,
           const SteadReadingUnit *unit)
{
  if (unit == NULL)
    return 1;
  if (g_str_equal (unit->id, "nh3"))
    return stead_water_n_from_nh3 (1);
  if (g_str_equal (unit->id, "nh4"))
    return stead_water_n_from_nh4 (1);
  if (g_str_equal (unit->id, "n") && reading == STEAD_READING_NITRITE)
    return stead_water_no2_from_n (1);
  if (g_str_equal (unit->id, "n") && reading == STEAD_READING_NITRATE)
    return stead_water_no3_from_n (1);
  if (g_str_equal (unit->id, "dh"))
    return GERMAN_DEGREE_MGL;
  return g_str_equal (unit->id, "ms") ? 1000 : 1;
}

double
stead_reading_from_unit (double                  value,
                         SteadReading            reading,
                         const SteadReadingUnit *unit)
{
  if (unit != NULL && reading == STEAD_READING_TEMPERATURE)
    return stead_quantity_to_base (value, stead_unit_by_id (unit->id));
  return value * factor_of (reading, unit);
}

double
stead_reading_to_unit (double                  kept,
                       SteadReading            reading,
                       const SteadReadingUnit *unit)
{
  if (unit != NULL && reading == STEAD_READING_TEMPERATURE)
    return stead_quantity_from_base (kept, stead_unit_by_id (unit->id));
  return kept / factor_of (reading, unit);
}

int
stead_reading_digits (SteadReading            reading,
                      const SteadReadingUnit *unit)
{
  static const int digits[STEAD_N_READINGS] = {
    [STEAD_READING_TEMPERATURE] = 1, [STEAD_READING_PH] = 2, [STEAD_READING_TAN] = 2, [STEAD_READING_NITRITE] = 2,
    [STEAD_READING_NITRATE] = 1, [STEAD_READING_OXYGEN] = 1, [STEAD_READING_ALKALINITY] = 0,
    [STEAD_READING_HARDNESS] = 0, [STEAD_READING_CONDUCTIVITY] = 0, [STEAD_READING_CHLORINE] = 3,
    [STEAD_READING_CHLORIDE] = 0,
  };

  g_return_val_if_fail ((guint) reading < STEAD_N_READINGS, 0);
  if (unit != NULL && (g_str_equal (unit->id, "dh") || g_str_equal (unit->id, "ms")))
    return 2;
  return digits[reading];
}
