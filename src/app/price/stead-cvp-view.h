/* stead-cvp-view.h - the break-even chart with its four handles. */
#pragma once

#include "app/price/stead-price-model.h"
#include "app/stead-chart-area.h"
#include "draw/stead-cvp-chart.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CVP_VIEW (stead_cvp_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadCvpView, stead_cvp_view, STEAD, CVP_VIEW, GtkWidget)

GtkWidget            *stead_cvp_view_new        (SteadPriceModel *model);
/* (transfer none): the drawing, for its menu */
SteadChartArea       *stead_cvp_view_get_chart  (SteadCvpView *self);
/* (transfer none): the scale of a knob; not the target, which has none */
GtkWidget            *stead_cvp_view_get_handle (SteadCvpView *self, SteadKnob knob);
/* Where everything stands in the drawing as it was last laid out. */
const SteadCvpLayout *stead_cvp_view_get_layout (SteadCvpView *self);

G_END_DECLS
