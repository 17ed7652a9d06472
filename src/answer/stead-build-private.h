/* stead-build-private.h - what the files of the build's answer share. */
#pragma once

#include "answer/stead-build-answer.h"

G_BEGIN_DECLS

/* The bill out of the take-off and what people said about it (of SteadBuildLine). */
gboolean stead_build_make_bill (SteadBuildAnswer *self, const GPtrArray *lines, GError **error);
void     stead_build_row_free  (gpointer row);

void     stead_build_make_rooms (SteadBuildAnswer *self);
void     stead_build_make_works (SteadBuildAnswer *self);
void     stead_build_say        (SteadBuildAnswer *self);

G_END_DECLS
