/* stead-best-use-view.h - the best use of eggs, fruit, jars and time that are scarce. */
#pragma once

#include "app/price/stead-view.h"

G_BEGIN_DECLS

#define STEAD_TYPE_BEST_USE_VIEW (stead_best_use_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadBestUseView, stead_best_use_view, STEAD, BEST_USE_VIEW, SteadView)

GtkWidget *stead_best_use_view_new (void);

G_END_DECLS
