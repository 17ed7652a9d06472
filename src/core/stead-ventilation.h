/* stead-ventilation.h - fans, shade and inlets of a greenhouse.
 *
 * Flows are m³ in an hour; a cfm (cubic foot a minute) is 1.699 of them.  Inlets
 * stand opposite the fans.  Fans have guards, and are unplugged before a hand goes near.
 */
#pragma once

#include "core/stead-us-units.h"

#include <glib.h>

G_BEGIN_DECLS

/* m³/h in a cubic foot a minute. */
#define STEAD_M3_H_PER_CFM (STEAD_CUBIC_FOOT_M3 * 60)

/**
 * stead_fan_flow_floor_m3_h:
 * @floor_m2: floor of the house
 * @rate_m3_h_m2: flow for a m² of floor: 8 (from memory) to 12 cfm for a square foot
 * @shade_frac: of the shade cloth over it, 0 to 0.6; 0: none
 * @out_m3_h: (out): flow that the fans need
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * A cloth keeps heat out: 40, 50 and 60 % of shade need 0.6, 0.5 and 0.4 of the flow.
 * Source: a greenhouse supplier's technical page, fan and shutter sizing.
 *
 * Returns: %TRUE, or %FALSE for more shade than the source covers
 */
gboolean stead_fan_flow_floor_m3_h (double   floor_m2,
                                    double   rate_m3_h_m2,
                                    double   shade_frac,
                                    double  *out_m3_h,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_fan_flow_volume_m3_h:
 * @volume_m3: of the house
 * @changes_min: changes of its air in a minute; 1 is the common rule
 *
 * Source: ventilation system calculations, a growers' forum.
 *
 * Returns: flow that the fans need
 */
double stead_fan_flow_volume_m3_h (double volume_m3,
                                   double changes_min);

/* Speed of air in an inlet, 350 feet a minute (common practice, no source). */
#define STEAD_INLET_M_S 1.78

/**
 * stead_inlet_m2:
 * @flow_m3_h: of all fans together
 * @speed_m_s: of the air in the inlet, above 0
 *
 * Returns: open area; a louver's blades and a screen take away from it.  NAN
 *   without a speed
 */
double stead_inlet_m2 (double flow_m3_h,
                       double speed_m_s);

G_END_DECLS
