/* stead-means-view.h - who pays for a build: what is there, pledges, grants, planned sales. */
#pragma once

#include "answer/stead-build-answer.h"
#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_MEANS_VIEW (stead_means_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadMeansView, stead_means_view, STEAD, MEANS_VIEW, GtkWidget)

void stead_means_view_show (SteadMeansView *self, SteadDesk *desk, const SteadBuildAnswer *answer);

G_END_DECLS
