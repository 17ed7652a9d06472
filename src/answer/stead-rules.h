/* stead-rules.h - the tables of building and work that the program ships, read once. */
#pragma once

#include "core/stead-limit.h"

G_BEGIN_DECLS

/**
 * stead_rules_get:
 *
 * All tables of data/rules together.  From one thread only.
 *
 * Returns: (transfer none): the table; never changed by those who ask it
 */
const SteadLimitTable *stead_rules_get (void);

/**
 * stead_rules_figure:
 * @process: "space"
 * @subject: "goat"
 * @measure: "housed_area_per_head"
 *
 * Returns: (transfer none) (nullable): the first row with a figure of its own (not a
 *   bound), whatever its conditions
 */
const SteadLimit *stead_rules_figure (const char *process,
                                      const char *subject,
                                      const char *measure);

G_END_DECLS
