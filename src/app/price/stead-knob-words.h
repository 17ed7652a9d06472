/* stead-knob-words.h - names of the knobs of the place Price, and their values in words. */
#pragma once

#include "app/price/stead-price-model.h"

G_BEGIN_DECLS

/* "Price, $4.50 a dozen": the name of a handle, value in words. */
char *stead_knob_said  (const SteadPriceAnswer *answer, SteadKnob knob, gint64 value) G_GNUC_WARN_UNUSED_RESULT;
/* "Price": beside its field. */
const char *stead_knob_name (SteadKnob knob);
/* Whether a knob counts units and not money. */
gboolean stead_knob_is_count (SteadKnob knob);

/* "What one dozen costs": head of the sheet on screen. */
const char *stead_knob_what_costs (SteadPack pack);
/* "One dozen costs": beside its sum. */
const char *stead_knob_one_costs (SteadPack pack);

G_END_DECLS
