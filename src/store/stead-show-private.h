/* stead-show-private.h - what the repositories of learning and showing share. */
#pragma once

#include "store/stead-repo-private.h"

G_BEGIN_DECLS

/**
 * stead_show_check_words:
 * @text: (nullable): as typed
 * @most: letters that the file takes
 * @empty: translated; what to do if nothing is written
 *
 * Refuses a text that is empty, too long, or has signs that cannot be read.
 */
gboolean stead_show_check_words (const char  *text,
                                 glong        most,
                                 const char  *empty,
                                 GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses a day that is none, or is still to come. */
gboolean stead_show_check_past (SteadStore  *store,
                                SteadDay     day,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses 0, and somebody who is not in the farm. */
gboolean stead_show_check_person (SteadStore  *store,
                                  gint64       person_id,
                                  GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Runs @sql, whose parameter is an id; NOT_FOUND if it changed nothing. */
gboolean stead_show_delete (SteadStore  *store,
                            const char  *sql,
                            gint64       id,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
