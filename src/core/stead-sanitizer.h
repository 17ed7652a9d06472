/* stead-sanitizer.h - a sanitizing solution, and the thermometer that is used beside it. */
#pragma once

#include "core/stead-limit.h"

G_BEGIN_DECLS

typedef struct
{
  const char *kind;            /* "chlorine", "iodine", "quat" */
  double      strength_mgl;    /* NAN: not measured; of quat the label decides */
  double      ph;              /* NAN: not measured */
  double      temp_f;          /* NAN: not measured */
  double      hardness_mgl;    /* of the water; NAN: not measured, only quat asks */
} SteadSolution;

typedef enum
{
  STEAD_SOLUTION_GOOD = 0,
  STEAD_SOLUTION_WEAK = 1 << 0,
  STEAD_SOLUTION_STRONG = 1 << 1,
  STEAD_SOLUTION_COLD = 1 << 2,
  STEAD_SOLUTION_PH = 1 << 3,         /* above what the kind works at */
  STEAD_SOLUTION_HARD = 1 << 4,       /* the water is too hard */
} SteadSolutionFaults;

/**
 * stead_sanitizer_judge:
 * @solution: what was measured; chlorine and iodine need strength, pH and warmth
 * @out: (out): all that is wrong with it
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Chlorine needs the more warmth the weaker it is and the higher its pH.
 * Source: FDA Food Code 2022, §4-501.114.
 *
 * Returns: %TRUE, or %FALSE if the kind is unknown or a measurement is missing
 */
gboolean stead_sanitizer_judge (const SteadLimitTable  *table,
                                const SteadSolution    *solution,
                                SteadSolutionFaults    *out,
                                GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_sanitizer_least_temp_f:
 * @out_temp_f: (out): the least warmth for its strength and pH
 *
 * Returns: %TRUE, or %FALSE with @error set: too weak, or its pH too high
 */
gboolean stead_sanitizer_least_temp_f (const SteadLimitTable  *table,
                                       const SteadSolution    *solution,
                                       double                 *out_temp_f,
                                       GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_sanitizer_least_strength_mgl:
 * @out_mgl: (out): the least strength for its pH and warmth, as far as they are
 *   known; its own strength does not count
 *
 * Returns: %TRUE, or %FALSE with @error set: none is enough
 */
gboolean stead_sanitizer_least_strength_mgl (const SteadLimitTable  *table,
                                             const SteadSolution    *solution,
                                             double                 *out_mgl,
                                             GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_sanitizer_contact_s:
 * @out_s: (out): seconds that it must work
 *
 * Source: FDA Food Code 2022, §4-703.11(C).
 *
 * Returns: %TRUE, or %FALSE with @error set
 */
gboolean stead_sanitizer_contact_s (const SteadLimitTable  *table,
                                    const SteadSolution    *solution,
                                    double                 *out_s,
                                    GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_bleach_mgl:
 * @bleach_frac: sodium hypochlorite of the bleach, as its label says, 0 to 1
 * @bleach_l: how much of it, in any unit of volume
 * @water_l: water, in the same unit, above 0
 *
 * Its own volume is neglected.  A test strip decides.
 *
 * Returns: strength in mg/L; NAN for amounts below 0
 */
double stead_bleach_mgl (double bleach_frac,
                         double bleach_l,
                         double water_l);

/**
 * stead_bleach_l:
 * Returns: bleach for a strength of @mgl, in the unit of @water_l
 */
double stead_bleach_l (double bleach_frac,
                       double mgl,
                       double water_l);

/* The thermometer */

typedef struct
{
  const char *scale;       /* "F_only", "C_only", "dual" */
  const char *measures;    /* "food" or "air_or_water" */
} SteadThermometer;

/**
 * stead_thermometer_limit:
 * @measure: "error" or "step"
 * @unit: "Fdiff" or "Cdiff"
 * @out: (out): how far off it may be, or how coarse its scale
 *
 * A scale in both degrees is held to the limit in °C.
 * Source: FDA Food Code 2022, §4-203.11, .12, §4-204.112.
 *
 * Returns: %TRUE, or %FALSE with @error set
 */
gboolean stead_thermometer_limit (const SteadLimitTable   *table,
                                  const SteadThermometer  *thermometer,
                                  const char              *measure,
                                  const char              *unit,
                                  double                  *out,
                                  GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_thermometer_judge:
 * @reading_f: what it shows where the true temperature is @true_f
 * @true_f: in melting ice 32 °F, in boiling water stead_boiling_point_f()
 * @out_error_f: (out) (optional): how far off it is, with its sign
 * @out_good: (out): whether that is within the limit
 *
 * Returns: %TRUE, or %FALSE with @error set
 */
gboolean stead_thermometer_judge (const SteadLimitTable   *table,
                                  const SteadThermometer  *thermometer,
                                  double                   reading_f,
                                  double                   true_f,
                                  double                  *out_error_f,
                                  gboolean                *out_good,
                                  GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_ice_point_f:
 * Returns: °F of melting ice; NAN if the table does not have it
 */
double stead_ice_point_f (const SteadLimitTable *table);

/**
 * stead_boiling_point_f:
 * @elevation_ft: above the sea
 *
 * 1.8 °F less for each 1,000 ft.
 *
 * Returns: °F of boiling water; NAN if the table does not have the rule
 */
double stead_boiling_point_f (const SteadLimitTable *table,
                              double                 elevation_ft);

G_END_DECLS
