/* stead-schema.h - the tables of the farm file, one step for each version.
 *
 * A released step is never edited: a change is a new step at the end, and a
 * sample of the version before it goes into tests/fixtures.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_SCHEMA_APPLICATION_ID 0x53544544   /* "STED" */
#define STEAD_SCHEMA_VERSION 1

/**
 * stead_schema_step:
 * @version: 1 to %STEAD_SCHEMA_VERSION
 *
 * Returns: the SQL that leads from @version - 1 to @version
 */
const char *stead_schema_step (int version);

/* Tables whose changes are recorded for undo; %NULL at the end. */
extern const char * const stead_schema_undo_tables[];

G_END_DECLS
