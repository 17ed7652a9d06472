/* stead-water-dose-answer.h - "What must go into this water, or out of it?": the dose sheets.
 *
 * Each sheet works on numbers that a person can change; they start from the last
 * tests.  Doses are whole for the volume; what may be added at once is said beside.
 */
#pragma once

#include "answer/stead-water-answer.h"
#include "core/stead-water-dose.h"

G_BEGIN_DECLS

typedef struct
{
  double     amount;     /* g to add, or litres to change */
  double     frac;       /* of a change: share of the water; else NAN */
  int        parts;      /* in how many parts, a day apart, it is best given */
  char      *sentence;   /* markup: how much of what, and how */
  char      *caution;    /* plain: what it can do to people, fish and plants */
  SteadWhy  *why;
} SteadWaterDose;

void stead_water_dose_free (SteadWaterDose *dose);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWaterDose, stead_water_dose_free)

/* The three sheets. */
typedef enum
{
  STEAD_DOSE_BASE,      /* alkalinity up to a target */
  STEAD_DOSE_SALT,      /* chloride against nitrite */
  STEAD_DOSE_CHANGE,    /* a water change down to a target */
} SteadDoseSheet;

/* What a sheet starts with: numbers of the last tests; NAN where there are none. */
typedef struct
{
  double   volume_l;
  double   now;         /* alkalinity, nitrite, or what a change is to bring down */
  double   target;      /* alkalinity wanted; reading wanted; of salt: unused */
  double   beside;      /* chloride there is; reading of the water that is added */
  SteadDay day;         /* of the test that @now is from; STEAD_DAY_NONE */
} SteadDoseNumbers;

void stead_water_dose_start (const SteadWaterAnswer *water,
                             SteadDoseSheet          sheet,
                             SteadWaterMeasure       measure,
                             SteadDoseNumbers       *out);

/**
 * stead_water_dose_base:
 * @water: whose it is: what else is in the water, and in which units it is shown
 * @base: what is added
 * @numbers: volume, alkalinity now and wanted (mg/L as CaCO3)
 * @error: return location for a #GError for the person
 *
 * Returns: (transfer full): the dose; none is needed where the target is met
 */
SteadWaterDose *stead_water_dose_base (const SteadWaterAnswer  *water,
                                       SteadBase                base,
                                       const SteadDoseNumbers  *numbers,
                                       GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* Salt for 10 parts of chloride to 1 of nitrite: volume, nitrite, chloride. */
SteadWaterDose *stead_water_dose_salt (const SteadWaterAnswer  *water,
                                       const SteadDoseNumbers  *numbers,
                                       GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* The share of the water to change: volume, reading now and wanted, reading of the water
 * that is added. */
SteadWaterDose *stead_water_dose_change (const SteadWaterAnswer  *water,
                                         SteadWaterMeasure        measure,
                                         const SteadDoseNumbers  *numbers,
                                         GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
