/* stead-result-view.h - what a sale brought beside its plan, and why. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RESULT_VIEW (stead_result_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadResultView, stead_result_view, STEAD, RESULT_VIEW, GtkBox)

/* Reads the sale anew and shows it. */
void stead_result_view_show (SteadResultView *self, SteadDesk *desk, gint64 sale_id);

G_END_DECLS
