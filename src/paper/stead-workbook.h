/* stead-workbook.h - the farm's records as one workbook. */
#pragma once

#include "answer/stead-imprint.h"

G_BEGIN_DECLS

/* Hours, money, stock, production, sales and people of this school year; see
 * stead_workbook_answer_new() for @names.  Returns: (transfer full): the whole file */
GBytes *stead_workbook_new (SteadStore  *store,
                            gboolean     names,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Writes it; an older file at @path stays whole if it fails. */
gboolean stead_workbook_save (SteadStore  *store,
                              gboolean     names,
                              const char  *path,
                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
