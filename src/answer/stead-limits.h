/* stead-limits.h - the tables of food safety that the program ships, read once. */
#pragma once

#include "core/stead-limit.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * stead_limits_read:
 * @resource: part of the program: a table in it that cannot be read is a bug
 * @folder: of tables, with a slash at its end
 *
 * Returns: (transfer full): all tables of @folder together
 */
SteadLimitTable *stead_limits_read (GResource  *resource,
                                    const char *folder) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_limits_get:
 *
 * All tables of data/limits together, for the edition of 2022.  From any thread.
 *
 * Returns: (transfer none): the table; never changed by those who ask it
 */
const SteadLimitTable *stead_limits_get (void);

/**
 * stead_limits_new:
 * @local: (array length=n): the farm's own stricter rows
 * @edition: the Food Code that is law there: 2013, 2017 or 2022; 0 for 2022
 * @error: return location for a #GError in %STEAD_CORE_ERROR: a row is looser than the
 *   shipped one, or has no source
 *
 * Returns: (transfer full): all tables, with those rows in the place of the shipped ones
 */
SteadLimitTable *stead_limits_new (const SteadLimitLocal  *local,
                                   gsize                   n,
                                   int                     edition,
                                   GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/* "155 °F for 17 s" with its direction as a short text: "at least 155 °F for 17 s". */
char *stead_limits_text (const SteadLimit *limit) G_GNUC_WARN_UNUSED_RESULT;

/* Where it is from: "FDA Food Code 2022, §3-401.11(A)(2)"; what was not read says so. */
char *stead_limits_source (const SteadLimit *limit) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
