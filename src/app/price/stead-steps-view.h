/* stead-steps-view.h - from feed to the pack on the table, and what changed since last month. */
#pragma once

#include "app/price/stead-view.h"

G_BEGIN_DECLS

#define STEAD_TYPE_STEPS_VIEW (stead_steps_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadStepsView, stead_steps_view, STEAD, STEPS_VIEW, SteadView)

GtkWidget *stead_steps_view_new (void);

G_END_DECLS
