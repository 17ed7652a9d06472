/* stead-together-view.h - several products on one sale day: the path of profit. */
#pragma once

#include "app/price/stead-view.h"

G_BEGIN_DECLS

#define STEAD_TYPE_TOGETHER_VIEW (stead_together_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadTogetherView, stead_together_view, STEAD, TOGETHER_VIEW, SteadView)

GtkWidget *stead_together_view_new (void);

G_END_DECLS
