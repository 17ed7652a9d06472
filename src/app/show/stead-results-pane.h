/* stead-results-pane.h - what was earned together, and each one's share. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RESULTS_PANE (stead_results_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadResultsPane, stead_results_pane, STEAD, RESULTS_PANE, SteadPane)

G_END_DECLS
