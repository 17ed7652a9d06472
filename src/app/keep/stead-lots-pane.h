/* stead-lots-pane.h - Keep: traceable quantities on hand. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_LOTS_PANE (stead_lots_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadLotsPane, stead_lots_pane, STEAD, LOTS_PANE, SteadPane)

G_END_DECLS
