/* stead-us-units.h - US customary units in SI: how much one of each is.
 *
 * Exact by definition.  Source: NIST Special Publication 811, appendix B (from memory).
 */
#pragma once

#define STEAD_POUND_KG       0.45359237
#define STEAD_GALLON_L       3.785411784
#define STEAD_INCH_M         0.0254
#define STEAD_FOOT_M         0.3048
#define STEAD_SQUARE_FOOT_M2 (STEAD_FOOT_M * STEAD_FOOT_M)
#define STEAD_CUBIC_FOOT_M3  0.028316846592
