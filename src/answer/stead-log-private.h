/* stead-log-private.h - how the rows of every export are put together. */
#pragma once

#include "answer/stead-log-answer.h"

G_BEGIN_DECLS

/* @title: (transfer full) */
SteadLogAnswer *stead_log_new (char       *title,
                               const char *currency,
                               SteadStore *store) G_GNUC_WARN_UNUSED_RESULT;

/* @title: (transfer full) */
void stead_log_add_column (SteadLogAnswer *self,
                           char           *title,
                           SteadCellKind   kind,
                           int             digits,
                           gboolean        sum);

/* Returns: (transfer none): as many empty cells as there are columns */
SteadLogCell *stead_log_add_row (SteadLogAnswer *self);

SteadLogCell stead_log_text  (const char *text);
SteadLogCell stead_log_whole (gint64   whole,
                              gboolean filled);
/* NAN is not filled. */
SteadLogCell stead_log_number (double number);

/* (transfer full): names by id */
GHashTable *stead_log_people (SteadStore  *store,
                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
