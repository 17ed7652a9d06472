/* stead-work-view.h - the work on a build: hours, days, and who may do what. */
#pragma once

#include "answer/stead-build-answer.h"
#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_WORK_VIEW (stead_work_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadWorkView, stead_work_view, STEAD, WORK_VIEW, GtkWidget)

void stead_work_view_show (SteadWorkView *self, SteadDesk *desk, const SteadBuildAnswer *answer);

G_END_DECLS
