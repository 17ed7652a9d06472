/* stead-bill-view.h - the bill of a build as a table: prices and amounts are typed into it. */
#pragma once

#include "answer/stead-build-answer.h"
#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_BILL_VIEW (stead_bill_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadBillView, stead_bill_view, STEAD, BILL_VIEW, GtkWidget)

/* Takes the rows out of @answer. */
void stead_bill_view_show (SteadBillView *self, SteadDesk *desk, SteadBuildAnswer *answer);

G_END_DECLS
