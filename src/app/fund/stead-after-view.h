/* stead-after-view.h - what was bought, how a build ends, and what it costs each year. */
#pragma once

#include "answer/stead-build-answer.h"
#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_AFTER_VIEW (stead_after_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadAfterView, stead_after_view, STEAD, AFTER_VIEW, GtkWidget)

void stead_after_view_show (SteadAfterView *self, SteadDesk *desk, const SteadBuildAnswer *answer);

G_END_DECLS
