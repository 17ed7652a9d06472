/* stead-export-pane.h - what left the farm, and the ways out. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_EXPORT_PANE (stead_export_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadExportPane, stead_export_pane, STEAD, EXPORT_PANE, SteadPane)

G_END_DECLS
