/* stead-pick.h - what the pickings so far say of a crop's total. */
#pragma once

#include "core/stead-band.h"

G_BEGIN_DECLS

/* Half the width of the band of a plant's total until pickings and own years say
 * more, as a share of it (common practice, no source). */
#define STEAD_PICK_BAND_FRAC 0.30

/**
 * stead_pick_factor:
 * @total_kg: expected of the whole crop before it began, above 0
 * @expected_kg: of that, expected up to now, 0 to @total_kg
 * @picked_kg: picked up to now, 0 or more
 * @out_factor: (out): what to multiply the rest of the expected crop by
 *
 * The crop bears a factor more or less than expected.  Before the first pick the
 * factor is 1, within %STEAD_PICK_BAND_FRAC on either side in 8 of 10 crops.  A
 * quarter of the crop weighs as much as that expectation: with a = a quarter of the
 * total, the factor is (a + picked) / (a + expected), and its band narrows by the
 * root of a / (a + expected).  This is the posterior mean of a gamma distributed rate
 * (any text on Bayesian statistics; from memory); the quarter is common practice.
 */
void stead_pick_factor (double     total_kg,
                        double     expected_kg,
                        double     picked_kg,
                        SteadBand *out_factor);

G_END_DECLS
