/* stead-path-view.h - when a build is paid for: the fan of its money, and what helps most. */
#pragma once

#include "answer/stead-build-answer.h"
#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_PATH_VIEW (stead_path_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadPathView, stead_path_view, STEAD, PATH_VIEW, GtkWidget)

/* The path takes a while: it runs in a thread, and one before it is stopped. */
void stead_path_view_show (SteadPathView *self, SteadDesk *desk, const SteadBuildAnswer *answer);

G_END_DECLS
