/* stead-packets-pane.h - one packet: its sections, what they lack, and where their figures come from. */
#pragma once

#include "app/show/stead-pick-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PACKETS_PANE (stead_packets_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadPacketsPane, stead_packets_pane, STEAD, PACKETS_PANE, SteadPickPane)

/**
 * stead_packets_pane_run:
 * @folder: made if it is not there
 *
 * Begins to write the packet of each student of the class into @folder, one between two
 * frames; what goes wrong is said in the window.  Does nothing while a run is under way.
 */
void     stead_packets_pane_run        (SteadPacketsPane *self, const char *folder);
gboolean stead_packets_pane_is_running (SteadPacketsPane *self);

G_END_DECLS
