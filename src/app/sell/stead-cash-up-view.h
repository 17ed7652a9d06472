/* stead-cash-up-view.h - the box is counted by two, and what is left over is put away. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CASH_UP_VIEW (stead_cash_up_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadCashUpView, stead_cash_up_view, STEAD, CASH_UP_VIEW, GtkBox)

/* Reads the sale anew and shows it. */
void stead_cash_up_view_show (SteadCashUpView *self, SteadDesk *desk, gint64 sale_id);

G_END_DECLS
