/* stead-cash-pane.h - the cash book: where money lies, and each line. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CASH_PANE (stead_cash_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadCashPane, stead_cash_pane, STEAD, CASH_PANE, SteadPane)

G_END_DECLS
