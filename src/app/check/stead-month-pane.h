/* stead-month-pane.h - a month of checks: what was read, what was not, and what was out of its limit. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_MONTH_PANE (stead_month_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadMonthPane, stead_month_pane, STEAD, MONTH_PANE, SteadPane)

G_END_DECLS
