/* stead-lethality.h - what heat does to germs, as arithmetic.
 *
 * D is the time in which one of ten germs survives; z is how much hotter it must
 * be for D to fall to a tenth.  These are figures of a calculation, never a word
 * on whether a food is safe: a process needs a process authority, and only probe
 * readings count.
 *
 * Temperatures are all °C or all °F; z is a difference in the same degrees.
 * Source: lethal rates of FDA Fish and Fishery Products Hazards and Controls
 * Guidance, 4th ed., appendix 4, tables.
 */
#pragma once

#include "core/stead-limit.h"

G_BEGIN_DECLS

typedef struct
{
  double reference;   /* temperature that times are stated for */
  double z;           /* above 0 */
  double z_below;     /* below the reference; 0: the same */
} SteadLethality;

/**
 * stead_lethal_rate:
 * Returns: minutes at the reference that one minute at @temp is worth,
 *   10^((T - Tref) / z); NAN unless z is above 0
 */
double stead_lethal_rate (const SteadLethality *germ,
                          double                temp);

/**
 * stead_lethal_time:
 * @reference_time: time at the reference temperature, in any unit: a D, or a
 *   number of them
 *
 * Returns: the time at @temp with the same effect, in the same unit
 */
double stead_lethal_time (const SteadLethality *germ,
                          double                reference_time,
                          double                temp);

/**
 * stead_lethal_temperature:
 * Returns: the temperature at which @time has the effect of @reference_time;
 *   NAN unless both are above 0
 */
double stead_lethal_temperature (const SteadLethality *germ,
                                 double                reference_time,
                                 double                time);

/**
 * stead_lethality_z:
 * @temps: (array length=n): temperatures
 * @times: (array length=n): D, or times of equal effect, all above 0
 * @out_z: (out): z in the degrees of @temps
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * -1 / slope of the least-squares line of log10(time) on temperature.
 *
 * Returns: %TRUE, or %FALSE with fewer than two temperatures, or times that do
 *   not fall with heat
 */
gboolean stead_lethality_z (const double  *temps,
                            const double  *times,
                            gsize          n,
                            double        *out_z,
                            GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_lethality_sum:
 * @minutes: (array length=n): when each reading was taken, rising
 * @temps: (array length=n): the coldest spot at that time
 * @out_sums: (out) (optional) (array length=n): the sum up to each reading
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * The trapezoid rule over the lethal rates: the mean of two neighbours times the
 * minutes between them.
 *
 * Returns: F, minutes at the reference; NAN with @error set if the minutes do
 *   not rise
 */
double stead_lethality_sum (const SteadLethality  *germ,
                            const double          *minutes,
                            const double          *temps,
                            gsize                  n,
                            double                *out_sums,
                            GError               **error);

/**
 * stead_lethality_sum_of_rates:
 * @first: rate of the first reading
 * @inner: sum of the rates between
 * @last: rate of the last reading
 * @interval: minutes between two readings
 *
 * Returns: interval x (first / 2 + inner + last / 2), minutes at the reference
 */
double stead_lethality_sum_of_rates (double first,
                                     double inner,
                                     double last,
                                     double interval);

/**
 * stead_lethality_logs:
 * @f: minutes at the reference
 * @d: D at the reference, minutes
 *
 * Returns: F / D, how often the germs were cut to a tenth; NAN unless D is above 0
 */
double stead_lethality_logs (double f,
                             double d);

/* A published study, as the tables have it. */
typedef struct
{
  SteadLethality    germ;
  const char       *unit;        /* of its temperatures: "C" or "F" */
  double            time_min;    /* at the reference … */
  double            logs;        /* … for so many tenths */
  const SteadLimit *source;      /* the row that cites it; belongs to the table */
} SteadLethalStudy;

/**
 * stead_lethal_study:
 * @name: "listeria", "botulinum_cold", "acidified_4_1_to_4_6", "acidified_to_4_1",
 *   "tomato_puree", "meat"
 * @out: (out): the study
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE if the table does not have it
 */
gboolean stead_lethal_study (const SteadLimitTable  *table,
                             const char             *name,
                             SteadLethalStudy       *out,
                             GError                **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
