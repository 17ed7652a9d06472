/* stead-tank-text.h - what a tank holds, in words. */
#pragma once

#include "core/stead-quantity.h"
#include "store/stead-water-repo.h"

G_BEGIN_DECLS

/* (transfer full): markup: "It holds 2,350 gal; the flow changes that in 78 minutes."; what
 * to enter first while a measure is missing. */
char *stead_tank_text_holds  (const SteadTank *tank,
                              SteadUnitSystem  units) G_GNUC_WARN_UNUSED_RESULT;

/* What it holds and how fast that is changed, worked out; while a measure is missing the rule alone:
 * (transfer full) (element-type SteadWhy) */
GPtrArray *stead_tank_text_whys (const SteadTank *tank,
                                 SteadUnitSystem  units) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): an amount with about three digits: "193 sq ft", "67.3 sq ft" */
char *stead_tank_text_round  (double           base,
                              const SteadUnit *unit) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): "2,350 gal" with no more digits than a tape measure tells. */
char *stead_tank_text_volume (double           volume_l,
                              SteadUnitSystem  units) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
