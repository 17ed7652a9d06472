/* stead-fill.h - gravel and bedding: what is spread over a floor.
 *
 * Sources: a question-and-answer page on gravel volume; Raising Sheep (handbook), deep
 * bedding box (a deep bed starts at 8 in).
 */
#pragma once

#include "core/stead-us-units.h"

#include <glib.h>

G_BEGIN_DECLS

/* A US (short) ton on a cubic yard, as kg/m³. */
#define STEAD_KG_M3_PER_TON_CUYD (2000 * STEAD_POUND_KG / (27 * STEAD_CUBIC_FOOT_M3))

/* Gravel: 1.4 short tons a cubic yard; the same page has 1.13 to 1.4, so ask the
 * supplier. */
#define STEAD_GRAVEL_KG_M3 (1.4 * STEAD_KG_M3_PER_TON_CUYD)

/**
 * stead_fill_m3: area x depth; NAN if one is below 0
 * stead_fill_kg: volume x density; NAN if one is below 0
 */
double stead_fill_m3 (double area_m2,
                      double depth_m);
double stead_fill_kg (double volume_m3,
                      double kg_m3);

G_END_DECLS
