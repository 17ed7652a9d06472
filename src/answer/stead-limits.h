/* stead-limits.h - the tables of food safety that the program ships, read once. */
#pragma once

#include "core/stead-limit.h"

G_BEGIN_DECLS

/**
 * stead_limits_get:
 *
 * All tables of data/limits together, for the edition of 2022.  From one thread only.
 *
 * Returns: (transfer none): the table; never changed by those who ask it
 */
const SteadLimitTable *stead_limits_get (void);

/* "155 °F for 17 s" with its direction as a short text: "at least 155 °F for 17 s". */
char *stead_limits_text (const SteadLimit *limit) G_GNUC_WARN_UNUSED_RESULT;

/* Where it is from: "FDA Food Code 2022, §3-401.11(A)(2)"; what was not read says so. */
char *stead_limits_source (const SteadLimit *limit) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
