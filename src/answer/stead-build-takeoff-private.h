/* stead-build-takeoff-private.h - what the files of the take-off share. */
#pragma once

#include "answer/stead-build-takeoff.h"

G_BEGIN_DECLS

/* Adds a thing if there is any of it; takes @name and @how. */
void stead_build_need_add (SteadBuildTakeoff *self, SteadBuildPart part, char *key, char *name,
                           double quantity, const char *unit, char *how);

/* The next length in which posts and boards are bought: 2 ft, or half a meter. */
double stead_build_bought_m (double m, SteadUnitSystem units);

/* Bags of concrete round @holes fixed posts. */
gboolean stead_build_add_concrete (SteadBuildTakeoff *self, const SteadBuild *build, gint64 holes, GError **error);

gboolean stead_build_add_fence   (SteadBuildTakeoff *self, const SteadBuild *build, SteadUnitSystem units,
                                  gint64 *out_holes, GError **error);
gboolean stead_build_add_shelter (SteadBuildTakeoff *self, const SteadBuild *build, SteadUnitSystem units,
                                  gint64 *out_holes, GError **error);
gboolean stead_build_add_run     (SteadBuildTakeoff *self, const SteadBuild *build, SteadUnitSystem units,
                                  gint64 *out_holes, GError **error);
gboolean stead_build_add_hoop    (SteadBuildTakeoff *self, const SteadBuild *build, SteadUnitSystem units, GError **error);
void     stead_build_add_gates   (SteadBuildTakeoff *self, const SteadBuild *build, SteadUnitSystem units);

/**
 * stead_build_cut:
 * @out_cut: whether the size has lengths of its own and was cut from them
 *
 * Adds what is bought of @size for @pieces (of SteadCutPiece).
 */
gboolean stead_build_cut (SteadBuildTakeoff *self, const SteadBuild *build, SteadUnitSystem units, SteadBuildPart part,
                          const char *size, GArray *pieces, gboolean *out_cut, GError **error);

G_END_DECLS
