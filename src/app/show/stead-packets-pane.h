/* stead-packets-pane.h - one packet: its sections, what they lack, and where their figures come from. */
#pragma once

#include "app/show/stead-pick-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PACKETS_PANE (stead_packets_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadPacketsPane, stead_packets_pane, STEAD, PACKETS_PANE, SteadPickPane)

G_END_DECLS
