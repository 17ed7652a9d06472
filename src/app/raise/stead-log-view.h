/* stead-log-view.h - what was written down of a batch, as a table that can be edited. */
#pragma once

#include "app/raise/stead-log-kind.h"

G_BEGIN_DECLS

/**
 * stead_log_view_show:
 * @kind: the same at each call: the columns are made at the first one
 * @name: of the batch; files are named by it
 *
 * Reads the entries anew.
 */
void stead_log_view_show (SteadLogView       *self,
                          SteadDesk          *desk,
                          const SteadLogKind *kind,
                          gint64              batch_id,
                          const char         *name);

G_END_DECLS
