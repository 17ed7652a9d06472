/* stead-build-paper-private.h - what the papers of a build share. */
#pragma once

#include "answer/stead-build-path.h"
#include "answer/stead-subject.h"
#include "paper/stead-paper-private.h"

G_BEGIN_DECLS

SteadBuildAnswer *stead_build_paper_read (SteadStore *store, const char *of, GError **error);
/* With the path run. */
SteadBuildPath   *stead_build_paper_path (SteadStore *store, const SteadBuildAnswer *answer, GError **error);

G_END_DECLS
