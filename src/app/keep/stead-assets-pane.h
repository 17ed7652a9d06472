/* stead-assets-pane.h - Keep: things that last for years. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ASSETS_PANE (stead_assets_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadAssetsPane, stead_assets_pane, STEAD, ASSETS_PANE, SteadPane)

G_END_DECLS
