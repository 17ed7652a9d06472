/* stead-plan-view.h - a sale day as it is planned, and what it may bring. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PLAN_VIEW (stead_plan_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadPlanView, stead_plan_view, STEAD, PLAN_VIEW, GtkBox)

/* Reads the sale anew and shows it. */
void stead_plan_view_show (SteadPlanView *self, SteadDesk *desk, gint64 sale_id);

G_END_DECLS
