/* stead-round.h - rounding at a named place, free of binary noise.
 *
 * 0.1 + 0.2 is not 0.3 in binary.  A count or a cent that was reached by such
 * a detour must still round as it does on paper, so each function first clears
 * a noise of 1e-9, relative for numbers above 1.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What counts as noise beside 1; beside x it is this times |x|. */
#define STEAD_ROUND_NOISE 1e-9

/**
 * stead_round_half_away:
 * @value: a finite number
 *
 * Returns: the nearest whole number, halves away from zero
 */
double stead_round_half_away (double value) G_GNUC_CONST;

/**
 * stead_round_up:
 * @value: a finite number
 *
 * Returns: the least whole number that is not below @value; 3.0000000001 gives 3
 */
double stead_round_up (double value) G_GNUC_CONST;

/**
 * stead_round_down:
 * @value: a finite number
 *
 * Returns: the greatest whole number that is not above @value; 2.9999999999 gives 3
 */
double stead_round_down (double value) G_GNUC_CONST;

/**
 * stead_round_digits:
 * @value: a finite number
 * @digits: digits after the point, -9 to 15
 *
 * Returns: @value rounded to @digits, halves away from zero
 */
double stead_round_digits (double value,
                           int    digits) G_GNUC_CONST;

/**
 * stead_round_back:
 * @value: a number that went to another unit and came back, or NAN
 * @before: what it was, or NAN
 *
 * Returns: @before if the way there and back alone makes @value differ from it,
 *   otherwise @value
 */
double stead_round_back (double value,
                         double before) G_GNUC_CONST;

G_END_DECLS
