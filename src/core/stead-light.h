/* stead-light.h - the light that a plant gets in a day.
 *
 * Light is counted in particles: a lamp or the sun gives PPFD, µmol/m² in a
 * second; a day sums up to the daily light integral, mol/m².
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_light_daily_mol:
 * @ppfd_umol: steady light, µmol/m²/s, 0 or more
 * @hours: of it in the day, 0 to 24
 *
 * Lamps only: sunlight is never steady and needs stead_light_daily_sum_mol().
 * Source: conversion of instantaneous to daily light, a grower's page: PPFD x 3600 x
 * hours / 1,000,000.
 *
 * Returns: mol/m² a day; NAN outside these ranges
 */
double stead_light_daily_mol (double ppfd_umol,
                              double hours);

/**
 * stead_light_ppfd_umol:
 * @daily_mol: mol/m² a day, 0 or more
 * @hours: of light in the day, above 0 to 24
 *
 * Returns: the steady light that gives it, µmol/m²/s; NAN outside these ranges
 */
double stead_light_ppfd_umol (double daily_mol,
                              double hours);

/**
 * stead_light_daily_sum_mol:
 * @ppfd_umol: (array length=n_readings): readings at equal steps through the day,
 *   each standing for its step
 * @n_readings: how many
 * @step_hours: from one to the next; all together not more than a day
 *
 * Returns: mol/m² a day; NAN for a negative or missing reading
 */
double stead_light_daily_sum_mol (const double *ppfd_umol,
                                  gsize         n_readings,
                                  double        step_hours);

/**
 * stead_light_inside_mol:
 * @outside_mol: daily light outdoors, mol/m²
 * @cover_frac: share that the cover and frame let through, 0 to 1
 * @shade_frac: share that a shade cloth holds back, 0 to 1: a 50 % cloth 0.5
 *
 * Returns: daily light on the bench; NAN outside these ranges
 */
double stead_light_inside_mol (double outside_mol,
                               double cover_frac,
                               double shade_frac);

G_END_DECLS
