/* stead-reading-unit.h - the units that meters and kits show, reading by reading.
 *
 * The file keeps one: °C, mg/L, µS/cm.  A kit prints ppm, which is the same number
 * with another name, or weighs nitrogen alone, which is not: 1 mg/L of nitrate as
 * nitrogen is 4.4 mg/L as nitrate.
 */
#pragma once

#include "core/stead-quantity.h"
#include "store/stead-water-repo.h"

G_BEGIN_DECLS

typedef struct
{
  const char *id;       /* stable, for settings: "mgl", "ppm", "n", "degF" */
  const char *symbol;   /* what a person reads; show with stead_reading_unit_symbol() */
} SteadReadingUnit;

/* (transfer none): stable, for settings and tables: "temperature", "tan" */
const char             *stead_reading_id           (SteadReading   reading);
/* (transfer none) (array length=n_units): units of a reading, the usual one first; pH has none. */
const SteadReadingUnit *stead_reading_units        (SteadReading   reading,
                                                    gsize         *n_units);
/* (transfer none): in the person's language: "mg/L as N" */
const char             *stead_reading_unit_symbol  (const SteadReadingUnit *unit);
/* (transfer none) (nullable): the unit in which a farm sees a reading; %NULL for pH */
const SteadReadingUnit *stead_reading_unit_default (SteadReading   reading,
                                                    SteadUnitSystem system);
/* (transfer none) (nullable): by a stored id; the default of @system if it is not of this reading */
const SteadReadingUnit *stead_reading_unit_by_id   (SteadReading   reading,
                                                    const char    *id,
                                                    SteadUnitSystem system);

/**
 * stead_reading_unit_from_text:
 * @text: as it stands behind a name: "°F", "F", "mg/L", "ppm", "mg/L N", "NO3-N", "dKH"
 *
 * Returns: (transfer none) (nullable): the unit, or %NULL if it is none of this reading's
 */
const SteadReadingUnit *stead_reading_unit_from_text (SteadReading   reading,
                                                      const char    *text);

/* Between a number in @unit (NULL: as it is kept) and what the file keeps.
 * Sources: standard atomic weights; a German degree of hardness is 17.85 mg/L as
 * CaCO3 (both from memory). */
double stead_reading_from_unit (double                  value,
                                SteadReading            reading,
                                const SteadReadingUnit *unit);
double stead_reading_to_unit   (double                  kept,
                                SteadReading            reading,
                                const SteadReadingUnit *unit);

/* Digits after the point that a kit can tell, of a value in @unit. */
int    stead_reading_digits    (SteadReading            reading,
                                const SteadReadingUnit *unit);

G_END_DECLS
