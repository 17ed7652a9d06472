/* stead-events-pane.h - one event: its team, its scores, and what the packet still lacks. */
#pragma once

#include "app/show/stead-pick-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_EVENTS_PANE (stead_events_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadEventsPane, stead_events_pane, STEAD, EVENTS_PANE, SteadPickPane)

G_END_DECLS
