/* stead-receipts-pane.h - Keep: purchases and gifts, newest first. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RECEIPTS_PANE (stead_receipts_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadReceiptsPane, stead_receipts_pane, STEAD, RECEIPTS_PANE, SteadPane)

G_END_DECLS
