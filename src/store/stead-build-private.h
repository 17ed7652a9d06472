/* stead-build-private.h - what the files of the builds share. */
#pragma once

#include "store/stead-build-repo.h"

G_BEGIN_DECLS

/* In the order of the enum. */
extern const char * const stead_build_part_words[];

/* The corners, gates, shelter and stock of a build that is read already. */
gboolean stead_build_read_plan  (SteadStore *store, SteadBuild *build, GError **error);
/* Instead of those that stand in the file. */
gboolean stead_build_write_plan (SteadStore *store, const SteadBuild *build, GError **error);

G_END_DECLS
