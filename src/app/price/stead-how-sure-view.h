/* stead-how-sure-view.h - thousands of seasons out of ranges: how sure is it that they pay? */
#pragma once

#include "app/price/stead-view.h"

G_BEGIN_DECLS

#define STEAD_TYPE_HOW_SURE_VIEW (stead_how_sure_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadHowSureView, stead_how_sure_view, STEAD, HOW_SURE_VIEW, SteadView)

GtkWidget *stead_how_sure_view_new (void);

G_END_DECLS
