/* stead-log-model.h - a flock's log as a list that loads only what is looked at.
 *
 * Items are SteadRow of SteadFlockEntry, newest first.
 */
#pragma once

#include <gio/gio.h>

#include "store/stead-flock-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_LOG_MODEL (stead_log_model_get_type ())
G_DECLARE_FINAL_TYPE (SteadLogModel, stead_log_model, STEAD, LOG_MODEL, GObject)

SteadLogModel *stead_log_model_new  (void);
/* Counts anew and forgets what was loaded; @store NULL empties the list. */
void           stead_log_model_load (SteadLogModel *self,
                                     SteadStore    *store,
                                     gint64         flock_id);

G_END_DECLS
