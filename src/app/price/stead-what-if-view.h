/* stead-what-if-view.h - assumptions to turn, scenarios to keep, and what matters most. */
#pragma once

#include "app/price/stead-view.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WHAT_IF_VIEW (stead_what_if_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadWhatIfView, stead_what_if_view, STEAD, WHAT_IF_VIEW, SteadView)

GtkWidget *stead_what_if_view_new (void);

G_END_DECLS
