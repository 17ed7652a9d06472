/* stead-drawing-view.h - the drawing of a build, room for its animals, and its cautions. */
#pragma once

#include "answer/stead-build-answer.h"
#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_DRAWING_VIEW (stead_drawing_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadDrawingView, stead_drawing_view, STEAD, DRAWING_VIEW, GtkWidget)

/* Signal: "sentence" (char *markup): while a corner moves, what the build would be. */

void stead_drawing_view_show (SteadDrawingView *self, SteadDesk *desk, const SteadBuildAnswer *answer);

G_END_DECLS
