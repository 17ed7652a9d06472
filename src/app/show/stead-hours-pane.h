/* stead-hours-pane.h - the hours of a week: timers, known work, entries, and the advisor's check. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_HOURS_PANE (stead_hours_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadHoursPane, stead_hours_pane, STEAD, HOURS_PANE, SteadPane)

G_END_DECLS
