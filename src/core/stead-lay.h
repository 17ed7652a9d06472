/* stead-lay.h - laying curves.
 *
 * The default is the compartment curve, since a grower can see each of its
 * parameters: y = a e^(-x t) / (1 + e^(-c (t - d))), t in weeks of lay.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  double level_frac;       /* a: level it would start from, 0 to 1 */
  double decline_week;     /* x: share lost a week, 0 or more */
  double steepness_week;   /* c: how fast the flock comes into lay, above 0 */
  double half_week;        /* d: week of lay with half of the flock in lay */
  double onset_age_weeks;  /* age of the birds in week of lay 0 */
} SteadLayCurve;

/**
 * stead_lay_curve_default:
 * @out: (out): brown hens: a 0.97, x 0.004, c 1.3, d 2, onset at 18 weeks of age
 *
 * Level, steepness and half-point are common starting values of this model.  The
 * decline is chosen so that the curve keeps to the bands of brown hybrids (88 to
 * 95 % at 40 weeks of age, 80 to 90 at 60, 65 to 82 at 80): from memory, no
 * breeder's table could be read.  A farm's own log replaces it.
 */
void stead_lay_curve_default (SteadLayCurve *out);

/**
 * stead_lay_curve_frac:
 * @curve: a curve
 * @age_weeks: age of the birds
 *
 * Returns: expected eggs per hen and day, 0 to 1
 */
double stead_lay_curve_frac (const SteadLayCurve *curve,
                             double               age_weeks);

/**
 * stead_lay_curve_eggs:
 * @curve: a curve
 * @from_age_weeks: start of lay
 * @to_age_weeks: end of lay
 *
 * Returns: eggs that one hen is expected to lay between the two ages (numerical integral)
 */
double stead_lay_curve_eggs (const SteadLayCurve *curve,
                             double               from_age_weeks,
                             double               to_age_weeks);

G_END_DECLS
