/* stead-undo.h - the steps that a person took, kept in the file. */
#pragma once

#include "store/stead-store-internal.h"

G_BEGIN_DECLS

#define STEAD_UNDO_STEPS 200

/* Starts to record what happens to the undoable tables of the connection. */
sqlite3_session *stead_undo_record (SteadStore  *self,
                                    GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_undo_keep:
 * @out_changed: (out): whether the action changed anything
 *
 * Writes the recorded step into the transaction under way, drops the steps that
 * were undone before it and all but the last %STEAD_UNDO_STEPS.
 */
gboolean         stead_undo_keep   (SteadStore  *self,
                                    gboolean    *out_changed,
                                    GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
