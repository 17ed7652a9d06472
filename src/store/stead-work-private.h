/* stead-work-private.h - what the writers of hours share. */
#pragma once

#include "store/stead-work-repo.h"

G_BEGIN_DECLS

/* What each field alone must hold. */
gboolean stead_work_check (SteadStore *store, const SteadWorkSpan *span, SteadWorkFault *out_fault,
                           GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Adds it, or changes the one with its id. */
gboolean stead_work_write (SteadStore *store, SteadWorkSpan *span, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
