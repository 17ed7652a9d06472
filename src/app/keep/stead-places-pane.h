/* stead-places-pane.h - Keep: where animals live, and where food is made, kept and sold. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PLACES_PANE (stead_places_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadPlacesPane, stead_places_pane, STEAD, PLACES_PANE, SteadPane)

G_END_DECLS
